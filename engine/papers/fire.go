package papers

import (
	"strings"

	"blockfield/engine/design"
	"blockfield/engine/papers/sheet"
)

// fireRecord is what was put on the panels against fire, as far as it is noted, with lines
// for what is written by hand at the tin.
func (m *maker) fireRecord() sheet.Paper {
	if !m.Job.Treatable() || m.Plan.Bill.Panels == 0 {
		return m.paper("fire-record", sheet.NoView)
	}
	known := sheet.Table{Grid: true, Least: 9, Columns: []sheet.Column{{Width: 62}, {Grow: true}}}
	add := func(label, value string) {
		known.Rows = append(known.Rows, []sheet.Cell{{Text: label}, {Text: value, Bold: true}})
	}
	for _, name := range []string{"product", "batch", "where", "coverage", "day", "by"} {
		path := "treated." + name
		text, _ := design.RecordText(m.Job.Record, path, m.Words.Units)
		if f, ok := design.LookupRecord(path); ok && f.Unit != "" {
			if text = text + " " + f.Unit; m.Job.Record.Treated.Coverage == 0 {
				text = ""
			}
		}
		add(m.T("label/"+design.RecordPrefix+path), text)
	}
	var surface []string
	for _, said := range m.Job.TreatedSaid() {
		surface = append(surface, m.said(said))
	}
	add(m.T("fire-record/surface"), strings.Join(surface, " "))
	answer := m.Job.Record.Asked.Fire
	if answer == "" {
		answer = m.T("fire-record/asked-not")
	}
	add(m.T("fire-record/asked"), answer)

	coats := sheet.Table{Grid: true, Least: writingHeight, Columns: []sheet.Column{
		{Head: m.T("fire-record/coat"), Width: 14}, {Head: m.T("blank/date"), Grow: true}, {Head: m.T("label/record.treated.batch"), Grow: true},
		{Head: m.T("fire-record/before"), Grow: true}, {Head: m.T("fire-record/after"), Grow: true}, {Head: m.T("fire-record/reached"), Grow: true},
		{Head: m.T("blank/name"), Grow: true},
	}}
	for i := range m.coatsToRecord() {
		coats.Rows = append(coats.Rows, []sheet.Cell{{Text: m.Show(i + 1), Bold: true}, {}, {}, {}, {}, {}, {}})
	}
	return m.paper("fire-record", sheet.NoView,
		sheet.Notice{Lead: m.T("fire-record/not"), Text: m.T("fire-record/not-text")},
		known, sheet.Heading(m.T("fire-record/coats")), coats,
		sheet.Small(m.T("fire-record/renew")), m.signature())
}

// coatsToRecord is how many coats have lines: those that are planned, and one for what
// has to be done again.
func (m *maker) coatsToRecord() int {
	most := 2
	for _, c := range m.Plan.Bill.Coats {
		most = max(most, c.Of)
	}
	return most + 1
}
