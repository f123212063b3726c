package cut_test

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"blockfield/engine/cut"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Published cutting problems, without kerf, with the number of bars that first
// fit, longest first, needs, and the best possible number.
func TestPublished(t *testing.T) {
	for _, c := range []struct {
		name      string
		length    int64
		pieces    []cut.Piece
		fit, best int
	}{
		{
			"paper rolls of 5600 (encyclopaedia example)", 5600,
			[]cut.Piece{
				{1380, 22}, {1520, 25}, {1560, 12}, {1710, 14}, {1820, 18}, {1880, 18}, {1930, 20},
				{2000, 10}, {2050, 12}, {2100, 14}, {2140, 16}, {2150, 18}, {2200, 20},
			}, 82, 73,
		},
		{
			"Chvátal, Linear Programming (1983), p. 195", 100,
			[]cut.Piece{{45, 97}, {36, 610}, {31, 395}, {14, 211}}, 485, 453,
		},
		{"a solver's tutorial, from memory", 110, []cut.Piece{{20, 48}, {45, 35}, {50, 24}, {55, 10}, {75, 8}}, 47, 47},
		{"a solver's benchmark", 10, []cut.Piece{{7, 2}, {5, 2}, {3, 4}}, 4, 4},
		{
			"worst case for first fit, from memory (Johnson)", 1000,
			[]cut.Piece{{510, 6}, {270, 6}, {260, 6}, {230, 12}}, 11, 9,
		},
	} {
		s := cut.Stock{Length: c.length}
		got, err := cut.FirstFit(s, c.pieces)
		require.NoError(t, err)
		assert.Equal(t, c.fit, got.Bars, c.name)
		low, err := cut.LowerBound(s, c.pieces)
		require.NoError(t, err)
		assert.LessOrEqual(t, low, c.best, c.name)
		checkLaws(t, s, c.pieces, got)
		p := cut.Problem{Bars: []cut.Bar{{Length: c.length}}, Pieces: c.pieces, Goal: cut.Boards}
		plan, err := cut.Solve(p, cut.QuickSteps)
		require.NoError(t, err)
		checkPlan(t, p, plan)
		assert.Equal(t, c.best, plan.BoardCount, c.name)
		assert.True(t, plan.Proven, c.name)
	}
}

// Sticks for the blocks of five jobs with a full kerf, trim and tail, counted
// by a separate model of the job in another language: blocks with their spares
// of 3 %, at least two of each height. The model does not print kerf and trim
// of the two reference panels; they are those of its other job in beech. (With
// 2.8 and 20 mm the large one comes out at 28 here and by the plain method.)
func TestJobs(t *testing.T) {
	for _, c := range []struct {
		name  string
		stock cut.Stock
		need  map[int64]int
		want  int
	}{
		{"radio booth", um(2400_000, 2800, 20_000, 150_000),
			map[int64]int{18_000: 98, 36_000: 90, 54_000: 90, 72_000: 88}, 8},
		{"small reference panel", um(2400_000, 3000, 25_000, 150_000),
			map[int64]int{15_000: 132, 32_000: 134, 55_000: 134, 84_000: 132}, 13},
		{"large reference panel", um(2400_000, 3000, 25_000, 150_000),
			map[int64]int{15_000: 310, 32_000: 310, 55_000: 308, 84_000: 302}, 29},
		{"cherry, inch sizes", um(3048_000, 3200, 25_000, 150_000),
			map[int64]int{12_700: 171, 28_570: 169, 47_620: 169, 73_030: 171}, 11},
		{"home build", um(2400_000, 2800, 20_000, 200_000),
			map[int64]int{14_000: 36, 38_000: 64, 62_000: 64, 86_000: 32}, 5},
	} {
		var pieces []cut.Piece
		for l, n := range c.need {
			pieces = append(pieces, cut.Piece{Length: l, Count: n + max(2, (3*n+99)/100)})
		}
		got, err := cut.FirstFit(c.stock, pieces)
		require.NoError(t, err)
		assert.Equal(t, c.want, got.Bars, c.name)
	}
}

func um(length, kerf, trim, tail int64) cut.Stock {
	return cut.Stock{Length: length, Kerf: kerf, EndTrim: trim, Tail: tail}
}

// instance is a problem file: our own in testdata, and published benchmarks in
// a folder that the environment names.
type instance struct {
	Name        string `json:"name"`
	StockLength int64  `json:"stock_length"`
	Items       []cut.Piece
	Kerf, Trim  int64
	Optimum     int
	FFD         *int
	Objective   string
	Stocks      []struct {
		Length, Price int64
		Available     *int
	}
}

// With -table the two tests below print a table of their problems: boards, what
// first fit needs, what was minimised (boards, or money), its proven optimum and
// the bound, stop visits with the same boards and their bound, with a board more,
// and the times in ms of both searches.
var table = flag.Bool("table", false, "print a table of the cutting problems")

// Our own problems were solved to the proven optimum, and by first fit, by
// separate programs in another language.
func TestOwnInstances(t *testing.T) {
	assert.Equal(t, 25, checkInstances(t, "testdata"))
}

// The benchmark sets are not ours to ship. Their optima are published or proven
// by the certificates beside them.
func TestBenchmarkInstances(t *testing.T) {
	const env = "BLOCKFIELD_CUT_INSTANCES"
	dir := os.Getenv(env)
	if dir == "" {
		fmt.Println("published cutting problems: not run (" + env + " names no folder)")
		t.Skip(env + " names no folder")
	}
	n := checkInstances(t, dir)
	assert.Positive(t, n)
	fmt.Printf("published cutting problems: %d run\n", n)
}

// No plan reaches the rounded bound of these two; one board more is the best
// possible, as an exact program in another language found.
var beyondBound = []string{"hard28_BPP716", "waescher_TEST0065"}

// shopSteps are far below a tenth of a second, the most that a job may take.
const shopSteps = 20_000_000

// solveBest holds the planner against the recorded optimum.
func (in instance) solveBest(t *testing.T) {
	p := in.problem()
	start := time.Now()
	plan, err := cut.Solve(p, cut.ThoroughSteps)
	require.NoError(t, err)
	checkPlan(t, p, plan)
	got := int64(plan.BoardCount)
	if p.Goal == cut.Cost {
		got = plan.Cost
	}
	assert.EqualValues(t, in.Optimum, got)
	if strings.HasPrefix(in.Name, "shop_") {
		assert.Less(t, plan.Steps, int64(shopSteps), "a job of a shop is planned in a moment")
	}
	open := slices.Contains(beyondBound, in.Name)
	assert.Equal(t, !open, plan.Proven)
	if open {
		assert.Equal(t, got-1, plan.Bound, "at most one from the best")
	}
	spent := time.Since(start)
	t.Logf("%d, bound %d, proven %v, visits %d, %v, %.3g steps", got, plan.Bound, plan.Proven, plan.Visits,
		spent.Round(time.Millisecond), float64(plan.Steps))
	if *table {
		in.printRow(t, p, plan, got, spent)
	}
}

// printRow prints a row of the table that -table asks for.
func (in instance) printRow(t *testing.T, p cut.Problem, plan cut.Plan, got int64, spent time.Duration) {
	start := time.Now()
	curve, err := cut.FewestVisits(p, plan, 1, visitSteps)
	require.NoError(t, err)
	more := "–"
	if len(curve) > 1 {
		more = fmt.Sprint(curve[1].Plan.Visits)
	}
	fit := "–"
	if in.FFD != nil {
		fit = fmt.Sprint(*in.FFD)
	}
	fmt.Printf("| %s | %d | %s | %d | %d | %d | %d ≥ %d | %s | %.1f | %.1f |\n", in.Name, plan.BoardCount, fit, got, in.Optimum, plan.Bound,
		curve[0].Plan.Visits, curve[0].Least, more, 1000*spent.Seconds(), 1000*time.Since(start).Seconds())
}

func (in instance) problem() cut.Problem {
	p := cut.Problem{Kerf: in.Kerf, EndTrim: in.Trim, Pieces: in.Items, Goal: cut.Boards}
	if in.Objective == "cost" {
		p.Goal = cut.Cost
	}
	for _, s := range in.Stocks {
		b := cut.Bar{Length: s.Length, Price: s.Price}
		if s.Available != nil {
			b.Limited, b.Available = true, *s.Available
		}
		p.Bars = append(p.Bars, b)
	}
	if len(in.Stocks) == 0 {
		p.Bars = []cut.Bar{{Length: in.StockLength, Price: 1}}
	}
	return p
}

func checkInstances(t *testing.T, dir string) int {
	t.Helper()
	all := instances(t, dir)
	for _, in := range all {
		t.Run(in.Name, func(t *testing.T) { in.check(t) })
	}
	return len(all)
}

func instances(t *testing.T, dir string) []instance {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.json"))
	require.NoError(t, err)
	all := make([]instance, len(files))
	for i, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		require.NoError(t, json.Unmarshal(text, &all[i]), file)
	}
	return all
}

func (in instance) check(t *testing.T) {
	in.solveBest(t)
	if in.Objective == "cost" {
		in.checkCost(t)
		return
	}
	length := in.StockLength
	if length == 0 {
		length = in.Stocks[0].Length
	}
	got, low := in.solve(t, length)
	if in.FFD != nil {
		assert.Equal(t, *in.FFD, got.Bars)
	}
	assert.LessOrEqual(t, low, in.Optimum)
	assert.GreaterOrEqual(t, got.Bars, in.Optimum)
}

// checkCost compares with the cheapest plan by first fit that uses one length
// of bar only. Where some bars are scarce the recorded figure uses them up
// first and mixes two lengths, which FirstFit does not do.
func (in instance) checkCost(t *testing.T) {
	best, scarce := int64(0), false
	for _, s := range in.Stocks {
		got, _ := in.solve(t, s.Length)
		if s.Available != nil {
			scarce = true
			continue
		}
		if cost := int64(got.Bars) * s.Price; best == 0 || cost < best {
			best = cost
		}
	}
	require.NotNil(t, in.FFD)
	if !scarce {
		assert.EqualValues(t, *in.FFD, best)
	}
	assert.GreaterOrEqual(t, best, int64(in.Optimum))
}

func (in instance) solve(t *testing.T, length int64) (cut.Layout, int) {
	t.Helper()
	s := cut.Stock{Length: length, Kerf: in.Kerf, EndTrim: in.Trim}
	got, err := cut.FirstFit(s, in.Items)
	require.NoError(t, err)
	checkLaws(t, s, in.Items, got)
	low, err := cut.LowerBound(s, in.Items)
	require.NoError(t, err)
	return got, low
}

func BenchmarkFirstFit(b *testing.B) {
	s := um(2400_000, 2800, 20_000, 150_000)
	panel := []cut.Piece{{84_000, 312}, {55_000, 318}, {32_000, 320}, {15_000, 320}}
	wall := make([]cut.Piece, 9)
	for i := range wall {
		wall[i] = cut.Piece{Length: 12_345 + 9_870*int64(i), Count: 4445}
	}
	for name, pieces := range map[string][]cut.Piece{"1270": panel, "40005": wall} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := cut.FirstFit(s, pieces); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
