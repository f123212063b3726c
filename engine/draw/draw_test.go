package draw_test

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"blockfield/engine/draw"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// element is any XML element, to look at drawings the way a browser does.
type element struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Children []element  `xml:",any"`
	Text     string     `xml:",chardata"`
}

func (e element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// walk visits e and all below it.
func (e element) walk(visit func(element)) {
	visit(e)
	for _, c := range e.Children {
		c.walk(visit)
	}
}

func parse(t *testing.T, svg string) element {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(svg))
	var root element
	require.NoError(t, d.Decode(&root), svg)
	_, err := d.Token()
	require.True(t, errors.Is(err, io.EOF), "more than one root: %s", svg)
	return root
}

func sample() *draw.Canvas {
	c := draw.New("s", draw.Box{X: -5, Y: -5, Width: 100.25, Height: 60})
	c.Class("plan")
	c.Title("Wall & panel")
	c.Desc(`A "panel" < the wall`)
	hatch := c.Hatch(2, 0.5, 45)
	c.Group("outline", func() {
		c.Rect(draw.Box{Width: 90, Height: 50}, hatch, draw.Stroke("black"), draw.StrokeWidth(0.3))
		c.Line(0, 25, 90, 25, draw.Dash(3, 1.5), draw.Class("level"))
		c.Circle(10, 10, 1.234)
		c.Path(draw.Polygon(0, 0, 10, 0, 10, -2.5), draw.Fill("none"))
	}, draw.Move(1, 2))
	c.Text(45, 20, "5 < 6 & \"7\" é\x00", draw.Middle(), draw.Size(4), draw.Bold())
	c.Text(1, 1, "end", draw.End(), draw.Turn(-90, 1, 1))
	c.DimensionH(draw.Dimension{From: 0, To: 90, At: 55, Object: 50, Text: "90 mm", Size: 3})
	c.DimensionV(draw.Dimension{From: 0, To: 50, At: 95, Object: 90, Text: "50 mm", Size: 3})
	return c
}

// The smallest drawing, written out by hand.
func TestString(t *testing.T) {
	c := draw.New("a", draw.Box{Width: 10, Height: 20.5})
	c.Group("g", func() { c.Line(0, 1, 2.25, 3, draw.Class("k")) })
	assert.Equal(t, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 20.5" aria-hidden="true">`+
		`<g class="g"><line x1="0" y1="1" x2="2.25" y2="3" class="k"/></g></svg>`, c.String())
}

func TestWellFormed(t *testing.T) {
	text := sample().String()
	root := parse(t, text)
	assert.Equal(t, "http://www.w3.org/2000/svg", root.XMLName.Space)
	assert.Equal(t, "-5 -5 100.25 60", root.attr("viewBox"))
	assert.Equal(t, text, sample().String(), "the same calls make the same text")

	found := map[string]int{}
	root.walk(func(e element) {
		found[e.XMLName.Local]++
		assert.Empty(t, e.attr("style"))
		for _, a := range e.Attrs {
			assert.False(t, strings.HasPrefix(a.Name.Local, "on"), "handler %s", a.Name.Local)
		}
	})
	for name, n := range map[string]int{"rect": 2, "line": 1, "circle": 1, "path": 3, "text": 4, "g": 3, "pattern": 1, "title": 1, "desc": 1} {
		assert.Equal(t, n, found[name], name)
	}
}

func TestNames(t *testing.T) {
	root := parse(t, sample().String())
	assert.Equal(t, "img", root.attr("role"))
	texts := map[string]string{}
	root.walk(func(e element) { texts[e.attr("id")] = e.Text })
	assert.Equal(t, "Wall & panel", texts[root.attr("aria-labelledby")])
	assert.Equal(t, `A "panel" < the wall`, texts[root.attr("aria-describedby")], "said after the name, not as a part of it")

	c := draw.New("x", draw.Box{Width: 1, Height: 1})
	c.Desc("of nothing")
	bare := parse(t, c.String())
	assert.Equal(t, "true", bare.attr("aria-hidden"))
	assert.Empty(t, bare.attr("role"))
	assert.Empty(t, bare.Children, "a description without a title would name nothing")
	c.Title("Of a dot")
	assert.Equal(t, "x-desc", parse(t, c.String()).attr("aria-describedby"))
	c.Desc("")
	assert.Equal(t, "x-title", parse(t, c.String()).attr("aria-labelledby"))
	assert.Empty(t, parse(t, c.String()).attr("aria-describedby"))
}

func TestEscapes(t *testing.T) {
	c := draw.New(`i"<`, draw.Box{Width: 1, Height: 1})
	c.Title("</title><script>")
	c.Text(0, 0, "</text><script>alert(1)</script>", draw.Class(`"><script>`))
	c.Rect(draw.Box{}, c.Hatch(1, 1, 0))
	root := parse(t, c.String())
	root.walk(func(e element) { assert.NotEqual(t, "script", e.XMLName.Local) })
	assert.Equal(t, "</title><script>", root.Children[0].Text)
	assert.Equal(t, `url(#i"<-hatch1)`, root.Children[3].attr("fill"))
	assert.Equal(t, "5 < 6 & \"7\" é\uFFFD", parse(t, sample().String()).Children[4].Text)
}

func TestHatchesHaveNamesOfTheirOwn(t *testing.T) {
	c := draw.New("h", draw.Box{Width: 1, Height: 1})
	assert.NotEqual(t, c.Hatch(1, 0.2, 0), c.Hatch(2, 0.2, 45))
	ids := map[string]bool{}
	parse(t, c.String()).walk(func(e element) {
		if e.XMLName.Local == "pattern" {
			ids[e.attr("id")] = true
		}
	})
	assert.Len(t, ids, 2)
}

func TestActualSize(t *testing.T) {
	c := draw.New("a", draw.Box{Width: 84.5, Height: 6})
	assert.Empty(t, parse(t, c.String()).attr("width"))
	c.ActualSize()
	assert.Equal(t, "84.5mm", parse(t, c.String()).attr("width"))
	assert.Equal(t, "6mm", parse(t, c.String()).attr("height"))
}

func TestTwoAttributesOfANamePanic(t *testing.T) {
	c := draw.New("a", draw.Box{Width: 1, Height: 1})
	assert.Panics(t, func() { c.Rect(draw.Box{}, draw.Move(1, 1), draw.Turn(1, 0, 0)) })
}

func TestNumber(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", 36: "36", 36.2: "36.2", 36.25: "36.25", 36.204: "36.2", 36.206: "36.21", 0.05: "0.05",
		-0.05: "-0.05", -1.5: "-1.5", -0.004: "0", 0.999: "1", 1234567.5: "1234567.5", -120: "-120",
	} {
		assert.Equal(t, want, draw.Number(v), "%v", v)
	}
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e10} {
		assert.Panics(t, func() { draw.Number(v) }, "%v", v)
	}
}

func TestPolygon(t *testing.T) {
	assert.Equal(t, "M0 0L10 0L10 -2.5z", draw.Polygon(0, 0, 10, 0, 10, -2.5))
	assert.Equal(t, "M0 0L1.25 1", draw.Polyline(0, 0, 1.25, 1))
	odd := []float64{1, 2, 3, 4, 5}
	assert.Panics(t, func() { draw.Polygon(odd...) })
	assert.Panics(t, func() { draw.Polyline(1, 2) })
}
