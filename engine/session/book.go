package session

import (
	"encoding/json"
	"errors"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/pricelist"
)

// The price book is edited on the page of its maker, who asks for it. Its steps are a
// history of its own, since they are none of the design. Books that gave way to another
// one stand on a shelf, which the page keeps beside the one in force.

// desk is where a price book is edited.
type desk struct {
	open       bool
	group      string // that is shown
	find       string // what its rows are searched for; empty: not at all
	undo, redo []design.Book
}

// mostBookSteps bounds the history of a book.
const mostBookSteps = 100

// desked is the desk for the page; nil where it is not asked for.
func (s *Session) desked() *page.BookDesk {
	if s.section != page.Money || s.now.doc.View.Reading != page.Maker || s.prices.sellingOnly {
		return nil
	}
	out := &page.BookDesk{
		Open: s.desk.open, Group: s.desk.group, Find: s.desk.find,
		CanUndo: len(s.desk.undo) > 0, CanRedo: len(s.desk.redo) > 0,
	}
	for _, text := range s.shelf {
		if b, err := design.DecodeBook([]byte(text)); err == nil {
			out.Shelf = append(out.Shelf, b)
		} else {
			out.Unread++
		}
	}
	return out
}

// setBook edits the price book in force.
func (s *Session) setBook(path string, req Request) Response {
	before := s.prices.book()
	next, err := design.SetBook(before, path, req.Value, s.units())
	if err == nil {
		err = s.reviseBook(next)
	}
	if err != nil {
		return s.refuseAt(req.Path, err)
	}
	res := s.common(Response{Fragments: page.Fragments(s.input(), req.Path), Book: &s.prices.text})
	res.Text = ""
	for _, c := range design.BookChanges(before, s.prices.book(), s.units()) {
		if c.Path != req.Path {
			res.Values = append(res.Values, Value{c.Path, c.Text})
		}
	}
	return res
}

// reviseBook puts the next state of the edited book in force, as a step of its history.
// The example figures become a book of the workshop by their first edit.
func (s *Session) reviseBook(next design.Book) error {
	before := s.prices.book()
	if before.Code() == next.Code() {
		return nil
	}
	if before.Code() == design.DefaultBookCode() && next.Name == before.Name {
		next.Name = s.reader().Say("book/own-name")
	}
	if err := s.priced(privatePrices(next)); err != nil {
		return err
	}
	s.desk.undo = append(s.desk.undo, before)
	if len(s.desk.undo) > mostBookSteps {
		s.desk.undo = s.desk.undo[1:]
	}
	s.desk.redo = nil
	return nil
}

// bookStep goes one step back or on in the history of the book.
func (s *Session) bookStep(from, to *[]design.Book) error {
	n := len(*from)
	if n == 0 {
		return nil
	}
	before, then := s.prices.book(), (*from)[n-1]
	if err := s.priced(privatePrices(then)); err != nil {
		return err
	}
	*from, *to = (*from)[:n-1], append(*to, before)
	return nil
}

// deskActs are the commands about the price book, without their prefix.
var deskActs = map[string]func(*Session, Request) error{
	"open":  func(s *Session, _ Request) error { s.desk.open = true; return nil },
	"close": func(s *Session, _ Request) error { s.desk.open, s.desk.find = false, ""; return nil },
	"group": func(s *Session, req Request) error { s.desk.group, s.desk.find = req.Path, ""; return nil },
	"undo":  func(s *Session, _ Request) error { return s.bookStep(&s.desk.undo, &s.desk.redo) },
	"redo":  func(s *Session, _ Request) error { return s.bookStep(&s.desk.redo, &s.desk.undo) },
	"copy": func(s *Session, _ Request) error {
		next := design.CloneBook(s.prices.book())
		if next.ValidFrom = s.today; next.ValidUntil < next.ValidFrom {
			next.ValidUntil = ""
		}
		next.Name = s.reader().Say("book/next-name", map[string]any{"name": next.Name})
		s.shelve()
		return s.reviseBook(next)
	},
	"take": func(s *Session, req Request) error {
		i, err := s.onShelf(req.Path)
		if err != nil {
			return err
		}
		next, err := readPrices([]byte(s.shelf[i]), design.BookFormat, s.today)
		if err != nil {
			return err
		}
		s.shelve()
		return s.putBook(next)
	},
	"forget": func(s *Session, req Request) error {
		i, err := s.onShelf(req.Path)
		if err == nil {
			s.shelf = slices.Delete(s.shelf, i, i+1)
		}
		return err
	},
}

// deskAct does one of the commands about the price book.
func (s *Session) deskAct(name string, req Request) Response {
	do, known := deskActs[name]
	if !known {
		return s.refuse(errors.New("internal error: no such command: " + strconv.Quote(req.Name)))
	}
	return s.revised(do(s, req))
}

// alterBook adds an entry to a list of the book, takes one out, or says that figures are
// the workshop's own.
func (s *Session) alterBook(req Request) Response {
	path := strings.TrimPrefix(req.Path, design.BookPrefix)
	next, err := s.prices.book(), error(nil)
	invented, _ := next.Invented()
	switch req.Name {
	case "add":
		next, err = design.AddToBook(next, path)
	case "remove":
		next, err = design.RemoveFromBook(next, path)
	default:
		next = design.ConfirmBook(next, path)
	}
	if err == nil {
		err = s.reviseBook(next)
	}
	res := s.revised(err)
	if left, _ := s.prices.book().Invented(); req.Name == "confirm" && path == "" && len(res.Faults) == 0 {
		res.Announce = s.reader().Say("book/confirm-taken", map[string]any{"n": invented - left})
	}
	return res
}

// revised answers a command about the book with the whole section.
func (s *Session) revised(err error) Response {
	if err != nil {
		return s.refuse(err)
	}
	res := s.whole("")
	res.Text = ""
	res.Book, res.Shelf = &s.prices.text, s.shelfText()
	return res
}

// onShelf is the place on the shelf of the book with a code.
func (s *Session) onShelf(code string) (int, error) {
	i := slices.IndexFunc(s.shelf, func(text string) bool {
		b, err := design.DecodeBook([]byte(text))
		return err == nil && b.Code() == code
	})
	if i < 0 {
		return i, errors.New("internal error: no such price book: " + strconv.Quote(code))
	}
	return i, nil
}

// shelve puts the workshop's own book in force on the shelf, once.
func (s *Session) shelve() {
	if text := s.prices.text; text != "" && !s.prices.sellingOnly && !slices.Contains(s.shelf, text) {
		s.shelf = append(s.shelf, text)
	}
}

// shelfFormat opens the text of the shelf.
const shelfFormat = "blockfield price books"

// shelfFile is the shelf as the page keeps it. A book that cannot be read stays in it.
type shelfFile struct {
	Format string   `json:"format"`
	Books  []string `json:"books"`
}

func (s *Session) shelfText() *string {
	data, err := json.Marshal(shelfFile{shelfFormat, s.shelf})
	if err != nil {
		panic("session: internal error: " + err.Error())
	}
	text := string(data)
	return &text
}

// openShelf takes up the books that the page has kept.
func (s *Session) openShelf(req Request) Response {
	var kept shelfFile
	if err := json.Unmarshal([]byte(req.Text), &kept); err != nil {
		return s.refuse(err)
	}
	s.shelf = kept.Books
	return s.whole("")
}

// openList puts the prices of a list of goods into the book in force, as a step of its
// history. One that is refused leaves the book as it was.
func (s *Session) openList(req Request) Response {
	if s.prices.sellingOnly {
		return Response{Faults: []Fault{{Message: s.reader().Say("prices/list-no-book")}}}
	}
	next, err := pricelist.Read(s.prices.book(), []byte(req.Text))
	if wrong, ok := errors.AsType[pricelist.Faults](err); ok {
		res := Response{Stays: s.booksName("page/book-stays")}
		for _, f := range wrong {
			res.Faults = append(res.Faults, Fault{Message: f.Say(s.reader())})
		}
		return res
	}
	if err := s.reviseBook(next); err != nil {
		return s.refuse(err)
	}
	res := s.revised(nil)
	res.Announce = s.reader().Say("page/list-read")
	return res
}
