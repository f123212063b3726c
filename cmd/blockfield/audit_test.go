package main_test

import (
	"flag"
	"fmt"
	"mime"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"blockfield/engine/page"
)

var (
	auditDir    = flag.String("audit", "", "folder of the audit's tools and of what it finds, for TestAudit")
	auditSite   = flag.String("audit-site", "", "folder of the built site, compressed, for TestAudit")
	auditRuns   = flag.Int("audit-runs", 5, "how often TestAudit runs what it takes the median of")
	auditReport = flag.String("audit-report", "", "file to write the report of TestAudit to")
)

// auditParts are the chapters of the report, in order. Each writes its own, so that one
// can be measured anew without the others:
//
//	make audit AUDIT=/axe
//
// What breaks a rule that is either kept or not (an accessibility violation, HTML that is
// not valid, a place that cannot be left) fails; a figure never does.
var auditParts = []struct {
	name, title string
	run         func(*testing.T) string
}{
	{"axe", "Accessibility rules (axe)", auditAxe},
	{"html", "HTML and CSS", auditHTML},
	{"keys", "Keyboard and wheel", auditKeys},
	{"lighthouse", "Lighthouse", auditLighthouse},
	{"visit", "First visit", auditVisit},
	{"transfer", "What is sent", auditTransfer},
	{"edit", "From input to page", auditEdit},
	{"memory", "Memory over many edits", auditMemory},
	{"idle", "At rest", auditIdle},
}

// The audit measures the page as people get it and writes a report.
func TestAudit(t *testing.T) {
	if *auditDir == "" {
		t.Skip("only with -audit DIR (make audit)")
	}
	for _, part := range auditParts {
		t.Run(part.name, func(t *testing.T) {
			text := fmt.Sprintf("## %s\n\n%s\n%s\n", part.title, measuredAt(t), part.run(t))
			require.NoError(t, os.WriteFile(chapter(part.name), []byte(text), 0o644))
		})
	}
	if *auditReport != "" {
		require.NoError(t, os.WriteFile(*auditReport, []byte(report()), 0o644))
	}
}

func chapter(part string) string { return filepath.Join(*auditDir, part+".md") }

// report is made of the chapters that were measured, now or before.
func report() string {
	var b strings.Builder
	b.WriteString("# Audit of the page\n\n" +
		"Written by `make audit`; DEVELOPERS.md says how. The figures are those of one machine\n" +
		"and judge nothing; a broken rule fails the audit.\n\n")
	for _, part := range auditParts {
		text, err := os.ReadFile(chapter(part.name))
		if err != nil {
			text = fmt.Appendf(nil, "## %s\n\nNot measured.\n", part.title)
		}
		b.Write(text)
		b.WriteString("\n")
	}
	return strings.TrimRight(b.String(), "\n") + "\n"
}

// measuredAt says when, of what and where a chapter was measured.
func measuredAt(t *testing.T) string {
	t.Helper()
	commit, err := exec.Command("git", "describe", "--always", "--dirty").Output()
	require.NoError(t, err)
	version, err := exec.Command("chromium", "--version").Output()
	require.NoError(t, err)
	load, err := os.ReadFile("/proc/loadavg")
	require.NoError(t, err)
	return fmt.Sprintf("*%s, commit %s, %s, software graphics, %d cores, load %s.*\n",
		time.Now().UTC().Format("2006-01-02 15:04 UTC"), strings.TrimSpace(string(commit)),
		strings.Join(strings.Fields(string(version))[:2], " "), runtime.NumCPU(), strings.Fields(string(load))[0])
}

// tool is the path of something of the packages that make audit installs.
func tool(t *testing.T, name string) string {
	t.Helper()
	full := filepath.Join(*auditDir, "node_modules", filepath.FromSlash(name))
	_, err := os.Stat(full)
	require.NoError(t, err, "make audit installs it")
	return full
}

// servedSite is the built site as a host of static files sends it: compressed files in
// place of the others, and the headers that headers.txt asks for.
func servedSite(t *testing.T) http.Handler {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(*auditSite, "headers.txt"))
	require.NoError(t, err, "make site builds it")
	always := http.Header{}
	for line := range strings.Lines(string(text)) {
		if name, value, ok := strings.Cut(strings.TrimSpace(line), ": "); ok && !strings.Contains(name, " ") && name != "Cache-Control" {
			always.Set(name, value)
		}
	}
	require.NotEmpty(t, always.Get("Content-Security-Policy"))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		name := strings.TrimPrefix(r.URL.Path, "/")
		if name == "" {
			name = "index.html"
		}
		file := filepath.Join(*auditSite, filepath.FromSlash(name))
		body, err := os.ReadFile(file)
		if err != nil {
			http.NotFound(w, r)
			return
		}
		h := w.Header()
		for name, values := range always {
			h[name] = values
		}
		h.Set("Content-Type", mime.TypeByExtension(filepath.Ext(name)))
		h.Set("Cache-Control", "no-cache")
		if strings.HasPrefix(name, "a-") {
			h.Set("Cache-Control", "public, max-age=31536000, immutable")
		}
		if small, err := os.ReadFile(file + ".br"); err == nil && strings.Contains(r.Header.Get("Accept-Encoding"), "br") {
			h.Set("Content-Encoding", "br")
			body = small
		}
		h.Set("Content-Length", fmt.Sprint(len(body)))
		w.Write(body) // a reader that went away is not our fault
	})
}

// dark has the tab shown in dark colours, or in light ones.
func (b *tab) dark(on bool) {
	b.t.Helper()
	scheme := "light"
	if on {
		scheme = "dark"
	}
	_, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}},
	})
	require.NoError(b.t, err)
}

// unfold opens everything that is folded in the section.
func (b *tab) unfold() {
	b.t.Helper()
	eval[any](b, `document.querySelectorAll("#section details").forEach((d) => { d.open = true; })`)
}

// listened waits until the page says what the design of now sounds like.
func (b *tab) listened() {
	b.t.Helper()
	b.wait(`document.documentElement.dataset.heard === document.querySelector("#revision").innerText`)
}

// eachState brings a page of its own into every state beside the plain sections.
func eachState(t *testing.T, look func(state string, b *tab)) {
	t.Helper()
	for _, state := range states {
		t.Run(state.name, func(t *testing.T) {
			b, s := openPage(t)
			state.bring(t, b, s)
			look(state.name, b)
		})
	}
	for _, state := range asleep {
		t.Run(state.name, func(t *testing.T) {
			s := newServer(t, newBroken(builtSite(t).Handler(), state.missing))
			b := newTab(t)
			b.allow("404")
			b.open(s.URL + "/")
			b.wait(fmt.Sprintf("document.querySelector(%q)", state.shows))
			look(state.name, b)
		})
	}
}

// states are what the page is like beside its plain sections, and how it comes there.
var states = []struct {
	name  string
	bring func(t *testing.T, b *tab, s *server)
}{
	{"a refused value", func(_ *testing.T, b *tab, _ *server) {
		b.set(widthPath, "banana")
		b.wait(`document.querySelector('[aria-invalid="true"]')`)
	}},
	{"the file menu without another job", func(_ *testing.T, b *tab, _ *server) { b.click("#menu summary") }},
	{"the file menu with jobs", func(t *testing.T, b *tab, _ *server) {
		b.set(widthPath, "1.6 m")
		_, wide := edited(t, widthPath, "1.6 m")
		b.shows(wide.Revision)
		b.menu("new")
		b.says("A fresh design is open")
		b.set(heightPath, "1 m")
		b.wait(`Object.keys(localStorage).filter((key) => key.startsWith("blockfield.job.")).length === 2`)
		b.click("#menu summary")
		b.wait(`document.querySelector("#job-list [data-job]")`)
	}},
	{"the gallery", func(_ *testing.T, b *tab, _ *server) { b.click("#examples summary") }},
	{"views and lights", func(_ *testing.T, b *tab, _ *server) {
		b.click(".looks summary")
		eval[any](b, `document.querySelector(".looks .more").open = true`)
	}},
	{"a field that is found", func(_ *testing.T, b *tab, _ *server) {
		b.read(page.Maker)
		b.click("#find summary")
		b.wait(`document.activeElement.id === "find-text"`)
		b.do(chromedp.KeyEvent("width"))
		b.wait(`document.querySelector("#found a")`)
	}},
	{"no field of that name", func(_ *testing.T, b *tab, _ *server) {
		b.read(page.Maker)
		b.click("#find summary")
		b.wait(`document.activeElement.id === "find-text"`)
		b.do(chromedp.KeyEvent("wid"))
		b.wait(`document.querySelector("#found a")`)
		b.do(chromedp.KeyEvent("zzz"))
		b.wait(`!document.querySelector("#found a")`)
	}},
	{"the price book", func(_ *testing.T, b *tab, _ *server) {
		b.read(page.Maker)
		b.section(page.Money)
		b.click(`[data-act="book-open"]`)
		b.wait(`document.getElementsByName("book.rates.shop").length === 1`)
		b.unfold()
	}},
	{"looks side by side, one of them agreed", func(_ *testing.T, b *tab, _ *server) {
		b.read(page.Maker)
		b.section(page.Money)
		b.click(`#looks-more summary`)
		b.click(`[data-act="keep-look"]`)
		b.wait(`document.querySelectorAll(".look-cards li").length === 1`)
		b.section(page.Look)
		b.choose("walls[0].groups[0].wood", "oak")
		b.section(page.Money)
		b.click(`[data-act="book-open"]`)
		b.wait(`document.querySelector('[data-act="confirm"][data-path="book."]')`)
		b.click(`[data-act="confirm"][data-path="book."]`)
		b.wait(`document.querySelector('[data-act="make-offer"]')`)
		b.click(`[data-act="make-offer"]`)
		b.wait(`document.querySelector('[data-act="lock"]')`)
		b.unfold()
		b.click(`[data-act="lock"]`)
		b.wait(`document.querySelector('[data-act="unlock"]')`)
		b.unfold()
	}},
	{"an example beside a job", func(t *testing.T, b *tab, _ *server) {
		b.set(widthPath, "1.6 m")
		_, wide := edited(t, widthPath, "1.6 m")
		b.shows(wide.Revision)
		b.click("#examples summary")
		b.click(`#examples [data-address="designs/s5.json"]`)
		b.says("You are looking at an example")
	}},
	{"the screen for the bench", func(_ *testing.T, b *tab, _ *server) {
		b.read(page.Builder)
		b.section(page.Bench)
		b.click(`a[href="#rows"]`)
		b.wait(`document.querySelector("#rows-row b")`)
	}},
	{"all papers", func(_ *testing.T, b *tab, _ *server) {
		b.read(page.Maker)
		b.section(page.Papers)
		eval[any](b, `(window.print = () => { window.complete = true; }, document.querySelector('[data-do="print"]').click(), 0)`)
		b.wait("window.complete")
	}},
	{"without a network", func(t *testing.T, b *tab, _ *server) {
		s := newServer(t, builtSite(t).Handler())
		b.open(s.URL + "/")
		b.alive()
		b.wait(`(window.kept ??= navigator.serviceWorker.ready.then((r) => { window.active = r.active; }), window.active?.state === "activated")`)
		s.stop()
		b.allow("ERR_CONNECTION_REFUSED")
		b.reload()
	}},
	{"after a breakdown", func(_ *testing.T, b *tab, _ *server) {
		b.inWorker(dies)
		b.set(widthPath, "1.6 m")
		b.says("started again")
	}},
}

// asleep are states in which a file of the page is missing, or not there yet.
var asleep = []struct{ name, missing, shows string }{
	{"without an engine", "engine-worker.js", "#status:not([hidden])"},
	{"without scripts", "main.js", "#late:not([hidden]) p:not([hidden])"},
}

// eachSection goes through every section of a reading.
func (b *tab) eachSection(reading string, look func(section string)) {
	b.t.Helper()
	b.read(reading)
	for _, section := range b.sections() {
		b.section(section)
		b.listened()
		look(section)
	}
}

// median is the middle of several figures.
func median(all []float64) float64 {
	sorted := slices.Sorted(slices.Values(all))
	return sorted[len(sorted)/2]
}

// table writes rows as a table; the first is the heading.
func table(rows [][]string) string {
	var b strings.Builder
	for i, row := range rows {
		b.WriteString("| " + strings.Join(row, " | ") + " |\n")
		if i == 0 {
			b.WriteString(strings.Repeat("|---", len(row)) + "|\n")
		}
	}
	return b.String()
}
