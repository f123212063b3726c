package engine

import (
	"blockfield/engine/bench"
	"blockfield/engine/calendar"
	"blockfield/engine/check"
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
// date, for a number of days, but not beyond the last day of the price book. hindrance
// says why there is none; else it is zero.
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
	return design.Offer{
		Revision: r.Revision, BookCode: r.BookCode, Currency: r.Price.Currency, ValidUntil: until,
		Net: offered(r.Price.Net), Tax: offered(r.Price.Tax), Gross: offered(r.Price.Gross),
	}, words.Phrase{}
}

func offered(m money.Money) design.Amount {
	a, err := design.ParseAmount(m.Plain())
	if err != nil {
		panic("engine: internal error: a price is no amount: " + m.Plain())
	}
	return a
}

// Promising returns an offer with the days between which the job is ready: at the earliest
// as the schedule stands, at the latest where every task takes its longest and the work
// begins on the last day on which the offer holds, unless its first day is fixed. An offer
// without a calendar says nothing of days.
func (j Job) Promising(o design.Offer) design.Offer {
	last, ok := calendar.Parse(o.ValidUntil)
	if !ok || !j.Days.Dated || j.design.Work.OwnBuild {
		return o
	}
	if j.Days.Asked || j.Days.Needed {
		last = j.Days.Start
	}
	w := j.work(j.design, atWorst)
	from := j.Days.Plan.Ready.Day()
	by := schedule.Make(w.tasks, max(last, j.Days.Start), w.hours, j.Record.Days.People, bench.CrewShare).Ready.Day()
	o.ReadyFrom, o.ReadyBy = from.String(), max(from, by).String()
	return o
}
