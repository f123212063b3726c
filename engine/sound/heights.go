package sound

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/words"
)

// mostHeightMM is the tallest block that a grid of heights may name; beyond it
// a unit is wrong. Invented.
const mostHeightMM = 2000

// mostFaults is how many faults of a grid are listed.
const mostFaults = 20

// GridFault is one thing that is wrong with a grid of heights.
type GridFault struct {
	Line, Column int    // from 1; Column counts the numbers of a line, 0 is the whole line
	Code         string // key in package words
	Args         words.Args
}

// Error says what is wrong on one line: "line 3, column 5: "x" is not a height in
// mm (allowed 0 to 2000)".
func (f GridFault) Error() string {
	args := words.Args{"line": f.Line, "column": f.Column}
	for name, value := range f.Args {
		args[name] = value
	}
	return words.Reader{Language: words.English()}.Say(f.Code, args)
}

// GridFaults is everything that is wrong with a grid of heights.
type GridFaults []GridFault

// Error lists the faults, one a line.
func (f GridFaults) Error() string {
	lines := make([]string, len(f))
	for i, fault := range f {
		lines[i] = fault.Error()
	}
	return strings.Join(lines, "\n")
}

// ParseHeights reads a grid of heights: one row a line, the top row first, bare
// numbers in mm with commas between them. Empty lines at the end do not count.
// The error is GridFaults.
func ParseHeights(text string) (Surface, error) {
	text = strings.TrimPrefix(text, "\ufeff") // some programs mark their text files so
	lines := strings.Split(strings.TrimRight(text, "\r\n\t "), "\n")
	r := gridReader{}
	for i, line := range lines {
		if i == mostSide {
			r.fault(i+1, 0, "grid/too-many-rows", words.Args{"most": mostSide})
			break
		}
		r.row(i+1, strings.TrimRight(line, "\r"))
	}
	if len(r.faults) == 0 && len(r.heights) > mostCells {
		r.fault(len(lines), 0, "grid/too-many-cells", words.Args{"n": len(r.heights), "most": mostCells})
	}
	if len(r.faults) > 0 {
		return Surface{}, r.faults
	}
	if i, ok := r.oneHeightTooMany(); ok {
		r.fault(i/r.columns+1, i%r.columns+1, "grid/too-many-heights", words.Args{"most": mostHeights})
		return Surface{}, r.faults
	}
	return surfaceOf(r.heights, r.columns), nil
}

// gridReader collects heights and faults.
type gridReader struct {
	columns int // of the first line
	heights []float64
	faults  GridFaults
}

func (r *gridReader) fault(line, column int, code string, args words.Args) {
	if len(r.faults) < mostFaults {
		r.faults = append(r.faults, GridFault{line, column, code, args})
	}
}

// oneHeightTooMany returns the first cell with a height beyond as many different
// ones as there may be.
func (r *gridReader) oneHeightTooMany() (cell int, found bool) {
	seen := map[float64]bool{}
	for i, h := range r.heights {
		if seen[h] = true; len(seen) > mostHeights {
			return i, true
		}
	}
	return 0, false
}

func (r *gridReader) row(line int, text string) {
	cells := strings.Split(text, ",")
	if strings.TrimSpace(text) == "" {
		r.fault(line, 0, "grid/empty-line", nil)
		return
	}
	switch {
	case line == 1 && len(cells) > mostSide:
		r.fault(line, mostSide+1, "grid/too-many-columns", words.Args{"n": len(cells), "most": mostSide})
		r.columns = len(cells)
		return
	case line == 1:
		r.columns = len(cells)
	case len(cells) != r.columns:
		at := min(len(cells), r.columns) + 1
		r.fault(line, at, "grid/ragged", words.Args{"n": len(cells), "first": r.columns})
		return
	}
	for i, cell := range cells {
		cell = strings.TrimSpace(cell)
		h, err := strconv.ParseFloat(cell, 64)
		switch {
		case cell == "":
			r.fault(line, i+1, "grid/nothing", words.Args{"most": mostHeightMM})
		case err != nil || math.IsNaN(h) || strings.ContainsAny(cell, "xX_"):
			r.fault(line, i+1, "grid/not-a-height", words.Args{"value": shown(cell), "most": mostHeightMM})
		case h < 0 || h > mostHeightMM:
			r.fault(line, i+1, "grid/out-of-range", words.Args{"value": shown(cell), "most": mostHeightMM})
		}
		r.heights = append(r.heights, h/1000)
	}
}

// shown is a text as it may be repeated to its writer: short, and without
// anything that could steer a terminal.
func shown(text string) string {
	const most = 40
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "…"
	}
	return words.Printable(text)
}

// surfaceOf makes a surface of heights in metres, each of which is a level of
// its own.
func surfaceOf(heights []float64, columns int) Surface {
	s := Surface{Columns: columns, Rows: len(heights) / columns}
	s.HeightsM = slices.Clone(heights)
	slices.Sort(s.HeightsM)
	s.HeightsM = slices.Compact(s.HeightsM)
	for _, h := range heights {
		level, _ := slices.BinarySearch(s.HeightsM, h)
		s.Levels = append(s.Levels, uint16(level))
	}
	return s
}
