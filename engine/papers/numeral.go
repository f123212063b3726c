package papers

import (
	"slices"
	"strings"

	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/papers/sheet"
)

// numeral is a height as it stands in a box of a row card: whole millimetres, or
// inches with their fraction set small, one figure above the other.
type numeral struct{ whole, over, under string }

// numeral is a length as a numeral of its reader.
func (m *maker) numeral(l length.Length) numeral {
	text := m.Words.Number(l)
	whole, fraction, mixed := strings.Cut(text, " ")
	if !mixed && strings.Contains(text, "/") {
		whole, fraction = "", text
	}
	over, under, _ := strings.Cut(fraction, "/")
	return numeral{whole, over, under}
}

// fractionSize is the type of a fraction, in that of its whole.
const fractionSize = 0.56

func (n numeral) wholeWidth(size float64) float64 { return sheet.Width(sheet.Bold, size, n.whole) }

// width is how wide a numeral is in a size of type.
func (n numeral) width(size float64) float64 {
	if n.under == "" {
		return n.wholeWidth(size)
	}
	return n.wholeWidth(size) + 0.06*size + n.fractionWidth(size)
}

func (n numeral) fractionWidth(size float64) float64 {
	small := size * fractionSize
	return max(sheet.Width(sheet.Bold, small, n.over), sheet.Width(sheet.Bold, small, n.under))
}

// placed is a numeral with the middle of its foot.
type placed struct {
	numeral
	x, y float64
}

func (n placed) left(size float64) float64 { return n.x - n.width(size)/2 }

// fractionX is the middle of the fraction.
func (n placed) fractionX(size float64) float64 {
	return n.left(size) + n.width(size) - n.fractionWidth(size)/2
}

// Where the two figures of a fraction stand above the foot of the whole, in
// heights of its type.
const (
	overRise  = 0.36
	underDrop = 0.06
	fractionY = 0.30
)

// numerals writes numerals of one size: their wholes in one group, the figures of
// their fractions in another.
func numerals(p sheet.Pen, size float64, all []placed) {
	p.Many(sheet.Type{Size: size, Face: sheet.Bold}, "heights", func(put func(x, y float64, text string)) {
		for _, n := range all {
			if n.whole != "" {
				put(n.left(size), n.y, n.whole)
			}
		}
	})
	if !slices.ContainsFunc(all, func(n placed) bool { return n.under != "" }) {
		return
	}
	small := sheet.Type{Size: size * fractionSize, Face: sheet.Bold, Align: sheet.Middle}
	p.Many(small, "fractions", func(put func(x, y float64, text string)) {
		for _, n := range all {
			if n.under != "" {
				put(n.fractionX(size), n.y-overRise*size, n.over)
				put(n.fractionX(size), n.y+underDrop*size, n.under)
			}
		}
	})
	for _, n := range all {
		if n.under != "" {
			x, half := n.fractionX(size), n.fractionWidth(size)/2
			p.Line(x-half, n.y-fractionY*size, x+half, n.y-fractionY*size, draw.Visible)
		}
	}
}
