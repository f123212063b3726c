package bench

import (
	"fmt"
	"slices"

	"blockfield/engine/cut"
	"blockfield/engine/design"
)

// effort is how long cutting plans are looked for, and what was found before.
type effort struct {
	steps int64
	usual int64 // for plans that are only compared with: there may be many, and a browser waits for all of them
	plans *cut.Memory
}

// usualEffort is that of a plan that is made with every edit.
func usualEffort(plans *cut.Memory) effort { return effort{cut.QuickSteps, cut.QuickSteps, plans} }

// share is the part of it that each of n lots has.
func (e effort) share(n int) effort { return effort{e.steps / int64(n), e.usual / int64(n), e.plans} }

// compared is the effort of such plans.
func (e effort) compared() effort { return effort{e.usual, e.usual, e.plans} }

// effort is what is spent on the plans of a job: more where somebody asked for it and
// blocks and sticks are still those that it was asked for.
func (b *Bill) effort(in design.Bench, jobs []job, plans *cut.Memory) effort {
	b.CutsCode = cutsCode(in, pooled(in, jobs))
	b.Longer = in.LongerFor == b.CutsCode
	e := usualEffort(plans)
	if b.Longer {
		e.steps = cut.LongerSteps
	}
	return e
}

// cutsCode is the code of what sticks are cut into and out of. Prices are no part of
// it: they belong to the price book.
func cutsCode(in design.Bench, lots []Lot) string {
	content := fmt.Appendf(nil, "%d %d %d %d %g", in.StickLength.Nanometres(), in.Kerf.Nanometres(), in.EndTrim.Nanometres(),
		in.HoldTail.Nanometres(), in.Defects)
	for _, s := range in.Stock {
		content = fmt.Appendf(content, " | %q %d %d %d %d %t", s.Wood, s.Width.Nanometres(), s.Thickness.Nanometres(),
			s.Length.Nanometres(), s.Count, s.Owned)
	}
	for _, l := range lots {
		content = fmt.Appendf(content, " / %q %d", l.Wood, l.Size.Nanometres())
		for _, h := range l.Heights {
			content = fmt.Appendf(content, " %d×%d", h.Cut, h.Height.Nanometres())
		}
	}
	return design.CodeOf(content)
}

// Searchable reports whether a longer search may find better plans: some sticks are
// not proven to be the cheapest, or some visits the fewest, and it was not made yet.
func (b Bill) Searchable() bool {
	return !b.Longer && slices.ContainsFunc(b.Lots, func(l Lot) bool {
		return !l.Proven || l.Cuts.Visits > l.Curve[l.Chosen].Least
	})
}
