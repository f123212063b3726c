package schedule_test

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"blockfield/engine/calendar"
	"blockfield/engine/schedule"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func alone(int) float64 { return 1 }

// crew is a share that falls: the workshop's own rule, invented.
func crew(n int) float64 { return []float64{1, 0.92, 0.80, 0.70}[min(n, 4)-1] }

var usual = schedule.Hours{ADay: 6, AWeek: 5}

func day(t testing.TB, text string) calendar.Day {
	t.Helper()
	d, ok := calendar.Parse(text)
	require.True(t, ok)
	return d
}

// clock writes a moment the way the standard library does.
func clock(m schedule.Moment) string {
	return time.Unix(int64(m)*60, 0).UTC().Format("Mon 2006-01-02 15:04")
}

// By hand: eight hours from Monday morning on are over on Tuesday at ten; a day of glue
// later it is Wednesday at ten; another day and a half of drying from Thursday at one
// ends in the night to Saturday, so that work goes on on Monday.
func TestByHand(t *testing.T) {
	tasks := []schedule.Task{
		{Minutes: 480},
		{Minutes: 60, After: []schedule.Link{{Task: 0, Hours: 24}}},
		{Minutes: 480, After: []schedule.Link{{Task: 1}}},
		{Minutes: 30, After: []schedule.Link{{Task: 2, Hours: 36}}},
		{After: []schedule.Link{{Task: 3, Hours: 72}}},
	}
	p := schedule.Make(tasks, day(t, "2026-03-02"), usual, 1, alone)
	var got []string
	for _, at := range p.Placed {
		got = append(got, clock(at.Start)+" – "+clock(at.End))
	}
	assert.Equal(t, []string{
		"Mon 2026-03-02 08:00 – Tue 2026-03-03 10:00",
		"Wed 2026-03-04 10:00 – Wed 2026-03-04 11:00",
		"Wed 2026-03-04 11:00 – Thu 2026-03-05 13:00",
		"Mon 2026-03-09 08:00 – Mon 2026-03-09 08:30",
		"Thu 2026-03-12 08:30 – Thu 2026-03-12 08:30",
	}, got)
	assert.Equal(t, "2026-03-12", p.Ready.Day().String())
	assert.Equal(t, []int{0, 1, 2, 3, 4}, p.Chain)
	assert.Empty(t, p.Placed[4].People)
}

// A full day ends in the evening, and the next task begins in the morning after; on the
// last working day of the week that is Monday.
func TestDaysEndInTheEvening(t *testing.T) {
	tasks := []schedule.Task{{Minutes: 360}, {Minutes: 360, After: []schedule.Link{{Task: 0}}}}
	p := schedule.Make(tasks, day(t, "2026-03-06"), usual, 1, alone)
	assert.Equal(t, "Fri 2026-03-06 14:00", clock(p.Placed[0].End))
	assert.Equal(t, "Mon 2026-03-09 08:00", clock(p.Placed[1].Start))
	assert.Equal(t, "Mon 2026-03-09 14:00", clock(p.Ready))

	noon := []schedule.Task{{Minutes: 360}, {Minutes: 60, After: []schedule.Link{{Task: 0, Hours: 22}}}}
	over := schedule.Make(noon, day(t, "2026-03-06"), usual, 1, alone)
	assert.Equal(t, "Mon 2026-03-09 08:00", clock(over.Placed[1].Start), "what waits until Saturday noon")

	weekend := schedule.Make(tasks, day(t, "2026-03-07"), usual, 1, alone)
	assert.Equal(t, "Mon 2026-03-09 08:00", clock(weekend.Placed[0].Start), "a start on Saturday")
	free := schedule.Make(tasks, day(t, "2026-03-02"), schedule.Hours{ADay: 6, AWeek: 2, First: 5}, 1, alone)
	assert.Equal(t, "Sat 2026-03-07 08:00", clock(free.Placed[0].Start), "on free days only")
	assert.Equal(t, "Sun 2026-03-08 14:00", clock(free.Ready))
	all := schedule.Make(tasks, day(t, "2026-03-07"), schedule.Hours{ADay: 6, AWeek: 7}, 1, alone)
	assert.Equal(t, "Sun 2026-03-08 14:00", clock(all.Ready))
}

// Two people: what waits for nothing is done at once, one saw cuts one thing after the
// other, and a task that two can share takes half the time. By hand.
func TestTwoPeople(t *testing.T) {
	apart := []schedule.Task{{Minutes: 120}, {Minutes: 120}}
	assert.Equal(t, "Mon 2026-03-02 10:00", clock(schedule.Make(apart, day(t, "2026-03-02"), usual, 2, alone).Ready))
	sawn := []schedule.Task{{Minutes: 120, Saw: true}, {Minutes: 120, Saw: true}}
	assert.Equal(t, "Mon 2026-03-02 12:00", clock(schedule.Make(sawn, day(t, "2026-03-02"), usual, 2, alone).Ready))
	shared := []schedule.Task{{Minutes: 240, Most: 2}}
	p := schedule.Make(shared, day(t, "2026-03-02"), usual, 2, alone)
	assert.Equal(t, "Mon 2026-03-02 10:00", clock(p.Ready))
	assert.Equal(t, []int{0, 1}, p.Placed[0].People)
	p = schedule.Make(shared, day(t, "2026-03-02"), usual, 2, crew)
	assert.Equal(t, "Mon 2026-03-02 10:11", clock(p.Ready), "240 / 1.84 = 130.4 minutes")
}

// A gap between two tasks is used by a third that fits: while glue sets the frame is
// cut.
func TestGapsAreUsed(t *testing.T) {
	tasks := []schedule.Task{
		{Minutes: 60},
		{Minutes: 60, After: []schedule.Link{{Task: 0, Hours: 3}}},
		{Minutes: 120},
	}
	p := schedule.Make(tasks, day(t, "2026-03-02"), usual, 1, alone)
	assert.Equal(t, "Mon 2026-03-02 09:00", clock(p.Placed[2].Start))
	assert.Equal(t, "Mon 2026-03-02 13:00", clock(p.Ready))
	assert.Equal(t, []int{0, 1}, p.Chain, "the third decides nothing")
}

// random is a job of up to so many tasks, each of which waits for some before it.
func random(r *rand.Rand, most int) []schedule.Task {
	tasks := make([]schedule.Task, 1+r.IntN(most))
	for i := range tasks {
		t := schedule.Task{Minutes: float64(r.IntN(900)), Most: 1 + r.IntN(3), Saw: r.IntN(3) == 0}
		if r.IntN(6) == 0 {
			t.Minutes = 0
		}
		for j := range i {
			if r.IntN(i+2) < 2 {
				t.After = append(t.After, schedule.Link{Task: j, Hours: float64(r.IntN(4)) * 11.5})
			}
		}
		tasks[i] = t
	}
	return tasks
}

// A pass of its own over random jobs, with the standard library's calendar: nothing
// begins before what it waits for, nobody does two things at once, the saw neither, and
// all work is done in working hours, as much of it as the task takes.
func TestNothingBeginsTooEarly(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 120 {
		tasks := random(r, 25)
		h := schedule.Hours{ADay: []float64{1, 4.5, 6, 12}[r.IntN(4)], AWeek: 1 + r.IntN(7), First: r.IntN(7)}
		people := 1 + r.IntN(4)
		start := calendar.Day(20_000 + r.IntN(40))
		p := schedule.Make(tasks, start, h, people, crew)
		require.Len(t, p.Placed, len(tasks))
		var busy [5]map[int64]bool // minutes of each person; the last is the saw
		for i := range busy {
			busy[i] = map[int64]bool{}
		}
		for i, task := range tasks {
			at := p.Placed[i]
			require.GreaterOrEqual(t, int64(at.Start), int64(start)*1440)
			for _, l := range task.After {
				ready := int64(p.Placed[l.Task].End) + int64(math.Ceil(l.Hours*60))
				require.GreaterOrEqual(t, int64(at.Start), ready, "task %d begins before %d is over", i, l.Task)
			}
			require.LessOrEqual(t, at.End, p.Ready)
			if task.Minutes == 0 {
				require.Equal(t, at.Start, at.End)
				continue
			}
			worked := int64(0)
			for m := int64(at.Start); m < int64(at.End); m++ {
				if !working(m, h) {
					continue
				}
				worked++
				takers := at.People
				if task.Saw {
					takers = append(append([]int{}, takers...), 4)
				}
				for _, who := range takers {
					require.False(t, busy[who][m], "%d does two things at %s", who, clock(schedule.Moment(m)))
					busy[who][m] = true
				}
			}
			require.True(t, working(int64(at.Start), h) && working(int64(at.End)-1, h), "task %d at night", i)
			require.Equal(t, int64(math.Ceil(task.Minutes/(float64(len(at.People))*crew(p.People)))), worked, "task %d", i)
			require.LessOrEqual(t, len(at.People), max(task.Most, 1))
			require.LessOrEqual(t, len(at.People), people)
		}
		checkChain(t, p)
	}
}

// working reports whether a minute is one of work.
func working(minute int64, h schedule.Hours) bool {
	at := time.Unix(minute*60, 0).UTC()
	weekday := (int(at.Weekday()) + 6 - h.First + 7) % 7
	ofDay := float64(at.Hour()*60 + at.Minute() - 8*60)
	return weekday < h.AWeek && ofDay >= 0 && ofDay < math.Round(h.ADay*60)
}

// checkChain holds that the chain ends with what is ready last, and that no task of it
// begins later than what the one before it leaves to wait.
func checkChain(t *testing.T, p schedule.Plan) {
	t.Helper()
	require.NotEmpty(t, p.Chain)
	require.Equal(t, p.Ready, p.Placed[p.Chain[len(p.Chain)-1]].End)
	for i := 1; i < len(p.Chain); i++ {
		before, after := p.Chain[i-1], p.Chain[i]
		require.LessOrEqual(t, p.Placed[before].End, p.Placed[after].Start)
	}
}

// One more person never makes a job ready later, a longer task never earlier than the
// way through it, and no schedule beats what the work and the waits take at least.
func TestLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	for range 80 {
		tasks := random(r, 20)
		start := calendar.Day(20_000 + r.IntN(10))
		var last schedule.Moment
		for people := 1; people <= 4; people++ {
			p := schedule.Make(tasks, start, usual, people, crew)
			if people > 1 {
				require.LessOrEqual(t, p.Ready, last, "%d people", people)
			}
			last = p.Ready
			require.GreaterOrEqual(t, int64(p.Ready), int64(start)*1440+longestWait(tasks))
		}
		one := schedule.Make(tasks, start, schedule.Hours{ADay: 12, AWeek: 7}, 1, alone)
		sum := 0.0
		for _, task := range tasks {
			sum += task.Minutes
		}
		days := int64(one.Ready.Day()-start) + 1
		require.GreaterOrEqual(t, float64(days*12*60), sum, "more work than there are hours")
	}
}

// longestWait is what the waits alone take, in minutes.
func longestWait(tasks []schedule.Task) int64 {
	over := make([]int64, len(tasks))
	longest := int64(0)
	for i, task := range tasks {
		for _, l := range task.After {
			over[i] = max(over[i], over[l.Task]+int64(l.Hours*60))
		}
		longest = max(longest, over[i])
	}
	return longest
}

// Backwards from a day: begun then the job is ready in time, and a day later it is not.
func TestLatestStart(t *testing.T) {
	tasks := []schedule.Task{{Minutes: 480}, {Minutes: 60, After: []schedule.Link{{Task: 0, Hours: 24}}}}
	by := day(t, "2026-03-04") // the first example by hand: Monday to Wednesday
	start, ok := schedule.LatestStart(tasks, by, usual, 1, alone)
	require.True(t, ok)
	assert.Equal(t, "2026-03-02", start.String())
	r := rand.New(rand.NewPCG(5, 6))
	for range 30 {
		tasks, people := random(r, 15), 1+r.IntN(3)
		start, ok := schedule.LatestStart(tasks, by, usual, people, crew)
		require.True(t, ok)
		ready := func(from calendar.Day) calendar.Day {
			return schedule.Make(tasks, from, usual, people, crew).Ready.Day()
		}
		require.LessOrEqual(t, ready(start), by)
		if start < by {
			require.Greater(t, ready(start+1), by)
		}
	}
	_, ok = schedule.LatestStart([]schedule.Task{{}, {After: []schedule.Link{{Task: 0, Hours: 24 * 800}}}}, by, usual, 1, alone)
	assert.False(t, ok, "more than two years")
}

// Nothing to do is ready at once, and hours that make no sense do no harm.
func TestOddInput(t *testing.T) {
	p := schedule.Make(nil, 20_000, usual, 1, alone)
	assert.Equal(t, schedule.At(20_000, 0), p.Ready)
	assert.Empty(t, p.Chain)
	p = schedule.Make([]schedule.Task{{Minutes: 5}}, 20_000, schedule.Hours{}, 0, alone)
	assert.NotZero(t, p.Ready)
}
