package design

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"blockfield/engine/money"
)

// amountUnit is how many steps of an Amount make one unit of the currency:
// prices of screws and sanding discs need more than two decimals.
const amountUnit = 10_000

// Amount is a price or a rate in ten-thousandths of the currency unit of the
// price book. Its text form is a plain decimal: "42", "0.55", "1560.00" reads
// as "1560".
type Amount int64

// Units returns a whole number of currency units.
func Units(n int64) Amount { return Amount(n * amountUnit) }

// Steps returns the amount in ten-thousandths of the currency unit.
func (a Amount) Steps() int64 { return int64(a) }

// In is the amount as money of a currency, half a smallest unit away from zero.
func (a Amount) In(currency string) money.Money {
	return money.Priced(a.Steps(), 1, amountUnit, currency, money.HalfAway)
}

// String writes a plain decimal without trailing zeros.
func (a Amount) String() string {
	sign, n := "", int64(a)
	if n < 0 {
		sign, n = "-", -n
	}
	text := sign + strconv.FormatInt(n/amountUnit, 10)
	if n%amountUnit != 0 {
		text += "." + strings.TrimRight(fmt.Sprintf("%04d", n%amountUnit), "0")
	}
	return text
}

// MarshalText writes the plain decimal.
func (a Amount) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText reads what ParseAmount reads.
func (a *Amount) UnmarshalText(text []byte) error {
	v, err := ParseAmount(string(text))
	if err == nil {
		*a = v
	}
	return err
}

// Why a text is no Amount.
var (
	errNoAmount    = errors.New("is not an amount: write it like 42 or 0.55")
	errFineAmount  = errors.New("has more than four decimals")
	errLargeAmount = errors.New("has more than thirteen digits before the point")
)

// Digits of an Amount. Thirteen before the point are a million million: more than
// a whole job costs in the currency whose unit buys the least.
const (
	amountDigits   = 13
	amountDecimals = 4
)

// ParseAmount reads a plain decimal with at most thirteen digits before and four
// after the point.
func ParseAmount(text string) (Amount, error) {
	s, negative := strings.CutPrefix(strings.TrimSpace(text), "-")
	whole, frac, point := strings.Cut(s, ".")
	switch {
	case whole == "" || strings.Trim(whole+frac, "0123456789") != "" || point && frac == "":
		return 0, fmt.Errorf("%.40q %w", text, errNoAmount)
	case len(frac) > amountDecimals:
		return 0, fmt.Errorf("%.40q %w", text, errFineAmount)
	case len(whole) > amountDigits:
		return 0, fmt.Errorf("%.40q %w", text, errLargeAmount)
	}
	n, err := strconv.ParseInt(whole+frac+"0000"[len(frac):], 10, 64)
	if err != nil {
		return 0, fmt.Errorf("%.40q %w", text, errNoAmount)
	}
	if negative {
		n = -n
	}
	return Amount(n), nil
}

// amountCode is what the error of ParseAmount is as a fault.
func amountCode(err error) Code {
	switch {
	case errors.Is(err, errFineAmount):
		return FineAmount
	case errors.Is(err, errLargeAmount):
		return OutOfRange
	}
	return BadAmount
}
