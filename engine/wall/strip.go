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
	unsaidBoardMM  = 25.0  // two layers of wall board between strip and stud; common practice
	studDeepMM     = 75.0  // of a stud at the least; the longest screw then ends in it behind one layer of board; common practice
	edgeDiameters  = 4.0   // from a screw to the edge of the strip that is loaded towards; NDS 12.5.1, from memory
	mostAStud      = 8     // more make a splint of the stud; invented
	leastFactor    = 2.0   // and only where the maker says why nobody can be below
	usualFactor    = 4.0   // on top of what is in the published values; common practice
	stripBendPsi   = 875.0 // bending of No. 2 spruce-pine-fir, NDS supplement, from memory
	stripStiffPsi  = 1.4e6 // its stiffness, same
	creep          = 2.0   // for what hangs for ever; common practice
	sagPart        = 300.0 // of a span that a strip may sag; common practice
	pascalsPerPsi  = 6894.757
	aboveSpacerM   = 0.060 // top of the spacer, from the field's foot
	thinnestGauge  = 8     // that holds a cleat on a wall; common practice
	millimetresInM = 1000.0
	metresAnInch   = fixing.MMPerInch / millimetresInM
)

// LeastFixings are the least that hold a panel in a wall, whatever it weighs. Common
// practice, no source.
const LeastFixings = 4

// screwLengthsMM are what a shop sells; common practice.
func screwLengthsMM() []float64 { return []float64{40, 50, 60, 70, 80, 90, 100} }

// Strip is the half of the cleat that is screwed to the studs, and its screws.
type Strip struct {
	Gauge         int
	ScrewMM       float64 // length of a screw
	AStud         int     // screws one above another in every stud
	StudsM        []float64
	PlacesM       []float64 // of the screws of a stud, from the foot of the strip
	HeightM       float64   // of the strip, bevel and all
	LeftM, RightM float64   // its ends, along the wall
	TipM          float64   // height of its tip above the floor
	Share         float64   // of the outward force, at the busiest stud
	Use           float64   // of the busiest screw, the load factor counted in; 1 is all of it
	ShearN, PullN float64   // of the busiest screw, factored
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

// Point is a place on a wall, from its left corner and up from the floor.
type Point struct{ XM, YM float64 }

// Holes are where the screws of the strip go into the wall, stud by stud from the
// left, each from the top.
func (s Strip) Holes() []Point {
	var all []Point
	foot := s.TipM - s.HeightM
	for _, x := range s.StudsM {
		for i := range s.PlacesM {
			all = append(all, Point{x, foot + s.PlacesM[len(s.PlacesM)-1-i]})
		}
	}
	return all
}

// Enough reports whether screws and strip hold and the strip fits.
func (s Strip) Enough() bool { return s.MostUse() <= 1 && s.Fits }

// MostUse is the largest use of screws and strip.
func (s Strip) MostUse() float64 { return max(s.Use, s.BendUse, s.SagUse) }

// worst puts a strip that does not fit behind those that do.
func (s Strip) worst() float64 {
	if !s.Fits {
		return s.MostUse() + mostAStud
	}
	return s.MostUse()
}

// Factor is the load factor that counts: what was typed, and 4 at the least. Only
// where a reason is stated why nobody can be below may it go down to 2.
func Factor(typed float64, reason string) float64 {
	if filled(reason) {
		return math.Max(leastFactor, typed)
	}
	return math.Max(usualFactor, typed)
}

// Rules is what the screws of strips are chosen by.
type Rules struct {
	DiameterMM float64 // of a screw that somebody has said; 0: any
	BoardMM    float64 // between strip and stud, with what is packed there
	Factor     float64 // on the load
}

// Bay is what one strip carries and what it is screwed to.
type Bay struct {
	Load
	Panels     []int     // numbers of the panels in their group
	StudsM     []float64 // behind the strip, from left to right
	FromM, ToM float64   // the ends of the strip, along the wall
	TipM       float64   // height of its tip above the floor
}

// ChooseStrips returns a strip for each bay, all with one kind of screw and as
// many in a stud: the fewest that hold, of the thinnest screw among those; where
// none holds, those that come nearest. The bays have cleats of one thickness. It
// reports false where there is no screw so thin, or a bay without a stud.
func ChooseStrips(bays []Bay, by Rules) ([]Strip, bool) {
	if len(bays) == 0 {
		return nil, false
	}
	choices := make([][]studGroup, len(bays))
	for i, b := range bays {
		choices[i] = groups(b.Load, b.StudsM)
	}
	all := driven(by, bays[0].CleatM*millimetresInM)
	var best []Strip
	nearest := math.Inf(1)
	for n := 1; n <= mostAStud; n++ {
		for _, s := range all {
			got, worst := strips(bays, choices, by.Factor, s, n)
			if worst < nearest {
				best, nearest = got, worst
			}
			if worst <= 1 {
				return got, true
			}
		}
	}
	return best, best != nil
}

// drive is a screw of a length through cleat and board into a stud, and what it
// holds.
type drive struct {
	fixing.Screw
	lengthMM float64
	holds    fixing.Holds
}

// driven are the screws to choose from, but for those that the published rules
// have no value for, since they do not stand deep enough.
func driven(by Rules, cleatMM float64) []drive {
	var all []drive
	for _, s := range screwsFor(by.DiameterMM) {
		long := screwLength(s, cleatMM+by.BoardMM)
		h, err := fixing.Joint{
			Screw: s, LengthIn: long / fixing.MMPerInch,
			SideG: stripG, SideIn: cleatMM / fixing.MMPerInch, GapIn: by.BoardMM / fixing.MMPerInch,
			MainG: studG, MainIn: studDeepMM / fixing.MMPerInch,
		}.Holds()
		if err == nil {
			all = append(all, drive{s, long, h})
		}
	}
	return all
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

// strips are the strips of some bays with n screws of a kind in every stud, and
// what the worst of them comes to; it is infinite where a strip has too few screws
// or no stud.
func strips(bays []Bay, choices [][]studGroup, factor float64, s drive, n int) ([]Strip, float64) {
	worst := 0.0
	var all []Strip
	for i, b := range bays {
		best, found := Strip{}, false
		for _, g := range choices[i] {
			if n*len(g.studsM) < LeastFixings {
				continue
			}
			if got := b.try(g, factor, s, n); !found || got.worst() < best.worst() {
				best, found = got, true
			}
		}
		if !found {
			return nil, math.Inf(1)
		}
		all, worst = append(all, best), math.Max(worst, best.worst())
	}
	return all, worst
}

// try is a strip on a group of studs with n screws of one kind in every stud.
func (b Bay) try(g studGroup, factor float64, s drive, n int) Strip {
	out := Strip{
		Gauge: s.Gauge, ScrewMM: s.lengthMM, AStud: n, StudsM: g.studsM, LeftM: b.FromM, RightM: b.ToM, TipM: b.TipM,
		Share: g.out, Hole: s.HoleFor(studG), Mode: s.holds.Mode,
		HoldsShearN: s.holds.ShearLbf * fixing.NewtonsPerPound, HoldsPullN: s.holds.PullLbf * fixing.NewtonsPerPound,
	}
	bevel := b.CleatM * math.Tan(b.BevelRad)
	step := s.Spaced().InRowIn * metresAnInch
	out.PlacesM, out.HeightM = ladder(s.Screw, n, step, bevel)
	out.Fits = out.HeightM <= b.FieldHeightM-b.CleatFootM-aboveSpacerM
	out.ShearN = b.DownN() * factor * g.down(n, step)
	out.PullN = b.OutN() * factor * g.out * topPart(out.PlacesM, out.HeightM)
	out.Use = s.holds.Use(out.ShearN/fixing.NewtonsPerPound, out.PullN/fixing.NewtonsPerPound)
	out.BendUse, out.SagUse = bend(b.Load, g.studsM, out.HeightM-bevel, factor)
	return out
}

// screwLength is the shortest that stands ten diameters deep behind what it goes
// through, or the longest.
func screwLength(s fixing.Screw, throughMM float64) float64 {
	all := screwLengthsMM()
	for _, mm := range all {
		if mm-throughMM >= 10*s.DiameterIn*fixing.MMPerInch {
			return mm
		}
	}
	return all[len(all)-1]
}

// ladder is where the screws of one stud sit above the foot of the strip, and
// how high the strip has to be for them and its bevel. Holes are bored.
func ladder(s fixing.Screw, n int, step, bevel float64) (places []float64, height float64) {
	edge := edgeDiameters * s.DiameterIn * metresAnInch
	for i := range n {
		places = append(places, edge+float64(i)*step)
	}
	return places, 2*edge + float64(n-1)*step + bevel
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

// bend is the use of a strip as a beam: down on its height without the bevel and
// out on its thickness, simply held between studs and free beyond the last ones,
// the load even along it.
func bend(l Load, studsM []float64, height, factor float64) (bending, sag float64) {
	long := l.RightM - l.LeftM
	down, out := l.DownN()/long, l.OutN()/long
	span := 0.0
	for i := range studsM[1:] {
		span = math.Max(span, studsM[i+1]-studsM[i])
	}
	beyond := max(0, studsM[0]-l.LeftM, l.RightM-studsM[len(studsM)-1])
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
