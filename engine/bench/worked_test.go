package bench_test

import (
	"strings"
	"testing"

	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/panel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func built(t testing.TB, d design.Design) []panel.Group {
	t.Helper()
	var groups []panel.Group
	for _, w := range d.Walls {
		for _, g := range w.Groups {
			b, err := panel.Build(g)
			require.NoError(t, err)
			groups = append(groups, b)
		}
	}
	return groups
}

// pace is that of the placeholder book.
func pace() bench.Pace {
	b := design.DefaultBook()
	return bench.Pace{Tasks: b.Tasks, SpeedKmh: b.Travel.SpeedKmh}
}

func estimate(t testing.TB, d design.Design) bench.Bill {
	t.Helper()
	bill, err := bench.Estimate(d, pace(), built(t, d))
	require.NoError(t, err)
	return bill
}

// worked is one job as a separate reference model of the trade worked it out,
// with the placeholder time table. Its figures are printed to the digits that
// stand here.
type worked struct {
	name                 string
	change               func(*design.Design)
	blocks, cut          int
	need                 string
	sticks, sound        int
	sheets, perSheet     int
	glueKg, litres       float64
	fixings, cleatScrews int
	heaviestKg           float64
	shop, office, site   [3]float64
	travel               float64
	total                [3]float64
	rowSeconds, sandingH float64 // 0: not printed
	wastePct             float64
}

// unsaid sets kerf and end trim of the two reference panels to 3 and 25 mm.
// The reference gives them no saw; its stick counts for both panels come out
// with these two, which half of its jobs use, and its P2 count does not with
// 2.8 and 20 mm (TestThinnerKerfSavesAStick).
func unsaid(d *design.Design) {
	d.Bench.Kerf, d.Bench.EndTrim = length.MM(3), length.MM(25)
}

func TestWorkedJobs(t *testing.T) {
	for _, w := range []worked{
		{
			name: "p1", change: unsaid, blocks: 532, cut: 550, need: "132 134 134 132", sticks: 15, sound: 13,
			sheets: 1, perSheet: 3, glueKg: 0.21, litres: 0.50, fixings: 4, cleatScrews: 6, heaviestKg: 36.0,
			shop: [3]float64{8.1, 14.6, 26.3}, office: [3]float64{2.4, 4.7, 10.0}, site: [3]float64{1.7, 3.2, 6.3},
			travel: 2.7, total: [3]float64{14.9, 25.1, 45.3}, rowSeconds: 252,
		},
		{
			name: "p2", change: unsaid, blocks: 1230, cut: 1270, need: "310 310 308 302", sticks: 33, sound: 29,
			sheets: 1, perSheet: 1, glueKg: 0.48, litres: 1.01, fixings: 7, cleatScrews: 8, heaviestKg: 77.3,
			shop: [3]float64{14.2, 26.0, 47.1}, office: [3]float64{2.4, 4.7, 10.0}, site: [3]float64{1.8, 3.3, 6.6},
			travel: 2.7, total: [3]float64{21.1, 36.7, 66.3}, rowSeconds: 369,
		},
		{
			name: "s1", blocks: 366, cut: 378, need: "98 90 90 88", sticks: 10, sound: 8,
			sheets: 1, perSheet: 3, glueKg: 0.13, litres: 0.42, fixings: 4, cleatScrews: 6, heaviestKg: 16.8,
			shop: [3]float64{6.7, 11.8, 21.3}, office: [3]float64{2.4, 4.7, 10.0},
			travel: 0.5, total: [3]float64{9.7, 17.0, 31.8}, rowSeconds: 234, sandingH: 2.4, wastePct: 32,
		},
		{
			name: "s1-second", blocks: 366, cut: 378, need: "98 90 90 88", sticks: 10, sound: 8,
			sheets: 1, perSheet: 3, glueKg: 0.13, litres: 0.42, fixings: 4, cleatScrews: 6, heaviestKg: 15.3,
			shop: [3]float64{6.7, 11.8, 21.3}, office: [3]float64{1.9, 3.7, 8.0},
			travel: 0.3, total: [3]float64{8.9, 15.7, 29.6}, rowSeconds: 234, sandingH: 2.4, wastePct: 32,
		},
		{
			name: "s5", blocks: 680, cut: 704, need: "171 169 169 171", sticks: 13, sound: 11,
			sheets: 1, perSheet: 1, glueKg: 0.40, litres: 0.91, fixings: 4, cleatScrews: 6, heaviestKg: 50.7,
			shop: [3]float64{9.5, 17.1, 30.8}, office: [3]float64{2.4, 4.7, 10.0}, site: [3]float64{1.7, 3.2, 6.3},
			travel: 2.4, total: [3]float64{16.1, 27.4, 49.5}, rowSeconds: 306, sandingH: 4.2, wastePct: 31,
		},
		{
			name: "s5-second", blocks: 680, cut: 704, need: "171 169 169 171", sticks: 13, sound: 11,
			sheets: 1, perSheet: 1, glueKg: 0.40, litres: 0.91, fixings: 4, cleatScrews: 6, heaviestKg: 50.7,
			shop: [3]float64{9.5, 17.1, 30.8}, office: [3]float64{2.4, 4.7, 10.0}, site: [3]float64{1.7, 3.2, 6.3},
			travel: 2.4, total: [3]float64{16.1, 27.4, 49.5}, rowSeconds: 306, sandingH: 4.2,
		},
		{
			name: "s8", blocks: 196, cut: 204, need: "36 64 64 32", sticks: 6, sound: 5,
			sheets: 1, perSheet: 3, glueKg: 0.11, litres: 0.26, fixings: 4, cleatScrews: 6, heaviestKg: 14.1,
			shop: [3]float64{4.9, 8.8, 15.5}, office: [3]float64{0.8, 1.5, 3.2},
			total: [3]float64{5.7, 10.3, 18.8}, rowSeconds: 126, sandingH: 1.3, wastePct: 33,
		},
		{
			name: "s8-second", blocks: 196, cut: 204, need: "36 64 64 32", sticks: 6, sound: 5,
			sheets: 1, perSheet: 3, glueKg: 0.11, litres: 0.26, fixings: 4, cleatScrews: 6, heaviestKg: 14.1,
			shop: [3]float64{4.9, 8.8, 15.5}, office: [3]float64{0.8, 1.5, 3.2},
			total: [3]float64{5.7, 10.3, 18.8}, rowSeconds: 126, sandingH: 1.3, wastePct: 33,
		},
	} {
		t.Run(w.name, func(t *testing.T) {
			t.Parallel()
			d := designtest.Job(t, w.name)
			if w.change != nil {
				w.change(&d)
			}
			p := pace()
			// The old simple rule of the reference model, which another room replaces.
			p.Holds = func(int, float64) bench.Held {
				return bench.Held{CleatScrews: w.cleatScrews, WallFixings: w.fixings, Rule: bench.NotChecked}
			}
			w.check(t, estimateWith(t, d, p))
		})
	}
}

func (w worked) check(t *testing.T, got bench.Bill) {
	t.Helper()
	assert.Equal(t, w.blocks, got.Blocks)
	assert.Equal(t, w.cut, got.CutBlocks)
	require.Len(t, got.Lots, 1)
	assert.Equal(t, w.need, needs(got.Lots[0]))
	assert.Equal(t, w.sticks, got.Lots[0].Sticks)
	assert.Equal(t, w.sound, got.Lots[0].SticksBeforeDefects)
	require.Len(t, got.Sheets, 1)
	assert.Equal(t, w.sheets, got.Sheets[0].Count)
	assert.Equal(t, w.perSheet, got.Sheets[0].PerSheet)
	assert.InDelta(t, w.glueKg, got.GlueKg, halfOf(0.01))
	require.Len(t, got.Finishes, 1)
	assert.InDelta(t, w.litres, got.Finishes[0].Litres, halfOf(0.01))
	assert.Equal(t, w.fixings, got.WallFixings)
	assert.Equal(t, w.cleatScrews, got.CleatScrews)
	assert.InDelta(t, w.heaviestKg, got.HeaviestKg, halfOf(0.1))
	assert.InDelta(t, w.heaviestKg, got.TotalKg, halfOf(0.1), "one panel")
	within(t, "shop", w.shop, got.Hours.Shop)
	within(t, "office", w.office, got.Hours.Office)
	within(t, "site", w.site, got.Hours.Site)
	within(t, "travel", [3]float64{w.travel, w.travel, w.travel}, got.Hours.Travel)
	within(t, "total", w.total, got.Hours.Total)
	assert.InDelta(t, w.rowSeconds, got.GlueRowSeconds, 1e-9)
	if w.sandingH > 0 {
		assert.InDelta(t, w.sandingH, got.SandingHours.Typical, halfOf(0.1))
	}
	if w.wastePct > 0 {
		assert.InDelta(t, w.wastePct, 100-got.Lots[0].UsedPercent, halfOf(1))
	}
}

// halfOf is half of the last digit of a printed figure, and a hair.
func halfOf(digit float64) float64 { return digit/2 + 1e-9 }

// within compares hours that are printed to a tenth. A sum that lies on the
// edge (low office hours of the home builder are 0.75, high ones 3.25) may have
// been printed either way.
func within(t *testing.T, what string, want [3]float64, got bench.Spread) {
	t.Helper()
	for i, g := range []float64{got.Low, got.Typical, got.High} {
		assert.InDelta(t, want[i], g, halfOf(0.1), "%s, rate %d", what, i)
	}
}

func needs(l bench.Lot) string {
	var b strings.Builder
	for i, h := range l.Heights {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(itoa(h.Need))
	}
	return b.String()
}

// With 2.8 mm kerf and 20 mm trim a stick of 2400 mm has 2230 mm for blocks
// instead of 2225 mm and each cut takes 0.2 mm less: P2 needs 28 sound sticks
// instead of the reference's 29, and ⌈28 / 0.9⌉ = 32 instead of 33. P1 has
// room to spare in its last stick and stays at 13.
func TestThinnerKerfSavesAStick(t *testing.T) {
	p2 := estimate(t, withSaw(designtest.Job(t, "p2"), 2800, 20)).Lots[0]
	assert.Equal(t, []int{28, 32}, []int{p2.SticksBeforeDefects, p2.Sticks})
	p1 := estimate(t, withSaw(designtest.Job(t, "p1"), 2800, 20)).Lots[0]
	assert.Equal(t, []int{13, 15}, []int{p1.SticksBeforeDefects, p1.Sticks})
}

func withSaw(d design.Design, kerfUM, trimMM int64) design.Design {
	d.Bench.Kerf, d.Bench.EndTrim = length.Micrometres(kerfUM), length.MM(trimMM)
	return d
}

// Where the shop time of P2 goes, in minutes at typical rates: sanding ends
// 381, gluing 184.5, cutting 169.3, faces of 33 sticks 99, laying out 82,
// tidying 5 days of 15, brushing 2 coats of 1.612 m² 64.5, counting 42.3, rows
// 36, sorting 33. All are quantity × rate by hand; nobody has said what holds, so that
// four fixings count.
func TestTasksByHand(t *testing.T) {
	d := designtest.Job(t, "p2")
	unsaid(&d)
	minutes := map[string]float64{}
	for _, task := range estimate(t, d).Tasks {
		minutes[task.ID] = task.Minutes.Typical
	}
	for id, want := range map[string]float64{
		"d2": 381, "e4": 184.5, "c3": 169.33, "b2": 99, "e3": 82, "k1": 75, "f2": 64.47, "d3": 42.33, "e5": 36,
		"b1": 33, "c4": 25.4, "c2": 24, "g2": 55, "f1": 24, "f3": 8.06, "j1": 24, "j3": 60, "j4b": 10, "j7": 40,
	} {
		assert.InDelta(t, want, minutes[id], 0.01, id)
	}
}

// Elapsed shop days of the two reference panels, printed as 1.3 and 2.4 for a
// crew of two.
func TestShopDaysOfACrew(t *testing.T) {
	for name, want := range map[string][2]float64{"p1": {2.4, 1.3}, "p2": {4.3, 2.4}} {
		d := designtest.Job(t, name)
		unsaid(&d)
		for i, crew := range []int{1, 2} {
			d.Work.Crew = crew
			assert.InDelta(t, want[i], estimate(t, d).ShopDays.Typical, halfOf(0.1), "%s, %d people", name, crew)
		}
	}
}

func BenchmarkEstimate50x30(b *testing.B) {
	d := design.Default().Design
	d.Walls[0].Groups[0].Columns, d.Walls[0].Groups[0].Rows = 50, 30
	groups, p := built(b, d), pace()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := bench.Estimate(d, p, groups); err != nil {
			b.Fatal(err)
		}
	}
}
