package field

import "blockfield/engine/design"

// transform turns, mirrors and swaps a field. Drawn fields are shifted here,
// the computed ones were shifted while they were laid.
func transform(g Grid, p design.Pattern) Grid {
	if p.Kind == design.Drawn {
		g = roll(g, p.ShiftRows, p.ShiftColumns)
	}
	for range p.Turn / 90 {
		g = g.turned()
	}
	if p.Mirror {
		g = g.mirrored()
	}
	if p.Counter {
		g = g.Counter()
	}
	return g
}

// roll shifts the field cyclically: the cell at (0, 0) is the one that was at
// (rows, columns).
func roll(g Grid, rows, columns int) Grid {
	if rows == 0 && columns == 0 {
		return g
	}
	return g.mapped(g.Columns, g.Rows, func(i, j int) (int, int) {
		return wrap(i+rows, g.Rows), wrap(j+columns, g.Columns)
	})
}

func wrap(i, n int) int { return ((i % n) + n) % n }

// mapped returns a field whose cell (i, j) is the one at from(i, j) of g.
func (g Grid) mapped(columns, rows int, from func(i, j int) (int, int)) Grid {
	out := newGrid(columns, rows, g.Heights)
	for i := range rows {
		for j := range columns {
			out.Levels[i*columns+j] = g.At(from(i, j))
		}
	}
	return out
}

// turned returns the field turned clockwise by a quarter.
func (g Grid) turned() Grid {
	return g.mapped(g.Rows, g.Columns, func(i, j int) (int, int) { return g.Rows - 1 - j, i })
}

func (g Grid) mirrored() Grid {
	return g.mapped(g.Columns, g.Rows, func(i, j int) (int, int) { return i, g.Columns - 1 - j })
}

// HalfTurn returns the field turned by 180°.
func (g Grid) HalfTurn() Grid { return g.turned().turned() }

// Counter returns the counter-panel: heights swapped from end to end, level k
// becoming K−1−k.
func (g Grid) Counter() Grid {
	out := newGrid(g.Columns, g.Rows, g.Heights)
	for n, level := range g.Levels {
		out.Levels[n] = uint8(g.Heights-1) - level
	}
	return out
}
