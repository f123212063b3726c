package draw

import (
	"fmt"
	"math"
)

// Polygon returns the path data of a closed line through points, given as x
// and y in turn.
func Polygon(xy ...float64) string { return string(append(polyline(xy), 'z')) }

// Polyline returns the path data of an open line through points, given as x
// and y in turn.
func Polyline(xy ...float64) string { return string(polyline(xy)) }

func polyline(xy []float64) []byte {
	if len(xy) < 4 || len(xy)%2 != 0 {
		panic(fmt.Sprintf("draw: internal error: line through %d numbers", len(xy)))
	}
	var b []byte
	for i := 0; i < len(xy); i += 2 {
		op := byte('L')
		if i == 0 {
			op = 'M'
		}
		b = appendPoint(append(b, op), hundredths(xy[i]), hundredths(xy[i+1]))
	}
	return b
}

func appendPoint(b []byte, x, y int64) []byte {
	return appendHundredths(append(appendHundredths(b, x), ' '), y)
}

// Field is a grid of cells to be drawn, one path for each height: a thousand
// elements would take a page longer to lay out than the whole plan to compute.
type Field struct {
	Columns, Rows int
	// Levels holds one level for each cell, row by row from the top left.
	Levels []uint8
	// Pitch is the distance from cell to cell, and Inset how far the drawn
	// square stays inside its cell on every side: half the slack, or 0 for
	// squares that touch.
	Pitch, Inset float64
}

// Path returns the path data of all cells of one level, empty when there is
// none. Neighbours in a row become one rectangle where squares touch.
func (f Field) Path(level uint8) string {
	if len(f.Levels) != f.Columns*f.Rows {
		panic(fmt.Sprintf("draw: internal error: %d levels for %d × %d cells", len(f.Levels), f.Columns, f.Rows))
	}
	w := fieldPath{f: f}
	for row := range f.Rows {
		cells := f.Levels[row*f.Columns : (row+1)*f.Columns]
		for col := 0; col < len(cells); {
			end := col + 1
			if cells[col] == level {
				end = f.runEnd(cells, col)
				w.rect(row, col, end)
			}
			col = end
		}
	}
	return string(w.b)
}

// Marked is a field that has a small square in the middle of each of some cells, as level 1.
func (f Field) Marked(has func(cell int) bool) Field {
	const inset = 0.34 // of the pitch, at each side
	marks := Field{Columns: f.Columns, Rows: f.Rows, Levels: make([]uint8, len(f.Levels)), Pitch: f.Pitch, Inset: inset * f.Pitch}
	for cell := range marks.Levels {
		if has(cell) {
			marks.Levels[cell] = 1
		}
	}
	return marks
}

// runEnd returns the column behind the cells that are drawn as one.
func (f Field) runEnd(cells []uint8, col int) int {
	end := col + 1
	for f.Inset == 0 && end < len(cells) && cells[end] == cells[col] {
		end++
	}
	return end
}

// Cell returns the box of the drawn square of a cell, counted from 0.
func (f Field) Cell(col, row int) Box {
	side := f.Pitch - 2*f.Inset
	return Box{float64(col)*f.Pitch + f.Inset, float64(row)*f.Pitch + f.Inset, side, side}
}

// Box returns the box of the whole field.
func (f Field) Box() Box {
	return Box{0, 0, float64(f.Columns) * f.Pitch, float64(f.Rows) * f.Pitch}
}

// fieldPath writes rectangles with relative moves. Edges are rounded where
// they are, not their distances, so that squares that touch still do and
// errors do not add up along a row.
type fieldPath struct {
	f    Field
	b    []byte
	x, y int64 // start of the last rectangle, to which "z" returns
}

func (w *fieldPath) rect(row, first, end int) {
	x, y := w.edge(first, w.f.Inset), w.edge(row, w.f.Inset)
	width, height := w.edge(end, -w.f.Inset)-x, w.edge(row+1, -w.f.Inset)-y
	w.b = append(w.b, 'm')
	w.b = appendPoint(w.b, x-w.x, y-w.y)
	w.b = appendHundredths(append(w.b, 'h'), width)
	w.b = appendHundredths(append(w.b, 'v'), height)
	w.b = appendHundredths(append(w.b, 'h'), -width)
	w.b = append(w.b, 'z')
	w.x, w.y = x, y
}

func (w *fieldPath) edge(n int, inset float64) int64 {
	return int64(math.Round((float64(n)*w.f.Pitch + inset) * 100))
}
