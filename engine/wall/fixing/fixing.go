// Package fixing answers what one screw or nail in wood holds, by the rules of
// the National Design Specification for Wood Construction (ANSI/AWC NDS-2018).
//
// It speaks as the standard does: inches, pounds-force, psi; Newtons and MM
// turn results for the other rooms. G is the specific gravity of that standard
// (oven-dry mass and volume), never the one that masses are worked out from.
// D is the nominal diameter; the yield equations and their reduction take the
// root diameter of a rolled thread.
//
// Values are those of allowable stress design for ten years; Adjust has the
// factors for permanent load, damp, end grain. Where the standard gives no value
// there is an error, never a guess: threads in end grain do not count as held
// against pull, and a screw that is not deep enough holds nothing sideways. A gap
// between the members, such as a wall board, follows the general dowel equations
// of the council's technical report 12 (from memory; at no gap they equal those
// of the standard).
package fixing

import "math"

// Units of the standard.
const (
	NewtonsPerPound = 4.4482216152605 // exact by definition, lbf
	MMPerInch       = 25.4            // exact
)

// Screw is a wood screw with a rolled thread. Sizes are inches.
type Screw struct {
	Gauge      int
	DiameterIn float64 // of the thread, nominal
	RootIn     float64
	HeadIn     float64
	YieldPsi   float64 // bending yield strength
}

// Screws are the screws that table 12L has values for, thin ones first. Sizes:
// NDS-2018 appendix L, table L3; yield strength: appendix I, table I1.
func Screws() []Screw {
	return []Screw{
		{6, 0.138, 0.113, 0.262, 100_000},
		{7, 0.151, 0.122, 0.287, 90_000},
		{8, 0.164, 0.131, 0.312, 90_000},
		{9, 0.177, 0.142, 0.337, 90_000},
		{10, 0.190, 0.152, 0.363, 80_000},
		{12, 0.216, 0.171, 0.414, 80_000},
		{14, 0.242, 0.196, 0.480, 70_000},
	}
}

// Find returns the screw of a gauge.
func Find(gauge int) (Screw, bool) {
	for _, s := range Screws() {
		if s.Gauge == gauge {
			return s, true
		}
	}
	return Screw{}, false
}

// NotThicker returns the thickest published screw that is not thicker than a
// diameter: what a screw of a size between two may be counted as. Both sizes
// have to be of the published form; a hardened screw with a thin root is not.
func NotThicker(diameterIn float64) (Screw, bool) {
	var best Screw
	for _, s := range Screws() {
		if s.DiameterIn <= diameterIn {
			best = s
		}
	}
	return best, best.Gauge != 0
}

// ThreadIn is the length of thread on a screw of a length: two thirds of it, and
// four diameters at least (table L3, footnote). A longer screw has no more of it
// than that.
func (s Screw) ThreadIn(lengthIn float64) float64 {
	return math.Min(lengthIn, math.Max(4*s.DiameterIn, 2*lengthIn/3))
}

// TipIn is the length of the tapered tip, two diameters (12.3.5.3).
func (s Screw) TipIn() float64 { return 2 * s.DiameterIn }

// Spacing is how far fixings keep from edges and from one another, in inches.
type Spacing struct{ EdgeIn, EndIn, InRowIn, BetweenRowsIn float64 }

// Spaced returns the distances for a screw thinner than 1/4 in in bored holes with
// wood at its side: the commentary to NDS 12.1.5.7, which advises and does not
// rule. The end counts as pulled at, the cautious case.
func (s Screw) Spaced() Spacing {
	d := s.DiameterIn
	return Spacing{EdgeIn: 2.5 * d, EndIn: 10 * d, InRowIn: 10 * d, BetweenRowsIn: 3 * d}
}

// hardToScrew is the specific gravity above which holes are bored larger (12.1.5).
const hardToScrew = 0.6

// Hole is the drill for the thread and for the shank, in inches.
type Hole struct{ ThreadIn, ShankIn float64 }

// HoleFor returns the holes for a screw that is loaded sideways (12.1.5): seven
// eighths of root and shank up to G 0.6, all of them above. What the clause asks
// for pull, up to 70 and 90 % of the root, is less.
func (s Screw) HoleFor(g float64) Hole {
	if g > hardToScrew {
		return Hole{ThreadIn: s.RootIn, ShankIn: s.DiameterIn}
	}
	return Hole{ThreadIn: s.RootIn * 7 / 8, ShankIn: s.DiameterIn * 7 / 8}
}
