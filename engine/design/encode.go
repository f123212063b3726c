package design

import (
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/length"

	"github.com/go-json-experiment/json/jsontext"
)

// Encode writes a design file in its one canonical form: JSON with names in the
// order of the table, indented by two spaces, and a line feed at the end.
func Encode(doc Document) []byte { return file(designTree(), reflect.ValueOf(&doc).Elem()) }

// EncodeBook writes a price book in its canonical form.
func EncodeBook(book Book) []byte { return file(bookTree(), reflect.ValueOf(&book).Elem()) }

func file(n *node, v reflect.Value) []byte {
	w := writer{pretty: true}
	w.node(n, v)
	return append(w.out, '\n')
}

// compact writes a value without spaces, for links.
func compact(n *node, v reflect.Value) []byte {
	w := writer{}
	w.node(n, v)
	return w.out
}

// writer writes JSON.
type writer struct {
	out    []byte
	pretty bool
	sizes  bool // lengths all in millimetres, however they were written
	depth  int
	filled bool // the innermost part or list has an entry already
}

func (w *writer) open(bracket byte) {
	w.out = append(w.out, bracket)
	w.depth++
	w.filled = false
}

func (w *writer) next() {
	if w.filled {
		w.out = append(w.out, ',')
	}
	w.line()
	w.filled = true
}

func (w *writer) close(bracket byte) {
	w.depth--
	if w.filled {
		w.line()
	}
	w.out = append(w.out, bracket)
	w.filled = true
}

func (w *writer) line() {
	if w.pretty {
		w.out = append(w.out, '\n')
		for range w.depth {
			w.out = append(w.out, "  "...)
		}
	}
}

func (w *writer) name(name string) {
	w.next()
	w.text(name)
	w.out = append(w.out, ':')
	if w.pretty {
		w.out = append(w.out, ' ')
	}
}

func (w *writer) node(n *node, v reflect.Value) {
	switch n.shape {
	case leaf:
		w.value(v)
	case part:
		w.parts(n, v)
	default:
		w.open('[')
		for i := range v.Len() {
			w.next()
			if n.shape == leafList {
				w.value(v.Index(i))
			} else {
				w.parts(n, v.Index(i))
			}
		}
		w.close(']')
	}
}

func (w *writer) parts(n *node, v reflect.Value) {
	if v.Kind() == reflect.Pointer {
		v = v.Elem()
	}
	w.open('{')
	for i := range n.parts {
		kid := &n.parts[i]
		value := v.Field(kid.index)
		if kid.omitted(value) {
			continue
		}
		w.name(kid.name)
		w.node(kid, value)
	}
	w.close('}')
}

func (w *writer) value(v reflect.Value) {
	switch x := v.Interface().(type) {
	case length.Length:
		if w.sizes {
			x = length.Nanometres(x.Nanometres(), length.InMM)
		}
		w.text(x.String())
	case Amount:
		w.text(x.String())
	case bool:
		w.out = strconv.AppendBool(w.out, x)
	case float64:
		w.out = appendNumber(w.out, x)
	default:
		if v.CanInt() {
			w.out = strconv.AppendInt(w.out, v.Int(), 10)
			return
		}
		w.text(v.String())
	}
}

func (w *writer) text(s string) {
	// The only error is invalid UTF-8, which is replaced first.
	w.out, _ = jsontext.AppendQuote(w.out, strings.ToValidUTF8(s, "\uFFFD"))
}

// appendNumber writes a float as short as possible: plainly where that is
// readable, with an exponent elsewhere. There is one zero, and no number stands
// for what is not finite; Validate refuses such values.
func appendNumber(out []byte, x float64) []byte {
	a := math.Abs(x)
	switch {
	case a == 0 || math.IsNaN(x) || math.IsInf(x, 0):
		return append(out, '0')
	case a < 1e-6 || a >= 1e21:
		text := strconv.FormatFloat(x, 'e', -1, 64)
		return append(out, strings.Replace(text, "e-0", "e-", 1)...)
	default:
		return strconv.AppendFloat(out, x, 'f', -1, 64)
	}
}

// Clone returns a copy of the document that shares nothing with it.
func Clone(doc Document) Document {
	deepen(reflect.ValueOf(&doc).Elem())
	return doc
}

// deepen replaces every list and pointer below v by a copy of its own.
func deepen(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			fresh := reflect.New(v.Type().Elem())
			fresh.Elem().Set(v.Elem())
			v.Set(fresh)
			deepen(fresh.Elem())
		}
	case reflect.Slice:
		if v.IsNil() {
			return
		}
		fresh := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(fresh, v)
		v.Set(fresh)
		for i := range fresh.Len() {
			deepen(fresh.Index(i))
		}
	case reflect.Struct:
		if !isPart(v.Type()) {
			return
		}
		for i := range v.NumField() {
			deepen(v.Field(i))
		}
	}
}

// sortAssumed returns the paths sorted and each once; nil where there are none.
func sortAssumed(paths []string) []string {
	if len(paths) == 0 {
		return nil
	}
	slices.Sort(paths)
	return slices.Compact(paths)
}
