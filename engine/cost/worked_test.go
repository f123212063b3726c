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
	lines map[string]int64
	sums  sums
	off   sums // ours less the reference's
	net   int64
	tax   int64
	gross int64
}

type sums struct{ boughtIn, labour, overhead, direct, cost int64 }

// strips is cleat stock: three lengths of the cleat, 90 mm high, and a tenth.
func strips(longMM, thickMM float64) int64 { return cost.Steps(3*longMM*90*thickMM*1.1, 1) }

func ply(name string, mm int64, n int) []cost.Sheet {
	return []cost.Sheet{{Sheet: name, Thickness: length.MM(mm), Count: n}}
}

func tin(name string, ml int64) []cost.Finish { return []cost.Finish{{Finish: name, VolumeML: ml}} }

func workedJobs() []worked {
	const inch = 25.4
	return []worked{
		{
			name: "P1",
			q: cost.Quantities{
				Squares: timber("beech", 15*2400*36*36), Boards: timber("beech", 3506.8*1.15*20*130),
				Sheets: ply("birch ply", 12, 1), Finishes: tin("waterborne varnish", 500),
				CleatMM3: strips(913.6, 18), GlueG: 207, CleatScrews: 6, WallFixings: 4, Brads: 20, CutBlocks: 550, Panels: 1,
				Shop: 52507, Office: 16800,
				Site: 11580, Travel: 9600, RoadM: 80_000,
			},
			m: design.Money{Tax: 20},
			lines: map[string]int64{
				"line/block-stock": 20062, "line/sheet": 7200, "line/glue": 1120, "line/finish": 1400,
				"line/frame-stock": 5872, "line/cleat-stock": 733, "line/fixings": 292, "line/abrasives": 1265,
				"line/packing": 900, "line/kilometres": 4400,
			},
			sums: sums{38843, 106055, 20420, 174380, 186586},
			off:  sums{boughtIn: 1, overhead: -1, direct: -1},
			net:  228000, tax: 45600, gross: 273600,
		},
		{
			name: "P2",
			q: cost.Quantities{
				Squares: timber("beech", 33*2400*36*36), Boards: timber("beech", 5244.4*1.15*20*130),
				Sheets: ply("birch ply", 12, 1), Finishes: tin("waterborne varnish", 1012),
				CleatMM3: strips(1384.2, 18), GlueG: 478, CleatScrews: 8, WallFixings: 7, Brads: 20, CutBlocks: 1270, Panels: 1,
				Shop: 93749, Office: 16800,
				Site: 12030, Travel: 9600, RoadM: 80_000,
			},
			m: design.Money{Tax: 20},
			lines: map[string]int64{
				"line/block-stock": 44137, "line/sheet": 7200, "line/glue": 1120, "line/finish": 3500,
				"line/frame-stock": 8781, "line/cleat-stock": 1110, "line/fixings": 451, "line/abrasives": 2921,
				"line/packing": 900, "line/kilometres": 4400,
			},
			sums: sums{70120, 154745, 36458, 274137, 293327},
			off:  sums{labour: 1, direct: 1, cost: 1},
			net:  358000, tax: 71600, gross: 429600,
		},
		{
			name: "S1, booth: 5 % discount",
			q: cost.Quantities{
				Squares: timber("pine", 10*2400*34*34), Boards: timber("pine", 3105.6*1.15*18*120),
				Sheets: ply("softwood ply", 12, 1), Finishes: tin("waterborne varnish", 423),
				CleatMM3: strips(789.2, 18), GlueG: 127, CleatScrews: 6, WallFixings: 4, Brads: 20, CutBlocks: 378, Panels: 1,
				Shop: 42399, Office: 16800,
				Travel: 1920, RoadM: 24_000,
			},
			m: design.Money{Tax: 20, Discount: 5},
			lines: map[string]int64{
				"line/block-stock": 3440, "line/sheet": 4600, "line/glue": 1120, "line/finish": 1400,
				"line/frame-stock": 2237, "line/cleat-stock": 633, "line/fixings": 292, "line/abrasives": 869,
				"line/packing": 900, "line/kilometres": 1320,
			},
			sums: sums{15492, 69652, 16489, 104812, 112149},
			off:  sums{boughtIn: -1, direct: -1, cost: -1},
			net:  130000, tax: 26000, gross: 156000,
		},
		{
			name: "S1 in spruce, without a survey",
			q: cost.Quantities{
				Squares: timber("spruce", 10*2400*34*34), Boards: timber("spruce", 3105.6*1.15*18*120),
				Sheets: ply("softwood ply", 12, 1), Finishes: tin("waterborne varnish", 423),
				CleatMM3: strips(789.2, 18), GlueG: 127, CleatScrews: 6, WallFixings: 4, Brads: 20, CutBlocks: 378, Panels: 1,
				Shop: 42399, Office: 13200,
				Travel: 960, RoadM: 12_000,
			},
			m: design.Money{Tax: 20, Discount: 5},
			lines: map[string]int64{
				"line/block-stock": 2497, "line/sheet": 4600, "line/glue": 1120, "line/finish": 1400,
				"line/frame-stock": 1851, "line/cleat-stock": 633, "line/fixings": 292, "line/abrasives": 869,
				"line/packing": 900, "line/kilometres": 660,
			},
			sums: sums{14163, 64626, 16489, 97637, 104471},
			off:  sums{boughtIn: -1, direct: -1},
			net:  122000, tax: 24400, gross: 146400,
		},
		{
			name: "S5, café: inches and cherry",
			q: cost.Quantities{
				Squares: timber("cherry", 13*120*1.75*1.75*inch*inch*inch), Boards: timber("cherry", 4924*1.15*0.75*5*inch*inch),
				Sheets: ply("birch ply", 12, 1), Finishes: tin("shellac", 911),
				CleatMM3: strips(1418.1, 0.75*inch), GlueG: 403, CleatScrews: 6, WallFixings: 4, Brads: 20, CutBlocks: 704, Panels: 1,
				Shop: 61656, Office: 16800,
				Site: 11580, Travel: 8640, RoadM: 72_000,
			},
			m: design.Money{Tax: 20},
			lines: map[string]int64{
				"line/block-stock": 53237, "line/sheet": 7200, "line/glue": 1120, "line/finish": 3400,
				"line/frame-stock": 11782, "line/cleat-stock": 1204, "line/fixings": 292, "line/abrasives": 1619,
				"line/packing": 900, "line/kilometres": 3960,
			},
			sums: sums{80753, 115502, 23977, 233883, 250255},
			off:  sums{boughtIn: 1},
			net:  306000, tax: 61200, gross: 367200,
		},
	}
}

func TestWorkedJobs(t *testing.T) {
	for _, w := range workedJobs() {
		t.Run(w.name, func(t *testing.T) {
			p, err := cost.Calculate(w.q, design.DefaultBook(), w.m)
			require.NoError(t, err)
			for key, want := range w.lines {
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

// The stages of both reference panels as they are printed: 50, 40 and 10 %.
func TestWorkedStages(t *testing.T) {
	want := map[string][]string{
		"P1": {"order 1368.00", "ready 1094.40", "hung 273.60"},
		"P2": {"order 2148.00", "ready 1718.40", "hung 429.60"},
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
	p, err := cost.Calculate(cost.Quantities{
		OwnBuild: true,
		Squares:  timber("poplar", 6*2400*44*44), Boards: timber("poplar", 2571.2*1.15*18*120),
		Sheets: ply("softwood ply", 12, 1), Finishes: tin("drying oil", 258),
		CleatMM3: strips(518.8, 18), GlueG: 114, CleatScrews: 6, WallFixings: 4, Brads: 20, CutBlocks: 204, Panels: 1,
		Shop: 31617, Office: 5400,
	}, design.DefaultBook(), design.Money{Tax: 20})
	require.NoError(t, err)
	for key, want := range map[string]int64{
		"line/block-stock": 9200, "line/sheet": 4600, "line/glue": 1120, "line/finish": 1500, "line/frame-stock": 2746,
		"line/cleat-stock": 416, "line/fixings": 292, "line/abrasives": 469, "line/packing": 0, "line/shop-hours": 0,
	} {
		assert.Equal(t, want, line(p, key), key)
	}
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
