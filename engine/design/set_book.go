package design

import (
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/length"
)

// BookPrefix is what the name of a form field of a price book starts with.
const BookPrefix = "book."

// LookupBook returns the row of the table for a path of a price book, such as
// "woods[0].squaresPerM3".
func LookupBook(path string) (Field, bool) { return lookupIn(bookTable(), path) }

// BookText returns the value at a path of a price book as a form field shows it.
// SetBook reads it back to the same value.
func BookText(b Book, path string, u length.Units) (string, bool) {
	return textIn(bookTree(), reflect.ValueOf(b), path, u)
}

// CloneBook returns a copy that shares nothing with b.
func CloneBook(b Book) Book {
	deepen(reflect.ValueOf(&b).Elem())
	return b
}

// SetBook returns the book with what a person typed at a path, read as Set reads it.
// A figure that is typed is the workshop's own. Two things go along, so that no edit
// gets stuck: another stage takes up what the edited one leaves of the whole, and the
// rates of a task stay in order. b is not changed, and is returned as it was with an
// error of type Faults when the text cannot be taken; their paths begin with BookPrefix.
func SetBook(b Book, path, text string, u length.Units) (Book, error) {
	full := BookPrefix + path
	next := CloneBook(b)
	changed, faults := setIn(bookTree(), reflect.ValueOf(&next).Elem(), path, full, text, u)
	if faults != nil {
		return b, faults
	}
	if changed {
		next.accompany(path)
	}
	next.settleOwn(func(figure string) bool { return figure == path })
	return adopted(b, next, path)
}

// accompany changes what goes along with an edit.
func (b *Book) accompany(path string) {
	if list, i, field := entryOf(path); list == "stages" && field == "percent" {
		b.settleStages(i)
	} else if list == "tasks" {
		t := &b.Tasks[i]
		switch field {
		case "low":
			t.Typical = max(t.Typical, t.Low)
			t.High = max(t.High, t.Typical)
		case "typical":
			t.Low, t.High = min(t.Low, t.Typical), max(t.High, t.Typical)
		case "high":
			t.Typical = min(t.Typical, t.High)
			t.Low = min(t.Low, t.Typical)
		}
	}
}

// entryOf takes a path of an entry apart: "stages[1].percent" is "stages", 1,
// "percent". The number is −1 for other paths.
func entryOf(path string) (list string, i int, field string) {
	list, rest, ok := strings.Cut(path, "[")
	number, field, _ := strings.Cut(rest, "]")
	i, err := strconv.Atoi(number)
	if !ok || err != nil {
		return "", -1, ""
	}
	return list, i, strings.TrimPrefix(field, ".")
}

// settleStages gives the last stage, or the one before it where that is the edited
// one, what the others leave of the whole.
func (b *Book) settleStages(edited int) {
	last := len(b.Stages) - 1
	if edited == last {
		last--
	}
	if last < 0 {
		return
	}
	rest := 100.0
	for i, s := range b.Stages {
		if i != last {
			rest -= s.Percent
		}
	}
	if rest >= 0 { // else the edit is refused, with the sum
		const perStep = 1 / percentStep
		b.Stages[last].Percent = math.Round(rest*perStep) / perStep
	}
}

// Figures are the paths of the figures of a book: its amounts and its numbers, in the
// order of the file.
func Figures(b Book) []string {
	var all []string
	eachLeaf(bookTree(), reflect.ValueOf(b), nil, func(n *node, _ reflect.Value, p *at) {
		switch path := p.String(); {
		case strings.HasPrefix(path, "learned["), path == "version":
		case n.field.Kind == KindAmount, n.field.Kind == KindNumber, n.field.Kind == KindInteger:
			all = append(all, path)
		}
	})
	return all
}

// eachLeaf visits the values below v.
func eachLeaf(n *node, v reflect.Value, p *at, visit func(n *node, v reflect.Value, p *at)) {
	for i := range n.parts {
		kid := &n.parts[i]
		value, place := v.Field(kid.index), p.field(kid.name)
		switch kid.shape {
		case leaf:
			visit(kid, value, place)
		case part:
			eachLeaf(kid, value, place, visit)
		case partList:
			for j := range value.Len() {
				eachLeaf(kid, value.Index(j), place.item(j), visit)
			}
		}
	}
}

// IsOwn reports whether the figure at a path, or each one below it, is the workshop's
// own and no invented example.
func (b Book) IsOwn(path string) bool {
	if !b.Placeholder {
		return true
	}
	for _, f := range Figures(b) {
		if within(f, path) && !slices.Contains(b.Own, f) {
			return false
		}
	}
	return true
}

// Invented counts the figures of a book, and those of them that nobody has set.
func (b Book) Invented() (invented, all int) {
	figures := Figures(b)
	if b.Placeholder {
		invented = len(figures) - len(b.Own)
	}
	return invented, len(figures)
}

// within reports whether path is at, or below it; everything is below nothing.
func within(path, at string) bool {
	rest, ok := strings.CutPrefix(path, at)
	return ok && (at == "" || rest == "" || rest[0] == '.' || rest[0] == '[')
}

// ConfirmBook returns the book with the figures at and below a path as the workshop's
// own; an empty path means all of them.
func ConfirmBook(b Book, path string) Book {
	next := CloneBook(b)
	next.settleOwn(func(figure string) bool { return within(figure, path) })
	return next
}

// settleOwn notes which figures are set beside those that were before. Once all are,
// none is invented.
func (b *Book) settleOwn(set func(figure string) bool) {
	if !b.Placeholder {
		return
	}
	var own []string
	figures := Figures(*b)
	for _, f := range figures {
		if set(f) || slices.Contains(b.Own, f) {
			own = append(own, f)
		}
	}
	b.Own = own
	if len(own) == len(figures) {
		b.Placeholder, b.Own = false, nil
	}
}

// AddToBook returns the book with a further entry at the end of a list, "woods". It
// starts with the first goods that the book does not have, at the example's price or
// that of an entry like it, which counts as invented until it is set.
func AddToBook(b Book, list string) (Book, error) {
	next := CloneBook(b)
	p, ok := find(bookTree(), reflect.ValueOf(&next).Elem(), list)
	if !ok || p.node.shape != partList || list == "tasks" || list == "learned" {
		return b, Faults{{Path: BookPrefix + list, Code: CannotEdit}}
	}
	n := p.value.Len()
	entry := newBookEntry(b, list)
	if n >= p.node.field.Most || entry == nil {
		return b, Faults{{Path: BookPrefix + list, Code: WrongCount, Value: entries(n + 1), Allowed: p.node.field.allowedCount()}}
	}
	if !next.Placeholder {
		next.Placeholder, next.Own = true, Figures(b)
	}
	p.value.Set(reflect.Append(p.value, reflect.ValueOf(entry)))
	if next.IsOwn(list + "[" + strconv.Itoa(n) + "]") {
		panic("design: internal error: an entry without a figure")
	}
	return adopted(b, next, list)
}

// adopted is the next state of a book, or the one before with what is wrong, at the
// place that was changed.
func adopted(before, next Book, path string) (Book, error) {
	if err := ValidateBook(next); err != nil {
		return before, err.(Faults).at(BookPrefix + path)
	}
	return next, nil
}

// newBookEntry is what a further entry of a list starts as; nil where the book has all.
func newBookEntry(b Book, list string) any {
	example := DefaultBook()
	switch list {
	case "woods":
		return firstMissing(example.Woods, b.Woods, func(w WoodPrice) string { return w.Wood })
	case "finishes":
		return firstMissing(example.Finishes, b.Finishes, func(f FinishPrice) string { return f.Finish })
	case "sheets":
		key := func(s SheetPrice) string { return s.Sheet + s.Thickness.String() }
		if next := firstMissing(example.Sheets, b.Sheets, key); next != nil {
			return next
		}
		last := b.Sheets[len(b.Sheets)-1]
		for mm := int64(9); mm <= 25; mm++ {
			last.Thickness = length.MM(mm)
			if !slices.ContainsFunc(b.Sheets, func(s SheetPrice) bool { return s.Sheet == last.Sheet && s.Thickness.Same(last.Thickness) }) {
				return last
			}
		}
	case "sticks":
		s := StickPrice{Wood: b.Woods[0].Wood, Size: length.MM(36), Length: length.MM(2400), Price: Units(10)}
		for n := len(b.Sticks); n > 0; n-- {
			s.Length = s.Length.Add(length.MM(100)) // another one than those before
		}
		return s
	case "stages":
		return Stage{Name: strconv.Itoa(len(b.Stages) + 1)}
	case "taxes":
		rate := TaxRate{}
		for n := 1; rate.Name == "" || slices.ContainsFunc(b.Taxes, func(t TaxRate) bool { return t.Name == rate.Name }); n++ {
			rate.Name = strconv.Itoa(n)
		}
		return rate
	}
	return nil
}

// firstMissing is the first entry of the example's list that a book does not have.
func firstMissing[T any](example, have []T, key func(T) string) any {
	for _, e := range example {
		if !slices.ContainsFunc(have, func(h T) bool { return key(h) == key(e) }) {
			return e
		}
	}
	return nil
}

// RemoveFromBook returns the book without an entry of a list, "woods[3]". What a stage
// had goes to another one.
func RemoveFromBook(b Book, path string) (Book, error) {
	next := CloneBook(b)
	list, i, field := entryOf(path)
	p, ok := find(bookTree(), reflect.ValueOf(&next).Elem(), list)
	switch {
	case !ok || field != "" || p.node.shape != partList || i < 0 || i >= p.value.Len() || list == "tasks":
		return b, Faults{{Path: BookPrefix + path, Code: CannotEdit}}
	case p.value.Len() <= p.node.field.Least:
		return b, Faults{{Path: BookPrefix + list, Code: WrongCount, Value: entries(p.value.Len() - 1), Allowed: p.node.field.allowedCount()}}
	}
	p.value.Set(reflect.AppendSlice(p.value.Slice(0, i), p.value.Slice(i+1, p.value.Len())))
	if p.node.omitted(p.value) {
		p.value.SetZero()
	}
	if list == "stages" {
		next.settleStages(-1)
	}
	if next.Placeholder {
		next.Own = renumbered(next.Own, list, i)
		next.settleOwn(func(string) bool { return false }) // the last invented one may be gone
	}
	return adopted(b, next, list)
}

// Change is a field with another text than before.
type Change struct{ Path, Text string }

// BookChanges lists the fields of a price book whose text differs, with BookPrefix
// before their paths, where both have the same entries.
func BookChanges(before, after Book, u length.Units) []Change {
	var all []Change
	eachLeaf(bookTree(), reflect.ValueOf(after), nil, func(n *node, v reflect.Value, p *at) {
		path := p.String()
		if was, ok := find(bookTree(), reflect.ValueOf(before), path); ok && !reflect.DeepEqual(was.value.Interface(), v.Interface()) {
			all = append(all, Change{BookPrefix + path, place{node: n, value: v, entry: -1}.text(u)})
		}
	})
	return all
}

// BookAmount points to the amount at a path of a price book, which must be there.
func BookAmount(b *Book, path string) *Amount {
	p, ok := find(bookTree(), reflect.ValueOf(b).Elem(), path)
	if !ok || p.node.field.Kind != KindAmount {
		panic("design: internal error: no amount at " + path)
	}
	return p.value.Addr().Interface().(*Amount)
}
