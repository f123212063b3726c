package bench_test

import (
	"testing"

	"blockfield/engine/bench"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/wood"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The small job by hand: six tops of 0.0025 m², 0.6 of the sides 0.180 × 0.050 m²
// and two bare cells of 0.0025 m², at 4.5 and 11 m² a litre in the first coat and 9
// and 13 after, 15 % more for the tin; shellac waits an hour or two, and is dry
// after three days.
func TestCoatsByHand(t *testing.T) {
	d := small()
	d.Walls[0].Groups[0].Finish.Coats = 2
	b := estimate(t, d)
	long := 0.6*0.180*0.050 + 2*0.0025
	require.Len(t, b.Coats, 2)
	for i, want := range []bench.Coat{
		{Finish: "shellac", Number: 1, Of: 2, TopsLitres: 6 * 0.0025 / 4.5 * 1.15, LongLitres: long / 11 * 1.15, Next: wood.Hours{Low: 1, High: 2}},
		{Finish: "shellac", Number: 2, Of: 2, TopsLitres: 6 * 0.0025 / 9 * 1.15, LongLitres: long / 13 * 1.15, Next: wood.Hours{Low: 72, High: 72}},
	} {
		got := b.Coats[i]
		assert.InDelta(t, want.TopsLitres, got.TopsLitres, 1e-12)
		assert.InDelta(t, want.LongLitres, got.LongLitres, 1e-12)
		got.TopsLitres, got.LongLitres = want.TopsLitres, want.LongLitres
		assert.Equal(t, want, got)
	}
}

// All coats together are what is bought of each finish; frames come after fields,
// and each coat stands once for all groups that get it.
func TestCoatsAddUp(t *testing.T) {
	for _, name := range []string{"s1", "s2", "s3", "s4", "s5", "s6", "s7", "s8"} {
		d := designtest.Job(t, name)
		b := estimate(t, d)
		litres := map[string]float64{}
		for i, c := range b.Coats {
			litres[c.Finish] += c.Litres()
			assert.Equal(t, c.Frame, c.TopsLitres == 0, name)
			assert.Equal(t, !c.Frame, c.FrameLitres == 0, name)
			if i > 0 && !c.Frame {
				assert.False(t, b.Coats[i-1].Frame, "%s: fields first", name)
			}
		}
		for _, f := range b.Finishes {
			assert.InDelta(t, f.Litres, litres[f.Finish], 1e-12, name)
		}
	}
	// Two groups with two and with three coats of one finish: the third is of one.
	g := design.Default().Design.Walls[0].Groups[0]
	more := g
	more.Finish.Coats = 3
	b := estimate(t, bothWalls(g, more))
	require.Len(t, b.Coats, 5, "three on fields, two on frames")
	assert.InDelta(t, b.Coats[1].TopsLitres/2, b.Coats[2].TopsLitres, 1e-12)
	assert.Equal(t, []int{3, 3}, []int{b.Coats[2].Number, b.Coats[2].Of})
}

// A day from 18 °C on, twice as long at 12 °C, in proportion between, and no
// longer below.
func TestGlueSets(t *testing.T) {
	for temp, hours := range map[float64]float64{25: 24, 18: 24, 15: 36, 12: 48, 5: 48} {
		assert.InDelta(t, hours, bench.GlueSetHours(temp), 1e-9, "%v °C", temp)
	}
}

// Levels of the small job, rows 0112 and 2210 of 0, 20 and 40 mm: the tallest is 40
// along top, bottom and left, and at the right 40 too; with the last column bare
// there is none.
func TestTrims(t *testing.T) {
	d := small()
	trims := estimate(t, d).Groups[0].Trims
	require.Len(t, trims, 4)
	for i, want := range []struct {
		edge    bench.Edge
		factory bool
		off     string
	}{{bench.TopEdge, true, "0 mm"}, {bench.LeftEdge, true, "0 mm"}, {bench.RightEdge, false, "10 mm"}, {bench.BottomEdge, false, "10 mm"}} {
		assert.Equal(t, want.edge, trims[i].Edge)
		assert.Equal(t, want.factory, trims[i].Factory)
		assert.Equal(t, want.off, trims[i].Off.String())
		assert.Equal(t, want.off != "0 mm", trims[i].Sawn())
		assert.Equal(t, "12 mm", trims[i].Depth.String(), "the backer only")
		assert.True(t, trims[i].Reached)
		assert.False(t, trims[i].Bare)
	}
	off := map[bench.Edge]string{}
	for _, e := range estimate(t, d).Groups[0].TrimsFrom(design.BottomEdge) {
		off[e.Edge] = e.Off.String()
		assert.Equal(t, !e.Sawn(), e.Factory)
	}
	assert.Equal(t, map[bench.Edge]string{bench.TopEdge: "10 mm", bench.LeftEdge: "0 mm", bench.RightEdge: "10 mm", bench.BottomEdge: "0 mm"}, off)
	assert.Equal(t, trims, estimate(t, d).Groups[0].TrimsFrom(design.TopEdge))

	d.Bench.Trim = design.TrimBlocks
	d.Walls[0].Groups[0].Pattern.Drawn = []string{"0110", "1210"}
	trims = estimate(t, d).Groups[0].Trims
	depth := map[bench.Edge]string{}
	for _, e := range trims {
		depth[e.Edge] = e.Depth.String()
	}
	assert.Equal(t, map[bench.Edge]string{bench.TopEdge: "32 mm", bench.LeftEdge: "32 mm", bench.RightEdge: "12 mm", bench.BottomEdge: "52 mm"}, depth)
	assert.True(t, trims[2].Bare, "no block at the right")
}

// A saw of 52 mm just goes through 40 mm of block and 12 of backer.
func TestSawReach(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*design.Bench)
		fires  bool
		fix    bool
	}{
		{"just deep enough", func(b *design.Bench) { b.Trim, b.SawDepth = design.TrimBlocks, length.MM(52) }, false, false},
		{"a thousandth less", func(b *design.Bench) { b.Trim, b.SawDepth = design.TrimBlocks, length.Micrometres(51_999) }, true, true},
		{"the backer alone", func(b *design.Bench) { b.SawDepth = length.MM(12) }, false, false},
		{"not even that", func(b *design.Bench) { b.SawDepth = length.Micrometres(11_999) }, true, false},
		{"nothing to trim", func(b *design.Bench) { b.SawDepth, b.BackerOversize = length.Micrometres(11_999), length.MM(0) }, false, false},
	} {
		d := small()
		c.change(&d.Bench)
		got, fires := watch(t, d, withoutSanding())["bench/saw-reach"]
		require.Equal(t, c.fires, fires, c.name)
		if fires {
			assert.Equal(t, check.Caution, got.Level)
			assert.Equal(t, c.fix, got.Fix != nil, c.name)
		}
	}
}

// Glue does not hold on a finish; without one there is nothing to mask.
func TestFinishedBases(t *testing.T) {
	for _, c := range []struct {
		when  string
		coats int
		fires bool
	}{
		{design.FinishAfter, 2, false}, {design.FinishMasked, 2, false}, {design.FinishBefore, 2, true}, {design.FinishBefore, 0, false},
	} {
		d := small()
		d.Walls[0].Groups[0].Finish.When, d.Walls[0].Groups[0].Finish.Coats = c.when, c.coats
		got, fires := watch(t, d, withoutSanding())["bench/finished-bases"]
		require.Equal(t, c.fires, fires, c.when)
		if fires {
			assert.Equal(t, []any{check.Stop, check.Glue, false}, []any{got.Level, got.Gate, got.Evidence})
			assert.Equal(t, &check.Fix{Path: "walls[0].groups[0].finish.when", Value: design.FinishMasked}, got.Fix)
		}
	}
}

// A piece of 1006 mm and 10 mm of trim.
func TestBoardTooShort(t *testing.T) {
	d := framed()
	for _, c := range []struct {
		boardUM int64
		fires   bool
	}{{1_016_000, false}, {1_015_999, true}} {
		d.Bench.BoardLength = length.Micrometres(c.boardUM)
		got, fires := watch(t, d, withoutSanding())["bench/board-too-short"]
		require.Equal(t, c.fires, fires)
		if fires {
			assert.Equal(t, check.Caution, got.Level)
			assert.Equal(t, "1006 mm", got.Args["piece"].(length.Length).String())
			assert.Equal(t, &check.Fix{Path: "bench.boardLength", Value: "1800 mm"}, got.Fix)
		}
	}
	d.Bench.BoardLength = length.MM(0)
	assert.NotContains(t, watch(t, d, withoutSanding()), "bench/board-too-short", "by the running metre")
}
