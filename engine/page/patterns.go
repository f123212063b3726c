package page

import (
	"html/template"
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
	clump int // 0: as it is
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
	clump := g.Path + ".pattern.clump"
	doc, err := design.Set(g.Doc, g.Path+".pattern.kind", s.kind, g.Doc.View.Units)
	if err == nil {
		doc, err = design.Set(doc, clump, strconv.Itoa(s.clump), g.Doc.View.Units)
	}
	if err != nil {
		return Option{}, false
	}
	p := doc.Design.Walls[g.Wall].Groups[g.Index].Pattern
	now := g.Design.Pattern
	return Option{
		Value: s.kind, Label: g.T("pattern/" + s.key),
		Selected: now.Kind == s.kind && now.Clump == s.clump,
		Picture:  g.sampleOf(p),
		AlsoPath: clump, AlsoValue: strconv.Itoa(s.clump),
	}, true
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
