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
		Format: design.SellingFormat, Version: design.SellingVersion, Currency: "EUR",
		Job: design.Units(630), Block: design.Units(12) / 10, SoftwoodL: -design.Units(5) / 10, Below: 13, Above: 21,
	}
	text := design.EncodeSelling(want)
	got, err := design.DecodeSelling(text)
	require.NoError(t, err)
	assert.Equal(t, want, got)
	assert.Equal(t, string(text), string(design.EncodeSelling(got)))
}

func TestSellingBookRefuses(t *testing.T) {
	good := string(design.EncodeSelling(design.SellingBook{Format: design.SellingFormat, Version: 1, Currency: "EUR"}))
	for _, c := range []struct{ from, to, want string }{
		{`"below": 0`, `"below": 91`, "below"},
		{`"currency": "EUR"`, `"currency": "EU"`, "currency"},
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
