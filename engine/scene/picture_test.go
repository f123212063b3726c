package scene_test

import (
	"image"
	"math"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/scene"
)

// straightOn projects by hand: the picture of a pinhole camera that looks along
// -z at the centre of a single panel. The viewer stands where the panel with a
// margin of 1.22 fits into a picture of 4 to 3 at an angle of view of 19 degrees;
// the picture is cut so that the panel fits the tighter of its sides.
type straightOn struct{ w, h, cx, cy, eyeZ, focal float64 }

func lookAt(p scene.Panel, depthM float64, w, h int) straightOn {
	tan := math.Tan(9.5 * math.Pi / 180)
	fw, fh := float64(w), float64(h)
	far := max(1.22*max(p.OuterHeightM/2, p.OuterWidthM/2*3/4)/tan+depthM/2, 1.2)
	half := 1.22 * max(p.OuterHeightM/2, p.OuterWidthM/2*fh/fw) / (far - depthM/2)
	return straightOn{fw, fh, p.LeftM + p.OuterWidthM/2, p.BottomM + p.OuterHeightM/2, depthM/2 + far, fh / 2 / half}
}

// lampOf is where the lamp of a single panel hangs: 3.2 m from its centre.
func lampOf(p scene.Panel, depthM float64, l scene.Lamp) (x, y, z float64) {
	dx, dy, dz := l.Towards()
	const reach = 3.2
	return p.LeftM + p.OuterWidthM/2 + reach*dx, p.BottomM + p.OuterHeightM/2 + reach*dy, depthM/2 + reach*dz
}

// shadowOf is how far along x an edge at x and height z throws its shadow on the
// plane at height on, by similar triangles.
func shadowOf(x, z, on, lampX, lampZ float64) float64 {
	return x + (z-on)*(x-lampX)/(lampZ-z)
}

func (s straightOn) px(x, z float64) float64 { return s.w/2 + (x-s.cx)*s.focal/(s.eyeZ-z) }
func (s straightOn) py(y, z float64) float64 { return s.h/2 - (y-s.cy)*s.focal/(s.eyeZ-z) }

// TestBlockStandsWhereItMust: the edges of each block's top, projected by hand,
// part the cells that Hit finds.
func TestBlockStandsWhereItMust(t *testing.T) {
	const w, h, pitch, height = 600, 400, 0.05, 0.04
	p := barePanel(5, 3, pitch, []float64{height})
	s := sceneOf(p)
	const front = 0.030 + height
	cam := lookAt(p, front, w, h)
	for row := range 3 {
		for col := range 5 {
			left, right := cam.px(1+float64(col)*pitch, front), cam.px(1+float64(col+1)*pitch, front)
			top, low := cam.py(1+float64(3-row)*pitch, front), cam.py(1+float64(2-row)*pitch, front)
			for _, at := range [][2]float64{{left + 0.1, top + 0.1}, {right - 0.1, top + 0.1}, {left + 0.1, low - 0.1}, {right - 0.1, low - 0.1}} {
				panel, gotCol, gotRow, ok := s.Hit(w, h, at[0], at[1])
				require.True(t, ok)
				require.Equal(t, [3]int{0, col, row}, [3]int{panel, gotCol, gotRow}, "at %v", at)
			}
		}
	}
	left := cam.px(1, front)
	_, _, _, ok := s.Hit(w, h, left-0.1, h/2)
	assert.False(t, ok, "beside the panel is wall")
}

// brightness is that of a pixel, of three bytes.
func brightness(m *image.RGBA, x, y int) int {
	c := m.RGBAAt(x, y)
	return int(c.R) + int(c.G) + int(c.B)
}

// steepest returns where a row of the picture brightens most between two
// places, as the border between two pixels.
func steepest(m *image.RGBA, y, from, to int) float64 {
	best, at := 0, 0
	for x := from; x < to; x++ {
		if d := brightness(m, x+1, y) - brightness(m, x, y); d > best {
			best, at = d, x+1
		}
	}
	return float64(at)
}

// TestShadowLength: the edge of a shadow lies where the line from the lamp over
// the edge of the thing meets the plane.
func TestShadowLength(t *testing.T) {
	const w, h = 900, 400
	for _, elevation := range []float64{30, 45, 60} {
		lamp := scene.Lamp{AzimuthDeg: 270, ElevationDeg: elevation, WarmthK: 3900}

		block := barePanel(1, 1, 0.2, []float64{0.15})
		s := sceneOf(block)
		s.Lamp, s.Camera.Zoom = lamp, 0.4 // the shadow is longer than the block
		m := scene.Render(s, w, h, 1)
		cam := lookAt(block, 0.180, w, h)
		cam.focal *= 0.4
		lampX, _, lampZ := lampOf(block, 0.180, lamp)
		want := cam.px(shadowOf(1.2, 0.180, 0, lampX, lampZ), 0)
		got := steepest(m, h/2, int(cam.px(1.2, 0.18))+3, min(int(want)+60, w-2))
		assert.InDelta(t, want, got, 1, "block on the wall, lamp at %g°", elevation)

		frame := framed(barePanel(4, 4, 0.05, []float64{0.02}), 0.120)
		s = sceneOf(frame)
		s.Lamp = lamp
		m = scene.Render(s, w, h, 1)
		cam = lookAt(frame, 0.120, w, h)
		lampX, _, lampZ = lampOf(frame, 0.120, lamp)
		want = cam.px(shadowOf(1.246, 0.120, 0, lampX, lampZ), 0)
		got = steepest(m, h/2, int(cam.px(1.246, 0.12))+3, min(int(want)+60, w-2))
		assert.InDelta(t, want, got, 1, "frame on the wall, lamp at %g°", elevation)

		step := barePanel(8, 1, 0.05, []float64{0.02, 0.05}, 1, 0, 0, 0, 0, 0, 0, 0)
		s = sceneOf(step)
		s.Lamp = lamp
		m = scene.Render(s, w, h, 1)
		cam = lookAt(step, 0.080, w, h)
		lampX, _, lampZ = lampOf(step, 0.080, lamp)
		want = cam.px(shadowOf(1.05, 0.080, 0.050, lampX, lampZ), 0.050)
		got = steepest(m, h/2, int(cam.px(1.05, 0.08))+2, int(want)+20)
		assert.InDelta(t, want, got, 1.5, "block on its neighbours, lamp at %g°", elevation)
	}
}

// TestStraightLampThrowsNoShadow: with the lamp straight on the picture of a
// panel is its own mirror image; with a lamp at the left it is not.
func TestStraightLampThrowsNoShadow(t *testing.T) {
	const w, h = 300, 200
	p := barePanel(3, 1, 0.1, []float64{0.03, 0.1}, 0, 1, 0)
	s := sceneOf(p)
	s.Wall.WidthM = 2.3 // the panel hangs in its middle
	asymmetry := func(elevation float64) (worst int) {
		s.Lamp = scene.Lamp{AzimuthDeg: 270, ElevationDeg: elevation, WarmthK: 3900}
		m := scene.Render(s, w, h, 1)
		for y := range h {
			for x := range w / 2 {
				// Blocks differ in grain and tone: the wall tells.
				if _, _, _, ok := s.Hit(w, h, float64(x)+0.5, float64(y)+0.5); ok {
					continue
				}
				d := brightness(m, x, y) - brightness(m, w-1-x, y)
				worst = max(worst, d, -d)
			}
		}
		return worst
	}
	assert.LessOrEqual(t, asymmetry(90), 6, "dither alone, one level a part and side")
	assert.Greater(t, asymmetry(40), 100)
}

// TestRowZeroIsAtTheTop: one tall block in column 0 of row 0, the lamp at the
// left: its shadow lies on its right neighbour, in the upper half.
func TestRowZeroIsAtTheTop(t *testing.T) {
	const w, h = 300, 200
	p := barePanel(3, 2, 0.1, []float64{0.02, 0.15}, 1, 0, 0, 0, 0, 0)
	s := sceneOf(p)
	s.Lamp = scene.Lamp{AzimuthDeg: 270, ElevationDeg: 50, WarmthK: 3900}
	m := scene.Render(s, w, h, 2)
	cam := lookAt(p, 0.18, w, h)
	at := func(col, row int) int {
		return brightness(m, int(cam.px(1.05+0.1*float64(col), 0.05)), int(cam.py(1.15-0.1*float64(row), 0.05)))
	}
	for row := range 2 {
		for col := range 3 {
			switch {
			case row == 0 && col == 0:
			case row == 0 && col == 1:
				assert.Less(t, at(col, row), at(2, 0)*7/10, "in the shadow")
			default:
				assert.Greater(t, at(col, row), at(1, 0)*13/10, "column %d row %d is lit", col, row)
			}
		}
	}
	panel, col, row, ok := s.Hit(w, h, cam.px(1.05, 0.18), cam.py(1.15, 0.18))
	assert.Equal(t, [4]any{0, 0, 0, true}, [4]any{panel, col, row, ok})
}

// TestHitAgreesWithThePicture: panels with blocks of pure colours, everything
// else grey; each pixel's colour tells which panel Hit must name.
func TestHitAgreesWithThePicture(t *testing.T) {
	const w, h = 240, 160
	red := framed(barePanel(6, 5, 0.05, []float64{0.02, 0.06}, chequer(6, 5)...), 0.08)
	red.Blocks = material(0.8, 0.02, 0.02)
	blue := barePanel(6, 5, 0.05, []float64{0.01, 0.07}, chequer(6, 5)...)
	blue.LeftM += 0.5
	blue.Blocks = material(0.02, 0.02, 0.8)
	for _, cam := range []scene.Camera{{Zoom: 1}, {YawDeg: 50, PitchDeg: 30, Zoom: 1.2}, {YawDeg: -70, PitchDeg: -40, Zoom: 0.8}} {
		s := sceneOf(red, blue)
		s.Wall.Colour = scene.RGB{R: 0.5, G: 0.5, B: 0.5}
		s.Lamp.WarmthK = 3900 // white
		s.Camera = cam
		m := scene.Render(s, w, h, 1)
		cells := 0
		for y := range h {
			for x := range w {
				panel, _, _, ok := s.Hit(w, h, float64(x)+0.5, float64(y)+0.5)
				c := m.RGBAAt(x, y)
				want := -1
				if int(c.R) > 2*int(c.B) {
					want = 0
				} else if int(c.B) > 2*int(c.R) {
					want = 1
				}
				if !ok {
					panel = -1
				} else {
					cells++
				}
				require.Equal(t, want, panel, "pixel %d, %d of %v: %v", x, y, cam, c)
			}
		}
		assert.Greater(t, cells, w*h/20, "%v sees the panels", cam)
	}
}

func chequer(columns, rows int) []uint8 {
	levels := make([]uint8, columns*rows)
	for i := range levels {
		levels[i] = uint8((i%columns + i/columns) % 2)
	}
	return levels
}

// TestZoomIsAMagnifier: zooming keeps the viewer in place, so twice the zoom
// shows at twice the distance from the middle what stood there before.
func TestZoomIsAMagnifier(t *testing.T) {
	const w, h = 600, 400
	near, far := defaultScene(), defaultScene()
	far.Camera = scene.Camera{YawDeg: 20, PitchDeg: -15, Zoom: 1}
	near.Camera = far.Camera.ZoomBy(2)
	for dx := -140.0; dx <= 140; dx += 17 {
		for dy := -90.0; dy <= 90; dy += 13 {
			p1, c1, r1, ok1 := far.Hit(w, h, w/2+dx, h/2+dy)
			p2, c2, r2, ok2 := near.Hit(w, h, w/2+2*dx, h/2+2*dy)
			require.Equal(t, [4]any{p1, c1, r1, ok1}, [4]any{p2, c2, r2, ok2}, "%g, %g", dx, dy)
		}
	}
}

// TestOrbitFollowsThePointer: after a drag to the right and down the front of a
// lone tall block has moved to the right and down.
func TestOrbitFollowsThePointer(t *testing.T) {
	const w, h = 300, 200
	s := sceneOf(barePanel(5, 5, 0.04, []float64{0, 0.3}, func() []uint8 {
		levels := make([]uint8, 25)
		levels[12] = 1
		return levels
	}()...))
	centre := func() (x, y float64) {
		n := 0.0
		for py := range h {
			for px := range w {
				if _, col, row, ok := s.Hit(w, h, float64(px), float64(py)); ok && col == 2 && row == 2 {
					x, y, n = x+float64(px), y+float64(py), n+1
				}
			}
		}
		return x / n, y / n
	}
	x0, y0 := centre()
	s.Camera = s.Camera.Orbit(0.1, 0.1)
	x1, y1 := centre()
	assert.Greater(t, x1, x0+2)
	assert.Greater(t, y1, y0+2)
}

func TestRenderIsDeterministic(t *testing.T) {
	s := defaultScene()
	want := scene.Render(s, 150, 101, 3)
	old := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(old)
	assert.Equal(t, want.Pix, scene.Render(s, 150, 101, 3).Pix, "one worker or many")
	assert.Equal(t, image.Rect(0, 0, 1, 1), scene.Render(s, 0, -5, 0).Bounds(), "sizes are clamped")
}

// A refined picture is like one with all samples everywhere, also where shadows have
// wide soft edges: the eye does not tell pictures apart from 40 dB on (common
// practice, no source). One that is never refined is worse.
func TestRefinedIsAsGoodAsWhole(t *testing.T) {
	psnr := func(a, b *image.RGBA) float64 {
		squares := 0.0
		for i := range a.Pix {
			d := float64(a.Pix[i]) - float64(b.Pix[i])
			squares += d * d
		}
		return 10 * math.Log10(255*255*float64(len(a.Pix))/squares)
	}
	raking := defaultScene()
	raking.Lamp = raking.Lamp.Raking()
	for name, s := range map[string]scene.Scene{"default": defaultScene(), "raking": raking, "near": raking.Look(scene.CloseUp, scene.Viewer{})} {
		whole := scene.Render(s, 400, 300, 2)
		refined, rough := psnr(scene.RenderRefined(s, 400, 300, 2), whole), psnr(scene.Render(s, 400, 300, 1), whole)
		assert.Greater(t, refined, 40.0, name)
		assert.Greater(t, refined, rough+3, name)
	}
}

// TestNoShadowAcne: the lit front of a wall of equal blocks
// differs by its tone, rings and the lamp's falloff; no pixel may be as dark as
// a shadow.
func TestNoShadowAcne(t *testing.T) {
	for _, elevation := range []float64{8, 35, 80} {
		p := barePanel(20, 12, 0.036, []float64{0.064})
		s := sceneOf(p)
		s.Lamp = scene.Lamp{AzimuthDeg: 20, ElevationDeg: elevation, WarmthK: 3900}
		m := scene.Render(s, 600, 400, 1)
		cam := lookAt(p, 0.094, 600, 400)
		lightest, darkest := 0, 765
		for row := range 12 {
			for col := range 20 {
				x := int(cam.px(1+0.036*(float64(col)+0.5), 0.094))
				y := int(cam.py(1+0.036*(float64(row)+0.5), 0.094))
				lightest, darkest = max(lightest, brightness(m, x, y)), min(darkest, brightness(m, x, y))
			}
		}
		assert.Greater(t, darkest*100, lightest*62, "lamp at %g°", elevation)
	}
}

// TestNoSparks: in a small white panel whose gap behind the frame fills many
// pixels nothing is brighter than what the lamp lights best; there a formula of
// the fill once ran away.
func TestNoSparks(t *testing.T) {
	const w, h = 300, 200
	white := material(0.7, 0.7, 0.7)
	p := framed(barePanel(2, 2, 0.0362, []float64{0.092}), 0.127)
	p.Blocks, p.Frame, p.Backer = white, white, white
	s := sceneOf(p)
	s.Wall.Colour = white.Face
	for yaw := -20.0; yaw <= 20; yaw += 5 {
		s.Camera = scene.Camera{YawDeg: yaw, PitchDeg: 6, Zoom: 3}
		m := scene.Render(s, w, h, 1)
		for y := range h {
			for x := range w {
				if brightness(m, x, y) > 3*250 {
					t.Fatalf("yaw %g: pixel %d, %d is %v", yaw, x, y, m.RGBAAt(x, y))
				}
			}
		}
	}
}

// TestTheVeryMiddleIsSeen: the ray through the middle of a picture straight on
// runs along none of the frame's sides, and meets the block there.
func TestTheVeryMiddleIsSeen(t *testing.T) {
	p := framed(barePanel(5, 3, 0.05, []float64{0.04}), 0.1)
	panel, col, row, ok := sceneOf(p).Hit(600, 400, 300, 200)
	assert.Equal(t, [4]any{0, 2, 1, true}, [4]any{panel, col, row, ok})
}

// TestCostGrowsSlowly: a field of the same size in 55 times as many blocks, seen and
// lit almost along the wall, takes no more than the square root of that longer: a ray
// passes one row of cells, not all. The fastest of some runs counts.
func TestCostGrowsSlowly(t *testing.T) {
	const wide, high, runs = 320, 240, 3
	fastest := func(columns, rows int) time.Duration {
		p := barePanel(columns, rows, 1.2/float64(columns), []float64{0.02, 0.05, 0.09})
		for i := range p.Levels {
			p.Levels[i] = uint8(i * i / 3 % 3)
		}
		s := sceneOf(p)
		s.Camera.YawDeg, s.Lamp.ElevationDeg = 70, 8
		best := time.Hour
		for range runs {
			start := time.Now()
			scene.Render(s, wide, high, 1)
			best = min(best, time.Since(start))
		}
		return best
	}
	few, many := fastest(33, 22), fastest(240, 166)
	t.Logf("%v for 726 blocks, %v for 39,840", few, many)
	assert.Less(t, many.Seconds()/few.Seconds(), math.Sqrt(39_840.0/726))
}
