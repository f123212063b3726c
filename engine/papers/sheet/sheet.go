// Package sheet lays out paper: sheets of A4 or Letter in millimetres, broken
// into pages here and not by a browser, so that what prints is what was
// reckoned with.
//
// Text is measured with the widths of the font that prints, broken into lines,
// and placed line by line in an SVG of the sheet's own size. Whatever is drawn
// beyond the area that it was given is told in Sheet.Overflow, which the tests
// of every paper hold empty.
//
// A Paper is a list of blocks. A block becomes slabs, which are never split; a
// table repeats its head on each sheet. Meaning is carried by figures, hatches
// and the weight of lines, so that grey is enough.
//
// Lengths are mm on the paper, x to the right and y down.
package sheet

import (
	"fmt"
	"slices"

	"blockfield/engine/draw"
	"blockfield/engine/length"
)

// Format is a size of paper, upright.
type Format struct {
	Name          string
	Width, Height float64
}

// A4 is the paper of ISO 216.
func A4() Format { return Format{"A4", 210, 297} }

// Letter is the paper of North America, 8 1/2 by 11 inches.
func Letter() Format { return Format{"Letter", 215.9, 279.4} }

// UsualFor is the paper of those who measure in some units: inches are those of North
// America.
func UsualFor(u length.Units) Format {
	if u.Bare() == length.InInch {
		return Letter()
	}
	return A4()
}

// Formats are all of them.
func Formats() []Format { return []Format{A4(), Letter()} }

// Named returns the format of a name.
func Named(name string) (Format, bool) {
	for _, f := range Formats() {
		if f.Name == name {
			return f, true
		}
	}
	return Format{}, false
}

// Margins, which printers of home and office can print up to. Common practice,
// no source.
const (
	marginLeft  = 15 // with room for a punch
	marginRight = 12
	marginTop   = 10
	marginFoot  = 9
)

// Heights of what stands on every sheet.
const (
	titleHeight = 13
	stripHeight = 7
	footHeight  = 9
	apart       = 4 // between them and the body
)

// BodyWidth is how wide what stands on a sheet may be.
func (f Format) BodyWidth() float64 { return f.Width - marginLeft - marginRight }

// bodyTop is where the body begins.
func (f Format) bodyTop(v View) float64 {
	top := float64(marginTop + titleHeight + apart)
	if v != NoView {
		top += stripHeight + apart
	}
	return top
}

func (f Format) bodyHeight(v View) float64 {
	return f.Height - marginFoot - footHeight - apart - f.bodyTop(v)
}

// View is the side from which the drawings of a paper are seen.
type View uint8

// The views.
const (
	NoView View = iota
	Front
	Rear
)

// Paper is one paper of a set, of as many sheets as it takes.
type Paper struct {
	Name   string // in files: "stop-list"
	Title  string
	View   View
	Scan   bool   // the frame's code stands at its head, if there is one
	Code   string // of another revision than the frame's; empty: of that one
	Plain  bool   // without drawings: it may stand below a strip that says from which side others are seen
	Below  bool   // it may stand below the paper before it, where all of it fits on the last sheet
	Blocks []Block
}

// Frame is what stands on every sheet of a set, in the words of its reader.
type Frame struct {
	Job       string // title of the job
	Code      string // revision of the design
	CodeLabel string
	Notes     []string // further marks: the day, the code of the price book
	Units     string
	Bar       string // beside the bar of 100 mm
	Front     string // on the strip of a front view
	Rear      string
	Number    func(n, of int) string
	Scan      *Scan // nil: none
}

// Scan is a code for a camera: a square of modules, row by row.
type Scan struct {
	Modules int
	Dark    []bool
	Text    string // what it is for
}

// Sheet is one side of paper.
type Sheet struct {
	Paper    string   // name of the paper
	Also     []string // names of those below it
	Title    string
	Number   int
	SVG      string   // empty where it was not asked for
	Overflow []string // what left the area that it was given; empty on every sheet that is right
}

// Span is which sheets of a set are drawn, from the first before the end, counted from
// 0; the zero value is all. The others are laid out and numbered, which takes a part of
// the time.
type Span struct{ From, To int }

// NoSheets draws none.
func NoSheets() Span { return Span{1, 1} }

func (s Span) has(i int) bool { return s == Span{} || i >= s.From && i < s.To }

// Layout breaks papers into sheets, numbers them and draws those of a span. A paper
// without blocks has none. id makes the ids in the sheets unique.
func Layout(id string, f Format, frame Frame, papers []Paper, drawn Span) []Sheet {
	pages := pagesOf(f, frame, papers)
	all := make([]Sheet, len(pages))
	for i, p := range pages {
		if !drawn.has(i) {
			all[i] = Sheet{Paper: p.paper.Name, Also: p.also, Title: p.paper.Title, Number: i + 1}
			continue
		}
		all[i] = p.draw(fmt.Sprintf("%s%d", id, i+1), f, frame, i+1, len(pages))
	}
	return all
}

// Count is how many sheets papers take.
func Count(f Format, papers ...Paper) int { return len(pagesOf(f, Frame{}, papers)) }

// page is one sheet before it is drawn.
type page struct {
	paper Paper
	also  []string // papers below it
	title string   // of all of them
	slabs []slab
}

// pagesOf breaks papers into sheets. One that may stand below another, and fits there with
// its title, takes no sheet of its own.
func pagesOf(f Format, frame Frame, papers []Paper) []page {
	var pages []page
	for _, p := range papers {
		slabs := flow(p.Blocks, f.BodyWidth())
		if n := len(pages); p.Below && n > 0 && len(slabs) > 0 && pages[n-1].join(f, frame, p, slabs) {
			continue
		}
		for _, slabs := range fewest(slabs, f.bodyHeight(p.View)) {
			pages = append(pages, page{paper: p, title: p.Title, slabs: slabs})
		}
	}
	return pages
}

// join adds a paper to a page. The strip at a page's head holds for all of it: only below a
// paper without a view does another bring its own.
func (p *page) join(f Format, frame Frame, other Paper, slabs []slab) bool {
	begins := func(s slab) bool { return s.fresh }
	if other.Code != p.paper.Code || other.Scan && !p.paper.Scan || slices.ContainsFunc(slabs, begins) {
		return false
	}
	if p.paper.View != NoView && other.View != p.paper.View && !other.Plain {
		return false
	}
	head := []slab{{height: joinedTitle, gap: joinedGap, draw: func(p Pen) { joinedHead(p, other.Title) }}}
	if other.View != NoView && other.View != p.paper.View {
		head = append(head, slab{height: stripHeight, gap: apart / 2, draw: func(p Pen) { frame.strip(p, other.View) }})
	}
	slabs[0].gap = apart
	for _, share := range narrower() {
		all := slices.Concat(narrow(p.slabs, share), head, narrow(slabs, share))
		if stacked(all) <= f.bodyHeight(p.paper.View) {
			p.slabs, p.also, p.title = all, append(p.also, other.Name), p.title+", "+other.Title
			return true
		}
	}
	return false
}

// How the title of a paper below another is set off, in mm.
const (
	joinedGap   = 9
	joinedTitle = 9
)

func joinedHead(p Pen, title string) {
	const line = 5.4
	p.Line(0, 0, p.Width, 0, draw.Outline)
	p.Text(0, line+2, Type{Size: titleSize, Face: Bold, Class: "paper-title"}, Fit(Bold, titleSize, p.Width, title))
}

func (p page) draw(id string, f Format, frame Frame, number, of int) Sheet {
	// A hair less than the paper, so that no browser begins another sheet.
	const hair = 0.3
	c := draw.New(id, draw.Box{Width: f.Width, Height: f.Height - hair})
	c.Class("paper")
	c.ActualSize()
	c.Family(Family + ", sans-serif")
	s := Sheet{Paper: p.paper.Name, Also: p.also, Title: p.paper.Title, Number: number}
	c.Label(Plain(p.title + ", " + frame.Number(number, of)))
	whole := Pen{canvas: c, out: &s.Overflow, Width: f.Width, Height: f.Height - hair}
	width := f.BodyWidth()
	if p.paper.Code != "" {
		frame.Code = p.paper.Code
	}
	frame.title(whole.In(marginLeft, marginTop, width, titleHeight), p.paper.Title, number, of, p.paper.Scan)
	if p.paper.Scan && frame.Scan != nil {
		frame.Scan.draw(whole.In(0, 0, marginLeft+width, marginTop+titleHeight))
	}
	if p.paper.View != NoView {
		frame.strip(whole.In(marginLeft, marginTop+titleHeight+apart, width, stripHeight), p.paper.View)
	}
	frame.foot(whole.In(marginLeft, f.Height-marginFoot-footHeight, width, footHeight), p.paper.Scan)
	body := whole.In(marginLeft, f.bodyTop(p.paper.View), width, f.bodyHeight(p.paper.View))
	y := 0.0
	for i, slab := range p.slabs {
		if i > 0 {
			y += slab.gap
		}
		slab.draw(body.In(0, y, width, slab.height))
		y += slab.height
	}
	s.SVG = c.String()
	return s
}
