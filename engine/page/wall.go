package page

import (
	"fmt"
	"strings"

	"blockfield/engine/design"
	"blockfield/engine/panel"
	"blockfield/engine/wall"
	"blockfield/engine/words"
)

func (v *view) wallSets() []set {
	if v.Reading == Client {
		return []set{
			{id: "wall-0", heading: "wall/wall", base: "walls[0].", fields: []string{"width", "height"}},
			{id: "place-0-0", heading: "wall/place", base: v.First().Path + ".", fields: []string{"place.left", "place.height"}},
		}
	}
	var all []set
	for w := range v.Doc.Design.Walls {
		all = append(all, v.wallSet(w)...)
	}
	room := set{
		id: "room", heading: "wall/room", base: "room.", fields: []string{"public"},
		more: []string{"seismic", "temperatureLow", "temperatureHigh", "humidityLow", "humidityHigh"},
	}
	if v.Reading == Builder {
		room.fields, room.more = []string{"temperatureLow", "temperatureHigh", "humidityLow", "humidityHigh"}, []string{"seismic"}
	}
	all = append(all,
		set{
			id: "lifting", heading: "wall/lifting", base: "work.lifting.",
			fields: []string{"method", "lead"},
		},
		set{
			id: "hung", heading: "wall/hung", base: design.RecordPrefix + "hung.",
			fields: []string{"people", "day", "by"}, more: []string{"proofKg", "found"},
		},
		room,
		set{
			id: "way", heading: "wall/way", base: "wayIn.",
			fields: []string{"doorWidth", "doorHeight", "corridor"},
			more: []string{
				"stairs", "stairWidth", "landing", "lift", "liftDoor", "liftWidth", "liftDepth", "liftHeight", "vehicle",
			},
			add: "walls", adding: "wall/add-wall",
		},
	)
	return folded(all, v.wallAnswers())
}

// wallSet is a wall with what is on it, what hangs on it and what holds that.
func (v *view) wallSet(w int) []set {
	base := fmt.Sprintf("walls[%d].", w)
	all := []set{{
		id: fmt.Sprintf("wall-%d", w), heading: "wall/wall", base: base, part: v.removable("walls", w, len(v.Doc.Design.Walls)), taking: "page/leave-out",
		fields: []string{"kind", "width", "height"},
	}}
	all[0] = all[0].with(v.ofWall(w))
	for i := range v.Doc.Design.Walls[w].Obstacles {
		id := fmt.Sprintf("obstacle-%d-%d", w, i)
		all = append(all, set{
			id: id, name: id + "-name", part: fmt.Sprintf("%sobstacles[%d]", base, i), taking: "page/remove",
			base: fmt.Sprintf("%sobstacles[%d].", base, i), fields: []string{"kind", "x", "y", "width", "height"},
			more: []string{"note"}, folded: placed(v.Doc.Design.Walls[w].Obstacles[i]),
		})
	}
	last := &all[len(all)-1]
	last.add, last.adding = base+"obstacles", "wall/add-obstacle"
	for _, g := range v.Groups() {
		if g.Wall == w {
			all = append(all, placeSets(g, v.weighedBase(g))...)
		}
	}
	last = &all[len(all)-1]
	last.add, last.adding = base+"groups", "wall/add-group"
	return append(all, set{
		id: fmt.Sprintf("fixing-%d", w), heading: "wall/fixing", base: base + "fixing.", fields: []string{"kind"},
	}.with(v.ofFixing(w)))
}

// byKind is fields that follow from the kind of a wall, in a slot below those that say
// it: what a wall has no use for does not show.
type byKind struct {
	*view
	id, base           string
	fieldNames, rarely []string
}

// with is a set with such fields.
func (s set) with(k byKind) set {
	s.slot, s.inSlot, s.inMore = k.id, k.fieldNames, k.rarely
	return s
}

// ID names the slot.
func (k byKind) ID() string { return k.id }

// Fields and More are the controls.
func (k byKind) Fields() []Control { return k.controls(k.base, k.fieldNames) }
func (k byKind) More() []Control {
	all := k.controls(k.base, k.rarely)
	for i := range all {
		all[i].Watch = nil // it is in the list, where it can be seen
	}
	return all
}

// ofWall is what is asked of a wall by its kind: studs of one that has some.
func (v *view) ofWall(w int) byKind {
	k := byKind{view: v, id: fmt.Sprintf("wall-kind-%d", w), base: fmt.Sprintf("walls[%d].", w)}
	side := v.Doc.Design.Walls[w]
	if wall.HasStuds(side) {
		k.fieldNames, k.rarely = []string{"studFirst", "studStep", "studs", "board"}, []string{"rail"}
	}
	if wall.Takes(side) {
		k.rarely = append(k.rarely, "bow", "bowShape")
	}
	k.rarely = append(k.rarely, "walkway", "outside", "sun", "earHeight", "name", "note")
	return k
}

// ofFixing is what is asked of what goes into it: of screws in timber studs their
// diameter, of all else what its maker gives.
func (v *view) ofFixing(w int) byKind {
	k := byKind{view: v, id: fmt.Sprintf("fixing-kind-%d", w), base: fmt.Sprintf("walls[%d].fixing.", w)}
	switch side := v.Doc.Design.Walls[w]; {
	case wall.ByRules(side):
		k.rarely = []string{"diameter", "loadFactor", "reason"}
	case wall.Takes(side):
		k.fieldNames, k.rarely = []string{"ratedShear", "ratedPull", "what", "source"}, []string{"loadFactor", "reason"}
	}
	return k
}

// placed reports whether somebody has said where a thing on the wall is: a new one lies in
// the corner.
func placed(o design.Obstacle) bool { return !o.X.IsZero() || !o.Y.IsZero() }

// removable is the path of a part that may be taken away: of a list of several any
// but the first, which the page always shows.
func (v *view) removable(list string, i, n int) string {
	if n < 2 || i == 0 {
		return ""
	}
	return fmt.Sprintf("%s[%d]", list, i)
}

// weighedBase is where the record has what the scales say of a group.
func (v *view) weighedBase(g groupView) string {
	for i, one := range v.Plan.Groups {
		if one.Wall == g.Wall && one.Index == g.Index {
			return fmt.Sprintf("%sweighed[%d].", design.RecordPrefix, v.Job.Weighing(i).Entry)
		}
	}
	panic("page: internal error: a group that was not planned")
}

func placeSets(g groupView, weighed string) []set {
	base := g.Path + "."
	groups := g.Doc.Design.Walls[g.Wall].Groups
	return []set{
		{
			id: "place-" + g.Key, heading: "wall/place", base: base,
			part: g.removable(fmt.Sprintf("walls[%d].groups", g.Wall), g.Index, len(groups)), taking: "page/remove",
			fields: []string{"place.left", "place.edge", "place.height"},
		}, {
			id: "cleat-" + g.Key, heading: "wall/cleat", base: base,
			fields: []string{"cleat.thickness", "cleat.bevel", "cleat.lock"},
			more:   []string{"stand.baseDepth", "stand.toeAhead", "stand.centreHeight"},
		},
		{id: "weigh-" + g.Key, heading: "wall/weighing", base: weighed, fields: []string{"kg"}},
	}
}

// notPlaced is for slots that do not follow from where a panel hangs.
func notPlaced(changed string) bool { return !strings.Contains(changed, ".place.") }

func (v *view) wallSlots() []slot {
	var all []slot
	for _, m := range v.WallMaps() {
		all = append(all, slot{id: m.SlotID(), template: "wall-drawing", data: m})
	}
	all = append(all, slot{id: "wall-spots", template: "wall-spots", data: v})
	if v.Reading != Client {
		for w := range v.Doc.Design.Walls {
			base := fmt.Sprintf("walls[%d].", w)
			said, how := v.ofWall(w), v.ofFixing(w)
			all = append(all,
				slot{id: said.id, template: "by-kind", data: said, after: func(changed string) bool { return changed == base+"kind" || changed == base+"fixing.kind" }},
				slot{id: how.id, template: "by-kind", data: how, after: func(changed string) bool { return changed == base+"kind" || changed == base+"fixing.kind" }},
			)
		}
	}
	if v.Reading == Client {
		return append(append(all, slot{id: "wall-said", template: "wall-said", data: v}), v.atTheEnd()...)
	}
	all = append(all, slot{id: "mass", template: "mass", data: v})
	for _, h := range v.Hangings() {
		all = append(all,
			slot{id: slotKey("hold", h.Key), template: "hold", data: h},
			slot{id: slotKey("cleat-drawing", h.Key), template: "cleat-drawing", data: h, after: notPlaced},
			slot{id: slotKey("rear", h.Key), template: "rear", data: h, after: notPlaced},
			slot{id: slotKey("way-in", h.Key), template: "way-in", data: h, after: notPlaced},
			slot{id: slotKey("day", h.Key), template: "day", data: h},
		)
	}
	all = append(all, slot{id: "questions", template: "questions", data: v, after: endsIn("room.public")})
	all = append(all, v.obstacleNames()...)
	all = append(all, answerSlots(v.wallAnswers())...)
	return append(all, v.atTheEnd()...)
}

// obstacleNames are the headings of what is on the walls, which follow from
// its kind.
func (v *view) obstacleNames() []slot {
	var all []slot
	for w, side := range v.Doc.Design.Walls {
		for i, o := range side.Obstacles {
			all = append(all, slot{
				id: fmt.Sprintf("obstacle-%d-%d-name", w, i), template: "part-name", inline: true,
				data: v.T("wall/thing", "kind", v.thing(o), "x", o.X, "y", o.Y), after: within(fmt.Sprintf("walls[%d].obstacles[%d].", w, i)),
			})
		}
	}
	return all
}

// MassLine is the mass of one kind of part over all panels.
type MassLine struct {
	Label string
	Kg    float64
}

// MassLines are the mass part by part, glue and finish included where they are
// known.
func (v *view) MassLines() []MassLine {
	kinds := []panel.Kind{panel.BlockPart, panel.BackerPart, panel.FramePart, panel.CleatPart, panel.SpacerPart}
	sums := map[panel.Kind]float64{}
	for _, g := range v.Plan.Groups {
		for _, p := range g.Built.Panels {
			for _, part := range p.Parts {
				sums[part.Kind] += part.MassKg
			}
		}
	}
	var lines []MassLine
	for _, k := range kinds {
		if sums[k] > 0 {
			lines = append(lines, MassLine{v.T("part/" + string(k)), sums[k]})
		}
	}
	if v.HasBill() {
		added := 0.0
		for i, g := range v.Plan.Bill.Groups {
			added += g.AddedKg * float64(len(v.Plan.Groups[i].Built.Panels))
		}
		lines = append(lines, MassLine{v.T("part/glue-and-finish"), added})
	}
	return lines
}

// HasBill reports whether the job has been counted.
func (v *view) HasBill() bool { return v.Plan.Bill.Panels > 0 }

// TotalKg is the mass of all panels.
func (v *view) TotalKg() float64 {
	if v.HasBill() {
		return v.Plan.Bill.TotalKg
	}
	return v.Plan.Mass.TotalKg
}

// HeaviestKg is the mass of the heaviest panel.
func (v *view) HeaviestKg() float64 {
	if v.HasBill() {
		return v.Plan.Bill.HeaviestKg
	}
	return v.Plan.Mass.HeaviestPanelKg
}

// WallHelp says how a panel is moved on the drawing.
func (v *view) WallHelp() string {
	step, fine := wall.KeySteps(v.Words.Units.Bare())
	return v.T("wall/help", "step", step, "fine", fine)
}

// WallSaid is what a client reads of mass and hanging.
func (v *view) WallSaid() string {
	h := v.heaviest()
	if h.Heavy() {
		return v.T("wall/said-heavy", "mass", v.KgOf(h.Hanging.Kg()))
	}
	return v.T("wall/said", "mass", v.KgOf(h.Hanging.Kg()), "lift", h.Lifters())
}

// Spots are the places that suit the groups in sight, each a button away.
func (v *view) Spots() []spotView {
	var all []spotView
	for _, h := range v.Hangings() {
		for _, s := range h.Hanging.Spots() {
			label := v.T(s.Name)
			if h.Name != "" {
				label = v.T("spot/of", "name", h.Name, "spot", words.Key(s.Name))
			}
			all = append(all, spotView{label, s.Path, s.To.String(), FieldText(v.Words, s.Path, s.To.String())})
		}
		if v.Reading == Client {
			return all // the group that a client looks at
		}
	}
	return all
}

// spotView is a place that a button takes a group to.
type spotView struct{ Label, Path, Value, Shown string }
