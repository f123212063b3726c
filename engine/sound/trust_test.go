package sound_test

import (
	"math"
	"testing"

	"blockfield/engine/sound"

	"github.com/stretchr/testify/assert"
)

// Figures of the comparison with boundary elements, a separate computation.
func TestTrust(t *testing.T) {
	const depth = 1000 // Hz
	for _, c := range []struct {
		hz, deg     float64
		mean, worst float64
		indicative  bool
		noClaim     bool
	}{
		{400, 0, 0.04, 0.19, true, false},
		{600, 30, 0.10, 0.34, true, false},
		{900, -60, 0.28, 0.53, true, true},
		{1200, 0, 0.16, 0.43, true, false},
		{1999, 0, 0.14, 0.40, true, false},
		{2000, 0, 0.06, 0.18, false, false},
		{2500, 30, 0.14, 0.32, true, false},
		{2500, -60, 0.15, 0.33, true, true},
		{9000, 0, 0.05, 0.22, false, false},
		{9000, 60, 0.27, 0.50, true, true},
	} {
		want := sound.Doubt{Mean: c.mean, Worst: c.worst, Indicative: c.indicative, NoClaim: c.noClaim}
		assert.Equal(t, want, sound.Trust(c.hz, depth, c.deg), "%v Hz, %v°", c.hz, c.deg)
	}
	everywhere := sound.TrustRandom(9000, depth)
	assert.True(t, everywhere.Indicative)
	assert.False(t, everywhere.NoClaim)
	assert.True(t, sound.Trust(9000, math.Inf(1), 0).Indicative, "a level field has no depth to be above")
}

// c/(4·R): 95 mm gives 903 Hz at 343 m/s.
func TestDepthHz(t *testing.T) {
	assert.InDelta(t, 903, sound.DepthHz(0.095, 343), 0.5)
	assert.True(t, math.IsInf(sound.DepthHz(0, 343), 1))
}
