package scene_test

import (
	"image"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/scene"
)

// linear undoes the sRGB curve (IEC 61966-2-1) for a pixel's green. Below the
// shoulder of the tone curve that is the light itself.
func linear(m *image.RGBA, x, y int) float64 {
	c := float64(m.RGBAAt(x, y).G) / 255
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}

// TestCosineAndInverseSquare: on a flat field without grain light is a constant
// of the room and a constant times cos θ / d², by the place of the lamp alone.
// Any three places must agree.
func TestCosineAndInverseSquare(t *testing.T) {
	const w, h, front = 900, 600, 0.030 + 0.064
	p := barePanel(40, 24, 0.036, []float64{0.064})
	dark := material(0.25, 0.25, 0.25)
	p.Blocks, p.Frame, p.Backer = dark, dark, dark
	for _, lamp := range []scene.Lamp{
		{AzimuthDeg: 300, ElevationDeg: 30, WarmthK: 3900}, {AzimuthDeg: 45, ElevationDeg: 60, WarmthK: 3900},
	} {
		s := sceneOf(p)
		s.Lamp = lamp
		m := scene.Render(s, w, h, 1)
		cam := lookAt(p, front, w, h)
		lampX, lampY, lampZ := lampOf(p, front, lamp)
		law := func(x, y float64) float64 {
			d := math.Sqrt((lampX-x)*(lampX-x) + (lampY-y)*(lampY-y) + (lampZ-front)*(lampZ-front))
			return (lampZ - front) / d / (d * d)
		}
		at := func(col, row int) (want, got float64) {
			x, y := 1+0.036*(float64(col)+0.5), 1+0.036*(float64(24-row)-0.5)
			px, py := int(cam.px(x, front)), int(cam.py(y, front))
			for dy := -3; dy <= 3; dy++ { // evens out the dither
				for dx := -3; dx <= 3; dx++ {
					got += linear(m, px+dx, py+dy) / 49
				}
			}
			return law(x, y), got
		}
		want0, got0 := at(1, 1)
		want1, got1 := at(38, 22)
		require.Greater(t, math.Abs(got1-got0), 0.02, "the field is not evenly lit")
		perLaw := (got1 - got0) / (want1 - want0)
		assert.Positive(t, perLaw)
		for col := 1; col < 40; col += 6 {
			for row := 1; row < 24; row += 4 {
				want, got := at(col, row)
				assert.InDelta(t, got0+perLaw*(want-want0), got, 0.002, "lamp %v, column %d, row %d", lamp, col, row)
			}
		}
	}
}

// TestHeightZeroIsTheBareBacker: where no block stands, its wood does not matter
// and the picture is that of the backer.
func TestHeightZeroIsTheBareBacker(t *testing.T) {
	const w, h = 300, 200
	draw := func(blocks scene.Material, heights ...float64) *image.RGBA {
		p := framed(barePanel(8, 5, 0.05, heights), 0.08)
		p.Blocks, p.Backer = blocks, material(0.1, 0.5, 0.2)
		return scene.Render(sceneOf(p), w, h, 1)
	}
	bare := draw(material(0.9, 0.1, 0.1), 0, 0.05)
	assert.Equal(t, bare.Pix, draw(material(0.1, 0.1, 0.9), 0, 0.05).Pix, "another wood")
	assert.NotEqual(t, bare.Pix, draw(material(0.1, 0.1, 0.9), 0.02, 0.05).Pix, "blocks are seen")
	c := bare.RGBAAt(w/2, h/2)
	assert.Greater(t, int(c.G), 2*int(c.R), "the backer's green, not the blocks' red: %v", c)
}

// TestBlocksOfAStickResemble: blocks of one stick differ less in tone than
// blocks of different sticks, whether they are cut as a plan says or by chance.
func TestBlocksOfAStickResemble(t *testing.T) {
	t.Run("by chance", func(t *testing.T) { resemble(t, barePanel(30, 20, 0.036, []float64{0.064})) })
	t.Run("by a plan", func(t *testing.T) {
		p := barePanel(30, 20, 0.036, []float64{0.064})
		for i := range p.Levels {
			p.Cut = append(p.Cut, scene.CutOf(i%32, i/32))
		}
		resemble(t, p)
	})
}

func resemble(t *testing.T, p scene.Panel) {
	const w, h, front = 1200, 800, 0.030 + 0.064
	p.Blocks.Grain = scene.Grain{RingM: 0.003, Spread: 0.3, SapTint: scene.RGB{R: 1, G: 1, B: 1}}
	s := sceneOf(p)
	s.Lamp = scene.Lamp{ElevationDeg: 90, WarmthK: 3900} // evenly lit
	m := scene.Render(s, w, h, 1)
	cam := lookAt(p, front, w, h)
	byStick := map[int][]float64{}
	for row := range 20 {
		for col := range 30 {
			x, y := cam.px(1+0.036*(float64(col)+0.5), front), cam.py(1+0.036*(float64(20-row)-0.5), front)
			n := int(scene.ChanceCut(uint32(p.Seed), col, row)) % 32
			if len(p.Cut) > 0 {
				n = (row*30 + col) % 32
			}
			byStick[n] = append(byStick[n], linear(m, int(x), int(y)))
		}
	}
	require.Len(t, byStick, 32)
	var means []float64
	within := 0.0
	for _, all := range byStick {
		mean, spread := meanAndSpread(all)
		means = append(means, mean)
		within += spread / float64(len(byStick))
	}
	_, between := meanAndSpread(means)
	assert.Greater(t, between, 1.3*within, "between sticks %.4f, within one %.4f", between, within)
}

func meanAndSpread(all []float64) (mean, spread float64) {
	for _, v := range all {
		mean += v / float64(len(all))
	}
	for _, v := range all {
		spread += (v - mean) * (v - mean) / float64(len(all))
	}
	return mean, math.Sqrt(spread)
}

// lookAlikes are the pairs of woods that a quick eye may mix up by their colour;
// grain tells them apart from near by.
var lookAlikes = map[[2]string]bool{
	{"spruce", "maple"}: true, {"spruce", "ash"}: true,
}

// TestWoodsAreToldApart: the mean tones of any other two woods differ by at least
// five in CIELAB (formula of 1976; a difference of about two is just seen, common
// practice).
func TestWoodsAreToldApart(t *testing.T) {
	woods := []string{"pine", "spruce", "cedar", "poplar", "beech", "ash", "maple", "oak", "cherry", "walnut"}
	for _, finish := range []string{"none", "hard-wax oil"} {
		for i, one := range woods {
			a, _ := scene.WoodMaterial(one, finish)
			for _, other := range woods[i+1:] {
				b, _ := scene.WoodMaterial(other, finish)
				apart := labApart(a.Face, b.Face)
				if lookAlikes[[2]string{one, other}] {
					assert.NotEqual(t, a.Grain, b.Grain)
					continue
				}
				assert.Greater(t, apart, 5.0, "%s and %s, %s", one, other, finish)
			}
		}
	}
}

// labApart is the difference of two colours in CIELAB (CIE 1976, white D65).
func labApart(a, b scene.RGB) float64 {
	lab := func(c scene.RGB) [3]float64 {
		f := func(v float64) float64 {
			if v > 216.0/24389 {
				return math.Cbrt(v)
			}
			return (24389.0/27*v + 16) / 116
		}
		x := f((0.4124*c.R + 0.3576*c.G + 0.1805*c.B) / 0.9505)
		y := f(0.2126*c.R + 0.7152*c.G + 0.0722*c.B)
		z := f((0.0193*c.R + 0.1192*c.G + 0.9505*c.B) / 1.089)
		return [3]float64{116*y - 16, 500 * (x - y), 200 * (y - z)}
	}
	p, q := lab(a), lab(b)
	return math.Sqrt((p[0]-q[0])*(p[0]-q[0]) + (p[1]-q[1])*(p[1]-q[1]) + (p[2]-q[2])*(p[2]-q[2]))
}
