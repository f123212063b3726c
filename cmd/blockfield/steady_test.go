package main_test

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
)

// A watch-out that comes or goes moves no field that has the focus: neither the
// one that is typed in nor the next, which the hand is at by the time the answer
// is there; not even at the foot of the page, which becomes shorter. On a desk and
// on a phone.
func TestWatchOutsDoNotMoveTheFieldInHand(t *testing.T) {
	const board, gap = "walls[0].groups[0].frame.board", "walls[0].groups[0].frame.gap"
	b, _ := openPage(t)
	for _, width := range []int64{1440, 390} {
		b.size(width, 900)
		b.read("maker")
		b.section("look")

		steady := func(what, held string, do func()) {
			t.Helper()
			before, set := b.placeOf(held), b.setOf(held)
			do()
			b.frames() // in which a browser might scroll on its own
			assert.Equal(t, held, eval[string](b, "document.activeElement.name"), what)
			after := b.placeOf(held)
			assert.InDeltaSlice(t, before, after, 1, "%d px wide: %s\nits set before:\n%s\nand after:\n%s", width, what, set, b.setOf(held))
		}
		b.inHand(board)
		steady("a watch-out at the field before", gap, func() {
			b.goOn(board, "121", gap)
			b.told(board, true)
		})
		b.inHand(gap)
		steady("a watch-out at the very field", gap, func() {
			b.do(chromedp.KeyEvent("1.9"), chromedp.KeyEvent(kb.Enter))
			b.told(gap, true)
		})
		b.inHand(board)
		steady("the watch-out at the field before goes", gap, func() {
			b.goOn(board, "130", gap)
			b.told(board, false)
		})
		b.inHand(gap)
		steady("the watch-out at the very field goes", gap, func() {
			b.do(chromedp.KeyEvent("3"), chromedp.KeyEvent(kb.Enter))
			b.told(gap, false)
		})
		eval[any](b, `document.activeElement.blur()`)
		b.section("money")
		assert.Empty(t, eval[string](b, `document.body.style.minHeight`), "%d px wide: the room at the foot is gone", width)
	}
}

// Whoever goes on by the keyboard while what is said at a field changes goes on from there:
// neither is the focus lost with the note that it came to, nor with one that goes away.
func TestTheKeyboardGoesOnFromANote(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	b.read("maker")
	b.section("look")
	slot := `document.querySelector(` + quote(control(widthPath)) + `).closest(".field").querySelector(".watch-slot")`
	there := func(is string) { t.Helper(); b.wait(`Boolean(` + slot + `.querySelector("summary")) === ` + is) }
	b.put(control(widthPath), "1210 mm") // no whole blocks: a note says so
	there("true")
	for _, edit := range []struct{ value, note string }{{"1330 mm", "true"}, {"1195 mm", "false"}} {
		b.inHand(widthPath)
		_, next := edited(t, widthPath, edit.value)
		b.do(chromedp.KeyEvent(edit.value), chromedp.KeyEvent(kb.Tab))
		b.shows(next.Revision)
		there(edit.note)
		b.frames()
		assert.True(t, eval[bool](b, slot+`.contains(document.activeElement)`), "%s: the focus is at %s", edit.value, eval[string](b, `document.activeElement.outerHTML.slice(0, 200)`))
		b.do(chromedp.KeyEvent(kb.Tab))
		assert.True(t, eval[bool](b, `Boolean(`+slot+`.compareDocumentPosition(document.activeElement) & Node.DOCUMENT_POSITION_FOLLOWING)`), "on from there")
	}
}

// inHand puts the focus into a text field in the middle of the window, with all
// of it marked.
func (b *tab) inHand(path string) {
	b.t.Helper()
	eval[any](b, fmt.Sprintf(`(() => { const c = document.querySelector(%q);
		c.scrollIntoView({block: "center", behavior: "instant"}); c.focus({preventScroll: true}); c.select(); })()`, control(path)))
}

// goOn types a value and is at another field before any answer can come.
func (b *tab) goOn(path, value, next string) {
	b.t.Helper()
	eval[any](b, fmt.Sprintf(`(() => { const c = document.querySelector(%q); c.value = %q;
		c.dispatchEvent(new Event("input", {bubbles: true})); c.dispatchEvent(new Event("change", {bubbles: true}));
		document.querySelector(%q).focus({preventScroll: true}); })()`, control(path), value, control(next)))
}

// frames lets the browser draw a few times.
func (b *tab) frames() {
	b.t.Helper()
	eval[any](b, `new Promise((done) => { let n = 4; const next = () => --n ? requestAnimationFrame(next) : done(); requestAnimationFrame(next); })`)
}

// placeOf is where a field's upper left corner is in the window.
func (b *tab) placeOf(path string) []float64 {
	b.t.Helper()
	return eval[[]float64](b, fmt.Sprintf(
		`(() => { const r = document.querySelector(%q).getBoundingClientRect(); return [r.x, r.y]; })()`, control(path)))
}

// setOf is what stands where in the set of a field, to tell why it moved.
func (b *tab) setOf(path string) string {
	b.t.Helper()
	return eval[string](b, fmt.Sprintf(`[...document.querySelector(%q).closest(".set").querySelectorAll("div, p")].map((e) => {
		const r = e.getBoundingClientRect();
		return [r.x, r.y, r.width, r.height].map(Math.round).join(" ") + " " + e.className + " " + e.innerText.slice(0, 40).replaceAll("\n", " ");
	}).join("\n")`, control(path)))
}

// told waits until a Caution or a Stop stands at a field, or none.
func (b *tab) told(path string, stands bool) {
	b.t.Helper()
	b.wait(fmt.Sprintf(`Boolean(document.querySelector(%q).closest(".field").querySelector(".watch-slot > p.watch")) === %t`,
		control(path), stands))
}
