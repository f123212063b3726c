package cost_test

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/money"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A round job by hand with lines that are sold beside it, at two rates of tax, and work
// that others do at cost.
func TestFreeLinesByHand(t *testing.T) {
	q, m := round()
	m.Extras = append(m.Extras,
		design.Extra{Name: "Electrician", Amount: design.Units(100), Role: design.ExtraWork},
		design.Extra{Name: "Shelf", Amount: design.Units(250), Role: design.ExtraSold},
		design.Extra{Name: "Book", Amount: design.Units(30) + 5000, Role: design.ExtraSold, OwnTax: true, Tax: 7},
		design.Extra{Name: "Loan of a lift", Amount: design.Units(40), Role: design.ExtraSold, OwnTax: true, Tax: 25},
	)
	p, err := cost.Calculate(q, plain("EUR"), m)
	require.NoError(t, err)
	assert.Equal(t, "412.33", p.BoughtIn.Plain(), "only what is bought in, with its mark-up")
	assert.Equal(t, "285.00", p.Labour.Plain(), "185 and 100, without a mark-up")
	assert.Equal(t, "799.06", p.Direct.Plain())
	assert.Equal(t, "839.01", p.Cost.Plain(), "5 % of 799.06 = 39.953")
	assert.Equal(t, "1048.76", p.List.Plain(), "839.01 / 0.8 = 1048.7625")
	assert.Equal(t, "1010.00", p.Made.Plain(), "less 4 % 1006.81, up to 5")
	assert.Equal(t, "320.50", p.Beside.Plain())
	assert.Equal(t, "1330.50", p.Net.Plain(), "no discount on what is sold as it stands")
	assert.Equal(t, "170.99", p.Margin.Plain(), "of what is made: 1010 − 839.01")
	eur := func(minor int64) money.Money { return money.New(minor, "EUR") }
	assert.Equal(t, []cost.TaxAmount{
		{Percent: 25, Base: eur(1300_00), Amount: eur(325_00)}, // 1010 + 250 + 40
		{Percent: 7, Base: eur(30_50), Amount: eur(2_14)},      // 2.135
	}, p.Taxes)
	assert.Equal(t, "327.14", p.Tax.Plain())
	assert.Equal(t, "1657.64", p.Gross.Plain())

	m.Reverse = true
	r, err := cost.Calculate(q, plain("EUR"), m)
	require.NoError(t, err)
	assert.Equal(t, p.Net, r.Net)
	assert.Empty(t, r.Taxes)
	assert.Equal(t, r.Net, r.Gross, "the client owes the tax")

	q.OwnBuild = true
	home, err := cost.Calculate(q, plain("EUR"), m)
	require.NoError(t, err)
	assert.Equal(t, "396.33", home.BoughtIn.Plain(), "at home nobody works for money or sells")
}

// Laws of free lines over random books: sums are sums, taxes are those of their bases, a
// line that is sold moves neither margin nor discount, and stages sum to gross.
func TestLawsOfFreeLines(t *testing.T) {
	rnd := rand.New(rand.NewPCG(52, 8))
	for range 400 {
		currency := []string{"EUR", "JPY", "KWD", "CLF"}[rnd.IntN(4)]
		q, b, m := random(rnd, currency)
		before, err := cost.Calculate(q, b, m)
		require.NoError(t, err)
		for i := range rnd.IntN(5) {
			x := design.Extra{Name: strconv.Itoa(i), Amount: design.Amount(rnd.Int64N(5_000_000)), Role: []string{"", design.ExtraWork, design.ExtraSold}[rnd.IntN(3)]}
			x.OwnTax, x.Tax = rnd.IntN(2) == 0, float64(rnd.IntN(400_000))/10_000
			m.Extras = append(m.Extras, x)
		}
		p, err := cost.Calculate(q, b, m)
		require.NoError(t, err)
		assert.Equal(t, p.Net, p.Made.Add(p.Beside))
		assert.Equal(t, p.Gross, p.Net.Add(p.Tax))
		bases, tax, due := money.New(0, currency), money.New(0, currency), money.New(0, currency)
		for _, one := range p.Taxes {
			bases, tax = bases.Add(one.Base), tax.Add(one.Amount)
		}
		assert.Equal(t, p.Net, bases, "every part of the price is taxed once")
		assert.Equal(t, p.Tax, tax)
		for _, s := range p.Stages {
			due = due.Add(s.Amount)
		}
		assert.Equal(t, p.Gross, due)
		assert.GreaterOrEqual(t, p.Net.Minor, before.Net.Minor, "no line makes a job cheaper")
		assert.GreaterOrEqual(t, p.Low.Minor, int64(0))
		assert.LessOrEqual(t, p.Low.Minor, p.Gross.Minor)
		assert.LessOrEqual(t, p.Gross.Minor, p.High.Minor)

		sold := m
		sold.Extras = append(sold.Extras[:len(sold.Extras):len(sold.Extras)], design.Extra{Name: "x", Amount: design.Units(77), Role: design.ExtraSold})
		with, err := cost.Calculate(q, b, sold)
		require.NoError(t, err)
		assert.Equal(t, p.Margin, with.Margin)
		assert.Equal(t, p.Discount, with.Discount)
		assert.Equal(t, money.Priced(77, 1, 1, currency, money.HalfAway), with.Net.Sub(p.Net))
	}
}

// What a client is quoted holds lines that are sold to the amount, and no tax where the
// client owes it.
func TestQuoteHoldsFreeLines(t *testing.T) {
	book := design.SellingBook{Currency: "EUR", Job: design.Units(1000)}
	m := design.Money{Tax: 20}
	usual, err := cost.Usual(cost.Visible{}, book, m)
	require.NoError(t, err)
	assert.Equal(t, "1200.00", usual.Plain())
	m.Extras = []design.Extra{{Amount: design.Units(100), Role: design.ExtraSold, OwnTax: true, Tax: 7}, {Amount: design.Units(100), Role: design.ExtraWork}}
	usual, err = cost.Usual(cost.Visible{}, book, m)
	require.NoError(t, err)
	assert.Equal(t, "1487.00", usual.Plain(), "1150 × 1.2 + 107")
	m.Reverse = true
	usual, err = cost.Usual(cost.Visible{}, book, m)
	require.NoError(t, err)
	assert.Equal(t, "1250.00", usual.Plain())
}
