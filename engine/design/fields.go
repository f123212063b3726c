package design

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Kind is what a field holds.
type Kind string

// The kinds of fields.
const (
	KindLength   Kind = "length"   // a length with its unit; limits in millimetres
	KindNumber   Kind = "number"   // a plain number in Field.Unit
	KindInteger  Kind = "integer"  // a whole number
	KindText     Kind = "text"     // free words; Choices, if any, are suggestions
	KindChoice   Kind = "choice"   // one of Choices
	KindYesNo    Kind = "yes-no"   // true or false
	KindAmount   Kind = "amount"   // money in the book's currency; limits in currency units
	KindDate     Kind = "date"     // a day, 2026-03-31
	KindCode     Kind = "code"     // a revision or book code, six characters
	KindCurrency Kind = "currency" // three capital letters
	KindParts    Kind = "parts"    // a list of parts, each with fields of its own
)

// Field is one row of the table: one value, one list of values, or one list of
// parts of a document.
type Field struct {
	Path string // "design.walls[].groups[].block.size"; [] stands for any entry
	Kind Kind
	Doc  string // one plain sentence

	Min, Max float64   // limits of numbers; lengths in mm, amounts in currency units
	Zero     words.Key // what 0 means where it lies outside of Min to Max; empty: nothing, it is refused
	Unit     string    // "%", "°C", "kN", …; empty for lengths and counts
	Step     float64   // a handy step for a form, in the unit of Min and Max; 0: none
	Choices  []string  // what may be chosen, or what is suggested for a text
	MaxChars int       // longest text, in characters
	Lines    bool      // the text may have several lines
	Optional bool      // the text or date may be empty

	IsList      bool // a list of values or of parts
	Least, Most int  // how many entries a list may have

	Default   string // the usual entry of a sparse choice, which a document holds as nothing
	Required  bool   // a file must hold it
	Fixed     bool   // cannot be edited by Set
	Sparse    bool   // left out of a file where it is empty
	Assumable bool   // comes from the real world: assumed until somebody types it
	Retired   bool   // read from earlier files and written no more: it is part of the record of a job now
}

// Fields returns the table of the design document, in the order of the file.
func Fields() []Field { return slices.Clone(designTable()) }

// BookFields returns the table of the price book, in the order of the file.
func BookFields() []Field { return slices.Clone(bookTable()) }

// The tables are built once and never change.
var (
	designTable = sync.OnceValue(designRows)
	bookTable   = sync.OnceValue(bookRows)
)

// Lookup returns the row for a path of a design, such as
// "walls[0].groups[0].heights[2]", "view.lamp.azimuth" or, as in the table,
// "design.walls[].kind".
func Lookup(path string) (Field, bool) { return lookupIn(designTable(), fullPath(path)) }

// LabelKey is the key of the words that the page has for a field, whichever
// entry of a list it belongs to.
func LabelKey(path string) string {
	return "label/" + strings.ReplaceAll(shortPath(patternOf(fullPath(path))), "[]", "")
}

// unlessUsual is a choice as a document holds it, which has no word for the usual one.
func (f Field) unlessUsual(choice string) string {
	if choice == f.Default {
		return ""
	}
	return choice
}

// holds reports whether v, in the unit of Min and Max, is within the limits.
func (f Field) holds(v float64) bool {
	return v >= f.Min && v <= f.Max || f.Zero != "" && v == 0
}

// millimetres turns a limit of the table into a length; limits are whole
// micrometres, so the result is exact.
func millimetres(mm float64) length.Length {
	return length.Micrometres(int64(math.Round(mm * 1000)))
}

// number writes a float as short as possible: in plain digits as far as anybody
// reads them.
func number(v float64) string {
	const manyDigits = 1e15
	if math.Abs(v) >= manyDigits {
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// The constructors below keep a row of the table on one or two lines.

func lengthRow(path string, minMM, maxMM, stepMM float64, doc string) Field {
	return Field{Path: path, Kind: KindLength, Min: minMM, Max: maxMM, Step: stepMM, Doc: doc}
}

func numberRow(path string, low, high, step float64, unit, doc string) Field {
	return Field{Path: path, Kind: KindNumber, Min: low, Max: high, Step: step, Unit: unit, Doc: doc}
}

func integerRow(path string, low, high float64, doc string) Field {
	return Field{Path: path, Kind: KindInteger, Min: low, Max: high, Step: 1, Doc: doc}
}

func amountRow(path string, low, high float64, doc string) Field {
	return Field{Path: path, Kind: KindAmount, Min: low, Max: high, Doc: doc}
}

func textRow(path string, maxChars int, doc string) Field {
	return Field{Path: path, Kind: KindText, MaxChars: maxChars, Optional: true, Doc: doc}
}

func choiceRow(path, doc string, choices ...string) Field {
	return Field{Path: path, Kind: KindChoice, Choices: choices, Doc: doc}
}

func yesNoRow(path, doc string) Field { return Field{Path: path, Kind: KindYesNo, Doc: doc} }

func kindRow(path string, kind Kind, doc string) Field {
	return Field{Path: path, Kind: kind, Doc: doc}
}

func partsRow(path string, least, most int, doc string) Field {
	return Field{Path: path, Kind: KindParts, Doc: doc}.list(least, most)
}

func (f Field) list(least, most int) Field {
	f.IsList, f.Least, f.Most = true, least, most
	return f
}

func (f Field) assumed() Field               { f.Assumable = true; return f }
func (f Field) fixed() Field                 { f.Fixed = true; return f }
func (f Field) retired() Field               { f.Retired, f.Fixed = true, true; return f }
func (f Field) required() Field              { f.Required = true; return f }
func (f Field) filled() Field                { f.Optional = false; return f }
func (f Field) sparse() Field                { f.Sparse = true; return f }
func (f Field) usually(choice string) Field  { f.Sparse, f.Default = true, choice; return f }
func (f Field) optional() Field              { f.Optional = true; return f }
func (f Field) lines() Field                 { f.Lines = true; return f }
func (f Field) zero(meaning words.Key) Field { f.Zero = "zero-means/" + meaning; return f }
func (f Field) among(c ...string) Field      { f.Choices = c; return f }
