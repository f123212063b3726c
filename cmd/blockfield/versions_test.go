package main_test

import (
	"net/http"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// This file is about a site that changes while pages of it are open.

// changing is a server whose site is replaced under way.
type changing struct{ now atomic.Pointer[http.Handler] }

func (c *changing) become(h http.Handler) { c.now.Store(&h) }

func (c *changing) ServeHTTP(w http.ResponseWriter, r *http.Request) { (*c.now.Load()).ServeHTTP(w, r) }

// flightReady waits until the page is kept whole.
func (b *tab) flightReady() {
	b.t.Helper()
	b.wait(`(window.kept ??= navigator.serviceWorker.ready.then((r) => { window.active = r.active; }), window.active?.state === "activated")`)
}

// updated has the browser look for a newer version, and waits until it has taken or
// dropped it.
func (b *tab) updated() {
	b.t.Helper()
	eval[any](b, `(async () => {
		const r = await navigator.serviceWorker.getRegistration();
		await r.update().catch(() => {});
		const one = r.installing;
		if (one) await new Promise((done) => one.addEventListener("statechange", done));
	})()`)
}

const (
	newerHere = `!document.querySelector('[data-do="newer"]').closest("li").hidden`
	versions  = `caches.keys().then((all) => all.length)`
)

// A newer version is taken whole or not at all. While a site is being copied, new files lie
// beside old ones and some are missing: the page goes on with the version that it has, and
// flies with it. One that has come whole waits, and is taken when somebody asks, with the
// open job and what is being typed.
func TestNewerVersion(t *testing.T) {
	older := builtSite(t)
	settings := workshopSettings(t)
	newer := ownSite(t, settings)
	site := &changing{}
	site.become(older.Handler())
	s := newServer(t, site)
	b := newTab(t)
	b.size(390, 844)
	b.allow("integrity")
	b.allow("404")
	b.open(s.URL + "/")
	b.alive()
	b.flightReady()
	assert.False(t, eval[bool](b, newerHere), "the first version is no newer one")
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)

	half := func(old func(path string) bool, gone string) http.Handler {
		return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			switch {
			case gone != "" && strings.HasSuffix(r.URL.Path, gone):
				http.NotFound(w, r)
			case old(r.URL.Path):
				older.Handler().ServeHTTP(w, r)
			default:
				newer.Handler().ServeHTTP(w, r)
			}
		})
	}
	// Nothing loads the page between them: the browser would look for a newer version by
	// itself, and could find it whole in parts of two. The missing module comes first: once
	// the browser has it from another of them, nothing is missing.
	for _, cut := range []struct {
		name string
		site http.Handler
	}{
		{"a module is missing", half(func(string) bool { return false }, "engine.wasm")},
		{"the page is the old", half(func(path string) bool { return path == "/" }, "")},
		{"an example is empty", http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			if strings.HasSuffix(r.URL.Path, "designs/s1.json") {
				w.WriteHeader(http.StatusOK)
				return
			}
			newer.Handler().ServeHTTP(w, r)
		})},
	} {
		site.become(cut.site)
		b.updated()
		assert.False(t, eval[bool](b, newerHere), cut.name)
		assert.Equal(t, 1, eval[int](b, versions), cut.name)
	}
	b.reload()
	assert.Equal(t, wide.Revision, b.revision())
	assert.Contains(t, eval[string](b, "document.title"), "Blockfield")
	_, all := edited(t, widthPath, "1.6 m", heightPath, "1 m")
	b.set(heightPath, "1 m")
	b.shows(all.Revision)

	site.become(newer.Handler())
	b.updated()
	b.wait(newerHere)
	b.reload()
	assert.Contains(t, eval[string](b, "document.title"), "Blockfield", "nobody has asked")
	b.wait(newerHere)
	other := b.sibling()
	other.open(s.URL + "/")
	other.alive()
	b.menu("newer")
	b.says("Close the other tabs")
	assert.Contains(t, eval[string](b, "document.title"), "Blockfield")
	other.open("about:blank")

	_, last := edited(t, widthPath, "1.7 m", heightPath, "1 m")
	b.focus(control(widthPath))
	eval[any](b, `document.querySelector(`+quote(control(widthPath))+`).select()`)
	b.do(chromedp.KeyEvent("1.7 m"))
	b.menu("newer")
	b.wait(`document.title.includes("Elm Yard Woodworks") && document.documentElement.classList.contains("alive")`)
	b.shows(last.Revision)
	assert.Equal(t, 1, eval[int](b, versions))
	assert.False(t, eval[bool](b, newerHere))
	s.stop()
	b.allow("ERR_CONNECTION_REFUSED")
	b.reload()
	assert.Equal(t, last.Revision, b.revision())
	assert.True(t, eval[bool](b, `document.querySelector(".logo img").naturalWidth > 0`), "the logo flies too")
}

// The browser finds nothing that keeps the page from being installed, and the page asks
// for it nowhere but in its menu.
func TestInstallable(t *testing.T) {
	s := newServer(t, builtSite(t).Handler())
	b := newTab(t)
	b.size(390, 844)
	b.open(s.URL + "/")
	b.alive()
	b.flightReady()
	found, err := chromedp.Call(b.ctx, cdpage.GetInstallabilityErrors, cdp.Empty{})
	require.NoError(t, err)
	for _, e := range found.InstallabilityErrors {
		assert.Fail(t, "not installable", e.ErrorID)
	}
	const offered = `!document.querySelector('[data-do="install"]').closest("li").hidden`
	// This browser may have offered it by now: that goes into the menu, too.
	assert.True(t, eval[bool](b, `(() => {
		const offer = new Event("beforeinstallprompt", {cancelable: true});
		offer.prompt = () => { window.asked = true; };
		dispatchEvent(offer);
		return offer.defaultPrevented;
	})()`), "the browser is not to ask by itself")
	assert.False(t, eval[bool](b, `Boolean(window.asked)`))
	b.quiet()
	b.menu("install")
	assert.True(t, eval[bool](b, `window.asked`))
	assert.False(t, eval[bool](b, offered))
}
