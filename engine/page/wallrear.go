package page

import (
	"fmt"
	"html/template"
	"strings"

	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wall"
	"blockfield/engine/words"
)

// Marks of the rear map as levels of a field.
const (
	openMark uint8 = iota
	shortMark
	voidMark
)

// rearView is the back of one kind of panel: A, the counter-panel or the turned one.
type rearView struct {
	hangingView
	Half   wall.Half
	Letter byte
	Panels string // numbers of the panels with this back, where there are several kinds
}

// Rears are the backs that differ.
func (h hangingView) Rears() []rearView {
	var all []rearView
	numbers := map[byte][]string{}
	for i, p := range h.Built.Panels {
		if numbers[p.Letter] == nil {
			all = append(all, rearView{hangingView: h, Half: h.Halves[i], Letter: p.Letter})
		}
		numbers[p.Letter] = append(numbers[p.Letter], h.Words.Count(i+1))
	}
	for i := range all {
		if len(all) > 1 {
			all[i].Panels = h.T("rear/panels", "letter", string(all[i].Letter), "n", len(numbers[all[i].Letter]), "of", len(h.Built.Panels), "numbers", strings.Join(numbers[all[i].Letter], ", "))
		}
	}
	return all
}

// Drawing is the back as somebody sees it who has turned the panel like a page: left
// and right changed, the top still up, columns numbered as in front.
func (r rearView) Drawing() template.HTML {
	half := r.Half
	wide, high := half.FieldMM(), float64(half.Grid.Rows)*half.PitchMM
	size := max(wide, high) / 38
	c := draw.New(fmt.Sprintf("rear-svg-%s-%c", r.Key, r.Letter), draw.Box{
		X: -2.2 * size, Y: -6.2 * size, Width: wide + 4.4*size, Height: high + 7.4*size,
	})
	c.Class("drawing rear-map")
	c.Title(r.T("rear/title"))
	c.Desc(r.T("rear/text", "count", len(half.Row.Places)))
	c.Text(0, -4.6*size, r.T("rear/heading"), draw.Size(1.6*size), draw.Bold(), draw.Fill("currentColor"))
	r.arrow(c, wide, size)
	r.cells(c, size)
	r.numbers(c, size)
	r.band(c, size)
	for _, hole := range half.Holes(half.Row) {
		r.ring(c, hole, size)
	}
	return template.HTML(c.String())
}

// cells are hatched where a block is too short for the screw, and dark where there is
// none.
func (r rearView) cells(c *draw.Canvas, size float64) {
	half := r.Half
	marks := make([]uint8, len(half.Grid.Levels))
	for row := range half.Grid.Rows {
		for column := range half.Grid.Columns {
			mark := map[wall.Cell]uint8{wall.Safe: openMark, wall.Short: shortMark, wall.Void: voidMark}[half.Mark(row, column, half.Row.ScrewMM)]
			marks[row*half.Grid.Columns+half.Grid.Columns-1-column] = mark
		}
	}
	f := draw.Field{Columns: half.Grid.Columns, Rows: half.Grid.Rows, Levels: marks, Pitch: half.PitchMM, Inset: half.PitchMM / 40}
	line := draw.StrokeWidth(0.04 * size)
	for mark, fill := range []draw.Attr{draw.Fill("none"), c.Hatch(0.45*size, 0.09*size, 45), draw.Fill("currentColor")} {
		if d := f.Path(uint8(mark)); d != "" {
			c.Path(d, draw.Class([]string{"open", "short", "void"}[mark]), fill, draw.Stroke("currentColor"), line)
		}
	}
	c.Rect(f.Box(), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(0.12*size))
}

// numbers are the columns, as in front and so running backwards, and the rows.
func (r rearView) numbers(c *draw.Canvas, size float64) {
	const every = 5
	half := r.Half
	for column := range half.Grid.Columns {
		if n := column + 1; n%every == 0 || n == 1 || n == half.Grid.Columns {
			c.Text(half.RearX(column), -0.5*size, r.Words.Count(n), draw.Middle(), draw.Size(0.9*size), draw.Fill("currentColor"))
		}
	}
	for row := range half.Grid.Rows {
		if n := row + 1; n%every == 0 || n == 1 {
			c.Text(-0.5*size, half.RowY(row)+0.32*size, r.Words.Count(n), draw.End(), draw.Size(0.9*size), draw.Fill("currentColor"))
		}
	}
}

// band is where the cleat lies.
func (r rearView) band(c *draw.Canvas, size float64) {
	for _, part := range r.Built.Panels[0].Parts {
		if part.Kind != panel.CleatPart {
			continue
		}
		wide, high := part.Width.Millimetres(), part.Height.Millimetres()
		c.Rect(draw.Box{X: (r.Half.FieldMM() - wide) / 2, Y: r.Half.Foot.Millimetres() - high, Width: wide, Height: high},
			draw.Class("cleat-band"), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(0.14*size), draw.Dash(0.8*size, 0.3*size))
	}
}

// ring is one screw, with its distance from the rear's own left edge standing above
// the map.
func (r rearView) ring(c *draw.Canvas, h wall.Hole, size float64) {
	c.Group("ring", func() {
		c.Circle(h.FromLeftMM, h.FromTopMM, min(0.36*r.Half.PitchMM, 0.7*size), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(0.2*size))
		c.Circle(h.FromLeftMM, h.FromTopMM, 0.12*size, draw.Fill("currentColor"))
	})
}

// arrow shows how the panel was turned: over its upright edge, like a page.
func (r rearView) arrow(c *draw.Canvas, wide, size float64) {
	x, y := wide, -1.9*size
	c.Group("turn", func() {
		c.Path(draw.Polyline(x-6*size, y, x-4.5*size, y-0.7*size, x-1.5*size, y-0.7*size, x, y), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(0.16*size))
		c.Path(draw.Polygon(x, y, x-1.1*size, y+0.1*size, x-0.6*size, y-0.9*size), draw.Fill("currentColor"))
	})
	c.Path(draw.Polygon(wide/2-0.7*size, -1.6*size, wide/2+0.7*size, -1.6*size, wide/2, -2.8*size), draw.Class("top-mark"), draw.Fill("currentColor"))
}

// Corners say how to find out that the map lies the right way round.
func (r rearView) Corners() []string {
	left, right := r.Half.Corners()
	say := func(key string, c wall.Corner) string {
		heights := make([]length.Length, len(c.HeightsMM))
		for i, mm := range c.HeightsMM {
			heights[i] = r.at(mm / 1000)
		}
		return r.T(key, "column", c.Column, "heights", heights)
	}
	return []string{say("rear/corner-left", left), say("rear/corner-right", right)}
}

// ScrewLines are the screws row by row, from the rear's own left edge.
func (r rearView) ScrewLines() LineTable {
	all := LineTable{Name: r.T("rear/open")}
	for _, row := range r.Half.Row.Rows {
		var xs words.Places
		for _, h := range r.Half.Holes(r.Half.Row) {
			if h.Row == row {
				xs = append(xs, r.at(h.FromLeftMM/1000))
			}
		}
		if len(xs) > 0 {
			all.Lines = append(all.Lines, Line{r.T("rear/row", "row", row+1, "down", r.at(r.Half.RowY(row)/1000)), r.Words.Show(xs)})
		}
	}
	return all
}

// ScrewText says which screws, and what the marks mean.
func (r rearView) ScrewText() string {
	return r.T("rear/marks", "long", length.MM(int64(r.Half.Row.ScrewMM)), "gauge", r.Half.Gauge,
		"least", r.at(r.Half.LeastMM(r.Half.Row.ScrewMM)/1000))
}
