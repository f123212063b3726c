package cut_test

import (
	"math/rand/v2"
	"testing"

	"blockfield/engine/cut"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// checkSheets holds what is true of any right plan: all parts once, inside the
// sheet, a kerf apart, and cut apart by through-going cuts.
func checkSheets(t *testing.T, p cut.SheetProblem, plan cut.SheetPlan) {
	t.Helper()
	made := make([]int, len(p.Parts))
	sheets, own := 0, make([]int, len(p.There)+1)
	for _, l := range plan.Layouts {
		own[l.There] += l.Count
		width, length := p.Width, p.Length
		if l.There == 0 {
			sheets += l.Count
		} else {
			width, length = p.There[l.There-1].Width, p.There[l.There-1].Length
		}
		all := append([]cut.Placed{}, l.Parts...)
		for _, r := range l.Rests {
			require.Positive(t, min(r.Width, r.Length))
			require.LessOrEqual(t, r.X+r.Width, width-p.Trim)
			require.LessOrEqual(t, r.Y+r.Length, length-p.Trim)
			all = append(all, cut.Placed{X: r.X, Y: r.Y, Width: r.Width, Length: r.Length})
		}
		require.True(t, cutApart(all, p.Kerf), "rests: %+v", all)
		for _, q := range l.Parts {
			made[q.Part] += l.Count
			part := p.Parts[q.Part]
			w, h := part.Width, part.Length
			if q.Turned {
				require.True(t, part.Turn, "against the grain")
				w, h = h, w
			}
			require.Equal(t, [2]int64{w, h}, [2]int64{q.Width, q.Length})
			require.GreaterOrEqual(t, q.X, int64(0))
			require.GreaterOrEqual(t, q.Y, int64(0))
			require.LessOrEqual(t, q.X+w, width-p.Trim)
			require.LessOrEqual(t, q.Y+h, length-p.Trim)
			require.Equal(t, q.X == 0, q.FactoryX)
			require.Equal(t, q.Y == 0, q.FactoryY)
		}
		require.True(t, cutApart(l.Parts, p.Kerf), "%+v", l.Parts)
	}
	require.Equal(t, plan.Sheets, sheets)
	for i, there := range p.There {
		require.LessOrEqual(t, own[i+1], there.Count)
		plan.Own -= own[i+1]
	}
	require.Zero(t, plan.Own)
	for i, part := range p.Parts {
		require.Equal(t, part.Count, made[i])
	}
	require.LessOrEqual(t, plan.Bound, plan.Sheets)
	require.Equal(t, plan.Proven, plan.Bound == plan.Sheets)
}

// cutApart reports whether through-going cuts of one kerf separate all parts.
func cutApart(parts []cut.Placed, kerf int64) bool {
	if len(parts) < 2 {
		return true
	}
	for _, edge := range parts {
		for _, along := range []bool{false, true} {
			at := edge.X + edge.Width
			if along {
				at = edge.Y + edge.Length
			}
			var before, after []cut.Placed
			clear := true
			for _, q := range parts {
				low, high := q.X, q.X+q.Width
				if along {
					low, high = q.Y, q.Y+q.Length
				}
				switch {
				case high <= at:
					before = append(before, q)
				case low >= at+kerf:
					after = append(after, q)
				default:
					clear = false
				}
			}
			if clear && len(after) > 0 {
				return cutApart(before, kerf) && cutApart(after, kerf)
			}
		}
	}
	return false
}

// Sheets of 1220 × 2440 mm with 10 mm lost each way and a kerf of 3 mm, in
// millimetres. Worked by hand: a module of 604 + 10 mm does not come twice out
// of the width, 2·614 + 3 = 1231 > 1210, but 599 + 5 does, 2·604 + 3 = 1211
// does not by one millimetre, and 2·603 + 3 = 1209 does.
func TestSheetsByHand(t *testing.T) {
	for _, c := range []struct {
		name  string
		parts []cut.Part
		want  int
	}{
		{"none", nil, 0},
		{"one", []cut.Part{{Width: 1210, Length: 2430, Count: 1}}, 1},
		{"two across, a millimetre too wide", []cut.Part{{Width: 604, Length: 2430, Count: 2}}, 2},
		{"two across", []cut.Part{{Width: 603, Length: 2430, Count: 2}}, 1},
		{"the kerf decides", []cut.Part{{Width: 1210, Length: 1213, Count: 2}}, 1},
		{"the kerf decides against", []cut.Part{{Width: 1210, Length: 1214, Count: 2}}, 2},
		{"only turned", []cut.Part{{Width: 1300, Length: 600, Count: 3, Turn: true}}, 2},
		// The default backer, 1203 × 806 mm: three on a sheet, 3·806 + 6 = 2424.
		{"default design", []cut.Part{{Width: 1203, Length: 806, Count: 3, Turn: true}}, 1},
		{"four are two sheets", []cut.Part{{Width: 1203, Length: 806, Count: 4, Turn: true}}, 2},
		// Two sizes share: 1210 × 1600 with two of 600 × 800 behind it.
		{"two sizes", []cut.Part{{Width: 1210, Length: 1600, Count: 2}, {Width: 600, Length: 800, Count: 4}}, 2},
		// 48 of 190 × 300: 6 across (6·193 = 1158), 8 along (8·303 = 2424).
		{"many", []cut.Part{{Width: 190, Length: 300, Count: 48}}, 1},
		{"one more", []cut.Part{{Width: 190, Length: 300, Count: 49}}, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := cut.SheetProblem{Width: 1220, Length: 2440, Kerf: 3, Trim: 10, Parts: c.parts}
			plan, err := cut.SolveSheets(p)
			require.NoError(t, err)
			checkSheets(t, p, plan)
			assert.Equal(t, c.want, plan.Sheets)
			assert.True(t, plan.Proven)
		})
	}
}

// The first part lies in the corner with both factory edges.
func TestSheetsStartAtTheFactoryEdge(t *testing.T) {
	p := cut.SheetProblem{Width: 1220, Length: 2440, Kerf: 3, Trim: 10, Parts: []cut.Part{{Width: 600, Length: 800, Count: 6}}}
	plan, err := cut.SolveSheets(p)
	require.NoError(t, err)
	for _, l := range plan.Layouts {
		assert.True(t, l.Parts[0].FactoryX && l.Parts[0].FactoryY)
	}
}

// Small random problems against a search that shares nothing with the planner:
// every order of parts, cut off by every sequence of through-going cuts.
func TestSheetsEqualExhaustiveSearch(t *testing.T) {
	rng := rand.New(rand.NewPCG(61, 62))
	several := 0
	for i := range 300 {
		p := cut.SheetProblem{Width: 20 + rng.Int64N(10), Length: 20 + rng.Int64N(20), Kerf: rng.Int64N(2), Trim: rng.Int64N(2)}
		pieces := 0
		for range 1 + rng.IntN(3) {
			part := cut.Part{Width: 5 + rng.Int64N(14), Length: 5 + rng.Int64N(14), Count: 1 + rng.IntN(2), Turn: rng.IntN(2) == 0}
			pieces += part.Count
			p.Parts = append(p.Parts, part)
		}
		plan, err := cut.SolveSheets(p)
		require.NoError(t, err)
		checkSheets(t, p, plan)
		want := fewestSheets(p)
		require.Equal(t, want, plan.Sheets, "case %d: %+v", i, p)
		require.True(t, plan.Proven, "case %d: %+v", i, p)
		if want > 1 {
			several++
		}
	}
	assert.Greater(t, several, 50, "problems with several sheets")
}

// fewestSheets tries every way to share the parts among sheets; fills decides
// whether one sheet takes a set of them, one bit of a mask each.
func fewestSheets(p cut.SheetProblem) int {
	var all []cut.Part
	for _, q := range p.Parts {
		for range q.Count {
			all = append(all, q)
		}
	}
	best := len(all)
	memo := map[[3]int64]bool{}
	var sheets []int
	var visit func(i int)
	visit = func(i int) {
		if len(sheets) >= best {
			return
		}
		if i == len(all) {
			best = len(sheets)
			return
		}
		for j := range sheets {
			sheets[j] += 1 << i
			if fills(all, p.Width-p.Trim, p.Length-p.Trim, p.Kerf, sheets[j], memo) {
				visit(i + 1)
			}
			sheets[j] -= 1 << i
		}
		sheets = append(sheets, 1<<i)
		visit(i + 1)
		sheets = sheets[:len(sheets)-1]
	}
	visit(0)
	return best
}

// fills reports whether a rectangle yields a set of parts: every cut at every
// whole place, and every way to share the parts between the two halves.
func fills(all []cut.Part, w, h, kerf int64, set int, memo map[[3]int64]bool) bool {
	var area int64
	count, last := 0, 0
	for i, q := range all {
		if set>>i&1 == 1 {
			area += q.Width * q.Length
			count, last = count+1, i
		}
	}
	if w <= 0 || h <= 0 || area > w*h {
		return count == 0
	}
	if q := all[last]; count == 1 {
		return q.Width <= w && q.Length <= h || q.Turn && q.Length <= w && q.Width <= h
	}
	at := [3]int64{w, h, int64(set)}
	known, ok := memo[at]
	if ok {
		return known
	}
	halves := func(w1, h1, w2, h2 int64) bool {
		for sub := (set - 1) & set; sub > 0; sub = (sub - 1) & set {
			if fills(all, w1, h1, kerf, sub, memo) && fills(all, w2, h2, kerf, set-sub, memo) {
				return true
			}
		}
		return false
	}
	result := false
	for x := int64(1); x < w && !result; x++ {
		result = halves(x, h, w-x-kerf, h)
	}
	for y := int64(1); y < h && !result; y++ {
		result = halves(w, y, w, h-y-kerf)
	}
	memo[at] = result
	return result
}

// Ten thousand parts of one size, four sheets of 2,880 and a rest: by hand,
// 12 across (12·101 = 1212 of 1213) and 240 along (240·10.1 = 2424 of 2433).
func TestSheetsMostParts(t *testing.T) {
	p := cut.SheetProblem{Width: 12200, Length: 24400, Kerf: 30, Trim: 100, Parts: []cut.Part{{Width: 980, Length: 71, Count: cut.MaxParts}}}
	plan, err := cut.SolveSheets(p)
	require.NoError(t, err)
	checkSheets(t, p, plan)
	assert.Equal(t, 4, plan.Sheets)
}

// Many small parts of many sizes are beyond complete search: the plan is right
// and says how far it may be from the best.
func TestSheetsManyParts(t *testing.T) {
	rng := rand.New(rand.NewPCG(71, 72))
	p := cut.SheetProblem{Width: 1220, Length: 2440, Kerf: 3, Trim: 10}
	for range cut.MaxSizes {
		p.Parts = append(p.Parts, cut.Part{Width: 60 + rng.Int64N(400), Length: 60 + rng.Int64N(400), Count: 1 + rng.IntN(9), Turn: rng.IntN(2) == 0})
	}
	plan, err := cut.SolveSheets(p)
	require.NoError(t, err)
	checkSheets(t, p, plan)
	assert.LessOrEqual(t, plan.Sheets, plan.Bound*4/3)
}

func TestSheetsRefuse(t *testing.T) {
	p := cut.SheetProblem{Width: 1220, Length: 2440, Kerf: -1, Trim: 10, Parts: []cut.Part{{Width: 1300, Length: 600, Count: 1}, {Width: 0, Length: 5, Count: -1}}}
	_, err := cut.SolveSheets(p)
	for _, want := range []string{"kerf: -1 out of range", "parts[0]: 1300 × 600 does not fit a sheet (allowed up to 1210 × 2430)", "parts[1].width: 0", "parts[1].count: -1"} {
		assert.ErrorContains(t, err, want)
	}
	p.Parts = make([]cut.Part, cut.MaxSizes+1)
	_, err = cut.SolveSheets(p)
	assert.ErrorContains(t, err, "parts: 41 sizes")
}

// Worked by hand in millimetres, pitch 36.2, here in tenths.
func TestSplit(t *testing.T) {
	sheet := cut.SplitLimits{Width: 12100, Length: 24300, Turn: true, Oversize: 100}
	for _, c := range []struct {
		name          string
		columns, rows int
		limits        cut.SplitLimits
		wide, high    int
	}{
		// 41 · 36.2 + 10 = 1494 along, 30 · 36.2 + 10 = 1096 across.
		{"fits", 41, 30, sheet, 1, 1},
		// 66 · 36.2 = 2389 + 10 = 2399 along; 34 · 36.2 + 10 = 1241 > 1210.
		{"a row too many", 66, 34, sheet, 2, 1},
		{"fits to the row", 66, 33, sheet, 1, 1},
		{"against the grain", 66, 33, cut.SplitLimits{Width: 12100, Length: 24300, Oversize: 100}, 2, 1},
		// 30 kg at most, 77 kg in all: 3 modules of 41/3 → 14 columns are 26.3 kg.
		{"too heavy", 41, 30, cut.SplitLimits{MassG: 77_000, MaxMassG: 30_000}, 3, 1},
		// 762 mm: 21 rows are 760, so 30 rows must be halved.
		{"door", 41, 30, cut.SplitLimits{Passage: 7620}, 2, 1},
		{"no limits", 400, 100, cut.SplitLimits{}, 1, 1},
	} {
		wide, high, ok := cut.Split(c.columns, c.rows, 362, c.limits)
		assert.True(t, ok, c.name)
		assert.Equal(t, [2]int{c.wide, c.high}, [2]int{wide, high}, c.name)
	}
	_, _, ok := cut.Split(1, 1, 362, cut.SplitLimits{MassG: 2, MaxMassG: 1})
	assert.False(t, ok, "one block is not split")
	_, _, ok = cut.Split(400, 100, 362, sheet)
	assert.False(t, ok)
}
