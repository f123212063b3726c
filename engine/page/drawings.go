package page

import (
	"fmt"
	"html/template"
	"math"
	"unicode/utf8"

	"blockfield/engine/bench"
	"blockfield/engine/cut"
	"blockfield/engine/draw"
	"blockfield/engine/field"
	"blockfield/engine/length"
	"blockfield/engine/scene"
)

// tone is the colour of one level out of n: dark wells, light tops, as under a
// lamp. Chosen by eye.
func tone(level, n int) string {
	low, high := [3]float64{104, 74, 48}, [3]float64{244, 226, 196}
	t := 1.0
	if n > 1 {
		t = float64(level) / float64(n-1)
	}
	var c [3]int
	for i := range c {
		c[i] = int(math.Round(low[i] + t*(high[i]-low[i])))
	}
	return fmt.Sprintf("#%02x%02x%02x", c[0], c[1], c[2])
}

// fieldPicture draws a field seen from the room, and what is to lie over it.
// Without a title it is decoration.
func fieldPicture(title string, g field.Grid, pitch, inset float64, over ...func(*draw.Canvas)) string {
	f := draw.Field{Columns: g.Columns, Rows: g.Rows, Levels: g.Levels, Pitch: pitch, Inset: inset}
	c := draw.New("field", f.Box())
	c.Class("drawing field-drawing")
	c.Title(title)
	if inset > 0 { // what shows between the blocks
		c.Rect(f.Box(), draw.Class("ground"), draw.Fill("#4a3524"))
	}
	fieldPaths(c, f, g.Heights, tone)
	for _, draw := range over {
		draw(c)
	}
	return c.String()
}

// woodPicture is a small picture of a field as decoration, in the tones of the end grain of
// a wood: dark wells, light tops.
func woodPicture(g field.Grid, m scene.Material) string {
	f := draw.Field{Columns: g.Columns, Rows: g.Rows, Levels: g.Levels, Pitch: 1}
	c := draw.New("field", f.Box())
	c.Class("drawing field-drawing")
	fieldPaths(c, f, g.Heights, func(level, n int) string {
		light := 1.0
		if n > 1 {
			light = darkestLight + (1-darkestLight)*float64(level)/float64(n-1)
		}
		return scene.RGB{R: m.End.R * light, G: m.End.G * light, B: m.End.B * light}.Hex()
	})
	return c.String()
}

// darkestLight is how much light falls on the lowest blocks of a small picture. By eye.
const darkestLight = 0.35

func fieldPaths(c *draw.Canvas, f draw.Field, heights int, tone func(level, n int) string) {
	for level := range heights {
		if d := f.Path(uint8(level)); d != "" {
			c.Path(d, draw.Class("level"), draw.Fill(tone(level, heights)))
		}
	}
}

// Sizes of the drawing of a sheet, in mm of the sheet.
const (
	sheetType   = 90.0 // height of the type: 11 px where the sheet is 300 px wide
	sheetMargin = 30.0
)

// layout draws one sheet lying on its long side: x runs along its grain, and the
// corner with the two straight edges that the backers start from is at the top
// left.
func (s SheetLot) layout(i int, l cut.SheetLayout) template.HTML {
	across, along := s.Size(l)
	width, height := along.Millimetres(), across.Millimetres()
	mm := func(nm int64) float64 { return length.Nanometres(nm, length.InMM).Millimetres() }
	c := draw.New(fmt.Sprintf("sheet-%d-%d", s.index, i), draw.Box{
		X: -sheetMargin, Y: -sheetMargin, Width: width + 2*sheetMargin, Height: height + 2*sheetMargin,
	})
	c.Class("drawing sheet-drawing")
	c.Title(s.T("cuts/sheet-title", "n", len(l.Parts)))
	c.Rect(draw.Box{X: 0, Y: 0, Width: width, Height: height}, draw.Class("sheet"), draw.Fill("none"),
		draw.Stroke("currentColor"), draw.StrokeWidth(4))
	if l.There == 0 {
		c.Path(draw.Polyline(width, 0, 0, 0, 0, height), draw.Class("factory"), draw.Fill("none"),
			draw.Stroke("currentColor"), draw.StrokeWidth(16))
	}
	for _, r := range l.Rests {
		if bench.WorthKeeping(r) {
			c.Rect(draw.Box{X: mm(r.Y), Y: mm(r.X), Width: mm(r.Length), Height: mm(r.Width)}, draw.Class("rest"), draw.Fill("none"),
				draw.Stroke("currentColor"), draw.StrokeWidth(3), draw.Dash(24, 16))
		}
	}
	for _, p := range l.Parts {
		k := s.Backers[p.Part]
		box := draw.Box{X: mm(p.Y), Y: mm(p.X), Width: mm(p.Length), Height: mm(p.Width)}
		c.Rect(box, draw.Class("backer"), draw.Fill("#c8a878"), draw.Stroke("currentColor"), draw.StrokeWidth(4))
		text := s.T("cuts/backer", "width", s.Words.Number(s.Whole(k.Width)), "height", s.Whole(k.Height))
		s.label(c, box, text)
	}
	return template.HTML(c.String())
}

// label writes the size of a backer into it, across or up, where there is room.
func (s SheetLot) label(c *draw.Canvas, b draw.Box, text string) {
	x, y := b.X+b.Width/2, b.Y+b.Height/2
	long := float64(utf8.RuneCountInString(text)) * digitWidth * sheetType
	attrs := []draw.Attr{draw.Middle(), draw.Size(sheetType), draw.Fill("#241d16"), draw.Class("size")}
	switch {
	case long < b.Width && sheetType < b.Height:
		c.Text(x, y+sheetType/3, text, attrs...)
	case long < b.Height && sheetType < b.Width:
		c.Text(x+sheetType/3, y, text, append(attrs, draw.Turn(-90, x+sheetType/3, y))...)
	}
}

// Sizes of a comb, the height set seen from the side, in mm.
const (
	combWidth = 200
	combBase  = 6   // of backer under the teeth
	combRange = 140 // tallest block without shrinking, so that combs can be compared
)

// comb draws the height set from the side, each height one tooth.
func comb(title string, heights []length.Length) string {
	n := float64(len(heights))
	tallest := heights[len(heights)-1].Millimetres()
	top := math.Max(combRange, tallest)
	c := draw.New("comb", draw.Box{X: 0, Y: 0, Width: combWidth, Height: top + combBase})
	c.Class("drawing comb")
	c.Title(title)
	pitch := combWidth / n
	for i, h := range heights {
		mm := h.Millimetres()
		if mm == 0 {
			continue
		}
		c.Rect(draw.Box{X: float64(i)*pitch + 0.05*pitch, Y: top - mm, Width: 0.9 * pitch, Height: mm},
			draw.Class("level"), draw.Fill(tone(i, len(heights))))
	}
	c.Rect(draw.Box{X: 0, Y: top, Width: combWidth, Height: combBase}, draw.Class("backer"), draw.Fill("#8a7357"))
	return c.String()
}

// swatch is a chip of wood: long grain with a corner of end grain.
func swatch(m scene.Material) template.HTML {
	c := draw.New("swatch", draw.Box{X: 0, Y: 0, Width: 40, Height: 18})
	c.Class("swatch")
	c.Rect(draw.Box{X: 0, Y: 0, Width: 40, Height: 18}, draw.Fill(m.Face.Hex()))
	c.Path(draw.Polygon(40, 4, 40, 18, 20, 18), draw.Fill(m.End.Hex()))
	return template.HTML(c.String())
}
