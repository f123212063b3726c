package papers

import (
	"math"
	"strings"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/scene"
	"blockfield/engine/words"
)

// lookCard is what a client keeps of the look: the panel under four lamps, some blocks at
// their natural size, chips of the woods, the heights as a comb and the section of the
// frame; and how to care for it, in one piece that can be cut off.
func (m *maker) lookCard() sheet.Paper {
	g := m.Plan.Groups[0]
	fitted := func(make func(width float64) sheet.Block) sheet.Block {
		return sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{make(width)} })
	}
	natural := m.T("look-paper/natural")
	columns, rows := m.closeUp(g)
	half, chip := m.either(0.5, 0.35), m.either(9, 6) // now: what is fitted is drawn later
	if min(columns, rows) < closeUp {
		natural = m.T("look-paper/natural-cut")
	}
	finish := []string{m.wood(g.Design.Finish.Kind)}
	if c := g.Design.Finish.Colour; c != design.Clear {
		finish = append(finish, m.wood(c))
	}
	blocks := []sheet.Block{
		sheet.Say(m.T("look-paper/lead", "wood", capital(m.Show(g.Design.WoodName())), "finish", strings.Join(finish, ", "))),
		sheet.Heading(m.T("look-paper/lamps")),
		fitted(func(width float64) sheet.Block { return m.lamps(g, width) }),
		sheet.Heading(natural),
		fitted(func(width float64) sheet.Block { return m.natural(g, columns, rows) }),
		sheet.Beside{Shares: []float64{1, 1}, Columns: [][]sheet.Block{
			{sheet.Heading(m.T("look-paper/chips")), fitted(func(width float64) sheet.Block { return m.chips(g, width, chip) }), sheet.Small(m.T("look-paper/chips-lead"))},
			{sheet.Heading(m.T("look-paper/heights")), fitted(func(width float64) sheet.Block { return m.comb(g, width, half) })},
		}},
	}
	if g.Built.Framed {
		blocks = append(blocks, m.whole(
			sheet.Heading(m.T("look-paper/section")),
			fitted(func(width float64) sheet.Block { return m.stackDrawing(0, width) }),
			sheet.Small(m.frameText(g)),
		))
	}
	return m.paper("look-card", sheet.NoView, append(blocks, m.whole(m.care()...))...)
}

// frameText is wood and size of the frame, and how its edge stands to the tallest blocks.
func (m *maker) frameText(g engine.Group) string {
	key, reveal := "look-paper/frame", m.reveal(g.Built)
	if reveal.Cmp(length.MM(0)) < 0 {
		key, reveal = "look-paper/frame-behind", length.MM(0).Sub(reveal)
	}
	return m.T(key, "wood", m.wood(g.Design.Frame.Wood), "thickness", g.Design.Frame.Thickness, "depth", g.Built.FrameDepth, "reveal", reveal)
}

// whole keeps blocks in one piece.
func (m *maker) whole(blocks ...sheet.Block) sheet.Block {
	return sheet.Beside{Shares: []float64{1}, Columns: [][]sheet.Block{blocks}}
}

// care is how to look after the panels, under a line to cut along.
func (m *maker) care() []sheet.Block {
	items := []string{m.T("care/dust"), m.T("care/water"), m.T("care/air"), m.T("care/heat")}
	if heights := m.allHeights(); len(heights) > 0 {
		items = append(items, m.T("care/spare", "heights", m.Show(heights)))
	}
	items = append(items, m.lifted(), m.T("care/look"))
	lock := sheet.Blanks{{Label: m.T("care/unlock"), Share: 1}, {Label: m.T("care/lock"), Share: 1}}
	var call sheet.Block = sheet.Blanks{{Label: m.T("care/call"), Share: 1}}
	if name, reach, _ := m.sender(); name != "" || reach != "" {
		call = sheet.Text{Text: m.T("care/call-them", "who", strings.Trim(name+" · "+reach, " ·")), Type: sheet.Type{Face: sheet.Bold, Size: m.inHand().Size}}
	}
	cut := sheet.Piece{Height: 1, Draw: func(p sheet.Pen) { p.Dashed(0, 0.5, p.Width, 0.5, draw.Fine) }}
	return []sheet.Block{cut, sheet.Heading(m.T("paper/care-card")), sheet.List{Size: m.inHand().Size, Items: items}, call, lock}
}

// lifted says how heavy the heaviest panel is, and how many take it off.
func (m *maker) lifted() string {
	people, heavy, kg := 1, false, 0.0
	for _, h := range m.Plan.Hangings {
		people, heavy, kg = max(people, h.Lifters()), heavy || h.Heavy(), max(kg, h.Kg())
	}
	key := "care/lift"
	if heavy {
		key = "care/lift-method"
	}
	return m.T(key, "mass", words.Kg(kg), "n", people)
}

// chip is one flat tone.
type chip struct {
	tone scene.RGB
	text string
}

// chips are flat tones of face and end grain of each wood, and of the frame.
func (m *maker) chips(g engine.Group, width, high float64) sheet.Block {
	const wide, gap = 26.0, 2.0
	tones := engine.TonesOf(g.Design)
	var all []chip
	for i, wood := range g.Design.Woods() {
		all = append(all, chip{tones.Woods[i].Face, m.T("look-paper/chip-face", "wood", capital(m.wood(wood)))},
			chip{tones.Woods[i].End, m.T("look-paper/chip-end", "wood", capital(m.wood(wood)))})
	}
	if g.Built.Framed {
		all = append(all, chip{tones.Frame.Face, m.T("look-paper/chip-frame", "wood", m.wood(g.Design.Frame.Wood))})
	}
	return sheet.Piece{Height: float64(len(all))*(high+gap) - gap, Draw: func(p sheet.Pen) {
		for i, c := range all {
			y := float64(i) * (high + gap)
			p.Fill(0, y, wide, high, draw.Fill(c.tone.Hex()))
			p.Box(0, y, wide, high, draw.Fine)
			p.Text(wide+3, y+high/2+1.2, sheet.Type{Size: sheet.SmallSize}, sheet.Fit(sheet.Regular, sheet.SmallSize, width-wide-3, c.text))
		}
	}}
}

// lightAt is how light blocks of a height look from the room: the lower they end the less.
func lightAt(g engine.Group, level int) float64 {
	if n := len(g.Design.Heights); n > 1 {
		return darkest + (1-darkest)*float64(level)/float64(n-1)
	}
	return 1
}

// blockTone is the tone of blocks of a height in some light. Cells without a block show
// the backer.
func blockTone(g engine.Group, tones engine.Tones, wood uint8, level int, light float64) draw.Attr {
	tone := tones.Woods[wood].End
	if g.Design.Heights[level].Nanometres() == 0 {
		tone = tones.Backer.Face
	}
	return draw.Fill(scene.RGB{R: tone.R * light, G: tone.G * light, B: tone.B * light}.Hex())
}

// How dark the lowest blocks are against the tallest, and how far the tone of a block lies
// from the mean. By eye.
const (
	darkest = 0.5
	ownTone = 0.07
)

// toned draws the first cells of a panel in the tones of their woods, each block in a tone
// of its own. Evenly lit, the lower ones are no darker.
func toned(p sheet.Pen, g engine.Group, of panel.Panel, columns, rows int, pitch float64, even bool) {
	tones := engine.TonesOf(g.Design)
	for row := range rows {
		for column := range columns {
			own := ownTone * float64((7*row+3*column)%5-2) / 2
			cell := row*of.Grid.Columns + column
			light := 1.0
			if !even {
				light = lightAt(g, int(of.Grid.Levels[cell]))
			}
			p.Fill(float64(column)*pitch, float64(row)*pitch, pitch, pitch, blockTone(g, tones, of.WoodOf(cell), int(of.Grid.Levels[cell]), light*(1+own)))
		}
	}
}

// tonedField draws a whole panel in the tones of its woods, with one path for each tone.
func tonedField(p sheet.Pen, g engine.Group, of panel.Panel, pitch float64) {
	tones, heights := engine.TonesOf(g.Design), of.Grid.Heights
	f := draw.Field{Columns: of.Grid.Columns, Rows: of.Grid.Rows, Levels: make([]uint8, len(of.Grid.Levels)), Pitch: pitch}
	for cell, level := range of.Grid.Levels {
		f.Levels[cell] = of.WoodOf(cell)*uint8(heights) + level
	}
	for wood := range tones.Woods {
		for level := range heights {
			p.Cells(0, 0, f, uint8(wood*heights+level), blockTone(g, tones, uint8(wood), level, lightAt(g, level)))
		}
	}
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
func (m *maker) lamps(g engine.Group, width float64) sheet.Block {
	grid, heights := g.Built.Panels[0].Grid, g.Design.Heights
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
			toned(at, g, g.Built.Panels[0], columns, rows, pitch, true)
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
	p.Shade(x, y, w, h)
}

// closeUp is how many blocks of a close-up there are along a side.
const closeUp = 4

// closeUp is how many blocks of a close-up fit: where that saves a sheet, fewer rows.
func (m *maker) closeUp(g engine.Group) (columns, rows int) {
	width := m.Format.BodyWidth()
	pitch, grid := g.Built.Pitch.Millimetres(), g.Built.Panels[0].Grid
	columns = max(1, min(closeUp, int(width/pitch)))
	rows = max(1, min(columns, int(m.either(width, 138)/pitch)))
	return min(columns, grid.Columns), min(rows, grid.Rows)
}

// natural draws the top left blocks at their natural size, four by four or as many as the
// sheet is wide, with their heights.
func (m *maker) natural(g engine.Group, columns, rows int) sheet.Block {
	of := g.Built.Panels[0]
	pitch := g.Built.Pitch.Millimetres()
	return sheet.Piece{Height: pitch * float64(rows), Draw: func(p sheet.Pen) {
		toned(p, g, of, columns, rows, pitch, false)
		for row := range rows {
			for column := range columns {
				x, y := float64(column)*pitch, float64(row)*pitch
				p.Box(x, y, pitch, pitch, draw.Visible)
				height := g.Design.Heights[of.Grid.At(row, column)]
				if height.Nanometres() == 0 {
					continue // no block, but the backer
				}
				text := sheet.Fit(sheet.Regular, sheet.SmallSize, pitch-5, m.Show(height))
				w := sheet.Width(sheet.Regular, sheet.SmallSize, text) + 2
				p.Fill(x+1, y+pitch-5, w, 4, sheet.White())
				p.Text(x+2, y+pitch-1.9, sheet.Type{Size: sheet.SmallSize}, text)
			}
		}
	}}
}

// comb draws the heights side by side on their backer, to a part of their size.
func (m *maker) comb(g engine.Group, width, half float64) sheet.Block {
	const tooth, label, base = 12.0, 5.0, 1.5
	heights, face := g.Design.Heights, engine.TonesOf(g.Design).Woods[0].Face.Hex()
	tallest := 0.0
	for _, h := range heights {
		tallest = max(tallest, h.Millimetres())
	}
	step := min(2*tooth, width/float64(len(heights)))
	return sheet.Piece{Height: half*tallest + base + label, Draw: func(p sheet.Pen) {
		floor := half * tallest
		for i, h := range heights {
			x, high := float64(i)*step, half*h.Millimetres()
			p.Fill(x, floor-high, step/2, high, draw.Fill(face))
			p.Box(x, floor-high, step/2, high, draw.Visible)
			p.Text(x, floor+base+label-0.8, sheet.Type{Size: sheet.SmallSize}, sheet.Fit(sheet.Regular, sheet.SmallSize, step, m.Show(h)))
		}
		p.Line(0, floor+base/2, step*float64(len(heights)), floor+base/2, draw.Outline)
	}}
}
