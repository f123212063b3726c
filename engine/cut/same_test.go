package cut_test

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"testing"

	"blockfield/engine/cut"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The same plans come out on a processor and in a browser, with the same number
// of steps: this test runs on both. The sum changes with any change of the
// search; it was taken from a native run.
func TestPlansAreTheSameEverywhere(t *testing.T) {
	const want = "2e51476d4909546d"
	sum := sha256.New()
	add := func(v any) {
		text, err := json.Marshal(v)
		require.NoError(t, err)
		sum.Write(text)
	}
	for _, in := range instances(t, "testdata") {
		p := in.problem()
		plan, err := cut.Solve(p, cut.QuickSteps*10)
		require.NoError(t, err)
		add(plan)
		curve, err := cut.FewestVisits(p, plan, 1, cut.QuickSteps)
		require.NoError(t, err)
		add(curve)
	}
	hard := cut.Problem{Bars: []cut.Bar{{Length: 10_000}}, Kerf: 7, Goal: cut.Boards}
	for i := range 60 {
		hard.Pieces = append(hard.Pieces, cut.Piece{Length: int64(1500 + i*i*7%4000), Count: 1 + i%3})
	}
	plan, err := cut.Solve(hard, 100_000_000)
	require.NoError(t, err)
	add(plan)
	assert.Equal(t, want, fmt.Sprintf("%x", sum.Sum(nil)[:8]))
}

func sixHeights() cut.Problem {
	p := cut.Problem{
		Bars: []cut.Bar{{Length: 24000, Price: 560}, {Length: 30000, Price: 690}},
		Kerf: 28, EndTrim: 200, Tail: 1500,
	}
	for _, l := range []int64{150, 260, 420, 640, 780, 920} {
		p.Pieces = append(p.Pieces, cut.Piece{Length: l, Count: 334})
	}
	return p
}

// panelOfFour is the large reference panel with its spares.
func panelOfFour() cut.Problem {
	return cut.Problem{
		Bars: []cut.Bar{{Length: 2_400_000_000, Price: 560}}, Kerf: 2_800_000, EndTrim: 20_000_000, Tail: 150_000_000,
		Pieces: []cut.Piece{{15_000_000, 320}, {32_000_000, 320}, {55_000_000, 318}, {84_000_000, 312}}, Goal: cut.Boards,
	}
}

func twelveLengths() cut.Problem {
	p := cut.Problem{Bars: []cut.Bar{{Length: 24000, Price: 560}}, Kerf: 28, EndTrim: 200, Tail: 1500, Goal: cut.Boards}
	for i := range 12 {
		p.Pieces = append(p.Pieces, cut.Piece{Length: 150 + 83*int64(i), Count: 1667})
	}
	return p
}

// BenchmarkSolve measures the jobs that the planner must be quick for.
func BenchmarkSolve(b *testing.B) {
	inch := sixHeights()
	inch.Kerf, inch.EndTrim, inch.Tail = 3_175_000, 25_400_000, 152_400_000
	inch.Bars = []cut.Bar{{Length: 2_438_400_000, Price: 560}, {Length: 3_000_000_000, Price: 690}}
	for i := range inch.Pieces {
		inch.Pieces[i].Length = 25_400_000 * int64(9+7*i) / 16
	}
	for _, c := range []struct {
		name  string
		p     cut.Problem
		steps int64
	}{
		{"2004_of_6_two_bars", sixHeights(), cut.ThoroughSteps},
		{"2004_of_6_two_bars_inch", inch, cut.ThoroughSteps},
		{"20004_of_12", twelveLengths(), cut.ThoroughSteps},
		{"quick_panel", panelOfFour(), cut.QuickSteps},
		{"quick_2004_of_6_two_bars", sixHeights(), cut.QuickSteps},
		{"quick_20004_of_12", twelveLengths(), cut.QuickSteps},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			var plan cut.Plan
			for b.Loop() {
				var err error
				if plan, err = cut.Solve(c.p, c.steps); err != nil {
					b.Fatal(err)
				}
			}
			if c.steps == cut.ThoroughSteps && !plan.Proven {
				b.Error("not proven")
			}
			b.ReportMetric(float64(plan.Steps), "steps")
		})
	}
}
