package papers

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"blockfield/engine/length"
)

// table is a table for a spreadsheet.
type table struct {
	name string   // of its file, without .csv
	head []string // none: a grid of numbers
	rows [][]cell
}

// cell is a field of a table: a number that we have written, or text that may be
// anybody's.
type cell struct {
	text   string
	number bool
}

func text(s string) cell { return cell{text: s} }

func count(n int) cell { return cell{strconv.Itoa(n), true} }

// decimal is a number with so many places behind a point.
func decimal(x float64, places int) cell {
	return cell{strconv.FormatFloat(x, 'f', places, 64), true}
}

// size is a length in the reader's unit, without it: 64 or 2.5197.
func (m *maker) size(l length.Length) cell {
	const perInch, places = 25.4, 4 // mm, exact
	mm := l.Millimetres()
	if m.Words.Units.Bare() == length.InInch {
		mm /= perInch
	}
	return trimmed(mm, places)
}

// trimmed is a number with at most so many places, as short as it can be.
func trimmed(x float64, places int) cell {
	number := strconv.FormatFloat(x, 'f', places, 64)
	return cell{strings.TrimRight(strings.TrimRight(number, "0"), "."), true}
}

// csv writes a table by RFC 4180: a head, commas, CR LF, UTF-8, a decimal point.
func (t table) csv() []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	line := func(cells []cell) {
		fields := make([]string, len(cells))
		for i, c := range cells {
			fields[i] = c.text
			if !c.number {
				fields[i] = guarded(c.text)
			}
		}
		_ = w.Write(fields) // a bytes.Buffer takes everything
	}
	if len(t.head) > 0 {
		head := make([]cell, len(t.head))
		for i, h := range t.head {
			head[i] = text(h)
		}
		line(head)
	}
	for _, row := range t.rows {
		line(row)
	}
	w.Flush()
	return b.Bytes()
}

// guarded keeps a spreadsheet from taking somebody's text for a formula: such a
// text gets an apostrophe before it. The signs are those that the OWASP page on
// CSV injection lists (from memory), with their wide forms.
func guarded(text string) string {
	if strings.ContainsAny(text[:min(1, len(text))], "=+-@\t\r\n") {
		return "'" + text
	}
	for _, wide := range []string{"＝", "＋", "－", "＠"} {
		if strings.HasPrefix(text, wide) {
			return "'" + text
		}
	}
	return text
}
