package engine_test

import (
	"fmt"
	"testing"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
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
	assert.Equal(t, p.Markup.Add(p.Contingency), o.Reserve)
	assert.Equal(t, o.Net.Sub(o.Took).Sub(o.Reserve), o.Left)
	assert.Equal(t, -off, o.Left.Sub(o.ReckonedLeft).Minor)
	assert.Equal(t, p.Margin, o.ReckonedLeft, "the scale is that of the price")
	assert.InDelta(t, p.MarginPercent, o.Share(o.ReckonedLeft), 1e-9)
	assert.Equal(t, []float64{b.Policy.Margin, b.Policy.MarginFloor}, []float64{o.Asked, o.Floor})
	goods := 0
	for _, l := range p.Lines {
		if l.Role == cost.Material && l.Name == "" && l.Amount.Minor != 0 {
			goods++
		}
	}
	assert.Len(t, o.OpenLines, goods-1)
	assert.NotContains(t, o.OpenLines, "line/block-stock")
	timed := 0
	for _, task := range job.Plan.Bill.Timed(designtest.Job(t, "s2").Work) {
		if task.Minutes.Typical > 0 {
			timed++
		}
	}
	assert.Len(t, o.OpenTasks, timed-2, "the road among them")
	assert.True(t, o.OpenRoad)
	assert.True(t, o.Begun())
	assert.False(t, follow(t, designtest.Job(t, "s2"), design.NewRecord()).Outcome(b).Begun())
}

// The road by hand: an hour more of it is 50, ten kilometres more are ten times their price.
// A line that is sold as it stands is no part of what the workshop makes.
func TestOutcomeOfTheRoad(t *testing.T) {
	job, b := worked(t)
	before := job.Outcome(b)
	held := job.HeldAgainst(b)
	road := 0.0
	for _, task := range held.Tasks {
		if task.Task == "road" {
			road = task.Minutes
		}
	}
	require.Positive(t, road)
	require.Positive(t, held.Km)
	job.Record.Road = design.Road{Minutes: road + 60, Km: held.Km + 10}
	after := job.Outcome(b)
	assert.InDelta(t, 5000+float64(10*b.Travel.PerKm)/100, after.Took.Sub(before.Took).Minor, 2)
	assert.Equal(t, engine.RoadOutcome{Reckoned: held.Km, Km: held.Km + 10}, *after.Road)
	assert.False(t, after.OpenRoad)
	assert.Len(t, after.OpenTasks, len(before.OpenTasks)-1)

	d := designtest.Job(t, "s2")
	d.Money.Extras = []design.Extra{{Name: "Lamp", Amount: design.Units(300), Role: design.ExtraSold}}
	plan, err := engine.Plan(d, b)
	require.NoError(t, err)
	o := engine.Follow(d, plan, job.Record, "2030-03-01").Outcome(b)
	assert.Equal(t, int64(300_00), o.Beside.Minor)
	assert.InDelta(t, plan.Price.MarginPercent, o.Share(o.ReckonedLeft), 1e-9)
}

// A book that has learned from the job reckons otherwise from then on; how the job went
// stays what it was, to the cent, for what was typed as for the rest. So it does where the
// book is dearer by the hour, and where nothing was typed but the job was agreed on.
func TestOutcomeStaysAfterLearning(t *testing.T) {
	job, b := worked(t)
	d := designtest.Job(t, "s2")
	before := job.Outcome(b)
	learned, rec := job.Learned(b)
	rec.Learn.Into = learned.Code()
	require.NoError(t, design.ValidateRecord(rec))
	again, err := design.DecodeRecord(design.EncodeRecord(rec))
	require.NoError(t, err)
	learned.Rates.Shop, learned.Policy.Margin, learned.Travel.PerKm = design.Units(70), 30, design.Units(3)
	plan, err := engine.Plan(d, learned)
	require.NoError(t, err)
	require.NotEqual(t, job.Plan.Price.Labour, plan.Price.Labour)
	after := engine.Follow(d, plan, again, "2030-03-01")
	assert.Equal(t, before, after.Outcome(learned))
	assert.False(t, after.CanLearn(learned), "it has taught what it had to")
	assert.Equal(t, b.Code(), rec.Learn.From)

	d.Walls[0].Groups[0].Place.Left = d.Walls[0].Groups[0].Place.Left.Add(length.MM(100))
	elsewhere, err := engine.Plan(d, learned)
	require.NoError(t, err)
	require.NotEqual(t, plan.Revision, elsewhere.Revision)
	assert.Equal(t, before, engine.Follow(d, elsewhere, again, "2030-03-01").Outcome(learned), "nor does a change of the design")
}

// What a job is held against is written down when it is agreed on or begun, not before. A
// design that changes while nothing is agreed on is reckoned anew, another than the one
// that was agreed on is not.
func TestHolding(t *testing.T) {
	d, b := designtest.Job(t, "s2"), design.DefaultBook()
	plan, err := engine.Plan(d, b)
	require.NoError(t, err)
	job := engine.Follow(d, plan, design.NewRecord(), "2030-03-01")
	assert.Nil(t, job.Holding(b).Held)
	begun := job
	begun.Record.Road.Km = 12
	require.NotNil(t, begun.Holding(b).Held)
	job.Record.Lock = &design.Lock{Revision: plan.Revision, Currency: plan.Price.Currency, Stages: b.Stages}
	locked := job.Holding(b)
	require.NotNil(t, locked.Held)
	assert.Equal(t, plan.Revision, locked.Held.Revision)
	assert.Equal(t, b.Code(), locked.Held.Book)

	wider := design.Clone(design.Document{Design: d}).Design
	wider.Walls[0].Groups[0].Width = wider.Walls[0].Groups[0].Width.Add(length.MM(400))
	other, err := engine.Plan(wider, b)
	require.NoError(t, err)
	require.NotEqual(t, plan.Revision, other.Revision)
	assert.Equal(t, other.Revision, engine.Follow(wider, other, begun.Holding(b), "2030-03-02").Holding(b).Held.Revision)
	assert.Equal(t, plan.Revision, engine.Follow(wider, other, locked, "2030-03-02").Holding(b).Held.Revision)
}

// A record of an earlier program has no more than what was reckoned for what was typed: that
// is kept, and one that a book has learned from is not held against the learned book.
func TestOutcomeOfAnEarlierRecord(t *testing.T) {
	job, b := worked(t)
	before := job.Outcome(b)
	learned, _ := job.Learned(b)
	d := designtest.Job(t, "s2")
	plan, err := engine.Plan(d, learned)
	require.NoError(t, err)
	rec := design.CloneRecord(job.Record)
	rec.Learn.Into = learned.Code()
	then := engine.Follow(d, plan, rec, "2030-03-01")
	after := then.Outcome(learned)
	assert.Equal(t, before.Tasks, after.Tasks)
	assert.InDelta(t, before.Took.Sub(before.Reckoned).Minor, after.Took.Sub(after.Reckoned).Minor, 3)
	assert.Nil(t, then.Holding(learned).Held)
	assert.False(t, then.CanLearn(learned))
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
	assert.InDelta(t, 100*float64(o.Left.Minor)/200_000, o.Share(o.Left), 1e-9)
}

// A book with a slip of many digits gives a price that a record cannot hold: it holds the
// most that it can, and nothing breaks down.
func TestOutcomeOfAHugePrice(t *testing.T) {
	job, b := worked(t)
	b.Rates.Shop, b.Rates.Overhead, b.Policy.Margin = design.Units(10_000_000_000), design.Units(10_000_000_000), 95
	plan, err := engine.Plan(designtest.Job(t, "s2"), b)
	require.NoError(t, err)
	require.Greater(t, plan.Price.Net.Minor, int64(10_000_000_000_000_00), "thirteen digits are not enough")
	job.Plan, job.Record.Held = plan, nil
	rec := job.Holding(b)
	require.NotNil(t, rec.Held)
	assert.Equal(t, design.Units(1_000_000_000_000), rec.Held.Net)
	assert.NotPanics(t, func() { job.Outcome(b) })
	again, err := design.DecodeRecord(design.EncodeRecord(rec))
	require.NoError(t, err)
	assert.Equal(t, rec.Held, again.Held)
}

// Rates with a slip make minutes of a task that no record can hold: it can be read all the
// same, with what was typed.
func TestRecordsOfHugeTimesAreRead(t *testing.T) {
	job, b := worked(t)
	for i := range b.Tasks {
		b.Tasks[i].Low, b.Tasks[i].Typical, b.Tasks[i].High = 5e4, 5e4, 5e4
	}
	d := designtest.Job(t, "s2")
	plan, err := engine.Plan(d, b)
	require.NoError(t, err)
	job = engine.Follow(d, plan, job.Record, "2030-03-01")
	huge := 0
	for i, had := range job.Record.Times {
		for _, task := range plan.Bill.Tasks {
			if task.ID == had.Task && task.Minutes.Typical > 100_000 {
				huge++
				job.Record.Times[i].Minutes = 95
				job.Record = job.Noted(fmt.Sprintf("times[%d].minutes", i))
				assert.InDelta(t, 95, job.Record.Times[i].Minutes, 0)
			}
		}
	}
	require.Positive(t, huge)
	_, err = design.DecodeRecord(design.EncodeRecord(job.Holding(b)))
	assert.NoError(t, err)
}

// An offer promises what the schedule holds: as usual at the earliest and at worst at the
// latest, once for whoever orders on its day and once for whoever does on its last day. A
// first day that is fixed fixes both as long as the order comes before it.
func TestAnOfferPromisesDays(t *testing.T) {
	d := designtest.Job(t, "s2")
	plan, err := engine.Plan(d, design.DefaultBook())
	require.NoError(t, err)
	promised := func(rec design.Record, made, until string) design.Offer {
		return engine.Follow(d, plan, rec, made).Promising(design.Offer{Made: made, ValidUntil: until})
	}
	rec := design.NewRecord()
	ready := func(start string) string {
		rec := design.NewRecord()
		rec.Days.Start = start
		return engine.Follow(d, plan, rec, start).Days.Plan.Ready.Day().String()
	}
	o := promised(rec, "2030-03-04", "2030-04-03")
	assert.Equal(t, ready("2030-03-04"), o.ReadyFrom)
	assert.Greater(t, o.ReadyBy, ready("2030-03-04"), "at worst it takes longer than usual")
	assert.Equal(t, ready("2030-04-03"), o.LaterFrom, "whoever orders on the last day waits from then on")
	assert.Greater(t, o.LaterBy, ready("2030-04-03"))
	longer := promised(rec, "2030-03-04", "2030-05-03")
	assert.Equal(t, o.ReadyBy, longer.ReadyBy)
	assert.Greater(t, longer.LaterBy, o.LaterBy)

	rec.Days.Start = "2030-05-13"
	o = promised(rec, "2030-03-04", "2030-04-03")
	assert.Equal(t, ready("2030-05-13"), o.ReadyFrom)
	assert.Equal(t, []string{o.ReadyFrom, o.ReadyBy}, []string{o.LaterFrom, o.LaterBy}, "it begins no sooner")
	assert.Greater(t, promised(rec, "2030-03-04", "2030-06-03").LaterFrom, o.LaterFrom, "ordered after the day on which it was to begin")
	assert.Empty(t, promised(design.NewRecord(), "", "2030-04-03").ReadyFrom, "without a calendar there are no days")
}

// What an offer says of its days: two windows where they differ, and how the day that was
// wished for stands to them. An earlier file has one window, of whoever orders last.
func TestPromisedDays(t *testing.T) {
	said := func(o design.Offer) (keys []string) {
		for _, p := range engine.PromisedDays(o) {
			keys = append(keys, p.Key)
		}
		return keys
	}
	o := design.Offer{ValidUntil: "2030-04-03", ReadyFrom: "2030-05-01", ReadyBy: "2030-05-20"}
	assert.Equal(t, []string{"offer/ready"}, said(o))
	o.Made, o.LaterFrom, o.LaterBy = "2030-03-04", "2030-06-01", "2030-06-20"
	assert.Equal(t, []string{"offer/ready-first", "offer/ready-last"}, said(o))
	for wished, key := range map[string]string{
		"2030-06-20": "offer/wish-kept", "2030-06-19": "offer/wish-kept-first", "2030-05-20": "offer/wish-kept-first",
		"2030-05-19": "offer/wish-may-be-missed", "2030-05-01": "offer/wish-may-be-missed", "2030-04-30": "offer/wish-missed",
	} {
		o.Wished = wished
		assert.Equal(t, []string{"offer/ready-first", "offer/ready-last", key}, said(o), wished)
	}
	assert.Empty(t, said(design.Offer{ValidUntil: "2030-04-03", Wished: "2030-04-03"}))
}

// An offer carries whatever is signed with it, and nothing that is the workshop's own.
func TestAnOfferHoldsWhatIsSigned(t *testing.T) {
	book, digits := designtest.Sentinel(t)
	book.Workshop, book.Address, book.TaxNumber, book.Terms = "Elm Yard", "5 Mill Lane\nAppleby", "XA 404", "Pay in time."
	doc := design.Clone(design.Default())
	doc.Design.Money.Extras = []design.Extra{{Name: "Make good the plaster", Amount: design.Units(150), Role: design.ExtraSold, OwnTax: true, Tax: 7}}
	doc, err := design.KeepLook(doc, "Pale")
	require.NoError(t, err)
	oak := edit(t, doc, group+"wood = oak")
	doc.Looks = append(doc.Looks, design.Look{Name: "Brown", Design: oak.Design})
	shut := edit(t, doc, group+"width = 4000 mm")
	doc.Looks = append(doc.Looks, design.Look{Name: "Wide", Design: shut.Design})
	plans := make([]engine.Result, len(doc.Looks))
	for i, l := range doc.Looks {
		plans[i], err = engine.Plan(l.Design, book)
		require.NoError(t, err)
	}
	o, why := engine.MakeOffer(plans[0], book, today, 30)
	require.Empty(t, why.Key)
	o = engine.Beside(o, doc, plans)
	assert.Equal(t, []string{"Elm Yard", "5 Mill Lane\nAppleby", "XA 404", "Pay in time.", today, "Pale"}, []string{o.Workshop, o.Address, o.TaxNumber, o.Terms, o.Made, o.Look})
	require.Len(t, o.Taxes, 2)
	assert.Equal(t, design.Units(150), o.Taxes[1].Base)
	require.Len(t, o.Stages, 3)
	require.Len(t, o.Others, 2)
	assert.Equal(t, "Brown", o.Others[0].Name)
	assert.Equal(t, plans[1].Price.Gross, o.Others[0].Gross.In("EUR"))
	assert.Zero(t, o.Others[1].Gross, "too heavy to hang: it has no price")
	require.NotEmpty(t, plans[2].ShutAt(check.Offer))

	doc.Offer = &o
	require.NoError(t, design.Validate(doc))
	text, err := design.EncodeLink(doc)
	require.NoError(t, err)
	back, err := design.DecodeLink(text)
	require.NoError(t, err)
	assert.Equal(t, o, *back.Offer)
	for _, d := range digits {
		assert.NotContains(t, string(design.Encode(back)), d)
	}
	for _, spoil := range []func(*design.Offer){
		func(o *design.Offer) { o.Stages[0].Amount++ }, func(o *design.Offer) { o.Taxes[0].Tax-- }, func(o *design.Offer) { o.LaterFrom, o.LaterBy = "2030-02-02", "2030-02-01" },
	} {
		bad := design.Clone(doc)
		spoil(bad.Offer)
		assert.Error(t, design.Validate(bad))
	}
}
