package wall_test

import (
	"math"
	"testing"

	"blockfield/engine/wall"

	"github.com/stretchr/testify/assert"
)

// A corridor of 900 mm into a door of 762 mm, and the worked jobs' own, all from
// the trade's worked figures, in mm.
func TestLongestTurnOfWorkedJobs(t *testing.T) {
	for _, c := range []struct{ corridor, door, thick, want float64 }{
		{900, 762, 160, 2027}, {850, 850, 150, 2104},
		{900, 762, 126, 2095}, {914.4, 762, 130, 2107}, {900, 762, 140, 2067},
	} {
		assert.InDelta(t, c.want, 1000*wall.LongestTurn(c.corridor/1000, c.door/1000, c.thick/1000), 0.6, "%+v", c)
	}
}

// Two equal passages a turn tightest at 45°: 2 (√2 a − t), by hand.
func TestLongestTurnOfEqualPassages(t *testing.T) {
	for _, thick := range []float64{0, 0.1, 0.3} {
		assert.InDelta(t, 2*(math.Sqrt2*0.9-thick), wall.LongestTurn(0.9, 0.9, thick), 1e-9)
	}
	// Without thickness: (a^(2/3) + b^(2/3))^(3/2), the ladder round a corner.
	assert.InDelta(t, math.Pow(math.Cbrt(0.9*0.9)+math.Cbrt(0.7*0.7), 1.5), wall.LongestTurn(0.9, 0.7, 0), 1e-9)
}

// passesByTrying turns a box through every angle and shifts it about: at each
// angle some place must have no corner beyond the outer walls (x ≥ 0, y ≥ 0) and
// the inner corner (b, a) not inside the box.
func passesByTrying(a, b, long, thick float64) bool {
	const angles, shifts, reach = 720, 40, 0.02
	for i := 1; i < angles; i++ {
		sin, cos := math.Sincos(float64(i) * math.Pi / 2 / angles)
		if !somePlace(a, b, long, thick, sin, cos, shifts, reach) {
			return false
		}
	}
	return true
}

func somePlace(a, b, long, thick, sin, cos, shifts, reach float64) bool {
	for sx := 0.0; sx <= reach; sx += reach / shifts {
		for sy := 0.0; sy <= reach; sy += reach / shifts {
			// The outer face runs from (0, long·sin) to (long·cos, 0), shifted inwards.
			px, py := sx, long*sin+sy
			// Local coordinates of the inner corner: along the face, and off it.
			dx, dy := b-px, a-py
			along, off := dx*cos-dy*sin, dx*sin+dy*cos
			if !(along > 0 && along < long && off < thick) {
				return true
			}
		}
	}
	return false
}

func TestLongestTurnAgainstTrying(t *testing.T) {
	for _, c := range [][3]float64{{0.9, 0.762, 0.16}, {0.85, 0.85, 0.15}, {1.2, 0.7, 0.2}, {0.8, 1.5, 0.05}} {
		longest := wall.LongestTurn(c[0], c[1], c[2])
		assert.True(t, passesByTrying(c[0], c[1], longest-0.002, c[2]), "%v: 2 mm shorter passes", c)
		assert.False(t, passesByTrying(c[0], c[1], longest+0.002, c[2]), "%v: 2 mm longer is stuck", c)
	}
}

// A thicker box or a narrower passage never takes a longer one; a box thicker
// than a passage does not come in at all; a short one goes in sideways.
func TestTurnLaws(t *testing.T) {
	last := math.Inf(1)
	for thick := 0.0; thick <= 0.7; thick += 0.01 {
		got := wall.LongestTurn(0.9, 0.762, thick)
		assert.LessOrEqual(t, got, last)
		assert.LessOrEqual(t, wall.LongestTurn(0.9, 0.7, thick), got+1e-12)
		last = got
	}
	assert.Zero(t, wall.LongestTurn(0.9, 0.762, 0.763))
	assert.Equal(t, 0.9, wall.LongestTurn(0.9, 0.9, 0.89), "no longer than the passage is wide")
}

// A floor of 1.1 by 1.4 m: its diagonal is 1.78 m (a trade figure), for a box
// without thickness; sides alone count for a box as thick as the floor.
func TestLongestInCar(t *testing.T) {
	assert.InDelta(t, 1.780, wall.LongestInCar(1.1, 1.4, 0), 0.001)
	assert.InDelta(t, math.Hypot(1.1, 1.4), wall.LongestInCar(1.1, 1.4, 0), 1e-9)
	assert.InDelta(t, 1.4, wall.LongestInCar(1.1, 1.4, 1.1), 1e-9)
	assert.Zero(t, wall.LongestInCar(1.1, 1.4, 1.101))
}

// Every angle of a box is tried in a car: 1 mm shorter fits at some angle, 1 mm
// longer at none.
func TestLongestInCarAgainstTrying(t *testing.T) {
	fits := func(a, b, long, thick float64) bool {
		for i := range 20_001 {
			sin, cos := math.Sincos(float64(i) / 20_000 * math.Pi / 2)
			if long*cos+thick*sin <= a && long*sin+thick*cos <= b {
				return true
			}
		}
		return false
	}
	for _, c := range [][3]float64{{1.1, 1.4, 0.16}, {1.4, 1.1, 0.16}, {0.9, 0.9, 0.3}, {0.8, 2, 0.7}, {1, 1.2, 0.05}} {
		longest := wall.LongestInCar(c[0], c[1], c[2])
		assert.True(t, fits(c[0], c[1], longest-0.001, c[2]), "%v", c)
		assert.False(t, fits(c[0], c[1], longest+0.001, c[2]), "%v", c)
	}
}

// arctan(260/1150) = 12.7°, arctan(180/1150) = 8.9°: the worked stand and its
// shorter foot; 45° where toe and centre are alike.
func TestTip(t *testing.T) {
	assert.InDelta(t, 12.74, wall.TipDeg(0.260, 1.150), 0.01)
	assert.InDelta(t, 8.90, wall.TipDeg(0.180, 1.150), 0.01)
	assert.InDelta(t, 45, wall.TipDeg(1, 1), 1e-12)
	assert.InDelta(t, 10, wall.TipDeg(wall.ToeFor(10, 1.15), 1.15), 1e-12)
	assert.Less(t, wall.TipDeg(0.26, 1.2), wall.TipDeg(0.26, 1.15), "higher is never safer")
}
