package sheet

import (
	_ "embed"
	"strconv"
	"strings"
	"sync"
	"unicode"
)

// Face is one of the two faces of type that papers are set in: Go Regular and
// Go Bold, which travel with the papers. They are free (BSD) and cover Latin,
// Greek and Cyrillic.
type Face uint8

// The faces.
const (
	Regular Face = iota
	Bold
)

// Family is the name of the type in style sheets.
const Family = "Blockfield Go"

// Proportions of both faces, in heights of the type. The test holds them
// against the font.
const (
	capHeight = 0.723 // of a capital letter and of a figure
	descent   = 0.211 // below the line
	unitsEm   = 2048  // of the widths
)

// FigureSize is the size of the type whose figures are so high.
func FigureSize(height float64) float64 { return height / capHeight }

// missingWidth is what a character may take that the font does not have and
// that a browser takes from another one: such text is squeezed into the width
// that was reckoned with, so no wide sign leaves its place.
const missingWidth = unitsEm

// widths.txt holds the advance widths of both faces: one character a line, its
// number in hexadecimal, then Regular and Bold in 2048ths of the size. The test
// writes it anew with -update.
//
//go:embed widths.txt
var widthsText string

// advances are the widths of a character in the faces.
type advances [2]uint16

var widths = sync.OnceValue(func() map[rune]advances {
	all := make(map[rune]advances, strings.Count(widthsText, "\n"))
	for line := range strings.Lines(widthsText) {
		f := strings.Fields(line)
		all[rune(number(f[0], 16))] = advances{uint16(number(f[1], 10)), uint16(number(f[2], 10))}
	}
	return all
})

func number(text string, base int) uint64 {
	n, err := strconv.ParseUint(text, base, 32)
	if err != nil {
		panic("sheet: internal error: widths.txt: " + err.Error())
	}
	return n
}

// Width returns how wide a line of text is, in the unit of size.
func Width(face Face, size float64, text string) float64 {
	return float64(unitWidth(face, text)) * size / unitsEm
}

func unitWidth(face Face, text string) int {
	table, sum := widths(), 0
	for _, r := range text {
		sum += runeWidth(table, face, r)
	}
	return sum
}

func runeWidth(table map[rune]advances, face Face, r rune) int {
	if a, ok := table[r]; ok {
		return int(a[face])
	}
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0 // stands on or between others
	}
	return missingWidth
}

// Covered reports whether the font has every character of a text.
func Covered(text string) bool {
	table := widths()
	for _, r := range text {
		if _, ok := table[r]; !ok {
			return false
		}
	}
	return true
}

// Plain makes one line of what somebody typed: spaces of any kind become one
// that the font has, and what does not print is left out. A space between the
// digits of a number does not break.
func Plain(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch {
		case r == '\u00a0', r == '\u202f', r == '\u2007', r == '\u2009':
			b.WriteRune('\u00a0')
		case unicode.IsSpace(r):
			b.WriteByte(' ')
		case unicode.IsPrint(r) || unicode.In(r, unicode.Mn, unicode.Me):
			b.WriteRune(r)
		}
	}
	return strings.Trim(strings.Join(strings.FieldsFunc(b.String(), func(r rune) bool { return r == ' ' }), " "), " ")
}
