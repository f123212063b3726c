package layup_test

import (
	"fmt"
	"slices"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/field"
	"blockfield/engine/layup"
	"blockfield/engine/length"
	"blockfield/engine/panel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fieldsOf are the fields of a worked job.
func fieldsOf(t *testing.T, name string) []layup.Field {
	t.Helper()
	var all []layup.Field
	for _, w := range designtest.Job(t, name).Walls {
		for _, g := range w.Groups {
			built, err := panel.Build(g)
			require.NoError(t, err)
			f := layup.Field{Group: g, GramsPerBlock: 0.5}
			for _, p := range built.Panels {
				f.Panels = append(f.Panels, p.Grid)
			}
			all = append(all, f)
		}
	}
	return all
}

func plenty(layup.Bin) int { return 10_000 }

// drawn is a field of digits over heights in mm, in a stick of 40 mm with 0.2 mm of
// slack.
func drawn(heights []int64, lines ...string) layup.Field {
	g := design.Default().Design.Walls[0].Groups[0]
	g.Block.Size, g.Block.Slack = length.MM(40), length.Micrometres(200)
	g.Heights = nil
	for _, h := range heights {
		g.Heights = append(g.Heights, length.MM(h))
	}
	grid := field.Grid{Columns: len(lines[0]), Rows: len(lines), Heights: len(heights)}
	for _, line := range lines {
		for _, digit := range line {
			grid.Levels = append(grid.Levels, uint8(digit-'0'))
		}
	}
	return layup.Field{Group: g, Panels: []field.Grid{grid}, GramsPerBlock: 0.48}
}

// Of every worked job, from either edge: each block lies on exactly one card, and
// the cards give the field back.
func TestCardsAreTheField(t *testing.T) {
	for _, name := range []string{"s1", "s2", "s3", "s4", "s5", "s6", "s7", "s8", "p1", "p2"} {
		fields := fieldsOf(t, name)
		for _, start := range []string{design.TopEdge, design.BottomEdge} {
			cards := layup.Lay(fields, layup.Way{Start: start, AtOnce: 20, Good: plenty})
			seen := map[string]bool{}
			for _, c := range cards {
				at := fmt.Sprint(c.Field, c.Panel, c.Row)
				require.False(t, seen[at], "%s: row %s is on two cards", name, at)
				seen[at] = true
				grid := fields[c.Field].Panels[c.Panel]
				require.Len(t, c.Levels, grid.Columns, "%s: %s", name, at)
				for column, level := range c.Levels {
					require.Equal(t, grid.At(c.Row, column), level, "%s: %s", name, at)
				}
				checkCard(t, fields[c.Field], c)
			}
			rows := 0
			for _, f := range fields {
				for _, grid := range f.Panels {
					rows += grid.Rows
				}
			}
			assert.Len(t, cards, rows, "%s: a row is missing", name)
		}
	}
}

// checkCard holds what every card promises about itself.
func checkCard(t *testing.T, f layup.Field, c layup.Card) {
	t.Helper()
	sum := func(all []int) (n int) {
		for _, x := range all {
			n += x
		}
		return n
	}
	bare := 0
	for level, n := range c.Counts {
		if f.Group.Heights[level].IsZero() {
			bare += n
		}
	}
	require.Equal(t, len(c.Levels), sum(c.Counts))
	require.Equal(t, bare, c.Set)
	require.Equal(t, len(c.Levels)-bare, c.Blocks)
	require.Equal(t, c.Blocks, sum(c.Parts))
	require.Equal(t, len(c.Parts), len(c.Ends))
	from := 0
	for i, end := range c.Ends {
		blocks := 0
		for _, level := range c.Levels[from:end] {
			if !f.Group.Heights[level].IsZero() {
				blocks++
			}
		}
		require.Equal(t, c.Parts[i], blocks, "part %d of row %d", i, c.Row)
		from = end
	}
	if c.Blocks > 0 {
		require.Equal(t, len(c.Levels), from)
	}
}

// The first row of the booth as it is printed with the worked job.
func TestCardOfTheBooth(t *testing.T) {
	fields := fieldsOf(t, "s1")
	cards := layup.Lay(fields, layup.Way{Start: design.TopEdge, AtOnce: 100, Good: plenty})
	first := cards[0]
	var heights []string
	for _, level := range first.Levels {
		heights = append(heights, fields[0].Group.Heights[level].String())
	}
	want := []int{0, 0, 18, 72, 36, 18, 18, 36, 72, 18, 0, 0, 0, 18, 72, 36, 18, 18, 36, 72, 18, 0, 0, 0, 18, 72}
	for i, mm := range want {
		assert.Equal(t, fmt.Sprint(mm, " mm"), heights[i], "column %d", i+1)
	}
	assert.Equal(t, []int{8, 9, 4, 0, 5}, first.Counts)
	assert.Equal(t, 8, first.Set)
	assert.Equal(t, 18, first.Blocks)
}

// Rows from the chosen edge, with the distances from it: by hand, rows of 40.2 mm
// less a slack.
func TestStartEdge(t *testing.T) {
	lines := []string{"11", "12", "21", "22", "11", "12"}
	for start, rows := range map[string][]int{
		design.TopEdge: {0, 1, 2, 3, 4, 5}, design.BottomEdge: {5, 4, 3, 2, 1, 0},
	} {
		cards := layup.Lay([]layup.Field{drawn([]int64{0, 20, 40}, lines...)},
			layup.Way{Start: start, AtOnce: 9, Good: plenty})
		for i, c := range cards {
			assert.Equal(t, rows[i], c.Row, start)
			assert.Equal(t, i+1, c.Order)
			assert.Equal(t, i == 4 || i == 5, c.Measure, "the fifth and the last")
		}
		assert.Equal(t, "200.8 mm", cards[4].Distance.String())
		assert.Equal(t, "241 mm", cards[5].Distance.String())
	}
}

// A row of 41 with a glue for 30 is glued as 21 and 20; one that the glue just
// takes in one go, or that nobody times. Bare cells take no glue and belong to the part that they lie in.
func TestParts(t *testing.T) {
	row := func(n int) layup.Field { return drawn([]int64{0, 20}, string(slices.Repeat([]byte("1"), n))) }
	for _, c := range []struct {
		blocks, atOnce int
		want           []int
	}{
		{41, 30, []int{21, 20}}, {41, 41, []int{41}}, {42, 41, []int{21, 21}}, {43, 14, []int{11, 11, 11, 10}},
		{5, 1, []int{1, 1, 1, 1, 1}}, {3, 0, []int{3}},
	} {
		got := layup.Lay([]layup.Field{row(c.blocks)}, layup.Way{AtOnce: c.atOnce, Good: plenty})[0]
		assert.Equal(t, c.want, got.Parts, "%d blocks, %d at once", c.blocks, c.atOnce)
	}
	mixed := layup.Lay([]layup.Field{drawn([]int64{0, 20}, "1100110")}, layup.Way{AtOnce: 2, Good: plenty})[0]
	assert.Equal(t, []int{2, 2}, mixed.Parts)
	assert.Equal(t, []int{2, 7}, mixed.Ends)
	assert.InDelta(t, 4*0.48, mixed.Grams, 1e-12)
	empty := layup.Lay([]layup.Field{drawn([]int64{0, 20}, "000")}, layup.Way{AtOnce: 2, Good: plenty})[0]
	assert.Empty(t, empty.Parts)
	assert.Zero(t, empty.Grams)
	assert.Equal(t, 3, empty.Set)
}

// What is set is pulled: those of a row with the next one, the last two together,
// and never more stand loose than the field says.
func TestLooseBlocks(t *testing.T) {
	f := drawn([]int64{0, 20, 60}, "0112", "0012", "2112", "0002")
	cards := layup.Lay([]layup.Field{f}, layup.Way{Start: design.TopEdge, AtOnce: 9, Good: plenty})
	var set, pull []int
	for _, c := range cards {
		set, pull = append(set, c.Set), append(pull, c.Pull)
	}
	assert.Equal(t, []int{1, 2, 0, 3}, set)
	assert.Equal(t, []int{0, 1, 2, 3}, pull)
	assert.Equal(t, "60 mm", cards[0].Bin.Height.String())
	assert.Zero(t, cards[2].Bin, "nothing is set")

	for _, name := range []string{"s1", "s3", "s7"} {
		fields := fieldsOf(t, name)
		loose := 0
		cards := layup.Lay(fields, layup.Way{AtOnce: 30, Good: plenty})
		for _, c := range cards {
			loose += c.Set
			loose -= c.Pull
			if c.Order == c.Rows {
				require.Zero(t, loose, "%s: panel %d keeps loose blocks", name, c.Panel)
			}
		}
	}
	for _, c := range layup.Lay(fieldsOf(t, "s8"), layup.Way{Good: plenty}) {
		assert.Zero(t, c.Set, "no bare cells")
	}
}

// lent are the bins of a field's rows, with what is lacking.
func lent(cards []layup.Card) []string {
	var all []string
	for _, c := range cards {
		if c.Set > 0 {
			all = append(all, fmt.Sprint(c.Bin.Height, " ", c.Lacking))
		}
	}
	return all
}

// The tallest bin lends the loose blocks as long as it has some over after this row
// and the next; otherwise the next one; and where none has, the one that lacks least says
// how many. By hand: each row takes two of 20 mm and one of 60 mm and sets one.
func TestBinOfLooseBlocks(t *testing.T) {
	f := drawn([]int64{0, 20, 60}, "0112", "0112")
	stock := func(low, high int) func(layup.Bin) int {
		return func(b layup.Bin) int {
			if b.Height.Same(length.MM(60)) {
				return high
			}
			return low
		}
	}
	for _, c := range []struct {
		low, high int
		want      []string
	}{
		{4, 4, []string{"60 mm 0", "60 mm 0"}}, // two are glued, and both loose ones stand at once
		{6, 3, []string{"60 mm 0", "20 mm 0"}}, // the second finds the only spare one lent
		{6, 2, []string{"20 mm 0", "20 mm 0"}},
		{5, 2, []string{"20 mm 0", "60 mm 1"}}, // both lack one: the taller
		{4, 2, []string{"60 mm 1", "60 mm 1"}},
	} {
		cards := layup.Lay([]layup.Field{f}, layup.Way{Start: design.TopEdge, AtOnce: 9, Good: stock(c.low, c.high)})
		assert.Equal(t, c.want, lent(cards), "%d of 20 mm, %d of 60 mm", c.low, c.high)
	}

	// A second group out of the same bins finds what the first has left.
	both := layup.Lay([]layup.Field{f, f}, layup.Way{Start: design.TopEdge, AtOnce: 9, Good: stock(100, 5)})
	assert.Equal(t, []string{"60 mm 0", "60 mm 0", "60 mm 0", "20 mm 0"}, lent(both))
}

// No bin lends what its own rows still need: counted block by block, the bins of the
// jobs with bare cells never run dry but by what a card says is lacking.
func TestBinsNeverRunDry(t *testing.T) {
	for _, name := range []string{"s1", "s3", "s7"} {
		fields := fieldsOf(t, name)
		need := map[string]int{}
		for _, c := range layup.Lay(fields, layup.Way{AtOnce: 30, Good: plenty}) {
			for level, n := range c.Counts {
				need[fields[c.Field].Group.Heights[level].String()] += n
			}
		}
		const spare = 3
		good := func(b layup.Bin) int { return need[b.Height.String()] + spare }
		in := map[string]int{}
		for height, n := range need {
			in[height] = n + spare
		}
		out := []layup.Card{}
		for _, c := range layup.Lay(fields, layup.Way{AtOnce: 30, Good: good}) {
			for level, n := range c.Counts {
				if h := fields[c.Field].Group.Heights[level]; !h.IsZero() {
					in[h.String()] -= n
				}
			}
			if c.Set > 0 {
				in[c.Bin.Height.String()] -= c.Set - c.Lacking
				out = append(out, c)
			}
			for height, n := range in {
				require.GreaterOrEqual(t, n, 0, "%s: the %s bin at row %d of panel %d", name, height, c.Row, c.Panel)
			}
			for len(out) > 0 && (out[0].Order < c.Order || out[0].Panel != c.Panel || c.Order == c.Rows) {
				in[out[0].Bin.Height.String()] += out[0].Set - out[0].Lacking
				out = out[1:]
			}
		}
	}
}
