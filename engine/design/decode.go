package design

import (
	"bytes"
	"errors"
	"io"
	"math"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"

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

// byteOrderMark opens files of some editors. RFC 8259, section 8.1, lets a
// reader ignore it.
const byteOrderMark = "\uFEFF"

func unmarked(data []byte) []byte { return bytes.TrimPrefix(data, []byte(byteOrderMark)) }

// FormatOf returns what a file says it is, Format, BookFormat or SellingFormat
// among others, as far as it can be read; "" where it does not say.
func FormatOf(data []byte) string {
	d := decoder{data: unmarked(data)}
	d.in = tokens(d.data)
	head, _ := d.scan()
	return head.format
}

// envelope reads the whole file once without keeping anything: its size, its
// syntax, its depth, its format and its version must be right before the rest
// means anything.
func (d *decoder) envelope(format string, version int) bool {
	switch {
	case len(d.data) > maxFileBytes:
		d.add(nil, TooLarge, phrase("found/bytes", "n", count(len(d.data))), phrase("allowed/bytes", "n", count(maxFileBytes)))
		return false
	case !utf8.Valid(d.data):
		d.add(nil, BadUTF8, d.place("found/place", firstBadByte(d.data)), words.Phrase{})
		return false
	}
	d.in = tokens(d.data)
	head, ok := d.scan()
	if !ok {
		return false
	}
	if head.format != format {
		d.add((*at)(nil).field("format"), ForeignFormat, head.format, words.Plain(format))
		return false
	}
	v, err := strconv.ParseUint(head.version, 10, 32)
	ours := words.Plain(count(version))
	switch p := (*at)(nil).field("version"); {
	case head.version == "":
		d.add(p, Missing, nil, ours)
	case !head.isNumber:
		d.add(p, WrongType, head.version, phrase("allowed/number", "range", ours))
	case err != nil || v == 0:
		d.add(p, OlderVersion, head.version, ours)
	case v > uint64(version):
		d.add(p, NewerVersion, head.version, phrase("allowed/version", "n", version))
	default:
		return true
	}
	return false
}

// firstBadByte is where data stops being UTF-8.
func firstBadByte(data []byte) int {
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return len(data)
}

// place says where a byte of the file is, for a person with an editor: lines
// and characters, both counted from 1.
func (d *decoder) place(key string, offset int) words.Phrase {
	before := d.data[:min(max(offset, 0), len(d.data))]
	line := bytes.Count(before, []byte("\n")) + 1
	column := utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
	return phrase(key, "line", count(line), "column", count(column))
}

// head is what a file says of itself.
type head struct {
	format   string
	version  string // as it is written
	isNumber bool   // of the version
}

// scan walks over all tokens and returns what the file says of itself, as far
// as it can be read.
func (d *decoder) scan() (h head, ok bool) {
	if d.in.PeekKind() != '{' {
		_, err := d.in.ReadToken()
		if err == nil {
			d.add(nil, ForeignFormat, nil, words.Phrase{Key: "allowed/object"})
			return h, false
		}
		return h, d.syntax(err)
	}
	name, end := "", -1
	for {
		tok, err := d.in.ReadToken()
		if err == io.EOF {
			return h, true
		}
		if err != nil {
			return h, d.syntax(err)
		}
		if end >= 0 {
			d.add(nil, BadSyntax, d.place("found/after-end", end), words.Phrase{})
			return h, false
		}
		depth := d.in.StackDepth()
		if depth > maxDepth {
			d.add(nil, TooDeep, d.place("found/place", d.offset()), phrase("allowed/levels", "n", maxDepth))
			return h, false
		}
		switch {
		case depth == 0:
			end = d.offset()
		case depth == 1 && d.isName():
			name = tok.String()
		case depth == 1 && name == "format" && tok.Kind() == '"':
			h.format = tok.String()
		case name == "version" && h.version == "":
			h.version, h.isNumber = tok.String(), tok.Kind() == '0'
			if tok.Kind() == '"' {
				h.version = strconv.Quote(h.version)
			}
		}
	}
}

// isName reports whether the token just read names a part of the file, which
// has names and values in turn.
func (d *decoder) isName() bool {
	_, n := d.in.StackIndex(1)
	return n%2 == 1
}

// syntax reports what keeps the file from being read at all.
func (d *decoder) syntax(err error) bool {
	key, code, offset := "found/place", BadSyntax, d.offset()
	if wrong, ok := errors.AsType[*jsontext.SyntacticError](err); ok {
		offset = int(wrong.ByteOffset)
	}
	switch text := err.Error(); {
	case errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF):
		key, offset = "found/cut-off", len(d.data)
	case strings.Contains(text, "UTF-8") || strings.Contains(text, "surrogate"):
		code = BadUTF8
	}
	d.add(nil, code, d.place(key, offset), words.Phrase{})
	return false
}

// offset is how far the file was read.
func (d *decoder) offset() int { return int(d.in.InputOffset()) }

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
			d.add(p, BadNumber, text, f.Allowed())
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
			d.add(p, BadLength, text, f.Allowed())
			return
		}
		v.Set(reflect.ValueOf(l))
	case KindAmount:
		a, err := ParseAmount(text)
		if err != nil {
			d.add(p, BadAmount, text, f.Allowed())
			return
		}
		v.SetInt(int64(a))
	default:
		v.SetString(text)
	}
}
