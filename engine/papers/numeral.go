package papers

import (
	"slices"
	"strings"

	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/papers/sheet"
)

// numeral is a height as it stands in a box of a row card: whole millimetres, or
// inches with their fraction beside them, one figure above the other.
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

// stacked is the type of a fraction in that of its whole, where every figure is read at
// arm's length; beside figures that are much larger it is smaller.
const (
	stacked = 1
	beside  = 0.58
)

// figures are how numerals are set: the size of their type, that of a fraction in it, and
// the share of their usual width that they have.
type figures struct{ size, fraction, narrow float64 }

// fractionGap is between a figure of a fraction and its bar, in heights of the figure, so
// that no bar runs into one.
const fractionGap = 0.16

func (f figures) small() float64 { return f.size * f.fraction }

// high is how high a numeral is.
func (f figures) high(n numeral) float64 {
	if n.under == "" {
		return f.size / figuresPerMM
	}
	return max(f.size, f.small()*(2+2*fractionGap)) / figuresPerMM
}

// figuresPerMM is how much larger type is than its figures.
var figuresPerMM = sheet.FigureSize(1)

// width is how wide a numeral is.
func (f figures) width(n numeral) float64 {
	whole := f.narrow * sheet.Width(sheet.Bold, f.size, n.whole)
	switch {
	case n.under == "":
		return whole
	case n.whole == "":
		return f.fractionWidth(n)
	}
	const apart = 0.1
	return whole + f.narrow*apart*f.size + f.fractionWidth(n)
}

func (f figures) fractionWidth(n numeral) float64 {
	return f.narrow * max(sheet.Width(sheet.Bold, f.small(), n.over), sheet.Width(sheet.Bold, f.small(), n.under))
}

// placed is a numeral with its middle.
type placed struct {
	numeral
	x, y float64
}

// write writes numerals: their wholes in one group, the figures of their fractions in
// another, each clear of the bar between them.
func (f figures) write(p sheet.Pen, all []placed) {
	left := func(n placed) float64 { return n.x - f.width(n.numeral)/2 }
	fractionX := func(n placed) float64 { return left(n) + f.width(n.numeral) - f.fractionWidth(n.numeral)/2 }
	p.Many(sheet.Type{Size: f.size, Face: sheet.Bold}, f.narrow, "heights", func(put func(x, y float64, text string)) {
		for _, n := range all {
			if n.whole != "" {
				put(left(n), n.y+f.size/figuresPerMM/2, n.whole)
			}
		}
	})
	if !slices.ContainsFunc(all, func(n placed) bool { return n.under != "" }) {
		return
	}
	figure := f.small() / figuresPerMM
	small := sheet.Type{Size: f.small(), Face: sheet.Bold, Align: sheet.Middle}
	p.Many(small, f.narrow, "fractions", func(put func(x, y float64, text string)) {
		for _, n := range all {
			if n.under != "" {
				put(fractionX(n), n.y-fractionGap*figure, n.over)
				put(fractionX(n), n.y+(1+fractionGap)*figure, n.under)
			}
		}
	})
	p.Group("bars", func() {
		for _, n := range all {
			if n.under != "" {
				x, half := fractionX(n), f.fractionWidth(n.numeral)/2
				p.Line(x-half, n.y, x+half, n.y, draw.Visible)
			}
		}
	})
}
