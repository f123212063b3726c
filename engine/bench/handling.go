package bench

import (
	"fmt"
	"math"

	"blockfield/engine/cut"
	"blockfield/engine/design"
)

// Handling is one point of the curve of boards against handling.
type Handling struct {
	Sticks  int     // sound ones
	Bought  int     // with those that knots and splits take
	Visits  int     // boards that are set aside and fetched again at the stop block
	Least   int     // no plan with these sticks has fewer visits
	Minutes float64 // that the visits take
	Wood    int64   // what is bought, in ten-thousandths of the book's currency, or in nanometres where the lot has no prices
	Time    int64   // the minutes at the workshop's rate, in ten-thousandths; 0 where time is not weighed
	plan    cut.Plan
}

// Cost is wood and time together.
func (h Handling) Cost() int64 { return h.Wood + h.Time }

const (
	// visitSeconds is what setting one board aside, finding it again and laying
	// it against the stop takes, where the time table has no row for it.
	// Invented, to be replaced by a workshop's own figure.
	visitSeconds = 40
	// moreBoards is how many boards beyond the fewest are tried against handling.
	moreBoards = 2
	// perVisit is what a row of the time table is counted by that says how long
	// a visit takes. The worked jobs have none.
	perVisit = "stop visit"
)

// visitMinutes is how long one visit takes these hands.
func (p Pace) visitMinutes(w design.Work) float64 {
	for _, t := range p.Tasks {
		if t.Per == perVisit {
			return rates(t, w).Typical
		}
	}
	return visitSeconds * w.SpeedFactor / secondsAMinute
}

// handle finds, for each lot, the plans with the fewest visits at the stop block,
// with as few sticks as possible and with some more, and chooses among them.
// What the chosen plan cuts of the pile is taken from it.
func (b *Bill) handle(d design.Design, pace Pace, there *pile, by effort) error {
	in, minutes, hour := d.Bench, pace.visitMinutes(d.Work), pace.Prices.Hour.Steps()
	if d.Work.OwnBuild {
		hour = 0 // one's own time has no price
	}
	for i := range b.Lots {
		l := &b.Lots[i]
		one := by.share(len(b.Lots))
		curve, err := one.plans.FewestVisits(l.problem(in, l.offers), l.Cuts, moreBoards, one.steps)
		if err != nil {
			return fmt.Errorf("design.bench: %w", err)
		}
		for _, h := range curve {
			l.Curve = append(l.Curve, l.handling(in, h, minutes, hour))
		}
		l.Chosen = chosen(l.Curve, in.Handling, l.Priced)
		l.buy(in, l.Curve[l.Chosen].plan)
		there.take(l.offers)
		b.Visits += l.Cuts.Visits
	}
	return nil
}

func (l *Lot) handling(in design.Bench, h cut.Handling, minutes float64, hour int64) Handling {
	all, cost := counted(l.offers, h.Plan, in.Defects)
	out := Handling{
		Sticks: h.Plan.BoardCount, Visits: h.Plan.Visits, Least: h.Least,
		Minutes: float64(h.Plan.Visits) * minutes, Wood: cost, plan: h.Plan,
	}
	for _, o := range all {
		out.Bought += o.Bought
	}
	out.Time = int64(math.Round(out.Minutes * float64(hour) / minutesAnHour))
	return out
}

// chosen is the point of the curve that the workshop wants: what wood and minutes
// cost least together, or as it says itself. Without prices wood and time cannot
// be weighed, and the fewest boards win.
func chosen(curve []Handling, wish string, priced bool) int {
	best := 0
	switch {
	case wish == design.FewestVisits:
		return len(curve) - 1
	case wish == design.FewestBoards || !priced:
		return 0
	}
	for i, h := range curve {
		if h.Cost() < curve[best].Cost() {
			best = i
		}
	}
	return best
}
