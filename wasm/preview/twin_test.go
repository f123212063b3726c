//go:build !js

package main_test

import (
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/scene"
)

// How far shader and Go renderer may differ: they walk the same way in 32 and
// 64 bits, so only samples right on an edge may fall to the other side. Software
// graphics showed 0.01 levels and 0.02 % of the pixels; others may round more.
const (
	closeLevels   = 3     // levels of 255 that count as the same
	mayDiffer     = 0.002 // part of the pixels that may be further apart
	mayDifferMean = 0.05  // mean difference of all parts, in levels

	// From near by, pores of a few tenths of a millimetre magnify what 32 bits
	// lose of a place three metres away: measured 0.17 levels and 0.74 %.
	mayDifferNear     = 0.015
	mayDifferMeanNear = 0.3

	// Within the field, whatever the graphics: signal to noise, the part of the
	// pixels that are clearly another colour, and how far the mean of a block may
	// lie off before it counts as of another height.
	leastPSNR   = 30.0
	clearLevels = 24
	mayBeClear  = 0.01
	blockLevels = 4.0
	// On screen a pixel is refined or is not, which may hang on its last level.
	shownBlockLevels   = 8.0
	mayDifferMeanShown = 0.3
	// leastOfBlock is how many pixels of a block must be seen to judge it.
	leastOfBlock = 12
)

// trialScene is a scene with the given view; two panels cast shadows on each
// other when there is a second one.
func trialScene(panels ...scene.Panel) scene.Scene {
	return scene.Scene{
		Wall:   scene.Wall{WidthM: 3.5, HeightM: 2.5, Colour: scene.PlainWall()},
		Panels: panels,
		Camera: scene.Camera{Zoom: 1},
		Lamp:   scene.Lamp{AzimuthDeg: 315, ElevationDeg: 35, WarmthK: 3000},
	}
}

// trialPanel is a framed panel of the default section and heights; its levels
// are no pattern, only uneven (invented).
func trialPanel(columns, rows int) scene.Panel {
	wood, _ := scene.WoodMaterial("poplar", "waterborne varnish")
	ply, _ := scene.BackerMaterial("birch ply")
	levels := make([]uint8, columns*rows)
	for i := range levels {
		levels[i] = uint8((i*i/3 + i/5*7) % 4)
	}
	const pitch, edge = 0.0362, 0.046
	return scene.Panel{
		LeftM: 1.13, BottomM: 1, OuterWidthM: float64(columns)*pitch + edge, OuterHeightM: float64(rows)*pitch + edge,
		FrameThicknessM: 0.02, FrameGapM: 0.003, FrameDepthM: 0.127, Mitred: true,
		CleatThicknessM: 0.018, BackerThicknessM: 0.012,
		Columns: columns, Rows: rows, PitchM: pitch, BlockM: 0.036,
		HeightsM: []float64{0.026, 0.042, 0.064, 0.092}, Levels: levels, Seed: 1,
		Blocks: wood, Frame: wood, Backer: ply,
	}
}

// TestShaderMatchesGo draws scenes with the shader and with the Go renderer, all
// samples everywhere as for a picture to save and refined as on screen.
func TestShaderMatchesGo(t *testing.T) {
	framed := trialScene(trialPanel(33, 22))

	turned := trialScene(trialPanel(20, 12))
	turned.Camera = scene.Camera{YawDeg: -48, PitchDeg: 25, Zoom: 1.4}
	turned.Lamp = scene.Lamp{AzimuthDeg: 70, ElevationDeg: 20, WarmthK: 4500}
	turned.Panels[0].Mitred = false

	bare := trialPanel(12, 9)
	bare.FrameThicknessM, bare.FrameGapM = 0, 0
	bare.OuterWidthM, bare.OuterHeightM = 12*bare.PitchM, 9*bare.PitchM
	bare.BlockM = 0.030 // gaps that light passes through
	bare.HeightsM = []float64{0, 0.03, 0.06, 0.12}
	other := trialPanel(12, 9)
	other.LeftM = bare.LeftM + 0.55
	pair := trialScene(bare, other)
	pair.Camera = scene.Camera{YawDeg: 30, PitchDeg: -10, Zoom: 0.9}
	pair.Lamp = scene.Lamp{AzimuthDeg: 100, ElevationDeg: 15, WarmthK: 3000}

	room := trialScene(trialPanel(33, 22))
	room.Camera = scene.Camera{YawDeg: 40, PitchDeg: 12, Zoom: 0.3}

	long := trialPanel(400, 100) // as many cells as a field may have
	long.PitchM, long.BlockM = 0.01, 0.0098
	long.OuterWidthM, long.OuterHeightM = 4.046, 1.046
	largest := trialScene(long)
	largest.Camera = scene.Camera{YawDeg: 78, PitchDeg: 3, Zoom: 5}

	dozen := trialScene()
	for i := range scene.MaxPanels {
		p := trialPanel(7, 5)
		p.LeftM, p.BottomM, p.Seed = 0.2+0.35*float64(i%4), 0.6+0.3*float64(i/4), uint64(i)
		dozen.Panels = append(dozen.Panels, p)
	}
	dozen.Lamp.ElevationDeg = 12
	// Straight on, whole rows of samples would lie exactly on edges of blocks.
	dozen.Camera = scene.Camera{YawDeg: 7, PitchDeg: -5, Zoom: 1}

	raking := trialScene(trialPanel(33, 22))
	raking.Lamp = raking.Lamp.Raking()
	raking.Panels[0].Blocks, _ = scene.WoodMaterial("oak", "hard-wax oil")
	raking.Panels[0].Frame, _ = scene.WoodMaterial("walnut", "none")
	raking = raking.Look(scene.CloseUp, scene.Viewer{})

	window := trialScene(trialPanel(33, 22)).Look(scene.WholeWall, scene.Viewer{})
	window.Lamp = scene.Window()

	wrong := trialScene(trialPanel(33, 22))
	wrong.Panels[0].Levels = slices.Clone(wrong.Panels[0].Levels)
	wrong.Panels[0].Levels[wrongCell] = (wrong.Panels[0].Levels[wrongCell] + 1) % 4

	// A bar with a bevel on either edge, blocks without a backer and a frame alone, one
	// before the other.
	strip, half, blocks, frame := trialPanel(1, 1), trialPanel(1, 1), trialPanel(20, 12), trialPanel(1, 1)
	for i, one := range []*scene.Panel{&strip, &half, &frame} {
		one.HeightsM, one.Levels, one.PitchM, one.BlockM = []float64{0}, []uint8{0}, 0.01, 0.01
		one.FrameThicknessM, one.FrameGapM, one.CleatThicknessM = 0, 0, 0
		one.OuterWidthM, one.OuterHeightM, one.BackerThicknessM = 0.6, 0.1, 0.03
		one.BottomM, one.OutM, one.Bevel = 1.2, 0.12*float64(i), []float64{-1, 1, 0}[i]
	}
	blocks.FrameThicknessM, blocks.FrameGapM, blocks.CleatThicknessM, blocks.BackerThicknessM = 0, 0, 0, 0
	blocks.OuterWidthM, blocks.OuterHeightM, blocks.OutM = 20*blocks.PitchM, 12*blocks.PitchM, 0.25
	frame.OuterWidthM, frame.OuterHeightM, frame.BottomM, frame.BackerThicknessM = 0.77, 0.48, 1, 0
	frame.FrameThicknessM, frame.FrameDepthM, frame.OutM = 0.02, 0.127, 0.5
	apart := trialScene(strip, half, blocks, frame)
	apart.Camera = scene.Camera{YawDeg: 53, PitchDeg: 16, Zoom: 1.1}

	// Two looks of blocks, on one panel and on several: each has a shader of its own.
	mixed := trialScene(mixedPanel(33, 22))
	mixed.Camera = scene.Camera{YawDeg: -20, PitchDeg: 10, Zoom: 2}
	mixed.Lamp = mixed.Lamp.Raking()
	plain := trialPanel(12, 9)
	beside := mixedPanel(12, 9)
	beside.LeftM = plain.LeftM + 0.55
	both := trialScene(plain, beside)

	otherWood := trialScene(mixedPanel(33, 22))
	otherWood.Panels[0].Woods[wrongCell] = 1 - otherWood.Panels[0].Woods[wrongCell]

	scenes := map[string]scene.Scene{
		"framed": framed, "turned": turned, "pair": pair, "room": room, "largest": largest, "dozen": dozen,
		"raking": raking, "window": window, "wrong": wrong, "apart": apart,
		"mixed": mixed, "both": both, "otherwood": otherWood,
	}
	tr := newTrial(t, scenes)
	value[any](t, tr, "trial.ready()")
	for name, s := range scenes {
		t.Run(name, func(t *testing.T) {
			require.NoError(t, s.Validate())
			drawn := value[struct{ Ms float64 }](t, tr, "trial.scene('"+name+"')")
			shown, got := tr.pixels(t), tr.shot(t, stageWidth, stageHeight)
			switch name { // drawn with one height or wood that is another in Go's picture
			case "wrong":
				s = framed
			case "otherwood":
				s = trialScene(mixedPanel(33, 22))
			}
			want, refined := scene.Render(s, stageWidth, stageHeight, 2), scene.RenderRefined(s, stageWidth, stageHeight, 2)
			require.Equal(t, want.Bounds(), got.Bounds())
			require.Equal(t, want.Bounds(), shown.Bounds())
			for kind, one := range map[string]*image.RGBA{"shader": got, "go": want, "shown": shown, "refined": refined} {
				keepOnFailure(t, name+"-"+kind, one)
			}
			mean, far := difference(got, want)
			t.Logf("%s: mean %.3f levels, %.3f %% of pixels more than %d apart; drawn in %.0f ms",
				name, mean, 100*far, closeLevels, drawn.Ms)
			noise, clear, block := field(s, got, want)
			t.Logf("%s: field %.1f dB, %.3f %% clearly off, worst block %.2f levels off", name, noise, 100*clear, block)
			shownNoise, shownClear, shownBlock := field(s, shown, refined)
			t.Logf("%s: on screen %.1f dB, %.3f %% clearly off, worst block %.2f levels off", name, shownNoise, 100*shownClear, shownBlock)
			if name == "wrong" || name == "otherwood" {
				assert.Greater(t, block, blockLevels, "a wrong block is seen")
				assert.Greater(t, shownBlock, shownBlockLevels, "a wrong block is seen")
				return
			}
			mostMean, mostFar := mayDifferMean, mayDiffer
			if name == "raking" { // it is a close-up
				mostMean, mostFar = mayDifferMeanNear, mayDifferNear
			}
			assert.LessOrEqual(t, mean, mostMean)
			assert.LessOrEqual(t, far, mostFar)
			assert.LessOrEqual(t, block, blockLevels, "no block has the wrong height")
			assert.LessOrEqual(t, shownBlock, shownBlockLevels, "no block has the wrong height")
			shownMean, _ := difference(shown, refined)
			assert.LessOrEqual(t, shownMean, mayDifferMeanShown)
			assert.GreaterOrEqual(t, min(noise, shownNoise), leastPSNR)
			assert.LessOrEqual(t, max(clear, shownClear), mayBeClear)
		})
	}
	assert.Empty(t, value[[]string](t, tr, "trial.violations"))
}

// mixedPanel is a trial panel with every third block of another wood.
func mixedPanel(columns, rows int) scene.Panel {
	p := trialPanel(columns, rows)
	p.Second, _ = scene.WoodMaterial("oak", "hard-wax oil")
	p.Woods = make([]uint8, len(p.Levels))
	for i := range p.Woods {
		p.Woods[i] = uint8(i % 3 / 2)
	}
	return p
}

// wrongCell is the cell of the scene "wrong" that has another height, and of
// "otherwood" that has another wood: column 20 of row 10, in full view.
const wrongCell = 10*33 + 20

// field compares two pictures where they show cells of a panel: signal to noise
// (dB), the part of the pixels that are clearly off, and how far the mean of the
// worst block is.
func field(s scene.Scene, a, b *image.RGBA) (psnr, clear, worst float64) {
	type sum struct{ apart, n float64 }
	blocks := map[[3]int]sum{}
	squares, n := 0.0, 0.0
	hit := s.Hits(stageWidth, stageHeight)
	for y := range stageHeight {
		for x := range stageWidth {
			panel, col, row, ok := hit(float64(x)+0.5, float64(y)+0.5)
			if !ok {
				continue
			}
			n++
			most, total := 0.0, 0.0
			for k := range 3 {
				d := float64(a.Pix[a.PixOffset(x, y)+k]) - float64(b.Pix[b.PixOffset(x, y)+k])
				squares += d * d
				total += d / 3
				most = max(most, math.Abs(d))
			}
			if most > clearLevels {
				clear++
			}
			one := blocks[[3]int{panel, col, row}]
			blocks[[3]int{panel, col, row}] = sum{one.apart + total, one.n + 1}
		}
	}
	for _, one := range blocks {
		if one.n >= leastOfBlock {
			worst = max(worst, math.Abs(one.apart)/one.n)
		}
	}
	return 10 * math.Log10(255*255*3*n/max(squares, 1)), clear / n, worst
}

// difference returns the mean difference of red, green and blue, in levels of
// 255, and the part of the pixels with a part more than closeLevels apart.
func difference(a, b *image.RGBA) (mean, far float64) {
	for i := 0; i < len(a.Pix); i += 4 {
		worst := 0
		for k := range 3 {
			d := int(a.Pix[i+k]) - int(b.Pix[i+k])
			d = max(d, -d)
			mean += float64(d)
			worst = max(worst, d)
		}
		if worst > closeLevels {
			far++
		}
	}
	n := float64(len(a.Pix) / 4)
	return mean / (3 * n), far / n
}

// keepOnFailure leaves the picture of a failed comparison for the eye.
func keepOnFailure(t *testing.T, name string, img image.Image) {
	t.Cleanup(func() {
		if !t.Failed() {
			return
		}
		path := filepath.Join(os.TempDir(), "blockfield-"+name+".png")
		f, err := os.Create(path)
		if err != nil {
			t.Log(err)
			return
		}
		defer f.Close()
		t.Log(path, png.Encode(f, img))
	})
}
