package page

import (
	"fmt"
	"slices"

	"blockfield/engine/design"
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
			h.Name = v.Words.Given(h.Design.Name)
		}
		all = append(all, h)
	}
	return all
}

// Line is one line of a table: what, and how much.
type Line struct{ Label, Value string }

// LineTable is a table of lines, with its name for whoever does not see what stands above.
type LineTable struct {
	Name  string
	Lines []Line
}

// at is a place along a wall or above the floor, as a tape shows it.
func (v *view) at(m float64) length.Length {
	const millimetres = 1000
	return length.ToTenth(m * millimetres)
}

// lines says facts of the wall.
func (v *view) lines(facts []wall.Fact) []Line {
	all := make([]Line, len(facts))
	for i, f := range facts {
		all[i] = Line{v.said(f.Label()), v.said(f.Value())}
	}
	return all
}

// said is a phrase as a sentence of its own.
func (v *view) said(p words.Phrase) string { return v.Words.Say(p.Key, p.Args) }

// HoldLines say what holds the group, piece by piece.
func (h hangingView) HoldLines() LineTable {
	return LineTable{h.T("hold/heading"), h.lines(h.HoldFacts())}
}

// CleatLines name the sizes of the section, and what hooking on takes.
func (h hangingView) CleatLines() LineTable {
	return LineTable{h.T("hold/section"), h.lines(h.CleatFacts())}
}

// UncheckedText says in large type that nothing has been counted; empty where it has.
func (h hangingView) UncheckedText() string {
	if h.Unchecked() {
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

// MassRangeText says between what the mass may lie, and where its middle is.
func (v *view) MassRangeText() string {
	h := v.heaviest()
	low, high := h.MassRange(v.Doc.Design.Room, v.Doc.Design.Bench.StockMoisture)
	return v.T("wall/mass-range", "low", words.Kg(low), "high", words.Kg(high), "out", v.at(h.Built.Panels[0].CentroidM))
}

// MassText says what was weighed, and who lifts it.
func (v *view) MassText() []string {
	h := v.heaviest()
	var text []string
	if h.WeighedKg > 0 {
		text = append(text, v.T("wall/mass-weighed", "mass", words.Kg(h.WeighedKg)))
	}
	kg := h.Hanging.Kg()
	if few := wall.Lifters(kg); h.LimitLifters() > few && !h.Heavy() {
		text = append(text, v.T("wall/people-more", "mass", v.KgOf(kg), "carry", wall.Carriers(kg), "people", h.Lifters(), "few", few))
	} else {
		text = append(text, v.T("wall/people", "mass", v.KgOf(kg), "carry", wall.Carriers(kg), "lift", h.HandsSaid()))
	}
	return append(text, h.said(h.LiftSaid()))
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
		line := WayLine{Label: h.T(s.Key()), Result: h.T(s.Result()), Stuck: s.Measured && !s.Passes}
		if s.Measured {
			line.Longest = h.T("way/longest", "long", s.Longest)
		}
		all = append(all, line)
	}
	return all
}

// PackedText says how large a panel is on its way.
func (h hangingView) PackedText() string { return h.said(h.Packed().Said()) }

// askedFields are what is asked about the building, for the record of the job: most of it
// only where the public comes in.
func (v *view) askedFields() []string {
	if v.Reading == Client {
		return nil
	}
	all := []string{"devices", "protected", "drill"}
	if v.Doc.Design.Room.Public {
		all = []string{"fire", "walkway", "devices", "reach", "protected", "drill"}
	}
	all = append(all, "professional", "licence", "lookedOn", "lookedAt", "other")
	for i := range all {
		all[i] = design.RecordPrefix + "asked." + all[i]
	}
	return all
}

// Asked are the questions, each with a place for its answer, and never ruled on here.
func (v *view) Asked() []Control {
	all := v.controls("", v.askedFields())
	for i := range all {
		all[i].Watch, all[i].Wide = nil, all[i].Kind != "date" // what it says is in the list, where it can be seen
	}
	return all
}

// PhotoKinds are what a survey takes pictures of.
func (v *view) PhotoKinds() []Choice {
	var all []Choice
	for _, name := range []string{"wall", "studs", "damage", "way"} {
		all = append(all, Choice{Value: name, Label: v.T("photos/" + name)})
	}
	return all
}

// DaySteps are the day of hanging, in the order of the work.
func (h hangingView) DaySteps() []string {
	var all []string
	for _, step := range h.Day(h.Doc.Design.Work.Lifting, h.Job.Record.Hung.People) {
		all = append(all, h.said(step))
	}
	return all
}

// HoleLine is where some holes go: along the wall, and up.
type HoleLine struct{ Along, Up string }

// HoleLines are the holes, those above one another in one line.
func (h hangingView) HoleLines() []HoleLine {
	var all []HoleLine
	if h.Blocked(h.Doc.Design.Work.Lifting) {
		return nil
	}
	for _, row := range h.HoleRows() {
		up := make([]string, len(row.Up))
		for i, l := range row.Up {
			up[i] = h.Words.Number(l)
		}
		all = append(all, HoleLine{h.Words.Number(row.Along), h.Words.List(up)})
	}
	return all
}

// HolesHeading names the columns, with their unit.
func (h hangingView) HolesHeading() HoleLine {
	unit := h.Words.Unit()
	return HoleLine{h.T("day/along", "unit", unit), h.T("day/up", "unit", unit)}
}

// slotKey is the id of a slot of a group.
func slotKey(name, key string) string { return fmt.Sprintf("%s-%s", name, key) }
