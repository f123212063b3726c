package bench_test

import (
	"math/rand/v2"
	"testing"

	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// priced is the pace of the placeholder book with its prices.
func priced() bench.Pace {
	b, p := design.DefaultBook(), pace()
	p.Prices = bench.Prices{Woods: b.Woods, Sticks: b.Sticks, Hour: b.Rates.Shop + b.Rates.Overhead}
	return p
}

func estimateWith(t testing.TB, d design.Design, p bench.Pace) bench.Bill {
	t.Helper()
	bill, err := bench.Estimate(d, p, built(t, d))
	require.NoError(t, err)
	return bill
}

// square is a line of wood that fits the blocks of a design.
func square(d design.Design, mm int64, count int, owned bool) design.Stock {
	g := d.Walls[0].Groups[0]
	return design.Stock{Wood: g.Wood, Width: g.Block.Size, Thickness: g.Block.Size, Length: length.MM(mm), Count: count, Owned: owned}
}

// used is how many bars of each kind are cut, and bought.
func used(bars []bench.Bar) [][2]int {
	var all [][2]int
	for _, b := range bars {
		all = append(all, [2]int{b.Used, b.Bought})
	}
	return all
}

// The small job takes 330 mm with its cuts. A stick of 900 mm less 50 of trim and
// 250 of tail has 600 for it; one of 630 that is there has 330 + 3 of kerf.
func TestWoodThatIsThere(t *testing.T) {
	for _, c := range []struct {
		name  string
		stock []design.Stock
		want  [][2]int // of the usual length, and of each line that fits
	}{
		{"none", nil, [][2]int{{1, 2}}},
		{"one that is long enough", []design.Stock{square(small(), 630, 1, true)}, [][2]int{{0, 0}, {1, 0}}},
		// 626 mm leave 326 + 3 of kerf, which 330 are too much for.
		{"one too short for all: free, but the other one has to be bought anyway", []design.Stock{square(small(), 626, 1, true)}, nil},
		{"two of half", []design.Stock{square(small(), 500, 2, true)}, [][2]int{{0, 0}, {2, 0}}},
		{"of another wood", []design.Stock{{Wood: "oak", Width: length.MM(50), Thickness: length.MM(50), Length: length.MM(900), Count: 5, Owned: true}}, [][2]int{{1, 2}}},
		{"of another section", []design.Stock{{Wood: "beech", Width: length.MM(50), Thickness: length.MM(51), Length: length.MM(900), Count: 5, Owned: true}}, [][2]int{{1, 2}}},
	} {
		d := small()
		d.Bench.Stock = c.stock
		lot := estimateWith(t, d, priced()).Lots[0]
		if c.want == nil {
			assert.Equal(t, 2, lot.Sticks, "%s: a stick is bought, with one for defects", c.name)
			continue
		}
		assert.Equal(t, c.want, used(lot.Bars), c.name)
		own := 0
		for _, b := range c.want[1:] {
			own += b[0]
		}
		assert.Equal(t, []int{own, c.want[0][1]}, []int{lot.OwnSticks, lot.Sticks}, c.name)
		if lot.Sticks == 0 {
			assert.Zero(t, lot.BoughtM3)
		}
	}
}

// Beech of 50 × 50 at 4300 a m³: 10.75 a metre. By the piece the yard asks less for
// a short one.
func TestSeveralLengthsWithPrices(t *testing.T) {
	d := small()
	d.Bench.Defects = 0
	d.Bench.Stock = []design.Stock{square(d, 700, 0, false)}
	lot := estimateWith(t, d, priced()).Lots[0]
	assert.Equal(t, [][2]int{{0, 0}, {1, 1}}, used(lot.Bars), "the shorter one is enough")
	assert.True(t, lot.Priced)
	assert.EqualValues(t, 4300*0.05*0.05*0.7*10_000, lot.Curve[0].Wood)

	// The book says that a whole one costs less.
	p := priced()
	p.Prices.Sticks = []design.StickPrice{{Wood: "beech", Size: length.MM(50), Length: length.MM(900), Price: design.Units(7)}}
	lot = estimateWith(t, d, p).Lots[0]
	assert.Equal(t, [][2]int{{1, 1}, {0, 0}}, used(lot.Bars))
	assert.EqualValues(t, 7*10_000, lot.Curve[0].Wood)

	// Without a price for the wood, lengths are compared.
	p.Prices = bench.Prices{}
	lot = estimateWith(t, d, p).Lots[0]
	assert.Equal(t, [][2]int{{0, 0}, {1, 1}}, used(lot.Bars))
	assert.False(t, lot.Priced)
}

// What a client is quoted by follows from lengths alone: prices by the piece are
// private, and so is what wood and time cost together.
func TestQuotedVolumeHoldsNoPrivatePrice(t *testing.T) {
	d := designtest.Job(t, "s7")
	d.Bench.Stock = []design.Stock{square(d, 3000, 0, false)}
	p := priced()
	first := estimateWith(t, d, p).Lots[0]
	for name, change := range map[string]func(*bench.Prices){
		"a piece for nothing": func(p *bench.Prices) {
			p.Sticks = []design.StickPrice{{Wood: "walnut", Size: length.MM(30), Length: length.MM(2200), Price: design.Units(1)}}
		},
		"dear hours": func(p *bench.Prices) { p.Hour = design.Units(10_000) },
		"no prices":  func(p *bench.Prices) { *p = bench.Prices{} },
	} {
		other := priced()
		change(&other.Prices)
		lot := estimateWith(t, d, other).Lots[0]
		assert.InDelta(t, first.FewestM3, lot.FewestM3, 1e-12, name)
		if name != "no prices" {
			assert.NotEqual(t, used(first.Bars), used(lot.Bars), "%s: the plan is another one", name)
		}
	}
}

// Of ten sticks that the yard has, a tenth is lost: nine count, and no more than
// ten are bought. The rest comes from the usual length.
func TestLimitedSupply(t *testing.T) {
	d := designtest.Job(t, "p2")
	unsaid(&d)
	d.Bench.Stock = []design.Stock{square(d, 3000, 10, false)}
	p := priced()
	p.Prices.Sticks = []design.StickPrice{{Wood: "beech", Size: length.MM(36), Length: length.MM(3000), Price: design.Units(10)}}
	lot := estimateWith(t, d, p).Lots[0]
	require.Len(t, lot.Bars, 2)
	assert.Equal(t, [2]int{9, 10}, used(lot.Bars)[1], "cheap, and all of them")
	assert.Positive(t, lot.Bars[0].Bought)
	assert.Equal(t, lot.Bars[0].Bought+10, lot.Sticks)
	without := designtest.Job(t, "p2")
	unsaid(&without)
	assert.Less(t, lot.Curve[0].Wood, estimateWith(t, without, p).Lots[0].Curve[0].Wood)
}

// Two lengths that are bought both lose whole sticks to defects; where one length
// alone costs less with its own, it is taken. Never dearer than first fit.
func TestTwoLengthsAreNotDearerThanOne(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	mixed := 0
	for range 40 {
		d := design.Default().Design
		g := &d.Walls[0].Groups[0]
		g.Columns, g.Rows = 4+rnd.IntN(12), 4+rnd.IntN(10)
		d.Bench.Defects = float64(5 + rnd.IntN(30))
		other := int64(1000 + 100*rnd.IntN(40))
		d.Bench.Stock = []design.Stock{square(d, other, 0, false)}
		lot := estimateWith(t, d, priced()).Lots[0]
		kinds := 0
		for _, b := range lot.Bars {
			if b.Bought > 0 {
				kinds++
			}
		}
		mixed += kinds - 1
		for _, long := range []length.Length{d.Bench.StickLength, length.MM(other)} {
			one := d
			one.Bench.StickLength, one.Bench.Stock = long, nil
			fit := firstFit(t, one, lot)
			bought := int((float64(fit.Bars) / (1 - d.Bench.Defects/100)) + 0.999999)
			wood := float64(bought) * long.Metres() * 0.036 * 0.036 * 3300 * 10_000
			assert.LessOrEqual(t, float64(lot.Curve[0].Wood), wood+float64(bought), "%v, defects %v", long, d.Bench.Defects)
		}
	}
	assert.Positive(t, mixed, "some of the jobs buy both")
}

// framed is a job with one frame of 20 × 100 mm board, in pieces of 1000 and 500
// mm and 6 mm more for the test fit, and a cleat of 20 mm.
func framed() design.Design {
	d := small()
	g := &d.Walls[0].Groups[0]
	g.Columns, g.Rows = 18, 8 // 900 × 400 mm
	g.Pattern = design.Pattern{Kind: design.Shuffled, Clump: 1}
	g.Heights = []length.Length{length.MM(20), length.MM(40)}
	g.Frame = design.Frame{Joint: design.Mitred, Wood: "beech", Thickness: length.MM(20), Board: length.MM(100), Gap: length.MM(30)}
	g.Cleat.Thickness = length.MM(20)
	d.Bench.BoardLength = length.MM(2000)
	d.Bench.EndTrim, d.Bench.Kerf = length.MM(10), length.MM(4)
	d.Bench.StickLength = length.MM(2400)
	return d
}

// Frame pieces by hand: 2 × 1006 and 2 × 506 with a kerf each, out of 1990 + 4. A
// board takes 1006 + 506 + 2 × 4 = 1520, or three of 506, not two of 1006: two
// boards. Cleats and spacer are 800 mm long: two halves and a spacer, of which a
// strip of 2000 takes two.
func TestBoardsByHand(t *testing.T) {
	b := estimate(t, framed())
	require.Len(t, b.Frame, 1)
	assert.Equal(t, [][2]int{{2, 2}}, used(b.Frame[0].Cuts.Bars))
	assert.InDelta(t, 4, b.Frame[0].BoughtM, 1e-9)
	assert.InDelta(t, 4*0.02*0.1, b.Frame[0].BoughtM3, 1e-12)
	assert.InDelta(t, 2*(1.000+0.460), b.Frame[0].NeedM, 1e-9, "in the frame: along outer and inner edges")
	for _, board := range b.Frame[0].Cuts.Plan.Boards {
		assert.EqualValues(t, 1990_000_000+4_000_000-1520_000_000-4_000_000, board.Offcut)
	}

	// Each board leaves 470 mm, too short for a cleat.
	require.Len(t, b.Cleat.Strips, 1)
	assert.Equal(t, [2]int{2, 2}, used(b.Cleat.Strips[0].Cuts.Bars)[0])
	assert.InDelta(t, 4*0.09*0.02, b.Cleat.BoughtM3, 1e-12)
	assert.InDelta(t, 2.4, b.Cleat.RunningM, 1e-9)

	// Out of 2390 + 4 come both long pieces, and 370 mm; the short ones leave 1370,
	// which is cleat enough.
	long := framed()
	long.Bench.BoardLength = length.MM(2400)
	b = estimate(t, long)
	assert.Equal(t, [][2]int{{2, 2}}, used(b.Frame[0].Cuts.Bars))
	assert.Equal(t, [][2]int{{1, 1}, {0, 0}, {1, 0}}, used(b.Cleat.Strips[0].Cuts.Bars), "two of 800 from a strip, one from an offcut")
	assert.True(t, b.Cleat.Strips[0].Cuts.Bars[2].Owned)
	assert.EqualValues(t, 1370_000_000, b.Cleat.Strips[0].Cuts.Bars[2].Length.Nanometres())

	// Not where the cleat has another thickness.
	long.Walls[0].Groups[0].Cleat.Thickness = length.MM(18)
	b = estimate(t, long)
	assert.Equal(t, [][2]int{{2, 2}}, used(b.Cleat.Strips[0].Cuts.Bars))
}

// A board that is there goes to the frame first, and what the frame leaves of it
// to the cleat. None is used twice.
func TestWoodIsSharedByFrameAndCleat(t *testing.T) {
	d := framed()
	board := design.Stock{Wood: "beech", Width: length.MM(110), Thickness: length.MM(20), Length: length.MM(1900), Count: 2, Owned: true}
	d.Bench.Stock = []design.Stock{board}
	b := estimate(t, d)
	assert.Equal(t, [][2]int{{0, 0}, {2, 0}}, used(b.Frame[0].Cuts.Bars))
	assert.Zero(t, b.Frame[0].BoughtM3)
	assert.Equal(t, [2]int{2, 2}, used(b.Cleat.Strips[0].Cuts.Bars)[0], "nothing is left for the cleats")

	d.Bench.Stock[0].Count = 3
	b = estimate(t, d)
	assert.Equal(t, [][2]int{{0, 0}, {2, 0}}, used(b.Frame[0].Cuts.Bars))
	assert.Equal(t, [][2]int{{1, 1}, {1, 0}}, used(b.Cleat.Strips[0].Cuts.Bars)[:2], "the third board: two of 800")

	// Too narrow for the frame's depth of 72 mm, and for the cleat's 80.
	d.Bench.Stock[0].Width = length.MM(71)
	assert.Equal(t, [][2]int{{2, 2}}, used(estimate(t, d).Frame[0].Cuts.Bars))
	d.Bench.Stock[0].Width = length.MM(72)
	b = estimate(t, d)
	assert.Equal(t, [][2]int{{0, 0}, {2, 0}}, used(b.Frame[0].Cuts.Bars))
	assert.Equal(t, [][2]int{{2, 2}}, used(b.Cleat.Strips[0].Cuts.Bars))
}

// A piece that no board is long enough for is bought by the running metre, as the
// reference does, and said.
func TestPieceLongerThanABoard(t *testing.T) {
	d := framed()
	for _, c := range []struct {
		boardMM int64
		fires   bool
	}{{1016, false}, {1015, true}} { // 1006 and 10 of trim
		d.Bench.BoardLength = length.MM(c.boardMM)
		b := estimate(t, d)
		assert.Equal(t, c.fires, !b.Frame[0].Cuts.TooLong.IsZero())
		if c.fires {
			assert.EqualValues(t, 1006_000_000, b.Frame[0].Cuts.TooLong.Nanometres())
			assert.InDelta(t, b.Frame[0].NeedM*1.15, b.Frame[0].BoughtM, 1e-9)
			assert.InDelta(t, b.Frame[0].BoughtM*0.02*0.1, b.Frame[0].BoughtM3, 1e-12)
		}
	}
	d.Bench.BoardLength = length.MM(0)
	assert.Nil(t, estimate(t, d).Frame[0].Cuts, "by the running metre")
}

// Whatever is there and whatever the job: no line of wood gives more than it has,
// and every piece is cut once.
func TestPileIsNeverOverdrawn(t *testing.T) {
	rnd := rand.New(rand.NewPCG(8, 9))
	for range 40 {
		d := framed()
		d.Walls[0].Groups[0].PanelsWide = 1 + rnd.IntN(4)
		d.Bench.BoardLength = length.MM(1100 + 100*rnd.Int64N(20))
		there := map[int64]int{}
		for range rnd.IntN(5) {
			long := 300 + 10*rnd.Int64N(200)
			if there[long*1_000_000] > 0 {
				continue
			}
			n := 1 + rnd.IntN(4)
			there[long*1_000_000] = n
			d.Bench.Stock = append(d.Bench.Stock, design.Stock{
				Wood: "beech", Width: length.MM(100), Thickness: length.MM(20), Length: length.MM(long), Count: n, Owned: true,
			})
		}
		b := estimate(t, d)
		for _, bar := range b.Frame[0].Cuts.Bars[1:] {
			there[bar.Length.Nanometres()] -= bar.Used
		}
		for _, board := range b.Frame[0].Cuts.Plan.Boards {
			there[board.Offcut] += board.Count // for the cleats
		}
		for _, bar := range b.Cleat.Strips[0].Cuts.Bars[1:] {
			there[bar.Length.Nanometres()] -= bar.Used
		}
		for long, n := range there {
			assert.GreaterOrEqual(t, n, 0, "%d", long)
		}
		pieces := 0
		for _, board := range b.Cleat.Strips[0].Cuts.Plan.Boards {
			for _, p := range board.Pieces {
				pieces += board.Count * p.Count
			}
		}
		assert.Equal(t, 3*b.Panels, pieces)
	}
}
