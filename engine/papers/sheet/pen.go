package sheet

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"blockfield/engine/draw"
)

// Pen draws within an area of a sheet, whose top left corner is its origin.
// Pens are values: In makes one for a smaller area.
type Pen struct {
	canvas        *draw.Canvas
	out           *[]string
	x, y          float64
	Width, Height float64
}

// hair is how far something may reach beyond its area: half of a heavy line.
const hair = 0.51

// In returns a pen for a part of the area.
func (p Pen) In(x, y, width, height float64) Pen {
	p.within("area", x, y, width, height)
	p.x, p.y, p.Width, p.Height = p.x+x, p.y+y, width, height
	return p
}

// within tells what reaches beyond the area.
func (p Pen) within(what string, x, y, width, height float64) {
	if x < -hair || y < -hair || x+width > p.Width+hair || y+height > p.Height+hair || !(width >= 0 && height >= 0) {
		*p.out = append(*p.out, fmt.Sprintf("%s: %.1f × %.1f mm at %.1f, %.1f in an area of %.1f × %.1f",
			what, width, height, x, y, p.Width, p.Height))
	}
}

// Align is where text stands about its x.
type Align uint8

// The ways to align.
const (
	Left Align = iota
	Middle
	Right
)

// Type is how text is set.
type Type struct {
	Size  float64 // 0: that of body text
	Face  Face
	Align Align
	White bool // on black
	Grey  bool // beside figures that count more
	Class string
}

// BodySize is the size of the type of plain text, 12 point: to be read from a
// bench. SmallSize is for what is read in the hand.
const (
	BodySize  = 4.2
	SmallSize = 3.2
)

func (t Type) size() float64 {
	if t.Size == 0 {
		return BodySize
	}
	return t.Size
}

// leading is from one line to the next, in heights of the type.
const leading = 1.28

// Leading is from one line of a size to the next.
func Leading(size float64) float64 { return leading * size }

// Text writes one line with its baseline at y.
func (p Pen) Text(x, y float64, t Type, text string) {
	text = Plain(text)
	if text == "" {
		return
	}
	width := Width(t.Face, t.size(), text)
	left := x
	switch t.Align {
	case Middle:
		left = x - width/2
	case Right:
		left = x - width
	}
	p.within(fmt.Sprintf("%q", text), left, y-capHeight*t.size(), width, capHeight*t.size())
	p.canvas.Text(p.x+x, p.y+y, text, t.attrs(width, text)...)
}

// TextUp writes one line that reads from the foot up, its baseline at x and its beginning
// at y.
func (p Pen) TextUp(x, y float64, t Type, text string) {
	text = Plain(text)
	if text == "" {
		return
	}
	width := Width(t.Face, t.size(), text)
	p.within(fmt.Sprintf("%q", text), x-capHeight*t.size(), y-width, capHeight*t.size(), width)
	p.canvas.Text(p.x+x, p.y+y, text, append(t.attrs(width, text), draw.Turn(-90, p.x+x, p.y+y))...)
}

func (t Type) attrs(width float64, text string) []draw.Attr {
	attrs := []draw.Attr{draw.Size(t.size())}
	if t.Class != "" {
		attrs = append(attrs, draw.Class(t.Class))
	}
	if t.Face == Bold {
		attrs = append(attrs, draw.Bold())
	}
	switch t.Align {
	case Middle:
		attrs = append(attrs, draw.Middle())
	case Right:
		attrs = append(attrs, draw.End())
	}
	if t.Grey {
		attrs = append(attrs, draw.Fill("#6a6a6a"))
	}
	if t.White {
		attrs = append(attrs, draw.Fill("white"))
	}
	if !Covered(text) && utf8.RuneCountInString(text) > 1 {
		attrs = append(attrs, draw.Squeezed(width)...)
	}
	return attrs
}

// Lines writes text over as many lines as it takes from the top of the area, but no
// more than a dozen, and returns how far down it reaches.
func (p Pen) Lines(t Type, text string) float64 {
	lines := bounded(t.Face, t.size(), p.Width, text)
	x := map[Align]float64{Left: 0, Middle: p.Width / 2, Right: p.Width}[t.Align]
	for i, line := range lines {
		p.Text(x, baseline(t.size())+float64(i)*Leading(t.size()), t, line)
	}
	return float64(len(lines)) * Leading(t.size())
}

// baseline is where the first line of type stands below the top of its line.
func baseline(size float64) float64 { return size * (leading + capHeight - descent) / 2 }

// TextHeight is how high text of a size is in a column of a width, as Lines writes
// it.
func TextHeight(face Face, size, width float64, text string) float64 {
	return float64(len(bounded(face, size, width, text))) * Leading(size)
}

// Many writes short texts of one type and class in a group of their own, which
// keeps sheets of many figures small. put has the place and the text, which is as wide as a
// share of its usual width, in hundredths: figures that are high enough may be narrow.
func (p Pen) Many(t Type, narrow float64, class string, write func(put func(x, y float64, text string))) {
	attrs := []draw.Attr{draw.Size(t.size())}
	if t.Face == Bold {
		attrs = append(attrs, draw.Bold())
	}
	if t.Align == Middle {
		attrs = append(attrs, draw.Middle())
	}
	if narrow != 1 {
		attrs = append(attrs, draw.Narrow(narrow))
	}
	p.canvas.Group(class, func() {
		write(func(x, y float64, text string) {
			width := narrow * Width(t.Face, t.size(), text)
			left := x
			if t.Align == Middle {
				left -= width / 2
			}
			p.within(fmt.Sprintf("%q", text), left, y-capHeight*t.size(), width, capHeight*t.size())
			p.canvas.Text((p.x+x)/narrow, p.y+y, text)
		})
	}, attrs...)
}

// Group puts what is drawn into a group of a class.
func (p Pen) Group(class string, draw func()) { p.canvas.Group(class, draw) }

// Line draws a straight line.
func (p Pen) Line(x1, y1, x2, y2 float64, w draw.Weight) { p.stroke(x1, y1, x2, y2, w.Line()) }

// Dashed draws a broken line.
func (p Pen) Dashed(x1, y1, x2, y2 float64, w draw.Weight) { p.stroke(x1, y1, x2, y2, w.Dashed()) }

func (p Pen) stroke(x1, y1, x2, y2 float64, attrs []draw.Attr) {
	p.within("line", min(x1, x2), min(y1, y2), max(x1, x2)-min(x1, x2), max(y1, y2)-min(y1, y2))
	p.canvas.Line(p.x+x1, p.y+y1, p.x+x2, p.y+y2, attrs...)
}

// Grid draws straight lines, each given by its ends in turn, in one stroke.
func (p Pen) Grid(w draw.Weight, ends ...[4]float64) {
	var d strings.Builder
	for _, e := range ends {
		d.WriteString(draw.Polyline(p.moved(e[:])...))
	}
	if d.Len() > 0 {
		p.canvas.Path(d.String(), append(w.Line(), draw.Fill("none"))...)
	}
}

// Box draws the outline of a rectangle.
func (p Pen) Box(x, y, width, height float64, w draw.Weight) {
	p.rect(x, y, width, height, append(w.Line(), draw.Fill("none")))
}

// DashedBox draws the outline of something hidden.
func (p Pen) DashedBox(x, y, width, height float64, w draw.Weight) {
	p.rect(x, y, width, height, append(w.Dashed(), draw.Fill("none")))
}

// Fill fills a rectangle with a paint of Black, White or Hatch.
func (p Pen) Fill(x, y, width, height float64, paint draw.Attr) {
	p.rect(x, y, width, height, []draw.Attr{paint})
}

// Shade darkens a rectangle, whatever is drawn there already.
func (p Pen) Shade(x, y, width, height float64) {
	p.rect(x, y, width, height, []draw.Attr{Black(), draw.Opacity(0.55)})
}

func (p Pen) rect(x, y, width, height float64, attrs []draw.Attr) {
	p.within("rectangle", x, y, width, height)
	p.canvas.Rect(draw.Box{X: p.x + x, Y: p.y + y, Width: width, Height: height}, attrs...)
}

// Circle draws a ring.
func (p Pen) Circle(x, y, radius float64, w draw.Weight) {
	p.within("circle", x-radius, y-radius, 2*radius, 2*radius)
	p.canvas.Circle(p.x+x, p.y+y, radius, append(w.Line(), draw.Fill("none"))...)
}

// Polygon draws a closed line through points given as x and y in turn, filled
// with paint.
func (p Pen) Polygon(w draw.Weight, paint draw.Attr, xy ...float64) {
	p.canvas.Path(draw.Polygon(p.moved(xy)...), append(w.Line(), paint)...)
}

// moved is points of the area as points of the sheet.
func (p Pen) moved(xy []float64) []float64 {
	out := make([]float64, len(xy))
	for i := 0; i+1 < len(xy); i += 2 {
		p.within("point", xy[i], xy[i+1], 0, 0)
		out[i], out[i+1] = p.x+xy[i], p.y+xy[i+1]
	}
	return out
}

// Cells draws the cells of one level of a field with its top left corner at x, y.
func (p Pen) Cells(x, y float64, f draw.Field, level uint8, attrs ...draw.Attr) {
	box := f.Box()
	p.within("field", x, y, box.Width, box.Height)
	if d := f.Path(level); d != "" {
		p.canvas.Path(d, append(attrs, draw.Move(p.x+x, p.y+y))...)
	}
}

// Person draws a standing person of a height with the feet at x and foot.
func (p Pen) Person(x, foot, tall float64) {
	half := tall * draw.PersonHalf
	p.within("person", x-half, foot-tall, 2*half, tall)
	p.canvas.Person(p.x+x, p.y+foot, tall, draw.Fill("#707070"))
}

// Picture draws a picture of a media type over a rectangle; text says what is seen.
func (p Pen) Picture(x, y, width, height float64, mediaType string, body []byte, text string) {
	p.within("picture", x, y, width, height)
	p.canvas.Image(draw.Box{X: p.x + x, Y: p.y + y, Width: width, Height: height}, mediaType, body, Plain(text))
}

// Dimensions are read at arm's length, by somebody with both hands at the work: their
// figures are so high, and DimensionRow is from one dimension line to the next.
const (
	DimensionFigure = 5.0
	DimensionRow    = 9.0
)

// dimensionSize is the type of dimensions, whose strokes and gaps stay those of small type.
var dimensionSize = FigureSize(DimensionFigure)

// Across draws a level dimension line from x1 to x2 at y, with its extension
// lines from the object at y0.
func (p Pen) Across(x1, x2, y, y0 float64, text string) {
	d := draw.Dimension{From: p.x + x1, To: p.x + x2, At: p.y + y, Object: p.y + y0, Text: Plain(text), Size: dimensionSize, Marks: SmallSize}
	p.within("dimension", min(x1, x2), min(y, y0), max(x1, x2)-min(x1, x2), max(y, y0)-min(y, y0))
	width := Width(Regular, dimensionSize, d.Text)
	if d.Outside() {
		p.within(d.Text, max(x1, x2)+besideEnd*SmallSize, y-DimensionFigure/2, width, DimensionFigure)
	} else {
		p.within(d.Text, (x1+x2-width)/2, y-DimensionFigure-lift, width, DimensionFigure)
	}
	p.canvas.DimensionH(d)
}

// Upright draws an upright dimension line from y1 to y2 at x, with its extension
// lines from the object at x0.
func (p Pen) Upright(y1, y2, x, x0 float64, text string) {
	d := draw.Dimension{From: p.y + y1, To: p.y + y2, At: p.x + x, Object: p.x + x0, Text: Plain(text), Size: dimensionSize, Marks: SmallSize}
	p.within("dimension", min(x, x0), min(y1, y2), max(x, x0)-min(x, x0), max(y1, y2)-min(y1, y2))
	width := Width(Regular, dimensionSize, d.Text)
	if d.Outside() {
		p.within(d.Text, x-DimensionFigure/2, min(y1, y2)-besideEnd*SmallSize-width, DimensionFigure, width)
	} else {
		p.within(d.Text, x-DimensionFigure-lift, (y1+y2-width)/2, DimensionFigure, width)
	}
	p.canvas.DimensionV(d)
}

// Outside reports whether the figures of a dimension so long stand beside it, and how much
// room they take there.
func Outside(long float64, text string) (room float64, beside bool) {
	d := draw.Dimension{To: long, Text: Plain(text), Size: dimensionSize, Marks: SmallSize}
	return 2*besideEnd*SmallSize + Width(Regular, dimensionSize, d.Text), d.Outside()
}

// How package draw places a dimension's text: so far from the end of its line, in heights of
// small type, and so far above it, in mm.
const (
	besideEnd = 0.6
	lift      = 0.35 * SmallSize
)

// Hatch is a paint of slanting lines that grow denser from level 0 to the last
// of n; level 0 is white and, of three and more, the last one black.
func (p Pen) Hatch(level, n int) draw.Attr {
	switch {
	case level <= 0 || n < 2:
		return White()
	case level == n-1 && n > 2:
		return Black()
	}
	share := float64(level) / float64(n-1)
	const spacing = 1.6
	return p.canvas.Hatch(spacing, spacing*share*0.8, 45)
}

// Black and White are the paints of grey paper.
func Black() draw.Attr { return draw.Fill("currentColor") }

// White covers what lies below it.
func White() draw.Attr { return draw.Fill("white") }

// TickSize is the side of a box to tick.
const TickSize = 4.2

// Tick draws an empty box to tick, with its foot on the line at y.
func (p Pen) Tick(x, y float64) { p.Box(x, y-TickSize+0.4, TickSize, TickSize, draw.Visible) }

// Rule draws a line to write on, from x1 to x2 at y.
func (p Pen) Rule(x1, x2, y float64) { p.Line(x1, y, x2, y, draw.Fine) }
