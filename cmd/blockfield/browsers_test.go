package main_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/page"
)

var otherBrowsers = flag.Bool("browsers", false, "have TestOtherBrowsers open the page in Firefox and in WebKit")

// driver is another browser with the page in it.
type driver interface {
	do(t *testing.T, command string, body any) json.RawMessage
}

// marionette drives Firefox by its own protocol: messages in JSON, each after its length
// and a colon (firefox-source-docs, "Marionette Protocol", from memory).
type marionette struct {
	conn net.Conn
	in   *bufio.Reader
	last int
}

func startFirefox(t *testing.T) driver {
	t.Helper()
	profile := t.TempDir()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	port := l.Addr().(*net.TCPAddr).Port
	l.Close()
	prefs := fmt.Sprintf("user_pref(%q, %d);\n", "marionette.port", port)
	require.NoError(t, os.WriteFile(filepath.Join(profile, "user.js"), []byte(prefs), 0o600))
	run(t, "firefox-esr", "--headless", "--marionette", "--profile", profile, "--no-remote")
	var d marionette
	require.Eventually(t, func() bool {
		conn, err := net.Dial("tcp", fmt.Sprintf("127.0.0.1:%d", port))
		d.conn = conn
		return err == nil
	}, time.Minute, 200*time.Millisecond)
	t.Cleanup(func() { d.conn.Close() })
	d.in = bufio.NewReader(d.conn)
	d.read(t) // says who it is
	d.do(t, "NewSession", map[string]any{})
	return &d
}

func (d *marionette) read(t *testing.T) []byte {
	t.Helper()
	require.NoError(t, d.conn.SetReadDeadline(time.Now().Add(time.Minute)))
	length, err := d.in.ReadString(':')
	require.NoError(t, err)
	n, err := strconv.Atoi(strings.TrimSuffix(length, ":"))
	require.NoError(t, err)
	message := make([]byte, n)
	_, err = io.ReadFull(d.in, message)
	require.NoError(t, err)
	return message
}

func (d *marionette) do(t *testing.T, command string, body any) json.RawMessage {
	t.Helper()
	d.last++
	message, err := json.Marshal([]any{0, d.last, "WebDriver:" + command, body})
	require.NoError(t, err)
	_, err = fmt.Fprintf(d.conn, "%d:%s", len(message), message)
	require.NoError(t, err)
	var answer []json.RawMessage
	require.NoError(t, json.Unmarshal(d.read(t), &answer))
	require.Equal(t, "null", string(answer[2]), "%s: %s", command, answer[2])
	var result struct{ Value json.RawMessage }
	_ = json.Unmarshal(answer[3], &result) // some commands answer with no such thing
	return result.Value
}

// webdriver drives WebKit as the WebDriver standard has it (W3C).
type webdriver struct{ session string }

func startWebKit(t *testing.T) driver {
	t.Helper()
	browsers, err := filepath.Glob("/usr/lib/*/webkit2gtk-4.*/MiniBrowser")
	require.NoError(t, err)
	require.NotEmpty(t, browsers, "no MiniBrowser: apt-get install webkit2gtk-driver")
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	port := l.Addr().(*net.TCPAddr).Port
	l.Close()
	run(t, "WebKitWebDriver", fmt.Sprintf("--port=%d", port))
	base := fmt.Sprintf("http://127.0.0.1:%d", port)
	require.Eventually(t, func() bool {
		res, err := http.Get(base + "/status")
		if err == nil {
			res.Body.Close()
		}
		return err == nil
	}, time.Minute, 200*time.Millisecond)
	options := map[string]any{"binary": browsers[0], "args": []string{"--automation"}}
	var answer struct{ SessionID string }
	value := post(t, base+"/session", map[string]any{"capabilities": map[string]any{"alwaysMatch": map[string]any{"webkitgtk:browserOptions": options}}})
	require.NoError(t, json.Unmarshal(value, &answer))
	d := webdriver{base + "/session/" + answer.SessionID}
	t.Cleanup(func() {
		req, err := http.NewRequest(http.MethodDelete, d.session, nil)
		require.NoError(t, err)
		if res, err := http.DefaultClient.Do(req); err == nil {
			res.Body.Close()
		}
	})
	return d
}

func post(t *testing.T, url string, body any) json.RawMessage {
	t.Helper()
	text, err := json.Marshal(body)
	require.NoError(t, err)
	res, err := http.Post(url, "application/json", bytes.NewReader(text))
	require.NoError(t, err)
	defer res.Body.Close()
	var answer struct{ Value json.RawMessage }
	require.NoError(t, json.NewDecoder(res.Body).Decode(&answer))
	require.Equal(t, http.StatusOK, res.StatusCode, "%s: %s", url, answer.Value)
	return answer.Value
}

func (d webdriver) do(t *testing.T, command string, body any) json.RawMessage {
	t.Helper()
	path := map[string]string{"Navigate": "/url", "ExecuteScript": "/execute/sync", "SetWindowRect": "/window/rect", "Refresh": "/refresh"}[command]
	return post(t, d.session+path, body)
}

// run starts a program and ends it with the test.
func run(t *testing.T, name string, args ...string) {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("no %s: apt-get install firefox-esr webkit2gtk-driver xvfb", name)
	}
	cmd := exec.Command(name, args...)
	require.NoError(t, cmd.Start())
	t.Cleanup(func() {
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
	})
}

// seen is the value of a line of script in the page of another browser.
func seen[V any](t *testing.T, d driver, script string) (v V) {
	t.Helper()
	value := d.do(t, "ExecuteScript", map[string]any{"script": "return " + script, "args": []any{}})
	require.NoError(t, json.Unmarshal(value, &v), "%s: %s", script, value)
	return v
}

func soon(t *testing.T, d driver, script string) {
	t.Helper()
	for end := time.Now().Add(2 * time.Minute); time.Now().Before(end); time.Sleep(150 * time.Millisecond) {
		if seen[bool](t, d, "Boolean("+script+")") {
			return
		}
	}
	t.Fatalf("waited for %s in vain", script)
}

// TestOtherBrowsers goes through the page in Firefox and in WebKit, as far as they run
// here: picture, every section of each reading on a desk and as narrow as the window goes,
// an edit, a step back, and what is there after the page was left.
//
//	DISPLAY=:7 go test ./cmd/blockfield -run TestOtherBrowsers -browsers
func TestOtherBrowsers(t *testing.T) {
	if !*otherBrowsers {
		t.Skip("only with -browsers")
	}
	s := newServer(t, builtSite(t).Handler())
	for name, start := range map[string]func(*testing.T) driver{"Firefox": startFirefox, "WebKit": startWebKit} {
		t.Run(name, func(t *testing.T) {
			d := start(t)
			d.do(t, "SetWindowRect", map[string]any{"width": 1300, "height": 900})
			d.do(t, "Navigate", map[string]any{"url": s.URL + "/"})
			const alive = `document.documentElement.classList.contains("alive")`
			soon(t, d, alive)
			soon(t, d, `document.querySelector(".preview-live")`)
			t.Log(seen[string](t, d, "navigator.userAgent"))
			const width = `document.querySelector('[name="walls[0].groups[0].width"]')`
			const put = `((e, value) => { e.value = value; e.dispatchEvent(new Event("input", {bubbles: true})); e.dispatchEvent(new Event("change", {bubbles: true})); return true; })`
			for _, reading := range readings {
				seen[bool](t, d, put+fmt.Sprintf(`(document.querySelector('[name="view.reading"]'), %q)`, reading))
				soon(t, d, fmt.Sprintf(`document.querySelector("main").dataset.reading === %q`, reading))
				for _, section := range seen[[]string](t, d, `[...document.querySelectorAll("#nav a")].map((a) => a.hash.slice(1))`) {
					seen[string](t, d, fmt.Sprintf(`(location.hash = %q)`, section))
					soon(t, d, fmt.Sprintf(`document.querySelector("#nav [aria-current]").hash === "#%s"`, section))
					for _, w := range []int{1300, 420} {
						d.do(t, "SetWindowRect", map[string]any{"width": w, "height": 900})
						soon(t, d, fmt.Sprintf(`Math.abs(outerWidth - %d) < 100 || innerWidth < %d`, w, w+100))
						assert.LessOrEqual(t, seen[int](t, d, `document.documentElement.scrollWidth - innerWidth`), 0, "%s, %s, %d px", reading, section, w)
					}
				}
			}
			d.do(t, "SetWindowRect", map[string]any{"width": 1300, "height": 900})
			seen[string](t, d, `(location.hash = "look")`)
			soon(t, d, width)
			before := seen[string](t, d, `document.querySelector("#revision").textContent`)
			seen[bool](t, d, put+"("+width+`, "900 mm")`)
			soon(t, d, fmt.Sprintf(`document.querySelector("#revision").textContent !== %q`, before))
			d.do(t, "Refresh", map[string]any{})
			soon(t, d, alive)
			soon(t, d, width+`?.value === "900 mm"`)
			seen[bool](t, d, put+"("+width+`, "12 km")`)
			soon(t, d, width+`.ariaInvalid === "true"`)
			assert.Equal(t, "12 km", seen[string](t, d, width+".value"), "what was typed stays")
			seen[bool](t, d, put+fmt.Sprintf(`(document.querySelector('[name="view.reading"]'), %q)`, page.Client))
			soon(t, d, `document.querySelector("main").dataset.reading === "client"`)
		})
	}
}
