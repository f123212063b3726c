package cost_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A price does not know what its unit buys: with every amount of the book 17,000
// times as high, as in rupiah for euros (rough, from memory), every line and every
// sum is, but for what rounding to the cent and to the step of the policy takes.
func TestPricesScaleWithTheCurrency(t *testing.T) {
	const times = 17_000
	for _, w := range workedJobs() {
		euros, rupiah := design.DefaultBook(), design.DefaultBook()
		euros.Currency, rupiah.Currency = "EUR", "IDR"
		designtest.EachAmount(&rupiah, func(a design.Amount) design.Amount { return times * a })
		small, err := cost.Calculate(w.q, euros, w.m)
		require.NoError(t, err)
		large, err := cost.Calculate(w.q, rupiah, w.m)
		require.NoError(t, err)
		require.Len(t, large.Lines, len(small.Lines))
		for i, l := range large.Lines {
			assert.InDelta(t, times*float64(small.Lines[i].Amount.Minor), float64(l.Amount.Minor), times/2, "%s: %s", w.name, l.Key)
		}
		// Lines differ by half a cent each, and the net by what the step takes.
		assert.InDelta(t, times*float64(small.Cost.Minor), float64(large.Cost.Minor), 20*times, w.name)
		assert.Equal(t, times*small.Net.Minor, large.Net.Minor, "%s: both end on the same step", w.name)
		assert.Equal(t, times*small.Gross.Minor, large.Gross.Minor, w.name)
	}
}

// Whatever the amounts and quantities are, up to the most that a book and a
// design may hold and beyond, there is a price whose sums are right, or the job
// is said to come to more than can be reckoned.
func TestNoAmountOverflows(t *testing.T) {
	const mostAmount = 1_000_000_000_000 // that a table allows
	rnd := rand.New(rand.NewPCG(6, 1))
	priced, refused := 0, 0
	for i := range 1500 {
		currency := currencies[i%len(currencies)]
		q, book, m := random(rnd, currency)
		magnitude := math.Pow10(rnd.IntN(13))
		designtest.EachAmount(&book, func(design.Amount) design.Amount {
			return design.Amount(math.Min(rnd.Float64()*magnitude, mostAmount) * float64(design.Units(1)))
		})
		book.Policy.MaterialMarkup, book.Policy.Contingency, book.Policy.Margin = 100, 100, 90
		m.Tax, m.Discount = 40, float64(rnd.IntN(26))
		m.Extras = []design.Extra{{Name: "x", Amount: design.Amount(rnd.Float64() * magnitude * float64(design.Units(1)))}}
		hours := int64(1) << rnd.IntN(40)
		q.Shop, q.Tasks = q.Shop+hours, append(q.Tasks, cost.Task{By: cost.Shop, Typical: hours, High: 2 * hours})

		p, err := cost.Calculate(q, book, m)
		if err != nil {
			require.True(t, errors.Is(err, cost.ErrTooLarge), "%v", err)
			refused++
			continue
		}
		priced++
		assert.True(t, 0 <= p.Low.Minor && p.Low.Minor <= p.Gross.Minor && p.Gross.Minor <= p.High.Minor, "job %d: %v %v %v", i, p.Low, p.Gross, p.High)
		assert.Equal(t, p.Net.Add(p.Tax), p.Gross)
		for _, s := range p.Stages {
			assert.GreaterOrEqual(t, s.Amount.Minor, int64(0))
		}
		p.WatchOuts(book, m)
	}
	assert.Greater(t, priced, 300)
	assert.Greater(t, refused, 300)
}

// A selling book whose prices are out of all proportion quotes nothing.
func TestHugeSellingBooksQuoteNothing(t *testing.T) {
	v := cost.Visible{Panels: 1, Blocks: 480_000}
	book := rounds()
	book.Block = design.Units(1_000_000_000_000)
	_, _, err := cost.Quote(v, book, design.Money{})
	assert.ErrorIs(t, err, cost.ErrTooLarge)
	_, err = cost.Usual(v, book, design.Money{})
	assert.ErrorIs(t, err, cost.ErrTooLarge)
	_, _, err = cost.Quote(cost.Visible{}, rounds(), design.Money{Extras: []design.Extra{{Amount: 4 * design.Units(1_000_000_000_000)}}})
	assert.ErrorIs(t, err, cost.ErrTooLarge)
}
