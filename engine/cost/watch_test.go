package cost_test

import (
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// thousand is a job that costs 1000 and is sold with a margin of 20 % for 1250,
// with tax of 25 % 1562.50. 960 of it are goods.
func thousand(t *testing.T, change func(*design.Book, *design.Money)) ([]check.WatchOut, cost.Price) {
	t.Helper()
	book := plain("EUR")
	book.Policy = design.Policy{Margin: 20, MarginFloor: 10, RoundTo: 1}
	book.Stages = nil
	m := design.Money{Tax: 25, Reason: "a regular client", Extras: []design.Extra{{Name: "Goods", Amount: design.Units(960)}}}
	change(&book, &m)
	p, err := cost.Calculate(cost.Quantities{Travel: 2880}, book, m) // 0.8 h at 50
	require.NoError(t, err)
	require.Equal(t, "1000.00", p.Cost.Plain())
	return p.WatchOuts(book, m), p
}

func TestPriceWatchOuts(t *testing.T) {
	discount := func(d float64) func(*design.Book, *design.Money) {
		return func(_ *design.Book, m *design.Money) { m.Discount = d }
	}
	deposit := func(d float64) func(*design.Book, *design.Money) {
		return func(b *design.Book, _ *design.Money) {
			b.Stages = []design.Stage{{Name: "order", Percent: d}, {Name: "hung", Percent: 100 - d}}
		}
	}
	budget := func(text string) func(*design.Book, *design.Money) {
		return func(_ *design.Book, m *design.Money) {
			var err error
			m.Budget, err = design.ParseAmount(text)
			require.NoError(t, err)
		}
	}
	minimum := func(units int64, d float64) func(*design.Book, *design.Money) {
		return func(b *design.Book, m *design.Money) {
			b.Policy.MinimumCharge, m.Discount = design.Units(units), d
		}
	}
	limit := func(limit, d float64) func(*design.Book, *design.Money) {
		return func(b *design.Book, m *design.Money) { b.Policy.DiscountLimit, m.Discount = limit, d }
	}
	unsaid := func(d float64) func(*design.Book, *design.Money) {
		return func(_ *design.Book, m *design.Money) { m.Reason, m.Discount = " ", d }
	}
	for _, c := range []struct {
		name   string
		change func(*design.Book, *design.Money)
		code   string
		level  check.Level
		fix    string
	}{
		// The floor of 10 %: 1000 / 0.9 = 1111.11, a discount of 11.11 %.
		{"the margin is on the floor", discount(11.11), "", 0, ""}, // 1111.12
		{"a cent below it", discount(11.1120), "price/below-floor", check.Caution, "11"},
		{"far below it", discount(25), "price/below-floor", check.Caution, "11"},
		{"no discount reaches it", func(b *design.Book, _ *design.Money) { b.Policy.MarginFloor = 21 },
			"price/below-floor", check.Caution, ""},

		{"a minimum charge that the price reaches", minimum(1187, 5), "", 0, ""},                            // 1187.50
		{"one that it misses", minimum(1188, 5), "price/below-minimum", check.Caution, "4"},                 // 4 %: 1200
		{"the minimum itself less a discount", minimum(2000, 1), "price/below-minimum", check.Caution, "0"}, // 1980

		{"a discount at its limit", limit(5, 5), "", 0, ""},
		{"a hair beyond it", limit(5, 5.0001), "price/discount-limit", check.Stop, "5"},
		{"no limit is set", limit(0, 9), "", 0, ""},
		{"nobody has said why", unsaid(0.01), "price/discount-reason", check.Note, ""},
		{"no discount needs no reason", unsaid(0), "", 0, ""},

		// 960 of 1562.50 are 61.44 %.
		{"a deposit that covers the goods", deposit(61.44), "", 0, ""},
		{"a cent less", deposit(61.4399), "price/deposit", check.Caution, ""},
		{"all at the end", deposit(0), "price/deposit", check.Caution, ""},

		{"no budget was said", budget("0"), "", 0, ""},
		{"on the budget", budget("1562.5"), "", 0, ""},
		{"a cent over it", budget("1562.49"), "price/over-budget", check.Note, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, p := thousand(t, c.change)
			if c.code == "" {
				assert.Empty(t, got, "net %s", p.Net.Plain())
				return
			}
			require.Len(t, got, 1)
			w := got[0]
			assert.Equal(t, []any{c.code, c.level, true, false}, []any{w.Code, w.Level, w.Private, w.Evidence})
			if c.fix == "" {
				assert.Nil(t, w.Fix)
				return
			}
			require.NotNil(t, w.Fix)
			assert.Equal(t, check.Fix{Path: "money.discount", Value: c.fix}, *w.Fix)
		})
	}
	all, _ := thousand(t, deposit(0))
	assert.Equal(t, "62 %", words.Reader{Language: words.English()}.Show(all[0].Args["share"]), "61.44 %, up to a whole one")
}

// A home builder has a budget for goods, and no price to be below a floor.
func TestHomeBuildersBudget(t *testing.T) {
	q, m := round()
	q.OwnBuild = true
	for _, c := range []struct {
		budget string
		fires  bool
	}{{"396.33", false}, {"396.32", true}} {
		var err error
		m.Budget, err = design.ParseAmount(c.budget)
		require.NoError(t, err)
		book := plain("EUR")
		book.Policy.MarginFloor = 90
		p, err := cost.Calculate(q, book, m)
		require.NoError(t, err)
		got := p.WatchOuts(book, m)
		require.Equal(t, c.fires, len(got) == 1, "%v", got)
		if c.fires {
			assert.Equal(t, "price/goods-over-budget", got[0].Code)
			assert.False(t, got[0].Private, "it is their own shopping")
		}
	}
}

func TestIndication(t *testing.T) {
	assert.Empty(t, cost.Indication(design.Work{Survey: true}))
	got := cost.Indication(design.Work{})
	require.Len(t, got, 1)
	assert.Equal(t, []any{"price/indication", check.Note}, []any{got[0].Code, got[0].Level})
	assert.Equal(t, &check.Fix{Path: "work.survey", Value: "yes"}, got[0].Fix)
	own := cost.Indication(design.Work{OwnBuild: true})
	assert.Equal(t, "price/own-indication", own[0].Code)
	assert.Nil(t, own[0].Fix, "nobody surveys for a home builder")
}

// A price that lacks goods says so elsewhere.
func TestNoPriceHasNoWatchOuts(t *testing.T) {
	assert.Empty(t, cost.Price{}.WatchOuts(plain("EUR"), design.Money{Budget: design.Units(1)}))
}
