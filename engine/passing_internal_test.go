package engine

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The sizes that pass are those of a stretch: the first of it in the way of the search is
// found wherever it begins, when it is as long as the longest jump; what is nearer is found
// however short it is; and the number of tries is bounded.
func TestPassingIsTheFirst(t *testing.T) {
	for _, way := range []int{1, -1} {
		from, end := 0, sizeSteps+1
		if way < 0 {
			from, end = sizeSteps, -1
		}
		for begins := range sizeSteps + 1 {
			for _, long := range []int{1, farStep, sizeSteps} {
				tries := 0
				one, found := passing(func(step int) (Candidate, bool) {
					tries++
					far := (step - from) * way
					return Candidate{Key: strconv.Itoa(far)}, begins <= far && far < begins+long
				}, from, end)
				assert.LessOrEqual(t, tries, 24)
				if begins <= nearSteps || (long >= farStep && begins+farStep <= sizeSteps) {
					assert.True(t, found, "%d from %d", long, begins)
				}
				if found {
					assert.Equal(t, strconv.Itoa(begins), one.Key)
				}
			}
		}
	}
}
