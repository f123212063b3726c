package session_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/scene"
	"blockfield/engine/session"
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

	assert.True(t, drag("view", "whole wall").Figure)
	raking := drag("light", "raking")
	assert.Less(t, raking.Lamp.ElevationDeg, 20.0)
	assert.Equal(t, window.Lamp.AzimuthDeg, raking.Lamp.AzimuthDeg, "from the same side")
	assert.Equal(t, design.Default().View.Lamp.Warmth, drag("light", "lamp").Lamp.WarmthK)
	again := seen(t, ask(t, s, session.Request{Op: "drag", Kind: "reset"}))
	assert.False(t, again.Figure)
	assert.Equal(t, scene.Camera{Zoom: 1}, again.Camera)
}
