package design_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func placeholder(t testing.TB) string {
	t.Helper()
	data, err := os.ReadFile("../../testdata/books/placeholder.json")
	require.NoError(t, err)
	return string(data)
}

func TestPlaceholderBook(t *testing.T) {
	embedded, err := os.ReadFile("placeholder.json")
	require.NoError(t, err)
	require.Equal(t, placeholder(t), string(embedded), "the copy beside the tests is the embedded one")

	book := design.DefaultBook()
	assert.Equal(t, placeholder(t), string(design.EncodeBook(book)))
	assert.True(t, book.Placeholder)
	assert.Equal(t, "XXX", book.Currency)
	assert.Len(t, book.Tasks, 41)
	assert.Len(t, book.Woods, len(design.Woods()))
	require.NoError(t, design.ValidateBook(book))
}

func TestBookCode(t *testing.T) {
	book := design.DefaultBook()
	code := book.Code()
	assert.Len(t, code, 6)
	book.Rates.Shop++
	assert.NotEqual(t, code, book.Code(), "a ten-thousandth more an hour is another book")
}

func TestBadBooks(t *testing.T) {
	for name, c := range map[string]struct{ old, new, want string }{
		"a design":      {`"blockfield price book"`, `"blockfield design"`, "format: is not a file of this kind: found blockfield design (allowed blockfield price book)"},
		"newer":         {`"version": 1`, `"version": 2`, "version: was written by a newer program: version 2 (allowed up to version 1)"},
		"missing price": {`"perKm": "0.55",`, ``, "travel.perKm: is missing"},
		"missing part": {
			`"travel": {
    "perKm": "0.55",
    "speedKmh": 45
  },`, ``, "travel.perKm: is missing\ntravel.speedKmh: is missing",
		},
		"number for an amount": {`"42"`, `42`, "rates.shop: 42 is of the wrong kind (allowed a text, 0 to 1\u202f000\u202f000\u202f000)"},
		"five decimals": {
			`"0.55"`, `"0.55001"`,
			"travel.perKm: 0.55001 has more than four decimals (allowed 0 to 1\u202f000\u202f000\u202f000)",
		},
		"negative":         {`"0.55"`, `"-0.55"`, "travel.perKm: -0.55 is out of range (allowed 0 to 1\u202f000\u202f000\u202f000)"},
		"currency":         {`"XXX"`, `"€"`, "currency: € is not a currency (allowed three capital letters such as EUR, or XXX for none)"},
		"a rate missing":   {`"shop": "42",`, ``, "rates.shop: is missing"},
		"a negative rate":  {`"shop": "42"`, `"shop": "-42"`, "rates.shop: -42 is out of range (allowed 0 to 1\u202f000\u202f000\u202f000)"},
		"a negative brad":  {`"brad": "0.02"`, `"brad": "-0.02"`, "goods.brad: -0.02 is out of range (allowed 0 to 1\u202f000\u202f000\u202f000)"},
		"two currencies":   {`"currency": "XXX"`, `"currency": "EUR/USD"`, "currency: EUR/USD is not a currency (allowed three capital letters such as EUR, or XXX for none)"},
		"a currency twice": {`"currency": "XXX"`, `"currency": "EUR", "currency": "USD"`, "currency: is given twice"},
		"an amount in a currency of its own": {
			`"shop": "42"`, `"shop": "42 USD"`,
			"rates.shop: 42 USD is not an amount of money: write it like 42 or 0.55, without the currency (allowed 0 to 1\u202f000\u202f000\u202f000)",
		},
		"an amount with a sign": {
			`"shop": "42"`, `"shop": "€42"`,
			"rates.shop: €42 is not an amount of money: write it like 42 or 0.55, without the currency (allowed 0 to 1\u202f000\u202f000\u202f000)",
		},
		"wood twice":          {`"wood": "spruce"`, `"wood": "pine"`, "woods[1].wood: pine is in the list twice"},
		"stages":              {`"percent": 50`, `"percent": 45`, "stages: adds up to 95 % (allowed 100 %)"},
		"floor":               {`"marginFloor": 10`, `"marginFloor": 20`, "policy.marginFloor: 20 % is out of range (allowed up to the margin, 18 %)"},
		"task twice":          {`"id": "a2"`, `"id": "a1"`, "tasks[1].id: a1 is in the list twice"},
		"no currency":         {`"currency": "XXX"`, `"currency": ""`, "currency: must not be empty (allowed three capital letters such as EUR, or XXX for none)"},
		"an unknown currency": {`"currency": "XXX"`, `"currency": "ZZZ"`, "currency: ZZZ is not a currency (allowed three capital letters such as EUR, or XXX for none)"},
		"a small currency":    {`"currency": "XXX"`, `"currency": "eur"`, "currency: eur is not a currency (allowed three capital letters such as EUR, or XXX for none)"},
		"too dear":            {`"shop": "42"`, `"shop": "1000000000.0001"`, "rates.shop: 1000000000.0001 is out of range (allowed 0 to 1\u202f000\u202f000\u202f000)"},
		"far too dear":        {`"shop": "42"`, `"shop": "420000000000000000"`, "rates.shop: 420000000000000000 is out of range (allowed 0 to 1\u202f000\u202f000\u202f000)"},
		"no plain amount": {
			`"shop": "42"`, `"shop": "1e308"`,
			"rates.shop: 1e308 is not an amount of money: write it like 42 or 0.55, without the currency (allowed 0 to 1\u202f000\u202f000\u202f000)",
		},
		"a huge number":       {`"speedKmh": 45`, `"speedKmh": 1e308`, "travel.speedKmh: 1e+308 is out of range (allowed 10 km/h to 130 km/h)"},
		"a huge whole number": {`"validDays": 30`, `"validDays": 1e308`, "policy.validDays: 1e308 is out of range (allowed a whole number, 7 to 120)"},
		"an exponent":         {`"validDays": 30`, `"validDays": 3e1`, "policy.validDays: 3e1 is not a whole number in plain digits (allowed a whole number, 7 to 120)"},
		"task range":          {`"high": 90`, `"high": 10`, "tasks[0].high: is the wrong way round: the lowest is 20, the highest 10 (allowed a lowest up to 10, or a highest from 20)"},
		"task rates":          {`"low": 20,`, `"low": 50,`, "tasks[0].typical: 40 is out of range (allowed 50 to 90)"},
		"dates": {
			`"validFrom": "",
  "validUntil": ""`, `"validFrom": "2026-03-01", "validUntil": "2026-02-01"`,
			"validUntil: 2026-02-01 is before the first day (allowed not before 2026-03-01)",
		},
		"no day": {
			`"validFrom": ""`, `"validFrom": "2026-04-31"`,
			"validFrom: 2026-04-31 is not a day of the calendar (allowed a day such as 2026-03-31)",
		},
	} {
		t.Run(name, func(t *testing.T) {
			file := strings.Replace(placeholder(t), c.old, c.new, 1)
			require.NotEqual(t, placeholder(t), file)
			_, err := design.DecodeBook([]byte(file))
			assert.EqualError(t, err, c.want)
		})
	}
}

// A book that was cut off says where it ends, wherever that is.
func TestTruncatedBook(t *testing.T) {
	file := placeholder(t)
	lines := strings.Split(file, "\n")
	for _, line := range []int{3, 20, len(lines) / 2, len(lines) - 4} {
		last := lines[line-1]
		cut := strings.Join(lines[:line-1], "\n") + "\n" + last[:len(last)/2+1]
		_, err := design.DecodeBook([]byte(cut))
		want := fmt.Sprintf("cannot be read as JSON: cut off at line %d, column %d", line, len(last)/2+2)
		assert.EqualError(t, err, want)
		assert.Equal(t, design.BookFormat, design.FormatOf([]byte(cut)), "it still says what it was")
	}
}

func TestHoldsOn(t *testing.T) {
	book := design.DefaultBook()
	for _, day := range []string{"", "0001-01-01", "9999-12-31"} {
		assert.NoError(t, design.HoldsOn(book, day), "a book without days holds on each")
	}
	book.ValidFrom, book.ValidUntil = "2026-02-01", "2026-06-30"
	for day, want := range map[string]string{
		"2026-01-31": "validFrom: does not hold yet, but from 2026-02-01 on (allowed not after 2026-01-31)",
		"2026-02-01": "", "2026-06-30": "", "": "",
		"2026-07-01": "validUntil: has run out: its last day was 2026-06-30 (allowed not before 2026-07-01)",
	} {
		err := design.HoldsOn(book, day)
		if want == "" {
			assert.NoError(t, err, day)
			continue
		}
		assert.EqualError(t, err, want)
	}
}

func TestThirdsMakeAWhole(t *testing.T) {
	book := design.DefaultBook()
	book.Stages = []design.Stage{{Name: "a", Percent: 33.3}, {Name: "b", Percent: 33.3}, {Name: "c", Percent: 33.4}}
	assert.NoError(t, design.ValidateBook(book))
	book.Stages[2].Percent = 33.3
	assert.EqualError(t, design.ValidateBook(book), "stages: adds up to 99.9 % (allowed 100 %)")
}
