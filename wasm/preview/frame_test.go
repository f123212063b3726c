//go:build !js

package main_test

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/systeminfo"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/scene"
)

// message is what the frame says; each type fills its own fields.
type message struct {
	Type, Message         string
	Width, Height, Coarse int
	Yaw, Pitch, Zoom      float64
	Azimuth, Elevation    float64
}

func TestFrameAnswers(t *testing.T) {
	s := trialScene(trialPanel(12, 8))
	tr := newTrial(t, map[string]scene.Scene{"scene": s})
	value[any](t, tr, "trial.ready()")
	ask := func(t *testing.T, send, answer string) message {
		t.Helper()
		return value[message](t, tr, "trial.ask("+send+", '"+answer+"')")
	}

	t.Run("nothing to look at yet", func(t *testing.T) {
		got := ask(t, "{type: 'orbit', dx: 0.1, dy: 0}", "error")
		assert.Contains(t, got.Message, "no scene")
	})
	t.Run("first picture", func(t *testing.T) {
		got := value[message](t, tr, "trial.scene('scene')")
		assert.Equal(t, [2]int{stageWidth, stageHeight}, [2]int{got.Width, got.Height})
	})
	t.Run("orbit, zoom and lamp are those of the engine", func(t *testing.T) {
		want, lamp := s.Camera.Orbit(0.1, -0.2), s.Lamp
		check := func(got message) {
			t.Helper()
			assert.InDeltaSlice(t,
				[]float64{want.YawDeg, want.PitchDeg, want.Zoom, lamp.AzimuthDeg, lamp.ElevationDeg},
				[]float64{got.Yaw, got.Pitch, got.Zoom, got.Azimuth, got.Elevation}, 1e-9)
		}
		check(ask(t, "{type: 'orbit', dx: 0.1, dy: -0.2}", "view"))
		want = want.ZoomBy(1.5)
		check(ask(t, "{type: 'zoom', factor: 1.5}", "view"))
		lamp = lamp.Drag(0.3, 0.1)
		check(ask(t, "{type: 'lamp', dx: 0.3, dy: 0.1}", "view"))

		turned := s
		turned.Camera, turned.Lamp = want, lamp
		mean, _ := difference(tr.pixels(t), scene.RenderRefined(turned, stageWidth, stageHeight, 2))
		assert.LessOrEqual(t, mean, mayDifferMeanShown, "and the picture shows it")
	})
	t.Run("a walk is on its way and gives way to a hand", func(t *testing.T) {
		value[any](t, tr, "trial.sweep('walk')")
		time.Sleep(time.Second)
		turned := s.Camera.Orbit(0.1, -0.2).ZoomBy(1.5).Orbit(0.02, 0)
		got := ask(t, "{type: 'orbit', dx: 0.02, dy: 0}", "view")
		assert.InDeltaSlice(t, []float64{turned.YawDeg, turned.Zoom}, []float64{got.Yaw, got.Zoom}, 1e-9)
		assert.Greater(t, ask(t, "{type: 'ask'}", "drawn").Coarse, 2, "pictures on the way")
	})
	t.Run("a new scene keeps the view when asked", func(t *testing.T) {
		before := tr.pixels(t)
		value[message](t, tr, "trial.scene('scene', true)")
		assert.Equal(t, before.Pix, tr.pixels(t).Pix)
		value[message](t, tr, "trial.scene('scene')")
		assert.NotEqual(t, before.Pix, tr.pixels(t).Pix)
	})
	t.Run("bad bytes leave the last picture", func(t *testing.T) {
		before := tr.pixels(t)
		got := ask(t, "{type: 'scene', bytes: new Uint8Array([3, 2, 3]).buffer}", "refused")
		assert.Contains(t, got.Message, "cut short")
		assert.Equal(t, before.Pix, tr.pixels(t).Pix)
		value[message](t, tr, "trial.scene('scene')") // and the next one is drawn
	})
	t.Run("unknown message", func(t *testing.T) {
		assert.Contains(t, ask(t, "{type: 'dance'}", "error").Message, "dance")
	})
	t.Run("only the page is believed", func(t *testing.T) {
		// A frame beside it posts into the preview's window; the orbit that the
		// page sends afterwards must be the only one.
		got := value[message](t, tr, `trial.fromStranger({type: 'orbit', dx: 0.3, dy: 0}).then(
			() => trial.ask({type: 'orbit', dx: 0.1, dy: 0}, 'view'))`)
		assert.InDelta(t, s.Camera.Orbit(0.1, 0).YawDeg, got.Yaw, 1e-9)
	})
	t.Run("a frame that was not shown draws when it is", func(t *testing.T) {
		value[message](t, tr, "trial.hideAndShow('scene')")
		mean, _ := difference(tr.pixels(t), scene.RenderRefined(s, stageWidth, stageHeight, 2))
		assert.LessOrEqual(t, mean, mayDifferMeanShown)
	})
	t.Run("a resized frame is drawn anew", func(t *testing.T) {
		got := value[message](t, tr, "trial.resize('small')")
		assert.Equal(t, [2]int{200, 150}, [2]int{got.Width, got.Height})
	})
	t.Run("a denser display has a finer picture", func(t *testing.T) {
		for _, density := range []float64{2, 1.5, 1} {
			_, err := chromedp.Call(tr.ctx, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{
				Width: 800, Height: 600, DeviceScaleFactor: density,
			})
			require.NoError(t, err)
			got := ask(t, "{type: 'ask'}", "drawn")
			assert.Equal(t, [2]int{int(200 * density), int(150 * density)}, [2]int{got.Width, got.Height})
		}
	})
	assert.Empty(t, value[[]string](t, tr, "trial.violations"))
}

// TestLostContext: the frame says so, once, and does not reload itself.
func TestLostContext(t *testing.T) {
	tr := newTrial(t, map[string]scene.Scene{"scene": trialScene(trialPanel(4, 3))})
	value[any](t, tr, "trial.ready()")
	value[message](t, tr, "trial.scene('scene')")
	targets, err := chromedp.Targets(tr.ctx)
	require.NoError(t, err)
	for _, target := range targets {
		if target.Type != "iframe" {
			continue
		}
		ctx, cancel := chromedp.NewContext(tr.ctx, chromedp.WithTargetID(target.TargetID))
		defer cancel()
		_, err := chromedp.Run(ctx, chromedp.Evaluate[chromedp.Void](
			`document.querySelector("canvas").getContext("webgl2").getExtension("WEBGL_lose_context").loseContext()`))
		require.NoError(t, err)
	}
	value[message](t, tr, "trial.heard('lost')")
	time.Sleep(500 * time.Millisecond)
	said := value[[]string](t, tr, "trial.said()")
	assert.Equal(t, []string{"loaded", "ready", "sharp", "drawn", "lost"}, said)
}

// TestRestart: a stopped frame is gone and a new one draws the same.
func TestRestart(t *testing.T) {
	tr := newTrial(t, map[string]scene.Scene{"scene": trialScene(trialPanel(12, 8))})
	value[any](t, tr, "trial.ready()")
	value[message](t, tr, "trial.scene('scene')")
	before := tr.pixels(t)
	require.Zero(t, value[int](t, tr, "(trial.restart(), document.querySelectorAll('iframe').length)"), "the old frame is gone")
	value[message](t, tr, "trial.scene('scene')") // sent before the module is ready: it waits
	assert.Equal(t, before.Pix, tr.pixels(t).Pix)
	assert.True(t, value[bool](t, tr, "document.querySelector('iframe').classList.contains('preview-live')"))
}

// TestFrameIsClosed: no part of the page can be reached from the frame, by
// keyboard or by script.
func TestFrameIsClosed(t *testing.T) {
	tr := newTrial(t, nil)
	value[any](t, tr, "trial.ready()")
	got := value[map[string]any](t, tr, `(() => {
		const f = document.querySelector("iframe");
		return {sandbox: f.getAttribute("sandbox"), inert: f.inert, hidden: f.getAttribute("aria-hidden"),
			tab: f.tabIndex, title: f.title, document: f.contentDocument === null};
	})()`)
	assert.Equal(t, map[string]any{
		"sandbox": "allow-scripts", "inert": true, "hidden": "true", "tab": -1.0, "title": "trial", "document": true,
	}, got)
}

// screen is what the page shows of the frame.
func (tr trial) screen(t *testing.T) *image.RGBA {
	t.Helper()
	body, err := chromedp.Run(tr.ctx, chromedp.CaptureScreenshot())
	require.NoError(t, err)
	img, err := png.Decode(bytes.NewReader(body))
	require.NoError(t, err)
	out := image.NewRGBA(image.Rect(0, 0, stageWidth, stageHeight))
	draw.Draw(out, out.Rect, img, image.Point{}, draw.Src)
	return out
}

// turnedOver is a picture upside down.
func turnedOver(img *image.RGBA) *image.RGBA {
	out := image.NewRGBA(img.Rect)
	for y := range img.Rect.Dy() {
		copy(out.Pix[y*out.Stride:(y+1)*out.Stride], img.Pix[(img.Rect.Dy()-1-y)*img.Stride:])
	}
	return out
}

// swapped is a picture with its sides swapped.
func swapped(img *image.RGBA) *image.RGBA {
	out := image.NewRGBA(img.Rect)
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			out.SetRGBA(x, y, img.RGBAAt(img.Rect.Dx()-1-x, y))
		}
	}
	return out
}

// blurred is a picture in squares, each of the mean of its colours: what two pictures
// of different sharpness have in common.
func blurred(img *image.RGBA) *image.RGBA {
	const side = 16 // pixels: twice the coarsest picture's
	out := image.NewRGBA(img.Rect)
	for y := 0; y < img.Rect.Dy(); y += side {
		for x := 0; x < img.Rect.Dx(); x += side {
			square := image.Rect(x, y, x+side, y+side).Intersect(img.Rect)
			var sum [4]int
			for i := range square.Dx() * square.Dy() {
				at := img.PixOffset(square.Min.X+i%square.Dx(), square.Min.Y+i/square.Dx())
				for c := range sum {
					sum[c] += int(img.Pix[at+c])
				}
			}
			n := square.Dx() * square.Dy()
			mean := color.RGBA{uint8(sum[0] / n), uint8(sum[1] / n), uint8(sum[2] / n), uint8(sum[3] / n)}
			draw.Draw(out, square, image.NewUniform(mean), image.Point{}, draw.Src)
		}
	}
	return out
}

// TestCoarsePictureIsTheRightWayUp: what is on screen in a drag is the coarse picture,
// enlarged. It resembles the finished one far more than that upside down or mirrored,
// and is not that very one. How coarse it is depends on the machine, so both are blurred.
func TestCoarsePictureIsTheRightWayUp(t *testing.T) {
	s := trialScene(trialPanel(33, 22))
	tr := newTrial(t, map[string]scene.Scene{"scene": s})
	value[any](t, tr, "trial.ready()")
	value[message](t, tr, "trial.scene('scene')")
	finished := tr.screen(t)
	want := scene.RenderRefined(s, stageWidth, stageHeight, 2)
	mean, _ := difference(finished, want)
	require.LessOrEqual(t, mean, mayDifferMeanShown, "the screen shows the finished picture")

	value[any](t, tr, "trial.tremble()")
	time.Sleep(time.Second)
	coarse := tr.screen(t)
	_, far := difference(coarse, want)
	coarse, want = blurred(coarse), blurred(want)
	upright, _ := difference(coarse, want)
	over, _ := difference(coarse, blurred(turnedOver(want)))
	mirrored, _ := difference(coarse, blurred(swapped(want)))
	t.Logf("%.1f levels off, %.1f upside down, %.1f mirrored", upright, over, mirrored)
	assert.Greater(t, far, 0.05, "it is coarse")
	assert.Greater(t, min(over, mirrored), 3*upright)
}

// TestHiddenTab: a tab that nobody sees takes what it is sent, costs next to nothing,
// and shows the newest scene when it is seen again.
func TestHiddenTab(t *testing.T) {
	s := trialScene(trialPanel(33, 22))
	turned := s
	turned.Camera = scene.Camera{YawDeg: 30, PitchDeg: 10, Zoom: 1}
	tr := newTrial(t, map[string]scene.Scene{"scene": s, "turned": turned})
	value[any](t, tr, "trial.ready()")
	value[message](t, tr, "trial.scene('scene')")
	tr.window(t, browser.WindowStateMinimized)
	require.Equal(t, "hidden", value[string](t, tr, "document.visibilityState"))

	value[any](t, tr, "(trial.drawing = trial.scene('turned'), 0)")
	time.Sleep(time.Second) // in which it may or may not draw
	before := processorTime(t, tr)
	const watched = 3 * time.Second
	time.Sleep(watched)
	assert.LessOrEqual(t, processorTime(t, tr)-before, watched/idleLimit)

	tr.window(t, browser.WindowStateNormal)
	require.Equal(t, "visible", value[string](t, tr, "document.visibilityState"))
	value[message](t, tr, "trial.drawing")
	mean, _ := difference(tr.pixels(t), scene.RenderRefined(turned, stageWidth, stageHeight, 2))
	assert.LessOrEqual(t, mean, mayDifferMeanShown)
}

// window brings the browser's window into a state.
func (tr trial) window(t *testing.T, state browser.WindowState) {
	t.Helper()
	at, err := chromedp.Call(tr.ctx, browser.GetWindowForTarget, browser.GetWindowForTargetParams{})
	require.NoError(t, err)
	_, err = chromedp.Call(tr.ctx, browser.SetWindowBounds, browser.SetWindowBoundsParams{
		WindowID: at.WindowID, Bounds: &browser.Bounds{WindowState: state},
	})
	require.NoError(t, err)
}

// TestWithoutWebGL: in a browser that has none the frame says so, instead of nothing.
func TestWithoutWebGL(t *testing.T) {
	tr := newTrial(t, nil, chromedp.Flag("disable-3d-apis", true))
	got := value[message](t, tr, "trial.heard('error')")
	t.Log(got.Message)
	assert.NotEmpty(t, got.Message)
}

// idleLimit is the part of the time that passes that a preview at rest may take of the
// processor's: a tenth of a second in ten.
const idleLimit = 100

func TestIdleCostsNothing(t *testing.T) {
	tr := newTrial(t, map[string]scene.Scene{"scene": trialScene(trialPanel(33, 22))})
	value[any](t, tr, "trial.ready()")
	value[message](t, tr, "trial.scene('scene')")
	time.Sleep(time.Second) // what the graphics still have to do
	const watched = 4 * time.Second
	before := processorTime(t, tr)
	time.Sleep(watched)
	used := processorTime(t, tr) - before
	t.Logf("%v of processor time in %v at rest", used, watched)
	assert.LessOrEqual(t, used, watched/idleLimit)

	before = processorTime(t, tr)
	value[any](t, tr, "trial.drag(1)")
	assert.Greater(t, processorTime(t, tr)-before, 200*time.Millisecond, "the same measure sees work")
}

// processorTime is that of the browser's pages and graphics so far, to the millisecond.
func processorTime(t testing.TB, tr trial) time.Duration {
	t.Helper()
	info, err := chromedp.CallBrowser(tr.ctx, systeminfo.GetProcessInfo, cdp.Empty{})
	require.NoError(t, err)
	seconds := 0.0
	for _, p := range info.ProcessInfo {
		if p.Type == "renderer" || p.Type == "GPU" {
			seconds += p.CPUTime
		}
	}
	return time.Duration(math.Round(1000*seconds)) * time.Millisecond
}
