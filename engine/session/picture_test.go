package session_test

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/scene"
	"blockfield/engine/session"
	"blockfield/engine/words"
)

// seen is the scene of an answer.
func seen(t *testing.T, res session.Response) scene.Scene {
	t.Helper()
	require.True(t, res.OK, "%v", res.Faults)
	sc, err := scene.Decode(res.Scene)
	require.NoError(t, err)
	return sc
}

func TestViewsAndLightsByName(t *testing.T) {
	s := fresh()
	drag := func(kind, name string) scene.Scene {
		return seen(t, ask(t, s, session.Request{Op: "drag", Kind: kind, Name: name}))
	}
	side := drag("view", "three-quarter")
	assert.NotZero(t, side.Camera.YawDeg)
	assert.Equal(t, side.Camera.YawDeg, s.Document().View.Camera.Yaw, "the design keeps it")

	chair := drag("view", "seated")
	listener := s.Document().Design.Walls[0].ListenerDistance.Metres()
	assert.InDelta(t, listener, chair.Camera.DistanceM, 0.1, "a little more: to the middle of the panel, and from above or below")
	window := drag("light", "window")
	assert.Equal(t, float64(scene.WindowSpreadDeg), window.Lamp.SpreadDeg)
	assert.Equal(t, chair.Camera, window.Camera, "a light leaves the view")
	edited := seen(t, set(t, s, group+".wood", "oak"))
	assert.Equal(t, window.Camera, edited.Camera, "and an edit leaves both")
	assert.Equal(t, window.Lamp, edited.Lamp)
	sage := seen(t, set(t, s, "view.wallPaint", "sage"))
	assert.NotEqual(t, edited.Wall.Colour, sage.Wall.Colour)
	painted := seen(t, set(t, s, group+".finish.frameColour", "black paint"))
	assert.Less(t, painted.Panels[0].Frame.Face.G, 0.2*edited.Panels[0].Frame.Face.G)
	assert.Equal(t, edited.Panels[0].Blocks, painted.Panels[0].Blocks, "of the frame alone")

	assert.True(t, drag("view", "whole wall").Figure)
	raking := drag("light", "raking")
	assert.Less(t, raking.Lamp.ElevationDeg, 20.0)
	assert.Equal(t, window.Lamp.AzimuthDeg, raking.Lamp.AzimuthDeg, "from the same side")
	assert.Equal(t, design.Default().View.Lamp.Warmth, drag("light", "lamp").Lamp.WarmthK)
	text := string(design.Encode(s.Document()))
	assert.False(t, seen(t, ask(t, s, session.Request{Op: "new"})).Figure, "another design, another look")
	kept := seen(t, ask(t, s, session.Request{Op: "open", Text: text, From: "file"}))
	assert.Equal(t, [2]any{raking.Camera, true}, [2]any{kept.Camera, kept.Figure}, "and a file keeps its own")
	assert.Equal(t, design.Default().View.Lamp.Warmth, kept.Lamp.WarmthK)
	drag("view", "whole wall")
	again := seen(t, ask(t, s, session.Request{Op: "drag", Kind: "reset"}))
	assert.False(t, again.Figure)
	assert.Equal(t, scene.Camera{Zoom: 1}, again.Camera)
}

// TestOnePanelAlone: a view of its parts or of its rear shows one panel with a note
// beside it, lasts over edits, and ends with any other view and with another design.
func TestOnePanelAlone(t *testing.T) {
	s := fresh()
	look := func(name string) session.Response {
		return ask(t, s, session.Request{Op: "drag", Kind: "view", Name: name, Width: 800, Height: 600})
	}
	hung := seen(t, look("front")).Panels
	apart := look("pulled apart")
	parts := seen(t, apart).Panels
	assert.Greater(t, len(parts), len(hung)+3)
	require.Len(t, apart.Fragments, 1)
	assert.Contains(t, apart.Fragments[0].HTML, "in its parts")
	edited := seen(t, set(t, s, group+".wood", "oak"))
	assert.Len(t, edited.Panels, len(parts))
	assert.Empty(t, ask(t, s, session.Request{Op: "point", Width: 800, Height: 600, DX: 400, DY: 300}).Point, "cells are those of panels as hung")
	rear := look("rear")
	assert.Contains(t, rear.Fragments[0].HTML, "REAR VIEW")
	assert.NotEqual(t, parts, seen(t, rear).Panels)
	back := look("three-quarter")
	assert.Len(t, seen(t, back).Panels, len(hung))
	assert.NotContains(t, back.Fragments[0].HTML, "REAR VIEW")
	assert.Empty(t, look("front").Fragments)
	look("rear")
	assert.Len(t, seen(t, ask(t, s, session.Request{Op: "drag", Kind: "reset"})).Panels, len(hung))
	look("rear")
	assert.Len(t, seen(t, ask(t, s, session.Request{Op: "new"})).Panels, len(hung))
}

// TestPointSaysWhatLiesThere: the middle of a picture straight on is the middle
// block of the field, whose height is that of the plan.
func TestPointSaysWhatLiesThere(t *testing.T) {
	s := fresh()
	const w, h = 600, 400
	grid := s.Plan().Groups[0].Built.Panels[0].Grid
	height := s.Plan().Groups[0].Design.Heights[grid.At(grid.Rows/2, grid.Columns/2)]
	pitch := s.Plan().Groups[0].Built.Pitch.Metres()
	assert.Equal(t, 1, grid.Columns%2, "a block lies in the middle")
	// Half a block below the middle, in pixels: the panel with its margin is h tall.
	below := h/2 + pitch/2*h/(1.22*s.Plan().Groups[0].Built.OuterHeight.Metres())
	got := ask(t, s, session.Request{Op: "point", Width: w, Height: h, DX: w / 2, DY: below})
	want := words.Reader{Language: words.English(), Units: s.Document().View.Units}.Say("stage/point",
		words.Args{"column": grid.Columns/2 + 1, "row": grid.Rows/2 + 1, "height": height})
	assert.Equal(t, want, got.Point)

	set(t, s, "view.reading", "maker")
	set(t, s, group+".pattern.seed", "7")
	grid = s.Plan().Groups[0].Built.Panels[0].Grid
	from := s.Plan().Origins()[0][0][grid.Rows/2*grid.Columns+grid.Columns/2]
	got = ask(t, s, session.Request{Op: "point", Width: w, Height: h, DX: w / 2, DY: below})
	assert.Contains(t, got.Point, fmt.Sprintf("stick %d of %d", from.Stick, from.Sticks))
	assert.NotContains(t, got.Point, "run")
	set(t, s, group+".pattern.kind", "quadratic residue stripes")
	got = ask(t, s, session.Request{Op: "point", Width: w, Height: h, DX: w / 2, DY: below})
	assert.Contains(t, got.Point, "straight run of 22", "stripes run down the whole field")
	assert.Empty(t, ask(t, s, session.Request{Op: "point", Width: w, Height: h, DX: 1, DY: 1}).Point, "wall")
	assert.True(t, ask(t, s, session.Request{Op: "point"}).OK, "a picture of no size")
}

// A picture is drawn of the scene that comes with the request, whatever design is
// open, and of nothing else.
func TestPicturesOfAnyScene(t *testing.T) {
	s := fresh()
	oak := seen(t, set(t, fresh(), group+".wood", "oak"))
	res := ask(t, s, session.Request{Op: "picture", Scene: oak.Encode(), Width: 60, Height: 40, Samples: 2, Kind: "png"})
	require.True(t, res.OK, "%v", res.Faults)
	drawn, err := png.Decode(bytes.NewReader(res.Picture))
	require.NoError(t, err)
	assert.Equal(t, scene.Render(oak, 60, 40, 2).Pix, drawn.(*image.RGBA).Pix)

	res = ask(t, s, session.Request{Op: "picture", Scene: oak.Encode(), Width: 1, Height: 1e9, Samples: -1})
	small, err := jpeg.DecodeConfig(bytes.NewReader(res.Picture))
	require.NoError(t, err)
	assert.Equal(t, [2]int{16, 4096}, [2]int{small.Width, small.Height}, "sizes are clamped")
	assert.NotEmpty(t, ask(t, s, session.Request{Op: "picture", Scene: []byte{1, 2, 3}, Width: 60, Height: 40}).Faults)
}
