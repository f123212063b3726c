// Package cost turns the quantities of a job and a price book into a price.
//
// The order is that of a workshop's sheet: goods bought in, with the material
// mark-up; labour, overhead on shop hours and kilometres on top: the direct
// cost; contingency: the cost; divided by one less the wanted margin, but not
// below the minimum charge: the list price; less the discount and rounded up
// to the step of the policy, and with the lines that are sold as they stand: net; tax at
// each rate: gross; and the stages out of gross. A
// margin is a share of the price, a mark-up a share of the cost: a mark-up of
// m is a margin of m/(1+m).
//
// Quantities come in whole steps and prices in ten-thousandths of a currency
// unit, so all arithmetic is on integers. Every line is rounded to the
// smallest unit of the currency, halves away from zero, and every sum is a sum
// of what was rounded: what a person adds up by hand is what stands below.
// Percentages are taken to four decimals.
package cost

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/money"
)

// How many steps of a quantity make one unit of its measure.
const (
	MM3PerM3         = 1_000_000_000
	MLPerLitre       = 1000
	GPerKg           = 1000
	SecondsPerHour   = 3600
	SecondsPerMinute = 60
	MPerKm           = 1000
)

// Steps rounds a measured amount to whole steps, halves away from zero:
// Steps(0.0466559, MM3PerM3) is 46,655,900.
func Steps(amount float64, perUnit int64) int64 {
	return int64(math.Round(amount * float64(perUnit)))
}

// MissingError says that the book has no price for something that the job
// needs.
type MissingError struct {
	Path string // in the price book: "woods"
	What string // "beech", "birch ply 15 mm"
}

// Error names the place in the book and the goods.
func (e *MissingError) Error() string { return e.Path + ": no price for " + e.What }

// ErrTooLarge says that a job comes to more than an amount of money holds: there
// is a slip in the price book, or a book that was made to harm.
var ErrTooLarge = errors.New("the job comes to more than can be reckoned")

// Calculate prices a job with a book. It returns an error that names every
// price that the book does not have, each a *MissingError; ErrTooLarge; or a
// policy that design.DecodeBook has refused before.
func Calculate(q Quantities, b design.Book, m design.Money) (Price, error) {
	if !money.Known(b.Currency) {
		return Price{}, fmt.Errorf("currency: %q is not known", b.Currency)
	}
	if marginPPM := ppm(b.Policy.Margin); marginPPM < 0 || marginPPM >= whole {
		return Price{}, fmt.Errorf("policy.margin: %v %% leaves nothing of the price for the cost (allowed 0 to 99.9999)", b.Policy.Margin)
	}
	c := calculator{book: b, quantities: q}
	p := Price{Currency: b.Currency, Placeholder: b.Placeholder, Sold: !q.OwnBuild}
	c.goods(m.Extras)
	switch {
	case len(c.missing) > 0:
		return Price{}, errors.Join(c.missing...)
	case c.large:
		return Price{}, ErrTooLarge
	}
	p.Lines = c.lines
	p.BoughtIn = c.sum(Material)
	p.Materials = p.BoughtIn.Sub(c.packing)
	if q.OwnBuild {
		return p, nil
	}
	c.work(&p)
	half, shift := c.workSpread()
	if c.large {
		return Price{}, ErrTooLarge
	}
	p.Markup = percent(p.BoughtIn, b.Policy.MaterialMarkup)
	p.Direct = money.Sum(p.BoughtIn, p.Markup, p.Labour, p.Overhead, p.Travel)
	p.Beside = c.sum(Sold)
	c.sell(&p, m)
	p.Low, p.High = c.span(p, m, half, shift)
	p.Stages = stages(p.Gross, b.Stages)
	return p, nil
}

// calculator holds what the steps of one calculation share.
type calculator struct {
	book       design.Book
	quantities Quantities
	lines      []Line
	packing    money.Money // part of the goods that only a workshop needs
	missing    []error
	large      bool // an amount was more than mostLine
}

// amountUnit is how many steps of a design.Amount make one currency unit.
const amountUnit = 10_000

// mostLine is the most that one line may come to, in the smallest unit of the
// currency: a million million euros, or some millions in the currency whose unit
// buys the least. A few hundred such lines, doubled by mark-up and by contingency,
// with a margin of 90 % and a tax of 40 %, are far from the end of an int64.
const mostLine = 1e14

// reckon is price × quantity / per; false where that is more than mostLine.
func reckon(price design.Amount, quantity, per int64, currency string) (money.Money, bool) {
	digits, _ := money.Digits(currency)
	about := float64(price) / amountUnit * float64(quantity) / float64(per) * math.Pow10(digits)
	if math.Abs(about) > mostLine {
		return money.New(0, currency), false
	}
	return money.Priced(price.Steps(), quantity, amountUnit*per, currency, money.HalfAway), true
}

// priced is price × quantity / per.
func (c *calculator) priced(price design.Amount, quantity, per int64) money.Money {
	m, ok := reckon(price, quantity, per, c.book.Currency)
	c.large = c.large || !ok
	return m
}

func (c *calculator) add(role Role, key string, amount money.Money) {
	c.lines = append(c.lines, Line{Key: key, Role: role, Amount: amount})
}

func (c *calculator) lack(path, what string) {
	c.missing = append(c.missing, &MissingError{Path: path, What: what})
}

// sum adds up the lines of a role.
func (c *calculator) sum(role Role) money.Money {
	total := money.New(0, c.book.Currency)
	for _, l := range c.lines {
		if l.Role == role {
			total = total.Add(l.Amount)
		}
	}
	return total
}

// work sets the lines and sums of hours and road.
func (c *calculator) work(p *Price) {
	q, rates := c.quantities, c.book.Rates
	hours := func(role Role, key string, rate design.Amount, seconds int64) {
		if seconds != 0 {
			c.add(role, key, c.priced(rate, seconds, SecondsPerHour))
		}
	}
	hours(Labour, "line/shop-hours", rates.Shop, q.Shop)
	hours(Labour, "line/office-hours", rates.Office, q.Office)
	hours(Labour, "line/site-hours", rates.Site, q.Site)
	hours(Labour, "line/travel-hours", rates.Site, q.Travel)
	hours(Overhead, "line/overhead", rates.Overhead, q.Shop)
	if q.RoadM != 0 {
		c.add(Travel, "line/kilometres", c.priced(c.book.Travel.PerKm, q.RoadM, MPerKm))
	}
	p.Lines = c.lines
	p.Labour, p.Overhead, p.Travel = c.sum(Labour), c.sum(Overhead), c.sum(Travel)
}

// sell goes from the direct cost to gross.
func (c *calculator) sell(p *Price, m design.Money) {
	policy := c.book.Policy
	p.Contingency = percent(p.Direct, policy.Contingency)
	p.Cost = p.Direct.Add(p.Contingency)

	p.List = p.Cost.MulDiv(whole, whole-ppm(policy.Margin), money.HalfAway)
	p.MinimumApplied = false
	if least := c.minimum(); p.List.Cmp(least) < 0 {
		p.List, p.MinimumApplied = least, true
	}
	p.Discount = percent(p.List, m.Discount)
	wanted := p.List.Sub(p.Discount)
	p.Made = wanted.RoundUpTo(c.step())
	p.RoundedUp = p.Made.Sub(wanted)
	p.Margin = p.Made.Sub(p.Cost)
	if p.Made.Minor != 0 {
		p.MarginPercent = 100 * float64(p.Margin.Minor) / float64(p.Made.Minor)
	}
	p.Net = p.Made.Add(p.Beside)
	p.Taxes = taxes(p.Made, m)
	p.Tax = money.New(0, p.Currency)
	for _, t := range p.Taxes {
		p.Tax = p.Tax.Add(t.Amount)
	}
	p.Gross = p.Net.Add(p.Tax)
}

// taxes are the rates of a job with what each is taken on, the usual one first. Each is
// rounded once, on the sum of what it is taken on. Where the client owes the tax there is
// none.
func taxes(made money.Money, m design.Money) []TaxAmount {
	if m.Reverse {
		return nil
	}
	all := []TaxAmount{{Percent: m.Tax, Base: made}}
	for _, x := range m.Extras {
		if x.Role != design.ExtraSold {
			continue
		}
		rate := m.Tax
		if x.OwnTax {
			rate = x.Tax
		}
		i := slices.IndexFunc(all, func(t TaxAmount) bool { return ppm(t.Percent) == ppm(rate) })
		if i < 0 {
			i = len(all)
			all = append(all, TaxAmount{Percent: rate, Base: money.New(0, made.Currency)})
		}
		all[i].Base = all[i].Base.Add(x.Amount.In(made.Currency))
	}
	for i := range all {
		all[i].Amount = percent(all[i].Base, all[i].Percent)
	}
	return all
}

// minimum is the lowest list price of a job.
func (c *calculator) minimum() money.Money { return c.priced(c.book.Policy.MinimumCharge, 1, 1) }

// step is the policy's step, at least one smallest unit of the currency.
func (c *calculator) step() money.Money {
	return money.Priced(c.book.Policy.RoundTo.Steps(), 1, amountUnit, c.book.Currency, money.Up)
}

// whole is 100 % in millionths.
const (
	ppmPerPercent = 10_000
	whole         = 100 * ppmPerPercent
)

// ppm is a percentage in millionths.
func ppm(percent float64) int64 { return int64(math.Round(percent * ppmPerPercent)) }

func percent(m money.Money, p float64) money.Money {
	return m.MulDiv(ppm(p), whole, money.HalfAway)
}

// stages divides gross. No stage asks for more than its share; the last one
// takes what rounding has left.
func stages(gross money.Money, all []design.Stage) []StageAmount {
	out := make([]StageAmount, len(all))
	rest := gross
	for i, s := range all {
		part := gross.MulDiv(ppm(s.Percent), whole, money.TowardsZero)
		if i == len(all)-1 {
			part = rest
		}
		rest = rest.Sub(part)
		out[i] = StageAmount{Name: s.Name, Amount: part}
	}
	return out
}
