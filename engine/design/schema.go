package design

import (
	"strconv"
	"strings"

	"blockfield/engine/words"
)

// lengthPattern is what a length in a file looks like; Parse takes a little
// more, and decides. Spaces may be those that do not break a line.
const (
	spaces        = `[ ` + "\u00a0\u202f" + `]*`
	lengthPattern = `^` + spaces + `[-−]?[0-9.,/ ` + "\u00a0\u202f" + `'′"-]+` + spaces +
		`(mm|cm|m|in|inch|inches|ft|foot|feet|"|″|'|′)?` + spaces +
		`([0-9./ ` + "\u00a0\u202f" + `-]+(in|")?)?` + spaces + `$`
)

// Schema returns the JSON Schema (2020-12) of design files. It holds what a
// schema can say: names, kinds, choices, counts and the limits of plain
// numbers. Limits of lengths and amounts are texts for people; Decode also
// checks these, and how values fit one another.
func Schema() []byte {
	return schema(designTree(), "Blockfield design", "A design of block panels: room, walls, panels, bench and job.")
}

// BookSchema returns the JSON Schema of price books.
func BookSchema() []byte {
	return schema(bookTree(), "Blockfield price book", "What a workshop pays and asks.")
}

// SellingSchema returns the JSON Schema of selling books.
func SellingSchema() []byte {
	return schema(sellingTree(), "Blockfield selling book", "What a public page quotes a range by: rounded prices and no rates.")
}

func schema(n *node, title, doc string) []byte {
	w := schemaWriter{writer: writer{pretty: true}}
	w.open('{')
	w.pair("$schema", "https://json-schema.org/draft/2020-12/schema")
	w.pair("title", title)
	w.pair("description", doc)
	w.object(n)
	if top, _ := n.child("design"); top != nil {
		w.name("$defs")
		w.open('{')
		w.name("design")
		w.open('{')
		w.object(top)
		w.close('}')
		w.close('}')
	}
	w.close('}')
	return append(w.out, '\n')
}

type schemaWriter struct{ writer }

func (w *schemaWriter) pair(name, text string) {
	w.name(name)
	w.text(text)
}

func (w *schemaWriter) numeral(name string, v float64) {
	w.name(name)
	w.out = appendNumber(w.out, v)
}

func (w *schemaWriter) texts(name string, texts []string) {
	w.name(name)
	w.open('[')
	for _, t := range texts {
		w.next()
		w.text(t)
	}
	w.close(']')
}

// object writes the inside of the schema of a part.
func (w *schemaWriter) object(n *node) {
	w.pair("type", "object")
	w.name("additionalProperties")
	w.out = append(w.out, "false"...)
	var required []string
	w.name("properties")
	w.open('{')
	for i := range n.parts {
		kid := &n.parts[i]
		if kid.name == "design" || kid.field.Required || complete(kid) {
			required = append(required, kid.name)
		}
		w.name(kid.name)
		w.open('{')
		w.inside(kid)
		w.close('}')
	}
	w.close('}')
	if len(required) > 0 {
		w.texts("required", required)
	}
}

// complete reports whether n is a part all of whose fields a file must hold, as
// the parts of a price book are.
func complete(n *node) bool {
	if n.shape != part || n.optionalPart() {
		return false
	}
	for i := range n.parts {
		if !n.parts[i].field.Required {
			return false
		}
	}
	return true
}

// inside writes the schema of a value, a list or a part.
func (w *schemaWriter) inside(n *node) {
	switch n.shape {
	case part:
		if n.name == "design" {
			w.pair("$ref", "#/$defs/design")
			return
		}
		w.object(n)
	case leaf:
		w.leaf(n.field)
	default:
		w.pair("description", describe(n.field))
		w.pair("type", "array")
		w.numeral("minItems", float64(n.field.Least))
		w.numeral("maxItems", float64(n.field.Most))
		w.name("items")
		w.open('{')
		if n.shape == partList {
			w.object(n)
		} else {
			w.leaf(n.field)
		}
		w.close('}')
	}
}

// inEnglish says a value in the language of the schemas.
func inEnglish(value any) string { return words.Reader{Language: words.English()}.Show(value) }

// describe joins the row's sentence with the limits that a schema cannot hold.
func describe(f Field) string {
	switch {
	case f.Kind == KindLength || f.Kind == KindAmount:
		return f.Doc + " Allowed: " + inEnglish(f.Allowed()) + "."
	case f.Zero != "":
		return f.Doc + " 0: " + inEnglish(f.Zero) + "."
	case f.Unit != "":
		return f.Doc + " In " + f.Unit + "."
	default:
		return f.Doc
	}
}

func (w *schemaWriter) leaf(f Field) {
	w.pair("description", describe(f))
	if f.Retired {
		w.name("deprecated")
		w.out = append(w.out, "true"...)
	}
	switch f.Kind {
	case KindNumber:
		w.pair("type", "number")
		w.limits(f)
	case KindInteger:
		w.pair("type", "integer")
		if len(f.Choices) > 0 {
			w.name("enum")
			w.out = append(w.out, '[')
			w.out = append(w.out, strings.Join(f.Choices, ",")...)
			w.out = append(w.out, ']')
			return
		}
		w.limits(f)
	case KindYesNo:
		w.pair("type", "boolean")
	case KindChoice:
		w.texts("enum", f.Choices)
	default:
		w.pair("type", "string")
		w.stringLimits(f)
	}
}

func (w *schemaWriter) stringLimits(f Field) {
	switch f.Kind {
	case KindLength:
		w.pair("pattern", lengthPattern)
	case KindAmount:
		w.pair("pattern", `^ *-?[0-9]{1,13}(\.[0-9]{1,4})? *$`)
	case KindDate:
		pattern := `^[0-9]{4}-[0-9]{2}-[0-9]{2}$`
		if f.Optional {
			pattern = `^([0-9]{4}-[0-9]{2}-[0-9]{2})?$`
		}
		w.pair("pattern", pattern)
	case KindCode:
		w.pair("pattern", "^["+crockford+"]{"+strconv.Itoa(codeLetters)+"}$")
	case KindCurrency:
		w.pair("pattern", "^[A-Z]{3}$")
	case KindText:
		if !f.Optional {
			w.numeral("minLength", 1)
			w.pair("pattern", `\S`)
		}
		w.numeral("maxLength", float64(f.MaxChars))
	}
}

// limits writes the range of a number, and 0 beside it where that has a meaning
// of its own.
func (w *schemaWriter) limits(f Field) {
	if f.Zero == "" {
		w.numeral("minimum", f.Min)
		w.numeral("maximum", f.Max)
		return
	}
	w.name("anyOf")
	w.open('[')
	w.next()
	w.open('{')
	w.numeral("const", 0)
	w.close('}')
	w.next()
	w.open('{')
	w.numeral("minimum", f.Min)
	w.numeral("maximum", f.Max)
	w.close('}')
	w.close(']')
}
