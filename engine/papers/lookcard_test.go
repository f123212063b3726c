package papers_test

import (
	"math"
	"testing"

	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The four lamps of the look card, read back: a shadow lies on the side of its lamp, and
// a block is in shadow from the left where, and only where, the one at its left is
// taller. So the four drawings differ.
func TestLookCardsShadows(t *testing.T) {
	p := job(t, "s2")
	card := of(make1(t, p.input(length.Metric, sheet.A4()), papers.OfferSet), "look-card")
	require.NotEmpty(t, card)
	counts := map[string]int{}
	for _, n := range parse(t, card[0].SVG).Children {
		counts[n.attr("class")] = len(n.Children)
	}
	grid := p.plan.Groups[0].Built.Panels[0].Grid
	tallerAt := func(columns, rows int) int {
		n := 0
		for row := range min(grid.Rows, 10) {
			for column := range min(grid.Columns, 14) {
				r, c := row+rows, column+columns
				if r >= 0 && c >= 0 && r < grid.Rows && c < grid.Columns && grid.At(r, c) > grid.At(row, column) {
					n++
				}
			}
		}
		return n
	}
	want := map[string]int{
		"shadows-left": tallerAt(-1, 0), "shadows-right": tallerAt(1, 0), "shadows-top": tallerAt(0, -1), "shadows-bottom": tallerAt(0, 1),
	}
	for class, n := range want {
		assert.Equal(t, n, counts[class], class)
	}
	assert.NotEqual(t, want["shadows-left"], want["shadows-top"])

	// A shadow from the left begins at the left edge of its cell, one from the right ends
	// at the right edge.
	pitch := 0.0
	for _, n := range parse(t, card[0].SVG).Children {
		if n.attr("class") == "shadows-left" {
			pitch = n.Children[0].number("height")
		}
	}
	first := map[string]float64{}
	for _, n := range parse(t, card[0].SVG).Children {
		class := n.attr("class")
		if class != "shadows-left" && class != "shadows-right" {
			continue
		}
		for _, cell := range n.Children {
			at := cell.number("x")
			if class == "shadows-right" {
				at += cell.number("width")
			}
			if _, known := first[class]; !known {
				first[class] = at
			}
			cells := (at - first[class]) / pitch
			assert.InDelta(t, math.Round(cells), cells, 0.05, "%s: not at the edge of a cell", class)
		}
	}
}
