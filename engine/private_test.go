package engine_test

import (
	"strings"
	"testing"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/money"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// leaks lists the digits that a text holds.
func leaks(text string, digits []string) []string {
	var found []string
	for _, d := range digits {
		if strings.Contains(text, d) {
			found = append(found, d)
		}
	}
	return found
}

// What a workshop hands out, a file and a link, is made of the document alone:
// a price book has no way into it. This is what makes a check for a book in a
// client's copy needless. The bought-in lines of a job are no figures of the book
// but inputs of the design: they go along, name and amount, and nothing that the
// book makes of them does.
func TestNoPriceBookInFileOrLink(t *testing.T) {
	book, digits := designtest.Sentinel(t)
	doc := design.Default()
	doc.Design = designtest.Job(t, "s5")
	r, err := engine.Plan(doc.Design, book)
	require.NoError(t, err)
	doc.Offer = &design.Offer{
		Revision: r.Revision, BookCode: r.BookCode, Currency: "EUR", ValidUntil: "2030-01-31",
		Net: design.Units(3060), Tax: design.Units(612), Gross: design.Units(3672),
	}
	doc.Design.Money.Extras = []design.Extra{{Name: "Floor stand", Amount: design.Units(95)}}
	with, err := engine.Plan(doc.Design, book)
	require.NoError(t, err)
	require.Greater(t, with.Price.Net.Minor, r.Price.Net.Minor)
	handedOut := func(doc design.Document) string {
		link, err := design.EncodeLink(doc)
		require.NoError(t, err)
		back, err := design.DecodeLink(link)
		require.NoError(t, err)
		return string(design.Encode(doc)) + string(design.Encode(back))
	}
	assert.Empty(t, leaks(handedOut(doc), digits))
	assert.Equal(t, 2, strings.Count(handedOut(doc), `"name": "Floor stand",`), "in the file and in the link")
	assert.Equal(t, 2, strings.Count(handedOut(doc), `"amount": "95"`))
	for _, m := range []money.Money{with.Price.Net, with.Price.Gross, with.Price.Cost, with.Price.BoughtIn, with.Price.Margin} {
		assert.NotContains(t, handedOut(doc), m.Plain())
	}
	assert.NotContains(t, handedOut(doc), "rates")
	assert.NotContains(t, handedOut(doc), "tasks")

	// The net can catch: a rate in the note is found.
	doc.Design.Note = "an hour costs " + book.Rates.Shop.String()
	assert.NotEmpty(t, leaks(handedOut(doc), digits))

	// And a file that somebody has put a book into is refused.
	foreign := strings.Replace(string(design.Encode(design.Default())), `"design":`, `"rates": {"shop": "42"}, "design":`, 1)
	_, err = design.Decode([]byte(foreign))
	assert.ErrorContains(t, err, "rates")
}

// The watch-outs that everybody may read hold no figure that only the workshop
// may know, even where every check of the price fires.
func TestPublicWatchOutsHoldNoPrivateFigure(t *testing.T) {
	book := design.DefaultBook()
	book.Policy.MarginFloor, book.Stages = 17.37, []design.Stage{{Name: "order", Percent: 1}, {Name: "hung", Percent: 99}}
	doc := edit(t, design.Default(), "money.discount = 25\nmoney.budget = 10")
	r, err := engine.Plan(doc.Design, book)
	require.NoError(t, err)
	p := r.Price
	secrets := []string{
		"17 %", p.BoughtIn.Format("en"), p.Cost.Format("en"), p.Net.Format("en"), p.Gross.Format("en"),
		p.Margin.Format("en"), p.Stages[0].Amount.Format("en"),
	}
	text := func(all []check.WatchOut) string {
		var b strings.Builder
		for _, w := range all {
			b.WriteString(english().Say(w.Code, w.Args) + " " + w.Source + "\n")
			if w.Fix != nil {
				b.WriteString(w.Fix.Value + "\n")
			}
		}
		return b.String()
	}
	assert.Equal(t, []string{"price/below-floor", "price/deposit", "price/discount-limit", "price/discount-reason", "price/over-budget"}, codes(r.Private))
	assert.Empty(t, leaks(text(r.WatchOuts), secrets))
	assert.Len(t, leaks(text(r.Private), secrets), 4, "floor, bought-in, gross and deposit do stand there")
}
