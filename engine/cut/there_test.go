package cut_test

import (
	"math/rand/v2"
	"testing"

	"blockfield/engine/cut"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fewestWhole is the fewest whole sheets by trying every share of the parts for every
// sheet that is there; whether a share comes out of one sheet is a plan of its own.
func fewestWhole(t *testing.T, p cut.SheetProblem) int {
	t.Helper()
	var there []cut.There
	for _, one := range p.There {
		for range one.Count {
			there = append(there, cut.There{Width: one.Width, Length: one.Length, Count: 1})
		}
	}
	sheets := func(width, length int64, demand []int) (int, bool) {
		q := p
		q.Width, q.Length, q.There = width, length, nil
		q.Parts = append([]cut.Part{}, p.Parts...)
		for i, n := range demand {
			q.Parts[i].Count = n
		}
		plan, err := cut.SolveSheets(q)
		return plan.Sheets, err == nil && plan.Proven
	}
	best := 1 << 30
	var share func(at int, left []int)
	share = func(at int, left []int) {
		if at == len(there) {
			if n, ok := sheets(p.Width, p.Length, left); ok {
				best = min(best, n)
			}
			return
		}
		var pick func(i int, mine []int)
		pick = func(i int, mine []int) {
			if i == len(left) {
				if n, ok := sheets(there[at].Width, there[at].Length, mine); !ok || n > 1 {
					return
				}
				rest := append([]int{}, left...)
				for k, n := range mine {
					rest[k] -= n
				}
				share(at+1, rest)
				return
			}
			for n := 0; n <= left[i]; n++ {
				mine[i] = n
				pick(i+1, mine)
			}
			mine[i] = 0
		}
		pick(0, make([]int, len(left)))
	}
	var demand []int
	for _, q := range p.Parts {
		demand = append(demand, q.Count)
	}
	share(0, demand)
	return best
}

func TestSheetsThereEqualExhaustiveSearch(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 2))
	saved := 0
	for range 120 {
		p := cut.SheetProblem{Width: 20 + rng.Int64N(10), Length: 30 + rng.Int64N(10), Kerf: rng.Int64N(2), Trim: rng.Int64N(2)}
		for range 1 + rng.IntN(2) {
			p.Parts = append(p.Parts, cut.Part{Width: 6 + rng.Int64N(12), Length: 6 + rng.Int64N(14), Count: 1 + rng.IntN(3), Turn: rng.IntN(2) == 0})
		}
		for range 1 + rng.IntN(2) {
			p.There = append(p.There, cut.There{Width: 5 + rng.Int64N(20), Length: 5 + rng.Int64N(25), Count: 1 + rng.IntN(2)})
		}
		plan, err := cut.SolveSheets(p)
		require.NoError(t, err)
		checkSheets(t, p, plan)
		assert.Equal(t, fewestWhole(t, p), plan.Sheets, "%+v", p)
		assert.True(t, plan.Proven, "%+v", p)
		without := p
		without.There = nil
		whole, err := cut.SolveSheets(without)
		require.NoError(t, err)
		assert.LessOrEqual(t, plan.Sheets, whole.Sheets, "more wood never costs more")
		if plan.Sheets == whole.Sheets {
			assert.Zero(t, plan.Own, "nothing is cut that saves nothing")
		} else {
			saved++
		}
	}
	assert.Greater(t, saved, 20, "too few of the problems ask for what is there")
}

// A sheet of 1250 × 2500 with a kerf of 3 and 10 lost at the far edges. One backer of
// 600 × 1000 in its corner leaves 1240 − 603 = 637 beside it over the whole length of
// 2490, and 2490 − 1003 = 1487 behind it.
func TestRestsByHand(t *testing.T) {
	p := cut.SheetProblem{Width: 1250, Length: 2500, Kerf: 3, Trim: 10, Parts: []cut.Part{{Width: 600, Length: 1000, Count: 1}}}
	plan, err := cut.SolveSheets(p)
	require.NoError(t, err)
	require.Len(t, plan.Layouts, 1)
	// Cut behind first: 1240 × 1487 is more than 637 × 2490.
	assert.Equal(t, []cut.Rest{{X: 0, Y: 1003, Width: 1240, Length: 1487}, {X: 603, Y: 0, Width: 637, Length: 1000}}, plan.Layouts[0].Rests)

	// What is there saves the whole sheet, where it is large enough.
	p.There = []cut.There{{Width: 610, Length: 1009, Count: 1}, {Width: 610, Length: 1010, Count: 1}}
	plan, err = cut.SolveSheets(p)
	require.NoError(t, err)
	assert.Equal(t, 0, plan.Sheets)
	assert.Equal(t, 1, plan.Own)
	assert.Equal(t, 2, plan.Layouts[0].There)
	assert.True(t, plan.Proven)
}

func TestManySheetsThere(t *testing.T) {
	p := cut.SheetProblem{Width: 1250, Length: 2500, Kerf: 3, Trim: 10, Parts: []cut.Part{{Width: 400, Length: 300, Count: 200}, {Width: 90, Length: 80, Count: 300}}}
	p.There = []cut.There{{Width: 500, Length: 900, Count: 40}, {Width: 700, Length: 700, Count: 3}}
	plan, err := cut.SolveSheets(p)
	require.NoError(t, err)
	checkSheets(t, p, plan)
	assert.Positive(t, plan.Own)
	p.There[0].Width = 0
	_, err = cut.SolveSheets(p)
	assert.ErrorContains(t, err, "there[0].width: 0 out of range (allowed 1 to")
}
