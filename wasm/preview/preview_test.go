//go:build !js

package main_test

import (
	"context"
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"image"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"blockfield/engine/scene"
)

// Size of the trial's stage, in pixels.
const stageWidth, stageHeight = 480, 320

// trial is a running page with the preview in it.
type trial struct{ ctx context.Context }

// newTrial builds the module, serves it with the page of testdata under the
// site's strict policy and opens that in a headless browser with software
// graphics.
func newTrial(t testing.TB, scenes map[string]scene.Scene, flags ...chromedp.ExecAllocatorOption) trial {
	t.Helper()
	files := map[string][]byte{
		"/preview.wasm":     buildModule(t),
		"/wasm_exec.js":     readFile(t, filepath.Join(goRoot(t), "lib", "wasm", "wasm_exec.js")),
		"/preview-frame.js": readFile(t, "../../site/preview-frame.js"),
		"/preview.js":       readFile(t, "../../site/preview.js"),
		"/trial.js":         readFile(t, "testdata/trial.js"),
		"/stranger.js":      readFile(t, "testdata/stranger.js"),
		"/stranger":         []byte(`<!doctype html><title>stranger</title><script src="stranger.js"></script>`),
		"/trial.css": fmt.Appendf(nil, "body{margin:0} #stage,iframe{width:%dpx;height:%dpx;border:0;display:block} .small{width:200px;height:150px} .large{width:800px;height:600px} .none{display:none}",
			stageWidth, stageHeight),
		"/": []byte(`<!doctype html><html lang="en"><head><meta charset="utf-8"><title>trial</title>` +
			`<link rel="icon" href="data:,"><link rel="stylesheet" href="trial.css">` +
			`<script type="module" src="trial.js"></script></head><body><div id="stage"></div></body></html>`),
	}
	for name, s := range scenes {
		files["/"+name] = s.Encode()
	}
	server := httptest.NewServer(serve(files))
	t.Cleanup(server.Close)
	tr := trial{openBrowser(t, flags...)}
	_, err := chromedp.Run(tr.ctx, chromedp.Navigate(server.URL+"/"))
	require.NoError(t, err)
	return tr
}

func serve(files map[string][]byte) http.Handler {
	hash := func(name string) string {
		sum := sha256.Sum256(files[name])
		return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	}
	policy := "default-src 'none'; script-src 'self' 'wasm-unsafe-eval' " + hash("/wasm_exec.js") + " " + hash("/preview-frame.js") +
		"; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; worker-src 'self'; frame-src 'self'" +
		"; base-uri 'none'; form-action 'none'; frame-ancestors 'self'" +
		"; require-trusted-types-for 'script'; trusted-types blockfield"
	types := map[string]string{".js": "text/javascript", ".css": "text/css", ".wasm": "application/wasm", "": "text/html"}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		body, ok := files[r.URL.Path]
		if !ok {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Content-Security-Policy", policy)
		w.Header().Set("Content-Type", types[filepath.Ext(r.URL.Path)])
		w.Write(body)
	})
}

func openBrowser(t testing.TB, flags ...chromedp.ExecAllocatorOption) context.Context {
	t.Helper()
	const path = "/usr/bin/chromium"
	if _, err := os.Stat(path); err != nil {
		t.Fatalf("%v: install it with: apt-get install chromium", err)
	}
	alloc, cancel := chromedp.NewExecAllocator(t.Context(), append([]chromedp.ExecAllocatorOption{
		chromedp.ExecPath(path), chromedp.NoFirstRun, chromedp.Headless, chromedp.NoSandbox,
		chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true),
		chromedp.Flag("use-angle", "swiftshader"),
		chromedp.Flag("enable-unsafe-swiftshader", true),
		chromedp.Flag("enable-features", "IsolateSandboxedIframes"),
	}, flags...)...)
	t.Cleanup(cancel)
	ctx, cancel := chromedp.NewContext(alloc)
	t.Cleanup(cancel)
	ctx, cancel = context.WithTimeout(ctx, 4*time.Minute)
	t.Cleanup(cancel)
	return ctx
}

// value runs a line of script in the page and waits for its promise.
func value[V any](t testing.TB, tr trial, script string) V {
	t.Helper()
	v, err := chromedp.Run(tr.ctx, chromedp.Evaluate[V](script, chromedp.EvalAwaitPromise))
	require.NoError(t, err, script)
	return v
}

// pixels is the picture that stands in the preview.
func (tr trial) pixels(t *testing.T) *image.RGBA {
	t.Helper()
	return tr.image(t, "trial.pixels()")
}

// shot is a picture to save.
func (tr trial) shot(t *testing.T, width, height int) *image.RGBA {
	t.Helper()
	return tr.image(t, fmt.Sprintf("trial.shot(%d, %d)", width, height))
}

func (tr trial) image(t *testing.T, from string) *image.RGBA {
	t.Helper()
	got := value[struct {
		Width, Height int
		Pixels        []byte
	}](t, tr, from)
	require.Len(t, got.Pixels, 4*got.Width*got.Height)
	return &image.RGBA{Pix: got.Pixels, Stride: 4 * got.Width, Rect: image.Rect(0, 0, got.Width, got.Height)}
}

// module is the built program; linking it takes seconds, so it is done once.
var module = sync.OnceValues(func() ([]byte, error) {
	dir, err := os.MkdirTemp("", "preview")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "preview.wasm")
	cmd := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-gcflags=all=-l", "-o", out, ".")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if text, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w: %s", err, text)
	}
	return os.ReadFile(out)
})

func buildModule(t testing.TB) []byte {
	t.Helper()
	readSources(t)
	b, err := module()
	require.NoError(t, err)
	return b
}

// readSources reads what the module is built from: the test tool reuses an old
// result unless a file changed that the test itself has read.
func readSources(t testing.TB) {
	t.Helper()
	for _, pattern := range []string{"*.go", "*.kage", "pace/*.go", "../../engine/scene/*.go", "../../go.sum"} {
		names, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, names, pattern)
		for _, name := range names {
			readFile(t, name)
		}
	}
}

func goRoot(t testing.TB) string {
	t.Helper()
	out, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	return strings.TrimSpace(string(out))
}

func readFile(t testing.TB, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(name)
	require.NoError(t, err)
	return b
}
