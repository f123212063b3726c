package page_test

import (
	"regexp"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/page"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestRowScreenTellsTwoWoods: the screen at the bench marks the blocks of the second
// wood, says what the mark means, and counts each wood for itself.
func TestRowScreenTellsTwoWoods(t *testing.T) {
	doc := designtest.TwoWoods(scenarios(t)["s1.json"], design.MixedAtRandom)
	in := input(t, doc, design.DefaultBook(), words.English(), page.Bench)
	html := page.Rows(in).HTML
	at := in.Job.At()
	require.GreaterOrEqual(t, at, 0)
	card := in.Job.Cards[at]
	marked := regexp.MustCompile(`<li class="rows-cell[^"]* second">`).FindAllString(html, -1)
	want := 0
	for _, w := range card.Woods {
		want += int(w)
	}
	require.Positive(t, want)
	assert.Len(t, marked, want)
	assert.Equal(t, want, strings.Count(html, `<span class="sr"> walnut</span>`))
	assert.Contains(t, html, "Plain boxes are pine, those with a thick edge walnut.")
	counts := regexp.MustCompile(`<li><b>\d+</b>\x{a0}× \d+ (pine|walnut)</li>`).FindAllString(html, -1)
	assert.Greater(t, len(counts), len(doc.Design.Walls[0].Groups[0].Heights)-1, "a line for each wood and height")
}

// TestSecondWoodIsUnderMore: how two woods are mixed is asked once there are two, and
// the control of the second wood stands where it stood.
func TestSecondWoodIsUnderMore(t *testing.T) {
	doc := scenarios(t)["s1.json"]
	doc.View.Reading = page.Maker
	const path = "walls[0].groups[0]."
	plain := section(t, doc, design.DefaultBook(), page.Look)
	assert.Contains(t, plain, `name="`+path+`secondWood"`)
	assert.NotContains(t, plain, `name="`+path+`mixed"`)
	mixed := section(t, designtest.TwoWoods(doc, ""), design.DefaultBook(), page.Look)
	assert.Contains(t, mixed, `name="`+path+`mixed"`)
	assert.Contains(t, mixed, `name="`+path+`secondShare"`)
}

// TestFieldDrawingMarksTheSecondWood: the flat drawing of the field has a small square in
// each block of the second wood, and its caption says so.
func TestFieldDrawingMarksTheSecondWood(t *testing.T) {
	doc := scenarios(t)["s1.json"]
	doc.View.Reading = page.Maker
	assert.NotContains(t, section(t, doc, design.DefaultBook(), page.Look), "second-wood")
	mixed := designtest.TwoWoods(doc, design.MixedAtRandom)
	html := section(t, mixed, design.DefaultBook(), page.Look)
	squares := 0
	for _, path := range regexp.MustCompile(`<path[^>]*class="second-wood"[^>]*>`).FindAllString(html, -1) {
		d := regexp.MustCompile(` d="([^"]*)"`).FindStringSubmatch(path)
		squares += strings.Count(d[1], "z")
	}
	in := input(t, mixed, design.DefaultBook(), words.English(), page.Look)
	of := in.Plan.Groups[0].Built.Panels[0]
	want := 0
	for cell, level := range of.Grid.Levels {
		if of.WoodOf(cell) > 0 && !in.Plan.Groups[0].Design.Heights[level].IsZero() {
			want++
		}
	}
	require.Positive(t, want)
	assert.Equal(t, want, squares)
	assert.Contains(t, html, "A small square in a block: walnut.")
}
