package papers

import (
	"fmt"
	"slices"
	"strings"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// The papers of this file go to the client once a look is locked: what they say of money
// is what was agreed on, changed and invoiced, and nothing of how it was reckoned.

// changeSlips are a sheet for each change after the lock.
func (m *maker) changeSlips() []sheet.Paper {
	if m.Job.Record.Lock == nil {
		return nil
	}
	var all []sheet.Paper
	before := m.agreed(m.Job.Record.Lock.Gross)
	for i, s := range m.Job.Record.Slips {
		p := m.paper("change-slip", sheet.NoView)
		p.Name = fmt.Sprintf("change-slip-%d", s.Number)
		p.Title, p.Code = m.T("order-paper/slip", "n", s.Number), s.Revision
		t := m.sums()
		t.Rows = append(t.Rows, m.sum(m.T("order-paper/before", "revision", s.Before), before, false))
		row := func(key string, a design.Amount, bold bool) {
			t.Rows = append(t.Rows, m.sum(m.T("order-paper/"+key), m.agreed(a), bold))
		}
		row("more-net", s.Net, false)
		if s.Fee > 0 {
			row("look", s.Net-s.Fee, false)
			row("fee", s.Fee, false)
		}
		row("more-tax", s.Tax, false)
		row("more-gross", s.Gross, true)
		t.Rows = append(t.Rows, m.sum(m.T("order-paper/after", "revision", s.Revision), before.Add(m.agreed(s.Gross)), true))
		if s.Accepted != "" {
			before = before.Add(m.agreed(s.Gross))
		}
		p.Blocks = append(m.letterhead(),
			sheet.Say(m.T("order-paper/slip-lead", "before", s.Before, "revision", s.Revision, "date", s.Day)),
			sheet.Heading(m.T("order-paper/what")),
		)
		if s.Reason == "" {
			p.Blocks = append(p.Blocks, sheet.Blanks{{Label: "", Share: 1}})
		} else {
			p.Blocks = append(p.Blocks, sheet.Say(s.Reason))
		}
		p.Blocks = append(p.Blocks, m.changes(i)...)
		p.Blocks = append(p.Blocks, sheet.Heading(m.T("order-paper/difference")), t, sheet.Say(m.Words.Show(s.Later())))
		p.Blocks = append(p.Blocks, m.acceptance(s)...)
		all = append(all, p)
	}
	return all
}

// acceptance is when a slip was accepted, or where both sides sign it. One that cannot be
// accepted says why, and has no line to sign on.
func (m *maker) acceptance(s design.Slip) []sheet.Block {
	no := sheet.Notice{Sign: sheet.StopSign, Lead: m.T("order-paper/not")}
	switch {
	case s.Accepted != "":
		return []sheet.Block{sheet.Notice{Lead: m.T("slip/accepted", "date", s.Accepted)}}
	case s.Revision != m.Plan.Revision:
		no.Text = m.T("slip/other-design", "revision", s.Revision, "now", m.Plan.Revision)
		return []sheet.Block{no}
	case m.Job.CannotAccept().Key != "":
		no.Text = strings.Join(m.heldBack(), " ")
		return []sheet.Block{no}
	}
	return []sheet.Block{sheet.Notice{Sign: sheet.CautionSign, Text: m.T("order-paper/wait")}, m.signatures()}
}

// heldBack says what keeps the offer of the design back. Of what concerns the workshop's
// money alone a client's paper says only that it is there.
func (m *maker) heldBack() []string {
	var all []string
	private := false
	for _, stop := range m.Job.Plan.During(m.Job).ShutAt(check.Offer) {
		if stop.Private {
			private = true
			continue
		}
		if text := m.Words.Say(stop.Code, stop.Args); !slices.Contains(all, text) {
			all = append(all, text)
		}
	}
	if private {
		all = append(all, m.T("order-paper/workshop"))
	}
	return all
}

// changes are what a slip changes, field by field.
func (m *maker) changes(slip int) []sheet.Block {
	if slip >= len(m.Changed) || len(m.Changed[slip]) == 0 {
		return nil
	}
	t := sheet.Table{Columns: []sheet.Column{{Grow: true}, {Head: m.T("order-paper/was"), Grow: true}, {Head: m.T("order-paper/now"), Grow: true}}}
	for _, c := range m.Changed[slip] {
		t.Rows = append(t.Rows, []sheet.Cell{{Text: c.Label}, {Text: c.Was}, {Text: c.Now, Bold: true}})
	}
	return []sheet.Block{t}
}

// invoices are a sheet for each stage that was called: what was agreed on, what was
// invoiced before, this stage with its tax, and what is left.
func (m *maker) invoices() []sheet.Paper {
	if m.Job.Record.Lock == nil {
		return nil
	}
	agreed, _ := m.Job.Agreed()
	var all []sheet.Paper
	earlier := money.New(0, m.Job.Record.Lock.Currency)
	for i, c := range m.Job.Record.Calls {
		p := m.paper("invoice", sheet.NoView)
		p.Name = fmt.Sprintf("invoice-%d", i+1)
		p.Title, p.Code = m.T("order-paper/invoice"), c.Revision
		if c.Number != "" {
			p.Title = m.T("order-paper/invoice-number", "number", c.Number)
		}
		t := m.sums()
		add := func(label string, a money.Money, bold bool) { t.Rows = append(t.Rows, m.sum(label, a, bold)) }
		add(m.T("order-paper/locked", "revision", m.Job.Record.Lock.Revision), m.agreed(m.Job.Record.Lock.Gross), false)
		for _, s := range m.Job.Record.Slips {
			if s.Accepted != "" && s.Accepted <= c.Day {
				add(m.T("order-paper/change", "n", s.Number, "date", s.Accepted), m.agreed(s.Gross), false)
			}
		}
		for _, before := range m.Job.Record.Calls[:i] {
			add(m.T("order-paper/earlier", "stage", capital(m.Words.Given(before.Stage)), "date", before.Day), money.New(0, earlier.Currency).Sub(m.agreed(before.Gross)), false)
		}
		this := m.sums()
		row := func(label string, a money.Money, bold bool) { this.Rows = append(this.Rows, m.sum(label, a, bold)) }
		row(m.T("order-paper/net"), m.agreed(c.Net), false)
		if len(c.Taxes) == 0 {
			row(m.taxLabel(), m.agreed(c.Tax), false)
		}
		for _, part := range c.Taxes {
			row(m.T("order-paper/tax-on", "share", words.Quantity{Value: part.Percent, Unit: "%"}, "base", m.agreed(part.Base)), m.agreed(part.Tax), false)
		}
		row(m.T("order-paper/due"), m.agreed(c.Gross), true)
		earlier = earlier.Add(m.agreed(c.Gross))
		p.Blocks = append(append(m.sides(), m.unready(c)...),
			sheet.Say(m.T("order-paper/invoice-lead", "title", m.Doc.Design.Title, "stage", capital(m.Words.Given(c.Stage)), "date", c.Day, "revision", c.Revision)),
			sheet.Heading(m.T("order-paper/so-far")), t,
			sheet.Heading(capital(m.Words.Given(c.Stage))), this,
		)
		if m.Doc.Design.Money.Reverse {
			text := m.T("includes/reverse-charge")
			if m.Book.ReverseCharge != "" {
				text = m.Words.Given(m.Book.ReverseCharge)
			}
			p.Blocks = append(p.Blocks, sheet.Say(text))
		}
		if i == len(m.Job.Record.Calls)-1 {
			p.Blocks = append(p.Blocks, sheet.Small(m.T("order-paper/left", "left", agreed.Gross.Sub(earlier))))
		}
		p.Blocks = append(p.Blocks, sheet.Blanks{{Label: m.T("order-paper/account"), Share: 2}, {Label: m.T("order-paper/by"), Share: 1}})
		all = append(all, p)
	}
	return all
}

// unready says what an invoice lacks before it is sent: its number, with a line to write it
// on, and the stage that it is for.
func (m *maker) unready(c design.Call) []sheet.Block {
	var blocks []sheet.Block
	if strings.TrimSpace(c.Number) == "" {
		blocks = append(blocks, sheet.Blanks{{Label: m.T("order-paper/number"), Share: 1}},
			sheet.Notice{Sign: sheet.CautionSign, Text: m.T("order-paper/no-number")})
	}
	if state := m.Job.Early(c.Stage); state != "" {
		blocks = append(blocks, sheet.Notice{Sign: sheet.CautionSign, Text: m.T("order-paper/early", "state", words.Key("state/"+state))})
	}
	return blocks
}

// sides are who an invoice is from and for, with lines for what nobody has typed.
func (m *maker) sides() []sheet.Block {
	blocks := m.letterhead()
	var open sheet.Blanks
	if len(blocks) == 0 {
		open = append(open, sheet.Blank{Label: m.T("offering/for-workshop"), Share: 1})
	}
	if name := strings.TrimSpace(m.Job.Record.Client.Name); name != "" {
		blocks = append(blocks, sheet.Say(m.T("order-paper/to", "name", name)))
	} else {
		open = append(open, sheet.Blank{Label: m.T("offering/to"), Share: 1})
	}
	open = append(open, sheet.Blank{Label: m.T("order-paper/address"), Share: 1.6}) // which nobody has asked for
	if len(open) > 0 {
		blocks = append(blocks, open)
	}
	return blocks
}

// taxLabel names the tax with its rate, where there is one.
func (m *maker) taxLabel() string {
	if len(m.Plan.Price.Taxes) == 1 {
		return m.T("order-paper/tax-at", "share", words.Quantity{Value: m.Plan.Price.Taxes[0].Percent, Unit: "%"})
	}
	return m.T("order-paper/tax")
}

func (m *maker) agreed(a design.Amount) money.Money {
	return a.In(m.Job.Record.Lock.Currency)
}

func (m *maker) sums() sheet.Table {
	return sheet.Table{Columns: []sheet.Column{{Grow: true}, {Right: true}}}
}

func (m *maker) sum(label string, a money.Money, bold bool) []sheet.Cell {
	return []sheet.Cell{{Text: label, Bold: bold}, {Text: m.Show(a), Bold: bold}}
}

// signatures are where both sides sign.
func (m *maker) signatures() sheet.Blanks {
	return sheet.Blanks{
		{Label: m.T("offering/for-client"), Share: 2}, {Label: m.T("offering/for-workshop"), Share: 2}, {Label: m.T("blank/date"), Share: 1},
	}
}
