package papers

import (
	"math"
	"strings"

	"blockfield/engine/bench"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// timeSheet is all times of the job, the tasks and what a design asks for beside them, with
// what they usually take, to be compared with what they took.
func (m *maker) timeSheet() sheet.Paper {
	tasks := m.times()
	if len(tasks) == 0 {
		return m.paper("time-sheet", sheet.NoView)
	}
	t := sheet.Table{Grid: true, Least: m.either(7.5, 6), Size: m.either(3.8, 3.4), Tight: m.close, Columns: []sheet.Column{
		{Head: m.T("timing/task"), Width: m.either(13, 0)}, {Head: m.T("timing/name"), Grow: true}, {Head: m.T("timing/minutes"), Right: true},
		{Head: m.T("timing/actual"), Width: m.either(24, 20)}, {Head: m.T("timing/who"), Width: m.either(24, 16)}, {Head: m.T("timing/remarks"), Width: m.either(38, 26)},
	}}
	for _, task := range tasks {
		t.Rows = append(t.Rows, []sheet.Cell{
			{Text: taskNumber(task.ID), Bold: true}, {Text: m.timed(task)}, {Text: m.Show(int(math.Round(task.Minutes.Typical)))}, {}, {}, {},
		})
	}
	const minutesAnHour = 60
	total := m.Plan.Bill.Hours.Total.Typical
	t.Rows = append(t.Rows, []sheet.Cell{
		{}, {Text: m.T("timing/all", "hours", words.Hours(total)), Bold: true}, {Text: m.Show(int(math.Round(total * minutesAnHour))), Bold: true}, {}, {}, {},
	})
	return m.paper("time-sheet", sheet.NoView, sheet.Small(m.T("timing/how")), t)
}

// timed is a time with how often it is met, where that is several times: its minutes are for
// all of them.
func (m *maker) timed(task bench.TaskTime) string {
	name := capital(m.taskName(task.ID, task.Name))
	if n := int(task.Quantity); n > 1 && float64(n) == task.Quantity {
		return m.T("timing/times", "task", name, "n", n)
	}
	return name
}

// times are all that the hours of the job are made of.
func (m *maker) times() []bench.TaskTime { return m.Plan.Bill.Timed(m.Doc.Design.Work) }

// taskNumber is the place of a task in its price book; empty for a time that has none there.
func taskNumber(id string) string {
	if bench.TimeKey(id) != "" {
		return ""
	}
	return id
}

// taskName is what a task is called: the word for it, unless the book has another.
func (m *maker) taskName(id, name string) string {
	if key := bench.TimeKey(id); key != "" {
		return m.T(key)
	}
	if key := "task/" + id; strings.EqualFold(words.English().Message(key), name) {
		return m.T(key)
	}
	return name
}
