package design_test

import (
	"strings"
	"testing"

	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSellingBookRoundTrip(t *testing.T) {
	want := design.SellingBook{
		Format: design.SellingFormat, Version: design.SellingVersion, Name: "Autumn", Currency: "EUR", ValidUntil: "2026-12-31",
		Job: design.Units(630), Block: design.Units(12) / 10, SoftwoodL: -design.Units(5) / 10, Below: 13, Above: 21,
	}
	text := design.EncodeSelling(want)
	got, err := design.DecodeSelling(text)
	require.NoError(t, err)
	assert.Equal(t, want, got)
	assert.Equal(t, string(text), string(design.EncodeSelling(got)))
}

func TestSellingBookRefuses(t *testing.T) {
	good := string(design.EncodeSelling(design.SellingBook{Format: design.SellingFormat, Version: 1, Name: "Autumn", Currency: "EUR"}))
	for _, c := range []struct{ from, to, want string }{
		{`"below": 0`, `"below": 91`, "below"},
		{`"currency": "EUR"`, `"currency": "EU"`, "currency"},
		{`"name": "Autumn"`, `"name": " "`, "name"},
		{`  "name": "Autumn",` + "\n", ``, "name: is missing"},
		{`"validUntil": ""`, `"validUntil": "2026-02-30"`, "validUntil"},
		{`"job": "0"`, `"job": "many"`, "job"},
		{`  "job": "0",` + "\n", ``, "job"},
		{`"job": "0"`, `"job": "0", "rates": {}`, "rates"},
		{`"version": 1`, `"version": 2`, "version"},
		{design.SellingFormat, design.BookFormat, "format"},
	} {
		bad := strings.Replace(good, c.from, c.to, 1)
		require.NotEqual(t, good, bad, c.from)
		_, err := design.DecodeSelling([]byte(bad))
		assert.ErrorContains(t, err, c.want, "%s", c.to)
	}
}

// The last day is one on which the prices hold; a book without one holds always.
func TestSellingHoldsOn(t *testing.T) {
	book := design.SellingBook{}
	assert.NoError(t, design.SellingHoldsOn(book, "9999-12-31"))
	book.ValidUntil = "2026-06-30"
	assert.NoError(t, design.SellingHoldsOn(book, ""))
	assert.NoError(t, design.SellingHoldsOn(book, "2026-06-30"))
	assert.EqualError(t, design.SellingHoldsOn(book, "2026-07-01"),
		"validUntil: has run out: its last day was 2026-06-30 (allowed not before 2026-07-01)")
}
