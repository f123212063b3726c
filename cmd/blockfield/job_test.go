package main_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/network"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/page"
)

// The main job: a wider panel is another picture, with other blocks, mass,
// hours and price; and it is the very design that Go makes of the same edit.
func TestWidthChangesEverything(t *testing.T) {
	b, _ := openPicture(t)
	b.read(page.Maker)
	b.settle()
	strip, facts, picture := b.strip(), b.text(".facts"), b.picture()

	_, plan := edited(t, widthPath, "1.6 m")
	b.redrawn(func() {
		b.set(widthPath, "1.6 m")
		b.shows(plan.Revision)
	})

	after := b.strip()
	for _, figure := range []string{"Blocks", "Hours", "Net price"} {
		require.Contains(t, strip, figure)
		assert.NotEqual(t, strip[figure], after[figure], figure)
	}
	kg := func(text string) string { return text[:strings.Index(text, "\u00a0kg")] }
	assert.Contains(t, facts, "\u00a0kg")
	assert.NotEqual(t, kg(facts), kg(b.text(".facts")))
	assert.Greater(t, difference(t, picture, b.picture()), 3.0, "the picture is another")

	b.read(page.Client)
	b.set(widthPath, "1200 mm")
	_, plan = edited(t)
	b.shows(plan.Revision)
	assert.Contains(t, b.text("#strip"), "¤", "the client sees a price")
}

func TestUndoRedo(t *testing.T) {
	b, _ := openPage(t)
	_, first := edited(t)
	_, wide := edited(t, widthPath, "1.6 m")
	_, both := edited(t, widthPath, "1.6 m", heightPath, "1 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	b.set(heightPath, "1 m")
	b.shows(both.Revision)
	b.click("#undo")
	b.shows(wide.Revision)
	b.click("#undo")
	b.shows(first.Revision)
	b.click("#redo")
	b.shows(wide.Revision)
	assert.Contains(t, eval[string](b, `document.querySelector(`+quote(control(widthPath))+`).value`), "1.6 m")

	b.focus("#pad")
	b.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(kb.ModifierCtrl)))
	b.shows(first.Revision)

	// A step takes back what the section says and what its controls show, though the
	// section is, letter by letter, the one that was put there at first.
	const kind = "walls[0].kind"
	b.read(page.Maker)
	b.section("wall")
	said := b.text("#section")
	_, none := edited(t, kind, "no fixing allowed")
	b.choose(kind, "no fixing allowed")
	b.shows(none.Revision)
	b.wait(`document.querySelector("#section").innerText.includes("nothing may be fixed")`)
	b.click("#undo")
	b.shows(first.Revision)
	assert.Equal(t, "board on timber studs", eval[string](b, `document.querySelector(`+quote(control(kind))+`).value`))
	assert.Equal(t, said, b.text("#section"))
	b.click("#redo")
	b.shows(none.Revision)
	assert.Equal(t, "no fixing allowed", eval[string](b, `document.querySelector(`+quote(control(kind))+`).value`))
}

// download clicks something that saves a file and returns where it is.
func (b *tab) download(do func()) string {
	b.t.Helper()
	dir := b.t.TempDir()
	_, err := chromedp.CallBrowser(b.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior:         browser.SetDownloadBehaviorBehaviorAllow,
		BrowserContextID: chromedp.FromContext(b.ctx).BrowserContextID,
		DownloadPath:     dir,
	})
	require.NoError(b.t, err)
	do()
	var names []string
	require.Eventually(b.t, func() bool {
		names, err = filepath.Glob(filepath.Join(dir, "*.json"))
		return err == nil && len(names) == 1
	}, waitTimeout, waitStep, "no file was saved")
	return names[0]
}

// menu clicks an entry of the file menu.
func (b *tab) menu(entry string) {
	b.t.Helper()
	b.click("#menu summary")
	b.click(`#menu [data-do="` + entry + `"]`)
}

// upload opens a file of the given content.
func (b *tab) upload(name string, body []byte) {
	b.t.Helper()
	file := filepath.Join(b.t.TempDir(), name)
	require.NoError(b.t, os.WriteFile(file, body, 0o644))
	b.uploadFile(file)
}

func (b *tab) uploadFile(name string) {
	b.t.Helper()
	b.do(chromedp.SetUploadFiles(chromedp.CSS("#file"), []string{name}))
}

// A file that has gone by the time it is read is said, and nothing else happens.
func TestUnreadableFileIsSaid(t *testing.T) {
	b, _ := openPage(t)
	was := b.revision()
	b.uploadFile(filepath.Join(t.TempDir(), "gone.json"))
	b.says("could not read the file")
	assert.Equal(t, was, b.revision())
}

// The parts of a long section are reached from its top, and from an address.
func TestPartsOfABench(t *testing.T) {
	b, s := openPage(t)
	b.read("maker")
	b.section("bench")
	const inSight = `(() => { const at = document.getElementById("bench-cuts")?.getBoundingClientRect(); return at && at.top >= 0 && at.top < innerHeight / 2; })()`
	assert.False(t, eval[bool](b, inSight))
	b.click(`.jumps a[href="#bench-cuts"]`)
	b.wait(inSight)
	b.open("about:blank")
	b.open(s.URL + "/#bench-cuts")
	b.alive()
	b.wait(inSight)
}

// Saving, reloading and opening keep the very same design; and the file is the
// one that Go writes.
func TestSaveReloadOpen(t *testing.T) {
	b, s := openPage(t)
	_, plan := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(plan.Revision)
	file := b.download(func() { b.menu("save") })
	body, err := os.ReadFile(file)
	require.NoError(t, err)
	doc, err := design.Decode(body)
	require.NoError(t, err)
	assert.Equal(t, plan.Revision, doc.Design.Revision())
	assert.Equal(t, string(design.Encode(doc)), string(body), "written as the command writes it")

	b.do(chromedp.Reload())
	b.alive()
	assert.Equal(t, plan.Revision, b.revision(), "kept in the browser")

	other := newProfile(t)
	other.open(s.URL + "/")
	other.alive()
	assert.NotEqual(t, plan.Revision, other.revision())
	other.uploadFile(file)
	other.shows(plan.Revision)
}

// A link carries the design into a profile that has never seen it.
func TestLinkOpensTheSameDesign(t *testing.T) {
	b, s := openPage(t)
	_, err := chromedp.Call(b.ctx, cdpage.AddScriptToEvaluateOnNewDocument, cdpage.AddScriptToEvaluateOnNewDocumentParams{
		Source: `navigator.clipboard && (navigator.clipboard.writeText = async (text) => { window.copied = text; })`,
	})
	require.NoError(t, err)
	b.do(chromedp.Reload())
	b.alive()
	_, plan := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(plan.Revision)
	b.menu("link")
	b.wait("window.copied")
	link := eval[string](b, "window.copied")
	require.True(t, strings.HasPrefix(link, s.URL+"/#"), link)

	other := newProfile(t)
	other.open(link)
	other.alive()
	assert.Equal(t, plan.Revision, other.revision())

	// One letter of the link is changed on the way.
	spoilt := []byte(link)
	middle := len(link) - (len(link)-len(s.URL))/2
	spoilt[middle] = map[bool]byte{true: 'B', false: 'A'}[spoilt[middle] == 'A']
	third := newProfile(t)
	third.open(string(spoilt))
	third.wait(`!document.querySelector("#status").hidden`)
	third.alive()
	third.wait(`document.querySelector("iframe.preview-frame")`)
	_, first := edited(t)
	assert.Equal(t, first.Revision, third.revision(), "the first design stays")
}

func TestExamplesOpen(t *testing.T) {
	b, _ := openPage(t)
	b.click("#examples summary")
	b.click(`#examples [data-address="designs/s5.json"]`)
	body, err := os.ReadFile("../../testdata/scenarios/s5.json")
	require.NoError(t, err)
	doc, err := design.Decode(body)
	require.NoError(t, err)
	b.shows(doc.Design.Revision())
	assert.Equal(t, doc.Design.Title, b.text("#title"))
}

// What cannot be used is said at its field; it stays there as typed, and the
// last good plan stays too.
func TestBadValues(t *testing.T) {
	b, _ := openPage(t)
	b.read(page.Maker)
	_, plan := edited(t)
	cases := []struct{ path, value, want string }{
		{widthPath, "banana", "not a length"},
		{widthPath, "1 mm", "1 mm is out of range"},
		{widthPath, "900 m", "900 m is out of range"},
		{heightPath, "-5", "Allowed"},
		{"walls[0].groups[0].heights", "26, 92, 64", "rise"},
		{"walls[0].groups[0].block.size", "", "Allowed"},
	}
	for _, c := range cases {
		before := b.strip()
		b.set(c.path, c.value)
		assert.Eventually(t, func() bool {
			said := b.faultAt(c.path)
			return said != "" && strings.Contains(said, c.want)
		}, waitTimeout, waitStep, "%s = %q", c.path, c.value)
		here := `document.querySelector(` + quote(control(c.path)) + `)`
		assert.Equal(t, c.value, eval[string](b, here+".value"), c.path)
		assert.Equal(t, "true", eval[string](b, here+`.getAttribute("aria-invalid")`), c.path)
		assert.Equal(t, plan.Revision, b.revision(), "%s = %q", c.path, c.value)
		assert.Equal(t, before, b.strip(), "%s = %q", c.path, c.value)
	}
	b.set(widthPath, "1200 mm")
	b.wait(`document.getElementById(document.querySelector(` + quote(control(widthPath)) + `).id + "-fault").hidden`)
	assert.Empty(t, eval[string](b, `document.querySelector(`+quote(control(widthPath))+`).getAttribute("aria-invalid") ?? ""`))
}

// A file that cannot be opened says why and changes nothing.
func TestBadFiles(t *testing.T) {
	b, _ := openPage(t)
	_, plan := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(plan.Revision)
	good, err := os.ReadFile("../../testdata/scenarios/s1.json")
	require.NoError(t, err)
	cases := []struct {
		name string
		body []byte
		want string
	}{
		{"foreign.json", []byte(`{"format":"cake","version":1}`), "file of another kind: found cake"},
		{"cut-off.json", good[:len(good)/2], "cannot be read"},
		{"empty.json", nil, "cannot be read"},
		{"newer.json", []byte(`{"format":"blockfield design","version":99}`), "newer program"},
		{"unknown.json", []byte(`{"format":"blockfield design","version":1,"design":{"colour":"red"}}`), "colour: "},
		{"deep.json", append([]byte(`{"format":"blockfield design","version":1,"design":`), bytes.Repeat([]byte("["), 100_000)...), "parts within parts"},
		{"markup.json", []byte(`{"format":"<img src=x onerror=alert(1)>","version":1}`), "<img src=x"},
	}
	for _, c := range cases {
		eval[any](b, `document.querySelector("#status").hidden = true`)
		b.upload(c.name, c.body)
		b.wait(`!document.querySelector("#status").hidden`)
		assert.Contains(t, b.text("#status"), c.want, c.name)
		assert.Equal(t, plan.Revision, b.revision(), c.name)
	}
	b.upload("good.json", good)
	doc, err := design.Decode(good)
	require.NoError(t, err)
	b.shows(doc.Design.Revision())
}

// A worker that dies over a request is replaced by one that has the last good
// design; the page says so and goes on.
func TestWorkerIsReplaced(t *testing.T) {
	b, _ := openPage(t)
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	_, err := chromedp.Run(b.lastWorker(), chromedp.Evaluate[any](`globalThis.blockfieldHandle = () => { throw new Error("died for a test") }; 0`))
	require.NoError(t, err)
	b.set(heightPath, "1 m")
	b.wait(`!document.querySelector("#status").hidden`)
	assert.NotEmpty(t, b.text("#status"))
	assert.Equal(t, wide.Revision, b.revision(), "the last good design")
	_, higher := edited(t, widthPath, "1.6 m", heightPath, "900 mm")
	b.set(heightPath, "900 mm")
	b.shows(higher.Revision)
}

// A lost frame is replaced too, and shows the present design.
func TestPictureComesBack(t *testing.T) {
	b, _ := openPicture(t)
	_, wide := edited(t, widthPath, "1.6 m")
	b.redrawn(func() {
		b.set(widthPath, "1.6 m")
		b.shows(wide.Revision)
	})
	before := b.fine()
	eval[any](b, `document.querySelector("iframe.preview-frame").dataset.old = "yes"`)
	// What the frame says when the graphics go away.
	eval[any](b, `window.dispatchEvent(new MessageEvent("message",
		{data: {type: "lost"}, source: document.querySelector("iframe.preview-frame").contentWindow}))`)
	b.wait(`document.querySelector("iframe.preview-live:not([data-old])")`)
	b.same(before)
}

// What is typed before the engine is there is done when it is.
func TestEarlyEditsAreKept(t *testing.T) {
	site := builtSite(t)
	hold := newGate(site.Handler(), "engine.wasm")
	s := newServer(t, hold)
	b := newTab(t)
	b.open(s.URL + "/")
	b.wait(`document.readyState === "complete"`)
	b.set(widthPath, "1.6 m")
	time.Sleep(600 * time.Millisecond) // longer than a pause in typing
	_, first := edited(t)
	_, wide := edited(t, widthPath, "1.6 m")
	assert.Equal(t, first.Revision, b.revision())
	hold.open()
	b.shows(wide.Revision)
	b.alive()
}

// A kept design that will take the place of the first one shows no figures of
// the first one meanwhile.
func TestOpeningHidesTheFirstDesign(t *testing.T) {
	site := builtSite(t)
	hold := newGate(site.Handler(), "engine.wasm")
	hold.open()
	s := newServer(t, hold)
	b := newTab(t)
	b.open(s.URL + "/")
	b.alive()
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	hold.shut()
	_, err := chromedp.Call(b.ctx, network.SetCacheDisabled, network.SetCacheDisabledParams{CacheDisabled: true})
	require.NoError(t, err)
	eval[any](b, `navigator.serviceWorker.getRegistrations().then((all) => Promise.all(all.map((one) => one.unregister())))`)
	b.do(chromedp.Reload())
	visible := `getComputedStyle(document.querySelector("#revision")).visibility`
	assert.Equal(t, "hidden", eval[string](b, visible))
	hold.open()
	b.wait(visible + ` === "visible"`)
	assert.Equal(t, wide.Revision, b.revision())
	b.alive()
}
