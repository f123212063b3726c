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

// By hand: 40 kg weigh 392.4 N; 0.06 m out over a lever of 0.65 m pulls with 36.2
// N; a 45° bevel less atan 0.3 wedges with tan 28.3° = 7/13 of the weight.
func TestForces(t *testing.T) {
	l := panelLoad()
	assert.InDelta(t, 392.4, l.DownN(), 1e-9)
	assert.InDelta(t, 36.22, l.MomentN(), 0.01)
	assert.InDelta(t, 392.4*0.7/1.3, l.WedgeN(), 1e-9)
	l.BevelRad = math.Atan(0.25)
	assert.Zero(t, l.WedgeN(), "flatter than friction it does not slide")
	l.FieldHeightM = 0.2
	assert.InDelta(t, 392.4*0.06/0.05, l.MomentN(), 1e-9, "a low panel keeps a quarter of its height as lever")
	l.FieldHeightM, l.CleatFootM = 0.8, 0.2
	assert.InDelta(t, 392.4*0.06/0.56, l.MomentN(), 1e-9, "a cleat farther down leaves less lever")
}

// Two studs share as a beam on two supports does; three as well as balance lets
// them; a lone one takes all, and more the farther it is from the middle.
func TestHeaviestShare(t *testing.T) {
	for _, c := range []struct {
		centre float64
		studs  []float64
		want   float64
	}{
		{1.75, []float64{1.5, 2.1}, 0.35 / 0.6}, // (2.1 − 1.75)/0.6
		{1.8, []float64{1.5, 2.1}, 0.5},
		{1.4, []float64{1.5, 2.1}, 0.7 / 0.6}, // beyond the studs: the far one pulls down
		{1.8, []float64{1.2, 1.8, 2.4}, 1.0 / 3},
		{1.5, []float64{1.2, 1.8, 2.4}, 0.5},
		{1.45, []float64{1.45}, 1},
		{1.43, []float64{1.45}, 1.2},
	} {
		assert.InDelta(t, c.want, wall.HeaviestShare(c.centre, c.studs), 1e-9, "%+v", c)
	}
	assert.True(t, math.IsInf(wall.HeaviestShare(1, nil), 1))
}

// A stud less never lightens the busiest one; no share is less than an even one.
func TestFewerStudsAreNeverSafer(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 500 {
		n := 2 + r.IntN(5)
		studs := make([]float64, n)
		for i := range studs {
			studs[i] = r.Float64()*0.3 + 0.4*float64(i)
		}
		centre := r.Float64() * 0.4 * float64(n)
		all := wall.HeaviestShare(centre, studs)
		assert.GreaterOrEqual(t, all, 1/float64(n)-1e-9)
		if n > 2 {
			gone := r.IntN(n)
			assert.GreaterOrEqual(t, wall.HeaviestShare(centre, slices.Delete(slices.Clone(studs), gone, gone+1)), all-1e-9)
		}
	}
}

func strip(t *testing.T, l wall.Load, studs []float64, diameterMM, factor float64) wall.Strip {
	t.Helper()
	s, ok := wall.ChooseStrip(l, studs, diameterMM, factor)
	require.True(t, ok)
	return s
}

// One strip followed by hand. 6 mm said: No. 12 (D 5.486 mm), 100 mm long, 57 mm
// in the stud behind 25 mm of board, more than ten diameters. Two studs, 7/12 of
// the load at the left one, six screws there: 392.4 × 4 × 0.5833 / 6 = 152.6 N
// down. The screws sit 21.9 mm from the foot and 54.9 mm apart; the strip is 336.2
// mm high with its bevel; the top one takes 336.2 × 296.2 / 197 100 of 576.7 N.
func TestStripByHand(t *testing.T) {
	s := strip(t, panelLoad(), []float64{1.5, 2.1}, 6, 4)
	assert.Equal(t, []any{12, 100.0, 6}, []any{s.Gauge, s.ScrewMM, s.AStud})
	assert.InDelta(t, 152.6, s.ShearN, 0.1)
	edge, step := 4*5.4864, 54.864
	squares, top := 0.0, 0.0
	for i := range 6 {
		top = edge + float64(i)*step
		squares += top * top
	}
	height := 2*edge + 5*step + 18
	assert.InDelta(t, height/1000, s.HeightM, 1e-9)
	out := (392.4*0.06/0.65 + 392.4*0.7/1.3) * 4 * 0.35 / 0.6
	assert.InDelta(t, out*height*top/squares, s.PullN, 0.1)
	// Head in 18 mm: 690 π 0.414 × 0.42² × 0.7087 × 0.9 = 101.0 lbf = 449.2 N;
	// thread: 108.6 lbf/in × (57 − 11) mm × 0.9 is more.
	assert.InDelta(t, 449.2, s.HoldsPullN, 0.2)
	assert.LessOrEqual(t, s.Use, 1.0)
	assert.Greater(t, s.Use, s.ShearN/s.HoldsShearN)
	assert.True(t, s.Fits)
}

// The strip between its studs: w l²/8 and, beyond the last, w c²/2, against 875
// psi for ever. One stud in the middle leaves 0.55 m at either side.
func TestStripBends(t *testing.T) {
	l := panelLoad()
	s := strip(t, l, []float64{1.75}, 6, 4)
	down, out := l.DownN()/1.1, l.OutN()/1.1
	moment := func(w float64) float64 { return w * 0.55 * 0.55 / 2 }
	h, thick := s.HeightM, 0.018
	want := 4 * (6*moment(down)/(thick*h*h) + 6*moment(out)/(h*thick*thick)) / (875 * 6894.757 * 0.9)
	assert.InEpsilon(t, want, s.BendUse, 1e-9)
	// A free end sags w c⁴/8EI, twice that after years; 2 c / 300 may be.
	sag := 2 * out * math.Pow(0.55, 4) / (8 * 1.4e6 * 6894.757 * h * math.Pow(thick, 3) / 12)
	assert.InEpsilon(t, sag/(2*0.55/300), s.SagUse, 1e-9)

	wide := l
	wide.LeftM, wide.RightM = 1.5, 2.1 // no overhang: the span of 0.6 m rules
	s = strip(t, wide, []float64{1.5, 2.1}, 6, 4)
	w := func(n float64) float64 { return n / 0.6 * 0.36 / 8 }
	h = s.HeightM
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
	_, ok := wall.ChooseStrip(panelLoad(), two, 3, 4)
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

// The booth: 16.79 kg, 1.70 kg of pull, 1.20 and 0.80 kN, factor 4: 4 plugs. The
// worked job has 16 %, which is 0.64 of a plug over four; the wedge of the 45°
// bevel, which it leaves out, adds 0.44.
func TestRated(t *testing.T) {
	l := panelLoad()
	l.Kg, l.CentroidM, l.FieldHeightM = 16.79, 1.70/16.79*(0.6156-0.15), 0.6156
	flat := l
	flat.BevelRad = 0
	got := wall.ChooseRated(flat, 1.2, 0.8, 4)
	assert.Equal(t, 4, got.Count)
	assert.InDelta(t, 0.16, got.Use, 0.002)
	got = wall.ChooseRated(l, 1.2, 0.8, 4)
	assert.Equal(t, 4, got.Count)
	assert.InDelta(t, (0.6323+4*16.79*9.81/1000*0.7/1.3/0.8)/4, got.Use, 0.001)
	weak := wall.ChooseRated(l, 0.1, 0.1, 4)
	assert.Greater(t, weak.Count, 4)
	assert.LessOrEqual(t, weak.Use, 1.0)
	assert.Greater(t, wall.ChooseRated(l, 1e-4, 1e-4, 4).Use, 1.0, "there is an end to counting")
}
