package engine

import (
	"fmt"
	"math"
	"slices"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/wall"
	"blockfield/engine/words"
)

// sameMassKg is how far what a panel is reckoned to weigh may have moved since it was
// weighed, and still be the panel that was: less than any part of it weighs.
const sameMassKg = 0.05

// weighedField is where the mass of a group is typed in a record that has begun with this
// design.
func weighedField(group int) string {
	return fmt.Sprintf("%sweighed[%d].kg", design.RecordPrefix, group)
}

// fitWeighed adds the groups of the plan that have no entry yet.
func fitWeighed(all []design.Weighed, r Result) []design.Weighed {
	for _, g := range r.Groups {
		if weighedOf(all, g) < 0 {
			all = append(all, design.Weighed{Wall: g.Wall + 1, Group: g.Index + 1})
		}
	}
	return all
}

func weighedOf(all []design.Weighed, g Group) int {
	return slices.IndexFunc(all, func(w design.Weighed) bool { return w.Wall == g.Wall+1 && w.Group == g.Index+1 })
}

// Weighing is the entry of the record for a group: what was typed, whether it still counts,
// and what the group's heaviest panel is reckoned to weigh now.
type Weighing struct {
	Entry  int
	Kg     float64 // 0: nobody has weighed it
	Stale  bool    // it was weighed as another design
	Before float64 // kg that it was reckoned to weigh then
	Now    float64
}

// Weighing is that of a group of the plan.
func (j Job) Weighing(group int) Weighing {
	w := Weighing{Entry: weighedOf(j.Record.Weighed, j.Plan.Groups[group]), Now: j.Plan.Hangings[group].PanelKg}
	if w.Entry < 0 {
		return w
	}
	had := j.Record.Weighed[w.Entry]
	w.Kg, w.Before = had.Kg, had.Reckoned
	w.Stale = w.Kg > 0 && w.Before > 0 && math.Abs(w.Before-w.Now) > sameMassKg
	return w
}

// weighed are the hangings with what the scales say in place of what was reckoned.
func (j Job) weighed(all []wall.Hanging) []wall.Hanging {
	out := slices.Clone(all)
	for i := range out {
		w := j.Weighing(i)
		if w.Entry >= 0 {
			out[i].WeighedField = fmt.Sprintf("%sweighed[%d].kg", design.RecordPrefix, w.Entry)
		}
		h := out[i].Hung
		h.Looked = j.Record.Asked.LookedAtThis(j.Plan.Revision)
		if w.Kg > 0 && !w.Stale {
			h.WeighedKg = w.Kg
		}
		if h.WeighedKg > 0 || h.Looked {
			out[i] = wall.Hang(h)
		}
	}
	return out
}

// saidAtTheWall reports whether the record says anything that a plan alone does not.
func (j Job) saidAtTheWall() bool {
	if j.Record.Asked != (design.Asked{}) {
		return true
	}
	for i := range j.Plan.Groups {
		if w := j.Weighing(i); w.Kg > 0 || w.Entry != i {
			return true
		}
	}
	return false
}

// atTheWall puts what the scales say, and what was asked about the building, into a result:
// everything that holds and lifts a panel is counted for its weighed mass.
func (j Job) atTheWall(r *Result) {
	if !j.saidAtTheWall() {
		return
	}
	before := wall.WatchOuts(j.design.Room, j.design.Work, r.Hangings)
	mine := map[string]bool{}
	for _, w := range before {
		mine[w.Code] = true
	}
	r.Hangings = j.weighed(r.Hangings)
	r.WatchOuts = slices.DeleteFunc(slices.Clone(r.WatchOuts), func(w check.WatchOut) bool { return mine[w.Code] })
	r.WatchOuts = append(r.WatchOuts, wall.Answered(j.design.Room, j.design.Work, r.Hangings, j.Record.Asked, r.Revision)...)
	for i := range r.Groups {
		if w := j.Weighing(i); w.Stale {
			r.WatchOuts = append(r.WatchOuts, check.WatchOut{
				Code: "record/weighed-other", Level: check.Caution, Gate: check.Hang,
				Args:  words.Args{"kg": words.Kg(w.Kg), "before": words.Kg(w.Before), "now": words.Kg(w.Now)},
				Field: fmt.Sprintf("%sweighed[%d].kg", design.RecordPrefix, w.Entry), Source: check.CommonPractice,
			})
		}
	}
}
