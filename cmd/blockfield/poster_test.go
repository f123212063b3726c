package main_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The poster fills its box whatever the box's shape, and is in each the picture
// that the preview draws: nothing jumps when it comes. A poster that is one
// hundredth too large lies 5 away.
func TestPosterIsThePicture(t *testing.T) {
	asleep := newTab(t)
	hold := newGate(builtSite(t).Handler(), "preview.wasm")
	s := newServer(t, hold)
	t.Cleanup(hold.open)
	asleep.open(s.URL + "/")
	asleep.alive()
	alive, _ := openPicture(t)
	for _, size := range [][2]int64{{1440, 900}, {1440, 620}, {768, 1024}, {768, 600}, {390, 844}} {
		asleep.size(size[0], size[1])
		alive.size(size[0], size[1])
		asleep.wait(`document.querySelector("#still").complete`)
		alive.fine()
		apart := difference(t, asleep.picture(), alive.picture())
		t.Logf("%d × %d: %.2f of 255", size[0], size[1], apart)
		assert.Less(t, apart, posterApart, "%d × %d", size[0], size[1])
		assert.True(t, eval[bool](asleep, `(() => {
			const box = document.querySelector("#stage").getBoundingClientRect(), still = document.querySelector("#still").getBoundingClientRect();
			return still.left <= box.left + 0.5 && still.right >= box.right - 0.5 && still.top <= box.top + 0.5 && still.bottom >= box.bottom - 0.5; })()`),
			"%d × %d: no bands", size[0], size[1])
	}
}
