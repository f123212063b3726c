package papers

import (
	"blockfield/engine/draw"
	"blockfield/engine/panel"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/wall"
	"blockfield/engine/words"
)

// weighSlip compares what was reckoned with what the scales say, and says who it
// takes to carry and to lift; below it is the label that goes on the panel.
func (m *maker) weighSlip() sheet.Paper {
	var blocks []sheet.Block
	for i := range m.Plan.Groups {
		if len(m.Plan.Groups) > 1 {
			blocks = append(blocks, sheet.Heading(m.groupName(i)))
		}
		h := m.Plan.Hangings[i]
		heaviest := h.Kg()
		blocks = append(blocks, m.massTable(i), sheet.Say(m.T("weigh/people", "mass", words.Kg(heaviest), "carry", wall.Carriers(heaviest), "lift", h.HandsSaid())))
		if kg := h.WeighedKg; kg > 0 {
			blocks = append(blocks, sheet.Say(m.T("weigh/weighed", "mass", words.Kg(kg))))
		}
		blocks = append(blocks, m.weighTable(i))
	}
	blocks = append(blocks, sheet.Small(m.howToWeigh()), sheet.Small(m.T("weigh/tap")))
	blocks = append(blocks, m.cautions("wall/hands", "wall/lift", "wall/weighed")...)
	for i := range m.Plan.Groups {
		blocks = append(blocks, m.panelLabel(i))
	}
	return m.paper("weigh-slip", sheet.NoView, blocks...)
}

// howToWeigh is how a panel comes onto a scale: in the arms only as long as one person
// may carry it.
func (m *maker) howToWeigh() string {
	heaviest := 0.0
	for _, h := range m.Plan.Hangings {
		heaviest = max(heaviest, h.Kg())
	}
	if wall.Carriers(heaviest) > 1 {
		return m.T("weigh/how-heavy", "mass", words.Kg(heaviest))
	}
	return m.T("weigh/how")
}

// massTable is the mass of the first panel of a group, part by part.
func (m *maker) massTable(group int) sheet.Block {
	t := sheet.Table{Columns: []sheet.Column{{Head: m.T("weigh/part"), Grow: true}, {Head: m.T("weigh/reckoned"), Right: true}}}
	p := m.Plan.Groups[group].Built.Panels[0]
	kinds := []panel.Kind{panel.BlockPart, panel.BackerPart, panel.FramePart, panel.CleatPart, panel.SpacerPart}
	for _, kind := range kinds {
		sum := 0.0
		for _, part := range p.Parts {
			if part.Kind == kind {
				sum += part.MassKg
			}
		}
		if sum > 0 {
			t.Rows = append(t.Rows, sheet.Row(m.T("part/"+string(kind)), m.Show(words.Kg(sum))))
		}
	}
	added := m.Plan.Bill.Groups[group].AddedKg
	t.Rows = append(t.Rows, sheet.Row(m.T("part/glue-and-finish"), m.Show(words.Kg(added))),
		[]sheet.Cell{{Text: m.T("weigh/one"), Bold: true}, {Text: m.Show(words.Kg(p.MassKg + added)), Bold: true}})
	return t
}

// weighTable is where the scales' figures are written, panel by panel.
func (m *maker) weighTable(group int) sheet.Block {
	t := sheet.Table{Grid: true, Least: 9, Columns: []sheet.Column{
		{Head: m.T("trimming/panel")}, {Head: m.T("weigh/reckoned"), Right: true}, {Head: m.T("weigh/measured"), Grow: true},
		{Head: m.T("weigh/difference"), Grow: true}, {Head: m.T("weigh/loose"), Grow: true}, {Head: m.T("weigh/photo"), Width: 18},
	}}
	added := m.Plan.Bill.Groups[group].AddedKg
	for i, p := range m.Plan.Groups[group].Built.Panels {
		t.Rows = append(t.Rows, []sheet.Cell{{Text: m.Show(i + 1), Bold: true}, {Text: m.Show(words.Kg(p.MassKg + added))}, {}, {}, {}, {Tick: true}})
	}
	return t
}

// panelLabel is cut out and taped to the back of a panel.
func (m *maker) panelLabel(group int) sheet.Block {
	const high = 62
	h := m.Plan.Hangings[group]
	heaviest := h.Kg()
	return sheet.Piece{Height: high, Gap: 6, Draw: func(p sheet.Pen) {
		p.DashedBox(0, 0, p.Width, high, draw.Hidden)
		p.Text(6, 16, sheet.Type{Size: 13, Face: sheet.Bold}, m.T("weigh/top"))
		p.Text(p.Width-6, 16, sheet.Type{Size: 13, Face: sheet.Bold, Align: sheet.Right}, m.Plan.Revision)
		p.Text(6, 36, sheet.Type{Size: sheet.FigureSize(12), Face: sheet.Bold}, m.Show(words.Kg(heaviest)))
		p.Text(6, 45, sheet.Type{Size: 5}, sheet.Fit(sheet.Regular, 5, p.Width-12, m.T("weigh/label-people", "carry", wall.Carriers(heaviest), "lift", h.HandsSaid())))
		p.Text(6, 52, sheet.Type{}, sheet.Fit(sheet.Regular, sheet.BodySize, p.Width-12, m.Words.Given(m.Doc.Design.Title)))
		p.Text(6, 58.5, sheet.Type{}, m.T("weigh/label-panel", "of", len(m.Plan.Groups[group].Built.Panels)))
	}}
}
