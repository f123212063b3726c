package main_test

import (
	"bytes"
	"image"
	"image/draw"
	"image/png"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	xdraw "golang.org/x/image/draw"
)

// jumpApart is how far poster and picture may lie apart where each pixel is the
// mean of four by four, so that the grain of soft shadows and of compression does
// not count.
const jumpApart = 2.5

// The poster fills its box whatever the box's shape, and is in each the picture
// that the preview draws: nothing jumps when it comes. One that is two hundredths
// too large is seen to jump.
func TestPosterIsThePicture(t *testing.T) {
	asleep := newTab(t)
	hold := newGate(builtSite(t).Handler(), "preview.wasm")
	s := newServer(t, hold)
	t.Cleanup(hold.open)
	asleep.open(s.URL + "/")
	asleep.alive()
	alive, _ := openPicture(t, window(1440, 620))
	for _, size := range [][2]int64{{1440, 620}, {768, 900}, {390, 844}} {
		asleep.size(size[0], size[1])
		alive.size(size[0], size[1])
		asleep.wait(`document.querySelector("#still").complete`)
		alive.fine()
		poster, picture := asleep.picture(), alive.picture()
		apart := difference(t, coarse(t, poster), coarse(t, picture))
		eval[any](asleep, `document.querySelector("#still").style.transform = "translate(-50%, -50%) scale(1.02)"`)
		jump := difference(t, coarse(t, asleep.picture()), coarse(t, picture))
		eval[any](asleep, `document.querySelector("#still").style.transform = ""`)
		t.Logf("%d × %d: %.2f of 255, and %.2f where it is too large", size[0], size[1], apart, jump)
		assert.Less(t, apart, jumpApart, "%d × %d", size[0], size[1])
		assert.Greater(t, jump, jumpApart, "%d × %d", size[0], size[1])
		assert.True(t, eval[bool](asleep, `(() => {
			const box = document.querySelector("#stage").getBoundingClientRect(), still = document.querySelector("#still").getBoundingClientRect();
			return still.left <= box.left + 0.5 && still.right >= box.right - 0.5 && still.top <= box.top + 0.5 && still.bottom >= box.bottom - 0.5; })()`),
			"%d × %d: no bands", size[0], size[1])
	}
}

// coarse is a picture at a quarter of its size.
func coarse(t *testing.T, picture []byte) []byte {
	t.Helper()
	fine, err := png.Decode(bytes.NewReader(picture))
	require.NoError(t, err)
	small := image.NewRGBA(image.Rect(0, 0, fine.Bounds().Dx()/4, fine.Bounds().Dy()/4))
	xdraw.BiLinear.Scale(small, small.Rect, fine, fine.Bounds(), draw.Src, nil)
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, small))
	return b.Bytes()
}
