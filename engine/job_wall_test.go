package engine_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
)

// duringJob is a design with what its record says.
func duringJob(t *testing.T, d design.Design, change func(*design.Record)) (engine.Result, engine.Job) {
	t.Helper()
	rec := design.NewRecord()
	change(&rec)
	j, r := during(t, d, rec)
	return r, j
}

// What the scales say counts for everything that holds and lifts a panel, and is no part
// of the design: its code and what was bought stay. A panel that was weighed as another
// design is reckoned again, and that is said.
func TestWeighedMassCounts(t *testing.T) {
	d := design.Default().Design
	before := plan(t, d)
	reckoned := before.Hangings[0].PanelKg
	for _, c := range []struct {
		name         string
		kg, reckoned float64
		counts       float64
		codes        []string
	}{
		{"nobody weighed it", 0, 0, reckoned, nil},
		{"as expected", reckoned, reckoned, reckoned, nil},
		{"a tenth more and a little", 1.11 * reckoned, reckoned, 1.11 * reckoned, []string{"wall/weighed-off"}},
		{"nobody knows as what", 50, 0, 50, []string{"wall/weighed-off"}},
		{"as another design", 50, reckoned + 0.06, reckoned, []string{"record/weighed-other"}},
		{"as the same but for rounding", 50, reckoned + 0.04, 50, []string{"wall/weighed-off"}},
	} {
		r, _ := duringJob(t, d, func(rec *design.Record) {
			rec.Weighed = []design.Weighed{{Wall: 1, Group: 1, Kg: c.kg, Reckoned: c.reckoned}}
		})
		assert.Equal(t, c.counts, r.Hangings[0].Kg(), c.name)
		assert.Equal(t, before.Revision, r.Revision)
		assert.Equal(t, before.Bill.Groups, r.Bill.Groups, c.name)
		var said []string
		for _, code := range codes(r.WatchOuts) {
			if code == "wall/weighed-off" || code == "record/weighed-other" {
				said = append(said, code)
			}
		}
		assert.Equal(t, c.codes, said, c.name)
	}
	// Heavier by half, the same strip is used to more, or there is a stronger one.
	heavy, _ := duringJob(t, d, func(rec *design.Record) { rec.Weighed = []design.Weighed{{Wall: 1, Group: 1, Kg: 1.5 * reckoned}} })
	a, _ := before.Hangings[0].Worst()
	b, _ := heavy.Hangings[0].Worst()
	assert.Greater(t, b.MostUse()*float64(b.Screws()), a.MostUse()*float64(a.Screws()))
}

// Groups are found by wall and place, in whatever order the record has them.
func TestEachGroupHasItsOwnMass(t *testing.T) {
	doc, _, err := design.Add(design.Default(), "walls")
	require.NoError(t, err)
	r, j := duringJob(t, doc.Design, func(rec *design.Record) {
		rec.Weighed = []design.Weighed{{Wall: 2, Group: 1, Kg: 47}, {Wall: 1, Group: 1, Kg: 0}}
	})
	assert.Equal(t, []int{1, 0}, []int{j.Weighing(0).Entry, j.Weighing(1).Entry})
	assert.Equal(t, []any{0.0, 47.0}, []any{r.Hangings[0].WeighedKg, r.Hangings[1].WeighedKg})
	assert.Equal(t, []string{"record.weighed[1].kg", "record.weighed[0].kg"}, []string{r.Hangings[0].WeighedField, r.Hangings[1].WeighedField})
}

// Answers about the building clear what they answer, and what is typed carries the
// revision that it was allowed for.
func TestAnswersAboutTheBuilding(t *testing.T) {
	d := designtest.Job(t, "s4")
	r, _ := duringJob(t, d, func(rec *design.Record) { rec.Asked.Fire = "B. Warden, 3 May: class C" })
	assert.NotContains(t, codes(r.WatchOuts), "wall/fire-question")
	assert.Contains(t, codes(r.WatchOuts), "wall/fire-answer")
	plain := plan(t, d)
	assert.Equal(t, len(plain.Hangings), len(r.Hangings))

	d.Walls[0].Obstacles = append(d.Walls[0].Obstacles, design.Obstacle{Kind: "door swing", X: d.Walls[0].Groups[0].Place.Left, Width: d.Walls[0].Width, Height: d.Walls[0].Height})
	_, j := duringJob(t, d, func(rec *design.Record) { rec.Asked.Devices = "B. Warden" })
	rec := j.Noted("asked.devices")
	assert.Equal(t, plan(t, d).Revision, rec.Asked.DevicesFor)
	allowed, _ := duringJob(t, d, func(r *design.Record) { *r = rec })
	assert.Contains(t, codes(allowed.WatchOuts), "wall/safety-allowed")
	d.Walls[0].Groups[0].Place.Left = d.Walls[0].Groups[0].Place.Left.Add(d.Walls[0].Groups[0].Block.Size)
	moved, _ := duringJob(t, d, func(r *design.Record) { *r = rec })
	assert.Contains(t, codes(moved.WatchOuts), "wall/safety-device", "another place is asked for anew")
}
