package session_test

import (
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const firstWall = "walls[0]"

func hangsAt(s *session.Session) [2]string {
	p := s.Document().Design.Walls[0].Groups[0].Place
	return [2]string{p.Left.String(), p.Height.String()}
}

func inSection(t *testing.T, section string) *session.Session {
	t.Helper()
	s := fresh()
	require.True(t, ask(t, s, session.Request{Op: "section", Name: section}).OK)
	return s
}

func grab(t *testing.T, s *session.Session, x, y float64) {
	t.Helper()
	require.True(t, ask(t, s, session.Request{Op: "place", Kind: "grab", Path: firstWall, DX: x, DY: y}).OK)
}

func move(t *testing.T, s *session.Session, dx, dy float64) session.Response {
	t.Helper()
	res := ask(t, s, session.Request{Op: "place", Kind: "move", DX: dx, DY: dy})
	require.True(t, res.OK, "%v", res.Faults)
	return res
}

// The first panel lies from 1130 to 2370.6 mm along its wall and from 757.6 to 1600
// mm below the ceiling. What is dragged there follows the pointer, keeps to places
// that suit it, and is one step of the history however many moves it was.
func TestAPanelIsDragged(t *testing.T) {
	s := inSection(t, "wall")
	grab(t, s, 1700, 1200)
	res := move(t, s, 100, 50)
	assert.Equal(t, [2]string{"1230 mm", "850 mm"}, hangsAt(s))
	assert.Contains(t, res.Values, session.Value{Path: group + ".place.left", Value: "1230 mm"})
	assert.Contains(t, res.Values, session.Value{Path: group + ".place.height", Value: "850 mm"})
	assert.NotEmpty(t, fragment(res, "wall-drawing-0"))
	assert.Empty(t, res.Scene, "the picture waits until the panel is let go")
	assert.Empty(t, fragment(res, "rear-0-0"), "the back is the same wherever it hangs")
	move(t, s, -35, 115)
	assert.Equal(t, [2]string{"1180 mm", "729 mm"}, hangsAt(s), "between its studs, with its middle at the ears")
	move(t, s, -10, 0)
	assert.Equal(t, "1180 mm", hangsAt(s)[0], "there it stays for a while")
	move(t, s, -26, -64)
	assert.Equal(t, [2]string{"1159 mm", "799 mm"}, hangsAt(s), "and then it is where the pointer is")
	drop := ask(t, s, session.Request{Op: "place", Kind: "drop"})
	assert.NotEmpty(t, drop.Scene)
	assert.True(t, drop.CanUndo)
	move(t, s, 500, 0)
	assert.Equal(t, "1159 mm", hangsAt(s)[0], "let go")
	ask(t, s, session.Request{Op: "undo"})
	assert.Equal(t, [2]string{"1130 mm", "900 mm"}, hangsAt(s), "one step back to where it was")
	assert.False(t, ask(t, s, session.Request{Op: "undo"}).CanUndo)
	assert.Equal(t, [2]string{"1130 mm", "900 mm"}, hangsAt(s))
}

func TestNothingIsDraggedBesideThePanel(t *testing.T) {
	s := inSection(t, "wall")
	for _, at := range [][2]float64{{1129, 1200}, {2371, 1200}, {1700, 757}, {1700, 1601}} {
		grab(t, s, at[0], at[1])
		assert.Empty(t, move(t, s, 100, 100).Fragments)
	}
	assert.Equal(t, [2]string{"1130 mm", "900 mm"}, hangsAt(s))
}

// A panel stays on its wall, however far somebody drags.
func TestAPanelStaysOnItsWall(t *testing.T) {
	s := inSection(t, "wall")
	grab(t, s, 1700, 1200)
	move(t, s, 1e300, -1e300)
	assert.Equal(t, [2]string{"2259.4 mm", "1657.6 mm"}, hangsAt(s))
	move(t, s, -1e300, 1e300)
	move(t, s, -1e300, 1e300)
	assert.Equal(t, [2]string{"0 mm", "0 mm"}, hangsAt(s))
}

// Keys move by steps, finely with Shift, and do not stop at places; each is a step of
// its own. In inches they go by halves and sixteenths.
func TestKeysMoveAPanel(t *testing.T) {
	s := inSection(t, "wall")
	key := func(dx, dy, factor float64) session.Response {
		return ask(t, s, session.Request{Op: "place", Kind: "key", Path: firstWall, DX: dx, DY: dy, Factor: factor})
	}
	res := key(1, 0, 1)
	assert.NotEmpty(t, res.Scene)
	key(0, -1, 0.1)
	assert.Equal(t, [2]string{"1140 mm", "901 mm"}, hangsAt(s))
	ask(t, s, session.Request{Op: "undo"})
	assert.Equal(t, [2]string{"1140 mm", "900 mm"}, hangsAt(s))
	set(t, s, "view.units", "in/16")
	set(t, s, group+".place.left", "40 in")
	set(t, s, group+".place.height", "30 in")
	key(1, 0, 1)
	key(0, -1, 0.1)
	assert.Equal(t, [2]string{"40 1/2 in", "30 1/16 in"}, hangsAt(s))
}

// Of several groups the one under the pointer goes, and the keys then move that one.
func TestTheGroupUnderThePointerIsMoved(t *testing.T) {
	s := inSection(t, "wall")
	require.True(t, set(t, s, "walls[0].width", "6 m").OK)
	require.True(t, set(t, s, group+".place.left", "300 mm").OK)
	require.True(t, ask(t, s, session.Request{Op: "act", Name: "add", Path: "walls[0].groups"}).OK)
	require.True(t, set(t, s, "walls[0].groups[1].place.left", "3500 mm").OK)
	grab(t, s, 4000, 1200)
	move(t, s, 150, 0)
	ask(t, s, session.Request{Op: "place", Kind: "drop"})
	ask(t, s, session.Request{Op: "place", Kind: "key", Path: firstWall, DX: 1, Factor: 1})
	groups := s.Document().Design.Walls[0].Groups
	assert.Equal(t, []string{"300 mm", "3660 mm"}, []string{groups[0].Place.Left.String(), groups[1].Place.Left.String()})
}

func TestAnUnknownMoveIsRefused(t *testing.T) {
	s := inSection(t, "wall")
	assert.NotEmpty(t, ask(t, s, session.Request{Op: "place", Kind: "fly", Path: firstWall}).Faults)
	assert.Empty(t, ask(t, s, session.Request{Op: "place", Kind: "key", Path: "walls[9]", DX: 1, Factor: 1}).Fragments)
	assert.Equal(t, design.Default().Design, s.Document().Design)
}

// The buttons below the drawing take the panel to places that suit it.
func TestSpotsAreButtons(t *testing.T) {
	s := inSection(t, "wall")
	res := ask(t, s, session.Request{Op: "section", Name: "wall"})
	section := fragment(res, "section")
	for _, button := range []string{
		`data-set="walls[0].groups[0].place.left" value="1180 mm"`, `data-set="walls[0].groups[0].place.height" value="729 mm"`,
	} {
		assert.Contains(t, section, button)
	}
	after := set(t, s, group+".place.left", "1180 mm")
	assert.False(t, strings.Contains(fragment(after, "wall-spots"), "1180 mm"), "it is there now")
	assert.Contains(t, fragment(after, "wall-spots"), "1130 mm", "the middle of the wall")
}
