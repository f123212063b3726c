package cost

import (
	"math"
	"math/rand/v2"
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/money"
)

// Odds is how a job that was sold at its price may end, by many tries.
type Odds struct {
	Tries      int
	BelowFloor int     // tries in which less is left than the floor of the margin
	Loss       int     // tries in which the job costs more than it brings
	Worst      float64 // margin in percent that one try in ten falls short of
	Middle     float64 // the median
	Best       float64 // margin that one try in ten exceeds
	MeanCost   money.Money
}

// How the tries are drawn. A task takes at best l, usually t, at worst h seconds; its time
// follows the triangle over the three. Half of the tasks of a try, drawn anew each time,
// share one luck, so that any two are alike to a quarter: commonPct, as in the range of the
// price. Before a survey the rest of the cost is off as well, by as much as widens the
// range from 7 to 15 %; after it the times alone decide. Goods cost what is reckoned.
const (
	tries     = 4000
	oneIn     = 2       // 1/oneIn² of the variance is common: a quarter
	unit32    = 1 << 32 // a draw from 0 to just below 1
	tailPct   = 10
	percent1  = 100.0
	unknownPP = 103_500 // standard deviation of the unknown rest, in millionths: √(15² − 7²) % over casesZ
)

// Simulate draws how a job may end that was sold at the price that Calculate made of it.
// The same seed gives the same tries everywhere: they are whole numbers.
func Simulate(q Quantities, b design.Book, p Price, seed uint64) Odds {
	rnd := rand.New(rand.NewPCG(seed, tries))
	rates := b.Rates
	hour := map[Worker]int64{
		Shop: rates.Shop.Steps() + rates.Overhead.Steps(), Office: rates.Office.Steps(), Site: rates.Site.Steps(),
	}
	digits, _ := money.Digits(b.Currency)
	perMinor := float64(amountUnit*SecondsPerHour) / math.Pow10(digits)
	floor := percent(p.Made, b.Policy.MarginFloor).Minor
	odds := Odds{Tries: tries}
	margins := make([]int64, tries)
	var sum int64
	for i := range margins {
		common := luck(rnd)
		var over int64 // rate × seconds beyond what was reckoned
		for _, t := range q.Tasks {
			one := common
			if rnd.Uint32N(oneIn) != 0 {
				one = luck(rnd)
			}
			over += hour[t.By] * (t.at(one) - t.Typical)
		}
		direct := p.Direct.Minor + int64(math.Round(float64(over)/perMinor))
		if !q.Surveyed {
			direct += unknown(rnd, p.Direct.Minor)
		}
		cost := money.New(direct, p.Currency)
		margins[i] = p.Made.Minor - cost.Add(percent(cost, b.Policy.Contingency)).Minor
		sum += p.Made.Minor - margins[i]
		if margins[i] < floor {
			odds.BelowFloor++
		}
		if margins[i] < 0 {
			odds.Loss++
		}
	}
	slices.Sort(margins)
	share := func(pct int) float64 {
		if p.Made.Minor == 0 {
			return 0
		}
		return percent1 * float64(margins[pct*(tries-1)/100]) / float64(p.Made.Minor)
	}
	odds.Worst, odds.Middle, odds.Best = share(tailPct), share(50), share(100-tailPct)
	odds.MeanCost = money.New(sum/tries, p.Currency)
	return odds
}

// draw is the luck of one task: on which side of the usual time it ends, and how far out.
type draw struct {
	side uint32 // from 0 to just below 1, in 2⁻³²: the share of the triangle below it
	far  uint32 // the same: the larger of two draws is how the sides of a triangle lie
}

func luck(rnd *rand.Rand) draw {
	return draw{side: rnd.Uint32(), far: max(rnd.Uint32(), rnd.Uint32())}
}

// at is the time of a task with some luck, in seconds. The part of the triangle below t is
// (t − l)/(h − l); within a part the distance from its far end grows with the larger of two
// even draws.
func (t Task) at(d draw) int64 {
	span := t.High - t.Low
	if span <= 0 {
		return t.Typical
	}
	if int64(d.side) < (t.Typical-t.Low)*unit32/span {
		return t.Low + (t.Typical-t.Low)*int64(d.far)/unit32
	}
	return t.High - (t.High-t.Typical)*int64(d.far)/unit32
}

// unknown is what a survey would take away: the sum of twelve even draws less six is
// nearly normal with a deviation of one.
func unknown(rnd *rand.Rand, direct int64) int64 {
	const draws = 12
	var sum int64
	for range draws {
		sum += int64(rnd.Uint32())
	}
	sum -= draws / 2 * unit32
	deviations := sum / (unit32 >> 16) // in 2⁻¹⁶
	return int64(math.Round(float64(direct) * (float64(unknownPP) / whole) * (float64(deviations) / (1 << 16))))
}
