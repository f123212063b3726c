package papers

import (
	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/measure"
	"blockfield/engine/panel"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/wall"
)

// Drawings of the size of the thing, for a plotter or a cutter: they go along with
// the sets as files and are on no sheet. Lines that are cut or bored stand in groups
// of the classes "cut" and "bore".
const (
	fullMargin = 20.0 // round the thing, mm
	fullType   = 6.0
	boreRadius = 1.5 // of a hole's mark: what a lead hole takes away
)

// full is a drawing of a thing of width by height mm at its own size. draw has the
// thing's top left corner as its origin.
func (m *maker) full(name, title, view string, width, height float64, show func(sheet.Pen)) sheet.Drawing {
	const head, bar, check = 4 * fullType, 100.0, fullType / 2
	return sheet.Drawing{
		Name: name, Title: title, Width: max(width, bar) + 2*fullMargin, Height: height + 2*fullMargin + head,
		Draw: func(p sheet.Pen) {
			room := p.Width - 2*fullMargin
			line := func(n float64, size float64, text string) {
				if wide := sheet.Width(sheet.Regular, size, text); wide > room {
					size *= room / wide // all of it has to be read
				}
				p.Text(fullMargin, fullMargin+n*fullType, sheet.Type{Size: size}, text)
			}
			line(-1.4, fullType, m.T("full/head", "view", view, "what", title, "job", m.Doc.Design.Title, "revision", m.Plan.Revision))
			p.Group("scale-check", func() { p.Fill(fullMargin, fullMargin, bar, check, sheet.Black()) })
			line(1.6, fullType*0.8, m.T("full/check"))
			show(p.In(fullMargin, fullMargin+head, width, height))
		},
	}
}

// ofGroup says of which group a drawing is, where there are several.
func (m *maker) ofGroup(i int, text string) string {
	if len(m.Plan.Groups) == 1 {
		return text
	}
	return m.T("cards/group", "group", m.groupName(i), "panel", text)
}

// bore marks the middle of a hole.
func bore(p sheet.Pen, x, y float64) {
	const arm = 4.0
	p.Group("bore", func() { p.Circle(x, y, boreRadius, draw.Fine) })
	p.Line(x-arm, y, x+arm, y, draw.Fine)
	p.Line(x, y-arm, x, y+arm, draw.Fine)
}

// fullBackers are the backers as they are cut, seen from the front: the field in them
// from the start corner, and a line at every fifth row.
func (m *maker) fullBackers() []sheet.Drawing {
	var all []sheet.Drawing
	for i, g := range m.Plan.Groups {
		wide := bench.CutBacker(g.Built.FieldWidth, m.Doc.Design.Bench).Millimetres()
		high := bench.CutBacker(g.Built.FieldHeight, m.Doc.Design.Bench).Millimetres()
		fieldW, fieldH := g.Built.FieldWidth.Millimetres(), g.Built.FieldHeight.Millimetres()
		all = append(all, m.full(m.name("backer", i), m.ofGroup(i, m.T("full/backer")), m.T("papers/front"), wide, high, func(p sheet.Pen) {
			edge, into := 0.0, 1.0
			if m.start() == design.BottomEdge {
				edge, into = high, -1
			}
			p.Group("cut", func() { p.Box(0, 0, wide, high, draw.Visible) })
			p.Group("field", func() { p.Box(0, edge+min(0, into*fieldH), fieldW, fieldH, draw.Fine) })
			p.Line(0, edge, wide, edge, draw.Heavy)
			p.Line(0, 0, 0, high, draw.Heavy)
			for _, mark := range measure.Marks(g.Built.Rows, g.Design.Block.Size, g.Design.Block.Slack) {
				y := edge + into*mark.Distance.Millimetres()
				p.Line(0, y, fieldW, y, draw.Fine)
			}
			p.Polygon(draw.Fine, sheet.Black(), 1, edge+into, 21, edge+into, 1, edge+21*into)
		}))
	}
	return all
}

// fullRears are the backs of the panels with the screws of the cleat, as large as
// their fields: where nothing holds, there are none.
func (m *maker) fullRears() []sheet.Drawing {
	var all []sheet.Drawing
	for i, b := range m.backs() {
		if len(b.Row.Places) == 0 {
			continue
		}
		wide, high := b.FieldMM(), float64(b.Grid.Rows)*b.PitchMM
		all = append(all, m.full(m.name("rear-holes", i), m.T("full/rear", "back", m.backName(b)), m.T("papers/rear"), wide, high, func(p sheet.Pen) {
			p.Group("field", func() { p.Box(0, 0, wide, high, draw.Visible) })
			for _, part := range b.hanging.Built.Panels[0].Parts {
				if part.Kind == panel.CleatPart {
					w, h := part.Width.Millimetres(), part.Height.Millimetres()
					p.DashedBox((wide-w)/2, b.Foot.Millimetres()-h, w, h, draw.Hidden)
				}
			}
			for _, hole := range b.Holes(b.Row) {
				bore(p, hole.FromLeftMM, hole.FromTopMM)
			}
		}))
	}
	return all
}

// fullWalls are the holes in the wall with the panels round them, seen from the room.
// As long as evidence is asked for there are none.
func (m *maker) fullWalls() []sheet.Drawing {
	if len(m.hangBlocked()) > 0 {
		return nil
	}
	var all []sheet.Drawing
	for i, h := range m.Plan.Hangings {
		holes := h.Holes()
		if h.Means == wall.Stand || len(holes) == 0 {
			continue
		}
		left, foot := h.Built.Left.Millimetres(), h.Built.Panels[0].Bottom.Millimetres()
		right, top := left+h.Built.TotalWidth.Millimetres(), foot
		for _, one := range h.Built.Panels {
			foot = min(foot, one.Bottom.Millimetres())
			top = max(top, one.Bottom.Millimetres()+h.Built.OuterHeight.Millimetres())
		}
		for _, hole := range holes {
			left, right = min(left, hole.XM*1000), max(right, hole.XM*1000)
			foot, top = min(foot, hole.YM*1000), max(top, hole.YM*1000)
		}
		all = append(all, m.full(m.name("wall-holes", i), m.ofGroup(i, m.T("full/wall")), m.T("papers/front"), right-left, top-foot, func(p sheet.Pen) {
			for _, one := range h.Built.Panels {
				x, y := one.Left.Millimetres()-left, top-one.Bottom.Millimetres()-h.Built.OuterHeight.Millimetres()
				p.Group("panel", func() {
					p.DashedBox(x, y, h.Built.OuterWidth.Millimetres(), h.Built.OuterHeight.Millimetres(), draw.Hidden)
				})
			}
			for _, bay := range h.Bays {
				y := top - bay.TipM*1000
				p.Line(max(bay.FromM*1000-left, 0), y, min(bay.ToM*1000-left, right-left), y, draw.Visible)
			}
			for _, hole := range holes {
				bore(p, hole.XM*1000-left, top-hole.YM*1000)
			}
		}))
	}
	return all
}
