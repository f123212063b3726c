package draw

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Attr is one attribute of an element. They come from the functions below
// only, so that none can be a style or a script.
type Attr struct{ name, value string }

// Class names what an element is, for the style sheet.
func Class(class string) Attr { return Attr{"class", class} }

// Opacity is how much of a fill covers what lies below it, 0 to 1.
func Opacity(share float64) Attr { return Attr{"fill-opacity", Number(share)} }

// Fill is a colour, "none", or what Hatch returns.
func Fill(paint string) Attr { return Attr{"fill", paint} }

// Stroke is the colour of a line.
func Stroke(paint string) Attr { return Attr{"stroke", paint} }

// StrokeWidth is how thick a line is.
func StrokeWidth(width float64) Attr { return num("stroke-width", width) }

// Dash breaks a line into strokes and gaps.
func Dash(lengths ...float64) Attr { return Attr{"stroke-dasharray", list(lengths)} }

// Size is the height of the type.
func Size(height float64) Attr { return num("font-size", height) }

// Bold makes type heavy.
func Bold() Attr { return Attr{"font-weight", "bold"} }

// Squeezed fits text into a width, whichever font a reader has.
func Squeezed(width float64) []Attr {
	return []Attr{num("textLength", width), {"lengthAdjust", "spacingAndGlyphs"}}
}

// Middle centres text on its x.
func Middle() Attr { return Attr{"text-anchor", "middle"} }

// End makes text end at its x.
func End() Attr { return Attr{"text-anchor", "end"} }

// Move shifts a group or an element.
func Move(x, y float64) Attr {
	return Attr{"transform", "translate(" + list([]float64{x, y}) + ")"}
}

// Turn rotates an element clockwise by an angle in degrees round a point.
func Turn(angleDeg, x, y float64) Attr {
	return Attr{"transform", "rotate(" + list([]float64{angleDeg, x, y}) + ")"}
}

// Narrow makes a group as wide as a share of itself, from the left edge of the drawing.
func Narrow(share float64) Attr {
	return Attr{"transform", "scale(" + list([]float64{share, 1}) + ")"}
}

func num(name string, v float64) Attr { return Attr{name, Number(v)} }

func (a Attr) write(b *strings.Builder) {
	b.WriteByte(' ')
	b.WriteString(a.name)
	b.WriteString(`="`)
	b.WriteString(escape(a.value))
	b.WriteByte('"')
}

func list(numbers []float64) string {
	texts := make([]string, len(numbers))
	for i, n := range numbers {
		texts[i] = Number(n)
	}
	return strings.Join(texts, " ")
}

// Number writes a number rounded to a hundredth, as short as it can be: "36",
// "36.2", "-0.05". It panics on what is no number of a drawing.
func Number(v float64) string {
	return string(appendHundredths(nil, hundredths(v)))
}

// largest is what a drawing may hold, one kilometre in millimetres and to
// spare: beyond it a fault is certain.
const largest = 1e9

func hundredths(v float64) int64 {
	if !(math.Abs(v) <= largest) { // also true for NaN
		panic(fmt.Sprintf("draw: internal error: number %v", v))
	}
	return int64(math.Round(v * 100))
}

func appendHundredths(b []byte, n int64) []byte {
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/100, 10)
	switch rest := n % 100; {
	case rest == 0:
		return b
	case rest%10 == 0:
		return append(b, '.', byte('0'+rest/10))
	default:
		return append(b, '.', byte('0'+rest/10), byte('0'+rest%10))
	}
}
