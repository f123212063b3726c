package cost_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"blockfield/engine/cost"
	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const hour = 3600

// atCost is a book that sells at cost, with 50 for a shop hour.
func atCost() design.Book {
	b := plain("EUR")
	b.Policy = design.Policy{RoundTo: 1}
	return b
}

// twelveHours is a job of 600: twelve shop hours, in tasks that share them.
func twelveHours(surveyed bool, tasks ...cost.Task) cost.Quantities {
	return cost.Quantities{Shop: 12 * hour, Surveyed: surveyed, Tasks: tasks}
}

func shop(low, typical, high int64) cost.Task {
	return cost.Task{By: cost.Shop, Low: low * hour, Typical: typical * hour, High: high * hour}
}

func span(t testing.TB, q cost.Quantities, b design.Book) (low, usual, high float64) {
	t.Helper()
	p, err := cost.Calculate(q, b, design.Money{})
	require.NoError(t, err)
	return float64(p.Low.Minor) / 100, float64(p.Gross.Minor) / 100, float64(p.High.Minor) / 100
}

// The three-point estimate by hand: a task of 6, 12 and 30 hours has a mean of
// (6 + 48 + 30)/6 = 14 hours, 100 above the usual cost at 50 an hour, and a
// standard deviation of 4 hours, 200. The tenth and ninetieth percentile of a
// normal distribution are 1.281552 of them away (from tables): 256.31.
func TestRangeByHand(t *testing.T) {
	for _, c := range []struct {
		name      string
		q         cost.Quantities
		low, high float64
	}{
		{"one task: 600 + 100 ∓ 256.31", twelveHours(true, shop(6, 12, 30)), 443.69, 956.31},
		// Two with 100 each: ¾ (100² + 100²) + ¼ (100 + 100)² = 158.11².
		{"two tasks: 600 + 100 ∓ 202.63", twelveHours(true, shop(3, 6, 15), shop(3, 6, 15)), 497.37, 902.63},
		{"nothing uncertain: 7 %", twelveHours(true, shop(12, 12, 12)), 558, 642},
		{"the same before a survey: 15 %", twelveHours(false, shop(12, 12, 12)), 510, 690},
		// √(156.31² + 0.132665² × 600²) and √(356.31² + …).
		{"one task before a survey", twelveHours(false, shop(6, 12, 30)), 600 - 175.41, 600 + 365.10},
		// 50 minutes of deviation: 41.67, 53.40 either way; the mean is usual.
		{"even task", twelveHours(true, cost.Task{By: cost.Shop, Low: 9.5 * hour, Typical: 12 * hour, High: 14.5 * hour}), 546.60, 653.40},
	} {
		t.Run(c.name, func(t *testing.T) {
			low, usual, high := span(t, c.q, atCost())
			assert.InDelta(t, 600, usual, 1e-9)
			assert.InDelta(t, c.low, low, 0.011)
			assert.InDelta(t, c.high, high, 0.011)
		})
	}
}

// The range of the round job, through margin, discount, steps and tax: 7 % of
// the direct cost of 699.06 are 48.93.
func TestRangeThroughThePolicy(t *testing.T) {
	q, m := round()
	q.Surveyed = true
	p, err := cost.Calculate(q, plain("EUR"), m)
	require.NoError(t, err)
	// 650.13, cost 682.64, list 853.30, less 4 % 819.17 → 820, with tax 1025.
	assert.Equal(t, "1025.00", p.Low.Plain())
	// 747.99, cost 785.39, list 981.74, less 4 % 942.47 → 945.
	assert.Equal(t, "1181.25", p.High.Plain())

	book := plain("EUR")
	book.Policy.MinimumCharge = design.Units(900)
	p, err = cost.Calculate(q, book, m)
	require.NoError(t, err)
	assert.False(t, p.MinimumApplied)
	assert.Equal(t, "1081.25", p.Low.Plain(), "900 less 4 % is 864 → 865: no job is sold below the minimum charge")
}

// A slow reference: many jobs with the same common part and the same spreads
// are drawn, and four of five end within the range.
func TestRangeHoldsFourOfFive(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 7))
	tasks := []cost.Task{shop(2, 4, 9), shop(1, 3, 6), {By: cost.Office, Low: 1 * hour, Typical: 2 * hour, High: 5 * hour}, {By: cost.Site, Low: 2 * hour, Typical: 3 * hour, High: 8 * hour}}
	rate := map[cost.Worker]float64{cost.Shop: 50, cost.Office: 30, cost.Site: 50}
	q := cost.Quantities{Shop: 7 * hour, Office: 2 * hour, Site: 3 * hour, Surveyed: true, Tasks: tasks}
	low, _, high := span(t, q, atCost())
	const jobs, common = 40_000, 0.25
	within := 0
	for range jobs {
		all := rnd.NormFloat64()
		sum := 0.0
		for _, task := range tasks {
			l, u, h := float64(task.Low)/hour, float64(task.Typical)/hour, float64(task.High)/hour
			z := math.Sqrt(common)*all + math.Sqrt(1-common)*rnd.NormFloat64()
			sum += rate[task.By] * ((l+4*u+h)/6 + (h-l)/6*z)
		}
		if sum >= low && sum <= high {
			within++
		}
	}
	assert.InDelta(t, 0.80, float64(within)/jobs, 0.008, "four standard errors of 40,000 draws")
}

// Laws: the usual price is inside; a survey never widens the range, nor does a
// narrower task; overhead belongs to a shop hour.
func TestLawsOfTheRange(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 3))
	for i := range 400 {
		q, b, m := random(rnd, currencies[i%len(currencies)])
		calculate := func(q cost.Quantities) cost.Price {
			p, err := cost.Calculate(q, b, m)
			require.NoError(t, err)
			return p
		}
		q.Surveyed = false
		before := calculate(q)
		q.Surveyed = true
		after := calculate(q)
		q.Tasks = slices.Clone(q.Tasks)
		for k := range q.Tasks {
			q.Tasks[k].Low, q.Tasks[k].High = q.Tasks[k].Typical, q.Tasks[k].Typical
		}
		certain := calculate(q)
		for _, p := range []cost.Price{before, after, certain} {
			assert.LessOrEqual(t, p.Low.Minor, p.Gross.Minor, "job %d", i)
			assert.LessOrEqual(t, p.Gross.Minor, p.High.Minor, "job %d", i)
			assert.Equal(t, after.Gross, p.Gross, "job %d: the price itself does not move", i)
		}
		assert.LessOrEqual(t, before.Low.Minor, after.Low.Minor, "job %d", i)
		assert.GreaterOrEqual(t, before.High.Minor, after.High.Minor, "job %d", i)
		assert.LessOrEqual(t, after.Low.Minor, certain.Low.Minor, "job %d", i)
		assert.GreaterOrEqual(t, after.High.Minor, certain.High.Minor, "job %d", i)
	}
	b := atCost()
	low, _, high := span(t, twelveHours(true, shop(6, 12, 30)), b)
	b.Rates.Shop, b.Rates.Overhead = design.Units(50), 0
	sameLow, _, sameHigh := span(t, twelveHours(true, shop(6, 12, 30)), b)
	assert.Equal(t, []float64{low, high}, []float64{sameLow, sameHigh}, "50 an hour, however it is divided")
}
