package papers

import (
	"blockfield/engine/layup"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// recutList is what has to be cut anew by what was counted; nothing where nobody has
// counted, or all bins are full.
func (m *maker) recutList() sheet.Paper {
	recut := m.Job.Recut()
	if len(recut) == 0 {
		return m.paper("recut", sheet.NoView)
	}
	t := sheet.Table{Grid: true, Least: writingHeight, Size: armSize(), Columns: []sheet.Column{
		{Width: 8}, {Head: m.T("counts/height"), Grow: true}, {Head: m.T("counts/need"), Right: true}, {Head: m.T("recut/have"), Right: true},
		{Head: m.T("recut/lack"), Right: true}, {Head: m.T("recut/cut"), Right: true}, {Head: m.T("recut/done"), Width: 26},
	}}
	for i := range recut {
		c := recut[len(recut)-1-i] // the tallest first, as they are cut
		t.Rows = append(t.Rows, []sheet.Cell{
			{Tick: true}, {Text: m.binName(c.Bin), Bold: true}, {Text: m.Show(c.Need)}, {Text: m.Show(c.Good)}, {Text: m.Show(c.Short)},
			{Text: m.Show(c.Recut), Bold: true}, {},
		})
	}
	return m.paper("recut", sheet.NoView, append([]sheet.Block{sheet.Say(m.T("recut/lead")), t}, m.cautions("bench/short-block", "bench/tiny-block", "bench/short-tail")...)...)
}

// binName is the height of a bin, with its stick where there are several kinds.
func (m *maker) binName(b layup.Bin) string {
	if len(m.Plan.Bill.Lots) == 1 {
		return m.T("count/bin", "height", b.Height)
	}
	return m.T("count/bin-of", "height", b.Height, "wood", words.Key("choice/"+b.Wood), "size", b.Size)
}
