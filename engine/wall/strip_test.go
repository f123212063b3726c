package wall_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"blockfield/engine/wall"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// panelLoad is 40 kg on a cleat of 1.1 m, its middle at 1.75 m.
func panelLoad() wall.Load {
	return wall.Load{
		Kg: 40, CentroidM: 0.06, FieldHeightM: 0.8, CleatM: 0.018, CleatFootM: 0.09, BevelRad: math.Pi / 4,
		CentreM: 1.75, LeftM: 1.2, RightM: 2.3,
	}
}

// By hand: 40 kg weigh 392.4 N; 0.06 m out over a lever of 0.65 m lean with 36.2
// N; a 45° bevel less atan 0.3 wedges with tan 28.3° = 7/13 of the weight.
func TestForces(t *testing.T) {
	l := panelLoad()
	assert.InDelta(t, 392.4, l.DownN(), 1e-9)
	assert.InDelta(t, 36.22, l.LeanN(), 0.01)
	assert.InDelta(t, 392.4*0.7/1.3, l.WedgeN(), 1e-9)
	l.BevelRad = math.Atan(0.25)
	assert.Zero(t, l.WedgeN(), "flatter than friction it does not slide")
	assert.Equal(t, l.LeanN(), l.OutN())
	l.FieldHeightM = 0.2
	assert.InDelta(t, 392.4*0.06/0.05, l.LeanN(), 1e-9, "a low panel keeps a quarter of its height as lever")
	l.FieldHeightM, l.CleatFootM = 0.8, 0.2
	assert.InDelta(t, 392.4*0.06/0.56, l.LeanN(), 1e-9, "a cleat farther down leaves less lever")
}

// The free body of a hooked panel: the strip holds it with N square to the bevel and
// friction F along it, at most 0.3 N; the wall pushes the cleat with H ≥ 0 and the
// spacer with the lean B. Across: N sin β − F cos β = H + B. Upwards: N cos β + F sin
// β = W. Of all states that balance, tried one by one, the one that pulls least at
// the strip is what OutN has: the panel settles until friction holds it.
func TestOutByStatics(t *testing.T) {
	for _, c := range []struct{ bevelDeg, centroid float64 }{
		{45, 0.06}, {30, 0.06}, {60, 0.06}, {45, 0.5}, {30, 0.3}, {10, 0.06},
	} {
		l := panelLoad()
		l.BevelRad, l.CentroidM = c.bevelDeg*math.Pi/180, c.centroid
		sin, cos := math.Sincos(l.BevelRad)
		w, b := l.DownN(), l.LeanN()
		least := math.Inf(1)
		for i := -3000; i <= 3000; i++ {
			mu := float64(i) / 10_000 // F = mu N
			n := w / (cos + mu*sin)
			if across := n * (sin - mu*cos); across >= b {
				least = math.Min(least, across)
			}
		}
		assert.InDelta(t, least, l.OutN(), 0.001*w, "%+v", c)
	}
}

func strips(t *testing.T, bays []wall.Bay, by wall.Rules) []wall.Strip {
	t.Helper()
	all, ok := wall.ChooseStrips(bays, by)
	require.True(t, ok)
	require.Len(t, all, len(bays))
	return all
}

func bay(l wall.Load, studs ...float64) wall.Bay { return wall.Bay{Load: l, StudsM: studs} }

// strip is a strip behind 25 mm of board.
func strip(t *testing.T, l wall.Load, studs []float64, diameterMM, factor float64) wall.Strip {
	t.Helper()
	return strips(t, []wall.Bay{bay(l, studs...)}, wall.Rules{DiameterMM: diameterMM, BoardMM: 25, Factor: factor})[0]
}

// Two studs share as a beam on two supports does: (2.1 − 1.75) / 0.6, and nine
// tenths of the load lie nearest to the left one where the strip lies so. Three share
// by the elastic method, 1/3 + off × far / Σd²: 0.2 × 0.6 / 0.72 off the middle. A
// lone stud feels the strip turn about its far end: 1 + 0.1 / (0.55 − 0.1).
func TestShareOfAStud(t *testing.T) {
	for _, c := range []struct {
		centre, left, right float64
		studs               []float64
		want                float64
	}{
		{1.75, 1.2, 2.3, []float64{1.5, 2.1}, 0.35 / 0.6},
		{1.8, 1.25, 2.35, []float64{1.5, 2.1}, 0.5},
		{1.8, 0.81, 1.91, []float64{1.5, 2.1}, 0.9},
		{1.4, 0.85, 1.95, []float64{1.5, 2.1}, 0.7 / 0.6}, // beyond the studs: the far one is pushed
		{1.8, 1.2, 2.4, []float64{1.2, 1.8, 2.4}, 0.5},    // the middle one has what is nearest to it
		{2.0, 1.1, 2.9, []float64{1.2, 1.8, 2.4}, 1.0/3 + 0.2*0.6/0.72},
		{1.75, 1.2, 2.3, []float64{1.65}, 1 + 0.1/0.45},
		{1.75, 1.2, 2.3, []float64{1.75}, 1},
	} {
		l := panelLoad()
		l.CentreM, l.LeftM, l.RightM = c.centre, c.left, c.right
		assert.InDelta(t, c.want, strip(t, l, c.studs, 6, 4).Share, 1e-9, "%+v", c)
	}
}

// A lone stud off the middle is turned by the panel: 36 kg hang 0.16 m beside the
// stud on 8 No. 10, 48.26 mm apart. Each takes an eighth of 353.4 N; the outermost,
// 168.9 mm from the middle of the eight, takes 0.16 × 0.1689 / Σy² (97 816 mm²)
// across: four times the hypotenuse of 44.2 and 97.5 N. The strip turns about its
// left end, 0.297 m from the stud: 1 + 0.16 / 0.297 of 190.3 N pull at its tip.
func TestLoneStudByHand(t *testing.T) {
	l := wall.Load{
		Kg: 36.021, CentroidM: 0.06, FieldHeightM: 0.688, CleatM: 0.018, CleatFootM: 0.149, BevelRad: math.Pi / 4,
		CentreM: 1.6598, LeftM: 1.203, RightM: 2.1166,
	}
	s := strip(t, l, []float64{1.5}, 5, 4)
	require.Equal(t, []any{10, 8}, []any{s.Gauge, s.AStud})
	assert.InDelta(t, 4*math.Hypot(44.17, 97.5), s.ShearN, 0.3)
	assert.InDelta(t, 1+0.1598/0.297, s.Share, 1e-3)
	assert.Greater(t, s.Use, 3.0)
	assert.False(t, s.Enough())
}

// More studs behind a strip never make its busiest screw busier: whichever stud is
// missing, use is no less.
func TestFewerStudsAreNeverSafer(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 300 {
		n := 2 + r.IntN(5)
		studs := make([]float64, n)
		for i := range studs {
			studs[i] = 1 + r.Float64()*0.2 + 0.4*float64(i)
		}
		l := panelLoad()
		l.LeftM = 1 - 0.2*r.Float64()
		l.RightM = studs[n-1] + 0.2*r.Float64()
		l.CentreM = (l.LeftM + l.RightM) / 2
		l.Kg = 400
		use := func(studs []float64) float64 { return strip(t, l, studs, 6, 4).Use }
		all := use(studs)
		gone := r.IntN(n)
		assert.GreaterOrEqual(t, use(slices.Delete(slices.Clone(studs), gone, gone+1)), all-1e-9, "%v without %d", studs, gone)
	}
}

// The bays of a group share a screw: what the worst of them wants, all get.
func TestBaysShareAScrew(t *testing.T) {
	l := panelLoad()
	l.Kg = 20
	bad := l
	bad.CentreM, bad.LeftM, bad.RightM = 1.5, 0.95, 2.05
	by := wall.Rules{DiameterMM: 6, BoardMM: 25, Factor: 4}
	good := strips(t, []wall.Bay{bay(l, 1.5, 2.1)}, by)[0]
	both := strips(t, []wall.Bay{bay(l, 1.5, 2.1), bay(bad, 1.5, 2.0)}, by)
	assert.Equal(t, both[0].AStud, both[1].AStud)
	assert.Greater(t, both[0].AStud, good.AStud)
	_, ok := wall.ChooseStrips([]wall.Bay{bay(l, 1.5, 2.1), bay(l)}, by)
	assert.False(t, ok, "a bay without a stud")
	_, ok = wall.ChooseStrips(nil, by)
	assert.False(t, ok)
}

// One strip followed by hand. 6 mm said: No. 12 (D 5.486 mm), 100 mm long, 57 mm in
// the stud behind 25 mm of board, more than ten diameters. Two studs, 0.05 m off their
// middle, six screws in each, 54.86 mm apart: all twelve as one group have Σd² = 12 ×
// 0.3² + 2 × 6 × 35 / 12 × 0.05486² = 1.1854 m². The outermost takes 1/12 + 0.05 × 0.3 /
// 1.1854 of the weight down and 0.05 × 0.1372 / 1.1854 across: 0.0962. The strip is
// 336.2 mm high with its bevel; the top screw, 296.3 mm up, takes 0.3362 × 0.2963 /
// 0.20456 of seven twelfths of the wedge.
func TestStripByHand(t *testing.T) {
	s := strip(t, panelLoad(), []float64{1.5, 2.1}, 6, 4)
	assert.Equal(t, []any{12, 100.0, 6, 12}, []any{s.Gauge, s.ScrewMM, s.AStud, s.Screws()})
	assert.InDelta(t, 4*392.4*0.0962, s.ShearN, 0.1)
	assert.InDelta(t, 0.3362, s.HeightM, 1e-4)
	assert.InDelta(t, 0.2963, s.PlacesM[5], 1e-4)
	assert.InDelta(t, 4*392.4*7/13*7/12*0.3362*0.2963/0.20456, s.PullN, 0.5)
	// Head in 18 mm: 690 π 0.414 × 0.42² × 0.7087 × 0.9 = 101.0 lbf = 449.2 N;
	// thread: 108.6 lbf/in × (57 − 11) mm × 0.9 is more.
	assert.InDelta(t, 449.2, s.HoldsPullN, 0.2)
	assert.InDelta(t, 171.6, s.HoldsShearN, 0.1, "worked out apart from the same equations")
	// Combined: R = hypot(151.0, 240.1), R (449.2 cos² + 171.6 sin²) / (449.2 × 171.6).
	load := math.Hypot(s.ShearN, s.PullN)
	cos, sin := s.ShearN/load, s.PullN/load
	assert.InDelta(t, load*(449.2*cos*cos+171.6*sin*sin)/(449.2*171.6), s.Use, 0.001)
	assert.True(t, s.Fits)
}

// A thinner board leaves a shorter screw and a stronger one.
func TestBoardCounts(t *testing.T) {
	at := func(boardMM float64) wall.Strip {
		return strips(t, []wall.Bay{bay(panelLoad(), 1.5, 2.1)}, wall.Rules{DiameterMM: 6, BoardMM: boardMM, Factor: 4})[0]
	}
	assert.Equal(t, []float64{90, 100}, []float64{at(12.5).ScrewMM, at(25).ScrewMM})
	assert.Greater(t, at(12.5).HoldsShearN, at(25).HoldsShearN)
	assert.Greater(t, at(25).HoldsShearN, at(40).HoldsShearN)
	assert.Less(t, at(12.5).AStud, at(25).AStud)
}

// The strip between its studs: w l²/8 and, beyond the last, w c²/2, against 875
// psi for ever. One stud in the middle leaves 0.55 m at either side.
func TestStripBends(t *testing.T) {
	l := panelLoad()
	s := strip(t, l, []float64{1.75}, 6, 4)
	down, out := l.DownN()/1.1, l.OutN()/1.1
	moment := func(w float64) float64 { return w * 0.55 * 0.55 / 2 }
	h, thick := s.HeightM-0.018, 0.018 // the bevel does not count
	want := 4 * (6*moment(down)/(thick*h*h) + 6*moment(out)/(h*thick*thick)) / (875 * 6894.757 * 0.9)
	assert.InEpsilon(t, want, s.BendUse, 1e-9)
	// A free end sags w c⁴/8EI, twice that after years; 2 c / 300 may be.
	sag := 2 * out * math.Pow(0.55, 4) / (8 * 1.4e6 * 6894.757 * h * math.Pow(thick, 3) / 12)
	assert.InEpsilon(t, sag/(2*0.55/300), s.SagUse, 1e-9)

	wide := l
	wide.LeftM, wide.RightM = 1.5, 2.1 // no overhang: the span of 0.6 m rules
	s = strip(t, wide, []float64{1.5, 2.1}, 6, 4)
	w := func(n float64) float64 { return n / 0.6 * 0.36 / 8 }
	h = s.HeightM - 0.018
	want = 4 * (6*w(l.DownN())/(thick*h*h) + 6*w(l.OutN())/(h*thick*thick)) / (875 * 6894.757 * 0.9)
	assert.InEpsilon(t, want, s.BendUse, 1e-9)
	sag = 2 * 5 * (wide.OutN() / 0.6) * math.Pow(0.6, 4) / (384 * 1.4e6 * 6894.757 * h * math.Pow(thick, 3) / 12)
	assert.InEpsilon(t, sag/(0.6/300), s.SagUse, 1e-9)
}

// More mass, a higher factor, a steeper bevel or a stud less never take fewer
// screws in a stud, and what does not hold says so.
func TestStripIsNeverSafer(t *testing.T) {
	two := []float64{1.5, 2.1}
	last := 0
	for kg := 5.0; kg <= 45; kg += 2.5 {
		l := panelLoad()
		l.Kg = kg
		s := strip(t, l, two, 6, 4)
		assert.GreaterOrEqual(t, s.AStud, last, "%g kg", kg)
		last = s.AStud
		assert.GreaterOrEqual(t, strip(t, l, two, 6, 5).AStud, s.AStud)
		assert.GreaterOrEqual(t, strip(t, l, two[:1], 6, 4).AStud, s.AStud)
		dropped := l
		dropped.CleatFootM += 0.1
		assert.GreaterOrEqual(t, strip(t, dropped, two, 6, 4).AStud, s.AStud, "a longer drop to the cleat")
		steep := l
		steep.BevelRad += 0.1
		assert.GreaterOrEqual(t, strip(t, steep, two, 6, 4).AStud, s.AStud)
	}
	heavy := panelLoad()
	heavy.Kg = 200
	s := strip(t, heavy, two, 0, 4)
	assert.False(t, s.Enough())
	assert.Greater(t, s.Use, 1.0)
	low := panelLoad()
	low.FieldHeightM = 0.3
	s = strip(t, low, two, 6, 4)
	assert.False(t, s.Enough(), "a low panel has no room for the strip it needs")
	assert.False(t, s.Fits && s.Use <= 1)
	_, ok := wall.ChooseStrips([]wall.Bay{bay(panelLoad(), two...)}, wall.Rules{DiameterMM: 3, BoardMM: 25, Factor: 4})
	assert.False(t, ok, "no screw so thin")
}

// Four times the load, upward freely, down to two with a reason only.
func TestFactor(t *testing.T) {
	for _, c := range []struct {
		typed  float64
		reason string
		want   float64
	}{{0, "", 4}, {2, "", 4}, {6, "", 6}, {2, "locked plant room", 2}, {1, "locked plant room", 2}, {3, " ", 4}} {
		assert.Equal(t, c.want, wall.Factor(c.typed, c.reason), "%+v", c)
	}
}

// The booth: 16.79 kg, 1.70 kg of lean, 1.20 and 0.80 kN, factor 4: 4 plugs. The
// worked job has 16 %, which is 0.64 of a plug over four, with the lean alone, felt
// once. Here the wedge of the 45° bevel counts, which is more, and twice, since the
// plugs sit in the middle of a strip that turns about its foot: 36 %.
func TestRated(t *testing.T) {
	l := panelLoad()
	l.Kg, l.CentroidM, l.FieldHeightM = 16.79, 1.70/16.79*(0.6156-0.15), 0.6156
	got := wall.ChooseRated(l, 1.2, 0.8, 4)
	assert.Equal(t, 4, got.Count)
	weight := 16.79 * 9.81 / 1000
	assert.InDelta(t, 4*(weight/1.2+2*weight*7/13/0.8)/4, got.Use, 1e-9)
	assert.InDelta(t, 0.36, got.Use, 0.005)
	flat := l
	flat.BevelRad = 0
	assert.InDelta(t, 4*(weight/1.2+2*1.70*9.81/1000/0.8)/4, wall.ChooseRated(flat, 1.2, 0.8, 4).Use, 0.001)
	weak := wall.ChooseRated(l, 0.1, 0.1, 4)
	assert.Greater(t, weak.Count, 4)
	assert.LessOrEqual(t, weak.Use, 1.0)
	assert.Greater(t, wall.ChooseRated(l, 1e-4, 1e-4, 4).Use, 1.0, "there is an end to counting")
}

// Holes stud by stud, each from the top; in rated bases even along the middle of an
// 80 mm strip, 50 mm from its ends.
func TestHoles(t *testing.T) {
	s := wall.Strip{StudsM: []float64{1.5, 2.1}, PlacesM: []float64{0.02, 0.07}, HeightM: 0.3, TipM: 1.6}
	want := []wall.Point{{XM: 1.5, YM: 1.37}, {XM: 1.5, YM: 1.32}, {XM: 2.1, YM: 1.37}, {XM: 2.1, YM: 1.32}}
	for i, hole := range s.Holes() {
		assert.InDelta(t, want[i].XM, hole.XM, 1e-9)
		assert.InDelta(t, want[i].YM, hole.YM, 1e-9)
	}
	b := wall.Bay{FromM: 1, ToM: 2, TipM: 1.5}
	holes := wall.Rated{Count: 4}.Holes(b)
	assert.InDelta(t, holes[1].XM-holes[0].XM, wall.Rated{Count: 4}.StepM(b), 1e-12)
	for i, x := range []float64{1.05, 1.35, 1.65, 1.95} {
		assert.InDelta(t, x, holes[i].XM, 1e-9)
		assert.InDelta(t, 1.46, holes[i].YM, 1e-9)
	}
}
