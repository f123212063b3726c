package main_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/page"
	"blockfield/engine/papers"
)

// The three people go from their first look to what they came for, on a phone, a tablet
// and a desk: with the mouse, on what is to be seen, and nothing stands beyond the window.
func TestFlows(t *testing.T) {
	t.Parallel()
	for _, width := range []int64{390, 768, 1440} {
		t.Run(fmt.Sprint(width), func(t *testing.T) {
			b, _ := openPage(t, window(width, 844))
			b.clientWrites()
			b.makerAgrees()
			b.builderGetsTheBook()
		})
	}
}

// fits checks that a section stands within the window, and that something to be seen is
// what it is about.
func (b *tab) fits(when, about string) {
	b.t.Helper()
	b.wait(fmt.Sprintf(`[...document.querySelectorAll(%q)].some((e) => e.checkVisibility())`, about))
	assert.True(b.t, eval[bool](b, `document.documentElement.scrollWidth <= innerWidth`), "%s stands beyond the window", when)
}

func (b *tab) openJob(name string) {
	b.t.Helper()
	before := b.revision()
	file, err := os.ReadFile(filepath.Join("..", "..", "testdata", "scenarios", name+".json"))
	require.NoError(b.t, err)
	b.upload(name+".json", file)
	b.wait(`document.querySelector("#revision").innerText !== ` + quote(before))
}

// unfoldPart opens a part that is folded.
func (b *tab) unfoldPart(id string) {
	b.t.Helper()
	b.wait(fmt.Sprintf(`document.getElementById(%q)`, id))
	if !eval[bool](b, fmt.Sprintf(`document.getElementById(%q).open`, id)) {
		b.click("#" + id + " > summary")
	}
	b.wait(fmt.Sprintf(`document.getElementById(%q).open`, id))
}

// clientWrites: the first panel has a price, a change changes it, and a letter to the
// workshop is ready, with all that leaves.
func (b *tab) clientWrites() {
	price := `[...document.querySelectorAll("#strip dl > div")].map((d) => d.innerText).join()`
	before := eval[string](b, price)
	b.fits("a client's first look", "#strip")
	b.set(widthPath, "1.6 m")
	b.wait(price + ` !== ` + quote(before))
	b.section(page.Money)
	b.fits("a client's price", "main h2")
	b.set("record.client.name", "Ada Beech")
	b.set("record.client.message", "For the music room.")
	b.wait(`document.querySelector("#send-leaves").textContent.includes("Ada Beech")`)
	b.wait(`document.querySelector('[data-do="send"]').getAttribute("aria-disabled") !== "true"`)
	b.fits("a letter", `[data-do="send"]`)
}

// makerAgrees: a job is opened, priced, offered and agreed, and its shop papers are there.
func (b *tab) makerAgrees() {
	b.read(page.Maker)
	b.openJob("s2")
	b.section(page.Money)
	b.click(`[data-act="book-open"]`)
	b.wait(`document.querySelector('[data-act="confirm"][data-path="book."]')`)
	b.fits("the price book", "#book-undo")
	b.click(`[data-act="confirm"][data-path="book."]`)
	b.wait(`document.querySelector('[data-act="make-offer"]')`)
	b.click(`[data-act="book-close"]`)
	b.unfoldPart("order-more")
	b.click(`[data-act="make-offer"]`)
	b.wait(`document.querySelector('[data-act="lock"]')`)
	b.click(`[data-act="lock"]`)
	b.wait(`document.querySelector('[data-act="call-stage"]')`)
	b.fits("an order", `[data-act="call-stage"]`)
	b.changesByASlip()
	for _, section := range []string{page.Bench, page.Wall} {
		b.section(section)
		b.fits("a maker's "+section, "main h2")
	}
	b.section(page.Papers)
	b.click(`[data-act="papers-set"][data-path="` + papers.CutSet + `"]`)
	b.wait(`document.querySelector(".leaf .revision")`)
	b.fits("the papers for the bench", ".leaf")
}

// changesByASlip: the Stop of a change after the lock leads to its price, and what is
// accepted is what the page states.
func (b *tab) changesByASlip() {
	agreed := `document.querySelector("main .big").innerText`
	before := eval[string](b, agreed)
	b.section(page.Look)
	b.choose("walls[0].groups[0].wood", "cherry")
	b.section(page.Money)
	b.click(`.watch [data-act="slip"]`)
	b.wait(`document.querySelector('#order-more [data-act="accept-slip"]')?.checkVisibility()`)
	b.fits("a change", `[data-act="accept-slip"]`)
	b.click(`[data-act="accept-slip"]`)
	b.wait(agreed + ` !== ` + quote(before))
	b.wait(`!document.querySelector('.watch [data-act="slip"]')`)
}

// builderGetsTheBook: a home builder finds what to buy and prints the plan.
func (b *tab) builderGetsTheBook() {
	b.read(page.Builder)
	b.openJob("s8")
	for _, section := range b.sections() {
		b.section(section)
		b.fits("a builder's "+section, "main h2")
	}
	b.section(page.Papers)
	b.click(`[data-act="papers-set"][data-path="` + papers.BookSet + `"]`)
	b.wait(`document.querySelectorAll(".leaf").length > 5`)
	b.fits("a build book", ".leaf")
	assert.Contains(b.t, eval[string](b, `document.querySelector(".leaf .revision").textContent`), b.revision(), "the papers are of the job that is open")
}
