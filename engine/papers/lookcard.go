package papers

import (
	"math"

	"blockfield/engine"
	"blockfield/engine/draw"
	"blockfield/engine/field"
	"blockfield/engine/length"
	"blockfield/engine/papers/sheet"
)

// lookCard is what a client keeps of the look: the panel under four lamps, some blocks at
// their natural size, the heights as a comb and the section of the frame.
func (m *maker) lookCard() sheet.Paper {
	g := m.Plan.Groups[0]
	grid := g.Built.Panels[0].Grid
	high := m.either(110, 84)
	blocks := []sheet.Block{
		sheet.Say(m.T("look-paper/lead", "wood", capital(m.Show(g.Design.WoodName())), "finish", m.wood(g.Design.Finish.Kind))),
		sheet.Heading(m.T("look-paper/lamps")),
		sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.lamps(grid, g.Design.Heights, width)} }),
		sheet.Heading(m.T("look-paper/natural")),
		sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.natural(g, width, high)} }),
		sheet.Heading(m.T("look-paper/heights")),
		sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.comb(g.Design.Heights, width)} }),
	}
	if g.Built.Framed {
		blocks = append(blocks, sheet.Small(m.T("look-paper/frame", "wood", m.wood(g.Design.Frame.Wood), "thickness", g.Design.Frame.Thickness,
			"depth", m.round(g.Built.FrameDepth), "reveal", g.Design.Frame.Reveal)))
	}
	return m.paper("look-card", sheet.NoView, blocks...)
}

// lampDeg is how far the lamp stands above the plane of the wall.
const lampDeg = 35

// Cells of the corner that is drawn under the lamps, at most: more would be grey.
const (
	lampColumns = 14
	lampRows    = 10
)

// lamps draws a corner of the panel four times, with the lamp at each side: what lies in
// the shadow of the taller block next to it, as far as that reaches over it.
func (m *maker) lamps(grid field.Grid, heights []length.Length, width float64) sheet.Block {
	const gap, label, side = 6, 5, 4.0 // side: round a corner, for the lamp
	columns, rows := min(grid.Columns, lampColumns), min(grid.Rows, lampRows)
	each := (width - 3*gap) / 4
	pitch := min((each-2*side)/float64(columns), 60/float64(rows))
	wide, high := pitch*float64(columns), pitch*float64(rows)
	reach := 1 / math.Tan(lampDeg*math.Pi/180) / m.Plan.Groups[0].Built.Pitch.Millimetres() // of the shadow of 1 mm, in cells
	return sheet.Piece{Height: high + 2*side + label, Draw: func(p sheet.Pen) {
		for i, lamp := range []struct {
			key           string
			columns, rows int
		}{{"left", -1, 0}, {"top", 0, -1}, {"right", 1, 0}, {"bottom", 0, 1}} {
			area := p.In(float64(i)*(each+gap), 0, each, high+2*side)
			at := area.In(side, side, wide, high)
			at.Group("shadows-"+lamp.key, func() {
				for row := range rows {
					for column := range columns {
						r, c := row+lamp.rows, column+lamp.columns
						if r < 0 || c < 0 || r >= grid.Rows || c >= grid.Columns {
							continue
						}
						step := heights[grid.At(r, c)].Millimetres() - heights[grid.At(row, column)].Millimetres()
						if share := min(step*reach, 1); share > 0 {
							shade(at, float64(column)*pitch, float64(row)*pitch, pitch, share, lamp.columns, lamp.rows)
						}
					}
				}
			})
			var lines [][4]float64
			for column := 1; column < columns; column++ {
				lines = append(lines, [4]float64{float64(column) * pitch, 0, float64(column) * pitch, high})
			}
			for row := 1; row < rows; row++ {
				lines = append(lines, [4]float64{0, float64(row) * pitch, wide, float64(row) * pitch})
			}
			at.Grid(draw.Fine, lines...)
			at.Box(0, 0, wide, high, draw.Outline)
			x, y := side+wide/2+float64(lamp.columns)*(wide/2+side/2), side+high/2+float64(lamp.rows)*(high/2+side/2)
			area.Circle(x, y, 1.3, draw.Outline)
			p.Text(float64(i)*(each+gap)+side, high+2*side+label-0.8, sheet.Type{Size: sheet.SmallSize}, sheet.Fit(sheet.Regular, sheet.SmallSize, each-side, m.T("look-paper/lamp-"+lamp.key)))
		}
	}}
}

// shade darkens a share of a cell from the side of the lamp.
func shade(p sheet.Pen, x, y, pitch, share float64, columns, rows int) {
	w, h := pitch, pitch
	switch {
	case columns != 0:
		w *= share
	default:
		h *= share
	}
	if columns > 0 {
		x += pitch - w
	}
	if rows > 0 {
		y += pitch - h
	}
	const tone = "#505050"
	p.Fill(x, y, w, h, draw.Fill(tone))
}

// natural draws the top left blocks at their natural size, as many as fit, up to four by
// four and no higher than that. Darker is farther back.
func (m *maker) natural(g engine.Group, width, high float64) sheet.Block {
	const most = 4
	pitch := g.Built.Pitch.Millimetres()
	grid := g.Built.Panels[0].Grid
	columns := max(1, min(most, int(width/pitch), grid.Columns))
	rows := max(1, min(most, int(high/pitch), grid.Rows))
	return sheet.Piece{Height: pitch * float64(rows), Draw: func(p sheet.Pen) {
		for row := range rows {
			for column := range columns {
				x, y := float64(column)*pitch, float64(row)*pitch
				level := grid.At(row, column)
				p.Fill(x, y, pitch, pitch, grey(int(level), grid.Heights))
				p.Box(x, y, pitch, pitch, draw.Visible)
			}
		}
	}}
}

// comb draws the heights side by side on their backer, to half of their size.
func (m *maker) comb(heights []length.Length, width float64) sheet.Block {
	const half, tooth, label, base = 0.5, 12.0, 5.0, 1.5
	tallest := 0.0
	for _, h := range heights {
		tallest = max(tallest, h.Millimetres())
	}
	step := min(2*tooth, width/float64(len(heights)))
	return sheet.Piece{Height: half*tallest + base + label, Draw: func(p sheet.Pen) {
		floor := half * tallest
		for i, h := range heights {
			x, high := float64(i)*step, half*h.Millimetres()
			p.Fill(x, floor-high, step/2, high, grey(i, len(heights)))
			p.Box(x, floor-high, step/2, high, draw.Visible)
			p.Text(x, floor+base+label-0.8, sheet.Type{Size: sheet.SmallSize}, sheet.Fit(sheet.Regular, sheet.SmallSize, step, m.Show(h)))
		}
		p.Line(0, floor+base/2, step*float64(len(heights)), floor+base/2, draw.Outline)
	}}
}
