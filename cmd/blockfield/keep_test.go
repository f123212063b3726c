package main_test

import (
	"context"
	"encoding/json"
	"maps"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/page"
)

// This file is about what the page keeps: jobs, links beside them, two tabs,
// what cannot be read, and what was typed at the wrong moment.

// sibling opens another tab of the same profile: it has the same storage.
func (b *tab) sibling() *tab {
	b.t.Helper()
	other := &tab{t: b.t, browser: b.browser}
	ctx, cancel := chromedp.NewContext(b.ctx, chromedp.WithListener(other.listen))
	b.t.Cleanup(cancel)
	require.NoError(b.t, chromedp.Do(ctx))
	other.whole = ctx
	other.ctx, cancel = context.WithTimeout(ctx, tabTimeout)
	b.t.Cleanup(cancel)
	b.t.Cleanup(other.verdict)
	other.size(1440, 900)
	return other
}

// press presses a button in the messages above the page.
func (b *tab) press(text string) {
	b.t.Helper()
	find := `[...document.querySelectorAll("#status button")].find((e) => e.innerText === ` + quote(text) + `)`
	b.wait(find)
	eval[any](b, `(`+find+`.dataset.pressed = "now", 0)`)
	b.click(`#status [data-pressed]`)
}

// says waits until the messages above the page hold a text.
func (b *tab) says(text string) {
	b.t.Helper()
	b.wait(`!document.querySelector("#status").hidden && document.querySelector("#status").innerText.includes(` + quote(text) + `)`)
}

// quiet finds no message above the page.
func (b *tab) quiet() {
	b.t.Helper()
	assert.True(b.t, eval[bool](b, `document.querySelector("#status").hidden`), "the page says: %s", b.text("body > #status"))
}

func (b *tab) reload() {
	b.t.Helper()
	b.do(chromedp.Reload())
	b.alive()
}

// forgetAll takes away everything that the browser keeps of the site.
func (b *tab) forgetAll() {
	b.t.Helper()
	eval[any](b, `new Promise((done) => {
		const request = indexedDB.deleteDatabase("blockfield");
		request.onsuccess = () => { localStorage.clear(); sessionStorage.clear(); done(); };
	})`)
}

// stored is everything that the profile keeps for the site.
func (b *tab) stored() map[string]string {
	b.t.Helper()
	return eval[map[string]string](b, `({...localStorage})`)
}

// kept reports whether one of the kept jobs is of a revision.
func (b *tab) kept(revision string) bool {
	b.t.Helper()
	for key, text := range b.stored() {
		if doc, err := design.Decode([]byte(text)); strings.HasPrefix(key, "blockfield.job.") && err == nil && doc.Design.Revision() == revision {
			return true
		}
	}
	return false
}

// linkTo is the fragment of a link to the default design after edits, and the
// revision that it leads to.
func linkTo(t *testing.T, edits ...string) (link, revision string) {
	t.Helper()
	doc, plan := edited(t, edits...)
	link, err := design.EncodeLink(doc)
	require.NoError(t, err)
	return "#" + strings.TrimPrefix(link, "#"), plan.Revision
}

// A link is shown beside the job of this browser, which stays what a later
// visit finds until the linked design is taken over.
func TestLinkLeavesTheJob(t *testing.T) {
	b, s := openPage(t)
	_, wide := edited(t, widthPath, "1.6 m")
	link, linked := linkTo(t, heightPath, "1 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)

	b.open(s.URL + "/" + link)
	b.shows(linked)
	b.says("Your own job is kept")
	assert.True(t, b.kept(wide.Revision), "the job")
	assert.False(t, b.kept(linked), "a link that was only looked at")

	b.reload()
	b.shows(linked)
	b.says("Your own job is kept")
	later := b.sibling()
	later.open(s.URL + "/")
	later.alive()
	assert.Equal(t, wide.Revision, later.revision(), "a later visit")

	b.press("Back to my job")
	b.shows(wide.Revision)
	b.quiet()
	b.reload()
	assert.Equal(t, wide.Revision, b.revision())

	b.open(s.URL + "/" + link)
	b.shows(linked)
	b.press("Keep this one")
	b.wait(`document.querySelector("#status").hidden`)
	assert.True(t, b.kept(linked), "taken over")
	assert.True(t, b.kept(wide.Revision), "the job before")
	b.reload()
	assert.Equal(t, linked, b.revision())
}

// An edit makes a job of a linked design; the job before is one button away,
// and stands in the file menu after a reload.
func TestEditedLinkLeavesTheJobBefore(t *testing.T) {
	b, s := openPage(t)
	_, wide := edited(t, widthPath, "1.6 m")
	link, linked := linkTo(t, heightPath, "1 m")
	_, both := edited(t, heightPath, "1 m", widthPath, "900 mm")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	b.open(s.URL + "/" + link)
	b.shows(linked)
	b.set(widthPath, "900 mm")
	b.shows(both.Revision)
	b.says("Your job before is kept too")
	assert.True(t, b.kept(wide.Revision))
	assert.True(t, b.kept(both.Revision))

	b.reload()
	assert.Equal(t, both.Revision, b.revision())
	b.click("#menu summary")
	b.wait(`document.querySelectorAll("#job-list li").length === 1`)
	b.click("#job-list [data-job]")
	b.shows(wide.Revision)
	b.reload()
	assert.Equal(t, wide.Revision, b.revision())

	b.click("#menu summary")
	b.wait(`document.querySelectorAll("#job-list li").length === 1`)
	b.click("#job-list [data-job-forget]")
	b.says("taken out")
	assert.False(t, b.kept(both.Revision))
	b.press("Put it back")
	b.wait(`document.querySelector("#status").hidden`)
	assert.True(t, b.kept(both.Revision))
}

// Whoever has no job yet gets the linked design without a word.
func TestFirstLinkIsCalm(t *testing.T) {
	s := newServer(t, newGate(builtSite(t).Handler(), "preview.wasm"))
	link, linked := linkTo(t, heightPath, "1 m")
	b := newTab(t)
	b.open(s.URL + "/" + link)
	b.alive()
	b.shows(linked)
	b.quiet()
	assert.True(t, b.kept(linked))
}

// Examples and a fresh start are looked at beside the job, too; going back keeps
// the steps of its history.
func TestExampleAndFreshStartLeaveTheJob(t *testing.T) {
	b, _ := openPage(t)
	_, first := edited(t)
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	b.click("#examples summary")
	b.click(`#examples [data-address="designs/s5.json"]`)
	b.says("You are looking at an example")
	b.menu("new")
	b.says("A fresh design is open")
	b.shows(first.Revision)
	assert.True(t, b.kept(wide.Revision))
	b.press("Back to my job")
	b.shows(wide.Revision)
	b.click("#undo")
	b.shows(first.Revision)
}

// Undoing the opening of a file goes back to the job before, and the file's job
// stays what it is; so it is where there was no job before.
func TestUndoneOpeningKeepsBothJobs(t *testing.T) {
	b, _ := openPage(t)
	_, first := edited(t)
	doc, high := edited(t, heightPath, "1 m")
	_, highWide := edited(t, heightPath, "1 m", widthPath, "900 mm")
	_, wide := edited(t, widthPath, "1.6 m")
	kept := func(revisions ...string) {
		t.Helper()
		for _, revision := range revisions {
			b.wait(`Object.keys(localStorage).length > 0`)
			assert.True(t, b.kept(revision), revision)
		}
	}
	b.upload("high.json", design.Encode(doc))
	b.shows(high.Revision)
	b.click("#undo")
	b.shows(first.Revision)
	kept(high.Revision)
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	kept(high.Revision, wide.Revision)

	b.upload("high.json", design.Encode(doc))
	b.shows(high.Revision)
	b.set(widthPath, "900 mm")
	b.shows(highWide.Revision)
	for range 2 {
		b.click("#undo")
	}
	b.shows(wide.Revision)
	kept(high.Revision, wide.Revision)
	b.click("#redo")
	b.shows(high.Revision)
	b.reload()
	assert.Equal(t, high.Revision, b.revision(), "the tab shows the file's job")
	kept(wide.Revision)
}

// A link that could not be opened stays in the address.
func TestBadLinkStaysInTheAddress(t *testing.T) {
	s := newServer(t, newGate(builtSite(t).Handler(), "preview.wasm"))
	link, _ := linkTo(t, heightPath, "1 m")
	cut := link[:len(link)/2]
	b := newTab(t)
	b.open(s.URL + "/" + cut)
	b.alive()
	b.says("could not be opened")
	assert.Equal(t, cut, eval[string](b, "location.hash"))
}

// A kept job that cannot be read stays where it is, whatever is done next; the
// page says what is wrong with it and saves it as a file.
func TestUnreadableJobStays(t *testing.T) {
	b, _ := openPage(t)
	_, wide := edited(t, widthPath, "1.6 m")
	for text, why := range map[string]string{
		"": "cannot be read",
		`{"format":"blockfield design","version":1,"design":{"tit`: "cannot be read",
		`{"format":"blockfield design","version":99}`:              "newer program",
	} {
		b.forgetAll()
		eval[any](b, `(localStorage.setItem("blockfield.last", "1"), localStorage.setItem("blockfield.job.1", `+quote(text)+`))`)
		b.reload()
		b.says("could not be read")
		b.says(why)
		if text != "" {
			body, err := os.ReadFile(b.download(func() { b.press("Save it as a file") }))
			require.NoError(t, err)
			assert.Equal(t, text, string(body))
		}
		b.set(widthPath, "1.6 m")
		b.shows(wide.Revision)
		assert.Equal(t, text, b.stored()["blockfield.job.1"])
		b.reload()
		assert.Equal(t, wide.Revision, b.revision(), "the job begun after %q", text)
		assert.Equal(t, text, b.stored()["blockfield.job.1"])
	}
}

// Two tabs never write over one another: the second has the first one's job to
// look at, and a job of its own from its first edit on.
func TestTwoTabs(t *testing.T) {
	one, s := openPage(t)
	_, wide := edited(t, widthPath, "1.6 m")
	_, high := edited(t, widthPath, "1.6 m", heightPath, "1 m")
	_, other := edited(t, widthPath, "1.6 m", heightPath, "900 mm")
	one.set(widthPath, "1.6 m")
	one.shows(wide.Revision)
	two := one.sibling()
	two.open(s.URL + "/")
	two.alive()
	assert.Equal(t, wide.Revision, two.revision())

	one.set(heightPath, "1 m")
	one.shows(high.Revision)
	two.says("changed in another tab")
	two.press("Show it as it is now")
	two.shows(high.Revision)
	two.set(heightPath, "900 mm")
	two.shows(other.Revision)
	two.says("open in another tab")
	one.set(widthPath, "1500 mm")
	_, last := edited(t, widthPath, "1500 mm", heightPath, "1 m")
	one.shows(last.Revision)
	assert.True(t, one.kept(last.Revision), "the first tab's")
	assert.True(t, one.kept(other.Revision), "the second tab's")
	one.reload()
	two.reload()
	assert.Equal(t, last.Revision, one.revision())
	assert.Equal(t, other.Revision, two.revision())
}

// Nor do they write over what was noted of the work: what the second tab notes goes with a
// job of its own.
func TestTwoTabsNoteApart(t *testing.T) {
	one, s := openPage(t)
	_, wide := edited(t, widthPath, "1.6 m")
	one.set(widthPath, "1.6 m")
	one.shows(wide.Revision)
	one.section(page.Money)
	const name = "record.client.name"
	noted := func(b *tab) string { return eval[string](b, `document.getElementsByName("`+name+`")[0].value`) }
	one.set(name, "Ada Beech")
	one.wait(`document.querySelector("#send-leaves").textContent.includes("Ada Beech")`)
	two := one.sibling()
	two.open(s.URL + "/")
	two.alive()
	assert.Equal(t, wide.Revision, two.revision())
	two.section(page.Money)
	assert.Equal(t, "Ada Beech", noted(two))
	two.set(name, "Ben Ash")
	two.says("open in another tab")
	one.set(name, "Ada Beech of the mill")
	one.recorded("of the mill")
	one.recorded("Ben Ash")
	for b, want := range map[*tab]string{one: "Ada Beech of the mill", two: "Ben Ash"} {
		b.reload()
		b.section(page.Money)
		assert.Equal(t, want, noted(b))
	}
}

// What a person does before the scripts are there is done when they are.
func TestDoneBeforeTheScripts(t *testing.T) {
	hold := newGate(newGate(builtSite(t).Handler(), "preview.wasm"), "main.js")
	s := newServer(t, hold)
	b := newTab(t)
	// The document is not complete while its script is held back.
	_, err := chromedp.Call(b.ctx, cdpage.Navigate, cdpage.NavigateParams{URL: s.URL + "/"})
	require.NoError(t, err)
	b.wait(`document.querySelector("#messages")`)
	b.set(widthPath, "1.6 m")
	b.click(`[name="walls[0].groups[0].wood"]:not(:checked)`)
	wood := eval[string](b, `document.querySelector('[name="walls[0].groups[0].wood"]:checked').value`)
	hold.open()
	b.alive()
	// The frame is of the blocks' wood.
	_, want := edited(t, widthPath, "1.6 m", "walls[0].groups[0].wood", wood, "walls[0].groups[0].frame.wood", wood)
	b.shows(want.Revision)
}

// What is typed in the very moment of leaving is there at the next visit.
func TestTypedAndLeft(t *testing.T) {
	b, s := openPage(t)
	_, wide := edited(t, widthPath, "1.6 m")
	for _, leave := range []string{"about:blank", s.URL + "/?again"} {
		b.forgetAll()
		b.open(s.URL + "/")
		b.alive()
		b.focus(control(widthPath))
		eval[any](b, `document.querySelector(`+quote(control(widthPath))+`).select()`)
		b.do(chromedp.KeyEvent("1.6 m"))
		b.open(leave)
		b.open(s.URL + "/")
		b.alive()
		b.shows(wide.Revision)
		b.reload()
		assert.Equal(t, wide.Revision, b.revision(), "and kept")
	}
}

// What was under way when a link was opened belongs to the job, not to the link.
func TestUnderWayStaysWithItsJob(t *testing.T) {
	b, s := openPage(t)
	link, linked := linkTo(t, heightPath, "1 m")
	_, wide := edited(t, widthPath, "1.6 m")
	_, wider := edited(t, widthPath, "1.8 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	b.focus(control(widthPath))
	eval[any](b, `document.querySelector(`+quote(control(widthPath))+`).select()`)
	b.do(chromedp.KeyEvent("1.8 m"))
	b.open(s.URL + "/?again" + link)
	b.alive()
	b.shows(linked)
	b.says("Your own job is kept")
	assert.True(t, b.kept(wider.Revision), "the job, with its last edit")
	b.press("Back to my job")
	b.shows(wider.Revision)

	b.set(widthPath, "banana")
	b.wait(`document.querySelector('[aria-invalid="true"]')`)
	b.open(s.URL + "/?once-more" + link)
	b.alive()
	b.shows(linked)
	assert.Empty(t, b.faultAt(widthPath), "the link's field is whole")
	b.press("Back to my job")
	b.shows(wider.Revision)
	b.wait(`document.querySelector(` + quote(control(widthPath)) + `).value === "banana"`)
}

// A refused value stays in its field, with its message, through sections, units
// and a reload.
func TestRefusedValueStays(t *testing.T) {
	b, _ := openPage(t)
	b.read(page.Maker)
	b.set(widthPath, "banana")
	there := func(when string) {
		t.Helper()
		b.wait(`document.querySelector(` + quote(control(widthPath)) + `)`)
		assert.Equal(t, "banana", eval[string](b, `document.querySelector(`+quote(control(widthPath))+`).value`), when)
		assert.Contains(t, b.faultAt(widthPath), "not a length", when)
	}
	b.wait(`document.querySelector('[aria-invalid="true"]')`)
	there("at once")
	b.section("wall")
	b.section("look")
	there("after another section")
	height := `document.querySelector(` + quote(control(heightPath)) + `).value`
	metric := eval[string](b, height)
	b.choose("view.units", "in/16")
	b.wait(height + ` !== ` + quote(metric))
	there("in other units")
	b.reload()
	b.wait(`document.querySelector('[aria-invalid="true"]')`)
	there("after a reload")
	b.set(widthPath, "1.6 m")
	b.wait(`!document.querySelector('[aria-invalid="true"]')`)
	b.section("wall")
	b.section("look")
	assert.Empty(t, b.faultAt(widthPath))
}

// Undo takes back a refused entry before any step of the history, and is offered where
// there is nothing else to undo.
func TestUndoTakesBackARefusedEntry(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	value := `document.querySelector(` + quote(control(widthPath)) + `).value`
	offered := func(is string) string {
		return `document.querySelector("#undo").getAttribute("aria-disabled") === ` + quote(is)
	}
	b.wait(offered("true"))
	refused := func() {
		holds, revision := eval[string](b, value), b.text("#revision")
		b.set(widthPath, "banana")
		b.wait(`document.querySelector('.field:has([aria-invalid="true"]) .fault')?.innerText.includes("banana")`)
		b.wait(offered("false"))
		b.click("#undo")
		b.wait(value + ` === ` + quote(holds) + ` && !document.querySelector('[aria-invalid="true"]')`)
		assert.Equal(t, revision, b.text("#revision"), "no step of the history goes with it")
	}
	refused()
	b.wait(offered("true"))
	b.set(widthPath, "1.6 m")
	_, wide := edited(t, widthPath, "1.6 m")
	b.shows(wide.Revision)
	refused()
	b.wait(offered("false"))
}

// What is being typed for one job does not stand in the field of another, to which a step
// of the history leads meanwhile: not even in the field that has the keyboard.
func TestTypedStaysWithItsJob(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	value := `document.querySelector(` + quote(control(widthPath)) + `).value`
	first := eval[string](b, value)
	doc, other := edited(t, widthPath, "900 mm")
	b.upload("other.json", design.Encode(doc))
	b.shows(other.Revision)
	eval[any](b, `(() => {
		const c = document.querySelector(`+quote(control(widthPath))+`);
		c.focus();
		c.value = "777 mm";
		c.dispatchEvent(new InputEvent("input", {bubbles: true}));
		document.querySelector("#undo").click();
	})()`)
	_, begun := edited(t)
	b.shows(begun.Revision)
	assert.Equal(t, first, eval[string](b, value))
}

// An edit that comes when another job is on its way already is no edit of that one: it is
// made where it was typed, once that job is open again.
func TestAnEditFindsItsJob(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	value := `document.querySelector(` + quote(control(widthPath)) + `).value`
	eval[any](b, `(() => {
		const post = Worker.prototype.postMessage;
		let typed = false;
		Worker.prototype.postMessage = function (message, transfer) {
			const opens = message.bytes && new TextDecoder().decode(message.bytes).includes('"op":"open"');
			post.call(this, message, transfer);
			if (!opens || typed) return;
			typed = true;
			const c = document.querySelector(`+quote(control(widthPath))+`);
			c.value = "777 mm";
			for (const type of ["input", "change"]) c.dispatchEvent(new Event(type, {bubbles: true}));
		};
	})()`)
	doc, other := edited(t, heightPath, "1 m")
	b.upload("other.json", design.Encode(doc))
	b.shows(other.Revision)
	time.Sleep(calm)
	assert.Equal(t, other.Revision, b.revision())
	assert.NotEqual(t, "777 mm", eval[string](b, value))
	_, narrow := edited(t, widthPath, "777 mm")
	b.click("#undo")
	b.shows(narrow.Revision)
	assert.Equal(t, "777 mm", eval[string](b, value))
}

// Should the page and the engine ever disagree about which opening is shown, an edit is
// tried once more and then said not to be taken; what was typed stands.
func TestAnEditOfNoOpeningIsSaid(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	before := b.revision()
	eval[any](b, `(() => {
		const post = Worker.prototype.postMessage;
		window.sent = 0;
		Worker.prototype.postMessage = function (message, transfer) {
			const request = message.bytes && JSON.parse(new TextDecoder().decode(message.bytes));
			if (request?.op === "set" && request.path === `+quote(widthPath)+` && window.sent < 5) {
				window.sent += 1;
				message.bytes = new TextEncoder().encode(JSON.stringify({...request, of: 99})).buffer;
				transfer = [message.bytes];
			}
			post.call(this, message, transfer);
		};
	})()`)
	b.put(control(widthPath), "1.6 m")
	b.wait(`document.querySelector(` + quote(control(widthPath)) + `).closest(".field").querySelector(".fault").innerText.includes("opened anew")`)
	time.Sleep(calm)
	assert.Equal(t, 2, eval[int](b, `window.sent`))
	assert.Equal(t, before, b.revision())
	assert.Equal(t, "1.6 m", eval[string](b, `document.querySelector(`+quote(control(widthPath))+`).value`))
	eval[any](b, `window.sent = 5`)
	_, wide := edited(t, widthPath, "1.7 m")
	b.put(control(widthPath), "1.7 m")
	b.shows(wide.Revision)
}

// A maker who loads the page again beside a client still has the figures hidden, and back by
// the same key.
func TestATalkOutlastsAReload(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	b.read(page.Maker)
	b.section(page.Money)
	b.do(chromedp.KeyEvent(kb.F8))
	b.wait(`document.querySelector("main").dataset.reading === "client"`)
	time.Sleep(calm)
	b.reload()
	assert.Equal(t, page.Client, eval[string](b, `document.querySelector("main").dataset.reading`))
	b.section(page.Money)
	assert.False(t, eval[bool](b, `document.querySelector('[name^="record."]') !== null`))
	b.do(chromedp.KeyEvent(kb.F8))
	b.wait(`document.querySelector("main").dataset.reading === "maker"`)
	assert.Empty(t, eval[string](b, `sessionStorage.getItem("blockfield.talk") ?? ""`))
}

// What is typed into a field right after a button has set it counts, and stands there.
func TestTypedAfterAButton(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	_, plan := edited(t, widthPath, "1038.7 mm")
	b.typedAtOnce("1038.7 mm", plan.Revision, `[data-set=`+quote(widthPath)+`]`)
}

// typedAtOnce presses what is at selectors and types a width, before anything is answered:
// the width is in the design and stands in its field.
func (b *tab) typedAtOnce(width, revision string, selectors ...string) {
	b.t.Helper()
	press := ""
	for _, s := range selectors {
		press += "document.querySelector(" + quote(s) + ").click();\n"
	}
	eval[any](b, `(() => {
		`+press+`
		const field = document.querySelector(`+quote(control(widthPath))+`);
		field.value = `+quote(width)+`;
		for (const type of ["input", "change"]) field.dispatchEvent(new Event(type, {bubbles: true}));
	})()`)
	b.shows(revision)
	time.Sleep(calm)
	assert.Equal(b.t, width, eval[string](b, `document.querySelector(`+quote(control(widthPath))+`).value`))
	assert.Equal(b.t, revision, b.revision())
}

// A button that is pressed while what was typed is on its way counts, and stands there.
func TestAButtonAfterTyping(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	shown := eval[string](b, `(() => {
		const field = document.querySelector(`+quote(control(widthPath))+`), button = document.querySelector('[data-set=`+quote(widthPath)+`]');
		field.value = "1038.7 mm";
		for (const type of ["input", "change"]) field.dispatchEvent(new Event(type, {bubbles: true}));
		button.click();
		return button.dataset.shown;
	})()`)
	_, plan := edited(t, widthPath, shown)
	b.shows(plan.Revision)
	time.Sleep(calm)
	assert.Equal(t, shown, eval[string](b, `document.querySelector(`+quote(control(widthPath))+`).value`))
}

// The same right after a step of the history and a button, where a list has moved before: what
// was held at its items is dropped with the step, but not what was typed since.
func TestTypedAfterAStepAndAButton(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	b.read("maker")
	b.section("wall")
	b.click(`[data-act="add"][data-path="walls[0].groups"]`)
	b.section("look")
	b.wait(`document.getElementsByName("walls[0].groups[1].width")[0]`)
	_, plan := edited(t, "view.reading", "maker", widthPath, "1038.7 mm")
	b.typedAtOnce("1038.7 mm", plan.Revision, "#undo", `[data-set=`+quote(widthPath)+`]`)
}

// An example that is only looked at is read after another loading as it was before, not as the
// job beside it.
func TestAVisitIsReadAsBefore(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	b.set(widthPath, "1.6 m")
	_, wide := edited(t, widthPath, "1.6 m")
	b.shows(wide.Revision)
	before := b.text("#title")
	eval[any](b, `document.querySelector("#examples button").click()`)
	b.wait(`document.querySelector("#title").textContent !== ` + quote(before))
	visited := b.text("#title")
	b.read(page.Builder)
	time.Sleep(calm)
	b.reload()
	b.wait(`document.querySelector("#title").textContent === ` + quote(visited))
	assert.Equal(t, page.Builder, eval[string](b, `document.querySelector("main").dataset.reading`))
}

// A choice that is made while its list is being drawn anew, for something else that was
// done, holds in the engine and on the page.
func TestChoiceWhileItsListIsDrawnAnew(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	b.read(page.Maker)
	b.section(page.Money)
	eval[any](b, `(() => {
		const choose = (value) => [...document.getElementsByName("work.supply")].find((one) => one.value === value).click();
		choose("kit");
		document.querySelector('[data-act="add"][data-path="money.extras"]').click();
		choose("plan");
	})()`)
	require.Eventually(t, func() bool {
		for key, text := range b.stored() {
			if doc, err := design.Decode([]byte(text)); strings.HasPrefix(key, "blockfield.job.") && err == nil {
				return doc.Design.Work.Supply == design.SupplyPlan && len(doc.Design.Money.Extras) == 1
			}
		}
		return false
	}, waitTimeout, waitStep, "the engine has both")
	time.Sleep(calm)
	assert.Equal(t, design.SupplyPlan, eval[string](b, `[...document.getElementsByName("work.supply")].find((one) => one.checked)?.value ?? "none"`))
}

// A refused value of a job is there again when a step of the history leads back to it, and
// one of a price book stays with that book.
func TestRefusedValuesStayWithTheirOwn(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	b.read(page.Maker)
	b.section(page.Look)
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	b.put(control(widthPath), "banana")
	b.wait(`document.querySelector('[aria-invalid="true"]')`)
	b.menu("new")
	b.says("A fresh design is open")
	b.wait(`!document.querySelector('[aria-invalid="true"]')`)
	eval[any](b, `document.getElementById("undo").click()`)
	b.shows(wide.Revision)
	b.wait(`document.querySelector(` + quote(control(widthPath)) + `).value === "banana"`)
	assert.Contains(t, b.faultAt(widthPath), "banana")

	b.section(page.Money)
	b.click(`[data-act="book-open"]`)
	b.wait(`document.getElementsByName("book.rates.shop").length === 1`)
	b.put(`[name="book.rates.office"]`, "44")
	b.put(`[name="book.rates.shop"]`, "dear")
	b.wait(`document.querySelector("#f-book-rates-shop-fault").textContent.includes("dear")`)
	b.click(`[data-act="example-book"]`)
	b.wait(`document.querySelector('[name="book.rates.office"]')?.value === "38"`)
	assert.Equal(t, "42", eval[string](b, `document.querySelector('[name="book.rates.shop"]').value`))
	assert.Empty(t, b.faultAt("book.rates.shop"))
}

// A refused value goes with its item when a neighbour is taken away.
func TestRefusedValueFollowsItsItem(t *testing.T) {
	b, _ := openPage(t)
	b.read(page.Maker)
	b.section("wall")
	for _, n := range []string{"0", "1"} {
		b.click(`[data-act="add"]`)
		b.wait(`document.querySelector('[name="walls[0].obstacles[` + n + `].x"]')`)
	}
	b.set("walls[0].obstacles[1].x", "banana")
	b.wait(`document.querySelector('[aria-invalid="true"]')`)
	b.click(`[data-act="remove"][data-path="walls[0].obstacles[0]"]`)
	b.wait(`!document.querySelector('[name="walls[0].obstacles[1].x"]')`)
	b.wait(`document.querySelector('[name="walls[0].obstacles[0].x"]').value === "banana"`)
	assert.Contains(t, b.faultAt("walls[0].obstacles[0].x"), "not a length")
}

// broken answers 404 for files of a name, while it is told to; no browser keeps
// them at other times.
type broken struct {
	next   http.Handler
	suffix string
	on     atomic.Bool
}

func newBroken(next http.Handler, suffix string) *broken {
	f := &broken{next: next, suffix: suffix}
	f.on.Store(true)
	return f
}

func (f *broken) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	switch {
	case !strings.HasSuffix(r.URL.Path, f.suffix):
		f.next.ServeHTTP(w, r)
	case f.on.Load():
		http.NotFound(w, r)
	default:
		whole := httptest.NewRecorder()
		f.next.ServeHTTP(whole, r)
		maps.Copy(w.Header(), whole.Header())
		w.Header().Set("Cache-Control", "no-store")
		w.WriteHeader(whole.Code)
		w.Write(whole.Body.Bytes())
	}
}

func TestExampleThatCannotBeFetched(t *testing.T) {
	s := newServer(t, newGate(newBroken(builtSite(t).Handler(), "s5.json"), "preview.wasm"))
	b := newTab(t)
	b.allow("404")
	b.open(s.URL + "/")
	b.alive()
	b.click("#examples summary")
	b.click(`#examples [data-address="designs/s5.json"]`)
	b.says("could not be fetched")
}

// A browser that keeps nothing is not said to.
func TestNothingIsKept(t *testing.T) {
	s := newServer(t, newGate(builtSite(t).Handler(), "preview.wasm"))
	b := newTab(t)
	_, err := chromedp.Call(b.ctx, cdpage.AddScriptToEvaluateOnNewDocument, cdpage.AddScriptToEvaluateOnNewDocumentParams{
		Source: `Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }`,
	})
	require.NoError(t, err)
	b.open(s.URL + "/")
	b.alive()
	b.quiet()
	assert.Contains(t, eval[string](b, `document.querySelector("#private").textContent`), "does not keep")
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	b.says("does not let the page keep")
}

// The price book is kept in this browser, beside the jobs, and is in force
// again at the next visit. One that cannot be read is said and not lost.
func TestPriceBookIsKept(t *testing.T) {
	b, _ := openPage(t)
	b.read(page.Maker)
	b.section("money")
	body, err := os.ReadFile("../../testdata/books/placeholder.json")
	require.NoError(t, err)
	var book map[string]any
	require.NoError(t, json.Unmarshal(body, &book))
	book["name"] = "The book of this test"
	body, err = json.Marshal(book)
	require.NoError(t, err)
	// Out of force it still stands on the shelf, by its name.
	shows := `(document.querySelector('[data-act="example-book"]') !== null && document.querySelector("#section").innerText.includes("The book of this test"))`
	b.upload("book.json", body)
	b.wait(shows)
	b.says("The price book is in force")
	assert.Contains(t, b.stored()["blockfield.book"], "The book of this test")
	for key, text := range b.stored() {
		if key != "blockfield.book" {
			assert.NotContains(t, text, "The book of this test", key)
		}
	}
	b.reload()
	b.section("money")
	b.wait(shows)

	_, err = chromedp.Run(b.lastWorker(), chromedp.Evaluate[any](`globalThis.blockfieldHandle = () => { throw new Error("died for a test") }; 0`))
	require.NoError(t, err)
	b.section("look")
	b.says("started again")
	b.section("money")
	b.wait(shows)

	b.click(`[data-act="example-book"]`)
	b.wait(`!` + shows)
	assert.NotContains(t, b.stored(), "blockfield.book")

	eval[any](b, `localStorage.setItem("blockfield.book", '{"format":"blockfield prices"')`)
	b.reload()
	b.says("price book kept in this browser could not be read")
	b.upload("book.json", body)
	b.says("The price book is in force")
	assert.NotContains(t, b.text("#status"), "could not be read")
	b.section("money")
	b.wait(shows)
	assert.Equal(t, `{"format":"blockfield prices"`, b.stored()["blockfield.book-aside"])
}

// Every request carries the date of the person's calendar.
func TestRequestsCarryTheDate(t *testing.T) {
	b, _ := openPage(t)
	eval[any](b, `(window.sent = [], Worker.prototype.postMessage = new Proxy(Worker.prototype.postMessage, {
		apply(post, worker, [message, ...rest]) {
			sent.push(JSON.parse(new TextDecoder().decode(message.bytes)));
			return post.apply(worker, [message, ...rest]);
		}}), 0)`)
	b.focus(control(widthPath))
	b.set(widthPath, "1.6 m")
	b.do(chromedp.KeyEvent(kb.Tab))
	b.wait("sent.length > 0")
	today := eval[string](b, `new Date().toLocaleDateString("sv")`)
	assert.Equal(t, today, eval[string](b, "sent[0].today"))
	assert.Regexp(t, `^\d{4}-\d\d-\d\d$`, today)
}

// A browser that is ended by force, or by a loss of power, has what was edited right
// before: it writes its local storage to the disk much later.
func TestKilledBrowserHasTheLastEdits(t *testing.T) {
	path, err := exec.LookPath("chromium")
	require.NoError(t, err)
	profile := t.TempDir()
	s := newServer(t, newGate(builtSite(t).Handler(), "preview.wasm"))
	open := func() (*tab, context.Context) {
		browser, end, err := launch(path, profile)
		t.Cleanup(end)
		require.NoError(t, err)
		b := openTabIn(t, browser)
		b.open(s.URL + "/")
		b.alive()
		return b, browser
	}
	b, browser := open()
	for _, width := range []string{"1.5 m", "1.6 m"} {
		_, plan := edited(t, widthPath, width)
		b.set(widthPath, width)
		b.shows(plan.Revision)
		time.Sleep(calm) // shorter than the browser waits before it writes anything
	}
	require.NoError(t, chromedp.FromContext(browser).Browser.Process().Kill())
	time.Sleep(calm)

	b, _ = open()
	_, plan := edited(t, widthPath, "1.6 m")
	b.shows(plan.Revision)
}

// All jobs of a browser go into one file, and come from it into another that has jobs of
// its own; one of them is begun a second time.
func TestAllJobsInOneFile(t *testing.T) {
	b, s := openPage(t)
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	b.click("#menu summary")
	b.click(`#menu [data-do="new"]`)
	b.says("A fresh design is open") // an edit before that is one of the job before
	_, high := edited(t, heightPath, "1 m")
	b.set(heightPath, "1 m")
	b.shows(high.Revision)
	b.click("#menu summary")
	b.wait(`document.querySelectorAll("#job-list [data-job]").length === 1`)
	file, err := os.ReadFile(b.download(func() { b.click(`#jobs [data-do="save"]`) }))
	require.NoError(t, err)

	other := newProfile(t)
	other.open(s.URL + "/")
	other.alive()
	_, low := edited(t, heightPath, "600 mm")
	other.set(heightPath, "600 mm")
	other.shows(low.Revision)
	other.upload("jobs.json", file)
	other.says("2 were taken in")
	other.shows(low.Revision)
	other.reload()
	other.click("#menu summary")
	other.wait(`document.querySelectorAll("#job-list [data-job]").length === 2`)
	other.click("#job-list li:last-child [data-job]")
	other.shows(wide.Revision)
	other.click("#menu summary")
	other.wait(`document.querySelectorAll("#job-list [data-job]").length === 2`)
	other.click("#job-list li:last-child [data-job-copy]")
	other.shows(low.Revision)
	other.click("#menu summary")
	other.wait(`document.querySelectorAll("#job-list [data-job]").length === 3`)
}
