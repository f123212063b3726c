package cut

import "slices"

// Handling is a plan with few stop visits, and how few there can be.
//
// The stop is set once for each length, longest first. A board that carries
// several lengths is set aside and fetched again for each further one: a visit,
// the sum over boards of the lengths on it less one. Plans with the fewest
// boards have many; one board more often saves most of them.
type Handling struct {
	Plan  Plan
	Least int // no plan with these bars has fewer visits
}

// FewestVisits returns plans with as few visits as were found: the first cuts
// from the same bars as a plan of Solve, each further one has one bar more, up
// to so many, of the kind that costs least. It ends where a bar more saves no
// visit. Each may use so many steps.
func FewestVisits(p Problem, plan Plan, more int, steps int64) ([]Handling, error) {
	t, err := newTask(p)
	if err != nil || t == nil {
		return nil, err
	}
	all := t.supply
	t.supply = make([]int, len(all))
	for _, b := range plan.Boards {
		t.supply[slices.Index(t.bar, b.Bar)] += b.Count
	}
	best := t.model(plan)
	var out []Handling
	for range more + 1 {
		next, least := t.fewestVisits(best, steps)
		h := Handling{Plan: t.plan(next), Least: least}
		h.Plan.Bound, h.Plan.Proven = plan.Bound, h.Plan.of(p.Goal) == plan.Bound
		if n := len(out); n > 0 && h.Plan.Visits >= out[n-1].Plan.Visits {
			break
		}
		out, best = append(out, h), next
		if h.Plan.Visits == 0 || !t.oneMore(all) {
			break
		}
	}
	return out, nil
}

// oneMore adds the cheapest bar that there is still one of.
func (t *task) oneMore(all []int) bool {
	at := -1
	for s := range all {
		if t.supply[s] < all[s] && (at < 0 || t.price(s) < t.price(at)) {
			at = s
		}
	}
	if at >= 0 {
		t.supply[at]++
	}
	return at >= 0
}

func (t *task) price(kind int) int64 { return t.problem.Bars[t.bar[kind]].Price }

// model writes a plan in the terms of the model.
func (t *task) model(plan Plan) []bars {
	var out []bars
	for _, b := range plan.Boards {
		one := bars{kind: slices.Index(t.bar, b.Bar), count: b.Count}
		for _, piece := range b.Pieces {
			row := slices.IndexFunc(t.pieces, func(q Piece) bool { return q.Length == piece.Length })
			one.entries = append(one.entries, entry{row, piece.Count})
		}
		out = append(out, one)
	}
	return out
}

// fewestVisits runs the same search with other costs: nothing for a bar, of
// which there are as many as are bought, and one for each length on it.
func (t *task) fewestVisits(plan []bars, steps int64) (best []bars, least int) {
	kinds := slices.Clone(t.m.kinds)
	for s := range kinds {
		kinds[s].cost, kinds[s].scarce = 0, true
	}
	best = plan
	m := newModel(t.m.width, kinds, 1, total(t.demand))
	if m.unit > 0 && len(m.width) <= maxLengths {
		s := newSearch(m, never, steps)
		defer s.close()
		s.record(m.weigh(plan), nil, plan)
		s.target = m.fewestOnBars(t.demand)
		root := s.begin(t.demand, t.supply)
		for _, b := range plan {
			s.columns.add(m, b.kind, b.entries)
		}
		if !s.over() {
			s.target = max(s.target, s.relax(root, true))
		}
		s.run(root)
		best, least = s.best, int(s.target)
	}
	return t.spread(best), max(0, least-total(t.supply))
}

// fewestOnBars is how often a length is on a bar at the least: as often as it
// takes bars of its own, of the roomiest kind. So n bars fewer than all lengths
// take on bars of their own cost n visits.
func (m *model) fewestOnBars(demand []int) int64 {
	var sum int64
	for i, n := range demand {
		onOne := m.roomiest() / m.width[i]
		sum += (int64(n) + onOne - 1) / onOne
	}
	return sum
}

// spread puts bars that were left over to use: one length of a bar with several
// goes on a bar of its own, which saves a visit.
func (t *task) spread(plan []bars) []bars {
	left := slices.Clone(t.supply)
	for _, b := range plan {
		left[b.kind] -= b.count
	}
	for i := 0; i < len(plan); i++ {
		b := plan[i]
		n := min(b.count, left[b.kind])
		if len(b.entries) < 2 || n <= 0 {
			continue
		}
		left[b.kind] -= n
		plan = slices.Clone(plan)
		plan[i].count -= n
		plan = append(plan, bars{b.kind, n, b.entries[:1]}, bars{b.kind, n, b.entries[1:]})
	}
	return slices.DeleteFunc(plan, func(b bars) bool { return b.count == 0 })
}
