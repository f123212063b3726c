package money_test

import (
	"math"
	"testing"

	"blockfield/engine/money"

	"github.com/stretchr/testify/assert"
)

func TestPlain(t *testing.T) {
	for _, c := range []struct {
		minor int64
		code  string
		want  string
	}{
		{156_000, "XXX", "1560.00"}, {50, "EUR", "0.50"}, {-5, "EUR", "-0.05"}, {1560, "JPY", "1560"},
		{1234, "KWD", "1.234"}, {0, "XXX", "0.00"}, {7_000_000_000, "IDR", "70000000.00"},
	} {
		assert.Equal(t, c.want, money.New(c.minor, c.code).Plain())
	}
}

func TestDigits(t *testing.T) {
	// ISO 4217 list of minor units; two decimals for "XXX" are our own choice.
	for code, want := range map[string]int{"EUR": 2, "USD": 2, "JPY": 0, "KWD": 3, "XXX": 2} {
		got, ok := money.Digits(code)
		assert.True(t, ok, code)
		assert.Equal(t, want, got, code)
		assert.True(t, money.Known(code))
	}
	assert.False(t, money.Known("ZZZ"))
	assert.False(t, money.Known(""))
}

func TestFormat(t *testing.T) {
	const nbsp = "\u00a0"
	// Patterns of the Unicode common locale data, written out by hand from
	// memory; the Swiss mark for thousands has been a straight and a curly
	// apostrophe in different editions, here it is straight.
	for _, c := range []struct {
		minor               int64
		code, locale        string
		wantFull, wantWhole string
	}{
		{156_000, "XXX", "en", "¤1,560.00", "¤1,560"},
		{156_050, "XXX", "en", "¤1,560.50", "¤1,561"},
		{-156_050, "XXX", "en", "-¤1,560.50", "-¤1,561"},
		{156_049, "XXX", "en", "¤1,560.49", "¤1,560"},
		{156_000, "XXX", "de", "1.560,00" + nbsp + "¤", "1.560" + nbsp + "¤"},
		{156_000, "EUR", "de", "1.560,00" + nbsp + "€", "1.560" + nbsp + "€"},
		{156_000, "EUR", "en-IE", "€1,560.00", "€1,560"},
		{156_000, "GBP", "en-GB", "£1,560.00", "£1,560"},
		{123_456_789, "INR", "en-IN", "₹12,34,567.89", "₹12,34,568"},
		{156_000, "CHF", "de-CH", "CHF" + nbsp + "1'560.00", "CHF" + nbsp + "1'560"},
		{1560, "JPY", "en", "¥1,560", "¥1,560"},
		{156_000, "XXX", "zz-ZZ", "¤1,560.00", "¤1,560"},
		{156_000, "XXX", "", "¤1,560.00", "¤1,560"},
		{0, "", "en", "¤0.00", "¤0"},
		{math.MinInt64, "XXX", "en", "-¤92,233,720,368,547,758.08", "-¤92,233,720,368,547,758"},
	} {
		m := money.Money{Minor: c.minor, Currency: c.code}
		assert.Equal(t, c.wantFull, m.Format(c.locale), "%+v", c)
		assert.Equal(t, c.wantWhole, m.Whole(c.locale), "%+v", c)
	}
}

func TestString(t *testing.T) {
	assert.Equal(t, "1560.00 XXX", xxx(156_000).String())
	assert.Equal(t, "0.00", money.Money{}.String())
}
