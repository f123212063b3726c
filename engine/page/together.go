package page

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"blockfield/engine/design"
)

// together has no line end between a figure and what belongs to it: its unit, the fraction
// behind a whole number, the × on either side of it, the / or = behind it, the "No." in front
// of it; and none within a date. Markup stays as it is, and so do drawings, what is typed,
// and the entries of lists, where no line ends.
func together(html string) string {
	const space, noBreak = ' ', "\u00a0"
	var b strings.Builder
	done := 0
	for at := 0; at < len(html); at++ {
		switch html[at] {
		case '<':
			at += leap(html[at:]) - 1
		case space:
			if belongs(html[:at], html[at+1:]) {
				b.WriteString(html[done:at])
				b.WriteString(noBreak)
				done = at + 1
			}
		case '-':
			if date := html[max(0, at-len("2026")):min(len(html), at+len("-03-31"))]; design.IsDate(date) {
				b.WriteString(html[done : at-len("2026")])
				b.WriteString(strings.ReplaceAll(date, "-", joiner+"-"+joiner))
				at += len("-03-31") - 1
				done = at + 1
			}
		}
	}
	if done == 0 {
		return html
	}
	b.WriteString(html[done:])
	return b.String()
}

// leap is how long a tag is, with all that is in it where that is no text that wraps.
func leap(html string) int {
	for _, name := range []string{"svg", "textarea", "option", "title"} {
		if !strings.HasPrefix(html[1:], name) || len(html) <= len(name)+1 || !strings.ContainsRune(" >", rune(html[len(name)+1])) {
			continue
		}
		if end := strings.Index(html, "</"+name+">"); end >= 0 {
			return end + len("</") + len(name) + len(">")
		}
	}
	if end := strings.IndexByte(html, '>'); end >= 0 {
		return end + 1
	}
	return len(html)
}

// belongs reports whether what ends and what begins beside a space are not to be parted.
func belongs(before, after string) bool {
	if before == "" || after == "" {
		return false
	}
	if digit(after[0]) {
		if fraction := strings.TrimLeft(after, "0123456789"); strings.HasPrefix(fraction, "/") && digit(before[len(before)-1]) {
			return true
		}
		return strings.HasSuffix(before, " No.") || strings.HasSuffix(before, " Nr.") || figureBefore(before, "×")
	}
	if strings.HasPrefix(after, "×") {
		return true
	}
	if !digit(before[len(before)-1]) {
		return false
	}
	for _, unit := range units() {
		if rest, ok := strings.CutPrefix(after, unit); ok {
			next, _ := utf8.DecodeRuneInString(rest)
			return !unicode.IsLetter(next) && !unicode.IsDigit(next)
		}
	}
	return false
}

// figureBefore reports whether a text ends in a figure, a space and a sign.
func figureBefore(text, sign string) bool {
	rest, ok := strings.CutSuffix(text, sign)
	rest = strings.TrimRight(rest, " \u00a0")
	return ok && rest != "" && digit(rest[len(rest)-1])
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// units are what stands behind figures, those first that begin like another one.
func units() []string {
	return []string{
		"mm²", "mm", "m²", "m³", "min", "ml", "m", "cm", "km", "kg", "kN", "kHz", "g", "h", "lb", "l", "Hz", "°C", "°F",
		"in²", "in", "ft²", "ft", "N", "Zoll", "Uhr", "%", "/", "=", "€",
	}
}
