package page

import (
	"strings"

	"blockfield/engine/draw"
	"blockfield/engine/field"
	"blockfield/engine/panel"
	"blockfield/engine/words"
)

// Look of the marks over a field, in parts of a pitch, and their colours: a pale edge
// tells them from all tones of wood.
const (
	runThick, runEdge       = 0.30, 0.14
	repeatThick             = 0.16
	repeatDash              = 0.7
	runColour, repeatColour = "#1d4f7a", "#9b1c31"
	markEdge                = "#fffaf0"
)

// grid is the field of the first panel.
func (g groupView) grid() field.Grid { return g.Built.Panels[0].Grid }

// runs are the straight bars that the drawing marks: those that draw the eye, or
// else the longest ones.
func (g groupView) runs() []field.Run {
	least := min(panel.NotedRun(g.Design.Pattern), g.grid().LongestRun().Length)
	return g.grid().Runs(max(least, 2))
}

// marks draws the straight bars of equal heights over the field, and where the
// pattern begins anew.
func (g groupView) marks(c *draw.Canvas) {
	pitch := g.Built.Pitch.Millimetres()
	mark := func(d, colour string, thick float64, more ...draw.Attr) {
		if d == "" {
			return
		}
		c.Path(d, draw.Fill("none"), draw.Stroke(markEdge), draw.StrokeWidth((thick+runEdge)*pitch))
		c.Path(d, append(more, draw.Fill("none"), draw.Stroke(colour), draw.StrokeWidth(thick*pitch))...)
	}
	c.Group("marks", func() {
		mark(g.repeatLines(), repeatColour, repeatThick, draw.Dash(repeatDash*pitch))
		mark(g.runLines(), runColour, runThick)
	})
}

func (g groupView) runLines() string {
	pitch := g.Built.Pitch.Millimetres()
	var lines strings.Builder
	for _, r := range g.runs() {
		x, y := (float64(r.Column)+0.5)*pitch, (float64(r.Row)+0.5)*pitch
		on := float64(r.Length-1) * pitch
		if r.Down {
			lines.WriteString(draw.Polyline(x, y, x, y+on))
		} else {
			lines.WriteString(draw.Polyline(x, y, x+on, y))
		}
	}
	return lines.String()
}

// repeatLines are the lines along which the pattern begins anew; none where it
// does not.
func (g groupView) repeatLines() string {
	grid, pitch := g.grid(), g.Built.Pitch.Millimetres()
	columns, rows := grid.Period()
	width, height := float64(grid.Columns)*pitch, float64(grid.Rows)*pitch
	lines := ""
	for j := columns; j < grid.Columns && columns > 1; j += columns {
		lines += draw.Polyline(float64(j)*pitch, 0, float64(j)*pitch, height)
	}
	for i := rows; i < grid.Rows && rows > 1; i += rows {
		lines += draw.Polyline(0, float64(i)*pitch, width, float64(i)*pitch)
	}
	return lines
}

// RunsText says what the marks show.
func (g groupView) RunsText() string {
	longest := g.grid().LongestRun()
	place, at := words.Key("pattern/row"), longest.Row+1
	if longest.Down {
		place, at = words.Key("pattern/column"), longest.Column+1
	}
	return g.T("look/runs-text", "n", longest.Length, "place", place, "at", at)
}

// RepeatsText says after how many blocks the pattern begins anew.
func (g groupView) RepeatsText() string {
	grid := g.grid()
	columns, rows := grid.Period()
	across, down := columns < grid.Columns && columns > 1, rows < grid.Rows && rows > 1
	switch {
	case across && down:
		return g.T("look/repeats-both", "columns", columns, "rows", rows)
	case across:
		return g.T("look/repeats-across", "columns", columns)
	case down:
		return g.T("look/repeats-down", "rows", rows)
	}
	return g.T("look/repeats-none")
}
