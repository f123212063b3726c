package engine_test

import (
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
)

// A place in inches stays one, in sixteenths: 41 × 36.2 + 46 = 1530.2 mm on a
// wall of 11 ft 6 in, 3505.2 mm: 987.5 mm are 38.878 in, 38 7/8.
func TestCentredInInches(t *testing.T) {
	was := edit(t, design.Default(), "walls[0].width = 11' 6\"\n"+group+"place.left = 44 5/8 in")
	doc := edit(t, was, group+"width = 1.5 m")
	got := engine.KeepPlaced(was, plan(t, was.Design), doc)
	assert.Equal(t, "38 7/8 in", got.Design.Walls[0].Groups[0].Place.Left.String())
}

// What is assumed of the place stays assumed; a panel wider than its wall stays
// where it was, for a person to decide.
func TestCentredKeepsWhatIsAssumed(t *testing.T) {
	was := design.Default()
	doc := edit(t, was, group+"width = 1.5 m")
	doc.Assumed = append(doc.Assumed, group+"place.left")
	got := engine.KeepPlaced(was, plan(t, was.Design), doc)
	assert.Contains(t, got.Assumed, group+"place.left")
	assert.NotEqual(t, doc.Design.Walls[0].Groups[0].Place.Left, got.Design.Walls[0].Groups[0].Place.Left)

	wide := design.Clone(was)
	wide.Design.Walls[0].Groups[0].Width = length.MM(3600)
	assert.Equal(t, wide, engine.KeepPlaced(was, plan(t, was.Design), wide))
}

// A panel that an edit would push past the right corner of its wall ends there; one that
// was beyond it already, or is wider than the wall, stays for a person to decide, and so
// does a place that was typed.
func TestAWidenedPanelStaysOnItsWall(t *testing.T) {
	place := func(doc design.Document) string { return doc.Design.Walls[0].Groups[0].Place.Left.String() }
	was := edit(t, design.Default(), group+"place.left = 2200 mm")
	before := plan(t, was.Design)
	// 41 × 36.2 + 46 = 1530.2 mm on a wall of 3500.
	wider := edit(t, was, group+"width = 1.5 m")
	assert.Equal(t, "1969 mm", place(engine.KeepPlaced(was, before, wider)))
	assert.Contains(t, codes(plan(t, wider.Design).WatchOuts), "wall/beyond-side")
	assert.NotContains(t, codes(plan(t, engine.KeepPlaced(was, before, wider).Design).WatchOuts), "wall/beyond-side")
	// A narrower wall moves it too, and one that it still hangs on does not.
	assert.Equal(t, "2059 mm", place(engine.KeepPlaced(was, before, edit(t, was, "walls[0].width = 3300 mm"))))
	assert.Equal(t, "2200 mm", place(engine.KeepPlaced(was, before, edit(t, was, "walls[0].width = 3450 mm"))))
	assert.Equal(t, "2200 mm", place(engine.KeepPlaced(was, before, edit(t, was, group+"width = 4 m"))), "wider than the wall")
	typed := edit(t, was, group+"place.left = 3000 mm")
	assert.Equal(t, "3000 mm", place(engine.KeepPlaced(was, before, typed)))
	assert.Equal(t, "3000 mm", place(engine.KeepPlaced(typed, plan(t, typed.Design), edit(t, typed, group+"width = 1.3 m"))), "it was beyond it before")
}
