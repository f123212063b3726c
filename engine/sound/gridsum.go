package sound

// gridLanes is how many levels one pass over a grid sums at a time: each takes
// four sums.
const gridLanes = 2

// manyLevels is where summing every cell by itself becomes faster than a pass
// for each pair of levels.
const manyLevels = 16

// gridSum is the transform of a grid of cells: for each level l
//
//	F_l(α, β) = Σ_mn [level(m, n) = l]·exp(j·(α·x_m + β·y_n)).
//
// The four cells that mirror each other at the two middles are folded into the
// sums that go with cos·cos, sin·cos, cos·sin and sin·sin, so that one pass over
// a quarter of the cells yields F at (α, β) and at (α, −β); the conjugates are F
// at the opposite directions. As in lineSum, the last level is what the others
// leave of the grid without blocks.
type gridSum struct {
	columns, rows int
	levels        int
	blocks        [][]float64 // for each gridLanes levels, row after row from the middle: 4 numbers a level and place
	cos, sin      []float64   // of the columns, from the middle outwards
	cosRows       []float64   // of the rows
	sinRows       []float64
	cells         []uint16 // the level of each, where there are many levels; else nil
	parts         []complex128
}

func newGridSum(s Surface) *gridSum {
	g := &gridSum{columns: s.Columns, rows: s.Rows, levels: len(s.HeightsM)}
	half := (s.Columns + 1) / 2
	g.cos, g.sin = make([]float64, half), make([]float64, half)
	g.cosRows, g.sinRows = make([]float64, (s.Rows+1)/2), make([]float64, (s.Rows+1)/2)
	if g.levels > manyLevels {
		g.cells, g.parts = s.Levels, make([]complex128, s.Columns)
		return g
	}
	for first := 0; first < g.levels-1; first += gridLanes {
		g.blocks = append(g.blocks, g.fold(s, first))
	}
	return g
}

// fold folds the levels from first on.
func (g *gridSum) fold(s Surface, first int) []float64 {
	half := (g.columns + 1) / 2
	block := make([]float64, (g.rows+1)/2*half*4*gridLanes)
	for i := range g.rows {
		y, up := mirrored(g.rows-1-i, g.rows) // y grows upwards, rows grow downwards
		for j := range g.columns {
			l := int(s.Levels[i*g.columns+j]) - first
			if l < 0 || l >= gridLanes || l+first == g.levels-1 {
				continue
			}
			x, right := mirrored(j, g.columns)
			at := block[((y*half+x)*gridLanes+l)*4:]
			at[0]++
			at[1] += right
			at[2] += up
			at[3] += right * up
		}
	}
	return block
}

// mirrored returns how far a place is from the middle of n, in places, and on
// which side: +1, −1, or 0 for the middle itself.
func mirrored(place, n int) (distance int, side float64) {
	upper, lower := place-n/2, (n-1)/2-place
	switch {
	case upper == lower:
		return 0, 0
	case upper >= 0:
		return upper, 1
	default:
		return lower, -1
	}
}

// at writes the transforms of every level for the phases α and β from cell to
// cell, and those for α and −β.
func (g *gridSum) at(alpha, beta float64, up, down []complex128) {
	across := series(towards(alpha/2), g.columns, g.cos, g.sin)
	upwards := series(towards(beta/2), g.rows, g.cosRows, g.sinRows)
	if g.cells != nil {
		g.eachCell(up, down)
		return
	}
	all := complex(across*upwards, 0)
	lastUp, lastDown := all, all
	for b, block := range g.blocks {
		sums := g.sum(block)
		for i := range min(gridLanes, g.levels-1-b*gridLanes) {
			l, s := b*gridLanes+i, sums[4*i:4*i+4]
			up[l], down[l] = complex(s[0]-s[3], s[1]+s[2]), complex(s[0]+s[3], s[1]-s[2])
			lastUp -= up[l]
			lastDown -= down[l]
		}
	}
	up[g.levels-1], down[g.levels-1] = lastUp, lastDown
}

// sum runs over the quarter of the cells for gridLanes levels and returns, for
// each, the sums with cos·cos, sin·cos, cos·sin and sin·sin.
func (g *gridSum) sum(block []float64) (out [4 * gridLanes]float64) {
	const width = 4 * gridLanes
	cosines, sines := g.cos, g.sin[:len(g.cos)]
	for n, cy := range g.cosRows {
		sy := g.sinRows[n]
		row := block[n*width*len(cosines):][:width*len(cosines)]
		var a0, b0, c0, d0, a1, b1, c1, d1 float64
		for m, c := range cosines {
			s, f := sines[m], (*[width]float64)(row[width*m:])
			a0 += f[0] * c
			b0 += f[1] * s
			c0 += f[2] * c
			d0 += f[3] * s
			a1 += f[4] * c
			b1 += f[5] * s
			c1 += f[6] * c
			d1 += f[7] * s
		}
		out[0] += cy * a0
		out[1] += cy * b0
		out[2] += sy * c0
		out[3] += sy * d0
		out[4] += cy * a1
		out[5] += cy * b1
		out[6] += sy * c1
		out[7] += sy * d1
	}
	return out
}

// eachCell sums the cells one by one.
func (g *gridSum) eachCell(up, down []complex128) {
	clear(up)
	clear(down)
	for j := range g.parts {
		g.parts[j] = placeOf(j, g.columns, g.cos, g.sin)
	}
	for i := range g.rows {
		y := placeOf(g.rows-1-i, g.rows, g.cosRows, g.sinRows) // y grows upwards
		for j, level := range g.cells[i*g.columns : (i+1)*g.columns] {
			up[level] += g.parts[j] * y
			down[level] += g.parts[j] * conj(y)
		}
	}
}

// placeOf returns exp(j·α·x) of one place of a line.
func placeOf(place, n int, cosines, sines []float64) complex128 {
	distance, side := mirrored(place, n)
	return complex(cosines[distance], side*sines[distance])
}
