package cut

import (
	"cmp"
	"math"
	"slices"
)

// search looks for a plan that costs less than the best one known, by diving: it
// solves the linear program for what is left, fixes all whole bars of the
// solution, rounds one more bar up, and solves again with new columns, until
// nothing is left. A dive turns back where the bound of what is left says that
// it cannot beat the best plan, and rounds up the next best bar instead; how
// often it may do so is limited (limited discrepancy search, Harvey and Ginsberg
// 1995; with columns: Sadykov and others, INFORMS Journal on Computing 31, 2019).
// One dive after another is made, each a little different, until the best plan
// is proven or the steps are spent.
type search struct {
	m       *model
	columns *columns
	bag     *knapsack
	items   []item
	value   []int64 // dual values of the lengths, in whole numbers
	worth   []int64 // of the best bar of each kind
	best    []bars  // the best plan so far, nil for none
	upper   int64   // what a plan must be cheaper than
	target  int64   // what no plan is cheaper than
	steps   int64   // what is left of the budget
	halt    int64   // steps at which this dive ends
	turn    int     // number of this dive, from 1
	idle    []*dive // whose memory the next clones take
}

// dive is how far a plan has been fixed, with the linear program for the rest.
type dive struct {
	lp             *master
	demand, supply []int
	spent          int64
	fixed          *fixed
}

// fixed are bars that a dive has fixed, the last first; dives that went the same
// way for a while share what they fixed there.
type fixed struct {
	bars
	before *fixed
}

const (
	// maxDives ends a search that has found nothing for long.
	maxDives = 60
	// diveSteps is what one dive may use: more means that it is stuck among
	// the last bars, where another start helps more.
	diveSteps = 200_000_000
	// everyDeep is how often a dive gets more freedom to turn off, each time
	// more than the last.
	everyDeep = 7
	// disfavour shifts the cost of a column, in bars, from dive to dive, so
	// that the linear program shows another of its many solutions.
	disfavour = 1e-3
	// sway shifts the order in which bars are rounded up, in bars.
	sway = 0.1
	// pricing is what one call costs besides the knapsack, in steps.
	pricing = 4000
)

func newSearch(m *model, upper, steps int64) *search {
	return &search{
		m: m, columns: &columns{seen: map[string]bool{}}, upper: upper, steps: steps, bag: bags.Get().(*knapsack),
		value: make([]int64, len(m.width)), worth: make([]int64, len(m.kinds)),
	}
}

// close gives back what serves the next search.
func (s *search) close() { bags.Put(s.bag) }

func (s *search) begin(demand, supply []int) *dive {
	return &dive{
		lp:     newMaster(s.m, s.columns, demand, supply),
		demand: slices.Clone(demand), supply: slices.Clone(supply),
	}
}

// clone copies a dive. What is given back with free serves the next clone.
func (s *search) clone(d *dive) *dive {
	c := &dive{lp: &master{}}
	if last := len(s.idle) - 1; last >= 0 {
		c, s.idle = s.idle[last], s.idle[:last]
	}
	c.lp.copyFrom(d.lp)
	c.demand, c.supply = append(c.demand[:0], d.demand...), append(c.supply[:0], d.supply...)
	c.spent, c.fixed = d.spent, d.fixed
	return c
}

func (s *search) free(d *dive) { s.idle = append(s.idle, d) }

// over reports whether a dive has nothing more to do.
func (s *search) over() bool { return s.upper <= s.target || s.steps <= s.halt }

// run makes dives until the best plan is proven or the steps are spent.
func (s *search) run(root *dive) {
	for s.turn = 1; s.turn <= maxDives && s.upper > s.target && s.steps > 0; s.turn++ {
		s.halt = max(0, s.steps-diveSteps)
		for i := range s.columns.all {
			c := &s.columns.all[i]
			c.cost = float64(s.m.costOf(c.kind, c.entries)) - float64(disfavour*float64(s.m.dearest())*s.noise(i))
		}
		d := s.clone(root)
		d.lp.restart(d.demand, d.supply)
		detours := 1
		if s.turn%everyDeep == 0 {
			detours = 3 * s.turn / everyDeep
		}
		s.down(d, detours)
		s.free(d)
	}
	s.halt = 0
}

// noise is a number from 0 to 1 that depends on the dive and a column; the first
// two dives, and the first deep one, follow the linear program as it is.
func (s *search) noise(column int) float64 {
	if s.turn <= 2 || s.turn == everyDeep {
		return 0
	}
	// The mixing steps of SplitMix64 (Steele, Lea and Flood 2014).
	h := uint64(column)*0x9E3779B97F4A7C15 ^ uint64(s.turn)*0xBF58476D1CE4E5B9
	h = (h ^ h>>31) * 0x94D049BB133111EB
	return float64((h^h>>29)>>40) / (1 << 24)
}

// down follows one dive to its end. It may leave the first choice so many times.
func (s *search) down(d *dive, detours int) {
	for {
		if s.relax(d, false) >= s.upper || s.over() {
			return
		}
		s.finish(d)
		if s.over() || !d.fixWhole(s.spare()) {
			break
		}
		if total(d.demand) == 0 {
			s.record(d.spent, d.fixed, nil)
			return
		}
		d.lp = d.lp.continued(d.demand, d.supply)
	}
	for i, c := range s.candidates(d) {
		if i > detours || s.over() {
			return
		}
		next := s.clone(d)
		next.fix(c, 1)
		if total(next.demand) == 0 {
			s.record(next.spent, next.fixed, nil)
		} else {
			next.lp = next.lp.continued(next.demand, next.supply)
			s.down(next, detours-i)
		}
		s.free(next)
	}
}

// finish cuts what is left bar by bar and keeps the plan if it is the best.
func (s *search) finish(d *dive) {
	if rest, cost, ok := s.m.fit(d.demand, d.supply, s.upper-d.spent); ok {
		s.record(d.spent+cost, d.fixed, rest)
	}
}

// record keeps a plan, what was fixed and the rest, if it costs less than the
// best.
func (s *search) record(cost int64, done *fixed, rest []bars) {
	if cost >= s.upper {
		return
	}
	s.upper, s.best = cost, slices.Clone(rest)
	for ; done != nil; done = done.before {
		s.best = append(s.best, done.bars)
	}
}

// relax solves the linear program for what is left of a dive and returns the
// best proven bound on the whole plan. Unless it is told to go all the way, it
// ends where more work cannot raise the bound to another possible cost.
func (s *search) relax(d *dive, allTheWay bool) int64 {
	bound := d.spent
	limit := 1000 + 200*d.lp.rows // should it ever turn in circles
	least := 0.0                  // gain that a known column must promise
	for range limit {
		if s.steps <= s.halt {
			return bound
		}
		before := d.lp.work
		moved := d.lp.improve(d.demand, d.supply, least)
		s.steps -= d.lp.work - before + int64(4*len(d.lp.usable)+8*d.lp.rows)
		if moved {
			continue
		}
		gain, fresh := s.price(d)
		bound = max(bound, d.spent+s.m.lagrange(s.value, s.worth, d.demand, d.supply))
		if bound >= s.upper || !fresh && least == 0 {
			return bound
		}
		if !allTheWay && bound >= d.spent+s.ceiling(d) {
			return bound
		}
		// A known column that promises less than half of the best new one is
		// left for later; when nothing is new, all count.
		if least = gain / 2; !fresh {
			least = 0
		}
	}
	return bound
}

// ceiling is the value of the linear program, rounded up: more than that the
// bound cannot become.
func (s *search) ceiling(d *dive) int64 {
	cost, foreign := d.lp.objective()
	if foreign > nearlyWhole {
		return math.MaxInt32
	}
	return int64(math.Ceil(cost - nearlyWhole))
}

// price makes the best new columns for the dual values of the linear program, in
// whole numbers. It returns the most that one gains, 0 for none, and whether any
// was not known before.
func (s *search) price(d *dive) (gain float64, fresh bool) {
	scale := s.roundDuals(d.lp)
	fee := int64(float64(s.m.fee) * scale)
	s.items = s.m.byWorth(s.items, s.value, d.demand, fee)
	for i, k := range s.m.kinds {
		cost := float64(k.cost)
		if row := d.lp.scarce[i]; row >= 0 {
			cost += max(0, -d.lp.y[row])
		}
		floor := int64(cost * scale)
		if s.worth[i] = floor; d.supply[i] == 0 {
			continue
		}
		s.worth[i] = s.bag.solve(s.items, k.room, fee, floor)
		s.steps -= 4*s.bag.work + pricing
		gain = max(gain, float64(s.worth[i]-floor)/scale)
		if s.bag.at > 0 {
			fresh = s.columns.add(s.m, i, s.bag.found()) || fresh
		}
	}
	return gain, fresh
}

// roundDuals rounds the dual values of the lengths down to whole numbers and
// returns how many of them are one unit of cost: fewer than usual while the
// values are large because something is missing.
func (s *search) roundDuals(lp *master) (scale float64) {
	top := float64(s.m.top())
	scale = float64(s.m.unit)
	if most := slices.Max(lp.y); most > top {
		scale = float64(scale*top) / most
	}
	for i, row := range lp.row {
		s.value[i] = 0
		if row >= 0 {
			s.value[i] = int64(max(lp.y[row], 0) * scale)
		}
	}
	return scale
}

// spare is how many whole bars of each column are not fixed outright: in every
// other deep dive one, so that even a whole bar can be turned down.
func (s *search) spare() int {
	if s.turn%(2*everyDeep) == 0 {
		return 1
	}
	return 0
}

// fixWhole fixes the whole bars of the linear program's solution, but for so many
// of each column.
func (d *dive) fixWhole(spare int) bool {
	fixed := false
	for i, b := range d.lp.basis {
		if n := int(d.lp.x[i]+nearlyWhole) - spare; n > 0 && b.column >= 0 && !b.foreign {
			fixed = d.fix(b.column, n) || fixed
		}
	}
	return fixed
}

// fix cuts up to so many bars like a column, as far as all of their pieces are
// needed.
func (d *dive) fix(column, count int) bool {
	c := d.lp.columns.all[column]
	b := bars{kind: c.kind, entries: c.entries}
	b.count = min(count, most(b, d.demand, d.supply))
	if b.count == 0 {
		return false
	}
	take(b, d.demand, d.supply)
	d.spent += int64(b.count) * d.lp.m.costOf(b.kind, b.entries)
	d.fixed = &fixed{b, d.fixed}
	return true
}

// candidates are the columns of the solution that could be rounded up: nearest
// to a whole bar first, in the second dive those with the longest pieces among
// about equals.
func (s *search) candidates(d *dive) []int {
	type share struct {
		column, longest int
		x               float64
	}
	var all []share
	for i, b := range d.lp.basis {
		if b.column < 0 || b.foreign || d.lp.x[i] <= nearlyWhole {
			continue
		}
		c := d.lp.columns.all[b.column]
		if !fits(c, d.demand, d.supply) {
			continue
		}
		n := share{b.column, c.entries[0].row, d.lp.x[i] + float64(sway*s.noise(b.column))}
		if s.turn == 2 {
			n.x = math.Floor(10 * n.x)
		}
		all = append(all, n)
	}
	slices.SortFunc(all, func(a, b share) int {
		return cmp.Or(cmp.Compare(b.x, a.x), a.longest-b.longest, a.column-b.column)
	})
	out := make([]int, len(all))
	for i, a := range all {
		out[i] = a.column
	}
	return out
}
