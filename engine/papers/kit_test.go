package papers_test

import (
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What goes along with a kit and a plan: a build book under the job's own revision, with
// nothing of the workshop's prices and times in it.
func TestKitAndPlanHaveABuildBook(t *testing.T) {
	book, digits := designtest.Sentinel(t)
	for _, scope := range []string{design.SupplyKit, design.SupplyPlan} {
		doc := job(t, "s4").doc
		for _, e := range [][2]string{{"work.supply", scope}} {
			var err error
			doc, err = design.Set(doc, e[0], e[1], length.Metric)
			require.NoError(t, err)
		}
		p := planOf(t, doc, book)
		in := p.input(length.Metric, sheet.A4())
		in.Book = book
		in.Words.Locale = "en"
		sets := papers.For(papers.Maker, doc.Design.Work.Scope(), false)
		assert.Equal(t, scope == design.SupplyKit, strings.Contains(strings.Join(sets, " "), papers.CutSet), scope)
		assert.NotContains(t, sets, papers.HangSet)
		assert.Contains(t, sets, papers.BookSet)

		handed := read(t, in, []string{papers.OfferSet, papers.BookSet})
		assert.Empty(t, leaks(strings.ReplaceAll(handed, p.plan.Price.Gross.Format("en"), ""), digits), scope)
		assert.NotContains(t, read(t, in, []string{papers.BookSet}), "Materials cost")
		assert.Contains(t, handed, p.plan.Revision)
		text := said(t, make1(t, in, papers.BookSet))
		assert.Contains(t, text, "Rear map")
		assert.Equal(t, scope == design.SupplyPlan, strings.Contains(text, "Stop list"), "with a kit nobody cuts blocks: %s", scope)
		assert.Equal(t, scope == design.SupplyKit, strings.Contains(text, "The blocks are there"), scope)
		offer := said(t, make1(t, in, papers.OfferSet))
		assert.Contains(t, offer, "the build book with its cautions goes with it", scope)
	}
	// The workshop's order for a kit is sticks alone.
	doc, err := design.Set(job(t, "s4").doc, "work.supply", "kit", length.Metric)
	require.NoError(t, err)
	p := planOf(t, doc, design.DefaultBook())
	text := said(t, make1(t, p.input(length.Metric, sheet.A4()), papers.CutSet))
	assert.Contains(t, text, "Timber yard")
	assert.NotContains(t, text, "Backer sheet")
	assert.NotContains(t, text, "litre")
}

// An offer says several rates of tax, why there is a discount, and who owes the tax.
func TestTermsOnTheOffer(t *testing.T) {
	doc := job(t, "s5").doc
	doc.Design.Money.Discount, doc.Design.Money.Reason = 5, "second panel for the same house"
	doc.Design.Money.Extras = []design.Extra{{Name: "Sample", Amount: design.Units(85), Role: design.ExtraSold, OwnTax: true, Tax: 7}}
	book := design.DefaultBook()
	book.Placeholder, book.Terms = false, "Goods stay ours until they are paid."
	p := planOf(t, doc, book)
	in := p.input(length.Metric, sheet.A4())
	in.Book = book
	text := strings.Join(strings.Fields(said(t, make1(t, in, papers.OfferSet))), " ")
	for _, want := range []string{"20 % tax on", "7 % tax on", "With 5 % discount: second panel for the same house.", "Goods stay ours", "Sample, ¤85.00 without tax", "What is not, beyond the lines named above"} {
		assert.Contains(t, text, want)
	}
	in.Client = true
	assert.NotContains(t, said(t, make1(t, in, papers.OfferSet)), "Goods stay ours", "a client has no price book")

	doc.Design.Money.Reverse = true
	p = planOf(t, doc, book)
	in = p.input(length.Metric, sheet.A4())
	in.Book = book
	text = said(t, make1(t, in, papers.OfferSet))
	assert.Contains(t, text, "reverse charge")
	assert.NotContains(t, text, "20 % tax")
}
