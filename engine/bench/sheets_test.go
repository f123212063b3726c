package bench_test

import (
	"math/rand/v2"
	"testing"

	"blockfield/engine/bench"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// groups is a design with one group for each size in cells of 50 mm.
func groups(sizes ...[3]int) design.Design {
	d := small()
	first := d.Walls[0].Groups[0]
	first.Pattern = design.Pattern{Kind: design.Shuffled, Clump: 1}
	d.Walls[0].Groups = nil
	for _, s := range sizes {
		g := first
		g.Columns, g.Rows, g.PanelsWide = s[0], s[1], s[2]
		d.Walls[0].Groups = append(d.Walls[0].Groups, g)
	}
	return d
}

// Backers of different sizes share a sheet. By hand, out of 1210 × 2430: 1210 ×
// 1210 (24 cells and 10 mm), then beside each other in the 1217 that are left 610 ×
// 1210 and 510 × 1210: 610 + 3 + 510 of 1210. Size by size that were three sheets.
func TestBackersShareASheet(t *testing.T) {
	b := estimate(t, groups([3]int{24, 24, 1}, [3]int{12, 24, 1}, [3]int{10, 24, 1}))
	require.Len(t, b.Sheets, 1)
	s := b.Sheets[0]
	assert.Equal(t, 1, s.Count)
	assert.True(t, s.Plan.Proven)
	require.Len(t, s.Plan.Layouts, 1)
	assert.Len(t, s.Plan.Layouts[0].Parts, 3)
	for _, p := range s.Plan.Layouts[0].Parts {
		k := s.Backers[p.Part]
		area := p.Width * p.Length
		assert.Equal(t, k.Width.Nanometres()*k.Height.Nanometres(), area)
		assert.LessOrEqual(t, p.X+p.Width, length.MM(1210).Nanometres())
		assert.LessOrEqual(t, p.Y+p.Length, length.MM(2430).Nanometres())
		assert.Equal(t, p.X == 0, p.FactoryX)
		assert.Equal(t, p.Y == 0, p.FactoryY)
	}

	// Up the panel the grain runs along the sheet: the same three still fit.
	d := groups([3]int{24, 24, 1}, [3]int{12, 24, 1}, [3]int{10, 24, 1})
	d.Bench.BackerGrain = design.GrainUp
	for _, p := range estimate(t, d).Sheets[0].Plan.Layouts[0].Parts {
		assert.False(t, p.Turned)
	}
	// Across the panel it runs along the side of 610 and of 510, and 1210 + 3 + 610
	// + 3 + 510 = 2336 of 2430 are one above another.
	d.Bench.BackerGrain = design.GrainAcross
	assert.Equal(t, 1, estimate(t, d).Sheets[0].Count)
	d.Bench.BackerOversize = length.MM(50) // 1250 is more than 1210
	assert.True(t, estimate(t, d).Sheets[0].TooLarge)
}

// Never more sheets than size by size with all backers turned the same way.
func TestSheetsAgainstRows(t *testing.T) {
	rnd := rand.New(rand.NewPCG(12, 13))
	saved := 0
	for range 40 {
		var sizes [][3]int
		for range 1 + rnd.IntN(4) {
			sizes = append(sizes, [3]int{4 + rnd.IntN(20), 4 + rnd.IntN(20), 1 + rnd.IntN(6)})
		}
		d := groups(sizes...)
		b := estimate(t, d)
		plain, parts := 0, 0
		for i, s := range sizes {
			plain += (s[2] + b.Groups[i].PerSheet - 1) / b.Groups[i].PerSheet
			parts += s[2]
		}
		assert.LessOrEqual(t, b.Sheets[0].Count, plain, "%v", sizes)
		saved += plain - b.Sheets[0].Count
		for _, l := range b.Sheets[0].Plan.Layouts {
			parts -= l.Count * len(l.Parts)
		}
		assert.Zero(t, parts, "every backer once: %v", sizes)
	}
	assert.Positive(t, saved)
}

// Two people carry 50 kg; a door of 1981 mm lets a shorter side of 1941 and the
// wrapping through.
func TestSplit(t *testing.T) {
	mm, um := length.MM, length.Micrometres
	heavy := func(kg float64) design.Design {
		d := groups([3]int{20, 20, 1})
		d.Walls[0].Groups[0].Density = 500
		b := estimate(t, d)
		d.Walls[0].Groups[0].Density = 500 * (kg - b.HeaviestKg + 500*b.Lots[0].BlocksM3) / (500 * b.Lots[0].BlocksM3)
		require.InDelta(t, kg, estimate(t, d).HeaviestKg, 1e-6)
		return d
	}
	door := func(high length.Length) design.Design {
		d := groups([3]int{20, 20, 1}) // 1000 × 1000 mm
		d.WayIn.DoorHeight = high
		return d
	}
	for _, c := range []struct {
		name string
		d    design.Design
		want bench.Split
		why  string // key of the reason; empty: nothing is said
	}{
		{"50 kg", heavy(50), bench.Split{}, ""},
		{"50.01 kg", heavy(50.01), bench.Split{Wide: 1, High: 2, People: true}, "split/people"},
		{"100.1 kg: three", heavy(100.1), bench.Split{Wide: 1, High: 3, People: true}, "split/people"},
		{"601 kg: not even twelve", heavy(601), bench.Split{People: true}, ""},
		{"a door of 1040 mm", door(mm(1040)), bench.Split{}, ""},
		{"a lower door", door(um(1_039_999)), bench.Split{Wide: 1, High: 2, Door: true}, "split/door"},
	} {
		g := estimate(t, c.d).Groups[0]
		assert.Equal(t, c.want, g.Split, c.name)
		got, fires := watch(t, c.d, withoutSanding())["bench/split"]
		assert.Equal(t, c.why != "", fires, c.name)
		if fires {
			assert.Equal(t, check.Note, got.Level)
			assert.EqualValues(t, c.why, got.Args["why"])
			assert.Nil(t, got.Fix, "the columns are fixed")
		}
	}
	// A frame of 20 mm and its gap of 3 go through the door too: 1046 + 40.
	for high, fires := range map[int64]bool{1086: false, 1085: true} {
		d := door(mm(high))
		d.Walls[0].Groups[0].Frame = design.Frame{Joint: design.Mitred, Wood: "beech", Thickness: mm(20), Board: mm(150), Gap: mm(3)}
		assert.Equal(t, fires, estimate(t, d).Groups[0].Split.Door, "%d mm", high)
	}
	d := heavy(60)
	d.Walls[0].Groups[0].Columns, d.Walls[0].Groups[0].Rows = 0, 0
	d.Walls[0].Groups[0].Width, d.Walls[0].Groups[0].Height = mm(1000), mm(1000)
	assert.Equal(t, &check.Fix{Path: "walls[0].groups[0].panelsHigh", Value: "2"}, watch(t, d, withoutSanding())["bench/split"].Fix)
}

// Sheets that are there are cut before whole ones are bought, only where they are of the
// same board, and what is left over is said where another job can use it. By hand: a
// field of 24 × 24 cells takes a backer of 1210 × 1210, which leaves of a sheet of
// 1220 × 2440, 10 mm off at its far edges, 1217 mm behind it.
func TestSheetsThatAreThere(t *testing.T) {
	d := groups([3]int{24, 24, 1}, [3]int{10, 10, 1})
	s := estimate(t, d).Sheets[0]
	assert.Equal(t, 1, s.Count)
	require.NotEmpty(t, s.Rests)

	board := d.Walls[0].Groups[0].Backer
	own := design.SheetStock{Sheet: board.Sheet, Thickness: board.Thickness, Width: length.MM(1220), Length: length.MM(1220), Count: 1}
	d.Bench.Sheets = []design.SheetStock{own}
	s = estimate(t, d).Sheets[0]
	assert.Equal(t, 1, s.Count, "the larger backer alone comes out of what is there")
	own.Count = 2
	d.Bench.Sheets = []design.SheetStock{own}
	s = estimate(t, d).Sheets[0]
	assert.Equal(t, 0, s.Count)
	assert.Equal(t, 2, s.Plan.Own)
	width, long := s.Size(s.Plan.Layouts[0])
	assert.Equal(t, []string{"1220 mm", "1220 mm"}, []string{width.String(), long.String()})
	assert.True(t, s.Plan.Proven)

	own.Thickness = board.Thickness.Add(length.MM(3))
	d.Bench.Sheets = []design.SheetStock{own}
	assert.Equal(t, 1, estimate(t, d).Sheets[0].Count, "another board")
	own.Thickness, own.Width = board.Thickness, length.MM(1219)
	d.Bench.Sheets = []design.SheetStock{own}
	assert.Equal(t, 1, estimate(t, d).Sheets[0].Count, "1209 mm are too few for 1210")
}
