package papers

import (
	"slices"

	"blockfield/engine/layup"
	"blockfield/engine/measure"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// layOrder says where the rows begin, how one is laid, and what the field should
// measure on the way.
func (m *maker) layOrder() sheet.Paper {
	if len(m.Job.Cards) == 0 {
		return m.paper("lay-up", sheet.Front)
	}
	blocks := m.cautions("bench/glue-skins", "bench/cold-shop", "bench/finished-bases", "bench/recut")
	blocks = append(blocks, sheet.List{Mark: sheet.Numbers, Size: m.either(sheet.BodySize, 3.8), Items: m.laySteps()})
	for i := range m.Plan.Groups {
		if len(m.Plan.Groups) > 1 {
			blocks = append(blocks, sheet.Heading(m.groupName(i)))
		}
		blocks = append(blocks, sheet.Text{Type: sheet.Type{Face: sheet.Bold}, Text: m.T("laying/length", "width", m.Plan.Groups[i].Built.FieldWidth, "every", measure.Every, "n", m.Plan.Groups[i].Built.Columns)}, m.marks(i))
	}
	blocks = append(blocks, sheet.Blanks{{Label: m.T("laying/lays-out"), Share: 1}, {Label: m.T("laying/glues"), Share: 1}})
	return m.paper("lay-up", sheet.Front, blocks...)
}

// laySteps are one row, from dry to pressed.
func (m *maker) laySteps() []string {
	b := m.Doc.Design.Bench
	all := []string{m.T("laying/start", "edge", m.T("edge/"+m.start())), m.T("laying/dry")}
	if most, least := m.parts(); most > 1 && most == least {
		all = append(all, m.T("laying/all-parts", "n", most, "minutes", words.Minutes(b.GlueOpenMinutes)))
	} else if most > 1 {
		all = append(all, m.T("laying/parts", "n", most, "minutes", words.Minutes(b.GlueOpenMinutes)))
	} else {
		all = append(all, m.T("laying/whole", "minutes", words.Minutes(b.GlueOpenMinutes)))
	}
	all = append(all, m.T("laying/press"))
	if n := m.mostSet(); n > 0 {
		all = append(all, m.T("laying/loose", "n", n))
	}
	return append(all, m.T("laying/measure", "edge", m.T("edge/"+m.start()), "every", measure.Every, "tolerance", m.within("row")), m.T("laying/tick"))
}

// parts is in how many parts a row is glued, at most and at least.
func (m *maker) parts() (most, least int) {
	for i, c := range m.Job.Cards {
		n := max(len(c.Parts), 1)
		most = max(most, n)
		if i == 0 || n < least {
			least = n
		}
	}
	return most, least
}

// mostSet is how many loose blocks a row takes at most.
func (m *maker) mostSet() int {
	if len(m.Job.Cards) == 0 {
		return 0
	}
	return slices.MaxFunc(m.Job.Cards, func(a, b layup.Card) int { return a.Set - b.Set }).Set
}

// marks is what each panel of a group should measure, with room for what it does.
func (m *maker) marks(group int) sheet.Block {
	g := m.Plan.Groups[group]
	t := sheet.Table{Grid: true, Least: 10, Size: armSize(), Columns: []sheet.Column{{Head: m.T("laying/row")}, {Head: m.T("laying/distance"), Right: true}}}
	for i := range g.Built.Panels {
		t.Columns = append(t.Columns, sheet.Column{Head: m.T("laying/panel", "n", i+1), Grow: true})
	}
	for _, mark := range measure.Marks(g.Built.Rows, g.Design.Block.Size, g.Design.Block.Slack) {
		row := []sheet.Cell{{Text: m.Show(mark.Row), Bold: true}, {Text: m.Words.Number(mark.Distance)}}
		for range g.Built.Panels {
			row = append(row, sheet.Cell{})
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
