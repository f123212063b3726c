package main_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// scenario is the file of a worked job.
func scenario(t testing.TB, name string) []byte {
	t.Helper()
	doc := design.Default()
	doc.Design = designtest.Job(t, name)
	return design.Encode(doc)
}

// atRow waits until the screen of the bench shows a row, and how many are laid.
func (b *tab) atRow(row, laid int) {
	b.t.Helper()
	b.wait(fmt.Sprintf(`document.querySelector("#rows-row b")?.innerText === "%d"`, row))
	assert.True(b.t, strings.HasPrefix(b.text(".rows-progress"), fmt.Sprint(laid, " of ")), b.text(".rows-progress"))
}

// The screen for the bench: taps and keys lay rows and go back, nothing else can be
// reached on it, and what is ticked is there after the page was loaded again, without
// a network.
func TestRowsAtTheBench(t *testing.T) {
	s := newServer(t, builtSite(t).Handler())
	b := newTab(t)
	b.size(390, 844)
	b.open(s.URL + "/")
	b.alive()
	b.wait(`(window.kept ??= navigator.serviceWorker.ready.then((r) => { window.active = r.active; }), window.active?.state === "activated")`)
	b.upload("s8.json", scenario(t, "s8"))
	b.shows(designtest.Job(t, "s8").Revision())
	b.read("builder")
	b.section("bench")
	eval[any](b, `history.replaceState(null, "", location.pathname)`)
	b.click(`a[href="#rows"]`)
	b.atRow(14, 0)
	b.do(chromedp.KeyEvent(kb.Escape))
	b.wait(`document.querySelector("#rows").hidden && location.hash === ""`) // back where it was opened
	b.wait(`document.activeElement.matches("a.to-rows")`)
	b.click(`a[href="#rows"]`)
	b.wait(`!document.querySelector("#rows").hidden`)
	b.atRow(14, 0)

	b.do(chromedp.KeyEvent(" "))
	b.atRow(13, 1)
	b.click("#rows-next")
	b.atRow(12, 2)
	b.do(chromedp.KeyEvent(kb.PageDown))
	b.atRow(11, 3)
	b.do(chromedp.KeyEvent(kb.ArrowLeft))
	b.atRow(12, 3)
	b.click("#rows-tick")
	b.wait(`document.querySelector("#rows-tick").getAttribute("aria-pressed") === "false"`)
	b.atRow(12, 2)

	for range 12 {
		b.do(chromedp.KeyEvent(kb.Tab))
		assert.True(t, eval[bool](b, `document.activeElement === document.body || document.activeElement.closest("#rows") !== null`),
			"something else has the focus: "+eval[string](b, `document.activeElement.outerHTML.slice(0, 80)`))
	}
	assert.Equal(t, 0.0, eval[float64](b, `document.documentElement.scrollWidth - innerWidth`), "wider than the phone")

	s.stop()
	b.allow("ERR_CONNECTION_REFUSED")
	b.do(chromedp.Reload())
	b.atRow(12, 2)
	b.do(chromedp.KeyEvent(kb.Enter))
	b.atRow(11, 3)
	b.do(chromedp.KeyEvent(kb.Escape))
	b.wait(`document.querySelector("#rows").hidden`)
	assert.Equal(t, "#bench", eval[string](b, `location.hash`))
	b.wait(`document.activeElement.matches("a.to-rows")`)
}

// shop takes a picture of what belongs to the record, all of it opened.
func (b *tab) shop(name string, width int64) {
	b.t.Helper()
	eval[any](b, `(document.querySelectorAll(".shop details").forEach((d) => { d.open = true; }), 0)`)
	b.settle()
	shot, err := chromedp.Run(b.ctx, chromedp.Screenshot(chromedp.CSS(".shop")))
	require.NoError(b.t, err)
	require.NoError(b.t, os.WriteFile(filepath.Join(*screensDir, fmt.Sprintf("shop-%s-%d.png", name, width)), shot, 0o644))
}

// Pictures of the screen for the bench, to look at.
//
//	go test ./cmd/blockfield -run TestRowScreens -screens DIR
func TestRowScreens(t *testing.T) {
	if *screensDir == "" {
		t.Skip("only with -screens DIR")
	}
	require.NoError(t, os.MkdirAll(*screensDir, 0o755))
	s := newServer(t, newGate(builtSite(t).Handler(), "preview.wasm"))
	for _, name := range []string{"s2", "s5", "s7", "s8"} {
		for _, size := range [][2]int64{{390, 844}, {1024, 768}} {
			b := newTab(t)
			b.size(size[0], size[1])
			b.open(s.URL + "/")
			b.alive()
			b.upload(name+".json", scenario(t, name))
			b.shows(designtest.Job(t, name).Revision())
			b.read(map[bool]string{true: "builder", false: "maker"}[name == "s8"])
			b.section("bench")
			b.shop(name, size[0])
			b.click(`a[href="#rows"]`)
			b.wait(`document.querySelector("#rows-row b") !== null`)
			for range 4 {
				row := b.text("#rows-row b")
				b.do(chromedp.KeyEvent(" "))
				b.wait(fmt.Sprintf(`document.querySelector("#rows-row b").innerText !== %q`, row))
			}
			shot, err := chromedp.Run(b.ctx, chromedp.CaptureScreenshot())
			require.NoError(t, err)
			file := filepath.Join(*screensDir, fmt.Sprintf("rows-%s-%d.png", name, size[0]))
			require.NoError(t, os.WriteFile(file, shot, 0o644))
		}
	}
}
