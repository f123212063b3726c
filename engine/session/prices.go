package session

import (
	"strings"

	"blockfield/engine"
	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/pricelist"
	"blockfield/engine/words"
)

// prices are the figures in force: a workshop's private book with the selling
// book that goes with it, or a selling book alone, with the example figures
// where private ones are wanted. One document is in force at a time; text is
// it, as the page keeps it, and empty for the example figures.
type prices struct {
	planner     engine.Planner
	sold        *sold
	sellingOnly bool
	given       bool // by the site
	text        string
}

// sold is the selling book that goes with a private one, made when it is first asked
// for: that takes the plans of many jobs. Where none can be made clients see no range.
type sold struct {
	made bool
	book design.SellingBook
}

// book is the private book in force.
func (p prices) book() design.Book { return p.planner.Book() }

// selling is the selling book in force; the zero one where there is none.
func (p prices) selling() design.SellingBook {
	if !p.sold.made {
		p.sold.made = true
		if book, err := engine.SellingBook(p.book()); err == nil {
			p.sold.book = book
		}
	}
	return p.sold.book
}

// examplePrices are in force where nobody has opened a book.
func examplePrices() prices {
	return prices{planner: engine.NewPlanner(design.DefaultBook()), sold: &sold{made: true, book: engine.ExampleSelling()}}
}

// privatePrices are those of a workshop's own book.
func privatePrices(book design.Book) prices {
	if book.Code() == design.DefaultBookCode() {
		return examplePrices()
	}
	return prices{planner: engine.NewPlanner(book), sold: &sold{}, text: string(design.EncodeBook(book))}
}

// quote puts the selling book that the site was built with in force where nobody has opened
// a book. It comes with each visit, and no browser keeps it.
func (s *Session) quote(text string) {
	if text == "" || text == s.quoted {
		return
	}
	s.quoted = text
	selling, err := design.DecodeSelling([]byte(text))
	if err != nil || s.prices.text != "" {
		return
	}
	next := sellingPrices(selling)
	next.text, next.given = "", true
	if s.priced(next) != nil {
		s.quoted = "" // the next request tries again
	}
}

// canSell reports whether there is a selling book to hand out.
func (p prices) canSell() bool { return p.selling().Format != "" }

func sellingPrices(selling design.SellingBook) prices {
	p := examplePrices()
	p.sold, p.sellingOnly, p.text = &sold{made: true, book: selling}, true, string(design.EncodeSelling(selling))
	return p
}

// openPrices puts the figures of a file in force. A book that is refused leaves
// those before it in force, and the answer says so. One that this browser kept
// was in force, and stays so when its days are over: its watch-out says that.
func (s *Session) openPrices(req Request, format string) Response {
	day := s.today
	if req.From == "saved" {
		day = ""
	}
	next, err := readPrices([]byte(req.Text), format, day)
	var res Response
	switch {
	case err != nil:
	case req.From == "saved": // the same workshop's, from an earlier visit or another tab
		res, err = s.putInForce(next)
	default:
		res, err = s.inForce(next)
	}
	if err != nil {
		res = s.refuse(err)
		res.Stays = s.booksName("page/book-stays")
		return res
	}
	if req.From == "saved" {
		res.Announce = ""
	}
	return res
}

// readPrices reads a price book or a selling book that is to be in force on a
// day, an ISO date; empty for any day.
func readPrices(text []byte, format, day string) (prices, error) {
	if format == design.SellingFormat {
		selling, err := design.DecodeSelling(text)
		if err == nil {
			err = design.SellingHoldsOn(selling, day)
		}
		return sellingPrices(selling), err
	}
	book, err := design.DecodeBook(text)
	if err == nil {
		err = design.HoldsOn(book, day)
	}
	if err == nil {
		err = bench.Counted(book.Tasks)
	}
	if err != nil {
		return prices{}, err
	}
	return privatePrices(book), nil
}

// inForce plans the open design with other figures, which are no step of its
// history, and shows it.
//
// The workshop's own book before it goes on the shelf.
func (s *Session) inForce(next prices) (Response, error) {
	if next.text != s.prices.text {
		s.shelve()
	}
	return s.putInForce(next)
}

// putInForce does the same without a place on the shelf for the book before.
func (s *Session) putInForce(next prices) (Response, error) {
	if err := s.putBook(next); err != nil {
		return Response{}, err
	}
	announce := "page/book-opened"
	switch {
	case next.text == "":
		announce = "page/book-example"
	case next.sellingOnly:
		announce = "page/selling-opened"
	}
	res := s.whole("")
	res.Announce = s.booksName(announce)
	res.Text = "" // the design is the same, and what is kept of it may be another
	res.Book, res.Shelf = &s.prices.text, s.shelfText()
	return res, nil
}

// putBook puts other figures in force, whose steps begin anew.
func (s *Session) putBook(next prices) error {
	if err := s.priced(next); err != nil {
		return err
	}
	s.desk.undo, s.desk.redo = nil, nil
	return nil
}

// priced plans the open design with other figures.
func (s *Session) priced(next prices) error {
	plan, err := next.planner.Plan(s.now.doc.Design)
	if err != nil {
		return err
	}
	s.prices, s.now.plan, s.looks = next, plan, nil
	return nil
}

// booksName says a sentence about the book in force.
func (s *Session) booksName(key string) string {
	name := any(s.prices.book().Name)
	switch {
	case s.prices.sellingOnly:
		name = words.Key("prices/a-selling-book")
	case s.prices.book().Placeholder:
		name = words.Key("prices/the-examples")
	}
	return s.reader().Say(key, words.Args{"name": name})
}

// The documents of prices that can be saved.
const (
	bookFile    = "book"
	sellingFile = "selling-book"
	listFile    = "price-list"
)

// priceFile is the private book or the selling book as a file.
func (s *Session) priceFile(name string) Response {
	file := &File{Type: "application/json"}
	switch {
	case name == bookFile:
		file.Name = fileName(s.prices.book().Name, s.prices.book().Code())
		file.Text = string(design.EncodeBook(s.prices.book()))
	case name == listFile:
		file.Type = "text/csv"
		file.Name = nameOf(s.reader().Say("book/list-file", words.Args{"name": s.prices.book().Name}), s.prices.book().Code(), ".csv")
		file.Text = string(pricelist.Write(s.prices.book()))
	case name == sellingFile && s.prices.canSell():
		file.Name = fileName(s.reader().Say("prices/selling-file"), s.prices.book().Code())
		file.Text = string(design.EncodeSelling(s.prices.selling()))
	case strings.HasPrefix(name, bookFile+"-"):
		i, err := s.onShelf(strings.TrimPrefix(name, bookFile+"-"))
		if err != nil {
			return s.refuse(err)
		}
		b, err := design.DecodeBook([]byte(s.shelf[i]))
		if err != nil {
			return s.refuse(err)
		}
		file.Name, file.Text = fileName(b.Name, b.Code()), s.shelf[i]
	default:
		return Response{Faults: []Fault{{Message: s.reader().Say("prices/no-selling")}}}
	}
	return Response{File: file}
}
