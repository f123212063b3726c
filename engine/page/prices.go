package page

import (
	"strings"

	"blockfield/engine"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// quote is the range that a client sees, out of the selling book alone; false
// where there is none. It needs nothing of the private book.
func (v *view) quote() (low, high money.Money, ok bool) {
	d := v.Doc.Design
	if d.Work.OwnBuild || !v.HasBill() || v.SellingWaits {
		return low, high, false
	}
	low, high, err := engine.Quote(d, v.Plan, v.selling())
	return low, high, err == nil && high.Minor > 0
}

func (v *view) selling() design.SellingBook {
	if v.Selling == nil {
		return engine.ExampleSelling()
	}
	return *v.Selling
}

// HasRange reports whether there is a range to show to a client.
func (v *view) HasRange() bool {
	_, _, ok := v.quote()
	return ok
}

// PriceRange is what a client sees of the price: from low to high, tax
// included, and without cents.
func (v *view) PriceRange() string {
	low, high, _ := v.quote()
	return v.T("money/range", "low", low.Whole(v.locale()), "high", high.Whole(v.locale()))
}

// HasPrice reports whether there is a price of the private book to show.
func (v *view) HasPrice() bool { return v.Plan.Price.Sold && v.Plan.Price.Gross.Minor > 0 }

// Example reports whether there is money to show that is made up: for a client
// that of the selling book, for the others that of the price book.
func (v *view) Example() bool {
	switch v.Reading {
	case Client:
		return v.selling().Placeholder && v.HasRange() && !v.OfferHolds() && !v.Ordered()
	case Builder:
		return v.Book.Placeholder && v.HasShopping()
	default:
		return v.Book.Placeholder && v.HasPrice()
	}
}

// ExampleLine says that figures are made up, and what their sign stands for.
func (v *view) ExampleLine() string {
	shown := v.Book.Currency
	if v.Reading == Client {
		shown = v.selling().Currency
	}
	if shown == money.None {
		return v.T("money/example-none")
	}
	return v.T("money/example")
}

// currency is what a book calls its currency, or that it has none.
func (v *view) currency(code string) any {
	if code == money.None {
		return words.Key("prices/no-currency")
	}
	return code
}

// PricesLines say which prices are in force, each a sentence.
func (v *view) PricesLines() []string {
	b := v.Book
	switch {
	case v.SellingOnly:
		lines := []string{v.T("prices/selling-only", "currency", v.currency(v.selling().Currency))}
		for _, line := range []string{v.SellingLine(), v.SellingLapsed()} {
			if line != "" {
				lines = append(lines, line)
			}
		}
		return lines
	case v.ExampleBook():
		return []string{v.T("prices/example")}
	}
	lines := []string{v.T("prices/own", "name", b.Name, "code", v.Plan.BookCode, "currency", v.currency(b.Currency))}
	if days := v.bookDays(b); days != "" {
		lines = append(lines, days)
	}
	if b.Placeholder && len(b.Own) == 0 {
		lines = append(lines, v.T("prices/invented"))
	} else if b.Placeholder {
		lines = append(lines, v.BookCount())
	}
	return lines
}

// SellingLine says whose prices a range is made of and until when they hold;
// empty for made-up ones, which say so themselves.
func (v *view) SellingLine() string {
	s := v.selling()
	switch {
	case s.Placeholder || s.Name == "":
		return ""
	case s.ValidUntil == "":
		return v.T("prices/client-by", "name", s.Name)
	}
	return v.T("prices/client-by-until", "name", s.Name, "date", s.ValidUntil)
}

// SellingLapsed says that the prices of a range do not hold any more; empty
// while they do, and where nobody knows the day.
func (v *view) SellingLapsed() string {
	s := v.selling()
	if !s.Lapsed(v.Today) {
		return ""
	}
	return v.T("prices/client-lapsed", "date", s.ValidUntil)
}

// ExampleBook reports whether the example figures are in force.
func (v *view) ExampleBook() bool {
	return !v.SellingOnly && v.Plan.BookCode == design.DefaultBookCode()
}

// HasSelling reports whether there is a selling book to save.
func (v *view) HasSelling() bool { return v.SellingWaits || v.selling().Format != "" }

// OfferLine is what was offered, as a sentence; empty where nothing was.
func (v *view) OfferLine() string {
	o := v.Doc.Offer
	if o == nil {
		return ""
	}
	gross := o.Gross.In(o.Currency)
	if o.Agreed != "" {
		return v.T("offer/line-agreed", "gross", gross, "date", o.Agreed)
	}
	return v.T("offer/line", "gross", gross, "date", o.ValidUntil)
}

// OfferDelivery says when what was offered is ready; empty where the offer does not say.
func (v *view) OfferDelivery() string {
	o := v.Doc.Offer
	if o == nil {
		return ""
	}
	var all []string
	for _, p := range engine.PromisedDays(*o) {
		all = append(all, v.Words.Say(p.Key, p.Args))
	}
	return strings.Join(all, " ")
}

// OfferNotes say what has become of the offer: that it has lapsed, that the
// design is another by now.
func (v *view) OfferNotes() []string {
	var all []string
	for _, w := range v.Plan.WatchOuts {
		if engine.AboutOffer(w) {
			all = append(all, v.sentence(w))
		}
	}
	return all
}

// LeverLine is one lever as a sentence, with what it saves.
type LeverLine struct{ Key, Sentence, Saves string }

// LeverLines are the levers of a job that is over its budget. Hours are for
// whoever works them.
func (v *view) LeverLines() []LeverLine {
	var all []LeverLine
	for _, l := range v.Levers {
		line := LeverLine{Key: l.Key, Sentence: v.leverSentence(l)}
		saves := "saves"
		if l.Enough {
			saves = "saves-enough"
		}
		amount := l.Saves.Format(v.locale())
		if v.Reading == Client {
			amount, saves = l.Saves.Whole(v.locale()), saves+"-about"
		}
		line.Saves = v.T("lever/"+saves, "money", amount)
		if v.Reading != Client && l.Hours >= leastHours {
			line.Saves += " " + v.T("lever/hours", "hours", hours(l.Hours))
		}
		all = append(all, line)
	}
	return all
}

// leverSentence is what a lever changes, with what a softer wood costs beside money.
func (v *view) leverSentence(l engine.Lever) string {
	said := capital(v.Words.Say("lever/"+l.Key+v.leverReader(l.Key), l.Args))
	if l.Dents {
		said += " " + v.T("lever/dents")
	}
	return said
}

// leastHours is what is worth a word of fewer hours: a tenth, as they are shown.
const leastHours = 0.1

// leverReader is the end of the key for a reader who is spoken to otherwise.
func (v *view) leverReader(key string) string {
	if v.Reading == Client && key == "no-hanging" {
		return "-client"
	}
	return ""
}

// BudgetLine says what the budget is, over the levers.
func (v *view) BudgetLine() string {
	budget := cost.Budget(v.Doc.Design.Money, v.Levers[0].Saves.Currency)
	key := "lever/lead"
	if low, _, ok := v.quote(); v.Reading == Client && ok { // who knows a range only
		key += "-client"
		if low.Cmp(budget) > 0 {
			key += "-below"
		}
	}
	return v.T(key, "budget", budget.Whole(v.locale()))
}
