package cut

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The tests of this file look at parts of the planner that a plan alone does not
// show: what a bar is worth, the linear program and the bound.

// bag is a random knapsack and its items as the planner orders them.
func bag(rng *rand.Rand) (m *model, items []item, room, fee int64) {
	n := 1 + rng.IntN(6)
	m = &model{unit: 1, kinds: []kind{{room: 10 + rng.Int64N(90)}}}
	values, demand := make([]int64, n), make([]int, n)
	for i := range n {
		m.width = append(m.width, 2+rng.Int64N(30))
		values[i], demand[i] = rng.Int64N(100), rng.IntN(9)
	}
	fee = rng.Int64N(2) * rng.Int64N(40)
	return m, m.byWorth(nil, values, demand, fee), m.kinds[0].room, fee
}

// worthByTable is the plain table over every room, one piece after another.
func worthByTable(items []item, room, fee int64) int64 {
	best := make([]int64, room+1)
	for _, it := range items {
		next := append([]int64(nil), best...)
		for w := range best {
			for n := 1; n <= it.most && int64(n)*it.width <= int64(w); n++ {
				next[w] = max(next[w], best[int64(w)-int64(n)*it.width]+int64(n)*it.value-fee)
			}
		}
		best = next
	}
	return best[room]
}

func TestKnapsackEqualsTable(t *testing.T) {
	rng := rand.New(rand.NewPCG(81, 82))
	var k knapsack
	for i := range 5000 {
		m, items, room, fee := bag(rng)
		want := worthByTable(items, room, fee)
		floor := rng.Int64N(200)
		require.Equal(t, max(floor, want), k.solve(items, room, fee, floor), "case %d: %+v room %d fee %d", i, items, room, fee)
		if want <= floor {
			require.Zero(t, k.at)
			continue
		}
		var width, value int64
		for _, e := range k.found() {
			width += int64(e.count) * m.width[e.row]
			value -= fee
			for _, it := range items {
				if it.row == e.row {
					value += int64(e.count) * it.value
					require.LessOrEqual(t, e.count, it.most)
				}
			}
		}
		require.LessOrEqual(t, width, room)
		require.Equal(t, want, value)
	}
}

// When a search is broken off, what it says is above the truth, or at it.
func TestKnapsackCeiling(t *testing.T) {
	rng := rand.New(rand.NewPCG(83, 84))
	var k knapsack
	for range 2000 {
		_, items, room, fee := bag(rng)
		want := worthByTable(items, room, fee)
		k.solve(nil, room, fee, 0)
		k.items = items
		k.shortest = make([]int64, len(items))
		for i := range items {
			require.GreaterOrEqual(t, k.ceiling(i), want)
			k.item(i)
		}
	}
}

// The value of the linear program, as published or computed by another program.
// The bound in whole numbers reaches it but for rounding.
func TestLinearProgram(t *testing.T) {
	solved := func(name string, room int64, widths []int64, demand []int, want float64) {
		m := newModel(widths, []kind{{room: room, cost: 1}}, 0, total(demand))
		s := newSearch(m, math.MaxInt64, ThoroughSteps)
		d := s.begin(demand, []int{total(demand)})
		bound := s.relax(d, true)
		cost, foreign := d.lp.objective()
		assert.InDelta(t, want, cost, 1e-3, name)
		assert.Less(t, foreign, nearlyWhole, name)
		assert.Equal(t, int64(math.Ceil(want-1e-6)), bound, name)
	}
	solved("paper rolls of 5600 (encyclopaedia example)", 5600,
		[]int64{2200, 2150, 2140, 2100, 2050, 2000, 1930, 1880, 1820, 1710, 1560, 1520, 1380},
		[]int{20, 18, 16, 14, 12, 10, 20, 18, 18, 14, 12, 25, 22}, 72.91667)
	solved("Chvátal, Linear Programming (1983), p. 195", 100, []int64{45, 36, 31, 14}, []int{97, 610, 395, 211}, 452.25)
	solved("a solver's tutorial, from memory", 110, []int64{75, 55, 50, 45, 20}, []int{8, 10, 24, 35, 48}, 46.25)
	solved("a solver's benchmark", 10, []int64{7, 5, 3}, []int{2, 2, 4}, 3.66667)

	files, err := filepath.Glob("testdata/shop_*.json")
	require.NoError(t, err)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		var in struct {
			Items      []Piece
			Stocks     []struct{ Length int64 }
			Kerf, Trim int64
			LP         float64 `json:"lp_bound"`
		}
		require.NoError(t, json.Unmarshal(text, &in))
		if len(in.Stocks) > 1 {
			continue
		}
		var widths []int64
		var demand []int
		for _, p := range pool(in.Items) {
			widths, demand = append(widths, p.Length+in.Kerf), append(demand, p.Count)
		}
		solved(file, in.Stocks[0].Length-in.Trim+in.Kerf, widths, demand, in.LP)
	}
}

// Whatever the dual values are, the bound stays below the best plan: here below
// one that uses every bar to the full.
func TestBoundHoldsForAnyValues(t *testing.T) {
	rng := rand.New(rand.NewPCG(85, 86))
	reached := 0
	for i := range 3000 {
		m := newModel([]int64{7, 5, 3}, []kind{{room: 15, cost: 3}, {room: 10, cost: 2, scarce: true}}, 0, 60)
		// Two bars of 15 with 7+5+3, three of 10 with 7+3 and two of 10 with
		// 5+5, all full.
		demand, supply := []int{2 + 3, 2 + 4, 2 + 3}, []int{60, 5}
		const cost = 2*3 + 5*2
		values := []int64{rng.Int64N(3 * m.unit), rng.Int64N(3 * m.unit), rng.Int64N(3 * m.unit)}
		if i == 0 { // a fifth of a unit of cost for a unit of width
			values = []int64{7 * m.unit / 5, 5 * m.unit / 5, 3 * m.unit / 5}
		}
		var k knapsack
		items := m.byWorth(nil, values, demand, 0)
		worth := []int64{k.solve(items, 15, 0, 0), k.solve(items, 10, 0, 0)}
		bound := m.lagrange(values, worth, demand, supply)
		require.LessOrEqual(t, bound, int64(cost), "values %v", values)
		if bound == cost {
			reached++
		}
	}
	assert.Positive(t, reached, "the bound is reached by values in proportion to width")
}

// The planner gives up on numbers beyond its range and says so with a unit of 0.
func TestUnit(t *testing.T) {
	m := newModel([]int64{3, 2}, []kind{{room: 10, cost: 1}}, 0, 5)
	assert.EqualValues(t, maxUnit, m.unit)
	m = newModel([]int64{MaxLength, 1}, []kind{{room: MaxLength, cost: MaxPrice}}, 0, MaxPieces)
	assert.Zero(t, m.unit)
	m = newModel([]int64{600, 400}, []kind{{room: 1399, cost: 30}, {room: 999, cost: 20}}, 0, 5)
	assert.Equal(t, []int64{3, 2}, m.width)
	assert.Equal(t, []kind{{room: 6, cost: 3}, {room: 4, cost: 2}}, m.kinds)
	assert.EqualValues(t, 10, m.price)
}
