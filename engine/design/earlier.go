package design

// Earlier is what a design file of an earlier program holds that belongs into the record
// of the job: it says nothing of what is built, and does not change with it.
type Earlier struct {
	Fire, Other string
	Weighed     []Weighed // groups that were weighed
}

// TakeEarlier takes it out of a design; false where there is none.
func TakeEarlier(d Design) (Design, Earlier, bool) {
	e := Earlier{Fire: d.Room.FireAnswer, Other: d.Room.Answers}
	d = Clone(Document{Design: d}).Design
	d.Room.FireAnswer, d.Room.Answers = "", ""
	for w := range d.Walls {
		for i := range d.Walls[w].Groups {
			g := &d.Walls[w].Groups[i]
			if g.Weighed > 0 {
				e.Weighed = append(e.Weighed, Weighed{Wall: w + 1, Group: i + 1, Kg: g.Weighed})
			}
			g.Weighed = 0
		}
	}
	return d, e, e.Fire != "" || e.Other != "" || len(e.Weighed) > 0
}

// Into returns the record with what it does not say itself.
func (e Earlier) Into(rec Record) Record {
	rec = CloneRecord(rec)
	if rec.Asked.Fire == "" {
		rec.Asked.Fire = e.Fire
	}
	if rec.Asked.Other == "" {
		rec.Asked.Other = e.Other
	}
	for _, w := range e.Weighed {
		if old := rec.weighedOf(w.Wall, w.Group); old == nil {
			rec.Weighed = append(rec.Weighed, w)
		} else if old.Kg == 0 {
			*old = w
		}
	}
	return rec
}

// weighedOf is the entry of a group, nil where there is none.
func (r *Record) weighedOf(wall, group int) *Weighed {
	for i := range r.Weighed {
		if w := &r.Weighed[i]; w.Wall == wall && w.Group == group {
			return w
		}
	}
	return nil
}
