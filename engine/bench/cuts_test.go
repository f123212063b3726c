package bench_test

import (
	"math/rand/v2"
	"testing"

	"blockfield/engine/bench"
	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// firstFit is what a person does at the stop block with the blocks of a lot: the
// slow and plain way that the planner is held against.
func firstFit(t testing.TB, d design.Design, lot bench.Lot) cut.Layout {
	t.Helper()
	var pieces []cut.Piece
	for _, h := range lot.Heights {
		pieces = append(pieces, cut.Piece{Length: h.Height.Nanometres(), Count: h.Cut})
	}
	plan, err := cut.FirstFit(cut.Stock{
		Length: d.Bench.StickLength.Nanometres(), Kerf: d.Bench.Kerf.Nanometres(),
		EndTrim: d.Bench.EndTrim.Nanometres(), Tail: d.Bench.HoldTail.Nanometres(),
	}, pieces)
	require.NoError(t, err)
	return plan
}

// visitsOf is how often a board is set aside and fetched again, longest first.
func visitsOf(plan cut.Layout) int {
	n := 0
	for _, p := range plan.Patterns {
		n += p.Bars * (len(p.Pieces) - 1)
	}
	return n
}

// checkCuts holds the plan of a lot against its demand, the rule of package cut
// and first fit.
func checkCuts(t testing.TB, d design.Design, lot bench.Lot) {
	t.Helper()
	made := map[int64]int{}
	boards := 0
	room := d.Bench.StickLength.Sub(d.Bench.EndTrim).Sub(d.Bench.HoldTail).Nanometres()
	for _, b := range lot.Cuts.Boards {
		var used int64
		for _, p := range b.Pieces {
			made[p.Length] += b.Count * p.Count
			used += int64(p.Count) * (p.Length + d.Bench.Kerf.Nanometres())
		}
		require.LessOrEqual(t, used, room+d.Bench.Kerf.Nanometres(), "a stick is overfull")
		// The cut that frees the last block may take up to one kerf of the tail.
		require.GreaterOrEqual(t, b.Offcut, d.Bench.HoldTail.Sub(d.Bench.Kerf).Nanometres(), "the tail is there to hold")
		boards += b.Count
	}
	for _, h := range lot.Heights {
		require.Equal(t, h.Cut, made[h.Height.Nanometres()], "blocks of %v", h.Height)
	}
	require.Equal(t, lot.SticksBeforeDefects, boards)
	fit, fewest := firstFit(t, d, lot), lot.Curve[0]
	require.LessOrEqual(t, fewest.Sticks, fit.Bars, "never worse than first fit")
	if fewest.Sticks == fit.Bars {
		require.LessOrEqual(t, fewest.Visits, visitsOf(fit), "nor in handling, with as many sticks")
	}
	for i, h := range lot.Curve {
		require.GreaterOrEqual(t, h.Visits, h.Least)
		if i > 0 {
			require.Less(t, h.Visits, lot.Curve[i-1].Visits, "a board more saves visits, or is not offered")
		}
		require.GreaterOrEqual(t, h.Cost(), lot.Curve[lot.Chosen].Cost(), "what costs least is chosen")
	}
}

// What the planner gains over first fit on the worked jobs. First fit is the best
// possible for all but one of them: the mastering room's 153 sticks can be 152,
// which saves one of the 180 to buy. What it does not see is handling: the large
// reference panel had a board set aside and fetched again at two of three
// heights, 40 times; with the same 29 sticks twice is enough.
func TestPlannerAgainstFirstFit(t *testing.T) {
	for name, want := range map[string]struct{ fit, sticks, fitVisits, visits int }{
		"s1": {8, 8, 8, 6}, "s2": {54, 54, 43, 16}, "s3": {20, 20, 13, 1}, "s4": {37, 37, 27, 3},
		"s5": {11, 11, 11, 1}, "s6": {30, 30, 20, 2}, "s7": {153, 152, 79, 67}, "s8": {5, 5, 7, 2},
		"p1": {13, 13, 19, 2}, "p2": {29, 29, 40, 2},
	} {
		d := designtest.Job(t, name)
		if name[0] == 'p' {
			unsaid(&d)
		}
		lot := estimate(t, d).Lots[0]
		checkCuts(t, d, lot)
		fit := firstFit(t, d, lot)
		got := []int{fit.Bars, lot.SticksBeforeDefects, visitsOf(fit), lot.Cuts.Visits}
		assert.Equal(t, []int{want.fit, want.sticks, want.fitVisits, want.visits}, got, name)
		assert.True(t, lot.Proven, "%s: no plan has fewer sticks", name)
	}
	assert.Equal(t, 179, estimate(t, designtest.Job(t, "s7")).Lots[0].Sticks, "⌈152 / 0.85⌉; first fit buys ⌈153 / 0.85⌉ = 180")
}

// Random jobs: demand met exactly, no stick overfull, tails left, and never more
// sticks than by first fit.
func TestCutsOfRandomJobs(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	mm := func(low, high int) length.Length { return length.MM(int64(low + rnd.IntN(high-low))) }
	for range 60 {
		d := design.Default().Design
		g := &d.Walls[0].Groups[0]
		g.Columns, g.Rows = 5+rnd.IntN(30), 5+rnd.IntN(20)
		g.Heights = []length.Length{mm(10, 30), mm(30, 60), mm(60, 80), mm(80, 120)}
		d.Bench.StickLength, d.Bench.Kerf = mm(900, 4000), length.Micrometres(1000+int64(rnd.IntN(4000)))
		d.Bench.EndTrim, d.Bench.HoldTail = mm(0, 100), mm(40, 300)
		checkCuts(t, d, estimate(t, d).Lots[0])
	}
}

// Many sections share the steps of one plan: a job with one lot for each of many
// groups is planned as well as it can be in that time, and never worse than first
// fit.
func TestManyLotsShareTheSteps(t *testing.T) {
	d := design.Default().Design
	first := d.Walls[0].Groups[0]
	first.Columns, first.Rows = 30, 20
	d.Walls[0].Groups = nil
	for i := range int64(8) {
		g := first
		g.Block.Size = length.MM(30 + i)
		d.Walls[0].Groups = append(d.Walls[0].Groups, g)
	}
	b := estimate(t, d)
	require.Len(t, b.Lots, 8)
	for _, lot := range b.Lots {
		checkCuts(t, d, lot)
		assert.LessOrEqual(t, lot.Cuts.Steps, int64(cut.QuickSteps)/8+200_000, "and a little for what is under way")
	}
}
