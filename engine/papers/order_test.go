package papers_test

import (
	"slices"
	"strings"
	"testing"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// locked is a job whose look is locked, with an accepted change and two invoices.
func locked(t *testing.T, name string, book design.Book) planned {
	t.Helper()
	return lockedDoc(t, job(t, name).doc, book)
}

func lockedDoc(t *testing.T, doc design.Document, book design.Book) planned {
	t.Helper()
	const day = "2030-05-14"
	p := planOf(t, doc, book)
	offer, why := engine.MakeOffer(p.plan, book, day, 30)
	require.Empty(t, why.Key)
	p.doc.Offer = &offer
	step := func(rec design.Record, key string) {
		require.Empty(t, key)
		p.job = engine.Follow(p.doc.Design, p.plan, rec, day)
	}
	rec, why := p.job.Locking(p.doc, book, day)
	step(rec, why.Key)
	rec, why = p.job.Calling(day)
	step(rec, why.Key)
	p.doc.Design.Note += "!" // another revision at the same price
	plan, err := engine.Plan(p.doc.Design, book)
	require.NoError(t, err)
	p.plan = plan
	p.job = engine.Follow(p.doc.Design, plan, p.job.Record, day)
	rec, why = p.job.Slip(book, p.doc.Design.Money, day)
	rec.Slips[0].Reason = "A word in the note"
	step(rec, why.Key)
	rec, why = p.job.Accepting(day)
	step(rec, why.Key)
	rec, why = p.job.Calling(day)
	rec.Calls[1].Number = "2030-17"
	step(rec, why.Key)
	return p
}

// Slips and invoices say what was agreed on, changed and invoiced, to the cent, and no
// private figure.
func TestOrderPapers(t *testing.T) {
	book, digits := designtest.Sentinel(t)
	book.Policy.ChangeFee = design.Units(60)
	book.Workshop, book.TaxNumber = "Elm Yard", "XA 404"
	p := locked(t, "default", book)
	in := p.input(length.Metric, sheet.A4())
	in.Book = book
	in.Words.Locale = "en"
	set := make1(t, in, papers.OrderSet)
	require.Len(t, set.Sheets, 3, "a slip and two invoices")
	for _, s := range set.Sheets {
		assert.Empty(t, s.Overflow)
	}
	for _, s := range set.Sheets {
		assert.Contains(t, said(t, papers.Set{Sheets: []sheet.Sheet{s}}), "Elm Yard\nTax number XA 404\n", "%s: who writes", s.Paper)
	}
	text := said(t, set)
	lock := p.job.Record.Lock
	for _, want := range []string{
		"Change slip 1", "A word in the note", "Accepted on 2030-05-14", lock.Revision, p.plan.Revision, "€60.00",
		"Invoice 2030-17", "Change 1, accepted on 2030-05-14", "is left to be invoiced",
	} {
		assert.Contains(t, text, want)
	}
	due := p.job.Payments()
	for _, d := range due[:2] {
		for _, m := range []string{d.Net.Format("en"), d.Tax.Format("en"), d.Gross.Format("en")} {
			assert.Contains(t, text, m)
		}
	}
	assert.Contains(t, text, due[2].Gross.Format("en")+" is left")
	secrets := figures(p)
	assert.Empty(t, leaks(text, secrets))
	clean := text
	for _, d := range due {
		clean = strings.NewReplacer(d.Net.Format("en"), "", d.Tax.Format("en"), "", d.Gross.Format("en"), "").Replace(clean)
	}
	assert.Empty(t, leaks(clean, digits))
	assert.NotContains(t, text, p.plan.BookCode)
	assert.NotContains(t, text, "Ada")
	in.Job.Record.Client.Name = "Ada Beech"
	assert.Contains(t, said(t, make1(t, in, papers.OrderSet)), "For Ada Beech")

	assert.NotContains(t, papers.For(papers.Client, design.HungScope, true), papers.OrderSet)
	assert.Contains(t, papers.For(papers.Maker, design.HungScope, true), papers.OrderSet)
	assert.NotContains(t, papers.For(papers.Maker, design.HungScope, false), papers.OrderSet)
}

// A slip that waits is signed, one that was accepted says when and has no line left to sign
// on, and one whose design cannot be offered, or is no longer the open one, says so in the
// place of those lines. What is the workshop's own stays unsaid.
func TestSlipsSayWhetherTheyCanBeAccepted(t *testing.T) {
	book, _ := designtest.Sentinel(t)
	p := locked(t, "default", book)
	slip := func(p planned) string {
		in := p.input(length.Metric, sheet.A4())
		in.Book, in.Words.Locale = book, "en"
		return strings.Join(strings.Fields(said(t, papers.Set{Sheets: of(make1(t, in, papers.OrderSet), "change-slip-1")})), " ")
	}
	const lines, not = "For the client", "NOT TO BE SIGNED"
	accepted := slip(p)
	assert.Contains(t, accepted, "Accepted on 2030-05-14.")
	assert.NotContains(t, accepted, lines)
	assert.NotContains(t, accepted, "No work on this change begins")
	assert.NotContains(t, accepted, not)

	p.job.Record = design.CloneRecord(p.job.Record)
	p.job.Record.Slips[0].Accepted = ""
	waits := slip(p)
	assert.Contains(t, waits, lines)
	assert.Contains(t, waits, "No work on this change begins")
	assert.NotContains(t, waits, not)

	follow := func(plan engine.Result) planned {
		shut := p
		shut.plan, shut.job = plan, engine.Follow(p.doc.Design, plan, p.job.Record, "2030-05-14")
		return shut
	}
	stop := check.WatchOut{Code: "wall/grille", Level: check.Stop, Gate: check.Offer, Args: words.Args{"apart": length.MM(3)}}
	private := check.WatchOut{Code: "price/below-minimum", Level: check.Stop, Gate: check.Offer, Private: true, Args: words.Args{"net": "701", "minimum": "931"}}
	shut := p.plan
	shut.WatchOuts = append(slices.Clone(shut.WatchOuts), stop)
	text := slip(follow(shut))
	assert.Contains(t, text, not)
	assert.Contains(t, text, p.input(length.Metric, sheet.A4()).Words.Say(stop.Code, stop.Args))
	assert.NotContains(t, text, lines)
	assert.NotContains(t, text, "settle something")

	shut = p.plan
	shut.Private = append(slices.Clone(shut.Private), private)
	text = slip(follow(shut))
	assert.Contains(t, text, not)
	assert.Contains(t, text, "The workshop still has to settle something of its own.")
	assert.NotContains(t, text, p.input(length.Metric, sheet.A4()).Words.Say(private.Code, private.Args))
	assert.NotContains(t, text, lines)

	other := p.plan
	other.Revision = "QQQQQQ"
	text = slip(follow(other))
	assert.Contains(t, text, not)
	assert.Contains(t, text, "the design is QQQQQQ")
	assert.NotContains(t, text, lines)
}

// The look card has the heights, four lamps and blocks in their natural size.
func TestLookCard(t *testing.T) {
	for _, name := range []string{"default", "s5", "s6"} {
		p := job(t, name)
		set := make1(t, p.input(length.Metric, sheet.A4()), papers.OfferSet)
		text := said(t, set)
		for _, want := range []string{"Look and care", "from the left", "from below", "natural size", "darker", "end grain", "Care card", "weighs"} {
			assert.Contains(t, text, want, name)
		}
		for _, s := range set.Sheets {
			assert.Empty(t, s.Overflow, name)
		}
	}
}

// The client's paper of an offer is the workshop's, whichever book is in force: it carries
// who offers, the taxes by rate, payments, terms, days, the other looks and its number.
func TestAnOfferIsOnePaper(t *testing.T) {
	book, digits := designtest.Sentinel(t)
	book.Workshop, book.Address, book.TaxNumber, book.Terms = "Elm Yard", "5 Mill Lane\nhands@elm.example", "XA 404", "The wall is dry."
	doc := design.Clone(job(t, "s2").doc)
	doc.Design.Money.Extras = []design.Extra{
		{Name: "Make good the plaster", Amount: design.Units(150), Role: design.ExtraSold, OwnTax: true, Tax: 7},
		{Name: "Sample", Amount: design.Units(85), Role: design.ExtraSold},
	}
	other := design.Clone(doc)
	other.Design.Walls[0].Groups[0].Wood = "oak"
	doc.Looks = []design.Look{{Name: "Warm", Design: other.Design}}
	p := planOf(t, doc, book)
	oak := planOf(t, other, book)
	const day = "2030-05-14"
	o, why := engine.MakeOffer(p.plan, book, day, 30)
	require.Empty(t, why.Key)
	o = engine.Beside(engine.Follow(doc.Design, p.plan, design.NewRecord(), day).Promising(o), doc, []engine.Result{oak.plan})
	p.doc.Offer = &o
	in := p.input(length.Metric, sheet.A4())
	in.Book, in.Words.Locale = book, "en"
	maker := said(t, make1(t, in, papers.OfferSet))

	link, err := design.EncodeLink(p.doc)
	require.NoError(t, err)
	got, err := design.DecodeLink(link)
	require.NoError(t, err)
	client := planOf(t, got, design.DefaultBook()).input(length.Metric, sheet.A4())
	client.Client, client.Words.Locale = true, "en"
	text := said(t, make1(t, client, papers.OfferSet))
	assert.Equal(t, maker, text)
	for _, want := range []string{
		"Elm Yard", "5 Mill Lane · hands@elm.example · Tax number XA 404", "The wall is dry.", "Offer " + o.Code() + " of 2030-05-14",
		"Make good the plaster, €150.00 without tax", "Sample, €85.00 without tax", "€10.50: 7 % tax on €150.00", "beyond the lines named above",
		"Handed over", "Warm", "Oak", oak.plan.Price.Gross.Format("en"), "Ordered on 2030-05-14: ready between", "Ordered on the last day, 2030-06-13",
		"Who to call: Elm Yard", "1252 × 971 mm",
	} {
		assert.Contains(t, text, want)
	}
	assert.Empty(t, leaks(text, digits))

	changed := o
	changed.Gross += design.Units(1)
	assert.NotEqual(t, o.Code(), changed.Code())
	in.Job.Record.Client.Name = "Ada Beech"
	assert.Contains(t, said(t, make1(t, in, papers.OfferSet)), "For Ada Beech")
}

// What is still open on a client's sheet names every Stop, and no figure of the workshop's.
func TestStillOpenNamesEveryStop(t *testing.T) {
	p := job(t, "s5")
	in := p.input(length.Metric, sheet.A4())
	in.Client = true
	text := strings.Join(strings.Fields(said(t, make1(t, in, papers.OfferSet))), " ")
	stops := 0
	for _, w := range p.plan.WatchOuts {
		if w.Level == check.Stop {
			stops++
			assert.Contains(t, text, in.Words.Say(w.Code, w.Args))
		}
	}
	assert.Positive(t, stops)
}

// An invoice names each rate of tax with what it is taken on, bears the revision that is
// invoiced, and says what it lacks: its number, and that its stage is not due yet.
func TestInvoicesOfTwoRates(t *testing.T) {
	book, _ := designtest.Sentinel(t)
	doc := design.Clone(job(t, "default").doc)
	doc.Design.Money.Extras = []design.Extra{{Name: "Plaster", Amount: design.Units(150), Role: design.ExtraSold, OwnTax: true, Tax: 7}}
	p := lockedDoc(t, doc, book)
	in := p.input(length.Metric, sheet.A4())
	in.Book, in.Words.Locale = book, "en"
	in.Changed = [][]papers.Change{{{Label: "Wood", Was: "Ash", Now: "Oak"}}}
	set := make1(t, in, papers.OrderSet)
	first := said(t, papers.Set{Sheets: of(set, "invoice-1")})
	lock := p.job.Record.Lock
	assert.Contains(t, first, "Invoice\n"+lock.Revision+"\n", "in the corner")
	assert.NotEqual(t, lock.Revision, p.plan.Revision)
	for _, want := range []string{"20 % tax on", "7 % tax on €75.00", "€5.25", "has no number yet", "Invoice number"} {
		assert.Contains(t, first, want)
	}
	assert.NotContains(t, first, "Not due yet", "it was agreed")
	second := said(t, papers.Set{Sheets: of(set, "invoice-2")})
	assert.NotContains(t, second, "has no number yet")
	assert.Contains(t, second, "Not due yet: this stage falls due with the state “Ready”")
	slip := said(t, papers.Set{Sheets: of(set, "change-slip-1")})
	for _, want := range []string{"Agreed before, revision " + lock.Revision, "Agreed with this change, revision " + p.plan.Revision, "The delivery date stays as it was.", "Wood\nAsh\nOak\n"} {
		assert.Contains(t, slip, want)
	}
	ready := p
	ready.job.Record = ready.job.Reached("ready", "2030-06-01")
	in = ready.input(length.Metric, sheet.A4())
	assert.NotContains(t, said(t, papers.Set{Sheets: of(make1(t, in, papers.OrderSet), "invoice-2")}), "Not due yet")

	// By rate all stages together are what was agreed on, to the cent.
	sums := map[float64]design.Amount{}
	bases := design.Amount(0)
	for _, d := range p.job.Payments() {
		tax := design.Amount(0)
		for _, part := range d.Taxes {
			sums[part.Percent] += part.Tax
			bases += part.Base
			tax += part.Tax
		}
		assert.Equal(t, d.Tax, tax.In("EUR"), d.Stage)
	}
	a, _ := p.job.Agreed()
	require.Len(t, a.Taxes, 2)
	for _, part := range a.Taxes {
		assert.Equal(t, part.Tax, sums[part.Percent])
	}
	assert.Equal(t, a.Net, bases.In("EUR"))
}

// What is built at home is no offer of anybody's: its sheet says nothing of what is in a
// price, of delivery or of terms.
func TestBuiltAtHomeIsNoOffer(t *testing.T) {
	in := job(t, "s8").input(length.Metric, sheet.A4())
	in.Client = true
	text := said(t, make1(t, in, papers.OfferSet))
	assert.Contains(t, text, "At a glance\n")
	for _, not := range []string{"Indication", "What is in the price", "What is not", "Delivery", "The time starts with", "Nobody has seen the site"} {
		assert.NotContains(t, text, not)
	}
}
