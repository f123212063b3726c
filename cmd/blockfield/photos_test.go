package main_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// photo is a picture file of a size.
func photo(t *testing.T, width, height int) string {
	t.Helper()
	m := image.NewRGBA(image.Rect(0, 0, width, height))
	for x := range width {
		for y := range height {
			m.Set(x, y, color.RGBA{uint8(x), uint8(y), 90, 255})
		}
	}
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, m))
	name := filepath.Join(t.TempDir(), "wall.png")
	require.NoError(t, os.WriteFile(name, b.Bytes(), 0o644))
	return name
}

// Pictures of the wall stay with their job in this browser, smaller than they came, over a
// reload; they can be taken out and put back, and no file of the job holds them.
func TestPicturesOfTheWall(t *testing.T) {
	b, _ := openPage(t)
	b.read("maker")
	b.section("wall")
	b.set("walls[0].width", "3.6 m") // a job of its own
	eval[any](b, `document.getElementById("photos-more").open = true`)
	b.do(chromedp.SetUploadFiles(chromedp.CSS(`[data-photo="damage"]`), []string{photo(t, 2600, 1300)}))
	const size = `(() => { const i = document.querySelector("#photos img"); return i?.complete && i.naturalWidth + "x" + i.naturalHeight; })()`
	b.wait(size + ` === "2000x1000"`)
	assert.Contains(t, b.text("#photos figcaption"), "Damage that is there")
	assert.Equal(t, " (1)", eval[string](b, `document.getElementById("photo-count").textContent`))

	bad := filepath.Join(t.TempDir(), "bad.png")
	require.NoError(t, os.WriteFile(bad, []byte("no picture"), 0o644))
	b.do(chromedp.SetUploadFiles(chromedp.CSS(`[data-photo="wall"]`), []string{bad}))
	b.wait(`document.querySelector('[data-said="photo-unread"]')`)
	assert.Contains(t, b.text(`[data-said="photo-unread"]`), "bad.png")

	b.reload()
	b.section("look")
	b.section("wall")
	b.wait(size + ` === "2000x1000"`)
	body, err := os.ReadFile(b.download(func() { b.menu("save") }))
	require.NoError(t, err)
	assert.Less(t, len(body), 20_000, "a design, and no picture")
	assert.NotContains(t, string(body), "photo")

	eval[any](b, `document.getElementById("photos-more").open = true`)
	b.wait(`document.querySelector("#photos [data-photo-drop]")`) // they are drawn again after each answer
	b.click("#photos [data-photo-drop]")
	b.wait(`document.querySelectorAll("#photos img").length === 0`)
	b.click(`[data-said="photo-dropped"] button`)
	b.wait(`document.querySelectorAll("#photos img").length === 1`)

	// Another design has none of them; the job has them still.
	b.menu("new")
	b.wait(`document.querySelectorAll("#photos img").length === 0`)
	eval[any](b, `document.getElementById("undo").click()`)
	b.wait(`document.querySelectorAll("#photos img").length === 1`)
}
