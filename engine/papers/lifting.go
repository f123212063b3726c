package papers

import (
	"blockfield/engine/length"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/wall"
	"blockfield/engine/words"
)

// liftingPlan says for each group what is lifted, by whom and how, before anybody has it
// in the hands. It computes nothing that holds for a team: that is for whoever leads.
func (m *maker) liftingPlan() sheet.Paper {
	var blocks []sheet.Block
	for i, h := range m.Plan.Hangings {
		if len(m.Plan.Groups) > 1 {
			blocks = append(blocks, sheet.Heading(m.groupName(i)))
		}
		blocks = append(blocks, m.liftFacts(h), m.lifters(h), sheet.Small(m.said(h.LiftSaid())))
	}
	var steps []string
	ready := "ready"
	if m.stands() {
		ready = "ready-stand"
	}
	for _, key := range []string{"walk", ready, "grip", "word", "under", "down"} {
		steps = append(steps, m.T("lifting/"+key))
	}
	blocks = append(blocks, sheet.Heading(m.T("lifting/order")), sheet.List{Mark: sheet.Ticks, Items: steps})
	blocks = append(blocks, m.cautions("wall/hands", "wall/lift", "record/weighed")...)
	return m.paper("lifting-plan", sheet.NoView, append(blocks, m.signature())...)
}

// liftFacts are what is lifted: its mass, its size and how high it goes.
func (m *maker) liftFacts(h wall.Hanging) sheet.Block {
	t := sheet.Table{Columns: []sheet.Column{{}, {Grow: true}}}
	row := func(key, text string) {
		t.Rows = append(t.Rows, []sheet.Cell{{Text: m.T("lifting/" + key), Bold: true}, {Text: text}})
	}
	kg := h.Kg()
	low, high := h.MassRange(m.Doc.Design.Room, m.Doc.Design.Bench.StockMoisture)
	mass := m.T("lifting/reckoned", "mass", words.Kg(kg), "low", words.Kg(low), "high", words.Kg(high))
	if h.WeighedKg > 0 {
		mass = m.T("lifting/weighed", "mass", words.Kg(kg))
	}
	row("mass", mass)
	row("size", m.T("lifting/size-value", "wide", h.Built.OuterWidth, "high", h.Built.OuterHeight, "deep", h.Deep(), "out", m.at(h.Built.Panels[0].CentroidM)))
	top := h.Built.Bottom.Add(h.Built.TotalHeight)
	up := length.MM(0)
	if h.Means != wall.Stand {
		up = h.LiftRoom
	}
	row("up", m.T("lifting/up-value", "bottom", top.Sub(h.Built.OuterHeight).Add(up), "top", top.Add(up)))
	if few := wall.Lifters(kg); h.LimitLifters() > few && !h.Heavy() {
		row("people", m.T("lifting/people-more", "carry", wall.Carriers(kg), "people", h.Lifters(), "few", few))
	} else {
		row("people", m.T("lifting/people-value", "carry", wall.Carriers(kg), "lift", h.HandsSaid()))
	}
	if l := m.Doc.Design.Work.Lifting; l.Named() {
		row("method", m.T("lifting/method-value", "lead", l.Lead, "method", words.Key("choice/"+l.Method)))
	}
	return t
}

// lifters has a line for each of those who lift, with the names that are known.
func (m *maker) lifters(h wall.Hanging) sheet.Block {
	t := sheet.Table{Grid: true, Least: 9, Columns: []sheet.Column{
		{Width: 10, Right: true}, {Head: m.T("lifting/name"), Grow: true}, {Head: m.T("lifting/place"), Grow: true}, {Head: m.T("lifting/told"), Width: 26},
	}}
	names := m.Job.Record.Hung.People
	lines := max(h.Lifters(), len(names))
	for i := range lines {
		name := ""
		if i < len(names) {
			name = names[i]
		}
		t.Rows = append(t.Rows, []sheet.Cell{{Text: m.Show(i + 1), Bold: true}, {Text: name}, {}, {Tick: true}})
	}
	return t
}
