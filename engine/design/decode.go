package design

import (
	"bytes"
	"errors"
	"math"
	"reflect"
	"strconv"

	"blockfield/engine/length"
	"blockfield/engine/words"

	"github.com/go-json-experiment/json/jsontext"
)

// Bounds of what is read at all.
const (
	maxFileBytes = 4 << 20
	maxDepth     = 32
)

// Decode reads a design file. What is missing takes the value of Default, and
// is listed in Assumed where it comes from the real world. The error, if any,
// is of type Faults and lists everything that is wrong.
func Decode(data []byte) (Document, error) {
	doc := Default()
	doc.Assumed = nil
	d := decoder{data: unmarked(data), fresh: newEntry}
	if !d.envelope(Format, Version) {
		return Document{}, d.all()
	}
	d.read(designTree(), reflect.ValueOf(&doc).Elem())
	doc.Assumed = sortAssumed(append(doc.Assumed, d.missing...))
	d.parts(designTree(), reflect.ValueOf(&doc).Elem(), nil)
	d.document(&doc)
	if faults := d.all(); faults != nil {
		return Document{}, faults
	}
	return doc, nil
}

// DecodeBook reads a price book, which must be complete.
func DecodeBook(data []byte) (Book, error) {
	var book Book
	d := decoder{data: unmarked(data), fresh: nothing}
	if !d.envelope(BookFormat, BookVersion) {
		return Book{}, d.all()
	}
	d.read(bookTree(), reflect.ValueOf(&book).Elem())
	if len(d.faults) == 0 { // a missing price is said once, not again as out of range
		d.parts(bookTree(), reflect.ValueOf(&book).Elem(), nil)
		d.book(&book)
	}
	if faults := d.all(); faults != nil {
		return Book{}, faults
	}
	return book, nil
}

// nothing is what an entry of a price book starts as.
func nothing(string) any { return nil }

// decoder reads one document and checks it.
type decoder struct {
	checker
	data    []byte
	in      *jsontext.Decoder
	fresh   func(pattern string) any // what a new entry of a list starts as
	missing []string                 // assumable values that the file does not hold
}

// tokens reads strictly, but leaves duplicate names to readParts, which names
// all of them.
func tokens(data []byte) *jsontext.Decoder {
	return jsontext.NewDecoder(bytes.NewBuffer(data), jsontext.AllowDuplicateNames(true))
}

// read fills v from a file whose syntax is known to be right.
func (d *decoder) read(n *node, v reflect.Value) {
	d.in = tokens(d.data)
	d.readParts(n, v, nil)
}

// wrong reports a value of the wrong kind and skips it.
func (d *decoder) wrong(p *at, want words.Phrase) {
	raw, err := d.in.ReadValue()
	if err != nil {
		panic("design: internal error: " + err.Error())
	}
	d.add(p, WrongType, string(raw[:min(len(raw), 4*maxShown)]), want)
}

func (d *decoder) skip() {
	if err := d.in.SkipValue(); err != nil {
		panic("design: internal error: " + err.Error())
	}
}

func (d *decoder) token() jsontext.Token {
	tok, err := d.in.ReadToken()
	if err != nil {
		panic("design: internal error: " + err.Error())
	}
	return tok
}

func (d *decoder) readParts(n *node, v reflect.Value, p *at) {
	if d.in.PeekKind() != '{' {
		d.wrong(p, words.Phrase{Key: "allowed/part"})
		return
	}
	d.token()
	seen := make([]bool, len(n.parts))
	for d.in.PeekKind() != '}' {
		name := d.token().String()
		kid, i := n.child(name)
		switch {
		case kid == nil:
			d.add(p.field(shown(name)), UnknownField, nil, words.Phrase{})
			d.skip()
		case seen[i]:
			d.add(p.field(name), TwiceGiven, nil, words.Phrase{})
			d.skip()
		default:
			seen[i] = true
			d.readNode(kid, v.Field(kid.index), p.field(name))
		}
	}
	d.token()
	for i := range n.parts {
		if kid := &n.parts[i]; !seen[i] {
			d.absent(kid, v.Field(kid.index), p.field(kid.name))
		}
	}
}

// absent notes what a file does not hold: a fault where it must be there, and
// a value to be assumed where it comes from the real world.
func (d *decoder) absent(n *node, v reflect.Value, p *at) {
	switch {
	case n.field.Required || n.name == "design":
		d.add(p, Missing, nil, words.Phrase{})
	case n.optionalPart():
	case n.shape == part:
		for i := range n.parts {
			kid := &n.parts[i]
			d.absent(kid, v.Field(kid.index), p.field(kid.name))
		}
	case p.top() == "design":
		eachAssumable(n, v, p, func(p *at) { d.missing = append(d.missing, shortPath(p.String())) })
	}
}

func (d *decoder) readNode(n *node, v reflect.Value, p *at) {
	switch n.shape {
	case leaf:
		d.readLeaf(n.field, v, p)
	case part:
		if n.optionalPart() {
			v.Set(reflect.New(v.Type().Elem()))
			v = v.Elem()
		}
		d.readParts(n, v, p)
	default:
		d.readList(n, v, p)
	}
}

// readList reads no more entries than the list may have, so that a hostile file
// cannot make it grow.
func (d *decoder) readList(n *node, v reflect.Value, p *at) {
	if d.in.PeekKind() != '[' {
		d.wrong(p, words.Phrase{Key: "allowed/list"})
		return
	}
	d.token()
	list := reflect.MakeSlice(v.Type(), 0, 0)
	count := 0
	for ; d.in.PeekKind() != ']'; count++ {
		if count >= n.field.Most {
			d.skip()
			continue
		}
		entry := reflect.New(v.Type().Elem()).Elem()
		if n.shape == leafList {
			d.readLeaf(n.field, entry, p.item(count))
		} else {
			if fresh := d.fresh(n.field.Path); fresh != nil {
				entry.Set(reflect.ValueOf(fresh))
			}
			d.readParts(n, entry, p.item(count))
		}
		list = reflect.Append(list, entry)
	}
	d.token()
	if count > n.field.Most {
		d.add(p, WrongCount, entries(count), n.field.allowedCount())
	}
	if count == 0 && n.omitted(list) {
		list = reflect.Zero(v.Type())
	}
	v.Set(list)
}

func (d *decoder) readLeaf(f Field, v reflect.Value, p *at) {
	kind := d.in.PeekKind()
	switch {
	case v.Kind() == reflect.Bool:
		if kind != 't' && kind != 'f' {
			d.wrong(p, words.Phrase{Key: "allowed/true-false"})
			return
		}
		v.SetBool(d.token().Bool())
	case f.Kind == KindNumber || f.Kind == KindInteger:
		if kind != '0' {
			d.wrong(p, phrase("allowed/number", "range", f.Allowed()))
			return
		}
		d.readNumber(f, v, p, d.token().String())
	case kind != '"':
		d.wrong(p, phrase("allowed/text", "range", f.Allowed()))
	default:
		d.readText(f, v, p, d.token().String())
	}
}

func (d *decoder) readNumber(f Field, v reflect.Value, p *at, text string) {
	if f.Kind == KindInteger {
		n, err := strconv.ParseInt(text, 10, 64)
		if err != nil {
			d.add(p, wholeCode(text), text, f.Allowed())
			return
		}
		v.SetInt(n)
		return
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(x, 0) {
		d.add(p, OutOfRange, text, f.Allowed())
		return
	}
	if x == 0 {
		x = 0 // there is one zero, not two
	}
	v.SetFloat(x)
}

func (d *decoder) readText(f Field, v reflect.Value, p *at, text string) {
	switch f.Kind {
	case KindLength:
		l, err := length.ParseExact(text)
		if err != nil {
			code, value := lengthFault(text, err)
			d.add(p, code, value, f.Allowed())
			return
		}
		v.Set(reflect.ValueOf(l))
	case KindAmount:
		a, err := ParseAmount(text)
		if err != nil {
			d.add(p, amountCode(err), text, f.Allowed())
			return
		}
		v.SetInt(int64(a))
	default:
		v.SetString(f.unlessUsual(text))
	}
}

// wholeCode is what is wrong with a number that is no int64.
func wholeCode(text string) Code {
	if x, err := strconv.ParseFloat(text, 64); err != nil || math.Abs(x) > math.MaxInt64 {
		return OutOfRange
	}
	return BadWhole
}

// lengthFault is the fault of a text that is no length, and what it says of it.
func lengthFault(text string, err error) (Code, any) {
	if two, ok := errors.AsType[*length.AmbiguousError](err); ok {
		return Ambiguous, twoReadings(text, two)
	}
	if errors.Is(err, length.ErrTooLong) {
		return OutOfRange, text
	}
	return BadLength, text
}

func twoReadings(text string, two *length.AmbiguousError) words.Phrase {
	return phrase("found/two-readings", "text", words.Typed(shown(text)), "one", words.Typed(two.Whole), "other", words.Typed(two.Decimal))
}
