package field_test

import (
	"encoding/json"
	"os"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/field"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// reference holds whole level grids of a separate reference model, one string
// of level digits a row.
func reference(t *testing.T) map[string][]string {
	t.Helper()
	data, err := os.ReadFile("testdata/reference_levels.json")
	require.NoError(t, err)
	var grids map[string][]string
	require.NoError(t, json.Unmarshal(data, &grids))
	return grids
}

func lines(g field.Grid) []string {
	out := make([]string, g.Rows)
	for i := range out {
		row := make([]byte, g.Columns)
		for j := range row {
			row[j] = '0' + g.At(i, j)
		}
		out[i] = string(row)
	}
	return out
}

func lay(t *testing.T, p design.Pattern, columns, rows, heights int) field.Grid {
	t.Helper()
	g, err := field.Lay(p, columns, rows, heights)
	require.NoError(t, err)
	return g
}

func TestLayEqualsTheReferenceModel(t *testing.T) {
	grids := reference(t)
	for name, c := range map[string]struct {
		pattern                design.Pattern
		columns, rows, heights int
	}{
		"p1": {design.Pattern{Kind: design.Shuffled, Seed: 1, Clump: 2}, 28, 19, 4},
		"p2": {design.Pattern{Kind: design.Shuffled, Seed: 1, Clump: 2}, 41, 30, 4},
		"s1": {design.Pattern{Kind: design.QuadraticResidue, Order: 11}, 26, 18, 5},
		"s5": {design.Pattern{Kind: design.PrimitiveRoot, Order: 821, FoldRows: 20, FoldColumns: 41}, 34, 20, 4},
		"s8": {design.Pattern{Kind: design.QuadraticResidue, Order: 7}, 14, 14, 4},
	} {
		assert.Equal(t, grids[name], lines(lay(t, c.pattern, c.columns, c.rows, c.heights)), name)
	}
}

// The sequence is n² modulo the order. A value v of the order N is level
// floor(v·K/N) of K heights; over all K that can be laid that tells the values
// apart.
func TestQuadraticResidueSequences(t *testing.T) {
	for _, c := range []struct {
		order  int
		source string
		want   []int
	}{
		{7, "Acoustics Today, Summer 2006, p. 23", []int{0, 1, 4, 2, 2, 4, 1}},
		{11, "by hand from the definition", []int{0, 1, 4, 9, 5, 3, 3, 5, 9, 4, 1}},
		{13, "OEIS A070436", []int{0, 1, 4, 9, 3, 12, 10, 10, 12, 3, 9, 4, 1}},
		{17, "a newsgroup post of 1986 that quotes Science News on M. R. Schroeder",
			[]int{0, 1, 4, 9, 16, 8, 2, 15, 13, 13, 15, 2, 8, 16, 9, 4, 1}},
	} {
		p := design.Pattern{Kind: design.QuadraticResidueStripes, Order: c.order}
		for k := 2; k <= mostLevels; k++ {
			g := lay(t, p, c.order, 1, k)
			for j, v := range c.want {
				assert.Equal(t, uint8(v*k/c.order), g.At(0, j), "order %d, %d heights, place %d: %s", c.order, k, j, c.source)
			}
		}
	}
}

// mostLevels is how many heights a field can have.
const mostLevels = 10

// Powers of the smallest primitive root, folded to two dimensions: element n
// goes to row n mod rows and column n mod columns (M. R. Schroeder, AMS
// Proceedings of Symposia in Applied Mathematics 46, p. 10). The arrays are
// worked by hand from that rule. A value v of the order N is level
// floor((v − 1)·K/(N − 1)) of K heights.
func TestPrimitiveRootFolding(t *testing.T) {
	for _, c := range []struct {
		order int
		want  [][]int
	}{
		{7, [][]int{{1, 4, 2}, {6, 3, 5}}},
		{13, [][]int{{1, 5, 12, 8}, {3, 2, 10, 11}, {9, 6, 4, 7}}},
		{31, [][]int{
			{1, 6, 5, 30, 25, 26}, {16, 3, 18, 15, 28, 13}, {8, 17, 9, 23, 14, 22}, {4, 24, 20, 27, 7, 11},
			{2, 12, 10, 29, 19, 21},
		}},
	} {
		rows, columns := len(c.want), len(c.want[0])
		p := design.Pattern{Kind: design.PrimitiveRoot, Order: c.order, FoldRows: rows, FoldColumns: columns}
		for k := 2; k <= mostLevels; k++ {
			g := lay(t, p, columns, rows, k)
			for i, row := range c.want {
				for j, v := range row {
					assert.Equal(t, uint8((v-1)*k/(c.order-1)), g.At(i, j), "order %d, %d heights, row %d, column %d", c.order, k, i, j)
				}
			}
		}
	}
}

// Smallest primitive roots of the primes below 100: OEIS A001918, which cites
// Abramowitz and Stegun, p. 864.
func TestSmallestPrimitiveRoot(t *testing.T) {
	primes := []int{3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71, 73, 79, 83, 89, 97}
	roots := []int{2, 2, 3, 2, 2, 3, 2, 5, 2, 3, 2, 6, 3, 5, 2, 2, 2, 2, 7, 5, 3, 2, 3, 5}
	for i, p := range primes {
		assert.Equal(t, roots[i], field.SmallestPrimitiveRoot(p), "prime %d", p)
	}
	assert.Zero(t, field.SmallestPrimitiveRoot(15), "not a prime")
}

func TestFoldHasNoCommonFactor(t *testing.T) {
	for order, want := range map[int][2]int{7: {2, 3}, 13: {3, 4}, 31: {5, 6}, 691: {23, 30}, 821: {20, 41}, 17: {1, 16}} {
		rows, columns := field.Fold(order)
		assert.Equal(t, want, [2]int{rows, columns}, "order %d", order)
	}
}

func TestShuffledSharesAreEqual(t *testing.T) {
	for seed := range int64(20) {
		counts := lay(t, design.Pattern{Kind: design.Shuffled, Seed: seed, Clump: 1}, 31, 21, 6).Counts()
		for _, n := range counts {
			assert.InDelta(t, 31*21/6.0, n, 1, "seed %d: %v", seed, counts)
		}
	}
}

func TestTransforms(t *testing.T) {
	drawn := []string{"012", "301"}
	for name, c := range map[string]struct {
		change        func(*design.Pattern)
		columns, rows int
		want          []string
	}{
		"as drawn":        {func(*design.Pattern) {}, 3, 2, []string{"012", "301"}},
		"shift":           {func(p *design.Pattern) { p.ShiftRows, p.ShiftColumns = 1, 1 }, 3, 2, []string{"013", "120"}},
		"shift backwards": {func(p *design.Pattern) { p.ShiftColumns = -1 }, 3, 2, []string{"201", "130"}},
		"mirror":          {func(p *design.Pattern) { p.Mirror = true }, 3, 2, []string{"210", "103"}},
		"half turn":       {func(p *design.Pattern) { p.Turn = 180 }, 3, 2, []string{"103", "210"}},
		"quarter turn":    {func(p *design.Pattern) { p.Turn = 90 }, 2, 3, []string{"30", "01", "12"}},
		"three quarters":  {func(p *design.Pattern) { p.Turn = 270 }, 2, 3, []string{"21", "10", "03"}},
		"counter-panel":   {func(p *design.Pattern) { p.Counter = true }, 3, 2, []string{"321", "032"}},
	} {
		p := design.Pattern{Kind: design.Drawn, Drawn: drawn}
		c.change(&p)
		assert.Equal(t, c.want, lines(lay(t, p, c.columns, c.rows, 4)), name)
	}
}

func TestTransformsOfLaws(t *testing.T) {
	g := lay(t, design.Pattern{Kind: design.Shuffled, Seed: 7, Clump: 1}, 9, 5, 4)
	assert.Equal(t, g, g.HalfTurn().HalfTurn())
	assert.Equal(t, g, g.Counter().Counter())
	counts, swapped := g.Counts(), g.Counter().Counts()
	for k := range counts {
		assert.Equal(t, counts[k], swapped[3-k])
	}
}

func TestLayRefuses(t *testing.T) {
	for name, p := range map[string]design.Pattern{
		"unknown kind":    {Kind: "spiral"},
		"too few rows":    {Kind: design.Drawn, Drawn: []string{"000"}},
		"row too short":   {Kind: design.Drawn, Drawn: []string{"000", "00"}},
		"level too high":  {Kind: design.Drawn, Drawn: []string{"000", "004"}},
		"fold of 17":      {Kind: design.PrimitiveRoot, Order: 17, FoldRows: 4, FoldColumns: 4},
		"order not prime": {Kind: design.PrimitiveRoot, Order: 15, FoldRows: 2, FoldColumns: 7},
	} {
		_, err := field.Lay(p, 3, 2, 4)
		assert.Error(t, err, name)
	}
}

func parse(t *testing.T, heights int, rows ...string) field.Grid {
	t.Helper()
	return lay(t, design.Pattern{Kind: design.Drawn, Drawn: rows}, len(rows[0]), len(rows), heights)
}

func TestRuns(t *testing.T) {
	g := parse(t, 3, "0111", "0102", "1012")
	assert.Equal(t, []field.Run{{Length: 3, Row: 0, Column: 1, Level: 1}}, g.Runs(3))
	assert.Len(t, g.Runs(2), 4, "and down: zeros in column 1, ones in 2, twos in 4")
	run := field.Run{Length: 2, Down: true, Row: 1, Column: 3}
	assert.Equal(t, []bool{false, true, true, false}, []bool{run.Holds(0, 3), run.Holds(1, 3), run.Holds(2, 3), run.Holds(1, 2)})
}

func TestLongestRun(t *testing.T) {
	assert.Equal(t, field.Run{Length: 3, Row: 1, Column: 1, Level: 2}, parse(t, 3, "0101", "0222", "1010").LongestRun())
	assert.Equal(t, field.Run{Length: 3, Down: true, Column: 3, Level: 1}, parse(t, 3, "0101", "0221", "1011").LongestRun())
}

func TestRepeats(t *testing.T) {
	assert.Equal(t, 1, parse(t, 4, "0123", "2031").Repeats())
	assert.Equal(t, 2, parse(t, 4, "0101", "2323").Repeats())
	assert.Equal(t, 3, parse(t, 2, "010101", "101010", "010101").Repeats(), "a chequer")
	assert.Equal(t, 1, parse(t, 4, "0123", "0123", "0123").Repeats(), "stripes change along one direction only")
	assert.Equal(t, 2, lay(t, design.Pattern{Kind: design.QuadraticResidue, Order: 7}, 14, 14, 4).Repeats())
}

// By hand: across |0−2|+|2−2|, |1−0|+|0−2|; down |0−1|+|2−0|+|2−2| steps of 10.
func TestStepSum(t *testing.T) {
	assert.InDelta(t, 10*(2+0+1+2+1+2+0), parse(t, 3, "022", "102").StepSum([]float64{0, 10, 20}), 1e-9)
}

func BenchmarkLayShuffled(b *testing.B) {
	for b.Loop() {
		_, _ = field.Lay(design.Pattern{Kind: design.Shuffled, Seed: 1, Clump: 2}, 50, 30, 4)
	}
}
