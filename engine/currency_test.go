package engine_test

import (
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// rupiah is the book of examples with every amount 17,000 times as high: about
// what a euro is in rupiah (rough, from memory).
func rupiah() design.Book {
	book := design.DefaultBook()
	book.Name, book.Placeholder, book.Currency = "Harga bengkel", false, "IDR"
	designtest.EachAmount(&book, func(a design.Amount) design.Amount { return 17_000 * a })
	return book
}

// A workshop whose currency has large figures gets all that others get: its book
// is read, jobs have the same price in other units, its selling book is one that
// can be read again, and the budget has its levers.
func TestABookInRupiah(t *testing.T) {
	book, err := design.DecodeBook(design.EncodeBook(rupiah()))
	require.NoError(t, err)
	selling := selling(t, book)
	again, err := design.DecodeSelling(design.EncodeSelling(selling))
	require.NoError(t, err)
	assert.Equal(t, selling, again)
	for _, name := range []string{"s1", "s4", "s5", "p2"} {
		doc := design.Default()
		doc.Design = designtest.Job(t, name)
		if doc.Design.Money.Budget > 0 {
			doc.Design.Money.Budget = 17_000 * doc.Design.Money.Budget
		}
		require.NoError(t, design.Validate(doc), name)
		r, err := engine.Plan(doc.Design, book)
		require.NoError(t, err)
		assert.Equal(t, 17_000*plan(t, designtest.Job(t, name)).Price.Gross.Minor, r.Price.Gross.Minor, name)
		assert.Equal(t, "IDR", r.Price.Gross.Currency)
		low, high, err := engine.Quote(doc.Design, r, selling)
		require.NoError(t, err)
		assert.True(t, low.Minor <= r.Price.Gross.Minor && r.Price.Gross.Minor <= high.Minor, "%s: %v to %v", name, low, high)
	}

	doc := design.Default()
	doc = edit(t, doc, "money.budget = 20 000 000")
	r, err := engine.Plan(doc.Design, book)
	require.NoError(t, err)
	assert.NotEmpty(t, engine.Levers(doc, r, engine.NewPlanner(book)))
	assert.NotEmpty(t, engine.QuoteLevers(doc, r, engine.NewPlanner(book), selling))
	assert.Contains(t, english().Show(r.Price.Gross), "IDR")
}

// A book in which everything is as dear as a book may have it gives a price or
// says that there is none; it makes no selling book that cannot be read.
func TestTheDearestBook(t *testing.T) {
	for _, currency := range []string{"JPY", "EUR", "KWD"} {
		book := rupiah()
		book.Currency = currency
		for i := range book.Woods {
			book.Woods[i].SquaresPerM3, book.Woods[i].BoardsPerM3 = design.Units(1e12), design.Units(1e12)
		}
		book.Rates = design.Rates{Shop: design.Units(1e9), Office: design.Units(1e9), Site: design.Units(1e9), Overhead: design.Units(1e9)}
		book.Policy.Margin, book.Policy.Contingency, book.Policy.MaterialMarkup = 90, 100, 100
		require.NoError(t, design.ValidateBook(book))
		for _, name := range []string{"s1", "s7"} {
			r, err := engine.Plan(designtest.Job(t, name), book)
			require.NoError(t, err)
			if !r.Price.Sold {
				assert.Contains(t, codes(r.WatchOuts), "price/too-large", name)
			}
		}
		if currency != "KWD" { // the one whose smallest unit is the smallest: a selling book takes many plans
			continue
		}
		if s, err := engine.SellingBook(book); err == nil {
			_, err = design.DecodeSelling(design.EncodeSelling(s))
			assert.NoError(t, err)
		}
	}
}
