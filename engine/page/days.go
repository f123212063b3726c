package page

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"blockfield/engine/calendar"
	"blockfield/engine/draw"
	"blockfield/engine/schedule"
)

// dayFields are the fields of the record that say when the work is done.
func dayFields() []string {
	return []string{"start", "needBy", "hang", "hoursPerDay", "daysPerWeek", "people", "settle", "glueSets"}
}

// DayControls are their controls.
func (v *view) DayControls() []Control {
	var all []Control
	for _, name := range dayFields() {
		all = append(all, v.recordControl("", "days.%s", name))
	}
	return all
}

// date says a day with its weekday.
func (v *view) date(d calendar.Day) string {
	return v.T(fmt.Sprintf("weekday/%d", d.Weekday())) + " " + v.Words.Show(d.String())
}

// DayLines say when the work begins and ends, what only waits, and what one more person
// changes.
func (v *view) DayLines() []string {
	d := v.Job.Days
	ready := d.Plan.Ready.Day()
	var all []string
	say := func(key string, pairs ...any) { all = append(all, v.T(key, pairs...)) }
	switch {
	case !d.Dated:
		say("days/said-undated", "n", int(ready-d.Start)+1)
	case d.Asked:
		say("days/said-forwards", "start", v.date(d.Start), "ready", v.date(ready))
	case d.Needed:
		say("days/said-backwards", "need", v.date(d.NeedBy), "start", v.date(d.Start), "ready", v.date(ready))
	default:
		say("days/said-today", "start", v.date(d.Start), "ready", v.date(ready))
	}
	say("days/waits", "n", d.Waiting)
	say("days/chain", "list", strings.Join(v.chainNames(), ", "))
	if v.Reading == Builder {
		say("days/weekends", "n", freeWeeks(d.Plan))
	}
	if n := d.MorePeople; n > 0 {
		key, earlier := "days/more", int(ready-d.MoreReady)
		if earlier == 0 {
			key = "days/more-none"
		}
		say(key, "people", n, "n", earlier)
	}
	if !d.CureKnown {
		say("days/sheet")
	}
	return all
}

// chainNames are the kinds of work that decide when all is ready, each once.
func (v *view) chainNames() []string {
	var all []string
	p := v.Job.Days.Plan
	for _, i := range p.Chain {
		if name := v.dayName(p.Tasks[i].Name); len(p.Placed[i].People) > 0 && !slices.Contains(all, name) {
			all = append(all, name)
		}
	}
	return all
}

// dayName is the word for a kind of work. Nobody packs at home.
func (v *view) dayName(key string) string {
	if v.Reading == Builder && v.Words.Language.Has(key+"-home") {
		key += "-home"
	}
	return v.T(key)
}

// freeWeeks is on how many weekends somebody works.
func freeWeeks(p schedule.Plan) int {
	weeks := map[int]bool{}
	for _, at := range p.Placed {
		if len(at.People) == 0 {
			continue
		}
		for day := at.Start.Day(); day <= at.End.Day(); day++ {
			const week, saturday = 7, 5
			weeks[(int(day)-day.Weekday()+saturday)/week] = true
		}
	}
	return len(weeks)
}

// Sizes of the timeline, in units of its drawing.
const (
	timeLabel  = 92.0 // room for the names
	timeChart  = 268.0
	timeRow    = 15.0
	timeBar    = 9.0
	timeHead   = 18.0
	timeText   = 10.0
	shortest   = 1.5 // bar that can still be seen
	minutesDay = 24 * 60
)

// Timeline draws the work over days: a line for each kind of work, what decides when all
// is ready in full, everything else in outline, and what only waits hatched.
func (v *view) Timeline() template.HTML {
	d := v.Job.Days
	rows := timelineRows(d.Plan)
	first, last := d.Start, d.Plan.Ready.Day()
	days := float64(last-first) + 1
	c := draw.New("timeline", draw.Box{Width: timeLabel + timeChart, Height: timeHead + timeRow*float64(len(rows)) + 2})
	c.Class("timeline")
	c.Title(v.T("days/picture"))
	c.Desc(strings.Join(v.DayLines(), " "))
	x := func(m schedule.Moment) float64 {
		return timeLabel + timeChart*(float64(m)/minutesDay-float64(first))/days
	}
	v.timelineScale(c, first, last, x, len(rows))
	hatch := c.Hatch(2.5, 0.5, 45)
	chain := d.Plan.Chain
	for i, row := range rows {
		y := timeHead + timeRow*float64(i)
		c.Text(0, y+timeBar, v.dayName(row.name), draw.Size(timeText))
		for _, t := range row.tasks {
			at := d.Plan.Placed[t]
			class := "task"
			if slices.Contains(chain, t) {
				class = "task decides"
			}
			c.Rect(draw.Box{X: x(at.Start), Y: y + 2, Width: max(shortest, x(at.End)-x(at.Start)), Height: timeBar}, draw.Class(class))
		}
	}
	for i := 1; i < len(chain); i++ {
		v.timelineWait(c, rows, chain[i-1], chain[i], x, hatch)
	}
	return template.HTML(c.String())
}

// timelineRow is one kind of work.
type timelineRow struct {
	name  string
	tasks []int
}

// timelineRows are the kinds of work in the order in which they begin.
func timelineRows(p schedule.Plan) []timelineRow {
	var rows []timelineRow
	for i, t := range p.Tasks {
		if len(p.Placed[i].People) == 0 {
			continue
		}
		at := slices.IndexFunc(rows, func(r timelineRow) bool { return r.name == t.Name })
		if at < 0 {
			at = len(rows)
			rows = append(rows, timelineRow{name: t.Name})
		}
		rows[at].tasks = append(rows[at].tasks, i)
	}
	slices.SortStableFunc(rows, func(a, b timelineRow) int {
		return int(begins(p, a) - begins(p, b))
	})
	return rows
}

func begins(p schedule.Plan, r timelineRow) schedule.Moment {
	first := p.Placed[r.tasks[0]].Start
	for _, t := range r.tasks {
		first = min(first, p.Placed[t].Start)
	}
	return first
}

// timelineScale marks the weeks: the date of every Monday, or of every second one and so
// on where they stand close.
func (v *view) timelineScale(c *draw.Canvas, first, last calendar.Day, x func(schedule.Moment) float64, rows int) {
	const week, room = 7, 30.0
	step := week
	for timeChart*float64(step)/(float64(last-first)+1) < room {
		step += week
	}
	foot := timeHead + timeRow*float64(rows)
	monday := first - calendar.Day(first.Weekday())
	if monday < first {
		monday += week
	}
	for day := monday; day <= last; day += calendar.Day(step) {
		at := x(schedule.At(day, 0))
		c.Line(at, timeHead-3, at, foot, draw.Class("week"))
		label := day.String()[len("2026-"):]
		if !v.Job.Days.Dated {
			label = v.T("days/day", "n", int(day-first)+1)
		}
		c.Text(at, timeHead-5, label, draw.Size(timeText-1))
	}
}

// timelineWait draws what the chain waits between two of its tasks, in the row of the
// second.
func (v *view) timelineWait(c *draw.Canvas, rows []timelineRow, before, after int, x func(schedule.Moment) float64, hatch draw.Attr) {
	p := v.Job.Days.Plan
	waits := slices.ContainsFunc(p.Tasks[after].After, func(l schedule.Link) bool { return l.Task == before && l.Hours > 0 })
	row := slices.IndexFunc(rows, func(r timelineRow) bool { return slices.Contains(r.tasks, after) })
	if !waits || row < 0 {
		return
	}
	from, to := x(p.Placed[before].End), x(p.Placed[after].Start)
	y := timeHead + timeRow*float64(row)
	c.Rect(draw.Box{X: from, Y: y + 4, Width: to - from, Height: timeBar - 4}, draw.Class("waits"), hatch)
}
