package wall

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
)

// Words of the design that decide how a wall is held.
const (
	timberStuds  = "board on timber studs"
	noFixingWall = "no fixing allowed"
	unknownWall  = "unknown"
	automatic    = "automatic"
	woodScrew    = "wood screw"
	noFixing     = "none"
	noLock       = "none"
)

// wantedStuds are how many studs a strip is screwed to at the least. Common
// practice, no source.
const wantedStuds = 2

// studEndMM is from the end of a strip to a stud that counts: ten diameters of the
// thickest screw, the commentary to NDS 12.1.5.7.
const studEndMM = 62.0

// Means is what carries a group.
type Means string

// The means. BoardAlone and NotChecked carry nothing that could be worked out.
const (
	Stand      Means = "stand"
	Studs      Means = "studs" // wood screws in timber studs, by the published rules
	RatedValue Means = "rated" // by what the fixing's maker gives
	BoardAlone Means = "board"
	NotChecked Means = "not-checked"
)

// Hanging is a group on its wall with what carries it, worked out once.
type Hanging struct {
	Hung            // its panels have their cleats where the screws want them
	Means    Means  //
	Halves   []Half // the panel's half of each cleat, as Built.Panels
	Bays     []Bay  // what each strip in the wall carries: a panel, or with a rail all panels of a row
	Strips   []Strip
	Rated    []Rated // with RatedValue, as Bays
	Factor   float64 // on the load
	BoardMM  float64 // that counts between strip and stud
	ShimMM   float64 // and the thickest shim, which counts like it
	LiftRoom length.Length
}

// Hang works out what carries a group.
func Hang(h Hung) Hanging {
	out := Hanging{
		Hung: h, Means: h.means(), BoardMM: unsaidBoardMM,
		Factor:   Factor(h.Wall.Fixing.LoadFactor, h.Wall.Fixing.Reason),
		LiftRoom: LiftRoom(h.Design.Cleat.Thickness, h.Design.Cleat.Bevel),
	}
	if !h.Wall.Board.IsZero() {
		out.BoardMM = h.Wall.Board.Millimetres()
	}
	out.Built.Panels = slices.Clone(h.Built.Panels)
	out.Halves = h.halves(out.Factor)
	for i, p := range out.Built.Panels {
		out.Built.Panels[i] = p.WithCleatFoot(out.Halves[i].Foot)
	}
	out.Bays = out.bays()
	out.ShimMM = out.thickestShim()
	switch out.Means {
	case Studs:
		by := Rules{DiameterMM: h.Wall.Fixing.Diameter.Millimetres(), BoardMM: out.BoardMM + out.ShimMM, Factor: out.Factor}
		out.Strips, _ = ChooseStrips(out.Bays, by)
	case RatedValue:
		for _, b := range out.Bays {
			out.Rated = append(out.Rated, ChooseRated(b.Load, h.Wall.Fixing.RatedShear, h.Wall.Fixing.RatedPull, out.Factor))
		}
		out.ShimMM = out.thickestShim()
	}
	return out
}

// means is what carries the group, by what is said of wall and fixing.
func (h Hung) means() Means {
	f := h.Wall.Fixing
	switch {
	case !h.Design.Stand.BaseDepth.IsZero():
		return Stand
	case h.NothingMayGoIn(), h.Wall.Kind == unknownWall:
		return NotChecked
	case ByRules(h.Wall):
		if len(h.studs()) == 0 {
			return BoardAlone
		}
		return Studs
	case f.RatedShear > 0 && f.RatedPull > 0 && filled(f.What) && filled(f.Source):
		return RatedValue
	case strings.HasPrefix(h.Wall.Kind, "board on"):
		return BoardAlone
	default:
		return NotChecked
	}
}

// HasStuds reports whether a wall is board on studs, of wood or of steel.
func HasStuds(w design.Wall) bool { return strings.HasSuffix(w.Kind, "studs") }

// ByRules reports whether the published rules for wood screws count what goes into a
// wall, so that nobody has to type what it holds.
func ByRules(w design.Wall) bool {
	return w.Kind == timberStuds && (w.Fixing.Kind == woodScrew || w.Fixing.Kind == automatic)
}

// Takes reports whether something may go into a wall, and what its maker gives for it
// would count.
func Takes(w design.Wall) bool {
	return w.Kind != noFixingWall && w.Kind != unknownWall && w.Fixing.Kind != noFixing
}

// NothingMayGoIn reports whether no fixing may go into the wall, or somebody has said
// that none does.
func (h Hung) NothingMayGoIn() bool {
	return h.Wall.Kind == noFixingWall || h.Wall.Fixing.Kind == noFixing
}

func filled(text string) bool { return strings.TrimSpace(text) != "" }

// load is one panel as the strip behind it feels it, the lower inner corner of its
// half of the cleat so far below the field's top.
func (h Hung) load(p panel.Panel, foot length.Length) Load {
	left, right := cleatEnds(p)
	return Load{
		Kg: h.Kg(), CentroidM: p.CentroidM, FieldHeightM: h.Built.FieldHeight.Metres(),
		CleatM: h.Design.Cleat.Thickness.Metres(), BevelRad: h.Design.Cleat.Bevel * math.Pi / 180,
		CleatFootM: foot.Metres(), CentreM: (left + right) / 2, LeftM: left, RightM: right,
	}
}

// cleatEnds is where the cleat of a panel begins and ends along the wall.
func cleatEnds(p panel.Panel) (left, right float64) {
	for _, part := range p.Parts {
		if part.Kind == panel.CleatPart {
			left = p.Left.Metres() + part.X.Metres()
			return left, left + part.Width.Metres()
		}
	}
	return 0, 0
}

// bays are what the strips in the wall carry.
func (h Hanging) bays() []Bay {
	var all []Bay
	for i, p := range h.Built.Panels {
		one := Bay{Load: h.load(p, h.Halves[i].Foot), Panels: []int{i}}
		one.TipM = h.tip(i).Metres()
		j := slices.IndexFunc(all, func(b Bay) bool { return h.Built.Panels[b.Panels[0]].Bottom.Same(p.Bottom) })
		if h.Wall.Rail && j >= 0 {
			all[j] = all[j].with(one)
			continue
		}
		all = append(all, one)
	}
	studs := h.studs()
	for i := range all {
		all[i].reach(studs, h.Wall.Width.Metres(), h.Wall.Rail)
	}
	return all
}

// with is a bay with one panel more. The lowest cleat counts for all.
func (b Bay) with(other Bay) Bay {
	b.Kg += other.Kg
	b.LeftM, b.RightM = math.Min(b.LeftM, other.LeftM), math.Max(b.RightM, other.RightM)
	b.CentreM = (b.LeftM + b.RightM) / 2
	b.CentroidM = math.Max(b.CentroidM, other.CentroidM)
	b.CleatFootM = math.Max(b.CleatFootM, other.CleatFootM)
	b.TipM = math.Min(b.TipM, other.TipM)
	b.Panels = append(b.Panels, other.Panels...)
	return b
}

// reach gives the strip its ends and the studs that it meets far enough from them.
// A rail is made longer, to the nearest stud on either side, until it has two.
func (b *Bay) reach(studs []float64, wallM float64, rail bool) {
	const end, hair = studEndMM / millimetresInM, dustOfFloats
	b.FromM, b.ToM = b.LeftM, b.RightM
	for {
		b.StudsM = nil
		var left, right float64 // the nearest studs that the strip misses
		hasLeft, hasRight := false, false
		for _, x := range studs {
			switch {
			case x < b.FromM+end:
				left, hasLeft = x, x >= end
			case x > b.ToM-end:
				if !hasRight {
					right, hasRight = x, x <= wallM-end
				}
			default:
				b.StudsM = append(b.StudsM, x)
			}
		}
		if !rail || len(b.StudsM) >= wantedStuds || !hasLeft && !hasRight {
			return
		}
		if !hasRight || hasLeft && b.FromM-left < right-b.ToM {
			b.FromM = left - end - hair
		} else {
			b.ToM = right + end + hair
		}
	}
}

// studs are the middles of the studs along the wall: those that were found, or
// else by the first and the step. Only studs of wood count.
func (h Hung) studs() []float64 {
	if h.Wall.Kind != timberStuds {
		return nil
	}
	var all []float64
	for _, x := range h.StudPlaces() {
		all = append(all, x.Metres())
	}
	return all
}

// StudPlaces are the middles of all studs in the wall, of wood or of steel, from
// the left corner: those that were found, or else by the first and the step.
func (h Hung) StudPlaces() []length.Length {
	w := h.Wall
	if !HasStuds(w) {
		return nil
	}
	var all []length.Length
	if len(w.Studs) > 0 {
		all = slices.Clone(w.Studs)
	} else if !w.StudStep.IsZero() {
		for x := w.StudFirst; x.Cmp(w.Width) < 0; x = x.Add(w.StudStep) {
			all = append(all, x)
		}
	}
	all = slices.DeleteFunc(all, func(x length.Length) bool { return x.Cmp(w.Width) > 0 })
	slices.SortFunc(all, length.Length.Cmp)
	return slices.CompactFunc(all, length.Length.Same)
}

// FewestStuds is how many studs the strip meets that meets fewest.
func (h Hanging) FewestStuds() int {
	fewest := math.MaxInt
	for _, b := range h.Bays {
		fewest = min(fewest, len(b.StudsM))
	}
	return fewest
}

// Worst is the strip that is used most.
func (h Hanging) Worst() (Strip, bool) {
	if len(h.Strips) == 0 {
		return Strip{}, false
	}
	return slices.MaxFunc(h.Strips, func(a, b Strip) int { return cmp.Compare(a.worst(), b.worst()) }), true
}

// ratedStepM is how far apart, in metres, fixings by rated values sit where they are closest.
func (h Hanging) ratedStepM() float64 {
	closest := math.Inf(1)
	for i, r := range h.Rated {
		closest = math.Min(closest, r.StepM(h.Bays[i]))
	}
	return closest
}

// MostRated is the count by rated values that is highest.
func (h Hanging) MostRated() (Rated, bool) {
	if len(h.Rated) == 0 {
		return Rated{}, false
	}
	return slices.MaxFunc(h.Rated, func(a, b Rated) int { return cmp.Compare(a.Needed, b.Needed) }), true
}
