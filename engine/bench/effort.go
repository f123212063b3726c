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
	plans *cut.Memory
}

// share is the part of it that each of n lots has.
func (e effort) share(n int) effort { return effort{e.steps / int64(n), e.plans} }

// effort is what is spent on the plans of a job: more where somebody asked for it and
// blocks and sticks are still those that it was asked for.
func (b *Bill) effort(in design.Bench, jobs []job, plans *cut.Memory) effort {
	b.CutsCode = cutsCode(in, pooled(in, jobs))
	b.Longer = in.LongerFor == b.CutsCode
	if b.Longer {
		return effort{cut.LongerSteps, plans}
	}
	return effort{cut.QuickSteps, plans}
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
