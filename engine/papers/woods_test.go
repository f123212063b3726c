package papers_test

import (
	"fmt"
	"strings"
	"testing"

	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestPapersTellTwoWoods: what is glued by says of each block which wood it is of, and
// what is cut, bought and counted by has both.
func TestPapersTellTwoWoods(t *testing.T) {
	p := job(t, twoWoods)
	in := p.input(length.Metric, sheet.A4())
	glue := said(t, make1(t, in, papers.GlueSet))
	cut := said(t, make1(t, in, papers.CutSet))
	offer := said(t, make1(t, in, papers.OfferSet))
	one, other := p.plan.Groups[0].Design.Wood, p.plan.Groups[0].Design.SecondWood
	assert.Contains(t, offer, strings.ToUpper(one[:1])+one[1:]+" and "+other)
	for _, lot := range p.plan.Bill.Lots {
		assert.Contains(t, cut, fmt.Sprintf("%s%s, %s square", strings.ToUpper(lot.Wood[:1]), lot.Wood[1:], in.Words.Show(lot.Size)))
	}
	assert.Contains(t, strings.Join(strings.Fields(glue), " "), "White boxes are "+one+", grey ones "+other)

	// Each card names as many blocks of each wood and height as its row has.
	for _, c := range p.job.Cards {
		for w, wood := range p.plan.Groups[0].Design.Woods() {
			var counts []string
			for level, n := range c.WoodCounts[w] {
				if h := p.plan.Groups[0].Design.Heights[level]; n > 0 && !h.IsZero() {
					counts = append(counts, fmt.Sprintf("%d × %s", n, in.Words.Number(h)))
				}
			}
			if len(counts) > 0 {
				require.Contains(t, glue, wood+" "+strings.Join(counts, " · "), "row %d", c.Row+1)
			}
		}
	}
	plain := said(t, make1(t, job(t, "s1").input(length.Metric, sheet.A4()), papers.GlueSet))
	assert.NotContains(t, plain, "grey ones")
}

// TestGreyBoxesAreTheSecondWood: as many boxes of the row cards are shaded as there are
// blocks of the second wood.
func TestGreyBoxesAreTheSecondWood(t *testing.T) {
	p := job(t, twoWoods)
	glue := make1(t, p.input(length.Metric, sheet.A4()), papers.GlueSet)
	shaded, want := 0, 0
	for _, one := range of(glue, "row-cards") {
		shaded += strings.Count(one.SVG, `"#d0d0d0"`)
	}
	for _, c := range p.job.Cards {
		for _, w := range c.Woods {
			want += int(w)
		}
	}
	require.Positive(t, want)
	assert.Equal(t, want, shaded)
}

// TestCoverMarksTheSecondWood: the picture on the cover has a small square in as many blocks
// as are of the second wood, and says which wood that is.
func TestCoverMarksTheSecondWood(t *testing.T) {
	p := job(t, twoWoods)
	cover := of(make1(t, p.input(length.Metric, sheet.A4()), papers.CutSet), "cover")
	squares, groups := 0, 0
	for _, n := range parse(t, cover[0].SVG).Children {
		if n.attr("class") == "second-wood" {
			groups++
			for _, path := range n.Children {
				squares += strings.Count(path.attr("d"), "z")
			}
		}
	}
	g := p.plan.Groups[0]
	want := 0
	for cell, level := range g.Built.Panels[0].Grid.Levels {
		if g.Built.Panels[0].WoodOf(cell) > 0 && !g.Design.Heights[level].IsZero() {
			want++
		}
	}
	require.Positive(t, want)
	assert.Equal(t, 1, groups)
	assert.Equal(t, want, squares)
	assert.Contains(t, said(t, papers.Set{Sheets: cover[:1]}), "A small square in a block: "+g.Design.SecondWood)
	plain := of(make1(t, job(t, "s1").input(length.Metric, sheet.A4()), papers.CutSet), "cover")
	assert.NotContains(t, plain[0].SVG, "second-wood")
}
