package engine

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/learn"
	"blockfield/engine/length"
)

// TakeSize returns the document with the mean of measured sticks as the size of all
// blocks that are cut from them. The number of blocks stays what it was, and is fixed:
// the pattern was agreed on. The sections count as measured then.
func (j Job) TakeSize(doc design.Document, s Section) (design.Document, error) {
	if !s.Section.Whole() {
		return doc, errors.New("internal error: too few sticks were measured")
	}
	var err error
	for _, g := range j.Plan.Groups {
		if !slices.Contains(g.Design.Woods(), s.Wood) || !g.Design.Block.Size.Same(s.Size) {
			continue
		}
		for _, edit := range [][2]string{
			{".block.size", s.Section.Mean.String()}, {".block.measured", "yes"},
			{".columns", strconv.Itoa(g.Built.Columns)}, {".rows", strconv.Itoa(g.Built.Rows)},
		} {
			if doc, err = design.Set(doc, g.Path+edit[0], edit[1], length.Metric); err != nil {
				return doc, err
			}
		}
	}
	return doc, nil
}

// TakeMoisture returns the document with what the meter said last as the moisture of
// the sticks.
func (j Job) TakeMoisture(doc design.Document) (design.Document, error) {
	last, ok := j.LastReading()
	if !ok {
		return doc, errors.New("internal error: the meter has no reading")
	}
	return design.Set(doc, "bench.stockMoisture", strconv.FormatFloat(last.Percent, 'f', -1, 64), length.Metric)
}

// LastReading is what the meter said last, by day; false for none.
func (j Job) LastReading() (design.Reading, bool) {
	byDay := j.readings()
	if len(byDay) == 0 {
		return design.Reading{}, false
	}
	return byDay[len(byDay)-1], true
}

// readings are those of the meter with a day, the first day first.
func (j Job) readings() []design.Reading {
	all := slices.DeleteFunc(slices.Clone(j.Record.Meter), func(r design.Reading) bool { return r.Day == "" })
	slices.SortStableFunc(all, func(a, b design.Reading) int { return strings.Compare(a.Day, b.Day) })
	return all
}

// Noted returns the record with what goes along with an edit at a path: for which
// design a bin was counted, and what was reckoned for a task or a line when it was
// typed what it took.
func (j Job) Noted(path string) design.Record {
	rec := design.CloneRecord(j.Record)
	var i int
	if _, err := fmt.Sscanf(path, "bins[%d]", &i); err == nil && i < len(rec.Bins) {
		rec.Bins[i].Revision = j.Plan.Revision
	}
	if _, err := fmt.Sscanf(path, "times[%d]", &i); err == nil && i < len(rec.Times) {
		rec.Times[i].Reckoned = j.reckonedMinutes(rec.Times[i].Task)
	}
	if _, err := fmt.Sscanf(path, "spent[%d]", &i); err == nil && i < len(rec.Spent) {
		rec.Spent[i].Reckoned = j.reckonedAmount(rec.Spent[i].Line)
	}
	if _, err := fmt.Sscanf(path, "weighed[%d]", &i); err == nil && i < len(rec.Weighed) {
		for k, g := range j.Plan.Groups {
			if weighedOf(rec.Weighed, g) == i {
				rec.Weighed[i].Reckoned = j.Plan.Hangings[k].PanelKg
			}
		}
	}
	if path == "asked.devices" {
		rec.Asked.DevicesFor = j.Plan.Revision
	}
	switch path {
	case "asked.professional", "asked.licence", "asked.lookedOn", "asked.lookedAt":
		rec.Asked.LookedFor = j.Plan.Revision
	}
	if design.ValidateRecord(rec) != nil {
		return design.CloneRecord(j.Record) // what is reckoned with a slip in the price book may be more than a record can hold
	}
	return rec
}

// reckonedMinutes are those that the plan has for a task in a usual job.
func (j Job) reckonedMinutes(task string) float64 {
	for _, t := range j.Plan.Bill.Tasks {
		if t.ID == task {
			return t.Minutes.Typical
		}
	}
	return 0
}

// reckonedAmount is what the plan has for a line of the bill.
func (j Job) reckonedAmount(key string) design.Amount {
	for _, l := range j.Plan.Price.Lines {
		if l.Role == cost.Material && l.Name == "" && l.Key == key {
			amount, err := design.ParseAmount(l.Amount.Plain())
			if err == nil {
				return amount
			}
		}
	}
	return 0
}

// Tool returns the record with a tool at hand that was not, or the other way round.
func (j Job) Tool(name string) design.Record {
	rec := design.CloneRecord(j.Record)
	if i := slices.Index(rec.Tools, name); i >= 0 {
		rec.Tools = slices.Delete(rec.Tools, i, i+1)
	} else if slices.Contains(design.Tools(), name) {
		rec.Tools = append(rec.Tools, name)
	}
	return rec
}

// taught is what the job has to say to a price book, against what it is held against.
func (j Job) taught(b design.Book) learn.Job {
	held := j.HeldAgainst(b)
	out := learn.Job{Times: slices.Clone(j.Record.Times), Spent: slices.Clone(j.Record.Spent)}
	reckonedAnew(out.Times, out.Spent, held)
	for _, g := range j.Plan.Groups {
		out.Woods = append(out.Woods, g.Design.Woods()...)
		out.FrameWoods = append(out.FrameWoods, g.Design.Frame.Wood)
		out.Finishes = append(out.Finishes, g.Design.Finish.Kind)
		out.Sheets = append(out.Sheets, learn.Sheet{Name: g.Design.Backer.Sheet, Thickness: g.Design.Backer.Thickness})
	}
	return out
}

// Lessons are what the times of the job say of the tasks of a book, and what was spent
// says of its prices.
func (j Job) Lessons(book design.Book) ([]learn.Lesson, []learn.PriceLesson) {
	job := j.taught(book)
	return learn.Lessons(book, job), learn.PriceLessons(job)
}

// CanLearn reports whether a book may learn from the job: it was not set aside, and there
// is something to say that none has learned yet.
func (j Job) CanLearn(book design.Book) bool {
	if j.Record.Learn.Aside || j.learnedBefore() {
		return false
	}
	times, prices := j.Lessons(book)
	return slices.ContainsFunc(times, func(l learn.Lesson) bool { return l.Standing == learn.Learns }) ||
		slices.ContainsFunc(prices, func(l learn.PriceLesson) bool { return l.Standing == learn.Learns })
}

// learnedBefore reports whether a book of an earlier program has learned from the job: what
// it learned was not written down, so that nothing further can be told from it.
func (j Job) learnedBefore() bool { return j.Record.Learn.Into != "" && j.Record.Held == nil }

// Learned is the price book that the job makes of one, and the record that says what it has
// taught; the code of the new book is not in it yet.
func (j Job) Learned(book design.Book) (design.Book, design.Record) {
	job := j.taught(book)
	rec := j.Holding(book)
	rec.Times, rec.Spent = learn.Mark(book, job)
	rec.Learn.From = book.Code()
	return learn.From(book, job), rec
}
