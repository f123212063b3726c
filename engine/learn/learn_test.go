package learn_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/learn"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func took(task string, reckoned, minutes float64) learn.Job {
	return learn.Job{Times: []design.Time{{Task: task, Reckoned: reckoned, Minutes: minutes}}}
}

// sure is the same where somebody says that it holds, however far it is off.
func sure(task string, reckoned, minutes float64) learn.Job {
	job := took(task, reckoned, minutes)
	job.Times[0].Sure = true
	return job
}

func rates(t *testing.T, b design.Book, id string) design.Task {
	t.Helper()
	for _, task := range b.Tasks {
		if task.ID == id {
			return task
		}
	}
	t.Fatalf("no task %s", id)
	return design.Task{}
}

// The rule by hand: a job that took twice what was reckoned moves a rate of 8 s by
// 0.7 + 0.3·2 = 1.3 to 10.4, one that took 0.6 of it by 0.88 to 7.04, and one that took
// what was reckoned leaves it. 13 · 0.88 = 11.44 keeps three digits.
func TestOneJob(t *testing.T) {
	book := design.DefaultBook()
	require.Equal(t, 8.0, rates(t, book, "c3").Typical)
	for _, c := range []struct{ minutes, factor, typical, low, high float64 }{
		{200, 1.3, 10.4, 6.5, 16.9}, {60, 0.88, 7.04, 4.4, 11.4}, {100, 1, 8, 5, 13},
	} {
		now := learn.From(book, took("c3", 100, c.minutes))
		require.NoError(t, design.ValidateBook(now))
		task := rates(t, now, "c3")
		assert.InDelta(t, c.typical, task.Typical, 1e-9)
		assert.InDelta(t, c.low, task.Low, 1e-9)
		assert.InDelta(t, c.high, task.High, 1e-9)
		require.Len(t, now.Learned, 1)
		l := now.Learned[0]
		assert.InDelta(t, c.factor, l.Factor, 1e-12)
		assert.Equal(t, 1, l.Jobs)
		assert.Equal(t, c.minutes/100, l.Low)
		assert.Equal(t, rates(t, book, "d2"), rates(t, now, "d2"), "other tasks stay")
	}
	assert.Equal(t, design.DefaultBook(), book, "the old book is not changed")
}

// However far jobs are off, and however many, a rate stays between half and twice what
// the book began with.
func TestBoundsHoldOverAllJobs(t *testing.T) {
	for ratio, want := range map[float64]float64{10: 2, 0.01: 0.5} {
		book := design.DefaultBook()
		for range 12 {
			book = learn.From(book, sure("e4", 60, 60*ratio))
		}
		require.NoError(t, design.ValidateBook(book))
		assert.InDelta(t, want, book.Learned[0].Factor, 1e-12)
		assert.InDelta(t, 9*want, rates(t, book, "e4").Typical, 1e-3)
		assert.Equal(t, 12, book.Learned[0].Jobs)
	}
	// A single job of ten times: 0.7 + 3 = 3.7 is 2.
	one := learn.Lessons(design.DefaultBook(), took("e4", 60, 600))
	assert.Equal(t, 2.0, one[0].Now)
}

// Jobs that always take the same ratio bring a rate to it: the fixed point of the rule
// when each is reckoned with the book of the job before.
func TestJobsConverge(t *testing.T) {
	book, truth := design.DefaultBook(), 12.0 // seconds a block, where the book says 9
	for range 40 {
		now := rates(t, book, "e4").Typical
		book = learn.From(book, took("e4", now, truth))
	}
	assert.InDelta(t, truth, rates(t, book, "e4").Typical, 0.05, "three digits of it")
}

// From the third job on the jobs themselves say how far a rate may be off. By hand:
// ratios 0.8, 1.5 and 1.0 leave 8·0.94·1.15·1 = 8.648, as 8.65, between 0.8 and 1.5 of it,
// as 6.92 and 13.0.
func TestSpreadOfJobs(t *testing.T) {
	book := design.DefaultBook()
	for i, minutes := range []float64{80, 150, 100} {
		book = learn.From(book, took("c3", 100, minutes))
		task := rates(t, book, "c3")
		if i < 2 {
			assert.InDelta(t, 5.0/8, task.Low/task.Typical, 1e-3, "as the book has it")
		}
	}
	task := rates(t, book, "c3")
	assert.Equal(t, []float64{6.92, 8.65, 13}, []float64{task.Low, task.Typical, task.High})
	require.NoError(t, design.ValidateBook(book))
	again, err := design.DecodeBook(design.EncodeBook(book))
	require.NoError(t, err)
	assert.Equal(t, book, again)
}

// What nobody timed teaches nothing, and a task that the book does not have neither.
func TestNothingToLearn(t *testing.T) {
	book := design.DefaultBook()
	for _, job := range []learn.Job{{}, took("c3", 100, 0), took("c3", 0, 100), took("zz", 100, 200)} {
		assert.Empty(t, learn.Lessons(book, job))
		assert.Equal(t, book.Code(), learn.From(book, job).Code())
	}
}

// Either side of one and a half times.
func TestFarOff(t *testing.T) {
	for minutes, far := range map[float64]bool{150: false, 151: true, 67: false, 66: true} {
		assert.Equal(t, far, learn.Lessons(design.DefaultBook(), took("d2", 100, minutes))[0].Far(), "%v", minutes)
	}
}

// Every line of the bill moves the prices behind it, and no others.
func TestPrices(t *testing.T) {
	book := design.DefaultBook()
	book.Sticks = []design.StickPrice{{Wood: "oak", Size: length.MM(36), Length: length.MM(2400), Price: design.Units(20)}}
	job := learn.Job{
		Woods: []string{"oak"}, FrameWoods: []string{"ash"}, Finishes: []string{"shellac"},
		Sheets: []learn.Sheet{{Name: "birch ply", Thickness: length.MM(12)}},
	}
	wood := func(b design.Book, name string) design.WoodPrice {
		for _, w := range b.Woods {
			if w.Wood == name {
				return w
			}
		}
		return design.WoodPrice{}
	}
	for line, price := range map[string]func(design.Book) design.Amount{
		"line/block-stock": func(b design.Book) design.Amount { return wood(b, "oak").SquaresPerM3 },
		"line/frame-stock": func(b design.Book) design.Amount { return wood(b, "ash").BoardsPerM3 },
		"line/sheet": func(b design.Book) design.Amount {
			for _, s := range b.Sheets {
				if s.Sheet == "birch ply" && s.Thickness.Same(length.MM(12)) {
					return s.Price
				}
			}
			return 0
		},
		"line/finish": func(b design.Book) design.Amount {
			for _, f := range b.Finishes {
				if f.Finish == "shellac" {
					return f.PerLitre
				}
			}
			return 0
		},
		"line/glue":        func(b design.Book) design.Amount { return b.Goods.GluePerKg },
		"line/cleat-stock": func(b design.Book) design.Amount { return b.Goods.CleatPerM3 },
		"line/fixings":     func(b design.Book) design.Amount { return b.Goods.Brad },
		"line/abrasives":   func(b design.Book) design.Amount { return b.Goods.BladesPer1000 },
		"line/packing":     func(b design.Book) design.Amount { return b.Goods.PackingPerPanel },
	} {
		job.Spent = []design.Spent{{Line: line, Reckoned: design.Units(100), Amount: design.Units(150)}}
		now := learn.From(book, job)
		require.NoError(t, design.ValidateBook(now), line)
		was := float64(price(book))
		require.Positive(t, was, line)
		assert.InDelta(t, 1.15, float64(price(now))/was, max(1/was, 0.0006), "%s: four digits of it", line)
		assert.Regexp(t, `^0*[1-9]\d{0,3}0*$`, strings.ReplaceAll(price(now).String(), ".", ""), line)
		moved := 0
		count := func(a, b design.Amount) {
			if a != b {
				moved++
			}
		}
		for i := range book.Woods {
			count(book.Woods[i].SquaresPerM3, now.Woods[i].SquaresPerM3)
			count(book.Woods[i].BoardsPerM3, now.Woods[i].BoardsPerM3)
		}
		for i := range book.Sheets {
			count(book.Sheets[i].Price, now.Sheets[i].Price)
		}
		for i := range book.Finishes {
			count(book.Finishes[i].PerLitre, now.Finishes[i].PerLitre)
		}
		assert.LessOrEqual(t, moved, 1, line)
	}
	job.Spent = []design.Spent{{Line: "line/glue", Reckoned: design.Units(1), Amount: design.Units(90)}}
	assert.Equal(t, 2.0, learn.PriceLessons(job)[0].Factor, "no job more than doubles a price")
	assert.False(t, math.IsNaN(learn.PriceLessons(job)[0].Ratio))
}

// Ten times what was reckoned is a slip of the pen until somebody says that it holds, and so
// is less than a third of it; a single task is set aside by itself.
func TestWhatIsNotBelieved(t *testing.T) {
	book := design.DefaultBook()
	for minutes, want := range map[float64]learn.Standing{
		250: learn.Doubtful, 76: learn.Doubtful, 75: learn.Learns, 9: learn.Learns, 8: learn.Doubtful,
	} {
		l := learn.Lessons(book, took("c2", 25, minutes))[0]
		assert.Equal(t, want, l.Standing, "%v", minutes)
		assert.Equal(t, want == learn.Doubtful, l.Beyond(), "%v", minutes)
		spent := learn.Job{Spent: []design.Spent{{Line: "line/glue", Reckoned: design.Units(25), Amount: design.Units(int64(minutes))}}}
		assert.Equal(t, want, learn.PriceLessons(spent)[0].Standing, "%v", minutes)
		spent.Spent[0].Sure = true
		assert.Equal(t, learn.Learns, learn.PriceLessons(spent)[0].Standing)
	}
	slip := took("c2", 25, 250)
	slip.Times = append(slip.Times, took("c3", 100, 200).Times...)
	now := learn.From(book, slip)
	assert.Equal(t, rates(t, book, "c2"), rates(t, now, "c2"))
	assert.Equal(t, 10.4, rates(t, now, "c3").Typical, "the other task is learned")
	slip.Times[1].Aside = true
	assert.Equal(t, book.Code(), learn.From(book, slip).Code())
	assert.Equal(t, 2.0, learn.From(book, sure("c2", 25, 250)).Learned[0].Factor)
}

// A job teaches once. Corrected afterwards, what it did is taken back first: by hand, a
// factor of 1.3 for 200 minutes of 100 gives way to 1.15 for 150, and a slip of 1000 minutes
// that was held for true, with its bound of 2, to the same. A job between is kept: 1.15 · 0.94.
func TestAJobTeachesOnce(t *testing.T) {
	for _, first := range []float64{200, 1000} {
		book, job := design.DefaultBook(), sure("c3", 100, first)
		job.Spent = []design.Spent{{Line: "line/glue", Reckoned: design.Units(100), Amount: design.Units(200)}}
		learned := learn.From(book, job)
		job.Times, job.Spent = learn.Mark(book, job)
		assert.Equal(t, learn.Taught, learn.Lessons(learned, job)[0].Standing)
		assert.Equal(t, learn.Taught, learn.PriceLessons(job)[0].Standing)
		assert.Equal(t, learned.Code(), learn.From(learned, job).Code())

		between := learn.From(learned, took("c3", 100, 80))
		job.Times[0].Minutes, job.Spent[0].Amount = 150, design.Units(150)
		for b, want := range map[*design.Book]float64{&learned: 1.15, &between: 1.15 * 0.94} {
			l := learn.Lessons(*b, job)[0]
			assert.Equal(t, learn.Learns, l.Standing)
			assert.Equal(t, b.Learned[0].Jobs, l.Jobs, "no further job")
			right := learn.From(*b, job)
			assert.InDelta(t, want, right.Learned[0].Factor, 1e-12)
			assert.InDelta(t, 8*want, rates(t, right, "c3").Typical, 0.05)
		}
		right := learn.From(learned, job)
		assert.Equal(t, []float64{1.5, 1.5}, []float64{right.Learned[0].Low, right.Learned[0].High})
		assert.InDelta(t, 1.15*float64(book.Goods.GluePerKg), float64(right.Goods.GluePerKg), 20)
		job.Times, _ = learn.Mark(learned, job)
		assert.Equal(t, []float64{150, 1}, []float64{job.Times[0].Taught, job.Times[0].Before})
	}
}

// A rate that somebody has typed since is what a book begins with from then on.
func TestATypedRateIsTheBeginning(t *testing.T) {
	book := learn.From(design.DefaultBook(), took("c3", 100, 200))
	at := slices.IndexFunc(book.Tasks, func(task design.Task) bool { return task.ID == "c3" })
	book.Tasks[at].Typical = 20.8
	book = learn.From(book, took("c3", 100, 100))
	assert.Equal(t, 20.8, rates(t, book, "c3").Typical)
	assert.InDelta(t, 16, book.Learned[0].BeganTypical, 1e-9, "20.8 / 1.3")
}
