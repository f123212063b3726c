package cost

import (
	"math"
	"strconv"
	"strings"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// WatchOuts returns what is to be said of a price: for a workshop whether it
// leaves enough and whether the first stage pays for what is bought, and for
// everybody the budget. p is what Calculate made of the book and m; a price
// that lacks goods has nothing to say.
//
// The floor of the margin and the minimum charge are the workshop's own, out
// of its book. All but the budget of a home builder hold figures that no
// client may see.
func (p Price) WatchOuts(b design.Book, m design.Money) []check.WatchOut {
	if p.Currency == "" {
		return nil
	}
	var all []check.WatchOut
	if p.Sold {
		all = append(all, p.belowFloor(b, m)...)
		all = append(all, discount(b, m)...)
		all = append(all, p.deposit()...)
	}
	return append(all, p.overBudget(m)...)
}

// ownBook is where the limits of a workshop come from.
const ownBook = "the workshop's own price book"

// enough reports whether the price leaves what the policy asks for: compared
// in whole cents, so that a price on the floor is on it.
func (p Price) enough(b design.Book) (margin, minimum bool) {
	floor := percent(p.Made, b.Policy.MarginFloor)
	return p.Margin.Cmp(floor) >= 0, p.Made.Cmp(minimumOf(b)) >= 0
}

func minimumOf(b design.Book) money.Money { return (&calculator{book: b}).minimum() }

func (p Price) belowFloor(b design.Book, m design.Money) []check.WatchOut {
	margin, minimum := p.enough(b)
	w := check.WatchOut{
		Level: check.Caution, Gate: check.Offer, Private: true,
		Field: "money.discount", Source: ownBook,
	}
	switch {
	case !margin:
		w.Code = "price/below-floor"
		w.Args = words.Args{
			"left": words.Percent(roundedDown(p.MarginPercent)), "floor": words.Percent(b.Policy.MarginFloor),
		}
	case !minimum:
		w.Code = "price/below-minimum"
		w.Args = words.Args{"net": p.Made, "minimum": minimumOf(b)}
	default:
		return nil
	}
	if d, ok := p.discountThatLeavesEnough(b, m); ok {
		w.Fix = &check.Fix{Path: w.Field, Value: strconv.Itoa(d)}
	}
	return []check.WatchOut{w}
}

// discount says that there is more of it than the workshop's rule allows without the
// owner, and that nobody has said why there is one.
func discount(b design.Book, m design.Money) []check.WatchOut {
	var all []check.WatchOut
	w := check.WatchOut{Gate: check.Offer, Private: true, Field: "money.discount", Source: ownBook}
	limit := b.Policy.DiscountLimit
	if limit > 0 && ppm(m.Discount) > ppm(limit) {
		w.Code, w.Level = "price/discount-limit", check.Stop
		w.Args = words.Args{"discount": words.Quantity{Value: m.Discount, Unit: "%"}, "limit": words.Quantity{Value: limit, Unit: "%"}}
		w.Fix = &check.Fix{Path: w.Field, Value: strconv.FormatFloat(limit, 'f', -1, 64)}
		all = append(all, w)
	}
	if m.Discount > 0 && strings.TrimSpace(m.Reason) == "" {
		all = append(all, check.WatchOut{
			Code: "price/discount-reason", Level: check.Note, Private: true, Field: "money.discountReason",
			Args: words.Args{"discount": words.Quantity{Value: m.Discount, Unit: "%"}}, Source: check.CommonPractice,
		})
	}
	return all
}

// roundedDown keeps 9.6 % of margin from being shown as the floor of 10 %.
func roundedDown(percent float64) float64 { return math.Floor(percent) }

// discountThatLeavesEnough is the largest discount in whole percent below the
// present one with which the price is enough.
func (p Price) discountThatLeavesEnough(b design.Book, m design.Money) (int, bool) {
	c := calculator{book: b}
	for d := int(math.Ceil(m.Discount)) - 1; d >= 0; d-- {
		other := p
		m.Discount = float64(d)
		c.sell(&other, m)
		if margin, minimum := other.enough(b); margin && minimum {
			return d, true
		}
	}
	return 0, false
}

// deposit compares the first stage with what is bought before it is earned.
// The stages stand in the price book, so no edit of the design clears it.
func (p Price) deposit() []check.WatchOut {
	if len(p.Stages) == 0 || p.Stages[0].Amount.Cmp(p.BoughtIn) >= 0 {
		return nil
	}
	needed := 100 * float64(p.BoughtIn.Minor) / float64(p.Gross.Minor)
	return []check.WatchOut{{
		Code: "price/deposit", Level: check.Caution, Gate: check.Buy, Private: true,
		Args: words.Args{
			"deposit": p.Stages[0].Amount, "boughtIn": p.BoughtIn, "share": words.Percent(math.Ceil(needed)),
		},
		Source: check.CommonPractice,
	}}
}

// Budget is what a design may cost, in the currency of the price; nothing where
// it was not said.
func Budget(m design.Money, currency string) money.Money {
	return m.Budget.In(currency)
}

// overBudget compares the budget with what is paid: the price, or the goods of whoever
// builds at home.
func (p Price) overBudget(m design.Money) []check.WatchOut {
	if p.Sold {
		return OverBudget(m, p.Gross)
	}
	return over("price/goods-over-budget", m, p.Materials)
}

// OverBudget compares the budget, which includes tax, with a price that is asked.
func OverBudget(m design.Money, gross money.Money) []check.WatchOut {
	all := over("price/over-budget", m, gross)
	for i := range all {
		all[i].Private = true
	}
	return all
}

func over(code string, m design.Money, paid money.Money) []check.WatchOut {
	budget := Budget(m, paid.Currency)
	if m.Budget == 0 || paid.Cmp(budget) <= 0 {
		return nil
	}
	return []check.WatchOut{{
		Code: code, Level: check.Note,
		Args:  words.Args{"price": paid, "budget": budget, "over": paid.Sub(budget)},
		Field: "money.budget", Source: check.Computed,
	}}
}

// Indication returns the note that a price or a shopping list is no offer as
// long as nobody has surveyed the site.
//
// An offer whose days have run out is an indication too; that takes the date,
// which the engine does not know.
func Indication(w design.Work) []check.WatchOut {
	if w.Survey {
		return nil
	}
	if w.OwnBuild {
		return []check.WatchOut{{
			Code: "price/own-indication", Level: check.Note,
			Field: "work.survey", Source: check.CommonPractice,
		}}
	}
	return []check.WatchOut{{
		Code: "price/indication", Level: check.Note,
		Field: "work.survey", Source: check.CommonPractice,
		Fix: &check.Fix{Path: "work.survey", Value: "yes"},
	}}
}
