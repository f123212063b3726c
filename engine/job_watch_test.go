package engine_test

import (
	"slices"
	"testing"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// during is a worked job with its record: what there is to watch over.
func during(t testing.TB, d design.Design, rec design.Record) (engine.Job, engine.Result) {
	t.Helper()
	job := follow(t, d, rec)
	return job, job.Plan.During(job)
}

// fired finds a watch-out by its code.
func fired(r engine.Result, code string) []check.WatchOut {
	return slices.DeleteFunc(r.AllWatchOuts(), func(w check.WatchOut) bool { return w.Code != code })
}

// counted fills every bin with its need, and as many more or fewer in one of them.
func counted(t testing.TB, d design.Design, entry, off int) design.Record {
	t.Helper()
	job := follow(t, d, design.NewRecord())
	for _, c := range job.Counts {
		n := c.Need
		if c.Entry == entry {
			n += off
		}
		job.Record = job.Counted(c.Entry, n, 0)
	}
	return job.Record
}

// The bins of a job are those of its bill, with nothing in them at the start; the five
// panels of the mastering room are counted together.
func TestBinsOfAJob(t *testing.T) {
	d := designtest.Job(t, "s7")
	job := follow(t, d, design.NewRecord())
	require.Len(t, job.Counts, 4, "four heights above bare backer")
	for i, c := range job.Counts {
		h := job.Plan.Bill.Lots[0].Heights[i]
		assert.Equal(t, []int{h.Need, h.Spare, 0, 0}, []int{c.Need, c.Spare, c.Good, c.Recut})
		assert.Equal(t, h.Need, c.Short)
		assert.False(t, c.Counted)
	}
	assert.Empty(t, job.Recut(), "nobody has cut yet: there is nothing to cut anew")
	assert.Empty(t, job.Record.Rows)
}

// Either side of the need: one block too few is a Stop at the glue that names the bin
// and what to cut; the very need is enough. Rejects count against it.
func TestBinShort(t *testing.T) {
	d := designtest.Job(t, "s8")
	_, r := during(t, d, counted(t, d, 1, 0))
	assert.Empty(t, fired(r, "record/bin-short"))

	job, r := during(t, d, counted(t, d, 1, -1))
	short := fired(r, "record/bin-short")
	require.Len(t, short, 1)
	assert.Equal(t, check.Note, short[0].Level, "still cutting")
	assert.Equal(t, check.Glue, short[0].Gate)
	assert.Equal(t, "record.bins[1].cut", short[0].Field)
	assert.Equal(t, "63 of 64 good blocks lie in the 38 mm bin: 1 is short. Cut 3 more before you open the glue.",
		english().Say(short[0].Code, short[0].Args))
	assert.NotEmpty(t, gate(r, check.Glue).Stops, "a Stop once the glue is asked for")
	require.Len(t, job.Recut(), 1)
	assert.Equal(t, 3, job.Recut()[0].Recut)

	rec := counted(t, d, 1, 2)
	job = follow(t, d, rec)
	_, r = during(t, d, job.Counted(1, 0, 2))
	assert.Empty(t, fired(r, "record/bin-short"), "two more, two thrown out")
	_, r = during(t, d, job.Counted(1, 0, 3))
	assert.Len(t, fired(r, "record/bin-short"), 1)
	assert.Equal(t, 0, job.Counted(1, -500, 0).Bins[1].Cut, "no fewer than none")

	// What nobody has counted yet is not short: it is to be counted.
	job = follow(t, d, design.NewRecord())
	_, r = during(t, d, job.Counted(0, job.Counts[0].Need, 0))
	assert.Empty(t, fired(r, "record/bin-short"))
	open := fired(r, "record/bins-not-counted")
	require.Len(t, open, 1)
	assert.Equal(t, "record.bins[1].cut", open[0].Field)
	assert.Equal(t, len(job.Counts)-1, open[0].Args["n"])
	assert.Len(t, gate(r, check.Glue).Stops, 1, "one thing to settle")

	// Once a row is laid, a bin that is short is a Stop at once.
	job, _ = during(t, d, counted(t, d, 1, -1))
	_, r = during(t, d, job.Ticked(job.Cards[0], true))
	assert.Equal(t, check.Stop, fired(r, "record/bin-short")[0].Level)
}

func gate(r engine.Result, g check.Gate) engine.GateState {
	all := r.Gates()
	return all[slices.IndexFunc(all, func(s engine.GateState) bool { return s.Gate == g })]
}

// Before anybody has counted the glue is shut when it is asked for, and nothing is said
// above a Note; a row that is laid makes a Stop of it.
func TestNotCounted(t *testing.T) {
	d := designtest.Job(t, "s8")
	job, r := during(t, d, design.NewRecord())
	open := fired(r, "record/not-counted")
	require.Len(t, open, 1)
	assert.Equal(t, check.Note, open[0].Level)
	assert.Len(t, gate(r, check.Glue).Stops, 1)
	_, r = during(t, d, job.Ticked(job.Cards[0], true))
	assert.Equal(t, check.Stop, fired(r, "record/not-counted")[0].Level)
	_, r = during(t, d, counted(t, d, 0, 0))
	assert.Empty(t, fired(r, "record/not-counted"))
	assert.Empty(t, gate(r, check.Glue).Stops)
}

// Paper cards of the revision of now are right, others are a Stop.
func TestPaperOfAnotherRevision(t *testing.T) {
	d := designtest.Job(t, "s8")
	rec := design.NewRecord()
	rec.Lay.Paper = plan(t, d).Revision
	_, r := during(t, d, rec)
	assert.Empty(t, fired(r, "record/other-paper"))
	rec.Lay.Paper = "3F7K2M"
	_, r = during(t, d, rec)
	require.Len(t, fired(r, "record/other-paper"), 1)
	assert.Equal(t, check.Stop, fired(r, "record/other-paper")[0].Level)
}

// Rows of a panel from other cards are a Stop at that panel, and not at its neighbours.
func TestRowsFromOtherCards(t *testing.T) {
	d := designtest.Job(t, "s2")
	job := follow(t, d, design.NewRecord())
	rec := job.Ticked(job.Cards[job.Cards[0].Rows], true) // first row of the second panel
	_, r := during(t, d, rec)
	assert.Empty(t, fired(r, "record/other-rows"))
	d.Walls[0].Groups[0].Heights[4] = length.MM(97)
	_, r = during(t, d, rec)
	stops := fired(r, "record/other-rows")
	require.Len(t, stops, 1)
	assert.Equal(t, 2, stops[0].Args["panel"])
	assert.Equal(t, "record.rows[0].laid", stops[0].Field)
}

// measured is a card of sticks that are all alike.
func measured(t testing.TB, d design.Design, um int64, n int) design.Record {
	t.Helper()
	rec := follow(t, d, design.NewRecord()).Record
	for range n {
		rec.Cards[0].Widths = append(rec.Cards[0].Widths, length.Micrometres(um))
		rec.Cards[0].Thicknesses = append(rec.Cards[0].Thicknesses, length.Micrometres(um))
	}
	return rec
}

// Ten sticks answer that nobody has measured, nine do not; and the drift is forecast
// from what was measured.
func TestMeasuredSticks(t *testing.T) {
	d := designtest.Job(t, "p2") // 41 columns of 36 mm
	_, r := during(t, d, measured(t, d, 36_000, 9))
	assert.Len(t, fired(r, "bench/not-measured"), 1)
	job, r := during(t, d, measured(t, d, 36_000, 10))
	assert.Empty(t, fired(r, "bench/not-measured"))
	assert.Empty(t, fired(r, "measure/drift"))
	assert.True(t, job.Sections[0].Known.Measured)

	// 0.3 mm too much on each of 41 blocks is 12 mm, and the frame has 6.
	_, r = during(t, d, measured(t, d, 36_300, 10))
	drift := fired(r, "measure/drift")
	require.Len(t, drift, 1)
	assert.Equal(t, "12.3 mm", drift[0].Args["off"].(length.Length).String())

	// Once that is the blocks' size the card still is theirs, nothing drifts, and the
	// field has as many blocks.
	doc := design.Default()
	doc.Design = d
	job = follow(t, d, measured(t, d, 36_300, 10))
	taken, err := job.TakeSize(doc, job.Sections[0])
	require.NoError(t, err)
	assert.Equal(t, "36.3 mm", taken.Design.Walls[0].Groups[0].Block.Size.String())
	columns, rows := taken.Design.Walls[0].Groups[0].Grid()
	assert.Equal(t, []int{41, 30}, []int{columns, rows})
	assert.Equal(t, job.Plan.Groups[0].Built.Counts, plan(t, taken.Design).Groups[0].Built.Counts)
	job, r = during(t, taken.Design, measured(t, d, 36_300, 10))
	assert.True(t, job.Sections[0].Known.Measured)
	assert.Empty(t, fired(r, "measure/drift"))
	assert.Len(t, job.Record.Cards, 1, "no second card")
}

// What was counted stays with its bin when its size is corrected; another wood, another
// height or another section has a bin of its own.
func TestCountsStayWithTheirBin(t *testing.T) {
	d := designtest.Job(t, "s8")
	rec := counted(t, d, 0, 0)
	for _, c := range []struct {
		change func(*design.Group)
		fresh  int // bins that nobody has counted
	}{
		{func(g *design.Group) { g.Block.Size = length.Micrometres(44_300) }, 0},
		{func(g *design.Group) { g.Block.Size = length.Micrometres(47_100) }, 4},
		{func(g *design.Group) { g.Heights[3] = length.MM(87) }, 1},
		{func(g *design.Group) { g.Wood = "oak" }, 4},
	} {
		other := designtest.Job(t, "s8")
		c.change(&other.Walls[0].Groups[0])
		job := follow(t, other, rec)
		fresh := slices.DeleteFunc(slices.Clone(job.Counts), func(c engine.Count) bool { return c.Counted })
		assert.Len(t, fresh, c.fresh)
		assert.Len(t, job.Record.Bins, 4+c.fresh, "the old ones stay")
		require.NoError(t, design.ValidateRecord(job.Record))
	}
}

// A signature with name and reason opens a gate for the revision that it was given for,
// and never where evidence is asked for.
func TestSignOff(t *testing.T) {
	d := designtest.Job(t, "s8")
	job, r := during(t, d, counted(t, d, 1, -1))
	w := fired(r, "record/bin-short")[0]
	rec := job.Signing(w.Code, w.Field, "2026-03-02")
	_, r = during(t, d, rec)
	assert.Len(t, gate(r, check.Glue).Stops, 1, "nobody has signed yet")
	rec.SignOffs[0].Name = "A. Maker"
	_, r = during(t, d, rec)
	assert.Len(t, gate(r, check.Glue).Stops, 1, "without a reason")
	rec.SignOffs[0].Reason = "One block of the last job is left"
	job, r = during(t, d, rec)
	assert.Empty(t, gate(r, check.Glue).Stops)
	signed := fired(r, "record/bin-short")[0]
	assert.Equal(t, check.Caution, signed.Level)
	assert.Equal(t, "A. Maker", signed.Signed.Name)
	assert.Equal(t, rec, job.Signing(w.Code, w.Field, "2026-03-02"), "no second place for the same")

	other := designtest.Job(t, "s8")
	other.Walls[0].Groups[0].Finish.Coats = 1
	_, r = during(t, other, rec)
	assert.Len(t, gate(r, check.Glue).Stops, 1, "another revision")

	booth := designtest.Job(t, "s1-second") // its fixing is not checked: evidence
	job, r = during(t, booth, design.NewRecord())
	stop := fired(r, "wall/not-checked")[0]
	rec = job.Signing(stop.Code, stop.Field, "")
	rec.SignOffs[0].Name, rec.SignOffs[0].Reason = "A. Maker", "Looks strong"
	_, r = during(t, booth, rec)
	assert.Equal(t, check.Stop, fired(r, "wall/not-checked")[0].Level)
}

// A record that has seen very many designs stays within its bounds.
func TestARecordDoesNotGrowWithoutEnd(t *testing.T) {
	rec := design.NewRecord()
	doc := design.Default()
	for i := range 300 {
		g := &doc.Design.Walls[0].Groups[0]
		g.Heights[0] = length.Micrometres(int64(20_000 + 10*i))
		g.Block.Size = length.Micrometres(int64(36_000 + 10_000*(i%3)))
		rec = follow(t, doc.Design, rec).Record
	}
	require.NoError(t, design.ValidateRecord(rec))
}
