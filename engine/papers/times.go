package papers

import (
	"math"
	"strings"

	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// timeSheet is the tasks of the job with what they usually take, to be compared
// with what they took.
func (m *maker) timeSheet() sheet.Paper {
	tasks := m.Plan.Bill.Tasks
	if len(tasks) == 0 {
		return m.paper("time-sheet", sheet.NoView)
	}
	t := sheet.Table{Grid: true, Least: 7.5, Size: 3.8, Columns: []sheet.Column{
		{Head: m.T("timing/task"), Width: 13}, {Head: m.T("timing/name"), Grow: true}, {Head: m.T("timing/minutes"), Right: true},
		{Head: m.T("timing/actual"), Width: 24}, {Head: m.T("timing/who"), Width: 24}, {Head: m.T("timing/remarks"), Width: 38},
	}}
	var sum float64
	for _, task := range tasks {
		sum += task.Minutes.Typical
		t.Rows = append(t.Rows, []sheet.Cell{
			{Text: task.ID, Bold: true}, {Text: capital(m.taskName(task.ID, task.Name))}, {Text: m.Show(int(math.Round(task.Minutes.Typical)))}, {}, {}, {},
		})
	}
	t.Rows = append(t.Rows, []sheet.Cell{{}, {Text: m.T("counts/all"), Bold: true}, {Text: m.Show(int(math.Round(sum))), Bold: true}, {}, {}, {}})
	return m.paper("time-sheet", sheet.NoView, sheet.Small(m.T("timing/how")), t)
}

// taskName is what a task is called: the word for it, unless the book has another.
func (m *maker) taskName(id, name string) string {
	if key := "task/" + id; strings.EqualFold(words.English().Message(key), name) {
		return m.T(key)
	}
	return name
}
