package bench

import (
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
)

// Limits of the checks on stock. Common practice, no source.
const (
	wasteNotedPct  = 35  // of the bought length that ends up in no panel
	shortWarnedMM  = 25  // a block that fingers cannot hold at the saw
	shortRefusedMM = 12  // a block that a usual carrier does not hold either
	tailLeastMM    = 150 // between a hand and the blade
	narrowerAtMost = 0.1 // of a side: giving up more for a sheet is another panel
)

// Limits of the checks on the work.
const (
	// sandingHoursADay is when a hand has had what Directive 2002/44/EC takes
	// action at, A(8) = 2.5 m/s²: 8 h × (2.5 / a)² for a vibration a. A usual
	// sander shakes with 5 m/s² (common practice): 2 h.
	sandingHoursADay = 8 * (actionMS2 / sanderMS2) * (actionMS2 / sanderMS2)
	actionMS2        = 2.5
	sanderMS2        = 5.0

	safeOpenPct   = 70 // of the glue's open time; common practice, no source
	longestOpen   = 20 // minutes; the longest that a design takes. Invented
	coldestShopC  = 10 // wood glue turns chalky below; common practice, no source
	sandingSource = "Directive 2002/44/EC, action value 2.5 m/s² for 8 hours, with 5 m/s² for a usual sander (common practice)"
)

// WatchOuts returns what is to be said of stock, saw, glue and finish. The
// design and its built groups are those that the bill was made of.
func (b Bill) WatchOuts(d design.Design, groups []panel.Group) []check.WatchOut {
	jobs, err := pair(d, groups)
	if err != nil {
		return nil // such a bill was never made
	}
	all := b.groupWatchOuts(d.Bench, jobs)
	all = append(all, b.waste(d.Bench, jobs)...)
	all = append(all, shortTail(d.Bench)...)
	all = append(all, b.shortBoards(d.Bench)...)
	all = append(all, b.sawReach(d.Bench)...)
	all = append(all, b.sanding()...)
	all = append(all, b.longRow(d.Bench)...)
	return append(all, coldShop(d.Bench)...)
}

// groupWatchOuts are those that stand at one group.
func (b Bill) groupWatchOuts(in design.Bench, jobs []job) []check.WatchOut {
	var all []check.WatchOut
	for i, j := range jobs {
		at := j.path[len(designPath):]
		all = append(all, notMeasured(j, at)...)
		all = append(all, shortBlock(j, at)...)
		all = append(all, tooLarge(b.Groups[i], j, at)...)
		all = append(all, oneASheet(in, b.Groups[i], j, at)...)
		all = append(all, oilyRags(j, at)...)
		all = append(all, finishedBases(j, at)...)
	}
	return all
}

// designPath is what a path of a fault starts with, and that of a watch-out
// does not.
const designPath = "design."

// typed is a length as a person would type it, none shorter than l, in the
// notation of the value that it replaces.
func typed(l, replaced length.Length) string { return l.CeilAs(replaced.Notation()).String() }
