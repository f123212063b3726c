package wall

import "math"

// Forces of a panel on its cleat.
const (
	gravity        = 9.81 // m/s²
	newtonsAKN     = 1000.0
	spacerLessM    = 0.150 // what the places of cleat and spacer take off the panel's height as a lever at least; common practice
	spacerUpM      = 0.040 // middle of the spacer, from the field's foot; as panels are built
	leastArmPart   = 4.0   // of its height a low panel keeps as lever; invented
	woodOnWood     = 0.3   // least friction of smooth dry wood on wood, 0.3 to 0.5 by the Wood Handbook, from memory
	loneStudArmM   = 0.1   // lever of a strip on one stud against tipping sideways; invented, cautious
	searchHalvings = 60    // of the share: more than a float64 can tell apart
)

// Load is one panel, or all panels on one strip, as the strip in the wall feels
// it. Nothing here is factored.
type Load struct {
	Kg            float64
	CentroidM     float64 // of the mass, out from the wall
	FieldHeightM  float64
	CleatM        float64 // thickness of the cleat
	CleatFootM    float64 // lower inner corner of the panel's half, below the field's top
	BevelRad      float64 // from the horizontal
	CentreM       float64 // of the mass, along the wall
	LeftM, RightM float64 // ends of the cleat, along the wall
}

// DownN is the weight.
func (l Load) DownN() float64 { return l.Kg * gravity }

// MomentN is the outward pull at the cleat that keeps the panel from leaning
// out: mass times the distance of its centre over the lever down to the spacer.
func (l Load) MomentN() float64 {
	arm := max(l.FieldHeightM-max(spacerLessM, l.CleatFootM+spacerUpM), l.FieldHeightM/leastArmPart)
	return l.DownN() * l.CentroidM / arm
}

// WedgeN is what the bevel adds: the hooked half slides down the slope and pushes
// the strip off the wall, less what friction holds: W tan(bevel − atan 0.3).
func (l Load) WedgeN() float64 {
	return l.DownN() * math.Max(0, math.Tan(l.BevelRad-math.Atan(woodOnWood)))
}

// OutN is all that pulls the strip off the wall.
func (l Load) OutN() float64 { return l.MomentN() + l.WedgeN() }

// HeaviestShare is the share of the load that the busiest stud has to take, when
// they share it as well as balance allows: of all ways to hold weight and middle
// of the panel, the one whose largest part is least. A stud more can never make
// it worse. A lone stud also keeps the panel from tipping sideways.
func HeaviestShare(centreM float64, studsM []float64) float64 {
	switch len(studsM) {
	case 0:
		return math.Inf(1)
	case 1:
		return 1 + math.Abs(centreM-studsM[0])/loneStudArmM
	}
	low, high := 1/float64(len(studsM)), 1.0
	for !balances(high, centreM, studsM) {
		high *= 2
	}
	for range searchHalvings {
		if mid := (low + high) / 2; balances(mid, centreM, studsM) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// balances reports whether parts between −most and +most at the studs, which
// rise from left to right, can add to 1 with their middle at the centre.
func balances(most, centre float64, studs []float64) bool {
	return farthest(most, studs, 1) >= centre-1e-12 && farthest(most, studs, -1) <= centre+1e-12
}

// farthest is the middle of the load farthest to the right, or to the left with
// side −1, that parts of a size can hold.
func farthest(most float64, studs []float64, side int) float64 {
	middle, left := 0.0, 1.0
	for _, x := range studs {
		middle -= most * x
		left += most
	}
	for i := range studs {
		x := studs[i]
		if side > 0 {
			x = studs[len(studs)-1-i]
		}
		part := math.Min(left, 2*most)
		middle += part * x
		left -= part
	}
	return middle
}
