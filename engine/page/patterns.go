package page

import (
	"html/template"
	"math"
	"strconv"

	"blockfield/engine/design"
	"blockfield/engine/field"
)

// Part of a field that stands for a pattern: large enough to tell the kinds
// apart, small enough to be drawn six times.
const (
	sampleColumns = 14
	sampleRows    = 9
)

// sample is a pattern that a client may choose.
type sample struct {
	key   string
	kind  string
	clump int
}

func samples() []sample {
	return []sample{
		{"fine", design.Shuffled, 1},
		{"clumps", design.Shuffled, 2},
		{"broad", design.Shuffled, 3},
		{"waves", design.QuadraticResidue, 1},
		{"stripes", design.QuadraticResidueStripes, 1},
		{"folded", design.PrimitiveRoot, 1},
	}
}

// PatternChoice is the pattern as a client chooses it, with a small picture of
// each kind laid over this very field.
func (g groupView) PatternChoice() Control {
	c, _ := g.control(g.Path + ".pattern.kind")
	c.Kind, c.Look, c.Options = "radio", "pictured", nil
	known := false
	for _, s := range samples() {
		o, ok := g.sampleOption(s)
		if !ok {
			continue
		}
		known = known || o.Selected
		c.Options = append(c.Options, o)
	}
	if !known {
		now := g.Design.Pattern
		c.Options = append(c.Options, Option{
			Value: now.Kind, Label: g.T("pattern/own"), Selected: true,
			Picture: g.sampleOf(now),
		})
	}
	return c
}

// sampleOption is a pattern as the design would have it, with every field that
// goes along.
func (g groupView) sampleOption(s sample) (Option, bool) {
	now := g.Design.Pattern
	o := Option{
		Value: s.kind, Label: g.T("pattern/" + s.key), Selected: now.Kind == s.kind && now.Clump == s.clump,
		Also: []Edit{{g.Path + ".pattern.clump", strconv.Itoa(s.clump)}},
	}
	if now.Kind != s.kind && s.kind != design.Shuffled {
		o.Also = append(o.Also, Edit{g.Path + ".pattern.order", strconv.Itoa(g.sampleOrder(s.kind))})
	}
	doc := g.Doc
	for _, e := range append([]Edit{{g.Path + ".pattern.kind", s.kind}}, o.Also...) {
		var err error
		if doc, err = design.Set(doc, e.Path, e.Value, g.Doc.View.Units); err != nil {
			return Option{}, false
		}
	}
	o.Picture = g.sampleOf(doc.Design.Walls[g.Wall].Groups[g.Index].Pattern)
	return o, true
}

// waveOrder is the length of the sequence for waves and stripes: a prime that
// leaves 3 when divided by 4, which gives nearly even shares, and about two
// waves in a panel of usual size.
const waveOrder = 23

// sampleOrder is the length of the sequence that suits this field: for a folded
// one that whose fold comes nearest to the field, so that it stands once.
func (g groupView) sampleOrder(kind string) int {
	if kind != design.PrimitiveRoot {
		return waveOrder
	}
	order, _ := design.Lookup(g.Path + ".pattern.order")
	best, least := waveOrder, math.Inf(1)
	for n := int(order.Min); n <= int(order.Max); n++ {
		if !design.IsPrime(n) || !design.Foldable(n) {
			continue
		}
		rows, columns := field.Fold(n)
		miss := math.Abs(math.Log(float64(rows)/float64(g.Built.Rows))) +
			math.Abs(math.Log(float64(columns)/float64(g.Built.Columns)))
		if miss < least {
			best, least = n, miss
		}
	}
	return best
}

// sampleOf draws the upper left corner of the field with another pattern.
func (g groupView) sampleOf(p design.Pattern) template.HTML {
	grid, err := field.Lay(p, g.Built.Columns, g.Built.Rows, len(g.Design.Heights))
	if err != nil {
		return ""
	}
	return template.HTML(fieldPicture("", corner(grid, sampleColumns, sampleRows), 1, 0))
}

// corner returns the upper left corner of a field.
func corner(g field.Grid, columns, rows int) field.Grid {
	out := field.Grid{Columns: min(g.Columns, columns), Rows: min(g.Rows, rows), Heights: g.Heights}
	for i := range out.Rows {
		out.Levels = append(out.Levels, g.Levels[i*g.Columns:i*g.Columns+out.Columns]...)
	}
	return out
}
