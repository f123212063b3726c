package sound

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
	n        int // cells along the line
	across   float64
	levels   int
	blocks   [][]float64 // for each lanes levels: for each pair of cells, lanes sums and lanes differences
	cos, sin []float64   // of one direction, from the middle outwards
	re, im   [lanes]float64
}

// newLineSum folds the counts of a line: counts[m][l] cells of level l at place
// m, of across cells in all at each place.
func newLineSum(counts [][]float64, across int) *lineSum {
	s := &lineSum{n: len(counts), across: float64(across), levels: len(counts[0])}
	half := (s.n + 1) / 2
	s.cos, s.sin = make([]float64, half), make([]float64, half)
	for first := 0; first < s.levels-1; first += lanes {
		block := make([]float64, 0, half*2*lanes)
		for i := range half {
			upper, lower := counts[s.n/2+i], counts[(s.n-1)/2-i]
			var pair [2 * lanes]float64
			for l := first; l < min(first+lanes, s.levels-1); l++ {
				pair[l-first] = upper[l] + lower[l]
				pair[l-first+lanes] = upper[l] - lower[l]
				if s.n%2 == 1 && i == 0 {
					pair[l-first] = upper[l] // the middle cell has no other
				}
			}
			block = append(block, pair[:]...)
		}
		s.blocks = append(s.blocks, block)
	}
	return s
}

// at writes the transform of every level for the phase α from cell to cell,
// given as the cosine and the sine of α/2.
func (s *lineSum) at(half turner, out []complex128) {
	last := complex(s.across*series(half, s.n, s.cos, s.sin), 0)
	for b, block := range s.blocks {
		s.sum(block)
		for l := b * lanes; l < min((b+1)*lanes, s.levels-1); l++ {
			f := complex(s.re[l-b*lanes], s.im[l-b*lanes])
			out[l] = f
			last -= f
		}
	}
	out[s.levels-1] = last
}

// sum runs over the pairs of cells from the middle outwards.
func (s *lineSum) sum(block []float64) {
	var r0, r1, r2, r3, i0, i1, i2, i3 float64
	sines := s.sin[:len(s.cos)]
	for m, c := range s.cos {
		d := sines[m]
		p := (*[2 * lanes]float64)(block[2*lanes*m:])
		r0 += p[0] * c
		r1 += p[1] * c
		r2 += p[2] * c
		r3 += p[3] * c
		i0 += p[4] * d
		i1 += p[5] * d
		i2 += p[6] * d
		i3 += p[7] * d
	}
	s.re, s.im = [lanes]float64{r0, r1, r2, r3}, [lanes]float64{i0, i1, i2, i3}
}
