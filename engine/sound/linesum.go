package sound

import "math"

// lanes is how many levels one pass over the cells sums at a time: their sums
// and the running cosine and sine just fill the registers of a processor.
const lanes = 4

// lineSum is the transform of a line of cells: for each level l
//
//	F_l(α) = Σ_m count_l(m)·exp(j·α·x_m), x_m = m − (n−1)/2,
//
// with α = k·w·u the phase from cell to cell. Cells that mirror each other at
// the middle are folded into their sum, which goes with the cosine, and their
// difference, which goes with the sine. The last level is what the others leave
// of the line without blocks, whose transform is known.
type lineSum struct {
	n      int // cells along the line
	across float64
	levels int
	blocks [][]float64 // for each lanes levels: for each pair of cells, lanes sums and lanes differences
	re, im []float64   // of one direction, padded to whole blocks
}

// newLineSum folds the counts of a line: counts[m][l] cells of level l at place
// m, of across cells in all at each place.
func newLineSum(counts [][]float64, across int) *lineSum {
	s := &lineSum{n: len(counts), across: float64(across), levels: len(counts[0])}
	passes := (s.levels - 1 + lanes - 1) / lanes
	s.re, s.im = make([]float64, passes*lanes+1), make([]float64, passes*lanes+1)
	for b := range passes {
		var block []float64
		for i := range (s.n + 1) / 2 {
			upper, lower := counts[s.n/2+i], counts[(s.n-1)/2-i]
			pair := make([]float64, 2*lanes)
			for l := b * lanes; l < min((b+1)*lanes, s.levels-1); l++ {
				pair[l-b*lanes] = upper[l] + lower[l]
				pair[l-b*lanes+lanes] = upper[l] - lower[l]
				if s.n%2 == 1 && i == 0 {
					pair[l-b*lanes] = upper[l] // the middle cell has no other
				}
			}
			block = append(block, pair...)
		}
		s.blocks = append(s.blocks, block)
	}
	return s
}

// at writes the transform of every level for the phase α from cell to cell.
func (s *lineSum) at(alpha float64, out []complex128) {
	sin, cos := math.Sincos(alpha / 2)
	step := turner{cos: cos*cos - sin*sin, sin: 2 * sin * cos}
	first := turner{cos: cos, sin: sin}
	if s.n%2 == 1 {
		first = turner{cos: 1}
	}
	for b, block := range s.blocks {
		s.sum(block, first, step, s.re[b*lanes:], s.im[b*lanes:])
	}
	last := complex(s.across*dirichlet(s.n, first, step), 0)
	for l := range s.levels - 1 {
		f := complex(s.re[l], s.im[l])
		out[l] = f
		last -= f
	}
	out[s.levels-1] = last
}

// turner is a unit vector that turns by a constant angle from cell to cell.
type turner struct{ cos, sin float64 }

// sum runs over the pairs of cells from the middle outwards.
func (s *lineSum) sum(block []float64, at, step turner, re, im []float64) {
	c, d, stepCos, stepSin := at.cos, at.sin, step.cos, step.sin
	var r0, r1, r2, r3, i0, i1, i2, i3 float64
	for len(block) >= 2*lanes {
		r0 += block[0] * c
		r1 += block[1] * c
		r2 += block[2] * c
		r3 += block[3] * c
		i0 += block[4] * d
		i1 += block[5] * d
		i2 += block[6] * d
		i3 += block[7] * d
		c, d = c*stepCos-d*stepSin, d*stepCos+c*stepSin
		block = block[2*lanes:]
	}
	re[0], re[1], re[2], re[3] = r0, r1, r2, r3
	im[0], im[1], im[2], im[3] = i0, i1, i2, i3
}

// dirichlet returns Σ exp(j·α·x_m) over n places, which is real.
func dirichlet(n int, at, step turner) float64 {
	c, d := at.cos, at.sin
	var sum float64
	for range (n + 1) / 2 {
		sum += 2 * c
		c, d = c*step.cos-d*step.sin, d*step.cos+c*step.sin
	}
	if n%2 == 1 {
		sum--
	}
	return sum
}

// sinc returns sin x / x.
func sinc(x float64) float64 {
	if math.Abs(x) < sincNear {
		return 1 - x*x/6
	}
	return math.Sin(x) / x
}

// sincNear is where the series of sinc, x⁴/120 short of it, is exact to the
// last bit of a float64.
const sincNear = 1e-4
