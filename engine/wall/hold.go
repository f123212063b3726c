package wall

import (
	"math"

	"blockfield/engine/wall/fixing"
)

// What the screws of a strip are counted with where nobody has said better. All
// of it is on the cautious side, and the sentence says so.
const (
	studG          = 0.42  // spruce-pine-fir, NDS 2018 table 12.3.3A; a stud of another wood is to be said
	stripG         = 0.42  // the cleat is counted as the same wood
	boardMM        = 25.0  // two layers of wall board between strip and stud; common practice
	studDeepMM     = 75.0  // of a stud at the least; the longest screw then ends in it behind one layer of board; common practice
	studEndMM      = 62.0  // from the end of the cleat to a stud that counts: ten diameters of the thickest screw
	edgeDiameters  = 4.0   // from a screw to the edge of the strip that is loaded towards; NDS 12.5.1, from memory
	leastScrews    = 4     // a panel; common practice
	mostAStud      = 8     // more make a splint of the stud; invented
	leastFactor    = 2.0   // and only where the maker says why nobody can be below
	customFactor   = 4.0   // on top of what is in the published values; common practice
	stripBendPsi   = 875.0 // bending of No. 2 spruce-pine-fir, NDS supplement, from memory
	stripStiffPsi  = 1.4e6 // its stiffness, same
	creep          = 2.0   // for what hangs for ever; common practice
	sagPart        = 300.0 // of a span that a strip may sag; common practice
	pascalsPerPsi  = 6894.757
	aboveSpacerM   = 0.060 // top of the spacer, from the field's foot
	thinnestGauge  = 8     // that holds a cleat on a wall; common practice
	millimetresInM = 1000.0
)

// screwLengthsMM are what a shop sells; common practice.
func screwLengthsMM() []float64 { return []float64{40, 50, 60, 70, 80, 90, 100} }

// Strip is the half of the cleat that is screwed to the studs, and its screws.
type Strip struct {
	Gauge         int
	ScrewMM       float64 // length of a screw
	AStud         int     // screws one above another in every stud
	StudsM        []float64
	HeightM       float64 // of the strip, bevel and all
	Share         float64 // of the load, at the busiest stud
	Use           float64 // of the busiest screw, the load factor counted in; 1 is all of it
	ShearN, PullN float64 // of the busiest screw, factored
	HoldsShearN   float64
	HoldsPullN    float64
	BendUse       float64 // of the strip between its studs and beyond them
	SagUse        float64
	Fits          bool // there is room for the strip between cleat and spacer
	Hole          fixing.Hole
	Mode          fixing.Mode
}

// Screws is how many go into the wall.
func (s Strip) Screws() int { return s.AStud * len(s.StudsM) }

// Enough reports whether screws and strip hold and the strip fits.
func (s Strip) Enough() bool { return s.Use <= 1 && s.BendUse <= 1 && s.SagUse <= 1 && s.Fits }

// Factor is the load factor that counts: what was typed, and 4 at the least. Only
// where a reason is stated why nobody can be below may it go down to 2.
func Factor(typed float64, reason string) float64 {
	if filled(reason) {
		return math.Max(leastFactor, typed)
	}
	return math.Max(customFactor, typed)
}

// ChooseStrip returns the strip with the fewest screws that holds, of the thinnest
// screw among those; where none holds, the one that comes nearest. The diameter
// is that of a screw somebody has said, in mm, or 0 for any. It reports false
// where there is no screw so thin, or no stud.
func ChooseStrip(l Load, studsM []float64, diameterMM, factor float64) (Strip, bool) {
	var best Strip
	found := false
	if len(studsM) == 0 {
		return best, false
	}
	want := ask{l, studsM, HeaviestShare(l.CentreM, studsM), factor}
	least := max(1, (leastScrews+len(studsM)-1)/len(studsM))
	for n := least; n <= mostAStud; n++ {
		for _, s := range screwsFor(diameterMM) {
			got, err := want.try(s, n)
			if err != nil {
				continue
			}
			if got.Enough() {
				return got, true
			}
			if !found || got.worst() < best.worst() {
				best, found = got, true
			}
		}
	}
	return best, found
}

// worst puts a strip that does not fit behind those that do.
func (s Strip) worst() float64 {
	w := max(s.Use, s.BendUse, s.SagUse)
	if !s.Fits {
		w += mostAStud
	}
	return w
}

func screwsFor(diameterMM float64) []fixing.Screw {
	if diameterMM > 0 {
		s, ok := fixing.NotThicker(diameterMM / fixing.MMPerInch)
		if !ok {
			return nil
		}
		return []fixing.Screw{s}
	}
	var all []fixing.Screw
	for _, s := range fixing.Screws() {
		if s.Gauge >= thinnestGauge {
			all = append(all, s)
		}
	}
	return all
}

// ask is what a strip is chosen for.
type ask struct {
	Load
	studsM []float64
	share  float64 // of the load, at the busiest stud
	factor float64
}

// try is a strip with so many screws of one kind in every stud. The error is that
// of a screw that the rules have no value for.
func (l ask) try(s fixing.Screw, n int) (Strip, error) {
	lengthMM := screwLength(s, l.CleatM)
	h, err := fixing.Joint{
		Screw: s, LengthIn: lengthMM / fixing.MMPerInch,
		SideG: stripG, SideIn: l.CleatM * millimetresInM / fixing.MMPerInch, GapIn: boardMM / fixing.MMPerInch,
		MainG: studG, MainIn: studDeepMM / fixing.MMPerInch,
	}.Holds()
	if err != nil {
		return Strip{}, err
	}
	out := Strip{
		Gauge: s.Gauge, ScrewMM: lengthMM, AStud: n, StudsM: l.studsM,
		Share: l.share, Hole: s.HoleFor(studG), Mode: h.Mode,
		HoldsShearN: h.ShearLbf * fixing.NewtonsPerPound, HoldsPullN: h.PullLbf * fixing.NewtonsPerPound,
	}
	places, height := ladder(s, n, l.Load)
	out.HeightM = height
	out.Fits = height <= l.FieldHeightM-l.CleatFootM-aboveSpacerM
	out.ShearN = l.DownN() * l.factor * out.Share / float64(n)
	out.PullN = l.OutN() * l.factor * out.Share * topPart(places, height)
	out.Use = h.Use(out.ShearN/fixing.NewtonsPerPound, out.PullN/fixing.NewtonsPerPound)
	out.BendUse, out.SagUse = bend(l.Load, l.studsM, height, l.factor)
	return out, nil
}

// screwLength is the shortest that stands ten diameters deep, or the longest.
func screwLength(s fixing.Screw, cleatM float64) float64 {
	all := screwLengthsMM()
	for _, mm := range all {
		if mm-cleatM*millimetresInM-boardMM >= 10*s.DiameterIn*fixing.MMPerInch {
			return mm
		}
	}
	return all[len(all)-1]
}

// ladder is where the screws of one stud sit above the foot of the strip, and
// how high the strip has to be for them. Holes are bored.
func ladder(s fixing.Screw, n int, l Load) (places []float64, height float64) {
	const metresAnInch = fixing.MMPerInch / millimetresInM
	edge, step := edgeDiameters*s.DiameterIn*metresAnInch, s.Spaced(true).InRowIn*metresAnInch
	for i := range n {
		places = append(places, edge+float64(i)*step)
	}
	return places, 2*edge + float64(n-1)*step + l.CleatM*math.Tan(l.BevelRad)
}

// topPart is the share of an outward force at the tip of a strip that the topmost
// screw takes, where the strip pivots about its foot: h y / Σy².
func topPart(places []float64, height float64) float64 {
	var squares float64
	for _, y := range places {
		squares += y * y
	}
	return height * places[len(places)-1] / squares
}

// bend is the use of a strip as a beam: down on its height and out on its
// thickness, simply held between studs and free beyond the last ones, the load
// even along it.
func bend(l Load, studsM []float64, height, factor float64) (bending, sag float64) {
	long := l.RightM - l.LeftM
	if long <= 0 || len(studsM) == 0 {
		return math.Inf(1), math.Inf(1)
	}
	down, out := l.DownN()/long, l.OutN()/long
	span := 0.0
	for i := range studsM[1:] {
		span = math.Max(span, studsM[i+1]-studsM[i])
	}
	beyond := math.Max(studsM[0]-l.LeftM, l.RightM-studsM[len(studsM)-1])
	moment := func(w float64) float64 { return math.Max(w*span*span/8, w*beyond*beyond/2) }
	thick := l.CleatM
	stress := 6*moment(down)/(thick*height*height) + 6*moment(out)/(height*thick*thick)
	allowed := stripBendPsi * pascalsPerPsi * fixing.Permanent.Factor()
	bending = factor * stress / allowed
	return bending, sagOf(down, out, span, beyond, thick, height)
}

// sagOf compares the sag after years, the larger of both directions, with the
// part of span or overhang that may be.
func sagOf(down, out, span, beyond, thick, height float64) float64 {
	stiff := stripStiffPsi * pascalsPerPsi
	part := func(w, i float64) float64 {
		between := 5 * w * math.Pow(span, 3) / (384 * stiff * i)
		past := w * math.Pow(beyond, 3) / (8 * stiff * i)
		return creep * sagPart * math.Max(between, past/2) // a free end counts as half a span of twice its length
	}
	return math.Max(part(down, thick*math.Pow(height, 3)/12), part(out, height*math.Pow(thick, 3)/12))
}

// Rated is a count of fixings by what their maker gives for this base.
type Rated struct {
	Count  int
	Needed float64 // before rounding up and the least count
	Use    float64
}

// mostFixings: more say only that the typed value is far too low; invented.
const mostFixings = 1000

// ChooseRated counts fixings with typed values, in kN for one, shear and pull
// added: four at least.
func ChooseRated(l Load, shearKN, pullKN, factor float64) Rated {
	needed := factor * (l.DownN()/shearKN + l.OutN()/pullKN) / newtonsAKN
	n := max(leastScrews, int(math.Ceil(math.Min(needed, mostFixings)-dustOfFloats)))
	return Rated{Count: n, Needed: needed, Use: needed / float64(n)}
}
