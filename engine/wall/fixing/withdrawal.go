package fixing

import (
	"errors"
	"fmt"
	"math"
)

// ErrEndGrain is what a thread in end grain holds against pull: nothing that the
// standard would count (12.2.2.3).
var ErrEndGrain = errors.New("screws in end grain are not counted against pull")

// Densities that the tables of the standard cover.
const (
	leastG = 0.31
	mostG  = 0.73
)

func inTables(g float64) error {
	if !(g >= leastG && g <= mostG) {
		return fmt.Errorf("specific gravity %.3g lies outside the tables (%.2f to %.2f)", g, leastG, mostG)
	}
	return nil
}

// ScrewPull is the reference withdrawal of a wood screw in side grain, lbf for
// each inch of thread: 2850 G² D (NDS-2018 eq. 12.2-2). No. 10 at G 0.50: 135.4.
func ScrewPull(g, diameterIn float64) (float64, error) {
	return 2850 * g * g * diameterIn, inTables(g)
}

// LagPull is that of a lag screw, for each inch of thread without the tip:
// 1800 G^1.5 D^0.75 (eq. 12.2-1). 1/2 in at G 0.55: 436.6.
func LagPull(g, diameterIn float64) (float64, error) {
	return 1800 * math.Pow(g, 1.5) * math.Pow(diameterIn, 0.75), inTables(g)
}

// NailPull is that of a plain nail, for each inch in the wood: 1380 G^2.5 D
// (eq. 12.2-3).
func NailPull(g, diameterIn float64) (float64, error) {
	return 1380 * math.Pow(g, 2.5) * diameterIn, inTables(g)
}

// HeadPull is what it takes to pull a head through the side member, lbf:
// 690 π DH G² t, and no more than for a thickness of 2.5 DH (eq. 12.2-6a and b).
func HeadPull(g, headIn, thicknessIn float64) (float64, error) {
	t := math.Min(thicknessIn, 2.5*headIn)
	return 690 * math.Pi * headIn * g * g * t, inTables(g)
}

// Adjust are the conditions of a joint.
type Adjust struct {
	Duration Duration
	Damp     bool // above 19 % moisture in service
	EndGrain bool // the point stands in end grain
}

// Duration is how long the load lasts.
type Duration uint8

// Durations, from the longest. What hangs on a wall is permanent: it is the zero
// value.
const (
	Permanent Duration = iota
	TenYears
	TwoMonths
	SevenDays
	WindOrQuake
)

// Factor is C_D of table 2.3.2, for connections at most 1.6 (11.3.2).
func (d Duration) Factor() float64 {
	switch d {
	case TenYears:
		return 1
	case TwoMonths:
		return 1.15
	case SevenDays:
		return 1.25
	case WindOrQuake:
		return 1.6
	default:
		return 0.9
	}
}

// Factors for damp (table 11.3.3) and for shear in end grain (12.5.2.2).
const (
	dampFactor     = 0.7
	endGrainFactor = 0.67
)

// Pull is the factor on withdrawal; the error is ErrEndGrain.
func (a Adjust) Pull() (float64, error) {
	if a.EndGrain {
		return 0, ErrEndGrain
	}
	return a.common(), nil
}

// Shear is the factor on lateral values.
func (a Adjust) Shear() float64 {
	if a.EndGrain {
		return a.common() * endGrainFactor
	}
	return a.common()
}

func (a Adjust) common() float64 {
	f := a.Duration.Factor()
	if a.Damp {
		f *= dampFactor
	}
	return f
}
