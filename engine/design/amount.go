package design

import (
	"fmt"
	"strconv"
	"strings"
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

// ParseAmount reads a plain decimal with at most nine digits before and four
// after the point.
func ParseAmount(text string) (Amount, error) {
	s, negative := strings.CutPrefix(strings.TrimSpace(text), "-")
	whole, frac, point := strings.Cut(s, ".")
	if whole == "" || strings.Trim(whole+frac, "0123456789") != "" || point && frac == "" {
		return 0, fmt.Errorf("%.40q is not an amount: write it like 42 or 0.55", text)
	}
	if len(whole) > 9 || len(frac) > 4 {
		return 0, fmt.Errorf("%.40q has more than nine digits before or four after the point", text)
	}
	n, err := strconv.ParseInt(whole+frac+"0000"[len(frac):], 10, 64)
	if err != nil {
		return 0, fmt.Errorf("%.40q is not an amount", text)
	}
	if negative {
		n = -n
	}
	return Amount(n), nil
}
