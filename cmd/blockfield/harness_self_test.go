package main_test

import (
	"net/http"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A test of the tests: each kind of fault that a tab must fail on is seen, in
// the page, in a worker and in a sandboxed frame.
func TestHarnessSeesFaults(t *testing.T) {
	const worker = `console.error("from a worker"); postMessage("up")`
	cases := []struct{ name, body, script, want string }{
		{"console", "", `console.error("loud", 42)`, `console: "loud" 42`},
		{"exception", "", `setTimeout(() => { throw new Error("thrown") })`, "Error: thrown"},
		{"rejection", "", `Promise.reject(new Error("rejected"))`, "Error: rejected"},
		{"missing file", `<img src="missing.png" alt="">`, "", "404"},
		{"style attribute", `<p style="color:red">x</p>`, "", "securitypolicyviolation: style-src-attr"},
		{"inline script", `<script>document.title = "ran"</script>`, "", "securitypolicyviolation: script-src-elem"},
		{"foreign request", `<img src="https://example.invalid/x.png" alt="">`, "", "securitypolicyviolation: img-src"},
		{"worker", "", `new Worker("worker.js")`, `"from a worker"`},
		{"frame", `<iframe sandbox="allow-scripts" src="frame.html"></iframe>`, "", `"from a frame"`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			files := map[string]string{
				"/":           `<!doctype html><link rel="icon" href="data:,"><script src="page.js"></script>` + c.body,
				"/page.js":    c.script,
				"/worker.js":  worker,
				"/frame.html": `<script src="frame.js"></script>`,
				"/frame.js":   `console.error("from a frame")`,
			}
			s := newServer(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
				w.Header().Set("Content-Security-Policy",
					"default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; worker-src 'self'; frame-src 'self'")
				text, ok := files[r.URL.Path]
				if !ok {
					http.NotFound(w, r)
					return
				}
				types := map[bool]string{true: "text/javascript", false: "text/html"}
				w.Header().Set("Content-Type", types[len(r.URL.Path) > 3 && r.URL.Path[len(r.URL.Path)-3:] == ".js"])
				w.Write([]byte(text))
			}))
			b := newTab(t)
			b.allow("") // all of them are meant
			b.do(chromedp.Navigate(s.URL + "/"))
			require.Eventually(t, func() bool {
				b.mu.Lock()
				defer b.mu.Unlock()
				return containsAnyOf(b.faults, c.want)
			}, waitTimeout, waitStep, "%q is not among what was seen", c.want)
		})
	}
}

// A page without a fault has none.
func TestHarnessLetsGoodPagesBy(t *testing.T) {
	s := newServer(t, http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Write([]byte(`<!doctype html><link rel="icon" href="data:,"><script>console.log("calm")</script><p>x</p>`))
	}))
	b := newTab(t)
	b.open(s.URL + "/")
	assert.Equal(t, "x", b.text("p"))
	assert.Empty(t, b.found())
}

func containsAnyOf(texts []string, part string) bool {
	for _, text := range texts {
		if containsAny(text, []string{part}) {
			return true
		}
	}
	return false
}
