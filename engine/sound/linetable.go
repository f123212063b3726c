package sound

import "math"

// A line of cells is heard from thousands of directions, but its transform is
// the same again after 2π, and holds no oscillation faster than its last cell.
// So it is summed at a few hundred phases once and read between them by
// Lagrange's polynomial through eight of them. With 24 samples where two would
// just do, the error is below
//
//	(π/24)⁸ · (0.5·1.5·2.5·3.5)²/8! = 10⁻¹⁰
//
// of a flat panel, the term after the polynomial for the fastest oscillation.
const (
	tableOversampling = 24
	tableTaps         = 8
	tableBefore       = tableTaps/2 - 1 // samples before the one below a phase
)

// lineTable holds the transform of a line of cells at equal steps of the phase
// from 0 to π, and a few samples on either side.
type lineTable struct {
	n       int // cells along the line
	step    float64
	samples int
	parts   []float64 // of each level all samples' real parts, then the imaginary parts
}

func newLineTable(s *lineSum) *lineTable {
	steps := tableOversampling * max(s.n/2, 1)
	t := &lineTable{n: s.n, step: math.Pi / float64(steps), samples: steps + tableTaps}
	t.parts = make([]float64, 2*s.line.levels*t.samples)
	f := make([]complex128, s.line.levels)
	for i := range t.samples {
		s.at(towards(float64(i-tableBefore)*t.step/2), f)
		for l, z := range f {
			t.parts[2*l*t.samples+i], t.parts[(2*l+1)*t.samples+i] = real(z), imag(z)
		}
	}
	return t
}

// at writes the transform of every level for the phase α from cell to cell.
func (t *lineTable) at(alpha float64, out []complex128) {
	rounds := math.Floor(alpha/(2*math.Pi) + 0.5)
	alpha -= rounds * 2 * math.Pi
	x := math.Abs(alpha) / t.step
	first := int(x)
	w0, w1, w2, w3, w4, w5, w6, w7 := lagrange(x - float64(first))
	// Places between whole cells turn the sign once round.
	sign := 1.0
	if t.n%2 == 0 && int(rounds)%2 != 0 {
		sign = -1
	}
	conjugate := math.Copysign(sign, alpha*sign)
	for l := range out {
		// Two sums of four each, so that a processor need not wait for one addition
		// after the other.
		re := (*[tableTaps]float64)(t.parts[2*l*t.samples+first:])
		even := w0*re[0] + w2*re[2] + (w4*re[4] + w6*re[6])
		odd := w1*re[1] + w3*re[3] + (w5*re[5] + w7*re[7])
		im := (*[tableTaps]float64)(t.parts[(2*l+1)*t.samples+first:])
		evenIm := w0*im[0] + w2*im[2] + (w4*im[4] + w6*im[6])
		oddIm := w1*im[1] + w3*im[3] + (w5*im[5] + w7*im[7])
		out[l] = complex(sign*(even+odd), conjugate*(evenIm+oddIm))
	}
}

// lagrange returns the weights of eight equal steps for a place between the
// fourth and the fifth, 0 ≤ x < 1.
func lagrange(x float64) (w0, w1, w2, w3, w4, w5, w6, w7 float64) {
	// 1/Π(i − j) over j ≠ i: (−1)^(7−i)/(i!·(7−i)!).
	const (
		c0 = -1.0 / 5040
		c1 = 1.0 / 720
		c2 = -1.0 / 240
		c3 = 1.0 / 144
	)
	a, b, c, d := x+3, x+2, x+1, x
	e, f, g, h := x-1, x-2, x-3, x-4
	ab, cd, ef, gh := a*b, c*d, e*f, g*h
	abcd, efgh := ab*cd, ef*gh
	return c0 * b * cd * efgh, c1 * a * cd * efgh, c2 * ab * d * efgh, c3 * ab * c * efgh,
		-c3 * abcd * f * gh, -c2 * abcd * e * gh, -c1 * abcd * ef * h, -c0 * abcd * ef * g
}
