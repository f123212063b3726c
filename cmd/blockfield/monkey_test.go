package main_test

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/input"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
)

var (
	monkeyTime = flag.Duration("monkey", 0, "how long TestMonkey plays with the page")
	monkeySeed = flag.Uint64("monkey-seed", 0, "what its acts come from; 0 a new one, which it prints")
)

// spy counts what is sent to the worker of the edits and what comes back, and holds what is
// still to be answered and the last design that it answered with.
const spy = `(() => {
	window.spied = {sent: 0, answered: 0, asked: {}, text: "", revision: ""};
	const read = (bytes) => JSON.parse(new TextDecoder().decode(bytes));
	const Plain = Worker;
	window.Worker = class extends Plain {
		constructor(url, how) {
			super(url, how);
			if (!String(url).endsWith("/engine-worker.js")) return;
			spied.sent = spied.answered = 0;
			spied.asked = {};
			this.addEventListener("message", ({data}) => {
				if (!data.bytes) return;
				spied.answered++;
				const answer = read(data.bytes);
				delete spied.asked[answer.id];
				if (answer.text) spied.text = answer.text;
				if (answer.revision) spied.revision = answer.revision;
			});
			this.counted = true;
		}
		postMessage(...all) {
			if (this.counted) {
				spied.sent++;
				if (all[0].bytes) {
					const {id, ...request} = read(all[0].bytes);
					spied.asked[id] = JSON.stringify(request).slice(0, 300);
				}
			}
			super.postMessage(...all);
		}
	};
	window.print = () => {};
	Navigator.prototype.share = undefined;
})()`

// monkeyHands are what a script of the page does for the monkey: each takes numbers in
// [0, 1) to choose by, and says what it did.
const monkeyHands = `window.hands = {
	pick: (all, at) => all[Math.floor(at * all.length)],
	seen: (selector) => [...document.querySelectorAll(selector)].filter((e) => e.checkVisibility({visibilityProperty: true}) && !e.closest("[inert]")),
	tell: (e) => e.name || e.id || (e.dataset.act ?? e.dataset.do ?? e.dataset.set ?? e.dataset.row ?? e.tagName) + " " + (e.value || e.dataset.path || e.innerText || "").slice(0, 40),
	type(at, text, factor, enter) {
		const e = hands.pick(hands.seen("main input[type=text], main textarea, main input[type=date]"), at);
		if (!e) return "no field";
		const old = e.value;
		const value = text ?? old.replace(/\d+([.,]\d+)?/, (n) => String(Math.round(parseFloat(n.replace(",", ".")) * factor * 10) / 10));
		e.focus();
		e.value = e.type === "date" ? (text === "" ? "" : "2026-0" + (1 + Math.floor(factor * 4)) + "-11") : value;
		e.dispatchEvent(new InputEvent("input", {bubbles: true}));
		if (enter) e.dispatchEvent(new Event("change", {bubbles: true}));
		return "type " + e.name + " " + JSON.stringify(e.value.slice(0, 60));
	},
	choose(at, which) {
		const e = hands.pick(hands.seen("main select, main .choices input, main input[type=checkbox], main input[type=range]"), at);
		if (!e) return "no choice";
		if (e.type === "radio") {
			hands.pick([...document.getElementsByName(e.name)], which).click();
		} else if (e.type === "checkbox") {
			e.click();
		} else {
			e.value = e.tagName === "SELECT" ? hands.pick([...e.options], which).value : String(Number(e.min) + which * (Number(e.max) - Number(e.min)));
			for (const type of ["input", "change"]) e.dispatchEvent(new Event(type, {bubbles: true}));
		}
		return "choose " + hands.tell(e);
	},
	press(at) {
		const no = '[data-do="send"], [data-do="open"], [data-do="shoot"], [data-photo-save]';
		const e = hands.pick(hands.seen("main button, #rows button, #status button, .menu[open] button").filter((b) => !b.matches(no)), at);
		if (!e) return "no button";
		e.click();
		return "press " + hands.tell(e);
	},
	fold(at) {
		const e = hands.pick(hands.seen("summary"), at);
		e?.click();
		return "fold " + (e?.innerText ?? "");
	},
	go(selector, at, which) {
		const e = hands.pick(hands.seen(selector), at);
		if (!e) return "nowhere to go";
		if (e.tagName === "SELECT") {
			e.value = hands.pick([...e.options], which).value;
			for (const type of ["input", "change"]) e.dispatchEvent(new Event(type, {bubbles: true}));
		} else e.click();
		return "go " + (e.hash ?? e.name + " " + e.value);
	},
};
0`

// The values that a monkey types beside those near what stands in a field.
var monkeyWords = []string{
	"", "banana", "0", "-5", "1e309", "99999999999999999999", "1/0", "1 1/2 in", "6' 2 1/2\"", "38mm", "0,5", "1.5 m", "½", "٣",
	"<b>bold</b><script>alert(1)</script>", "'\"&amp;", "a\u202eb\u0000c\u0007", "__proto__", "Größe ünd Maß 長い", strings.Repeat("long ", 60),
}

// A monkey edits, presses, folds, goes back and forth, opens, resizes and reloads, one act
// after the other out of a seed. Nothing goes to the console as an error, the engine never
// dies, what the page shows is what its engine holds and what the browser keeps, before and
// after a reload, and memory does not grow.
//
//	go test ./cmd/blockfield -run TestMonkey -monkey 30m [-monkey-seed N]
func TestMonkey(t *testing.T) {
	if *monkeyTime == 0 {
		t.Skip("only with -monkey DURATION (make soak)")
	}
	seed := *monkeySeed
	if seed == 0 {
		seed = rand.Uint64()
	}
	t.Logf("-monkey-seed %d", seed)
	m := &monkey{t: t, rng: rand.New(rand.NewPCG(seed, 0))}
	s := newServer(t, builtSite(t).Handler())
	m.b = newProfile(t)
	m.b.patient()
	t.Cleanup(func() { // before that of the profile
		if !t.Failed() {
			return
		}
		late, stop := context.WithTimeout(m.b.ctx, 10*time.Second)
		defer stop()
		waits, err := chromedp.Run(late, chromedp.Evaluate[string](`JSON.stringify({...spied, text: ""}) + document.querySelector("#status").innerText`))
		if err != nil {
			waits = "does not answer: " + err.Error()
		}
		t.Logf("-monkey-seed %d, act %d; the page: %s; the last acts:\n%s", seed, m.acts, waits, strings.Join(m.told, "\n"))
	})
	for _, script := range []string{spy, monkeyHands} {
		_, err := chromedp.Call(m.b.ctx, cdpage.AddScriptToEvaluateOnNewDocument, cdpage.AddScriptToEvaluateOnNewDocumentParams{Source: script})
		require.NoError(t, err)
	}
	_, err := chromedp.CallBrowser(m.b.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorDeny, BrowserContextID: chromedp.FromContext(m.b.ctx).BrowserContextID,
	})
	require.NoError(t, err)
	m.b.open(s.URL + "/")
	m.b.alive()
	for end := time.Now().Add(*monkeyTime); time.Now().Before(end) && !t.Failed(); {
		m.act()
		if m.rng.IntN(5) == 0 {
			m.rest()
		}
		if m.rng.IntN(40) == 0 {
			m.reload()
		}
	}
	if !t.Failed() {
		m.reload()
	}
	t.Logf("%d acts, %d reloads", m.acts, len(m.sizes))
	m.flat()
}

type monkey struct {
	t     *testing.T
	b     *tab
	rng   *rand.Rand
	acts  int
	told  []string // the last acts
	sizes []heap   // right after each reload
	grown []heap   // right before it
}

func (m *monkey) did(what string) {
	const held = 40
	m.acts++
	m.told = append(m.told, fmt.Sprintf("%6d %s", m.acts, what))
	m.told = m.told[max(0, len(m.told)-held):]
}

// act does one thing, without waiting for what comes of it.
func (m *monkey) act() {
	b, f := m.b, m.rng.Float64
	hand := func(call string, args ...any) {
		m.did(eval[string](b, fmt.Sprintf("hands."+call, args...)))
	}
	switch n := m.rng.IntN(100); {
	case n < 24:
		hand("type(%v, null, %v, %v)", f(), 0.7+0.6*f(), m.rng.IntN(4) > 0)
	case n < 32:
		word, err := json.Marshal(monkeyWords[m.rng.IntN(len(monkeyWords))])
		require.NoError(m.t, err)
		hand("type(%v, %s, 1, true)", f(), word)
	case n < 48:
		hand("choose(%v, %v)", f(), f())
	case n < 62:
		hand("press(%v)", f())
	case n < 68:
		hand("fold(%v)", f())
	case n < 74:
		hand(`go("#nav a", %v, 0)`, f())
	case n < 77:
		hand(`go('[name="view.reading"], [name="view.units"], [name="view.language"]', %v, %v)`, f(), f())
	case n < 79:
		hand(`go("main a[href^='#']", %v, 0)`, f())
	case n < 84:
		step := []string{"undo", "redo", "undo", "undo"}[m.rng.IntN(4)]
		eval[any](b, `document.getElementById(`+quote(step)+`).click()`)
		m.did(step)
	case n < 92:
		keys := []string{kb.Tab, kb.Tab, kb.Enter, kb.Escape, kb.ArrowDown, kb.ArrowUp, kb.ArrowLeft, kb.ArrowRight, " ", "/", "7", kb.Backspace, kb.F8, kb.Delete}
		key := keys[m.rng.IntN(len(keys))]
		b.do(chromedp.KeyEvent(key))
		m.did(fmt.Sprintf("key %q", key))
	case n < 94:
		m.drag()
	case n < 96:
		width := []int64{360, 390, 768, 1024, 1440}[m.rng.IntN(5)]
		b.size(width, 844)
		m.did(fmt.Sprint("size ", width))
	case n < 98:
		eval[any](b, `(document.querySelector("#examples").open = true, 0)`)
		hand("press(%v)", f())
	default:
		eval[any](b, `(document.querySelector("#menu").open = true, 0)`)
		hand("press(%v)", f())
	}
	assert.Empty(m.t, b.found(), "after %s", m.told[len(m.told)-1])
	assert.Empty(m.t, eval[string](b, `document.querySelector('[data-said="restarted"], [data-said="engine-failed"]')?.innerText ?? ""`), "the engine died")
}

// drag moves the lamp, or the eye, over the picture.
func (m *monkey) drag() {
	box := eval[[]float64](m.b, `(() => { const r = document.querySelector("#pad").getBoundingClientRect(); return [r.x, r.y, r.width, r.height]; })()`)
	at := func() (x, y float64) { return box[0] + m.rng.Float64()*box[2], box[1] + m.rng.Float64()*box[3] }
	x, y := at()
	for i, kind := range []input.DispatchMouseEventType{"mousePressed", "mouseMoved", "mouseMoved", "mouseReleased"} {
		_, err := chromedp.Call(m.b.ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{Type: kind, X: x, Y: y, Button: input.MouseButtonLeft, Buttons: 1, ClickCount: 1})
		require.NoError(m.t, err)
		if i < 2 {
			x, y = at()
		}
	}
	m.did("drag")
}

// rest waits until the engine has answered everything, and holds the page against it.
func (m *monkey) rest() {
	// In one look: the next edit may be sent as soon as the last is answered.
	m.b.wait(`spied.sent > 0 && spied.answered >= spied.sent && spied.revision === document.querySelector("#revision").textContent &&
		Boolean(window.rested = {text: spied.text, revision: spied.revision})`)
	text := eval[string](m.b, "rested.text")
	if text == "" {
		return // nothing was edited since the page was loaded
	}
	doc, err := design.Decode([]byte(text))
	require.NoError(m.t, err)
	require.Equal(m.t, doc.Design.Revision(), eval[string](m.b, "rested.revision"), "the page shows another design than the engine holds")
	assert.Equal(m.t, string(design.Encode(doc)), text, "what the engine holds is written as Go writes it")
}

// look is all that has to be the same after a reload.
type look struct {
	Revision, Title, Reading, Language string
	Values                             map[string]string
}

const lookAtPage = `(() => {
	const values = {};
	for (const e of document.querySelectorAll("main [name]")) {
		if (e.type === "radio" && !e.checked || e.name.startsWith("find.") || e.name.startsWith("book.")) continue;
		values[e.name] = e.type === "checkbox" ? String(e.checked) : e.value;
	}
	return {Revision: document.querySelector("#revision").textContent, Title: document.querySelector("#title").textContent,
		Reading: document.querySelector("main").dataset.reading, Language: document.documentElement.lang, Values: values};
})()`

// reload loads the page again: everything is there again.
func (m *monkey) reload() {
	m.rest()
	b := m.b
	eval[any](b, `(location.hash === "#rows" && (location.hash = "#bench"), document.activeElement.blur(),
		document.querySelectorAll("[data-dirty]").forEach((e) => e.dispatchEvent(new Event("change", {bubbles: true}))), 0)`)
	section := eval[string](b, `document.querySelector('#nav [aria-current]').hash`)
	time.Sleep(calm)
	m.rest()
	m.grown = append(m.grown, b.memory())
	before := eval[look](b, lookAtPage)
	eval[any](b, `history.replaceState(null, "", `+quote(section)+`)`)
	m.did("reload at " + section)
	b.reload()
	b.wait(fmt.Sprintf(`document.querySelector('#nav [aria-current]').hash === %q`, section))
	b.wait(`spied.answered >= spied.sent`)
	time.Sleep(calm)
	b.wait(`spied.answered >= spied.sent`)
	after := eval[look](b, lookAtPage)
	require.Equal(m.t, before.Revision, after.Revision, "an edit is lost")
	m.meansTheSame(before, after)
	assert.Equal(m.t, before, after, "the page is another after a reload")
	m.sizes = append(m.sizes, b.memory())
}

// meansTheSame takes out what is written in another way and means the same: a field keeps
// what was typed until it is drawn anew.
func (m *monkey) meansTheSame(before, after look) {
	for path, was := range before.Values { // what is typed is kept without blanks around it
		if is, still := after.Values[path]; still && strings.TrimSpace(was) == is {
			before.Values[path] = is
		}
	}
	text := eval[string](m.b, "spied.text")
	doc, err := design.Decode([]byte(text))
	if text == "" || err != nil {
		return
	}
	for path, was := range before.Values {
		is, still := after.Values[path]
		if was == is || !still {
			continue
		}
		one, err := design.Set(doc, path, was, doc.View.Units)
		if err != nil {
			continue
		}
		other, err := design.Set(doc, path, is, doc.View.Units)
		if err == nil && bytes.Equal(design.Encode(one), design.Encode(other)) {
			delete(before.Values, path)
			delete(after.Values, path)
		}
	}
}

// flat compares what the page takes after its first reloads and its last ones.
func (m *monkey) flat() {
	const few = 8
	mb := func(of func(heap) float64, all []heap) float64 {
		var v []float64
		for _, h := range all {
			v = append(v, of(h)/1e6)
		}
		return median(v)
	}
	of := map[string]func(heap) float64{
		"scripts": func(h heap) float64 { return h.script }, "module of the edits": func(h heap) float64 { return h.edits },
	}
	for _, name := range []string{"scripts", "module of the edits"} {
		if len(m.sizes) == 0 {
			return
		}
		peak := slices.MaxFunc(m.grown, func(a, b heap) int { return int(of[name](a) - of[name](b)) })
		m.t.Logf("%s: %.1f MB after a reload, %.1f MB before one, at most %.1f MB", name, mb(of[name], m.sizes), mb(of[name], m.grown), of[name](peak)/1e6)
		if len(m.sizes) < 2*few {
			m.t.Logf("too few reloads to say whether %s grow", name)
			continue
		}
		first, last := mb(of[name], m.sizes[:few]), mb(of[name], m.sizes[len(m.sizes)-few:])
		const most = 1.5
		assert.Less(m.t, last, most*first, "%s took %.1f MB at first and %.1f MB at last", name, first, last)
	}
}
