// Package learn makes a new price book out of what a job really took.
//
// The rates of a task are multiplied by 0.7 + 0.3·r, where r is the minutes that it took
// over those that were reckoned: one job moves a rate by less than a third of what it was
// off, so that no single day decides. All that jobs have taught of a task keeps within
// half and twice the rates that the book began with. From three jobs on, the least and
// the most r among them take the place of the book's low and high rates. Prices of what
// is bought are moved by the same rule, and within the same bounds for each job.
//
// The rule is the workshop's own; its numbers are invented.
package learn

import (
	"math"
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/length"
)

// The rule.
const (
	keep       = 0.7 // of what the book says
	take       = 0.3 // of what the job says
	leastEver  = 0.5 // of the rates that a book began with
	mostEver   = 2.0
	enoughJobs = 3 // to say how far jobs lie apart
	farOff     = 1.5
)

// Job is what a job took, and what it was made of.
type Job struct {
	Times      []design.Time
	Spent      []design.Spent
	Woods      []string // of the blocks
	FrameWoods []string
	Finishes   []string
	Sheets     []Sheet
}

// Sheet is one kind of backer.
type Sheet struct {
	Name      string
	Thickness length.Length
}

func (s Sheet) is(p design.SheetPrice) bool {
	return s.Name == p.Sheet && s.Thickness.Same(p.Thickness)
}

// Lesson is what a job says of one task.
type Lesson struct {
	Task              string
	Reckoned, Minutes float64
	Ratio             float64 // of minutes to what was reckoned
	Was, Now          float64 // factor on the rates that the book began with
	Jobs              int     // that it rests on, with this one
	Low, High         float64 // of the ratios of all those jobs
}

// Far reports whether a task took more than one and a half times what was reckoned, or
// less than that part of it.
func (l Lesson) Far() bool { return l.Ratio > farOff || l.Ratio*farOff < 1 }

// PriceLesson is what a job says of one line of the bill.
type PriceLesson struct {
	Line             string
	Reckoned, Amount design.Amount
	Ratio, Factor    float64 // Factor: on the prices behind the line
}

// factor is what one job does to a rate or a price.
func factor(ratio float64) float64 { return keep + float64(take*ratio) }

// Lessons are what a job says of the tasks of a book, in its order. A task that nobody
// timed, or that nothing was reckoned for, says nothing.
func Lessons(book design.Book, job Job) []Lesson {
	var all []Lesson
	for _, task := range book.Tasks {
		i := slices.IndexFunc(job.Times, func(t design.Time) bool { return t.Task == task.ID })
		if i < 0 || job.Times[i].Minutes <= 0 || job.Times[i].Reckoned <= 0 {
			continue
		}
		t := job.Times[i]
		before := learned(book, task.ID)
		ratio := t.Minutes / t.Reckoned
		all = append(all, Lesson{
			Task: task.ID, Reckoned: t.Reckoned, Minutes: t.Minutes, Ratio: ratio,
			Was: before.Factor, Now: min(max(before.Factor*factor(ratio), leastEver), mostEver),
			Jobs: before.Jobs + 1, Low: math.Min(before.Low, ratio), High: math.Max(before.High, ratio),
		})
	}
	return all
}

// learned is what a book has learned of a task so far.
func learned(book design.Book, task string) design.Learned {
	for _, l := range book.Learned {
		if l.Task == task {
			return l
		}
	}
	return design.Learned{Task: task, Factor: 1, Low: math.Inf(1), High: math.Inf(-1)}
}

// PriceLessons are what a job says of the lines of its bill.
func PriceLessons(job Job) []PriceLesson {
	var all []PriceLesson
	for _, s := range job.Spent {
		if s.Amount <= 0 || s.Reckoned <= 0 {
			continue
		}
		ratio := float64(s.Amount) / float64(s.Reckoned)
		all = append(all, PriceLesson{
			Line: s.Line, Reckoned: s.Reckoned, Amount: s.Amount, Ratio: ratio,
			Factor: min(max(factor(ratio), leastEver), mostEver),
		})
	}
	return all
}

// From returns the book that a job makes of a book. The old one is not changed.
func From(book design.Book, job Job) design.Book {
	book.Tasks, book.Learned = slices.Clone(book.Tasks), slices.Clone(book.Learned)
	for _, l := range Lessons(book, job) {
		l.into(&book)
	}
	book.Woods, book.Sticks = slices.Clone(book.Woods), slices.Clone(book.Sticks)
	book.Sheets, book.Finishes = slices.Clone(book.Sheets), slices.Clone(book.Finishes)
	for _, l := range PriceLessons(job) {
		l.into(&book, job)
	}
	return book
}

// into moves the rates of the task.
func (l Lesson) into(book *design.Book) {
	i := slices.IndexFunc(book.Tasks, func(t design.Task) bool { return t.ID == l.Task })
	t := &book.Tasks[i]
	by := l.Now / l.Was
	t.Low, t.Typical, t.High = rounded(t.Low*by), rounded(t.Typical*by), rounded(t.High*by)
	if l.Jobs >= enoughJobs {
		t.Low, t.High = rounded(t.Typical*math.Min(1, l.Low)), rounded(t.Typical*math.Max(1, l.High))
	}
	now := design.Learned{Task: l.Task, Factor: l.Now, Jobs: l.Jobs, Low: l.Low, High: l.High}
	at := slices.IndexFunc(book.Learned, func(had design.Learned) bool { return had.Task == l.Task })
	if at < 0 {
		book.Learned = append(book.Learned, now)
		return
	}
	book.Learned[at] = now
}

// rounded keeps rates short: a ten-thousandth of a second or a minute is nothing.
func rounded(rate float64) float64 { return math.Round(rate*1e4) / 1e4 }

// into moves the prices behind a line of the bill.
func (l PriceLesson) into(book *design.Book, job Job) {
	move := func(prices ...*design.Amount) {
		for _, p := range prices {
			*p = design.Amount(math.Round(float64(*p) * l.Factor))
		}
	}
	goods := &book.Goods
	switch l.Line {
	case "line/block-stock":
		for i := range book.Woods {
			if slices.Contains(job.Woods, book.Woods[i].Wood) {
				move(&book.Woods[i].SquaresPerM3)
			}
		}
		for i := range book.Sticks {
			if slices.Contains(job.Woods, book.Sticks[i].Wood) {
				move(&book.Sticks[i].Price)
			}
		}
	case "line/frame-stock":
		for i := range book.Woods {
			if slices.Contains(job.FrameWoods, book.Woods[i].Wood) {
				move(&book.Woods[i].BoardsPerM3)
			}
		}
	case "line/sheet":
		for i := range book.Sheets {
			if slices.ContainsFunc(job.Sheets, func(s Sheet) bool { return s.is(book.Sheets[i]) }) {
				move(&book.Sheets[i].Price)
			}
		}
	case "line/finish":
		for i := range book.Finishes {
			if slices.Contains(job.Finishes, book.Finishes[i].Finish) {
				move(&book.Finishes[i].PerLitre)
			}
		}
	case "line/glue":
		move(&goods.GluePerKg)
	case "line/cleat-stock":
		move(&goods.CleatPerM3)
	case "line/fixings":
		move(&goods.WoodScrew, &goods.WallFixing, &goods.Brad)
	case "line/abrasives":
		move(&goods.AbrasivesPer100, &goods.BladesPer1000)
	case "line/packing":
		move(&goods.PackingPerPanel)
	}
}
