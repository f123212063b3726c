package cost

import (
	"math/big"

	"blockfield/engine/design"
	"blockfield/engine/money"
)

// How wide the range of a price is. A task takes l at best, t usually and h at
// worst. Its mean is (l + 4t + h)/6 and its standard deviation (h − l)/6, the
// three-point estimate of project planning (common practice). The tasks of a
// job are done by the same hands at the same bench out of the same stock, so
// they run late together to some part: of the variance of any task, commonPct
// is common to all. The cost of all hours is then taken as normal, and the
// range holds 80 % of the cases.
//
// That is the work alone. Whatever the work says, a price is not known to
// better than 7 % either way once the site is surveyed, and to 15 % before
// (common practice): what a survey takes away is added to the rest as
// something that happens independently of it.
const (
	// commonPct is invented. At 0 the many tasks would even out to a few
	// percent, which no workshop has seen; at 100 every task would be late at
	// once. The book's usual times are this workshop's own already, so what is
	// common is the stock and the season, the smaller part.
	commonPct = 25
	// casesZ is how many millionths of a standard deviation reach the tenth and
	// the ninetieth percentile of a normal distribution: 1.281552.
	casesZ = 1_281_552
	sixths = 6
	// The least half-widths, in millionths of the direct cost.
	surveyedPPM   = 70_000
	unsurveyedPPM = 150_000
)

// span returns the gross prices between which 80 % of the jobs like p end. The
// usual price p.Gross is between them. They pass through the same policy, so
// minimum charge and rounding hold for them too.
//
// half and shift are those of workSpread.
func (c *calculator) span(p Price, m design.Money, half, shift money.Money) (low, high money.Money) {
	down, up := c.halfWidths(p.Direct, half, shift)
	at := func(direct money.Money) money.Money {
		other := p
		other.Direct = direct
		c.sell(&other, m)
		return other.Gross
	}
	cheapest := p.Direct.Sub(down)
	if cheapest.Minor < 0 {
		cheapest.Minor = 0
	}
	return at(cheapest), at(p.Direct.Add(up))
}

// halfWidths is how far the direct cost reaches below and above the usual one.
func (c *calculator) halfWidths(direct, half, shift money.Money) (down, up money.Money) {
	least := direct.MulDiv(surveyedPPM, whole, money.HalfAway)
	width := func(byWork money.Money) money.Money {
		if byWork.Cmp(least) < 0 {
			byWork = least
		}
		if c.quantities.Surveyed {
			return byWork
		}
		// What the survey would take away: √(15² − 7²) % of the cost.
		unknown := new(big.Int).Mul(squared(direct.Minor), big.NewInt(unsurveyedPPM*unsurveyedPPM-surveyedPPM*surveyedPPM))
		unknown.Div(unknown, big.NewInt(whole*whole))
		sum := unknown.Add(unknown, squared(byWork.Minor))
		return money.New(sum.Sqrt(sum).Int64(), c.book.Currency)
	}
	return width(half.Sub(shift)), width(half.Add(shift))
}

// workSpread is the half-width of what the hours cost, and how far their mean
// is above what they cost usually. It is whole numbers throughout, so that
// native and browser agree: a task is its rate in ten-thousandths × seconds.
func (c *calculator) workSpread() (half, shift money.Money) {
	rates := c.book.Rates
	hour := map[Worker]int64{
		Shop:   rates.Shop.Steps() + rates.Overhead.Steps(),
		Office: rates.Office.Steps(),
		Site:   rates.Site.Steps(),
	}
	squares, sum, lean := new(big.Int), new(big.Int), new(big.Int)
	for _, t := range c.quantities.Tasks {
		rate := big.NewInt(hour[t.By])
		d := new(big.Int).Mul(rate, big.NewInt(t.High-t.Low))
		sum.Add(sum, d)
		squares.Add(squares, new(big.Int).Mul(d, d))
		lean.Add(lean, d.Mul(rate, big.NewInt(t.Low-2*t.Typical+t.High)))
	}
	// (1 − ρ) Σ d² + ρ (Σ d)², for d six times the standard deviation.
	squares.Mul(squares, big.NewInt(100-commonPct))
	sum.Mul(sum, sum).Mul(sum, big.NewInt(commonPct))
	variance := squares.Add(squares, sum)
	variance.Div(variance, big.NewInt(100))
	sd := variance.Sqrt(variance)
	return c.worked(sd.Mul(sd, big.NewInt(casesZ)), sixths*whole), c.worked(lean, sixths)
}

// worked turns rate × seconds × per into money.
func (c *calculator) worked(n *big.Int, per int64) money.Money {
	n.Quo(n, big.NewInt(per*SecondsPerHour))
	if !n.IsInt64() {
		c.large = true
		return money.New(0, c.book.Currency)
	}
	return c.priced(design.Amount(n.Int64()), 1, 1)
}

func squared(n int64) *big.Int { return new(big.Int).Mul(big.NewInt(n), big.NewInt(n)) }
