package design

import (
	"slices"
	"strings"
	"unicode/utf8"

	"blockfield/engine/words"
)

// maxFaults is how many faults are listed; the rest is counted.
const maxFaults = 50

// maxShown is how much of a wrong value is repeated to its writer.
const maxShown = 60

// Fault is one thing that is wrong with a document or with what was typed. It
// is said by package words, to a person at a page (Say) or on the line of a
// command (Error).
type Fault struct {
	Path    string       // from the top of the document: "design.walls[0].width"; empty: the whole file
	Code    Code         // what is wrong
	Value   any          // what was found: a text as it was given, shortened, a words.Phrase, or nil
	Allowed words.Phrase // what would be right; empty where that is clear
}

// Field returns the name of the form field that the fault belongs to: its path
// below the design.
func (f Fault) Field() string { return shortPath(f.Path) }

// Label is what the page calls the field; "" where it has no such field.
func (f Fault) Label(r words.Reader) string {
	if key := LabelKey(f.Path); r.Language.Has(key) {
		return r.Say(key)
	}
	return ""
}

// Say says what is wrong to a person at a page, in whole sentences and without
// the path: "100 mm is out of range. Allowed: 600 mm to 20000 mm."
func (f Fault) Say(r words.Reader) string {
	text := r.Say("fault/"+string(f.Code), words.Args{"value": f.typed(f.found("fault/something-else"))})
	if f.Allowed.Key == "" {
		return text
	}
	return r.Say("fault/allowed", words.Args{"fault": text, "allowed": f.Allowed})
}

// Error says it on one line behind its path: "design.walls[0].width: 100 mm is
// out of range (allowed 600 mm to 20000 mm)".
func (f Fault) Error() string { return f.line(words.Reader{Language: words.English()}) }

func (f Fault) line(r words.Reader) string {
	text := r.Say("error/"+string(f.Code), words.Args{"value": f.found("error/nothing")})
	if f.Allowed.Key != "" {
		text = r.Say("error/allowed", words.Args{"fault": text, "allowed": f.Allowed})
	}
	if f.Path == "" {
		return text
	}
	return f.Path + ": " + text
}

// found is what was found, or the word for nothing.
func (f Fault) found(nothing words.Key) any {
	if f.Value == nil || f.Value == "" {
		return nothing
	}
	if text, ok := f.Value.(string); ok {
		return shown(text)
	}
	return f.Value
}

// typed is what was found as its reader wrote it: numbers are kept with a point before
// decimals, in whatever language they were typed.
func (f Fault) typed(found any) any {
	text, ok := found.(string)
	numbers := []Code{BadLength, BadNumber, BadWhole, BadAmount, FineAmount, OutOfRange}
	if !ok || !slices.Contains(numbers, f.Code) {
		return found
	}
	return words.Typed(text)
}

// Faults is everything that is wrong: first what could not be read, then what
// is out of range, each in the order of the document.
type Faults []Fault

// Error lists the faults, one a line.
func (f Faults) Error() string {
	r := words.Reader{Language: words.English()}
	lines := make([]string, len(f))
	for i, fault := range f {
		lines[i] = fault.line(r)
	}
	return strings.Join(lines, "\n")
}

// finding collects faults while a document is read or checked.
type finding struct {
	faults []Fault
	more   int
}

func (c *finding) add(p *at, code Code, value any, allowed words.Phrase) {
	if len(c.faults) == maxFaults {
		c.more++
		return
	}
	if text, ok := value.(string); ok {
		value = shown(text)
	}
	c.faults = append(c.faults, Fault{Path: p.String(), Code: code, Value: value, Allowed: allowed})
}

// clean reports whether nothing was found in or below the place p. A rule that
// compares several fields runs only where each of them is right.
func (c *finding) clean(p *at) bool {
	if len(c.faults) == 0 {
		return true
	}
	prefix := p.String()
	for _, f := range c.faults {
		if rest, ok := strings.CutPrefix(f.Path, prefix); ok && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			return false
		}
	}
	return c.more == 0
}

// all returns what was found, or nil.
func (c *finding) all() Faults {
	if len(c.faults) == 0 {
		return nil
	}
	faults := Faults(c.faults)
	if c.more > 0 {
		faults = append(faults, Fault{Code: AndMore, Value: count(c.more)})
	}
	return faults
}

// asError keeps no faults from becoming an error that is not nil.
func asError(f Faults) error {
	if f == nil {
		return nil
	}
	return f
}

// shown shortens a wrong value to what can be repeated in a message, with
// nothing in it that steers a terminal.
func shown(text string) string {
	text = words.Printable(strings.ToValidUTF8(text, "\uFFFD"))
	if utf8.RuneCountInString(text) <= maxShown {
		return text
	}
	n := 0
	for i := range text {
		if n == maxShown {
			return text[:i] + "…"
		}
		n++
	}
	return text
}
