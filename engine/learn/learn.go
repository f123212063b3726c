// Package learn makes a new price book out of what a job really took.
//
// The rates of a task are multiplied by 0.7 + 0.3·r, where r is the minutes that it took
// over those that were reckoned: one job moves a rate by less than a third of what it was
// off, so that no single day decides. All that jobs have taught of a task keeps within
// half and twice the rates that the book began with. From three jobs on, the least and
// the most r among them take the place of the book's low and high rates. Prices of what
// is bought are moved by the same rule, and within the same bounds for each job.
//
// What took more than three times what was reckoned, or less than a third, is more likely a
// slip of the pen than work: it teaches nothing unless somebody says that it holds. What was
// taught once is not taught again; where its figures were corrected afterwards, what the
// wrong ones did is taken back first.
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
	credible   = 3.0 // times what was reckoned, or that part of it

	rateDigits  = 3 // that a rate which was learned keeps
	priceDigits = 4
)

// Standing is what becomes of what a job says of a task or a line.
type Standing int

// They stand in the order in which they are asked for.
const (
	Learns   Standing = iota
	Aside             // nothing is to be learned from it
	Taught            // a book has learned from it already
	Doubtful          // too far off to be believed unasked
)

func standing(aside, taught, sure bool, ratio float64) Standing {
	switch {
	case aside:
		return Aside
	case taught:
		return Taught
	case !sure && beyond(ratio):
		return Doubtful
	}
	return Learns
}

// beyond reports whether a ratio is not to be believed unasked.
func beyond(ratio float64) bool { return ratio > credible || ratio*credible < 1 }

// Credible is how many times what was reckoned is believed without being asked for.
func Credible() float64 { return credible }

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
	Standing          Standing
}

// Beyond reports whether a task is too far off to be believed unasked.
func (l Lesson) Beyond() bool { return beyond(l.Ratio) }

// Far reports whether a task took more than one and a half times what was reckoned, or
// less than that part of it.
func (l Lesson) Far() bool { return l.Ratio > farOff || l.Ratio*farOff < 1 }

// PriceLesson is what a job says of one line of the bill.
type PriceLesson struct {
	Line             string
	Reckoned, Amount design.Amount
	Ratio, Factor    float64 // Factor: on the prices behind the line
	Standing         Standing
}

// Beyond reports whether a line is too far off to be believed unasked.
func (l PriceLesson) Beyond() bool { return beyond(l.Ratio) }

// Far is that of a task.
func (l PriceLesson) Far() bool { return Lesson{Ratio: l.Ratio}.Far() }

// factor is what one job does to a rate or a price.
func factor(ratio float64) float64 { return keep + float64(take*ratio) }

// bounded keeps all that jobs have taught within its bounds.
func bounded(f float64) float64 { return min(max(f, leastEver), mostEver) }

// Lessons are what a job says of the tasks of a book, in its order. A task that nobody
// timed, or that nothing was reckoned for, says nothing.
func Lessons(book design.Book, job Job) []Lesson {
	var all []Lesson
	for _, task := range book.Tasks {
		i := slices.IndexFunc(job.Times, func(t design.Time) bool { return t.Task == task.ID })
		if i < 0 || job.Times[i].Minutes <= 0 || job.Times[i].Reckoned <= 0 {
			continue
		}
		all = append(all, lesson(job.Times[i], learned(book, task.ID)))
	}
	return all
}

// lesson is what a job says of a task of which a book has learned something before.
func lesson(t design.Time, before design.Learned) Lesson {
	ratio := t.Minutes / t.Reckoned
	l := Lesson{
		Task: t.Task, Reckoned: t.Reckoned, Minutes: t.Minutes, Ratio: ratio,
		Was: before.Factor, Now: bounded(before.Factor * factor(ratio)), Jobs: before.Jobs + 1,
		Low: math.Min(before.Low, ratio), High: math.Max(before.High, ratio),
		Standing: standing(t.Aside, t.Taught == t.Minutes, t.Sure, ratio),
	}
	if t.Taught == 0 || t.Before == 0 || before.Jobs == 0 {
		return l
	}
	// The job is among those of the book: what it did is taken back, and no job is added.
	wrong := t.Taught / t.Reckoned
	did := bounded(t.Before*factor(wrong)) / t.Before
	l.Now, l.Jobs = bounded(before.Factor/did*factor(ratio)), before.Jobs
	if before.Jobs == 1 {
		l.Low, l.High = ratio, ratio
	}
	return l
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
			Factor: factorOfPrices(s), Standing: standing(s.Aside, s.Taught == s.Amount, s.Sure, ratio),
		})
	}
	return all
}

// factorOfPrices is what a line does to the prices behind it, less what it did before it was
// corrected.
func factorOfPrices(s design.Spent) float64 {
	of := func(a design.Amount) float64 { return bounded(factor(float64(a) / float64(s.Reckoned))) }
	if s.Taught == 0 {
		return of(s.Amount)
	}
	return of(s.Amount) / of(s.Taught)
}

// Mark returns the times and what was spent with what a book learns of them now.
func Mark(book design.Book, job Job) ([]design.Time, []design.Spent) {
	times, spent := slices.Clone(job.Times), slices.Clone(job.Spent)
	for _, l := range Lessons(book, job) {
		i := slices.IndexFunc(times, func(t design.Time) bool { return t.Task == l.Task })
		if l.Standing != Learns {
			continue
		}
		if l.Jobs > learned(book, l.Task).Jobs {
			times[i].Before = l.Was
		}
		times[i].Taught = l.Minutes
	}
	for _, l := range PriceLessons(job) {
		if l.Standing == Learns {
			i := slices.IndexFunc(spent, func(s design.Spent) bool { return s.Line == l.Line })
			spent[i].Taught = l.Amount
		}
	}
	return times, spent
}

// From returns the book that a job makes of a book. The old one is not changed.
func From(book design.Book, job Job) design.Book {
	book.Tasks, book.Learned = slices.Clone(book.Tasks), slices.Clone(book.Learned)
	for _, l := range Lessons(book, job) {
		if l.Standing == Learns {
			l.into(&book)
		}
	}
	book.Woods, book.Sticks = slices.Clone(book.Woods), slices.Clone(book.Sticks)
	book.Sheets, book.Finishes = slices.Clone(book.Sheets), slices.Clone(book.Finishes)
	for _, l := range PriceLessons(job) {
		if l.Standing == Learns {
			l.into(&book, job)
		}
	}
	return book
}

// into moves the rates of the task.
func (l Lesson) into(book *design.Book) {
	i := slices.IndexFunc(book.Tasks, func(t design.Task) bool { return t.ID == l.Task })
	t := &book.Tasks[i]
	now := began(learned(*book, l.Task), *t)
	now.Factor, now.Jobs, now.Low, now.High = l.Now, l.Jobs, l.Low, l.High
	t.Low, t.Typical, t.High = rate(now.BeganLow*l.Now), rate(now.BeganTypical*l.Now), rate(now.BeganHigh*l.Now)
	if l.Jobs >= enoughJobs {
		t.Low, t.High = rate(t.Typical*math.Min(1, l.Low)), rate(t.Typical*math.Max(1, l.High))
	}
	at := slices.IndexFunc(book.Learned, func(had design.Learned) bool { return had.Task == l.Task })
	if at < 0 {
		book.Learned = append(book.Learned, now)
		return
	}
	book.Learned[at] = now
}

// began is what a book has learned of a task with the rates that it began with. They are
// kept beside the rates, since those are rounded; where somebody has typed another rate
// since, or an earlier program kept none, that is what it begins with from now on.
func began(l design.Learned, t design.Task) design.Learned {
	if l.BeganTypical > 0 && rate(l.BeganTypical*l.Factor) == t.Typical {
		return l
	}
	l.BeganLow, l.BeganTypical, l.BeganHigh = t.Low/l.Factor, t.Typical/l.Factor, t.High/l.Factor
	return l
}

// rate keeps a rate short: nobody knows more digits of it.
func rate(x float64) float64 { return significant(x, rateDigits) }

// significant rounds to some digits, and writes them as they would be typed.
func significant(x float64, digits int) float64 {
	if x == 0 {
		return 0
	}
	places := digits - 1 - int(math.Floor(math.Log10(math.Abs(x))))
	if places <= 0 {
		unit := math.Pow10(-places)
		return math.Round(x/unit) * unit
	}
	return math.Round(x*math.Pow10(places)) / math.Pow10(places)
}

// into moves the prices behind a line of the bill.
func (l PriceLesson) into(book *design.Book, job Job) {
	move := func(prices ...*design.Amount) {
		for _, p := range prices {
			*p = design.Amount(math.Round(significant(float64(*p)*l.Factor, priceDigits)))
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
