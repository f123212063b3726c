package main_test

import (
	"slices"
	"testing"

	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// The figures of the page in a browser. They depend on the machine, so they are
// reported and not judged.

// An edit: from the event of the control to the changed page, while the preview
// draws by software; and of that the time until the request leaves, and until
// its answer has come back from the engine.
func BenchmarkEdit(b *testing.B) {
	page, _ := openPicture(b, window(1440, 900))
	page.fine()
	const script = `(async () => {
		const width = document.querySelector('[name="walls[0].groups[0].width"]');
		const revision = document.querySelector("#revision");
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
		for (let i = 0; i < 31; i++) {
			const changed = new Promise((resolve) => new MutationObserver((_, o) => { o.disconnect(); resolve(performance.now()); })
				.observe(revision, {childList: true, characterData: true, subtree: true}));
			width.value = 1200 + 40 * (i % 7 + 1) + " mm";
			width.dataset.dirty = "";
			sent = 0;
			const start = performance.now();
			for (const type of ["input", "change"]) width.dispatchEvent(new Event(type, {bubbles: true}));
			const end = await changed;
			times.push([end - start, sent - start, answered - sent, end - answered]);
			await new Promise((resolve) => setTimeout(resolve, 60));
		}
		Worker.prototype.postMessage = postMessage;
		JSON.parse = parse;
		return times.slice(1);
	})()`
	for b.Loop() {
		edits := eval[[][]float64](page, script)
		share := func(part, of int) float64 {
			times := make([]float64, len(edits))
			for i, e := range edits {
				times[i] = e[part]
			}
			slices.Sort(times)
			return times[len(times)*of/100]
		}
		b.ReportMetric(share(0, 50), "ms/edit-median")
		b.ReportMetric(share(0, 90), "ms/edit-90th")
		b.ReportMetric(share(1, 50), "ms/leaves")
		b.ReportMetric(share(2, 50), "ms/engine")
		b.ReportMetric(share(3, 50), "ms/shown")
	}
}

// A first visit: from its start to the first paint, to the answering engine,
// and to the first picture of the preview.
func BenchmarkFirstVisit(b *testing.B) {
	const marks = `new MutationObserver(() => {
		if (!document.documentElement) return;
		if (document.documentElement.classList.contains("alive")) window.aliveAt ??= performance.now();
		if (document.querySelector("iframe.preview-live")) window.drawnAt ??= performance.now();
	}).observe(document, {subtree: true, attributes: true, childList: true});`
	s := newServer(b, builtSite(b).Handler())
	var paint, alive, drawn []float64
	for b.Loop() {
		t := newTab(b)
		_, err := chromedp.Call(t.ctx, cdpage.AddScriptToEvaluateOnNewDocument, cdpage.AddScriptToEvaluateOnNewDocumentParams{Source: marks})
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
