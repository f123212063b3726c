// Package money holds amounts of money exactly: a whole number of the smallest
// unit of a named currency, so that a native program and a browser agree to
// the cent.
//
// Currencies are ISO 4217 codes; "XXX", the code for no currency, is shown as
// ¤ with two decimals. Their decimals and the way each locale writes them come
// from the Unicode locale data in github.com/bojanz/currency. All arithmetic
// is on integers, with a named rounding wherever a division leaves a rest.
//
// One plan is in one currency, that of its price book, and it is checked once
// where the book is read. Two currencies in one sum are therefore a fault of
// the program and never of a person: Add and Sub return no error, they panic,
// as they do when an amount leaves the range of an int64. Who reckons with what a
// person or a file says keeps it far below that range first.
package money

import (
	"fmt"
	"math/big"
)

// None is the ISO 4217 code for no currency.
const None = "XXX"

// Money is an amount in a currency. The zero value is nothing at all and can
// be added to any currency.
type Money struct {
	Minor    int64  // whole cents, pence, yen: the smallest unit
	Currency string // ISO 4217 code
}

// Rounding says where the rest of a division goes.
type Rounding uint8

// The ways of rounding.
const (
	HalfAway    Rounding = iota // to the nearest, halves away from zero
	Up                          // to the next one above, towards plus infinity
	TowardsZero                 // the rest is dropped
)

// New returns an amount in the smallest unit of a currency. It panics when the
// currency is unknown; a code that a person typed is asked of Known first.
func New(minor int64, currency string) Money {
	mustDigits(currency)
	return Money{Minor: minor, Currency: currency}
}

// Priced returns price × quantity / den in whole currency units, rounded once
// to the smallest unit. A price in ten-thousandths of a unit for each 1000
// pieces, and a count of pieces, has den = 10,000 × 1000.
func Priced(price, quantity, den int64, currency string, r Rounding) Money {
	n := new(big.Int).Mul(big.NewInt(price), big.NewInt(quantity))
	n.Mul(n, big.NewInt(pow10(mustDigits(currency))))
	return Money{Minor: quotient(n, den, r), Currency: currency}
}

// Add returns m + n.
func (m Money) Add(n Money) Money {
	return m.with(new(big.Int).Add(big.NewInt(m.Minor), big.NewInt(n.Minor)), n)
}

// Sub returns m − n.
func (m Money) Sub(n Money) Money {
	return m.with(new(big.Int).Sub(big.NewInt(m.Minor), big.NewInt(n.Minor)), n)
}

// Sum returns the sum of all amounts, the zero value when there are none.
func Sum(amounts ...Money) Money {
	var total Money
	for _, a := range amounts {
		total = total.Add(a)
	}
	return total
}

// MulDiv returns m × num / den, rounded as named. It panics when den is not
// positive.
func (m Money) MulDiv(num, den int64, r Rounding) Money {
	n := new(big.Int).Mul(big.NewInt(m.Minor), big.NewInt(num))
	return Money{Minor: quotient(n, den, r), Currency: m.Currency}
}

// RoundUpTo returns the smallest whole number of steps that is not below m. A
// step of zero or less leaves m as it is.
func (m Money) RoundUpTo(step Money) Money {
	m.same(step)
	if step.Minor <= 0 {
		return m
	}
	n := new(big.Int).Mul(big.NewInt(quotient(big.NewInt(m.Minor), step.Minor, Up)), big.NewInt(step.Minor))
	return m.with(n, step)
}

// Cmp compares two amounts of one currency: −1, 0 or +1 as m is less than,
// equal to or more than n.
func (m Money) Cmp(n Money) int {
	m.same(n)
	switch {
	case m.Minor < n.Minor:
		return -1
	case m.Minor > n.Minor:
		return 1
	}
	return 0
}

// with returns the amount n in the currency that m and other share.
func (m Money) with(n *big.Int, other Money) Money {
	return Money{Minor: fit(n), Currency: m.same(other)}
}

// same returns the one currency of both amounts. The zero value has none and
// goes with every currency.
func (m Money) same(n Money) string {
	switch {
	case m.Currency == n.Currency || n == Money{}:
		return m.Currency
	case m == Money{}:
		return n.Currency
	}
	panic(fmt.Sprintf("money: internal error: %s and %s in one sum", m.Currency, n.Currency))
}

// quotient returns n / den rounded to a whole number.
func quotient(n *big.Int, den int64, r Rounding) int64 {
	if den <= 0 {
		panic(fmt.Sprintf("money: internal error: divided by %d", den))
	}
	d := big.NewInt(den)
	q, rest := new(big.Int).QuoRem(n, d, new(big.Int))
	away := int64(n.Sign())
	switch r {
	case HalfAway:
		if rest.Abs(rest).Lsh(rest, 1).Cmp(d) < 0 {
			away = 0
		}
	case Up:
		if rest.Sign() <= 0 {
			away = 0
		}
	case TowardsZero:
		away = 0
	default:
		panic(fmt.Sprintf("money: internal error: rounding %d", r))
	}
	return fit(q.Add(q, big.NewInt(away)))
}

func fit(n *big.Int) int64 {
	if !n.IsInt64() {
		panic(fmt.Sprintf("money: internal error: amount %v out of range", n))
	}
	return n.Int64()
}
