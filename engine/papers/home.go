package papers

import (
	"math"

	"blockfield/engine/bench"
	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// before is what a home builder should know before a saw is bought.
func (m *maker) before() sheet.Paper {
	bill := m.Plan.Bill
	if bill.Panels == 0 {
		return m.paper("before", sheet.NoView)
	}
	g := m.Plan.Groups[0]
	t := sheet.Table{Size: m.inHand().Size, Columns: []sheet.Column{{}, {Grow: true}}}
	add := func(key, value string) {
		t.Rows = append(t.Rows, []sheet.Cell{{Text: m.T("home/" + key)}, {Text: value, Bold: true}})
	}
	add("hours", m.T("home/hours-value", "hours", words.Hours(bill.HomeHours.Typical), "n", int(math.Ceil(bill.Weekends.Typical)), "factor", words.Quantity{Value: bill.HomeFactor}))
	if cost := m.Plan.Price.Materials; cost.Minor > 0 && m.Doc.Design.Work.OwnBuild {
		key := "home/cost-value"
		if m.Book.Placeholder {
			key = "home/cost-example"
		}
		add("cost", m.T(key, "amount", cost.Whole(m.locale())))
	}
	add("mass", m.massText())
	_, blocks := m.Plan.Cells()
	add("blocks", m.Show(blocks))
	space := length.MM(1200)
	add("space", m.T("home/space-value", "width", m.Words.Number(m.round(g.Built.FieldWidth.Add(space))), "height", m.round(g.Built.FieldHeight.Add(space))))
	add("drying", m.drying())
	out := []sheet.Block{
		sheet.Beside{Shares: []float64{1, m.either(1.3, 2.1)}, Columns: [][]sheet.Block{{m.coverPicture(m.either(40, 32))}, {t}}},
		sheet.Heading(m.T("home/right")),
	}
	for _, s := range m.soundText() {
		out = append(out, sheet.Text{Text: s, Type: m.inHand()})
	}
	out = append(out, sheet.Small(m.T("home/noise")))
	return m.paper("before", sheet.NoView, append(append(out, m.stops()...), m.cautionList()...)...)
}

// setHours is how long the glued field lies.
func (m *maker) setHours() int {
	return int(bench.GlueSetHours(m.Doc.Design.Bench.Temperature) + 0.5)
}

// dryDays is how long the finish of the field takes to be dry, in whole days; 0 where its
// label says it.
func (m *maker) dryDays() int {
	const day = 24
	for _, c := range m.Plan.Bill.Coats {
		if c.Number == c.Of && !c.Frame {
			return int(math.Ceil(c.Next.High / day))
		}
	}
	return 0
}

// settlingDays is how long the sticks lie in the room before they are cut; nil where they
// need not.
func (m *maker) settlingDays() any {
	for _, w := range m.Plan.AllWatchOuts() {
		if days, ok := w.Args["days"]; ok && w.Code == "moisture/stock" {
			return days
		}
	}
	return nil
}

// drying is how long sticks and panel lie between the weekends.
func (m *maker) drying() string {
	text := m.T("home/drying-glue", "glue", m.setHours())
	if days := m.dryDays(); days > 0 {
		text = m.T("home/drying-value", "glue", m.setHours(), "days", days)
	}
	if days := m.settlingDays(); days != nil {
		return m.T("home/settling", "days", days) + " " + text
	}
	return text
}

// shopping is what a home builder buys, aisle by aisle, with what is good enough
// in its place.
func (m *maker) shopping() sheet.Paper {
	all := m.goods()
	var blocks []sheet.Block
	for _, a := range aisles() {
		t := sheet.Table{Grid: true, Size: m.either(sheet.BodySize, 3.6), Columns: []sheet.Column{
			{Width: 8}, {Head: m.T("buy/how-much"), Width: 23}, {Head: m.T("buy/what"), Grow: true}, {Head: m.T("home/instead"), Grow: true}, {Head: m.T("stock/paid"), Width: 20},
		}}
		for _, g := range all {
			if g.aisle != a {
				continue
			}
			what := g.what
			if g.look != "" {
				what = m.T("home/what-look", "what", g.what, "look", g.look)
			}
			t.Rows = append(t.Rows, []sheet.Cell{{Tick: true}, {Text: g.count, Bold: true}, {Text: what}, {Text: g.instead}, {}})
		}
		if a == sheetAisle {
			t.Rows = append(t.Rows, m.sheetCuts()...)
		}
		if a == paintAisle && len(t.Rows) > 0 {
			t.Rows = append(t.Rows, []sheet.Cell{{Tick: true}, {}, {Text: m.T("home/brushes")}, {}, {}})
		}
		if len(t.Rows) > 0 {
			blocks = append(blocks, sheet.Heading(m.T("aisle/"+string(a))), t)
			// The prices of a workshop are nobody else's.
			if expected := m.expected(all, a); expected != "" && m.Doc.Design.Work.OwnBuild {
				blocks = append(blocks, sheet.Small(expected))
			}
		}
	}
	if len(blocks) == 0 {
		return m.paper("shopping", sheet.NoView)
	}
	return m.paper("shopping", sheet.NoView, append(blocks, m.cautions("bench/sheet", "bench/board-too-short")...)...)
}

// sheetCuts are the cuts that a yard makes.
func (m *maker) sheetCuts() [][]sheet.Cell {
	var rows [][]sheet.Cell
	for _, s := range m.Plan.Bill.Sheets {
		for _, k := range s.Backers {
			size := m.T("cuts/backer", "width", m.Words.Number(k.Width), "height", k.Height)
			rows = append(rows, []sheet.Cell{{Tick: true}, {Text: m.pieces(k.Count)}, {Text: m.T("home/cut-to", "size", size)}, {Text: m.T("home/cut-instead")}, {}})
		}
	}
	return rows
}

// tools are what is needed, in three steps of comfort.
func (m *maker) tools() sheet.Paper {
	column := func(kind string, n int) []sheet.Block {
		items := make([]string, n)
		for i := range items {
			items[i] = m.T("tools/" + kind + "-" + string(rune('a'+i)))
		}
		return []sheet.Block{sheet.Heading(m.T("tools/" + kind)), sheet.List{Mark: sheet.Ticks, Size: m.inHand().Size, Items: items}}
	}
	const must, nice, borrow = 12, 5, 3
	return m.paper("tools", sheet.NoView,
		sheet.Beside{Shares: []float64{1, 1}, Columns: [][]sheet.Block{
			column("must", must), append(column("nice", nice), column("borrow", borrow)...),
		}}, m.jig())
}

// jig is the drawing of the stop block with its carrier.
func (m *maker) jig() sheet.Block {
	size := m.inHand().Size
	return sheet.Fitted(func(width float64) []sheet.Block {
		d := sheet.Drawing{Name: "jig", Title: m.T("jig/title"), Width: width, Height: 60, Draw: m.drawJig}
		return []sheet.Block{sheet.Heading(m.T("jig/heading")), m.drawing(d), sheet.List{Size: size, Items: []string{
			m.T("jig/fence"), m.T("jig/stop"), m.T("jig/carrier"), m.T("jig/dust"),
		}}}
	})
}

// drawJig is seen from above, not to scale: fence, stick, stop and clamped carrier
// about the line of the blade.
func (m *maker) drawJig(p sheet.Pen) {
	small := sheet.Type{Size: sheet.SmallSize}
	const fence, stick = 14.0, 22.0
	blade := p.Width * 0.55
	p.Fill(0, fence, p.Width, 8, p.Hatch(1, 3))
	p.Box(0, fence, p.Width, 8, draw.Outline)
	p.Text(2, fence-2, small, m.T("jig/fence-label"))
	p.Box(10, stick, blade-12, 14, draw.Outline)
	p.Text(14, stick+9, small, m.T("jig/stick-label"))
	p.Box(blade+2, stick, 34, 14, draw.Outline)
	p.Text(blade+5, stick+9, small, m.T("jig/block-label"))
	p.Fill(blade+36, fence-6, 10, 34, sheet.Black())
	p.Text(blade+49, stick+9, small, sheet.Fit(sheet.Regular, sheet.SmallSize, p.Width-blade-49, m.T("jig/stop-label")))
	p.Line(blade, 2, blade, 58, draw.Heavy)
	p.Text(blade+2, 57, small, m.T("jig/blade-label"))
	p.DashedBox(blade-52, stick+16, 48, 14, draw.Outline)
	p.Text(blade-50, stick+25, small, m.T("jig/carrier-label"))
	p.Across(blade+2, blade+36, stick+22, stick+14, m.T("jig/height-label"))
}

// troubles are what to do when it went wrong.
func (m *maker) troubles() sheet.Paper {
	t := sheet.Table{Size: m.either(3.7, 3.3), Columns: []sheet.Column{{Head: m.T("trouble/what"), Width: 46}, {Head: m.T("trouble/do"), Grow: true}}}
	for _, key := range []string{"bin", "long", "loose", "through", "hook"} {
		t.Rows = append(t.Rows, []sheet.Cell{{Text: m.T("trouble/" + key), Bold: true}, {Text: m.T("trouble/" + key + "-do")}})
	}
	p := m.paper("troubles", sheet.NoView, t)
	p.Plain = true
	return p
}
