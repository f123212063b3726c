package engine

import (
	"slices"

	"blockfield/engine/bench"
	"blockfield/engine/calendar"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/moisture"
	"blockfield/engine/schedule"
	"blockfield/engine/wood"
	"blockfield/engine/words"
)

// Settled reports whether the meter says that the sticks have come to rest; known is
// false where it has fewer than two readings with a day.
func (j Job) Settled() (settled, known bool) {
	all := j.readings()
	if len(all) < 2 {
		return false, false
	}
	last := all[len(all)-1]
	until, _ := calendar.Parse(last.Day)
	for _, r := range all[:len(all)-1] {
		from, _ := calendar.Parse(r.Day)
		if moisture.Settled(r.Percent, last.Percent, int(until-from)) {
			return true, true
		}
	}
	return false, true
}

// Days is the work of a job laid over days.
type Days struct {
	Plan  schedule.Plan
	Start calendar.Day // when the sticks are there
	Dated bool         // the days are those of a calendar; otherwise only their number means something
	Asked bool         // somebody has said when to begin; otherwise it is as late as the need allows, or today

	NeedBy     calendar.Day // last day on which it may be ready
	Needed     bool         // somebody has said so
	Short      int          // days by which it is late; 0: in time
	Waiting    int          // whole days that the chain waits for wood, glue and coats
	CureKnown  bool         // false where a finish has no time of its own, and only its sheet says
	MoreReady  calendar.Day // when it is ready with one more person at the bench
	MorePeople int          // how many those are; 0: there are as many as can work
}

// mostPeople at one bench. Common practice, no source.
const mostPeople = 4

// Schedule lays the work over days: forwards from the first day that somebody has said,
// backwards from the day of need, or from today on. Without any of them it counts days
// from a Monday that stands for nothing.
func (j Job) Schedule(d design.Design, today string) Days {
	w := j.work(d, usually)
	out := Days{CureKnown: w.cureKnown}
	hours := w.hours
	people := j.Record.Days.People
	out.NeedBy, out.Needed = calendar.Parse(j.Record.Days.NeedBy)
	start, asked := calendar.Parse(j.Record.Days.Start)
	now, known := calendar.Parse(today)
	out.Asked, out.Dated = asked, true
	switch {
	case asked:
		out.Start = start
	case out.Needed:
		// Where not even two years are enough, no day is early enough.
		latest, ok := schedule.LatestStart(w.tasks, out.NeedBy, hours, people, bench.CrewShare)
		if known && (!ok || latest < now) {
			latest = now // too late already: how late is said below
		}
		out.Start = latest
	case known:
		out.Start = now
	default:
		out.Start, out.Dated = calendar.Of(2001, 1, 1), false // a Monday
	}
	out.Plan = schedule.Make(w.tasks, out.Start, hours, people, bench.CrewShare)
	if out.Needed {
		out.Short = max(0, int(out.Plan.Ready.Day()-out.NeedBy))
	}
	out.Waiting = waiting(out.Plan)
	if people < mostPeople {
		out.MorePeople = people + 1
		out.MoreReady = schedule.Make(w.tasks, out.Start, hours, people+1, bench.CrewShare).Ready.Day()
	}
	return out
}

// waiting is how many whole days the chain of a plan waits.
func waiting(p schedule.Plan) int {
	minutes := int64(0)
	for i := 1; i < len(p.Chain); i++ {
		before, after := p.Chain[i-1], p.Chain[i]
		for _, l := range p.Tasks[after].After {
			if l.Task == before && l.Hours > 0 {
				minutes += int64(p.Placed[after].Start - p.Placed[before].End)
			}
		}
	}
	const aDay = 24 * 60
	return int(minutes / aDay)
}

// Names of what is done, and of what is waited for: "days/" and the name is the key of
// its words.
const (
	dayThere  = "days/there"
	daySort   = "days/sort"
	dayCut    = "days/cut"
	daySand   = "days/sand"
	dayStrip  = "days/strip"
	dayBacker = "days/backer"
	dayLay    = "days/lay"
	dayTrim   = "days/trim"
	dayCoat   = "days/coat"
	dayFrame  = "days/frame"
	dayCleat  = "days/cleat"
	dayPack   = "days/pack"
	dayOther  = "days/other"
	dayReady  = "days/ready"

	waitSettle = "days/settling"
	waitGlue   = "days/glue-sets"
	waitCoat   = "days/coat-dries"
	waitCure   = "days/cures"
)

// manyParts is up to how many panels, or heights, each is laid out by itself. Beyond,
// the panels of a group are one, and beyond that all of them.
const manyParts = 24

// work is the work of a job as tasks that wait for one another.
type work struct {
	tasks     []schedule.Task
	hours     schedule.Hours
	cureKnown bool

	minutes map[string]float64 // of the time table, by task
	used    map[string]bool
	factor  float64 // on all of them, for tidying and for hands that are new to it
}

// How long a task takes: as usual, or at worst.
func usually(s bench.Spread) float64 { return s.Typical }
func atWorst(s bench.Spread) float64 { return s.High }

// work turns the minutes of the time table into tasks: cutting and sanding height by
// height, everything from the backer on panel by panel. What is done for the job as a
// whole is shared among them evenly, and no minute of the shop gets lost.
func (j Job) work(d design.Design, long func(bench.Spread) float64) work {
	w := work{hours: j.hours(d.Work), cureKnown: true, minutes: map[string]float64{}, used: map[string]bool{}, factor: 1}
	all, tidy := d.Work.ExtraShop, 0.0
	for _, t := range j.Plan.Bill.Tasks {
		if t.Role != "shop" {
			continue
		}
		w.minutes[t.ID] = long(t.Minutes)
		all += long(t.Minutes)
		if t.ID == "k1" {
			tidy += long(t.Minutes)
		}
	}
	if all > tidy {
		w.factor = all / (all - tidy)
	}
	w.used["k1"] = true
	if d.Work.OwnBuild {
		w.factor *= j.Tools.Factor
	}

	there := w.add(dayThere, 0, 0, 1)
	sorted := w.add(daySort, 0, w.take("b1", "b2"), mostPeople, schedule.Link{Task: there, Hours: float64(j.Record.Days.Settle) * 24, Name: waitSettle})
	strips := w.add(dayStrip, 0, w.take("h1"), 1, schedule.Link{Task: there})
	w.tasks[strips].Saw = true
	sanded := w.heights(j, sorted)
	ends := []schedule.Link{{Task: strips}}
	ends = append(ends, j.panels(&w, there, sanded)...)
	other := d.Work.ExtraShop * w.factor
	for _, t := range j.Plan.Bill.Tasks {
		if t.Role == "shop" && !w.used[t.ID] {
			other += float64(long(t.Minutes) * w.factor)
		}
	}
	ends = append(ends, schedule.Link{Task: w.add(dayOther, 0, other, 1, schedule.Link{Task: there})})
	w.add(dayReady, 0, 0, 1, ends...)
	return w
}

// hours are those of the workshop, or the free days of a home builder, from Saturday on.
func (j Job) hours(w design.Work) schedule.Hours {
	h := schedule.Hours{ADay: j.Record.Days.HoursPerDay, AWeek: j.Record.Days.DaysPerWeek}
	if w.OwnBuild {
		const saturday = 5
		h.First = saturday
	}
	return h
}

func (w *work) add(name string, panel int, minutes float64, most int, after ...schedule.Link) int {
	w.tasks = append(w.tasks, schedule.Task{Name: name, Panel: panel, Minutes: minutes, Most: most, After: after})
	return len(w.tasks) - 1
}

// take is the minutes of tasks of the time table, which are laid out now.
func (w *work) take(ids ...string) float64 {
	sum := 0.0
	for _, id := range ids {
		sum += w.minutes[id]
		w.used[id] = true
	}
	return sum * w.factor
}

// heights adds cutting and sanding, the tallest blocks first, and returns the ends of
// the sanding.
func (w *work) heights(j Job, sorted int) []schedule.Link {
	cuts, n := 0.0, 0.0
	for _, c := range j.Counts {
		cuts += float64(c.Need + c.Spare)
		n++
	}
	setSaw, cut := w.take("c1", "c2"), w.take("c3", "c4")
	setBench, sand := w.take("d1"), w.take("d2", "d3")
	var ends []schedule.Link
	if len(j.Counts) == 0 || len(j.Counts) > manyParts {
		at := w.add(dayCut, 0, setSaw+cut, 1, schedule.Link{Task: sorted})
		w.tasks[at].Saw = true
		return []schedule.Link{{Task: w.add(daySand, 0, setBench+sand, mostPeople, schedule.Link{Task: at})}}
	}
	before := sorted
	for _, c := range slices.Backward(j.Counts) {
		share := float64(c.Need+c.Spare) / cuts
		at := w.add(dayCut, 0, setSaw/n+float64(cut*share), 1, schedule.Link{Task: before})
		w.tasks[at].Saw = true
		before = at // the longest blocks first
		ends = append(ends, schedule.Link{Task: w.add(daySand, 0, setBench/n+float64(sand*share), 1, schedule.Link{Task: at})})
	}
	return ends
}

// lot is one panel, or all panels of a group, or of the job, where there are very many.
type lot struct {
	group  Group
	number int     // from 1
	panels float64 // how many it stands for
	blocks float64
}

func (j Job) lots() []lot {
	each := j.Plan.Bill.Panels <= manyParts
	var all []lot
	for i, g := range j.Plan.Groups {
		switch {
		case each:
		case len(j.Plan.Groups) <= manyParts || i == 0:
			all = append(all, lot{group: g, number: len(all) + 1})
		case curing(g) > curing(all[0].group):
			all[0].group = g // the slowest finish stands for all
		}
		for _, p := range g.Built.Panels {
			if each {
				all = append(all, lot{group: g, number: len(all) + 1})
			}
			last := &all[len(all)-1]
			last.panels++
			last.blocks += float64(p.Blocks)
		}
	}
	return all
}

// panels adds what is done panel by panel, and returns the ends of all of it.
func (j Job) panels(w *work, there int, sanded []schedule.Link) []schedule.Link {
	lots := j.lots()
	bill := j.Plan.Bill
	backer, lay := w.take("e1"), w.take("e2", "e5", "e6")
	place, trim := w.take("e3", "e4"), w.take("e7")
	coats, frame, frameCoats := w.take("f1", "f2", "f3"), w.take("g1", "g2", "g3"), w.take("g4")
	cleat, pack := w.take("h2"), w.take("i1", "i2")
	allCoats, allFrameCoats, frames := 0.0, 0.0, 0.0
	for _, l := range lots {
		field, edge := coatsOf(l.group)
		allCoats += l.panels * float64(field)
		allFrameCoats += l.panels * float64(edge)
		if l.group.Built.Framed {
			frames += l.panels
		}
	}
	part := func(minutes, of, all float64) float64 {
		if all == 0 {
			return 0
		}
		return minutes * of / all
	}
	var ends []schedule.Link
	for _, l := range lots {
		n, panels := l.number, float64(bill.Panels)
		field, edge := coatsOf(l.group)
		dry, cure, known := drying(l.group, field+edge)
		w.cureKnown = w.cureKnown && known
		coat := func(after []schedule.Link, count int, minutes float64, name string) []schedule.Link {
			for range count {
				after = []schedule.Link{{Task: w.add(name, n, minutes, 1, after...), Hours: dry, Name: waitCoat}}
			}
			return after
		}
		each := part(coats, l.panels, allCoats)
		before := slices.Clone(sanded)
		early := l.group.Design.Finish.When != design.FinishAfter
		if early {
			before = coat(before, field, each, dayCoat)
		}
		board := w.add(dayBacker, n, part(backer, l.panels, panels), 1, schedule.Link{Task: there})
		laid := w.add(dayLay, n, part(lay, l.panels, panels)+part(place, l.blocks, float64(bill.Blocks)), 2,
			append(before, schedule.Link{Task: board})...)
		trimmed := w.add(dayTrim, n, part(trim, l.panels, panels), 1,
			schedule.Link{Task: laid, Hours: j.Record.Days.GlueSets, Name: waitGlue})
		last := []schedule.Link{{Task: trimmed}}
		if !early {
			last = coat(last, field, each, dayCoat)
		}
		if l.group.Built.Framed {
			framed := w.add(dayFrame, n, part(frame, l.panels, frames), 1, schedule.Link{Task: trimmed})
			last = append(last, coat([]schedule.Link{{Task: framed}}, edge, part(frameCoats, l.panels, allFrameCoats), dayFrame)...)
		}
		last = append(last, schedule.Link{Task: w.add(dayCleat, n, part(cleat, l.panels, panels), 1, schedule.Link{Task: trimmed})})
		for i := range last {
			if last[i].Name == waitCoat { // the last coat cures before anything is wrapped
				last[i].Hours, last[i].Name = cure, waitCure
			}
		}
		ends = append(ends, schedule.Link{Task: w.add(dayPack, n, part(pack, l.panels, panels), 1, last...)})
	}
	return ends
}

// curing is how long the coats of a group take to dry and to cure, in hours.
func curing(g Group) float64 {
	field, edge := coatsOf(g)
	dry, cure, _ := drying(g, field+edge)
	return float64(field)*dry + cure
}

// unfinished is the finish that takes no coats, whatever their number says.
const unfinished = "none"

// coatsOf are the coats on the fields and on the frames of a group.
func coatsOf(g Group) (field, frame int) {
	if g.Design.Finish.Kind == unfinished {
		return 0, 0
	}
	if g.Built.Framed {
		frame = g.Design.Finish.FrameCoats
	}
	return g.Design.Finish.Coats, frame
}

// drying is how many hours the next coat waits, the longer time that is usual, and how
// many the last one cures at least; known is false where only the finish's sheet says.
func drying(g Group, coats int) (dry, cure float64, known bool) {
	f, ok := wood.FindFinish(g.Design.Finish.Kind)
	if !ok || coats == 0 {
		return 0, 0, true
	}
	return f.NextCoat.High, f.FullyDry.Low, f.FullyDry.Low > 0
}

// dayWatchOuts are what is to be said of the days.
func (j Job) dayWatchOuts(days Days) []check.WatchOut {
	var all []check.WatchOut
	if days.Dated && days.Short > 0 {
		all = append(all, check.WatchOut{
			Code: "days/late", Level: check.Caution,
			Args: words.Args{
				"ready": days.Plan.Ready.Day().String(), "wanted": days.NeedBy.String(), "n": days.Short, "waiting": days.Waiting,
			},
			Field: design.RecordPrefix + "days.needBy", Source: check.CommonPractice,
		})
	}
	hang, asked := calendar.Parse(j.Record.Days.Hang)
	if !asked || !days.Dated {
		return all
	}
	w := check.WatchOut{
		Level: check.Caution, Gate: check.Hang, Field: design.RecordPrefix + "days.hang", Source: check.CommonPractice,
	}
	ready := days.Plan.Ready.Day()
	switch {
	case hang < ready:
		w.Code = "days/not-cured"
		w.Args = words.Args{"hang": hang.String(), "cured": ready.String()}
	case !days.CureKnown:
		w.Code = "days/cure-unknown"
		w.Args = words.Args{"hang": hang.String()}
	default:
		return all
	}
	return append(all, w)
}
