package sound_test

import (
	"math/rand/v2"
	"testing"

	"blockfield/engine/sound"
)

// Field and listening of the yardstick: 50 × 30 cells of five heights, 17 bands
// of 7 lines.
func yardstick() (sound.Arrangement, sound.Options) {
	a := random(rand.New(rand.NewPCG(5, 6)), 50, 30, 5)
	a.PitchM = 0.04
	return a, sound.Options{Bands: sound.Bands(-6, 10)}
}

// 37 receivers and the sources at 0°, 30° and 60°.
func BenchmarkPlane(b *testing.B) {
	a, o := yardstick()
	for b.Loop() {
		sound.Plane(a, sound.Across, []float64{0, 30, 60}, o)
	}
}

// 37 rings of 72 azimuths, straight on.
func BenchmarkHalfSpace(b *testing.B) {
	a, o := yardstick()
	for b.Loop() {
		sound.HalfSpace(a, 0, o)
	}
}
