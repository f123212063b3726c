package design

import "blockfield/engine/words"

// Passed is a state of the job that was reached on a day, for a revision of the design.
type Passed struct {
	State    string `json:"state"`
	Day      string `json:"day"`
	Revision string `json:"revision"`
}

// Lock is the look that was agreed on, at the price that was offered for it.
type Lock struct {
	Revision string  `json:"revision"`
	Day      string  `json:"day"`
	Currency string  `json:"currency"`
	Net      Amount  `json:"net"`
	Tax      Amount  `json:"tax"`
	Gross    Amount  `json:"gross"`
	Days     int     `json:"days"`   // from the first day to the last that the work was to take
	Stages   []Stage `json:"stages"` // of the payments, as the price book had them on that day

	Taxes []TaxPart `json:"taxes,omitempty"` // by rate; empty: an earlier program did not say, or there is none
	Copy  string    `json:"copy,omitempty"`  // client copy of what was locked, as EncodeCopy writes it; may be empty
}

// Slip is a numbered change after the lock: what it costs more, or less, than what was
// agreed on before, with the fee for changes. It holds once it is accepted.
type Slip struct {
	Number   int    `json:"number"`
	Day      string `json:"day"`
	Before   string `json:"before"`   // revision that it changes
	Revision string `json:"revision"` // that it leads to
	Reason   string `json:"reason"`
	Net      Amount `json:"net"`
	Tax      Amount `json:"tax"`
	Gross    Amount `json:"gross"`
	Fee      Amount `json:"fee"`      // of the change itself, in the net
	FeeTax   Amount `json:"feeTax"`   // on it, in the tax
	Days     int    `json:"days"`     // later; below zero: earlier
	Accepted string `json:"accepted"` // day; empty: not yet

	Taxes []TaxPart `json:"taxes,omitempty"` // by rate, the differences
	Copy  string    `json:"copy,omitempty"`  // client copy of what it leads to; may be empty
}

// Later says what a slip does to the day on which the job is done.
func (s Slip) Later() words.Phrase {
	switch {
	case s.Days > 0:
		return phrase("slip/later", "n", s.Days)
	case s.Days < 0:
		return phrase("slip/earlier", "n", -s.Days)
	}
	return phrase("slip/same-day")
}

// Call is an invoice of one stage of the payments.
type Call struct {
	Stage    string `json:"stage"`
	Number   string `json:"number"` // in the workshop's own books
	Day      string `json:"day"`
	Revision string `json:"revision"`
	Net      Amount `json:"net"`
	Tax      Amount `json:"tax"`
	Gross    Amount `json:"gross"`
	Paid     string `json:"paid"` // day; empty: not yet

	Taxes []TaxPart `json:"taxes,omitempty"` // by rate
}

// States are the states of a job in their order, then those beside them.
func States() []string {
	return []string{
		"sketch", "indication", "offered", "agreed", "stock ordered", "settling", "on the bench", "drying", "ready", "hung", "closed",
		"on hold", "lapsed", "reworked",
	}
}

// Longest lists of what was agreed on.
const (
	maxStates = 60
	maxSlips  = 99
	maxCalls  = 12
	maxDays   = 1000
)

// agreementRows are the rows of what was agreed on and paid. A change may cost less.
func agreementRows() []Field {
	revision := func(path, doc string) Field { return kindRow(path, KindCode, doc).fixed() }
	amount := func(path, doc string) Field { return amountRow(path, -maxBulk, maxBulk, doc).fixed() }
	rows := []Field{
		textRow("lock.copy", maxCopyChars, "Client copy of what was locked, in the letters of a link.").sparse().fixed(),
		textRow("slips[].copy", maxCopyChars, "Client copy of what it leads to, in the letters of a link.").sparse().fixed(),
	}
	for _, of := range []string{"lock.", "slips[].", "calls[]."} {
		rows = append(rows, partsRow(of+"taxes", 0, maxTaxParts, "Tax by rate.").sparse().fixed(),
			numberRow(of+"taxes[].percent", 0, 40, 1, "%", "The rate.").required().fixed(),
			amount(of+"taxes[].base", "What it is taken on, without tax.").required(),
			amount(of+"taxes[].tax", "What it comes to.").required())
	}
	return append(rows, []Field{
		partsRow("states", 0, maxStates, "States that the job has passed.").sparse(),
		choiceRow("states[].state", "Which state.", States()...).fixed(),
		kindRow("states[].day", KindDate, "On which day.").optional(),
		revision("states[].revision", "Revision of the design on that day."),
		revision("lock.revision", "Revision that was agreed on.").required(),
		kindRow("lock.day", KindDate, "On which day.").optional(),
		kindRow("lock.currency", KindCurrency, "Currency of all amounts.").required().fixed(),
		amount("lock.net", "Price without tax.").required(),
		amount("lock.tax", "Tax.").required(),
		amount("lock.gross", "Price with tax.").required(),
		integerRow("lock.days", 0, maxDays, "Days that the work was to take.").fixed(),
		partsRow("lock.stages", 1, 6, "Parts of the gross price and when they fall due.").required().fixed(),
		textRow("lock.stages[].name", shortText, "When it falls due.").filled().required().fixed(),
		numberRow("lock.stages[].percent", 0, 100, 5, "%", "Part of the gross price.").required().fixed(),
		partsRow("slips", 0, maxSlips, "Changes after the lock.").sparse(),
		integerRow("slips[].number", 1, maxSlips, "Number of the change.").fixed(),
		kindRow("slips[].day", KindDate, "On which day it was priced.").optional(),
		revision("slips[].before", "Revision that it changes."),
		revision("slips[].revision", "Revision that it leads to."),
		textRow("slips[].reason", shortText, "What is changed, and who asked for it."),
		amount("slips[].net", "Difference without tax."),
		amount("slips[].tax", "Difference of the tax."),
		amount("slips[].gross", "Difference with tax."),
		amount("slips[].fee", "Fee for the change, in the difference without tax."),
		amount("slips[].feeTax", "Tax on the fee, in the difference of the tax."),
		integerRow("slips[].days", -maxDays, maxDays, "Days that it takes longer.").fixed(),
		kindRow("slips[].accepted", KindDate, "Day on which it was accepted; may be empty.").optional(),
		partsRow("calls", 0, maxCalls, "Invoices of stages.").sparse(),
		textRow("calls[].stage", shortText, "Which stage.").fixed(),
		textRow("calls[].number", shortText, "Its number in the workshop's own books."),
		kindRow("calls[].day", KindDate, "On which day.").optional(),
		revision("calls[].revision", "Revision that was agreed on then."),
		amount("calls[].net", "Amount without tax."),
		amount("calls[].tax", "Tax."),
		amount("calls[].gross", "Amount with tax."),
		kindRow("calls[].paid", KindDate, "Day on which it was paid; may be empty.").optional(),
	}...)
}

// agreed holds the sums of what was agreed on: net and tax are gross, and the parts of the
// payments are a whole.
func (c *checker) agreed(r *Record, root *at) {
	sum := func(p *at, net, tax, gross Amount, parts []TaxPart) {
		if !c.clean(p) {
			return
		}
		if net+tax != gross {
			c.add(p.field("gross"), BadSum, gross.String(), words.Plain((net + tax).String()))
		}
		all := Amount(0)
		for _, t := range parts {
			all += t.Tax
		}
		if len(parts) > 0 && all != tax {
			c.add(p.field("tax"), BadSum, tax.String(), words.Plain(all.String()))
		}
	}
	if l := r.Lock; l != nil {
		sum(root.field("lock"), l.Net, l.Tax, l.Gross, l.Taxes)
		c.stages(l.Stages, root.field("lock").field("stages"))
	}
	for i, s := range r.Slips[:min(len(r.Slips), maxSlips)] {
		sum(root.field("slips").item(i), s.Net, s.Tax, s.Gross, s.Taxes)
	}
	for i, s := range r.Calls[:min(len(r.Calls), maxCalls)] {
		sum(root.field("calls").item(i), s.Net, s.Tax, s.Gross, s.Taxes)
	}
}
