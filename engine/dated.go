package engine

import (
	"slices"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/words"
)

// ownPriceBook is where the dates of a price book come from.
const ownPriceBook = "the workshop's own price book"

// On returns the result with what is to be said of it on a day: whether the
// price book holds, and whether an offer still does. Today is an ISO date, as
// those of book and offer are, so that they compare as texts; where it is empty
// nobody knows the day, and nothing is said of days.
//
// The day is no input of Plan: a result must be the same tomorrow. It comes in
// here, as late as anybody reads it, because the engine has no clock.
func (r Result) On(today string, doc design.Document, b design.Book) Result {
	r.WatchOuts, r.Private = slices.Clone(r.WatchOuts), slices.Clone(r.Private)
	if r.Price.Sold {
		r.Private = append(r.Private, bookOn(today, b)...)
	}
	if doc.Offer != nil {
		r.WatchOuts = append(r.WatchOuts, offerOn(today, *doc.Offer, r.Revision)...)
	}
	check.Sort(r.WatchOuts)
	check.Sort(r.Private)
	return r
}

// bookOn is what a day says of a price book. Its first and its last day are
// days on which it holds.
func bookOn(today string, b design.Book) []check.WatchOut {
	w := check.WatchOut{Level: check.Caution, Gate: check.Offer, Private: true, Source: ownPriceBook}
	switch {
	case b.Lapsed(today):
		w.Code, w.Args = "price/book-lapsed", words.Args{"name": b.Name, "date": b.ValidUntil}
	case b.Early(today):
		w.Code, w.Args = "price/book-early", words.Args{"name": b.Name, "date": b.ValidFrom}
	default:
		return nil
	}
	return []check.WatchOut{w}
}

// AboutOffer reports whether a watch-out says what has become of an offer.
func AboutOffer(w check.WatchOut) bool {
	return slices.Contains([]string{"price/offer-lapsed", "price/offer-changed", "price/order-changed"}, w.Code)
}

// offerOn is what has become of an offer: its days, and the design that it was
// made for.
func offerOn(today string, offer design.Offer, revision string) []check.WatchOut {
	var all []check.WatchOut
	if offer.Agreed == "" && offer.ValidUntil != "" && today > offer.ValidUntil {
		all = append(all, check.WatchOut{
			Code: "price/offer-lapsed", Level: check.Note,
			Args: words.Args{"date": offer.ValidUntil}, Source: "the offer",
		})
	}
	if offer.Revision != revision {
		w := check.WatchOut{
			Code: "price/offer-changed", Level: check.Note,
			Args: words.Args{"offered": offer.Revision, "now": revision}, Source: "the offer",
		}
		if offer.Agreed != "" {
			w.Code = "price/order-changed"
		}
		all = append(all, w)
	}
	return all
}
