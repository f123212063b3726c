package sheet

import (
	"strings"

	"blockfield/engine/draw"
)

const (
	titleSize = 6.4
	codeSize  = 6.4
)

// title writes the strip at the head of a sheet: what it is, of which job, and
// of which revision.
func (f Frame) title(p Pen, title string, number, of int, scan bool) {
	if scan && f.Scan != nil {
		p = p.In(0, 0, p.Width-f.Scan.width(), p.Height)
	}
	const line1, line2 = 5.4, 10.8
	codeWidth := Width(Bold, codeSize, f.Code)
	p.Text(0, line1, Type{Size: titleSize, Face: Bold, Class: "paper-title"}, Fit(Bold, titleSize, p.Width-codeWidth-gutter, title))
	p.Text(p.Width, line1, Type{Size: codeSize, Face: Bold, Align: Right, Class: "revision"}, f.Code)
	page := f.Number(number, of)
	right := strings.Join(append([]string{f.CodeLabel}, append(append([]string{}, f.Notes...), page)...), " · ")
	right = Fit(Regular, SmallSize, p.Width*0.62, right)
	p.Text(p.Width, line2, Type{Size: SmallSize, Align: Right, Class: "page-number"}, right)
	p.Text(0, line2, Type{Size: SmallSize}, Fit(Regular, SmallSize, p.Width-Width(Regular, SmallSize, right)-gutter, f.Job))
	p.Line(0, p.Height, p.Width, p.Height, draw.Outline)
}

// strip says from which side the drawings are seen: white for the front, black
// for the rear.
func (f Frame) strip(p Pen, v View) {
	text := f.Front
	if v == Rear {
		text = f.Rear
		p.Fill(0, 0, p.Width, p.Height, Black())
	}
	p.Box(0, 0, p.Width, p.Height, draw.Outline)
	p.Text(p.Width/2, 5, Type{Size: 4.6, Face: Bold, Align: Middle, White: v == Rear, Class: "view"}, Fit(Bold, 4.6, p.Width-4, text))
}

// barMM is the length of the bar that tells a print at another size.
const barMM = 100

// foot writes the bar that shows whether a print is at its size, the units, and what the
// code at the head is for, where a paper has one.
func (f Frame) foot(p Pen, scan bool) {
	const high, steps = 2, 10
	p.Line(0, 0, p.Width, 0, draw.Fine)
	top := p.Height - high - 1
	p.Group("scale-bar", func() {
		for i := 0; i < steps; i += 2 {
			p.Fill(float64(i)*barMM/steps, top, barMM/steps, high, Black())
		}
		p.Box(0, top, barMM, high, draw.Fine)
	})
	p.Text(0, top-1.4, Type{Size: 2.8}, Fit(Regular, 2.8, barMM, f.Bar))
	width := p.Width - barMM - gutter
	if scan && f.Scan != nil {
		p.Text(p.Width, p.Height-1-Leading(SmallSize), Type{Size: SmallSize, Align: Right}, Fit(Regular, SmallSize, width, f.Scan.Text))
	}
	p.Text(p.Width, p.Height-1, Type{Size: SmallSize, Align: Right}, Fit(Regular, SmallSize, width, f.Units))
}

// scanSide is how wide a code is: what the head of a sheet has room for beside its title.
// The widest one, of 41 modules, has them of a third of a millimetre, which a telephone
// reads at arm's length. Common practice, no source.
const scanSide = 14

// pitch is from one module to the next.
func (s *Scan) pitch() float64 { return scanSide / float64(s.Modules) }

// width is that of the code with the white at its side. ISO/IEC 18004 wants four modules
// of it all round (from memory): the others are the margins and what lies above the body.
func (s *Scan) width() float64 {
	const quiet = 4
	return scanSide + quiet*s.pitch()
}

// draw puts a code into the lower right corner.
func (s *Scan) draw(p Pen) {
	f := draw.Field{Columns: s.Modules, Rows: s.Modules, Levels: make([]uint8, len(s.Dark)), Pitch: s.pitch()}
	for i, dark := range s.Dark {
		if dark {
			f.Levels[i] = 1
		}
	}
	p.Group("scan", func() { p.Cells(p.Width-scanSide, p.Height-scanSide, f, 1, Black()) })
}
