package engine

import (
	"fmt"
	"slices"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/layup"
	"blockfield/engine/measure"
	"blockfield/engine/words"
)

// During returns the result with what the record of the job says of it: what was
// measured answers what was only assumed, what was counted and laid is watched over,
// Stops that were signed off shut no gate, and the tools at hand say how long it takes at
// home.
func (r Result) During(j Job) Result {
	j.atTheWall(&r)
	r.WatchOuts = slices.Concat(j.answered(r.WatchOuts), j.watchOuts())
	r.WatchOuts, r.Private = j.settled(r.WatchOuts, slices.Clone(r.Private))
	r.Bill.AtHome(j.Tools.Factor)
	for _, list := range [][]check.WatchOut{r.WatchOuts, r.Private} {
		for i, w := range list {
			if by, ok := j.signature(w); ok {
				list[i] = w.Sign(by)
			}
		}
	}
	check.Sort(r.WatchOuts)
	check.Sort(r.Private)
	return r
}

// Codes of a plan's watch-outs that sticks answer once they are measured.
const (
	codeNotMeasured = "bench/not-measured"
	codeDrift       = "measure/drift"
)

// answered leaves out what the sticks that were measured answer.
func (j Job) answered(all []check.WatchOut) []check.WatchOut {
	measured := map[string]bool{}
	for _, g := range j.Plan.Groups {
		of := j.sectionsOf(g)
		if len(of) > 0 && !slices.ContainsFunc(of, func(s Section) bool { return !s.Known.Measured }) {
			measured[g.Path+".block.measured"] = true
		}
	}
	return slices.DeleteFunc(slices.Clone(all), func(w check.WatchOut) bool {
		return w.Code == codeDrift || w.Code == codeNotMeasured && measured[w.Field]
	})
}

// sectionsOf are the sticks that a group's blocks are cut from, one section a wood.
func (j Job) sectionsOf(g Group) []Section {
	var all []Section
	for _, s := range j.Sections {
		if slices.Contains(g.Design.Woods(), s.Wood) && s.Size.Same(g.Design.Block.Size) {
			all = append(all, s)
		}
	}
	return all
}

// watchOuts are those of the record itself.
func (j Job) watchOuts() []check.WatchOut {
	var all []check.WatchOut
	for _, g := range j.Plan.Groups {
		for _, s := range j.sectionsOf(g) {
			all = append(all, measure.WatchOuts(g.Design, s.Known, g.Path)...)
		}
	}
	all = append(all, j.bins()...)
	all = append(all, j.afterLock()...)
	all = append(all, j.dayWatchOuts(j.Days)...)
	return append(all, j.cardsInHand()...)
}

// bins watches over the counts. While blocks are still being cut a bin that is short is
// no news; once a row is laid it is a Stop, and so it is when the glue is asked for.
func (j Job) bins() []check.WatchOut {
	if len(j.Counts) == 0 {
		return nil
	}
	w := check.WatchOut{Level: check.Note, Gate: check.Glue, Pending: check.SignOff, Source: check.CommonPractice}
	if j.LaidRows() > 0 {
		w.Level, w.Pending = check.Stop, check.NotPending
	}
	if !j.counting() {
		w.Code, w.Field = "record/not-counted", design.RecordPrefix+"bins[0].cut"
		return []check.WatchOut{w}
	}
	var all []check.WatchOut
	for _, c := range j.Counts {
		if c.Short == 0 || !c.Counted {
			continue
		}
		w.Code, w.Field = "record/bin-short", fmt.Sprintf("%sbins[%d].cut", design.RecordPrefix, c.Entry)
		w.Args = words.Args{"height": j.binHeight(c.Bin), "good": c.Good, "need": c.Need, "short": c.Short, "cut": c.Short + recutSpare}
		all = append(all, w)
	}
	open := slices.DeleteFunc(slices.Clone(j.Counts), func(c Count) bool { return c.Counted })
	if len(open) > 0 {
		w.Code, w.Field = "record/bins-not-counted", fmt.Sprintf("%sbins[%d].cut", design.RecordPrefix, open[0].Entry)
		w.Args = words.Args{"n": len(open), "of": len(j.Counts)}
		all = append(all, w)
	}
	return all
}

// binHeight names a bin: by its wood too where there are several kinds of stick.
func (j Job) binHeight(b layup.Bin) any {
	if len(j.Sections) > 1 {
		return words.Phrase{Key: "rows/bin-of", Args: words.Args{"height": b.Height, "wood": words.Key("choice/" + b.Wood)}}
	}
	return b.Height
}

// cardsInHand watches over the cards that rows are laid from.
func (j Job) cardsInHand() []check.WatchOut {
	var all []check.WatchOut
	if paper := j.Record.Lay.Paper; paper != "" && paper != j.Plan.Revision {
		all = append(all, check.WatchOut{
			Code: "record/other-paper", Level: check.Stop, Gate: check.Glue,
			Args:  words.Args{"paper": paper, "now": j.Plan.Revision},
			Field: design.RecordPrefix + "lay.paper", Source: check.CommonPractice,
		})
	}
	for _, c := range j.Cards {
		if panel := j.Panel(c); c.Order == 1 && panel.Stale {
			all = append(all, check.WatchOut{
				Code: "record/other-rows", Level: check.Stop, Gate: check.Glue,
				Args: words.Args{
					"group": j.Plan.Groups[c.Field].Design.Name, "panel": c.Panel + 1,
					"n": panel.Laid, "revision": panel.Revision, "now": j.Plan.Revision,
				},
				Field: fmt.Sprintf("%srows[%d].laid", design.RecordPrefix, j.panelOf(c)), Source: check.CommonPractice,
			})
		}
	}
	return all
}

// signature is who has signed a watch-out off, for the design of now.
func (j Job) signature(w check.WatchOut) (check.Signature, bool) {
	for _, s := range j.Record.SignOffs {
		if s.Check == w.Code && s.Field == w.Field && s.Revision == j.Plan.Revision && s.Holds() {
			return check.Signature{Name: s.Name, Reason: s.Reason, Day: s.Day}, true
		}
	}
	return check.Signature{}, false
}

// Signing returns the record with a place for a name and a reason under a Stop, or with
// the one that is there brought up to the design of now.
func (j Job) Signing(code, field, day string) design.Record {
	rec := design.CloneRecord(j.Record)
	i := slices.IndexFunc(rec.SignOffs, func(s design.SignOff) bool { return s.Check == code && s.Field == field })
	if i < 0 {
		i = len(rec.SignOffs)
		rec.SignOffs = append(rec.SignOffs, design.SignOff{Check: code, Field: field})
	}
	rec.SignOffs[i].Day, rec.SignOffs[i].Revision = day, j.Plan.Revision
	return rec
}

// Counted returns the record with as many blocks more, or fewer, cut or thrown out in a
// bin; no count goes below 0.
func (j Job) Counted(entry, cut, rejects int) design.Record {
	rec := design.CloneRecord(j.Record)
	if entry < 0 || entry >= len(rec.Bins) {
		return rec
	}
	b := &rec.Bins[entry]
	b.Cut, b.Rejects, b.Revision = max(0, b.Cut+cut), max(0, b.Rejects+rejects), j.Plan.Revision
	return rec
}
