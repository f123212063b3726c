package papers

import (
	"slices"
	"strconv"
	"unicode"
	"unicode/utf8"

	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/papers/sheet"
)

// capital begins a sentence with a capital letter.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

// armFigure is how high figures are that are read at arm's length, with both hands at the
// work, in mm.
const armFigure = sheet.DimensionFigure

// armSize is the type of such figures.
func armSize() float64 { return sheet.FigureSize(armFigure) }

// scale is how many mm of the thing one mm of paper is.
type scale float64

// fitted is the smallest usual scale at which a thing is not larger than the room
// on the paper.
func fitted(width, height, roomX, roomY float64) scale {
	steps := []scale{1, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5, 10, 12.5, 15, 20, 25, 30, 40, 50, 75}
	for _, s := range steps {
		if width/float64(s) <= roomX && height/float64(s) <= roomY {
			return s
		}
	}
	return 100
}

// of is a length of the thing on the paper.
func (s scale) of(mm float64) float64 { return mm / float64(s) }

// bar is a length of the reader's units that is drawn beside a drawing to show its
// scale.
func (m *maker) bar(s scale) length.Length {
	const least = 18 // mm on the paper
	if m.Words.Units.Bare() == length.InInch {
		for _, inches := range []int64{1, 2, 4, 6, 12, 24, 48, 96} {
			if l := length.Sixtyfourths(64 * inches); s.of(l.Millimetres()) >= least {
				return l
			}
		}
	}
	for _, mm := range []int64{20, 50, 100, 200, 500, 1000} {
		if s.of(float64(mm)) >= least {
			return length.MM(mm)
		}
	}
	return length.MM(2000)
}

// scaleHeight is how high a bar with its words is.
const scaleHeight = 5

// scaleBar draws a bar of a round length with what it stands for.
func (m *maker) scaleBar(p sheet.Pen, s scale) {
	l := m.bar(s)
	long := s.of(l.Millimetres())
	p.Line(0, 3.5, long, 3.5, draw.Outline)
	p.Line(0, 2.3, 0, 4.7, draw.Outline)
	p.Line(long, 2.3, long, 4.7, draw.Outline)
	text := m.T("drawing/scale", "length", l, "ratio", m.Words.Written(draw.Number(float64(s))))
	p.Text(long+2, 4.5, sheet.Type{Size: sheet.SmallSize}, sheet.Fit(sheet.Regular, sheet.SmallSize, p.Width-long-2, text))
}

// span is one of several level dimensions below a thing.
type span struct {
	from, to float64
	text     string
}

// figures is where the figures of a span stand, and whether that is beside its line.
func (s span) figures() (from, to float64, beside bool) {
	left, right := min(s.from, s.to), max(s.from, s.to)
	if room, beside := sheet.Outside(right-left, s.text); beside {
		return right, right + room, true
	}
	half := sheet.Width(sheet.Regular, armSize(), s.text) / 2
	return (left+right)/2 - half, (left+right)/2 + half, false
}

// besideDrop is how much further down a line lies whose figures would stand close below
// those beside the line above it: figures beside a line reach below it.
const besideDrop = 2.5

// placedSpans puts each span on the first line where neither it nor its figures meet another. It
// says how far below the thing each one lies, and the last of them.
func placedSpans(all []span) (down []float64, last float64) {
	var lines [][]span
	rows := make([]int, len(all))
	for i, s := range all {
		from, to := s.reach()
		meets := func(other span) bool {
			otherFrom, otherTo := other.reach()
			return from < otherTo && otherFrom < to
		}
		for rows[i] < len(lines) && slices.ContainsFunc(lines[rows[i]], meets) {
			rows[i]++
		}
		if rows[i] == len(lines) {
			lines = append(lines, nil)
		}
		lines[rows[i]] = append(lines[rows[i]], s)
	}
	at := make([]float64, len(lines))
	for i := range lines {
		last += sheet.DimensionRow
		if i > 0 && crowded(lines[i-1], lines[i]) {
			last += besideDrop
		}
		at[i] = last
	}
	for _, row := range rows {
		down = append(down, at[row])
	}
	return down, last
}

// reach is from where to where a span and its figures are.
func (s span) reach() (from, to float64) {
	left, right, _ := s.figures()
	return min(s.from, s.to, left), max(s.from, s.to, right)
}

// crowded reports whether figures of a lower line stand below some beside the upper one.
func crowded(upper, lower []span) bool {
	return slices.ContainsFunc(upper, func(u span) bool {
		from, to, beside := u.figures()
		return beside && slices.ContainsFunc(lower, func(l span) bool {
			left, right, _ := l.figures()
			return left < to && from < right
		})
	})
}

// spansHeight is how high dimensions are below a thing.
func spansHeight(all []span) float64 {
	const overshoot = 2
	_, last := placedSpans(all)
	return last + overshoot
}

// drawSpans draws dimensions below a thing that ends at y.
func drawSpans(p sheet.Pen, y float64, all []span) {
	down, _ := placedSpans(all)
	for i, s := range all {
		p.Across(s.from, s.to, y+down[i], y, s.text)
	}
}

// grey is the paint of a level of a small picture, from white to black wells.
func grey(level, n int) draw.Attr {
	share := 1.0
	if n > 1 {
		share = float64(level) / float64(n-1)
	}
	const darkest = 0x48
	tone := darkest + int(share*(0xff-darkest)+0.5)
	const hex = "0123456789abcdef"
	two := string([]byte{hex[tone/16], hex[tone%16]})
	return draw.Fill("#" + two + two + two)
}

// fieldPicture draws a panel in small, seen from the room, tall blocks light, and a small
// square in those of the second wood: a picture, not a plan.
func (m *maker) fieldPicture(p sheet.Pen, of panel.Panel, heights []length.Length, pitch float64) {
	g := of.Grid
	f := draw.Field{Columns: g.Columns, Rows: g.Rows, Levels: g.Levels, Pitch: pitch}
	for level := range g.Heights {
		p.Cells(0, 0, f, uint8(level), grey(level, g.Heights))
	}
	if of.Woods != nil {
		second := func(dark bool) draw.Field { // marks are black on light blocks and white on dark ones
			return f.Marked(func(cell int) bool {
				level := int(g.Levels[cell])
				return of.WoodOf(cell) > 0 && !heights[level].IsZero() && (2*level < g.Heights-1) == dark
			})
		}
		p.Group("second-wood", func() {
			p.Cells(0, 0, second(true), 1, sheet.White())
			p.Cells(0, 0, second(false), 1, sheet.Black())
		})
	}
	box := f.Box()
	p.Box(0, 0, box.Width, box.Height, draw.Outline)
}

// hatched fills a swatch with the hatch of a height: the more lines the taller.
func (m *maker) swatch(p sheet.Pen, x, y, size float64, h length.Length) {
	level, n := m.level(h)
	p.Fill(x, y, size, size, p.Hatch(level, n))
	p.Box(x, y, size, size, draw.Visible)
}

// level is the place of a height among all heights of the job that are cut, from
// 1, and one more than how many there are: the same hatch on every paper.
func (m *maker) level(h length.Length) (level, n int) {
	all := m.allHeights()
	for i, other := range all {
		if other.Same(h) {
			return i + 1, len(all) + 1
		}
	}
	return 0, len(all) + 1
}

// allHeights are the heights that are cut, rising, each once.
func (m *maker) allHeights() []length.Length {
	var all []length.Length
	for _, lot := range m.Plan.Bill.Lots {
		for _, h := range lot.Heights {
			all = insertHeight(all, h.Height)
		}
	}
	return all
}

func insertHeight(all []length.Length, h length.Length) []length.Length {
	for i, other := range all {
		switch c := h.Cmp(other); {
		case c == 0:
			return all
		case c < 0:
			return append(all[:i], append([]length.Length{h}, all[i:]...)...)
		}
	}
	return append(all, h)
}

// name is the name of a drawing's file, numbered from 1 where there can be
// several.
func (m *maker) name(what string, numbers ...int) string {
	for _, n := range numbers {
		what += "-" + strconv.Itoa(n+1)
	}
	return what
}
