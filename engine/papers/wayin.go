package papers

import (
	"math"
	"slices"

	"blockfield/engine/draw"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/wall"
)

// wayIn is each narrow place on the way from the street, whether a panel passes, and how it
// lies where it turns.
func (m *maker) wayIn() sheet.Paper {
	var blocks []sheet.Block
	for i, h := range m.Plan.Hangings {
		steps := h.WaySteps()
		if len(steps) == 0 {
			continue
		}
		if len(m.Plan.Groups) > 1 {
			blocks = append(blocks, sheet.Heading(m.groupName(i)))
		}
		t := sheet.Table{Least: 9, Columns: []sheet.Column{
			{Width: 8}, {Head: m.T("wayin/step"), Grow: true}, {Head: m.T("wayin/size"), Grow: true}, {Head: m.T("wayin/result"), Grow: true},
			{Head: m.T("wayin/longest"), Width: 24}, {Head: m.T("wayin/again"), Width: 28},
		}}
		for _, s := range steps {
			size, longest := "", ""
			if s.Measured {
				size, longest = m.said(s.Size), m.Show(s.Longest)
			}
			t.Rows = append(t.Rows, []sheet.Cell{{Tick: true}, {Text: m.T(s.Key()), Bold: true}, {Text: size}, {Text: m.T(s.Result())}, {Text: longest}, {}})
		}
		blocks = append(blocks, sheet.Say(m.said(h.Packed().Said())), t)
		blocks = append(blocks, m.turns(i, h, steps)...)
	}
	if len(blocks) == 0 {
		return m.paper("way-in", sheet.NoView)
	}
	blocks = append(blocks, sheet.Small(m.T("way/open-points")))
	return m.paper("way-in", sheet.NoView, append(blocks, m.cautions("wall/way-in")...)...)
}

// turns are the corners that were measured, from above, each with the packed panel where
// it has least room, side by side.
func (m *maker) turns(group int, h wall.Hanging, steps []wall.Step) []sheet.Block {
	var columns [][]sheet.Block
	for k, s := range steps {
		if !s.Measured || s.A.IsZero() || s.B.IsZero() {
			continue
		}
		name := m.name("turn", group, k)
		columns = append(columns, []sheet.Block{sheet.Fitted(func(width float64) []sheet.Block {
			return []sheet.Block{m.drawing(m.turnDrawing(name, h, s, min(width, 88)))}
		})})
	}
	if len(columns) == 0 {
		return nil
	}
	return []sheet.Block{sheet.Beside{Shares: slices.Repeat([]float64{1}, len(columns)), Columns: columns}}
}

// turnDrawing is a corner of two passages seen from above: the first comes from the left,
// the second leads up. The panel's longer side that may lie there is drawn at the angle
// where the inner corner is nearest.
func (m *maker) turnDrawing(name string, h wall.Hanging, s wall.Step, width float64) sheet.Drawing {
	const millimetres = 1000
	a, b := s.A.Millimetres(), s.B.Millimetres()
	p := h.Packed()
	long, thick := along(p, s)*millimetres, p.DeepM*millimetres
	angle := wall.TightestTurn(a/millimetres, b/millimetres, p.DeepM)
	sin, cos := math.Sincos(angle)
	reachX, reachY := math.Max(b, long*cos)+0.25*b, math.Max(a, long*sin)+0.25*a
	const margin, high = 12.0, 50.0
	k := fitted(reachX, reachY, width-margin-4, high)
	top := 1.0 // or as much as the figures beside a short dimension take
	if room, beside := sheet.Outside(k.of(a), m.Words.Number(s.A)); beside {
		top = max(top, room-k.of(reachY-a)+1)
	}
	return sheet.Drawing{
		Name: name, Title: m.T("wayin/turn"), Width: width, Height: top + k.of(reachY) + margin + scaleHeight + 3,
		Draw: func(pen sheet.Pen) {
			o := pen.In(0, top, width, k.of(reachY)+margin)
			// The outer corner lies at the right and below.
			x, y := k.of(reachX), k.of(reachY)
			inX, inY := x-k.of(b), y-k.of(a)
			o.Line(0, y, x, y, draw.Heavy)
			o.Line(x, 0, x, y, draw.Heavy)
			o.Line(0, inY, inX, inY, draw.Heavy)
			o.Line(inX, 0, inX, inY, draw.Heavy)
			// Its outer side touches both outer walls; the other one lies towards the corner.
			px, py, qx, qy := x-k.of(long*cos), y, x, y-k.of(long*sin)
			dx, dy := -k.of(thick*sin), -k.of(thick*cos)
			if px+dx >= 0 && qy+dy >= 0 {
				o.Polygon(draw.Visible, o.Hatch(1, 3), px, py, qx, qy, qx+dx, qy+dy, px+dx, py+dy)
			}
			o.Across(inX, x, y+sheet.DimensionRow, y, m.Words.Number(s.B))
			pen.Upright(top+inY, top+y, x+margin-2, x, m.Words.Number(s.A))
			m.scaleBar(pen.In(0, top+k.of(reachY)+margin-1, width, scaleHeight), k)
			pen.Text(0, top+k.of(reachY)+margin+scaleHeight+2, sheet.Type{Size: sheet.SmallSize},
				sheet.Fit(sheet.Regular, sheet.SmallSize, width, m.T("wayin/turn-of", "step", m.T(s.Key()), "long", m.mm(long))))
		},
	}
}

// along is the side of a packed panel that lies along a corner: the longer one that turns
// there, or the shorter one where none does.
func along(p wall.Packed, s wall.Step) float64 {
	long, short := math.Max(p.WidthM, p.HeightM), math.Min(p.WidthM, p.HeightM)
	if long <= s.Longest.Metres() {
		return long
	}
	return short
}
