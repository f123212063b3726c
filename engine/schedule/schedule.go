// Package schedule lays the work of a job over days: what waits for what, who does it,
// and when all of it is ready.
//
// Work is done in working hours only, from eight in the morning of the working
// days of a week, and goes on the next morning where it was left. What waits (for glue
// to set, for a coat to dry) waits by the clock, at night and on Sundays too. Each
// person does one thing at a time, and there is one saw. n people in one shop get less
// done each than one alone: times are divided by a share that the caller gives.
//
// Tasks are placed one after another, the one with the longest way behind it first, each
// as early as what it waits for and the people allow, also into gaps. That is no proof of
// the earliest end, but nobody lays out a workshop by one. With more people the best
// schedule of so many or fewer is taken, so that nobody is ever in the way.
//
// Times are whole minutes, so a schedule is the same everywhere.
package schedule

import (
	"math"
	"slices"

	"blockfield/engine/calendar"
)

// Minutes of clock and calendar.
const (
	anHour = 60
	aDay   = 24 * anHour
	opens  = 8 * anHour
	week   = 7
)

// Link says that a task waits for another, and for how many hours after its end.
type Link struct {
	Task  int
	Hours float64
	Name  string // key of the name of the wait; empty where there is none
}

// Task is one thing to do. One without minutes is a point of time that waits for others.
type Task struct {
	Name    string  // key of its name
	Panel   int     // that it belongs to, from 1; 0: to the job
	Minutes float64 // of one person alone
	Most    int     // people who can share it; 0: one
	Saw     bool    // takes the saw
	After   []Link  // tasks before it in the list
}

// Hours are the working hours.
type Hours struct {
	ADay  float64 // hours of a working day
	AWeek int     // working days of a week, one after another
	First int     // weekday of the first of them, 0 for Monday
}

// Moment is a minute of the calendar, from 1 January 1970 on.
type Moment int64

// Day is the day of a moment. Midnight belongs to the day that it ends.
func (m Moment) Day() calendar.Day { return calendar.Day(floorDiv(int64(m)-1, aDay)) }

// At is a minute of a day.
func At(d calendar.Day, minute int) Moment { return Moment(int64(d)*aDay + int64(minute)) }

// Placed is when a task is done, and by whom.
type Placed struct {
	Start, End Moment
	People     []int // from 0
}

// Plan is the schedule of a job.
type Plan struct {
	Tasks  []Task
	Placed []Placed // of each task
	People int      // who are busy; fewer than there are where more would not help
	Ready  Moment   // when the last task ends
	Chain  []int    // the tasks that decide when it is ready, in order: any delay of one delays it
}

// Make returns the schedule of tasks from the morning of a day on. share is how much
// each of n people gets done, from 0 to 1.
func Make(tasks []Task, start calendar.Day, h Hours, people int, share func(n int) float64) Plan {
	best := Plan{}
	for n := 1; n <= max(people, 1); n++ {
		p := make1(tasks, start, h, n, share(n))
		if n == 1 || p.Ready < best.Ready {
			best = p
		}
	}
	return best
}

// LatestStart is a day on which the work can begin to be ready by the end of a day, and
// after which it cannot; false where that is more than two years before.
func LatestStart(tasks []Task, by calendar.Day, h Hours, people int, share func(n int) float64) (calendar.Day, bool) {
	const longest = 2 * 365
	late := func(days int) bool { return Make(tasks, by-calendar.Day(days), h, people, share).Ready.Day() > by }
	if late(longest) {
		return by - longest, false
	}
	low, high := 0, longest // days before: in time when begun high days before, and late low − 1 days
	for low < high {
		if middle := (low + high) / 2; late(middle) {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return by - calendar.Day(high), true
}

// axis counts working minutes: those of all working days in a row.
type axis struct {
	inDay  int64
	inWeek int64
	first  int64 // weekday
}

func axisOf(h Hours) axis {
	return axis{inDay: max(1, int64(math.Round(h.ADay*anHour))), inWeek: int64(min(max(h.AWeek, 1), week)), first: int64(h.First)}
}

// at is the first working minute that is not before a moment.
func (a axis) at(m Moment) int64 {
	day := floorDiv(int64(m), aDay)
	minute := int64(m) - day*aDay - opens
	weekday := (int64(calendar.Day(day).Weekday()) - a.first + week) % week // of the working week
	weeks := floorDiv(day-weekday-firstMonday-a.first, week)
	index := weeks*a.inWeek + min(weekday, a.inWeek)
	switch {
	case weekday >= a.inWeek || minute <= 0:
		return index * a.inDay
	case minute >= a.inDay:
		return (index + 1) * a.inDay
	default:
		return index*a.inDay + minute
	}
}

// start and end are the moments at which work begins and ends that begins or ends at a
// working minute: a day that is full ends in the evening, and the next begins in the
// morning.
func (a axis) start(w int64) Moment {
	index := floorDiv(w, a.inDay)
	minute := w - index*a.inDay
	weeks := floorDiv(index, a.inWeek)
	day := weeks*week + firstMonday + a.first + index - weeks*a.inWeek
	return Moment(day*aDay + opens + minute)
}

func (a axis) end(w int64) Moment { return a.start(w-1) + 1 }

// firstMonday is the number of a Monday that weeks are counted from: 1 January 1970 was
// a Thursday.
const firstMonday = 4

func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// span is a stretch of working minutes, of which the last is not part.
type span struct{ from, to int64 }

// spans are those in which somebody is busy, in order and apart from one another.
type spans []span

// after is the first span that ends behind a minute.
func (s spans) after(minute int64) int {
	i, _ := slices.BinarySearchFunc(s, minute, func(b span, m int64) int {
		if b.to <= m {
			return -1
		}
		return 1
	})
	return i
}

func (s spans) free(x span) bool {
	i := s.after(x.from)
	return i == len(s) || s[i].from >= x.to
}

func (s *spans) add(x span) { *s = slices.Insert(*s, s.after(x.from), x) }

// builder places tasks.
type builder struct {
	tasks  []Task
	axis   axis
	share  float64
	start  Moment
	placed []Placed
	work   []span // of each task, in working minutes
	done   []bool
	busy   []spans // of each person
	saw    spans
}

func make1(tasks []Task, start calendar.Day, h Hours, people int, share float64) Plan {
	b := builder{
		tasks: tasks, axis: axisOf(h), share: share, start: At(start, 0),
		placed: make([]Placed, len(tasks)), work: make([]span, len(tasks)), done: make([]bool, len(tasks)),
		busy: make([]spans, people),
	}
	behind := b.behind()
	for range tasks {
		b.place(b.next(behind))
	}
	p := Plan{Tasks: tasks, Placed: b.placed, People: people, Ready: b.start}
	last := -1
	for i, at := range b.placed {
		if at.End >= p.Ready {
			p.Ready, last = at.End, i
		}
	}
	p.Chain = b.chain(last)
	return p
}

// behind is how long the way from the start of each task to the end of the job is, by
// the clock, as if everybody were free.
func (b *builder) behind() []int64 {
	all := make([]int64, len(b.tasks))
	for i := len(b.tasks) - 1; i >= 0; i-- { // tasks wait for earlier ones only
		all[i] += b.minutes(i, 1) * aDay * week / (b.axis.inDay * b.axis.inWeek)
		for _, l := range b.tasks[i].After {
			all[l.Task] = max(all[l.Task], all[i]+hours(l.Hours))
		}
	}
	return all
}

func hours(h float64) int64 { return int64(math.Ceil(h * anHour)) }

// next is the task to place: of those that wait for nothing that is not placed, the one
// with the longest way behind it.
func (b *builder) next(behind []int64) int {
	best := -1
	for i := range b.tasks {
		waits := slices.ContainsFunc(b.tasks[i].After, func(l Link) bool { return !b.done[l.Task] })
		if !b.done[i] && !waits && (best < 0 || behind[i] > behind[best]) {
			best = i
		}
	}
	return best
}

// minutes is how long a task takes so many people.
func (b *builder) minutes(i, people int) int64 {
	return int64(math.Ceil(b.tasks[i].Minutes / (float64(people) * b.share)))
}

// free is when what a task waits for is over.
func (b *builder) free(i int) Moment {
	at := b.start
	for _, l := range b.tasks[i].After {
		at = max(at, b.placed[l.Task].End+Moment(hours(l.Hours)))
	}
	return at
}

func (b *builder) place(i int) {
	b.done[i] = true
	at := b.free(i)
	if b.tasks[i].Minutes <= 0 {
		b.placed[i] = Placed{Start: at, End: at}
		return
	}
	people := min(max(b.tasks[i].Most, 1), len(b.busy))
	first := b.axis.at(at)
	length := b.minutes(i, people)
	x, who := b.gap(i, first, length, people)
	for _, w := range who {
		b.busy[w].add(x)
	}
	if b.tasks[i].Saw {
		b.saw.add(x)
	}
	b.work[i] = x
	b.placed[i] = Placed{Start: b.axis.start(x.from), End: b.axis.end(x.to), People: who}
}

// gap is the earliest stretch from a working minute on in which enough people are free,
// and the saw where it is needed, and who they are.
func (b *builder) gap(i int, first, length int64, people int) (span, []int) {
	starts := []int64{first}
	for _, all := range append(slices.Clone(b.busy), b.saw) {
		for _, s := range all[all.after(first):] {
			starts = append(starts, s.to)
		}
	}
	slices.Sort(starts)
	for _, from := range starts {
		x := span{from, from + length}
		var who []int
		for w := range b.busy {
			if b.busy[w].free(x) && len(who) < people {
				who = append(who, w)
			}
		}
		if len(who) == people && (!b.tasks[i].Saw || b.saw.free(x)) {
			return x, who
		}
	}
	panic("schedule: internal error: nobody is ever free")
}

// chain goes back from a task to what made it begin when it did: what it waited for, or
// else what its people or the saw did before it.
func (b *builder) chain(last int) []int {
	var all []int
	for i := last; i >= 0; i = b.before(i) {
		all = append(all, i)
	}
	slices.Reverse(all)
	return all
}

// before is the task that decided when a task begins; −1 for none.
func (b *builder) before(i int) int {
	for _, l := range b.tasks[i].After {
		ready := b.placed[l.Task].End + Moment(hours(l.Hours))
		if b.tasks[i].Minutes <= 0 && ready == b.placed[i].Start || b.tasks[i].Minutes > 0 && b.axis.at(ready) == b.work[i].from {
			return l.Task
		}
	}
	for j := range b.tasks {
		if j == i || b.tasks[i].Minutes <= 0 || b.tasks[j].Minutes <= 0 || b.work[j].to != b.work[i].from {
			continue
		}
		shared := slices.ContainsFunc(b.placed[j].People, func(w int) bool { return slices.Contains(b.placed[i].People, w) })
		if shared || b.tasks[i].Saw && b.tasks[j].Saw {
			return j
		}
	}
	return -1
}
