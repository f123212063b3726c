package main_test

import (
	"bytes"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/scene"
	"blockfield/engine/words"
)

// While the picture of a design that was opened is still to come, the one before is
// dimmed and a line says so; an edit dims nothing.
func TestPictureOfAnotherPanelIsVeiled(t *testing.T) {
	s := newServer(t, newGate(builtSite(t).Handler(), "preview.wasm"))
	b := newTab(t)
	b.open(s.URL + "/")
	b.alive()
	eval[any](b, `(window.noted = [], new MutationObserver(() => noted.push([document.querySelector("#stage").classList.contains("veiled"), document.querySelector(".stage-note").textContent].join(" "))).observe(document.querySelector("#stage"), {attributes: true, attributeFilter: ["class"]}), 0)`)
	b.set(widthPath, "1.4 m")
	b.wait(`document.querySelector("#still.drawn")`)
	assert.Empty(t, eval[[]string](b, "noted"))
	body, err := os.ReadFile("../../testdata/scenarios/s8.json")
	require.NoError(t, err)
	b.upload("s8.json", body)
	b.wait(`noted.length === 2`)
	noted := eval[[]string](b, "noted")
	assert.Contains(t, noted[0], "true The picture of this panel is being drawn")
	assert.Contains(t, noted[1], "false")
	assert.True(t, eval[bool](b, `document.querySelector(".stage-note").hidden`))
}

// note is the line in the corner of the picture; empty where there is none.
const note = `(document.querySelector(".stage-note").hidden ? "" : document.querySelector(".stage-note").innerText)`

// fromFrame has the page hear a message as if its preview had sent it.
func fromFrame(message string) string {
	return fmt.Sprintf(`window.dispatchEvent(new MessageEvent("message",
		{data: %s, source: document.querySelector("iframe.preview-frame").contentWindow}))`, message)
}

// sentence is what the page says by the key.
func sentence(key string) string { return words.Reader{Language: words.English()}.Say(key) }

// A preview whose process is killed is noticed though it says nothing, and
// replaced; the page says so.
func TestKilledFrameIsReplaced(t *testing.T) {
	const beat, pulse, noted = 5_000, 8_000, 8_000 // as site/pulse.js and site/stage.js have them, in ms
	b, _ := openPicture(t, (*tab).holdTimers)
	before := b.fine()
	eval[any](b, `document.querySelector("iframe.preview-frame").dataset.old = "yes"`)
	eval[any](b, `(window.beats = 0, addEventListener("message", (e) => { if (e.data?.type === "alive") beats += 1; }), 0)`)
	for n := range 2 { // a frame that lives says so, and stays
		b.pass(beat)
		b.wait(fmt.Sprintf("beats === %d", n+1))
		b.pass(pulse - beat)
	}
	assert.True(t, eval[bool](b, `document.querySelector("iframe[data-old]") !== null && `+note+` === ""`))

	b.killFrame()
	b.pass(beat)
	time.Sleep(calm) // in which it might answer
	b.pass(pulse)
	b.wait(note + ` === ` + quote(sentence("message/picture-restarted")))
	b.wait(`document.querySelector("iframe.preview-live:not([data-old])")`)
	b.same(before)
	assert.NotEmpty(t, eval[string](b, note))
	b.pass(noted)
	assert.Empty(t, eval[string](b, note))
}

// killFrame ends the process of the preview's frame as the system would.
func (b *tab) killFrame() {
	b.t.Helper()
	go chromedp.Call(b.lastFrame(), cdpage.Crash, cdp.Empty{}) // nobody is left to answer
	require.Eventually(b.t, func() bool {
		b.mu.Lock()
		defer b.mu.Unlock()
		return b.crashes > 0
	}, waitTimeout, waitStep, "the frame did not die")
}

// A frame is a stranger: what makes no sense is dropped, and the page goes on.
func TestFrameIsNotTrusted(t *testing.T) {
	b, _ := openPicture(t)
	before := b.fine()
	for _, message := range []string{
		`null`, `undefined`, `7`, `"lost"`, `[]`, `{}`, `{type: null}`, `{type: "toString"}`, `{type: {}}`,
		`{type: "view"}`, `{type: "view", yaw: "1", pitch: 0, zoom: 1, azimuth: 0, elevation: 45}`,
		`{type: "view", yaw: NaN, pitch: 0, zoom: 1, azimuth: 0, elevation: 45}`, `{type: "error"}`, `{type: "refused", scene: 1}`,
		`{type: "refused", scene: 0, message: "of an older scene"}`,
	} {
		eval[any](b, fromFrame(message))
	}
	time.Sleep(calm)
	b.same(before)
	_, wide := edited(t, widthPath, "1.6 m")
	b.redrawn(func() {
		b.set(widthPath, "1.6 m")
		b.shows(wide.Revision)
	})
	b.wait(note + ` === ""`)
}

// A scene that the frame does not take is drawn as a still picture, however
// often it happens; the next one moves again.
func TestRefusedSceneIsAStill(t *testing.T) {
	b, _ := openPicture(t)
	before := b.fine()
	for i, width := range []string{"1.6 m", "1.4 m", "1200 mm"} {
		b.settle() // a frame that drew its first picture of a scene still says that it drew the last one
		eval[any](b, `document.querySelector("#still").removeAttribute("src")`)
		eval[any](b, fromFrame(fmt.Sprintf(`{type: "refused", scene: %d, message: "not this one"}`, 1+i)))
		b.wait(note + ` === ` + quote(sentence("message/picture-refused")))
		b.wait(`!document.querySelector("iframe.preview-live") && document.querySelector("#still").naturalWidth > 300`)
		b.set(widthPath, width)
		_, plan := edited(t, widthPath, width)
		b.shows(plan.Revision)
		b.wait(`document.querySelector("iframe.preview-live")`)
		b.wait(note + ` === ""`)
	}
	b.same(before)
}

// Where there are no graphics a quiet line says so to everybody, and the
// picture is a still one.
func TestWithoutGraphicsALineSaysSo(t *testing.T) {
	hold := newGate(builtSite(t).Handler(), "preview.wasm")
	s := newServer(t, hold)
	t.Cleanup(hold.open)
	b := newTab(t)
	b.size(390, 844) // a still picture is drawn in a moment
	b.open(s.URL + "/")
	b.alive()
	for range 2 { // both starts
		b.wait(`document.querySelector("iframe.preview-frame")`)
		eval[any](b, `document.querySelector("iframe.preview-frame").dataset.old = "yes"`)
		eval[any](b, fromFrame(`{type: "error", message: "no WebGL"}`))
		b.wait(`!document.querySelector("iframe[data-old]")`)
	}
	b.wait(note + ` === ` + quote(sentence("message/picture-failed")))
	b.wait(`document.querySelector("#still").className === "drawn"`)
	still := b.picture()
	b.focus("#pad")
	b.do(chromedp.KeyEvent(kb.ArrowRight))
	require.Eventually(t, func() bool { return difference(t, still, b.picture()) > 0.5 }, waitTimeout, glance, "the lamp moves in stills")
}

// look takes an entry of the menu of views and lights.
func (b *tab) look(do, value string) {
	b.t.Helper()
	entry := fmt.Sprintf(".looks [data-do=%q][value=%q]", do, value)
	if !eval[bool](b, `document.querySelector(".looks").open`) {
		b.click(".looks summary")
	}
	if !eval[bool](b, `document.querySelector(`+quote(entry)+`).checkVisibility()`) {
		b.click(".looks .more summary")
	}
	b.click(entry)
}

// lampHeight is the slider of the menu, how far off the wall the lamp stands.
const lampHeight = `document.querySelector(".looks input")`

// Views and lights change the picture, the way back brings the old one, and the
// light of a day ends where it began.
func TestViewsAndLights(t *testing.T) {
	b, _ := openPicture(t)
	before := b.fine()
	for _, one := range [][2]string{{"view", "three-quarter"}, {"light", "window"}} {
		last := b.picture()
		b.redrawn(func() { b.look(one[0], one[1]) })
		require.Eventually(t, func() bool { return difference(t, last, b.picture()) > 3 }, waitTimeout, glance, one)
	}
	last := b.picture()
	b.redrawn(func() { b.look("light", "raking") })
	require.Eventually(t, func() bool { return difference(t, last, b.picture()) > 3 }, waitTimeout, glance, "raking light")
	b.wait(lampHeight + `.value === "16"`)
	b.look("light", "lamp")
	b.look("view", "front")
	b.same(before)

	b.click(".looks summary")
	b.redrawn(func() {
		eval[any](b, `((e) => { e.value = "80"; e.dispatchEvent(new Event("input", {bubbles: true})); return 0; })(`+lampHeight+`)`)
	})
	require.Eventually(t, func() bool { return difference(t, before, b.picture()) > 3 }, waitTimeout, glance, "the lamp is lifted off the wall")
	b.look("light", "lamp")
	b.same(before)

	b.look("sweep", "day")
	require.Eventually(t, func() bool { return difference(t, before, b.picture()) > 3 }, waitTimeout, glance, "the sun comes in")
	b.advanceFrame(14_000) // the whole day, as wasm/preview/glide.go has it
	b.same(before)
}

// advanceFrame puts the clock of the preview forward, by milliseconds.
func (b *tab) advanceFrame(ms int) {
	b.t.Helper()
	_, err := chromedp.Run(b.lastFrame(), chromedp.Evaluate[any](fmt.Sprintf(
		`(() => { const now = performance.now.bind(performance); performance.now = () => now() + %d; })()`, ms)))
	require.NoError(b.t, err)
}

// What is saved is the picture of the design, as Go draws it.
func TestSavesThePicture(t *testing.T) {
	b, _ := openPicture(t)
	dir := t.TempDir()
	_, err := chromedp.CallBrowser(b.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior:         browser.SetDownloadBehaviorBehaviorAllow,
		BrowserContextID: chromedp.FromContext(b.ctx).BrowserContextID,
		DownloadPath:     dir,
	})
	require.NoError(t, err)
	eval[any](b, `document.querySelector('.looks [data-do="shoot"]').value = "400"`)
	b.look("shoot", "400")
	var names []string
	var body []byte
	require.Eventually(t, func() bool { // the file has its name before all of it is written
		if names, err = filepath.Glob(filepath.Join(dir, "*.png")); err != nil || len(names) != 1 {
			return false
		}
		body, err = os.ReadFile(names[0])
		return err == nil && bytes.HasSuffix(body, []byte("IEND\xaeB`\x82"))
	}, waitTimeout, waitStep, "no picture was saved")
	_, plan := edited(t)
	assert.Contains(t, names[0], plan.Revision)

	doc := design.Default()
	sc, err := engine.Scene(doc.Design, plan, doc.View)
	require.NoError(t, err)
	saved, err := png.DecodeConfig(bytes.NewReader(body))
	require.NoError(t, err)
	assert.Equal(t, 400, saved.Width)
	var want bytes.Buffer
	require.NoError(t, png.Encode(&want, scene.Render(sc, saved.Width, saved.Height, 2)))
	assert.Less(t, difference(t, body, want.Bytes()), 1.5, "with four samples a pixel or nine")
}

// A mouse that rests over a block is told which it is.
func TestPointing(t *testing.T) {
	b, _ := openPicture(t)
	at := eval[[]float64](b, `(() => { const r = document.querySelector("#pad").getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2 + 5]; })()`)
	_, err := chromedp.Call(b.ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{
		Type: input.DispatchMouseEventTypeMouseMoved, X: at[0], Y: at[1],
	})
	require.NoError(t, err)
	b.wait(`document.querySelector(".stage-note.point").checkVisibility({visibilityProperty: true})`)
	assert.Contains(t, b.text(".stage-note.point"), "olumn 17, row 12")
}

// The right edge of the panel is pulled on the picture: width, price and picture follow,
// and one step back undoes it. The arrow keys do the same, on the handle and in the field.
func TestASizeIsPulledOnThePicture(t *testing.T) {
	b, _ := openPicture(t)
	const width = `document.querySelector('[name="walls[0].groups[0].width"]').value`
	b.wait(`document.querySelector(".handle.across")`)
	before := eval[string](b, width)
	price := b.text("#strip")
	at := eval[[]float64](b, `(() => { const r = document.querySelector(".handle.across").getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`)
	mouse := func(kind input.DispatchMouseEventType, x float64) {
		_, err := chromedp.Call(b.ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{
			Type: kind, X: x, Y: at[1], Button: input.MouseButtonLeft, Buttons: 1, ClickCount: 1,
		})
		require.NoError(t, err)
	}
	mouse(input.DispatchMouseEventTypeMousePressed, at[0])
	mouse(input.DispatchMouseEventTypeMouseMoved, at[0]-60)
	mouse(input.DispatchMouseEventTypeMouseMoved, at[0]-120)
	b.wait(`document.querySelector(".handle.across").dataset.text.startsWith("2")`)
	mouse(input.DispatchMouseEventTypeMouseReleased, at[0]-120)
	b.wait(`!document.querySelector(".stage.stretching")`)
	pulled := eval[string](b, width)
	assert.NotEqual(t, before, pulled)
	assert.NotEqual(t, price, b.text("#strip"))

	eval[any](b, `document.querySelector(".handle.across").focus()`)
	b.do(chromedp.KeyEvent(kb.ArrowRight))
	b.wait(width + ` !== ` + fmt.Sprintf("%q", pulled))
	eval[any](b, `document.querySelector('[name="walls[0].groups[0].width"]').focus()`)
	b.do(chromedp.KeyEvent(kb.ArrowDown))
	b.wait(width + ` === ` + fmt.Sprintf("%q", pulled))

	for range 3 {
		b.click("#undo")
	}
	b.wait(width + ` === ` + fmt.Sprintf("%q", before))
	b.wait(`document.querySelector("#undo").ariaDisabled === "true"`)
}

// What is typed after another view of a job was chosen is an edit of that job.
func TestEditsAfterAnotherView(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	b.openJob("s2")
	before := b.revision()
	b.listened() // whose answer would set right what that of the view had spoiled
	b.click(`[data-do="view-reset"]`)
	time.Sleep(calm)
	b.set(widthPath, "1.3 m")
	b.wait(`document.querySelector("#revision").innerText !== ` + quote(before))
}
