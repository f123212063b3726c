package sheet

import (
	"cmp"
	"slices"
	"strings"

	"blockfield/engine/draw"
)

// Column is one column of a table.
type Column struct {
	Head  string
	Width float64 // 0: as wide as what stands in it; of one that grows, what is left to it at least; no word of a head is broken
	Grow  bool    // takes what the others leave
	Right bool    // for numbers
}

// Cell is one field of a table.
type Cell struct {
	Text   string
	Bold   bool
	Size   float64   // of its type; 0: that of the table
	Tick   bool      // an empty box before the text
	Draw   func(Pen) // in place of text
	Height float64   // that Draw takes
}

// Row makes cells of plain texts.
func Row(texts ...string) []Cell {
	all := make([]Cell, len(texts))
	for i, t := range texts {
		all[i] = Cell{Text: t}
	}
	return all
}

// Table is rows under a head, which stands again on each sheet. A row is never
// split.
type Table struct {
	Columns []Column
	Rows    [][]Cell
	Size    float64  // of the type; 0: body text
	Least   float64  // height of a row, for what is to be written into it
	Grid    bool     // with upright lines between the columns
	Tight   bool     // its rows take no more than their figures
	Alike   [][]Cell // rows of tables beside it, whose columns are as wide as its own
}

const (
	padX      = 1.5
	padY      = 1.1
	leastGrow = 24 // of a column that takes what is left
	// leastColumn is what the columns of given widths leave to each of the others.
	leastColumn = 8
)

func (t Table) slabs(width float64) []slab {
	if len(t.Rows) == 0 {
		return nil
	}
	widths := t.widths(width)
	head := t.headSlab(widths)
	var all []slab
	if head != nil {
		all = append(all, *head)
	}
	for i, row := range t.Rows {
		s := t.rowSlab(row, widths)
		s.head = head
		if i == 0 && head == nil {
			s.gap = gapBlock
		}
		all = append(all, s)
	}
	return paired(all)
}

// padding is what stands above and below the text of a row, and leading how far its lines are
// apart.
func (t Table) padding() float64 {
	if t.Tight {
		return 0.3
	}
	return padY
}

func (t Table) leading(size float64) float64 {
	if t.Tight {
		return 1.08 * size
	}
	return Leading(size)
}

func (t Table) size() float64 { return Type{Size: t.Size}.size() }

// sizeOf is the size of the type of a cell.
func (t Table) sizeOf(c Cell) float64 {
	if c.Size > 0 {
		return c.Size
	}
	return t.size()
}

// widths are those of the columns: fixed ones as they are, the others as wide as
// their text, made narrower together where that is too much.
func (t Table) widths(width float64) []float64 {
	out := make([]float64, len(t.Columns))
	fixed, natural, grow, growing, least := 0.0, 0.0, 0, 0.0, 0.0
	for i, c := range t.Columns {
		switch {
		case c.Grow:
			grow++
			growing += cmp.Or(c.Width, leastGrow)
		case c.Width > 0:
			out[i] = max(c.Width, c.headWidth())
			fixed += out[i]
		default:
			out[i] = t.natural(i)
			natural += out[i]
			least += min(leastColumn, width/float64(2*len(t.Columns)))
		}
	}
	growing = min(growing, width/2)
	if room := width - growing - min(natural, least); fixed > room {
		for i, c := range t.Columns {
			if c.Width > 0 && !c.Grow {
				out[i] *= room / fixed
			}
		}
		fixed = room
	}
	room := width - fixed - growing
	if natural > room && natural > 0 {
		for i, c := range t.Columns {
			if c.Width == 0 && !c.Grow {
				out[i] *= room / natural
			}
		}
		natural = room
	}
	rest := width - fixed - natural
	for i, c := range t.Columns {
		if c.Grow {
			out[i] = rest / float64(grow)
		}
	}
	if grow == 0 && rest > 0 {
		for i := range out {
			out[i] *= width / (width - rest)
		}
	}
	return out
}

// natural is how wide the texts of a column are; its head may break at spaces.
func (t Table) natural(column int) float64 {
	widest := t.Columns[column].headWidth()
	for _, row := range slices.Concat(t.Rows, t.Alike) {
		c := row[column]
		w := Width(c.face(), t.sizeOf(c), Plain(c.Text))
		if c.Tick {
			w += TickSize + padX
		}
		widest = max(widest, w+columnPad)
	}
	return widest
}

// columnPad is what a column has beside its widest text.
const columnPad = 2*padX + 0.1

// headWidth is how wide a column is in which no word of its head is broken.
func (c Column) headWidth() float64 {
	widest := 0.0
	for _, word := range strings.Fields(c.Head) {
		widest = max(widest, Width(Bold, headSize, word)+columnPad)
	}
	return widest
}

func (c Cell) face() Face {
	if c.Bold {
		return Bold
	}
	return Regular
}

const headSize = SmallSize

// headSlab is the head; nil where no column has one.
func (t Table) headSlab(widths []float64) *slab {
	height := 0.0
	for i, c := range t.Columns {
		height = max(height, TextHeight(Bold, headSize, widths[i]-2*padX, c.Head))
	}
	if height == 0 {
		return nil
	}
	height += 2 * padY
	return &slab{height: height, gap: gapBlock, keep: true, draw: func(p Pen) {
		x := 0.0
		for i, c := range t.Columns {
			area := p.In(x+padX, padY, widths[i]-2*padX, height-2*padY)
			area.Lines(Type{Size: headSize, Face: Bold, Align: c.align()}, c.Head)
			x += widths[i]
		}
		p.Line(0, height, p.Width, height, draw.Outline)
		t.uprights(p, widths)
	}}
}

func (c Column) align() Align {
	if c.Right {
		return Right
	}
	return Left
}

func (t Table) rowSlab(row []Cell, widths []float64) slab {
	lines := make([][]string, len(row))
	height := t.Least
	for i, c := range row {
		w := t.textWidth(c, widths[i])
		lines[i] = bounded(c.face(), t.sizeOf(c), w, c.Text)
		height = max(height, float64(len(lines[i]))*t.leading(t.sizeOf(c))+2*t.padding(), c.Height+2*t.padding())
		if c.Tick {
			height = max(height, TickSize+2*t.padding())
		}
	}
	return slab{height: height, draw: func(p Pen) {
		x := 0.0
		for i, c := range row {
			t.cell(p.In(x, 0, widths[i], height), c, t.Columns[i], lines[i])
			x += widths[i]
		}
		p.Line(0, height, p.Width, height, draw.Fine)
		t.uprights(p, widths)
	}}
}

func (t Table) textWidth(c Cell, width float64) float64 {
	width -= 2 * padX
	if c.Tick {
		width -= TickSize + padX
	}
	return max(width, 1)
}

func (t Table) cell(p Pen, c Cell, column Column, lines []string) {
	if c.Draw != nil {
		c.Draw(p.In(padX, padY, p.Width-2*padX, p.Height-2*padY))
		return
	}
	size := t.sizeOf(c)
	x := padX
	first := t.padding() + baseline(size)
	if t.Tight { // figures, in the middle of the row
		first = (p.Height + capHeight*size - float64(max(len(lines)-1, 0))*t.leading(size)) / 2
	}
	if c.Tick {
		p.Tick(padX, max(first, t.padding()+TickSize-0.4))
		x += TickSize + padX
	}
	kind := Type{Size: size, Face: c.face(), Align: column.align()}
	if column.Right {
		x = p.Width - padX
	}
	for i, line := range lines {
		p.Text(x, first+float64(i)*t.leading(size), kind, line)
	}
}

// uprights are the lines between columns to be written into.
func (t Table) uprights(p Pen, widths []float64) {
	if !t.Grid {
		return
	}
	x := 0.0
	for i := 0; i <= len(widths); i++ {
		p.Line(x, 0, x, p.Height, draw.Fine)
		if i < len(widths) {
			x += widths[i]
		}
	}
}
