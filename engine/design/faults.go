package design

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// maxFaults is how many faults are listed; the rest is counted.
const maxFaults = 50

// maxShown is how much of a wrong value is repeated to its writer.
const maxShown = 60

// Fault is one thing that is wrong with a document or with what was typed.
type Fault struct {
	Path    string // from the top of the document: "design.walls[0].width"; empty: the whole file
	Code    Code   // what is wrong
	Value   string // what was found, shortened
	Allowed string // what would be right, in the reader's units; may be empty
}

// Code says what is wrong, for whoever makes sentences of faults.
type Code string

// The codes of faults.
const (
	BadSyntax     Code = "syntax"        // not JSON, cut off, or followed by something else
	BadUTF8       Code = "utf-8"         // not valid UTF-8, or half of a surrogate pair
	TooLarge      Code = "too-large"     // more bytes than a file may have
	TooDeep       Code = "too-deep"      // parts within parts within parts
	ForeignFormat Code = "format"        // a file of something else
	NewerVersion  Code = "newer-version" // written by a newer program
	OlderVersion  Code = "older-version" // of a version that never was
	UnknownField  Code = "unknown-field" // a name that the document does not have
	TwiceGiven    Code = "twice"         // the same name twice in one part
	Missing       Code = "missing"       // must be there and is not
	WrongType     Code = "type"          // a text where a number belongs, and the like
	BadLength     Code = "length"        // cannot be read as a length
	BadNumber     Code = "number"        // cannot be read as a number
	BadAmount     Code = "amount"        // cannot be read as an amount of money
	BadDate       Code = "date"          // is no day of the calendar
	BadCode       Code = "code"          // is no revision or book code
	OutOfRange    Code = "range"         // below or above what the field takes
	UnknownChoice Code = "choice"        // not in the list
	EmptyText     Code = "empty"         // a text that must be filled in
	LongText      Code = "long"          // more characters than the field takes
	ControlChars  Code = "control"       // characters that do not print
	WrongCount    Code = "count"         // too few or too many entries
	NotRising     Code = "rising"        // heights, or low and high, out of order
	NotPrime      Code = "prime"         // an order that is no prime
	NotFoldable   Code = "fold"          // an order or a fold that gives no two-dimensional field
	BadOrder      Code = "panel-order"   // letters do not fit the panels
	BadDrawing    Code = "drawn"         // rows do not fit the field or the heights
	TooManyCells  Code = "cells"         // a field of too many blocks
	Outside       Code = "outside"       // not on its wall
	NotAssumable  Code = "not-assumable" // a path that cannot be assumed
	NotUnique     Code = "not-unique"    // the same entry twice in a list
	BadSum        Code = "sum"           // parts do not add up to the whole
	CannotEdit    Code = "cannot-edit"   // not for typing
	BadLink       Code = "link"          // a share link that was damaged or cut off
	AndMore       Code = "more"          // Value more faults were found
)

// sentence is how a code is said: # stands for what was found. What is allowed
// follows in brackets.
func (c Code) sentence() string {
	switch c {
	case BadSyntax:
		return "cannot be read as JSON: #"
	case BadUTF8:
		return "is not valid UTF-8 text #"
	case TooLarge:
		return "is too large: #"
	case TooDeep:
		return "has too many parts within parts #"
	case ForeignFormat:
		return "is not a file of this kind: found #"
	case NewerVersion:
		return "was written by a newer program: version #"
	case OlderVersion:
		return "is a version that never was: #"
	case UnknownField:
		return "is not a field of the document"
	case TwiceGiven:
		return "is given twice"
	case Missing:
		return "is missing"
	case WrongType:
		return "# is of the wrong kind"
	case BadLength:
		return "# is not a length: write it like 38 mm, 1.2 m, 1 1/2 in or 6' 2\""
	case BadNumber:
		return "# is not a number of this kind"
	case BadAmount:
		return "# is not an amount of money: write it like 42 or 0.55"
	case BadDate:
		return "# is not a day of the calendar"
	case BadCode:
		return "# is not a code of ours"
	case OutOfRange:
		return "# is out of range"
	case UnknownChoice:
		return "# is not one of the choices"
	case EmptyText:
		return "must not be empty"
	case LongText:
		return "# is too long"
	case ControlChars:
		return "# has characters that do not print"
	case WrongCount:
		return "has #"
	case NotRising:
		return "must rise, got #"
	case NotPrime:
		return "# is not a prime number"
	case NotFoldable:
		return "# cannot be folded to a field"
	case BadOrder:
		return "# does not fit the panels"
	case BadDrawing:
		return "# does not fit the field"
	case TooManyCells:
		return "makes too many blocks: #"
	case Outside:
		return "reaches beyond the wall: #"
	case NotAssumable:
		return "# is not a value that can be assumed"
	case NotUnique:
		return "# is in the list twice"
	case BadSum:
		return "adds up to #"
	case CannotEdit:
		return "cannot be edited"
	case BadLink:
		return "is damaged or cut off"
	case AndMore:
		return "and # more"
	default:
		return "is wrong: #"
	}
}

// Field returns the name of the form field that the fault belongs to: its path
// below the design.
func (f Fault) Field() string { return shortPath(f.Path) }

// Message says what is wrong without the path: "100 mm is out of range (allowed
// 600 mm to 20000 mm)".
func (f Fault) Message() string {
	value := f.Value
	if value == "" {
		value = "nothing"
	}
	text := strings.Replace(f.Code.sentence(), "#", value, 1)
	if f.Allowed != "" {
		text += " (allowed " + f.Allowed + ")"
	}
	return text
}

// Error is Message after the path.
func (f Fault) Error() string {
	if f.Path == "" {
		return f.Message()
	}
	return f.Path + ": " + f.Message()
}

// Faults is everything that is wrong: first what could not be read, then what
// is out of range, each in the order of the document.
type Faults []Fault

// Error lists the faults, one a line.
func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, fault := range f {
		lines[i] = fault.Error()
	}
	return strings.Join(lines, "\n")
}

// finding collects faults while a document is read or checked.
type finding struct {
	faults []Fault
	more   int
}

func (c *finding) add(p *at, code Code, value, allowed string) {
	if len(c.faults) == maxFaults {
		c.more++
		return
	}
	c.faults = append(c.faults, Fault{Path: p.String(), Code: code, Value: shown(value), Allowed: allowed})
}

// clean reports whether nothing was found in or below the place p. A rule that
// compares several fields runs only where each of them is right.
func (c *finding) clean(p *at) bool {
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
		faults = append(faults, Fault{Code: AndMore, Value: strconv.Itoa(c.more)})
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

// shown shortens a wrong value to what can be repeated in a message.
func shown(text string) string {
	text = strings.ToValidUTF8(text, "\uFFFD")
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
