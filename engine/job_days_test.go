package engine_test

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"blockfield/engine"
	"blockfield/engine/bench"
	"blockfield/engine/calendar"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/schedule"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// on is a worked job with a record, on a day.
func on(t testing.TB, d design.Design, rec design.Record, today string) engine.Job {
	t.Helper()
	require.NoError(t, design.ValidateRecord(rec))
	return engine.Follow(d, plan(t, d), rec, today)
}

// from is a record whose work begins on a day.
func from(start string) design.Record {
	rec := design.NewRecord()
	rec.Days.Start = start
	return rec
}

func day(t testing.TB, text string) time.Time {
	t.Helper()
	at, err := time.Parse(time.DateOnly, text)
	require.NoError(t, err)
	return at
}

// No minute of the shop is lost or done twice: the tasks of the days are the hours of
// the bill, also with extra time and for hands that are new to it.
func TestDaysHoldTheHoursOfTheShop(t *testing.T) {
	for _, name := range []string{"s1", "s2", "s3", "s4", "s5", "s6", "s7", "s8", "p1", "p2"} {
		for _, extra := range []float64{0, 200} {
			d := designtest.Job(t, name)
			d.Work.ExtraShop += extra
			job := on(t, d, from("2026-03-02"), "")
			want := job.Plan.Bill.Hours.Shop.Typical * 60
			if d.Work.OwnBuild {
				want *= bench.HomeFactor
			}
			sum := 0.0
			for _, task := range job.Days.Plan.Tasks {
				sum += task.Minutes
			}
			assert.InDelta(t, want, sum, 1e-6*want, "%s with %v minutes more", name, extra)
		}
	}
}

// tasksOf finds the tasks of a name, of one panel.
func tasksOf(p schedule.Plan, name string, panel int) []schedule.Placed {
	var all []schedule.Placed
	for i, task := range p.Tasks {
		if task.Name == name && task.Panel == panel {
			all = append(all, p.Placed[i])
		}
	}
	return all
}

// What has to wait waits, counted by the clock on the tasks of each panel: sticks for
// the air of the room, the field for its glue, each coat for the one before, wrapping for
// the cure. Hours from the trade's own table.
func TestWhatHasToWaitWaits(t *testing.T) {
	const anHour, aDay = 60, 24 * 60
	for _, name := range []string{"s1", "s2", "s6", "s7"} {
		d := designtest.Job(t, name)
		rec := from("2026-03-02")
		rec.Days.People = 2
		p := on(t, d, rec, "").Days.Plan
		there, sort := tasksOf(p, "days/there", 0)[0], tasksOf(p, "days/sort", 0)[0]
		assert.GreaterOrEqual(t, int64(sort.Start-there.End), int64(10*aDay), name)
		dry := map[string]int64{"waterborne varnish": 4, "hard-wax oil": 24}[d.Walls[0].Groups[0].Finish.Kind]
		cure := map[string]int64{"waterborne varnish": 7, "hard-wax oil": 7}[d.Walls[0].Groups[0].Finish.Kind]
		for panel := 1; panel <= plan(t, d).Bill.Panels; panel++ {
			lay, trim := tasksOf(p, "days/lay", panel)[0], tasksOf(p, "days/trim", panel)[0]
			coats, pack := tasksOf(p, "days/coat", panel), tasksOf(p, "days/pack", panel)[0]
			frame := tasksOf(p, "days/frame", panel)
			require.Len(t, coats, 2, "on the field")
			require.Len(t, frame, 3, "the frame and its two coats")
			coats = append(coats, frame[1:]...)
			for _, sand := range tasksOf(p, "days/sand", 0) {
				assert.LessOrEqual(t, sand.End, lay.Start)
			}
			assert.GreaterOrEqual(t, int64(trim.Start-lay.End), int64(24*anHour), name)
			for _, pair := range [][2]int{{0, 1}, {2, 3}} {
				assert.GreaterOrEqual(t, int64(coats[pair[1]].Start-coats[pair[0]].End), dry*anHour, name)
				assert.GreaterOrEqual(t, int64(pack.Start-coats[pair[1]].End), cure*aDay, name)
			}
		}
	}
}

// Cut height by height on one saw: with two people one sands what the other has cut.
func TestTwoPeopleShareTheWork(t *testing.T) {
	d := designtest.Job(t, "p2")
	rec := from("2026-03-02")
	alone := on(t, d, rec, "").Days
	rec.Days.People = 2
	two := on(t, d, rec, "").Days
	assert.Less(t, two.Plan.Ready, alone.Plan.Ready)
	assert.Equal(t, two.Plan.Ready.Day(), alone.MoreReady, "what one more helper changes")
	assert.Equal(t, 2, alone.MorePeople)
	cut, sand := tasksOf(two.Plan, "days/cut", 0), tasksOf(two.Plan, "days/sand", 0)
	require.Len(t, cut, 4)
	assert.Less(t, sand[0].Start, cut[3].End)
	for i := 1; i < len(cut); i++ {
		assert.GreaterOrEqual(t, cut[i].Start, cut[i-1].End)
	}
	rec.Days.People = 4
	assert.Zero(t, on(t, d, rec, "").Days.MorePeople)
}

// By hand: 26 h of work at 6 h a day are at least 4.3 days (the trade's P2 in four and a
// third days of one person), with 10 days of settling, one of glue and a week of cure.
func TestDaysOfAReferencePanel(t *testing.T) {
	d := designtest.Job(t, "p2")
	days := on(t, d, from("2026-03-02"), "").Days
	ready := day(t, days.Plan.Ready.Day().String())
	least := day(t, "2026-03-02").AddDate(0, 0, 10+1+7+4)
	assert.False(t, ready.Before(least), "ready on %v", ready)
	assert.False(t, ready.After(least.AddDate(0, 0, 9)), "ready on %v", ready)
	assert.GreaterOrEqual(t, days.Waiting, 17)
	var names []string
	for _, i := range days.Plan.Chain {
		names = append(names, days.Plan.Tasks[i].Name)
	}
	assert.Equal(t, "days/there", names[0])
	assert.Equal(t, "days/ready", names[len(names)-1])
	assert.Subset(t, names, []string{"days/sort", "days/lay", "days/trim", "days/coat", "days/pack"})
}

// Forwards from the first day, backwards from the need, from today on, or undated.
func TestWhereTheDaysBegin(t *testing.T) {
	d := designtest.Job(t, "p1")
	forwards := on(t, d, from("2026-03-02"), "2026-01-01").Days
	assert.Equal(t, "2026-03-02", forwards.Start.String())
	assert.True(t, forwards.Asked && forwards.Dated)

	rec := design.NewRecord()
	rec.Days.NeedBy = forwards.Plan.Ready.Day().String()
	backwards := on(t, d, rec, "2026-01-01").Days
	assert.LessOrEqual(t, backwards.Plan.Ready.Day(), forwards.Plan.Ready.Day())
	assert.GreaterOrEqual(t, backwards.Start, forwards.Start, "as late as the need allows")
	assert.Zero(t, backwards.Short)
	rec.Days.Start = (backwards.Start + 1).String()
	assert.Positive(t, on(t, d, rec, "").Days.Short, "a day later is too late")

	today := on(t, d, design.NewRecord(), "2026-01-05").Days
	assert.Equal(t, "2026-01-05", today.Start.String())
	assert.False(t, today.Asked)
	nobody := on(t, d, design.NewRecord(), "").Days
	assert.False(t, nobody.Dated)
	assert.Equal(t, today.Plan.Ready.Day()-today.Start, nobody.Plan.Ready.Day()-nobody.Start, "as many days from a Monday")
}

// Either side of the day of need, forwards and from today on where it is too late to
// begin in time; without a day nothing is said.
func TestLate(t *testing.T) {
	d := designtest.Job(t, "p1")
	rec := from("2026-03-02")
	ready := on(t, d, rec, "").Days.Plan.Ready.Day()
	for off, late := range map[int]bool{0: false, 1: true, -1: false} {
		rec.Days.NeedBy = (ready - calendar.Day(off)).String()
		job := on(t, d, rec, "")
		r := job.Plan.During(job)
		assert.Equal(t, late, len(fired(r, "days/late")) == 1, "%d days before", off)
		if late {
			w := fired(r, "days/late")[0]
			assert.Equal(t, check.Caution, w.Level)
			assert.Equal(t, 1, w.Args["n"])
			assert.Contains(t, english().Say(w.Code, w.Args), "1 day short")
		}
	}
	rec = design.NewRecord()
	rec.Days.NeedBy = "2026-03-10"
	job := on(t, d, rec, "2026-03-02")
	assert.Equal(t, "2026-03-02", job.Days.Start.String())
	assert.Positive(t, job.Days.Short)
}

// Either side of the cure: hung on the day on which it is ready is right, a day before
// is not. A finish whose sheet alone says how long it cures is said to be unknown.
func TestNotCured(t *testing.T) {
	d := designtest.Job(t, "p1")
	rec := from("2026-03-02")
	ready := on(t, d, rec, "").Days.Plan.Ready.Day()
	for off, early := range map[int]bool{0: false, 1: true} {
		rec.Days.Hang = (ready - calendar.Day(off)).String()
		job := on(t, d, rec, "")
		r := job.Plan.During(job)
		require.Equal(t, early, len(fired(r, "days/not-cured")) == 1)
		assert.Empty(t, fired(r, "days/cure-unknown"))
		if early {
			assert.Equal(t, check.Hang, fired(r, "days/not-cured")[0].Gate)
		}
	}
	school := designtest.Job(t, "s4") // fire-retardant varnish
	rec.Days.Hang = "2027-01-01"
	job := on(t, school, rec, "")
	assert.Len(t, fired(job.Plan.During(job), "days/cure-unknown"), 1)
	rec.Days.Hang = ""
	job = on(t, school, rec, "")
	assert.False(t, slices.ContainsFunc(job.Plan.During(job).AllWatchOuts(), func(w check.WatchOut) bool {
		return strings.HasPrefix(w.Code, "days/")
	}), "nobody has said when")
}

// A home builder works on free days.
func TestFreeDays(t *testing.T) {
	d := designtest.Job(t, "s8")
	rec := from("2026-03-02")
	rec.Days.DaysPerWeek = 2
	for i, at := range on(t, d, rec, "").Days.Plan.Placed {
		if len(at.People) == 0 {
			continue
		}
		weekday := time.Unix(int64(at.Start)*60, 0).UTC().Weekday()
		assert.True(t, weekday == time.Saturday || weekday == time.Sunday, "task %d on a %v", i, weekday)
	}
}

// Finished before gluing, the coats come before the lay-up.
func TestFinishBeforeGluing(t *testing.T) {
	d := designtest.Job(t, "p1")
	d.Walls[0].Groups[0].Finish.When = design.FinishMasked
	p := on(t, d, from("2026-03-02"), "").Days.Plan
	coats, lay := tasksOf(p, "days/coat", 1), tasksOf(p, "days/lay", 1)[0]
	require.Len(t, coats, 2)
	assert.LessOrEqual(t, coats[1].End, lay.Start)
	assert.Greater(t, tasksOf(p, "days/frame", 1)[0].Start, lay.End)
}

// Very many panels and sections stay a handful of tasks.
func TestManyPanels(t *testing.T) {
	doc := design.Default()
	for w := range 4 {
		if w > 0 {
			var err error
			doc, _, err = design.Add(doc, "walls")
			require.NoError(t, err)
		}
		for g := range doc.Design.Walls[w].Groups {
			doc.Design.Walls[w].Groups[g].PanelsWide, doc.Design.Walls[w].Groups[g].Width = 7, doc.Design.Walls[w].Groups[g].Width.Times(2)
		}
	}
	job := on(t, doc.Design, from("2026-03-02"), "")
	assert.Greater(t, job.Plan.Bill.Panels, 24)
	assert.Less(t, len(job.Days.Plan.Tasks), 120)
	sum := 0.0
	for _, task := range job.Days.Plan.Tasks {
		sum += task.Minutes
	}
	assert.InDelta(t, job.Plan.Bill.Hours.Shop.Typical*60, sum, 1e-6*sum)
	assert.False(t, math.IsNaN(sum))
}
