package design

import (
	"reflect"
	"sync"
)

// The name and version that open a selling book.
const (
	SellingFormat  = "blockfield selling book"
	SellingVersion = 1
)

// SellingBook is what a public page needs to quote a range, and no more: ten
// rounded prices of what anybody can see of a panel, and how far the range
// reaches. It is fitted to many jobs at once, so that the workshop's rates,
// margin and times cannot be worked back from it: many private books have the
// same selling book. Its name and its last day are those of the private book:
// a client reads whose prices they are and until when they hold.
//
// Prices are without tax and before a discount.
type SellingBook struct {
	Format      string  `json:"format"`
	Version     int     `json:"version"`
	Name        string  `json:"name"` // of the price book that it was made of
	Placeholder bool    `json:"placeholder"`
	Currency    string  `json:"currency"`
	ValidUntil  string  `json:"validUntil"`  // last day on which it holds; may be empty
	Job         Amount  `json:"job"`         // whatever is made
	Panel       Amount  `json:"panel"`       // each panel
	Block       Amount  `json:"block"`       // each glued block
	FieldM2     Amount  `json:"fieldM2"`     // a square metre of field, finished
	FrameM      Amount  `json:"frameM"`      // a metre of frame
	HangingHand Amount  `json:"hangingHand"` // each person for each panel that the workshop hangs
	RoadKm      Amount  `json:"roadKm"`      // a kilometre of all trips, there and back
	SoftwoodL   Amount  `json:"softwoodL"`   // a litre of pine; spruce counts as what costs the same of it
	MiddleWoodL Amount  `json:"middleWoodL"` // of beech; cedar, poplar and ash count as what costs the same of it
	FineWoodL   Amount  `json:"fineWoodL"`   // of oak; maple, cherry and walnut likewise
	Below       float64 `json:"below"`       // percent that the range reaches below
	Above       float64 `json:"above"`       // percent that the range reaches above
}

// sellingTree joins the struct with its rows.
var sellingTree = sync.OnceValue(func() *node { return buildTree(reflect.TypeFor[SellingBook](), sellingRows()) })

// sellingRows is the table of the selling book. Bounds are generous and of our
// own making; a fitted price may be a little below zero where two of them
// share what they stand for.
func sellingRows() []Field {
	price := func(path, doc string) Field { return amountRow(path, -maxBulk, maxBulk, doc) }
	rows := []Field{
		choiceRow("format", "Says that the file is a selling book.", SellingFormat),
		integerRow("version", SellingVersion, SellingVersion, "The version of the file's form."),
		textRow("name", shortText, "What the prices are called, which clients read.").filled(),
		yesNoRow("placeholder", "Whether the figures are invented examples."),
		kindRow("currency", KindCurrency, "Currency of all amounts."),
		kindRow("validUntil", KindDate, "Last day on which the prices hold; may be empty.").optional(),
		price("job", "Price of a job, whatever is made."),
		price("panel", "Price of each panel."),
		price("block", "Price of each glued block."),
		price("fieldM2", "Price of a square metre of field."),
		price("frameM", "Price of a metre of frame."),
		price("hangingHand", "Price of each person for each panel that is hung."),
		price("roadKm", "Price of a kilometre of all trips."),
		price("softwoodL", "Price of a litre of pine; of spruce in proportion to the example figures."),
		price("middleWoodL", "Price of a litre of beech; of cedar, poplar and ash in proportion to the example figures."),
		price("fineWoodL", "Price of a litre of oak; of maple, cherry and walnut in proportion to the example figures."),
		numberRow("below", 0, 90, 1, "%", "How far the range reaches below."),
		numberRow("above", 0, 300, 1, "%", "How far the range reaches above."),
	}
	for i := range rows {
		rows[i].Required = true
	}
	return rows
}

// Lapsed reports whether a day, "2026-03-31", is after the book's last one. An
// empty day is none.
func (s SellingBook) Lapsed(day string) bool { return lapsed(s.ValidUntil, day) }

// ValidateSelling checks every value of a selling book against the table. The
// error, if any, is of type Faults.
func ValidateSelling(s SellingBook) error {
	c := checker{}
	c.parts(sellingTree(), reflect.ValueOf(&s).Elem(), nil)
	return asError(c.all())
}

// EncodeSelling writes a selling book in its canonical form.
func EncodeSelling(s SellingBook) []byte { return file(sellingTree(), reflect.ValueOf(&s).Elem()) }

// DecodeSelling reads a selling book, which must be complete. The error, if
// any, is of type Faults.
func DecodeSelling(data []byte) (SellingBook, error) {
	var s SellingBook
	d := decoder{data: unmarked(data), fresh: nothing}
	if !d.envelope(SellingFormat, SellingVersion) {
		return SellingBook{}, d.all()
	}
	d.read(sellingTree(), reflect.ValueOf(&s).Elem())
	if len(d.faults) == 0 {
		d.parts(sellingTree(), reflect.ValueOf(&s).Elem(), nil)
	}
	if faults := d.all(); faults != nil {
		return SellingBook{}, faults
	}
	return s, nil
}
