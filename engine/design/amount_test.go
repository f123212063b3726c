package design_test

import (
	"math/rand/v2"
	"testing"

	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParseAmount(t *testing.T) {
	for text, want := range map[string]int64{
		"42": 420_000, "0.55": 5500, "1560.00": 15_600_000, "-0.02": -200, " 7 ": 70_000, "0.0001": 1,
		"999999999.9999": 9_999_999_999_999, "1000000000000": 1e16,
	} {
		a, err := design.ParseAmount(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, a.Steps(), text)
	}
	for _, text := range []string{"", ".", "1.", ".5", "1,5", "1e3", "--1", "0.00001", "10000000000000", "٣", "1 000"} {
		_, err := design.ParseAmount(text)
		assert.Error(t, err, text)
	}
}

func TestAmountTextIsExact(t *testing.T) {
	assert.Equal(t, "1560", design.Units(1560).String())
	assert.Equal(t, "-0.02", design.Amount(-200).String())
	r := rand.New(rand.NewPCG(3, 4))
	for range 5000 {
		a := design.Amount(r.Int64N(2e16) - 1e16)
		text, err := a.MarshalText()
		require.NoError(t, err)
		var back design.Amount
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, a, back, string(text))
	}
}
