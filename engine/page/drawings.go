package page

import (
	"fmt"
	"html/template"
	"math"

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
	fieldPaths(c, f, g.Heights)
	for _, draw := range over {
		draw(c)
	}
	return c.String()
}

func fieldPaths(c *draw.Canvas, f draw.Field, heights int) {
	for level := range heights {
		if d := f.Path(uint8(level)); d != "" {
			c.Path(d, draw.Class("level"), draw.Fill(tone(level, heights)))
		}
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
	c.Rect(draw.Box{X: 0, Y: 0, Width: 40, Height: 18}, draw.Fill(hex(m.Face)))
	c.Path(draw.Polygon(40, 4, 40, 18, 20, 18), draw.Fill(hex(m.End)))
	return template.HTML(c.String())
}

// hex is a linear colour as a screen shows it, by the transfer curve of sRGB
// (IEC 61966-2-1).
func hex(c scene.RGB) string {
	encode := func(x float64) int {
		x = min(max(x, 0), 1)
		if x <= 0.0031308 {
			return int(math.Round(255 * 12.92 * x))
		}
		return int(math.Round(255 * (1.055*math.Pow(x, 1/2.4) - 0.055)))
	}
	return fmt.Sprintf("#%02x%02x%02x", encode(c.R), encode(c.G), encode(c.B))
}
