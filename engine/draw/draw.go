// Package draw writes SVG drawings: fields of blocks, plans and sections with
// dimension lines, as text that can stand in a page or in a file of its own.
//
// Units are millimetres of the drawn thing (or of the paper, where a sheet is
// drawn at its size); x grows to the right and y grows downwards. Numbers are
// written as short as they can be to a hundredth of a millimetre, in the order
// of the calls, so a drawing is the same text everywhere.
//
// No element carries a style attribute: a page with a strict content policy
// would refuse it. Looks come from classes and from presentation attributes,
// which any style sheet overrides. All text is escaped.
package draw

import (
	"encoding/xml"
	"fmt"
	"slices"
	"strings"
)

// Box is the part of the plane that a drawing shows.
type Box struct{ X, Y, Width, Height float64 }

// Canvas collects the elements of one drawing.
type Canvas struct {
	id          string
	box         Box
	class       string
	actualSize  bool
	family      string
	label       string
	title, desc string
	defs, body  strings.Builder
	hatches     int
}

// New returns an empty drawing. Its id, which must be unique in the page, is
// the beginning of all ids inside it.
func New(id string, box Box) *Canvas { return &Canvas{id: id, box: box} }

// Class sets the class of the whole drawing.
func (c *Canvas) Class(class string) { c.class = class }

// ActualSize makes the drawing as large on paper as the things in it.
func (c *Canvas) ActualSize() { c.actualSize = true }

// Family sets the typeface of all text, where no style sheet does.
func (c *Canvas) Family(name string) { c.family = name }

// Title names the drawing for those who do not see it. A drawing without a
// title counts as decoration and is hidden from screen readers.
func (c *Canvas) Title(text string) { c.title = text }

// Label names a drawing whose text is to be read, as that of a page of paper, and
// not only what it is a picture of.
func (c *Canvas) Label(text string) { c.label = text }

// Desc says in a sentence or two what the drawing shows.
func (c *Canvas) Desc(text string) { c.desc = text }

// Group puts what draw draws into a group of a class.
func (c *Canvas) Group(class string, draw func(), attrs ...Attr) {
	c.open("g", []Attr{Class(class)}, attrs)
	c.body.WriteByte('>')
	draw()
	c.body.WriteString("</g>")
}

// Path draws path data, such as that of Field.Path or Polygon.
func (c *Canvas) Path(d string, attrs ...Attr) {
	c.element("path", []Attr{{"d", d}}, attrs)
}

// Rect draws a rectangle from its top left corner.
func (c *Canvas) Rect(b Box, attrs ...Attr) {
	c.element("rect", []Attr{num("x", b.X), num("y", b.Y), num("width", b.Width), num("height", b.Height)}, attrs)
}

// Line draws a straight line.
func (c *Canvas) Line(x1, y1, x2, y2 float64, attrs ...Attr) {
	c.element("line", []Attr{num("x1", x1), num("y1", y1), num("x2", x2), num("y2", y2)}, attrs)
}

// Circle draws a circle round its centre.
func (c *Canvas) Circle(x, y, radius float64, attrs ...Attr) {
	c.element("circle", []Attr{num("cx", x), num("cy", y), num("r", radius)}, attrs)
}

// Text writes one line of text with its baseline at y.
func (c *Canvas) Text(x, y float64, text string, attrs ...Attr) {
	c.open("text", []Attr{num("x", x), num("y", y)}, attrs)
	c.body.WriteByte('>')
	c.body.WriteString(escape(text))
	c.body.WriteString("</text>")
}

// Hatch returns a fill of parallel lines in the current colour: spacing apart,
// as thick as stated, turned clockwise from upright by an angle in degrees.
func (c *Canvas) Hatch(spacing, thick, angleDeg float64) Attr {
	c.hatches++
	id := fmt.Sprintf("%s-hatch%d", c.id, c.hatches)
	fmt.Fprintf(&c.defs, `<pattern id="%s" width="%s" height="%s" patternUnits="userSpaceOnUse" patternTransform="rotate(%s)">`,
		escape(id), Number(spacing), Number(spacing), Number(angleDeg))
	fmt.Fprintf(&c.defs, `<rect width="%s" height="%s" fill="currentColor"/></pattern>`, Number(thick), Number(spacing))
	return Fill("url(#" + id + ")")
}

// String returns the drawing as an <svg> element.
func (c *Canvas) String() string {
	var b strings.Builder
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg"`)
	for _, a := range c.rootAttrs() {
		a.write(&b)
	}
	b.WriteByte('>')
	c.writeNote(&b, "title", c.title)
	c.writeNote(&b, "desc", c.desc)
	if c.defs.Len() > 0 {
		b.WriteString("<defs>" + c.defs.String() + "</defs>")
	}
	b.WriteString(c.body.String())
	b.WriteString("</svg>")
	return b.String()
}

func (c *Canvas) rootAttrs() []Attr {
	box := strings.Join([]string{Number(c.box.X), Number(c.box.Y), Number(c.box.Width), Number(c.box.Height)}, " ")
	attrs := []Attr{{"viewBox", box}}
	if c.class != "" {
		attrs = append(attrs, Class(c.class))
	}
	if c.actualSize {
		attrs = append(attrs, Attr{"width", Number(c.box.Width) + "mm"}, Attr{"height", Number(c.box.Height) + "mm"})
	}
	if c.family != "" {
		attrs = append(attrs, Attr{"font-family", c.family})
	}
	if c.label != "" {
		return append(attrs, Attr{"role", "group"}, Attr{"aria-label", c.label})
	}
	if c.title == "" {
		return append(attrs, Attr{"aria-hidden", "true"})
	}
	attrs = append(attrs, Attr{"role", "img"}, Attr{"aria-labelledby", c.id + "-title"})
	if c.desc != "" {
		attrs = append(attrs, Attr{"aria-describedby", c.id + "-desc"})
	}
	return attrs
}

// writeNote writes the title or the description; both need a title.
func (c *Canvas) writeNote(b *strings.Builder, name, text string) {
	if c.title == "" || text == "" {
		return
	}
	fmt.Fprintf(b, `<%s id="%s-%s">%s</%s>`, name, escape(c.id), name, escape(text), name)
}

func (c *Canvas) element(name string, own, attrs []Attr) {
	c.open(name, own, attrs)
	c.body.WriteString("/>")
}

// open writes the beginning of a tag, all but its end. An attribute that comes
// twice would make the drawing unreadable as XML.
func (c *Canvas) open(name string, own, attrs []Attr) {
	all := append(own, attrs...)
	c.body.WriteByte('<')
	c.body.WriteString(name)
	for i, a := range all {
		if slices.ContainsFunc(all[:i], func(b Attr) bool { return a.name == b.name }) {
			panic(fmt.Sprintf("draw: internal error: %s has two attributes %s", name, a.name))
		}
		a.write(&c.body)
	}
}

// escape makes text safe inside elements and quoted attributes; what XML
// cannot hold becomes the replacement character.
func escape(text string) string {
	var b strings.Builder
	// A strings.Builder never fails to write.
	_ = xml.EscapeText(&b, []byte(text))
	return b.String()
}
