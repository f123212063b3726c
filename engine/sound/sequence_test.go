package sound_test

import (
	"math"
	"math/cmplx"
	"testing"

	"blockfield/engine/field"
	"blockfield/engine/sound"

	"github.com/stretchr/testify/assert"
)

// residues are n² mod N. Of 7: Acoustics Today, Summer 2006, p. 23; of 13: OEIS
// A070436; of 17: as quoted of M. R. Schroeder in Science News, 1986. The test
// of package field holds the patterns against these lists; here their spectra.
func residues(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i * i % n
	}
	return out
}

// stripes is a row of one cell each for the values of a sequence of order n, as
// deep as its design wavelength asks for: d = s·λ/(2n) (M. R. Schroeder 1979).
func stripes(values []int, n int, pitchM, designHz, c float64) sound.Arrangement {
	s := sound.Surface{Columns: len(values), Rows: 1, PitchM: pitchM}
	unit := c / designHz / 2 / float64(n)
	for d := range n {
		s.HeightsM = append(s.HeightsM, float64(n-1-d)*unit)
	}
	for _, v := range values {
		s.Levels = append(s.Levels, uint16(n-1-v))
	}
	return sound.Arrangement{Surface: s}
}

// atOrder returns the energy that the grating variant sends into order m of a
// repeating sequence, without the pattern of a single cell, in parts of a flat
// panel's. The frequency is the design frequency; the speed of sound is chosen
// so that the order leaves at 30°, where a receiver stands.
func atOrder(t *testing.T, values []int, n, m int) float64 {
	t.Helper()
	const pitch, hz, sin30 = 0.04, 1000.0, 0.5
	length := float64(len(values)) * pitch
	lambda := length * sin30 / float64(max(m, 1))
	c := lambda * hz
	a := stripes(values, n, pitch, hz, c)
	p := sound.Plane(a, sound.Across, []float64{0}, sound.Options{
		SpeedMS: c, Phase: sound.Grating, Bands: []sound.Band{0}, Lines: 1,
	})[0]
	if m == 0 {
		return p.Bands[0].Energy[18] // the mirror direction
	}
	assert.InDelta(t, 30, p.AnglesDeg[24], 1e-9)
	element := sinc(math.Pi * pitch * sin30 / lambda)
	return p.Bands[0].Energy[24] / (element * element)
}

// Gauss sums: the spectrum of quadratic residues is flat. Each of the N orders
// takes 1/N of the energy, −8.45 dB for N = 7 (J. O. Smith, Physical Audio
// Signal Processing; Gauss). Together they are all of it (Parseval).
func TestQuadraticResiduesHaveAFlatSpectrum(t *testing.T) {
	for _, n := range []int{5, 7, 11, 13, 17, 23} {
		var sum float64
		for m := range n {
			energy := atOrder(t, residues(n), n, m)
			assert.InDelta(t, 1/float64(n), energy, 1e-9, "N %d, order %d", n, m)
			sum += energy
		}
		assert.InDelta(t, 1, sum, 1e-8, "N %d: Parseval", n)
	}
	assert.InDelta(t, -8.45, 10*math.Log10(atOrder(t, residues(7), 7, 3)), 0.005)
}

// Primitive roots keep the mirror direction down: of the P − 1 orders it has
// 1/(P−1)² and each other P/(P−1)² (M. R. Schroeder, AMS PSAM 46). 13 with root 2
// is 2 4 8 3 6 12 11 9 5 10 7 1.
func TestPrimitiveRootsSuppressTheMirrorDirection(t *testing.T) {
	for p, want := range map[int][]int{
		7: {3, 2, 6, 4, 5, 1}, 13: {2, 4, 8, 3, 6, 12, 11, 9, 5, 10, 7, 1},
		17: {3, 9, 10, 13, 5, 15, 11, 16, 14, 8, 7, 4, 12, 2, 6, 1}, 31: nil,
	} {
		values, v := make([]int, p-1), 1
		for i := range values {
			v = v * field.SmallestPrimitiveRoot(p) % p
			values[i] = v
		}
		if want != nil {
			assert.Equal(t, want, values)
		}
		orders := float64((p - 1) * (p - 1))
		var sum float64
		for m := range p - 1 {
			energy := atOrder(t, values, p, m)
			sum += energy
			if m == 0 {
				assert.InDelta(t, 1/orders, energy, 1e-9, "P %d: the mirror direction", p)
			} else {
				assert.InDelta(t, float64(p)/orders, energy, 1e-9, "P %d, order %d", p, m)
			}
		}
		assert.InDelta(t, 1, sum, 1e-8, "P %d: Parseval", p)
	}
}

// folded is a P with shape a × b: element n ↦ (n mod a, n mod b), value rⁿ.
func folded(p, a, b int) sound.Surface {
	s := sound.Surface{Columns: b, Rows: a, PitchM: 1, HeightsM: make([]float64, p), Levels: make([]uint16, a*b)}
	v := 1
	for n := range p - 1 {
		s.Levels[n%a*b+n%b] = uint16(v)
		v = v * field.SmallestPrimitiveRoot(p) % p
	}
	return s
}

// The folding tables of M. R. Schroeder (AMS PSAM 46, p. 10), and their
// two-dimensional spectra: |F|² is 1 in the mirror direction and P in every
// other order.
func TestFoldedPrimitiveRoots(t *testing.T) {
	tables := map[[3]int][]uint16{
		{7, 2, 3}:  {1, 4, 2, 6, 3, 5},
		{13, 3, 4}: {1, 5, 12, 8, 3, 2, 10, 11, 9, 6, 4, 7},
		{31, 5, 6}: {
			1, 6, 5, 30, 25, 26, 16, 3, 18, 15, 28, 13, 8, 17, 9, 23, 14, 22,
			4, 24, 20, 27, 7, 11, 2, 12, 10, 29, 19, 21,
		},
	}
	for shape, table := range tables {
		p, a, b := shape[0], shape[1], shape[2]
		s := folded(p, a, b)
		assert.Equal(t, table, s.Levels)
		var sum float64
		for m := range a {
			for n := range b {
				f := sound.GridTransform(s, 2*math.Pi*float64(n)/float64(b), 2*math.Pi*float64(m)/float64(a))
				var z complex128
				for level, part := range f {
					z += part * cmplx.Exp(complex(0, -2*math.Pi*float64(level)/float64(p)))
				}
				energy, want := real(z)*real(z)+imag(z)*imag(z), float64(p)
				if m == 0 && n == 0 {
					want = 1
				}
				assert.InDelta(t, want, energy, 1e-9, "%v: order %d, %d", shape, m, n)
				sum += energy
			}
		}
		assert.InDelta(t, float64(a*b*a*b), sum, 1e-7, "Parseval")
	}
}

// (n² + m²) mod N has |F| = N in every order (Schroeder; closed form).
func TestQuadraticResiduesInBothDirections(t *testing.T) {
	for _, n := range []int{5, 7, 11} {
		s := sound.Surface{Columns: n, Rows: n, PitchM: 1, HeightsM: make([]float64, n)}
		for i := range n {
			for j := range n {
				s.Levels = append(s.Levels, uint16((i*i+j*j)%n))
			}
		}
		for i := range n {
			for j := range n {
				step := 2 * math.Pi / float64(n)
				var z complex128
				for level, part := range sound.GridTransform(s, step*float64(j), step*float64(i)) {
					z += part * cmplx.Exp(complex(0, step*float64(level)))
				}
				assert.InDelta(t, float64(n), cmplx.Abs(z), 1e-9, "N %d, order %d, %d", n, i, j)
			}
		}
	}
}

// A sequence of ones and minus ones of the longest length 2^m − 1 has |F|² of 1
// in the mirror direction and N + 1 elsewhere; 7: 1110010, 15: 111100010011010
// (M. R. Schroeder 1975). One level is a quarter wave deep, so it answers −1.
func TestLongestBinarySequences(t *testing.T) {
	for _, bits := range []string{"1110010", "111100010011010", "1111100011011101010000100101100"} {
		n := len(bits)
		s := sound.Surface{Columns: n, Rows: 1, PitchM: 1, HeightsM: []float64{0, 1}}
		for _, b := range bits {
			s.Levels = append(s.Levels, uint16(b-'0'))
		}
		for m := range n {
			f := sound.LineTransform(s, sound.Across, 2*math.Pi*float64(m)/float64(n))
			z := f[1] - f[0]
			want := float64(n + 1)
			if m == 0 {
				want = 1
			}
			assert.InDelta(t, want, real(z)*real(z)+imag(z)*imag(z), 1e-8, "%s, order %d", bits, m)
		}
	}
}
