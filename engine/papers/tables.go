package papers

// counts is how many blocks of each height are needed and cut.
func (m *maker) counts() table {
	t := table{name: "counts", head: m.heads("wood", "section", "height", "need", "spare", "cut")}
	for _, lot := range m.Plan.Bill.Lots {
		for _, h := range lot.Heights {
			t.rows = append(t.rows, []cell{
				text(m.wood(lot.Wood)), m.size(lot.Size), m.size(h.Height), count(h.Need), count(h.Spare), count(h.Cut),
			})
		}
	}
	return t
}

// heads are the headings of columns, with their units.
func (m *maker) heads(keys ...string) []string {
	all := make([]string, len(keys))
	for i, k := range keys {
		all[i] = m.T("csv/"+k, "unit", m.Words.Units.Word())
	}
	return all
}
