package session_test

import (
	"strings"
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/page"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ownBook is a price book of a workshop: dearer than the example figures.
func ownBook() design.Book {
	b := design.DefaultBook()
	b.Name, b.Placeholder, b.Currency = "Bench prices", false, "EUR"
	b.Rates.Shop = design.Units(55)
	b.ValidUntil = "2026-12-31"
	return b
}

func openBook(t testing.TB, s *session.Session, text []byte, from string) session.Response {
	t.Helper()
	return ask(t, s, session.Request{Op: "open", Text: string(text), From: from})
}

// wrapped takes away what only keeps signs on one line.
func wrapped(text string) string {
	return strings.NewReplacer("\u2060", "", "\u00a0", " ").Replace(text)
}

// html is everything that an answer puts on the page.
func html(res session.Response) string {
	var b strings.Builder
	for _, f := range res.Fragments {
		b.WriteString(f.HTML + "\n")
	}
	return wrapped(b.String())
}

// read opens a section for a reader and returns what the page shows.
func read(t testing.TB, s *session.Session, reading, section string) string {
	t.Helper()
	require.True(t, set(t, s, "view.reading", reading).OK)
	return html(ask(t, s, session.Request{Op: "section", Name: section}))
}

func TestAPriceBookTakesForce(t *testing.T) {
	s := fresh()
	before := s.Plan().Price
	text := design.EncodeBook(ownBook())
	res := openBook(t, s, text, "file")
	require.True(t, res.OK, "%v", res.Faults)
	require.NotNil(t, res.Book)
	assert.Equal(t, string(text), *res.Book, "the page keeps its canonical text")
	assert.Empty(t, res.Text, "what is kept of the design stays")
	assert.False(t, res.CanUndo, "prices are no step of the design's history")
	assert.Contains(t, res.Announce, "Bench prices")
	assert.Equal(t, "EUR", s.Plan().Price.Currency)
	assert.Equal(t, ownBook().Code(), s.Plan().BookCode)

	money := read(t, s, "maker", "money")
	assert.Contains(t, money, "Bench prices, code "+ownBook().Code()+", in EUR.")
	assert.Contains(t, money, "It holds until 2026-12-31.")
	assert.NotContains(t, money, "Example figures")
	assert.NotContains(t, read(t, s, "client", "money"), "Example figures")

	back := ask(t, s, session.Request{Op: "act", Name: "example-book"})
	require.NotNil(t, back.Book)
	assert.Empty(t, *back.Book)
	require.True(t, set(t, s, "view.reading", "maker").OK)
	assert.Equal(t, before, s.Plan().Price)
	assert.Contains(t, read(t, s, "client", "money"), "Example figures")
}

func TestAnEditLeavesTheBookAlone(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	res := set(t, s, group+".wood", "oak")
	assert.Nil(t, res.Book)
	assert.Equal(t, "EUR", s.Plan().Price.Currency)
	assert.Nil(t, ask(t, s, session.Request{Op: "undo"}).Book)
	assert.Equal(t, "EUR", s.Plan().Price.Currency)
}

// What the page kept comes first at the next start; the job after it.
func TestAKeptBookComesBackWithoutAWord(t *testing.T) {
	s := fresh()
	res := openBook(t, s, design.EncodeBook(ownBook()), "saved")
	require.True(t, res.OK)
	assert.Empty(t, res.Announce)
	job := openBook(t, s, design.Encode(design.Default()), "saved")
	require.True(t, job.OK)
	assert.Equal(t, "EUR", s.Plan().Price.Currency)
}

func TestSavedPricesOpenAgain(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	file := ask(t, s, session.Request{Op: "save", Name: "book"}).File
	require.NotNil(t, file)
	assert.Equal(t, "bench-prices-"+ownBook().Code()+".json", file.Name)
	assert.Equal(t, string(design.EncodeBook(ownBook())), file.Text)

	selling := ask(t, s, session.Request{Op: "save", Name: "selling-book"}).File
	require.NotNil(t, selling)
	want, err := engine.SellingBook(ownBook())
	require.NoError(t, err)
	assert.Equal(t, string(design.EncodeSelling(want)), selling.Text)
	design := ask(t, s, session.Request{Op: "save"}).File
	assert.Contains(t, design.Text, "blockfield design")
}

// A client who opens the workshop's selling book reads the very range that the
// workshop's own page says that clients see.
func TestASellingBookGivesTheWorkshopsRange(t *testing.T) {
	workshop := fresh()
	openBook(t, workshop, design.EncodeBook(ownBook()), "file")
	said := read(t, workshop, "maker", "money")
	_, rest, found := strings.Cut(said, "The client sees ")
	require.True(t, found)
	sees, _, _ := strings.Cut(rest, ".</p>")
	selling := ask(t, workshop, session.Request{Op: "save", Name: "selling-book"}).File.Text

	client := fresh()
	assert.NotContains(t, read(t, client, "client", "money"), sees)
	res := openBook(t, client, []byte(selling), "file")
	require.True(t, res.OK, "%v", res.Faults)
	require.NotNil(t, res.Book)
	assert.Equal(t, selling, *res.Book)
	page := read(t, client, "client", "money")
	assert.Contains(t, page, sees)
	assert.NotContains(t, page, "Example figures")
	assert.Contains(t, page, "from the selling book that was opened here")
	assert.Contains(t, page, `data-act="example-book"`, "and the way back")
	assert.Contains(t, read(t, client, "maker", "money"), "Example figures", "the costs are still those of the examples")
	assert.Equal(t, design.DefaultBook().Code(), client.Plan().BookCode)
}

// A client reads whose prices the range is made of and until when; the day after
// the last one, that they do not hold any more. Made-up figures have no name.
func TestAClientReadsWhosePricesTheseAre(t *testing.T) {
	workshop := fresh()
	assert.NotContains(t, read(t, workshop, "client", "money"), "By the prices of")
	openBook(t, workshop, design.EncodeBook(ownBook()), "file")
	selling := ask(t, workshop, session.Request{Op: "save", Name: "selling-book"}).File.Text

	for day, lapsed := range map[string]bool{"": false, "2026-12-31": false, "2027-01-01": true} {
		client := fresh()
		require.True(t, ask(t, client, session.Request{Op: "open", Text: selling, From: "file"}).OK)
		ask(t, client, session.Request{Op: "hello", Today: day})
		text := read(t, client, "client", "money")
		assert.Contains(t, text, "By the prices of “Bench prices”, until 2026-12-31.", day)
		assert.Equal(t, lapsed, strings.Contains(text, "These prices held until 2026-12-31."), "on %q", day)
		text = read(t, client, "maker", "money")
		assert.Contains(t, text, "By the prices of “Bench prices”, until 2026-12-31.", day)
		assert.Equal(t, lapsed, strings.Contains(text, "These prices held until 2026-12-31."), "on %q", day)
	}
	assert.Contains(t, read(t, workshop, "client", "money"), "By the prices of “Bench prices”, until 2026-12-31.")
}

// A client's range comes out of the selling book: it is the same whatever
// private book has the same selling book.
func TestRangeDoesNotTellPrivateBooksApart(t *testing.T) {
	other := ownBook()
	other.Rates.Shop, other.Rates.Overhead = ownBook().Rates.Shop+design.Units(8), ownBook().Rates.Overhead-design.Units(8)
	pages := map[string]bool{}
	for _, b := range []design.Book{ownBook(), other} {
		s := fresh()
		openBook(t, s, design.EncodeBook(b), "file")
		pages[read(t, s, "client", "money")] = true
	}
	assert.Len(t, pages, 1)
}

func TestRefusedBooksLeaveTheOldOne(t *testing.T) {
	good := string(design.EncodeBook(ownBook()))
	swap := func(old, now string) string {
		require.Contains(t, good, old)
		return strings.Replace(good, old, now, 1)
	}
	for name, c := range map[string]struct{ text, path, value, allowed string }{
		"truncated":        {good[:len(good)/2], "", "", ""},
		"missing rate":     {swap(`"shop": "55",`, ""), "rates.shop", "", ""},
		"negative rate":    {swap(`"shop": "55"`, `"shop": "-1"`), "rates.shop", "-1", "0"},
		"rate of two":      {swap(`"shop": "55"`, `"shop": "55 CHF"`), "rates.shop", "55 CHF", ""},
		"unknown currency": {swap(`"EUR"`, `"EURO"`), "currency", "EURO", ""},
		"newer":            {swap(`"version": 1`, `"version": 7`), "version", "7", "1"},
		"ends before it begins": {swap(`"validFrom": ""`, `"validFrom": "2027-01-01"`),
			"validUntil", "2026-12-31", "2027-01-01"},
		"counted by the moon": {strings.Replace(good, `"per": "stick bought"`, `"per": "full moon"`, 1), "tasks[6].per", "full moon", "stick bought, stop visit, survey"},
		"selling, truncated":  {`{"format": "blockfield selling book", "version": 1, "currency": "EUR", "job": `, "", "", ""},
		"selling, price gone": {strings.Replace(string(design.EncodeSelling(engine.ExampleSelling())), `"panel": "`+engine.ExampleSelling().Panel.String()+`",`, "", 1),
			"panel", "", ""},
	} {
		t.Run(name, func(t *testing.T) {
			s := fresh()
			openBook(t, s, []byte(good), "file")
			before := s.Plan()
			res := openBook(t, s, []byte(c.text), "file")
			assert.False(t, res.OK)
			assert.Nil(t, res.Book)
			require.NotEmpty(t, res.Faults)
			assert.Equal(t, c.path, res.Faults[0].Path)
			assert.Contains(t, res.Faults[0].Message, c.value)
			assert.Contains(t, res.Faults[0].Message, c.allowed)
			assert.Equal(t, "The prices stay as they were: Bench prices.", res.Stays)
			assert.Equal(t, before, s.Plan())
		})
	}
}

// A book is put in force on its days only, either side of the first and of the
// last; one that was in force stays so, and its watch-out says that it is over.
func TestABookIsOpenedOnItsDays(t *testing.T) {
	own := ownBook()
	own.ValidFrom = "2026-02-01"
	selling := engine.ExampleSelling()
	selling.ValidUntil = "2026-12-31"
	for _, c := range []struct {
		text       []byte
		today      string
		path, want string
	}{
		{design.EncodeBook(own), "2026-01-31", "validFrom", "2026-02-01"},
		{design.EncodeBook(own), "2026-02-01", "", ""},
		{design.EncodeBook(own), "2026-12-31", "", ""},
		{design.EncodeBook(own), "2027-01-01", "validUntil", "2026-12-31"},
		{design.EncodeSelling(selling), "2026-12-31", "", ""},
		{design.EncodeSelling(selling), "2027-01-01", "validUntil", "2026-12-31"},
	} {
		s := fresh()
		res := ask(t, s, session.Request{Op: "open", Text: string(c.text), From: "file", Today: c.today})
		if c.path == "" {
			assert.True(t, res.OK, "%s: %v", c.today, res.Faults)
			continue
		}
		require.NotEmpty(t, res.Faults, c.today)
		assert.Equal(t, c.path, res.Faults[0].Path)
		assert.Contains(t, res.Faults[0].Message, c.want)
		assert.Contains(t, res.Faults[0].Message, c.today)
		assert.NotEmpty(t, res.Stays)
		assert.Nil(t, res.Book)
		kept := ask(t, s, session.Request{Op: "open", Text: string(c.text), From: "saved", Today: c.today})
		assert.True(t, kept.OK, "kept by this browser: %v", kept.Faults)
	}
}

// Either side of the last day, as the page says which day it is.
func TestABookPastItsDayIsSaid(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	require.True(t, set(t, s, "view.reading", "maker").OK)
	const sentence = "held until 2026-12-31"
	on := func(today string) string {
		return html(ask(t, s, session.Request{Op: "section", Name: "money", Today: today}))
	}
	assert.NotContains(t, on("2026-12-31"), sentence)
	assert.Contains(t, on("2027-01-01"), sentence)
	assert.Contains(t, on("next week"), sentence, "no day: the one before is kept")
	assert.NotContains(t, on("2026-12-31"), sentence)
	assert.NotContains(t, read(t, s, "client", "money"), sentence)
}

// An offer that came with a design is said to whoever reads the price, and
// what has become of it.
func TestALapsedOfferIsSaid(t *testing.T) {
	doc := design.Default()
	doc.Offer = &design.Offer{
		Revision: doc.Design.Revision(), BookCode: ownBook().Code(), Currency: "EUR",
		Net: design.Units(3060), Tax: design.Units(612), Gross: design.Units(3672), ValidUntil: "2026-11-24",
	}
	for _, reading := range []string{"client", "maker"} {
		s := fresh()
		require.True(t, openBook(t, s, design.Encode(doc), "file").OK)
		require.True(t, set(t, s, "view.reading", reading).OK)
		on := func(today string) string {
			return html(ask(t, s, session.Request{Op: "section", Name: "money", Today: today}))
		}
		assert.Contains(t, on("2026-11-24"), "Offered at €3,672.00 with tax, until 2026-11-24.", reading)
		assert.NotContains(t, on("2026-11-24"), "an indication now", reading)
		assert.Contains(t, on("2026-11-25"), "an indication now", reading)
		assert.NotContains(t, on("2026-11-25"), "has changed since", reading)
		set(t, s, group+".wood", "oak")
		assert.Contains(t, on("2026-11-24"), "has changed since it was offered", reading)
	}
}

// Nothing private reaches a client, though the maker's book is in force in the
// same browser: no figure of the book, no line of the price, no figure of the
// selling book either; neither on the page nor in the file or the link. Beside the
// range, and nowhere else, stands whose prices it is made of.
func TestNoPrivateFigureReachesAClient(t *testing.T) {
	book, digits := designtest.Sentinel(t)
	text := string(design.EncodeBook(book))
	for _, d := range digits {
		require.True(t, strings.Contains(text, "."+d), "the book holds %s", d)
	}
	s := fresh()
	require.True(t, openBook(t, s, []byte(text), "file").OK)
	set(t, s, "money.budget", "100")
	var secrets []string
	for _, d := range digits {
		secrets = append(secrets, "."+d)
	}
	price := s.Plan().Price
	for _, l := range price.Lines {
		secrets = append(secrets, l.Amount.Format("en"))
	}
	for _, m := range []interface{ Format(string) string }{
		price.BoughtIn, price.Markup, price.Labour, price.Overhead, price.Direct, price.Contingency, price.Cost,
		price.List, price.Net, price.Margin, price.Gross, price.Low, price.High,
	} {
		secrets = append(secrets, m.Format("en"))
	}
	secrets = append(secrets, price.Net.Whole("en"), price.Gross.Whole("en"), price.Low.Whole("en"), price.High.Whole("en"))
	selling := ask(t, s, session.Request{Op: "save", Name: "selling-book"}).File.Text
	for _, name := range []string{"fieldM2", "fineWoodL", "middleWoodL", "hangingHand"} {
		_, rest, ok := strings.Cut(selling, `"`+name+`": `)
		require.True(t, ok)
		figure, _, _ := strings.Cut(rest, "\n")
		secrets = append(secrets, name, strings.Trim(figure, `",`)+" €", "€"+strings.Trim(figure, `",`)+"<")
	}

	leaks := func(text string) []string { return leaked(text, secrets) }
	require.True(t, set(t, s, "view.reading", "client").OK)
	byName := map[string]bool{}
	for i, section := range page.Sections(page.Client) {
		shown := html(ask(t, s, session.Request{Op: "section", Name: section, Today: "2030-01-01"}))
		require.NotEmpty(t, shown)
		assert.Empty(t, leaks(shown), section)
		edited := html(set(t, s, group+".wood", design.Woods()[i]))
		assert.Empty(t, leaks(edited), "%s, after an edit", section)
		byName[section] = strings.Contains(shown+edited, book.Name)
	}
	assert.True(t, byName[page.Money], "whose prices they are")
	for _, section := range []string{page.Look, page.Sound, page.Wall} {
		assert.False(t, byName[section], "the name of the prices, in %s", section)
	}
	assert.Empty(t, leaks(ask(t, s, session.Request{Op: "save"}).File.Text))
	link := ask(t, s, session.Request{Op: "link"}).Link
	back, err := design.DecodeLink(strings.TrimPrefix(link, "#"))
	require.NoError(t, err)
	assert.Empty(t, leaks(string(design.Encode(back))))
	secrets = append(secrets, book.Name)
	assert.Empty(t, leaks(ask(t, s, session.Request{Op: "save"}).File.Text+string(design.Encode(back))))

	// The net can catch: the maker's page is full of them.
	assert.NotEmpty(t, leaks(read(t, s, "maker", "money")))
}

// One click pulls a lever, as one step, and the price has come down by what it
// said.
func TestALeverIsOneStep(t *testing.T) {
	s := fresh()
	set(t, s, "view.reading", "maker")
	set(t, s, "money.budget", "2000")
	shown := html(ask(t, s, session.Request{Op: "section", Name: "money"}))
	_, rest, ok := strings.Cut(shown, `data-act="lever" data-path="`)
	require.True(t, ok, "over the budget")
	key, _, _ := strings.Cut(rest, `"`)
	before, revision := s.Plan().Price.Gross, s.Plan().Revision
	res := ask(t, s, session.Request{Op: "act", Name: "lever", Path: key})
	require.True(t, res.OK, "%v", res.Faults)
	assert.NotEmpty(t, res.Values, "the fields follow")
	assert.Contains(t, shown, "Saves "+before.Sub(s.Plan().Price.Gross).Format("en"))
	assert.Equal(t, revision, ask(t, s, session.Request{Op: "undo"}).Revision)

	set(t, s, "money.budget", "0")
	assert.False(t, ask(t, s, session.Request{Op: "act", Name: "lever", Path: key}).OK, "no lever without a budget")
}

// leaked are the secrets that a text holds.
func leaked(text string, secrets []string) []string {
	var found []string
	for _, secret := range secrets {
		if strings.Contains(text, secret) {
			found = append(found, secret)
		}
	}
	return found
}

// The selling book of the site counts for whoever has opened none: clients read its range,
// no browser keeps it, and a book of one's own takes its place and stays.
func TestTheSitesSellingBook(t *testing.T) {
	selling, err := engine.SellingBook(ownBook())
	require.NoError(t, err)
	given := string(design.EncodeSelling(selling))
	s := fresh()
	res := ask(t, s, session.Request{Op: "hello", Prices: given, Maker: "Elm Yard", Workshop: "post@elm.example"})
	assert.Nil(t, res.Book)
	money := read(t, s, "client", "money")
	assert.Contains(t, money, "€")
	assert.NotContains(t, money, "Example figures")
	assert.Contains(t, read(t, s, "client", "papers"), "Elm Yard")

	openBook(t, s, design.EncodeBook(ownBook()), "saved")
	ask(t, s, session.Request{Op: "hello", Prices: given})
	assert.Equal(t, ownBook().Code(), s.Plan().BookCode)
	other := fresh()
	openBook(t, other, design.EncodeBook(ownBook()), "saved")
	res = ask(t, other, session.Request{Op: "hello", Prices: given})
	assert.Contains(t, read(t, other, "maker", "money"), "Bench prices", "a book that is open already stays")

	back := ask(t, s, session.Request{Op: "act", Name: "example-book"})
	assert.Empty(t, *back.Book)
	assert.Contains(t, read(t, s, "client", "money"), "Example figures")
	broken := fresh()
	ask(t, broken, session.Request{Op: "hello", Prices: "{"})
	assert.Contains(t, read(t, broken, "client", "money"), "Example figures")
}
