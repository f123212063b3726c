package papers

import (
	"fmt"
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
		name := m.T("rear/panels", "letter", string(b.letter), "numbers", strings.Join(b.panels, ", "))
		if len(m.Plan.Groups) > 1 {
			name = m.T("cards/group", "group", m.groupName(b.group), "panel", name)
		}
		blocks = append(blocks, sheet.Fresh(append([]sheet.Block{sheet.Heading(name)}, m.rearBlocks(i, b)...)))
	}
	if len(blocks) > 0 {
		blocks = append(blocks, m.cautions("wall/too-few-cells")...)
	}
	return m.paper("rear-map", sheet.Rear, blocks...)
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
	if _, together := m.rearHigh(len(b.Holes(b.Row))); !together {
		return append(blocks, sheet.Fresh{m.ringTable(b)})
	}
	return append(blocks, m.ringTable(b))
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

// ringHeight is that of a row of the table of screws.
const ringHeight = 7.5

// ringTable is where each screw goes, from the rear's own left edge.
func (m *maker) ringTable(b back) sheet.Block {
	t := sheet.Table{Least: ringHeight, Columns: []sheet.Column{
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

// rearDrawing is the back: hatched where a block is too short for the screw, black
// where there is none, ringed where to screw.
func (m *maker) rearDrawing(i int, b back, width float64) sheet.Drawing {
	const side, top = 9.0, 15.0
	high, _ := m.rearHigh(len(b.Holes(b.Row)))
	wide, tall := b.FieldMM(), float64(b.Grid.Rows)*b.PitchMM
	k := fitted(wide, tall, width-2*side, high)
	w, h := k.of(wide), k.of(tall)
	return sheet.Drawing{
		Name: m.name("rear-map", i), Title: m.T("rear/title"), Width: width, Height: top + h + 8,
		Draw: func(p sheet.Pen) {
			o := p.In(side, top, w+side, h+8)
			m.rearCells(o, b, k)
			p.Group("rear-field", func() { o.Box(0, 0, w, h, draw.Outline) })
			m.rearNumbers(p, b, k, side, top)
			m.cleatBand(o, b, k)
			m.rings(o, b, k)
			m.turnArrow(p.In(side, 0, width-2*side, top-8), side+w/2, m.T("rearing/turned"))
			m.scaleBar(p.In(side, top+h+2.5, width-side, scaleHeight), k)
		},
	}
}

// rearHigh is how high a back is drawn: so that its table stands below it, where the
// drawing does not become too small for that; or else on a sheet of its own, with the
// whole table on the next one.
func (m *maker) rearHigh(rings int) (high float64, together bool) {
	const most, least = 118, 80
	const beside, alone = 148, 142 // what else stands on the sheet
	if high = m.Format.Height - beside - ringHeight*float64(rings); high >= least {
		return min(high, most), true
	}
	return m.Format.Height - alone, false
}

// rings are the screws with their numbers, those of the upper row above them and
// those of a lower row below; a number that would run into another is left to the
// table.
func (m *maker) rings(o sheet.Pen, b back, k scale) {
	const size, apart = 2.8, 0.8
	radius := max(1.4, k.of(b.PitchMM*0.38))
	ends := map[int]float64{} // of the last number of each row
	for n, hole := range b.Holes(b.Row) {
		x, y := k.of(hole.FromLeftMM), k.of(hole.FromTopMM)
		o.Group("ring", func() { o.Circle(x, y, radius, draw.Heavy) })
		text := fmt.Sprint(n + 1)
		half := sheet.Width(sheet.Bold, size, text) / 2
		if end, ok := ends[hole.Row]; ok && x-half < end+apart {
			continue
		}
		foot := y - radius - 1
		if hole.Row != b.Row.Rows[0] || foot < size && len(b.Row.Rows) == 1 {
			foot = y + radius + 1 + 0.72*size
		}
		if foot < size {
			continue
		}
		ends[hole.Row] = x + half
		o.Fill(x-half-0.3, foot-0.72*size-0.3, 2*half+0.6, 0.72*size+0.6, sheet.White())
		o.Text(x, foot, sheet.Type{Size: size, Face: sheet.Bold, Align: sheet.Middle}, text)
	}
}

func (m *maker) rearCells(o sheet.Pen, b back, k scale) {
	columns := b.Grid.Columns
	marks := make([]uint8, len(b.Grid.Levels))
	for row := range b.Grid.Rows {
		for column := range columns {
			mark := map[wall.Cell]uint8{wall.Safe: openMark, wall.Short: shortMark, wall.Void: voidMark}[b.Mark(row, column, b.Row.ScrewMM)]
			marks[row*columns+columns-1-column] = mark
		}
	}
	f := draw.Field{Columns: columns, Rows: b.Grid.Rows, Levels: marks, Pitch: k.of(b.PitchMM)}
	hatch := o.Hatch(1, 3)
	o.Group("short", func() { o.Cells(0, 0, f, shortMark, hatch) })
	o.Group("void", func() { o.Cells(0, 0, f, voidMark, sheet.Black()) })
	var lines [][4]float64
	w, h := f.Pitch*float64(columns), f.Pitch*float64(b.Grid.Rows)
	for column := 1; column < columns; column++ {
		lines = append(lines, [4]float64{float64(column) * f.Pitch, 0, float64(column) * f.Pitch, h})
	}
	for row := 1; row < b.Grid.Rows; row++ {
		lines = append(lines, [4]float64{0, float64(row) * f.Pitch, w, float64(row) * f.Pitch})
	}
	o.Grid(draw.Fine, lines...)
}

// rearNumbers are the columns as in front, so they run backwards, and the rows.
func (m *maker) rearNumbers(p sheet.Pen, b back, k scale, x, y float64) {
	const every, type1 = 5, 2.6
	for column := range b.Grid.Columns {
		if n := column + 1; n%every == 0 || n == 1 {
			p.Text(x+k.of(b.RearX(column)), y-1, sheet.Type{Size: type1, Align: sheet.Middle}, fmt.Sprint(n))
		}
	}
	for row := range b.Grid.Rows {
		if n := row + 1; n%every == 0 || n == 1 {
			p.Text(x-1, y+k.of(b.RowY(row))+0.9, sheet.Type{Size: type1, Align: sheet.Right}, fmt.Sprint(n))
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
