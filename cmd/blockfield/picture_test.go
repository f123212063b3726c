package main_test

import (
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"blockfield/engine/words"
)

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
	b, _ := openPicture(t)
	before := b.fine()
	eval[any](b, `document.querySelector("iframe.preview-frame").dataset.old = "yes"`)
	b.killFrame()
	b.wait(note + ` === ` + quote(sentence("message/picture-restarted")))
	b.wait(`document.querySelector("iframe.preview-live:not([data-old])")`)
	b.same(before)
	b.wait(note + ` === ""`)
}

// killFrame ends the process of the preview's frame as the system would.
func (b *tab) killFrame() {
	b.t.Helper()
	targets, err := chromedp.Targets(b.ctx)
	require.NoError(b.t, err)
	for _, one := range targets {
		if one.Type != "iframe" || one.BrowserContextID != chromedp.FromContext(b.ctx).BrowserContextID {
			continue
		}
		ctx, cancel := chromedp.NewContext(chromium.ctx, chromedp.WithTargetID(one.TargetID), chromedp.WithDetachOnCancel())
		defer cancel()
		require.NoError(b.t, chromedp.Do(ctx))
		go chromedp.Call(ctx, cdpage.Crash, cdp.Empty{})
		time.Sleep(calm)
		return
	}
	b.t.Fatal("no frame has a process of its own")
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
	for i := range 3 {
		eval[any](b, `document.querySelector("#still").removeAttribute("src")`)
		eval[any](b, fromFrame(fmt.Sprintf(`{type: "refused", scene: %d, message: "not this one"}`, 1+2*i)))
		b.wait(note + ` === ` + quote(sentence("message/picture-refused")))
		b.wait(`!document.querySelector("iframe.preview-live") && document.querySelector("#still").naturalWidth > 300`)
		for _, width := range []string{"1.6 m", "1200 mm"} {
			b.set(widthPath, width)
			_, plan := edited(t, widthPath, width)
			b.shows(plan.Revision)
		}
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
	b.open(s.URL + "/")
	b.alive()
	b.wait(`document.querySelector("iframe.preview-frame")`)
	for range 2 { // both starts
		eval[any](b, `document.querySelector("iframe.preview-frame").dataset.old = "yes"`)
		eval[any](b, fromFrame(`{type: "error", message: "no WebGL"}`))
		b.wait(`!document.querySelector("iframe[data-old]")`)
		time.Sleep(calm)
	}
	b.wait(note + ` === ` + quote(sentence("message/picture-failed")))
	b.wait(`document.querySelector("#still").className === "drawn"`)
	still := b.picture()
	b.focus("#pad")
	b.do(chromedp.KeyEvent(kb.ArrowRight))
	require.Eventually(t, func() bool { return difference(t, still, b.picture()) > 0.5 }, waitTimeout, calm, "the lamp moves in stills")
}
