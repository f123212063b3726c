package main_test

import (
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// snippet is what the README says to put into a page, for the page at an address.
func snippet(t *testing.T, address string) string {
	t.Helper()
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	found := regexp.MustCompile(`(?s)<iframe src="https://blocks\.elm\.example/".*?</iframe>`).FindString(string(readme))
	require.NotEmpty(t, found)
	return strings.Replace(found, "https://blocks.elm.example/", address, 1)
}

// hosting is a page of another site with the page in it, so many pixels wide. Its server
// listens at localhost: for a browser that is not the site of 127.0.0.1.
func hosting(t *testing.T, inside *string, width *int) (address string) {
	t.Helper()
	s := newServer(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path != "/" {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		fmt.Fprintf(w, `<!doctype html><html lang="en"><link rel="icon" href="data:,"><title>Elm Yard</title><h1>Elm Yard</h1><div style="width: %dpx">%s</div>`, *width, *inside)
	}))
	return strings.Replace(s.URL, "127.0.0.1", "localhost", 1)
}

// within is the tab's frame of another site, seen as a tab.
func (b *tab) within() *tab {
	b.t.Helper()
	frame := b.lastFrame()
	return &tab{t: b.t, browser: b.browser, ctx: frame, whole: frame}
}

// The snippet of the README puts the page into a page of another site that the settings
// name: it calculates there, keeps, and fits a narrow column. No other page may frame it.
func TestFramedByAnotherSite(t *testing.T) {
	var inside string
	width := 320
	host := hosting(t, &inside, &width)
	settings := workshopSettings(t)
	settings.Frames = &[]string{host}
	s := newServer(t, newGate(ownSite(t, settings).Handler(), "preview.wasm"))
	inside = snippet(t, s.URL+"/")
	b := newProfile(t)
	b.open(host + "/")
	in := b.within()
	in.alive()
	_, wide := edited(t, widthPath, "1.6 m")
	in.set(widthPath, "1.6 m")
	in.shows(wide.Revision)
	in.quiet()
	for _, width = range []int{320, 600, 1100} {
		eval[any](b, fmt.Sprintf(`document.querySelector("div").style.width = "%dpx"`, width))
		in.wait(fmt.Sprintf("innerWidth === %d", width))
		assert.LessOrEqual(t, eval[int](in, "document.documentElement.scrollWidth"), width)
		b.keepShot(fmt.Sprintf("framed-%d", width))
	}
	assert.Equal(t, []string{"true", "true"}, eval[[]string](in, `["clipboard-write", "screen-wake-lock"].map((name) => String(document.featurePolicy.allowsFeature(name)))`))

	plain := newServer(t, builtSite(t).Handler())
	inside = snippet(t, plain.URL+"/")
	refused := newProfile(t)
	refused.allow("frame-ancestors")
	refused.allow("ERR_BLOCKED_BY_RESPONSE")
	refused.allow("chrome-error")
	refused.open(host + "/")
	refused.wait(`document.querySelector("iframe")`)
	assert.Empty(t, refused.found())
	require.Eventually(t, func() bool {
		refused.mu.Lock()
		defer refused.mu.Unlock()
		return containsAny(strings.Join(refused.faults, "\n"), []string{"frame-ancestors"})
	}, waitTimeout, waitStep, "the browser refuses")
}

// Where the browser lets a framed page keep nothing, it says so with the first edit, still
// calculates, and offers a window of its own.
func TestFramedWithoutStorage(t *testing.T) {
	path, err := exec.LookPath("chromium")
	require.NoError(t, err)
	profile := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(profile, "Default"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(profile, "Default", "Preferences"),
		[]byte(`{"profile":{"default_content_setting_values":{"cookies":2}}}`), 0o644))
	browser, end, err := launch(path, profile)
	t.Cleanup(end)
	require.NoError(t, err)

	var inside string
	width := 390
	host := hosting(t, &inside, &width)
	settings := workshopSettings(t)
	settings.Frames = &[]string{host}
	s := newServer(t, newGate(ownSite(t, settings).Handler(), "preview.wasm"))
	inside = snippet(t, s.URL+"/")
	b := openTabIn(t, browser)
	b.open(host + "/")
	in := b.within()
	in.alive()
	assert.Equal(t, "SecurityError", eval[string](in, `(() => { try { return typeof localStorage.length; } catch (e) { return e.name; } })()`), "the browser keeps nothing")
	assert.Contains(t, eval[string](in, `document.querySelector("#private").textContent`), "does not keep")
	in.quiet()
	_, wide := edited(t, widthPath, "1.6 m")
	in.set(widthPath, "1.6 m")
	in.shows(wide.Revision)
	in.says("a page inside of another")
	b.keepShot("framed-unkept-390")
	eval[any](in, `window.open = (address) => { window.opened = address; }, 0`)
	in.press("Open a window of its own")
	in.wait(`window.opened`)
	own := openTabIn(t, browser)
	own.open(eval[string](in, "window.opened"))
	own.alive()
	own.shows(wide.Revision)
}
