package page

import (
	"html/template"
	"math"
	"strings"
	"unicode/utf8"

	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/length"
)

// Sizes of the drawing of a wall, as parts of its longer side.
const (
	wallType    = 1.0 / 23 // height of the type: 11 px and more where the drawing is 330 px wide
	wallMargin  = 0.8      // heights of type around the wall and its dimension lines
	lineSpacing = 1.7      // heights of type from one dimension line to the next
	digitWidth  = 0.6      // of the height of the type, about
)

// figureMM is the height of the person in the drawing, the eyes and the
// shoulders in proportion; a common height, from memory.
const figureMM = 1750

// WallDrawing draws the first wall to scale, seen from the room.
func (v *view) WallDrawing() template.HTML {
	w := v.Doc.Design.Walls[0]
	d := wallDrawing{v: v, wall: w, width: w.Width.Millimetres(), height: w.Height.Millimetres()}
	d.size = math.Max(d.width, d.height*1.2) * wallType
	d.below, d.beside = d.dimensionLines()
	left, foot, top := d.margin(len(d.beside)), d.margin(len(d.below)), d.topMargin()
	const right = 2.5 // heights of type
	d.Canvas = draw.New("wall-svg", draw.Box{
		X: -left, Y: -top, Width: d.width + left + right*d.size, Height: d.height + foot + top,
	})
	d.Class("drawing wall-drawing")
	d.Title(v.T("wall/drawing-title"))
	d.Desc(v.wallText())
	d.draw()
	return template.HTML(d.String())
}

// wallText says in words where the panels hang.
func (v *view) wallText() string {
	g := v.First()
	return v.T("wall/drawing-text",
		"wallWidth", v.Doc.Design.Walls[0].Width, "wallHeight", v.Doc.Design.Walls[0].Height,
		"width", g.Built.TotalWidth, "height", g.Built.TotalHeight, "left", g.Built.Left, "bottom", g.Built.Bottom)
}

type wallDrawing struct {
	*draw.Canvas
	v             *view
	wall          design.Wall
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
	g := d.v.First()
	show := func(l length.Length) string { return d.v.Words.Units.Number(l) }
	left, width := g.Built.Left.Millimetres(), g.Built.TotalWidth.Millimetres()
	bottom, height := g.Built.Bottom.Millimetres(), g.Built.TotalHeight.Millimetres()
	foot := d.height - bottom
	below = d.lines(span{0, left, show(g.Built.Left)}, span{left, left + width, show(g.Built.TotalWidth)})
	beside = d.lines(span{foot, d.height, show(g.Built.Bottom)}, span{foot - height, foot, show(g.Built.TotalHeight)})
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
	d.studs()
	for _, o := range d.wall.Obstacles {
		d.obstacle(o)
	}
	for _, g := range d.v.Groups() {
		if g.Wall == 0 {
			d.group(g)
		}
	}
	for _, o := range d.wall.Obstacles {
		d.obstacleName(o)
	}
	d.figure()
	d.dimensions()
	d.Line(-2*d.size, d.height, d.width+1.5*d.size, d.height, draw.Class("floor"), draw.Stroke("currentColor"), d.line(0.16))
}

func (d wallDrawing) line(heights float64) draw.Attr { return draw.StrokeWidth(heights * d.size) }

func (d wallDrawing) studs() {
	step := d.wall.StudStep
	if !strings.Contains(d.wall.Kind, "studs") || step.IsZero() {
		return
	}
	for x := d.wall.StudFirst; x.Cmp(d.wall.Width) < 0; x = x.Add(step) {
		mm := x.Millimetres()
		d.Line(mm, 0, mm, d.height, draw.Class("stud"), draw.Stroke("currentColor"), d.line(0.06), draw.Dash(0.7*d.size, 0.5*d.size))
	}
}

func (d wallDrawing) obstacle(o design.Obstacle) {
	b := d.box(o.X, o.Y, o.Width, o.Height)
	d.Group("obstacle", func() {
		d.Rect(b, d.Hatch(0.5*d.size, 0.08*d.size, 45), draw.Stroke("currentColor"), d.line(0.08))
	})
}

// obstacleName names what is on the wall above it, or below it where a panel is
// in the way.
func (d wallDrawing) obstacleName(o design.Obstacle) {
	const lift, drop = 0.35, 1.05 // of the line of the type off the box, in its heights
	b := d.box(o.X, o.Y, o.Width, o.Height)
	name := capital(d.v.T("choice/" + o.Kind))
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
	for _, g := range d.v.Groups() {
		if g.Wall != 0 {
			continue
		}
		for _, p := range g.Built.Panels {
			o := d.box(p.Left, p.Bottom, g.Built.OuterWidth, g.Built.OuterHeight)
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

func (d wallDrawing) group(g groupView) {
	frame := g.Built.OuterWidth.Sub(g.Built.FieldWidth).Half()
	for _, p := range g.Built.Panels {
		outer := d.box(p.Left, p.Bottom, g.Built.OuterWidth, g.Built.OuterHeight)
		d.Rect(outer, draw.Class("panel"), draw.Fill("#b08d62"), draw.Stroke("currentColor"), d.line(0.1))
		if len(p.Grid.Levels)*len(g.Built.Panels) > drawnCells {
			continue
		}
		x, y := outer.X+frame.Millimetres(), outer.Y+frame.Millimetres()
		f := draw.Field{Columns: p.Grid.Columns, Rows: p.Grid.Rows, Levels: p.Grid.Levels, Pitch: g.Built.Pitch.Millimetres()}
		d.Group("panel-field", func() { fieldPaths(d.Canvas, f, p.Grid.Heights) }, draw.Move(x, y))
	}
}

// figure is a person for scale, at the side where there is room.
func (d wallDrawing) figure() {
	const head = figureMM / 7.48 // canon of proportion, common practice
	x := d.width - 0.9*head*2
	if g := d.v.First(); g.Built.Left.Add(g.Built.TotalWidth).Millimetres() > x-head {
		x = 0.9 * head * 2
	}
	at := func(across, up float64) (float64, float64) { return x + across*head, d.height - up*head }
	var body []float64
	half := figureHalf()
	for _, p := range half {
		px, py := at(p[0], p[1])
		body = append(body, px, py)
	}
	for i := len(half) - 1; i >= 0; i-- {
		px, py := at(-half[i][0], half[i][1])
		body = append(body, px, py)
	}
	cx, cy := at(0, 6.98)
	d.Group("figure", func() {
		d.Circle(cx, cy, 0.5*head, draw.Fill("currentColor"))
		d.Path(draw.Polygon(body...), draw.Fill("currentColor"))
	})
}

// figureHalf is the outline of a standing person from the neck down the left
// side to between the legs, across and up in heads. Drawn by us.
func figureHalf() [][2]float64 {
	return [][2]float64{
		{-0.18, 6.42}, {-0.62, 6.3}, {-0.86, 6.12}, {-0.97, 5.8}, {-1.04, 4.9}, {-1.1, 4.2}, {-1.08, 3.55}, {-0.98, 3.4},
		{-0.88, 3.55}, {-0.84, 4.2}, {-0.74, 5.2}, {-0.64, 5.4}, {-0.6, 4.6}, {-0.64, 3.6}, {-0.58, 2}, {-0.52, 0.25},
		{-0.6, 0}, {-0.16, 0}, {-0.14, 0.3}, {-0.1, 2}, {0, 3.35},
	}
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
