package page

import (
	"fmt"
	"slices"
	"strings"

	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// orderSlots are what was agreed on, for the maker. It holds fields of the record.
func (v *view) orderSlots() []slot {
	if v.Reading != Maker || v.Doc.Design.Work.OwnBuild {
		return nil
	}
	return []slot{{id: "order", template: "order", data: v, after: ofDesign}}
}

// Ordered reports whether anything was agreed on.
func (v *view) Ordered() bool { return v.Job.Record.Lock != nil && !v.Doc.Design.Work.OwnBuild }

// AgreedPrice is what was agreed on, with tax.
func (v *view) AgreedPrice() string {
	a, _ := v.Job.Agreed()
	return v.Amount(a.Gross)
}

// OrderSent is the end of the key of what an answer holds of the order.
func (v *view) OrderSent() string {
	if v.Job.LockedOffer(v.Doc) == nil {
		return "without-order"
	}
	return "with-order"
}

// AgreedParts say what the agreed price is made of, for the client too: what was locked,
// and each change that was accepted.
func (v *view) AgreedParts() []string {
	l := v.Job.Record.Lock
	all := []string{v.T("order/locked", "revision", l.Revision, "date", l.Day, "gross", v.Amount(v.lockMoney(l.Gross)))}
	for _, s := range v.Job.AcceptedSlips() {
		line := v.T("order/change", "n", s.Number, "date", s.Accepted, "gross", v.signedAmount(s.Gross))
		if s.Reason != "" {
			line += " " + s.Reason
		}
		all = append(all, line)
	}
	return all
}

// AgreedDelivery says when what was agreed on is ready; empty where nobody has said.
func (v *view) AgreedDelivery() string {
	var all []string
	for _, p := range v.Job.ReadyDays(v.Doc) {
		all = append(all, v.Words.Say(p.Key, p.Args))
	}
	return strings.Join(all, " ")
}

// OtherThanAgreed says that the open design is another than the one that was agreed on;
// empty where it is not.
func (v *view) OtherThanAgreed() string {
	if !v.Changed() {
		return ""
	}
	a, _ := v.Job.Agreed()
	return v.T("order/other", "agreed", a.Revision, "now", v.Plan.Revision)
}

// CostsNow says what the open design would cost by itself, where that is not what was
// agreed on; empty where it is. It is for the maker alone.
func (v *view) CostsNow() string {
	a, _ := v.Job.Agreed()
	switch p := v.Plan.Price; {
	case !v.HasPrice() || p.Currency == a.Gross.Currency && p.Gross == a.Gross:
		return ""
	case p.Currency != a.Gross.Currency:
		return v.T("order/costs-now", "gross", v.Amount(p.Gross))
	default:
		return v.T("order/costs-now-off", "gross", v.Amount(p.Gross), "off", signed(p.Gross.Sub(a.Gross), v.locale()))
	}
}

// CanLock reports whether the offer of the open design can be locked.
func (v *view) CanLock() bool {
	_, why := v.Job.Locking(v.Doc, v.Book, v.Today)
	return why.Key == ""
}

// AgreedLine says what was agreed on.
func (v *view) AgreedLine() string {
	a, _ := v.Job.Agreed()
	return v.T("order/agreed", "revision", a.Revision, "gross", a.Gross.Format(v.locale()), "days", a.Days)
}

// Changed reports whether the open design is another than the one that was agreed on.
func (v *view) Changed() bool {
	a, ok := v.Job.Agreed()
	return ok && a.Revision != v.Plan.Revision
}

// StateLine is a state that the job has passed.
type StateLine struct {
	Name, Revision string
	Day            Control
}

// StateLines are the states that the job has passed, the last one first.
func (v *view) StateLines() []StateLine {
	var all []StateLine
	for i, s := range v.Job.Record.States {
		all = append(all, StateLine{Name: v.T("state/" + s.State), Revision: s.Revision, Day: v.recordControl(v.T("state/"+s.State), "states[%d].day", i)})
	}
	slices.Reverse(all)
	return all
}

// besideStates are those that are no step of the way.
const besideStates = 3

// NextStates are those that the job may reach next: the one after the last on the way, and
// those beside it.
func (v *view) NextStates() []Choice {
	states := design.States()
	way := states[:len(states)-besideStates]
	next := 0
	for _, s := range v.Job.Record.States {
		if i := slices.Index(way, s.State); i >= 0 {
			next = i + 1
		}
	}
	var all []Choice
	add := func(s string) {
		if s != v.Job.State() {
			all = append(all, Choice{Value: s, Label: v.T("state/" + s)})
		}
	}
	if next < len(way) && (way[next] != "agreed" || v.Ordered()) {
		add(way[next])
	}
	for _, s := range states[len(way):] {
		add(s)
	}
	return all
}

// SlipForm is one change after the lock.
type SlipForm struct {
	Name, Sum, Days string
	Reason          Control
	Accepted        string // empty: not yet
	Fits            bool   // it leads to the open design
	Shut            string // why it cannot be accepted all the same; empty: it can
	Path            string
}

// SlipForms are the changes after the lock.
func (v *view) SlipForms() []SlipForm {
	var all []SlipForm
	shut := v.Job.CannotAccept()
	for i, s := range v.Job.Record.Slips {
		f := SlipForm{
			Name: v.T("slip/name", "n", s.Number, "before", s.Before, "revision", s.Revision),
			Sum:  v.slipSum(s),
			Days: v.Words.Show(s.Later()), Reason: v.recordControl("", "slips[%d].reason", i),
			Fits: s.Revision == v.Plan.Revision, Path: fmt.Sprintf("%sslips[%d]", design.RecordPrefix, i),
		}
		f.Reason.Wide = true
		if f.Fits && shut.Key != "" {
			f.Shut = v.Words.Say(shut.Key, shut.Args)
		}
		if s.Accepted != "" {
			f.Accepted = v.T("slip/accepted", "date", s.Accepted)
		}
		all = append(all, f)
	}
	return all
}

// BySlip reports whether a slip clears a watch-out, and the change is not priced yet.
func (w Watch) BySlip() bool {
	last := len(w.Job.Record.Slips) - 1
	return w.Out.Code == "price/changed-after-lock" && (last < 0 || w.Job.Record.Slips[last].Revision != w.Plan.Revision)
}

// slipSum says what a change costs: what the design itself costs more or less, and the fee
// for changing it.
func (v *view) slipSum(s design.Slip) string {
	sum := v.T("slip/sum", "net", v.signedAmount(s.Net), "tax", v.signedAmount(s.Tax), "gross", v.signedAmount(s.Gross))
	if s.Fee == 0 {
		return sum
	}
	return v.T("slip/parts", "look", v.signedAmount(s.Net-s.Fee), "fee", v.signedAmount(s.Fee)) + " " + sum
}

// lockMoney is an amount of the record.
func (v *view) lockMoney(a design.Amount) money.Money {
	return a.In(v.Job.Record.Lock.Currency)
}

func (v *view) signedAmount(a design.Amount) string { return signed(v.lockMoney(a), v.locale()) }

// PaymentForm is one stage of the payments, with its invoice where it was called.
type PaymentForm struct {
	Name, Amount string
	Call         bool
	Fields       []Control
	Last         string   // path of the invoice that can still be withdrawn
	Next         bool     // it is the one to be called next
	Do           string   // what the button says that calls it
	Notes        []string // what it lacks: its number, the state that it waits for
}

// PaymentForms are the payments.
func (v *view) PaymentForms() []PaymentForm {
	var all []PaymentForm
	next := true
	for _, d := range v.Job.Payments() {
		f := PaymentForm{Name: capital(v.Words.Given(d.Stage)), Amount: v.Amount(d.Gross), Call: d.Call >= 0}
		if f.Call {
			f.Fields = []Control{
				v.recordControl("", "calls[%d].number", d.Call), v.recordControl("", "calls[%d].day", d.Call), v.recordControl("", "calls[%d].paid", d.Call),
			}
			if d.Call == len(v.Job.Record.Calls)-1 && v.Job.Record.Calls[d.Call].Paid == "" {
				f.Last = fmt.Sprintf("%scalls[%d]", design.RecordPrefix, d.Call)
			}
			if strings.TrimSpace(v.Job.Record.Calls[d.Call].Number) == "" {
				f.Notes = append(f.Notes, v.T("call/no-number"))
			}
		} else if next {
			f.Next, next = true, false
			f.Do = v.T("call/do")
			f.Notes = append(f.Notes, v.T("call/number-first"))
		}
		if state := v.Job.Early(d.Stage); state != "" {
			f.Notes = append(f.Notes, v.T("call/early", "state", words.Key("state/"+state)))
			if f.Next {
				f.Do = v.T("call/do-early")
			}
		}
		all = append(all, f)
	}
	return all
}

// PaidLine says what was invoiced and paid so far.
func (v *view) PaidLine() string {
	none := money.New(0, v.Job.Record.Lock.Currency)
	called, paid := none, none
	for _, c := range v.Job.Record.Calls {
		called = called.Add(v.lockMoney(c.Gross))
		if c.Paid != "" {
			paid = paid.Add(v.lockMoney(c.Gross))
		}
	}
	a, _ := v.Job.Agreed()
	return v.T("order/paid", "called", v.Amount(called), "paid", v.Amount(paid), "open", v.Amount(a.Gross.Sub(called)))
}
