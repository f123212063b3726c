package draw

import (
	"math"
	"unicode/utf8"
)

// Dimension is a dimension line between two places with its text.
type Dimension struct {
	From, To float64 // the places, in either order
	At       float64 // where the line lies, across it
	// Object is where the measured thing ends, across the line: extension
	// lines run from there. Equal to At there are none.
	Object float64
	Text   string
	Size   float64 // height of the type
	Marks  float64 // height of the type that strokes and gaps go by; 0: Size
}

// marks is what strokes and gaps go by.
func (d Dimension) marks() float64 {
	if d.Marks > 0 {
		return d.Marks
	}
	return d.Size
}

// Proportions of a dimension line, in heights of the type that its marks go by. Common practice.
const (
	dimTick      = 0.4  // half the slanting stroke at an end, each way
	dimGap       = 0.4  // between object and extension line
	dimOvershoot = 0.5  // of extension lines beyond the dimension line
	dimLift      = 0.35 // of the text above its line
	dimStroke    = 0.08
	dimMargin    = 0.6 // between text and ends
	// dimDigit is the width of a digit. Digits of common sans-serif faces
	// are 0.5 to 0.6 wide.
	dimDigit = 0.6
)

// DimensionH draws a level dimension line, its text above it.
func (c *Canvas) DimensionH(d Dimension) {
	from, to := min(d.From, d.To), max(d.From, d.To)
	x, y, anchor := (from+to)/2, d.At-dimLift*d.marks(), Middle()
	if d.Outside() {
		x, y, anchor = to+dimMargin*d.marks(), d.At+dimLift*d.Size, Attr{"text-anchor", "start"}
	}
	c.dimension(d, d.path(func(along, across float64) (float64, float64) { return along, across }), func() {
		c.Text(x, y, d.Text, anchor, Size(d.Size), Fill("currentColor"))
	})
}

// DimensionV draws an upright dimension line, its text at the left of it and
// to be read from the right of the sheet.
func (c *Canvas) DimensionV(d Dimension) {
	from, to := min(d.From, d.To), max(d.From, d.To)
	x, y, anchor := d.At-dimLift*d.marks(), (from+to)/2, Middle()
	if d.Outside() {
		x, y, anchor = d.At+dimLift*d.Size, from-dimMargin*d.marks(), Attr{"text-anchor", "start"}
	}
	c.dimension(d, d.path(func(along, across float64) (float64, float64) { return across, along }), func() {
		c.Text(x, y, d.Text, anchor, Turn(-90, x, y), Size(d.Size), Fill("currentColor"))
	})
}

func (c *Canvas) dimension(d Dimension, path string, text func()) {
	c.Group("dimension", func() {
		c.Path(path, Fill("none"), Stroke("currentColor"), StrokeWidth(max(dimStroke*d.marks(), minStroke)))
		text()
	})
}

// minStroke is the thinnest line that does not vanish when rounded.
const minStroke = 0.01

// Outside reports whether the text stands beside the line, beyond its larger end
// (beyond its upper one where it is upright), for want of room between its ends.
func (d Dimension) Outside() bool {
	text := float64(utf8.RuneCountInString(d.Text)) * dimDigit * d.Size
	return math.Abs(d.To-d.From) < text+2*dimMargin*d.marks()
}

// path returns the line, its ticks and its extension lines. place turns a
// position along and across the line into x and y.
func (d Dimension) path(place func(along, across float64) (x, y float64)) string {
	line := func(along1, across1, along2, across2 float64) string {
		x1, y1 := place(along1, across1)
		x2, y2 := place(along2, across2)
		return Polyline(x1, y1, x2, y2)
	}
	out := line(d.From, d.At, d.To, d.At)
	tick := dimTick * d.marks()
	for _, end := range []float64{d.From, d.To} {
		// Slants up to the right however the line lies.
		out += line(end-tick, d.At+tick, end+tick, d.At-tick)
		if d.Object != d.At {
			side := math.Copysign(d.marks(), d.At-d.Object)
			out += line(end, d.Object+dimGap*side, end, d.At+dimOvershoot*side)
		}
	}
	return out
}
