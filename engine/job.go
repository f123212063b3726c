package engine

import (
	"fmt"
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/layup"
	"blockfield/engine/length"
	"blockfield/engine/tools"
)

// Job is a planned design together with what its record says of the work on it.
type Job struct {
	Plan     Result
	Record   design.Record // with a place for all that can be typed
	Sections []Section     // of the sticks
	Counts   []Count       // of the blocks, bin by bin
	Cards    []layup.Card  // of all rows, in the order of work
	Days     Days          // on which all of it is done
	Tools    tools.Advice  // what the tools at hand mean, for a home builder

	design design.Design
}

// Follow returns how far a job has come. The design is the one that was planned; it
// may be another than the one that the record was begun for.
//
// Today is an ISO date; where it is empty nobody knows the day.
func Follow(d design.Design, r Result, rec design.Record, today string) Job {
	j := Job{Plan: r, design: d}
	j.Record, j.Sections, j.Counts = fit(rec, r, d.Work)
	j.Cards = r.layup(d, rec.Lay.Start, j.good)
	j.Tools = j.advise()
	j.Days = j.Schedule(d, today)
	return j
}

// advise is what the tools at hand mean for the blocks of the job.
func (j Job) advise() tools.Advice {
	var heights []length.Length
	for _, c := range j.Counts {
		heights = append(heights, c.Bin.Height)
	}
	return tools.Advise(j.Record.Tools, heights)
}

// good is how many blocks lie in a bin: those that were counted, and else what was
// planned to be cut.
func (j Job) good(b layup.Bin) int {
	for _, c := range j.Counts {
		if c.Bin.Wood == b.Wood && c.Bin.Size.Same(b.Size) && c.Bin.Height.Same(b.Height) && c.Counted {
			return c.Good
		}
	}
	return j.Plan.planned(b)
}

// Recut is what has to be cut anew: the bins that are short.
func (j Job) Recut() []Count {
	return slices.DeleteFunc(slices.Clone(j.Counts), func(c Count) bool { return c.Recut == 0 })
}

// counting reports whether anybody has begun to count.
func (j Job) counting() bool {
	return slices.ContainsFunc(j.Counts, func(c Count) bool { return c.Counted })
}

// At is the card that is on the screen, from 0; −1 where there are none.
func (j Job) At() int { return min(j.Record.Lay.At, len(j.Cards)) - 1 }

// PanelState is how far the rows of one panel are.
type PanelState struct {
	Laid     int    // rows
	Stale    bool   // they were laid from cards that differ from those of now
	Revision string // from whose cards they were laid; empty: none is laid
}

// panelOf is the entry of the record for the panel of a card, or −1.
func (j Job) panelOf(c layup.Card) int {
	g := j.Plan.Groups[c.Field]
	return slices.IndexFunc(j.Record.Rows, func(p design.Rows) bool {
		return p.Wall == g.Wall+1 && p.Group == g.Index+1 && p.Panel == c.Panel+1
	})
}

// fieldCode is the code of what the cards of a panel say: section, slack, woods,
// heights and levels. A panel that hangs elsewhere has the same cards.
func (j Job) fieldCode(c layup.Card) string {
	g := j.Plan.Groups[c.Field]
	content := fmt.Appendf(nil, "%s %d %d", g.Design.Wood, g.Design.Block.Size.Nanometres(), g.Design.Block.Slack.Nanometres())
	for _, h := range g.Design.Heights {
		content = fmt.Appendf(content, " %d", h.Nanometres())
	}
	p := g.Built.Panels[c.Panel]
	content = fmt.Appendf(content, " %d×%d ", p.Grid.Columns, p.Grid.Rows)
	content = append(content, p.Grid.Levels...)
	if p.Woods != nil {
		content = fmt.Appendf(content, " %s ", g.Design.SecondWood)
		content = append(content, p.Woods...)
	}
	return design.CodeOf(content)
}

// Panel is how far the panel of a card is.
func (j Job) Panel(c layup.Card) PanelState {
	i := j.panelOf(c)
	if i < 0 || len(j.Record.Rows[i].Laid) == 0 {
		return PanelState{}
	}
	p := j.Record.Rows[i]
	return PanelState{Laid: len(p.Laid), Stale: p.Field != j.fieldCode(c), Revision: p.Revision}
}

// Laid reports whether the row of a card lies on its panel, laid from these very
// cards.
func (j Job) Laid(c layup.Card) bool {
	i := j.panelOf(c)
	if i < 0 || j.Record.Rows[i].Field != j.fieldCode(c) {
		return false
	}
	_, found := slices.BinarySearch(j.Record.Rows[i].Laid, c.Row+1)
	return found
}

// LaidRows counts the cards whose rows are laid.
func (j Job) LaidRows() int {
	n := 0
	for _, c := range j.Cards {
		if j.Laid(c) {
			n++
		}
	}
	return n
}

// Ticked returns the record with the row of a card laid or not. A panel that was
// laid from other cards is left as it is: whoever lays on has to begin it anew.
func (j Job) Ticked(c layup.Card, laid bool) design.Record {
	rec := design.CloneRecord(j.Record)
	if j.Panel(c).Stale {
		return rec
	}
	i := j.panelOf(c)
	if i < 0 {
		g := j.Plan.Groups[c.Field]
		i = len(rec.Rows)
		rec.Rows = append(rec.Rows, design.Rows{Wall: g.Wall + 1, Group: g.Index + 1, Panel: c.Panel + 1, Laid: []int{}})
	}
	p := &rec.Rows[i]
	p.Revision, p.Field = j.Plan.Revision, j.fieldCode(c)
	at, found := slices.BinarySearch(p.Laid, c.Row+1)
	switch {
	case laid && !found:
		p.Laid = slices.Insert(p.Laid, at, c.Row+1)
	case !laid && found:
		p.Laid = slices.Delete(p.Laid, at, at+1)
	}
	return rec
}

// Anew returns the record with no row of a card's panel laid.
func (j Job) Anew(c layup.Card) design.Record {
	rec := design.CloneRecord(j.Record)
	if i := j.panelOf(c); i >= 0 {
		rec.Rows[i].Laid = []int{}
		rec.Rows[i].Revision, rec.Rows[i].Field = j.Plan.Revision, j.fieldCode(c)
	}
	return rec
}

// Moved returns the record with another card on the screen, as many cards on.
func (j Job) Moved(by int) design.Record {
	rec := design.CloneRecord(j.Record)
	rec.Lay.At = min(max(1, j.At()+1+by), max(1, len(j.Cards)))
	return rec
}
