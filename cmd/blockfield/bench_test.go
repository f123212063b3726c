package main_test

import (
	"fmt"
	"slices"
	"testing"

	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/length"
)

// The figures of the page in a browser. They depend on the machine, so they are
// reported and not judged.

// An edit: from the event of the control to the changed page, while the preview
// draws by software; and of that the time until the request leaves, and until
// its answer has come back from the engine.
func BenchmarkEdit(b *testing.B) {
	page, _ := openPicture(b, window(1440, 900))
	page.fine()
	for b.Loop() {
		page.reportEdits(widthPath, "#revision", widths)
	}
}

// The section Money of a field of 50 × 30 blocks with three looks beside it: an edit of
// the design, with ways to its budget and without, and one of the price book, after which
// each look is reckoned anew.
func BenchmarkMoney(b *testing.B) {
	for name, budget := range map[string]design.Amount{"design": 0, "over-budget": design.Units(900)} {
		b.Run(name, func(b *testing.B) {
			page := moneyOfThreeLooks(b, budget)
			for b.Loop() {
				page.reportEdits("money.discount", "#revision", `String(i % 7 + 1)`)
			}
		})
	}
	b.Run("book", func(b *testing.B) {
		page := moneyOfThreeLooks(b, 0)
		page.click(`[data-act="book-open"]`)
		page.wait(`document.getElementsByName("book.rates.shop").length === 1`)
		for b.Loop() {
			page.reportEdits("book.rates.shop", ".look-cards .look-price", `String(40 + i % 7)`)
		}
	})
}

// moneyOfThreeLooks is a maker's page with them.
func moneyOfThreeLooks(b *testing.B, budget design.Amount) *tab {
	b.Helper()
	page, _ := openPicture(b, window(1440, 900))
	page.fine()
	page.read("maker")
	doc := design.Default()
	g := &doc.Design.Walls[0].Groups[0]
	g.Width, g.Height = length.MM(1810), length.MM(1086)
	doc.Design.Money.Budget = budget
	for _, wood := range []string{"oak", "ash", "walnut"} {
		var err error
		doc, err = design.Set(doc, "walls[0].groups[0].wood", wood, length.Metric)
		require.NoError(b, err)
		doc, err = design.KeepLook(doc, wood)
		require.NoError(b, err)
	}
	doc, err := design.Set(doc, "walls[0].groups[0].wood", "poplar", length.Metric)
	require.NoError(b, err)
	page.upload("three.json", design.Encode(doc))
	page.shows(doc.Design.Revision())
	page.section("money")
	page.wait(`document.querySelectorAll(".look-cards .look-price").length === 4`)
	return page
}

// widths is a script for the text of edit i of the width.
const widths = `1200 + 40 * (i % 7 + 1) + " mm"`

// reportEdits reports how long edits of a control take.
func (b *tab) reportEdits(control, watched, value string) {
	b.t.Helper()
	share := b.editTimes(control, watched, value)
	report := b.t.(*testing.B).ReportMetric
	report(share(0, 50), "ms/edit-median")
	report(share(0, 90), "ms/edit-90th")
	report(share(1, 50), "ms/leaves")
	report(share(2, 50), "ms/engine")
	report(share(3, 50), "ms/shown")
}

// editTimes measures how long edits of a control take (ms), from its event to the change of
// what matches watched. value is a script for the text of edit i. share returns what so many
// of a hundred edits did not exceed: 0 in all, and of that 1 until the request leaves, 2
// until the engine has answered, 3 until the page has changed.
func (b *tab) editTimes(control, watched, value string) (share func(part, of int) float64) {
	b.t.Helper()
	script := fmt.Sprintf(`(async () => {
		const times = [];
		let sent = 0, answered = 0;
		const {postMessage} = Worker.prototype;
		Worker.prototype.postMessage = function (...all) {
			sent ||= performance.now();
			return postMessage.apply(this, all);
		};
		const {parse} = JSON; // the first thing that is done with an answer
		JSON.parse = (text) => {
			answered = performance.now();
			return parse(text);
		};
		const text = () => document.querySelector(%q)?.textContent;
		for (let i = 0; i < 31; i++) {
			const control = document.getElementsByName(%q)[0]; // a section may be drawn anew between two edits
			const before = text();
			const changed = new Promise((resolve) => new MutationObserver((_, o) => {
				if (text() === before) return;
				o.disconnect();
				resolve(performance.now());
			}).observe(document.body, {childList: true, characterData: true, subtree: true}));
			control.value = %s;
			control.dataset.dirty = "";
			sent = 0;
			const start = performance.now();
			for (const type of ["input", "change"]) control.dispatchEvent(new Event(type, {bubbles: true}));
			const end = await changed;
			times.push([end - start, sent - start, answered - sent, end - answered]);
			await new Promise((resolve) => setTimeout(resolve, 60));
		}
		Worker.prototype.postMessage = postMessage;
		JSON.parse = parse;
		return times.slice(1);
	})()`, watched, control, value)
	edits := eval[[][]float64](b, script)
	return func(part, of int) float64 {
		times := make([]float64, len(edits))
		for i, e := range edits {
			times[i] = e[part]
		}
		slices.Sort(times)
		return times[len(times)*of/100]
	}
}

// visitMarks note when a page came alive and when its picture was drawn.
const visitMarks = `new MutationObserver(() => {
	if (!document.documentElement) return;
	if (document.documentElement.classList.contains("alive")) window.aliveAt ??= performance.now();
	if (document.querySelector("iframe.preview-live")) window.drawnAt ??= performance.now();
}).observe(document, {subtree: true, attributes: true, childList: true});`

// A first visit: from its start to the first paint, to the answering engine,
// and to the first picture of the preview.
func BenchmarkFirstVisit(b *testing.B) {
	s := newServer(b, builtSite(b).Handler())
	var paint, alive, drawn []float64
	for b.Loop() {
		t := newTab(b)
		_, err := chromedp.Call(t.ctx, cdpage.AddScriptToEvaluateOnNewDocument, cdpage.AddScriptToEvaluateOnNewDocumentParams{Source: visitMarks})
		require.NoError(b, err)
		t.open(s.URL + "/")
		t.alive()
		t.drawn()
		paint = append(paint, eval[float64](t, `performance.getEntriesByName("first-contentful-paint")[0].startTime`))
		alive = append(alive, eval[float64](t, "window.aliveAt"))
		drawn = append(drawn, eval[float64](t, "window.drawnAt"))
		require.NoError(b, chromedp.Cancel(t.ctx))
	}
	for _, one := range []struct {
		all  []float64
		unit string
	}{{paint, "ms/first-paint"}, {alive, "ms/alive"}, {drawn, "ms/picture"}} {
		slices.Sort(one.all)
		b.ReportMetric(one.all[len(one.all)/2], one.unit)
	}
}
