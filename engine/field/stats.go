package field

// Counts returns how many cells have each level.
func (g Grid) Counts() []int {
	counts := make([]int, g.Heights)
	for _, level := range g.Levels {
		counts[level]++
	}
	return counts
}

// Run is a straight bar of equal heights; Row and Column, from 0, are its
// first cell.
type Run struct {
	Length      int
	Down        bool // along a column instead of a row
	Row, Column int
	Level       uint8
}

// LongestRun returns the longest straight bar of equal heights, the first one
// met row by row and then column by column.
func (g Grid) LongestRun() Run {
	var best Run
	g.eachRun(func(r Run) {
		if r.Length > best.Length {
			best = r
		}
	})
	return best
}

// Runs returns all straight bars of at least so many equal heights, row by row and
// then column by column.
func (g Grid) Runs(least int) []Run {
	var all []Run
	g.eachRun(func(r Run) {
		if r.Length >= least {
			all = append(all, r)
		}
	})
	return all
}

// Holds reports whether a cell is part of the run.
func (r Run) Holds(row, column int) bool {
	if r.Down {
		return column == r.Column && row >= r.Row && row < r.Row+r.Length
	}
	return row == r.Row && column >= r.Column && column < r.Column+r.Length
}

// eachRun calls f for each straight bar, as long as it is.
func (g Grid) eachRun(f func(Run)) {
	for i := range g.Rows {
		for j := 0; j < g.Columns; {
			n := 1
			for j+n < g.Columns && g.At(i, j+n) == g.At(i, j) {
				n++
			}
			f(Run{Length: n, Row: i, Column: j, Level: g.At(i, j)})
			j += n
		}
	}
	for j := range g.Columns {
		for i := 0; i < g.Rows; {
			n := 1
			for i+n < g.Rows && g.At(i+n, j) == g.At(i, j) {
				n++
			}
			f(Run{Length: n, Down: true, Row: i, Column: j, Level: g.At(i, j)})
			i += n
		}
	}
}

// Period returns the smallest shift, in columns and in rows, that lays the
// field over itself; a direction without one has the field's own size.
func (g Grid) Period() (columns, rows int) {
	columns, rows = g.Columns, g.Rows
	for p := 1; p < g.Columns; p++ {
		if g.repeatsAfter(0, p) {
			columns = p
			break
		}
	}
	for p := 1; p < g.Rows; p++ {
		if g.repeatsAfter(p, 0) {
			rows = p
			break
		}
	}
	return columns, rows
}

func (g Grid) repeatsAfter(rows, columns int) bool {
	for i := rows; i < g.Rows; i++ {
		for j := columns; j < g.Columns; j++ {
			if g.At(i, j) != g.At(i-rows, j-columns) {
				return false
			}
		}
	}
	return true
}

// Repeats returns how many times the pattern stands whole in the field, in the
// direction where it stands most often; 1 when it does not repeat. A direction
// along which nothing changes, as along stripes, does not count.
func (g Grid) Repeats() int {
	columns, rows := g.Period()
	repeats := 1
	if columns > 1 {
		repeats = max(repeats, g.Columns/columns)
	}
	if rows > 1 {
		repeats = max(repeats, g.Rows/rows)
	}
	return repeats
}

// neighbours calls f for each pair of neighbouring cells, across and down, with their
// levels.
func (g Grid) neighbours(f func(a, b uint8)) {
	for i := range g.Rows {
		for j := range g.Columns {
			level := g.At(i, j)
			if j+1 < g.Columns {
				f(level, g.At(i, j+1))
			}
			if i+1 < g.Rows {
				f(level, g.At(i+1, j))
			}
		}
	}
}

// StepSum returns Σ |h(a) − h(b)| over neighbouring cells, in the unit of
// heights, which has one entry for each level. Times the width of a block it is
// the area of the sides that can be seen and finished inside the field.
func (g Grid) StepSum(heights []float64) float64 {
	pairs := make([]int, g.Heights*g.Heights)
	g.neighbours(func(a, b uint8) { pairs[int(a)*g.Heights+int(b)]++ })
	var sum float64
	for a := range g.Heights {
		for b := range g.Heights {
			step := heights[a] - heights[b]
			if step < 0 {
				step = -step
			}
			sum += float64(pairs[a*g.Heights+b]) * step
		}
	}
	return sum
}
