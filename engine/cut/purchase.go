package cut

import (
	"math/big"
	"math/bits"
	"slices"
)

// A choice of bars splits a problem in two: which bars to buy, and how to cut
// them. For any dual values of the lengths the bars bought must carry at least
// the value of all pieces,
//
//	Σ bought(s)·worth(s) ≥ Σ demand·value
//
// where worth(s) is the most that one bar of kind s carries. purchase finds the
// cheapest whole numbers of bars that meet all such covers known so far; no plan
// is cheaper. If those bars can be cut into all pieces, the plan is the best. If
// the linear program says that they cannot, its dual values are a cover that
// forbids them, and the next purchase is tried (Benders 1962, with the cut in
// whole numbers).

// cover is one such inequality.
type cover struct {
	worth []int64 // of a bar of each kind, rounded up
	need  int64   // rounded down
}

const (
	// maxPurchases is how many purchases are tried.
	maxPurchases = 60
	// purchaseSteps is what the choice of one purchase may use.
	purchaseSteps = 20_000_000
	// coverBits keeps sums over a purchase within an int64.
	coverBits = 40
)

// settle tries purchases in the order of their cost until one can be cut, or
// none is cheaper than the best plan.
func (t *task) settle(s *search, root *dive) {
	all := *t.m
	all.kinds = slices.Clone(t.m.kinds)
	for i := range all.kinds {
		all.kinds[i].scarce = true
	}
	buy := purchase{m: t.m, supply: t.supply, covers: []cover{s.cover(root)}}
	certain := true // no cheaper purchase was left undecided
	for range maxPurchases {
		if s.upper <= s.target || s.steps <= 0 {
			return
		}
		bought, cost, ok := buy.cheapest(s)
		if !ok {
			return
		}
		if bought == nil {
			if certain {
				s.target = s.upper
			}
			return
		}
		if certain {
			s.target = max(s.target, cost)
		}
		if s.upper <= s.target {
			return
		}
		if !t.try(s, &all, &buy, bought) && s.upper > cost {
			certain = false
			buy.tried = append(buy.tried, bought)
		}
	}
}

// try cuts from a given purchase. It reports true when the purchase was decided:
// a plan was found that is no dearer, or a cover forbids it.
func (t *task) try(s *search, all *model, buy *purchase, bought []int) bool {
	inner := newSearch(all, s.upper, s.steps)
	defer inner.close()
	inner.columns = s.columns
	inner.best = s.best
	d := inner.begin(t.demand, bought)
	inner.relax(d, true)
	c := inner.cover(d)
	if c.forbids(bought) {
		buy.covers = append(buy.covers, c)
		s.steps = inner.steps
		return true
	}
	inner.target = s.target
	spare := max(0, inner.steps-diveSteps)
	inner.steps -= spare
	inner.run(d)
	s.steps, s.upper, s.best = inner.steps+spare, inner.upper, inner.best
	return false
}

// cover is the inequality from the dual values of a linear program.
func (s *search) cover(d *dive) cover {
	s.roundDuals(d.lp)
	need := new(big.Int)
	for i, n := range d.demand {
		need.Add(need, product(s.value[i], int64(n)))
	}
	shift := uint(max(0, need.BitLen()-coverBits))
	out := cover{worth: make([]int64, len(s.m.kinds)), need: new(big.Int).Rsh(need, shift).Int64()}
	s.items = s.m.byWorth(s.items, s.value, d.demand, 0)
	for i, k := range s.m.kinds {
		worth := s.bag.solve(s.items, k.room, 0, 0)
		s.steps -= 4*s.bag.work + pricing
		out.worth[i] = worth >> shift
		if out.worth[i]<<shift < worth {
			out.worth[i]++
		}
	}
	return out
}

func (c cover) forbids(bought []int) bool {
	have := int64(0)
	for i, n := range bought {
		have = sum(have, times(c.worth[i], n))
	}
	return have < c.need
}

// purchase chooses bars by depth-first search over the kinds.
type purchase struct {
	m      *model
	supply []int
	covers []cover
	tried  [][]int // purchases that could not be decided

	upper  int64
	best   []int
	chosen []int
	nodes  int64
}

// cheapest returns the cheapest purchase that costs less than the best plan, or
// none. It reports false when it ran out of steps.
func (p *purchase) cheapest(s *search) (bought []int, cost int64, ok bool) {
	p.upper, p.best, p.nodes = s.upper, nil, purchaseSteps
	p.chosen = make([]int, len(p.supply))
	needs := make([]int64, len(p.covers))
	for i, c := range p.covers {
		needs[i] = c.need
	}
	p.visit(0, 0, needs, s.target)
	s.steps -= purchaseSteps - p.nodes
	return p.best, p.upper, p.nodes > 0
}

// visit decides how many bars of the kinds from one on are bought.
func (p *purchase) visit(at int, cost int64, needs []int64, target int64) {
	p.nodes -= int64(len(needs))
	if p.nodes <= 0 || p.upper <= target || sum(cost, p.atLeast(at, needs)) >= p.upper {
		return
	}
	if at == len(p.supply) {
		if !slices.ContainsFunc(p.tried, func(b []int) bool { return slices.Equal(b, p.chosen) }) {
			p.best, p.upper = slices.Clone(p.chosen), cost
		}
		return
	}
	most := 0
	for i, c := range p.covers {
		if c.worth[at] > 0 {
			most = max(most, int(min(int64(p.supply[at]), (needs[i]+c.worth[at]-1)/c.worth[at])))
		}
	}
	rest := make([]int64, len(needs))
	for n := most; n >= 0; n-- {
		for i, c := range p.covers {
			rest[i] = max(0, needs[i]-times(c.worth[at], n))
		}
		p.chosen[at] = n
		p.visit(at+1, cost+int64(n)*p.m.kinds[at].cost, rest, target)
	}
	p.chosen[at] = 0
}

// atLeast is what the kinds from one on cost at least for all needs: for the
// hardest need, at the best ratio of cost to worth, rounded up.
func (p *purchase) atLeast(at int, needs []int64) int64 {
	var most int64
	for i, need := range needs {
		if need == 0 {
			continue
		}
		least := int64(-1)
		for k := at; k < len(p.supply); k++ {
			worth, cost := p.covers[i].worth[k], p.m.kinds[k].cost
			if worth == 0 || p.supply[k] == 0 {
				continue
			}
			hi, lo := bits.Mul64(uint64(need), uint64(cost))
			if hi >= uint64(worth) {
				continue
			}
			c, r := bits.Div64(hi, lo, uint64(worth))
			if r > 0 {
				c++
			}
			if least < 0 || int64(c) < least {
				least = int64(c)
			}
		}
		if least < 0 {
			return never
		}
		most = max(most, least)
	}
	return most
}

// never is more than any plan costs.
const never = 1 << 62

// times and sum stay at never where they would go beyond it.
func times(a int64, n int) int64 {
	if hi, lo := bits.Mul64(uint64(a), uint64(n)); hi == 0 && lo < never {
		return int64(lo)
	}
	return never
}

func sum(a, b int64) int64 { return min(a, never-b) + b }
