package words

import (
	"strings"
	"sync"

	"blockfield/engine/length"
)

// Fixed is a number with so many decimals, and its unit: "8.0 %", "0.25 mm".
type Fixed struct {
	Value  float64
	Places int
	Unit   string
}

func (f Fixed) text() string {
	number := decimals(f.Value, f.Places)
	if f.Unit == "" {
		return number
	}
	return number + " " + f.Unit
}

// Typed is what a reader has typed as a number and Read has made of it; it is said as it
// was typed.
type Typed string

// Exact is a length as it is, in its own notation whatever the reader's units.
type Exact length.Length

// Number writes a length without its unit, and Unit is that unit.
func (r Reader) Number(l length.Length) string { return r.Written(r.Units.Number(l)) }

// Unit is the unit that belongs to Number, in the words of the reader.
func (r Reader) Unit() string {
	if r.Units.Bare() == length.InInch {
		return r.Language.inch
	}
	return r.Units.Word()
}

// Written writes numbers, given as programs write them, the way the reader does:
// "26.5, 42 mm" is "26,5; 42 mm" to a German. Read is the way back.
func (r Reader) Written(numbers string) string {
	if r.Language.mark != "," {
		return numbers
	}
	return strings.TrimSuffix(commas.Replace(strings.ReplaceAll(numbers+" ", " in ", " "+r.Language.inch+" ")), " ")
}

// Given is a text of a document as the reader says it: those that documents come with
// are said in every language, and what a person wrote stays as it is.
func (r Reader) Given(text string) string {
	key, ours := givenKeys()[text]
	if !ours || r.Language.Tag == "en" {
		return text
	}
	return r.Say(key)
}

// givenKeys are the keys of the texts that documents come with, by the text.
var givenKeys = sync.OnceValue(func() map[string]string {
	all := map[string]string{}
	for key, text := range englishGiven() {
		all[text] = key
	}
	return all
})

// day writes a text that is a day of the calendar, "2026-03-31", as the reader's
// language does; every other text stays as it is.
func (r Reader) day(text string) string {
	const year, month = 4, 7
	if r.Language.mark != "," || len(text) != len("2026-03-31") || text[year] != '-' || text[month] != '-' {
		return text
	}
	y, m, d := text[:year], text[year+1:month], text[month+1:]
	if strings.Trim(y+m+d, "0123456789") != "" {
		return text
	}
	return d + "." + m + "." + y
}

// List writes texts one after another, apart from the decimals within them.
func (r Reader) List(texts []string) string {
	if r.Language.mark == "," {
		return strings.Join(texts, "; ")
	}
	return strings.Join(texts, ", ")
}

// Read returns numbers that the reader has typed as design.Set takes them: with a
// decimal point, and with commas between groups of three. A comma with a space behind
// it stands between the entries of a list, and so do all commas of a list that has no
// other mark between them.
func (r Reader) Read(typed string, list bool) string {
	if r.Language.mark != "," || list && !strings.ContainsAny(typed, ";\n") && !strings.Contains(typed, ", ") {
		return typed
	}
	return points.Replace(typed)
}

// To and from decimal commas.
var (
	commas = strings.NewReplacer(", ", "; ", ".", ",")
	points = strings.NewReplacer(", ", ", ", ".", ",", ",", ".")
)
