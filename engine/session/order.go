package session

import (
	"reflect"

	"blockfield/engine/design"
)

// What was agreed on, changed and invoiced is part of the record, but whoever has just
// noted it expects that undo takes it back. So its entries are steps of the history, unlike
// what was measured, counted and laid.

// order is the part of a record that is a step of the history.
type order struct {
	states []design.Passed
	lock   *design.Lock
	slips  []design.Slip
	calls  []design.Call
}

func orderOf(rec design.Record) *order {
	rec = design.CloneRecord(rec)
	return &order{rec.States, rec.Lock, rec.Slips, rec.Calls}
}

// into returns the record with this order.
func (o *order) into(rec design.Record) design.Record {
	rec.States, rec.Lock, rec.Slips, rec.Calls = o.states, o.lock, o.slips, o.calls
	return design.CloneRecord(rec)
}

// entered is recorded for what a person has entered: where that changed the order, it is a
// step of the history.
func (s *Session) entered(rec design.Record) Response {
	before := orderOf(s.record())
	if !reflect.DeepEqual(before, orderOf(rec)) {
		step := s.now.kept()
		step.order = before
		s.remember(step)
	}
	return s.recorded(rec)
}

// stepOrder moves one step of the order from one end of the history to the other.
func (s *Session) stepOrder(from, to *[]kept, done string) Response {
	n := len(*from)
	then, back := (*from)[n-1], s.now.kept()
	back.order = orderOf(s.record())
	*from, *to = (*from)[:n-1], append(*to, back)
	text := s.recorded(then.order.into(s.record())).Record
	res := s.whole("page/order-" + done)
	res.Record = text
	return res
}
