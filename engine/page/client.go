package page

import (
	"html/template"
	"slices"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/scene"
)

// Swatches are the woods, each in the tone that the picture shows. A frame of
// the same wood goes along.
func (g groupView) Swatches() Control {
	c, _ := g.control(g.Path + ".wood")
	c.Kind, c.Look = "radio", "swatches"
	for i, o := range c.Options {
		if g.Design.Frame.Wood == g.Design.Wood {
			c.Options[i].Also = []Edit{{g.Path + ".frame.wood", o.Value}}
		}
		if m, ok := scene.WoodMaterial(o.Value, g.Design.Finish.Kind); ok {
			c.Options[i].Picture = swatch(m)
		}
	}
	return c
}

// BlockSizes are the sections that a client may choose from, with the one that
// the design has.
func (g groupView) BlockSizes() Control {
	c, _ := g.control(g.Path + ".block.size")
	c.Kind, c.Look, c.Hint = "radio", "chips", ""
	now := g.Design.Block.Size
	sizes := engine.BlockSizes(now.Notation())
	known := false
	for _, s := range sizes {
		known = known || s.Same(now)
	}
	if !known {
		sizes = append(sizes, now)
		slices.SortFunc(sizes, length.Length.Cmp)
	}
	for _, s := range sizes {
		c.Options = append(c.Options, Option{Value: s.String(), Label: g.Words.Show(s), Selected: s.Same(now)})
	}
	return c
}

// relief is a height set of ours that a client may choose.
type relief struct {
	key     string
	heights []int64 // mm
}

// reliefs are four blocks each, in uneven steps so that they do not act
// together like a flat board, and none too short to hold at the saw. Chosen by
// us for boards of common widths.
func reliefs() []relief {
	return []relief{
		{"shallow", []int64{26, 31, 38, 48}},
		{"middling", []int64{26, 36, 50, 68}},
		{"deep", []int64{26, 42, 64, 92}},
		{"deeper", []int64{26, 48, 82, 130}},
	}
}

// Reliefs are the height sets that fit the frame's board, with the one that the
// design has.
func (g groupView) Reliefs() Control {
	c, _ := g.control(g.Path + ".heights")
	c.Kind, c.Look, c.Hint, c.Label = "radio", "pictured", "", g.T("look/relief")
	known := false
	for _, r := range reliefs() {
		heights := make([]length.Length, len(r.heights))
		for i, mm := range r.heights {
			heights[i] = length.MM(mm)
		}
		now := sameHeights(heights, g.Design.Heights)
		if !now && !g.fitsBoard(heights) {
			continue
		}
		known = known || now
		c.Options = append(c.Options, g.reliefOption(r.key, heights, now))
	}
	if !known {
		c.Options = append(c.Options, g.reliefOption("own", g.Design.Heights, true))
	}
	return c
}

func (g groupView) reliefOption(key string, heights []length.Length, now bool) Option {
	text := ""
	for i, h := range heights {
		if i > 0 {
			text += "; "
		}
		text += h.String()
	}
	return Option{
		Value: text, Label: g.T("relief/" + key), Note: g.T("relief/to", "height", heights[len(heights)-1]),
		Selected: now, Picture: template.HTML(comb("", heights)),
	}
}

func sameHeights(a, b []length.Length) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if !a[i].Same(b[i]) {
			return false
		}
	}
	return true
}

// fitsBoard reports whether blocks of these heights stay inside the frame.
func (g groupView) fitsBoard(heights []length.Length) bool {
	in := g.Design
	if in.Frame.Joint == design.NoFrame {
		return true
	}
	depth := in.Cleat.Thickness.Add(in.Backer.Thickness).Add(heights[len(heights)-1]).Add(in.Frame.Reveal)
	return depth.Cmp(in.Frame.Board) <= 0
}

// Frames are the ways to frame, for a client.
func (g groupView) Frames() Control {
	c, _ := g.control(g.Path + ".frame.joint")
	c.Kind, c.Look = "radio", "chips"
	for i, o := range c.Options {
		c.Options[i].Label = g.T("frame/" + o.Value)
	}
	return c
}

// FinishChoice is the finish, for a client.
func (g groupView) FinishChoice() Control {
	c, _ := g.control(g.Path + ".finish.kind")
	return c
}

// Size is one of the two wished sizes, for a client.
func (g groupView) Size(name string) Control {
	c, _ := g.control(g.Path + "." + name)
	return c
}
