package main_test

import (
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// BenchmarkIdleParts tells what a page costs in ten seconds in which nobody does
// anything, over all processes of the browser: an empty tab, a plain page whose
// one text field has the focus, the page while its preview is held back, the page
// with its picture drawn, and with the focus in a text field. A browser tidies up
// now and then, most of it in the half minute after a start, so it reports the middle
// one and the largest of several such spans.
func BenchmarkIdleParts(b *testing.B) {
	const span, spans = 10 * time.Second, 6
	idle := func(name string, open func(b *testing.B) *tab) {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				t := open(b)
				sums := idleSpans(b, span, spans)
				b.ReportMetric(sums[(spans-1)/2], "s/10s")
				b.ReportMetric(sums[spans-1], "s/10s-most")
				require.NoError(b, chromedp.Cancel(t.ctx))
			}
		})
	}
	input := newServer(b, http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html")
		_, _ = w.Write([]byte(`<!doctype html><title>x</title><link rel="icon" href="data:,"><input id="x">`))
	}))
	idle("empty", func(b *testing.B) *tab { t := newTab(b); t.open("about:blank"); return t })
	idle("one-input", func(b *testing.B) *tab { t := newTab(b); t.open(input.URL); t.focus("#x"); return t })
	idle("no-preview", func(b *testing.B) *tab {
		s := newServer(b, newGate(builtSite(b).Handler(), "preview.wasm"))
		t := newTab(b)
		t.open(s.URL + "/")
		t.alive()
		return t
	})
	idle("page", func(b *testing.B) *tab { t, _ := openPicture(b, window(1440, 900)); t.fine(); return t })
	idle("page-input", func(b *testing.B) *tab {
		t, _ := openPicture(b, window(1440, 900))
		t.fine()
		t.focus(control(widthPath))
		return t
	})
}

// idleSpans is the processor time (s) that the browser takes in each of so many spans, sorted.
func idleSpans(t testing.TB, span time.Duration, spans int) []float64 {
	t.Helper()
	var sums []float64
	for before := browserTime(t); len(sums) < spans; {
		time.Sleep(span)
		used := browserTime(t)
		sum, lines := 0.0, []string{}
		for kind, seconds := range used {
			if d := seconds - before[kind]; d > 0.0005 {
				sum += d
				lines = append(lines, fmt.Sprintf("%s %.3f", kind, d))
			}
		}
		t.Logf("%.3f s (%s)", sum, strings.Join(lines, ", "))
		sums, before = append(sums, sum), used
	}
	slices.Sort(sums)
	return sums
}

// browserTime is the processor time (s) of the browser's processes so far, by
// their kind.
func browserTime(t testing.TB) map[string]float64 {
	t.Helper()
	parent := map[int]int{}
	stats, err := filepath.Glob("/proc/[0-9]*/stat")
	require.NoError(t, err)
	for _, name := range stats {
		body, err := os.ReadFile(name)
		if err != nil {
			continue // it has ended meanwhile
		}
		pid, _ := strconv.Atoi(filepath.Base(filepath.Dir(name)))
		fields := strings.Fields(string(body[strings.LastIndex(string(body), ")")+1:]))
		parent[pid], _ = strconv.Atoi(fields[1])
	}
	root := chromedp.FromContext(chromium.ctx).Browser.Process().Pid
	sums := map[string]float64{}
	for pid := range parent {
		at := pid
		for at > 1 && at != root {
			at = parent[at]
		}
		if at == root {
			sums[kindOf(pid)] += runTime(pid)
		}
	}
	return sums
}

// kindOf is what a process of the browser does.
func kindOf(pid int) string {
	line, _ := os.ReadFile(fmt.Sprintf("/proc/%d/cmdline", pid))
	for _, arg := range strings.FieldsFunc(string(line), func(r rune) bool { return r == 0 || r == ' ' }) {
		if kind, ok := strings.CutPrefix(arg, "--type="); ok {
			return fmt.Sprintf("%s-%d", kind, pid)
		}
	}
	return "browser"
}

// runTime is what all threads of a process have run so far, in seconds.
func runTime(pid int) (seconds float64) {
	threads, _ := filepath.Glob(fmt.Sprintf("/proc/%d/task/*/schedstat", pid))
	for _, name := range threads {
		body, err := os.ReadFile(name)
		if err != nil {
			continue
		}
		ns, _ := strconv.ParseFloat(strings.Fields(string(body))[0], 64)
		seconds += ns / 1e9
	}
	return seconds
}
