package papers

import (
	"math"

	"blockfield/engine/bench"
	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// finishSchedule is the coats in their order, with what each takes and how long
// the next one waits.
func (m *maker) finishSchedule() sheet.Paper {
	coats := m.Plan.Bill.Coats
	if len(coats) == 0 {
		return m.paper("finish", sheet.NoView)
	}
	blocks := m.cautions("bench/oily-rags", "bench/finished-bases")
	blocks = append(blocks, sheet.Say(m.T("finish/after", "h", int(bench.GlueSetHours(m.Doc.Design.Bench.Temperature)+0.5))))
	t := sheet.Table{Least: 10, Grid: true, Columns: []sheet.Column{
		{Head: m.T("finish/coat"), Grow: true}, {Head: m.T("finishing/litres"), Right: true}, {Head: m.T("finishing/wait"), Grow: true},
		{Head: m.T("finishing/begun"), Width: 26}, {Head: m.T("finishing/next"), Width: 26}, {Head: m.T("finishing/by"), Width: 22},
	}}
	for _, c := range coats {
		key := "finish/field"
		if c.Frame {
			key = "finish/frame"
		}
		t.Rows = append(t.Rows, []sheet.Cell{
			{Text: capital(m.T(key, "finish", m.wood(c.Finish), "n", c.Number, "of", c.Of)), Bold: true},
			{Text: m.Show(words.Litres(c.Litres()))}, {Text: m.wait(c)}, {}, {}, {},
		})
	}
	blocks = append(blocks, t, m.coatParts())
	return m.paper("finish", sheet.NoView, append(blocks, sheet.Small(m.T("finish/habit")), sheet.Small(m.T("finishing/chip")))...)
}

// coatParts is what of each coat goes on end grain, on sides and on frames.
func (m *maker) coatParts() sheet.Block {
	t := sheet.Table{Size: sheet.SmallSize, Columns: []sheet.Column{
		{Head: m.T("finish/coat"), Grow: true}, {Head: m.T("finish/tops"), Right: true}, {Head: m.T("finish/long"), Right: true}, {Head: m.T("finish/on-frame"), Right: true},
	}}
	litres := func(x float64) string {
		if x == 0 {
			return ""
		}
		return m.Show(words.Litres(x))
	}
	for _, c := range m.Plan.Bill.Coats {
		t.Rows = append(t.Rows, sheet.Row(capital(m.T("finishing/number", "finish", m.wood(c.Finish), "n", c.Number)),
			litres(c.TopsLitres), litres(c.LongLitres), litres(c.FrameLitres)))
	}
	return t
}

// wait is how long to wait after a coat.
func (m *maker) wait(c bench.Coat) string {
	const day = 24
	low, high, key := c.Next.Low, c.Next.High, "finish/next"
	if c.Number == c.Of {
		key = "finish/dry"
	}
	if high == 0 {
		return m.T("finish/by-label")
	}
	span := "finish/hours"
	if low >= 2*day {
		span, low, high = "finish/days", low/day, high/day
	}
	if low == high {
		span += "-about"
	}
	return m.T(key, "span", m.T(span, "low", int(low), "high", int(high)))
}

// frameList is the pieces of the frames, first for a test fit, then as measured.
func (m *maker) frameList() sheet.Paper {
	var blocks []sheet.Block
	for i, g := range m.Plan.Groups {
		if !g.Built.Framed {
			continue
		}
		if len(m.Plan.Groups) > 1 {
			blocks = append(blocks, sheet.Heading(m.groupName(i)))
		}
		blocks = append(blocks, m.framePieces(i), sheet.Say(m.T("framing/gap", "gap", g.Design.Frame.Gap, "joint", m.T("framing/"+g.Design.Frame.Joint))),
			sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.drawing(m.stackDrawing(i, width))} }),
			sheet.Say(m.stackText(g.Built)),
			sheet.List{Mark: sheet.Ticks, Items: m.frameSteps(i)})
	}
	if len(blocks) == 0 {
		return m.paper("frame", sheet.NoView)
	}
	return m.paper("frame", sheet.NoView, append(blocks, m.cautions("frame/", "moisture/frame-gap", "moisture/growth")...)...)
}

// frameSteps are the frame from the boards to its marks.
func (m *maker) frameSteps(group int) []string {
	g := m.Plan.Groups[group]
	var all []string
	if g.Built.FrameDepth.Cmp(g.Design.Frame.Board) < 0 {
		all = append(all, m.T("framing/step-rip", "depth", g.Built.FrameDepth, "board", g.Design.Frame.Board))
	}
	return append(all, m.T("framing/step-fit", "more", bench.TestFit()), m.T("framing/step-final"), m.T("framing/step-pins"), m.T("framing/step-mark"))
}

// framePieces are the boards of one panel of a group.
func (m *maker) framePieces(group int) sheet.Block {
	g := m.Plan.Groups[group]
	t := sheet.Table{Least: 9, Grid: true, Columns: []sheet.Column{
		{Head: m.T("framing/piece"), Grow: true}, {Head: m.T("framing/count"), Right: true}, {Head: m.T("framing/test"), Right: true},
		{Head: m.T("framing/drawn"), Right: true}, {Head: m.T("framing/final"), Width: 32},
	}}
	for _, part := range g.Built.Panels[0].Parts {
		if part.Kind != panel.FramePart {
			continue
		}
		long := m.asShown(length.Max(part.Width, part.Height)) // so that the two columns differ by what is said
		t.Rows = append(t.Rows, []sheet.Cell{
			{Text: capital(m.T("part/" + part.Name)), Bold: true}, {Text: m.Show(part.Count * len(g.Built.Panels))},
			{Text: m.Words.Number(long.Add(bench.TestFit()))}, {Text: m.Words.Number(long)}, {},
		})
	}
	return t
}

// stackText says how deep it all is, and how the frame stands to the blocks.
func (m *maker) stackText(g panel.Group) string {
	reveal := g.FrameDepth.Sub(g.Stack)
	if reveal.Cmp(length.MM(0)) < 0 {
		return m.T("framing/proud", "stack", g.Stack, "depth", g.FrameDepth, "proud", g.Stack.Sub(g.FrameDepth))
	}
	return m.T("framing/stack", "stack", g.Stack, "depth", g.FrameDepth, "reveal", reveal)
}

// stackDrawing is a section from the wall outwards: cleat, backer, tallest block,
// and the frame beside them, with their depths.
func (m *maker) stackDrawing(group int, width float64) sheet.Drawing {
	g := m.Plan.Groups[group]
	d := g.Design
	cleat, backer := d.Cleat.Thickness.Millimetres(), d.Backer.Thickness.Millimetres()
	tallest := d.Heights[len(d.Heights)-1]
	depth := math.Max(g.Built.FrameDepth.Millimetres(), g.Built.Stack.Millimetres())
	const high, top = 26.0, 8.0
	k := fitted(depth, 1, width-40, 1)
	return sheet.Drawing{
		Name: m.name("stack", group), Title: m.T("framing/section"), Width: width, Height: top + high + 26,
		Draw: func(p sheet.Pen) {
			x, end := 14.0, 0.0
			o := p.In(x, top, p.Width-x, high+26)
			p.Fill(x-4, top-4, 4, high+8, p.Hatch(1, 3))
			p.Line(x, top-4, x, top+high+4, draw.Outline)
			part := func(from, deep, y, h float64, level int) {
				o.Fill(k.of(from), y, k.of(deep), h, o.Hatch(level, 4))
				o.Box(k.of(from), y, k.of(deep), h, draw.Outline)
			}
			frame := 7.0
			part(0, g.Built.FrameDepth.Millimetres(), 0, frame, 0)
			part(0, cleat, frame+2, high-frame-2, 1)
			part(cleat, backer, frame+2, high-frame-2, 2)
			part(cleat+backer, tallest.Millimetres(), frame+2, high-frame-2, 0)
			end = high + 6
			number := m.Words.Number
			o.Across(0, k.of(cleat), end, high, number(d.Cleat.Thickness))
			o.Across(k.of(cleat), k.of(cleat+backer), end+6, high, number(d.Backer.Thickness))
			o.Across(k.of(cleat+backer), k.of(cleat+backer+tallest.Millimetres()), end, high, number(tallest))
			o.Across(0, k.of(g.Built.FrameDepth.Millimetres()), end+12, high, number(g.Built.FrameDepth))
			o.Text(k.of(g.Built.FrameDepth.Millimetres())+3, frame-2, sheet.Type{Size: sheet.SmallSize}, m.T("part/frame"))
		},
	}
}
