package cost_test

import (
	"errors"
	"math/rand/v2"
	"slices"
	"testing"

	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/money"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// plain is a book of round figures in one currency, for work by hand.
func plain(currency string) design.Book {
	u := design.Units
	return design.Book{
		Currency: currency,
		Rates:    design.Rates{Shop: u(40), Office: u(30), Site: u(50), Overhead: u(10)},
		Policy: design.Policy{
			MaterialMarkup: 10, Contingency: 5, Margin: 20, MinimumCharge: u(100), RoundTo: u(5),
		},
		Travel: design.Travel{PerKm: u(1), SpeedKmh: 50},
		Goods: design.Goods{
			GluePerKg: u(20), GlueBottleKg: 0.5, CleatPerM3: u(1000), WoodScrew: u(1) / 10, WallFixing: u(1), Brad: u(1) / 100,
			AbrasivesPer100: u(2), BladesPer1000: u(5), PackingPerPanel: u(8),
		},
		Woods:    []design.WoodPrice{{Wood: "oak", SquaresPerM3: u(5000), BoardsPerM3: u(6000)}, {Wood: "ash", SquaresPerM3: u(4000), BoardsPerM3: u(4500)}},
		Sheets:   []design.SheetPrice{{Sheet: "birch ply", Thickness: length.MM(12), Price: u(70)}},
		Finishes: []design.FinishPrice{{Finish: "shellac", PerLitre: u(36)}, {Finish: "drying oil", PerLitre: u(30)}},
		Stages:   []design.Stage{{Name: "order", Percent: 33.3}, {Name: "ready", Percent: 33.3}, {Name: "hung", Percent: 33.4}},
	}
}

// A job of round figures: goods 200 + 60 + 70 + 20 + 18 + 10 + (1 + 4 + 0.20)
// + 25 × (0.02 + 0.005) + 2 × 8 + 12.50 extra.
func round() (cost.Quantities, design.Money) {
	return cost.Quantities{
			Squares: timber("oak", 0.04e9), Boards: timber("oak", 0.01e9),
			Sheets: []cost.Sheet{{Sheet: "birch ply", Thickness: length.Nanometres(12_000_000, length.InInch), Count: 1}},
			// 401 g × 1.25 are 501.25 g: two bottles of 500 g. 251 ml: half a litre.
			GlueG: 401, Finishes: tin("shellac", 251), CleatMM3: 10_000_000,
			CleatScrews: 10, WallFixings: 4, Brads: 20, CutBlocks: 25, Panels: 2,
			Shop: 7200, Office: 3600, Site: 3600,
			Travel: 1800, RoadM: 40_500,
		}, design.Money{
			Tax: 25, Discount: 4,
			Extras: []design.Extra{{Name: "Crane", Amount: design.Units(25) / 2}},
		}
}

func TestRoundJobByHand(t *testing.T) {
	q, m := round()
	p, err := cost.Calculate(q, plain("EUR"), m)
	require.NoError(t, err)

	// 200 + 70 + 20 + 18 + 60 + 10 + 5.20 + 0.625 (0.63) + 16 + 12.50
	assert.Equal(t, "412.33", p.BoughtIn.Plain())
	assert.Equal(t, "396.33", p.Materials.Plain(), "a home builder wraps nothing")
	assert.Equal(t, "41.23", p.Markup.Plain(), "10 %")
	assert.Equal(t, "185.00", p.Labour.Plain(), "2 × 40 + 30 + 50 + ½ × 50")
	assert.Equal(t, "20.00", p.Overhead.Plain(), "shop hours only")
	assert.Equal(t, "40.50", p.Travel.Plain())
	assert.Equal(t, "699.06", p.Direct.Plain())
	assert.Equal(t, "34.95", p.Contingency.Plain(), "5 % of 699.06 = 34.953")
	assert.Equal(t, "734.01", p.Cost.Plain())
	assert.Equal(t, "917.51", p.List.Plain(), "734.01 / 0.8 = 917.5125")
	assert.Equal(t, "36.70", p.Discount.Plain(), "4 %")
	assert.Equal(t, "885.00", p.Net.Plain(), "880.81, up to 5")
	assert.Equal(t, "4.19", p.RoundedUp.Plain())
	assert.Equal(t, "150.99", p.Margin.Plain())
	assert.InDelta(t, 17.061, p.MarginPercent, 0.001, "1 − 734.01/885: the discount comes out of the margin")
	assert.Equal(t, "221.25", p.Tax.Plain())
	assert.Equal(t, "1106.25", p.Gross.Plain())
	assert.False(t, p.MinimumApplied || p.Placeholder)

	// A third each of 1106.25, cut to the cent; the last stage takes the rest.
	var stages []string
	for _, s := range p.Stages {
		stages = append(stages, s.Amount.Plain())
	}
	assert.Equal(t, []string{"368.38", "368.38", "369.49"}, stages)
	assert.Equal(t, cost.Line{Key: "line/extra", Name: "Crane", Role: cost.Material, Amount: money.New(1250, "EUR")},
		p.Lines[slices.IndexFunc(p.Lines, func(l cost.Line) bool { return l.Key == "line/extra" })])
}

func TestMinimumCharge(t *testing.T) {
	book := plain("EUR")
	for _, c := range []struct {
		minimum int64
		applied bool
		net     string
	}{{917, false, "885.00"}, {918, true, "885.00"}, {2000, true, "1920.00"}} {
		q, m := round()
		book.Policy.MinimumCharge = design.Units(c.minimum)
		p, err := cost.Calculate(q, book, m)
		require.NoError(t, err)
		assert.Equal(t, c.applied, p.MinimumApplied, "minimum %d", c.minimum)
		assert.Equal(t, c.net, p.Net.Plain(), "the discount comes after the minimum")
	}
}

// Whole tins, bottles and steps, on either side of the edge.
func TestWholeGoods(t *testing.T) {
	for _, c := range []struct {
		name string
		q    cost.Quantities
		key  string
		want int64
	}{
		{"a quarter litre", cost.Quantities{Finishes: tin("shellac", 250)}, "line/finish", 900},
		{"a millilitre more", cost.Quantities{Finishes: tin("shellac", 251)}, "line/finish", 1800},
		{"tins of two finishes are not shared", cost.Quantities{Finishes: append(tin("shellac", 10), tin("drying oil", 10)...)}, "line/finish", 900 + 750},
		{"a bottle", cost.Quantities{GlueG: 400}, "line/glue", 1000},
		{"a gram more", cost.Quantities{GlueG: 401}, "line/glue", 2000},
		{"no glue", cost.Quantities{}, "line/glue", 0},
		{"two woods", cost.Quantities{Squares: append(timber("oak", 1e6), timber("ash", 1e6)...)}, "line/block-stock", 500 + 400},
		{"half a cent goes up", cost.Quantities{CutBlocks: 1}, "line/abrasives", 3},
	} {
		p, err := cost.Calculate(c.q, plain("EUR"), design.Money{})
		require.NoError(t, err)
		assert.Equal(t, c.want, line(p, c.key), c.name)
	}
}

func TestMissingPrices(t *testing.T) {
	q, m := round()
	book := plain("EUR")
	q.Boards = timber("teak", 1e6)
	q.Sheets[0].Thickness = length.MM(15)
	q.Finishes = append(q.Finishes, cost.Finish{Finish: "tar", VolumeML: 5})
	_, err := cost.Calculate(q, book, m)
	assert.EqualError(t, err, "sheets: no price for birch ply 15 mm\nfinishes: no price for tar\nwoods: no price for teak")
	var missing *cost.MissingError
	require.True(t, errors.As(err, &missing))
	assert.Equal(t, &cost.MissingError{Path: "sheets", What: "birch ply 15 mm"}, missing)
}

func TestRefusedBooks(t *testing.T) {
	q, m := round()
	for path, change := range map[string]func(*design.Book){
		"currency":      func(b *design.Book) { b.Currency = "ZZZ" },
		"policy.margin": func(b *design.Book) { b.Policy.Margin = 100 },
	} {
		book := plain("EUR")
		change(&book)
		_, err := cost.Calculate(q, book, m)
		assert.ErrorContains(t, err, path+": ")
	}
	book := plain("EUR")
	book.Policy.Margin = 99.9999
	_, err := cost.Calculate(q, book, m)
	assert.NoError(t, err)
}

// random makes jobs and books of any size; seeded, so that a failure comes
// again.
func random(rnd *rand.Rand, currency string) (cost.Quantities, design.Book, design.Money) {
	n := func(limit int64) int64 { return rnd.Int64N(limit) }
	amount := func(units int64) design.Amount { return design.Amount(n(units * 10_000)) }
	percent := func(limit int64) float64 { return float64(n(limit*100)) / 100 }
	task := func(by cost.Worker) cost.Task {
		s := []int64{n(400_000), n(400_000), n(400_000)}
		slices.Sort(s)
		return cost.Task{By: by, Low: s[0], Typical: s[1], High: s[2]}
	}
	q := cost.Quantities{
		Squares: timber("oak", float64(n(1e9))), Boards: timber("ash", float64(n(1e8))), Sheets: ply("birch ply", 12, int(n(9))),
		Finishes: tin("shellac", n(9000)), CleatMM3: n(1e8), GlueG: n(5000), CleatScrews: int(n(99)), WallFixings: int(n(99)),
		Brads: int(n(99)), CutBlocks: int(n(50_000)), Panels: int(n(12)) + 1,
		Tasks:  []cost.Task{task(cost.Shop), task(cost.Office), task(cost.Site)},
		Travel: n(400_000), RoadM: n(2_000_000), Surveyed: n(2) == 0,
	}
	q.Shop, q.Office, q.Site = q.Tasks[0].Typical, q.Tasks[1].Typical, q.Tasks[2].Typical
	b := plain(currency)
	b.Rates = design.Rates{Shop: amount(200), Office: amount(200), Site: amount(200), Overhead: amount(90)}
	b.Policy = design.Policy{
		MaterialMarkup: percent(50), Contingency: percent(20), Margin: percent(60),
		MinimumCharge: amount(60_000), RoundTo: amount(100) + 100,
	}
	b.Goods.AbrasivesPer100, b.Goods.BladesPer1000, b.Goods.WoodScrew = amount(9), amount(9), amount(2)
	first := percent(60)
	b.Stages = []design.Stage{{Name: "a", Percent: first}, {Name: "b", Percent: percent(40)}, {Name: "c", Percent: 0}}
	b.Stages[2].Percent = 100 - first - b.Stages[1].Percent
	return q, b, design.Money{Tax: percent(30), Discount: percent(25)}
}

// currencies with two, no, three and four decimals.
var currencies = []string{"XXX", "EUR", "JPY", "KWD", "IDR", "CLF"}

func TestSumsAreSums(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 1))
	for i := range 800 {
		currency := currencies[i%len(currencies)]
		q, b, m := random(rnd, currency)
		p, err := cost.Calculate(q, b, m)
		require.NoError(t, err)
		by := map[cost.Role]money.Money{}
		for _, l := range p.Lines {
			by[l.Role] = by[l.Role].Add(l.Amount)
		}
		same := func(want, got money.Money, what string) {
			t.Helper()
			assert.Equal(t, currency, got.Currency, what)
			assert.Equal(t, want.Minor, got.Minor, "%s, job %d in %s", what, i, currency)
		}
		same(by[cost.Material], p.BoughtIn, "bought in")
		same(by[cost.Labour], p.Labour, "labour")
		same(by[cost.Overhead], p.Overhead, "overhead")
		same(by[cost.Travel], p.Travel, "travel")
		same(money.Sum(p.BoughtIn, p.Markup, p.Labour, p.Overhead, p.Travel), p.Direct, "direct")
		same(p.Direct.Add(p.Contingency), p.Cost, "cost")
		same(p.List.Sub(p.Discount).Add(p.RoundedUp), p.Net, "net")
		same(p.Cost.Add(p.Margin), p.Net, "net and margin")
		same(p.Net.Add(p.Tax), p.Gross, "gross")
		var stages money.Money
		for _, s := range p.Stages {
			assert.GreaterOrEqual(t, s.Amount.Minor, int64(0))
			stages = stages.Add(s.Amount)
		}
		same(stages, p.Gross, "stages")
		assert.LessOrEqual(t, p.Low.Minor, p.Gross.Minor)
		assert.LessOrEqual(t, p.Gross.Minor, p.High.Minor)

		step := money.Priced(b.Policy.RoundTo.Steps(), 1, design.Units(1).Steps(), currency, money.Up).Minor
		assert.Zero(t, p.Net.Minor%step, "a whole number of steps")
		assert.True(t, p.RoundedUp.Minor >= 0 && p.RoundedUp.Minor < step)
	}
}

// Nothing that costs more, and no hour more, makes the price fall.
func TestNetNeverFalls(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 1))
	raises := map[string]func(*cost.Quantities, *design.Book){
		"wood":        func(q *cost.Quantities, b *design.Book) { b.Woods[0].SquaresPerM3 += 12_345 },
		"sticks":      func(q *cost.Quantities, b *design.Book) { q.Squares[0].VolumeMM3 += 4_000_000 },
		"sheet":       func(q *cost.Quantities, b *design.Book) { q.Sheets[0].Count++ },
		"finish":      func(q *cost.Quantities, b *design.Book) { q.Finishes[0].VolumeML += 60 },
		"glue":        func(q *cost.Quantities, b *design.Book) { q.GlueG += 20 },
		"screws":      func(q *cost.Quantities, b *design.Book) { q.CleatScrews++ },
		"rate":        func(q *cost.Quantities, b *design.Book) { b.Rates.Shop += 777 },
		"minute":      func(q *cost.Quantities, b *design.Book) { q.Site += 60 },
		"road":        func(q *cost.Quantities, b *design.Book) { q.RoadM += 1500 },
		"markup":      func(q *cost.Quantities, b *design.Book) { b.Policy.MaterialMarkup += 0.3 },
		"contingency": func(q *cost.Quantities, b *design.Book) { b.Policy.Contingency += 0.3 },
		"margin":      func(q *cost.Quantities, b *design.Book) { b.Policy.Margin += 0.3 },
		"minimum":     func(q *cost.Quantities, b *design.Book) { b.Policy.MinimumCharge += 50_000 },
	}
	rises := map[string]int{}
	for i := range 200 {
		seed := rnd.Uint64()
		for name, raise := range raises {
			draw := func() (cost.Quantities, design.Book, design.Money) {
				return random(rand.New(rand.NewPCG(seed, 5)), currencies[i%len(currencies)])
			}
			q, b, m := draw()
			before, err := cost.Calculate(q, b, m)
			require.NoError(t, err)
			q, b, m = draw()
			raise(&q, &b)
			after, err := cost.Calculate(q, b, m)
			require.NoError(t, err)
			assert.GreaterOrEqual(t, after.Net.Minor, before.Net.Minor, "%s, seed %d", name, seed)
			if after.Net.Minor > before.Net.Minor {
				rises[name]++
			}
		}
	}
	for name := range raises {
		assert.Positive(t, rises[name], "%s never showed in a price: the test says nothing of it", name)
	}
}

// A mark-up of m on the cost is a margin of m/(1+m) of the price. 25 % on 100
// is 125, of which a fifth is margin; and 18 % of margin is not 18 % of mark-up.
func TestMarginIsNotMarkup(t *testing.T) {
	price := func(margin float64) cost.Price {
		book := plain("EUR")
		book.Policy = design.Policy{Margin: margin, RoundTo: 1}
		p, err := cost.Calculate(cost.Quantities{Office: 1000 * 3600 / 30}, book, design.Money{})
		require.NoError(t, err)
		require.Equal(t, "1000.00", p.Cost.Plain())
		return p
	}
	assert.Equal(t, "1250.00", price(20).Net.Plain())
	assert.Equal(t, "1219.51", price(18).Net.Plain(), "1000 / 0.82 = 1219.512, and not 1180")
	for _, markup := range []float64{0.05, 0.12, 0.25, 0.6, 1.5} {
		p := price(100 * markup / (1 + markup))
		assert.InDelta(t, 1000*(1+markup), float64(p.Net.Minor)/100, 0.02, "%v", markup)
		assert.InDelta(t, 100*markup/(1+markup), p.MarginPercent, 0.001, "%v", markup)
	}
}

// The discount comes off the price, after the margin: half of a margin of 20 %
// goes for a tenth off.
func TestDiscountComesOutOfTheMargin(t *testing.T) {
	book := plain("EUR")
	book.Policy = design.Policy{Margin: 20, RoundTo: 1}
	p, err := cost.Calculate(cost.Quantities{Office: 120_000}, book, design.Money{Discount: 10})
	require.NoError(t, err)
	assert.Equal(t, []string{"1250.00", "125.00", "1125.00", "125.00"},
		[]string{p.List.Plain(), p.Discount.Plain(), p.Net.Plain(), p.Margin.Plain()})
	assert.InDelta(t, 100*125.0/1125, p.MarginPercent, 1e-9)

	deep, err := cost.Calculate(cost.Quantities{Office: 120_000}, book, design.Money{Discount: 25})
	require.NoError(t, err)
	assert.Equal(t, "-62.50", deep.Margin.Plain(), "a loss is shown as one")
}

func TestSteps(t *testing.T) {
	for _, c := range []struct {
		amount float64
		per    int64
		want   int64
	}{
		{0.046656, cost.MM3PerM3, 46_656_000},
		{0.4996, cost.MLPerLitre, 500},
		{0.0004, cost.GPerKg, 0},
		{14.58539630222222, cost.SecondsPerHour, 52_507},
		{24, cost.MPerKm, 24_000},
	} {
		assert.Equal(t, c.want, cost.Steps(c.amount, c.per))
	}
}
