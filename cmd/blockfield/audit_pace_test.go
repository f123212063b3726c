package main_test

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/heapprofiler"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"blockfield/engine/page"
)

// lighthouse is what its report says of one run.
type lighthouse struct {
	LighthouseVersion string                        `json:"lighthouseVersion"`
	Categories        map[string]lighthouseCategory `json:"categories"`
	Audits            map[string]struct {
		Title        string   `json:"title"`
		Score        *float64 `json:"score"`
		NumericValue float64  `json:"numericValue"`
		DisplayValue string   `json:"displayValue"`
	} `json:"audits"`
}

type lighthouseCategory struct {
	Title     string  `json:"title"`
	Score     float64 `json:"score"`
	AuditRefs []struct {
		ID string `json:"id"`
	} `json:"auditRefs"`
}

// runLighthouse runs it once, and anew where it lost its own recording of the visit, which
// it says and which has nothing to do with the page.
func runLighthouse(t *testing.T, args []string) lighthouse {
	t.Helper()
	const attempts, lost = 4, "NO_NAVSTART"
	var said strings.Builder
	for range attempts {
		said.Reset()
		run := exec.Command("node", args...)
		run.Env = append(os.Environ(), "CHROME_PATH=chromium")
		run.Stderr = &said
		body, err := run.Output()
		if err != nil && strings.Contains(said.String(), lost) {
			continue
		}
		require.NoError(t, err, said.String())
		var result lighthouse
		require.NoError(t, json.Unmarshal(body, &result))
		return result
	}
	t.Fatalf("no run of %d was recorded: %s", attempts, said.String())
	return lighthouse{}
}

// auditLighthouse takes the median of several runs with an empty cache.
func auditLighthouse(t *testing.T) string {
	program := tool(t, "lighthouse/cli/index.js")
	s := newServer(t, servedSite(t))
	categories := []string{"performance", "accessibility", "best-practices", "seo"}
	figures := []string{"first-contentful-paint", "largest-contentful-paint", "speed-index", "total-blocking-time", "cumulative-layout-shift", "total-byte-weight"}
	heading := []string{""}
	rows := [][]string{nil}
	var weak []string
	for _, form := range []string{"mobile", "desktop"} {
		t.Run(form, func(t *testing.T) {
			values := map[string][]float64{}
			var last lighthouse
			for range *auditRuns {
				args := []string{program, s.URL + "/", "--quiet", "--output=json", "--output-path=stdout",
					"--only-categories=" + strings.Join(categories, ","),
					"--chrome-flags=--headless=new --no-sandbox --use-angle=swiftshader --enable-unsafe-swiftshader"}
				if form == "desktop" {
					args = append(args, "--preset=desktop")
				}
				last = runLighthouse(t, args)
				for _, name := range categories {
					values[name] = append(values[name], 100*last.Categories[name].Score)
				}
				for _, name := range figures {
					values[name] = append(values[name], last.Audits[name].NumericValue)
				}
			}
			row := []string{form}
			heading = []string{"Lighthouse " + last.LighthouseVersion}
			for _, name := range categories {
				heading = append(heading, name)
				row = append(row, fmt.Sprintf("**%.0f** (%.0f–%.0f)", median(values[name]), slices.Min(values[name]), slices.Max(values[name])))
				for _, ref := range last.Categories[name].AuditRefs {
					if a := last.Audits[ref.ID]; a.Score != nil && *a.Score < 0.9 {
						weak = append(weak, fmt.Sprintf("- %s, %s: %s (%.0f of 100) %s\n", form, name, a.Title, 100**a.Score, cell(a.DisplayValue)))
					}
				}
			}
			for _, name := range figures {
				heading = append(heading, name)
				row = append(row, lighthouseFigure(name, median(values[name])))
			}
			rows = append(rows, row)
		})
	}
	rows[0] = heading
	return fmt.Sprintf("The median of %d run(s) with an empty cache, and the lowest and highest, over its own simulated network and processor "+
		"(mobile: slow 4G, a processor four times slower; desktop: 10 Mbit/s).\n\n%s\nBelow 90 in the last run:\n\n%s",
		*auditRuns, table(rows), strings.Join(weak, ""))
}

func lighthouseFigure(name string, value float64) string {
	switch name {
	case "cumulative-layout-shift":
		return fmt.Sprintf("%.3f", value)
	case "total-byte-weight":
		return kilobytes(int(value))
	}
	return fmt.Sprintf("%.0f ms", value)
}

func kilobytes(n int) string { return fmt.Sprintf("%.0f kB", float64(n)/1000) }

// slowLine has every answer come over a line of a given round trip and rate, which all
// connections share: workers, the frame and the service worker too, which a browser's own
// emulation leaves out.
type slowLine struct {
	next  http.Handler
	trip  time.Duration
	bytes float64 // a second; 0 as fast as it goes

	mu    sync.Mutex
	free  time.Time
	known map[string]bool // connections
	sent  []sending
}

type sending struct {
	at   time.Time
	path string
	n    int
}

// A connection takes one round trip for itself and one for its encryption (TLS 1.3, RFC 8446).
const tripsOfConnection = 2

func (l *slowLine) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	l.mu.Lock()
	if l.known == nil {
		l.known = map[string]bool{}
	}
	trips := time.Duration(1)
	if !l.known[r.RemoteAddr] {
		l.known[r.RemoteAddr] = true
		trips += tripsOfConnection
	}
	l.mu.Unlock()
	time.Sleep(trips * l.trip)
	l.next.ServeHTTP(&slowWriter{w, l, r.URL.Path}, r)
}

type slowWriter struct {
	http.ResponseWriter
	line *slowLine
	path string
}

func (w *slowWriter) Write(body []byte) (int, error) {
	const piece = 8 << 10
	for rest := body; len(rest) > 0; {
		now := rest[:min(piece, len(rest))]
		rest = rest[len(now):]
		w.line.pass(w.path, len(now))
		if n, err := w.ResponseWriter.Write(now); err != nil {
			return len(body) - len(rest) - len(now) + n, err
		}
		if f, ok := w.ResponseWriter.(http.Flusher); ok {
			f.Flush()
		}
	}
	return len(body), nil
}

func (l *slowLine) pass(path string, n int) {
	l.mu.Lock()
	end := time.Now()
	if l.bytes > 0 {
		if l.free.After(end) {
			end = l.free
		}
		end = end.Add(time.Duration(float64(n) / l.bytes * float64(time.Second)))
		l.free = end
	}
	l.sent = append(l.sent, sending{end, path, n})
	l.mu.Unlock()
	time.Sleep(time.Until(end))
}

// until is how many bytes had been sent at a time.
func (l *slowLine) until(at time.Time) (n int) {
	l.mu.Lock()
	defer l.mu.Unlock()
	for _, s := range l.sent {
		if !s.at.After(at) {
			n += s.n
		}
	}
	return n
}

// vitals note what a browser says of a page that loads.
const vitals = `window.vitals = {largest: 0, shift: 0};
new PerformanceObserver((l) => l.getEntries().forEach((e) => { vitals.largest = e.startTime; })).observe({type: "largest-contentful-paint", buffered: true});
new PerformanceObserver((l) => l.getEntries().forEach((e) => { if (!e.hadRecentInput) vitals.shift += e.value; })).observe({type: "layout-shift", buffered: true});`

// auditVisit opens the page in a browser that has never seen it, over lines of three kinds.
func auditVisit(t *testing.T) string {
	const mbit = 1e6 / 8
	rows := [][]string{{"Line", "first paint", "largest paint", "alive", "first moving picture", "layout shift", "bytes to paint", "to alive", "to picture", "with all that is kept offline", "requests"}}
	for _, line := range []struct {
		name  string
		trip  time.Duration
		bytes float64
	}{
		{"this machine", 0, 0},
		{"4G: 9 Mbit/s, 170 ms", 170 * time.Millisecond, 9 * mbit},
		{"slow 4G: 1.6 Mbit/s, 150 ms", 150 * time.Millisecond, 1.6 * mbit},
	} {
		t.Run(line.name, func(t *testing.T) {
			values := map[string][]float64{}
			note := func(name string, v float64) { values[name] = append(values[name], v) }
			for range min(*auditRuns, 3) {
				slow := &slowLine{next: servedSite(t), trip: line.trip, bytes: line.bytes}
				s := newServer(t, slow)
				b := newProfile(t)
				b.patient()
				_, err := chromedp.Call(b.ctx, cdpage.AddScriptToEvaluateOnNewDocument, cdpage.AddScriptToEvaluateOnNewDocumentParams{Source: visitMarks + vitals})
				require.NoError(t, err)
				b.open(s.URL + "/")
				b.alive()
				b.drawn()
				b.wait(`(window.kept ??= navigator.serviceWorker.ready.then((r) => { window.active = r.active; }), window.active?.state === "activated")`)
				begun := time.UnixMicro(int64(1000 * eval[float64](b, "performance.timeOrigin")))
				mark := func(name, script string) {
					ms := eval[float64](b, script)
					note(name, ms)
					note(name+" bytes", float64(slow.until(begun.Add(time.Duration(ms*1e6)))))
				}
				mark("paint", `performance.getEntriesByName("first-contentful-paint")[0].startTime`)
				mark("largest", "vitals.largest")
				mark("alive", "aliveAt")
				mark("drawn", "drawnAt")
				note("shift", eval[float64](b, "vitals.shift"))
				note("all bytes", float64(slow.until(time.Now())))
				note("requests", float64(len(s.paths())))
				require.NoError(t, chromedp.Cancel(b.ctx))
			}
			ms := func(name string) string { return fmt.Sprintf("%.2f s", median(values[name])/1000) }
			kb := func(name string) string { return kilobytes(int(median(values[name+" bytes"]))) }
			rows = append(rows, []string{line.name, ms("paint"), ms("largest"), ms("alive"), ms("drawn"), fmt.Sprintf("%.3f", median(values["shift"])),
				kb("paint"), kb("alive"), kb("drawn"), kb("all"), fmt.Sprintf("%.0f", median(values["requests"]))})
		})
	}
	return "A browser that has never seen the page, median of three visits; pictures are drawn by software. Round trip and rate are held on the " +
		"side of the server, since the browser's own emulation leaves out workers: each answer waits one round trip, each connection two more, and all " +
		"answers share the rate (HTTP/1.1). Bytes are those of bodies.\n\n" + table(rows)
}

// auditEdit measures edits of the width on a desk while the picture is drawn.
func auditEdit(t *testing.T) string {
	rows := [][]string{{"Reading, section", "median", "nine of ten below", "until it is sent", "in the engine", "until it is shown"}}
	for _, reading := range readings {
		t.Run(reading, func(t *testing.T) {
			b, _ := openPicture(t, window(1440, 900))
			b.patient()
			b.fine()
			b.read(reading)
			b.section(page.Look)
			b.listened()
			share := b.editTimes(widthPath, "#revision", widths)
			row := []string{reading + ", " + page.Look}
			for _, one := range [][2]int{{0, 50}, {0, 90}, {1, 50}, {2, 50}, {3, 50}} {
				row = append(row, fmt.Sprintf("%.0f ms", share(one[0], one[1])))
			}
			rows = append(rows, row)
		})
	}
	return "Thirty edits of the width, from the event of the field to the changed page, while picture and sound are worked out beside it.\n\n" + table(rows)
}

// heap is what is taken of memory at one moment, in bytes.
type heap struct{ script, nodes, edits, hearing float64 }

// memory is what the page takes after the browser has tidied up.
func (b *tab) memory() heap {
	b.t.Helper()
	b.listened()
	var h heap
	_, err := chromedp.Call(b.ctx, performance.Enable, performance.EnableParams{})
	require.NoError(b.t, err)
	for range 2 {
		_, err := chromedp.Call(b.ctx, heapprofiler.CollectGarbage, cdp.Empty{})
		require.NoError(b.t, err)
	}
	all, err := chromedp.Call(b.ctx, performance.GetMetrics, cdp.Empty{})
	require.NoError(b.t, err)
	for _, m := range all.Metrics {
		switch m.Name {
		case "JSHeapUsedSize":
			h.script = m.Value
		case "Nodes":
			h.nodes = m.Value
		}
	}
	b.mu.Lock()
	workers, hearers := slices.Clone(b.workers), slices.Clone(b.hearers)
	b.mu.Unlock()
	h.edits = moduleMemory(b.t, workers)
	require.NotZero(b.t, h.edits)
	h.hearing = moduleMemory(b.t, hearers)
	return h
}

// moduleSize is the size of the module of a worker, taken from the Go of wasm_exec.js as it
// is about to go on in the module; nothing is asked of it. To look for its memory in the
// heap of the worker (Runtime.queryObjects) is no way: a fault in V8 then ends the process
// of the page once in some 400 times (seen in Chromium 156).
const moduleSize = `(() => {
	const go = Go.prototype, resume = go._resume;
	let size = 0;
	go._resume = function () { size = this._inst.exports.mem.buffer.byteLength; this._pendingEvent = null; };
	try { blockfieldHandle(); } catch { /* without an answer */ } finally { go._resume = resume; }
	return size;
})()`

// moduleMemory is the size of the WebAssembly memories of workers that are alive.
func moduleMemory(t testing.TB, workers []context.Context) (bytes float64) {
	t.Helper()
	for _, w := range workers {
		n, err := chromedp.Run(w, chromedp.Evaluate[float64](moduleSize))
		if err != nil {
			continue // it has ended
		}
		require.NotZero(t, n)
		bytes += n
	}
	return bytes
}

// manyEdits is how many edits the memory is watched over.
const manyEdits = 1000

func auditMemory(t *testing.T) string {
	b, _ := openPage(t)
	b.patient()
	b.read(page.Maker)
	b.section(page.Look)
	rows := [][]string{{"After edits", "scripts", "nodes of the page", "module of the edits", "module of the hearing"}}
	look := func(n int) {
		h := b.memory()
		mb := func(v float64) string { return fmt.Sprintf("%.1f MB", v/1e6) }
		rows = append(rows, []string{fmt.Sprint(n), mb(h.script), fmt.Sprintf("%.0f", h.nodes), mb(h.edits), mb(h.hearing)})
	}
	look(0)
	for done := 0; done < manyEdits; {
		const step = 100
		eval[any](b, fmt.Sprintf(`(async () => {
			for (let i = %d; i < %d; i++) {
				const control = document.getElementsByName(%q)[0];
				const was = document.querySelector("#revision").textContent;
				control.value = 900 + 7 * (i %% 140) + " mm";
				control.dataset.dirty = "";
				for (const type of ["input", "change"]) control.dispatchEvent(new Event(type, {bubbles: true}));
				while (document.querySelector("#revision").textContent === was) await new Promise((r) => setTimeout(r, 5));
			}
		})()`, done, done+step, widthPath))
		done += step
		if done == step || done%250 == 0 || done == manyEdits {
			look(done)
		}
	}
	return "Edits of the width in the reading of a maker, each waited for; measured when the last design has been heard and the browser has tidied " +
		"up twice. Memory of a module never shrinks, so what counts is that it stops growing.\n\n" + table(rows)
}

func auditIdle(t *testing.T) string {
	const span, spans = 10 * time.Second, 5
	rows := [][]string{{"Page", "processor time in 10 s, middle", "most"}}
	for _, one := range []struct {
		name string
		open func(t *testing.T) *tab
	}{
		{"an empty tab", func(t *testing.T) *tab { b := newTab(t); b.open("about:blank"); return b }},
		{"the page, drawn", func(t *testing.T) *tab { b, _ := openPicture(t, window(1440, 900)); b.fine(); b.listened(); return b }},
	} {
		t.Run(one.name, func(t *testing.T) {
			b := one.open(t)
			time.Sleep(20 * time.Second) // the browser tidies up after a start
			sums := idleSpans(t, span, spans)
			rows = append(rows, []string{one.name, fmt.Sprintf("%.3f s", sums[spans/2]), fmt.Sprintf("%.3f s", sums[spans-1])})
			require.NoError(t, chromedp.Cancel(b.ctx))
		})
	}
	return "Over all processes of the browser, while nobody does anything.\n\n" + table(rows)
}
