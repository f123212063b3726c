package page

import (
	"fmt"
	"math"

	"blockfield/engine/bench"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

func (v *view) benchSets() []set {
	work := set{
		id: "work", heading: "bench/work", base: "work.",
		fields: []string{"crew", "survey", "distanceKm"},
		more:   []string{"ownBuild", "extraShopMinutes", "extraSiteMinutes", "speedFactor"},
	}
	if v.Reading == Builder {
		work.fields, work.more = []string{"ownBuild", "crew"}, []string{"speedFactor"}
	}
	all := []set{
		{
			id: "sticks", heading: "bench/sticks", base: "bench.",
			fields: []string{"stickLength", "kerf", "endTrim", "holdTail", "handling"},
			more:   []string{"carrier", "gang", "defects", "spares", "sparesLeast"},
		},
		{
			id: "boards", heading: "bench/boards", base: "bench.",
			fields: []string{"boardLength", "backerOversize", "trim", "sawDepth"},
			more:   []string{"backerGrain"},
		},
	}
	for i := range v.Doc.Design.Bench.Stock {
		path := fmt.Sprintf("bench.stock[%d]", i)
		id := fmt.Sprintf("stock-%d", i)
		all = append(all, set{
			id: id, part: path, taking: "page/leave-out", base: path + ".",
			fields: []string{"wood", "length", "width", "thickness", "count", "owned"},
		})
	}
	last := &all[len(all)-1]
	last.add, last.adding = "bench.stock", "bench/add-stock"
	for i := range v.Doc.Design.Bench.Sheets {
		path := fmt.Sprintf("bench.sheets[%d]", i)
		id := fmt.Sprintf("own-sheet-%d", i)
		all = append(all, set{
			id: id, part: path, taking: "page/leave-out", base: path + ".",
			fields: []string{"sheet", "thickness", "width", "length", "count"},
		})
	}
	last = &all[len(all)-1]
	last.also, last.alsoAdding = "bench.sheets", "bench/add-sheet"
	for _, g := range v.Groups() {
		all = append(all, set{
			id: "finish-when-" + g.Key, heading: "finish/heading", base: g.Path + ".", fields: []string{"finish.when"},
		})
	}
	all = append(all,
		set{
			id: "glue", heading: "bench/shop", base: "bench.",
			fields: []string{"stockMoisture", "glueOpenMinutes", "temperature"},
			more:   []string{"woodTimes", "fatigue"},
		},
		work,
	)
	return folded(all, v.benchAnswers())
}

func (v *view) benchSlots() []slot {
	var all []slot
	for _, id := range []string{"bench-stock", "bench-hours", "bench-cuts", "bench-handling", "bench-sheets", "bench-finish"} {
		all = append(all, slot{id: id, template: id, data: v})
	}
	all = append(all, answerSlots(v.benchAnswers())...)
	if v.Reading == Maker {
		all = append(all, slot{id: "gates", template: "gates", data: v})
	}
	all = append(all, v.shopSlots()...)
	return append(all, v.atTheEnd()...)
}

// Quantities for templates.
func hours(h float64) words.Hours { return words.Hours(h) }

// Kg says a mass.
func (v *view) Kg(x float64) string { return v.Words.Show(words.Kg(x)) }

// KgOf is a mass as an argument of a message.
func (v *view) KgOf(x float64) words.Kg { return words.Kg(x) }

// PercentOf is a share as an argument of a message.
func (v *view) PercentOf(x float64) words.Percent { return words.Percent(x) }

// Grams says a small mass.
func (v *view) Grams(kg float64) string {
	return v.T("bench/grams", "n", int(math.Round(kg*gramsPerKg)))
}

// Metres says a running length, in feet where lengths are in inches.
func (v *view) Metres(m float64) string {
	const feetPerM = 1 / 0.3048 // exact
	if v.Words.Units.Bare() == length.InInch {
		return v.T("bench/feet", "n", m*feetPerM)
	}
	return v.T("bench/metres", "n", m)
}

// Litres says a volume.
func (v *view) Litres(x float64) string { return v.Words.Show(words.Litres(x)) }

// Hours says hours of work.
func (v *view) Hours(x float64) string { return v.Words.Show(hours(x)) }

// Show says any value.
func (v *view) Show(x any) string { return v.Words.Show(x) }

// WorkHours are hours as an argument of a message.
func (v *view) WorkHours(x float64) words.Hours { return hours(x) }

// Weekends are those of a home builder, whole ones.
func (v *view) Weekends() int { return int(math.Ceil(v.Plan.Bill.Weekends.Typical)) }

// HomeHours are the hours of a home builder, whom the same work takes longer.
func (v *view) HomeHours() float64 { return v.Plan.Bill.HomeHours.Typical }

// HomeFactor is how much longer.
func (v *view) HomeFactor() words.Quantity { return words.Quantity{Value: v.Plan.Bill.HomeFactor} }

// HourGroup is the hours of tasks of one kind.
type HourGroup struct {
	Label string
	Hours bench.Spread
}

// hourGroups are the tasks of the time table by the letter of their ids, as the
// work is done.
func hourGroups() []struct{ key, letters string } {
	return []struct{ key, letters string }{
		{"stock", "b"}, {"cut", "c"}, {"sand", "d"}, {"lay", "e"}, {"finish", "f"}, {"frame", "g"},
		{"cleat", "h"}, {"pack", "i"}, {"tidy", "k"}, {"office", "a"}, {"site", "j"},
	}
}

// hourKey is the key of a kind of work: at home nobody surveys or packs, and
// the site is one's own wall.
func (v *view) hourKey(kind string) string {
	if v.Reading == Builder && (kind == "office" || kind == "pack" || kind == "site") {
		return kind + "-home"
	}
	return kind
}

// HourGroups are the hours by kind of work.
func (v *view) HourGroups() []HourGroup {
	const minutesPerHour = 60
	var all []HourGroup
	for _, g := range hourGroups() {
		var sum bench.Spread
		for _, t := range v.Plan.Bill.Tasks {
			if t.ID == "" || t.ID[:1] != g.letters {
				continue
			}
			sum.Low += t.Minutes.Low / minutesPerHour
			sum.Typical += t.Minutes.Typical / minutesPerHour
			sum.High += t.Minutes.High / minutesPerHour
		}
		if sum.High > 0 {
			all = append(all, HourGroup{v.T("hours/" + v.hourKey(g.key)), sum})
		}
	}
	for _, t := range v.Plan.Bill.Timed(v.Doc.Design.Work)[len(v.Plan.Bill.Tasks):] {
		m := t.Minutes
		all = append(all, HourGroup{v.taskName(t.ID, t.Name), bench.Spread{Low: m.Low / minutesPerHour, Typical: m.Typical / minutesPerHour, High: m.High / minutesPerHour}})
	}
	return all
}
