package cost_test

import (
	"math/rand/v2"
	"testing"

	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/money"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func rounds() design.SellingBook {
	u := design.Units
	return design.SellingBook{
		Format: design.SellingFormat, Version: design.SellingVersion, Currency: "EUR",
		Job: u(500), Panel: u(100), Block: u(11) / 10, FieldM2: u(140), FrameM: u(42), HangingHand: u(82), RoadKm: u(21) / 10,
		SoftwoodL: u(9) / 10, MiddleWoodL: u(51) / 10, FineWoodL: u(98) / 10, Below: 10, Above: 20,
	}
}

// By hand: 500 + 100 + 1.1 × 700 + 140 × 0.95 + 42 × 4 + 82 × 2 + 2.1 × 80 +
// 5.1 × 60 = 2309; less 10 % 2078.10, with 20 % tax 2493.72. A tenth below is
// 2244.35, in steps of 50 2200; a fifth above 2992.46, 3000.
func TestQuoteByHand(t *testing.T) {
	v := cost.Visible{
		Panels: 1, Blocks: 700, FieldCM2: 9500, FrameMM: 4000, HangingHands: 2, RoadM: 80_000, MiddleML: 60_000,
	}
	low, high, err := cost.Quote(v, rounds(), design.Money{Discount: 10, Tax: 20})
	require.NoError(t, err)
	assert.Equal(t, []string{"2200.00", "3000.00"}, []string{low.Plain(), high.Plain()})

	v.MiddleML, v.FineWoodML, v.SoftwoodML = 0, 40_000, 20_000 // 392 + 18 instead of 306
	low, _, err = cost.Quote(v, rounds(), design.Money{})
	require.NoError(t, err)
	assert.Equal(t, "2150.00", low.Plain(), "2413 less a tenth: 2171.70")

	book := rounds()
	book.Currency = "ZZZ"
	_, _, err = cost.Quote(v, book, design.Money{})
	assert.ErrorContains(t, err, "currency")
}

// Jobs whose prices follow a book of two digits exactly give that book back;
// and the range is as wide as theirs, in whole percents.
func TestFitFindsTheBookAgain(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 1))
	want := rounds()
	var samples []cost.Sample
	for range 60 {
		n := func(limit int64) int64 { return 1 + rnd.Int64N(limit) }
		s := cost.Sample{Visible: cost.Visible{
			Panels: n(5), Blocks: n(3000), FieldCM2: n(40_000), FrameMM: n(20_000), HangingHands: n(12), RoadM: n(400_000),
			SoftwoodML: n(90_000), MiddleML: n(90_000), FineWoodML: n(90_000),
		}}
		s.Price = cost.Price{Currency: "EUR", Sold: true, List: exact(s.Visible, want)}
		s.Price.Gross = s.Price.List
		s.Price.Low = s.Price.List.MulDiv(905, 1000, money.HalfAway)
		s.Price.High = s.Price.List.MulDiv(1195, 1000, money.HalfAway)
		samples = append(samples, s)
	}
	got, err := cost.Fit(samples)
	require.NoError(t, err)
	assert.Equal(t, want, got)

	_, err = cost.Fit(samples[:10])
	assert.ErrorIs(t, err, cost.ErrFewSamples)
	same := make([]cost.Sample, 40)
	for i := range same {
		same[i] = samples[0]
	}
	_, err = cost.Fit(same)
	assert.ErrorIs(t, err, cost.ErrFewSamples, "like jobs tell nothing apart")
	samples[3].Price.Sold = false
	_, err = cost.Fit(samples)
	assert.Error(t, err)
}

// exact is the price of a job by a book, in whole cents, written out anew.
func exact(v cost.Visible, b design.SellingBook) money.Money {
	cents := func(a design.Amount, steps, per int64) float64 {
		return float64(a) / 100 * float64(steps) / float64(per)
	}
	sum := cents(b.Job, 1, 1) + cents(b.Panel, v.Panels, 1) + cents(b.Block, v.Blocks, 1) +
		cents(b.FieldM2, v.FieldCM2, 10_000) + cents(b.FrameM, v.FrameMM, 1000) + cents(b.HangingHand, v.HangingHands, 1) +
		cents(b.RoadKm, v.RoadM, 1000) + cents(b.SoftwoodL, v.SoftwoodML, 1000) +
		cents(b.MiddleWoodL, v.MiddleML, 1000) + cents(b.FineWoodL, v.FineWoodML, 1000)
	return money.New(int64(sum+0.5), "EUR")
}

// By hand: a job of 500 with 200 and 40 of bought-in lines, which are sold on
// for 1.25, 1.5 and 1.75 times what they cost. Low 500 − 10 % + 300 = 750, usual
// 500 + 360 = 860, high 500 + 20 % + 420 = 1020; less 10 %, with 20 % tax 810,
// 928.80 and 1101.60; in steps of 5 and of 50 810 and 1150. The factors are
// invented.
func TestBoughtInLinesAreQuoted(t *testing.T) {
	m := design.Money{Discount: 10, Tax: 20, Extras: []design.Extra{
		{Name: "scaffold", Amount: design.Units(200)}, {Name: "parking", Amount: design.Units(40)},
	}}
	low, high, err := cost.Quote(cost.Visible{}, rounds(), m)
	require.NoError(t, err)
	assert.Equal(t, []string{"810.00", "1150.00"}, []string{low.Plain(), high.Plain()})
	usual, err := cost.Usual(cost.Visible{}, rounds(), m)
	require.NoError(t, err)
	assert.Equal(t, "928.80", usual.Plain())
}
