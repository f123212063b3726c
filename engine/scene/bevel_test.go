package scene_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/scene"
)

// TestBevelAgainstSmallSteps: rays from outside meet a bevelled bar where small steps
// along them first come into the trapezium that its section is: the lower edge rises
// towards the room by the bevel, or the upper one does.
func TestBevelAgainstSmallSteps(t *testing.T) {
	const left, low, out, wide, high, deep = 1.0, 1.2, 0.3, 0.5, 0.08, 0.04
	r := rand.New(rand.NewPCG(7, 7))
	met, slanted := 0, 0
	for range 4000 {
		bevel := []float64{1, 0.577, -1, -1.7}[r.IntN(4)]
		p := barePanel(1, 1, 0.01, []float64{0})
		p.LeftM, p.BottomM, p.OuterWidthM, p.OuterHeightM = left, low, wide, high
		p.OutM, p.CleatThicknessM, p.BackerThicknessM, p.Bevel = out, 0, deep, bevel
		inside := func(x, y, z float64) bool {
			foot, top := low, low+high
			if bevel > 0 {
				foot += bevel * (z - out)
			} else {
				top += bevel * (out + deep - z)
			}
			return x > left && x < left+wide && z > out && z < out+deep && y > foot && y < top
		}
		o := [3]float64{left + wide*(3*r.Float64()-1), low + high*(8*r.Float64()-4), out + 4*deep*r.Float64()}
		to := [3]float64{left + wide*r.Float64(), low + high*r.Float64(), out + deep*r.Float64()}
		if inside(o[0], o[1], o[2]) {
			continue
		}
		var d [3]float64
		far := math.Sqrt((to[0]-o[0])*(to[0]-o[0]) + (to[1]-o[1])*(to[1]-o[1]) + (to[2]-o[2])*(to[2]-o[2]))
		for k := range d {
			d[k] = (to[k] - o[k]) / far
		}
		const step = 1e-4
		want := math.Inf(1)
		for s := 0.0; s < far+1; s += step {
			if inside(o[0]+s*d[0], o[1]+s*d[1], o[2]+s*d[2]) {
				want = s
				break
			}
		}
		got, n := scene.BackerHit(p, o, d)
		if math.IsInf(want, 1) {
			// A corner may be cut off between two steps.
			if got < 1e29 {
				assert.False(t, inside(o[0]+(got+step)*d[0], o[1]+(got+step)*d[1], o[2]+(got+step)*d[2]), "%v", o)
			}
			continue
		}
		met++
		require.InDelta(t, want, got, 2*step, "bevel %g from %v along %v", bevel, o, d)
		require.Negative(t, n[0]*d[0]+n[1]*d[1]+n[2]*d[2], "the face looks at the viewer")
		if n[1] != 0 && n[2] != 0 {
			slanted++
			require.InDelta(t, math.Abs(bevel), math.Abs(n[2]/n[1]), 1e-9)
		}
	}
	assert.Greater(t, met, 2000)
	assert.Greater(t, slanted, 300)
}
