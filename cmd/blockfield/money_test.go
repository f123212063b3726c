package main_test

import (
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/page"
)

// atThePriceBook is a page on which a maker has the price book open.
func atThePriceBook(t *testing.T) *tab {
	t.Helper()
	b, _ := openPage(t)
	b.read("maker")
	b.section("money")
	b.click(`[data-act="book-open"]`)
	b.wait(`document.getElementsByName("book.rates.shop").length === 1`)
	return b
}

// A maker edits the price book on the page; it is there after a reload, with the books
// that gave way to it, and the field that is edited is left alone.
func TestThePriceBookIsEditedAndKept(t *testing.T) {
	t.Parallel()
	b := atThePriceBook(t)
	b.put(`[name="book.rates.shop"]`, "51,50")
	b.wait(`document.querySelector("#book-count").textContent.includes("still invented")`)
	b.wait(`localStorage.getItem("blockfield.book")?.includes('"shop": "51.5"')`)
	assert.Equal(t, "51,50", eval[string](b, `document.getElementsByName("book.rates.shop")[0].value`))
	b.put(`[name="book.rates.office"]`, "dear")
	b.wait(`document.querySelector("#f-book-rates-office-fault").textContent.includes("dear")`)
	b.put(`[name="find.book"]`, "oak")
	b.wait(`document.querySelectorAll(".book-table tbody tr").length === 1`)
	b.click(`[data-act="book-copy"]`)
	b.wait(`localStorage.getItem("blockfield.books")?.includes("Own prices")`)
	b.reload()
	b.section("money")
	assert.Contains(t, b.text("#prices"), "Own prices, next")
	assert.Contains(t, b.text("#prices"), "Other price books kept here")
}

// Undo in the price book takes back an entry that was refused before any step of the book;
// and of a list that is refused the page does not say that an earlier one was read.
func TestWhatWasRefusedComesFirst(t *testing.T) {
	t.Parallel()
	b := atThePriceBook(t)
	b.put(`[name="book.rates.office"]`, "41")
	b.wait(`localStorage.getItem("blockfield.book")?.includes('"office": "41"')`)
	b.put(`[name="book.rates.shop"]`, "dear")
	b.wait(`document.querySelector("#f-book-rates-shop-fault").textContent.includes("dear")`)
	value := func(name string) string { return `document.getElementsByName("` + name + `")[0].value` }
	b.click("#book-undo")
	b.wait(value("book.rates.shop") + ` === "42"`)
	assert.Equal(t, "", eval[string](b, `document.querySelector("#f-book-rates-shop-fault").textContent`))
	assert.Equal(t, "41", eval[string](b, value("book.rates.office")))
	b.click("#book-undo")
	b.wait(value("book.rates.office") + ` !== "41"`)

	b.upload("book.json", design.EncodeBook(design.ConfirmBook(design.DefaultBook(), "")))
	b.says("The price book is in force")
	b.upload("bad.json", []byte(`{"format":"blockfield price book","version":1,"rates":{"shop":"dear"}}`))
	b.says("The prices stay as they were")
	assert.NotContains(t, b.text("#status"), "The price book is in force")
}

// An edit of the price book that the engine breaks down over stays in its field and is
// said not to be taken; the book stays open, and holds what was taken before.
func TestTheBookAfterABreakdown(t *testing.T) {
	t.Parallel()
	b := atThePriceBook(t)
	b.put(`[name="book.rates.shop"]`, "51,50")
	b.wait(`localStorage.getItem("blockfield.book")?.includes('"shop": "51.5"')`)
	b.inWorker(dies)
	b.put(`[name="book.rates.office"]`, "44,44")
	b.says("was not taken")
	const office = `document.getElementsByName("book.rates.office")[0]`
	b.wait(office + `?.getAttribute("aria-invalid") === "true"`)
	assert.Equal(t, "44,44", eval[string](b, office+".value"))
	assert.Contains(t, b.faultAt("book.rates.office"), "was not taken")
	assert.Equal(t, "51.5", eval[string](b, `document.getElementsByName("book.rates.shop")[0].value`))
	b.put(`[name="book.rates.office"]`, "45")
	b.wait(`localStorage.getItem("blockfield.book")?.includes('"office": "45"')`)
}

// One key takes the workshop's figures off the page, and brings them back.
func TestOneKeyHidesTheFigures(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	b.read("maker")
	b.section("money")
	figures := `["Overhead", "Contingency", "Margin asked for"].filter((word) => document.body.textContent.includes(word)).length`
	b.wait(figures + ` === 3`)
	eval[any](b, `document.getElementById("announce").textContent = "180 figures of the book"`)
	b.do(chromedp.KeyEvent(kb.F8))
	b.wait(`document.querySelector("main").dataset.reading === "client"`)
	b.wait(figures + ` === 0`)
	assert.NotContains(t, b.text("#announce"), "180 figures", "nor is it left for a screen reader")
	assert.Equal(t, "client", eval[string](b, `document.getElementsByName("view.reading")[0].value`))
	b.do(chromedp.KeyEvent(kb.F8))
	b.wait(figures + ` === 3`)
	assert.Equal(t, "maker", eval[string](b, `document.getElementsByName("view.reading")[0].value`))
}

// Pictures of the section Money, and of the price book in it.
//
//	go test ./cmd/blockfield -run TestMoneyScreens -screens DIR
func TestMoneyScreens(t *testing.T) {
	if *screensDir == "" {
		t.Skip("only with -screens DIR")
	}
	for _, width := range []int64{1440, 768, 390} {
		b, _ := openPage(t)
		b.size(width, 900)
		b.read("maker")
		b.section("money")
		b.click(`[data-act="add"][data-path="money.extras"]`)
		b.wait(`document.querySelector('[name="money.extras[0].role"]')`)
		b.shoot(fmt.Sprintf("money-%d.png", width))
		b.click(`[data-act="why-open"]`)
		b.wait(`document.querySelector(".waterfall")`)
		b.set("money.budget", "2600")
		b.wait(`document.querySelector('[data-act="ways"]')`)
		b.click(`[data-act="ways"]`)
		b.wait(`document.querySelector('[data-act="go-way"]')`)
		b.wait(`(document.querySelector("#from-budget-more").open = true)`)
		b.click(`[data-act="from-budget"]`)
		b.wait(`document.querySelector('[data-act="take-candidate"]')`)
		b.shoot(fmt.Sprintf("why-%d.png", width))
		b.read("client")
		b.section("money")
		b.wait(`(document.querySelector("#from-budget-more").open = true)`)
		b.click(`[data-act="from-budget"]`)
		b.wait(`document.querySelector('[data-act="take-candidate"]')`)
		b.shoot(fmt.Sprintf("budget-client-%d.png", width))
		b.read("maker")
		b.section("money")
		b.click(`[data-act="book-open"]`)
		b.wait(`document.querySelector("#book-part-hours")`)
		b.wait(`document.querySelector("#order-more") && (document.querySelector("#order-more").open = true)`)
		b.click(`[data-act="confirm"][data-path="book."]`)
		b.wait(`document.querySelector('[data-act="make-offer"]')`)
		b.click(`[data-act="make-offer"]`)
		b.wait(`document.querySelector('[data-act="lock"]')`)
		b.click(`[data-act="lock"]`)
		b.wait(`document.querySelector('[data-act="call-stage"]')`)
		b.click(`[data-act="call-stage"]`)
		b.wait(`document.querySelector('[name="record.calls[0].number"]')`)
		b.shoot(fmt.Sprintf("order-%d.png", width))
		for _, part := range []string{"woods", "tasks"} {
			b.click("#book-part-" + part)
			b.wait(`document.querySelector("#book-part-` + part + `").getAttribute("aria-pressed") === "true"`)
			b.shoot(fmt.Sprintf("book-%s-%d.png", part, width))
		}
	}
}

// A job that has taught its times to a new price book is kept as it was.
func TestALearnedJobIsKept(t *testing.T) {
	t.Parallel()
	b := atThePriceBook(t)
	b.click(`[data-act="confirm"][data-path="book."]`)
	b.wait(`localStorage.getItem("blockfield.book")`)
	b.click(`[data-act="book-close"]`)
	b.section(page.Look)
	b.set(widthPath, "1.6 m")
	b.section(page.Bench)
	b.wait(`(document.querySelector("#shop-learn-more").open = true)`)
	b.set("record.times[0].minutes", "95")
	b.section(page.Money)
	b.wait(`document.querySelector('[data-act="learn"]')`)
	revision, book := b.revision(), b.stored()["blockfield.book"]
	require.True(t, b.kept(revision))
	eval[any](b, `document.querySelector('[data-act="learn"]').click()`)
	b.wait(`localStorage.getItem("blockfield.book") !== ` + quote(book))
	time.Sleep(calm)
	assert.True(t, b.kept(revision), "the job stays what it was")
	b.reload()
	assert.Equal(t, revision, b.revision())
}
