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
	blocks := []sheet.Block{
		sheet.Say(m.T("look-paper/lead", "wood", capital(m.wood(g.Design.Wood)), "finish", m.wood(g.Design.Finish.Kind))),
		sheet.Heading(m.T("look-paper/lamps")),
		sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.lamps(grid, g.Design.Heights, width)} }),
		sheet.Heading(m.T("look-paper/natural")),
		sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.natural(g, width)} }),
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

// lamps draws the panel four times: a line where a taller block on the side of the lamp
// throws its shadow over at least half of its neighbour.
func (m *maker) lamps(grid field.Grid, heights []length.Length, width float64) sheet.Block {
	const gap, label = 4, 5
	each := (width - 3*gap) / 4
	pitch := each / float64(grid.Columns)
	high := min(pitch*float64(grid.Rows), 60)
	pitch = high / float64(grid.Rows)
	reach := 1 / math.Tan(lampDeg*math.Pi/180) // of the shadow of a step of one
	pitchMM := m.Plan.Groups[0].Built.Pitch.Millimetres()
	return sheet.Piece{Height: high + label, Draw: func(p sheet.Pen) {
		for i, lamp := range []struct {
			key            string
			columns, rows  int
			x1, y1, x2, y2 float64 // of the shaded edge of a cell
		}{
			{"left", -1, 0, 0, 0, 0, 1}, {"top", 0, -1, 0, 0, 1, 0}, {"right", 1, 0, 1, 0, 1, 1}, {"bottom", 0, 1, 0, 1, 1, 1},
		} {
			at := p.In(float64(i)*(each+gap), 0, each, high)
			m.fieldPicture(at, grid, pitch)
			var lines [][4]float64
			for row := range grid.Rows {
				for column := range grid.Columns {
					r, c := row+lamp.rows, column+lamp.columns
					if r < 0 || c < 0 || r >= grid.Rows || c >= grid.Columns {
						continue
					}
					step := heights[grid.At(r, c)].Millimetres() - heights[grid.At(row, column)].Millimetres()
					if step*reach < pitchMM/2 {
						continue
					}
					x, y := float64(column)*pitch, float64(row)*pitch
					lines = append(lines, [4]float64{x + lamp.x1*pitch, y + lamp.y1*pitch, x + lamp.x2*pitch, y + lamp.y2*pitch})
				}
			}
			if len(lines) > 0 {
				at.Grid(draw.Outline, lines...)
			}
			p.Text(float64(i)*(each+gap), high+label-0.8, sheet.Type{Size: sheet.SmallSize}, sheet.Fit(sheet.Regular, sheet.SmallSize, each, m.T("look-paper/lamp-"+lamp.key)))
		}
	}}
}

// natural draws the top left blocks at their natural size, as many as fit, up to four by
// four. Darker is farther back.
func (m *maker) natural(g engine.Group, width float64) sheet.Block {
	const most, high = 4, 110.0
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
