package wall_test

import (
	"math/rand/v2"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/field"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wall"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func rear(grid field.Grid, heights ...float64) wall.Rear {
	return wall.Rear{Grid: grid, HeightsMM: heights, PitchMM: 40.2, BlockMM: 40, CleatMM: 18, BackerMM: 12}
}

func oneCell(level uint8) field.Grid {
	return field.Grid{Columns: 1, Rows: 1, Heights: 3, Levels: []uint8{level}}
}

// 18 and 12 mm behind the blocks: a 50 mm screw is safe from 26 mm up, a 60 mm
// one from 36 mm (the trade's figures), both with 6 mm over the tip; a void needs
// 3 mm of backer over it.
func TestMarks(t *testing.T) {
	for _, c := range []struct{ height, screw, want float64 }{
		{26, 50, float64(wall.Safe)}, {25.9, 50, float64(wall.Short)},
		{36, 60, float64(wall.Safe)}, {35.9, 60, float64(wall.Short)},
		{0, 50, float64(wall.Void)}, {0, 27, float64(wall.Safe)}, {0, 27.1, float64(wall.Void)},
	} {
		r := rear(oneCell(0), c.height)
		assert.Equal(t, wall.Cell(c.want), r.Mark(0, 0, c.screw), "%+v", c)
	}
	r := rear(oneCell(0), 26)
	assert.Equal(t, 50.0, r.UsualScrewMM(), "the longest that stands 20 mm in a block")
	assert.Equal(t, 25.0, r.ShortScrewMM(), "the longest that ends in the backer")
}

// random is a field with voids and short blocks among the others.
func random(r *rand.Rand) wall.Rear {
	columns, rows := 8+r.IntN(30), 6+r.IntN(20)
	g := field.Grid{Columns: columns, Rows: rows, Heights: 4, Levels: make([]uint8, columns*rows)}
	for i := range g.Levels {
		g.Levels[i] = uint8(r.IntN(4))
	}
	return rear(g, 0, 15, 42, 80)
}

// Whoever measures from the rear's own left edge and screws through there hits,
// seen from the front, the cell that was meant, and it is a safe one. A map that
// is not mirrored would miss: that is shown too.
func TestRearMapHitsWhatItMeans(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	unmirrored, chosen := 0, 0
	for range 300 {
		back := random(r)
		row, ok := back.ChooseRow(wall.Want{ScrewMM: back.UsualScrewMM(), ApartMM: 45, EdgeMM: 16.7, Count: 4})
		if !ok {
			continue
		}
		require.Len(t, row.Places, 4)
		holes := back.Holes(row)
		require.Len(t, holes, 4)
		for i, p := range holes {
			chosen++
			fromRear := p.FromLeftMM
			assert.True(t, i == 0 || fromRear >= holes[i-1].FromLeftMM, "from the left of the rear")
			assert.Equal(t, p.Row, int(p.FromTopMM/back.PitchMM), "the top stays up")
			// Projected through the panel: what is x from the left behind is
			// width − x from the left in front.
			front := back.FieldMM() - fromRear
			hit := int(front / back.PitchMM)
			assert.Equal(t, p.Column, hit)
			assert.Equal(t, p.Column, back.ColumnAtRear(fromRear))
			assert.InDelta(t, back.PitchMM/2, front-float64(hit)*back.PitchMM, 1e-9, "the middle of the block")
			assert.GreaterOrEqual(t, back.HeightsMM[back.Grid.At(p.Row, hit)], 26.0, "deep enough")
			if back.Mark(p.Row, int(fromRear/back.PitchMM), row.ScrewMM) != wall.Safe {
				unmirrored++
			}
		}
	}
	assert.Greater(t, chosen, 500)
	assert.Greater(t, unmirrored, chosen/4, "a map that nobody mirrored comes through the face")
}

// halves are the cleats of a group of 20 kg panels.
func halves(t *testing.T, g design.Group, kg float64) []wall.Half {
	t.Helper()
	built, err := panel.Build(g)
	require.NoError(t, err)
	return wall.Hang(wall.Hung{Path: "walls[0].groups[0]", Design: g, Built: built, Wall: design.Default().Design.Walls[0], PanelKg: kg}).Halves
}

// 40 mm of cleat and 9 of ply: the usual screw is 60 mm and stands only 20 deep,
// less than six diameters of a No. 8 (25 mm); the next longer one serves.
func TestLongerCleatScrew(t *testing.T) {
	g := design.Default().Design.Walls[0].Groups[0]
	g.Cleat.Thickness, g.Backer.Thickness = length.MM(40), length.MM(9)
	got := halves(t, g, 20)[0]
	assert.Equal(t, 60.0, got.UsualScrewMM())
	assert.True(t, got.Found)
	assert.Equal(t, 70.0, got.Row.ScrewMM)
}

// The left corner of the rear is the last column of the front.
func TestCorners(t *testing.T) {
	g := field.Grid{Columns: 4, Rows: 3, Heights: 4, Levels: []uint8{
		0, 1, 2, 3,
		1, 1, 1, 2,
		2, 0, 0, 1,
	}}
	left, right := rear(g, 0, 15, 42, 80).Corners()
	assert.Equal(t, wall.Corner{Column: 4, HeightsMM: []float64{80, 42, 15}}, left)
	assert.Equal(t, wall.Corner{Column: 1, HeightsMM: []float64{0, 15, 42}}, right)
}

// The booth hangs from 1050 to 1707.6 mm with 21 mm of frame and gap above its
// field. Its screws are in row 5, 153.9 mm below the field's top; the cleat of 80
// mm lies on them, so that the tip comes at 1686.6 − 193.9 = 1492.7 mm, and so does
// the foot of the cleat that is drawn.
func TestTipHeight(t *testing.T) {
	d := designtest.Job(t, "s1")
	built, err := panel.Build(d.Walls[0].Groups[0])
	require.NoError(t, err)
	h := wall.Hang(wall.Hung{Path: "walls[0].groups[0]", Wall: d.Walls[0], Design: d.Walls[0].Groups[0], Built: built, PanelKg: 16.8})
	assert.Equal(t, "193.9 mm", h.Halves[0].Foot.String())
	assert.InDelta(t, 1.4927, h.Bays[0].TipM, 1e-9)
	for _, part := range h.Built.Panels[0].Parts {
		if part.Kind == panel.CleatPart {
			assert.Equal(t, "1492.7 mm", h.Built.Panels[0].Bottom.Add(part.Y).String())
		}
	}
}

// Two rows, one under the other, need a cleat that is high enough for both: with
// four diameters of a No. 8 above and below, rows up to 46 mm apart fit on 80 mm.
func TestTwoRowsFitOnTheCleat(t *testing.T) {
	one := field.Grid{Columns: 12, Rows: 6, Heights: 1, Levels: make([]uint8, 72)}
	back := wall.Rear{Grid: one, HeightsMM: []float64{80}, PitchMM: 46, BlockMM: 45, CleatMM: 18, BackerMM: 12}
	want := wall.Want{ScrewMM: 50, ApartMM: 42, EdgeMM: 17, Count: 14}
	row, ok := back.ChooseRow(want)
	assert.True(t, ok)
	assert.Len(t, row.Rows, 2)
	back.PitchMM = 46.1
	row, ok = back.ChooseRow(want)
	assert.False(t, ok)
	assert.Len(t, row.Rows, 1)
}

// Panels of a group share a screw, whatever their backs: the counter-panel of the
// worked rear wall could do with a thinner one.
func TestPanelsShareAScrew(t *testing.T) {
	d := designtest.Job(t, "s7")
	all := halves(t, d.Walls[0].Groups[0], 50.9)
	require.Len(t, all, 5)
	for _, half := range all {
		assert.Equal(t, []any{12, 11, true}, []any{half.Gauge, half.Needed, half.Found})
	}
	assert.NotEqual(t, all[0].Row.Places, all[3].Row.Places, "A and B")
}

// No other row of the band has more safe cells, and screws keep their distance.
func TestChooseRowIsBest(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		back := random(r)
		got, ok := back.ChooseRow(wall.Want{ScrewMM: 50, ApartMM: 45, EdgeMM: 16.7, Count: 3})
		if !ok || len(got.Rows) != 1 {
			continue
		}
		for row := range back.Grid.Rows {
			if y := back.RowY(row); y < 60 || y > 160 {
				continue
			}
			n := 0
			for c := range back.Grid.Columns {
				if x := back.FrontX(c); x >= 70 && x <= back.FieldMM()-70 && back.Mark(row, c, 50) == wall.Safe {
					n++
				}
			}
			assert.LessOrEqual(t, n, got.Safe)
		}
		for i := range got.Places[1:] {
			apart := float64(got.Places[i+1].Column-got.Places[i].Column) * back.PitchMM
			assert.GreaterOrEqual(t, apart, 45.0)
		}
	}
}

// The worked jobs print row and safe cells for 50 mm screws: the booth row 5 with
// 21, the café row 4 with 26, the first panel row 4 with 14. They count the whole
// row; here only what lies under the cleat counts, which is 50 mm shorter at
// either end, 20 mm from its ends: columns 1, 2 and 25 of the booth, 1, 2, 33 and
// 34 of the café, 1, 2, 13 and 14 of the first panel do not. That makes the café's
// row 2 as good as its row 4, and it is nearer to 90 mm.
func TestRowsOfWorkedJobs(t *testing.T) {
	for name, want := range map[string][2]int{"s1": {5, 18}, "s5": {2, 22}, "s8": {4, 10}} {
		d := designtest.Job(t, name)
		back := halves(t, d.Walls[0].Groups[0], 1)[0].Rear
		assert.Equal(t, 50.0, back.UsualScrewMM(), name)
		row, ok := back.ChooseRow(wall.Want{ScrewMM: 50, ApartMM: 42, EdgeMM: 16.7, Count: 6})
		require.True(t, ok)
		require.Len(t, row.Rows, 1)
		assert.Equal(t, want, [2]int{row.Rows[0] + 1, row.Safe}, name)
	}
}

// A heavier panel never takes fewer cleat screws of a kind; a wood that the standard
// does not list is counted as the lightest, and a heavy one no better than the ply
// that the screw goes through first.
func TestCleatScrews(t *testing.T) {
	g := design.Default().Design.Walls[0].Groups[0]
	last := map[int]int{}
	for kg := 10.0; kg < 60; kg += 5 {
		got := halves(t, g, kg)[0]
		require.True(t, got.Found, "%g kg", kg)
		assert.GreaterOrEqual(t, got.Needed, last[got.Gauge])
		assert.LessOrEqual(t, got.Use, 1.0)
		last[got.Gauge] = got.Needed
	}
	assert.Greater(t, last[8], 6)
	need := func(wood string) int {
		g := g
		g.Wood = wood
		return halves(t, g, 40)[0].Needed
	}
	assert.Greater(t, need("cherry"), need("poplar"))
	assert.Equal(t, need("poplar"), need("oak"))
}

// One screw of the panel's half followed by hand: 38.84 kg on 12 No. 8 of 50 mm
// through 18 mm of cleat and 12 of ply. It stands 32 mm deep, 7.68 diameters of the
// ten for full shear; mode IIIs, 0.67 in end grain and 0.9 for ever leave 137.5 N, and
// it carries 4 × 381 / 12 = 127.0 N. The lean of 36.8 N, with the lowest row that may
// come, is felt twice in the middle of the half: 8 × 36.8 / 12 = 24.5 N. 12 mm of ply
// hold 2850 × 0.42² × 0.164 × 0.472 × 0.9 = 35.06 lbf or 155.9 N. Combined: 0.937.
func TestHalfByHand(t *testing.T) {
	got := halves(t, design.Default().Design.Walls[0].Groups[0], 38.837)[0]
	assert.Equal(t, []any{8, 12, 50.0}, []any{got.Gauge, got.Needed, got.Row.ScrewMM})
	assert.InDelta(t, 0.937, got.Use, 0.001)
}

// TestScrewsCountOnTheLighterWood: of two woods either may lie over a screw. What is
// left is the mean of the masses, which shifts the lean.
func TestScrewsCountOnTheLighterWood(t *testing.T) {
	use := func(first, second string) float64 {
		g := design.Default().Design.Walls[0].Groups[0]
		g.Wood, g.SecondWood = first, second
		return halves(t, g, 38.837)[0].Use
	}
	assert.InDelta(t, use("cedar", ""), use("poplar", "cedar"), 0.002)
	assert.InDelta(t, use("cedar", ""), use("cedar", "poplar"), 0.002)
	assert.Greater(t, use("cedar", ""), use("poplar", "")+0.02)
}
