package money_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"blockfield/engine/money"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func xxx(minor int64) money.Money { return money.New(minor, money.None) }

func TestMulDivRounds(t *testing.T) {
	for _, c := range []struct {
		minor, num, den    int64
		half, up, truncate int64 // by hand
	}{
		{100, 1, 3, 33, 34, 33},
		{200, 1, 3, 67, 67, 66},
		{25, 1, 10, 3, 3, 2},
		{24, 1, 10, 2, 3, 2},
		{-25, 1, 10, -3, -2, -2},
		{-26, 1, 10, -3, -2, -2},
		{-24, 1, 10, -2, -2, -2},
		{30, 1, 10, 3, 3, 3},
		{-30, 1, 10, -3, -3, -3},
		{0, 7, 9, 0, 0, 0},
		{10, -1, 4, -3, -2, -2},
		{math.MaxInt64, 1000, 1000, math.MaxInt64, math.MaxInt64, math.MaxInt64},
		{math.MinInt64, 7, 7, math.MinInt64, math.MinInt64, math.MinInt64},
	} {
		m := xxx(c.minor)
		assert.Equal(t, c.half, m.MulDiv(c.num, c.den, money.HalfAway).Minor, "half away: %+v", c)
		assert.Equal(t, c.up, m.MulDiv(c.num, c.den, money.Up).Minor, "up: %+v", c)
		assert.Equal(t, c.truncate, m.MulDiv(c.num, c.den, money.TowardsZero).Minor, "towards zero: %+v", c)
	}
}

// The rounded quotient is the whole number that the definition of the rounding
// picks, checked by exact fractions.
func TestMulDivKeepsItsDefinition(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		minor, num, den := rng.Int64N(2e9)-1e9, rng.Int64N(2e6)-1e6, rng.Int64N(1e6)+1
		exact := new(big.Rat).Mul(big.NewRat(minor, 1), big.NewRat(num, den))
		m := xxx(minor)

		diff := func(r money.Rounding) *big.Rat {
			got := big.NewRat(m.MulDiv(num, den, r).Minor, 1)
			return got.Sub(got, exact)
		}
		half := diff(money.HalfAway)
		require.LessOrEqual(t, new(big.Rat).Abs(half).Cmp(big.NewRat(1, 2)), 0, "%d·%d/%d", minor, num, den)
		up := diff(money.Up)
		require.True(t, up.Sign() >= 0 && up.Cmp(big.NewRat(1, 1)) < 0, "%d·%d/%d", minor, num, den)
		trunc := diff(money.TowardsZero)
		require.True(t, trunc.Sign()*exact.Sign() <= 0 && trunc.Abs(trunc).Cmp(big.NewRat(1, 1)) < 0, "%d·%d/%d", minor, num, den)
	}
}

func TestPriced(t *testing.T) {
	// Blade wear of 4.00 for each 1000 cuts, 550 cuts: 2.20. By hand.
	assert.Equal(t, xxx(220), money.Priced(4_0000, 550, 10_000*1000, money.None, money.HalfAway))
	// 0.02 a piece, 20 pieces, in a currency without decimals: 0.4 rounds to 0.
	assert.Equal(t, money.New(0, "JPY"), money.Priced(200, 20, 10_000, "JPY", money.HalfAway))
	assert.Equal(t, money.New(1, "JPY"), money.Priced(200, 20, 10_000, "JPY", money.Up))
	// 13.375 kg at 14 in thousandths of a dinar (KWD has three decimals).
	assert.Equal(t, money.New(187_250, "KWD"), money.Priced(14_0000, 13_375, 10_000*1000, "KWD", money.HalfAway))
	// Neither factor may overflow on the way to an answer that fits.
	assert.Equal(t, xxx(100), money.Priced(math.MaxInt64, 7, math.MaxInt64/100*100+7, money.None, money.HalfAway).MulDiv(1, 7, money.HalfAway))
}

func TestRoundUpTo(t *testing.T) {
	step := xxx(1000)
	for minor, want := range map[int64]int64{
		0: 0, 1: 1000, 999: 1000, 1000: 1000, 1001: 2000, 227_544: 228_000, -1: 0, -1000: -1000, -1001: -1000,
	} {
		assert.Equal(t, xxx(want), xxx(minor).RoundUpTo(step), "%d", minor)
	}
	assert.Equal(t, xxx(7), xxx(7).RoundUpTo(xxx(0)), "no step leaves the amount alone")
}

func TestSums(t *testing.T) {
	a, b := xxx(155), xxx(-45)
	assert.Equal(t, xxx(110), a.Add(b))
	assert.Equal(t, xxx(200), a.Sub(b))
	assert.Equal(t, a, money.Money{}.Add(a), "the zero value goes with every currency")
	assert.Equal(t, a, a.Add(money.Money{}))
	assert.Equal(t, xxx(-155), money.Money{}.Sub(a))
	assert.Equal(t, money.Money{}, money.Sum())
	assert.Equal(t, 1, a.Cmp(b))
	assert.Equal(t, -1, b.Cmp(a))
	assert.Equal(t, 0, a.Cmp(a))
}

func TestFaultsPanic(t *testing.T) {
	eur, jpy := money.New(1, "EUR"), money.New(1, "JPY")
	for name, f := range map[string]func(){
		"two currencies, add":     func() { eur.Add(jpy) },
		"two currencies, sub":     func() { eur.Sub(jpy) },
		"two currencies, compare": func() { eur.Cmp(jpy) },
		"two currencies, step":    func() { eur.RoundUpTo(jpy) },
		"zero of another":         func() { eur.Add(money.New(0, "JPY")) },
		"unknown currency":        func() { money.New(1, "ZZZ") },
		"sum too large":           func() { xxx(math.MaxInt64).Add(xxx(1)) },
		"product too large":       func() { xxx(math.MaxInt64).MulDiv(3, 2, money.HalfAway) },
		"step too large":          func() { xxx(math.MaxInt64).RoundUpTo(xxx(1000)) },
		"divided by zero":         func() { eur.MulDiv(1, 0, money.Up) },
		"divided by a negative":   func() { eur.MulDiv(1, -1, money.Up) },
	} {
		assert.Panics(t, f, name)
	}
}
