package main_test

import (
	"fmt"

	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// heldTimers keeps back the page's timers of a second and more, until the test
// lets time pass: pass(ms) runs those that are due by then, in their order. What
// is shorter is part of how the page works and runs as ever.
const heldTimers = `(() => {
	const later = window.setTimeout.bind(window), unlater = window.clearTimeout.bind(window);
	const held = new Map(); // by ids below zero, which no browser gives
	let last = 0, now = 0;
	window.setTimeout = (callback, ms = 0, ...args) => {
		if (ms < 1000) return later(callback, ms, ...args);
		held.set(--last, {due: now + ms, ring: () => callback(...args)});
		return last;
	};
	window.clearTimeout = (id) => { if (!held.delete(id)) unlater(id); };
	window.pass = (ms) => {
		const end = now + ms;
		for (;;) {
			const [next] = [...held].filter(([, timer]) => timer.due <= end).sort(([, a], [, b]) => a.due - b.due);
			if (!next) break;
			held.delete(next[0]);
			now = next[1].due;
			next[1].ring();
		}
		now = end;
	};
})()`

// holdTimers has the pages that are opened from now on wait for pass, where the
// page itself waits for a second or more: a test of what happens after a while
// then neither takes so long nor hangs on how busy the machine is.
func (b *tab) holdTimers() {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, cdpage.AddScriptToEvaluateOnNewDocument, cdpage.AddScriptToEvaluateOnNewDocumentParams{Source: heldTimers})
	require.NoError(b.t, err)
}

// pass lets so many milliseconds go by for the page's long timers.
func (b *tab) pass(ms int) {
	b.t.Helper()
	eval[any](b, fmt.Sprintf("pass(%d)", ms))
}
