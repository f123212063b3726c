package engine_test

import (
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
)

// Either side of each limit: a book and an offer hold on their last day, a book
// from its first day on; without a day nothing is said of days.
func TestWhatADaySays(t *testing.T) {
	const firstDay, lastDay = "2026-03-01", "2026-11-25"
	doc := design.Default()
	r := plan(t, doc.Design)
	book := design.DefaultBook()
	book.ValidFrom, book.ValidUntil = firstDay, lastDay
	offered := design.Offer{Revision: r.Revision, ValidUntil: lastDay}
	other := offered
	other.Revision = "000000"
	ordered, otherOrdered := offered, other
	ordered.Agreed, otherOrdered.Agreed = firstDay, firstDay
	for name, c := range map[string]struct {
		today   string
		offer   *design.Offer
		private []string
		public  []string
	}{
		"nobody knows the day":       {today: ""},
		"last day":                   {today: lastDay, offer: &offered},
		"the day after":              {today: "2026-11-26", offer: &offered, private: []string{"price/book-lapsed"}, public: []string{"price/offer-lapsed"}},
		"a year after, no offer":     {today: "2027-01-01", private: []string{"price/book-lapsed"}},
		"first day":                  {today: firstDay},
		"the day before":             {today: "2026-02-28", private: []string{"price/book-early"}},
		"another design by now":      {today: lastDay, offer: &other, public: []string{"price/offer-changed"}},
		"another design, no day":     {today: "", offer: &other, public: []string{"price/offer-changed"}},
		"another design, and late":   {today: "2026-12-01", offer: &other, private: []string{"price/book-lapsed"}, public: []string{"price/offer-changed", "price/offer-lapsed"}},
		"ordered in time, read late": {today: "2026-12-01", offer: &ordered, private: []string{"price/book-lapsed"}},
		"ordered, another by now":    {today: lastDay, offer: &otherOrdered, public: []string{"price/order-changed"}},
		"a month is not one letter":  {today: "2026-02-10", private: []string{"price/book-early"}},
	} {
		t.Run(name, func(t *testing.T) {
			doc.Offer = c.offer
			on := r.On(c.today, doc, book)
			assert.ElementsMatch(t, c.private, dated(r.Private, on.Private))
			assert.ElementsMatch(t, c.public, dated(r.WatchOuts, on.WatchOuts))
		})
	}
	assert.Len(t, r.Private, 0, "the result itself has not changed")
}

// A home builder has no price that a book could be too old for.
func TestADayAtHome(t *testing.T) {
	doc := edit(t, design.Default(), "work.ownBuild = yes")
	book := design.DefaultBook()
	book.ValidUntil = "2020-01-01"
	assert.Empty(t, plan(t, doc.Design).On("2026-11-25", doc, book).Private)
}

// dated lists the codes that are new.
func dated(before, after []check.WatchOut) []string {
	had := codes(before)
	var all []string
	for _, code := range codes(after) {
		i := 0
		for i < len(had) && had[i] != code {
			i++
		}
		if i == len(had) {
			all = append(all, code)
		}
	}
	return all
}
