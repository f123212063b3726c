package design

import (
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"blockfield/engine/length"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// Validate checks every value of a design document against the table and
// against its neighbours. The error, if any, is of type Faults.
func Validate(doc Document) error { return asError(validate(&doc)) }

func validate(doc *Document) Faults {
	c := checker{}
	c.parts(designTree(), reflect.ValueOf(doc).Elem(), nil)
	c.document(doc)
	return c.all()
}

// ValidateBook does the same for a price book.
func ValidateBook(book Book) error {
	c := checker{}
	c.parts(bookTree(), reflect.ValueOf(&book).Elem(), nil)
	c.book(&book)
	return asError(c.all())
}

// checker walks a document and collects what is wrong with it.
type checker struct{ finding }

func (c *checker) parts(n *node, v reflect.Value, p *at) {
	if n.optionalPart() {
		if v.IsNil() {
			return
		}
		v = v.Elem()
	}
	below := p.field("") // of one kid after the other: this walk goes with every edit
	for i := range n.parts {
		kid := &n.parts[i]
		below.name = kid.name
		c.value(kid, v.Field(kid.index), below)
	}
}

func (c *checker) value(n *node, v reflect.Value, p *at) {
	switch n.shape {
	case leaf:
		c.leaf(n.field, v, p)
		return
	case part:
		c.parts(n, v, p)
		return
	}
	if v.Len() < n.field.Least || v.Len() > n.field.Most {
		c.add(p, WrongCount, entries(v.Len()), n.field.allowedCount())
	}
	for i := range min(v.Len(), n.field.Most) {
		if n.shape == leafList {
			c.leaf(n.field, v.Index(i), p.item(i))
		} else {
			c.parts(n, v.Index(i), p.item(i))
		}
	}
}

func (c *checker) leaf(f Field, v reflect.Value, p *at) {
	if code := faultOf(f, v); code != "" {
		c.add(p, code, foundIn(f, v, code), f.allowedAfter(code))
	}
}

// lengthOf reads a length where it lies: this walk goes with every edit, and a copy
// behind an interface costs memory.
func lengthOf(v reflect.Value) length.Length {
	if v.CanAddr() {
		return *v.Addr().Interface().(*length.Length)
	}
	return v.Interface().(length.Length)
}

// foundIn is what is wrong with a value, as its fault says it.
func foundIn(f Field, v reflect.Value, code Code) any {
	if code != ControlChars {
		return textOf(v)
	}
	char, place := words.Unseen(v.String(), f.Lines)
	return phrase("found/character", "text", shown(v.String()), "code", char, "place", place)
}

// faultOf checks one value against its row; "" is right.
func faultOf(f Field, v reflect.Value) Code {
	if v.Kind() == reflect.String && v.String() == "" && !f.Optional {
		if f.Default != "" {
			return "" // that is what it usually is
		}
		return EmptyText
	}
	switch f.Kind {
	case KindLength:
		if !f.holds(lengthOf(v).Millimetres()) {
			return OutOfRange
		}
	case KindAmount:
		if !f.holds(float64(v.Int()) / amountUnit) {
			return OutOfRange
		}
	case KindNumber:
		// A number that is not one fails every comparison.
		if !f.holds(v.Float()) {
			return OutOfRange
		}
	case KindInteger:
		if len(f.Choices) > 0 && !slices.Contains(f.Choices, textOf(v)) {
			return UnknownChoice
		}
		if !f.holds(float64(v.Int())) {
			return OutOfRange
		}
	case KindChoice:
		if !slices.Contains(f.Choices, v.String()) {
			return UnknownChoice
		}
	case KindText:
		return textFault(f, v.String())
	case KindDate:
		if v.String() != "" && !IsDate(v.String()) {
			return BadDate
		}
	case KindCode:
		if !isCode(v.String()) {
			return BadCode
		}
	case KindCurrency:
		if !money.Known(v.String()) {
			return BadCurrency
		}
	}
	return ""
}

func textFault(f Field, s string) Code {
	switch {
	case !utf8.ValidString(s):
		return BadUTF8
	case !f.Optional && blank(s):
		return EmptyText
	case utf8.RuneCountInString(s) > f.MaxChars:
		return LongText
	}
	// Such texts are refused wherever they come from, since all are shown to others
	// in the end.
	if char, _ := words.Unseen(s, f.Lines); char != "" {
		return ControlChars
	}
	return ""
}

// blank reports whether nothing of a text can be seen.
func blank(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return r != ' ' && unicode.IsPrint(r) }) < 0
}

// textOf writes a value the way a person would.
func textOf(v reflect.Value) string {
	switch x := v.Interface().(type) {
	case length.Length:
		return x.String()
	case Amount:
		return x.String()
	case bool:
		if x {
			return "yes"
		}
		return "no"
	case float64:
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return "no number"
		}
		return number(x)
	}
	if v.CanInt() {
		return strconv.FormatInt(v.Int(), 10)
	}
	return v.String()
}

// IsDate reports whether s is a day of the calendar, written 2026-03-31.
func IsDate(s string) bool {
	if len(s) != len("2026-03-31") || s[4] != '-' || s[7] != '-' {
		return false
	}
	year, month, day := digits(s[:4]), digits(s[5:7]), digits(s[8:])
	if year < 1 || month < 1 || month > 12 || day < 1 {
		return false
	}
	days := []int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}[month-1]
	if month == 2 && year%4 == 0 && (year%100 != 0 || year%400 == 0) {
		days++
	}
	return day <= days
}

// digits reads a short number of nothing but digits, or returns −1.
func digits(s string) int {
	if s == "" || strings.Trim(s, "0123456789") != "" {
		return -1
	}
	n, err := strconv.Atoi(s)
	if err != nil {
		return -1
	}
	return n
}
