package sound_test

import (
	"math"
	"testing"

	"blockfield/engine/sound"

	"github.com/stretchr/testify/assert"
)

// IEC 61260-1:2014, base ten, and its nominal list.
func TestBands(t *testing.T) {
	for band, want := range map[sound.Band][4]float64{ // nominal, centre, edges
		-16: {25, 25.119, 22.387, 28.184}, -15: {31.5, 31.623, 28.184, 35.481},
		-10: {100, 100, 89.125, 112.202}, -9: {125, 125.893, 112.202, 141.254},
		-5: {315, 316.228, 281.838, 354.813}, -3: {500, 501.187, 446.684, 562.341},
		0: {1000, 1000, 891.251, 1122.018}, 1: {1250, 1258.925, 1122.018, 1412.538},
		2: {1600, 1584.893, 1412.538, 1778.279}, 6: {4000, 3981.072, 3548.134, 4466.836},
		7: {5000, 5011.872, 4466.836, 5623.413}, 10: {10000, 10000, 8912.509, 11220.185},
		11: {12500, 12589.254, 11220.185, 14125.375},
	} {
		low, high := band.Edges()
		assert.InDeltaSlice(t, want[:], []float64{band.NominalHz(), band.Hz(), low, high}, 6e-4, "band %d", band)
		assert.Equal(t, band, sound.BandOf(want[0]))
	}
	assert.Len(t, sound.Bands(sound.FirstBand, sound.LastBand), 21)
}

func TestLinesFillTheBand(t *testing.T) {
	for _, n := range []int{1, 3, 7} {
		lines := sound.Band(2).Lines(n)
		low, high := sound.Band(2).Edges()
		ratio := math.Pow(high/low, 1/float64(n))
		assert.InEpsilon(t, low*math.Sqrt(ratio), lines[0], 1e-12, "half a step above the edge")
		for i := 1; i < n; i++ {
			assert.InEpsilon(t, ratio, lines[i]/lines[i-1], 1e-12, "equal steps of the logarithm")
		}
		assert.InEpsilon(t, high/math.Sqrt(ratio), lines[n-1], 1e-12)
	}
	assert.GreaterOrEqual(t, sound.LinesPerBand, 7)
}

// ISO 9613-1:1993.
func TestSpeedOfSound(t *testing.T) {
	for celsius, want := range map[float64]float64{0: 331.29, 15: 340.26, 20: 343.20, 25: 346.11, 30: 349.00} {
		assert.InDelta(t, want, sound.SpeedMS(celsius), 0.005, "%v °C", celsius)
	}
}
