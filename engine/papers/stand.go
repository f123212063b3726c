package papers

import (
	"math"

	"blockfield/engine/draw"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/wall"
)

// standSheet is how panels stand on the floor where nothing may go into the wall: the stand
// from the side with its tipping edge, and the order of the work. As long as it tips too
// soon it says so, and nothing else.
func (m *maker) standSheet() sheet.Paper {
	var blocks []sheet.Block
	stops := m.hangBlocked()
	for i, h := range m.Plan.Hangings {
		if h.Means != wall.Stand {
			continue
		}
		if len(stops) > 0 {
			blocks = append([]sheet.Block{m.shout(m.T("standing/not"))}, m.stopNotices(stops)...)
			return m.paper("stand-sheet", sheet.NoView, blocks...)
		}
		if len(m.Plan.Groups) > 1 {
			blocks = append(blocks, sheet.Heading(m.groupName(i)))
		}
		t := sheet.Table{Columns: []sheet.Column{{}, {Grow: true}}}
		for _, f := range h.StandFacts() {
			t.Rows = append(t.Rows, m.factRow(f))
		}
		blocks = append(blocks,
			sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.drawing(m.standDrawing(i, h, width))} }),
			t, sheet.List{Mark: sheet.Ticks, Items: m.day(h)}, sheet.Small(m.T("hold/not-counted-stand")))
	}
	if len(blocks) == 0 {
		return m.paper("stand-sheet", sheet.NoView)
	}
	blocks = append(blocks, sheet.Notice{Sign: sheet.CautionSign, Text: m.T("standing/caution")})
	blocks = append(blocks, m.cautions("wall/stand", "wall/hands", "wall/safety", "wall/heat", "wall/grille")...)
	return m.paper("stand-sheet", sheet.NoView, append(blocks, m.hungBy())...)
}

// standDrawing is the stand from the side, the wall at the left: foot, panel, middle of
// mass, and the line over which it falls.
func (m *maker) standDrawing(i int, h wall.Hanging, width float64) sheet.Drawing {
	const margin, behind, high, footHigh = 16.0, 60.0, 88.0, 40.0
	s, t := h.Design.Stand, h.Tipping()
	base, toe, centre := s.BaseDepth.Millimetres(), s.ToeAhead.Millimetres(), t.Centre.Millimetres()
	top := h.Built.Bottom.Add(h.Built.TotalHeight).Millimetres()
	deep, out := h.Deep().Millimetres(), h.Built.Panels[0].CentroidM*1000
	middle := behind + math.Max(base-toe, out) // x of the mass
	wide := math.Max(middle+toe, middle-out+deep) + behind
	tall := math.Max(top, centre) + behind
	k := fitted(wide, tall, width-3*margin, high)
	from, at, to := k.of(middle-base+toe), k.of(middle), k.of(middle+toe)
	spans := []span{{from, at, m.Words.Number(s.BaseDepth.Sub(s.ToeAhead))}, {at, to, m.Words.Number(s.ToeAhead)}, {from, to, m.Words.Number(s.BaseDepth)}}
	below := spansHeight(spans)
	return sheet.Drawing{
		Name: m.name("stand", i), Title: m.T("standing/title"), Width: width, Height: k.of(tall) + below + scaleHeight,
		Draw: func(p sheet.Pen) {
			o := p.In(margin, 1, width-margin, k.of(tall)+below)
			floor := k.of(tall)
			y := func(mm float64) float64 { return floor - k.of(mm) }
			o.Fill(0, 0, 2, floor, o.Hatch(1, 3))
			o.Line(2, 0, 2, floor, draw.Visible)
			o.Line(0, floor, k.of(wide), floor, draw.Heavy)
			o.Box(k.of(middle-base+toe), y(footHigh), k.of(base), k.of(footHigh), draw.Outline)
			bottom := h.Built.Bottom.Millimetres()
			o.Fill(k.of(middle-out), y(top), k.of(deep), k.of(top-bottom), o.Hatch(1, 4))
			o.Box(k.of(middle-out), y(top), k.of(deep), k.of(top-bottom), draw.Outline)
			o.Line(k.of(middle-out), y(top), k.of(middle-out), y(footHigh), draw.Heavy) // the post
			edge := middle + toe
			if t.Backwards {
				edge = middle - (base - toe)
			}
			o.Dashed(k.of(edge), floor, k.of(middle), y(centre), draw.Visible)
			o.Dashed(k.of(middle), floor, k.of(middle), y(centre), draw.Hidden)
			o.Circle(k.of(middle), y(centre), 1.6, draw.Outline)
			drawSpans(o, floor, spans)
			p.Upright(1+y(centre), 1+floor, margin-sheet.DimensionRow, margin, m.Words.Number(t.Centre))
			m.scaleBar(p.In(margin, 1+floor+below-1, width-margin, scaleHeight), k)
		},
	}
}
