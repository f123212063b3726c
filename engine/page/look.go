package page

import (
	"fmt"
	"html/template"
	"strings"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/length"
)

// groupView is a group of panels as the page shows it.
type groupView struct {
	*view
	engine.Group
	Key string // "0-0": wall and place, for ids
}

// WallPaint is a colour in which the wall can be shown, with its word.
type WallPaint struct{ Name, Word string }

// WallPaints are all of them.
func (v *view) WallPaints() (all []WallPaint) {
	for _, name := range design.WallPaints() {
		all = append(all, WallPaint{name, capital(v.T("choice/" + name))})
	}
	return all
}

// LampHeight is the control of how far off the wall the lamp stands.
func (v *view) LampHeight() *Control {
	c, _ := v.control("view.lamp.elevation")
	return &c
}

// Groups are the groups of panels on all walls.
func (v *view) Groups() []groupView {
	var all []groupView
	for _, g := range v.Plan.Groups {
		all = append(all, groupView{v, g, groupKey(g.Wall, g.Index)})
	}
	return all
}

// groupKey is the key of a group, from its wall and its place there.
func groupKey(wall, index int) string { return fmt.Sprintf("%d-%d", wall, index) }

// First is the group that a client looks at.
func (v *view) First() groupView { return v.Groups()[0] }

func (v *view) lookSets() []set {
	if v.Reading == Client {
		return []set{{base: v.First().Path + ".", fields: clientFields()}}
	}
	var all []set
	for _, g := range v.Groups() {
		all = append(all, groupSets(g)...)
	}
	all = append(all,
		set{id: "light", heading: "look/light", base: "view.",
			fields: []string{"lamp.azimuth", "lamp.elevation", "lamp.warmth", "lamp.spread"}, more: []string{"wallPaint", "figure"}},
		set{id: "job", heading: "look/job", fields: []string{"title", "note"}},
	)
	return folded(all, v.lookAnswers())
}

// clientFields are the controls of the client's first page, at most eight.
func clientFields() []string {
	return []string{"width", "height", "wood", "heights", "pattern.kind", "block.size", "frame.joint", "finish.kind"}
}

func groupSets(g groupView) []set {
	base := g.Path + "."
	return []set{
		{
			id: "size-" + g.Key, heading: "look/size", base: base, slot: "snap-" + g.Key,
			fields: []string{"width", "height"}, more: []string{"columns", "rows"},
		}, {
			id: "block-" + g.Key, heading: "look/block", base: base,
			fields: []string{"block.size", "block.slack", "heights"},
			more:   []string{"block.section", "block.measured"},
		}, {
			id: "pattern-" + g.Key, heading: "look/pattern", base: base, slot: "kind-" + g.Key,
			fields: []string{"pattern.kind"},
			more: []string{"pattern.shiftRows", "pattern.shiftColumns", "pattern.turn",
				"pattern.mirror", "pattern.counter"},
		}, {
			id: "wood-" + g.Key, heading: "look/wood", base: base, slot: "mix-" + g.Key,
			fields: []string{"wood", "finish.kind", "finish.coats"},
			more:   []string{"secondWood", "density", "finish.frameCoats", "finish.colour", "finish.frameColour"},
		}, {
			id: "frame-" + g.Key, heading: "look/frame", base: base, slot: "board-" + g.Key,
			fields: []string{"frame.joint"},
		}, {
			id: "backer-" + g.Key, heading: "look/backer", base: base,
			fields: []string{"backer.sheet", "backer.thickness"},
		}, {
			id: "panels-" + g.Key, heading: "look/panels", base: base,
			fields: []string{"panelsWide", "panelsHigh", "panelGap"}, more: []string{"order", "name"},
		},
	}
}

func (v *view) lookSlots() []slot {
	var all []slot
	for _, g := range v.Groups() {
		all = append(all,
			slot{id: "snap-" + g.Key, template: "snap", data: g},
			slot{id: "facts-" + g.Key, template: "facts", data: g},
		)
		if v.Reading == Client {
			all = append(all, slot{id: "shuffle-" + g.Key, template: "shuffle", data: g})
			continue
		}
		all = append(all,
			slot{id: "field-" + g.Key, template: "field", data: g},
			slot{id: "kind-" + g.Key, template: "kind", data: g, after: endsIn(".pattern.kind")},
			slot{id: "mix-" + g.Key, template: "mix", data: g, after: ofWoods},
			slot{id: "board-" + g.Key, template: "board", data: g, after: endsIn(".frame.joint")},
		)
	}
	if v.Reading == Client {
		all = append(all, slot{id: soundSlots + "line", template: soundSlots + "line", data: v})
	}
	all = append(all, answerSlots(v.lookAnswers())...)
	return append(all, v.atTheEnd()...)
}

// kindFields are the controls that a pattern kind has.
func kindFields(p design.Pattern) []string {
	switch {
	case p.Kind == design.Drawn:
		return []string{"pattern.drawn"}
	case p.Kind == design.Shuffled:
		return []string{"pattern.clump", "pattern.seed"}
	case p.Kind == design.PrimitiveRoot:
		return []string{"pattern.order", "pattern.foldRows", "pattern.foldColumns", "pattern.clump"}
	default:
		return []string{"pattern.order", "pattern.clump"}
	}
}

// ofWoods is for slots that follow from which woods there are.
func ofWoods(changed string) bool {
	return strings.HasSuffix(changed, ".secondWood") || strings.HasSuffix(changed, ".wood")
}

// mixFields are the controls of how two woods are mixed, none where there is one.
func mixFields(g design.Group) []string {
	if len(g.Woods()) == 1 {
		return nil
	}
	return []string{"mixed", "secondShare"}
}

func frameFields(f design.Frame) []string {
	if f.Joint == design.NoFrame {
		return nil
	}
	return []string{"frame.wood", "frame.thickness", "frame.board", "frame.gap", "frame.reveal"}
}

// KindControls are the controls of the pattern kind.
func (g groupView) KindControls() []Control {
	return g.controls(g.Path+".", kindFields(g.Design.Pattern))
}

// MixControls are the controls of two woods.
func (g groupView) MixControls() []Control {
	return g.controls(g.Path+".", mixFields(g.Design))
}

// BoardControls are the controls of the frame, none where there is none.
func (g groupView) BoardControls() []Control {
	return g.controls(g.Path+".", frameFields(g.Design.Frame))
}

// Snap is one side of the field in whole blocks, with its neighbours.
type Snap struct {
	Key      string // of its words
	N        int    // blocks over all panels
	Fewer    int
	Greater  int
	Size     length.Length
	Total    length.Length // over frames and gaps
	Framed   string        // key of what Total is; empty where it is Size
	Path     string
	Less     string // what to type for one block fewer; empty: not possible
	LessSize length.Length
	More     string // the same for one block more
	// LessShown and MoreShown are what the field shows afterwards.
	LessShown, MoreShown string
	MoreSize             length.Length
}

// Snaps are the two sides of the field.
func (g groupView) Snaps() []Snap {
	return []Snap{
		g.snap("across", g.Across()).over(g, g.Built.TotalWidth),
		g.snap("down", g.Down()).over(g, g.Built.TotalHeight),
	}
}

// over adds the size on the wall, where it is another one.
func (s Snap) over(g groupView, total length.Length) Snap {
	s.Total = total
	switch {
	case total.Same(s.Size):
	case g.Panels() > 1:
		s.Framed = "snap/overall"
	default:
		s.Framed = "snap/with-frame"
	}
	return s
}

// snap offers one block more and one fewer in each panel. Where the count is
// fixed the count changes, elsewhere the wished size.
func (g groupView) snap(key string, side engine.Side) Snap {
	n := side.Blocks
	s := Snap{
		Key: key, N: n * side.Panels, Fewer: (n - 1) * side.Panels, Greater: (n + 1) * side.Panels,
		Size: side.Of(n), LessSize: side.Of(n - 1), MoreSize: side.Of(n + 1),
	}
	s.Path, s.Less = side.Edit(n - 1)
	_, s.More = side.Edit(n + 1)
	s.LessShown, s.MoreShown = s.Less, s.More
	if !side.Fixed {
		s.LessShown, s.MoreShown = g.Words.Written(g.Words.Units.Field(s.LessSize)), g.Words.Written(g.Words.Units.Field(s.MoreSize))
	}
	if n == 1 || !g.takes(s.Path, s.Less) {
		s.Less = ""
	}
	if !g.takes(s.Path, s.More) {
		s.More = ""
	}
	return s
}

// takes reports whether a value may be typed into a field of the design as it
// is: what would be refused is not offered.
func (v *view) takes(path, value string) bool {
	_, err := design.Set(v.Doc, path, value, v.Doc.View.Units)
	return err == nil
}

// CanShuffle reports whether there is chance in the pattern.
func (g groupView) CanShuffle() bool { return g.Design.Pattern.Kind == design.Shuffled }

// FactsKey is the key of the sentence with the group's figures.
func (g groupView) FactsKey() string {
	key := "look/facts"
	if g.Panels() > 1 {
		key += "-panels"
	}
	if g.Reading == Client {
		key += "-client" // size and mass stand under the picture
	}
	return key
}

// Bare is how many places of the group have no block, by its lowest height.
func (g groupView) Bare() int {
	n := 0
	for _, p := range g.Built.Panels {
		n += len(p.Grid.Levels) - p.Blocks
	}
	return n
}

// Panels is how many panels the group has.
func (g groupView) Panels() int { return len(g.Built.Panels) }

// Depth is how far the group stands off the wall.
func (g groupView) Depth() length.Length {
	if g.Built.Framed {
		return length.Max(g.Built.FrameDepth, g.Built.Stack)
	}
	return g.Built.Stack
}

// MassKg is the mass of all panels of the group, with glue and finish where
// they are known.
func (g groupView) MassKg() float64 {
	if g.HasBill() {
		for i, other := range g.Plan.Groups {
			if other.Path == g.Path {
				return g.Plan.Bill.Groups[i].TotalKg
			}
		}
	}
	sum := 0.0
	for _, p := range g.Built.Panels {
		sum += p.MassKg
	}
	return sum
}

// FieldDrawing draws the field of the first panel, with marks that the style sheet
// shows where they are asked for.
func (g groupView) FieldDrawing() template.HTML {
	grid := g.Built.Panels[0].Grid
	inset := 0.5 * g.Design.Block.Slack.Millimetres()
	if len(grid.Levels) > drawnCells {
		inset = 0
	}
	title := g.T("look/field-title", "columns", grid.Columns, "rows", grid.Rows)
	return template.HTML(fieldPicture(title, grid, g.Built.Pitch.Millimetres(), max(inset, fineLineMM), g.secondWood, g.marks))
}

// secondWood marks the blocks of the second wood, dark on light ones and light on dark ones.
func (g groupView) secondWood(c *draw.Canvas) {
	of := g.Built.Panels[0]
	if of.Woods == nil {
		return
	}
	f := draw.Field{Columns: of.Grid.Columns, Rows: of.Grid.Rows, Levels: of.Grid.Levels, Pitch: g.Built.Pitch.Millimetres()}
	for _, dark := range []bool{true, false} {
		marks := f.Marked(func(cell int) bool {
			level := int(of.Grid.Levels[cell])
			return of.WoodOf(cell) > 0 && !g.Design.Heights[level].IsZero() && (2*level < of.Grid.Heights-1) == dark
		})
		fill := tone(0, 2)
		if dark {
			fill = tone(1, 2)
		}
		if d := marks.Path(1); d != "" {
			c.Path(d, draw.Class("second-wood"), draw.Fill(fill))
		}
	}
}

// FieldCaption says how to read the drawing of the field.
func (g groupView) FieldCaption() string {
	text := g.T("look/field-caption")
	if woods := g.Design.Woods(); len(woods) > 1 {
		text += " " + g.T("look/field-woods", "wood", g.T("choice/"+woods[1]))
	}
	return text
}

// fineLineMM parts the blocks of a drawing where they touch.
const fineLineMM = 0.6

// Comb draws the height set from the side.
func (g groupView) Comb() template.HTML {
	return template.HTML(comb(g.T("look/comb-title", "heights", g.Design.Heights), g.Design.Heights))
}

// HeightCount is how many cells have one height.
type HeightCount struct{ Height, N string }

// Counts are the cells by height, over all panels of the group.
func (g groupView) Counts() []HeightCount {
	var all []HeightCount
	for i, n := range g.Built.Counts {
		all = append(all, HeightCount{g.Words.Show(g.Design.Heights[i]), g.Words.Count(n)})
	}
	return all
}

// Blocks is how many blocks the group has.
func (g groupView) Blocks() int {
	n := 0
	for _, p := range g.Built.Panels {
		n += p.Blocks
	}
	return n
}
