package wall

import "math"

// Steps of the search for an angle: a coarse scan and a golden-section search around
// its best, or halving, which leave less than a micrometre.
const (
	scanSteps   = 720
	goldenSteps = 80
	halvings    = 60
)

// LongestTurn is the longest box of a thickness that turns round a right-angled
// corner, from a passage of one width into one of another, all in metres: the
// least over all angles θ of (a cos θ + b sin θ − t) / (sin θ cos θ). A box that
// is no longer than a passage is wide goes in sideways without turning. It is 0
// where the box is thicker than a passage. A door counts as a passage as wide,
// which is the cautious way.
func LongestTurn(a, b, thick float64) float64 {
	if thick > math.Min(a, b) {
		return 0
	}
	longest, _ := tightest(a, b, thick)
	return max(longest, a, b)
}

// TightestTurn is the angle (rad) between a box and the first passage where it is nearest
// to the inner corner, as LongestTurn finds it.
func TightestTurn(a, b, thick float64) float64 {
	_, angle := tightest(a, b, thick)
	return angle
}

// tightest is the least of the formula, and where that is.
func tightest(a, b, thick float64) (longest, angle float64) {
	at := func(x float64) float64 {
		sin, cos := math.Sincos(x)
		return (a*cos + b*sin - thick) / (sin * cos)
	}
	step := math.Pi / 2 / scanSteps
	best := step
	for i := 2; i < scanSteps; i++ {
		if x := float64(i) * step; at(x) < at(best) {
			best = x
		}
	}
	low, high := math.Max(best-step, 1e-9), math.Min(best+step, math.Pi/2-1e-9)
	for range goldenSteps {
		third := (high - low) * (3 - math.Sqrt(5)) / 2
		if x, y := low+third, high-third; at(x) < at(y) {
			high = y
		} else {
			low = x
		}
	}
	angle = (low + high) / 2
	return at(angle), angle
}

// LongestInCar is the longest box of a thickness that stands on a floor of two
// sides, at whatever angle, in metres: the most over all angles θ of the lesser of
// (a − t sin θ) / cos θ and (b − t cos θ) / sin θ, which is along a side or where
// the two are equal. It is 0 where the box is thicker than the floor is wide.
func LongestInCar(a, b, thick float64) float64 {
	if thick > math.Min(a, b) {
		return 0
	}
	at := func(x float64) (along, across float64) {
		sin, cos := math.Sincos(x)
		return (a - thick*sin) / cos, (b - thick*cos) / sin
	}
	low, high := 0.0, math.Pi/2
	for range halvings {
		if along, across := at((low + high) / 2); along < across {
			low = (low + high) / 2
		} else {
			high = (low + high) / 2
		}
	}
	along, across := at((low + high) / 2)
	return max(a, b, math.Min(along, across))
}
