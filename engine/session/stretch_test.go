package session_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/scene"
	"blockfield/engine/session"
)

// handlesOf are those of a picture of 800 × 600 pixels, by side.
func handlesOf(t *testing.T, res session.Response) map[string]session.Handle {
	t.Helper()
	require.True(t, res.OK, "%v", res.Faults)
	all := map[string]session.Handle{}
	for _, h := range res.Handles {
		all[h.Side] = h
	}
	require.Len(t, all, 2)
	return all
}

func stretch(t *testing.T, s *session.Session, kind, side string, x, y float64) session.Response {
	t.Helper()
	return ask(t, s, session.Request{Op: "stretch", Kind: kind, Path: group, Name: side, DX: x, DY: y, Width: 800, Height: 600})
}

// Straight on the right edge lies right of the middle of the picture and the lower one
// below it. One that is pulled stays under the pointer, to half a block, while the picture
// keeps its scale; all of it is one step of the history.
func TestASizeIsPulled(t *testing.T) {
	s := fresh()
	at := handlesOf(t, stretch(t, s, "handles", "", 0, 0))
	across, down := at["across"], at["down"]
	assert.InDelta(t, 300, across.Y, 25)
	assert.Greater(t, across.X, 700.0, "the panel fills the picture")
	assert.InDelta(t, 400, down.X, 1)
	assert.Equal(t, 33, across.Now)
	assert.Equal(t, "33 across = 1195 mm", across.Text)

	stretch(t, s, "grab", "across", 0, 0)
	var last session.Response
	end := across.X
	for x := across.X; x > 600; x -= 20 {
		end, last = x, stretch(t, s, "move", "across", x, across.Y)
		h := handlesOf(t, last)["across"]
		assert.InDelta(t, x, h.X, 0.6*(across.X-400)/33, "a block more moves the edge by half of one")
	}
	narrow := s.Document().Design.Walls[0].Groups[0].Width
	const frame = 1240.6 - 1194.6
	assert.InDelta(t, 1240.6*(end-400)/(across.X-400)-frame, narrow.Millimetres(), 36.2)
	sc, err := scene.Decode(last.Scene)
	require.NoError(t, err)
	assert.Greater(t, 1.0, sc.Camera.Zoom, "while it is held the picture keeps its scale")

	drop := stretch(t, s, "drop", "across", 0, 0)
	sc, err = scene.Decode(drop.Scene)
	require.NoError(t, err)
	assert.Equal(t, 1.0, sc.Camera.Zoom, "and then the panel fills it again")
	require.True(t, ask(t, s, session.Request{Op: "undo"}).OK)
	assert.Equal(t, design.Default().Design.Walls[0].Groups[0].Width, s.Document().Design.Walls[0].Groups[0].Width)
	assert.False(t, ask(t, s, session.Request{Op: "section", Name: "look"}).CanUndo, "one step of the history")
}

// Seen from the side a handle moves along the edge that it pulls; from behind there is none.
func TestHandlesFollowTheView(t *testing.T) {
	s := fresh()
	ask(t, s, session.Request{Op: "drag", Kind: "view", Name: "three-quarter", Width: 800, Height: 600})
	before := handlesOf(t, stretch(t, s, "handles", "", 0, 0))["down"]
	stretch(t, s, "grab", "down", 0, 0)
	after := handlesOf(t, stretch(t, s, "move", "down", before.X, before.Y-60))["down"]
	assert.Less(t, after.Now, before.Now)
	stretch(t, s, "drop", "down", 0, 0)
	ask(t, s, session.Request{Op: "drag", Kind: "view", Name: "rear", Width: 800, Height: 600})
	assert.Empty(t, stretch(t, s, "handles", "", 0, 0).Handles)
}

// A picture that is hidden has no size and no handles, and that is no fault.
func TestNoHandlesOnAHiddenPicture(t *testing.T) {
	res := ask(t, fresh(), session.Request{Op: "stretch", Kind: "handles"})
	assert.True(t, res.OK, "%v", res.Faults)
	assert.Empty(t, res.Handles)
}

// A size stays within what its field takes, however far somebody pulls.
func TestPulledToTheLimit(t *testing.T) {
	s := fresh()
	at := handlesOf(t, stretch(t, s, "handles", "", 0, 0))["across"]
	stretch(t, s, "grab", "across", 0, 0)
	stretch(t, s, "move", "across", -1e9, at.Y)
	assert.InDelta(t, 300, s.Document().Design.Walls[0].Groups[0].Width.Millimetres(), 40)
	stretch(t, s, "move", "across", 1e9, at.Y)
	assert.InDelta(t, 6000, s.Document().Design.Walls[0].Groups[0].Width.Millimetres(), 60)
}

func TestKeysMoveAHandle(t *testing.T) {
	s := fresh()
	assert.Equal(t, 34, handlesOf(t, stretch(t, s, "key", "across", 1, 0))["across"].Now)
	assert.Equal(t, 21, handlesOf(t, stretch(t, s, "key", "down", -1, 0))["down"].Now)
}

// An arrow key takes a size by a whole block, other numbers by their step, in the units
// of the reader.
func TestNudge(t *testing.T) {
	s := fresh()
	nudge := func(path string, by float64) string {
		res := ask(t, s, session.Request{Op: "nudge", Path: path, DY: by})
		require.True(t, res.OK, "%v", res.Faults)
		for _, v := range res.Values {
			if v.Path == path {
				return v.Value
			}
		}
		return ""
	}
	assert.Equal(t, "1230.8 mm", nudge(group+".width", 1))
	assert.Equal(t, "1194.6 mm", nudge(group+".width", -1))
	assert.Equal(t, "13 mm", nudge(group+".backer.thickness", 1))
	assert.Equal(t, "2", nudge(group+".panelsWide", 1))
	assert.Equal(t, "1", nudge(group+".panelsWide", -1))
	require.True(t, ask(t, s, session.Request{Op: "set", Path: group + ".columns", Value: "30"}).OK)
	assert.Empty(t, nudge(group+".width", 1), "a count that is fixed changes instead")
	assert.Equal(t, 31, s.Document().Design.Walls[0].Groups[0].Columns)
	require.True(t, ask(t, s, session.Request{Op: "set", Path: "view.units", Value: "in/16"}).OK)
	assert.Equal(t, "9/16 in", nudge(group+".backer.thickness", 1))
	assert.Empty(t, nudge("title", 1))
	assert.Empty(t, nudge(group+".heights", 1))
}
