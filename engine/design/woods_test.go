package design_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/length"
)

// A design of one wood has no word for a second one, so that its file and its
// revision stay what they were before there could be two.
func TestOneWoodIsWrittenAsEver(t *testing.T) {
	doc := design.Default()
	file := string(design.Encode(doc))
	for _, name := range []string{"secondWood", "mixed", "secondShare"} {
		assert.NotContains(t, file, `"`+name+`"`)
	}
	const at = "walls[0].groups[0]."
	edited := doc
	for _, edit := range [][2]string{
		{"secondWood", "walnut"}, {"mixed", design.MixedAtRandom}, {"secondShare", "20"},
		{"secondWood", design.NoSecondWood}, {"mixed", design.MixedTaller}, {"secondShare", "0"},
	} {
		var err error
		edited, err = design.Set(edited, at+edit[0], edit[1], length.Metric)
		require.NoError(t, err, edit)
		if edit[1] == "walnut" {
			assert.NotEqual(t, doc.Design.Revision(), edited.Design.Revision())
			assert.Contains(t, string(design.Encode(edited)), `"secondWood": "walnut"`)
		}
	}
	assert.Equal(t, doc.Design.Revision(), edited.Design.Revision(), "there and back")
	_, err := design.Set(doc, at+"secondWood", "ivory", length.Metric)
	assert.Error(t, err)
	_, err = design.Set(doc, at+"secondShare", "96", length.Metric)
	assert.Error(t, err)
}

// TestWoodsOfHeights against lists by hand; bare cells are of the first wood, which
// nothing is cut of for them.
func TestWoodsOfHeights(t *testing.T) {
	mm := func(all ...int64) (heights []length.Length) {
		for _, h := range all {
			heights = append(heights, length.MM(h))
		}
		return heights
	}
	levels := []uint8{0, 1, 2, 3, 4}
	for _, c := range []struct {
		mixed   string
		heights []length.Length
		want    []uint8
	}{
		{"", mm(26, 42, 64, 92), []uint8{0, 0, 1, 1}},
		{"", mm(0, 26, 42, 64, 92), []uint8{0, 0, 0, 1, 1}},
		{"", mm(26, 42, 64), []uint8{0, 0, 1}},
		{design.MixedEveryOther, mm(26, 42, 64, 92), []uint8{0, 1, 0, 1}},
		{design.MixedEveryOther, mm(0, 26, 42, 64, 92), []uint8{0, 0, 1, 0, 1}},
	} {
		g := design.Group{Wood: "maple", SecondWood: "walnut", Mixed: c.mixed, Heights: c.heights}
		assert.Equal(t, c.want, g.WoodsOf(0, levels[:len(c.want)]), "%q, %v", c.mixed, c.heights)
		g.SecondWood = "maple"
		assert.Nil(t, g.WoodsOf(0, levels[:len(c.want)]), "of one wood after all")
		assert.Equal(t, []string{"maple"}, g.Woods())
	}
}

// TestWoodsAtRandom: the share comes out within what chance allows, three standard
// deviations of a binomial; another seed and another panel are mixed otherwise, and
// the same ones always alike.
func TestWoodsAtRandom(t *testing.T) {
	const cells = 4000
	levels := []uint8(strings.Repeat("\x01", cells))
	g := design.Group{Wood: "maple", SecondWood: "walnut", Mixed: design.MixedAtRandom, Heights: []length.Length{length.MM(0), length.MM(40)}}
	count := func(all []uint8) (n float64) {
		for _, w := range all {
			n += float64(w)
		}
		return n
	}
	first := g.WoodsOf(0, levels)
	assert.InDelta(t, 2000, count(first), 95, "half: 3·√(4000/4)")
	assert.Equal(t, first, g.WoodsOf(0, levels))
	assert.NotEqual(t, first, g.WoodsOf(1, levels))
	g.Pattern.Seed = 2
	assert.NotEqual(t, first, g.WoodsOf(0, levels))
	g.SecondShare = 20
	assert.InDelta(t, 800, count(g.WoodsOf(0, levels)), 76, "a fifth: 3·√(4000·0.2·0.8)")
	assert.Zero(t, count(g.WoodsOf(0, make([]uint8, cells))), "bare backer is of no wood")
}
