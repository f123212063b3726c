package cost

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/money"
)

// Visible is what anybody can see of a job, and what a selling book has a price
// for. Amounts are whole steps: panels, blocks, cm² of field, mm of frame, hands
// that hang a panel, metres of road, ml of timber as it is bought.
type Visible struct {
	Panels, Blocks                   int64
	FieldCM2, FrameMM                int64
	HangingHands                     int64
	RoadM                            int64
	SoftwoodML, MiddleML, FineWoodML int64
}

// Sample is one job that a private book has priced.
type Sample struct {
	Visible
	Price Price
}

// prices is how many prices a selling book has; from firstWood on they are those
// of the classes of wood.
const (
	prices    = 10
	firstWood = 7
)

// measures are the amounts of v in the units of the prices of a selling book, in
// its order.
func (v Visible) measures() [prices]float64 {
	var m [prices]float64
	for i, s := range v.steps() {
		m[i] = float64(s) / float64(stepsPer()[i])
	}
	return m
}

func (v Visible) steps() [prices]int64 {
	return [prices]int64{
		1, v.Panels, v.Blocks, v.FieldCM2, v.FrameMM, v.HangingHands, v.RoadM,
		v.SoftwoodML, v.MiddleML, v.FineWoodML,
	}
}

// stepsPer is how many steps make the unit that each price is for.
func stepsPer() [prices]int64 { return [prices]int64{1, 1, 1, 10_000, 1000, 1, 1000, 1000, 1000, 1000} }

func pricesOf(s *design.SellingBook) [prices]*design.Amount {
	return [prices]*design.Amount{
		&s.Job, &s.Panel, &s.Block, &s.FieldM2, &s.FrameM, &s.HangingHand, &s.RoadKm,
		&s.SoftwoodL, &s.MiddleWoodL, &s.FineWoodL,
	}
}

// How a selling book is rounded.
const (
	significant = 2 // digits of each price: the rest would tell about a private book
	// withinRange of the sample jobs end, with the whole range of the private
	// book, inside the public one. Invented.
	withinRange = 0.8
	// rangeSteps of the first digit's size is what a range's ends are rounded to:
	// 2,460 becomes 2,450.
	rangeSteps = 20
)

// ErrNoSuchWood says that a selling book has no price for a wood of the job.
var ErrNoSuchWood = errors.New("the selling book has no price for a wood of this job")

// ErrFewSamples says that the sample jobs do not tell the prices apart.
var ErrFewSamples = errors.New("the sample jobs are too few or too alike")

// Fit makes the selling book of a private book out of jobs that it has priced.
// Prices are those of least squares of the relative error of the list price,
// rounded to two digits; then the range is made wide enough for the samples.
func Fit(samples []Sample) (design.SellingBook, error) {
	if len(samples) <= prices {
		return design.SellingBook{}, ErrFewSamples
	}
	var a [prices][prices + 1]float64 // normal equations
	for _, s := range samples {
		list := float64(s.Price.List.Minor)
		if !s.Price.Sold || list <= 0 {
			return design.SellingBook{}, errors.New("a sample job has no price")
		}
		m := s.measures()
		for i := range prices {
			for j := range prices {
				a[i][j] += m[i] * m[j] / (list * list)
			}
			a[i][prices] += m[i] / list
		}
	}
	for i := firstWood; i < prices; i++ {
		if a[i][i] == 0 { // no sample has such a wood: it gets no price
			a[i][i] = 1
		}
	}
	x, ok := solve(a)
	if !ok {
		return design.SellingBook{}, ErrFewSamples
	}
	first := samples[0].Price
	out := design.SellingBook{
		Format: design.SellingFormat, Version: design.SellingVersion,
		Placeholder: first.Placeholder, Currency: first.Currency,
	}
	unit := float64(money.Priced(amountUnit, 1, amountUnit, first.Currency, money.HalfAway).Minor)
	for i, p := range pricesOf(&out) {
		*p = design.Amount(math.Round(rounded(x[i]/unit, significant) * amountUnit))
	}
	for _, s := range samples {
		if sells(s.Visible, out, design.Money{}) != nil || list(s.Visible, out).Minor <= 0 {
			return design.SellingBook{}, ErrFewSamples
		}
	}
	out.Below, out.Above = widths(out, samples)
	return out, nil
}

// widths are whole percents by which the quote has to be spread.
func widths(book design.SellingBook, samples []Sample) (below, above float64) {
	var low, high []float64
	for _, s := range samples {
		quote := float64(list(s.Visible, book).Minor)
		usual, gross := float64(s.Price.List.Minor), float64(s.Price.Gross.Minor)
		low = append(low, 1-usual*float64(s.Price.Low.Minor)/gross/quote)
		high = append(high, usual*float64(s.Price.High.Minor)/gross/quote-1)
	}
	return percentile(low), percentile(high)
}

// percentile is the whole percent that withinRange of the shares do not exceed.
func percentile(shares []float64) float64 {
	slices.Sort(shares)
	at := int(math.Ceil(withinRange*float64(len(shares)))) - 1
	return max(0, math.Ceil(100*shares[at]))
}

// list is the price without tax and before a discount.
func list(v Visible, book design.SellingBook) money.Money {
	total := money.New(0, book.Currency)
	per, steps := stepsPer(), v.steps()
	for i, p := range pricesOf(&book) {
		total = total.Add(money.Priced(p.Steps(), steps[i], amountUnit*per[i], book.Currency, money.HalfAway))
	}
	return total
}

// What a bought-in or worked line of a job is sold on for, in percent of what it costs:
// at least, usually, at most. Invented, and the same for every workshop, because
// a factor out of the private book would tell its mark-up and its margin.
const (
	extraLeast = 125
	extraUsual = 150
	extraMost  = 175
)

// Usual returns the middle of what a client is quoted, tax included, without
// spread or rounding: to compare one job with another.
func Usual(v Visible, book design.SellingBook, m design.Money) (money.Money, error) {
	if err := sells(v, book, m); err != nil {
		return money.Money{}, err
	}
	return paid(list(v, book).Add(percent(extras(book, m), extraUsual)), m), nil
}

// sells reports why a book cannot price a job.
func sells(v Visible, book design.SellingBook, m design.Money) error {
	if !money.Known(book.Currency) {
		return fmt.Errorf("currency: %q is not known", book.Currency)
	}
	per, steps := stepsPer(), v.steps()
	for i, p := range pricesOf(&book) {
		if i >= firstWood && *p == 0 && steps[i] > 0 {
			return ErrNoSuchWood
		}
		if _, ok := reckon(*p, steps[i], per[i], book.Currency); !ok {
			return ErrTooLarge
		}
	}
	for _, x := range m.Extras {
		if _, ok := reckon(x.Amount, 1, 1, book.Currency); !ok {
			return ErrTooLarge
		}
	}
	return nil
}

// extras is what the free lines of a job cost that its price is made of.
func extras(book design.SellingBook, m design.Money) money.Money {
	sum := money.New(0, book.Currency)
	for _, x := range m.Extras {
		if x.Role == design.ExtraSold {
			continue
		}
		sum = sum.Add(x.Amount.In(book.Currency))
	}
	return sum
}

// paid is a price less the discount, with the lines that are sold beside it, and with
// tax.
func paid(list money.Money, m design.Money) money.Money {
	total := list.Sub(percent(list, m.Discount))
	rates := taxes(total, m)
	for _, x := range m.Extras {
		if x.Role == design.ExtraSold {
			total = total.Add(x.Amount.In(list.Currency))
		}
	}
	for _, t := range rates {
		total = total.Add(t.Amount)
	}
	return total
}

// RoundedDown rounds an amount as the ends of a range are.
func RoundedDown(m money.Money) money.Money { return roundedRange(m, money.TowardsZero) }

// Quote returns the range that a client sees, tax included: the price of what
// can be seen, spread by the book, with the bought-in lines of the job from the
// least to the most that they are sold on for; its ends are rounded to two or
// three digits.
// A class of wood without a price is one that the workshop does not have.
func Quote(v Visible, book design.SellingBook, m design.Money) (low, high money.Money, err error) {
	if err := sells(v, book, m); err != nil {
		return low, high, err
	}
	usual, bought := list(v, book), extras(book, m)
	low = paid(usual.Sub(percent(usual, book.Below)).Add(percent(bought, extraLeast)), m)
	high = paid(usual.Add(percent(usual, book.Above)).Add(percent(bought, extraMost)), m)
	return roundedRange(low, money.TowardsZero), roundedRange(high, money.Up), nil
}

// roundedRange rounds to a twentieth of the power of ten below.
func roundedRange(m money.Money, r money.Rounding) money.Money {
	if m.Minor <= 0 {
		return money.New(0, m.Currency)
	}
	step := int64(1)
	for step <= m.Minor/10 {
		step *= 10
	}
	step = max(1, step/rangeSteps)
	return money.New(m.MulDiv(1, step, r).Minor*step, m.Currency)
}

// rounded keeps a number of digits.
func rounded(x float64, digits int) float64 {
	if x == 0 {
		return 0
	}
	scale := math.Pow10(digits - 1 - int(math.Floor(math.Log10(math.Abs(x)))))
	return math.Round(x*scale) / scale
}

// solve returns the solution of linear equations by elimination with the
// largest pivot; false where they have none.
func solve(a [prices][prices + 1]float64) (x [prices]float64, ok bool) {
	for col := range prices {
		pivot := col
		for row := col + 1; row < prices; row++ {
			if math.Abs(a[row][col]) > math.Abs(a[pivot][col]) {
				pivot = row
			}
		}
		a[col], a[pivot] = a[pivot], a[col]
		if math.Abs(a[col][col]) < smallestPivot {
			return x, false
		}
		for row := range prices {
			if row == col {
				continue
			}
			f := a[row][col] / a[col][col]
			for k := col; k <= prices; k++ {
				a[row][k] -= f * a[col][k]
			}
		}
	}
	for i := range prices {
		x[i] = a[i][prices] / a[i][i]
	}
	return x, true
}

// smallestPivot is zero as far as a sum of floats can tell.
const smallestPivot = 1e-18
