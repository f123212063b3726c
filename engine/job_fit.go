package engine

import (
	"slices"

	"blockfield/engine/bench"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/layup"
	"blockfield/engine/length"
	"blockfield/engine/measure"
)

// sameSizeMM is how far a size may have moved between the design that blocks were
// measured or counted for and that of now: a section that was measured is taken over
// as the size of the blocks.
const sameSizeMM = 3

// Section is what is known of the sticks of one wood and section.
type Section struct {
	Wood    string
	Size    length.Length // of the design
	Card    int           // its entry in the record
	Section measure.Section
	Known   measure.Known
}

// Count is one bin: what it should hold, and what it holds.
type Count struct {
	Bin          layup.Bin
	Entry        int // in the record
	Need, Spare  int
	Cut, Rejects int
	Good, Short  int
	Recut        int  // to be cut anew: what is short and two more, since one of them may fail as well
	Counted      bool // somebody has counted
}

// Entries from which on those that say nothing are dropped, so that a record whose
// design changes without end stays small.
const (
	manyCards = 64
	manyBins  = 576
	manyTimes = 120
)

// pruned drops entries that say nothing, where there are very many.
func pruned(rec design.Record) design.Record {
	if len(rec.Cards) > manyCards {
		rec.Cards = slices.DeleteFunc(rec.Cards, func(c design.Card) bool { return len(c.Widths)+len(c.Thicknesses) == 0 })
	}
	if len(rec.Bins) > manyBins {
		rec.Bins = slices.DeleteFunc(rec.Bins, func(b design.Bin) bool { return b.Cut+b.Rejects == 0 })
	}
	if len(rec.Times) > manyTimes {
		rec.Times = slices.DeleteFunc(rec.Times, func(t design.Time) bool { return t.Minutes == 0 })
	}
	return rec
}

// recutSpare is cut beyond what is short. Common practice, no source.
const recutSpare = 2

// fit gives the record an entry for every section, bin, task and line of the plan, so
// that each has a place to be typed in. Entries that nothing asks for any more stay.
func fit(rec design.Record, r Result, w design.Work) (design.Record, []Section, []Count) {
	rec = pruned(design.CloneRecord(rec))
	var sections []Section
	var counts []Count
	cards, bins := map[int]bool{}, map[int]bool{} // entries that are taken
	for _, lot := range r.Bill.Lots {
		at := cardOf(rec.Cards, cards, lot.Wood, lot.Size)
		if at < 0 {
			at = len(rec.Cards)
			rec.Cards = append(rec.Cards, design.Card{
				Wood: lot.Wood, Size: lot.Size, Widths: []length.Length{}, Thicknesses: []length.Length{},
			})
		}
		cards[at] = true
		s, _ := measure.OfReadings(rec.Cards[at].Widths, rec.Cards[at].Thicknesses)
		sections = append(sections, Section{
			Wood: lot.Wood, Size: lot.Size, Card: at, Section: s, Known: measure.KnownOf(s, lot.Size),
		})
		for _, h := range lot.Heights {
			bin := layup.Bin{Wood: lot.Wood, Size: lot.Size, Height: h.Height}
			at := binOf(rec.Bins, bins, bin)
			if at < 0 {
				at = len(rec.Bins)
				rec.Bins = append(rec.Bins, design.Bin{Wood: bin.Wood, Size: bin.Size, Height: bin.Height, Revision: r.Revision})
			}
			bins[at] = true
			counts = append(counts, count(bin, at, rec.Bins[at], h.Need, h.Spare))
		}
	}
	rec.Times = fitTimes(rec.Times, r.Bill.Timed(w))
	rec.Spent = fitSpent(rec.Spent, r)
	rec.Weighed = fitWeighed(rec.Weighed, r)
	return rec, sections, counts
}

func count(bin layup.Bin, entry int, b design.Bin, need, spare int) Count {
	c := Count{
		Bin: bin, Entry: entry, Need: need, Spare: spare,
		Cut: b.Cut, Rejects: b.Rejects, Good: b.Good(), Counted: b.Cut > 0,
	}
	if c.Short = max(0, need-c.Good); c.Short > 0 && c.Counted {
		c.Recut = c.Short + recutSpare
	}
	return c
}

// cardOf and binOf find the entry of a section and of a bin, of those that are not
// taken the one that is nearest in size; −1 where there is none.
func cardOf(cards []design.Card, taken map[int]bool, wood string, size length.Length) int {
	return nearest(len(cards), taken, size, func(i int) (length.Length, bool) { return cards[i].Size, cards[i].Wood == wood })
}

func binOf(bins []design.Bin, taken map[int]bool, b layup.Bin) int {
	return nearest(len(bins), taken, b.Size, func(i int) (length.Length, bool) {
		return bins[i].Size, bins[i].Wood == b.Wood && bins[i].Height.Same(b.Height)
	})
}

func nearest(n int, taken map[int]bool, size length.Length, entry func(int) (length.Length, bool)) int {
	best, bestNM := -1, length.MM(sameSizeMM).Nanometres()
	for i := range n {
		other, fits := entry(i)
		off := max(other.Sub(size).Nanometres(), size.Sub(other).Nanometres())
		if fits && !taken[i] && (off < bestNM || off == bestNM && best < 0) {
			best, bestNM = i, off
		}
	}
	return best
}

// fitTimes adds the tasks of the plan that have no entry yet. The road has one of its own.
func fitTimes(times []design.Time, tasks []bench.TaskTime) []design.Time {
	for _, t := range tasks {
		if t.ID != bench.Road && !slices.ContainsFunc(times, func(had design.Time) bool { return had.Task == t.ID }) {
			times = append(times, design.Time{Task: t.ID})
		}
	}
	return times
}

// fitSpent adds the lines of what is bought that have no entry yet.
func fitSpent(spent []design.Spent, r Result) []design.Spent {
	for _, key := range boughtLines(r) {
		if !slices.ContainsFunc(spent, func(had design.Spent) bool { return had.Line == key }) {
			spent = append(spent, design.Spent{Line: key})
		}
	}
	return spent
}

// boughtLines are the keys of what is bought, as the price lists it.
func boughtLines(r Result) []string {
	var all []string
	for _, l := range r.Price.Lines {
		if l.Role == cost.Material && l.Name == "" {
			all = append(all, l.Key)
		}
	}
	return all
}
