package wall

import (
	"math"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

const (
	// bowBaseM is half the straightedge that a bow is measured with.
	bowBaseM = 1.0
	// flatMM is how far a wall may be out of flat under it before more than shims is
	// asked for. Common practice, no source.
	flatMM = 5.0
)

// Shim is what is packed between strip and wall at one place along it.
type Shim struct {
	AlongM float64 // from the left corner
	Thick  length.Length
}

// gapMM is how far a straight strip stands off the wall at a place, for a wall that goes
// on as it was measured: an arc so flat that it is a parabola. A hollow wall is touched
// at the ends of the strip, one with a belly in the middle.
func (h Hung) gapMM(b Bay, alongM float64) float64 {
	half := (b.ToM - b.FromM) / 2
	deep := h.Wall.Bow.Millimetres() * half * half / (bowBaseM * bowBaseM)
	off := (alongM - (b.FromM+b.ToM)/2) / half
	if h.Wall.BowShape == design.Belly {
		return deep * off * off
	}
	return deep * max(0, 1-off*off)
}

// Shims are those at all fixings of the group's strips, from the left, rounded up to
// whole millimetres; none where the wall is flat or nothing goes into it.
func (h Hanging) Shims() []Shim {
	if h.Wall.Bow.IsZero() {
		return nil
	}
	var all []Shim
	for i, b := range h.Bays {
		for _, x := range h.fixedAt(i) {
			mm := math.Ceil(h.gapMM(b, x) - dustOfFloats)
			if mm > 0 {
				all = append(all, Shim{AlongM: x, Thick: length.MM(int64(mm))})
			}
		}
	}
	return all
}

// fixedAt are the places along the wall at which a strip may be fixed.
func (h Hanging) fixedAt(bay int) []float64 {
	switch h.Means {
	case Studs:
		return h.Bays[bay].StudsM
	case RatedValue:
		var all []float64
		if bay < len(h.Rated) {
			for _, p := range h.Rated[bay].Holes(h.Bays[bay]) {
				all = append(all, p.XM)
			}
		}
		return all
	default:
		return nil
	}
}

// thickestShim is that of all strips, in mm. It counts as so much more board between
// strip and stud.
func (h Hanging) thickestShim() float64 {
	most := 0.0
	for _, s := range h.Shims() {
		most = math.Max(most, s.Thick.Millimetres())
	}
	return most
}

// bowed is about a wall that is further out of flat than shims alone are good for.
func (h Hanging) bowed() []check.WatchOut {
	if h.Wall.Bow.Millimetres() <= flatMM || h.Means != Studs && h.Means != RatedValue {
		return nil
	}
	return []check.WatchOut{{
		Code: "wall/bowed", Level: check.Caution, Gate: check.Hang,
		Args: words.Args{
			"bow": h.Wall.Bow, "limit": tenths(flatMM), "shim": tenths(h.thickestShim()),
		},
		Field: h.wallField("bow"), Source: check.CommonPractice,
	}}
}

// shimFacts say what is packed where.
func (h Hanging) shimFacts() []Fact {
	shims := h.Shims()
	if len(shims) == 0 {
		return nil
	}
	at := make([]words.Phrase, len(shims))
	for i, s := range shims {
		at[i] = words.Phrase{Key: "hold/shim-at", Args: words.Args{"thick": s.Thick, "along": metres(s.AlongM)}}
	}
	name := "shims"
	if h.Means == RatedValue {
		name = "rated-shims"
	}
	return []Fact{{name, words.Args{"at": at}}}
}
