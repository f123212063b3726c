package bench_test

import (
	"math"
	"testing"

	"blockfield/engine/bench"
	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// handled is what sticks and their handling at the stop block cost a workshop, in
// units of the placeholder book: whole sticks with those for defects, and 40 s at 56
// an hour for each visit.
func handled(d design.Design, bought, visits int) float64 {
	g := d.Walls[0].Groups[0]
	for _, w := range design.DefaultBook().Woods {
		if w.Wood == g.Wood {
			perStick := float64(w.SquaresPerM3.Steps()) / 10_000 * g.Block.Size.Metres() * g.Block.Size.Metres() * d.Bench.StickLength.Metres()
			return float64(bought)*perStick + float64(visits)*40*56/3600
		}
	}
	return math.NaN()
}

// What the planner saves on the eight jobs against first fit, longest first, with
// as many sticks bought and the same figure for a visit, for a workshop whose time
// has the placeholder's price: in wood, in visits, and in money. It never costs
// more. Wood alone is saved on one job; the rest is handling, which first fit does
// not look at.
func TestMoneySavedAgainstFirstFit(t *testing.T) {
	sum := 0.0
	for _, want := range []struct {
		name             string
		fit, bought      int // sticks bought, by first fit and by the planner
		fitVisits, visit int
		saved            float64
	}{
		{"s1", 10, 10, 8, 6, 1.24}, {"s2", 60, 60, 43, 16, 16.80}, {"s3", 23, 23, 13, 1, 7.47},
		{"s4", 42, 42, 27, 3, 14.93}, {"s5", 13, 13, 11, 1, 6.22}, {"s6", 37, 37, 20, 2, 11.20},
		{"s7", 180, 180, 79, 19, 37.33}, {"s8", 6, 6, 7, 2, 3.11},
	} {
		d := designtest.Job(t, want.name)
		d.Work.OwnBuild = false // the home builder's job, as a workshop would cut it
		lot := estimateWith(t, d, priced()).Lots[0]
		fit := firstFit(t, d, lot)
		fitBought := int(math.Ceil(float64(fit.Bars)/(1-d.Bench.Defects/100) - 1e-9))
		got := lot.Curve[lot.Chosen]
		saved := handled(d, fitBought, visitsOf(fit)) - handled(d, got.Bought, got.Visits)
		assert.Equal(t, []int{want.fit, want.bought, want.fitVisits, want.visit},
			[]int{fitBought, got.Bought, visitsOf(fit), got.Visits}, want.name)
		assert.InDelta(t, want.saved, saved, 0.005, want.name)
		assert.GreaterOrEqual(t, saved, -1e-9, want.name)
		assert.InDelta(t, handled(d, got.Bought, got.Visits), float64(got.Cost())/10_000, 0.01, "%s: the planner's own sum", want.name)
		sum += saved
	}
	assert.InDelta(t, 98.30, sum, 0.02)
}

// The same jobs with frame boards of 2.4 m: never more boards to buy than by first
// fit, and proven. Pieces so few and so long leave nothing to save.
func TestFrameBoardsAgainstFirstFit(t *testing.T) {
	for _, name := range []string{"s1", "s2", "s3", "s4", "s5", "s6", "s7", "s8"} {
		d := designtest.Job(t, name)
		d.Bench.BoardLength = length.MM(2400)
		b := estimateWith(t, d, priced())
		for _, cuts := range append([]*bench.BoardCuts{b.Frame[0].Cuts}, b.Cleat.Strips[0].Cuts) {
			assert.True(t, cuts.Planned(), name)
			assert.True(t, cuts.Plan.Proven, name)
			boards := 0
			for _, bar := range cuts.Bars {
				boards += bar.Bought
			}
			assert.LessOrEqual(t, boards, boardsByFirstFit(t, d, cuts), name)
		}
	}
}

// boardsByFirstFit is how many boards of the usual length the same pieces take by
// first fit.
func boardsByFirstFit(t *testing.T, d design.Design, cuts *bench.BoardCuts) int {
	var pieces []cut.Piece
	for _, b := range cuts.Plan.Boards {
		for _, p := range b.Pieces {
			pieces = append(pieces, cut.Piece{Length: p.Length, Count: b.Count * p.Count})
		}
	}
	plan, err := cut.FirstFit(cut.Stock{
		Length: d.Bench.BoardLength.Nanometres(), Kerf: d.Bench.Kerf.Nanometres(), EndTrim: d.Bench.EndTrim.Nanometres(),
	}, pieces)
	require.NoError(t, err)
	return plan.Bars
}

// One stick more, 23 to 24 with those for defects, costs 10.2643 more and saves
// three visits, two minutes: at 307.929 an hour they are worth it to the cent, and
// above that more.
func TestChoiceAtTheLimit(t *testing.T) {
	d := design.Default().Design
	p := priced()
	for _, c := range []struct {
		hour   string
		wish   string
		sticks int
	}{
		{"307.929", design.CheaperPlan, 20}, {"307.932", design.CheaperPlan, 21}, {"0", design.CheaperPlan, 20},
		{"307.932", design.FewestBoards, 20}, {"0", design.FewestVisits, 21},
	} {
		hour, err := design.ParseAmount(c.hour)
		require.NoError(t, err)
		p.Prices.Hour, d.Bench.Handling = hour, c.wish
		lot := estimateWith(t, d, p).Lots[0]
		assert.Equal(t, c.sticks, lot.SticksBeforeDefects, "%s, %s", c.hour, c.wish)
		assert.Equal(t, lot.Curve[lot.Chosen].Bought, lot.Sticks)
		assert.Equal(t, lot.Curve[lot.Chosen].Visits, lot.Cuts.Visits)
	}
	// Nobody pays a home builder's hours, and without prices nothing can be weighed.
	p.Prices.Hour, d.Bench.Handling, d.Work.OwnBuild = design.Units(1000), design.CheaperPlan, true
	assert.Equal(t, 20, estimateWith(t, d, p).Lots[0].SticksBeforeDefects)
	d.Work.OwnBuild = false
	p.Prices.Woods = nil
	assert.Equal(t, 20, estimateWith(t, d, p).Lots[0].SticksBeforeDefects)
}

// A row of the time table that is counted by visits says how long one takes, and
// puts them among the hours.
func TestVisitsInTheTimeTable(t *testing.T) {
	d := design.Default().Design
	p := priced()
	p.Tasks = append(p.Tasks[:len(p.Tasks):len(p.Tasks)], design.Task{
		ID: "c5", Role: "shop", Per: "stop visit", Unit: "min", Low: 1, Typical: 2, High: 3,
	})
	b := estimateWith(t, d, p)
	assert.InDelta(t, 6, b.Lots[0].Curve[0].Minutes, 1e-9, "three visits")
	for _, task := range b.Tasks {
		if task.ID == "c5" {
			assert.Equal(t, bench.Spread{Low: 3, Typical: 6, High: 9}, task.Minutes)
			return
		}
	}
	t.Error("no row")
}
