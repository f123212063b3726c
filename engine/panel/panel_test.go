package panel_test

import (
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wood"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func build(t testing.TB, g design.Group) panel.Group {
	t.Helper()
	out, err := panel.Build(g)
	require.NoError(t, err)
	return out
}

func massOf(p panel.Panel, kinds ...panel.Kind) float64 {
	var kg float64
	for _, part := range p.Parts {
		for _, k := range kinds {
			if part.Kind == k {
				kg += part.MassKg
			}
		}
	}
	return kg
}

// The figures are a separate reference model's for the same jobs; they are
// printed to 0.1 kg, 0.01 m², 0.1 mm and 0.01 m.
func TestReferenceJobs(t *testing.T) {
	for name, want := range map[string]struct {
		columns, rows                int
		width, height                float64 // outer, mm
		stack, depth, runningM       float64
		counts                       []int
		blocks, backer, frame, cleat float64 // kg
		tops, sides, centroidMM      float64
	}{
		"s1": {26, 18, 931.2, 657.6, 102, 106, 3.11, []int{102, 98, 90, 90, 88}, 9.4, 3.4, 3.0, 0.8, 0.42, 0.86, 48.9},
		"s5": {34, 20, 1562.6, 937.5, 104.1, 110, 4.92, []int{171, 169, 169, 171}, 31.6, 11.1, 6.0, 1.6, 1.34, 1.46, 49.9},
		"s8": {14, 14, 660.8, 660.8, 116, 120, 2.57, []int{36, 64, 64, 32}, 8.5, 2.4, 2.5, 0.5, 0.38, 0.41, 53.7},
		"p1": {28, 19, 1059.6, 733.8, 114, 119, 3.51, []int{132, 134, 134, 132}, 23.1, 5.7, 6.0, 0.9, 0.69, 0.52, 54.3},
		"p2": {41, 30, 1530.2, 1132.0, 114, 119, 5.24, []int{310, 310, 308, 302}, 53.1, 13.2, 9.0, 1.4, 1.59, 1.2, 53.9},
	} {
		t.Run(name, func(t *testing.T) {
			got := build(t, designtest.Job(t, name).Walls[0].Groups[0])
			p := got.Panels[0]
			assert.Equal(t, []int{want.columns, want.rows}, []int{got.Columns, got.Rows})
			assert.InDelta(t, want.width, got.OuterWidth.Millimetres(), 0.051)
			assert.InDelta(t, want.height, got.OuterHeight.Millimetres(), 0.051)
			assert.InDelta(t, want.stack, got.Stack.Millimetres(), 0.051)
			assert.InDelta(t, want.depth, got.FrameDepth.Millimetres(), 0)
			assert.InDelta(t, want.runningM, got.FrameRunning.Metres(), 0.0051)
			assert.Equal(t, want.counts, p.Counts)
			assertMass(t, want.blocks, massOf(p, panel.BlockPart), "blocks")
			assertMass(t, want.backer, massOf(p, panel.BackerPart), "backer")
			assertMass(t, want.frame, massOf(p, panel.FramePart), "frame")
			assertMass(t, want.cleat, massOf(p, panel.CleatPart, panel.SpacerPart), "cleat and spacer")
			assert.InDelta(t, want.tops, p.TopsM2, 0.0051)
			assert.InDelta(t, want.sides, p.SidesM2, 0.0051)
			assert.InDelta(t, want.centroidMM, centroidWithoutCarriersMM(p), 0.2)
			assert.Less(t, 1000*p.CentroidM, want.centroidMM, "the carriers are close to the wall")
		})
	}
}

// centroidWithoutCarriersMM is what the reference model calls the centroid: it
// leaves out the cleat and the spacer, which the panel does carry.
func centroidWithoutCarriersMM(p panel.Panel) float64 {
	carriers := massOf(p, panel.CleatPart, panel.SpacerPart)
	middle := 0.0
	for _, part := range p.Parts {
		if part.Kind == panel.CleatPart {
			middle = part.Depth.Metres() / 2
		}
	}
	return 1000 * (p.CentroidM*p.MassKg - carriers*middle) / (p.MassKg - carriers)
}

// assertMass allows 1 % or 0.05 kg, half of the last printed digit.
func assertMass(t *testing.T, want, got float64, what string) {
	t.Helper()
	assert.InDelta(t, want, got, max(0.01*want, 0.0501), what)
}

// two builds a field of 2 × 1 cells of 40 mm on 50 mm pitch: small enough to
// work everything out by hand.
func two() design.Group {
	mm := length.MM
	return design.Group{
		PanelsWide: 1, PanelsHigh: 1, Width: mm(100), Height: mm(50),
		Block:   design.Block{Size: mm(40), Slack: mm(10)},
		Heights: []length.Length{mm(0), mm(100)},
		Pattern: design.Pattern{Kind: design.Drawn, Drawn: []string{"01"}},
		Wood:    "beech", Density: 700,
		Backer: design.Backer{Sheet: "birch ply", Thickness: mm(10)},
		Frame:  design.Frame{Joint: design.Mitred, Wood: "beech", Thickness: mm(20), Board: mm(150), Gap: mm(5), Reveal: mm(2)},
		Cleat:  design.Cleat{Thickness: mm(18), Bevel: 45},
		Place:  design.Place{Left: mm(1000), Edge: design.BottomEdge, Height: mm(900)},
	}
}

func TestClosedForms(t *testing.T) {
	g := build(t, two())
	p := g.Panels[0]
	assert.Equal(t, "150 mm", g.OuterWidth.String(), "100 + 2·(5 + 20)")
	assert.Equal(t, "100 mm", g.OuterHeight.String())
	assert.Equal(t, "130 mm", g.FrameDepth.String(), "18 + 10 + 100 + 2")
	assert.InDelta(t, 0.04*0.04*0.1*700, massOf(p, panel.BlockPart), 1e-12)
	assert.InDelta(t, 0.1*0.05*0.01*680, massOf(p, panel.BackerPart), 1e-12)
	ring := 0.150*0.100 - 0.110*0.060
	assert.InDelta(t, ring*0.130*700, massOf(p, panel.FramePart), 1e-12)
	assert.InDelta(t, 0.04*0.04, p.TopsM2, 1e-12)
	assert.InDelta(t, 0.1*0.04, p.SidesM2, 1e-12, "one side of 100 × 40 stands above its neighbour")
	assert.InDelta(t, 0.05*0.05, p.BareM2, 1e-12)
	assert.Equal(t, 1, p.Blocks)
	assert.Equal(t, "28 mm", p.Parts[0].Z.String(), "blocks stand on cleat and backer")
}

func TestFrameJointsHoldTheSameWood(t *testing.T) {
	mitred, butt := two(), two()
	butt.Frame.Joint = design.Butt
	m, b := build(t, mitred).Panels[0], build(t, butt).Panels[0]
	assert.InDelta(t, massOf(m, panel.FramePart), massOf(b, panel.FramePart), 1e-12)
	up := b.Parts[len(b.Parts)-3]
	assert.Equal(t, "60 mm", up.Height.String(), "between the boards at top and bottom: 100 − 2·20")
	assert.Equal(t, "20 mm", up.Y.String())
}

func TestBareEdge(t *testing.T) {
	in := two()
	in.Frame.Joint = design.NoFrame
	g := build(t, in)
	assert.Equal(t, "100 mm", g.OuterWidth.String())
	assert.True(t, g.FrameDepth.IsZero())
	assert.Zero(t, massOf(g.Panels[0], panel.FramePart))
}

func TestPlacesOfSeveralPanels(t *testing.T) {
	in := two()
	in.PanelsWide, in.PanelsHigh, in.Order, in.PanelGap = 2, 2, "ABRA", length.MM(30)
	in.Width, in.Height = length.MM(200), length.MM(100)
	g := build(t, in)
	assert.Equal(t, "330 mm", g.TotalWidth.String(), "2·150 + 30")
	assert.Equal(t, "1180 mm", g.Panels[1].Left.String())
	assert.Equal(t, "1030 mm", g.Panels[1].Bottom.String(), "the first panels are the upper ones")
	assert.Equal(t, "900 mm", g.Panels[3].Bottom.String())
	assert.Equal(t, []uint8{1, 0}, g.Panels[1].Grid.Levels, "B is the counter-panel")
	assert.Equal(t, []uint8{1, 0}, g.Panels[2].Grid.Levels, "R is turned by 180°")
	in.Place = design.Place{Left: length.MM(0), Edge: design.TopEdge, Height: length.MM(2000)}
	assert.Equal(t, "1770 mm", build(t, in).Bottom.String(), "2000 − (2·100 + 30)")
}

func codes(t *testing.T, name string) map[string]bool {
	t.Helper()
	g := designtest.Job(t, name).Walls[0].Groups[0]
	out := map[string]bool{}
	for _, w := range build(t, g).WatchOuts(g, "walls[0].groups[0]") {
		out[w.Code] = true
	}
	return out
}

// The lists are those of the scenarios; what is not listed must not fire.
func TestWatchOutsOfScenarios(t *testing.T) {
	for name, want := range map[string][]string{
		"s1":        {"field/snapped"},
		"s5":        {"field/snapped", "pattern/long-run"},
		"s8":        {"field/snapped"},
		"s5-second": {"field/snapped", "pattern/long-run"},
	} {
		got := codes(t, name)
		assert.Len(t, got, len(want), "%s: %v", name, got)
		for _, code := range want {
			assert.True(t, got[code], "%s: %s", name, code)
		}
	}
	assert.True(t, codes(t, "s4")["panel/alike"], "three like panels")
	assert.False(t, codes(t, "s4-second")["panel/alike"], "A A B")
}

func TestLimitsOfWatchOuts(t *testing.T) {
	wide := func(change func(*design.Group)) map[string]bool {
		in := two()
		in.Width, in.Height = length.MM(500), length.MM(100)
		in.Pattern.Drawn = []string{"0110100110", "1001011001"}
		change(&in)
		out := map[string]bool{}
		for _, w := range build(t, in).WatchOuts(in, "g") {
			out[w.Code] = true
		}
		return out
	}
	drawn := func(rows ...string) func(*design.Group) {
		return func(g *design.Group) { g.Pattern.Drawn = rows }
	}
	assert.Empty(t, wide(func(*design.Group) {}))
	assert.False(t, wide(drawn("0111101001", "1000010110"))["pattern/long-run"], "four in a row")
	assert.True(t, wide(drawn("0111110001", "1000001110"))["pattern/long-run"], "five in a row")
	assert.False(t, wide(drawn("0110111111", "1111111001"))["pattern/uneven-shares"] == false, "15 of 20 is 1.5 of an equal share")
	assert.False(t, wide(drawn("0110110111", "1001101011"))["pattern/uneven-shares"], "13 of 20 is 1.3")
	assert.False(t, wide(func(g *design.Group) { g.Width = length.MM(505) })["field/snapped"], "5 mm off")
	assert.True(t, wide(func(g *design.Group) { g.Width = length.MM(506) })["field/snapped"], "6 mm off")
	assert.False(t, wide(drawn("0110001100", "1001110011"))["pattern/repeats"], "twice")
	assert.True(t, wide(drawn("0110110110", "1001001001"))["pattern/repeats"], "three times")
}

func BenchmarkBuild(b *testing.B) {
	g := design.Default().Design.Walls[0].Groups[0]
	g.Columns, g.Rows = 50, 30
	for b.Loop() {
		_ = build(b, g)
	}
}

// TestTwoWoods by hand: four cells of 40 mm blocks, the taller ones of walnut; the
// weighed density is that of the first wood alone.
func TestTwoWoods(t *testing.T) {
	in := two()
	in.Width, in.Height = length.MM(200), length.MM(50)
	in.Heights = []length.Length{length.MM(0), length.MM(50), length.MM(100)}
	in.Pattern.Drawn = []string{"0121"}
	in.SecondWood = "walnut"
	g := build(t, in)
	p := g.Panels[0]
	assert.Equal(t, []uint8{0, 0, 1, 0}, p.Woods)
	assert.Equal(t, [][]int{{1, 2, 0}, {0, 0, 1}}, g.WoodCounts)
	walnut, ok := wood.Find("walnut")
	require.True(t, ok)
	const face = 0.04 * 0.04
	kg := map[string]float64{}
	for _, part := range p.Parts {
		if part.Kind == panel.BlockPart {
			kg[part.Wood] += part.MassKg
		}
	}
	assert.InDelta(t, 2*face*0.05*700, kg["beech"], 1e-12)
	assert.InDelta(t, face*0.1*walnut.DensityKgM3, kg["walnut"], 1e-12)
	assert.Len(t, kg, 2)
	assert.Equal(t, 3, p.Blocks)

	in.PanelsWide, in.Order, in.Width = 2, "AB", length.MM(400)
	b := build(t, in).Panels[1]
	assert.Equal(t, []uint8{2, 1, 0, 1}, b.Grid.Levels)
	assert.Equal(t, []uint8{1, 0, 0, 0}, b.Woods, "the counter-panel is mixed by its own heights")
}
