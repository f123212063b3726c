package papers

import (
	"slices"
	"strings"

	"blockfield/engine/bench"
	"blockfield/engine/check"
	"blockfield/engine/draw"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// cover says what the job is, which gates are open, and what somebody has to
// sign.
func (m *maker) cover() sheet.Paper {
	blocks := []sheet.Block{
		sheet.Beside{Shares: []float64{1, 1.05}, Columns: [][]sheet.Block{{m.coverPicture(40)}, {m.facts()}}},
		sheet.Beside{Shares: []float64{1, 1.05}, Columns: [][]sheet.Block{
			{sheet.Heading(m.T("cover/light")), m.lights()}, append([]sheet.Block{sheet.Heading(m.T("cover/people"))}, m.people()...),
		}},
	}
	if m.close {
		who, when := m.blanks("maker", "helper"), m.blanks("start", "ready", "hung")
		blocks = []sheet.Block{
			sheet.Beside{Shares: []float64{1.6, 1}, Columns: [][]sheet.Block{{m.facts()}, {m.coverPicture(17), who[:1], who[1:]}}}, when, m.lightStrip(),
		}
	}
	blocks = append(blocks, m.stops()...)
	blocks = append(blocks, m.cautionList()...)
	return m.paper("cover", sheet.NoView, blocks...)
}

// coverPicture is the first panel in small, as large as its column allows, and no higher than that.
func (m *maker) coverPicture(high float64) sheet.Block {
	return sheet.Fitted(func(width float64) []sheet.Block {
		g := m.Plan.Groups[0].Built
		pitch := min(width/float64(g.Columns), high/float64(g.Rows))
		picture := []sheet.Block{sheet.Piece{Height: float64(g.Rows)*pitch + 0.5, Draw: func(p sheet.Pen) {
			m.fieldPicture(p, g.Panels[0], m.Plan.Groups[0].Design.Heights, pitch)
		}}}
		if woods := m.Plan.Groups[0].Design.Woods(); len(woods) > 1 {
			picture = append(picture, sheet.Small(m.T("look/field-woods", "wood", m.wood(woods[1]))))
		}
		return picture
	})
}

// facts are the first things that anybody asks of a job.
func (m *maker) facts() sheet.Block {
	t := sheet.Table{Size: m.inHand().Size, Least: m.either(0, 5.6), Tight: m.close, Columns: []sheet.Column{{}, {Grow: true}}}
	add := func(key, value string) {
		t.Rows = append(t.Rows, []sheet.Cell{{Text: m.T("cover/" + key)}, {Text: value, Bold: true}})
	}
	number := m.Words.Number
	for i, g := range m.Plan.Groups {
		key := "size"
		if len(m.Plan.Groups) > 1 {
			key = "size-group"
		}
		t.Rows = append(t.Rows, []sheet.Cell{
			{Text: m.T("cover/"+key, "group", m.groupName(i))},
			{Text: m.T("cover/size-value", "n", len(g.Built.Panels), "width", number(g.Built.OuterWidth), "height", g.Built.OuterHeight), Bold: true},
		})
	}
	_, blocks := m.Plan.Cells()
	g := m.Plan.Groups[0]
	add("blocks", m.T("cover/blocks-value", "n", blocks, "wood", g.Design.WoodName()))
	add("heights", m.Show(g.Design.Heights))
	add("finish", m.wood(g.Design.Finish.Kind))
	add("mass", m.massText())
	hours := m.Plan.Bill.Hours
	add("hours", m.T("cover/hours-value", "all", words.Hours(hours.Total.Typical), "shop", words.Hours(hours.Shop.Typical)))
	add("crew", m.T("cover/crew-value", "n", m.Doc.Design.Work.Crew, "hours", words.Hours(bench.ShopDayHours), "days", m.Plan.Bill.ShopDays.Typical))
	return t
}

// massText is what the heaviest panel weighs, and all of them where there are several.
func (m *maker) massText() string {
	mass := m.Plan.Mass
	if m.Plan.Bill.Panels == 1 {
		return m.Show(words.Kg(mass.TotalKg))
	}
	return m.T("cover/mass-value", "heaviest", words.Kg(mass.HeaviestPanelKg), "total", words.Kg(mass.TotalKg))
}

// gateState is how a gate of the job stands.
type gateState struct {
	name, state string
	sign        gateSign
}

// gates are those of the workshop, in their order.
func (m *maker) gates() []gateState {
	var all []gateState
	before := false
	for _, g := range m.Plan.Gates() {
		if g.Gate == check.Share {
			continue
		}
		one := gateState{capital(m.T(g.Gate.Word(m.atHome))), m.T("gate/open"), openGate}
		switch {
		case len(g.Stops) > 0:
			one.state, one.sign = m.T("gate/shut", "n", len(g.Stops)), shutGate
		case before:
			one.state, one.sign = m.T("cover/waits"), waitingGate
		}
		before = before || len(g.Stops) > 0
		all = append(all, one)
	}
	return all
}

// lights are the gates of the job, each with a sign that grey paper shows too.
func (m *maker) lights() sheet.Block {
	t := sheet.Table{Columns: []sheet.Column{{Width: 9}, {}, {Grow: true}}}
	for _, g := range m.gates() {
		t.Rows = append(t.Rows, []sheet.Cell{{Draw: g.sign.draw, Height: 5}, {Text: g.name, Bold: true}, {Text: g.state}})
	}
	return t
}

// lightStrip is the gates beside one another, where that saves a sheet.
func (m *maker) lightStrip() sheet.Block {
	const sign, lines = 6.5, 2
	t := sheet.Table{Grid: true, Rows: make([][]sheet.Cell, 1)}
	for _, g := range m.gates() {
		t.Columns = append(t.Columns, sheet.Column{Head: g.name, Grow: true})
		t.Rows[0] = append(t.Rows[0], sheet.Cell{Height: 0.4 + lines*sheet.Leading(sheet.SmallSize), Draw: func(p sheet.Pen) {
			g.sign.draw(p.In(0, 0, sign-1, sign-2))
			p.In(sign, 0.4, p.Width-sign, p.Height-0.4).Lines(sheet.Type{Size: sheet.SmallSize}, g.state)
		}})
	}
	return t
}

// gateSign is how a gate looks: a ring that is open, half filled or filled and
// barred.
type gateSign uint8

const (
	openGate gateSign = iota
	waitingGate
	shutGate
)

func (s gateSign) draw(p sheet.Pen) {
	x, y := p.Width/2, p.Height/2
	const r = 2.4
	switch s {
	case shutGate:
		p.Fill(x-r, y-r, 2*r, 2*r, sheet.Black())
		p.Fill(x-1.6, y-0.5, 3.2, 1, sheet.White())
	case waitingGate:
		p.Circle(x, y, r, draw.Outline)
		p.Line(x-1.2, y, x+1.2, y, draw.Outline)
	default:
		p.Circle(x, y, r, draw.Outline)
	}
}

// stops are the Stops of all gates, each with the line that clears it: a
// signature, or evidence where no signature counts.
func (m *maker) stops() []sheet.Block {
	var blocks []sheet.Block
	for _, g := range m.Plan.Gates() {
		for _, w := range g.Stops {
			lines := sheet.Blanks{{Label: m.T("blank/signed"), Share: 3}, {Label: m.T("blank/reason"), Share: 4}, {Label: m.T("blank/date"), Share: 2}}
			lead := m.T("cover/stop", "gate", m.T(g.Gate.Word(m.atHome)))
			switch {
			case w.Code == "record/not-counted":
				lead += " " + m.T("cover/by-count")
				lines = nil
			case onlyDesign(w):
				lead += " " + m.T("cover/no-way")
				lines = nil
			case w.Evidence:
				lead += " " + m.T("cover/evidence")
				lines = m.evidence()
			}
			blocks = append(blocks, sheet.Notice{
				Sign: sheet.StopSign, Lead: lead, Text: m.Words.Say(w.Code, w.Args), Blanks: lines, Size: m.noticeSize(),
			})
		}
	}
	if len(blocks) == 0 {
		return nil
	}
	return append([]sheet.Block{sheet.Heading(m.T("cover/stops"))}, blocks...)
}

// onlyDesign reports whether nothing but another design clears a Stop: no value and no
// name is as good as the room that a panel needs to be hooked on.
func onlyDesign(w check.WatchOut) bool { return w.Code == "wall/lift-room" }

// evidence is what clears a Stop that no signature clears.
func (m *maker) evidence() sheet.Blanks {
	return sheet.Blanks{
		{Label: m.T("blank/value"), Share: 2}, {Label: m.T("blank/source"), Share: 3}, {Label: m.T("blank/name"), Share: 3}, {Label: m.T("blank/date"), Share: 2},
	}
}

// cautionList are the Cautions, each on the paper that it concerns and all of them
// here, to be ticked when they were read.
func (m *maker) cautionList() []sheet.Block {
	var items []string
	for _, w := range m.Plan.AllWatchOuts() {
		if w.Asked().Level == check.Caution {
			items = append(items, m.Words.Say(w.Code, w.Args))
		}
	}
	if len(items) == 0 {
		return nil
	}
	return []sheet.Block{sheet.Heading(m.T("cover/cautions")), sheet.List{Mark: sheet.Ticks, Size: m.either(3.6, sheet.SmallSize), Items: items}}
}

// cautions are the Cautions and Stops that one paper concerns: those whose code
// begins with one of starts.
func (m *maker) cautions(starts ...string) []sheet.Block {
	var blocks []sheet.Block
	for _, w := range m.Plan.AllWatchOuts() {
		if w.Level < check.Caution || !slices.ContainsFunc(starts, func(s string) bool { return strings.HasPrefix(w.Code, s) }) {
			continue
		}
		n := sheet.Notice{Sign: sheet.CautionSign, Text: m.Words.Say(w.Code, w.Args), Size: m.noticeSize()}
		if w.Asked().Level == check.Stop {
			n.Sign = sheet.StopSign
		}
		blocks = append(blocks, n)
	}
	return blocks
}

// noticeSize is the type of Cautions and Stops.
func (m *maker) noticeSize() float64 { return m.either(sheet.BodySize, 3.6) }

// people are lines for names and days.
func (m *maker) people() []sheet.Block {
	var all []sheet.Block
	for _, who := range []string{"maker", "helper", "start", "ready", "hung"} {
		all = append(all, m.blanks(who))
	}
	return all
}

// blanks are some of them on one line.
func (m *maker) blanks(of ...string) sheet.Blanks {
	var all sheet.Blanks
	for _, who := range of {
		all = append(all, sheet.Blank{Label: m.T("cover/" + who), Share: 1})
	}
	return all
}
