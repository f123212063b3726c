package papers

import (
	"fmt"
	"math"

	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
)

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

// cuts is which blocks come out of which sticks: one line for each height of each
// group of sticks.
func (m *maker) cuts() table {
	t := table{name: "cuts", head: m.heads("wood", "section", "group", "sticks", "stick", "height", "each", "left-over")}
	for _, lot := range m.Plan.Bill.Lots {
		for i, b := range lot.Cuts.Boards {
			for _, p := range b.Pieces {
				t.rows = append(t.rows, []cell{
					text(m.wood(lot.Wood)), m.size(lot.Size), text(bench.GroupLetter(i)), count(b.Count), m.size(lot.Bars[b.Bar].Length),
					m.size(lot.HeightOf(p.Length)), count(p.Count), m.size(length.Nanometres(b.Offcut, lot.StickLength.Notation())),
				})
			}
		}
	}
	return t
}

// stock is what is bought.
func (m *maker) stock() table {
	t := table{name: "stock", head: m.heads("from", "quantity", "unit", "what", "look")}
	for _, g := range m.goods() {
		t.rows = append(t.rows, []cell{
			text(m.T("aisle/" + string(g.aisle))), amount(g.quantity), text(m.T("unit/" + g.unit)), text(g.what), text(g.look),
		})
	}
	return t
}

// hours is what each task takes, in minutes.
func (m *maker) hours() table {
	t := table{name: "hours", head: m.heads("task", "name", "role", "low", "typical", "high")}
	for _, task := range m.times() {
		t.rows = append(t.rows, []cell{
			text(taskNumber(task.ID)), text(m.taskName(task.ID, task.Name)), text(m.role(task.Role)),
			decimal(task.Minutes.Low, 1), decimal(task.Minutes.Typical, 1), decimal(task.Minutes.High, 1),
		})
	}
	return t
}

// role is the word for who does a task, where it is one of those that every book has.
func (m *maker) role(name string) string {
	switch name {
	case "shop", "office", "site":
		return m.T("csv/role-" + name)
	}
	return name
}

// prices are the lines of the price: for the workshop alone.
func (m *maker) prices() table {
	p := m.Plan.Price
	t := table{name: "prices", head: []string{m.T("csv/line"), m.T("csv/role"), m.T("csv/amount", "unit", p.Currency)}}
	for _, l := range p.Lines {
		name := l.Name
		if name == "" {
			name = m.T(l.Key)
		}
		t.rows = append(t.rows, []cell{text(name), text(string(l.Role)), {l.Amount.Plain(), true}})
	}
	for _, sum := range []struct {
		key    string
		amount cell
	}{{"net", cell{p.Net.Plain(), true}}, {"tax", cell{p.Tax.Plain(), true}}, {"gross", cell{p.Gross.Plain(), true}}} {
		if p.Sold {
			t.rows = append(t.rows, []cell{text(m.T("csv/" + sum.key)), {}, sum.amount})
		}
	}
	return t
}

// fields are the heights of each panel, row by row from the top: a grid of bare numbers,
// which can be read back, so that the unit stands in the file's name.
func (m *maker) fields() []table {
	var all []table
	for i, g := range m.Plan.Groups {
		for j, p := range g.Built.Panels {
			t := table{name: fmt.Sprintf("field-%d-%d-mm", i+1, j+1)}
			for row := range p.Grid.Rows {
				cells := make([]cell, p.Grid.Columns)
				for column := range cells {
					cells[column] = amount(g.Design.Heights[p.Grid.At(row, column)].Millimetres())
				}
				t.rows = append(t.rows, cells)
			}
			all = append(all, t)
			if p.Woods != nil {
				all = append(all, m.woodsOf(g.Design, p, fmt.Sprintf("woods-%d-%d", i+1, j+1)))
			}
		}
	}
	return all
}

// woodsOf is which wood the blocks of a panel are of, laid out as their heights; bare
// cells have none.
func (m *maker) woodsOf(g design.Group, p panel.Panel, name string) table {
	t := table{name: name}
	for row := range p.Grid.Rows {
		cells := make([]cell, p.Grid.Columns)
		for column := range cells {
			if !g.Heights[p.Grid.At(row, column)].IsZero() {
				cells[column] = text(m.wood(g.Woods()[p.WoodOf(row*p.Grid.Columns+column)]))
			}
		}
		t.rows = append(t.rows, cells)
	}
	return t
}

// heads are the headings of columns, with their units.
func (m *maker) heads(keys ...string) []string {
	all := make([]string, len(keys))
	for i, k := range keys {
		all[i] = m.T("csv/"+k, "unit", m.Words.Unit())
	}
	return all
}

// amount is a number as short as its three decimals allow.
func amount(x float64) cell { return trimmed(math.Round(x*1000)/1000, 3) }
