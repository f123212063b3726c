package wall

import "math"

// Lifting is one lift by one person with two hands, in the centimetres of the
// revised equation of NIOSH: Waters, Putz-Anderson and Garg, Applications manual
// for the revised NIOSH lifting equation, DHHS (NIOSH) 94-110, revised 2021.
// The equation is not for teams, and a panel is mostly lifted by one.
type Lifting struct {
	AwayCm   float64 // hands in front of the ankles (H)
	StartCm  float64 // hands above the floor (V)
	RiseCm   float64 // up to where they end (D)
	TwistDeg float64 // of the body (A)
	Grip     Grip
}

// Grip is how well the hands hold.
type Grip uint8

// The grips of the equation's coupling factor; a bare panel edge is poor.
const (
	PoorGrip Grip = iota
	FairGrip
	GoodGrip
)

// Constants of the equation.
const (
	loadConstantKg = 23
	leastAwayCm    = 25
	mostAwayCm     = 63
	mostHandsCm    = 175
	leastRiseCm    = 25
	mostTwistDeg   = 135
	fairBelowCm    = 75
)

// LimitKg is the recommended weight limit for a lift now and then (at most once
// in five minutes, for an hour): 23 kg × 25/H × (1 − 0.003 |V − 75|) × (0.82 +
// 4.5/D) × (1 − 0.0032 A) × coupling. It is 0 outside the equation's range.
func (l Lifting) LimitKg() float64 {
	away, start, rise, twist := l.Factors()
	return loadConstantKg * away * start * rise * twist * l.grip()
}

// Factors are the multipliers of reach, start, rise and twist.
func (l Lifting) Factors() (away, start, rise, twist float64) {
	end := l.StartCm + l.RiseCm
	if l.AwayCm > mostAwayCm || l.StartCm < 0 || l.StartCm > mostHandsCm || end > mostHandsCm || l.TwistDeg > mostTwistDeg {
		return 0, 0, 0, 0
	}
	away = leastAwayCm / math.Max(l.AwayCm, leastAwayCm)
	start = 1 - 0.003*math.Abs(l.StartCm-75)
	rise = 0.82 + 4.5/math.Max(l.RiseCm, leastRiseCm)
	return away, start, rise, 1 - 0.0032*math.Max(0, l.TwistDeg)
}

// grip is the coupling multiplier, from memory of the manual's table 7.
func (l Lifting) grip() float64 {
	switch {
	case l.Grip == GoodGrip, l.Grip == FairGrip && l.StartCm >= fairBelowCm:
		return 1
	case l.Grip == FairGrip:
		return 0.95
	default:
		return 0.9
	}
}
