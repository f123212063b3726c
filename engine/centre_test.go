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
	got := engine.KeepCentred(was, plan(t, was.Design), doc)
	assert.Equal(t, "38 7/8 in", got.Design.Walls[0].Groups[0].Place.Left.String())
}

// What is assumed of the place stays assumed; a panel wider than its wall stays
// where it was, for a person to decide.
func TestCentredKeepsWhatIsAssumed(t *testing.T) {
	was := design.Default()
	doc := edit(t, was, group+"width = 1.5 m")
	doc.Assumed = append(doc.Assumed, group+"place.left")
	got := engine.KeepCentred(was, plan(t, was.Design), doc)
	assert.Contains(t, got.Assumed, group+"place.left")
	assert.NotEqual(t, doc.Design.Walls[0].Groups[0].Place.Left, got.Design.Walls[0].Groups[0].Place.Left)

	wide := design.Clone(was)
	wide.Design.Walls[0].Groups[0].Width = length.MM(3600)
	assert.Equal(t, wide, engine.KeepCentred(was, plan(t, was.Design), wide))
}
