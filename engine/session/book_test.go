package session_test

import (
	"fmt"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/pricelist"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// atTheBook is a maker's session with the price book open for editing.
func atTheBook(t testing.TB, book design.Book) *session.Session {
	t.Helper()
	s := fresh()
	require.True(t, openBook(t, s, design.EncodeBook(book), "file").OK)
	read(t, s, "maker", "money")
	act(t, s, session.Request{Name: "book-open"})
	return s
}

// The first figure that a maker types makes a book of the examples; the page keeps it,
// and everything that it concerns follows.
func TestAPriceBookIsEdited(t *testing.T) {
	s := fresh()
	closed := read(t, s, "maker", "money")
	assert.Contains(t, closed, `data-act="book-open"`)
	assert.NotContains(t, closed, `name="book.`)
	open := html(act(t, s, session.Request{Name: "book-open"}))
	assert.Contains(t, open, `name="book.rates.shop"`)
	assert.Contains(t, open, "¤ an hour")
	assert.Contains(t, open, "figures are invented examples")

	before := s.Plan().Price
	res := set(t, s, "book.rates.shop", "55,50")
	require.True(t, res.OK, "%v", res.Faults)
	require.NotNil(t, res.Book)
	assert.Contains(t, *res.Book, `"shop": "55.5"`)
	assert.Contains(t, *res.Book, `"name": "Own prices"`)
	assert.Empty(t, res.Text, "what is kept of the design stays")
	assert.False(t, res.CanUndo, "no step of the design's history")
	assert.Greater(t, s.Plan().Price.Net.Minor, before.Net.Minor)
	shown := html(res)
	assert.Contains(t, shown, "are still invented examples")
	assert.NotContains(t, shown, `name="book.`, "no fragment holds the control that is being edited")
	assert.NotContains(t, shown, s.Plan().BookCode+"000")

	// Steps of the book's own, beside those of the design.
	set(t, s, group+".wood", "oak")
	set(t, s, "book.policy.margin", "25")
	two := s.Plan().Price.Net
	act(t, s, session.Request{Name: "book-undo"})
	assert.Less(t, s.Plan().Price.Net.Minor, two.Minor)
	assert.Equal(t, "oak", s.Document().Design.Walls[0].Groups[0].Wood)
	act(t, s, session.Request{Name: "book-redo"})
	assert.Equal(t, two, s.Plan().Price.Net)
	act(t, s, session.Request{Name: "book-undo"})
	res = act(t, s, session.Request{Name: "book-undo"})
	require.NotNil(t, res.Book)
	assert.Empty(t, *res.Book, "the example figures again")
	act(t, s, session.Request{Name: "book-undo"}) // there is nothing more
}

// An entry that was refused is taken back by itself: no step of the book goes with it, and
// the page draws what holds.
func TestARefusedEntryIsTakenBack(t *testing.T) {
	s := atTheBook(t, ownBook())
	require.True(t, set(t, s, "book.rates.office", "41").OK)
	require.False(t, set(t, s, "book.rates.shop", "").OK)
	before := s.Plan().BookCode
	res := ask(t, s, session.Request{Op: "entry"})
	assert.Equal(t, before, s.Plan().BookCode)
	assert.Contains(t, res.Announce, "taken back")
	assert.Regexp(t, `name="book.rates.office" value="41"`, html(res))
}

// A figure that is refused leaves book and price as they were, and says what is allowed.
func TestARefusedFigureChangesNothing(t *testing.T) {
	s := atTheBook(t, ownBook())
	code, price := s.Plan().BookCode, s.Plan().Price
	for path, text := range map[string]string{"book.rates.shop": "much", "book.policy.margin": "5", "book.stages[0].percent": "95", "book.currency": "Euro"} {
		res := set(t, s, path, text)
		require.False(t, res.OK, path)
		assert.Equal(t, path, res.Faults[0].Path)
		assert.NotContains(t, res.Faults[0].Message, "⟪")
		assert.NotEmpty(t, res.Faults[0].Label)
		assert.Nil(t, res.Book)
	}
	assert.Equal(t, code, s.Plan().BookCode)
	assert.Equal(t, price, s.Plan().Price)
}

// What goes along with an edit comes back as values of its fields.
func TestBookEditsShowWhatWentAlong(t *testing.T) {
	s := atTheBook(t, ownBook())
	res := set(t, s, "book.stages[0].percent", "30")
	assert.Equal(t, []session.Value{{Path: "book.stages[2].percent", Value: "30"}}, res.Values)
}

// The rows are searched over all parts of the book.
func TestTheBookIsSearched(t *testing.T) {
	s := atTheBook(t, ownBook())
	found := html(set(t, s, "find.book", "oak board"))
	assert.Contains(t, found, "Frame boards")
	assert.Equal(t, 1, strings.Count(found, "<tr><td>"), "one row")
	assert.NotContains(t, found, `name="find.book"`)
	assert.Contains(t, html(set(t, s, "find.book", "glue")), `name="book.goods.gluePerKg"`)
	assert.Contains(t, html(set(t, s, "find.book", "zebra")), "No row has these words.")
	set(t, s, "find.book", "")
	act(t, s, session.Request{Name: "book-group", Path: "tasks"})
	assert.Contains(t, html(ask(t, s, session.Request{Op: "hello"})), "s per")
}

// The list of goods goes out and comes in as one step; one that is refused changes
// nothing.
func TestGoodsComeAsAList(t *testing.T) {
	s := atTheBook(t, ownBook())
	file := ask(t, s, session.Request{Op: "save", Name: "price-list"}).File
	require.NotNil(t, file)
	assert.True(t, strings.HasSuffix(file.Name, ".csv"))
	assert.Equal(t, string(pricelist.Write(ownBook())), file.Text)

	before := s.Plan().Price
	res := openBook(t, s, []byte(strings.Replace(file.Text, ",3300,", ",6600,", 1)), "file")
	require.True(t, res.OK, "%v", res.Faults)
	assert.Greater(t, s.Plan().Price.BoughtIn.Minor, before.BoughtIn.Minor)
	act(t, s, session.Request{Name: "book-undo"})
	assert.Equal(t, before, s.Plan().Price)

	res = openBook(t, s, []byte(strings.Replace(file.Text, "EUR", "USD", 1)), "file")
	require.False(t, res.OK)
	assert.Contains(t, res.Faults[0].Message, "Row 2, column G (currency)")
	assert.Contains(t, res.Stays, "Bench prices")
	assert.Equal(t, before, s.Plan().Price)
}

// A book that gives way stands on the shelf and comes back from there on a day on which
// it holds.
func TestBooksOnTheShelf(t *testing.T) {
	s := atTheBook(t, ownBook())
	next := ownBook()
	next.Name, next.ValidFrom, next.ValidUntil = "Next year", "2026-01-01", "2027-12-31"
	res := openBook(t, s, design.EncodeBook(next), "file")
	require.NotNil(t, res.Shelf)
	money := html(ask(t, s, session.Request{Op: "hello", Today: "2026-06-30"}))
	assert.Contains(t, money, `data-act="book-take" data-path="`+ownBook().Code()+`"`)
	assert.NotContains(t, money, `data-act="book-take" data-path="`+next.Code()+`"`, "it is in force")

	saved := ask(t, s, session.Request{Op: "save", Name: "book-" + ownBook().Code()}).File
	require.NotNil(t, saved)
	assert.Equal(t, string(design.EncodeBook(ownBook())), saved.Text)

	// Another start of the page.
	other := fresh()
	require.True(t, openBook(t, other, []byte(*res.Shelf), "saved").OK)
	read(t, other, "maker", "money")
	late := ask(t, other, session.Request{Op: "act", Name: "book-take", Path: ownBook().Code(), Today: "2027-01-01"})
	require.False(t, late.OK, "its last day is over")
	took := ask(t, other, session.Request{Op: "act", Name: "book-take", Path: ownBook().Code(), Today: "2026-12-31"})
	require.True(t, took.OK)
	assert.Equal(t, ownBook().Code(), other.Plan().BookCode)
	forgot := ask(t, s, session.Request{Op: "act", Name: "book-forget", Path: ownBook().Code()})
	require.True(t, forgot.OK)
	assert.NotContains(t, *forgot.Shelf, "Bench prices")

	// What cannot be read stays.
	require.True(t, openBook(t, s, []byte(`{"format":"blockfield price books","books":["{}"]}`), "saved").OK)
	assert.Contains(t, html(ask(t, s, session.Request{Op: "hello"})), "cannot be read here")
	act(t, s, session.Request{Name: "book-copy"})
	assert.Contains(t, *act(t, s, session.Request{Name: "book-close"}).Shelf, `"{}"`)
}

// A book that comes from another tab, edit by edit, fills no shelf with what it was.
func TestBooksOfAnotherTabAreNotShelved(t *testing.T) {
	s := atTheBook(t, ownBook())
	for _, name := range []string{"First", "Second"} {
		next := ownBook()
		next.Name = name
		res := openBook(t, s, design.EncodeBook(next), "saved")
		require.True(t, res.OK)
		assert.NotContains(t, *res.Shelf, "Bench prices")
		assert.NotContains(t, *res.Shelf, "First")
	}
}

// The open book is the maker's alone: nobody else's page holds a field or a figure of
// it, and an edit elsewhere does not carry it along.
func TestTheOpenBookIsTheMakers(t *testing.T) {
	sentinel, digits := designtest.Sentinel(t)
	s := atTheBook(t, sentinel)
	for _, group := range []string{"hours", "policy", "woods", "sheets", "finishes", "goods", "tasks"} {
		shown := html(act(t, s, session.Request{Name: "book-group", Path: group}))
		caught := 0
		for _, d := range digits {
			if strings.Contains(shown, d) {
				caught++
			}
		}
		assert.Greater(t, caught, 4, "the net can catch: %s", group)
	}
	assert.NotContains(t, html(set(t, s, group+".wood", "beech")), `name="book.`)
	for _, reading := range []string{"client", "builder"} {
		for _, section := range []string{"look", "sound", "wall", "money", "papers"} {
			shown := read(t, s, reading, section)
			for _, mark := range []string{`name="book.`, `data-path="book.`, `data-act="book-`, `id="book-`} {
				assert.False(t, strings.Contains(shown, mark), "%s %s: %s", reading, section, mark)
			}
			if reading == "client" {
				for _, d := range digits {
					assert.False(t, strings.Contains(shown, d), "%s %s: %s", reading, section, d)
				}
			}
		}
	}
}

// While the book is open the selling book waits; it is the one of the edited book once
// anybody reads it.
func TestTheSellingBookWaitsForTheEdit(t *testing.T) {
	s := atTheBook(t, ownBook())
	assert.Contains(t, html(set(t, s, "book.rates.shop", "90")), "worked out anew when the price book is closed")
	shown := html(act(t, s, session.Request{Name: "book-close"}))
	assert.Contains(t, shown, "The client sees ")
	dear := ownBook()
	dear.Rates.Shop = design.Units(90)
	fresh := fresh()
	openBook(t, fresh, design.EncodeBook(dear), "file")
	want := ask(t, fresh, session.Request{Op: "save", Name: "selling-book"}).File.Text
	assert.Equal(t, want, ask(t, s, session.Request{Op: "save", Name: "selling-book"}).File.Text)
}

// One press takes over all figures that are left: beside it stands how many and that they
// are invented, and undo of the book takes it back.
func TestTakingOverAllFiguresCanBeUndone(t *testing.T) {
	s := fresh()
	read(t, s, "maker", "money")
	act(t, s, session.Request{Name: "book-open"})
	invented := func(res session.Response) int {
		t.Helper()
		require.NotNil(t, res.Book)
		b, err := design.DecodeBook([]byte(*res.Book))
		require.NoError(t, err)
		n, _ := b.Invented()
		return n
	}
	res := set(t, s, "book.rates.shop", "61")
	require.True(t, res.OK)
	n := invented(res)
	require.Greater(t, n, 100)
	shown := html(ask(t, s, session.Request{Op: "section", Name: "money"}))
	assert.Contains(t, shown, fmt.Sprintf("takes over %d figures at once, each of them invented. “Undo in the price book” takes it back.", n))
	res = act(t, s, session.Request{Name: "confirm", Path: "book."})
	assert.Equal(t, fmt.Sprintf("%d invented figures count as your own now. “Undo in the price book” takes that back.", n), res.Announce)
	assert.Zero(t, invented(res))
	res = act(t, s, session.Request{Name: "book-undo"})
	assert.Equal(t, n, invented(res), "the one that was typed stays own")
}
