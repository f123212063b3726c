package session_test

import (
	"strconv"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func act(t testing.TB, s *session.Session, req session.Request) session.Response {
	t.Helper()
	req.Op = "act"
	res := ask(t, s, req)
	require.True(t, res.OK, "%v", res.Faults)
	return res
}

// Looks are steps of the history: undoing an edit behind one loses none.
func TestLooksSideBySide(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	assert.Contains(t, read(t, s, "maker", "money"), `data-act="keep-look"`)
	act(t, s, session.Request{Name: "keep-look"})
	poplar := s.Plan()
	set(t, s, group+".wood", "oak")
	page := html(ask(t, s, session.Request{Op: "section", Name: "money"}))
	assert.Contains(t, page, poplar.Price.Gross.Format("en"), "the price of the look that was kept")
	assert.Contains(t, page, s.Plan().Price.Gross.Format("en"), "beside that of the open design")
	assert.Contains(t, page, "lighter", "poplar against oak")

	set(t, s, "looks[0].name", "Pale")
	assert.Equal(t, "Pale", s.Document().Looks[0].Name)
	set(t, s, group+".width", "1.5 m")
	ask(t, s, session.Request{Op: "undo"})
	require.Len(t, s.Document().Looks, 1)
	assert.Equal(t, "Pale", s.Document().Looks[0].Name)

	act(t, s, session.Request{Name: "open-look", Path: "looks[0]"})
	assert.Equal(t, poplar.Revision, s.Plan().Revision)
	assert.Contains(t, html(ask(t, s, session.Request{Op: "hello"})), "This one is open.")
	act(t, s, session.Request{Name: "drop-look", Path: "looks[0]"})
	assert.Empty(t, s.Document().Looks)
	ask(t, s, session.Request{Op: "undo"})
	assert.Len(t, s.Document().Looks, 1)

	for _, path := range []string{"looks[1]", "looks[-1]", "looks", ""} {
		assert.False(t, ask(t, s, session.Request{Op: "act", Name: "open-look", Path: path}).OK, path)
	}
}

// The section Money of a field of 50 × 30 blocks with three looks beside it, after an edit
// of the design and after one of the price book.
func BenchmarkMoneyOfThreeLooks(b *testing.B) {
	s := fresh()
	set(b, s, "view.reading", "maker")
	ask(b, s, session.Request{Op: "section", Name: "money"})
	set(b, s, group+".width", "1810")
	set(b, s, group+".height", "1086")
	for _, wood := range []string{"oak", "ash", "walnut"} {
		set(b, s, group+".wood", wood)
		act(b, s, session.Request{Name: "keep-look"})
	}
	b.Run("design", func(b *testing.B) {
		for i := 0; b.Loop(); i++ {
			require.True(b, set(b, s, "money.discount", strconv.Itoa(i%7+1)).OK)
		}
	})
	b.Run("book", func(b *testing.B) {
		act(b, s, session.Request{Name: "book-open"})
		for i := 0; b.Loop(); i++ {
			require.True(b, set(b, s, "book.rates.shop", strconv.Itoa(40+i%7)).OK)
		}
	})
}

// A client compares by the ranges of the selling book; no figure of the private
// one is on the page.
func TestAClientComparesByRanges(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	act(t, s, session.Request{Name: "keep-look"})
	gross := s.Plan().Price.Gross.Format("en")
	set(t, s, group+".wood", "oak")
	page := read(t, s, "client", "money")
	assert.Contains(t, page, "poplar")
	assert.NotContains(t, page, gross)
	assert.NotContains(t, page, s.Plan().Price.Gross.Format("en"))
}

// An offer holds the price of the day; it goes along in links, an edit is told
// from it, and undo brings it back.
func TestAnOfferIsMade(t *testing.T) {
	const today = "2026-11-20"
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	offer := session.Request{Op: "act", Name: "make-offer", Value: "30", Today: today}
	act(t, s, offer)
	made := s.Document().Offer
	require.NotNil(t, made)
	assert.Equal(t, s.Plan().Revision, made.Revision)
	assert.Equal(t, s.Plan().BookCode, made.BookCode)
	assert.Equal(t, 100*s.Plan().Price.Gross.Minor, made.Gross.Steps(), "cents in ten-thousandths")
	assert.Equal(t, "2026-12-20", made.ValidUntil)
	assert.Contains(t, read(t, s, "client", "money"), "Offered at")

	client := fresh()
	link := ask(t, s, session.Request{Op: "link"}).Link
	require.True(t, ask(t, client, session.Request{Op: "open", Link: link, From: "link"}).OK)
	assert.Equal(t, made, client.Document().Offer)
	seen := read(t, client, "client", "money")
	assert.Contains(t, seen, `<p class="big">€`)
	assert.NotContains(t, seen, "Example figures", "the price is the workshop's")
	ask(t, client, session.Request{Op: "hello", Today: "2026-12-21"})
	assert.Contains(t, read(t, client, "client", "money"), "Example figures", "it is over, and a range of made-up figures is all there is")

	act(t, s, session.Request{Name: "withdraw-offer"})
	assert.Nil(t, s.Document().Offer)
	ask(t, s, session.Request{Op: "undo"})
	assert.Equal(t, made, s.Document().Offer)
	set(t, s, group+".width", "1.5 m")
	assert.Contains(t, read(t, s, "maker", "money"), made.Revision, "another design by now")
}

// The prices end, and so does what is offered by them.
func TestAnOfferEndsWithItsBook(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	act(t, s, session.Request{Name: "make-offer", Value: "60", Today: "2026-11-20"})
	assert.Equal(t, "2026-12-31", s.Document().Offer.ValidUntil)
}

func TestWhatIsNotOffered(t *testing.T) {
	own := func(change func(*design.Book)) *session.Session {
		s, b := fresh(), ownBook()
		change(&b)
		openBook(t, s, design.EncodeBook(b), "file")
		return s
	}
	nothing := func(*design.Book) {}
	atHome := own(nothing)
	set(t, atHome, "work.ownBuild", "yes")
	shut := own(nothing)
	require.True(t, set(t, shut, group+".width", "2 m").OK) // too heavy for hands
	for name, c := range map[string]struct {
		s    *session.Session
		req  session.Request
		want string
	}{
		"example figures": {fresh(), session.Request{Value: "30", Today: "2026-11-20"}, "Example figures"},
		"no day":          {own(nothing), session.Request{Value: "30"}, "today’s date"},
		"six days":        {own(nothing), session.Request{Value: "6", Today: "2026-11-20"}, "7 to 120"},
		"121 days":        {own(nothing), session.Request{Value: "121", Today: "2026-11-20"}, "7 to 120"},
		"lapsed":          {own(nothing), session.Request{Value: "30", Today: "2027-01-01"}, "does not hold today"},
		"a Stop":          {shut, session.Request{Value: "30", Today: "2026-11-20"}, "the offer back"},
		"built at home":   {atHome, session.Request{Value: "30", Today: "2026-11-20"}, "no price"},
	} {
		c.req.Op, c.req.Name = "act", "make-offer"
		res := ask(t, c.s, c.req)
		require.NotEmpty(t, res.Faults, name)
		assert.Contains(t, res.Faults[0].Message, c.want, name)
		assert.Nil(t, c.s.Document().Offer, name)
	}
}
