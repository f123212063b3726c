package sound

// manyLevels is where summing every cell by itself becomes faster than a pass
// for each few levels.
const manyLevels = 16

// gridSum is the transform of a grid of cells: for each level l
//
//	F_l(α, β) = Σ_mn [level(m, n) = l]·exp(j·(α·x_m + β·y_n)).
//
// Rows that mirror each other at the middle are folded as the cells of a line
// are: their sum goes with the cosine of β·y, their difference with the sine.
// One pass over a quarter of the cells so yields F at (α, β) and at (α, −β); the
// conjugates are F at the opposite directions. As in lineSum, the last level is
// what the others leave of the grid without blocks.
type gridSum struct {
	columns, rows    int
	levels           int
	pairs            []rowPair // from the middle outwards
	cos, sin         []float64 // of the columns, from the middle outwards
	cosRows, sinRows []float64 // of the rows
	parts            []complex128
	cells            []uint16 // the level of each, where there are many levels; else nil
}

// rowPair is two rows that mirror each other at the middle of a grid.
type rowPair struct{ sum, difference foldedLine }

func newGridSum(s Surface) *gridSum {
	g := &gridSum{columns: s.Columns, rows: s.Rows, levels: len(s.HeightsM)}
	half, halfRows := (s.Columns+1)/2, (s.Rows+1)/2
	g.cos, g.sin = make([]float64, half), make([]float64, half)
	g.cosRows, g.sinRows = make([]float64, halfRows), make([]float64, halfRows)
	g.parts = make([]complex128, max(s.Columns, 2*g.levels))
	if g.levels > manyLevels {
		g.cells = s.Levels
		return g
	}
	for i := range halfRows {
		g.pairs = append(g.pairs, s.fold(i))
	}
	return g
}

// fold folds the rows that lie i rows above and below the middle.
func (s Surface) fold(i int) rowPair {
	sum, difference := make([][]float64, s.Columns), make([][]float64, s.Columns)
	for m := range s.Columns {
		sum[m], difference[m] = make([]float64, len(s.HeightsM)), make([]float64, len(s.HeightsM))
	}
	upper, lower := (s.Rows-1)/2-i, s.Rows/2+i // y grows upwards, rows grow downwards
	for m, l := range s.Levels[upper*s.Columns : (upper+1)*s.Columns] {
		sum[m][l]++
		difference[m][l]++
	}
	if lower > upper {
		for m, l := range s.Levels[lower*s.Columns : (lower+1)*s.Columns] {
			sum[m][l]++
			difference[m][l]--
		}
	}
	return rowPair{foldLine(sum), foldLine(difference)}
}

// at writes the transforms of every level for the phases α and β from cell to
// cell, and those for α and −β.
func (g *gridSum) at(alpha, beta float64, up, down []complex128) {
	across := series(towards(alpha/2), g.columns, g.cos, g.sin)
	upwards := series(towards(beta/2), g.rows, g.cosRows, g.sinRows)
	clear(up)
	clear(down)
	if g.cells != nil {
		g.eachCell(up, down)
		return
	}
	last := g.levels - 1
	even, odd := g.parts[:last], g.parts[last:2*last]
	for i, pair := range g.pairs {
		pair.sum.at(g.cos, g.sin, even)
		pair.difference.at(g.cos, g.sin, odd)
		c, s := g.cosRows[i], g.sinRows[i]
		for l, e := range even {
			er, ei, or, oi := c*real(e), c*imag(e), s*real(odd[l]), s*imag(odd[l])
			up[l] += complex(er-oi, ei+or)
			down[l] += complex(er+oi, ei-or)
		}
	}
	up[last], down[last] = complex(across*upwards, 0), complex(across*upwards, 0)
	for l := range last {
		up[last] -= up[l]
		down[last] -= down[l]
	}
}

// eachCell sums the cells one by one.
func (g *gridSum) eachCell(up, down []complex128) {
	parts := g.parts[:g.columns]
	for j := range parts {
		parts[j] = placeOf(j, g.columns, g.cos, g.sin)
	}
	for i := range g.rows {
		y := placeOf(g.rows-1-i, g.rows, g.cosRows, g.sinRows) // y grows upwards
		for j, level := range g.cells[i*g.columns : (i+1)*g.columns] {
			up[level] += parts[j] * y
			down[level] += parts[j] * conj(y)
		}
	}
}

// placeOf returns exp(j·α·x) of one place of a line of n.
func placeOf(place, n int, cosines, sines []float64) complex128 {
	if distance := place - n/2; distance >= 0 {
		return complex(cosines[distance], sines[distance])
	}
	distance := (n-1)/2 - place
	return complex(cosines[distance], -sines[distance])
}
