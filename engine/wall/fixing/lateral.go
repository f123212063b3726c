package fixing

import (
	"fmt"
	"math"
)

// Mode is the way in which a joint in shear gives.
type Mode string

// The modes of two members: wood crushed in one, both turned, one bend, two.
const (
	ModeIm   Mode = "Im"
	ModeIs   Mode = "Is"
	ModeII   Mode = "II"
	ModeIIIm Mode = "IIIm"
	ModeIIIs Mode = "IIIs"
	ModeIV   Mode = "IV"
)

// quarterInch is where a dowel gets thick: the reductions and bearing strengths
// below it are all that is used here.
const quarterInch = 0.25

// Bearing is the dowel bearing strength of wood for dowels thinner than 1/4 in,
// in psi, at any angle to the grain: 16600 G^1.84 (table 12.3.3), rounded to the
// nearest 50 psi as the published tables have it. 4650 at G 0.50.
func Bearing(g float64) (float64, error) {
	const step = 50
	return math.Round(16_600*math.Pow(g, 1.84)/step) * step, inTables(g)
}

// Reduction is R_d of table 12.3.1B for a dowel thinner than 1/4 in. The
// diameter of a rolled thread is that of its root.
func Reduction(diameterIn float64) float64 {
	if diameterIn <= 0.17 {
		return 2.2
	}
	return 10*diameterIn + 0.5
}

// Dowel is a joint of two members in single shear, a round pin through both.
type Dowel struct {
	DiameterIn       float64 // that the yield equations take: the root of a thread
	YieldPsi         float64
	SidePsi, MainPsi float64 // bearing strengths
	SideIn, MainIn   float64 // bearing lengths
	GapIn            float64 // between the members
}

// Least returns the lowest of the six yield values over the reduction, in lbf,
// and its mode: NDS-2018 12.3.1, with a gap by the general dowel equations.
func (d Dowel) Least() (float64, Mode, error) {
	if !(d.DiameterIn > 0 && d.DiameterIn < quarterInch) {
		return 0, "", fmt.Errorf("dowel of %.3f in: rules are here below 1/4 in only", d.DiameterIn)
	}
	if !(d.SideIn > 0 && d.MainIn > 0 && d.GapIn >= 0 && d.YieldPsi > 0 && d.SidePsi > 0 && d.MainPsi > 0) {
		return 0, "", fmt.Errorf("dowel: sizes and strengths must be above 0 and the gap not below: %+v", d)
	}
	least, mode := math.Inf(1), Mode("")
	for _, m := range []Mode{ModeIm, ModeIs, ModeII, ModeIIIm, ModeIIIs, ModeIV} {
		if p := d.yield(m); p < least {
			least, mode = p, m
		}
	}
	return least / Reduction(d.DiameterIn), mode, nil
}

// yield is the load at which a mode yields. Letters as in technical report 12: q
// bearing for each inch of dowel, M moment at which the dowel bends, l bearing
// lengths, g gap; s side, m main member. P solves A P² + B P + C = 0.
func (d Dowel) yield(m Mode) float64 {
	qs, qm := d.SidePsi*d.DiameterIn, d.MainPsi*d.DiameterIn
	ls, lm, g := d.SideIn, d.MainIn, d.GapIn
	bend := d.YieldPsi * math.Pow(d.DiameterIn, 3) / 6
	turnS, turnM := qs*ls*ls/4, qm*lm*lm/4
	switch m {
	case ModeIm:
		return qm * lm
	case ModeIs:
		return qs * ls
	case ModeII:
		return root(1/(4*qs)+1/(4*qm), ls/2+g+lm/2, -turnS-turnM)
	case ModeIIIm:
		return root(1/(2*qs)+1/(4*qm), g+lm/2, -bend-turnM)
	case ModeIIIs:
		return root(1/(4*qs)+1/(2*qm), ls/2+g, -turnS-bend)
	default:
		return root(1/(2*qs)+1/(2*qm), g, -2*bend)
	}
}

// root is the positive root of a quadratic with a above and c below zero.
func root(a, b, c float64) float64 { return (-b + math.Sqrt(b*b-4*a*c)) / (2 * a) }
