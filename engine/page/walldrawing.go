package page

import (
	"fmt"
	"html/template"
	"math"
	"unicode/utf8"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/wall"
)

// Sizes of the drawing of a wall, as parts of its longer side.
const (
	wallType    = 1.0 / 26 // height of the type: 10 px and more where the drawing is 330 px wide
	wallMargin  = 0.8      // heights of type around the wall and its dimension lines
	lineSpacing = 1.7      // heights of type from one dimension line to the next
	digitWidth  = 0.6      // of the height of the type, about
)

// wallMap is one wall, drawn to scale and seen from the room.
type wallMap struct {
	*view
	Index int // of the wall
}

// WallMaps are the walls of the design; a client looks at the first.
func (v *view) WallMaps() []wallMap {
	var all []wallMap
	for i := range v.Doc.Design.Walls {
		all = append(all, wallMap{v, i})
	}
	if v.Reading == Client {
		all = all[:1]
	}
	return all
}

// SlotID is where the drawing stands.
func (m wallMap) SlotID() string { return fmt.Sprintf("wall-drawing-%d", m.Index) }

// Path is that of the wall.
func (m wallMap) Path() string { return fmt.Sprintf("walls[%d]", m.Index) }

// Name is what the wall is called, where there are several.
func (m wallMap) Name() string {
	if len(m.Doc.Design.Walls) < 2 || m.Reading == Client {
		return ""
	}
	return m.Words.Given(m.wall().Name)
}

func (m wallMap) wall() design.Wall { return m.Doc.Design.Walls[m.Index] }

// hangings are the groups on the wall, with what carries them.
func (m wallMap) hangings() []wall.Hanging {
	var all []wall.Hanging
	for i, g := range m.Plan.Groups {
		if g.Wall == m.Index {
			all = append(all, m.Plan.Hangings[i])
		}
	}
	return all
}

// Caption says how to read the drawing.
func (m wallMap) Caption() string {
	text := m.T("wall/caption")
	has := map[check.Level]bool{}
	for _, z := range wall.Zones(m.wall()) {
		has[z.Level] = true
	}
	if has[check.Stop] {
		text += " " + m.T("wall/caption-keep-out")
	}
	if has[check.Caution] {
		text += " " + m.T("wall/caption-care")
	}
	return text
}

// Drawing draws the wall.
func (m wallMap) Drawing() template.HTML {
	w := m.wall()
	d := wallDrawing{m: m, wall: w, hung: m.hangings(), width: w.Width.Millimetres(), height: w.Height.Millimetres()}
	shown := d.shown()
	d.size = math.Max(shown.Right, (shown.Top-shown.Bottom)*1.2) * wallType
	d.below, d.beside = d.dimensionLines()
	box := d.view()
	d.Canvas = draw.New(fmt.Sprintf("wall-svg-%d", m.Index), box)
	d.Class("drawing wall-drawing")
	d.Title(m.T("wall/drawing-title"))
	d.Desc(m.wallText())
	d.draw()
	return template.HTML(d.String())
}

// shown is the wall with what would hang beyond it, in mm from its lower left corner.
func (d wallDrawing) shown() wall.Box {
	all := wall.Box{Right: d.width, Top: d.height}
	for _, h := range d.hung {
		b := h.Box()
		all.Right, all.Top, all.Bottom = max(all.Right, b.Right), max(all.Top, b.Top), min(all.Bottom, b.Bottom)
	}
	return all
}

// view is the part of the plane that is shown, in mm.
func (d wallDrawing) view() draw.Box {
	ears := max(2.9, 0.5+0.54*float64(utf8.RuneCountInString(d.m.T("wall/ears")))) // heights of type
	shown, left := d.shown(), d.margin(len(d.beside))
	right := max(d.width+ears*d.size, shown.Right+d.size/2)
	foot := max(d.height+d.margin(len(d.below)), d.height-shown.Bottom+d.size/2)
	top := max(d.topMargin(), shown.Top-d.height+d.size/2)
	return draw.Box{X: -left, Y: -top, Width: left + right, Height: foot + top}
}

// wallText says in words where the panels hang.
func (m wallMap) wallText() string {
	g := m.hangings()[0].Built
	return m.T("wall/drawing-text",
		"wallWidth", m.wall().Width, "wallHeight", m.wall().Height,
		"width", g.TotalWidth, "height", g.TotalHeight, "left", g.Left, "bottom", g.Bottom)
}

type wallDrawing struct {
	*draw.Canvas
	m             wallMap
	wall          design.Wall
	hung          []wall.Hanging
	width, height float64 // mm
	size          float64 // height of the type
	below, beside [][]span
}

// span is what a dimension line measures, along it.
type span struct {
	from, to float64
	text     string
}

// margin is the room that some dimension lines beside one another take.
func (d wallDrawing) margin(lines int) float64 {
	return (lineSpacing*float64(lines) + wallMargin) * d.size
}

// topMargin is the room above the wall: for the name of a beam, and for the
// figure of a short upright span, which stands above it.
func (d wallDrawing) topMargin() float64 {
	const name, off = 1.5, 1.2 // heights of type
	top := name * d.size
	for _, line := range d.beside {
		for _, s := range line {
			if d.narrow(s) {
				top = max(top, d.figureLength(s)+off*d.size-s.from)
			}
		}
	}
	return top
}

func (d wallDrawing) figureLength(s span) float64 {
	return digitWidth * d.size * float64(utf8.RuneCountInString(s.text))
}

// narrow reports whether the figure of a span does not stand within it.
func (d wallDrawing) narrow(s span) bool {
	const ends = 1.2 // heights of type between a figure and the ends of its line, both
	return s.to-s.from < d.figureLength(s)+ends*d.size
}

// dimensionLines are the lines below the wall and at its left, from the wall
// outwards. A short span whose figure would stand in its neighbour's line has a
// line to itself.
func (d wallDrawing) dimensionLines() (below, beside [][]span) {
	g := d.hung[0].Built
	show := func(l length.Length) string { return d.m.Words.Number(l) }
	left, width := g.Left.Millimetres(), g.TotalWidth.Millimetres()
	bottom, height := g.Bottom.Millimetres(), g.TotalHeight.Millimetres()
	foot := d.height - bottom
	below = d.lines(span{0, left, show(g.Left)}, span{left, left + width, show(g.TotalWidth)})
	beside = d.lines(span{foot, d.height, show(g.Bottom)}, span{foot - height, foot, show(g.TotalHeight)})
	return append(below, []span{{0, d.width, show(d.wall.Width)}}), append(beside, []span{{0, d.height, show(d.wall.Height)}})
}

// lines puts two spans that follow one another on one line, or on two.
func (d wallDrawing) lines(first, second span) [][]span {
	if d.narrow(first) || d.narrow(second) {
		return [][]span{{first}, {second}}
	}
	return [][]span{{first, second}}
}

// box turns a rectangle on the wall, y up from the floor, into the drawing's.
func (d wallDrawing) box(x, y, width, height length.Length) draw.Box {
	h := height.Millimetres()
	return draw.Box{X: x.Millimetres(), Y: d.height - y.Millimetres() - h, Width: width.Millimetres(), Height: h}
}

func (d wallDrawing) draw() {
	d.Rect(draw.Box{Width: d.width, Height: d.height}, draw.Class("wall"), draw.Fill("none"), draw.Stroke("currentColor"), d.line(0.1))
	d.zones()
	d.studs()
	d.ears()
	d.figure() // below what is on the wall and its names
	for _, o := range d.wall.Obstacles {
		d.obstacle(o)
	}
	for _, h := range d.hung {
		d.liftRoom(h)
		d.group(h)
		if d.m.Reading != Client {
			d.strips(h)
		}
	}
	for _, o := range d.wall.Obstacles {
		d.obstacleName(o)
	}
	d.dimensions()
	d.Line(-2*d.size, d.height, d.width+1.5*d.size, d.height, draw.Class("floor"), draw.Stroke("currentColor"), d.line(0.16))
}

func (d wallDrawing) line(heights float64) draw.Attr { return draw.StrokeWidth(heights * d.size) }

// up turns a box on the wall, y up from the floor, into one of the drawing.
func (d wallDrawing) up(b wall.Box) draw.Box {
	return draw.Box{X: b.Left, Y: d.height - b.Top, Width: b.Right - b.Left, Height: b.Top - b.Bottom}
}

// zones are hatched: densely where no panel may be, lightly where care is asked for.
func (d wallDrawing) zones() {
	for _, z := range wall.Zones(d.wall) {
		class, hatch := "zone care", d.Hatch(1.1*d.size, 0.05*d.size, -45)
		if z.Level == check.Stop {
			class, hatch = "zone keep-out", d.Hatch(0.55*d.size, 0.14*d.size, -45)
		}
		d.Rect(d.up(z.Box), draw.Class(class), hatch)
	}
}

// studs are dashed, those that a strip is screwed to with longer strokes.
func (d wallDrawing) studs() {
	held := map[int64]bool{}
	for _, h := range d.hung {
		for _, s := range h.Strips {
			for _, x := range s.StudsM {
				held[int64(math.Round(x*1e6))] = true
			}
		}
	}
	for _, x := range d.hung[0].StudPlaces() {
		mm, class, dash := x.Millimetres(), "stud", draw.Dash(0.5*d.size, 0.5*d.size)
		if held[x.Nanometres()/1000] {
			class, dash = "stud held", draw.Dash(1.4*d.size, 0.3*d.size)
		}
		d.Line(mm, 0, mm, d.height, draw.Class(class), draw.Stroke("currentColor"), d.line(0.07), dash)
	}
}

// ears is the height of those who listen.
func (d wallDrawing) ears() {
	y := d.height - d.wall.EarHeight.Millimetres()
	d.Group("ears", func() {
		d.Line(0, y, d.width, y, draw.Stroke("currentColor"), d.line(0.05), draw.Dash(0.15*d.size, 0.45*d.size))
		d.Text(d.width+0.3*d.size, y+0.35*d.size, d.m.T("wall/ears"), draw.Size(0.9*d.size), draw.Fill("currentColor"))
	})
}

// liftRoom is the air that hooking the group on takes, above it.
func (d wallDrawing) liftRoom(h wall.Hanging) {
	if h.Means == wall.Stand {
		return
	}
	b := d.box(h.Built.Left, h.Built.Bottom.Add(h.Built.TotalHeight), h.Built.TotalWidth, h.LiftRoom)
	d.Rect(b, draw.Class("lift-room"), draw.Fill("none"), draw.Stroke("currentColor"), d.line(0.06), draw.Dash(0.3*d.size, 0.3*d.size))
}

// strips are the halves of the cleats on the wall with their screws, behind the
// panels.
func (d wallDrawing) strips(h wall.Hanging) {
	const mm = 1000
	for _, s := range h.Strips {
		top := d.height - s.TipM*mm
		d.Group("strip", func() {
			d.Rect(draw.Box{X: s.LeftM * mm, Y: top, Width: (s.RightM - s.LeftM) * mm, Height: s.HeightM * mm},
				draw.Fill("none"), draw.Stroke("currentColor"), d.line(0.07), draw.Dash(0.5*d.size, 0.25*d.size))
			for _, hole := range s.Holes() {
				d.Circle(hole.XM*mm, d.height-hole.YM*mm, 0.16*d.size, draw.Fill("currentColor"))
			}
		})
	}
}

func (d wallDrawing) obstacle(o design.Obstacle) {
	b := d.box(o.X, o.Y, o.Width, o.Height)
	d.Group("obstacle", func() {
		d.Rect(b, d.Hatch(0.5*d.size, 0.08*d.size, 45), draw.Stroke("currentColor"), d.line(0.08))
	})
}

// thing is what something on a wall is called: where its kind says nothing, by a note
// that is short enough for a drawing.
func (v *view) thing(o design.Obstacle) string {
	const longest = 24
	if n := utf8.RuneCountInString(o.Note); o.Kind == "other" && n > 0 && n <= longest {
		return o.Note
	}
	return capital(v.T("choice/" + o.Kind))
}

// obstacleName names what is on the wall above it, or below it where a panel is
// in the way.
func (d wallDrawing) obstacleName(o design.Obstacle) {
	const lift, drop = 0.35, 1.05 // of the line of the type off the box, in its heights
	b := d.box(o.X, o.Y, o.Width, o.Height)
	name := d.m.thing(o)
	half := 0.5 * digitWidth * d.size * float64(utf8.RuneCountInString(name))
	x := min(max(b.X+b.Width/2, half), d.width-half)
	y := b.Y - lift*d.size
	if d.onPanel(draw.Box{X: x - half, Y: y - d.size, Width: 2 * half, Height: d.size}) {
		y = b.Y + b.Height + drop*d.size
	}
	d.Group("obstacle", func() {
		d.Text(x, y, name, draw.Middle(), draw.Size(d.size), draw.Fill("currentColor"))
	})
}

// onPanel reports whether a box touches a panel on this wall.
func (d wallDrawing) onPanel(b draw.Box) bool {
	for _, h := range d.hung {
		for _, p := range h.Built.Panels {
			o := d.box(p.Left, p.Bottom, h.Built.OuterWidth, h.Built.OuterHeight)
			if b.X < o.X+o.Width && o.X < b.X+b.Width && b.Y < o.Y+o.Height && o.Y < b.Y+b.Height {
				return true
			}
		}
	}
	return false
}

// drawnCells is how many cells are drawn one by one on a wall; larger fields
// would be a grey haze at this scale, and slow.
const drawnCells = 6000

func (d wallDrawing) group(g wall.Hanging) {
	frame := g.Built.OuterWidth.Sub(g.Built.FieldWidth).Half()
	for _, p := range g.Built.Panels {
		outer := d.box(p.Left, p.Bottom, g.Built.OuterWidth, g.Built.OuterHeight)
		d.Rect(outer, draw.Class("panel"), draw.Fill("#b08d62"), draw.Stroke("currentColor"), d.line(0.1))
		if len(p.Grid.Levels)*len(g.Built.Panels) > drawnCells {
			continue
		}
		x, y := outer.X+frame.Millimetres(), outer.Y+frame.Millimetres()
		f := draw.Field{Columns: p.Grid.Columns, Rows: p.Grid.Rows, Levels: p.Grid.Levels, Pitch: g.Built.Pitch.Millimetres()}
		d.Group("panel-field", func() { fieldPaths(d.Canvas, f, p.Grid.Heights, tone) }, draw.Move(x, y))
	}
}

// figure is a person for scale, at the side where there is room.
func (d wallDrawing) figure() {
	const half = draw.PersonMM * draw.PersonHalf
	x := d.width - 1.6*half
	if g := d.hung[0].Built; g.Left.Add(g.TotalWidth).Millimetres() > x-half {
		x = 1.6 * half
	}
	d.Person(x, d.height, draw.PersonMM, draw.Fill("currentColor"))
}

func (d wallDrawing) dimensions() {
	for i, line := range d.below {
		at := d.height + lineSpacing*float64(i+1)*d.size
		for _, s := range line {
			d.DimensionH(draw.Dimension{From: s.from, To: s.to, At: at, Object: d.height, Text: s.text, Size: d.size})
		}
	}
	const first = 1.3 // heights of type from the wall to the first line
	for i, line := range d.beside {
		at := -(first + lineSpacing*float64(i)) * d.size
		for _, s := range line {
			d.DimensionV(draw.Dimension{From: s.from, To: s.to, At: at, Object: 0, Text: s.text, Size: d.size})
		}
	}
}
