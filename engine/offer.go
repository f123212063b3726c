package engine

import (
	"math"

	"blockfield/engine/bench"
	"blockfield/engine/calendar"
	"blockfield/engine/check"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/schedule"
	"blockfield/engine/words"
)

// How long an offer may be held open, in days: the bounds of common practice, no
// source.
const (
	fewestOfferDays = 7
	mostOfferDays   = 120
)

// OfferHindrance says why nothing can be offered on a day, an ISO date; the zero
// Phrase where an offer can be made. The prices have to be a workshop's own and
// of that day, and nothing may keep the gate of the offer shut.
func OfferHindrance(r Result, book design.Book, today string) words.Phrase {
	switch {
	case !r.Price.Sold || r.Price.Gross.Minor <= 0:
		return words.Phrase{Key: "offer/no-price"}
	case book.Placeholder:
		return words.Phrase{Key: "offer/no-book"}
	case !design.IsDate(today):
		return words.Phrase{Key: "offer/no-day"}
	case book.Lapsed(today) || book.Early(today):
		return words.Phrase{Key: "offer/book-of-another-day", Args: words.Args{"name": book.Name}}
	}
	if stops := r.ShutAt(check.Offer); len(stops) > 0 {
		return words.Phrase{Key: "offer/gate-shut", Args: words.Args{"n": len(stops)}}
	}
	return words.Phrase{}
}

// MakeOffer returns the snapshot of a price that is held open from a day, an ISO
// date, for a number of days, but not beyond the last day of the price book. It holds all
// that is signed with it: who offers, taxes, payments and terms. hindrance says why there
// is none; else it is zero.
func MakeOffer(r Result, book design.Book, today string, days int) (offer design.Offer, hindrance words.Phrase) {
	if hindrance = OfferHindrance(r, book, today); hindrance.Key != "" {
		return offer, hindrance
	}
	if days < fewestOfferDays || days > mostOfferDays {
		return offer, words.Phrase{Key: "offer/wrong-days", Args: words.Args{"days": days, "low": fewestOfferDays, "high": mostOfferDays}}
	}
	from, ok := calendar.Parse(today)
	if !ok {
		panic("engine: internal error: a date is none: " + today)
	}
	until := (from + calendar.Day(days)).String()
	if book.ValidUntil != "" && book.ValidUntil < until {
		until = book.ValidUntil
	}
	offer = design.Offer{
		Revision: r.Revision, BookCode: r.BookCode, Currency: r.Price.Currency, Made: today, ValidUntil: until,
		Net: offered(r.Price.Net), Tax: offered(r.Price.Tax), Gross: offered(r.Price.Gross),
		Workshop: book.Workshop, Address: book.Address, TaxNumber: book.TaxNumber, ReverseCharge: book.ReverseCharge, Terms: book.Terms,
		Taxes: taxParts(r.Price.Taxes),
	}
	for _, s := range r.Price.Stages {
		offer.Stages = append(offer.Stages, design.OfferedStage{Name: s.Name, Amount: offered(s.Amount)})
	}
	return offer, words.Phrase{}
}

// taxParts are the rates of tax of a price.
func taxParts(all []cost.TaxAmount) []design.TaxPart {
	var parts []design.TaxPart
	for _, t := range all {
		parts = append(parts, design.TaxPart{Percent: t.Percent, Base: offered(t.Base), Tax: offered(t.Amount)})
	}
	return parts
}

// Beside returns an offer with the looks that are kept with the document, and what the
// offered one is called where it is one of them. plans are those of the looks, in their
// order; a look that could not be offered by itself has no price.
func Beside(o design.Offer, doc design.Document, plans []Result) design.Offer {
	for i, look := range doc.Looks[:min(len(doc.Looks), len(plans))] {
		r := plans[i]
		switch {
		case len(r.Groups) == 0: // it cannot be planned
			continue
		case r.Revision == o.Revision:
			o.Look = look.Name
			continue
		}
		g := r.Groups[0]
		other := design.OfferedLook{
			Name: look.Name, Revision: r.Revision, Wood: g.Design.Wood, SecondWood: g.Design.SecondWood,
			Width: g.Built.TotalWidth, Height: g.Built.TotalHeight, Kg: math.Round(10*r.Mass.TotalKg) / 10,
		}
		if r.Price.Sold && r.Price.Currency == o.Currency && len(r.ShutAt(check.Offer)) == 0 {
			other.Gross = offered(r.Price.Gross)
		}
		o.Others = append(o.Others, other)
	}
	return o
}

func offered(m money.Money) design.Amount {
	a, err := design.ParseAmount(m.Plain())
	if err != nil {
		panic("engine: internal error: a price is no amount: " + m.Plain())
	}
	return a
}

// Promising returns an offer with the days between which the job is ready: at the earliest
// as the schedule usually goes, at the latest where every task takes its longest; once for
// whoever orders on the day of the offer, and once for whoever does on its last day. Work
// whose first day is fixed, or follows from the day of need, begins no earlier. An offer
// without a calendar says nothing of days.
func (j Job) Promising(o design.Offer) design.Offer {
	last, ok := calendar.Parse(o.ValidUntil)
	if !ok || !j.Days.Dated || j.design.Work.OwnBuild {
		return o
	}
	first := j.Days.Start
	if made, ok := calendar.Parse(o.Made); ok {
		first = max(first, made)
	}
	usual, worst := j.work(j.design, usually), j.work(j.design, atWorst)
	ready := func(start calendar.Day) (from, by string) {
		people := j.Record.Days.People
		f := schedule.Make(usual.tasks, start, usual.hours, people, bench.CrewShare).Ready.Day()
		b := schedule.Make(worst.tasks, start, worst.hours, people, bench.CrewShare).Ready.Day()
		return f.String(), max(f, b).String()
	}
	o.ReadyFrom, o.ReadyBy = ready(first)
	o.LaterFrom, o.LaterBy = ready(max(first, last))
	if j.Days.Needed {
		o.Wished = j.Days.NeedBy.String()
	}
	return o
}

// PromisedDays says when what was offered is ready, for whoever orders at once and for
// whoever orders on the last day, and how that stands to the day that the client wished
// for. It is empty where the offer does not say.
func PromisedDays(o design.Offer) []words.Phrase {
	if o.ReadyFrom == "" || o.ReadyBy == "" {
		return nil
	}
	first := words.Args{"from": o.ReadyFrom, "by": o.ReadyBy, "day": o.Made}
	var all []words.Phrase
	switch {
	case o.Agreed != "":
		all = append(all, words.Phrase{Key: "offer/ready-first", Args: first})
	case o.LaterFrom == "" || o.LaterBy == "" || o.Made == "" || o.LaterFrom == o.ReadyFrom && o.LaterBy == o.ReadyBy:
		all = append(all, words.Phrase{Key: "offer/ready", Args: words.Args{"from": o.ReadyFrom, "by": o.ReadyBy, "date": o.ValidUntil}})
	default:
		all = append(all, words.Phrase{Key: "offer/ready-first", Args: first},
			words.Phrase{Key: "offer/ready-last", Args: words.Args{"from": o.LaterFrom, "by": o.LaterBy, "date": o.ValidUntil}})
	}
	if o.Wished == "" {
		return all
	}
	latest := max(o.ReadyBy, o.LaterBy) // ISO dates compare as texts
	wish := words.Phrase{Args: words.Args{"wished": o.Wished, "by": latest, "day": o.Made, "from": o.ReadyFrom}}
	switch {
	case latest <= o.Wished:
		wish.Key = "offer/wish-kept"
	case o.ReadyBy <= o.Wished && o.Made != "":
		wish.Key = "offer/wish-kept-first"
	case o.ReadyFrom <= o.Wished:
		wish.Key = "offer/wish-may-be-missed"
	default:
		wish.Key = "offer/wish-missed"
	}
	return append(all, wish)
}
