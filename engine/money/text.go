package money

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/bojanz/currency"
)

// noneDigits are the decimals of "no currency". ISO 4217 gives it none at all;
// two are what most currencies have.
const noneDigits = 2

// Known reports whether code is a currency that amounts can be in.
func Known(code string) bool {
	_, ok := Digits(code)
	return ok
}

// Digits returns how many decimals a currency has: 2 for EUR, 0 for JPY.
func Digits(code string) (int, bool) {
	if code == None {
		return noneDigits, true
	}
	d, ok := currency.GetDigits(code)
	return int(d), ok
}

// mustDigits returns the decimals of a currency that was checked before; the
// zero value of Money reads as no currency.
func mustDigits(code string) int {
	if code == "" {
		return noneDigits
	}
	d, ok := Digits(code)
	if !ok {
		panic(fmt.Sprintf("money: internal error: unknown currency %q", code))
	}
	return d
}

// Plain writes m for reports and files, without the currency: "1560.00".
func (m Money) Plain() string {
	digits := mustDigits(m.Currency)
	s, negative := strings.CutPrefix(strconv.FormatInt(m.Minor, 10), "-")
	if missing := digits + 1 - len(s); missing > 0 {
		s = strings.Repeat("0", missing) + s
	}
	if digits > 0 {
		s = s[:len(s)-digits] + "." + s[len(s)-digits:]
	}
	if negative {
		return "-" + s
	}
	return s
}

// String writes m with its code, for messages to programmers.
func (m Money) String() string { return strings.TrimSpace(m.Plain() + " " + m.Currency) }

// Format writes m for people the way their locale ("en", "de-CH") does:
// "¤1,560.00". An unknown locale reads as English.
func (m Money) Format(locale string) string {
	digits := mustDigits(m.Currency)
	return m.format(locale, digits)
}

// Whole writes m to the nearest whole currency unit, halves away from zero,
// for ranges that promise no cents: "¤1,560".
func (m Money) Whole(locale string) string {
	return m.format(locale, 0)
}

// Sign is the sign of a currency as a locale writes it: "€", "US$", "¤".
func Sign(code, locale string) string {
	if code == None || code == "" {
		return "¤"
	}
	sign, ok := currency.GetSymbol(code, currency.NewLocale(locale))
	if !ok {
		return code
	}
	return sign
}

func (m Money) format(locale string, digits int) string {
	f := currency.NewFormatter(currency.NewLocale(locale))
	f.MinDigits, f.MaxDigits = uint8(digits), uint8(digits)
	code := m.Currency
	if code == None || code == "" {
		// The library knows no "no currency". Another one with as many
		// decimals takes its place and lends it everything but its sign.
		code = standIn
		f.SymbolMap[code] = "¤"
	}
	a, err := currency.NewAmount(m.Plain(), code)
	if err != nil {
		panic(fmt.Sprintf("money: internal error: %v", err))
	}
	return f.Format(a)
}

// standIn has noneDigits decimals. Patterns belong to locales, not to
// currencies, so any such currency would do.
const standIn = "EUR"

func pow10(digits int) int64 {
	n := int64(1)
	for range digits {
		n *= 10
	}
	return n
}
