package cost_test

import (
	"math"
	"testing"

	"blockfield/engine/cost"
	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hours is a job of tasks alone.
func hours(tasks ...cost.Task) cost.Quantities {
	q := cost.Quantities{Surveyed: true, Tasks: tasks}
	for _, t := range tasks {
		q.Office += t.Typical
	}
	return q
}

// One task with a triangle over its three times: mean (l + t + h)/3 and the share below
// any time in closed form (the triangular distribution, by hand).
func TestSimulateOneTask(t *testing.T) {
	book := design.Book{Currency: "EUR", Rates: design.Rates{Office: design.Units(30)}, Policy: design.Policy{Margin: 20, MarginFloor: 10, RoundTo: 1}}
	q := hours(cost.Task{By: cost.Office, Low: 1 * 3600, Typical: 10 * 3600, High: 28 * 3600})
	p, err := cost.Calculate(q, book, design.Money{})
	require.NoError(t, err)
	require.Equal(t, "375.00", p.Made.Plain(), "300 / 0.8")
	o := cost.Simulate(q, book, p, 1)
	assert.InDelta(t, 390, float64(o.MeanCost.Minor)/100, 6, "13 h at 30")
	// Below the floor of 37.50 where the hours exceed 11.25: 1 − (28 − 11.25)²/(27·18) of the
	// cases end before that.
	below := func(h float64) float64 { return (28 - h) * (28 - h) / (27 * 18) }
	assert.InDelta(t, below(11.25), float64(o.BelowFloor)/float64(o.Tries), 0.025)
	book.Policy.MarginFloor = 40 // 150 of 375, where the hours exceed 7.5
	assert.InDelta(t, 1-6.5*6.5/(27*9), float64(cost.Simulate(q, book, p, 1).BelowFloor)/float64(o.Tries), 0.02)
	assert.InDelta(t, below(12.5), float64(o.Loss)/float64(o.Tries), 0.025, "375 are 12.5 h")
	// One in ten takes more than 28 − √(0.1·27·18) h.
	tenth := 28 - math.Sqrt(0.1*27*18)
	assert.InDelta(t, 100*(375-30*tenth)/375, o.Worst, 4)
	assert.Less(t, o.Worst, o.Middle)
	assert.Less(t, o.Middle, o.Best)
}

// Two tasks that share a quarter of their variance: Var = 2σ²(1 + ¼).
func TestSimulateCommonLuck(t *testing.T) {
	book := design.Book{Currency: "EUR", Rates: design.Rates{Office: design.Units(30)}, Policy: design.Policy{RoundTo: 1}}
	one := cost.Task{By: cost.Office, Low: 6 * 3600, Typical: 10 * 3600, High: 14 * 3600}
	spread := func(n int) float64 {
		tasks := make([]cost.Task, n)
		for i := range tasks {
			tasks[i] = one
		}
		q := hours(tasks...)
		p, err := cost.Calculate(q, book, design.Money{})
		require.NoError(t, err)
		o := cost.Simulate(q, book, p, 9)
		return (o.Best - o.Worst) * float64(p.Made.Minor)
	}
	// Many tasks: Var = nσ²(1 + (n − 1)/4), against that of one.
	n := 16.0
	assert.InDelta(t, math.Sqrt(n*(1+(n-1)/4)), spread(16)/spread(1), 0.9)
}

// What is certain has no odds; the same seed gives the same; a lower price and a higher
// floor are never safer; nobody has seen the site: it spreads further.
func TestSimulateLaws(t *testing.T) {
	q, m := round()
	q.Surveyed = true
	book := plain("EUR")
	p, err := cost.Calculate(q, book, m)
	require.NoError(t, err)
	sure := cost.Simulate(q, book, p, 3)
	assert.Zero(t, sure.BelowFloor)
	assert.Equal(t, sure.Worst, sure.Best)
	assert.InDelta(t, p.MarginPercent, sure.Middle, 1e-9)

	q.Tasks = []cost.Task{{By: cost.Shop, Low: 3600, Typical: 7200, High: 18_000}, {By: cost.Site, Low: 1800, Typical: 3600, High: 7200}}
	assert.Equal(t, cost.Simulate(q, book, p, 3), cost.Simulate(q, book, p, 3))
	assert.NotEqual(t, cost.Simulate(q, book, p, 3), cost.Simulate(q, book, p, 4))
	before := -1
	for _, floor := range []float64{0, 5, 10, 15, 17, 50} {
		book.Policy.MarginFloor = floor
		o := cost.Simulate(q, book, p, 3)
		assert.GreaterOrEqual(t, o.BelowFloor, before)
		assert.GreaterOrEqual(t, o.BelowFloor, o.Loss)
		before = o.BelowFloor
	}
	assert.Equal(t, cost.Simulate(q, book, p, 3).Tries, before, "nothing leaves half of the price")
	book.Policy.MarginFloor = 10
	surveyed := cost.Simulate(q, book, p, 3)
	q.Surveyed = false
	guessed := cost.Simulate(q, book, p, 3)
	assert.Less(t, guessed.Worst, surveyed.Worst)
	assert.Greater(t, guessed.Best, surveyed.Best)
}
