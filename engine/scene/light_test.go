package scene_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"blockfield/engine/scene"
)

// TestPlanckianLocus against the chromaticities that the CIE publishes for
// standard illuminant A (2856 K) and that textbooks give for black bodies of
// 2000 and 6500 K (both from memory).
func TestPlanckianLocus(t *testing.T) {
	for _, c := range []struct{ kelvin, x, y float64 }{
		{2856, 0.4476, 0.4074},
		{2000, 0.5267, 0.4133},
		{6500, 0.3135, 0.3237},
	} {
		x, y := scene.PlanckXY(c.kelvin)
		assert.InDelta(t, c.x, x, 0.001, "x at %g K", c.kelvin)
		assert.InDelta(t, c.y, y, 0.001, "y at %g K", c.kelvin)
	}
}

// TestSRGBCurve: linear 0.5 and 0.2140 are 187.5 and 127.5 of 255
// (IEC 61966-2-1; common values, from memory).
func TestSRGBCurve(t *testing.T) {
	assert.InDelta(t, 187.5, 255*scene.Encode8(0.5), 0.1)
	assert.InDelta(t, 127.5, 255*scene.Encode8(0.21404), 0.1)
	assert.InDelta(t, 0.0031308*12.92, scene.Encode8(0.0031308), 1e-6, "the two pieces meet")
	assert.InDelta(t, 0.0031309*12.92, scene.Encode8(0.0031309), 1e-5)
}

// blocked integrates cosine-weighted light over the directions that a long wall
// hides, the slow way: share of the hemisphere round the normal n.
func blocked(hides func(x, y, z float64) bool) float64 {
	const steps = 600
	hidden, all := 0.0, 0.0
	for i := range steps {
		theta := (float64(i) + 0.5) / steps * math.Pi / 2
		weight := math.Cos(theta) * math.Sin(theta)
		for j := range steps {
			phi := (float64(j) + 0.5) / steps * 2 * math.Pi
			x, y, z := math.Sin(theta)*math.Cos(phi), math.Sin(theta)*math.Sin(phi), math.Cos(theta)
			all += weight
			if hides(x, y, z) {
				hidden += weight
			}
		}
	}
	return hidden / all
}

// TestOpennessFormulas against that integral.
func TestOpennessFormulas(t *testing.T) {
	for _, c := range []struct{ h, d float64 }{{0.02, 0.018}, {0.066, 0.018}, {0.066, 0.3}, {0.5, 0.01}} {
		// Normal z, an endless wall of height h at x = d.
		want := blocked(func(x, _, z float64) bool { return x > 0 && z/x < c.h/c.d })
		assert.InDelta(t, want, scene.Beside(c.h, c.d), 0.003, "beside %v", c)
		// Normal z, an endless wall across at z = d, which hides x from 0 to h.
		want = blocked(func(x, _, z float64) bool { return x > 0 && x/z < c.h/c.d }) * 2
		assert.InDelta(t, want, scene.Opposite(c.h, c.d), 0.003, "opposite %v", c)
	}
	assert.Zero(t, scene.Beside(-0.1, 0.01), "a lower neighbour takes nothing")
}
