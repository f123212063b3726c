package bench_test

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func itoa(n int) string { return strconv.Itoa(n) }

// small is a job whose every figure is worked by hand below: 4 × 2 cells of
// 50 mm without slack, bare, 20 and 40 mm, no frame, one coat.
func small() design.Design {
	d := design.Default().Design
	d.Bench = design.Bench{
		StickLength: length.MM(900), Kerf: length.MM(3), EndTrim: length.MM(50), HoldTail: length.MM(250),
		Defects: 10, Spares: 3, SparesLeast: 2,
		BackerOversize: length.MM(10), BackerGrain: design.AnyGrain, Trim: design.TrimBacker, SawDepth: length.MM(65),
	}
	g := &d.Walls[0].Groups[0]
	g.Columns, g.Rows = 4, 2
	g.Block = design.Block{Size: length.MM(50)}
	g.Heights = []length.Length{length.MM(0), length.MM(20), length.MM(40)}
	g.Pattern = design.Pattern{Kind: design.Drawn, Drawn: []string{"0112", "2210"}}
	g.Wood, g.Density = "beech", 700
	g.Backer = design.Backer{Sheet: "birch ply", Thickness: length.MM(12)}
	g.Frame.Joint = design.NoFrame
	g.Finish = design.Finish{Kind: "shellac", Coats: 1, FrameCoats: 1}
	g.Cleat.Thickness = length.MM(18)
	return d
}

func TestSmallJobByHand(t *testing.T) {
	b := estimate(t, small())

	// 8 cells, 2 bare; 3 + 2 spare of each height.
	assert.Equal(t, []int{1, 0, 8, 6, 10}, []int{b.Panels, b.Frames, b.Cells, b.Blocks, b.CutBlocks})
	lot := b.Lots[0]
	assert.Equal(t, []bench.HeightCount{
		{Height: length.MM(20), Need: 3, Spare: 2, Cut: 5},
		{Height: length.MM(40), Need: 3, Spare: 2, Cut: 5},
	}, lot.Heights)
	// Σ (h + 3) = 5·23 + 5·43 = 330 ≤ 900 − 50 − 250 + 3: one stick; ⌈1 / 0.9⌉ = 2.
	assert.Equal(t, []int{1, 2}, []int{lot.SticksBeforeDefects, lot.Sticks})
	assert.InDelta(t, 2*0.9*0.05*0.05, lot.BoughtM3, 1e-12)
	assert.InDelta(t, (3*0.02+3*0.04)*0.05*0.05, lot.BlocksM3, 1e-12)
	assert.InDelta(t, 10, lot.UsedPercent, 1e-9, "180 of 1800 mm")

	// Backer 200 × 100, cut as 210 × 110 with a kerf each out of 1210 + 3 × 2430 + 3:
	// 5 × 21 or 10 × 11.
	require.Len(t, b.Sheets, 1)
	assert.Equal(t, []any{"birch ply", "12 mm", 1, 110, false},
		[]any{b.Sheets[0].Sheet, b.Sheets[0].Thickness.String(), b.Sheets[0].Count, b.Sheets[0].PerSheet, b.Sheets[0].TooLarge})
	assert.Equal(t, []bench.Backer{{Width: length.MM(210), Height: length.MM(110), Count: 1}}, b.Sheets[0].Backers)
	assert.InDelta(t, 6*0.0025*0.30, b.GlueKg, 1e-12)

	// Steps, mm: along the rows 20 + 0 + 20 and 0 + 20 + 20, down the columns
	// 40 + 20 + 0 + 40 make 180 × 50 mm of sides; two bare cells.
	litres := (6*0.0025/4.5 + (0.6*0.180*0.050+2*0.0025)/11) * 1.15
	require.Len(t, b.Finishes, 1)
	assert.InDelta(t, litres, b.Finishes[0].Litres, 1e-12)
	assert.Zero(t, b.Finishes[0].FrameLitres)
	assert.Empty(t, b.Frame)

	// The cleat is half the field long, since 200 − 100 is not more.
	assert.InDelta(t, 3*0.100, b.Cleat.RunningM, 1e-12)
	assert.InDelta(t, 3*0.100*0.090*0.018*1.1, b.Cleat.BoughtM3, 1e-12)

	// Blocks 0.18 m × 0.0025 m² × 700, backer 0.02 m² × 12 mm × 680, cleat and
	// spacer 0.1 m × 120 × 18 mm × 480.
	added := 0.5*6*0.0025*0.30 + 0.4*litres
	assert.InDelta(t, added, b.Groups[0].AddedKg, 1e-12)
	assert.InDelta(t, 0.18*0.0025*700+0.02*0.012*680+0.1*0.120*0.018*480+added, b.HeaviestKg, 1e-9)
	assert.Equal(t, []int{6, 4, 0}, []int{b.CleatScrews, b.WallFixings, b.Brads})
	assert.InDelta(t, 27, b.GlueRowSeconds, 1e-9, "3 blocks in either row, 9 s each")
}

// A longer coat list drinks by the second coverage: 9 m² of end grain and 13 of
// long grain for a litre.
func TestSecondCoatDrinksLess(t *testing.T) {
	d := small()
	one := estimate(t, d).Finishes[0].Litres
	d.Walls[0].Groups[0].Finish.Coats = 3
	three := estimate(t, d).Finishes[0].Litres
	next := (6*0.0025/9 + (0.6*0.180*0.050+2*0.0025)/13) * 1.15
	assert.InDelta(t, one+2*next, three, 1e-12)
}

func TestWithoutFinish(t *testing.T) {
	d := design.Default().Design
	d.Walls[0].Groups[0].Finish = design.Finish{Kind: "none", Coats: 2, FrameCoats: 2}
	b := estimate(t, d)
	assert.Empty(t, b.Finishes)
	for _, task := range b.Tasks {
		assert.NotContains(t, []string{"f1", "f2", "f3", "g4"}, task.ID)
	}
}

// bothWalls is one group on each of two walls.
func bothWalls(first, second design.Group) design.Design {
	d := design.Default().Design
	other := d.Walls[0]
	d.Walls[0].Groups = []design.Group{first}
	other.Groups = []design.Group{second}
	d.Walls = append(d.Walls, other)
	return d
}

// Two groups of one panel buy and cut like one group of two.
func TestGroupsArePooled(t *testing.T) {
	g := design.Default().Design.Walls[0].Groups[0]
	g.Columns, g.Rows = 20, 15
	apart := estimate(t, bothWalls(g, g))
	pair := g
	pair.PanelsWide = 2
	d := design.Default().Design
	d.Walls[0].Groups = []design.Group{pair}
	together := estimate(t, d)

	require.Len(t, apart.Lots, 1)
	assert.Equal(t, together.Lots, apart.Lots)
	assert.Equal(t, together.Sheets, apart.Sheets)
	assert.Equal(t, together.CutBlocks, apart.CutBlocks)
	assert.InDelta(t, together.GlueKg, apart.GlueKg, 1e-12)
	assert.InDelta(t, together.Frame[0].BoughtM3, apart.Frame[0].BoughtM3, 1e-12)
	assert.InDelta(t, together.Finishes[0].Litres, apart.Finishes[0].Litres, 1e-12)
	assert.InDelta(t, together.Hours.Total.Typical, apart.Hours.Total.Typical, 1e-9)
	assert.InDelta(t, together.TotalKg, apart.TotalKg, 1e-9)
}

func TestStockLots(t *testing.T) {
	g := design.Default().Design.Walls[0].Groups[0]
	g.Columns, g.Rows = 20, 15
	for _, c := range []struct {
		name   string
		change func(*design.Group)
		lots   int
	}{
		{"like sticks are one lot", func(*design.Group) {}, 1},
		{"heights may differ, the stick is the same", func(g *design.Group) {
			g.Heights = []length.Length{length.MM(26), length.MM(50), length.MM(70), length.MM(92)}
		}, 1},
		{"the same section written in inches", func(g *design.Group) {
			g.Block.Size = length.Nanometres(36_000_000, length.InInch)
		}, 1},
		{"another wood", func(g *design.Group) { g.Wood = "oak" }, 2},
		{"another section", func(g *design.Group) { g.Block.Size = length.MM(40) }, 2},
	} {
		second := g
		c.change(&second)
		got := estimate(t, bothWalls(g, second))
		assert.Len(t, got.Lots, c.lots, c.name)
		cut := 0
		for _, lot := range got.Lots {
			assert.True(t, slices.IsSortedFunc(lot.Heights, func(a, b bench.HeightCount) int {
				return a.Height.Cmp(b.Height)
			}), c.name)
			for _, h := range lot.Heights {
				cut += h.Cut
			}
		}
		assert.Equal(t, got.CutBlocks, cut, c.name)
	}
}

// Sticks to buy are the fewest whose sound share is enough, and more waste does
// not save any.
func TestSticksFollowWaste(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	mm := func(low, high int) length.Length { return length.MM(int64(low + rnd.IntN(high-low))) }
	for range 60 {
		d := design.Default().Design
		d.Walls[0].Groups[0].Columns, d.Walls[0].Groups[0].Rows = 5+rnd.IntN(20), 5+rnd.IntN(20)
		d.Bench.StickLength = mm(1200, 4000)
		before := estimate(t, d).Lots[0]
		for name, change := range map[string]func(*design.Bench){
			"defects": func(b *design.Bench) { b.Defects += 7.3 },
			"spares":  func(b *design.Bench) { b.SparesLeast += 3 },
			"tail":    func(b *design.Bench) { b.HoldTail = b.HoldTail.Add(length.MM(100)) },
		} {
			worse := d
			change(&worse.Bench)
			after := estimate(t, worse).Lots[0]
			require.True(t, before.Proven, "the fewest sticks")
			assert.GreaterOrEqual(t, after.Sticks, before.Sticks, name)
			if name == "defects" {
				assert.Equal(t, before.SticksBeforeDefects, after.SticksBeforeDefects)
			}
			sound := float64(after.Sticks) * (1 - worse.Bench.Defects/100)
			assert.GreaterOrEqual(t, sound+1e-9, float64(after.SticksBeforeDefects), name)
			assert.Less(t, sound-(1-worse.Bench.Defects/100), float64(after.SticksBeforeDefects), "not one too many")
		}
	}
}

func TestSpares(t *testing.T) {
	d := design.Default().Design
	d.Bench.Spares, d.Bench.SparesLeast = 3, 2
	for _, h := range estimate(t, d).Lots[0].Heights {
		// By hand: ⌈0.03 × need⌉ in integers, at least 2.
		assert.Equal(t, max(2, (3*h.Need+99)/100), h.Spare)
		assert.Equal(t, h.Need+h.Spare, h.Cut)
	}
	d.Bench.Spares, d.Bench.SparesLeast = 0, 0
	assert.Equal(t, 726, estimate(t, d).CutBlocks)
}

// A backer that comes just twice out of the width of a sheet: 2 × 603.5 and one
// cut of 3 between them are 1210. The reference adds a cut to each and stops at
// 592 mm; the second is among the 10 mm that it takes off the sheet's edges. 604 mm
// comes out once either way (it needs 1231).
func TestSheets(t *testing.T) {
	for _, c := range []struct {
		name          string
		pitchUM       int64
		columns, rows int
		panels        int
		count, per    int
		tooLarge      bool
	}{
		{"592 mm wide: 2 × 602 + 3 in 1210", 37_000, 16, 33, 4, 2, 2, false},
		{"593.5 mm wide: 2 × 603.5 + 3 in 1210", 29_675, 20, 42, 4, 2, 2, false},
		{"593.6 mm wide: 2 × 603.6 + 3 are too much", 29_680, 20, 42, 4, 4, 1, false},
		{"600 × 1140 mm, three across the sheet: 3 × 610 + 2 × 3 in 2430", 30_000, 20, 38, 4, 2, 3, false},
		{"604 × 1782 mm, once in the width", 30_200, 20, 59, 4, 4, 1, false},
		{"larger than a sheet: two of them each", 50_000, 30, 30, 3, 6, 0, true},
	} {
		d := design.Default().Design
		g := &d.Walls[0].Groups[0]
		g.Block = design.Block{Size: length.Micrometres(c.pitchUM)}
		g.Columns, g.Rows, g.PanelsWide = c.columns, c.rows, c.panels
		b := estimate(t, d)
		require.Len(t, b.Sheets, 1)
		assert.Equal(t, c.count, b.Sheets[0].Count, c.name)
		assert.Equal(t, c.per, b.Sheets[0].PerSheet, c.name)
		assert.Equal(t, c.tooLarge, b.Sheets[0].TooLarge, c.name)
	}
}

// Frame board of P1 by hand: 2 × 1059.6 + 2 × (687.8 + 2 × 3) = 3506.8 mm in the
// frame, 15 % more bought, 20 × 130 mm; its cleat strips are 1013.6 − 100 long.
func TestFrameAndCleatByHand(t *testing.T) {
	b := estimate(t, designtest.Job(t, "p1"))
	require.Len(t, b.Frame, 1)
	assert.InDelta(t, 3.5068, b.Frame[0].NeedM, 1e-9)
	assert.InDelta(t, 3.5068*1.15*0.020*0.130, b.Frame[0].BoughtM3, 1e-12)
	assert.InDelta(t, 3*0.9136, b.Cleat.RunningM, 1e-9)
	assert.Equal(t, 20, b.Brads)

	d := bothWalls(designtest.Job(t, "p1").Walls[0].Groups[0], designtest.Job(t, "p1").Walls[0].Groups[0])
	d.Walls[1].Groups[0].Frame.Board = length.MM(140)
	assert.Len(t, estimate(t, d).Frame, 2, "boards of another width are bought apart")
}

// What holds the panels is asked for each group when its mass is known, and counted for
// all its panels. Where nobody answers, the least counts; where nothing goes into the
// wall, no hour is spent there.
func TestWhatHoldsIsAsked(t *testing.T) {
	d := design.Default().Design
	d.Walls[0].Groups[0].PanelsWide = 2
	b := estimate(t, d)
	assert.Equal(t, []any{12, 8, bench.NotChecked}, []any{b.CleatScrews, b.WallFixings, b.Groups[0].Rule})
	p := pace()
	var asked []float64
	p.Holds = func(group int, kg float64) bench.Held {
		assert.Zero(t, group)
		asked = append(asked, kg)
		return bench.Held{CleatScrews: 11, WallFixings: 9, Rule: bench.PublishedRules}
	}
	held := estimateWith(t, d, p)
	assert.Equal(t, []float64{b.HeaviestKg}, asked)
	assert.Equal(t, []any{22, 18, bench.PublishedRules}, []any{held.CleatScrews, held.WallFixings, held.Groups[0].Rule})
	assert.InDelta(t, b.Cleat.RunningM, held.Cleat.RunningM, 1e-12)
	p.Holds = func(int, float64) bench.Held { return bench.Held{CleatScrews: 6, Rule: bench.NoFixings} }
	for _, task := range estimateWith(t, d, p).Tasks {
		assert.NotEqual(t, "j4a", task.ID, "no wall cleat without a wall")
	}
}

// A strip in the wall that is higher than those of the shop is a board of its own: a
// third of the running length less, and the strip's area with a tenth of waste.
func TestHighStripsAreBoards(t *testing.T) {
	d := small()
	low := estimate(t, d)
	p := pace()
	p.Holds = func(int, float64) bench.Held { return bench.Held{CleatScrews: 6, WallFixings: 4, StripM2: 0.05} }
	high := estimateWith(t, d, p)
	assert.InDelta(t, 2*0.100, high.Cleat.RunningM, 1e-12)
	assert.InDelta(t, low.Cleat.BoughtM3*2/3+0.05*0.018*1.1, high.Cleat.BoughtM3, 1e-12)
}

// What the job says of who does what, in hours at typical rates.
func TestWorkRules(t *testing.T) {
	base := estimate(t, design.Default().Design)
	for _, c := range []struct {
		name   string
		change func(*design.Work)
		check  func(t *testing.T, h, was bench.Hours, b bench.Bill)
	}{
		{"not hung: no site, one driver", func(w *design.Work) { w.Hung = false }, func(t *testing.T, h, was bench.Hours, b bench.Bill) {
			assert.Zero(t, h.Site)
			assert.InDelta(t, 40.0/45*2, h.Travel.Typical, 1e-9, "survey and delivery, 20 km each way")
			assert.InDelta(t, 80, b.RoadKm, 1e-9)
		}},
		{"fetched: the survey alone", func(w *design.Work) { w.Hung, w.Delivered = false, false }, func(t *testing.T, h, was bench.Hours, b bench.Bill) {
			assert.InDelta(t, 40.0/45, h.Travel.Typical, 1e-9)
			assert.InDelta(t, 40, b.RoadKm, 1e-9)
		}},
		{"no survey: an hour less in the office", func(w *design.Work) { w.Survey = false }, func(t *testing.T, h, was bench.Hours, b bench.Bill) {
			assert.InDelta(t, was.Office.Typical-1, h.Office.Typical, 1e-9)
			assert.InDelta(t, 40.0/45*2, h.Travel.Typical, 1e-9, "a crew of two")
		}},
		{"own build: 30 minutes of pictures and an hour of buying", func(w *design.Work) { w.OwnBuild, w.Hung = true, false }, func(t *testing.T, h, was bench.Hours, b bench.Bill) {
			assert.InDelta(t, 1.5, h.Office.Typical, 1e-9)
			assert.InDelta(t, was.Shop.Typical-0.25, h.Shop.Typical, 1e-9, "nothing is wrapped")
			assert.Zero(t, h.Travel)
			assert.Zero(t, b.RoadKm)
		}},
		{"three people on site", func(w *design.Work) { w.Crew = 3 }, func(t *testing.T, h, was bench.Hours, b bench.Bill) {
			assert.InDelta(t, was.Site.Typical+(12+30+12+20)/60.0, h.Site.Typical, 1e-9, "loading, floor, hanging, cleaning")
			assert.InDelta(t, 40.0/45*4, h.Travel.Typical, 1e-9)
		}},
		{"extra minutes", func(w *design.Work) { w.ExtraShop, w.ExtraSite = 30, 120 }, func(t *testing.T, h, was bench.Hours, b bench.Bill) {
			assert.InDelta(t, was.Shop.Typical+0.5, h.Shop.Typical, 0.2501, "half an hour, and perhaps a tidying more")
			assert.InDelta(t, was.Site.High+2, h.Site.High, 1e-9)
		}},
		{"slower hands in the shop only", func(w *design.Work) { w.SpeedFactor = 1.35 }, func(t *testing.T, h, was bench.Hours, b bench.Bill) {
			assert.GreaterOrEqual(t, h.Shop.Typical, 1.35*was.Shop.Typical-1e-9)
			assert.Less(t, h.Shop.Typical, 1.35*(was.Shop.Typical+0.75), "at most three days more to tidy")
			assert.Equal(t, was.Office, h.Office)
			assert.Equal(t, was.Site, h.Site)
			assert.InDelta(t, 1.35*33*9, b.GlueRowSeconds, 1e-9, "and the glue does not wait for them")
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := design.Default().Design
			c.change(&d.Work)
			b := estimate(t, d)
			c.check(t, b.Hours, base.Hours, b)
		})
	}
}

// Hours are the tasks' minutes, a total is the sum of the roles, and low ≤
// typical ≤ high throughout.
func TestHoursAddUp(t *testing.T) {
	for _, name := range []string{"s1", "s2", "s3", "s4", "s5", "s6", "s7", "s8"} {
		d := designtest.Job(t, name)
		d.Work.ExtraShop, d.Work.ExtraSite = d.Work.ExtraShop+30, d.Work.ExtraSite+45
		b := estimate(t, d)
		by := map[string]float64{}
		for _, task := range b.Tasks {
			by[task.Role] += task.Minutes.Typical / 60
			assert.LessOrEqual(t, task.Minutes.Low, task.Minutes.Typical, task.ID)
			assert.LessOrEqual(t, task.Minutes.Typical, task.Minutes.High, task.ID)
			assert.Positive(t, task.Quantity, task.ID)
		}
		h := b.Hours
		assert.InDelta(t, by["shop"]+d.Work.ExtraShop/60, h.Shop.Typical, 1e-9, name)
		assert.InDelta(t, by["office"], h.Office.Typical, 1e-9, name)
		assert.InDelta(t, by["site"]+d.Work.ExtraSite/60, h.Site.Typical, 1e-9, name)
		assert.InDelta(t, h.Shop.High+h.Office.High+h.Site.High+h.Travel.High, h.Total.High, 1e-9, name)
		listed := 0.0
		for _, one := range b.Timed(d.Work) {
			listed += one.Minutes.Typical / 60
		}
		assert.InDelta(t, h.Total.Typical, listed, 1e-9, "%s: tasks, further time and the road", name)
		assert.InDelta(t, h.Total.Typical*1.6/12, b.Weekends.Typical, 1e-9, name)
		sum := 0.0
		for _, g := range b.Groups {
			sum += g.TotalKg
		}
		assert.InDelta(t, sum, b.TotalKg, 1e-9, name)
	}
}

// People wait for the saw and for one another: 1, 0.92, 0.80 and 0.70 of an
// hour's work each for one to four people; habit gives no more than four.
func TestCrewShare(t *testing.T) {
	d := design.Default().Design
	d.Work.Crew = 1
	alone := estimate(t, d).ShopDays.Typical
	for crew, factor := range map[int]float64{2: 1.84, 3: 2.4, 4: 2.8, 5: 3.5, 6: 4.2} {
		d.Work.Crew = crew
		assert.InDelta(t, alone/factor, estimate(t, d).ShopDays.Typical, 1e-9)
	}
}

func TestRefusals(t *testing.T) {
	d := design.Default().Design
	groups := built(t, d)

	short := d
	short.Bench.StickLength = length.MM(250)
	_, err := bench.Estimate(short, pace(), groups)
	assert.EqualError(t, err, "design.bench.stickLength: a stick of 250 mm holds no 92 mm block (allowed from 262 mm)")
	short.Bench.StickLength = length.MM(262)
	_, err = bench.Estimate(short, pace(), groups)
	assert.NoError(t, err, "92 + 20 of trim + 150 of tail")

	odd := pace()
	odd.Tasks = slices.Clone(odd.Tasks)
	odd.Tasks[7].Per = "moon"
	_, err = bench.Estimate(d, odd, groups)
	assert.EqualError(t, err, `tasks[7].per: nothing is counted by "moon"`)

	blunt := d
	blunt.Bench.Kerf = length.MM(-1)
	_, err = bench.Estimate(blunt, pace(), groups)
	assert.ErrorContains(t, err, "design.bench: ")

	_, err = bench.Estimate(d, pace(), nil)
	assert.Error(t, err)
	_, err = bench.Estimate(d, pace(), append(groups, groups...))
	assert.Error(t, err)
	for path, change := range map[string]func(*design.Group){
		"backer.sheet": func(g *design.Group) { g.Backer.Sheet = "cardboard" },
		"finish.kind":  func(g *design.Group) { g.Finish.Kind = "jam" },
	} {
		odd := design.Default().Design
		change(&odd.Walls[0].Groups[0])
		_, err = bench.Estimate(odd, pace(), groups)
		assert.ErrorContains(t, err, "design.walls[0].groups[0]."+path)
	}
}

// A workshop may add tasks of its own, counted by anything that the table
// knows; seconds and minutes mean the same.
func TestOwnTasks(t *testing.T) {
	d := design.Default().Design
	p := bench.Pace{Tasks: []design.Task{
		{ID: "x1", Name: "count in seconds", Role: "shop", Per: "panel", Unit: "s", Low: 60, Typical: 120, High: 180},
		{ID: "e4", Name: "glue", Role: "shop", Per: "glued block", Unit: "min", Low: 0.1, Typical: 0.15, High: 0.2},
	}}
	b, err := bench.Estimate(d, p, built(t, d))
	require.NoError(t, err)
	assert.Equal(t, bench.Spread{Low: 1, Typical: 2, High: 3}, b.Tasks[0].Minutes)
	assert.InDelta(t, 33*9, b.GlueRowSeconds, 1e-9)
	assert.Zero(t, b.Hours.Travel, "without a speed nobody travels")
}

// All bare backer: nothing to cut, and nothing breaks.
func TestNoBlocks(t *testing.T) {
	d := small()
	d.Walls[0].Groups[0].Pattern.Drawn = []string{"0000", "0000"}
	b := estimate(t, d)
	assert.Empty(t, b.Lots)
	assert.Zero(t, b.CutBlocks)
	assert.Zero(t, b.GlueKg)
}
