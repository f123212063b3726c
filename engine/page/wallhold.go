package page

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"blockfield/engine/length"
	"blockfield/engine/wall"
	"blockfield/engine/words"
)

// hangingView is a group with what carries it, as the page shows it.
type hangingView struct {
	*view
	wall.Hanging
	Key  string // "0-0": wall and place, for ids
	Name string // of the group, where there are several
}

// Hangings are the groups on all walls.
func (v *view) Hangings() []hangingView {
	var all []hangingView
	for i, g := range v.Plan.Groups {
		h := hangingView{view: v, Hanging: v.Plan.Hangings[i], Key: groupKey(g.Wall, g.Index)}
		if len(v.Plan.Groups) > 1 {
			h.Name = h.Design.Name
		}
		all = append(all, h)
	}
	return all
}

// Line is one line of a table: what, and how much.
type Line struct{ Label, Value string }

// at is a place along a wall or above the floor, as a tape shows it.
func (v *view) at(m float64) length.Length {
	const micrometre, tenth = 1e6, 100
	return length.Micrometres(int64(math.Round(m*micrometre/tenth)) * tenth)
}

// places says several places, one after another.
func (v *view) places(all []float64) string {
	texts := make([]string, len(all))
	for i, m := range all {
		texts[i] = v.Words.Units.Number(v.at(m))
	}
	return strings.Join(texts, ", ") + " " + v.Words.Units.Word()
}

func percent(part float64) words.Percent { return words.Percent(math.Ceil(100*part - 1e-9)) }

// HoldLines say what holds the group, piece by piece.
func (h hangingView) HoldLines() []Line {
	switch h.Means {
	case wall.Studs:
		return append(h.stripLines(), h.halfLine(), h.lockLine())
	case wall.RatedValue:
		return append(h.ratedLines(), h.halfLine(), h.lockLine())
	case wall.Stand:
		return h.standLines()
	default:
		return []Line{h.halfLine(), h.lockLine()}
	}
}

// Unchecked says in large type that nothing has been counted; empty where it has.
func (h hangingView) Unchecked() string {
	if h.Means == wall.BoardAlone || h.Means == wall.NotChecked || h.Means == wall.Studs && len(h.Strips) == 0 {
		return h.T("hold/unchecked")
	}
	return ""
}

// NotCounted says what no count here knows.
func (h hangingView) NotCounted() string {
	key := "hold/not-counted"
	if h.Means == wall.Stand {
		key = "hold/not-counted-stand"
	}
	return h.T(key)
}

func (h hangingView) line(key string, pairs ...any) Line {
	return Line{h.T("hold/" + key), h.T("hold/"+key+"-value", pairs...)}
}

// stripLines are the strip that is used most, with its screws. Where there are
// several they have the same screws; the places of each are in the list of holes.
func (h hangingView) stripLines() []Line {
	s, ok := h.Worst()
	if !ok {
		return nil
	}
	all := []Line{
		h.line("screws", "count", s.Screws(), "gauge", s.Gauge, "long", length.MM(int64(s.ScrewMM)),
			"each", s.AStud, "at", h.places(s.StudsM)),
		h.line("strip", "thick", h.Design.Cleat.Thickness, "high", h.at(s.HeightM).CeilMM(),
			"long", h.at(s.RightM-s.LeftM), "tip", h.at(s.TipM)),
		h.line("bored", "thread", boreOf(s.Hole.ThreadIn), "shank", boreOf(s.Hole.ShankIn)),
		h.line("used", "use", percent(s.Use), "bend", percent(s.BendUse), "sag", percent(s.SagUse), "factor", shownFactor(h.Factor)),
	}
	if len(h.Strips) > 1 {
		all = append([]Line{h.line("strips", "count", len(h.Strips))}, all...)
	}
	if out := h.shows(s); out.Cmp(length.MM(0)) > 0 {
		all = append(all, h.line("shows", "out", out))
	}
	return all
}

// shows is how far a strip that was made longer reaches beyond the panels.
func (h hangingView) shows(s wall.Strip) length.Length {
	left := h.Built.Left.Sub(h.at(s.LeftM))
	right := h.at(s.RightM).Sub(h.Built.Left.Add(h.Built.TotalWidth))
	return length.Max(left, right)
}

// boreOf is the drill for a hole in inches, to a tenth of a millimetre.
func boreOf(in float64) words.Quantity {
	return words.Quantity{Value: math.Round(in*254) / 10, Unit: "mm"}
}

func shownFactor(f float64) words.Quantity { return words.Quantity{Value: f} }

func (h hangingView) ratedLines() []Line {
	r, _ := h.MostRated()
	b := h.Bays[0]
	f := h.Wall.Fixing
	return []Line{
		h.line("rated", "count", r.Count, "what", f.What, "source", f.Source),
		h.line("rated-values", "shear", words.Quantity{Value: f.RatedShear, Unit: "kN"}, "pull", words.Quantity{Value: f.RatedPull, Unit: "kN"}),
		h.line("rated-strip", "thick", h.Design.Cleat.Thickness, "long", h.at(b.ToM-b.FromM), "tip", h.at(b.TipM)),
		h.line("rated-used", "use", percent(r.Use), "factor", shownFactor(h.Factor)),
	}
}

func (h hangingView) halfLine() Line {
	half := h.Halves[0]
	if !half.Found {
		return h.line("half-open")
	}
	rows := make([]string, len(half.Row.Rows))
	for i, row := range half.Row.Rows {
		rows[i] = h.Words.Count(row + 1)
	}
	return h.line("half", "count", half.Needed, "gauge", half.Gauge, "long", length.MM(int64(half.Row.ScrewMM)),
		"rows", strings.Join(rows, ", "), "use", percent(half.Use))
}

func (h hangingView) lockLine() Line {
	return Line{h.T("hold/lock"), capital(h.T("choice/" + h.Design.Cleat.Lock))}
}

func (h hangingView) standLines() []Line {
	t := h.Tipping()
	side := h.T("wall/forwards")
	if t.Backwards {
		side = h.T("wall/backwards")
	}
	return []Line{
		h.line("stand", "base", h.Design.Stand.BaseDepth, "toe", t.Toe, "side", side),
		h.line("tips", "angle", words.Degrees(math.Floor(t.Deg)), "side", side, "centre", t.Centre),
	}
}

// MassText says between what the mass may lie, where its middle is, and who lifts it.
func (v *view) MassText() []string {
	h := v.heaviest()
	low, high := h.MassRange(v.Doc.Design.Room, v.Doc.Design.Bench.StockMoisture)
	text := []string{v.T("wall/mass-range", "low", words.Kg(low), "high", words.Kg(high), "out", v.at(h.Built.Panels[0].CentroidM))}
	if h.Design.Weighed > 0 {
		text = append(text, v.T("wall/mass-weighed", "mass", words.Kg(h.Design.Weighed)))
	}
	kg := h.Hanging.Kg()
	text = append(text, v.T("wall/people", "mass", v.KgOf(kg), "carry", wall.Carriers(kg), "lift", wall.Lifters(kg)))
	return append(text, h.lifting())
}

// lifting says what the lifting equation has to say about the lift onto the cleat.
func (h hangingView) lifting() string {
	l := h.LiftOn()
	cm := func(cm float64) length.Length { return h.at(math.Round(cm) / 100) }
	limit := l.LimitKg()
	args := []any{"away", cm(l.AwayCm), "from", cm(l.StartCm), "to", cm(l.StartCm + l.RiseCm), "limit", words.Kg(limit), "mass", words.Kg(h.Hanging.Kg())}
	switch {
	case limit == 0:
		return h.T("wall/niosh-outside", args...)
	case limit < h.Hanging.Kg():
		return h.T("wall/niosh-over", args...)
	default:
		return h.T("wall/niosh-under", args...)
	}
}

// heaviest is the group with the heaviest panel.
func (v *view) heaviest() hangingView {
	return slices.MaxFunc(v.Hangings(), func(a, b hangingView) int {
		switch {
		case a.Hanging.Kg() < b.Hanging.Kg():
			return -1
		case a.Hanging.Kg() > b.Hanging.Kg():
			return 1
		}
		return 0
	})
}

// WayLine is one narrow place on the way in.
type WayLine struct {
	Label, Result, Longest string
	Stuck                  bool
}

// WayLines are the way in, step by step, for the largest panel of each group.
func (h hangingView) WayLines() []WayLine {
	var all []WayLine
	for _, s := range h.WaySteps() {
		line := WayLine{Label: h.T("way-step/" + strings.TrimPrefix(s.Name, "way/"))}
		switch {
		case !s.Measured:
			line.Result = h.T("way/not-measured")
		case s.Passes:
			line.Result = h.T("way/passes")
		case s.Bare:
			line.Result, line.Stuck = h.T("way/passes-bare"), true
		default:
			line.Result, line.Stuck = h.T("way/stuck"), true
		}
		if s.Measured {
			line.Longest = h.T("way/longest", "long", s.Longest)
		}
		all = append(all, line)
	}
	return all
}

// PackedText says how large a panel is on its way.
func (h hangingView) PackedText() string {
	p := h.Packed()
	return h.T("way/packed", "wide", h.at(p.WidthM), "high", h.at(p.HeightM), "deep", h.at(p.DeepM))
}

// Questions are what has to be asked about a public room, and never ruled on here.
func (v *view) Questions() []string {
	var all []string
	for _, key := range []string{"fire", "walkway", "devices", "escape", "reach", "protected", "drill"} {
		all = append(all, v.T("ask/"+key))
	}
	return all
}

// DaySteps are the day of hanging, in the order of the work.
func (h hangingView) DaySteps() []string {
	say := func(key string, pairs ...any) string { return h.T("day/"+key, pairs...) }
	all := []string{say("weigh", "mass", words.Kg(h.Hanging.Kg()))}
	if h.Means == wall.Stand {
		return append(all, say("stand"), say("lift-stand", "people", wall.Lifters(h.Hanging.Kg())), say("record"))
	}
	if len(h.holes()) == 0 {
		return append(all, say("unchecked"))
	}
	all = append(all, say("trace", "at", h.cables()))
	if h.Means == wall.Studs {
		all = append(all, say("studs", "at", h.places(h.Bays[0].StudsM)))
	}
	b := h.Bays[0]
	all = append(all, say("level", "tip", h.at(b.TipM), "from", h.at(b.FromM), "to", h.at(b.ToM)), say("bore", "count", len(h.holes())))
	all = append(all, say("proof", "mass", words.Kg(b.ProofKg())), h.liftStep(), say("hook", "room", h.LiftRoom))
	all = append(all, say("lock", "lock", h.T("choice/"+h.Design.Cleat.Lock)))
	return append(all, say("record"))
}

// cables are the sockets and switches above and below which a cable may run.
func (h hangingView) cables() string {
	var all []string
	for _, o := range h.Wall.Obstacles {
		if o.Kind == "socket" || o.Kind == "switch" {
			all = append(all, h.T("day/cable", "kind", words.Key("choice/"+o.Kind), "at", o.X))
		}
	}
	if len(all) == 0 {
		return h.T("day/no-cable")
	}
	return strings.Join(all, ", ")
}

// liftStep says who lifts, and in which order.
func (h hangingView) liftStep() string {
	l := h.Doc.Design.Work.Lifting
	step := h.T("day/lift", "people", wall.Lifters(h.Hanging.Kg()))
	if l.Named() {
		step = h.T("day/lift-named", "lead", l.Lead, "method", words.Key("choice/"+l.Method))
	}
	if h.Design.PanelsHigh > 1 {
		step += " " + h.T("day/lower-first")
	}
	return step
}

// holes are where fixings go into the wall.
func (h hangingView) holes() []wall.Point {
	var all []wall.Point
	for _, s := range h.Strips {
		all = append(all, s.Holes()...)
	}
	for i, r := range h.Rated {
		all = append(all, r.Holes(h.Bays[i])...)
	}
	return all
}

// HoleLine is where some holes go: along the wall, and up.
type HoleLine struct{ Along, Up string }

// HoleLines are the holes, those above one another in one line.
func (h hangingView) HoleLines() []HoleLine {
	var all []HoleLine
	for _, p := range h.holes() {
		along, up := h.Words.Units.Number(h.at(p.XM)), h.Words.Units.Number(h.at(p.YM))
		if n := len(all); n > 0 && all[n-1].Along == along {
			all[n-1].Up += ", " + up
			continue
		}
		all = append(all, HoleLine{along, up})
	}
	return all
}

// HolesHeading names the columns, with their unit.
func (h hangingView) HolesHeading() HoleLine {
	unit := h.Words.Units.Word()
	return HoleLine{h.T("day/along", "unit", unit), h.T("day/up", "unit", unit)}
}

// slotKey is the id of a slot of a group.
func slotKey(name, key string) string { return fmt.Sprintf("%s-%s", name, key) }
