package pricelist

import (
	"slices"
	"strings"

	"blockfield/engine/words"
)

// Fault is one thing that is wrong with a table: the key of its sentence is "list/" and
// its code.
type Fault struct {
	Row    int    // line of the file, from 1; 0: the whole of it
	Column string // its head; empty: the whole row
	Letter string // of the column in a spreadsheet; empty where it is not there
	Code   string
	Args   words.Args
}

// Say says what is wrong, with its place.
func (f Fault) Say(r words.Reader) string {
	said := r.Say("list/"+f.Code, f.Args)
	switch {
	case f.Row == 0:
		return said
	case f.Letter == "":
		return r.Say("list/at-row", words.Args{"row": f.Row, "said": said})
	}
	return r.Say("list/at-cell", words.Args{"row": f.Row, "column": f.Column, "letter": f.Letter, "said": said})
}

// Faults is everything that is wrong with a table, in its order.
type Faults []Fault

// Error lists the faults, one a line.
func (f Faults) Error() string {
	r := words.Reader{Language: words.English()}
	lines := make([]string, len(f))
	for i, one := range f {
		lines[i] = one.Say(r)
	}
	return strings.Join(lines, "\n")
}

type args = words.Args

// mostFaults are told; the rest follows from them more often than not.
const mostFaults = 20

func (r *reader) add(f Fault) {
	if len(r.faults) < mostFaults {
		f.Row = r.line
		r.faults = append(r.faults, f)
	}
}

// fault reports something about the row, or about a column that is not there.
func (r *reader) fault(code, column string, a args) {
	all := args{"column": column, "columns": columns[:]}
	for k, v := range a {
		all[k] = v
	}
	r.add(Fault{Column: column, Code: code, Args: all})
}

// faultIn reports something about the cell in a column, by its number.
func (r *reader) faultIn(code string, column int, found string, a args) {
	all := args{"found": shown(found), "columns": columns[:]}
	for k, v := range a {
		all[k] = v
	}
	head := shown(found)
	for name, i := range r.places {
		if i == column {
			head = name
		}
	}
	r.add(Fault{Column: head, Letter: letter(column), Code: code, Args: all})
}

// wrong reports something about the cell in a column, by its head.
func (r *reader) wrong(cells []string, column, code string, a args) {
	i, ok := r.places[column]
	if !ok {
		r.fault("missing-column", column, nil)
		return
	}
	found := r.cell(cells, column)
	if found == "" {
		found = "–"
	}
	r.faultIn(code, i, found, a)
}

// letter names a column as spreadsheets do.
func letter(column int) string {
	name := ""
	for n := column + 1; n > 0; n = (n - 1) / 26 {
		name += string(rune('A' + (n-1)%26))
	}
	runes := []rune(name)
	slices.Reverse(runes)
	return string(runes)
}

// shown is a cell as it can be repeated.
func shown(text string) string {
	const most = 40
	runes := []rune(words.Printable(strings.ToValidUTF8(text, "\uFFFD")))
	if len(runes) > most {
		return string(runes[:most]) + "…"
	}
	return string(runes)
}
