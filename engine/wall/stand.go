package wall

import (
	"math"

	"blockfield/engine/length"
)

// TipDeg is the angle at which a stand falls over a toe: by how far the toe stands
// off the line of the centre of mass, and how high that is.
func TipDeg(toe, centre float64) float64 { return math.Atan2(toe, centre) * 180 / math.Pi }

// ToeFor is how far a toe has to stand off to reach an angle.
func ToeFor(deg, centre float64) float64 { return centre * math.Tan(deg*math.Pi/180) }

// Tipping is how a stand falls over, on the side where it falls first.
type Tipping struct {
	Deg       float64       // that it leans then, at least 0
	Backwards bool          // over its heel, not its toe
	Toe       length.Length // from the centre of mass to that edge of the foot
	Centre    length.Length // height of the centre of mass
	More      length.Length // what the foot lacks on that side; 0 where it lacks nothing
}

// Tipping works out the stand, the mass at the height that was typed or where the
// panels have it, whichever is higher.
func (h Hung) Tipping() Tipping {
	s := h.Design.Stand
	t := Tipping{Toe: s.ToeAhead, Centre: length.Max(s.CentreHeight, h.Built.Bottom.Add(h.Built.TotalHeight.Half()))}
	if back := s.BaseDepth.Sub(s.ToeAhead); back.Cmp(t.Toe) < 0 {
		t.Toe, t.Backwards = back, true
	}
	t.Deg = math.Max(0, TipDeg(t.Toe.Metres(), t.Centre.Metres()))
	if t.Deg < leastTipDeg {
		lacks := ToeFor(leastTipDeg, t.Centre.Metres()) - t.Toe.Metres()
		t.More = length.Micrometres(int64(math.Ceil(lacks * 1e6))).CeilMM()
	}
	return t
}
