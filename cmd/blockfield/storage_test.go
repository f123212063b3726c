package main_test

import (
	"os"
	"testing"

	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/page"
)

// fill leaves no room for a single character in the local storage; it is really full, not
// said to be.
const fill = `(() => {
	for (let size = 1 << 20, n = 0; size > 0; n += 1) {
		try { localStorage.setItem("filler" + n, "x".repeat(size)); } catch { size >>= 1; }
	}
	for (let longer = localStorage.getItem("filler0") + "x"; ; longer += "x") {
		try { localStorage.setItem("filler0", longer); } catch { break; }
	}
})()`

// Where the storage is full the page says so once, and offers all of the work as a file:
// the jobs that are kept, the open one as it is now, and the record of the work on it. Once
// there is room again it keeps, and the message goes.
func TestFullStorage(t *testing.T) {
	b, s := openPage(t)
	_, first := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(first.Revision)
	b.menu("new")
	b.says("A fresh design is open")
	_, second := edited(t, heightPath, "1 m")
	b.set(heightPath, "1 m")
	b.shows(second.Revision)

	eval[any](b, fill)
	limit := 1.0
	_, err := chromedp.Call(b.ctx, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{Origin: s.URL, QuotaSize: &limit})
	require.NoError(t, err)
	const longer = "1510.55 mm" // than what stands there: that much there is no room for
	_, both := edited(t, heightPath, "1 m", widthPath, longer)
	b.set(widthPath, longer)
	b.shows(both.Revision)
	b.says("does not let the page keep")
	b.section(page.Money)
	b.set("record.client.name", "Ada Beech")
	b.wait(`document.querySelector("#send-leaves").textContent.includes("Ada Beech")`)
	file, err := os.ReadFile(b.download(func() { b.press("Save my work as a file") }))
	require.NoError(t, err)
	text := string(file)
	assert.Contains(t, text, "blockfield jobs")
	assert.Contains(t, text, "Ada Beech", "the record, which the database had no room for")

	other := newProfile(t)
	other.open(s.URL + "/")
	other.alive()
	other.upload("jobs.json", file)
	other.says("2 were taken in")
	assert.True(t, other.kept(first.Revision))
	assert.True(t, other.kept(both.Revision), "as it is now, not as it was kept last")

	_, err = chromedp.Call(b.ctx, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{Origin: s.URL})
	require.NoError(t, err)
	eval[any](b, `Object.keys(localStorage).filter((key) => key.startsWith("filler")).forEach((key) => localStorage.removeItem(key))`)
	b.section(page.Look)
	b.set(widthPath, "1.4 m")
	_, last := edited(t, heightPath, "1 m", widthPath, "1.4 m")
	b.shows(last.Revision)
	assert.True(t, b.kept(last.Revision))
	b.section(page.Money)
	b.set("record.client.name", "Ada Beech of the mill")
	b.wait(`!document.querySelector('[data-said="not-kept"]')`)
	assert.Contains(t, eval[string](b, `document.querySelector("#private").textContent`), "stays in this browser")
}

// A first visitor in a browser that keeps nothing gets the design itself as a file.
func TestShutStorageSavesTheDesign(t *testing.T) {
	b, _ := openPage(t)
	eval[any](b, fill)
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	b.says("does not let the page keep")
	file, err := os.ReadFile(b.download(func() { b.press("Save my work as a file") }))
	require.NoError(t, err)
	doc, err := design.Decode(file)
	require.NoError(t, err)
	assert.Equal(t, wide.Revision, doc.Design.Revision())
}

// Where the browser has no room for the page itself the menu says so, and nothing else does:
// with a network everything works.
func TestNoRoomForThePage(t *testing.T) {
	s := newServer(t, builtSite(t).Handler())
	b := newProfile(t)
	little := 300_000.0 // bytes; less than the engine has
	_, err := chromedp.Call(b.ctx, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{Origin: s.URL, QuotaSize: &little})
	require.NoError(t, err)
	b.open(s.URL + "/")
	b.alive()
	b.wait(`!document.querySelector("#no-room").hidden`)
	b.quiet()
	b.click("#menu summary")
	assert.Contains(t, b.text("#menu"), "will not open without a network")
	assert.Equal(t, 0, eval[int](b, `caches.keys().then((names) => names.length)`), "half a site takes room and helps nobody")
}

// A worker that its browser has ended is replaced at once, though it says nothing.
func TestEndedWorkerIsReplaced(t *testing.T) {
	b, _ := openPage(t, (*tab).holdTimers)
	b.inWorker(`setTimeout(() => close(), 0)`)
	b.says("was started again")
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
}
