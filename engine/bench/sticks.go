package bench

import (
	"errors"
	"fmt"
	"slices"

	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/length"
)

// square is what one kind of stick is known by.
type square struct {
	wood   string
	sizeNM int64
}

// pooled puts the blocks of all groups together by wood and section.
func pooled(b design.Bench, jobs []job) []Lot {
	var out []Lot
	at := map[square]int{}
	for _, j := range jobs {
		for w, wood := range j.design.Woods() {
			key := square{wood, j.design.Block.Size.Nanometres()}
			i, ok := at[key]
			if !ok {
				i = len(out)
				at[key] = i
				out = append(out, Lot{Wood: wood, Size: j.design.Block.Size, StickLength: b.StickLength})
			}
			for k, n := range j.built.WoodCounts[w] {
				if n > 0 && !j.zero(k) {
					out[i].need(j.design.Heights[k], n)
				}
			}
		}
	}
	// A field that is all bare backer needs no sticks, nor does a wood that no block is of.
	out = slices.DeleteFunc(out, func(l Lot) bool { return len(l.Heights) == 0 })
	for i := range out {
		out[i].count(b)
	}
	return out
}

// need adds n blocks of a height, keeping heights rising.
func (l *Lot) need(h length.Length, n int) {
	i, found := slices.BinarySearchFunc(l.Heights, h, func(c HeightCount, h length.Length) int {
		return c.Height.Cmp(h)
	})
	if !found {
		l.Heights = slices.Insert(l.Heights, i, HeightCount{Height: h})
	}
	l.Heights[i].Need += n
}

// count sets spares and the blocks to cut.
func (l *Lot) count(b design.Bench) {
	for i := range l.Heights {
		h := &l.Heights[i]
		h.Spare = max(b.SparesLeast, shareUp(h.Need, b.Spares))
		h.Cut = h.Need + h.Spare
	}
}

// lots pools the blocks of all groups and plans the cheapest sticks of each lot.
// All lots share the steps of one plan, so that a job of many sections takes no
// longer than one of few.
func lots(b design.Bench, jobs []job, there *pile, prices Prices, by effort) ([]Lot, error) {
	out := pooled(b, jobs)
	for i := range out {
		if err := out[i].plan(b, there, prices, by.share(len(out))); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// plan finds the cheapest sticks. No two lots of sticks ask for the same wood of
// the pile.
func (l *Lot) plan(b design.Bench, there *pile, prices Prices, by effort) error {
	l.offers = there.offers(b.StickLength, l.Size, l.Size, func(s design.Stock) bool {
		return s.Wood == l.Wood && s.Width.Same(l.Size) && s.Thickness.Same(l.Size)
	})
	l.Priced = weighed(l.offers, prices.stick(l.Wood, l.Size))
	plan, err := l.cheapest(b, by)
	var tooLong *cut.PieceError
	if errors.As(err, &tooLong) || errors.Is(err, cut.ErrSupply) {
		tallest := l.Heights[len(l.Heights)-1].Height
		return fmt.Errorf("design.bench.stickLength: a stick of %v holds no %v block (allowed from %v)",
			b.StickLength, tallest, tallest.Add(b.EndTrim).Add(b.HoldTail))
	}
	if err != nil {
		return fmt.Errorf("design.bench: %w", err)
	}
	l.Proven = plan.Proven
	if plan.Cost > 0 {
		l.GapPercent = 100 * float64(plan.Cost-plan.Bound) / float64(plan.Cost)
	}
	l.buy(b, plan)
	l.FewestM3, l.FewestUsedPercent = l.BoughtM3, l.UsedPercent
	if l.Priced && len(l.offers) > 1 {
		return l.publicVolume(b, by.compared())
	}
	return nil
}

// publicVolume is what the sticks come to where their lengths alone are compared:
// what is quoted to a client must not follow from private prices.
func (l *Lot) publicVolume(b design.Bench, by effort) error {
	public := Lot{Heights: l.Heights, offers: slices.Clone(l.offers)}
	weighed(public.offers, func(offer) int64 { return 0 })
	plan, err := public.cheapest(b, by)
	if err != nil {
		return fmt.Errorf("design.bench: %w", err)
	}
	all, _ := counted(public.offers, plan, b.Defects)
	l.FewestM3 = 0
	for _, o := range all {
		l.FewestM3 += float64(o.Bought) * o.m3()
	}
	return nil
}

// cheapest is the cheapest plan of sound sticks. Sticks are bought whole to make
// up for defects, of each length for itself: where one length alone costs less by
// that, it is taken.
func (l *Lot) cheapest(b design.Bench, by effort) (cut.Plan, error) {
	p := l.problem(b, l.offers)
	best, err := by.plans.Solve(p, by.steps)
	if err != nil {
		return cut.Plan{}, err
	}
	_, cost := counted(l.offers, best, b.Defects)
	for i, o := range l.offers {
		if o.limited || len(l.offers) == 1 {
			continue
		}
		alone := slices.Clone(p.Bars)
		for k, other := range l.offers {
			if k != i && !other.Owned {
				alone[k].Limited, alone[k].Available = true, 0
			}
		}
		one := p
		one.Bars = alone
		plan, err := cut.Solve(one, by.usual)
		if err != nil {
			continue // the blocks do not all come out of this length
		}
		if _, c := counted(l.offers, plan, b.Defects); c < cost {
			plan.Bound, plan.Proven = best.Bound, plan.Cost == best.Bound
			best, cost = plan, c
		}
	}
	return best, nil
}

// problem is what the planner is given, in nanometres.
func (l *Lot) problem(b design.Bench, offers []offer) cut.Problem {
	p := cut.Problem{
		Bars:    bars(offers, b.Defects),
		Kerf:    b.Kerf.Nanometres(),
		EndTrim: b.EndTrim.Nanometres(),
		Tail:    b.HoldTail.Nanometres(),
		Goal:    cut.Cost,
	}
	for _, h := range l.Heights {
		p.Pieces = append(p.Pieces, cut.Piece{Length: h.Height.Nanometres(), Count: h.Cut})
	}
	return p
}

// buy sets what follows from a plan of the sound sticks.
func (l *Lot) buy(b design.Bench, plan cut.Plan) {
	l.Cuts = plan
	l.offers, _ = counted(l.offers, plan, b.Defects)
	l.Bars = nil
	l.Sticks, l.OwnSticks, l.SticksBeforeDefects = 0, 0, 0
	var neededM, boughtM, ownM float64
	for _, h := range l.Heights {
		neededM += float64(h.Need) * h.Height.Metres()
	}
	for _, o := range l.offers {
		l.Bars = append(l.Bars, o.Bar)
		l.SticksBeforeDefects += o.Used
		l.Sticks += o.Bought
		boughtM += float64(o.Bought) * o.Length.Metres()
		if o.Owned {
			l.OwnSticks += o.Used
			ownM += float64(o.Used) * o.Length.Metres()
		}
	}
	section := l.Size.Metres() * l.Size.Metres()
	l.BoughtM3 = boughtM * section
	l.BlocksM3 = neededM * section
	l.UsedPercent = 100 * neededM / (boughtM + ownM)
}

// HeightOf returns the height that a length of the cutting plan is, as it was
// written.
func (l Lot) HeightOf(nm int64) length.Length {
	for _, h := range l.Heights {
		if h.Height.Nanometres() == nm {
			return h.Height
		}
	}
	return length.Nanometres(nm, l.StickLength.Notation())
}

// GroupLetter names a group of sticks that are cut alike: A to Z, then AA.
func GroupLetter(i int) string {
	const letters = 26
	if i < letters {
		return string(rune('A' + i))
	}
	return GroupLetter(i/letters-1) + GroupLetter(i%letters)
}
