package papers_test

import (
	"slices"
	"strings"
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/money"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// figures are the amounts of a price that no client may read.
func figures(p planned) []string {
	price := p.plan.Price
	all := []money.Money{
		price.BoughtIn, price.Markup, price.Labour, price.Overhead, price.Travel, price.Direct, price.Contingency, price.Cost,
		price.List, price.Margin, price.Low, price.High,
	}
	for _, l := range price.Lines {
		all = append(all, l.Amount)
	}
	var out []string
	for _, m := range all {
		if m.Minor > 0 {
			out = append(out, m.Format("en"), m.Plain())
		}
	}
	return out
}

// What a client is handed holds no figure of the price book, whoever prints it: not
// on the sheets, not in their drawings, not in a table.
func TestClientPapersHoldNoPrivateFigure(t *testing.T) {
	book, digits := designtest.Sentinel(t)
	book.Workshop, book.Address, book.TaxNumber = "Elm Yard", "5 Mill Lane\nAppleby\n\nhands@elm.example", "XA 404"
	for _, name := range []string{"default", "s1", "s2", "s5", "s7"} {
		p := planOf(t, job(t, name).doc, book)
		secrets := figures(p)
		for _, client := range []bool{true, false} {
			in := p.input(length.Metric, sheet.A4())
			in.Book, in.Client = book, client
			in.Words.Locale = "en"
			all := read(t, in, papers.For(papers.Client, design.HungScope, false))
			for _, paper := range []string{"offer"} {
				head := said(t, papers.Set{Sheets: of(make1(t, in, papers.OfferSet), paper)[:1]})
				assert.Contains(t, head, "Elm Yard\n5 Mill Lane · Appleby · hands@elm.example · Tax number XA 404\n", paper)
			}
			price := p.plan.Price
			shown := []money.Money{price.Net, price.Tax, price.Gross}
			for _, s := range price.Stages {
				shown = append(shown, s.Amount)
			}
			for _, m := range shown {
				if client {
					assert.NotContains(t, all, m.Format("en"), "%s: the client knows a range", name)
				} else if p.plan.Price.Sold {
					assert.Contains(t, all, m.Format("en"), name)
				}
				all = strings.ReplaceAll(all, m.Format("en"), "")
			}
			assert.Empty(t, leaks(all, digits), "%s, client %v", name, client)
			assert.Empty(t, leaks(all, secrets), "%s, client %v", name, client)
			assert.NotContains(t, all, p.plan.BookCode)
		}

		// The net can catch: the workshop's own papers hold the lines of the price.
		in := p.input(length.Metric, sheet.A4())
		in.Book = book
		in.Words.Locale = "en"
		assert.NotEmpty(t, leaks(read(t, in, []string{papers.CutSet}), secrets), name)
	}
}

// read is everything that can be read of some sets: sheets, drawings and tables.
func read(t *testing.T, in papers.Input, sets []string) string {
	t.Helper()
	var b strings.Builder
	for _, set := range sets {
		b.WriteString(said(t, make1(t, in, set)))
	}
	for _, f := range papers.Files(in, sets, papers.Fonts{}) {
		switch {
		case strings.HasSuffix(f.Name, ".csv"):
			b.Write(f.Body)
		case strings.HasSuffix(f.Name, ".svg"):
			for _, text := range texts(t, string(f.Body)) {
				b.WriteString(text.text + "\n")
			}
		}
	}
	return b.String()
}

func leaks(text string, secrets []string) []string {
	var found []string
	for _, s := range secrets {
		if strings.Contains(text, s) && !slices.Contains(found, s) {
			found = append(found, s)
		}
	}
	return found
}

// Prices that have run out are told on the paper itself, by either book.
func TestLapsedPricesAreTold(t *testing.T) {
	p := job(t, "s5")
	in := p.input(length.Metric, sheet.A4())
	in.Book.ValidUntil = "2030-05-13"
	assert.Contains(t, said(t, make1(t, in, papers.OfferSet)), "held until 2030-05-13")
	in.Book.ValidUntil = "2030-05-14"
	assert.NotContains(t, said(t, make1(t, in, papers.OfferSet)), "held until")
	selling := engine.ExampleSelling()
	selling.ValidUntil = "2030-05-13"
	in.Client, in.Selling = true, &selling
	assert.Contains(t, said(t, make1(t, in, papers.OfferSet)), "held until 2030-05-13")
}

// An offer is one only for the design that was offered; any other is an
// indication, and nothing is signed.
func TestOfferOrIndication(t *testing.T) {
	p := job(t, "s5")
	p.doc.Offer = &design.Offer{
		Revision: p.plan.Revision, Currency: "EUR", ValidUntil: "2030-06-30", ReadyFrom: "2030-07-30", ReadyBy: "2030-09-15",
		Net: design.Units(3060), Tax: design.Units(612), Gross: design.Units(3672),
	}
	in := p.input(length.Metric, sheet.A4())
	in.Client = true
	text := said(t, make1(t, in, papers.OfferSet))
	for _, want := range []string{"Offer\n", "€3,672.00", "€3,060.00", "2030-06-30", "For the client", "Ready between 2030-07-30 and 2030-09-15"} {
		assert.Contains(t, text, want)
	}
	other := *p.doc.Offer
	other.Revision = "000000"
	in.Doc.Offer = &other
	text = said(t, make1(t, in, papers.OfferSet))
	assert.Contains(t, text, "Indication\n")
	assert.NotContains(t, text, "€3,672.00")
	assert.NotContains(t, text, "For the client")
	assert.Contains(t, text, "Example figures")

	low, high, err := engine.Quote(p.doc.Design, p.plan, engine.ExampleSelling())
	require.NoError(t, err)
	assert.Contains(t, text, low.Whole("en"))
	assert.Contains(t, text, high.Whole("en"))
}
