package cost_test

import (
	"testing"

	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/money"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// timber is a volume out of lengths in mm.
func timber(wood string, mm3 float64) []cost.Timber {
	return []cost.Timber{{Wood: wood, VolumeMM3: cost.Steps(mm3, 1)}}
}

// worked is one of the reference jobs: its quantities by closed forms, and the
// lines and sums that a separate reference model of the trade printed for
// them, in cents.
//
// That model keeps fractions of a cent to the end and rounds what it prints;
// here lines are rounded and sums are sums of lines. So a sum may differ by
// the cents in off, and nothing else may: lines, net, tax and gross are equal
// to the cent. Seconds of work are whole here, which is below a cent a role.
type worked struct {
	name  string
	q     cost.Quantities
	m     design.Money
	lines lines
	sums  sums
	off   sums // ours less the reference's
	net   int64
	tax   int64
	gross int64
}

// lines are those of goods and road, in the order in which the reference prints
// them.
type lines struct{ sticks, sheet, glue, finish, frame, cleat, fixings, abrasives, packing, road int64 }

// keyed are the lines by their keys.
func (l lines) keyed() map[string]int64 {
	return map[string]int64{
		"line/block-stock": l.sticks, "line/sheet": l.sheet, "line/glue": l.glue, "line/finish": l.finish,
		"line/frame-stock": l.frame, "line/cleat-stock": l.cleat, "line/fixings": l.fixings, "line/abrasives": l.abrasives,
		"line/packing": l.packing, "line/kilometres": l.road,
	}
}

type sums struct{ boughtIn, labour, overhead, direct, cost int64 }

// strips is cleat stock: three lengths of the cleat, 90 mm high, and a tenth.
func strips(longMM, thickMM float64) int64 { return cost.Steps(3*longMM*90*thickMM*1.1, 1) }

func ply(name string, mm int64, n int) []cost.Sheet {
	return []cost.Sheet{{Sheet: name, Thickness: length.MM(mm), Count: n}}
}

func tin(name string, ml int64) []cost.Finish { return []cost.Finish{{Finish: name, VolumeML: ml}} }

// onePanel is what all the worked jobs have in common: one panel of one wood in
// blocks and frame, a sheet, and twenty brads. Sticks and boards are in mm³.
func onePanel(wood string, sticks, boards float64, sheet string) cost.Quantities {
	return cost.Quantities{
		Squares: timber(wood, sticks), Boards: timber(wood, boards), Sheets: ply(sheet, 12, 1),
		CleatScrews: 6, WallFixings: 4, Brads: 20, Panels: 1,
	}
}

func workedJobs() []worked {
	return []worked{firstPanel(), secondPanel(), booth(), spruceBooth(), cafe()}
}

func firstPanel() worked {
	q := onePanel("beech", 15*2400*36*36, 3506.8*1.15*20*130, "birch ply")
	q.Finishes, q.GlueG, q.CleatMM3, q.CutBlocks = tin("waterborne varnish", 500), 207, strips(913.6, 18), 550
	q.Shop, q.Office, q.Site, q.Travel, q.RoadM = 52507, 16800, 11580, 9600, 80_000
	return worked{
		name: "P1", q: q, m: design.Money{Tax: 20},
		lines: lines{20062, 7200, 1120, 1400, 5872, 733, 292, 1265, 900, 4400},
		sums:  sums{38843, 106055, 20420, 174380, 186586},
		off:   sums{boughtIn: 1, overhead: -1, direct: -1},
		net:   228000, tax: 45600, gross: 273600,
	}
}

func secondPanel() worked {
	q := onePanel("beech", 33*2400*36*36, 5244.4*1.15*20*130, "birch ply")
	q.Finishes, q.GlueG, q.CleatMM3, q.CutBlocks = tin("waterborne varnish", 1012), 478, strips(1384.2, 18), 1270
	q.CleatScrews, q.WallFixings = 8, 7
	q.Shop, q.Office, q.Site, q.Travel, q.RoadM = 93749, 16800, 12030, 9600, 80_000
	return worked{
		name: "P2", q: q, m: design.Money{Tax: 20},
		lines: lines{44137, 7200, 1120, 3500, 8781, 1110, 451, 2921, 900, 4400},
		sums:  sums{70120, 154745, 36458, 274137, 293327},
		off:   sums{labour: 1, direct: 1, cost: 1},
		net:   358000, tax: 71600, gross: 429600,
	}
}

func booth() worked {
	q := onePanel("pine", 10*2400*34*34, 3105.6*1.15*18*120, "softwood ply")
	q.Finishes, q.GlueG, q.CleatMM3, q.CutBlocks = tin("waterborne varnish", 423), 127, strips(789.2, 18), 378
	q.Shop, q.Office, q.Travel, q.RoadM = 42399, 16800, 1920, 24_000
	return worked{
		name: "S1, booth: 5 % discount", q: q, m: design.Money{Tax: 20, Discount: 5},
		lines: lines{3440, 4600, 1120, 1400, 2237, 633, 292, 869, 900, 1320},
		sums:  sums{15492, 69652, 16489, 104812, 112149},
		off:   sums{boughtIn: -1, direct: -1, cost: -1},
		net:   130000, tax: 26000, gross: 156000,
	}
}

// spruceBooth is the booth in another wood, and one trip less.
func spruceBooth() worked {
	w := booth()
	w.name, w.q.Office, w.q.Travel, w.q.RoadM = "S1 in spruce, without a survey", 13200, 960, 12_000
	w.q.Squares[0].Wood, w.q.Boards[0].Wood = "spruce", "spruce"
	w.lines.sticks, w.lines.frame, w.lines.road = 2497, 1851, 660
	w.sums, w.off = sums{14163, 64626, 16489, 97637, 104471}, sums{boughtIn: -1, direct: -1}
	w.net, w.tax, w.gross = 122000, 24400, 146400
	return w
}

func cafe() worked {
	const inch = 25.4
	q := onePanel("cherry", 13*120*1.75*1.75*inch*inch*inch, 4924*1.15*0.75*5*inch*inch, "birch ply")
	q.Finishes, q.GlueG, q.CleatMM3, q.CutBlocks = tin("shellac", 911), 403, strips(1418.1, 0.75*inch), 704
	q.Shop, q.Office, q.Site, q.Travel, q.RoadM = 61656, 16800, 11580, 8640, 72_000
	return worked{
		name: "S5, café: inches and cherry", q: q, m: design.Money{Tax: 20},
		lines: lines{53237, 7200, 1120, 3400, 11782, 1204, 292, 1619, 900, 3960},
		sums:  sums{80753, 115502, 23977, 233883, 250255},
		off:   sums{boughtIn: 1},
		net:   306000, tax: 61200, gross: 367200,
	}
}

func TestWorkedJobs(t *testing.T) {
	for _, w := range workedJobs() {
		t.Run(w.name, func(t *testing.T) {
			p, err := cost.Calculate(w.q, design.DefaultBook(), w.m)
			require.NoError(t, err)
			for key, want := range w.lines.keyed() {
				assert.Equal(t, want, line(p, key), key)
			}
			got := sums{p.BoughtIn.Minor, p.Labour.Minor, p.Overhead.Minor, p.Direct.Minor, p.Cost.Minor}
			assert.Equal(t, w.sums.boughtIn+w.off.boughtIn, got.boughtIn, "bought in")
			assert.Equal(t, w.sums.labour+w.off.labour, got.labour, "labour")
			assert.Equal(t, w.sums.overhead+w.off.overhead, got.overhead, "overhead")
			assert.Equal(t, w.sums.direct+w.off.direct, got.direct, "direct")
			assert.Equal(t, w.sums.cost+w.off.cost, got.cost, "cost")
			assert.Equal(t, []int64{w.net, w.tax, w.gross}, []int64{p.Net.Minor, p.Tax.Minor, p.Gross.Minor})
			assert.True(t, p.Sold && p.Placeholder)
		})
	}
}

// The stages of both reference panels as they are printed: 50, 40 and 10 %. The last has
// another name in the example book, one that is true of a job that others hang too.
func TestWorkedStages(t *testing.T) {
	want := map[string][]string{
		"P1": {"order 1368.00", "ready 1094.40", "handed over 273.60"},
		"P2": {"order 2148.00", "ready 1718.40", "handed over 429.60"},
	}
	for _, w := range workedJobs()[:2] {
		p, err := cost.Calculate(w.q, design.DefaultBook(), w.m)
		require.NoError(t, err)
		var got []string
		for _, s := range p.Stages {
			got = append(got, s.Name+" "+s.Amount.Plain())
		}
		assert.Equal(t, want[w.name], got)
	}
}

// The home builder of the reference jobs: 92.00 + 46 + 11.20 + 15.00 + 27.46 +
// 4.16 + 2.92 + 4.69 = 203.43, no packing and nothing sold.
func TestWorkedHomeBuilder(t *testing.T) {
	q := onePanel("poplar", 6*2400*44*44, 2571.2*1.15*18*120, "softwood ply")
	q.OwnBuild, q.Finishes, q.GlueG, q.CleatMM3, q.CutBlocks = true, tin("drying oil", 258), 114, strips(518.8, 18), 204
	q.Shop, q.Office = 31617, 5400
	p, err := cost.Calculate(q, design.DefaultBook(), design.Money{Tax: 20})
	require.NoError(t, err)
	for key, want := range (lines{9200, 4600, 1120, 1500, 2746, 416, 292, 469, 0, 0}).keyed() {
		assert.Equal(t, want, line(p, key), key)
	}
	assert.Zero(t, line(p, "line/shop-hours"))
	assert.Equal(t, "203.43", p.Materials.Plain())
	assert.Equal(t, p.Materials, p.BoughtIn)
	assert.False(t, p.Sold)
	assert.Zero(t, p.Net)
	assert.Zero(t, p.Gross)
	assert.Zero(t, p.High)
	assert.Empty(t, p.Stages)
}

func line(p cost.Price, key string) int64 {
	var total money.Money
	for _, l := range p.Lines {
		if l.Key == key {
			total = total.Add(l.Amount)
		}
	}
	return total.Minor
}

func BenchmarkCalculate(b *testing.B) {
	q, book := workedJobs()[1].q, design.DefaultBook()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := cost.Calculate(q, book, design.Money{Tax: 20, Discount: 5}); err != nil {
			b.Fatal(err)
		}
	}
}
