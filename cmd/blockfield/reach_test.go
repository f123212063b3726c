package main_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/page"
)

// stops gives every place where Tab should stop a number. Radio buttons of one
// name are one stop, and what is folded away is none.
const stops = `(() => {
	const seen = new Set();
	const all = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")].filter((e) => {
		if (e.disabled || e.tabIndex < 0 || !e.checkVisibility({visibilityProperty: true})) return false;
		if (e.type !== "radio") return true;
		if (seen.has(e.name)) return false;
		seen.add(e.name);
		return true;
	});
	window.stopOf = (e) => e.type === "radio" ? "radio " + e.name : "stop " + all.indexOf(e) + " " + e.tagName + " " + (e.id || e.name || e.innerText);
	return all.map(stopOf);
})()`

// Tab goes through the whole page, past the picture, and out of it again.
func TestTabReachesEverything(t *testing.T) {
	b, _ := openPicture(t)
	for _, reading := range readings {
		b.read(reading)
		b.settle()
		b.wait(`document.documentElement.dataset.heard === document.querySelector("#revision").textContent`) // it brings watch-outs of its own
		want := eval[[]string](b, stops)
		require.Greater(t, len(want), 10)
		eval[any](b, `document.activeElement.blur()`)
		eval[any](b, `getSelection().removeAllRanges()`)
		reached := map[string]bool{}
		for range len(want) + 10 {
			b.do(chromedp.KeyEvent(kb.Tab))
			at := eval[string](b, `document.activeElement === document.body ? "" : stopOf(document.activeElement)`)
			assert.NotContains(t, at, "IFRAME")
			reached[at] = true
		}
		for _, stop := range want {
			assert.True(t, reached[stop], "%s: Tab never came to %s", reading, stop)
		}
	}
}

// What a screen reader is told, in every section of every reading with all that is folded
// open: whatever is pressed or typed in has a name and is told apart from all others by name,
// description or the group that it stands in; headings go down one level at a time; tables
// have a name and heads; drawings say in words what they show.
func TestAccessibilityTree(t *testing.T) {
	b, _ := openPage(t)
	for _, reading := range readings {
		b.read(reading)
		b.listened()
		for _, section := range b.sections() {
			b.section(section)
			b.unfold()
			if section == page.Sound && reading != page.Client {
				b.wait(`document.querySelector(".sound-shown svg")`)
			}
			assert.Empty(t, b.treeFaults(), "%s, %s", reading, section)
		}
	}
}

// heardNode is what is told of a place on the page, with the groups around it.
type heardNode struct {
	*accessibility.Node
	groups []string
}

func (n heardNode) role() string { return axText(n.Role) }
func (n heardNode) name() string { return strings.TrimSpace(axText(n.Name)) }

func axText(v *accessibility.Value) string {
	if v == nil {
		return ""
	}
	var text string
	if json.Unmarshal(v.Value, &text) != nil {
		return string(v.Value)
	}
	return text
}

func (n heardNode) property(name accessibility.PropertyName) string {
	for _, p := range n.Properties {
		if p.Name == name {
			return axText(p.Value)
		}
	}
	return ""
}

// treeFaults are the faults of what a screen reader is told of the page.
func (b *tab) treeFaults() []string {
	b.t.Helper()
	tree, err := chromedp.Call(b.ctx, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	require.NoError(b.t, err)
	byID := map[accessibility.NodeID]*accessibility.Node{}
	for _, n := range tree.Nodes {
		byID[n.NodeID] = n
	}
	var faults []string
	pressed := map[string]int{}
	level, seen := 0, 0
	heads := map[accessibility.NodeID]int{} // of tables
	var walk func(n *accessibility.Node, groups []string, table accessibility.NodeID)
	walk = func(n *accessibility.Node, groups []string, table accessibility.NodeID) {
		if n == nil {
			return
		}
		at := heardNode{n, groups}
		if !n.Ignored {
			seen++
			switch role := at.role(); role {
			case "button", "link", "textbox", "combobox", "radio", "checkbox", "slider", "DisclosureTriangle", "application":
				if at.name() == "" {
					faults = append(faults, fmt.Sprintf("%s without a name in %q", role, groups))
				}
				pressed[fmt.Sprintf("%s %q (%s) in %q %s", role, at.name(), axText(n.Description), groups, at.property("url"))]++
			case "heading":
				var now int
				fmt.Sscan(at.property("level"), &now)
				if now > level+1 || at.name() == "" {
					faults = append(faults, fmt.Sprintf("heading %q of level %d after one of level %d", at.name(), now, level))
				}
				level = now
			case "form", "navigation", "toolbar", "image", "table", "progressbar":
				if at.name() == "" {
					faults = append(faults, fmt.Sprintf("%s without a name in %q", role, groups))
				}
				if role == "table" {
					table = n.NodeID
					heads[table] = 0
				}
			case "rowheader", "columnheader":
				heads[table]++
			}
			if role := at.role(); at.name() != "" && (role == "group" || role == "Date" || role == "radiogroup") {
				groups = append(slices.Clone(groups), at.name())
			}
		}
		for _, id := range n.ChildIDs {
			walk(byID[id], groups, table)
		}
		if at.role() == "table" && heads[n.NodeID] == 0 && !n.Ignored {
			faults = append(faults, fmt.Sprintf("table %q without heads", at.name()))
		}
	}
	walk(tree.Nodes[0], nil, "")
	require.Greater(b.t, seen, 50, "the tree")
	for what, n := range pressed {
		if n > 1 {
			faults = append(faults, fmt.Sprintf("%d of %s", n, what))
		}
	}
	slices.Sort(faults)
	return faults
}

// The wheel over the picture scrolls the page.
func TestWheelScrollsOverThePicture(t *testing.T) {
	b, _ := openPicture(t)
	b.size(390, 500)
	box := eval[[]float64](b, `(() => { const r = document.querySelector("#pad").getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`)
	_, err := chromedp.Call(b.ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{
		Type: input.DispatchMouseEventTypeMouseWheel, X: box[0], Y: box[1], DeltaX: 0.001, DeltaY: 200,
	})
	require.NoError(t, err)
	b.wait("scrollY > 100")
}

// cutOff are the choices whose entry is longer than its place.
const cutOff = `(() => {
	const ruler = document.createElement("canvas").getContext("2d");
	return [...document.querySelectorAll("#section select")].filter((e) => {
		const style = getComputedStyle(e);
		ruler.font = style.font;
		return e.checkVisibility() && ruler.measureText(e.selectedOptions[0]?.text ?? "").width > e.clientWidth - parseFloat(style.paddingRight) + 1;
	}).map((e) => e.name + ": " + e.selectedOptions[0].text);
})()`

// parted are the names of woods that go on in another line within a word, and the figures
// that stand in another line than their unit.
const parted = `(() => {
	const top = (node, at) => {
		const range = document.createRange();
		range.setStart(node, at);
		range.setEnd(node, at + 1);
		return range.getBoundingClientRect().top;
	};
	const all = [];
	const texts = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
	for (let node; (node = texts.nextNode());) {
		const place = node.parentElement;
		if (!place.checkVisibility() || place.closest("svg, textarea, select, .sr, .title")) continue;
		const apart = (from, to) => Math.abs(top(node, from) - top(node, to)) > 5;
		if (place.matches(".swatches .word"))
			for (const word of node.data.matchAll(/\p{L}+/gu)) if (apart(word.index, word.index + word[0].length - 1)) all.push(word[0]);
		for (const unit of node.data.matchAll(/[0-9]\s(?=(?:mm|m²|kg|h|%|°C)(?:[^\p{L}]|$))/gu)) if (apart(unit.index, unit.index + 2)) all.push(node.data.slice(Math.max(0, unit.index - 9), unit.index + 5));
	}
	return all;
})()`

// Nothing is wider than the window, in any reading or section, folded or not, no choice
// is cut off, no word is cut through and no figure stands apart from its unit.
func TestNothingScrollsSideways(t *testing.T) {
	b, _ := openPage(t)
	for _, reading := range readings {
		b.read(reading)
		for _, section := range b.sections() {
			b.section(section)
			for _, width := range []int64{360, 390, 768, 1000, 1440} {
				b.size(width, 900)
				if width == 390 || width == 1440 {
					b.unfold()
					assert.Empty(t, eval[[]string](b, cutOff), "%s, %s", reading, section)
				}
				wide := eval[[]string](b, `(() => {
					if (document.documentElement.scrollWidth <= innerWidth) return [];
					return [...document.body.querySelectorAll("*")].filter((e) => e.getBoundingClientRect().right > innerWidth + 0.5)
						.map((e) => e.tagName + "." + e.className + " " + Math.round(e.getBoundingClientRect().right)).slice(0, 5);
				})()`)
				assert.Empty(t, wide, "%s, %s at %d px", reading, section, width)
				assert.Empty(t, eval[[]string](b, parted), "%s, %s at %d px", reading, section, width)
			}
			b.size(1440, 900)
		}
	}
}

// The names of the woods stand in one line in German too, where they are longest.
func TestWoodsStandInOneLine(t *testing.T) {
	b, _ := openPage(t)
	b.choose("view.language", "de")
	b.wait(`document.querySelector(".swatches").innerText.includes("Nussbaum")`)
	for _, width := range []int64{360, 390, 768, 1000, 1280, 1440} {
		b.size(width, 900)
		assert.Empty(t, eval[[]string](b, parted), "at %d px", width)
	}
}

// After the first visit the page opens, calculates and draws without a network.
func TestOffline(t *testing.T) {
	b, s := openPicture(t)
	b.wait(`(window.kept ??= navigator.serviceWorker.ready.then((r) => { window.active = r.active; }), window.active?.state === "activated")`)
	s.stop()
	b.allow("ERR_CONNECTION_REFUSED")
	b.allow("not-kept")

	b.do(chromedp.Reload())
	b.alive()
	b.drawn()
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	b.click("#examples summary")
	b.click(`#examples [data-address="designs/s5.json"]`)
	b.wait(fmt.Sprintf(`document.querySelector("#revision").innerText !== %q`, wide.Revision))

	// The proof that there was no network: what was not kept cannot be had.
	assert.Equal(t, "failed", eval[string](b, `fetch("not-kept.txt").then(() => "came", () => "failed")`))
	b.read(page.Maker)
}

// A maker finds a field by its name, without a mouse, and goes on typing in it.
func TestFindAField(t *testing.T) {
	b, _ := openPage(t)
	assert.False(t, eval[bool](b, `document.querySelector("#find").checkVisibility()`), "a client meets few fields")
	b.read(page.Maker)
	eval[any](b, `document.activeElement.blur()`)
	b.do(chromedp.KeyEvent("k", chromedp.KeyModifiers(kb.ModifierCtrl)))
	b.wait(`document.querySelector("#found kbd")`)
	b.wait(`document.activeElement.id === "find-text"`)
	b.do(chromedp.KeyEvent("tail"))
	b.wait(`document.querySelector('#found a[data-field="bench.holdTail"]')`)
	b.do(chromedp.KeyEvent(kb.Enter))
	b.wait(`document.activeElement.name === "bench.holdTail"`)
	assert.False(t, eval[bool](b, `document.querySelector("#find").open`))
}
