package main_test

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/session"
	"blockfield/engine/words"
)

// This file is about the section Sound, whose figures come from a second worker.

const earPath = "walls[0].listenerDistance"

// lastHearer is the worker of the sound that was started last.
func (b *tab) lastHearer() context.Context {
	b.t.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	require.NotEmpty(b.t, b.hearers)
	return b.hearers[len(b.hearers)-1]
}

func (b *tab) inHearer(script string) {
	b.t.Helper()
	_, err := chromedp.Run(b.lastHearer(), chromedp.Evaluate[any](script+`; 0`))
	require.NoError(b.t, err)
}

// heard waits until the section says what was heard of the design that is open.
func (b *tab) heard() {
	b.t.Helper()
	b.wait(`document.querySelector(".sound-said .fit") && !document.querySelector(".sound-said.listening")`)
}

// makersSentence is the first that a maker reads of a design, by Go itself.
func makersSentence(t *testing.T, doc design.Document) string {
	t.Helper()
	h, err := engine.Hear(doc.Design)
	require.NoError(t, err)
	l := h.Groups[0].Verdict.Maker()[0]
	return words.Reader{Language: words.English(), Units: doc.View.Units}.Say(l.Code, l.Args)
}

// The first paint knows the sentence already; an edit is followed by what is
// heard of the new design, with its pictures.
func TestSoundFollowsAnEdit(t *testing.T) {
	b, _ := openPage(t)
	assert.Contains(t, b.text("#sound-line"), "Good fit")
	b.read(page.Maker)
	b.section("sound")
	b.heard()
	b.wait(`document.querySelector("#sound-share-0-0 svg")`)
	doc, _ := edited(t)
	assert.Contains(t, b.text("#sound-said"), makersSentence(t, doc))
	chart := eval[string](b, `document.querySelector("#sound-share-0-0 svg").innerHTML`)

	const heights = "walls[0].groups[0].heights"
	b.section("look")
	b.set(heights, "26, 31, 38, 48")
	doc, plan := edited(t, heights, "26, 31, 38, 48")
	b.shows(plan.Revision)
	b.section("sound")
	b.heard()
	assert.Contains(t, b.text("#sound-said"), makersSentence(t, doc))
	b.wait(`document.querySelector("#sound-share-0-0 svg").innerHTML !== ` + quote(chart))
	assert.Equal(t, 0, eval[int](b, `document.querySelectorAll(".sound-shown svg").length`), "nobody has asked how")
	b.click("#sound-how-0-0 > summary")
	b.wait(`document.querySelectorAll(".sound-shown svg").length === 9`)
}

// A seat that is too near is said at its field, and the change that is offered
// clears it.
func TestSeatTooNear(t *testing.T) {
	b, _ := openPage(t)
	b.read(page.Maker)
	b.section("sound")
	b.heard()
	b.set(earPath, "800 mm")
	at := `document.querySelector("#w-walls-0-listenerDistance button")`
	b.wait(at)
	b.heard()
	b.click("#w-walls-0-listenerDistance button")
	b.wait("!" + at)
	b.heard()
	assert.Contains(t, b.text("#sound-said"), "Good fit")
}

// The worker of the sound dies: the section says so, edits go on, and the next
// design is heard again.
func TestSoundThatBreaksDown(t *testing.T) {
	b, _ := openPage(t)
	b.section("sound")
	b.heard()
	b.inHearer(dies)
	b.set(earPath, "3 m")
	_, plan := edited(t, earPath, "3 m")
	b.shows(plan.Revision)
	b.wait(`document.querySelector("#sound-said").innerText.includes("could not be worked out")`)
	assert.True(t, eval[bool](b, `document.querySelector("#status").hidden`), "nothing else is said")
	b.set(earPath, "4 m")
	b.heard()
}

// A worker that hangs over a design gives way when there is a newer one.
func TestSoundThatHangsGivesWay(t *testing.T) {
	b, _ := openPage(t)
	b.section("sound")
	b.heard()
	b.inHearer(`globalThis.blockfieldHandle = () => { for (;;); }`)
	b.set(earPath, "3 m")
	_, plan := edited(t, earPath, "3 m")
	b.shows(plan.Revision)
	time.Sleep(calm) // longer than edits rest before one is heard: the worker is at it
	b.set(earPath, "4 m")
	_, plan = edited(t, earPath, "4 m")
	b.shows(plan.Revision)
	b.heard()
}

// Screenshots of the section Sound of the worked jobs, for people to look at.
//
//	go test ./cmd/blockfield -run TestSoundScreens -screens DIR
func TestSoundScreens(t *testing.T) {
	if *screensDir == "" {
		t.Skip("only with -screens DIR")
	}
	require.NoError(t, os.MkdirAll(*screensDir, 0o755))
	for _, width := range []int64{1440, 768, 390} {
		b, _ := openPage(t)
		b.size(width, 900)
		for i := range 8 {
			body, err := os.ReadFile(fmt.Sprintf("../../testdata/scenarios/s%d.json", i+1))
			require.NoError(t, err)
			doc, err := design.Decode(body)
			require.NoError(t, err)
			b.upload(fmt.Sprintf("s%d.json", i+1), body)
			b.shows(doc.Design.Revision())
			for _, reading := range readings {
				b.read(reading)
				b.section("sound")
				b.heard()
				b.shoot(fmt.Sprintf("s%d-%s-sound-%d.png", i+1, reading, width))
			}
		}
		b.read(page.Maker)
		b.heard()
		for i := range 2 {
			b.click(`[data-act="add"][data-path="room.surfaces"]`)
			b.wait(fmt.Sprintf(`document.querySelector("#surface-%d")`, i))
		}
		b.shoot(fmt.Sprintf("s8-maker-sound-surfaces-%d.png", width))
		b.click("details.sound-how > summary")
		b.click("#sound-why > summary")
		b.wait(`document.querySelectorAll(".sound-shown svg").length > 0`)
		for name, media := range map[string]emulation.SetEmulatedMediaParams{
			"how":   {},
			"dark":  {Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: "dark"}}},
			"print": {Media: "print"},
		} {
			_, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, media)
			require.NoError(t, err)
			b.shoot(fmt.Sprintf("s8-maker-sound-%s-%d.png", name, width))
		}
	}
}

// shoot writes a screenshot of the whole page into the folder for them.
func (b *tab) shoot(name string) {
	b.t.Helper()
	shot, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(100))
	require.NoError(b.t, err)
	require.NoError(b.t, os.WriteFile(filepath.Join(*screensDir, name), shot, 0o644))
}

// From an edit to the changed page, and to what is heard of it, while edits come
// one after another and alone.
func BenchmarkEditToSound(b *testing.B) {
	tab, _ := openPage(b)
	tab.read(page.Maker)
	tab.section("sound")
	tab.heard()
	const script = `(async () => {
		const ear = document.querySelector('[name="walls[0].listenerDistance"]');
		const revision = document.querySelector("#revision");
		const said = document.querySelector("#sound-said");
		const when = (node, is) => new Promise((resolve) => new MutationObserver((_, o) => {
			if (is()) { o.disconnect(); resolve(performance.now()); } })
			.observe(node, {childList: true, characterData: true, subtree: true}));
		const times = [];
		for (let i = 0; i < 21; i++) {
			const changed = when(revision, () => true);
			const heard = when(said, () => said.querySelector(".fit") && !said.querySelector(".listening"));
			ear.value = 2000 + 100 * (i + 1) + " mm";
			ear.dataset.dirty = "";
			const start = performance.now();
			ear.dispatchEvent(new Event("input", {bubbles: true}));
			ear.dispatchEvent(new Event("change", {bubbles: true}));
			times.push([await changed - start, await heard - start]);
		}
		const busy = [];
		for (let i = 0; i < 21; i++) {
			const changed = when(revision, () => true);
			ear.value = 2050 + 100 * (i + 1) + " mm";
			ear.dataset.dirty = "";
			const start = performance.now();
			ear.dispatchEvent(new Event("input", {bubbles: true}));
			ear.dispatchEvent(new Event("change", {bubbles: true}));
			busy.push(await changed - start);
			await new Promise((resolve) => setTimeout(resolve, 40));
		}
		return [times.map((t) => t[0]), times.map((t) => t[1]), busy];
	})()`
	request, err := json.Marshal(session.Request{Op: "hear", Text: string(design.Encode(design.Default()))})
	require.NoError(b, err)
	for b.Loop() {
		alone, err := chromedp.Run(tab.lastHearer(), chromedp.Evaluate[float64](`(() => {
			const bytes = new TextEncoder().encode(`+quote(string(request))+`), start = performance.now();
			globalThis.blockfieldHandle(bytes);
			return performance.now() - start;
		})()`))
		require.NoError(b, err)
		b.ReportMetric(alone, "ms/hearing")
		for i, times := range eval[[][]float64](tab, script) {
			slices.Sort(times)
			name := []string{"edit", "sound", "edit-while-listening"}[i]
			b.ReportMetric(times[len(times)/2], "ms/"+name)
			b.ReportMetric(times[len(times)*9/10], "ms/"+name+"-90th")
		}
	}
}
