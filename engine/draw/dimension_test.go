package draw_test

import (
	"testing"

	"blockfield/engine/draw"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// dimension draws one and returns its path and its text.
func dimension(t *testing.T, do func(c *draw.Canvas)) (path, text element) {
	t.Helper()
	c := draw.New("d", draw.Box{Width: 200, Height: 100})
	do(c)
	root := parse(t, c.String())
	require.Len(t, root.Children, 1)
	g := root.Children[0]
	require.Equal(t, "dimension", g.attr("class"))
	require.Len(t, g.Children, 2)
	return g.Children[0], g.Children[1]
}

// Lines worked out by hand from the proportions: type of 10, so ticks reach 4
// each way, gaps are 4, lines overshoot by 5, and the text stands 3.5 above.
func TestDimensionH(t *testing.T) {
	d := draw.Dimension{From: 0, To: 100, At: 50, Object: 20, Text: "100 mm", Size: 10}
	path, text := dimension(t, func(c *draw.Canvas) { c.DimensionH(d) })
	assert.Equal(t, "M0 50L100 50"+
		"M-4 54L4 46"+"M0 24L0 55"+
		"M96 54L104 46"+"M100 24L100 55", path.attr("d"))
	assert.Equal(t, "none", path.attr("fill"))
	assert.Equal(t, "100 mm", text.Text)
	assert.Equal(t, []string{"50", "46.5", "middle"}, []string{text.attr("x"), text.attr("y"), text.attr("text-anchor")})

	// From above the object the extension lines run the other way.
	d.At, d.Object = -30, 0
	path, _ = dimension(t, func(c *draw.Canvas) { c.DimensionH(d) })
	assert.Contains(t, path.attr("d"), "M0 -4L0 -35")

	// On the object there are none.
	d.Object = d.At
	path, _ = dimension(t, func(c *draw.Canvas) { c.DimensionH(d) })
	assert.Equal(t, "M0 -30L100 -30M-4 -26L4 -34M96 -26L104 -34", path.attr("d"))
}

func TestDimensionV(t *testing.T) {
	d := draw.Dimension{From: 100, To: 0, At: -20, Object: 0, Text: "100 mm", Size: 10}
	path, text := dimension(t, func(c *draw.Canvas) { c.DimensionV(d) })
	assert.Equal(t, "M-20 100L-20 0"+
		"M-16 96L-24 104"+"M-4 100L-25 100"+
		"M-16 -4L-24 4"+"M-4 0L-25 0", path.attr("d"))
	assert.Equal(t, "-23.5", text.attr("x"))
	assert.Equal(t, "50", text.attr("y"))
	assert.Equal(t, "rotate(-90 -23.5 50)", text.attr("transform"))
}

// Where the text does not fit between the ends it stands beside them.
func TestNarrowDimension(t *testing.T) {
	d := draw.Dimension{From: 40, To: 30, At: 50, Object: 50, Text: "10 mm", Size: 10}
	_, text := dimension(t, func(c *draw.Canvas) { c.DimensionH(d) })
	assert.Equal(t, "start", text.attr("text-anchor"))
	assert.Equal(t, "46", text.attr("x"), "right of the larger end")
	_, text = dimension(t, func(c *draw.Canvas) { c.DimensionV(d) })
	assert.Equal(t, "start", text.attr("text-anchor"))
	assert.Equal(t, "24", text.attr("y"), "above the upper end")

	// Five digits of 6 and two margins of 6 make 42.
	for to, anchor := range map[float64]string{30 + 41.9: "start", 30 + 42.1: "middle"} {
		d.From, d.To = 30, to
		_, text = dimension(t, func(c *draw.Canvas) { c.DimensionH(d) })
		assert.Equal(t, anchor, text.attr("text-anchor"), "%v", to)
	}
}

func TestThinDimensionStaysVisible(t *testing.T) {
	path, _ := dimension(t, func(c *draw.Canvas) {
		c.DimensionH(draw.Dimension{To: 1, Text: "1", Size: 0.05})
	})
	assert.Equal(t, "0.01", path.attr("stroke-width"))
}
