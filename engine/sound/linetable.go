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
	samples [][]float64 // of each level the real parts, then the imaginary parts
	weights [tableTaps]float64
}

func newLineTable(s *lineSum) *lineTable {
	steps := tableOversampling * max(s.n/2, 1)
	t := &lineTable{n: s.n, step: math.Pi / float64(steps)}
	count := steps + tableTaps
	t.samples = make([][]float64, 2*s.levels)
	for i := range t.samples {
		t.samples[i] = make([]float64, count)
	}
	f := make([]complex128, s.levels)
	for i := range count {
		s.at(towards(float64(i-tableBefore)*t.step/2), f)
		for l, z := range f {
			t.samples[2*l][i], t.samples[2*l+1][i] = real(z), imag(z)
		}
	}
	return t
}

// at writes the transform of every level for the phase α from cell to cell.
func (t *lineTable) at(alpha float64, out []complex128) {
	rounds := math.Floor(alpha/(2*math.Pi) + 0.5)
	alpha -= rounds * 2 * math.Pi
	x := math.Abs(alpha) / t.step
	below := math.Floor(x)
	lagrange(x-below, &t.weights)
	first := int(below)
	// Places between whole cells turn the sign once round.
	sign := 1.0
	if t.n%2 == 0 && int(rounds)%2 != 0 {
		sign = -1
	}
	conjugate := math.Copysign(sign, alpha*sign)
	for l := range out {
		re := dot(&t.weights, t.samples[2*l], first)
		im := dot(&t.weights, t.samples[2*l+1], first)
		out[l] = complex(sign*re, conjugate*im)
	}
}

// dot weighs the samples from first on. Two sums of four each, so that a
// processor need not wait for one addition after the other.
func dot(w *[tableTaps]float64, samples []float64, first int) float64 {
	s := (*[tableTaps]float64)(samples[first:])
	even := w[0]*s[0] + w[2]*s[2] + (w[4]*s[4] + w[6]*s[6])
	odd := w[1]*s[1] + w[3]*s[3] + (w[5]*s[5] + w[7]*s[7])
	return even + odd
}

// lagrange writes the weights of eight equal steps for a place between the
// fourth and the fifth, 0 ≤ x < 1.
func lagrange(x float64, out *[tableTaps]float64) {
	// 1/Π(i − j) over j ≠ i: (−1)^(7−i)/(i!·(7−i)!).
	const (
		w0 = -1.0 / 5040
		w1 = 1.0 / 720
		w2 = -1.0 / 240
		w3 = 1.0 / 144
	)
	a, b, c, d := x+3, x+2, x+1, x
	e, f, g, h := x-1, x-2, x-3, x-4
	ab, cd, ef, gh := a*b, c*d, e*f, g*h
	abcd, efgh := ab*cd, ef*gh
	out[0] = w0 * b * cd * efgh
	out[1] = w1 * a * cd * efgh
	out[2] = w2 * ab * d * efgh
	out[3] = w3 * ab * c * efgh
	out[4] = -w3 * abcd * f * gh
	out[5] = -w2 * abcd * e * gh
	out[6] = -w1 * abcd * ef * h
	out[7] = -w0 * abcd * ef * g
}
