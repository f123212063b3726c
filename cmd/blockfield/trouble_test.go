package main_test

import (
	"os"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
)

// This file is about an engine that breaks down, hangs or never comes, and about
// a page in other shapes than the usual.

// inWorker runs a line of script in the engine's worker.
func (b *tab) inWorker(script string) {
	b.t.Helper()
	_, err := chromedp.Run(b.lastWorker(), chromedp.Evaluate[any](script+`; 0`))
	require.NoError(b.t, err)
}

const dies = `globalThis.blockfieldHandle = () => { throw new Error("died for a test") }`

// After a breakdown every control shows what the design holds; what was typed
// stays in its field and is said not to be taken.
func TestControlsAgreeAfterABreakdown(t *testing.T) {
	b, _ := openPage(t)
	const wood = "walls[0].groups[0].wood"
	chosen := `document.querySelector('[name="` + wood + `"]:checked').value`
	_, first := edited(t)
	before := eval[string](b, chosen)
	b.inWorker(dies)
	b.section("look")
	b.says("started again")
	assert.NotContains(t, b.text("#status"), "not taken", "nothing was changed")

	b.inWorker(dies)
	b.click(`[name="` + wood + `"]:not(:checked)`)
	require.NotEqual(t, before, eval[string](b, chosen))
	b.says("was not taken")
	b.wait(chosen + ` === ` + quote(before))
	assert.Equal(t, first.Revision, b.revision())

	b.inWorker(dies)
	b.set(widthPath, "1.6 m")
	here := `document.querySelector(` + quote(control(widthPath)) + `)`
	b.wait(here + `.getAttribute("aria-invalid") === "true"`)
	assert.Equal(t, "1.6 m", eval[string](b, here+".value"))
	assert.Contains(t, b.faultAt(widthPath), "was not taken")
	_, high := edited(t, heightPath, "1 m")
	b.set(heightPath, "1 m")
	b.shows(high.Revision)
	assert.Equal(t, "1.6 m", eval[string](b, here+".value"), "still there")
	_, both := edited(t, heightPath, "1 m", widthPath, "1.6 m")
	b.set(widthPath, "1.61 m")
	b.set(widthPath, "1.6 m")
	b.shows(both.Revision)
	assert.Empty(t, b.faultAt(widthPath))
}

// An engine that falls silent is said to work after two seconds, and is replaced
// after fifteen.
func TestSilentEngine(t *testing.T) {
	b, _ := openPage(t, (*tab).holdTimers)
	b.inWorker(`globalThis.blockfieldHandle = () => { for (;;); }`)
	const working = `!document.querySelector("#working").hidden`
	b.set(widthPath, "1.6 m")
	b.pass(1_999)
	assert.False(t, eval[bool](b, working))
	b.pass(1)
	assert.True(t, eval[bool](b, working))
	b.pass(12_999)
	b.quiet()
	b.pass(1)
	b.says("was started again")
	b.wait(`!(` + working + `)`)
	_, wide := edited(t, heightPath, "1 m")
	b.set(heightPath, "1 m")
	b.shows(wide.Revision)
}

// Without an engine the controls are out of use, and the work is kept: as a
// file, and at the next try.
func TestEngineThatNeverStartsAgain(t *testing.T) {
	// Nothing of the site is kept in the browser: no service worker, no cache.
	flaw := newBroken(newBroken(newGate(builtSite(t).Handler(), "preview.wasm"), "service-worker.js"), "engine-worker.js")
	flaw.on.Store(false)
	s := newServer(t, flaw)
	b := newTab(t)
	b.allow("404")
	b.open(s.URL + "/")
	b.alive()
	_, wide := edited(t, widthPath, "1.6 m")
	_, both := edited(t, widthPath, "1.6 m", heightPath, "1 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	flaw.on.Store(true)
	b.inWorker(`globalThis.blockfieldHandle = () => { throw new Error("died for a test") }`)
	// One edit that the engine dies over, and one behind it.
	eval[any](b, `(() => {
		document.querySelector('[name="walls[0].groups[0].wood"]:not(:checked)').click();
		const height = document.querySelector(`+quote(control(heightPath))+`);
		height.value = "1 m";
		for (const type of ["input", "change"]) height.dispatchEvent(new Event(type, {bubbles: true}));
	})()`)
	b.says("does not start again")
	b.says("Your work is kept")
	assert.True(t, eval[bool](b, `document.querySelector(".tools").inert && !document.querySelector("main :is(button, input, select, textarea):enabled")`), "nothing can be operated")
	assert.Contains(t, b.text("main"), wide.Revision, "and all of it can be read")
	body, err := os.ReadFile(b.download(func() { b.press("Save it as a file") }))
	require.NoError(t, err)
	doc, err := design.Decode(body)
	require.NoError(t, err)
	assert.Equal(t, wide.Revision, doc.Design.Revision())

	b.press("Try again")
	b.says("not one of yours")
	flaw.on.Store(false)
	b.press("Try again")
	b.alive()
	b.shows(both.Revision)
}

// A page of which a part is missing says so, in its own words.
func TestMissingParts(t *testing.T) {
	late := `[...document.querySelectorAll("#late:not([hidden]) p:not([hidden])")].map((p) => p.innerText).join(" ")`
	for suffix, want := range map[string]string{
		"form.js": "part of the page is missing",
		"main.js": "part of the page is missing",
	} {
		s := newServer(t, newBroken(builtSite(t).Handler(), suffix))
		b := newTab(t)
		b.allow("404")
		b.open(s.URL + "/")
		b.wait(late + ` !== ""`)
		assert.Contains(t, eval[string](b, late), want, suffix)
		assert.True(t, eval[bool](b, `document.querySelector("#late").checkVisibility()`), suffix)
	}
	hold := newGate(newGate(builtSite(t).Handler(), "preview.wasm"), "engine.wasm")
	s := newServer(t, hold)
	b := newTab(t)
	b.holdTimers()
	b.open(s.URL + "/")
	b.pass(7_999)
	assert.Empty(t, eval[string](b, late))
	const top = `document.querySelector("main").getBoundingClientRect().y`
	before := eval[float64](b, top)
	b.pass(1)
	assert.Contains(t, eval[string](b, late), "still on its way", "engine.wasm")
	assert.Equal(t, before, eval[float64](b, top), "the page is being read: it may not move")
	hold.open()
	b.alive()
	assert.False(t, eval[bool](b, `document.querySelector("#late").checkVisibility()`))
}

// The smallest window and the widest spacing of text that a person may ask for
// (WCAG 2.2, 1.4.10 and 1.4.12) push nothing over the edge.
func TestNarrowAndSpaced(t *testing.T) {
	b, _ := openPage(t)
	wide := `(() => {
		if (document.documentElement.scrollWidth <= innerWidth) return [];
		return [...document.body.querySelectorAll("*")].filter((e) => e.checkVisibility() && e.getBoundingClientRect().right > innerWidth + 0.5)
			.map((e) => e.tagName + "#" + e.id + "." + e.className + " " + Math.round(e.getBoundingClientRect().right)).slice(0, 5);
	})()`
	check := func(what string) {
		t.Helper()
		for _, reading := range readings {
			b.read(reading)
			for _, section := range b.sections() {
				b.section(section)
				for _, width := range []int64{320, 360, 390, 768, 1440} {
					b.size(width, 900)
					assert.Empty(t, eval[[]string](b, wide), "%s, %s, %s at %d px", what, reading, section, width)
				}
				b.size(1440, 900)
			}
		}
	}
	check("plain")
	eval[any](b, `(() => {
		const sheet = new CSSStyleSheet();
		sheet.replaceSync("* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }");
		document.adoptedStyleSheets = [sheet];
	})()`)
	check("spaced")
}

// In the colours of the system what is chosen stays visible, and lists keep
// their arrows.
func TestForcedColours(t *testing.T) {
	b, _ := openPage(t)
	_, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "forced-colors", Value: "active"}},
	})
	require.NoError(t, err)
	style := func(selector, property string) string {
		return eval[string](b, `getComputedStyle(document.querySelector(`+quote(selector)+`)).getPropertyValue(`+quote(property)+`)`)
	}
	assert.Equal(t, "auto", style("select", "appearance"))
	for _, pair := range [][2]string{
		{".choices input:checked + .chip", ".choices input:not(:checked) + .chip"},
		{`.stage-tools [aria-pressed="true"]`, `.stage-tools [aria-pressed="false"]`},
		{`.nav a[aria-current]`, `.nav a:not([aria-current])`},
	} {
		look := func(selector string) string {
			return strings.Join([]string{style(selector, "background-color"), style(selector, "outline-style"), style(selector, "border-bottom-color"), style(selector, "border-bottom-style")}, " ")
		}
		assert.NotEqual(t, look(pair[0]), look(pair[1]), pair[0])
	}
}

// Without scripts the sentence about it stands where it is read.
func TestNoScriptIsSaid(t *testing.T) {
	s := newServer(t, builtSite(t).Handler())
	b := newTab(t)
	_, err := chromedp.Call(b.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	require.NoError(t, err)
	b.open(s.URL + "/")
	assert.Less(t, eval[float64](b, `document.querySelector("noscript p").getBoundingClientRect().bottom`), 300.0)
}

// A list of faults that is longer than its box says so.
func TestManyFaultsSayThatThereAreMore(t *testing.T) {
	b, _ := openPage(t)
	var fields []string
	for i := range 50 {
		fields = append(fields, `"unknown`+string(rune('a'+i%26))+string(rune('a'+i/26))+`": 1`)
	}
	b.upload("many.json", []byte(`{"format":"blockfield design","version":1,"design":{`+strings.Join(fields, ",")+`}}`))
	b.says("There is more")
	b.upload("one.json", []byte(`{"format":"blockfield design","version":99}`))
	b.says("newer program")
	assert.NotContains(t, b.text("#status"), "There is more")
}
