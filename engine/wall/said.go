package wall

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/words"
)

// What page and papers say of a group on its wall. They get keys of words with their
// arguments, so that both say the same.

// Fact is one line of what holds a group or of how it is built: "hold/" and its name is
// the key of its label, the same with "-value" behind it that of what is said.
type Fact struct {
	Name string
	Args words.Args
}

// Label and Value are the two sides of the line.
func (f Fact) Label() words.Phrase { return words.Phrase{Key: "hold/" + f.Name} }
func (f Fact) Value() words.Phrase {
	return words.Phrase{Key: "hold/" + f.Name + "-value", Args: f.Args}
}

// places are where things lie along the wall, to a tenth of a millimetre.
func places(all []float64) words.Places {
	out := make(words.Places, len(all))
	for i, m := range all {
		out[i] = metres(m)
	}
	return out
}

// percent is a share, rounded up: what is used to 99.2 % is used to 100 %.
func percent(part float64) words.Percent { return words.Percent(math.Ceil(100*part - dustOfFloats)) }

func number(v float64) words.Quantity { return words.Quantity{Value: v} }

// Unchecked reports whether nothing is known that holds the group.
func (h Hanging) Unchecked() bool {
	return h.Means == BoardAlone || h.Means == NotChecked || h.Means == Studs && len(h.Strips) == 0
}

// HoldFacts say what holds the group, piece by piece.
func (h Hanging) HoldFacts() []Fact {
	switch h.Means {
	case Studs:
		return append(append(h.stripFacts(), h.shimFacts()...), h.halfFact(), h.lockFact())
	case RatedValue:
		return append(append(h.ratedFacts(), h.shimFacts()...), h.halfFact(), h.lockFact())
	case Stand:
		return h.StandFacts()
	default:
		return []Fact{h.halfFact(), h.lockFact()}
	}
}

// stripFacts are the strip that is used most, with its screws. Where there are
// several they have the same screws; the places of each are in the list of holes.
func (h Hanging) stripFacts() []Fact {
	s, ok := h.Worst()
	if !ok {
		return nil
	}
	var all []Fact
	if len(h.Strips) > 1 {
		all = append(all, Fact{"strips", words.Args{"count": len(h.Strips)}})
	}
	all = append(all,
		Fact{"screws", words.Args{"count": s.Screws(), "gauge": s.Gauge, "long": length.MM(int64(s.ScrewMM)), "each": s.AStud, "at": places(s.StudsM)}},
		Fact{"strip", words.Args{"thick": h.Design.Cleat.Thickness, "high": metres(s.HeightM).CeilMM(), "long": metres(s.RightM - s.LeftM), "tip": metres(s.TipM)}},
		Fact{"bored", words.Args{"thread": words.Drill(s.Hole.ThreadIn), "shank": words.Drill(s.Hole.ShankIn)}},
		Fact{"used", words.Args{"use": percent(s.Use), "bend": percent(s.BendUse), "sag": percent(s.SagUse), "factor": number(h.Factor)}},
	)
	if out := h.shows(s); out.Cmp(length.MM(0)) > 0 {
		all = append(all, Fact{"shows", words.Args{"out": out}})
	}
	return all
}

// shows is how far a strip that was made longer reaches beyond the panels.
func (h Hanging) shows(s Strip) length.Length {
	left := h.Built.Left.Sub(metres(s.LeftM))
	right := metres(s.RightM).Sub(h.Built.Left.Add(h.Built.TotalWidth))
	return length.Max(left, right)
}

func (h Hanging) ratedFacts() []Fact {
	r, _ := h.MostRated()
	b, f := h.Bays[0], h.Wall.Fixing
	kN := func(v float64) words.Quantity { return words.Quantity{Value: v, Unit: "kN"} }
	return []Fact{
		{"rated", words.Args{"count": r.Count, "what": f.What, "source": f.Source}},
		{"rated-values", words.Args{"shear": kN(f.RatedShear), "pull": kN(f.RatedPull)}},
		{"rated-strip", words.Args{"thick": h.Design.Cleat.Thickness, "high": length.MM(int64(halfHighMM)), "long": metres(b.ToM - b.FromM), "tip": metres(b.TipM)}},
		{"rated-used", words.Args{"use": percent(r.Use), "factor": number(h.Factor)}},
	}
}

func (h Hanging) halfFact() Fact {
	half := h.Halves[0]
	if !half.Found {
		return Fact{"half-open", nil}
	}
	rows := make([]words.Phrase, len(half.Row.Rows))
	for i, row := range half.Row.Rows {
		rows[i] = words.Plain(row + 1)
	}
	return Fact{"half", words.Args{
		"count": half.Needed, "gauge": half.Gauge, "long": length.MM(int64(half.Row.ScrewMM)), "rows": rows, "n": len(rows), "use": percent(half.Use),
	}}
}

func (h Hanging) lockFact() Fact {
	return Fact{"lock", words.Args{"lock": words.Key("choice/" + h.Design.Cleat.Lock)}}
}

// StandFacts say how the stand is built and at which angle it falls.
func (h Hung) StandFacts() []Fact {
	t := h.Tipping()
	side := words.Key("wall/forwards")
	if t.Backwards {
		side = "wall/backwards"
	}
	return []Fact{
		{"stand", words.Args{"base": h.Design.Stand.BaseDepth, "toe": t.Toe, "side": side}},
		{"tips", words.Args{"angle": words.Degrees(math.Floor(t.Deg)), "side": side, "centre": t.Centre}},
		{"toe-needed", words.Args{"toe": t.ToeNeeded(), "angle": words.Degrees(leastTipDeg)}},
	}
}

// TipBelowTop is from the upper edge of a panel to the tip of its strip: what the level
// line is measured by.
func (h Hanging) TipBelowTop() length.Length {
	return h.Built.OuterHeight.Sub(h.Built.Panels[0].FieldTop()).Add(h.Halves[0].Foot)
}

// Hook is how the strip in the wall and the panel's half above it catch one another, in
// section: their corners x and y in turn, in mm, x out from the wall and y down from the
// tip of the strip. The strip is highest away from the wall and falls towards it; the
// half's lower edge lies on that slope, its own tip behind the strip's. high is how much
// of each is shown, from the tip.
func (h Hanging) Hook(high float64) (strip, half []float64) {
	deep := h.Design.Cleat.Thickness.Millimetres()
	bevel := deep * math.Tan(h.Design.Cleat.Bevel*math.Pi/180)
	strip = []float64{0, bevel, deep, 0, deep, high, 0, high}
	half = []float64{0, -high, deep, -high, deep, 0, 0, bevel}
	return strip, half
}

// CleatFacts name the sizes of the section through cleat and panel, and what hooking on
// takes.
func (h Hanging) CleatFacts() []Fact {
	d := h.Design
	all := []Fact{{"stack", words.Args{"cleat": d.Cleat.Thickness, "backer": d.Backer.Thickness, "block": d.Heights[len(d.Heights)-1], "stack": h.Built.Stack}}}
	if h.Built.Framed {
		all = append(all, Fact{"frame", words.Args{"depth": h.Built.FrameDepth, "board": d.Frame.Board, "tallest": panel.TallestFor(d, d.Frame.Board)}})
	}
	all = append(all,
		Fact{"bevel", words.Args{"bevel": words.Degrees(d.Cleat.Bevel)}},
		Fact{"tip", words.Args{"below": h.TipBelowTop(), "tip": metres(h.Bays[0].TipM)}})
	if h.Means == Stand {
		return all
	}
	return append(all, Fact{"lift-room", words.Args{"need": h.LiftRoom, "free": length.Max(h.FreeAbove(), length.MM(0))}})
}

// Holes are where fixings go into the wall.
func (h Hanging) Holes() []Point {
	var all []Point
	for _, s := range h.Strips {
		all = append(all, s.Holes()...)
	}
	for i, r := range h.Rated {
		all = append(all, r.Holes(h.Bays[i])...)
	}
	return all
}

// HoleRow is holes above one another: their place along the wall and their heights above
// the floor, the topmost first.
type HoleRow struct {
	Along length.Length
	Up    words.Places
}

// HoleRows are the holes, those above one another together.
func (h Hanging) HoleRows() []HoleRow {
	var all []HoleRow
	for _, p := range h.Holes() {
		along, up := metres(p.XM), metres(p.YM)
		if n := len(all); n > 0 && all[n-1].Along.Same(along) {
			all[n-1].Up = append(all[n-1].Up, up)
			continue
		}
		all = append(all, HoleRow{along, words.Places{up}})
	}
	return all
}

// Key and Result are the keys of a step's name and of what comes of it.
func (s Step) Key() string { return "way-step/" + strings.TrimPrefix(s.Name, "way/") }
func (s Step) Result() string {
	switch {
	case !s.Measured:
		return "way/not-measured"
	case s.Passes:
		return "way/passes"
	case s.Bare:
		return "way/passes-bare"
	default:
		return "way/stuck"
	}
}

// Said is how large a panel is on its way.
func (p Packed) Said() words.Phrase {
	return words.Phrase{Key: "way/packed", Args: words.Args{"wide": metres(p.WidthM), "high": metres(p.HeightM), "deep": metres(p.DeepM)}}
}

// Day is the day of hanging, in the order of the moves, with those who lift by name where
// they are known.
func (h Hanging) Day(l design.Lifting, people []string) []words.Phrase {
	var all []words.Phrase
	say := func(key string, args words.Args) { all = append(all, words.Phrase{Key: "day/" + key, Args: args}) }
	hands := words.Args{"people": h.Lifters(), "names": people}
	mass := words.Args{"mass": words.Kg(h.Kg())}
	if h.Means == Stand {
		say("weigh-stand", mass)
	} else {
		say("weigh", mass)
	}
	switch holes := len(h.Holes()); {
	case h.Means != Stand && holes == 0:
		say("unchecked", nil)
		return all
	case h.Blocked(l):
		say("not-yet", nil)
		return all
	case h.Means == Stand:
		say("stand", nil)
		say("lift-stand", hands)
		say("record", nil)
		return all
	default:
		say("trace", words.Args{"at": h.cables()})
		if h.Means == Studs {
			say("studs", words.Args{"at": places(h.allStuds())})
		}
		for _, l := range h.levels() {
			say("level", l)
		}
		if len(h.Shims()) > 0 {
			say("shims", words.Args{"most": tenths(h.ShimMM)})
		}
		say("bore", words.Args{"count": holes})
	}
	say("proof", words.Args{"mass": words.Kg(h.ProofKg())})
	if l.Named() {
		say("lift-named", words.Args{"lead": l.Lead, "method": words.Key("choice/" + l.Method)})
	}
	switch {
	case len(people) > 0:
		say("lift-by", hands)
	case !l.Named() && hands["people"] == 1:
		say("lift-one", nil)
	case !l.Named():
		say("lift", hands)
	}
	if h.Design.PanelsHigh > 1 {
		say("lower-first", nil)
	}
	say("hook", words.Args{"room": h.LiftRoom})
	say("lock", words.Args{"lock": words.Key("choice/" + h.Design.Cleat.Lock)})
	say("record", nil)
	return all
}

// Blocked reports whether a Stop about what holds the group, its lock, its stand, its lift
// or the room above it is not cleared.
func (h Hanging) Blocked(l design.Lifting) bool {
	if h.Heavy() && !l.Named() {
		return true
	}
	all := append(h.hold(), h.liftRoom()...)
	if h.Means != Stand {
		all = append(all, h.cells()...)
	}
	return slices.ContainsFunc(all, func(w check.WatchOut) bool { return w.Level == check.Stop })
}

// ProofKg is what each strip of the group is tried with: twice what the busiest carries.
func (h Hanging) ProofKg() float64 {
	most := 0.0
	for _, b := range h.Bays {
		most = math.Max(most, b.ProofKg())
	}
	return most
}

// levels are the level lines of the strips, each with its ends along the wall, the
// lowest first: its panels are hung first.
func (h Hanging) levels() []words.Args {
	bays := slices.Clone(h.Bays)
	slices.SortStableFunc(bays, func(a, b Bay) int { return cmp.Compare(a.TipM, b.TipM) })
	var all []words.Args
	for i := 0; i < len(bays); {
		tip, from, to := metres(bays[i].TipM), bays[i].FromM, bays[i].ToM
		for ; i < len(bays) && metres(bays[i].TipM).Same(tip); i++ {
			from, to = math.Min(from, bays[i].FromM), math.Max(to, bays[i].ToM)
		}
		all = append(all, words.Args{"tip": tip, "from": metres(from), "to": metres(to)})
	}
	return all
}

// allStuds are the studs that strips of the group reach, from the left.
func (h Hanging) allStuds() []float64 {
	var all []float64
	for _, b := range h.Bays {
		all = append(all, b.StudsM...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// cables are the sockets and switches above and below which a cable may run.
func (h Hung) cables() []words.Phrase {
	var all []words.Phrase
	for _, o := range h.Wall.Obstacles {
		if o.Kind == "socket" || o.Kind == "switch" {
			all = append(all, words.Phrase{Key: "day/cable", Args: words.Args{"kind": words.Key("choice/" + o.Kind), "at": o.X}})
		}
	}
	if len(all) == 0 {
		all = append(all, words.Phrase{Key: "day/no-cable"})
	}
	return all
}

// LiftSaid is what the lifting equation has to say about the lift onto the cleat.
func (h Hanging) LiftSaid() words.Phrase {
	l := h.LiftOn()
	cm := func(cm float64) length.Length { return metres(math.Round(cm) / cmInM) }
	limit := l.LimitKg()
	key := "wall/niosh-under"
	switch {
	case limit == 0:
		key = "wall/niosh-outside"
	case h.LimitLifters() > Lifters(h.Kg()) && !h.Heavy():
		key = "wall/niosh-more"
	case limit < h.Kg():
		key = "wall/niosh-over"
	}
	return words.Phrase{Key: key, Args: words.Args{
		"away": cm(l.AwayCm), "from": cm(l.StartCm), "to": cm(l.StartCm + l.RiseCm), "limit": words.Kg(limit), "mass": words.Kg(h.Kg()), "people": h.LimitLifters(),
	}}
}

// ToeNeeded is how far the edge of a stand's foot has to stand off the middle of mass, on
// either side, for the least angle.
func (t Tipping) ToeNeeded() length.Length {
	return metres(ToeFor(leastTipDeg, t.Centre.Metres())).CeilMM()
}

// Deep is how far a panel stands out: its stack, or its frame.
func (h Hung) Deep() length.Length { return h.deep() }
