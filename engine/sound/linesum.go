package sound

// lineSum is the transform of a line of cells: for each level l
//
//	F_l(α) = Σ_m count_l(m)·exp(j·α·x_m), x_m = m − (n−1)/2,
//
// with α = k·w·u the phase from cell to cell.
type lineSum struct {
	n        int // cells along the line
	across   float64
	line     foldedLine
	cos, sin []float64 // of one direction, from the middle outwards
}

// newLineSum takes the counts of a line: counts[m][l] cells of level l at place
// m, of across cells in all at each place.
func newLineSum(counts [][]float64, across int) *lineSum {
	half := (len(counts) + 1) / 2
	return &lineSum{
		n: len(counts), across: float64(across), line: foldLine(counts),
		cos: make([]float64, half), sin: make([]float64, half),
	}
}

// at writes the transform of every level for the phase α from cell to cell,
// given as the cosine and the sine of α/2.
func (s *lineSum) at(half turner, out []complex128) {
	rest := complex(s.across*series(half, s.n, s.cos, s.sin), 0)
	s.line.at(s.cos, s.sin, out)
	last := len(out) - 1
	for _, f := range out[:last] {
		rest -= f
	}
	out[last] = rest
}
