// Package panel turns a group of a design into built parts: the blocks of each
// height, the backer, the frame, the cleat and the spacer, each with its size,
// place, grain, area and mass.
//
// Places are measured on each panel from the lower left corner of its outer
// edge, seen from the room: x to the right, y up, z out of the wall, whose
// surface is z = 0. Volumes are exact closed forms of the drawn sizes; masses
// are volume × density, without glue and finish. The stack is cleat + backer +
// tallest block; the frame starts at the wall and is as deep as the stack and
// the wanted reveal, rounded up to a whole millimetre.
package panel

import (
	"fmt"
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/field"
	"blockfield/engine/length"
	"blockfield/engine/wood"
)

// Sizes of what carries the panel. Common practice, no source.
const (
	cleatHeightMM      = 80  // the half of the cleat on the panel
	spacerHeightMM     = 40  // keeps the panel upright at its foot
	cleatShorterMM     = 100 // than the field, 50 at either end
	cleatBelowTopMM    = 90  // lower inner corner of the panel's half, from the field's top, before its screws are chosen
	spacerAboveFootMM  = 20
	carrierDensityKgM3 = 480 // ply or dry pine strips
)

// Kind names a part, for words and for lists.
type Kind string

// The kinds of parts.
const (
	BlockPart  Kind = "block"
	BackerPart Kind = "backer"
	FramePart  Kind = "frame"
	CleatPart  Kind = "cleat"
	SpacerPart Kind = "spacer"
)

// Grain is the direction in which the fibres of a part run.
type Grain string

// The directions of grain.
const (
	GrainOut    Grain = "out" // end grain to the room
	GrainAcross Grain = "across"
	GrainUp     Grain = "up"
)

// Part is one kind of built part of a panel, Count pieces of it.
type Part struct {
	Kind    Kind
	Name    string // key of its name: "block", "frame/top", …
	Count   int
	Width   length.Length // of one piece, along x
	Height  length.Length // along y
	Depth   length.Length // along z
	X, Y, Z length.Length // lower left rear corner of the first piece; for blocks Z only
	Wood    string        // wood or sheet
	Grain   Grain
	FaceM2  float64 // seen from the room, all pieces together
	MassKg  float64 // all pieces together
}

// Panel is one built panel of a group.
type Panel struct {
	Letter       byte // A as designed, B counter-panel, R turned by 180°
	Left, Bottom length.Length
	Grid         field.Grid
	Counts       []int   // cells of each level
	Woods        []uint8 // which of the group's woods each cell is of; nil where there is one alone
	WoodCounts   [][]int // cells of each level, by wood
	Parts        []Part
	MassKg       float64 // without glue and finish
	CentroidM    float64 // of the mass, out from the wall
	TopsM2       float64 // end grain to the room
	SidesM2      float64 // block sides that stand above their neighbours
	BareM2       float64 // backer in cells of height 0
	BasesM2      float64 // glued block bases
	Blocks       int     // glued blocks
}

// WithCleatFoot is the panel with the lower inner corner of its half of the cleat
// so far below the field's top. Its other parts, and its mass, stay as they are.
func (p Panel) WithCleatFoot(foot length.Length) Panel {
	p.Parts = slices.Clone(p.Parts)
	for i := range p.Parts {
		if p.Parts[i].Kind == CleatPart {
			p.Parts[i].Y = p.FieldTop().Sub(foot)
		}
	}
	return p
}

// WoodOf is which of the group's woods a cell is of.
func (p Panel) WoodOf(cell int) uint8 {
	if p.Woods == nil {
		return 0
	}
	return p.Woods[cell]
}

// FieldTop is the top of the field, from the panel's lower outer edge.
func (p Panel) FieldTop() length.Length {
	i := slices.IndexFunc(p.Parts, func(part Part) bool { return part.Kind == BackerPart })
	return p.Parts[i].Y.Add(p.Parts[i].Height)
}

// Group is a group of panels with what they share.
type Group struct {
	Columns, Rows           int // of one panel
	Pitch                   length.Length
	FieldWidth, FieldHeight length.Length // of one panel
	OuterWidth, OuterHeight length.Length // of one panel, over the frame
	TotalWidth, TotalHeight length.Length // over all panels and their gaps
	Left, Bottom            length.Length // of all panels, on the wall
	Stack                   length.Length
	FrameDepth              length.Length // 0 without a frame
	FrameRunning            length.Length // length of frame board in one panel, along its outer and inner edges
	Framed                  bool
	Panels                  []Panel
	Counts                  []int   // cells of each level over all panels
	WoodCounts              [][]int // the same by wood, in the order of design.Group.Woods
}

// Build returns the built panels of a group. It returns an error where the
// pattern cannot be laid or a wood or sheet is unknown, which design.Validate
// has refused before.
func Build(g design.Group) (Group, error) {
	out := measure(g)
	grid, err := field.Lay(g.Pattern, out.Columns, out.Rows, len(g.Heights))
	if err != nil {
		return Group{}, err
	}
	densities, err := densitiesOf(g)
	if err != nil {
		return Group{}, err
	}
	b := builder{group: g, size: out, density: densities, heightsM: length.Metres(g.Heights)}
	out.Counts = make([]int, len(g.Heights))
	out.WoodCounts = zeroes(len(g.Woods()), len(g.Heights))
	for i := range g.PanelsWide * g.PanelsHigh {
		p := b.panel(letter(g.Order, i), i, grid)
		across, down := i%g.PanelsWide, i/g.PanelsWide
		p.Left = out.Left.Add(out.OuterWidth.Add(g.PanelGap).Times(across))
		p.Bottom = out.Bottom.Add(out.OuterHeight.Add(g.PanelGap).Times(g.PanelsHigh - 1 - down))
		out.Panels = append(out.Panels, p)
		for k, n := range p.Counts {
			out.Counts[k] += n
			for w := range p.WoodCounts {
				out.WoodCounts[w][k] += p.WoodCounts[w][k]
			}
		}
	}
	return out, nil
}

func zeroes(woods, heights int) [][]int {
	all := make([][]int, woods)
	for w := range all {
		all[w] = make([]int, heights)
	}
	return all
}

func letter(order string, i int) byte {
	if i < len(order) {
		return order[i]
	}
	return 'A'
}

func measure(g design.Group) Group {
	out := Group{Pitch: g.Pitch(), Framed: g.Framed()}
	out.Columns, out.Rows = g.Grid()
	out.FieldWidth, out.FieldHeight = g.Field()
	out.OuterWidth, out.OuterHeight = g.Outer()
	out.TotalWidth, out.TotalHeight = g.Total()
	out.Left, out.Bottom = g.Place.Left, g.Bottom()
	tallest := g.Heights[len(g.Heights)-1]
	out.Stack = g.Cleat.Thickness.Add(g.Backer.Thickness).Add(tallest)
	if out.Framed {
		out.FrameDepth = out.Stack.Add(g.Frame.Reveal).CeilMM()
		inner := out.FieldHeight.Add(g.Frame.Gap.Times(2))
		out.FrameRunning = out.OuterWidth.Times(2).Add(inner.Times(2))
	}
	return out
}

// densities of the materials of a panel, in kg/m³.
type densities struct {
	blocks        []float64 // by wood
	frame, backer float64
}

// densitiesOf takes the weighed density, where there is one, for the blocks of the
// first wood and for a frame of the same.
func densitiesOf(g design.Group) (densities, error) {
	var blocks []float64
	for _, name := range g.Woods() {
		species, ok := wood.Find(name)
		if !ok {
			return densities{}, fmt.Errorf("panel: unknown wood %q", name)
		}
		blocks = append(blocks, species.DensityKgM3)
	}
	frame, ok := wood.Find(g.Frame.Wood)
	if !ok {
		return densities{}, fmt.Errorf("panel: unknown frame wood %q", g.Frame.Wood)
	}
	sheet, ok := wood.FindSheet(g.Backer.Sheet)
	if !ok {
		return densities{}, fmt.Errorf("panel: unknown sheet %q", g.Backer.Sheet)
	}
	d := densities{blocks: blocks, frame: frame.DensityKgM3, backer: sheet.DensityKgM3}
	if g.Density > 0 {
		d.blocks[0] = g.Density
		if g.Frame.Wood == g.Wood {
			d.frame = g.Density
		}
	}
	return d, nil
}
