package wall

import "math"

// Steps of the search for the tightest angle: a coarse scan and a golden-section
// search around its best, which leaves less than a micrometre.
const (
	scanSteps   = 720
	goldenSteps = 80
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
	return max(at((low+high)/2), a, b)
}

// Way is a way in and what is carried through it, in metres, wrapped.
type Way struct {
	DoorWidthM, DoorHeightM, CorridorM float64
	WidthM, HeightM, DeepM             float64 // of the wrapped panel
}

// Passes reports whether the panel passes, carried upright on either of its
// edges, and how long a panel may be at most to turn.
func (w Way) Passes() (passes bool, longestM float64) {
	longestM = LongestTurn(w.CorridorM, w.DoorWidthM, w.DeepM)
	upright := func(long, tall float64) bool { return long <= longestM && tall <= w.DoorHeightM }
	return upright(w.WidthM, w.HeightM) || upright(w.HeightM, w.WidthM), longestM
}

// TipDeg is the angle at which a stand falls over a toe: by how far the toe stands
// off the line of the centre of mass, and how high that is.
func TipDeg(toe, centre float64) float64 { return math.Atan2(toe, centre) * 180 / math.Pi }

// ToeFor is how far a toe has to stand off to reach an angle.
func ToeFor(deg, centre float64) float64 { return centre * math.Tan(deg*math.Pi/180) }
