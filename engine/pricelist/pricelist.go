// Package pricelist is the goods of a price book as a table for a spreadsheet, out and
// in again: CSV by RFC 4180 with a head, a decimal point and one price a row.
//
// Columns are goods, name, section, length, unit, price and currency. A list that comes
// in may have them in any order, its rows in any order, and commas, semicolons or tabs
// between its cells. What it does not name stays in the book as it was. It is taken as a
// whole or not at all: everything that is wrong with it comes back with row, column and
// what would be right.
package pricelist

import (
	"bytes"
	"encoding/csv"
	"errors"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/design"
	"blockfield/engine/length"
)

// columns of the table, in the order in which it is written.
var columns = [...]string{"goods", "name", "section", "length", "unit", "price", "currency"}

// The kinds of goods, in the column goods.
const (
	squares = "squares"
	boards  = "boards"
	stick   = "stick"
	sheet   = "sheet"
	finish  = "finish"
	supply  = "supply"
)

func kinds() []string { return []string{squares, boards, stick, sheet, finish, supply} }

// units are what the price of each kind is for; that of supplies differs.
func unitOf(kind string) string {
	return map[string]string{squares: "m³", boards: "m³", stick: "piece", sheet: "sheet", finish: "litre"}[kind]
}

// one is a supply that each job needs.
type one struct{ name, unit, path string }

func supplies() []one {
	return []one{
		{"wood glue", "kg", "goods.gluePerKg"},
		{"cleat stock", "m³", "goods.cleatPerM3"},
		{"wood screw", "piece", "goods.woodScrew"},
		{"wall fixing", "piece", "goods.wallFixing"},
		{"brad", "piece", "goods.brad"},
		{"abrasives", "100 blocks", "goods.abrasivesPer100"},
		{"blades", "1000 blocks", "goods.bladesPer1000"},
		{"packing", "panel", "goods.packingPerPanel"},
	}
}

// Write returns the goods of a book as a table.
func Write(b design.Book) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	line := func(cells ...string) { _ = w.Write(cells) } // a bytes.Buffer takes everything
	line(columns[:]...)
	put := func(kind, name, section, long, unit string, price design.Amount) {
		line(kind, name, section, long, unit, price.String(), b.Currency)
	}
	for _, x := range b.Woods {
		put(squares, x.Wood, "", "", unitOf(squares), x.SquaresPerM3)
		put(boards, x.Wood, "", "", unitOf(boards), x.BoardsPerM3)
	}
	for _, x := range b.Sticks {
		put(stick, x.Wood, x.Size.String(), x.Length.String(), unitOf(stick), x.Price)
	}
	for _, x := range b.Sheets {
		put(sheet, x.Sheet, x.Thickness.String(), "", unitOf(sheet), x.Price)
	}
	for _, x := range b.Finishes {
		put(finish, x.Finish, "", "", unitOf(finish), x.PerLitre)
	}
	for _, x := range supplies() {
		text, _ := design.BookText(b, x.path, length.Metric)
		line(supply, x.name, "", "", x.unit, text, b.Currency)
	}
	w.Flush()
	return out.Bytes()
}

// Is reports whether a file is meant as such a table: its first line names goods and a
// price. A table in UTF-16, as some spreadsheets write it, is meant as one too.
func Is(data []byte) bool {
	table, separator, _ := opened(data)
	first, _, _ := strings.Cut(string(table[:min(len(table), 2000)]), "\n")
	first = strings.ReplaceAll(first, "\x00", "")
	cells := strings.FieldsFunc(strings.ToLower(first), func(r rune) bool { return r == separator || strings.ContainsRune(",;\t\" \r", r) })
	return slices.Contains(cells, "goods") || slices.Contains(cells, "price") && slices.Contains(cells, "currency")
}

// opened is a table without what may stand before its head: the mark of its encoding, and
// a line "sep=;" that tells a spreadsheet what stands between the cells, as which it is
// returned; 0 where there is none.
func opened(data []byte) (table []byte, separator rune, lines int) {
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	line, rest, found := bytes.Cut(data, []byte("\n"))
	text := strings.ToLower(strings.Trim(strings.TrimSpace(string(line)), `"`))
	if mark, told := strings.CutPrefix(text, "sep="); found && told && len(mark) == 1 {
		return rest, rune(mark[0]), 1
	}
	return data, 0, 0
}

// mostRows is far more than a book can hold.
const mostRows = 2000

// Read returns the book with the prices of a table. Each of them is the workshop's own
// then. The error is of type Faults, and the book is as it was.
func Read(b design.Book, data []byte) (design.Book, error) {
	r := reader{book: design.CloneBook(b), rows: map[string]int{}, halves: map[string]int{}}
	data, separator, above := opened(data)
	r.separator = separator
	if separator == 0 {
		r.separator = separatorOf(data)
	}
	if bytes.IndexByte(data, 0) >= 0 {
		r.fault("wide", "", nil)
		return b, r.faults
	}
	in := csv.NewReader(bytes.NewReader(data))
	in.Comma, in.FieldsPerRecord = r.separator, -1
	for n := 0; n <= mostRows; n++ {
		cells, err := in.Read()
		if err != nil {
			if wrong, ok := errors.AsType[*csv.ParseError](err); ok {
				r.line = wrong.StartLine + above
				r.fault("syntax", "", nil)
			} else if n == 0 {
				r.fault("no-head", "", nil)
			}
			break
		}
		r.line, _ = in.FieldPos(0)
		r.line += above
		if n == 0 {
			if r.head(cells); len(r.faults) > 0 {
				break
			}
			continue
		}
		r.row(cells)
	}
	r.finish()
	if len(r.faults) > 0 {
		return b, r.faults
	}
	return r.book, nil
}

// separatorOf is what stands between the cells of the first line.
func separatorOf(data []byte) rune {
	first, _, _ := bytes.Cut(data, []byte("\n"))
	best := ','
	for _, sep := range []rune{';', '\t'} {
		if bytes.Count(first, []byte(string(sep))) > bytes.Count(first, []byte(string(best))) {
			best = sep
		}
	}
	return best
}

// reader reads one table.
type reader struct {
	book      design.Book
	separator rune
	places    map[string]int // of the columns
	width     int            // of the head
	line      int
	rows      map[string]int // line in which goods were priced
	halves    map[string]int // woods that the book did not have: line
	faults    Faults
}

func (r *reader) head(cells []string) {
	r.places, r.width = map[string]int{}, len(cells)
	for i, cell := range cells {
		name := strings.ToLower(strings.TrimSpace(cell))
		if name == "" && i == len(cells)-1 {
			continue // a separator at the end of each line
		}
		if !slices.Contains(columns[:], name) {
			r.faultIn("unknown-column", i, cell, nil)
		} else if _, twice := r.places[name]; twice {
			r.faultIn("column-twice", i, cell, nil)
		}
		r.places[name] = i
	}
	for _, need := range []string{"goods", "name", "price", "currency"} {
		if _, ok := r.places[need]; !ok {
			r.fault("missing-column", need, nil)
		}
	}
}

// cell is the text in a column; empty where the table does not have it.
func (r *reader) cell(cells []string, column string) string {
	i, ok := r.places[column]
	if !ok || i >= len(cells) {
		return ""
	}
	return strings.TrimSpace(cells[i])
}

func (r *reader) row(cells []string) {
	if strings.TrimSpace(strings.Join(cells, "")) == "" {
		return
	}
	if len(cells) > r.width {
		r.fault("columns", "", args{"n": len(cells), "all": r.width})
		return
	}
	before := len(r.faults)
	kind := strings.ToLower(r.cell(cells, "goods"))
	if !slices.Contains(kinds(), kind) {
		r.wrong(cells, "goods", "one-of", args{"choices": kinds()})
		return
	}
	if code := r.cell(cells, "currency"); !strings.EqualFold(code, r.book.Currency) {
		r.wrong(cells, "currency", "currency", args{"currency": r.book.Currency})
	}
	price, ok := r.price(cells)
	path, unit := r.place(cells, kind)
	if path != "" && len(r.faults) == before && ok {
		if given := r.cell(cells, "unit"); given != "" && !strings.EqualFold(given, unit) {
			r.wrong(cells, "unit", "unit", args{"unit": unit})
			return
		}
		r.put(cells, path, price)
	}
}

// price reads the price of a row. In a table with semicolons, as spreadsheets write
// them where a comma stands before decimals, a point with three digits behind it may be
// a mark for thousands.
func (r *reader) price(cells []string) (string, bool) {
	text := r.cell(cells, "price")
	plain, err := length.Decimal(text)
	whole, frac, point := strings.Cut(text, ".")
	if two, ok := err.(*length.AmbiguousError); ok {
		r.wrong(cells, "price", "ambiguous", args{"one": two.Whole, "other": two.Decimal})
		return "", false
	}
	if err == nil && r.separator == ';' && point && len(frac) == 3 && !strings.Contains(text, ",") {
		r.wrong(cells, "price", "ambiguous", args{"one": whole + frac, "other": strings.TrimRight(strings.TrimRight(whole+"."+frac, "0"), ".")})
		return "", false
	}
	if err != nil {
		r.wrong(cells, "price", "amount", nil)
		return "", false
	}
	return plain, true
}

// place is the path of the price that a row gives, and what it is for; empty where the
// row does not say. What the book does not have yet is added.
func (r *reader) place(cells []string, kind string) (path, unit string) {
	name := r.cell(cells, "name")
	b := &r.book
	switch kind {
	case squares, boards:
		if !r.known(cells, name, design.Woods()) {
			return "", ""
		}
		field := map[string]string{squares: ".squaresPerM3", boards: ".boardsPerM3"}[kind]
		i := slices.IndexFunc(b.Woods, func(w design.WoodPrice) bool { return strings.EqualFold(w.Wood, name) })
		if i < 0 {
			i = len(b.Woods)
			b.Woods = append(b.Woods, design.WoodPrice{Wood: strings.ToLower(name)})
			r.halves[strings.ToLower(name)] = r.line
		}
		return at("woods", i) + field, unitOf(kind)
	case stick:
		if !r.known(cells, name, design.Woods()) {
			return "", ""
		}
		size, ok1 := r.size(cells, "section")
		long, ok2 := r.size(cells, "length")
		if !ok1 || !ok2 {
			return "", ""
		}
		i := slices.IndexFunc(b.Sticks, func(s design.StickPrice) bool {
			return strings.EqualFold(s.Wood, name) && s.Size.Same(size) && s.Length.Same(long)
		})
		if i < 0 {
			i = len(b.Sticks)
			b.Sticks = append(b.Sticks, design.StickPrice{Wood: strings.ToLower(name), Size: size, Length: long})
		}
		return at("sticks", i) + ".price", unitOf(kind)
	case sheet:
		if !r.known(cells, name, design.Sheets()) {
			return "", ""
		}
		thick, ok := r.size(cells, "section")
		if !ok {
			return "", ""
		}
		i := slices.IndexFunc(b.Sheets, func(s design.SheetPrice) bool {
			return strings.EqualFold(s.Sheet, name) && s.Thickness.Same(thick)
		})
		if i < 0 {
			i = len(b.Sheets)
			b.Sheets = append(b.Sheets, design.SheetPrice{Sheet: strings.ToLower(name), Thickness: thick})
		}
		return at("sheets", i) + ".price", unitOf(kind)
	case finish:
		if !r.known(cells, name, design.Finishes()) {
			return "", ""
		}
		i := slices.IndexFunc(b.Finishes, func(f design.FinishPrice) bool { return strings.EqualFold(f.Finish, name) })
		if i < 0 {
			i = len(b.Finishes)
			b.Finishes = append(b.Finishes, design.FinishPrice{Finish: strings.ToLower(name)})
		}
		return at("finishes", i) + ".perLitre", unitOf(kind)
	}
	var names []string
	for _, s := range supplies() {
		if strings.EqualFold(s.name, name) {
			return s.path, s.unit
		}
		names = append(names, s.name)
	}
	r.wrong(cells, "name", "one-of", args{"choices": names})
	return "", ""
}

func at(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }

// known reports whether a name is one of the catalogue.
func (r *reader) known(cells []string, name string, all []string) bool {
	if slices.ContainsFunc(all, func(one string) bool { return strings.EqualFold(one, name) }) {
		return true
	}
	r.wrong(cells, "name", "one-of", args{"choices": all})
	return false
}

func (r *reader) size(cells []string, column string) (length.Length, bool) {
	l, err := length.ParseExact(r.cell(cells, column))
	if err != nil {
		r.wrong(cells, column, "size", nil)
	}
	return l, err == nil
}

// put sets a price, once.
func (r *reader) put(cells []string, path, price string) {
	if first, twice := r.rows[path]; twice {
		r.wrong(cells, "name", "twice", args{"row": first})
		return
	}
	r.rows[path] = r.line
	amount, err := design.ParseAmount(price)
	row, _ := design.LookupBook(path)
	if units := float64(amount.Steps()) / float64(design.Units(1).Steps()); err != nil || units < row.Min || units > row.Max {
		r.wrong(cells, "price", "range", args{"allowed": row.Allowed()})
		return
	}
	*design.BookAmount(&r.book, path) = amount
	r.book = design.ConfirmBook(r.book, path)
}

// finish looks at the whole: a wood that was not in the book needs both of its prices,
// and lists have an end.
func (r *reader) finish() {
	for i, w := range r.book.Woods {
		line, fresh := r.halves[w.Wood]
		_, hasSquares := r.rows[at("woods", i)+".squaresPerM3"]
		_, hasBoards := r.rows[at("woods", i)+".boardsPerM3"]
		if fresh && len(r.faults) == 0 && (!hasSquares || !hasBoards) {
			r.line = line
			r.fault("half", "goods", args{"wood": w.Wood})
		}
	}
	if len(r.faults) > 0 {
		return
	}
	if err := design.ValidateBook(r.book); err != nil {
		r.line = 0
		r.fault("whole", "", args{"fault": err.Error()})
	}
}
