package bench_test

import (
	"testing"

	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// minutesOf are the usual minutes of each task with some factors.
func minutesOf(t *testing.T, d design.Design, f bench.Factors) map[string]float64 {
	t.Helper()
	book := design.DefaultBook()
	b, err := bench.Estimate(d, bench.Pace{Tasks: book.Tasks, SpeedKmh: book.Travel.SpeedKmh, Factors: f}, built(t, d))
	require.NoError(t, err)
	all := map[string]float64{}
	for _, task := range b.Tasks {
		all[task.ID] = task.Minutes.Typical
	}
	return all
}

// Either side of each limit, as shares of what the table alone gives; the zero
// value changes nothing.
func TestFactorsOfWoodAndSize(t *testing.T) {
	for _, c := range []struct {
		wood                string
		mm                  int64
		sort, cut, sandEnds float64
	}{
		{"poplar", 36, 1, 1, 1},
		{"beech", 36, 1.15, 1.15, 1.15},
		{"cherry", 36, 1, 1, 1},
		{"poplar", 29, 1, 1, 0.85},
		{"poplar", 30, 1, 1, 1},
		{"poplar", 50, 1, 1, 1},
		{"poplar", 51, 1, 1, 1.15},
		{"oak", 29, 1.15, 1.15, 1.15 * 0.85},
	} {
		d := design.Default().Design
		g := &d.Walls[0].Groups[0]
		g.Wood, g.Block.Size = c.wood, length.MM(c.mm)
		was := minutesOf(t, d, bench.Factors{})
		is := minutesOf(t, d, bench.Factors{Wood: true})
		for id, want := range map[string]float64{"b2": c.sort, "c3": c.cut, "d2": c.sandEnds, "b1": 1, "e4": 1, "d3": 1} {
			assert.InDelta(t, want, is[id]/was[id], 1e-9, "%s of %d mm: %s", c.wood, c.mm, id)
		}
	}
}

// Two woods in one job: each block by its own. Half of the blocks in beech make
// half of the difference.
func TestFactorsOfTwoWoods(t *testing.T) {
	soft := design.Default().Design.Walls[0].Groups[0]
	hard := soft
	hard.Wood = "beech"
	d := bothWalls(soft, hard)
	was, is := minutesOf(t, d, bench.Factors{}), minutesOf(t, d, bench.Factors{Wood: true})
	assert.InDelta(t, 1.075, is["d2"]/was["d2"], 1e-9)
}

func TestGang(t *testing.T) {
	d := design.Default().Design
	was := minutesOf(t, d, bench.Factors{})
	for n, want := range map[int]float64{0: 1, 1: 1, 2: 0.65, 3: 0.52, 4: 0.45, 6: 0.40, 9: 0.40} {
		is := minutesOf(t, d, bench.Factors{Gang: n})
		assert.InDelta(t, want, is["c3"]/was["c3"], 1e-9, "%d at once", n)
		assert.InDelta(t, was["d2"], is["d2"], 1e-9)
	}
}

// The first design: 750 cut blocks × 18 s are 225 min of sanding, of which 45
// are past three hours: 4.5 more. Cutting takes 100 min and tires nobody.
func TestHandsTire(t *testing.T) {
	d := design.Default().Design
	was, is := minutesOf(t, d, bench.Factors{}), minutesOf(t, d, bench.Factors{Fatigue: true})
	require.InDelta(t, 225, was["d2"], 1e-9)
	assert.InDelta(t, 229.5, is["d2"], 1e-9)
	assert.InDelta(t, was["c3"], is["c3"], 1e-9)
	assert.InDelta(t, was["h1"], is["h1"], 1e-9)
}
