package sound

import "math"

// Along a ray of directions of one azimuth, the transform of a field depends on
// κ = k·w·sin θ alone and holds no oscillation faster than the farthest cell. So
// it is summed over the cells at a few κ only and read between them for all
// lines and rings, by the sampling series with a sinh-type window:
//
//	F(κ) ≈ Σ_i F(i·h)·sinc(π(κ/h − i))·sinh(β·√(1 − ((κ/h − i)/M)²))/sinh β
//
// with β = π·M·(1 − 1/σ) and h = π/(σ·T) for a field that reaches T cells from
// its middle. Its error falls as exp(−β) (M. Kircheis, D. Potts and M. Tasche,
// On regularized Shannon sampling formulas, 2022; from memory): 10⁻¹⁰ here.
const (
	oversampling = 3.0 // σ
	halfTaps     = 11  // M
	taps         = 2 * halfTaps
)

// sampling is where a ray is summed.
type sampling struct {
	step  float64 // h
	count int     // samples from κ = −M·h on, to M·h beyond the last κ
}

// newSampling takes the reach of the field in cells and the largest κ.
func newSampling(reach, most float64) sampling {
	h := math.Pi / (oversampling * math.Max(reach, 1))
	return sampling{step: h, count: int(math.Ceil(most/h)) + taps + 1}
}

// kappa returns the place of a sample.
func (s sampling) kappa(i int) float64 { return float64(i-halfTaps) * s.step }

// weights writes the weights of the taps for a place and returns the first
// sample that they go with.
func (s sampling) weights(kappa float64, out []float64) (first int) {
	const beta = math.Pi * halfTaps * (1 - 1/oversampling)
	x := kappa / s.step
	floor := math.Floor(x)
	first = int(floor) + 1
	sin := math.Sin(math.Pi * (x - floor))
	scale := 1 / (2 * math.Sinh(beta))
	for t := range taps {
		// Sample first+t stands at x = first + t − halfTaps.
		d := x - floor + float64(halfTaps-1-t)
		if d == 0 {
			out[t] = 1
			continue
		}
		sign := float64(1 - 2*((halfTaps-1-t)&1))
		grown := math.Exp(beta * math.Sqrt(math.Max(1-d*d/(halfTaps*halfTaps), 0)))
		out[t] = sign * sin / (math.Pi * d) * (grown - 1/grown) * scale
	}
	return first
}

// ray holds the samples of the transforms along one azimuth, and along its
// mirror image below the horizontal.
type ray struct {
	up, down [][]float64 // of each level the real parts, then of each the imaginary parts
}

func newRay(levels, samples int) *ray {
	r := &ray{up: make([][]float64, 2*levels), down: make([][]float64, 2*levels)}
	for i := range r.up {
		r.up[i], r.down[i] = make([]float64, samples), make([]float64, samples)
	}
	return r
}

// set puts a sample and its mirror image at −κ, the conjugate, in their places.
func (r *ray) set(samples [][]float64, i int, f []complex128) {
	twin := 2*halfTaps - i // the place of −κ
	for l, z := range f {
		samples[2*l][i], samples[2*l+1][i] = real(z), imag(z)
		if twin >= 0 {
			samples[2*l][twin], samples[2*l+1][twin] = real(z), -imag(z)
		}
	}
}

// read writes the transforms at the place of some weights.
func read(samples [][]float64, first int, weights []float64, out []complex128) {
	l := 0
	for ; l+1 < len(out); l += 2 {
		a, b := samples[2*l][first:], samples[2*l+1][first:]
		c, d := samples[2*l+2][first:], samples[2*l+3][first:]
		a, b, c, d = a[:len(weights)], b[:len(weights)], c[:len(weights)], d[:len(weights)]
		var ra, rb, rc, rd float64
		for t, w := range weights {
			ra += w * a[t]
			rb += w * b[t]
			rc += w * c[t]
			rd += w * d[t]
		}
		out[l], out[l+1] = complex(ra, rb), complex(rc, rd)
	}
	if l < len(out) {
		a, b := samples[2*l][first:], samples[2*l+1][first:]
		var ra, rb float64
		for t, w := range weights {
			ra += w * a[t]
			rb += w * b[t]
		}
		out[l] = complex(ra, rb)
	}
}
