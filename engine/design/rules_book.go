package design

import (
	"math"
	"slices"
	"strconv"

	"blockfield/engine/words"
)

// percentStep is the finest step in which the shares of the stages are added
// up; it keeps 33.3 + 33.3 + 33.4 at exactly 100.
const percentStep = 0.0001

// book holds the rules that compare fields of a price book.
func (c *checker) book(b *Book) {
	root := (*at)(nil)
	if b.ValidFrom > b.ValidUntil && b.ValidUntil != "" && c.clean(root.field("validFrom")) &&
		c.clean(root.field("validUntil")) {
		c.add(root.field("validUntil"), DaysReversed, b.ValidUntil, phrase("allowed/not-before", "day", b.ValidFrom))
	}
	if policy := root.field("policy"); c.clean(policy) && b.Policy.MarginFloor > b.Policy.Margin {
		c.add(policy.field("marginFloor"), OutOfRange, percent(b.Policy.MarginFloor),
			phrase("allowed/margin", "high", words.Quantity{Value: b.Policy.Margin, Unit: "%"}))
	}
	unique(c, root.field("woods"), "wood", b.Woods, func(w WoodPrice) string { return w.Wood })
	unique(c, root.field("sticks"), "length", b.Sticks, func(s StickPrice) string {
		return s.Wood + " " + strconv.FormatInt(s.Size.Nanometres(), 10) + " " + strconv.FormatInt(s.Length.Nanometres(), 10)
	})
	unique(c, root.field("sheets"), "thickness", b.Sheets, func(s SheetPrice) string {
		return s.Sheet + " " + strconv.FormatInt(s.Thickness.Nanometres(), 10)
	})
	unique(c, root.field("finishes"), "finish", b.Finishes, func(f FinishPrice) string { return f.Finish })
	unique(c, root.field("learned"), "task", b.Learned, func(l Learned) string { return l.Task })
	unique(c, root.field("tasks"), "id", b.Tasks, func(t Task) string { return t.ID })
	unique(c, root.field("taxes"), "name", b.Taxes, func(t TaxRate) string { return t.Name })
	c.stages(b.Stages, root.field("stages"))
	c.own(b, root.field("own"))
	for i, t := range b.Tasks[:min(len(b.Tasks), maxTasks)] {
		c.rates(t, root.field("tasks").item(i))
	}
}

// own lists figures of the book, each once, and only where others are invented.
func (c *checker) own(b *Book, p *at) {
	figures := Figures(*b)
	for i, path := range b.Own {
		if c.clean(p.item(i)) && (!b.Placeholder || !slices.Contains(figures, path) || slices.Contains(b.Own[:i], path)) {
			c.add(p.item(i), UnknownChoice, path, words.Phrase{})
		}
	}
}

// rates of a task: the usual one is between the other two.
func (c *checker) rates(t Task, p *at) {
	low, high := words.Quantity{Value: t.Low}, words.Quantity{Value: t.High}
	switch {
	case !c.clean(p):
	case t.Low > t.High:
		c.reversed(p.field("high"), low, high)
	case t.Low > t.Typical || t.Typical > t.High:
		c.add(p.field("typical"), OutOfRange, number(t.Typical), phrase("allowed/range", "low", low, "high", high))
	}
}

func (c *checker) stages(stages []Stage, p *at) {
	if !c.clean(p) {
		return
	}
	steps := 0.0
	for _, s := range stages {
		steps += math.Round(s.Percent / percentStep)
	}
	if sum := steps * percentStep; math.Abs(sum-100) > percentStep/2 {
		c.add(p, BadSum, percent(math.Round(100*sum)/100), percent(100))
	}
}

// HoldsOn reports, with an error of type Faults, that a book does not hold on a
// day, "2026-03-31". Its first and its last day are days on which it holds. An
// empty day is none, and holds every book.
func HoldsOn(b Book, day string) error {
	root := (*at)(nil)
	c := finding{}
	switch {
	case b.Lapsed(day):
		c.expired(b.ValidUntil, day)
	case b.Early(day):
		c.add(root.field("validFrom"), NotYet, b.ValidFrom, phrase("allowed/not-after", "day", day))
	}
	return asError(c.all())
}

// SellingHoldsOn reports the same of a selling book.
func SellingHoldsOn(s SellingBook, day string) error {
	c := finding{}
	if s.Lapsed(day) {
		c.expired(s.ValidUntil, day)
	}
	return asError(c.all())
}

func (c *finding) expired(lastDay, day string) {
	c.add((*at)(nil).field("validUntil"), Expired, lastDay, phrase("allowed/not-before", "day", day))
}

func percent(v float64) words.Phrase { return words.Plain(words.Quantity{Value: v, Unit: "%"}) }

// unique reports entries of a list that have the key of an earlier one.
func unique[T any](c *checker, p *at, name string, list []T, key func(T) string) {
	seen := make(map[string]bool, len(list))
	for i, entry := range list {
		k := key(entry)
		if seen[k] {
			c.add(p.item(i).field(name), NotUnique, k, words.Phrase{})
		}
		seen[k] = true
	}
}
