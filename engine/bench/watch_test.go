package bench_test

import (
	"strings"
	"testing"

	"blockfield/engine/bench"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// watched is small with everything in order: thick enough blocks, measured
// sticks, a carrier and long sticks that are used up.
func watched() design.Design {
	d := small()
	d.Bench.Carrier, d.Bench.GlueOpenMinutes, d.Bench.Temperature = true, 8, 18
	d.Bench.Spares, d.Bench.SparesLeast, d.Bench.Defects = 0, 0, 0
	d.Bench.StickLength, d.Bench.HoldTail, d.Bench.EndTrim = length.MM(900), length.MM(150), length.MM(0)
	g := &d.Walls[0].Groups[0]
	g.Block.Measured = true
	g.Heights = []length.Length{length.MM(0), length.MM(100), length.MM(115)}
	return d
}

func watch(t *testing.T, d design.Design, p bench.Pace) map[string]check.WatchOut {
	t.Helper()
	groups := built(t, d)
	bill, err := bench.Estimate(d, p, groups)
	require.NoError(t, err)
	out := map[string]check.WatchOut{}
	for _, w := range bill.WatchOuts(d, groups) {
		out[w.Code] = w
	}
	return out
}

// edge is a design on either side of a limit.
type edge struct {
	name   string
	change func(*design.Design, *design.Group)
	fires  string // or empty
	level  check.Level
	gate   check.Gate
}

// Each limit with a case on either side. The limits are common practice of the
// trade without a source; sums are by hand.
func TestLimitsOfBenchWatchOuts(t *testing.T) {
	mm, um := length.MM, length.Micrometres
	heights := func(first length.Length) func(*design.Design, *design.Group) {
		return func(_ *design.Design, g *design.Group) { g.Heights[1] = first }
	}
	size := func(columns, rows, wide int) func(*design.Design, *design.Group) {
		return func(_ *design.Design, g *design.Group) {
			g.Pattern = design.Pattern{Kind: design.Shuffled, Seed: 1, Clump: 1}
			g.Columns, g.Rows, g.PanelsWide = columns, rows, wide
		}
	}
	const caution, note, stop = check.Caution, check.Note, check.Stop
	for _, e := range []edge{
		{"all in order", func(*design.Design, *design.Group) {}, "", 0, ""},

		{"not measured", func(_ *design.Design, g *design.Group) { g.Block.Measured = false }, "bench/not-measured", caution, check.Cut},

		{"25 mm can be held", heights(mm(25)), "", 0, ""},
		{"less cannot", heights(um(24_999)), "bench/short-block", caution, check.Cut},
		{"12 mm takes a carrier", heights(mm(12)), "bench/short-block", caution, check.Cut},
		{"less is a Stop", heights(um(11_999)), "bench/tiny-block", stop, check.Cut},
		{"a height that no cell has is not cut", func(_ *design.Design, g *design.Group) {
			g.Heights[1], g.Pattern.Drawn = mm(5), []string{"0222", "2220"}
		}, "", 0, ""},

		{"a tail of 150 mm without a carrier", func(d *design.Design, _ *design.Group) { d.Bench.Carrier = false }, "", 0, ""},
		{"a shorter one", func(d *design.Design, _ *design.Group) {
			d.Bench.Carrier, d.Bench.HoldTail = false, um(149_999)
		}, "bench/short-tail", stop, check.Cut},
		{"a shorter one in a carrier", func(d *design.Design, _ *design.Group) { d.Bench.HoldTail = mm(40) }, "", 0, ""},

		// 3 × 100 + 3 × 115 = 645 mm out of one stick of 900: 28.3 % left over.
		// 65 % is a stick of 992.3 mm.
		{"34.98 % of a stick is left", func(d *design.Design, _ *design.Group) { d.Bench.StickLength = mm(992) }, "", 0, ""},
		{"35.05 % of a stick is left", func(d *design.Design, _ *design.Group) { d.Bench.StickLength = mm(993) }, "bench/waste", note, check.NoGate},

		// A usable sheet is 1210 × 2430, a backer is 10 mm larger each way: 24 cells
		// of 50 mm are 1210, 48 are 2410.
		{"the largest backer out of a sheet", size(24, 48, 1), "", 0, ""},
		{"a thousandth more", func(d *design.Design, g *design.Group) {
			d.Bench.BackerOversize = um(10_001)
			size(24, 48, 1)(d, g)
		}, "bench/sheet-too-small", stop, check.Buy},
		{"wider than a sheet, both ways", size(25, 25, 1), "bench/sheet-too-small", stop, check.Buy},
		{"longer than a sheet", size(24, 49, 1), "bench/sheet-too-small", stop, check.Buy},
		{"across the grain of a sheet that runs up the panel", func(d *design.Design, g *design.Group) {
			d.Bench.BackerGrain = design.GrainUp
			size(30, 20, 1)(d, g)
		}, "bench/sheet-too-small", stop, check.Buy},
		{"along a grain that runs across the panel", func(d *design.Design, g *design.Group) {
			d.Bench.BackerGrain = design.GrainAcross
			size(30, 20, 1)(d, g)
		}, "", 0, ""},

		// Two of 24 rows are 2 × 1210 + 3 of 2430 mm; with 25 rows only one comes out.
		{"two backers a sheet", size(23, 24, 2), "", 0, ""},
		{"one backer a sheet", size(23, 25, 2), "bench/one-a-sheet", note, check.NoGate},
		{"one backer a sheet, of a single panel", size(23, 25, 1), "", 0, ""},

		{"a shop of 10 °C", func(d *design.Design, _ *design.Group) { d.Bench.Temperature = 10 }, "", 0, ""},
		{"a colder shop", func(d *design.Design, _ *design.Group) { d.Bench.Temperature = 9.9 }, "bench/cold-shop", caution, check.NoGate},

		{"rags with drying oil", func(_ *design.Design, g *design.Group) { g.Finish.Kind = "drying oil" }, "bench/oily-rags", caution, check.NoGate},
		// A hard-wax oil is a drying oil with wax in it: it hardens by taking up
		// oxygen and warms its rags in the same way, whatever a list may leave out.
		{"rags with hard-wax oil", func(_ *design.Design, g *design.Group) { g.Finish.Kind = "hard-wax oil" }, "bench/oily-rags", caution, check.NoGate},
		{"oil without a coat", func(_ *design.Design, g *design.Group) { g.Finish.Kind, g.Finish.Coats = "drying oil", 0 }, "", 0, ""},
		{"oil on the frame alone", func(_ *design.Design, g *design.Group) {
			g.Frame.Joint, g.Frame.Board = design.Mitred, mm(200)
			g.Finish = design.Finish{Kind: "drying oil", FrameCoats: 1}
		}, "bench/oily-rags", caution, check.NoGate},
		{"rags with varnish", func(_ *design.Design, g *design.Group) { g.Finish.Kind = "waterborne varnish" }, "", 0, ""},
	} {
		t.Run(e.name, func(t *testing.T) {
			d := watched()
			e.change(&d, &d.Walls[0].Groups[0])
			got := watch(t, d, withoutSanding())
			delete(got, "bench/glue-skins") // long rows of large fields; it has a test of its own
			delete(got, "bench/split")      // so has the mass of large fields
			if !strings.Contains(e.name, "of a stick") {
				delete(got, "bench/waste") // follows every height
			}
			if e.fires == "" {
				assert.Empty(t, got)
				return
			}
			require.Contains(t, got, e.fires)
			assert.Len(t, got, 1, "nothing else")
			assert.Equal(t, e.level, got[e.fires].Level)
			assert.Equal(t, e.gate, got[e.fires].Gate)
			assert.False(t, got[e.fires].Evidence, "the maker may sign it off")
		})
	}
}

// withoutSanding is the placeholder's pace without the tasks of the sander.
func withoutSanding() bench.Pace {
	p := pace()
	p.Tasks = nil
	for _, task := range pace().Tasks {
		if task.ID != "b2" && task.ID != "d2" {
			p.Tasks = append(p.Tasks, task)
		}
	}
	return p
}

// By Directive 2002/44/EC, 8 h × (2.5 / 5)² = 2 h a day. Six blocks at 20 min
// are two hours; more than that are two days.
func TestSandingTime(t *testing.T) {
	for _, c := range []struct {
		rate float64
		days int
	}{{20, 0}, {20.001, 2}, {40, 2}, {40.001, 3}} {
		p := bench.Pace{SpeedKmh: 45, Tasks: []design.Task{{ID: "d2", Role: "shop", Per: "cut block", Unit: "min", Typical: c.rate}}}
		got, fires := watch(t, watched(), p)["bench/sanding-time"]
		assert.Equal(t, c.days > 0, fires, "%v min", c.rate)
		if fires {
			assert.Equal(t, c.days, got.Args["days"])
			assert.Contains(t, got.Source, "2002/44/EC")
		}
	}
}

// Three blocks in the fullest row at 28 s are 84 s, which is 0.7 of 2 min; a
// design takes no glue below 3 min, but the rule does. At 42 s they are 126 of
// 180 s.
func TestGlueSkins(t *testing.T) {
	d := watched()
	d.Bench.GlueOpenMinutes = 3
	for _, c := range []struct {
		rate  float64
		fires bool
		fix   string
	}{{42, false, ""}, {42.1, true, "4"}, {280, true, "20"}, {281, true, ""}} {
		p := bench.Pace{SpeedKmh: 45, Tasks: []design.Task{{ID: "e4", Role: "shop", Per: "glued block", Unit: "s", Typical: c.rate}}}
		got, fires := watch(t, d, p)["bench/glue-skins"]
		assert.Equal(t, c.fires, fires, "%v s", c.rate)
		switch {
		case c.fix != "":
			require.NotNil(t, got.Fix)
			assert.Equal(t, check.Fix{Path: "bench.glueOpenMinutes", Value: c.fix}, *got.Fix)
		case fires:
			assert.Nil(t, got.Fix, "no glue stays open for that long")
			assert.Equal(t, 1, got.Args["blocks"])
		}
	}
	p := bench.Pace{SpeedKmh: 45, Tasks: []design.Task{{ID: "e4", Role: "shop", Per: "glued block", Unit: "s", Typical: 60}}}
	got := watch(t, d, p)["bench/glue-skins"]
	assert.Equal(t, []any{180, 180, 126, 2}, []any{got.Args["row"], got.Args["open"], got.Args["safe"], got.Args["blocks"]})
}

// What is offered is the smallest change, typed in the notation of the field.
func TestFixesOfTheBench(t *testing.T) {
	inch := func(n, of int64) length.Length { return length.Sixtyfourths(n * 64 / of) }
	for _, c := range []struct {
		name   string
		change func(*design.Design, *design.Group)
		code   string
		fix    string // path: value, or empty
	}{
		{"the block that is too short", func(_ *design.Design, g *design.Group) { g.Heights[1] = length.MM(20) },
			"bench/short-block", "heights: 0 mm, 25 mm, 115 mm"},
		{"in inches", func(_ *design.Design, g *design.Group) { g.Heights[1] = inch(1, 2) },
			"bench/short-block", "heights: 0 mm, 1 in, 115 mm"},
		{"no room below the next height", func(_ *design.Design, g *design.Group) {
			g.Heights[1], g.Heights[2] = length.MM(20), length.MM(25)
		}, "bench/short-block", ""},
		{"a tail in inches", func(d *design.Design, _ *design.Group) { d.Bench.Carrier, d.Bench.HoldTail = false, inch(4, 1) },
			"bench/short-tail", "bench.holdTail: 5 15/16 in"},
		// 645 of 1000 mm: 35.5 % left. 1800 and 2000 mm hold it in one stick too
		// and leave more; none is better.
		{"no better stick", func(d *design.Design, _ *design.Group) { d.Bench.StickLength = length.MM(1000) }, "bench/waste", ""},
		// 25 × 49 cells: two panels are 13 × 49 or 25 × 25, still larger than 1210
		// or 2430 mm; three of 25 × 17 take 1263 × 863.
		{"three panels instead of one", func(_ *design.Design, g *design.Group) {
			g.Pattern = design.Pattern{Kind: design.Shuffled, Seed: 1, Clump: 1}
			g.Columns, g.Rows, g.Width, g.Height = 0, 0, length.MM(1250), length.MM(2450)
			g.Density = 100 // so that two people can take a third of it
		}, "bench/sheet-too-small", "panelsHigh: 3"},
		{"fewer columns", func(_ *design.Design, g *design.Group) {
			g.Pattern = design.Pattern{Kind: design.Shuffled, Seed: 1, Clump: 1}
			g.Columns, g.Rows, g.PanelsWide = 12, 40, 2
		}, "bench/one-a-sheet", "columns: 11"},
		{"giving up a fifth is another panel", func(_ *design.Design, g *design.Group) {
			g.Pattern = design.Pattern{Kind: design.Shuffled, Seed: 1, Clump: 1}
			g.Columns, g.Rows, g.PanelsWide = 14, 40, 2
		}, "bench/one-a-sheet", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := watched()
			c.change(&d, &d.Walls[0].Groups[0])
			got := watch(t, d, withoutSanding())
			require.Contains(t, got, c.code)
			if c.fix == "" {
				assert.Nil(t, got[c.code].Fix)
				return
			}
			require.NotNil(t, got[c.code].Fix)
			assert.Contains(t, got[c.code].Fix.Path+": "+got[c.code].Fix.Value, c.fix)
		})
	}
}
