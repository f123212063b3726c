package engine_test

import (
	"testing"

	"blockfield/engine"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/money"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// worked is the job S2 with a round book and what it took: an hour more at the sander than
// reckoned, a quarter hour less in the office, and 50 more for the sticks.
func worked(t *testing.T) (engine.Job, design.Book) {
	t.Helper()
	b := design.DefaultBook()
	b.Rates.Shop, b.Rates.Overhead, b.Rates.Office, b.Rates.Site = design.Units(40), design.Units(8), design.Units(60), design.Units(50)
	d := designtest.Job(t, "s2")
	plan, err := engine.Plan(d, b)
	require.NoError(t, err)
	job := engine.Follow(d, plan, design.NewRecord(), "2030-03-01")
	minutes := func(id string) float64 {
		for _, task := range plan.Bill.Tasks {
			if task.ID == id {
				return task.Minutes.Typical
			}
		}
		t.Fatalf("no task %s", id)
		return 0
	}
	for i := range job.Record.Times {
		had := &job.Record.Times[i]
		switch had.Task {
		case "d2":
			had.Reckoned, had.Minutes = minutes("d2"), minutes("d2")+60
		case "a1":
			had.Reckoned, had.Minutes = minutes("a1"), minutes("a1")-15
		}
	}
	for i := range job.Record.Spent {
		if had := &job.Record.Spent[i]; had.Line == "line/block-stock" {
			for _, l := range plan.Price.Lines {
				if l.Key == had.Line {
					a, err := design.ParseAmount(l.Amount.Plain())
					require.NoError(t, err)
					had.Reckoned, had.Amount = a, a+design.Units(50)
				}
			}
		}
	}
	return job, b
}

// Sums by hand: an hour of the shop is 40 and 8, a quarter hour of the office 15.
func TestOutcomeByHand(t *testing.T) {
	job, b := worked(t)
	o := job.Outcome(b)
	p := job.Plan.Price
	assert.Len(t, o.Tasks, 2)
	assert.Len(t, o.Spent, 1)
	assert.Equal(t, p.Net, o.Net)
	assert.Equal(t, money.Sum(p.BoughtIn, p.Labour, p.Overhead, p.Travel), o.Reckoned, "what was typed is what was reckoned")
	off := o.Took.Sub(o.Reckoned).Minor
	assert.InDelta(t, 4800-1500+5000, off, 3, "each line is rounded to the cent")
	assert.Equal(t, o.Net.Sub(o.Took), o.Profit)
	assert.Equal(t, -off, o.Profit.Sub(o.ReckonedProfit).Minor)
	goods := 0
	for _, l := range p.Lines {
		if l.Role == cost.Material && l.Name == "" && l.Amount.Minor != 0 {
			goods++
		}
	}
	assert.Equal(t, goods-1, o.OpenLines)
	assert.True(t, o.Begun())
	assert.False(t, follow(t, designtest.Job(t, "s2"), design.NewRecord()).Outcome(b).Begun())
}

// A book that has learned from the job reckons otherwise from then on; how the job went
// stays what it was, for what was typed.
func TestOutcomeStaysAfterLearning(t *testing.T) {
	job, b := worked(t)
	before := job.Outcome(b)
	learned := job.Learned(b)
	d := designtest.Job(t, "s2")
	plan, err := engine.Plan(d, learned)
	require.NoError(t, err)
	require.NotEqual(t, job.Plan.Price.Labour, plan.Price.Labour)
	after := engine.Follow(d, plan, job.Record, "2030-03-01").Outcome(learned)
	assert.Equal(t, before.Tasks, after.Tasks)
	assert.InDelta(t, before.Took.Sub(before.Reckoned).Minor, after.Took.Sub(after.Reckoned).Minor, 3)
}

// What was agreed on is what is earned, whatever the plan of now would cost.
func TestOutcomeOfWhatWasAgreed(t *testing.T) {
	job, b := worked(t)
	job.Record.Lock = &design.Lock{
		Revision: job.Plan.Revision, Day: "2030-03-01", Currency: job.Plan.Price.Currency,
		Net: design.Units(2000), Tax: design.Units(400), Gross: design.Units(2400), Stages: b.Stages,
	}
	o := job.Outcome(b)
	assert.True(t, o.Agreed)
	assert.Equal(t, int64(200_000), o.Net.Minor)
	assert.InDelta(t, 100*float64(o.Profit.Minor)/200_000, o.Share(o.Profit), 1e-9)
}

// An offer promises what the schedule holds: as usual from now on at the earliest, and at
// worst from the last day on which it can be accepted. A first day that is fixed fixes both.
func TestAnOfferPromisesDays(t *testing.T) {
	d := designtest.Job(t, "s2")
	plan, err := engine.Plan(d, design.DefaultBook())
	require.NoError(t, err)
	promised := func(rec design.Record, today, until string) design.Offer {
		return engine.Follow(d, plan, rec, today).Promising(design.Offer{ValidUntil: until})
	}
	rec := design.NewRecord()
	ready := func(start string) string {
		rec := design.NewRecord()
		rec.Days.Start = start
		return engine.Follow(d, plan, rec, start).Days.Plan.Ready.Day().String()
	}
	o := promised(rec, "2030-03-04", "2030-04-03")
	assert.Equal(t, ready("2030-03-04"), o.ReadyFrom)
	assert.Greater(t, o.ReadyBy, ready("2030-04-03"), "at worst it takes longer than usual")
	later := promised(rec, "2030-03-04", "2030-05-03")
	assert.Equal(t, o.ReadyFrom, later.ReadyFrom)
	assert.Greater(t, later.ReadyBy, o.ReadyBy)

	rec.Days.Start = "2030-03-11"
	o = promised(rec, "2030-03-04", "2030-04-03")
	assert.Equal(t, ready("2030-03-11"), o.ReadyFrom)
	assert.Equal(t, o, func() design.Offer {
		o := promised(rec, "2030-03-04", "2030-05-03")
		o.ValidUntil = "2030-04-03"
		return o
	}(), "however long the offer holds")
	assert.Empty(t, promised(design.NewRecord(), "", "2030-04-03").ReadyFrom, "without a calendar there are no days")
}
