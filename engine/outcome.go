package engine

import (
	"slices"

	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/money"
)

// Outcome is what a job took, against what was reckoned: minutes, purchases, mass and
// what is left of the price. It is the workshop's alone.
type Outcome struct {
	Tasks  []TaskOutcome  // that were timed
	Spent  []SpentOutcome // lines whose cost was typed
	Masses []MassOutcome  // panels that were weighed

	Agreed bool // Net is what was agreed on; otherwise it is the price of the plan
	Net    money.Money
	// What the job costs the workshop, goods, hours, overhead and road, without mark-up and
	// contingency, which are a part of the price: as it was reckoned, and with what is known
	// in the place of what was reckoned.
	Reckoned, Took money.Money
	// Net less either of them.
	ReckonedProfit, Profit money.Money

	OpenTasks, OpenLines int // that still count as reckoned
}

// TaskOutcome is one task of the time table.
type TaskOutcome struct {
	ID, Name          string
	Reckoned, Minutes float64
}

// SpentOutcome is one line of the bill.
type SpentOutcome struct {
	Line             string
	Reckoned, Amount money.Money
}

// MassOutcome is the heaviest panel of a group, in kg.
type MassOutcome struct {
	Group        int // of the plan
	Reckoned, Kg float64
}

// Begun reports whether anything is known of how the job went.
func (o Outcome) Begun() bool { return len(o.Tasks)+len(o.Spent)+len(o.Masses) > 0 }

// Share is a profit in percent of the net price; 0 where there is no price.
func (o Outcome) Share(profit money.Money) float64 {
	if o.Net.Minor == 0 {
		return 0
	}
	return 100 * float64(profit.Minor) / float64(o.Net.Minor)
}

// Outcome compares the record of a job with its plan, at the rates of the book that the
// plan was made with. What was reckoned for a task is what was reckoned when its minutes
// were typed: a book that has learned from them since does not change it.
func (j Job) Outcome(b design.Book) Outcome {
	p := j.Plan.Price
	o := Outcome{Net: p.Net}
	if a, ok := j.Agreed(); ok && a.Net.Currency == p.Currency {
		o.Agreed, o.Net = true, a.Net
	}
	o.Reckoned = money.Sum(p.BoughtIn, p.Labour, p.Overhead, p.Travel)
	o.Took = o.Reckoned
	for _, t := range j.Plan.Bill.Tasks {
		if t.Minutes.Typical <= 0 {
			continue
		}
		i := slices.IndexFunc(j.Record.Times, func(had design.Time) bool { return had.Task == t.ID })
		if i < 0 || j.Record.Times[i].Minutes <= 0 {
			o.OpenTasks++
			continue
		}
		had := j.Record.Times[i]
		o.Tasks = append(o.Tasks, TaskOutcome{ID: t.ID, Name: t.Name, Reckoned: had.Reckoned, Minutes: had.Minutes})
		planned := hourly(b, t.Role, t.Minutes.Typical, p.Currency)
		o.Reckoned = o.Reckoned.Add(hourly(b, t.Role, had.Reckoned, p.Currency)).Sub(planned)
		o.Took = o.Took.Add(hourly(b, t.Role, had.Minutes, p.Currency)).Sub(planned)
	}
	for _, l := range p.Lines {
		if l.Role != cost.Material || l.Name != "" || l.Amount.Minor == 0 {
			continue
		}
		i := slices.IndexFunc(j.Record.Spent, func(had design.Spent) bool { return had.Line == l.Key })
		if i < 0 || j.Record.Spent[i].Amount <= 0 {
			o.OpenLines++
			continue
		}
		had := SpentOutcome{Line: l.Key, Reckoned: j.Record.Spent[i].Reckoned.In(p.Currency), Amount: j.Record.Spent[i].Amount.In(p.Currency)}
		o.Spent = append(o.Spent, had)
		o.Reckoned = o.Reckoned.Add(had.Reckoned).Sub(l.Amount)
		o.Took = o.Took.Add(had.Amount).Sub(l.Amount)
	}
	for i, g := range j.Plan.Groups {
		if at := weighedOf(j.Record.Weighed, g); at >= 0 && j.Record.Weighed[at].Kg > 0 {
			o.Masses = append(o.Masses, MassOutcome{Group: i, Reckoned: j.Record.Weighed[at].Reckoned, Kg: j.Record.Weighed[at].Kg})
		}
	}
	o.ReckonedProfit, o.Profit = o.Net.Sub(o.Reckoned), o.Net.Sub(o.Took)
	return o
}

// hourly is what minutes of a role cost the workshop: in the shop with its overhead.
func hourly(b design.Book, role string, m float64, currency string) money.Money {
	rate := b.Rates.Site
	switch cost.Worker(role) {
	case cost.Shop:
		rate = b.Rates.Shop + b.Rates.Overhead
	case cost.Office:
		rate = b.Rates.Office
	}
	return money.Priced(rate.Steps(), minutes(m), design.Units(1).Steps()*cost.SecondsPerHour, currency, money.HalfAway)
}
