package main_test

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"github.com/chromedp/cdproto/inspector"
	"github.com/chromedp/cdproto/log"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"blockfield/cmd/blockfield/web"
)

// How long a tab may take for a whole test, and for one thing to happen. They
// only bound a failure: software graphics on a busy machine is slow.
const (
	tabTimeout  = 3 * time.Minute
	waitTimeout = 60 * time.Second
	waitStep    = 20 * time.Millisecond
)

func TestMain(m *testing.M) {
	flag.Parse()
	code := m.Run()
	closeChromium()
	os.Exit(code)
}

// chromium is the one browser of all tests, started by the first of them.
var chromium struct {
	once  sync.Once
	ctx   context.Context
	err   error
	close []func()
}

func startChromium() {
	path, err := exec.LookPath("chromium")
	if err != nil {
		chromium.err = fmt.Errorf("the browser tests need Chromium (apt-get install chromium): %w", err)
		return
	}
	profile, err := os.MkdirTemp("", "blockfield-chromium-")
	if err != nil {
		chromium.err = err
		return
	}
	ctx, end, err := launch(path, profile)
	chromium.close = []func(){end, func() { os.RemoveAll(profile) }}
	chromium.ctx, chromium.err = ctx, err
}

// launch starts a browser with the profile of a folder, until it is ended.
func launch(path, profile string) (ctx context.Context, end func(), err error) {
	alloc, stop := chromedp.NewExecAllocator(context.Background(),
		chromedp.ExecPath(path), chromedp.Headless, chromedp.NoSandbox, chromedp.NoFirstRun,
		chromedp.UserDataDir(profile),
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true),
		// A tab that is not in front would be slowed down.
		chromedp.Flag("disable-renderer-backgrounding", true),
		chromedp.Flag("disable-background-timer-throttling", true),
		chromedp.Flag("disable-backgrounding-occluded-windows", true),
		chromedp.Flag("hide-scrollbars", true),
		// The graphics of a machine without a graphics card.
		chromedp.Flag("use-angle", "swiftshader"),
		chromedp.Flag("enable-unsafe-swiftshader", true),
		// The tabs of all tests run in one process, so that one need not compile again
		// what another has.
		chromedp.Flag("process-per-site", true),
		// What browsers of people do with a sandboxed frame: a process of its own.
		chromedp.Flag("enable-features", "IsolateSandboxedIframes"),
	)
	ctx, cancel := chromedp.NewContext(alloc)
	return ctx, func() { cancel(); stop() }, chromedp.Do(ctx)
}

func closeChromium() {
	for _, f := range chromium.close {
		f()
	}
}

// tab is a page in the browser that a test drives. When the test ends, whatever
// went to the console as an error, was thrown without being caught or broke the
// content policy fails it.
type tab struct {
	t       testing.TB
	ctx     context.Context
	whole   context.Context // the same, for as long as the tab is open
	browser context.Context

	mu       sync.Mutex
	faults   []string
	allowed  []string
	previews []context.Context // of the preview, those alive and gone, in order
	crashes  int               // of its processes
	workers  []context.Context // of the edits, the same
	hearers  []context.Context // of the sound
}

// watch reports violations of the policy where they are seen, on the console,
// and notes what the preview drew last with all samples.
const watch = `addEventListener("securitypolicyviolation", (e) => console.error(
	"securitypolicyviolation: " + e.effectiveDirective + " " + e.blockedURI + " " + e.sample));
window.lastDrawn = {scene: 0, width: 0, height: 0};
addEventListener("message", (e) => { if (e.data?.type === "drawn") window.lastDrawn = e.data; });`

// newTab opens an empty tab. Whatever is kept, is kept by the site, and each test
// has a server of its own: a site that nothing is kept of yet.
func newTab(t testing.TB) *tab {
	t.Helper()
	return openTab(t)
}

// newProfile opens an empty tab that shares nothing with any other.
func newProfile(t testing.TB) *tab {
	t.Helper()
	return openTab(t, chromedp.WithNewBrowserContext())
}

func openTab(t testing.TB, how ...chromedp.ContextOption) *tab {
	t.Helper()
	chromium.once.Do(startChromium)
	require.NoError(t, chromium.err)
	return openTabIn(t, chromium.ctx, how...)
}

func openTabIn(t testing.TB, browser context.Context, how ...chromedp.ContextOption) *tab {
	t.Helper()
	b := &tab{t: t, browser: browser}
	life, end := context.WithCancel(browser)
	ctx, cancel := chromedp.NewContext(life, append(how, chromedp.WithNewWindow(true), chromedp.WithListener(func(ev any) {
		if _, crashed := ev.(*inspector.EventTargetCrashed); crashed {
			b.fault("the process of the page crashed")
			end() // nobody is left to answer
		}
		b.listen(ev)
	}))...)
	t.Cleanup(cancel)
	require.NoError(t, chromedp.Do(ctx))
	b.whole = ctx
	b.ctx, cancel = context.WithTimeout(ctx, tabTimeout)
	t.Cleanup(cancel)
	t.Cleanup(b.verdict)
	_, err := chromedp.Call(b.ctx, cdpage.AddScriptToEvaluateOnNewDocument, cdpage.AddScriptToEvaluateOnNewDocumentParams{Source: watch})
	require.NoError(t, err)
	b.size(1440, 900)
	return b
}

// listen collects what goes wrong in the tab, and has workers and frames of
// other processes watched too.
func (b *tab) listen(ev any) {
	switch ev := ev.(type) {
	case *log.EventEntryAdded:
		if ev.Entry.Level == log.EntryLevelError {
			b.fault(fmt.Sprintf("%s: %s %s", ev.Entry.Source, ev.Entry.Text, ev.Entry.URL))
		}
	case *runtime.EventConsoleAPICalled:
		if ev.Type == runtime.ConsoleAPICalledTypeError {
			b.fault("console: " + argsText(ev.Args))
		}
	case *runtime.EventExceptionThrown:
		b.fault("exception: " + exceptionText(ev.ExceptionDetails))
	case *inspector.EventTargetCrashed:
		b.mu.Lock()
		defer b.mu.Unlock()
		b.crashes++
	case *target.EventAttachedToTarget:
		if kind := ev.TargetInfo.Type; kind == "iframe" || kind == "worker" {
			go b.join(ev.TargetInfo.TargetID, kind, ev.TargetInfo.URL)
		}
	}
}

// join listens to a worker or to a frame in a process of its own, until the
// test ends. One that has already gone away has nothing more to say.
func (b *tab) join(id target.ID, kind, url string) {
	ctx, cancel := chromedp.NewContext(b.browser,
		chromedp.WithTargetID(id), chromedp.WithDetachOnCancel(), chromedp.WithListener(b.listen))
	context.AfterFunc(b.t.Context(), cancel)
	if err := chromedp.Do(ctx); err != nil {
		return
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	if kind == "iframe" {
		b.previews = append(b.previews, ctx)
	}
	switch path.Base(url) {
	case "hear-worker.js":
		b.hearers = append(b.hearers, ctx)
	case "engine-worker.js":
		b.workers = append(b.workers, ctx)
	}
}

// lastWorker is the worker of the edits that was started last, when nothing that
// was heard is on its way to it any more.
func (b *tab) lastWorker() context.Context {
	b.t.Helper()
	b.wait(`document.documentElement.dataset.heard === document.querySelector("#revision").innerText`)
	b.mu.Lock()
	defer b.mu.Unlock()
	require.NotEmpty(b.t, b.workers)
	return b.workers[len(b.workers)-1]
}

// lastFrame is the frame of the preview that was started last.
func (b *tab) lastFrame() context.Context {
	b.t.Helper()
	var last context.Context
	require.Eventually(b.t, func() bool {
		b.mu.Lock()
		defer b.mu.Unlock()
		if len(b.previews) > 0 {
			last = b.previews[len(b.previews)-1]
		}
		return last != nil
	}, waitTimeout, waitStep, "no frame has a process of its own")
	return last
}

func argsText(args []*runtime.RemoteObject) string {
	var parts []string
	for _, a := range args {
		if len(a.Value) > 0 {
			parts = append(parts, string(a.Value))
			continue
		}
		parts = append(parts, a.Description)
	}
	return strings.Join(parts, " ")
}

func exceptionText(d *runtime.ExceptionDetails) string {
	if d.Exception != nil {
		return d.Text + " " + d.Exception.Description
	}
	return d.Text
}

// patient lets the tab take as long as it needs, for what is no test of one thing.
func (b *tab) patient() { b.ctx = b.whole }

func (b *tab) fault(text string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.faults = append(b.faults, text)
}

// allow lets by faults that hold text: those that a test causes on purpose.
func (b *tab) allow(text string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.allowed = append(b.allowed, text)
}

// found are the faults so far that were not allowed.
func (b *tab) found() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	var bad []string
	for _, f := range b.faults {
		if !containsAny(f, b.allowed) {
			bad = append(bad, f)
		}
	}
	return bad
}

func containsAny(text string, parts []string) bool {
	for _, p := range parts {
		if strings.Contains(text, p) {
			return true
		}
	}
	return false
}

func (b *tab) verdict() {
	for _, f := range b.found() {
		b.t.Errorf("in the browser: %s", f)
	}
}

// do runs steps and fails the test when one of them fails.
func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.t.Fatalf("%v\nin the browser: %s", err, strings.Join(b.found(), "\n"))
	}
}

func (b *tab) open(url string) {
	b.t.Helper()
	b.do(chromedp.Navigate(url))
}

// size makes the window so large, in CSS pixels.
func (b *tab) size(width, height int64) {
	b.t.Helper()
	b.do(chromedp.EmulateViewport(width, height))
}

// dead is how long a page may take over a line of script before it is one that hangs.
const dead = 5 * time.Minute

// eval runs a line of script in the page and waits for its promise.
func eval[V any](b *tab, script string) V {
	b.t.Helper()
	ctx, stop := context.WithTimeout(b.ctx, dead)
	defer stop()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[V](script, chromedp.EvalAwaitPromise))
	if err != nil {
		b.t.Fatalf("%s: %v\nin the browser: %s", script, err, strings.Join(b.found(), "\n"))
	}
	return v
}

// wait waits until a line of script is true.
func (b *tab) wait(script string) {
	b.t.Helper()
	deadline := time.Now().Add(waitTimeout)
	for time.Now().Before(deadline) {
		ok, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool]("Boolean("+script+")"))
		if ok {
			return
		}
		if errors.Is(err, context.DeadlineExceeded) || errors.Is(err, context.Canceled) {
			break
		}
		time.Sleep(waitStep)
	}
	b.t.Fatalf("waited for %s in vain\nthe page says: %s\nin the browser: %s", script, b.saying(), strings.Join(b.found(), "\n"))
}

// saying is what the page says above itself and beside its fields, as far as it still answers.
func (b *tab) saying() string {
	ctx, cancel := context.WithTimeout(b.whole, time.Second)
	defer cancel()
	said, err := chromedp.Run(ctx, chromedp.Evaluate[string](`[...document.querySelectorAll("#status, #working, .fault")]
		.filter((one) => !one.hidden).map((one) => one.innerText).join("\n")`))
	if err != nil {
		return "(" + err.Error() + ")"
	}
	return said
}

// text is the text that a person reads in the first element that matches.
func (b *tab) text(selector string) string {
	b.t.Helper()
	return eval[string](b, fmt.Sprintf("document.querySelector(%q).innerText", selector))
}

// put types a value into a text field, as a person would: go there, mark all,
// type, leave.
func (b *tab) put(selector, value string) {
	b.t.Helper()
	b.focus(selector)
	eval[any](b, fmt.Sprintf("document.querySelector(%q).select()", selector))
	if value == "" {
		value = kb.Backspace
	}
	b.do(chromedp.KeyEvent(value), chromedp.KeyEvent(kb.Tab))
}

func (b *tab) focus(selector string) {
	b.t.Helper()
	eval[any](b, fmt.Sprintf("document.querySelector(%q).focus()", selector))
}

// click brings an element into sight and clicks its middle with the mouse. What
// lies above it would take the click, and fails the test.
func (b *tab) click(selector string) {
	b.t.Helper()
	at := eval[[]float64](b, fmt.Sprintf(`(() => {
		const e = document.querySelector(%q);
		e.scrollIntoView({block: "center", behavior: "instant"});
		const r = e.getBoundingClientRect(), x = r.x + r.width / 2, y = r.y + r.height / 2;
		const hit = document.elementFromPoint(x, y);
		if (!e.contains(hit)) throw new Error("under another element: " + hit?.outerHTML.slice(0, 80));
		return [x, y];
	})()`, selector))
	b.do(chromedp.MouseClickXY(at[0], at[1]))
}

// server is a site that can be stopped, so that what comes after finds nobody.
type server struct {
	*httptest.Server
	end   context.CancelFunc // of the answers that are held back
	mu    sync.Mutex
	asked []string // paths, in order
}

func newServer(t testing.TB, h http.Handler) *server {
	t.Helper()
	s := &server{}
	s.Server = httptest.NewUnstartedServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		s.mu.Lock()
		s.asked = append(s.asked, r.URL.Path)
		s.mu.Unlock()
		h.ServeHTTP(w, r)
	}))
	s.Listener.Close()
	s.Listener = listenAnew(t)
	var open context.Context
	open, s.end = context.WithCancel(context.Background())
	s.Config.BaseContext = func(net.Listener) context.Context { return open }
	s.Start()
	t.Cleanup(s.stop)
	return s
}

// ports are those that a test of this run has listened at. The browser keeps what it
// keeps by port, and the system may give one a second time.
var ports sync.Map

// listenAnew listens at a port that no test has had.
func listenAnew(t testing.TB) net.Listener {
	t.Helper()
	for {
		l, err := net.Listen("tcp", "127.0.0.1:0")
		require.NoError(t, err)
		if _, had := ports.LoadOrStore(l.Addr().String(), true); !had {
			return l
		}
		l.Close()
	}
}

// paths are those that were asked for, in order.
func (s *server) paths() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return slices.Clone(s.asked)
}

// stop ends the server with all its connections.
func (s *server) stop() {
	s.end()
	s.CloseClientConnections()
	s.Close()
}

// builtSite is the site as it is served, built once for all tests, without
// compression.
func builtSite(t testing.TB) *web.Site {
	t.Helper()
	readSources(t)
	s, err := siteOnce()
	require.NoError(t, err)
	return s
}

var siteOnce = sync.OnceValues(func() (*web.Site, error) {
	in, err := carriedOnce()
	if err != nil {
		return nil, err
	}
	return web.Build(in, web.Options{})
})

// ownSite is the site of a workshop that has set something.
func ownSite(t testing.TB, settings web.Settings) *web.Site {
	t.Helper()
	readSources(t)
	plain, err := carriedOnce()
	require.NoError(t, err)
	in, err := web.Carried(plain.Modules, settings)
	require.NoError(t, err)
	s, err := web.Build(in, web.Options{})
	require.NoError(t, err)
	return s
}

// carriedOnce has the modules in memory.
var carriedOnce = sync.OnceValues(func() (web.Ingredients, error) {
	dir, err := os.MkdirTemp("", "blockfield-modules-")
	if err != nil {
		return web.Ingredients{}, err
	}
	defer os.RemoveAll(dir)
	if err := buildModules(dir); err != nil {
		return web.Ingredients{}, err
	}
	modules := fstest.MapFS{}
	for _, name := range []string{"engine.wasm", "preview.wasm", "wasm_exec.js"} {
		body, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			return web.Ingredients{}, err
		}
		modules[name] = &fstest.MapFile{Data: body}
	}
	return web.Carried(modules, web.Settings{WriteTo: "workshop@example.org"})
})

// buildModules builds what `make modules` builds, the same way.
func buildModules(dir string) error {
	for _, name := range []string{"engine", "preview"} {
		flags, err := moduleFlags(name)
		if err != nil {
			return err
		}
		args := append(flags, "-o", filepath.Join(dir, name+".wasm"), "blockfield/wasm/"+name)
		cmd := exec.Command("go", append([]string{"build"}, args...)...)
		cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
		if out, err := cmd.CombinedOutput(); err != nil {
			return fmt.Errorf("%s: %w\n%s", cmd, err, out)
		}
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return err
	}
	loader, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, "wasm_exec.js"), loader, 0o644)
}

// moduleFlags are how `make modules` builds a module, whose Makefile says which packages
// of the engine are inlined.
func moduleFlags(name string) ([]string, error) {
	flags := []string{"-trimpath", "-ldflags=-s -w", "-gcflags=all=-l"}
	if name == "preview" {
		return flags, nil
	}
	text, err := os.ReadFile("../../Makefile")
	if err != nil {
		return nil, err
	}
	kernels := regexp.MustCompile(`(?m)^KERNELS := (.+)$`).FindSubmatch(text)
	if kernels == nil {
		return nil, errors.New("the Makefile does not say which packages are KERNELS")
	}
	for _, name := range strings.Fields(string(kernels[1])) {
		flags = append(flags, "-gcflags="+name+"=")
	}
	return flags, nil
}

// readSources reads what only the modules are built from: the test tool reuses
// an old result unless something changed that the test itself has read.
func readSources(t testing.TB) {
	t.Helper()
	for _, pattern := range []string{"../../wasm/*/*.go", "../../wasm/*/*/*.go", "../../wasm/preview/*.kage", "../../go.sum"} {
		names, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, names, pattern)
		for _, name := range names {
			_, err := os.ReadFile(name)
			require.NoError(t, err)
		}
	}
}
