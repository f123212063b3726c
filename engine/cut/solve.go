package cut

import (
	"cmp"
	"slices"
)

// Budgets in steps. A step is roughly one operation of an inner loop, about a
// nanosecond natively and a few in a browser; a plan depends on the steps and
// never on the time.
const (
	// QuickSteps is for a plan that is made with every edit.
	QuickSteps = 800_000
	// LongerSteps is for a plan that somebody asked to look longer for while the page
	// waits: of a whole job it takes a few seconds in a browser at the most.
	LongerSteps = 50 * QuickSteps
	// ThoroughSteps is for a plan that somebody asked for.
	ThoroughSteps = 1_900_000_000
)

// maxLengths is up to how many lengths the linear program is tried; its work
// grows with the third power.
const maxLengths = 400

// Board is a number of bars of one kind that are all cut alike.
type Board struct {
	Bar    int     // index into Problem.Bars
	Count  int     // bars
	Pieces []Piece // what one bar yields, longest first
	Offcut int64   // what is left of one bar, the holding tail included
}

// Plan says how to cut all pieces.
type Plan struct {
	Boards     []Board // like ones together, by kind, the longest pieces first
	BoardCount int
	Cost       int64 // prices of all bars
	Bound      int64 // no plan has less of what was to be kept low
	Proven     bool  // this plan has no more than the bound
	Visits     int   // boards that are set aside and brought back, as often as they are
	Used       int64 // length of all pieces
	Bought     int64 // length of all bars
	Steps      int64 // that were used
}

// UsedShare returns the share of the bought length that ends up in pieces, 0
// for an empty plan.
func (p Plan) UsedShare() float64 {
	if p.Bought == 0 {
		return 0
	}
	return float64(p.Used) / float64(p.Bought)
}

// task is a problem on the bench: what is to be cut, with its model.
type task struct {
	problem Problem
	pieces  []Piece // by falling length
	bar     []int   // of each kind of the model
	m       *model
	demand  []int
	supply  []int
}

// Solve plans how to cut all pieces with as little as possible of the goal. The
// plan is never worse than first fit, longest first, from bars of any one kind,
// and it comes with a bound that holds in any case. The same problem with the
// same steps gives the same plan everywhere, in whatever order its pieces come.
func Solve(p Problem, steps int64) (Plan, error) {
	t, err := newTask(p)
	if err != nil || t == nil {
		return Plan{Proven: err == nil}, err
	}
	best, bound, left := t.solve(steps)
	if best == nil {
		return Plan{Bound: bound}, ErrSupply
	}
	plan := t.plan(best)
	plan.Bound, plan.Steps = bound, steps-left
	plan.Proven = bound == plan.of(p.Goal)
	return plan, nil
}

// of is how much of a goal a plan has.
func (p Plan) of(g Goal) int64 {
	if g == Boards {
		return int64(p.BoardCount)
	}
	return p.Cost
}

// newTask checks a problem and makes its model; no pieces are no task.
func newTask(p Problem) (*task, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	t := &task{problem: p, pieces: pool(p.Pieces)}
	if len(t.pieces) == 0 {
		return nil, nil
	}
	var widths []int64
	for _, piece := range t.pieces {
		widths = append(widths, piece.Length+p.Kerf)
		t.demand = append(t.demand, piece.Count)
	}
	pieces := total(t.demand)
	var kinds []kind
	for _, i := range p.order() {
		b := p.Bars[i]
		n := pieces // more bars than pieces are of no use
		if b.Limited {
			n = min(n, b.Available)
		}
		if n == 0 || p.stock(i).Longest() < t.pieces[len(t.pieces)-1].Length {
			continue
		}
		k := kind{room: p.stock(i).room(), cost: b.Price, scarce: n < pieces}
		if p.Goal == Boards {
			k.cost = 1
		}
		kinds, t.bar, t.supply = append(kinds, k), append(t.bar, i), append(t.supply, n)
	}
	t.m = newModel(widths, kinds, 0, pieces)
	return t, nil
}

// order lists the bars longest first, the cheaper of like ones first, so that a
// plan does not depend on their order.
func (p Problem) order() []int {
	out := make([]int, len(p.Bars))
	for i := range out {
		out[i] = i
	}
	slices.SortStableFunc(out, func(i, j int) int {
		a, b := p.Bars[i], p.Bars[j]
		return cmp.Or(cmp.Compare(b.Length, a.Length), cmp.Compare(a.Price, b.Price), cmp.Compare(a.Name, b.Name))
	})
	return out
}

// solve returns the best plan, what no plan is below, and the steps left.
func (t *task) solve(steps int64) (best []bars, bound, left int64) {
	s := newSearch(t.m, never, steps)
	defer s.close()
	t.firstFit(s)
	s.target = t.material()
	if t.m.unit > 0 && len(t.m.width) <= maxLengths && s.upper > s.target {
		t.searchAll(s)
	}
	return s.best, min(s.target, s.upper) * t.m.price, s.steps
}

// firstFit tries first fit with bars of each kind alone, and of all together.
func (t *task) firstFit(s *search) {
	d := dive{demand: t.demand, supply: t.supply}
	s.finish(&d)
	for i := range t.m.kinds {
		d.supply = make([]int, len(t.supply))
		d.supply[i] = t.supply[i]
		s.finish(&d)
	}
}

// material is a bound from widths alone: each length is worth its width, and a
// bar carries no more than its room.
func (t *task) material() int64 {
	m := *t.m
	m.unit = max(m.unit, 1)
	share := int64(1) // of a unit of cost, for a unit of width
	for _, k := range m.kinds {
		share = max(share, k.cost*m.unit/k.room+1)
	}
	share = min(share, (1<<62)/m.roomiest())
	value, worth := make([]int64, len(m.width)), make([]int64, len(m.kinds))
	for i, w := range m.width {
		value[i] = w * share
	}
	for i, k := range m.kinds {
		worth[i] = k.room * share
	}
	return m.lagrange(value, worth, t.demand, t.supply)
}

// searchAll bounds, dives and, where there is a choice of bars, settles which.
func (t *task) searchAll(s *search) {
	root := s.begin(t.demand, t.supply)
	choice := len(t.m.kinds) > 1
	s.target = max(s.target, s.relax(root, choice))
	if s.target >= s.upper || s.steps <= 0 {
		return
	}
	if !choice {
		s.run(root)
		return
	}
	s.halt = 0
	s.turn = 1
	s.down(s.clone(root), 1)
	t.settle(s, root)
	s.run(root)
}

// plan writes a plan in the terms of the problem.
func (t *task) plan(best []bars) Plan {
	var out Plan
	for _, b := range t.merged(best) {
		bar := t.bar[b.kind]
		board := Board{Bar: bar, Count: b.count}
		room := t.problem.stock(bar).room()
		for _, e := range b.entries {
			piece := Piece{Length: t.pieces[e.row].Length, Count: e.count}
			board.Pieces = append(board.Pieces, piece)
			room -= int64(e.count) * (piece.Length + t.problem.Kerf)
			out.Used += int64(b.count) * int64(e.count) * piece.Length
		}
		board.Offcut = offcut(t.problem.stock(bar), room)
		out.Boards = append(out.Boards, board)
		out.BoardCount += b.count
		out.Cost += int64(b.count) * t.problem.Bars[bar].Price
		out.Bought += int64(b.count) * t.problem.Bars[bar].Length
		out.Visits += b.count * (len(b.entries) - 1)
	}
	return out
}

// merged puts bars that are cut alike together and sorts them: by kind, then
// those with more of the longest pieces first.
func (t *task) merged(plan []bars) []bars {
	sorted := slices.Clone(plan)
	slices.SortFunc(sorted, func(a, b bars) int {
		return cmp.Or(a.kind-b.kind, slices.CompareFunc(a.entries, b.entries, func(x, y entry) int {
			return cmp.Or(x.row-y.row, y.count-x.count)
		}))
	})
	var out []bars
	for _, b := range sorted {
		if last := len(out) - 1; last >= 0 && out[last].kind == b.kind && slices.Equal(out[last].entries, b.entries) {
			out[last].count += b.count
			continue
		}
		out = append(out, b)
	}
	return out
}
