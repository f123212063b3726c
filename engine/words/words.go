// Package words turns codes and typed arguments into sentences.
//
// The other rooms never make sentences: they return a key such as
// "frame/too-shallow" with arguments, and a Reader says it in the language,
// the units and the number style of whoever reads. A message is plain text with
// placeholders: {stack} is replaced by the argument of that name, {long:sold} by
// lengths in the unit in which goods of that size are sold, and {n|block|blocks} by the first
// or the second word as n is one or not. {units|150 mm|6 in} is a limit that is round in either
// notation, in that of the reader.
//
// A key without a message is said as ⟪key⟫, which a test finds. The
// pseudo-language wraps every sentence in ⟦ ⟧, so that text which came past
// this package is found too.
package words

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"blockfield/engine/length"
	"blockfield/engine/money"
)

// Args are the arguments of a sentence, by the name of their placeholder. Their
// types decide how they are written: length.Length, money.Money, the
// quantities of this package, int, string (said as it is, but for days and for what documents come with), Key and Phrase (said
// in the language of the reader).
type Args map[string]any

// Key is an argument that is itself a message: the name of a wood, a step.
type Key string

// Quantities that a sentence can carry.
type (
	Kg      float64 // mass
	M2      float64 // area
	Litres  float64
	Hours   float64
	Minutes float64
	Percent float64 // from 0 to 100
	Hz      float64
	Celsius float64
	Kelvin  float64 // of the colour of light
	Degrees float64
	Drill   float64 // bore of a hole in inches, said as drills are sold
)

// micrometresInInch is exact (international inch).
const micrometresInInch = 25_400

// Places are where things lie, one after another.
type Places []length.Length

// Language is a set of messages, and how numbers are written among them.
type Language struct {
	Tag      string // BCP 47
	messages map[string]string
	mark     string // before decimals
	inch     string // the unit behind lengths in inches
	wrap     bool
}

// Tags are the languages that a reader can choose, as the design's table has them.
func Tags() []string { return []string{"en", "de"} }

// In is the language of a tag; an unknown tag reads as English.
func In(tag string) Language {
	if tag == "de" {
		return German()
	}
	return English()
}

// English is the language that every message exists in.
func English() Language {
	return Language{Tag: "en", messages: englishMessages(), mark: ".", inch: "in"}
}

// German says every message of English, in German.
func German() Language {
	return Language{Tag: "de", messages: germanMessages(), mark: ",", inch: "Zoll"}
}

// The parts of each language are put together once; nobody changes them.
var (
	englishMessages = sync.OnceValue(func() map[string]string { return together(english()) })
	germanMessages  = sync.OnceValue(func() map[string]string { return together(german()) })
)

func together(parts []map[string]string) map[string]string {
	all := map[string]string{}
	for _, part := range parts {
		maps.Copy(all, part)
	}
	return all
}

// Pseudo is a language for tests: English in brackets that no other text has.
func Pseudo() Language {
	l := English()
	l.Tag, l.wrap = "en-x-pseudo", true
	return l
}

// Keys lists the messages of l in order.
func (l Language) Keys() []string { return slices.Sorted(maps.Keys(l.messages)) }

// Has reports whether l has a message for key.
func (l Language) Has(key string) bool { _, ok := l.messages[key]; return ok }

// Message is the text of key with its placeholders; "" where there is none.
func (l Language) Message(key string) string { return l.messages[key] }

// Reader says messages to one person. The zero Reader says keys only; make one
// with a Language. Readers may be copied and used from several goroutines.
type Reader struct {
	Language Language
	Units    length.Units
	Locale   string // of numbers and money; empty: the language's
}

// Say returns the message of key with its arguments.
func (r Reader) Say(key string, args ...Args) string {
	message, ok := r.Language.messages[key]
	if !ok {
		return "⟪" + key + "⟫"
	}
	var a Args
	if len(args) > 0 {
		a = args[0]
	}
	text := r.fill(message, a)
	if r.Language.wrap {
		return "⟦" + text + "⟧"
	}
	return text
}

func (r Reader) fill(message string, args Args) string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(message, "{")
		b.WriteString(before)
		if !found {
			return b.String()
		}
		inner, after, closed := strings.Cut(rest, "}")
		if !closed {
			return b.String() + "{" + rest
		}
		b.WriteString(r.placeholder(inner, args))
		message = after
	}
}

func (r Reader) placeholder(inner string, args Args) string {
	name, choice, plural := strings.Cut(inner, "|")
	if name == unitsChoice {
		metric, inches, _ := strings.Cut(choice, "|")
		if r.Units.Bare() == length.InInch {
			return inches
		}
		return metric
	}
	name, sold := strings.CutSuffix(name, ":sold")
	value, ok := args[name]
	if !ok {
		return "⟪" + name + "⟫"
	}
	if sold {
		return r.Written(soldAs(value))
	}
	if !plural {
		return r.Show(value)
	}
	one, many, _ := strings.Cut(choice, "|")
	if n, ok := value.(int); ok && n == 1 { // so it is in each of our languages: TestRulesOfLanguages
		return one
	}
	return many
}

// unitsChoice is a placeholder of no argument: of a limit that is a round number in either
// notation, "{units|150 mm|6 in}" says the reader's.
const unitsChoice = "units"

// soldAs writes the size of goods.
func soldAs(value any) string {
	switch v := value.(type) {
	case length.Length:
		return length.Sold(v)
	case []length.Length:
		return length.Sold(v...)
	default:
		panic(fmt.Sprintf("words: internal error: no goods are sold by a %T", value))
	}
}

// Show writes one value for the reader.
func (r Reader) Show(value any) string {
	switch v := value.(type) {
	case string:
		return r.day(r.Given(v))
	case Key:
		if !r.Language.Has(string(v)) {
			return "⟪" + string(v) + "⟫"
		}
		return r.fill(r.Language.messages[string(v)], nil)
	case Phrase:
		return r.phrase(v)
	case []string:
		return strings.Join(v, ", ")
	case []Phrase:
		return r.phrases(v)
	case Typed:
		return r.Read(string(v), false)
	case int:
		return r.Count(v)
	case money.Money:
		return v.Format(r.MoneyLocale())
	default:
		return r.Written(r.number(value))
	}
}

// number writes a value that is a number with its unit, with a point before
// decimals.
func (r Reader) number(value any) string {
	switch v := value.(type) {
	case Places:
		return r.places(v)
	case Drill:
		return r.Units.Bit(length.Micrometres(int64(math.Round(float64(v) * micrometresInInch))))
	case Quantity:
		return v.text()
	case Fixed:
		return v.text()
	case Exact:
		return length.Length(v).String()
	case Least:
		return v.text(r.Units)
	case Most:
		return v.text(r.Units)
	case About:
		return v.text(r.Units)
	case NoLess:
		return v.text(r.Units)
	case length.Length:
		return r.Units.Format(v)
	case []length.Length:
		return r.lengths(v)
	case Kg:
		return r.Units.Mass(float64(v))
	case M2:
		return r.Units.Area(float64(v))
	case Litres:
		return decimals(float64(v), 2) + " l"
	case Hours:
		return decimals(float64(v), 1) + " h"
	case Minutes:
		return decimals(float64(v), 0) + " min"
	case Percent:
		return decimals(float64(v), 0) + " %"
	case Hz:
		return r.Count(int(v+0.5)) + noBreak + "Hz"
	case Celsius:
		return decimals(float64(v), 0) + " °C"
	case Kelvin:
		return decimals(float64(v), 0) + " K"
	case Degrees:
		return decimals(float64(v), 0) + "°"
	case float64:
		return decimals(v, 1)
	default:
		panic(fmt.Sprintf("words: internal error: no way to say a %T", value))
	}
}

// phrase says a message within another one, without brackets of its own.
func (r Reader) phrase(p Phrase) string {
	message, ok := r.Language.messages[p.Key]
	switch {
	case p.Key == "":
		return ""
	case !ok:
		return "⟪" + p.Key + "⟫"
	}
	return r.fill(message, p.Args)
}

func (r Reader) lengths(all []length.Length) string {
	texts := make([]string, len(all))
	for i, l := range all {
		texts[i] = r.Units.Number(l)
	}
	return strings.Join(texts, " / ") + " " + r.Units.Word()
}

func (r Reader) phrases(all []Phrase) string {
	texts := make([]string, len(all))
	for i, p := range all {
		texts[i] = r.phrase(p)
	}
	return strings.Join(texts, ", ")
}

func (r Reader) places(all Places) string {
	texts := make([]string, len(all))
	for i, l := range all {
		texts[i] = r.Units.Number(l)
	}
	return strings.Join(texts, ", ") + " " + r.Units.Word()
}

// MoneyLocale is how amounts of money are written.
func (r Reader) MoneyLocale() string {
	if r.Locale != "" {
		return r.Locale
	}
	tag, _, _ := strings.Cut(r.Language.Tag, "-x-")
	return tag
}

// thinSpace groups the digits of large counts, as ISO 80000-1 asks.
const thinSpace = "\u202f"

// noBreak is a space at which a line does not break.
const noBreak = "\u00a0"

// Count writes a whole number with its digits in groups of three from 10,000
// on.
func (r Reader) Count(n int) string {
	text := strconv.Itoa(n)
	digits := strings.TrimPrefix(text, "-")
	if len(digits) < 5 {
		return text
	}
	sign := text[:len(text)-len(digits)]
	for i := len(digits) - 3; i > 0; i -= 3 {
		digits = digits[:i] + thinSpace + digits[i:]
	}
	return sign + digits
}

func decimals(v float64, n int) string { return strconv.FormatFloat(v, 'f', n, 64) }
