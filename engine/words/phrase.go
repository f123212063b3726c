package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"blockfield/engine/length"
)

// Phrase is a message that is said later, to whoever reads then: its key and
// its arguments. As an argument of another message it is said inside of that.
// The zero Phrase says nothing.
type Phrase struct {
	Key  string
	Args Args
}

// Plain is a phrase that says a value and nothing else.
func Plain(value any) Phrase { return Phrase{"phrase/plain", Args{"value": value}} }

// Quantity is a plain number with its unit, written as short as it can be:
// "0.5 kN", "18 °C", "90°", "3".
type Quantity struct {
	Value float64
	Unit  string
}

func (q Quantity) text() string {
	number := strconv.FormatFloat(q.Value, 'f', -1, 64)
	if q.Unit == "" || q.Unit == "°" {
		return number + q.Unit
	}
	return number + " " + q.Unit
}

// Least is a length that may just be typed, and Most another: the ends of a
// range. In inches they are rounded inwards to a 64th, so that what is said to
// be allowed is.
type (
	Least length.Length
	Most  length.Length
)

func (l Least) text(u length.Units) string { return limit(length.Length(l), u, math.Ceil) }
func (m Most) text(u length.Units) string  { return limit(length.Length(m), u, math.Floor) }

func limit(l length.Length, u length.Units, inwards func(float64) float64) string {
	if u.Bare() == length.InInch {
		sixtyfourth := float64(length.Sixtyfourths(1).Nanometres())
		l = length.Sixtyfourths(int64(inwards(float64(l.Nanometres()) / sixtyfourth)))
	}
	return l.String()
}

// Printable returns a text in which every character that does not print, such
// as a control character or one that turns the direction of writing, is shown
// by its number: \u202e. What a file holds may not steer the reader's terminal.
func Printable(text string) string {
	if strings.IndexFunc(text, hidden) < 0 {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		if hidden(r) {
			quoted := strconv.QuoteRuneToASCII(r)
			b.WriteString(quoted[1 : len(quoted)-1])
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

// Unseen finds the first character of a text that does not show itself but changes
// how others are written: it controls a terminal, turns the direction of the
// writing, or hides in it. It returns the character's code, "U+202E", and its
// place, counted from 1; "" where there is none. Line feeds, where a text has
// lines, and the two joiners are none: some scripts cannot be written without
// those.
func Unseen(text string, lines bool) (code string, place int) {
	for _, r := range text {
		place++
		if unseen(r) && !(lines && r == '\n') {
			return fmt.Sprintf("U+%04X", r), place
		}
	}
	return "", 0
}

func unseen(r rune) bool {
	if r < utf8.RuneSelf {
		return r < ' ' || r == '\x7f'
	}
	const joiner, nonJoiner = '\u200d', '\u200c'
	return r != joiner && r != nonJoiner && unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp)
}

// hidden reports whether r does not print. Line feeds are left to whoever
// writes lines, and all spaces are spaces.
func hidden(r rune) bool { return !unicode.IsPrint(r) && !unicode.Is(unicode.Zs, r) }
