package main_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image/png"
	"math"
	"testing"
	"time"

	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/session"
)

// This file is how a test uses the page: what a person would call opening it,
// changing the reading, typing a width.

var readings = []string{page.Client, page.Maker, page.Builder}

// calm is how long a test waits for what must not happen.
const calm = 500 * time.Millisecond

// glance is the time between two looks at a picture.
const glance = 100 * time.Millisecond

const (
	widthPath  = "walls[0].groups[0].width"
	heightPath = "walls[0].groups[0].height"
)

// openPage opens the site's page in a tab of its own and waits until the engine
// answers in it. The preview's module is held back: drawing by software takes
// seconds, and most tests need no picture but the poster. The tab can be prepared
// before the page is opened.
func openPage(t testing.TB, prepare ...func(*tab)) (*tab, *server) {
	t.Helper()
	s := newServer(t, newGate(builtSite(t).Handler(), "preview.wasm"))
	b := newTab(t)
	for _, with := range prepare {
		with(b)
	}
	b.open(s.URL + "/")
	b.alive()
	return b, s
}

// openPicture opens the page with its preview and waits until that has drawn. The
// window is that of a phone, unless the tab is prepared otherwise: by software, a
// desk's picture takes five times as long.
func openPicture(t testing.TB, prepare ...func(*tab)) (*tab, *server) {
	t.Helper()
	s := newServer(t, builtSite(t).Handler())
	b := newTab(t)
	b.size(390, 844)
	for _, with := range prepare {
		with(b)
	}
	b.open(s.URL + "/")
	b.alive()
	b.drawn()
	return b, s
}

// window prepares a tab whose window is so large.
func window(width, height int64) func(*tab) {
	return func(b *tab) { b.size(width, height) }
}

// alive waits until the engine answers in the page.
func (b *tab) alive() {
	b.t.Helper()
	b.wait(`document.documentElement.classList.contains("alive")`)
}

// drawn waits until the preview has drawn.
func (b *tab) drawn() {
	b.t.Helper()
	b.wait(`document.querySelector("iframe.preview-live")`)
}

// control is the selector of a form field.
func control(path string) string { return fmt.Sprintf("[name=%q]", path) }

// set types a value into the field at a path and leaves the field.
func (b *tab) set(path, value string) {
	b.t.Helper()
	b.put(control(path), value)
}

// choose takes an entry of a list.
func (b *tab) choose(path, value string) {
	b.t.Helper()
	eval[any](b, fmt.Sprintf(`(() => { const c = document.querySelector(%q); c.value = %q;
		c.dispatchEvent(new Event("input", {bubbles: true})); c.dispatchEvent(new Event("change", {bubbles: true})); })()`,
		control(path), value))
}

// read changes the reading.
func (b *tab) read(reading string) {
	b.t.Helper()
	b.choose("view.reading", reading)
	b.wait(fmt.Sprintf(`document.querySelector("main").dataset.reading === %q`, reading))
}

// sections are the sections that the present reading has.
func (b *tab) sections() []string {
	b.t.Helper()
	return eval[[]string](b, `[...document.querySelectorAll("#nav a")].map((a) => a.hash.slice(1))`)
}

// section opens a section.
func (b *tab) section(name string) {
	b.t.Helper()
	b.click(fmt.Sprintf(`#nav a[href="#%s"]`, name))
	b.wait(fmt.Sprintf(`document.querySelector('#nav a[href="#%s"]').getAttribute("aria-current") === "page"`, name))
}

// revision is the code that the page shows.
func (b *tab) revision() string {
	b.t.Helper()
	return b.text("#revision")
}

// shows waits until the page shows a revision.
func (b *tab) shows(revision string) {
	b.t.Helper()
	b.wait(fmt.Sprintf(`document.querySelector("#revision").innerText === %q`, revision))
}

// strip is the line of figures under the picture, by their labels.
func (b *tab) strip() map[string]string {
	b.t.Helper()
	return eval[map[string]string](b, `Object.fromEntries([...document.querySelectorAll("#strip dl > div")].map(
		(d) => [d.querySelector("dt").innerText, d.querySelector("dd").innerText]))`)
}

// faultAt is the message that stands at a field; empty where there is none.
func (b *tab) faultAt(path string) string {
	b.t.Helper()
	return eval[string](b, fmt.Sprintf(`(() => {
		const c = document.querySelector(%q), f = document.getElementById(c.id + "-fault");
		return f.hidden ? "" : f.innerText; })()`, control(path)))
}

// redrawn does something that changes the scene, and waits until the preview has
// drawn the new one whole.
func (b *tab) redrawn(do func()) {
	b.t.Helper()
	b.settle()
	before := eval[int](b, "lastDrawn.scene")
	do()
	b.wait(fmt.Sprintf("lastDrawn.scene > %d", before))
	b.settle()
}

// settle waits until the preview has drawn whatever it was told of so far, with all
// samples and in the size that it has now: only then it sends its pixels.
func (b *tab) settle() {
	b.t.Helper()
	b.drawn()
	b.wait(`(() => {
		const frame = document.querySelector("iframe.preview-live"), k = devicePixelRatio;
		return Math.abs(lastDrawn.width - frame.clientWidth * k) <= 1 && Math.abs(lastDrawn.height - frame.clientHeight * k) <= 1; })()`)
	eval[any](b, `new Promise((resolve) => {
		const frame = document.querySelector("iframe.preview-live").contentWindow;
		const hear = (e) => {
			if (e.source !== frame || e.data?.type !== "pixels") return;
			removeEventListener("message", hear);
			resolve();
		};
		addEventListener("message", hear);
		frame.postMessage({type: "pixels"}, "*"); })`)
}

// picture is a screenshot of the picture on the page, without its buttons.
func (b *tab) picture() []byte {
	b.t.Helper()
	box := eval[cdpage.Viewport](b, `(() => {
		scrollTo({top: 0, behavior: "instant"});
		const r = document.querySelector("#stage").getBoundingClientRect();
		return {x: r.x, y: r.y, width: r.width, height: r.height - 70, scale: 1};
	})()`)
	shot, err := chromedp.Call(b.ctx, cdpage.CaptureScreenshot, cdpage.CaptureScreenshotParams{Clip: &box})
	require.NoError(b.t, err)
	return shot.Data
}

// fine is the picture when the preview has no finer one to come, and the browser
// shows it.
func (b *tab) fine() []byte {
	b.t.Helper()
	b.settle()
	last := b.picture()
	for deadline := time.Now().Add(waitTimeout); time.Now().Before(deadline); {
		time.Sleep(glance)
		now := b.picture()
		if bytes.Equal(last, now) {
			return now
		}
		last = now
	}
	b.t.Fatal("the picture never came to rest")
	return nil
}

// same waits until the picture is want again. Half a step of 255 in the mean is
// less than the smoothing of the edges makes.
func (b *tab) same(want []byte) {
	b.t.Helper()
	const halfStep = 0.5
	var apart float64
	for deadline := time.Now().Add(waitTimeout); time.Now().Before(deadline); time.Sleep(glance) {
		if apart = difference(b.t, want, b.picture()); apart < halfStep {
			return
		}
	}
	b.t.Fatalf("the picture is %.2f of 255 away from what it was", apart)
}

// difference is how far two pictures of one size lie apart: the mean over all
// pixels and colours, from 0 to 255.
func difference(t testing.TB, a, b []byte) float64 {
	t.Helper()
	one, err := png.Decode(bytes.NewReader(a))
	require.NoError(t, err)
	other, err := png.Decode(bytes.NewReader(b))
	require.NoError(t, err)
	require.Equal(t, one.Bounds(), other.Bounds())
	sum, n := 0.0, 0.0
	for y := one.Bounds().Min.Y; y < one.Bounds().Max.Y; y++ {
		for x := one.Bounds().Min.X; x < one.Bounds().Max.X; x++ {
			r1, g1, b1, _ := one.At(x, y).RGBA()
			r2, g2, b2, _ := other.At(x, y).RGBA()
			for _, d := range []float64{float64(r1) - float64(r2), float64(g1) - float64(g2), float64(b1) - float64(b2)} {
				sum += math.Abs(d) / 257
				n++
			}
		}
	}
	return sum / n
}

// edited is the default design after edits of its fields, by Go itself: by the
// same session as in the page's worker.
func edited(t testing.TB, edits ...string) (design.Document, engine.Result) {
	t.Helper()
	s := session.New(design.DefaultBook())
	for i := 0; i < len(edits); i += 2 {
		request, err := json.Marshal(session.Request{Op: "set", Path: edits[i], Value: edits[i+1]})
		require.NoError(t, err)
		var answer session.Response
		require.NoError(t, json.Unmarshal(s.Handle(request), &answer))
		require.Empty(t, answer.Faults)
	}
	return s.Document(), s.Plan()
}

// quote is a text as script writes it.
func quote(text string) string {
	b, _ := json.Marshal(text)
	return string(b)
}
