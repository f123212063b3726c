package wall

import "math"

// Forces of a panel on its cleat.
const (
	gravity      = 9.81  // m/s²
	spacerLessM  = 0.150 // what the places of cleat and spacer take off the panel's height as a lever at least; common practice
	spacerUpM    = 0.040 // middle of the spacer, from the field's foot; as panels are built
	leastArmPart = 4.0   // of its height a low panel keeps as lever; invented
	woodOnWood   = 0.3   // least friction of smooth dry wood on wood, 0.3 to 0.5 by the Wood Handbook, from memory
)

// Load is one panel, or all panels on one strip, as the strip in the wall feels
// it. Nothing here is factored. Places along the wall are measured from its left
// corner.
type Load struct {
	Kg            float64
	CentroidM     float64 // of the mass, out from the wall
	FieldHeightM  float64
	CleatM        float64 // thickness of the cleat
	CleatFootM    float64 // lower inner corner of the panel's half, below the field's top
	BevelRad      float64 // from the horizontal
	CentreM       float64 // of the mass, along the wall
	LeftM, RightM float64 // where the panel's half begins and ends
}

// DownN is the weight.
func (l Load) DownN() float64 { return l.Kg * gravity }

// LeanN is what keeps the panel from leaning out, and what its spacer presses
// against the wall: mass times the distance of its centre over the lever down to
// the spacer.
func (l Load) LeanN() float64 {
	arm := max(l.FieldHeightM-max(spacerLessM, l.CleatFootM+spacerUpM), l.FieldHeightM/leastArmPart)
	return l.DownN() * l.CentroidM / arm
}

// WedgeN is what the bevel makes of the weight: the hooked half slides down the
// slope between strip and wall and spreads them, less what friction holds: W
// tan(bevel − atan 0.3).
func (l Load) WedgeN() float64 {
	return l.DownN() * math.Max(0, math.Tan(l.BevelRad-math.Atan(woodOnWood)))
}

// OutN pulls the strip off the wall. The strip holds the hooked half in with one
// force. Across the wall it meets the spacer's push, which is the lean, and the
// push of the wall on the hooked half, which is never below zero: so it is the
// lean at least. Along the slope it stands against sliding: so it is the wedge at
// least. It is the larger, and not their sum.
func (l Load) OutN() float64 { return math.Max(l.LeanN(), l.WedgeN()) }
