package sound_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"blockfield/engine/sound"

	"github.com/stretchr/testify/assert"
)

func receivers(energy ...float64) []sound.Receiver {
	out := make([]sound.Receiver, len(energy))
	for i, e := range energy {
		out[i] = sound.Receiver{Energy: e, Weight: 1}
	}
	return out
}

func repeat(n int, e float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = e
	}
	return out
}

// Worked by hand from the formula of ISO 17497-2:2012.
func TestDiffusionByHand(t *testing.T) {
	cosines := func(power float64) []float64 {
		var out []float64
		for deg := -90; deg <= 90; deg += 5 {
			out = append(out, math.Pow(math.Cos(float64(deg)*math.Pi/180), power))
		}
		return out
	}
	for name, c := range map[string]struct {
		energy []float64
		want   float64
	}{
		"all alike":                     {repeat(37, 3), 1},
		"one of 37":                     {append(repeat(36, 0), 2), 0},
		"seven of 37: (7−1)/(37−1)":     {append(repeat(30, 0), repeat(7, 1)...), 0.166667},
		"cosine":                        {cosines(1), 0.781763},
		"cosine squared":                {cosines(2), 0.638889},
		"19 at 0 dB and 18 at −10 dB":   {append(repeat(19, 1), repeat(18, 0.1)...), 0.598801},
		"three at 0 dB, 34 at −20 dB":   {append(repeat(3, 1), repeat(34, 0.01)...), 0.075398},
		"nothing at all":                {repeat(5, 0), 0},
		"loudness does not matter":      {append(repeat(19, 1e-6), repeat(18, 1e-7)...), 0.598801},
		"one receiver has no direction": {repeat(1, 1), 0},
	} {
		assert.InDelta(t, c.want, sound.Diffusion(receivers(c.energy...)), 5e-7, name)
	}
}

// A receiver of twice the area counts as two of the single area (ISO 17497-2,
// unequal areas).
func TestDiffusionWeights(t *testing.T) {
	weighted := []sound.Receiver{{Energy: 1, Weight: 3}, {Energy: 0.2, Weight: 6}, {Energy: 0.5, Weight: 9}}
	equal := receivers(1, 0.2, 0.2, 0.5, 0.5, 0.5)
	assert.InDelta(t, sound.Diffusion(equal), sound.Diffusion(weighted), 1e-12)
	assert.Greater(t, math.Abs(sound.Diffusion(receivers(1, 0.2, 0.5))-sound.Diffusion(weighted)), 0.01)
}

// ISO 17497-2: (0.6 − 0.2)/(1 − 0.2).
func TestNormalise(t *testing.T) {
	assert.InDelta(t, 0.5, sound.Normalise(0.6, 0.2), 1e-12)
	assert.Zero(t, sound.Normalise(0.2, 0.2))
	assert.Zero(t, sound.Normalise(1, 1), "a flat panel that spreads evenly leaves nothing to gain")
}

// E. Mommertz: a scaled copy of the flat pattern scatters nothing, an orthogonal
// one everything, half and half a half.
func TestCorrelationScattering(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	flat, copied, weights := make([]complex128, 20), make([]complex128, 20), make([]float64, 20)
	for i := range flat {
		flat[i] = complex(r.NormFloat64(), r.NormFloat64())
		copied[i] = flat[i] * (0.3 - 2i)
		weights[i] = r.Float64()
	}
	assert.InDelta(t, 0, sound.CorrelationScattering(copied, flat, weights), 1e-12)
	assert.InDelta(t, 1, sound.CorrelationScattering([]complex128{1, 0, 1i}, []complex128{0, 5, 0}, nil), 1e-12)
	assert.InDelta(t, 0.5, sound.CorrelationScattering([]complex128{1, 1i}, []complex128{1, 0}, nil), 1e-12)
	assert.InDelta(t, 0.75, sound.CorrelationScattering([]complex128{1, 1}, []complex128{1, 0}, []float64{1, 3}), 1e-12,
		"1 − 1/(1 + 3)")
	assert.Zero(t, sound.CorrelationScattering([]complex128{0, 0}, []complex128{1, 0}, nil), "nothing comes back")
}
