package engine

import (
	"slices"

	"blockfield/engine/check"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// Agreed is what a job stands at: the look that was locked, with the changes that were
// accepted since.
type Agreed struct {
	Revision        string
	Net, Tax, Gross money.Money
	Taxes           []design.TaxPart // by rate; nil where nobody has noted them
	Days            int              // from the first day of the work to its last
}

// Agreed returns what was agreed on; false where nothing was.
func (j Job) Agreed() (Agreed, bool) {
	l := j.Record.Lock
	if l == nil {
		return Agreed{}, false
	}
	a := Agreed{Revision: l.Revision, Net: j.agreedMoney(l.Net), Tax: j.agreedMoney(l.Tax), Gross: j.agreedMoney(l.Gross), Days: l.Days}
	a.Taxes = l.Taxes
	for _, s := range j.Record.Slips {
		if s.Accepted == "" {
			continue
		}
		a.Taxes = sumTaxes(a.Taxes, s.Taxes, 1)
		a.Revision, a.Days = s.Revision, a.Days+s.Days
		a.Net, a.Tax, a.Gross = a.Net.Add(j.agreedMoney(s.Net)), a.Tax.Add(j.agreedMoney(s.Tax)), a.Gross.Add(j.agreedMoney(s.Gross))
	}
	return a, true
}

// IsAgreed reports whether the design of now is the one that was agreed on.
func (j Job) IsAgreed() bool {
	a, ok := j.Agreed()
	return ok && a.Revision == j.Plan.Revision
}

// AcceptedSlips are the changes that hold, in their order.
func (j Job) AcceptedSlips() []design.Slip {
	return slices.DeleteFunc(slices.Clone(j.Record.Slips), func(s design.Slip) bool { return s.Accepted == "" })
}

// NoNewOffer says why a locked order gets no other offer, and its own is not withdrawn: a
// change goes by a slip. It is zero where nothing was locked.
func (j Job) NoNewOffer() words.Phrase {
	if j.Record.Lock == nil {
		return words.Phrase{}
	}
	return words.Phrase{Key: "offer/is-agreed"}
}

// LockedOffer is the offer of a document that was locked; nil where the document has
// another one by now, or none.
func (j Job) LockedOffer(doc design.Document) *design.Offer {
	if l := j.Record.Lock; l != nil && doc.Offer.For(l.Revision) {
		return doc.Offer
	}
	return nil
}

// AsAgreed is a document for those who have no record of its job, in a file, a link or a
// letter: its offer is what was agreed on, with every change that was accepted. A document
// of which nothing was agreed on is as it was.
func (j Job) AsAgreed(doc design.Document) design.Document {
	o := j.LockedOffer(doc)
	if o == nil {
		return doc
	}
	a, _ := j.Agreed()
	at := *o
	at.Revision, at.Agreed = a.Revision, j.Record.Lock.Day
	at.Net, at.Tax, at.Gross, at.Taxes = offered(a.Net), offered(a.Tax), offered(a.Gross), a.Taxes
	at.Look, at.Others = "", nil
	at.LaterFrom, at.LaterBy = "", ""
	moved := 0
	for _, s := range j.AcceptedSlips() {
		at.Agreed, moved = s.Accepted, moved+s.Days
	}
	if moved != 0 || j.Record.Lock.Day != o.Made { // the days of the offer are no longer true
		at.ReadyFrom, at.ReadyBy = "", ""
	}
	at.Stages = nil
	for _, d := range j.Payments() {
		if d.Gross.Minor < 0 { // a credit is no stage of an offer
			at.Stages = nil
			break
		}
		at.Stages = append(at.Stages, design.OfferedStage{Name: d.Stage, Amount: offered(d.Gross)})
	}
	doc.Offer = &at
	return doc
}

// ReadyDays says when what was agreed on is ready: as it was offered, and what each
// accepted change has moved since.
func (j Job) ReadyDays(doc design.Document) []words.Phrase {
	var all []words.Phrase
	if o := j.LockedOffer(doc); o != nil {
		all = PromisedDays(*o)
		if j.Record.Lock.Day == o.Made { // whoever ordered at once need not know of the last day
			all = slices.DeleteFunc(all, func(p words.Phrase) bool { return p.Key == "offer/ready-last" })
		}
	}
	for _, s := range j.AcceptedSlips() {
		if s.Days != 0 {
			all = append(all, words.Phrase{Key: "order/moved", Args: words.Args{"n": s.Number, "later": s.Later()}})
		}
	}
	return all
}

// sumTaxes adds rates of tax to others, or takes them off where sign is −1. What nobody has
// noted of one makes the sum unknown: nil.
func sumTaxes(a, b []design.TaxPart, sign design.Amount) []design.TaxPart {
	if len(a) == 0 || len(b) == 0 {
		return nil
	}
	all := slices.Clone(a)
	for _, t := range b {
		i := slices.IndexFunc(all, func(o design.TaxPart) bool { return o.Percent == t.Percent })
		if i < 0 {
			i = len(all)
			all = append(all, design.TaxPart{Percent: t.Percent})
		}
		all[i].Base, all[i].Tax = all[i].Base+sign*t.Base, all[i].Tax+sign*t.Tax
	}
	return all
}

// copyOf is the client copy of a design; empty where it is too large for one.
func copyOf(d design.Design) string {
	doc := design.Default()
	doc.Design, doc.Assumed = d, nil
	text, err := design.EncodeCopy(doc)
	if err != nil {
		return ""
	}
	return text
}

// Changed returns the designs that a slip of the record leads from and to; false where they
// were not kept.
func (j Job) Changed(slip int) (before, after design.Document, ok bool) {
	from := ""
	if l := j.Record.Lock; l != nil {
		from = l.Copy
	}
	for _, s := range j.Record.Slips[:slip] {
		if s.Accepted != "" {
			from = s.Copy
		}
	}
	before, err := design.DecodeCopy(from)
	if err != nil {
		return before, after, false
	}
	after, err = design.DecodeCopy(j.Record.Slips[slip].Copy)
	return before, after, err == nil
}

// DueFrom is the state of a job from which on a stage of the payments is due, as far as the
// names say it that a price book comes with; empty for a stage in somebody's own words.
func DueFrom(stage string) string {
	switch stage {
	case "order":
		return "agreed"
	case "ready":
		return "ready"
	case "handed over":
		return "hung"
	}
	return ""
}

// Early returns the state for which a stage of the payments waits; empty where it is due,
// or nobody can tell from its name.
func (j Job) Early(stage string) string {
	wants, all := DueFrom(stage), design.States()
	for _, s := range j.Record.States {
		if slices.Index(all, s.State) >= slices.Index(all, wants) && slices.Index(all, s.State) <= slices.Index(all, "closed") {
			return ""
		}
	}
	return wants
}

// agreedMoney is an amount of the record in the currency of the lock.
func (j Job) agreedMoney(a design.Amount) money.Money {
	return a.In(j.Record.Lock.Currency)
}

// span is how many days the work takes, waits and all.
func (j Job) span() int { return max(0, int(j.Days.Plan.Ready.Day()-j.Days.Start)+1) }

// Locking returns the record with the offer of a document locked: what is built from then
// on, and what it costs. The offer has to be of this very design and of its days, by the
// book in force. hindrance says why not.
func (j Job) Locking(doc design.Document, b design.Book, today string) (rec design.Record, hindrance words.Phrase) {
	o := doc.Offer
	switch {
	case j.Record.Lock != nil:
		return j.Record, words.Phrase{Key: "lock/is-locked"}
	case o == nil || o.Revision != j.Plan.Revision:
		return j.Record, words.Phrase{Key: "lock/no-offer"}
	case !design.IsDate(today):
		return j.Record, words.Phrase{Key: "offer/no-day"}
	case today > o.ValidUntil:
		return j.Record, words.Phrase{Key: "lock/lapsed", Args: words.Args{"date": o.ValidUntil}}
	case o.BookCode != b.Code():
		return j.Record, words.Phrase{Key: "lock/other-book"}
	}
	rec = j.Reached("agreed", today)
	rec.Lock = &design.Lock{
		Revision: o.Revision, Day: today, Currency: o.Currency, Net: o.Net, Tax: o.Tax, Gross: o.Gross,
		Days: j.span(), Stages: slices.Clone(b.Stages), Taxes: slices.Clone(o.Taxes), Copy: copyOf(j.design),
	}
	return rec, words.Phrase{}
}

// Unlocking returns the record with nothing agreed on, as long as nothing was invoiced.
func (j Job) Unlocking() (rec design.Record, hindrance words.Phrase) {
	if len(j.Record.Calls) > 0 {
		return j.Record, words.Phrase{Key: "lock/invoiced"}
	}
	rec = design.CloneRecord(j.Record)
	rec.Lock, rec.Slips = nil, nil
	return rec, words.Phrase{}
}

// Reached returns the record with a state of the job reached on a day.
func (j Job) Reached(state, today string) design.Record {
	rec := design.CloneRecord(j.Record)
	rec.States = append(rec.States, design.Passed{State: state, Day: today, Revision: j.Plan.Revision})
	return rec
}

// State is the one that was reached last; empty where none was noted.
func (j Job) State() string {
	if n := len(j.Record.States); n > 0 {
		return j.Record.States[n-1].State
	}
	return ""
}

// Slip returns the record with a change slip for the design of now: the difference to what
// was agreed on, the fee for changes on top. A slip that nobody has accepted yet is priced
// anew. terms are those of the design.
func (j Job) Slip(b design.Book, terms design.Money, today string) (rec design.Record, hindrance words.Phrase) {
	a, ok := j.Agreed()
	p := j.Plan.Price
	switch {
	case !ok:
		return j.Record, words.Phrase{Key: "slip/not-locked"}
	case a.Revision == j.Plan.Revision:
		return j.Record, words.Phrase{Key: "slip/unchanged"}
	case !p.Sold || p.Gross.Minor <= 0:
		return j.Record, words.Phrase{Key: "offer/no-price"}
	case p.Currency != j.Record.Lock.Currency:
		return j.Record, words.Phrase{Key: "slip/other-currency", Args: words.Args{"locked": j.Record.Lock.Currency, "now": p.Currency}}
	}
	fee := b.Policy.ChangeFee.In(p.Currency)
	feeTax := money.New(0, p.Currency)
	if !terms.Reverse {
		feeTax = fee.MulDiv(int64(terms.Tax*ppmPerPercent+0.5), hundredPercent, money.HalfAway)
	}
	net, tax := p.Net.Sub(a.Net).Add(fee), p.Tax.Sub(a.Tax).Add(feeTax)
	taxes := sumTaxes(sumTaxes(taxParts(p.Taxes), a.Taxes, -1), feeParts(terms, offered(fee), offered(feeTax)), 1)
	for _, earlier := range j.Record.Slips { // their fees are no part of what the design costs
		if earlier.Accepted != "" {
			taxes = sumTaxes(taxes, feeParts(terms, earlier.Fee, earlier.FeeTax), 1)
			net, tax = net.Add(j.agreedMoney(earlier.Fee)), tax.Add(j.agreedMoney(earlier.FeeTax))
		}
	}
	s := design.Slip{
		Number: len(j.Record.Slips) + 1, Day: today, Before: a.Revision, Revision: j.Plan.Revision,
		Net: offered(net), Tax: offered(tax), Gross: offered(net.Add(tax)), Fee: offered(fee), FeeTax: offered(feeTax), Days: j.span() - a.Days,
		Taxes: taxes, Copy: copyOf(j.design),
	}
	rec = design.CloneRecord(j.Record)
	if n := len(rec.Slips); n > 0 && rec.Slips[n-1].Accepted == "" {
		s.Number, s.Reason = rec.Slips[n-1].Number, rec.Slips[n-1].Reason
		rec.Slips[n-1] = s
		return rec, words.Phrase{}
	}
	rec.Slips = append(rec.Slips, s)
	return rec, words.Phrase{}
}

// feeParts is the tax on a fee for changes, at the usual rate.
func feeParts(terms design.Money, fee, tax design.Amount) []design.TaxPart {
	return []design.TaxPart{{Percent: terms.Tax, Base: fee, Tax: tax}}
}

// Millionths of a percentage.
const (
	ppmPerPercent  = 10_000
	hundredPercent = 100 * ppmPerPercent
)

// CannotAccept says why the design of now may be priced but not agreed on: what could not
// be offered cannot be accepted on a slip either. It is zero where nothing is in the way.
// A Stop that was signed off, or answered by evidence, is not.
func (j Job) CannotAccept() words.Phrase {
	if stops := j.Plan.During(j).ShutAt(check.Offer); len(stops) > 0 {
		return words.Phrase{Key: "slip/gate-shut", Args: words.Args{
			"n": len(stops), "what": words.Phrase{Key: stops[0].Code, Args: stops[0].Args},
		}}
	}
	return words.Phrase{}
}

// Accepting returns the record with its last change slip accepted. It has to lead to the
// design of now, and that to be one that can be offered.
func (j Job) Accepting(today string) (rec design.Record, hindrance words.Phrase) {
	n := len(j.Record.Slips)
	switch shut := j.CannotAccept(); {
	case n == 0 || j.Record.Slips[n-1].Accepted != "":
		return j.Record, words.Phrase{Key: "slip/none"}
	case j.Record.Slips[n-1].Revision != j.Plan.Revision:
		return j.Record, words.Phrase{Key: "slip/other-design", Args: words.Args{"revision": j.Record.Slips[n-1].Revision, "now": j.Plan.Revision}}
	case shut.Key != "":
		return j.Record, shut
	case !design.IsDate(today):
		return j.Record, words.Phrase{Key: "offer/no-day"}
	}
	rec = design.CloneRecord(j.Record)
	rec.Slips[n-1].Accepted = today
	return rec, words.Phrase{}
}

// Due is one stage of the payments: what was invoiced for it, or what it comes to as
// things stand.
type Due struct {
	Stage           string
	Net, Tax, Gross money.Money
	Taxes           []design.TaxPart // by rate; nil where nobody has noted them
	Call            int              // its invoice in the record; −1: not yet called
}

// Payments are the stages of what was agreed on. No stage but the last asks for more than
// its share; one that is called after a change takes up what the earlier ones missed; the
// last takes the rest, so that all of them are the agreed price to the cent. Where a change
// was accepted after the last one, a further line has what is left.
func (j Job) Payments() []Due {
	a, ok := j.Agreed()
	if !ok {
		return nil
	}
	stages := j.Record.Lock.Stages
	none := money.New(0, j.Record.Lock.Currency)
	gross, tax, share := none, none, none // so far
	taxes := a.Taxes                      // that are left
	var all []Due
	lines := max(len(stages), len(j.Record.Calls))
	for i := 0; i < lines || i == lines && gross != a.Gross; i++ {
		stage := stages[min(i, len(stages)-1)]
		if i < len(stages) {
			share = share.Add(a.Gross.MulDiv(int64(stage.Percent*ppmPerPercent+0.5), hundredPercent, money.TowardsZero))
		}
		d := Due{Stage: stage.Name, Call: -1, Gross: share.Sub(gross)}
		if i >= len(stages)-1 {
			d.Gross = a.Gross.Sub(gross)
		}
		switch {
		case i < len(j.Record.Calls):
			c := j.Record.Calls[i]
			d = Due{Stage: c.Stage, Call: i, Net: j.agreedMoney(c.Net), Tax: j.agreedMoney(c.Tax), Gross: j.agreedMoney(c.Gross), Taxes: c.Taxes}
		case i >= len(stages)-1:
			d.Tax = a.Tax.Sub(tax)
		case a.Gross.Minor > 0:
			d.Tax = d.Gross.MulDiv(a.Tax.Minor, a.Gross.Minor, money.HalfAway)
		}
		if d.Call < 0 {
			d.Net = d.Gross.Sub(d.Tax)
			d.Taxes = taxes
			if i < len(stages)-1 {
				d.Taxes = splitTaxes(a, d)
			}
		}
		taxes = sumTaxes(taxes, d.Taxes, -1)
		gross, tax = gross.Add(d.Gross), tax.Add(d.Tax)
		all = append(all, d)
	}
	return all
}

// splitTaxes divides the tax of a stage by rate as that of the whole is, to the cent: what
// rounding leaves is with the first rate.
func splitTaxes(a Agreed, d Due) []design.TaxPart {
	all := slices.Clone(a.Taxes)
	base, tax := offered(d.Net), offered(d.Tax)
	for i := len(all) - 1; i >= 0; i-- {
		t := &all[i]
		part := func(of money.Money, share design.Amount, whole money.Money) design.Amount {
			if whole.Minor == 0 {
				return 0
			}
			return offered(of.MulDiv(share.In(of.Currency).Minor, whole.Minor, money.HalfAway))
		}
		if i == 0 {
			t.Base, t.Tax = base, tax
			break
		}
		t.Base, t.Tax = part(d.Net, t.Base, a.Net), part(d.Tax, t.Tax, a.Tax)
		base, tax = base-t.Base, tax-t.Tax
	}
	return all
}

// Calling returns the record with the next stage invoiced.
func (j Job) Calling(today string) (rec design.Record, hindrance words.Phrase) {
	a, ok := j.Agreed()
	if !ok {
		return j.Record, words.Phrase{Key: "slip/not-locked"}
	}
	if !design.IsDate(today) {
		return j.Record, words.Phrase{Key: "offer/no-day"}
	}
	for _, d := range j.Payments() {
		if d.Call >= 0 {
			continue
		}
		rec = design.CloneRecord(j.Record)
		rec.Calls = append(rec.Calls, design.Call{
			Stage: d.Stage, Day: today, Revision: a.Revision, Net: offered(d.Net), Tax: offered(d.Tax), Gross: offered(d.Gross), Taxes: d.Taxes,
		})
		return rec, words.Phrase{}
	}
	return j.Record, words.Phrase{Key: "call/none"}
}

// settled is what an agreement answers of the watch-outs of the price: the offer was taken,
// whatever has become of its days, and it is what was agreed on that the budget is held
// against.
func (j Job) settled(public, private []check.WatchOut) ([]check.WatchOut, []check.WatchOut) {
	a, ok := j.Agreed()
	if !ok {
		return public, private
	}
	public = slices.DeleteFunc(public, AboutOffer)
	if j.Plan.Price.Sold {
		private = slices.DeleteFunc(private, func(w check.WatchOut) bool { return w.Code == "price/over-budget" })
		private = append(private, cost.OverBudget(j.design.Money, a.Gross)...)
	}
	return public, private
}

// afterLock watches over what was agreed on: a design that differs from it waits for a
// slip, or for somebody's signature.
func (j Job) afterLock() []check.WatchOut {
	a, ok := j.Agreed()
	if !ok || a.Revision == j.Plan.Revision {
		return nil
	}
	return []check.WatchOut{{
		Code: "price/changed-after-lock", Level: check.Stop, Gate: check.Buy,
		Args: words.Args{"agreed": a.Revision, "now": j.Plan.Revision}, Source: check.CommonPractice,
	}}
}
