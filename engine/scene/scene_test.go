package scene_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/scene"
)

// material is a dull material of one colour, so that a pixel tells what it is.
func material(r, g, b float64) scene.Material {
	c := scene.RGB{R: r, G: g, B: b}
	return scene.Material{Face: c, End: c}
}

// barePanel has no frame: its outer edge is the field's. Heights are by level,
// levels row by row.
func barePanel(columns, rows int, pitchM float64, heightsM []float64, levels ...uint8) scene.Panel {
	if levels == nil {
		levels = make([]uint8, columns*rows)
	}
	wood := material(0.5, 0.5, 0.5)
	return scene.Panel{
		LeftM: 1, BottomM: 1, OuterWidthM: float64(columns) * pitchM, OuterHeightM: float64(rows) * pitchM,
		CleatThicknessM: 0.018, BackerThicknessM: 0.012,
		Columns: columns, Rows: rows, PitchM: pitchM, BlockM: pitchM,
		HeightsM: heightsM, Levels: levels, Blocks: wood, Frame: wood, Backer: wood,
	}
}

// framed puts a frame of the default thickness and gap round a panel.
func framed(p scene.Panel, depthM float64) scene.Panel {
	p.FrameThicknessM, p.FrameGapM, p.FrameDepthM = 0.020, 0.003, depthM
	p.OuterWidthM += 0.046
	p.OuterHeightM += 0.046
	return p
}

func sceneOf(panels ...scene.Panel) scene.Scene {
	return scene.Scene{
		Wall:   scene.Wall{WidthM: 4, HeightM: 3, Colour: scene.PlainWall()},
		Panels: panels,
		Camera: scene.Camera{Zoom: 1},
		Lamp:   scene.Lamp{AzimuthDeg: 315, ElevationDeg: 35, WarmthK: 3000},
	}
}

// defaultScene is the default design: 33 × 22 cells of four heights in clumps
// of two (the arrangement itself is invented).
func defaultScene() scene.Scene {
	levels := make([]uint8, 33*22)
	for i := range levels {
		x, y := i%33/2, i/33/2
		levels[i] = uint8((x*x*7 + y*y*5 + x*y*3) / 3 % 4)
	}
	p := framed(barePanel(33, 22, 0.0362, []float64{0.026, 0.042, 0.064, 0.092}, levels...), 0.127)
	p.LeftM, p.BlockM, p.Mitred, p.Seed = 1.13, 0.036, true, 1
	p.Blocks, _ = scene.WoodMaterial("poplar", "waterborne varnish")
	p.Frame = p.Blocks
	p.Backer, _ = scene.BackerMaterial("birch ply")
	return sceneOf(p)
}

func TestValidateNamesEveryFault(t *testing.T) {
	s := defaultScene()
	require.NoError(t, s.Validate())
	s.Camera.YawDeg = 81
	s.Lamp.ElevationDeg = math.NaN()
	s.Panels[0].Levels[40] = 4
	s.Panels[0].BlockM = 0.05
	err := s.Validate()
	require.Error(t, err)
	for _, want := range []string{
		"camera.yaw: got 81 (allowed -80 to 80)",
		"lamp.elevation: got NaN",
		"panels[0].levels[40]: got 4 (allowed 0 to 3)",
		"panels[0].block: got 0.05 (allowed 0.0001 to 0.0362)",
	} {
		assert.ErrorContains(t, err, want)
	}
}

func TestCameraStaysInItsLimits(t *testing.T) {
	straight := scene.Camera{Zoom: 1}
	assert.Equal(t, scene.Camera{YawDeg: -80, PitchDeg: 60, Zoom: 1}, straight.Orbit(9, 9))
	assert.Equal(t, scene.Camera{YawDeg: 80, PitchDeg: -60, Zoom: 1}, straight.Orbit(-9, -9))
	assert.Equal(t, 24.0, straight.ZoomBy(100).Zoom)
	assert.Equal(t, 0.3, straight.ZoomBy(0.001).Zoom)
	for _, bad := range []float64{0, -1, math.NaN()} {
		assert.Equal(t, straight, straight.ZoomBy(bad), "factor %g", bad)
	}
	assert.Equal(t, straight, straight.Orbit(math.NaN(), math.Inf(1)))
	assert.Equal(t, straight, scene.Camera{}.Orbit(0, 0), "the zero camera looks straight on")
}

// TestLampTowards: by hand from the definition of azimuth and elevation.
func TestLampTowards(t *testing.T) {
	half, root := 0.5, math.Sqrt(3)/2
	for _, c := range []struct {
		name             string
		azimuth, elev    float64
		wantX, wantY, wZ float64
	}{
		{"from above", 0, 30, 0, root, half},
		{"from the right", 90, 30, root, 0, half},
		{"from below", 180, 60, 0, -half, root},
		{"from the left", 270, 60, -half, 0, root},
		{"straight on", 123, 90, 0, 0, 1},
	} {
		x, y, z := scene.Lamp{AzimuthDeg: c.azimuth, ElevationDeg: c.elev}.Towards()
		assert.InDeltaSlice(t, []float64{c.wantX, c.wantY, c.wZ}, []float64{x, y, z}, 1e-12, c.name)
	}
}

func TestLampFollowsTheDrag(t *testing.T) {
	l := scene.Lamp{AzimuthDeg: 315, ElevationDeg: 35, WarmthK: 3000}
	x0, y0, _ := l.Towards()
	x, y, _ := l.Drag(0.1, 0).Towards()
	assert.InDelta(t, x0+0.2, x, 1e-12, "to the right")
	assert.InDelta(t, y0, y, 1e-12)
	_, y, _ = l.Drag(0, 0.1).Towards()
	assert.InDelta(t, y0-0.2, y, 1e-12, "down")
	back := l.Drag(0.1, 0.05).Drag(-0.1, -0.05)
	assert.InDelta(t, l.AzimuthDeg, back.AzimuthDeg, 1e-9)
	assert.InDelta(t, l.ElevationDeg, back.ElevationDeg, 1e-9)

	far := l.Drag(50, 0)
	assert.Equal(t, float64(scene.MinElevationDeg), far.ElevationDeg, "beyond the wall it rakes")
	assert.InDelta(t, 90, far.AzimuthDeg, 1)
	top := scene.Lamp{AzimuthDeg: 200, ElevationDeg: 90, WarmthK: 3000}.Drag(0, 0)
	assert.Equal(t, 200.0, top.AzimuthDeg, "straight on keeps its azimuth")
}

func TestTowardGoesTheShortWay(t *testing.T) {
	a, b := scene.Lamp{AzimuthDeg: 350, ElevationDeg: 20, WarmthK: 3000, SpreadDeg: 2}, scene.Lamp{AzimuthDeg: 30, ElevationDeg: 60, WarmthK: 5000, SpreadDeg: 4}
	assert.Equal(t, scene.Lamp{AzimuthDeg: 10, ElevationDeg: 40, WarmthK: 4000, SpreadDeg: 3}, a.Toward(b, 0.5))
	assert.InDelta(t, 10, b.Toward(a, 0.5).AzimuthDeg, 1e-9)
	assert.Equal(t, b, a.Toward(b, 1))
	from, to := scene.Camera{YawDeg: -20, Zoom: 1}, scene.Camera{YawDeg: 40, PitchDeg: 10, Zoom: 4}
	assert.Equal(t, scene.Camera{YawDeg: 10, PitchDeg: 5, Zoom: 2}, from.Toward(to, 0.5))
	assert.Equal(t, from, from.Toward(to, 0))
	seated := scene.Camera{Zoom: 1, DistanceM: 2}
	assert.Equal(t, seated, from.Toward(seated, 0.1), "there is no way from a distance that fits to one of its own")
}

// TestSeatedLooksFromTheEars: the viewer of the seated view is where the ears are,
// so the panel's centre is seen under the angle that geometry gives.
func TestSeatedLooksFromTheEars(t *testing.T) {
	s := defaultScene() // its panel is 0.842 m tall, stands at 1 m and is 0.127 m deep
	chair := scene.Viewer{DistanceM: 2.5, EarM: 1.2}
	c := s.Look(scene.Seated, chair).Camera
	up, out := 1.2-(1+0.8424/2), 2.5+0.127/2
	assert.InDelta(t, math.Atan2(up, out)*180/math.Pi, c.PitchDeg, 0.01)
	assert.InDelta(t, math.Hypot(up, out), c.DistanceM, 1e-3)
	assert.True(t, s.Look(scene.WholeWall, chair).Figure)
	for _, v := range scene.Views() {
		assert.NoError(t, s.Look(v, chair).Validate(), v)
	}
}

// TestThreeQuarterIsWhole: whatever the shape of panel and picture, no block touches the
// picture's edge, and one is not far from it.
func TestThreeQuarterIsWhole(t *testing.T) {
	for _, size := range [][2]int{{600, 400}, {400, 600}, {500, 500}} {
		for _, cells := range [][2]int{{30, 4}, {4, 30}, {12, 9}} {
			p := barePanel(cells[0], cells[1], 0.05, []float64{0.1})
			s := sceneOf(p).Look(scene.ThreeQuarter, scene.Viewer{Shape: float64(size[0]) / float64(size[1])})
			seen := func(in int) (n int) {
				for i := in; i < size[0]-in; i++ {
					for _, y := range []int{in, size[1] - 1 - in} {
						if _, _, _, ok := s.Hit(size[0], size[1], float64(i)+0.5, float64(y)+0.5); ok {
							n++
						}
					}
				}
				for i := in; i < size[1]-in; i++ {
					for _, x := range []int{in, size[0] - 1 - in} {
						if _, _, _, ok := s.Hit(size[0], size[1], float64(x)+0.5, float64(i)+0.5); ok {
							n++
						}
					}
				}
				return n
			}
			assert.Zero(t, seen(0), "%v cells in %v", cells, size)
			assert.Positive(t, seen(min(size[0], size[1])/8), "%v cells in %v", cells, size)
		}
	}
}

// TestCloseUpHasNaturalSize: in a picture 20 cm tall the middle block, straight on, is as
// tall as it is.
func TestCloseUpHasNaturalSize(t *testing.T) {
	const w, h, pictureM, front = 900, 600, 0.2, 0.030 + 0.064
	p := barePanel(9, 7, 0.036, []float64{0.064})
	s := sceneOf(p).Look(scene.CloseUp, scene.Viewer{PictureM: pictureM, Shape: float64(w) / h})
	assert.Greater(t, s.Camera.Zoom, 1.0)
	s.Camera.YawDeg, s.Camera.PitchDeg = 0, 0
	_, col, row, ok := s.Hit(w, h, w/2, h/2)
	require.True(t, ok)
	rows := 0
	for py := range h {
		if _, c, r, ok := s.Hit(w, h, w/2, float64(py)+0.5); ok && c == col && r == row {
			rows++
		}
	}
	assert.InDelta(t, 0.036/pictureM*h, rows, 1.5)
	assert.NotEqual(t, s.Camera.Zoom, sceneOf(p).Look(scene.CloseUp, scene.Viewer{}).Camera.Zoom, "of unknown size")
}

// TestWalkPassesBy: the walker comes from the left, is nearest in the middle and leaves
// at the right, always at the height of the eyes and along a straight line.
func TestWalkPassesBy(t *testing.T) {
	s := defaultScene() // its centre is 1.4212 m above the floor
	var along, before []float64
	for k := 0.0; k <= 1; k += 0.125 {
		c := s.Walk(k)
		s.Camera = c
		require.NoError(t, s.Validate())
		yaw, pitch := c.YawDeg*math.Pi/180, c.PitchDeg*math.Pi/180
		assert.InDelta(t, 1.62, 1.4212+c.DistanceM*math.Sin(pitch), 1e-6, "eyes")
		along = append(along, c.DistanceM*math.Cos(pitch)*math.Sin(yaw))
		before = append(before, c.DistanceM*math.Cos(pitch)*math.Cos(yaw))
	}
	for i := 1; i < len(along); i++ {
		assert.InDelta(t, along[1]-along[0], along[i]-along[i-1], 1e-6, "an even pace")
		assert.InDelta(t, before[0], before[i], 1e-6, "a straight line")
	}
	assert.InDelta(t, 0, along[4], 1e-6)
	assert.Positive(t, along[8])
}

func TestMaterials(t *testing.T) {
	woods := []string{"pine", "spruce", "cedar", "poplar", "beech", "ash", "maple", "oak", "cherry", "walnut"}
	finishes := []string{"waterborne varnish", "hard-wax oil", "drying oil", "shellac", "fire-retardant varnish", "none"}
	bright := func(c scene.RGB) float64 { return 0.2126*c.R + 0.7152*c.G + 0.0722*c.B }
	for _, wood := range woods {
		raw, _ := scene.WoodMaterial(wood, "none")
		for _, finish := range finishes {
			m, ok := scene.WoodMaterial(wood, finish)
			require.True(t, ok, "%s, %s", wood, finish)
			assert.Less(t, bright(m.End), bright(m.Face), "end grain of %s, %s", wood, finish)
			assert.LessOrEqual(t, bright(m.Face), bright(raw.Face), "%s deepens %s", finish, wood)
			assert.GreaterOrEqual(t, m.Gloss, raw.Gloss)
			s := defaultScene()
			s.Panels[0].Blocks = m
			assert.NoError(t, s.Validate())
		}
	}
	for _, sheet := range []string{"birch ply", "softwood ply"} {
		_, ok := scene.BackerMaterial(sheet)
		assert.True(t, ok, sheet)
	}
	walnut, _ := scene.WoodMaterial("walnut", "none")
	for _, name := range []string{"clear", "white stain", "grey stain", "brown stain", "black stain",
		"white paint", "grey paint", "green paint", "blue paint", "red paint", "black paint"} {
		m, ok := walnut.Coloured(name)
		require.True(t, ok, name)
		assert.LessOrEqual(t, m.Grain.Late, walnut.Grain.Late, name)
		assert.Less(t, bright(m.End), bright(m.Face), "end grain in %s", name)
		s := defaultScene()
		s.Panels[0].Blocks = m
		assert.NoError(t, s.Validate(), name)
	}
	stained, _ := walnut.Coloured("white stain")
	painted, _ := walnut.Coloured("white paint")
	assert.Greater(t, stained.Grain.Late, 4*painted.Grain.Late, "a stain lets the grain show")
	assert.Greater(t, bright(painted.Face), bright(stained.Face))
	_, ok := walnut.Coloured("gold")
	assert.False(t, ok)
	_, ok = scene.WallPaint("gold")
	assert.False(t, ok)
	_, ok = scene.WoodMaterial("teak", "none")
	assert.False(t, ok)
	_, ok = scene.WoodMaterial("oak", "varnish")
	assert.False(t, ok)
	_, ok = scene.BackerMaterial("")
	assert.False(t, ok)
}

// TestDayGoesAcross: the sun comes from the left, stands highest and palest at
// noon above the wall and leaves at the right.
func TestDayGoesAcross(t *testing.T) {
	morning, noon, evening := scene.Day(0), scene.Day(0.5), scene.Day(1)
	left, _, _ := morning.Towards()
	middle, up, _ := noon.Towards()
	right, _, _ := evening.Towards()
	assert.Less(t, left, -0.5)
	assert.InDelta(t, 0, middle, 1e-9)
	assert.Positive(t, up)
	assert.Greater(t, right, 0.5)
	assert.Greater(t, noon.ElevationDeg, morning.ElevationDeg)
	assert.Greater(t, noon.WarmthK, evening.WarmthK)
	for k := -0.5; k <= 1.5; k += 0.05 {
		s := defaultScene()
		s.Lamp = scene.Day(k)
		assert.NoError(t, s.Validate(), "%g", k)
	}
}

// Where is the way back of Hit: the middle of a block's top is seen where Where says, and
// what is seen there is that block.
func TestWhereIsTheWayBackOfHit(t *testing.T) {
	s := defaultScene()
	s.Camera = scene.Camera{YawDeg: 20, PitchDeg: 10, Zoom: 1.3}
	p := s.Panels[0]
	for _, at := range [][2]int{{0, 0}, {p.Columns / 2, p.Rows / 2}, {p.Columns - 1, p.Rows - 1}} {
		x := p.LeftM + p.OuterWidthM/2 + (float64(at[0])+0.5-float64(p.Columns)/2)*p.PitchM
		y := p.BottomM + p.OuterHeightM/2 - (float64(at[1])+0.5-float64(p.Rows)/2)*p.PitchM
		z := p.OutM + p.CleatThicknessM + p.BackerThicknessM + p.HeightsM[p.Levels[at[1]*p.Columns+at[0]]]
		px, py, ok := s.Where(800, 600)(x, y, z)
		require.True(t, ok)
		_, column, row, ok := s.Hit(800, 600, px, py)
		if ok { // a taller neighbour may stand before it
			assert.Equal(t, at, [2]int{column, row})
		}
	}
	_, _, ok := s.Where(800, 600)(0, 0, 1e6)
	assert.False(t, ok, "behind the viewer")
}
