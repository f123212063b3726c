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
			{Text: m.Words.Number(long.Add(bench.TestFit())), Size: armSize()}, {Text: m.Words.Number(long), Size: armSize()}, {},
		})
	}
	return t
}

// stackText says how deep it all is, and how the frame stands to the blocks.
func (m *maker) stackText(g panel.Group) string {
	reveal := m.reveal(g)
	if reveal.Cmp(length.MM(0)) < 0 {
		return m.T("framing/proud", "stack", g.Stack, "depth", g.FrameDepth, "proud", length.MM(0).Sub(reveal))
	}
	return m.T("framing/stack", "stack", g.Stack, "depth", g.FrameDepth, "reveal", reveal)
}

// reveal is how far the frame's edge stands before the tallest blocks as it is built: what is
// between the two depths as they are printed.
func (m *maker) reveal(g panel.Group) length.Length {
	return m.asShown(g.FrameDepth).Sub(m.asShown(g.Stack))
}

// stackDrawing is a section from the wall outwards: cleat, backer, tallest block,
// and the frame beside them, each with its name, and with their depths.
func (m *maker) stackDrawing(group int, width float64) sheet.Drawing {
	g := m.Plan.Groups[group]
	d := g.Design
	cleat, backer := d.Cleat.Thickness.Millimetres(), d.Backer.Thickness.Millimetres()
	tallest := d.Heights[len(d.Heights)-1]
	stack, frameDepth := g.Built.Stack.Millimetres(), g.Built.FrameDepth.Millimetres()
	const left, names, high, frame, apart = 14.0, 8.0, 26.0, 7.0, 2.0 // names: room for them above it
	k := fitted(math.Max(frameDepth, stack), 1, width-40, 1)
	number := m.Words.Number
	spans := []span{
		{0, k.of(cleat), number(d.Cleat.Thickness)}, {k.of(cleat), k.of(cleat + backer), number(d.Backer.Thickness)},
		{k.of(cleat + backer), k.of(stack), number(tallest)}, {0, k.of(frameDepth), number(g.Built.FrameDepth)},
	}
	return sheet.Drawing{
		Name: m.name("stack", group), Title: m.T("framing/section"), Width: width, Height: names + high + spansHeight(spans),
		Draw: func(p sheet.Pen) {
			o := p.In(left, names, p.Width-left, high+spansHeight(spans))
			p.Fill(left-4, names-2, 4, high+4, p.Hatch(1, 3))
			p.Line(left, names-2, left, names+high+2, draw.Outline)
			part := func(from, deep, y, h float64, level int) {
				o.Fill(k.of(from), y, k.of(deep), h, o.Hatch(level, 4))
				o.Box(k.of(from), y, k.of(deep), h, draw.Outline)
			}
			part(0, frameDepth, 0, frame, 0)
			part(0, cleat, frame+apart, high-frame-apart, 1)
			part(cleat, backer, frame+apart, high-frame-apart, 2)
			part(cleat+backer, tallest.Millimetres(), frame+apart, high-frame-apart, 0)
			m.nameLayers(p, left, names+frame+apart+2, names, k, []layer{
				{"given/wall", -2 * float64(k)}, {"part/cleat", cleat / 2}, {"part/backer", cleat + backer/2}, {"part/tallest", cleat + backer + tallest.Millimetres()/2},
			})
			o.Text(k.of(frameDepth)+3, frame-2, sheet.Type{Size: sheet.SmallSize}, m.T("part/frame"))
			drawSpans(o, high, spans)
		},
	}
}

// layer is a part of a section with its name and its middle, mm of the thing from the wall.
type layer struct {
	name   string
	middle float64
}

// nameLayers writes the names of layers above a section, from left to right, each on a line
// down to a place in its layer at y.
func (m *maker) nameLayers(p sheet.Pen, left, y, above float64, k scale, all []layer) {
	const apart = 4.0
	end := -apart
	for _, one := range all {
		name := capital(m.T(one.name))
		wide := sheet.Width(sheet.Regular, sheet.SmallSize, name)
		x := left + k.of(one.middle)
		from := min(max(x-wide/2, end+apart), p.Width-wide)
		end = from + wide
		p.Text(from, above-4.5, sheet.Type{Size: sheet.SmallSize, Class: "layer"}, name)
		p.Line(from+wide/2, above-3.8, x, y, draw.Fine)
		p.Circle(x, y, 0.5, draw.Visible)
	}
}
