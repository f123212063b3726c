package main_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/page"
)

// auditKeys walks through everything by the key Tab, there and back, and turns the wheel
// over the picture, over a text field and over a list.
func auditKeys(t *testing.T) string {
	rows := [][]string{{"Reading", "section", "stops", "reached forwards", "backwards", "left again"}}
	for _, reading := range readings {
		t.Run(reading, func(t *testing.T) {
			b, _ := openPage(t)
			b.patient()
			b.eachSection(reading, func(section string) {
				b.unfold()
				want := eval[[]string](b, stops)
				forwards, leftForwards := b.walkByTab(want, false)
				backwards, leftBackwards := b.walkByTab(want, true)
				for _, stop := range want {
					assert.True(t, forwards[stop], "%s, %s: Tab never came to %s", reading, section, stop)
					assert.True(t, backwards[stop], "%s, %s: Tab with Shift never came to %s", reading, section, stop)
				}
				assert.True(t, leftForwards && leftBackwards, "%s, %s: Tab never leaves the page", reading, section)
				rows = append(rows, []string{reading, section, fmt.Sprint(len(want)), of(want, forwards), of(want, backwards), fmt.Sprint(leftForwards && leftBackwards)})
			})
		})
	}
	var out strings.Builder
	out.WriteString("Every place where the keyboard can stop, with all that is folded opened, was walked through by Tab and back by " +
		"Tab with Shift, until the focus left the page.\n\n" + table(rows) + "\n")

	b, _ := openPicture(t, window(1440, 500))
	b.patient()
	b.read(page.Maker)
	b.section(page.Look)
	for _, over := range []struct{ what, selector string }{
		{"the picture", "#pad"}, {"a text field in hand", control(widthPath)}, {"a list in hand", "#section select"},
	} {
		b.focus(over.selector)
		b.wheel(over.selector, 0)
		moved := eval[float64](b, "scrollY")
		assert.Positive(t, moved, "the wheel over %s scrolls nothing", over.what)
		fmt.Fprintf(&out, "- The wheel over %s scrolls the page by %.0f px.\n", over.what, moved)
	}
	b.settle()
	before := b.fine()
	b.wheel("#pad", int64(kb.ModifierCtrl))
	still := eval[float64](b, "scrollY") == 0
	apart := difference(t, before, b.fine())
	assert.True(t, still && apart > 1, "the wheel with Ctrl zooms the picture")
	fmt.Fprintf(&out, "- With Ctrl held, which asks for it, it zooms the picture and scrolls nothing: %v.\n", still && apart > 1)
	return out.String()
}

// of says how many of the wanted stops were reached.
func of(want []string, reached map[string]bool) string {
	n := 0
	for _, stop := range want {
		if reached[stop] {
			n++
		}
	}
	return fmt.Sprint(n)
}

// walkByTab presses Tab as often as it takes to come through all stops, and returns where
// the focus was and whether it left the page: it begins behind the first stop, so it comes
// there only from the other end, by way of the browser's own bars.
func (b *tab) walkByTab(want []string, back bool) (reached map[string]bool, left bool) {
	b.t.Helper()
	eval[any](b, `(() => {
		document.activeElement.blur();
		getSelection().removeAllRanges();
		document.querySelector(".skip").focus();
		document.activeElement.blur();
		window.walked = [];
		window.walk ??= addEventListener("focusin", (e) => walked.push(stopOf(e.target))) ?? true;
	})()`)
	press := chromedp.KeyEvent(kb.Tab)
	if back {
		press = chromedp.KeyEvent(kb.Tab, chromedp.KeyModifiers(kb.ModifierShift))
	}
	reached = map[string]bool{}
	// A date has a place for each of its parts, and a button; what scrolls is a place too.
	for presses := 0; presses < 3*len(want)+30; {
		const some = 10
		b.do(slices.Repeat([]chromedp.Action[chromedp.Void]{press}, some)...)
		presses += some
		for _, at := range eval[[]string](b, "walked") {
			reached[at] = true
		}
		if !slices.ContainsFunc(want, func(stop string) bool { return !reached[stop] }) {
			break
		}
	}
	return reached, reached[want[0]]
}

// wheel turns the wheel over the middle of an element that is brought into sight at the
// top of the page, and waits until nothing moves.
func (b *tab) wheel(selector string, held int64) {
	b.t.Helper()
	at := eval[[]float64](b, fmt.Sprintf(`(() => {
		scrollTo({top: 0, behavior: "instant"});
		const r = document.querySelector(%q).getBoundingClientRect();
		return [r.x + r.width / 2, Math.min(r.y + r.height / 2, innerHeight - 20)]; })()`, selector))
	_, err := chromedp.Call(b.ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{
		Type: input.DispatchMouseEventTypeMouseWheel, X: at[0], Y: at[1], DeltaX: 0.001, DeltaY: 200, Modifiers: held,
	})
	require.NoError(b.t, err)
	eval[any](b, `new Promise((done) => {
		let last = -1, calm = 0;
		const look = () => {
			calm = scrollY === last ? calm + 1 : 0;
			last = scrollY;
			if (calm > 20) done(); else requestAnimationFrame(look);
		};
		look(); })`)
}
