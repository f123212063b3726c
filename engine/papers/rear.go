package papers

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/wall"
)

// back is the rear of one kind of panel of a group: A, the counter-panel or the
// turned one.
type back struct {
	wall.Half
	hanging wall.Hanging
	group   int
	letter  byte
	panels  []string // numbers of the panels with this back
}

// backs are the rears that differ, of all groups.
func (m *maker) backs() []back {
	var all []back
	for g, h := range m.Plan.Hangings {
		at := map[byte]int{}
		for i, p := range h.Built.Panels {
			n, known := at[p.Letter]
			if !known {
				n = len(all)
				at[p.Letter] = n
				all = append(all, back{Half: h.Halves[i], hanging: h, group: g, letter: p.Letter})
			}
			all[n].panels = append(all[n].panels, m.Show(i+1))
		}
	}
	return all
}

// rearMap is the back of each kind of panel, a sheet each: turned like a page, left
// and right changed, the top up.
func (m *maker) rearMap() sheet.Paper {
	backs := m.backs()
	var blocks []sheet.Block
	for i, b := range backs {
		blocks = append(blocks, sheet.Fresh(append([]sheet.Block{sheet.Heading(m.backName(b))}, m.rearBlocks(i, b)...)))
	}
	if len(blocks) > 0 {
		blocks = append(blocks, m.cautions("wall/too-few-cells")...)
	}
	return m.paper("rear-map", sheet.Rear, blocks...)
}

// backName tells a back from the others of the job.
func (m *maker) backName(b back) string {
	of := len(m.Plan.Groups[b.group].Built.Panels)
	name := m.T("rear/panels", "letter", string(b.letter), "n", len(b.panels), "numbers", strings.Join(b.panels, ", "), "of", of)
	if of == 1 {
		name = m.T("rear/one")
	}
	if len(m.Plan.Groups) > 1 {
		name = m.T("cards/group", "group", m.groupName(b.group), "panel", name)
	}
	return name
}

func (m *maker) rearBlocks(i int, b back) []sheet.Block {
	left, right := b.Corners()
	blocks := []sheet.Block{
		sheet.Small(m.T("rear/turn")),
		sheet.List{Mark: sheet.Ticks, Items: []string{m.corner("rear/corner-left", left), m.corner("rear/corner-right", right)}},
		sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.drawing(m.rearDrawing(i, b, width))} }),
	}
	if len(b.Row.Places) == 0 {
		return append(blocks, sheet.Notice{Sign: sheet.StopSign, Text: m.T("hold/half-open-value")})
	}
	blocks = append(blocks, sheet.Small(m.T("rear/marks", "long", length.MM(int64(b.Row.ScrewMM)), "gauge", b.Gauge, "least", m.mm(b.LeastMM(b.Row.ScrewMM)))))
	for _, tight := range []bool{false, true} {
		list := m.ringList(b, tight)
		if sheet.Count(m.Format, sheet.Paper{View: sheet.Rear, Blocks: slices.Concat([]sheet.Block{sheet.Heading(m.backName(b))}, blocks, list)}) == 1 {
			return append(blocks, list...)
		}
	}
	return append(blocks, sheet.Fresh(m.ringList(b, false))) // the whole list faces the map
}

func (m *maker) corner(key string, c wall.Corner) string {
	heights := make([]length.Length, len(c.HeightsMM))
	for i, mm := range c.HeightsMM {
		heights[i] = m.mm(mm)
	}
	return m.T(key, "column", c.Column, "heights", heights)
}

// mm is a length in mm to a tenth, as a tape shows it.
func (m *maker) mm(mm float64) length.Length {
	return length.ToTenth(mm)
}

// at is a place in m.
func (m *maker) at(metres float64) length.Length {
	const millimetres = 1000
	return m.mm(metres * millimetres)
}

// ringList is the table of the screws, in two halves side by side where fractions do not take
// too much room for that.
func (m *maker) ringList(b back, tight bool) []sheet.Block {
	t := m.ringTable(b)
	t.Tight = tight
	if m.Words.Units.Bare() == length.InInch {
		return []sheet.Block{t}
	}
	return halved(t, 4)
}

// ringTable is where each screw goes, from the rear's own left edge.
func (m *maker) ringTable(b back) sheet.Table {
	t := sheet.Table{Size: armSize(), Columns: []sheet.Column{
		{Width: 8}, {Head: m.T("rearing/ring")}, {Head: m.T("rearing/from-left"), Right: true}, {Head: m.T("rearing/from-top"), Right: true},
		{Head: m.T("rearing/row"), Right: true}, {Head: m.T("rearing/column"), Right: true},
	}}
	for i, hole := range b.Holes(b.Row) {
		t.Rows = append(t.Rows, []sheet.Cell{
			{Tick: true}, {Text: m.Show(i + 1), Bold: true}, {Text: m.Words.Number(m.mm(hole.FromLeftMM)), Bold: true},
			{Text: m.Words.Number(m.mm(hole.FromTopMM))}, {Text: m.Show(hole.Row + 1)}, {Text: m.Show(hole.Column + 1)},
		})
	}
	return t
}

// Marks of the rear map as levels of a field.
const (
	openMark uint8 = iota
	shortMark
	voidMark
)

// Where things stand on a rear map, in mm.
const (
	rearSide   = 11.0 // beside the back, for the numbers of rows
	rearArrow  = 9.0  // of the arrow and the triangle above it
	rearColumn = 6.2  // of the numbers of the columns, between the back and the labels above it
	rearLeader = 6.0  // of the bent part of a line from a ring to its label
	rearApart  = 8.4  // between labels of rings: two figures fit side by side
	rearBelow  = 1    // rows that are drawn below cleat and screws
	rearCut    = 2.5  // of the broken edge where the rest is left out
)

// rearRows is how many rows of a back are drawn: those that cleat and screws lie on and a
// few more. The rest has no screw, and left out it lets the upper part be large.
func (b back) rearRows() int {
	rows := int(math.Ceil(b.Foot.Millimetres()/b.PitchMM)) + rearBelow
	for _, row := range b.Row.Rows {
		rows = max(rows, row+1+rearBelow)
	}
	return min(rows, b.Grid.Rows)
}

// rearDrawing is the back: hatched where a block is too short for the screw, black
// where there is none, ringed where to screw, each ring with its distance from the left
// edge of the back.
func (m *maker) rearDrawing(i int, b back, width float64) sheet.Drawing {
	rows := b.rearRows()
	wide, tall := b.FieldMM(), float64(rows)*b.PitchMM
	above, below := m.ringLabels(b, 1) // whose height does not depend on the scale
	top, foot := rearArrow+rearColumn+m.labelHeight(above), m.labelHeight(below)
	if rows < b.Grid.Rows {
		foot += rearCut
	}
	const around = 126 // what else stands on the sheet, with its head and foot
	k := fitted(wide, tall, width-2*rearSide, min(m.either(110, 44), m.Format.Height-around-top-foot))
	w, h := k.of(wide), k.of(tall)
	above, below = m.ringLabels(b, k)
	return sheet.Drawing{
		Name: m.name("rear-map", i), Title: m.T("rear/title"), View: sheet.Rear, Width: width, Height: top + h + foot + 8,
		Draw: func(p sheet.Pen) {
			left := (width - w) / 2
			o := p.In(left, top, w+rearSide, h+8)
			m.rearCells(o, b, rows, k)
			p.Group("rear-field", func() { o.Box(0, 0, w, h, draw.Outline) })
			if rows < b.Grid.Rows {
				m.cutOff(p.In(left, top+h, w, rearCut))
			}
			m.cleatBand(o, b, k)
			m.rings(p, b, k, left, top)
			m.writeLabels(p, above, left, top-rearColumn, -1)
			m.writeLabels(p, below, left, top+h+foot-m.labelHeight(below), 1)
			m.rearNumbers(p, b, rows, k, left, top)
			m.turnArrow(p.In(left, 0, width-left-2, rearArrow-2), left+w/2, m.T("rearing/turned"))
			m.scaleBar(p.In(left, top+h+foot+2.5, width-left, scaleHeight), k)
		},
	}
}

// cutOff is the broken edge below which the back goes on without being drawn.
func (m *maker) cutOff(p sheet.Pen) {
	const step = 6.0
	for x := 0.0; x+step <= p.Width; x += step {
		p.Line(x, 0, x+step/2, p.Height, draw.Fine)
		p.Line(x+step/2, p.Height, x+step, 0, draw.Fine)
	}
}

// rings are the screws.
func (m *maker) rings(p sheet.Pen, b back, k scale, left, top float64) {
	for _, hole := range b.Holes(b.Row) {
		x, y := left+k.of(hole.FromLeftMM), top+k.of(hole.FromTopMM)
		r := ringRadius(b, k)
		p.Fill(x-r, y-r, 2*r, 2*r, sheet.White())
		p.Group("ring", func() { p.Circle(x, y, r, draw.Heavy) })
		p.Line(x-r/2, y, x+r/2, y, draw.Fine)
		p.Line(x, y-r/2, x, y+r/2, draw.Fine)
	}
}

func ringRadius(b back, k scale) float64 { return max(1.4, k.of(b.PitchMM*0.3)) }

// ringLabel is what stands at a ring: its number, and its distance from the left edge. It
// stands beside the others of its row, on a line from its ring.
type ringLabel struct {
	number, distance string
	x, from          float64 // of the ring; and how far it lies from the drawn field's edge
	at               float64 // of the label, from the left edge of the field
}

// ringLabels are those of the upper row, above the field, and of a lower one, below it.
func (m *maker) ringLabels(b back, k scale) (above, below []ringLabel) {
	tall := float64(b.rearRows()) * b.PitchMM
	for n, hole := range b.Holes(b.Row) {
		l := ringLabel{number: fmt.Sprint(n + 1), distance: m.Words.Number(m.mm(hole.FromLeftMM)), x: k.of(hole.FromLeftMM)}
		l.at = l.x
		if hole.Row == b.Row.Rows[0] {
			l.from = rearColumn + k.of(hole.FromTopMM) - ringRadius(b, k)
			above = append(above, l)
		} else {
			l.from = k.of(tall-hole.FromTopMM) - ringRadius(b, k)
			below = append(below, l)
		}
	}
	spread(above, k.of(b.FieldMM()))
	spread(below, k.of(b.FieldMM()))
	return above, below
}

// spread moves labels apart until none stands in another, within a width.
func spread(all []ringLabel, width float64) {
	slices.SortFunc(all, func(a, b ringLabel) int { return cmp.Compare(a.x, b.x) })
	apart := rearApart
	if n := len(all); n > 1 {
		apart = min(apart, width/float64(n-1))
	}
	for i := 1; i < len(all); i++ {
		all[i].at = max(all[i].at, all[i-1].at+apart)
	}
	for i := len(all) - 1; i >= 0; i-- {
		end := width
		if i+1 < len(all) {
			end = all[i+1].at - apart
		}
		all[i].at = min(all[i].at, end)
	}
}

// labelHeight is what labels of rings take above or below a field.
func (m *maker) labelHeight(all []ringLabel) float64 {
	if len(all) == 0 {
		return 0
	}
	long := 0.0
	for _, l := range all {
		long = max(long, sheet.Width(sheet.Bold, armSize(), l.distance))
	}
	return rearLeader + armFigure + 3 + long + 2
}

// writeLabels writes labels above (way -1) or below (way 1) an edge of a field at y.
func (m *maker) writeLabels(p sheet.Pen, all []ringLabel, left, y, way float64) {
	for _, l := range all {
		x, at := left+l.x, left+l.at
		p.Line(x, y-way*l.from, x, y+way*1.5, draw.Fine)
		p.Line(x, y+way*1.5, at, y+way*rearLeader, draw.Fine)
		number, distance := y-rearLeader-1, y-rearLeader-armFigure-3
		if way > 0 {
			number = y + rearLeader + 1 + armFigure
			distance = number + 2 + sheet.Width(sheet.Bold, armSize(), l.distance)
		}
		p.Text(at, number, sheet.Type{Size: armSize(), Align: sheet.Middle, Class: "ring-number"}, l.number)
		p.TextUp(at+armFigure/2, distance, sheet.Type{Size: armSize(), Face: sheet.Bold, Class: "ring-distance"}, l.distance)
	}
}

func (m *maker) rearCells(o sheet.Pen, b back, rows int, k scale) {
	columns := b.Grid.Columns
	marks := make([]uint8, rows*columns)
	for row := range rows {
		for column := range columns {
			mark := map[wall.Cell]uint8{wall.Safe: openMark, wall.Short: shortMark, wall.Void: voidMark}[b.Mark(row, column, b.Row.ScrewMM)]
			marks[row*columns+columns-1-column] = mark
		}
	}
	f := draw.Field{Columns: columns, Rows: rows, Levels: marks, Pitch: k.of(b.PitchMM)}
	hatch := o.Hatch(1, 3)
	o.Group("short", func() { o.Cells(0, 0, f, shortMark, hatch) })
	o.Group("void", func() { o.Cells(0, 0, f, voidMark, sheet.Black()) })
	var lines [][4]float64
	w, h := f.Pitch*float64(columns), f.Pitch*float64(rows)
	for column := 1; column < columns; column++ {
		lines = append(lines, [4]float64{float64(column) * f.Pitch, 0, float64(column) * f.Pitch, h})
	}
	for row := 1; row < rows; row++ {
		lines = append(lines, [4]float64{0, float64(row) * f.Pitch, w, float64(row) * f.Pitch})
	}
	o.Grid(draw.Fine, lines...)
}

// rearNumbers are the columns as in front, so they run backwards, and the rows.
func (m *maker) rearNumbers(p sheet.Pen, b back, rows int, k scale, x, y float64) {
	const every, pad = 5, 0.3
	size := armSize()
	for column := range b.Grid.Columns {
		if n := column + 1; n%every == 0 || n == 1 {
			text, at := fmt.Sprint(n), x+k.of(b.RearX(column))
			half := sheet.Width(sheet.Regular, size, text) / 2
			p.Fill(at-half-pad, y-0.8-armFigure-pad, 2*half+2*pad, armFigure+2*pad, sheet.White()) // over a line from a ring
			p.Text(at, y-0.8, sheet.Type{Size: size, Align: sheet.Middle, Class: "column"}, text)
		}
	}
	// Those of the screws first, then the others where there is room.
	var written []float64
	write := func(row int) {
		middle := y + k.of(b.RowY(row))
		if !slices.ContainsFunc(written, func(other float64) bool { return math.Abs(other-middle) < armFigure+0.3 }) {
			written = append(written, middle)
			p.Text(x-1, middle+armFigure/2, sheet.Type{Size: size, Align: sheet.Right, Class: "row"}, fmt.Sprint(row+1))
		}
	}
	for _, row := range b.Row.Rows {
		write(row)
	}
	for row := range rows {
		if n := row + 1; n%every == 0 || n == 1 {
			write(row)
		}
	}
}

// cleatBand is where the cleat lies.
func (m *maker) cleatBand(o sheet.Pen, b back, k scale) {
	for _, part := range b.hanging.Built.Panels[0].Parts {
		if part.Kind != panel.CleatPart {
			continue
		}
		wide, high := k.of(part.Width.Millimetres()), k.of(part.Height.Millimetres())
		o.DashedBox((k.of(b.FieldMM())-wide)/2, k.of(b.Foot.Millimetres())-high, wide, high, draw.Outline)
	}
}

// turnArrow shows that the panel was turned over its upright edge, like a page; the
// triangle points to its top.
func (m *maker) turnArrow(p sheet.Pen, middle float64, text string) {
	middle = min(middle, p.Width-70)
	p.Polygon(draw.Fine, sheet.Black(), middle-3, p.Height, middle+3, p.Height, middle, p.Height-5)
	p.Line(p.Width-34, 3, p.Width-2, 3, draw.Outline)
	p.Polygon(draw.Fine, sheet.Black(), p.Width, 3, p.Width-3, 1.8, p.Width-3, 4.2)
	p.Text(p.Width-36, 4, sheet.Type{Size: sheet.SmallSize, Align: sheet.Right}, sheet.Fit(sheet.Regular, sheet.SmallSize, p.Width-middle-42, text))
}
