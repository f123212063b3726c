package engine

import (
	"slices"

	"blockfield/engine/bench"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/money"
)

// Outcome is what a job took, against what was reckoned: minutes, purchases, road, mass and
// what is left of the price. It is the workshop's alone.
type Outcome struct {
	Tasks  []TaskOutcome  // that were timed, the road among them
	Spent  []SpentOutcome // lines whose cost was typed
	Road   *RoadOutcome   // nil: nobody has said how far it was
	Masses []MassOutcome  // panels that were weighed

	Agreed bool // Net is what was agreed on; otherwise it is the price of the plan
	Net    money.Money
	// What of the price is sold as it stands, and what mark-up on goods and contingency come
	// to: parts of the price whatever the job takes.
	Beside, Reserve money.Money
	// What the job costs the workshop, goods, hours, overhead and road: as it was reckoned,
	// and with what is known in the place of what was reckoned.
	Reckoned, Took money.Money
	// What is left of the price after cost, mark-up and contingency, as the price itself
	// reckons it.
	ReckonedLeft, Left money.Money
	Asked, Floor       float64 // percent that the price book wants to be left, and at least

	OpenTasks []TaskOutcome // that still count as reckoned
	OpenLines []string
	OpenRoad  bool // the kilometres do
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

// RoadOutcome is the way there and back, in km.
type RoadOutcome struct{ Reckoned, Km float64 }

// MassOutcome is the heaviest panel of a group, in kg.
type MassOutcome struct {
	Group        int // of the plan
	Reckoned, Kg float64
}

// Begun reports whether anything is known of how the job went.
func (o Outcome) Begun() bool {
	return len(o.Tasks)+len(o.Spent)+len(o.Masses) > 0 || o.Road != nil
}

// Share is what is left in percent of the price that the workshop makes; 0 where there is
// none.
func (o Outcome) Share(left money.Money) float64 {
	made := o.Net.Sub(o.Beside)
	if made.Minor == 0 {
		return 0
	}
	return 100 * float64(left.Minor) / float64(made.Minor)
}

// latestStates are those in which a job has begun.
func latestStates() []string {
	return []string{"on the bench", "drying", "ready", "hung", "closed", "reworked"}
}

// Begun reports whether the work at the bench has begun, or anything is known of what it
// takes.
func (j Job) Begun() bool {
	return slices.Contains(latestStates(), j.State()) || j.Record.Road != (design.Road{}) ||
		slices.ContainsFunc(j.Record.Times, func(t design.Time) bool { return t.Minutes > 0 }) ||
		slices.ContainsFunc(j.Record.Spent, func(s design.Spent) bool { return s.Amount > 0 })
}

// Holding returns the record with what the job is held against, once it is agreed on or
// begun.
func (j Job) Holding(b design.Book) design.Record {
	_, agreed := j.Agreed()
	if !j.Plan.Price.Sold || !agreed && !j.Begun() {
		return j.Record
	}
	if j.Record.Held == nil && j.Record.Learn.Into != "" {
		return j.Record // of an earlier program: what it was held against is gone
	}
	rec := design.CloneRecord(j.Record)
	held := j.HeldAgainst(b)
	rec.Held = &held
	reckonedAnew(rec.Times, rec.Spent, held)
	if design.ValidateRecord(rec) != nil {
		return j.Record // a slip in the price book makes more of it than a record can hold
	}
	return rec
}

// reckonedAnew writes what is held against beside what was typed.
func reckonedAnew(times []design.Time, spent []design.Spent, held design.Held) {
	for i, t := range times {
		if t.Minutes > 0 {
			times[i].Reckoned, _ = held.MinutesOf(t.Task)
		}
	}
	for i, s := range spent {
		if s.Amount > 0 {
			spent[i].Reckoned, _ = held.AmountOf(s.Line)
		}
	}
}

// HeldAgainst is what the job is held against: what was written down of it, or else what
// the plan reckons with the book that it was made with. A design that has changed since is
// reckoned anew, unless something else was agreed on or a book has learned from the job.
func (j Job) HeldAgainst(b design.Book) design.Held {
	was := j.Record.Held
	if was == nil {
		return j.asTyped(j.reckoned(b))
	}
	a, agreed := j.Agreed()
	settled := j.Record.Learn.Into != "" || agreed && a.Revision != j.Plan.Revision
	if was.Revision == j.Plan.Revision || settled {
		return *was
	}
	return j.reckoned(b)
}

// reckoned is what the plan reckons, with the book that it was made with.
func (j Job) reckoned(b design.Book) design.Held {
	p := j.Plan.Price
	h := design.Held{
		Revision: j.Plan.Revision, Book: b.Code(), Currency: p.Currency,
		Net: amountOf(p.Net), Beside: amountOf(p.Beside),
		Cost:    amountOf(money.Sum(p.BoughtIn, p.Labour, p.Overhead, p.Travel)),
		Reserve: amountOf(p.Markup.Add(p.Contingency)),
		Asked:   b.Policy.Margin, Floor: b.Policy.MarginFloor,
		Km: j.Plan.Bill.RoadKm, PerKm: b.Travel.PerKm, Tasks: []design.HeldTask{}, Lines: []design.HeldLine{},
	}
	for _, t := range j.Plan.Bill.Timed(j.design.Work) {
		if t.Minutes.Typical > 0 {
			h.Tasks = append(h.Tasks, design.HeldTask{Task: t.ID, Minutes: t.Minutes.Typical, PerHour: perHour(b, t.Role)})
		}
	}
	for _, l := range p.Lines {
		if l.Role == cost.Material && l.Name == "" && l.Amount.Minor != 0 {
			h.Lines = append(h.Lines, design.HeldLine{Line: l.Key, Amount: amountOf(l.Amount)})
		}
	}
	return h
}

// asTyped is what was reckoned with what the record says was reckoned when something was
// typed: an earlier program wrote down no more than that.
func (j Job) asTyped(h design.Held) design.Held {
	total := h.Cost.In(h.Currency)
	for i, t := range h.Tasks {
		for _, had := range j.Record.Times {
			if had.Task == t.Task && had.Minutes > 0 && had.Reckoned > 0 {
				total = total.Add(hourly(t.PerHour, had.Reckoned, h.Currency)).Sub(hourly(t.PerHour, t.Minutes, h.Currency))
				h.Tasks[i].Minutes = had.Reckoned
			}
		}
	}
	for i, l := range h.Lines {
		for _, had := range j.Record.Spent {
			if had.Line == l.Line && had.Amount > 0 && had.Reckoned > 0 {
				total = total.Add(had.Reckoned.In(h.Currency)).Sub(l.Amount.In(h.Currency))
				h.Lines[i].Amount = had.Reckoned
			}
		}
	}
	h.Cost = amountOf(total)
	return h
}

// mostAmount is the most that a record can keep of money.
const mostAmount = 1_000_000_000_000

// amountOf is money as a record keeps it. More than that comes of a slip in the price book,
// and counts as the most.
func amountOf(m money.Money) design.Amount {
	most := design.Units(mostAmount)
	a, err := design.ParseAmount(m.Plain())
	switch {
	case err == nil && -most <= a && a <= most:
		return a
	case m.Minor < 0:
		return -most
	}
	return most
}

// Outcome compares the record of a job with what it is held against. What a book has
// learned since does not change it: all of it is reckoned with one book, and its rates.
func (j Job) Outcome(b design.Book) Outcome {
	h := j.HeldAgainst(b)
	o := Outcome{
		Net: h.Net.In(h.Currency), Beside: h.Beside.In(h.Currency), Reserve: h.Reserve.In(h.Currency),
		Reckoned: h.Cost.In(h.Currency), Asked: h.Asked, Floor: h.Floor,
	}
	if a, ok := j.Agreed(); ok && a.Net.Currency == h.Currency {
		o.Agreed, o.Net = true, a.Net
	}
	o.Took = o.Reckoned
	for _, t := range h.Tasks {
		one := TaskOutcome{ID: t.Task, Name: b.TaskName(t.Task), Reckoned: t.Minutes, Minutes: j.tookMinutes(t.Task)}
		if one.Minutes <= 0 {
			o.OpenTasks = append(o.OpenTasks, one)
			continue
		}
		o.Tasks = append(o.Tasks, one)
		o.Took = o.Took.Add(hourly(t.PerHour, one.Minutes, h.Currency)).Sub(hourly(t.PerHour, t.Minutes, h.Currency))
	}
	for _, l := range h.Lines {
		i := slices.IndexFunc(j.Record.Spent, func(had design.Spent) bool { return had.Line == l.Line })
		if i < 0 || j.Record.Spent[i].Amount <= 0 {
			o.OpenLines = append(o.OpenLines, l.Line)
			continue
		}
		had := SpentOutcome{Line: l.Line, Reckoned: l.Amount.In(h.Currency), Amount: j.Record.Spent[i].Amount.In(h.Currency)}
		o.Spent = append(o.Spent, had)
		o.Took = o.Took.Add(had.Amount).Sub(had.Reckoned)
	}
	if km := j.Record.Road.Km; km > 0 {
		o.Road = &RoadOutcome{Reckoned: h.Km, Km: km}
		o.Took = o.Took.Add(perKm(h.PerKm, km, h.Currency)).Sub(perKm(h.PerKm, h.Km, h.Currency))
	} else {
		o.OpenRoad = h.Km > 0
	}
	for i, g := range j.Plan.Groups {
		if at := weighedOf(j.Record.Weighed, g); at >= 0 && j.Record.Weighed[at].Kg > 0 {
			o.Masses = append(o.Masses, MassOutcome{Group: i, Reckoned: j.Record.Weighed[at].Reckoned, Kg: j.Record.Weighed[at].Kg})
		}
	}
	apart := o.Beside.Add(o.Reserve)
	o.ReckonedLeft, o.Left = o.Net.Sub(o.Reckoned).Sub(apart), o.Net.Sub(o.Took).Sub(apart)
	return o
}

// tookMinutes are those that the record has for a task, 0 for none.
func (j Job) tookMinutes(task string) float64 {
	if task == bench.Road {
		return j.Record.Road.Minutes
	}
	for _, t := range j.Record.Times {
		if t.Task == task {
			return t.Minutes
		}
	}
	return 0
}

// perHour is what an hour of a role costs the workshop: in the shop with its overhead. The
// road has no role, and costs what work on site does.
func perHour(b design.Book, role string) design.Amount {
	switch cost.Worker(role) {
	case cost.Shop:
		return b.Rates.Shop + b.Rates.Overhead
	case cost.Office:
		return b.Rates.Office
	}
	return b.Rates.Site
}

// hourly is what minutes cost at a rate for an hour.
func hourly(rate design.Amount, m float64, currency string) money.Money {
	return money.Priced(rate.Steps(), minutes(m), design.Units(1).Steps()*cost.SecondsPerHour, currency, money.HalfAway)
}

// perKm is what a way costs.
func perKm(rate design.Amount, km float64, currency string) money.Money {
	return money.Priced(rate.Steps(), cost.Steps(km, cost.MPerKm), design.Units(1).Steps()*cost.MPerKm, currency, money.HalfAway)
}
