package cut

import (
	"math/big"
	"math/bits"
	"slices"
)

// model is a problem in the integers that the planner works with. The length of
// a piece with one kerf is its width; what the pieces of a bar may take up in
// all, each with its kerf, is the room of the bar. Both are divided by the
// common divisor of the widths, which changes no plan.
type model struct {
	width []int64 // of each length, falling
	kinds []kind
	fee   int64 // what each length on a bar costs beyond the bar
	price int64 // what a cost of 1 stands for: the common divisor of all costs
	unit  int64 // one unit of cost in the integers that stand for dual values

	numbers *numbers
}

// kind is one kind of bar.
type kind struct {
	room   int64
	cost   int64
	scarce bool // there may be fewer than a plan would use
}

// Dual values are told apart up to so many times the dearest bar. A piece is
// worth no more than a bar of its own, with leeway for a supply that runs out;
// but where lengths on a bar are counted and bars are hardly enough, one more
// piece can be worth hundreds of them.
const (
	highest        = 16
	highestWithFee = 1024
)

// maxUnit bounds the integers that stand for dual values; 2⁴⁰ to a unit of cost
// is finer than a float64 of that size needs.
const maxUnit = 1 << 40

// newModel divides by the common divisor and chooses the unit of dual values so
// that no product of a value and a room leaves 62 bits. A unit of 0 says that
// the numbers are too large for the planner.
func newModel(width []int64, kinds []kind, fee int64, pieces int) *model {
	m := &model{width: slices.Clone(width), kinds: slices.Clone(kinds), price: fee, numbers: new(numbers)}
	var divisor int64
	for _, w := range width {
		divisor = gcd(divisor, w)
	}
	for _, k := range kinds {
		m.price = gcd(m.price, k.cost)
	}
	m.price = max(m.price, 1)
	m.fee = fee / m.price
	for i := range m.width {
		m.width[i] /= divisor
	}
	for i := range m.kinds {
		m.kinds[i].room /= divisor
		m.kinds[i].cost /= m.price
	}
	m.unit = m.chooseUnit(int64(pieces))
	return m
}

func (m *model) chooseUnit(pieces int64) int64 {
	room := m.roomiest()
	onOne := min(pieces, room/m.width[len(m.width)-1]+1)
	size := bits.Len64(uint64(room)) + bits.Len64(uint64(onOne)) + bits.Len64(uint64(m.top()))
	if size > 62 {
		return 0
	}
	return min(int64(1)<<(62-size), maxUnit)
}

// top is the highest dual value that is told apart.
func (m *model) top() int64 {
	if m.fee > 0 {
		return highestWithFee * m.dearest()
	}
	return highest * m.dearest()
}

// roomiest is the largest room of a bar.
func (m *model) roomiest() int64 {
	var room int64
	for _, k := range m.kinds {
		room = max(room, k.room)
	}
	return room
}

// dearest is the most that a bar costs, with what two lengths on it cost.
func (m *model) dearest() int64 {
	most := int64(1)
	for _, k := range m.kinds {
		most = max(most, k.cost+2*m.fee)
	}
	return most
}

// lagrange returns a cost that no plan for the demand goes below. value holds
// any dual values ≥ 0, and worth for each kind a number not below the most that
// one bar of it carries in value, fees taken off. For a share t ≤ 1 of the
// values, each bar of kind s saves at most t·worth(s) − cost(s), so
//
//	cost ≥ Σ demand·t·value − Σ supply(s)·max(0, t·worth(s) − cost(s))
//
// which is concave in t, with corners where a kind breaks even; the best corner
// is taken. With one kind that never runs out it is the bound of Farley
// (Operations Research 38, 1990). All of it is in whole numbers: it holds
// whatever the linear program did.
func (m *model) lagrange(value, worth []int64, demand, supply []int) int64 {
	n := m.numbers
	n.total.SetInt64(0)
	for i, pieces := range demand {
		n.total.Add(&n.total, n.product(value[i], int64(pieces)))
	}
	best := m.lagrangeAt(1, 1, worth, supply)
	for s, k := range m.kinds {
		if at := k.cost * m.unit; worth[s] > at {
			best = max(best, m.lagrangeAt(at, worth[s], worth, supply))
		}
	}
	return best
}

// lagrangeAt is the bound at t = p/q, rounded up, for a total value that numbers
// hold.
func (m *model) lagrangeAt(p, q int64, worth []int64, supply []int) int64 {
	n := m.numbers
	n.sum.Mul(&n.total, n.of(p))
	for s, k := range m.kinds {
		n.gain.Set(n.product(worth[s], p))
		n.gain.Sub(&n.gain, n.product(k.cost*m.unit, q))
		if n.gain.Sign() > 0 {
			n.saved.Mul(&n.gain, n.of(int64(supply[s])))
			n.sum.Sub(&n.sum, &n.saved)
		}
	}
	below := n.product(q, m.unit)
	n.sum.Sub(n.sum.Add(&n.sum, below), one)
	n.saved.DivMod(&n.sum, below, &n.gain)
	return max(0, n.saved.Int64())
}

// numbers is the memory in which bounds are computed, kept from one to the next.
type numbers struct{ total, sum, gain, saved, a, b, ab big.Int }

var one = big.NewInt(1)

func (n *numbers) of(a int64) *big.Int { return n.a.SetInt64(a) }

// product is valid until the next one.
func (n *numbers) product(a, b int64) *big.Int {
	return n.ab.Mul(n.a.SetInt64(a), n.b.SetInt64(b))
}

func product(a, b int64) *big.Int { return new(big.Int).Mul(big.NewInt(a), big.NewInt(b)) }

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// entry is a number of pieces of one length, by its place in the model.
type entry struct{ row, count int }

// bars are bars of one kind that are all cut alike.
type bars struct {
	kind    int
	count   int
	entries []entry
}

// costOf is what one such bar costs.
func (m *model) costOf(kind int, entries []entry) int64 {
	return m.kinds[kind].cost + m.fee*int64(len(entries))
}

// weigh returns what a plan costs.
func (m *model) weigh(plan []bars) int64 {
	var sum int64
	for _, b := range plan {
		sum += int64(b.count) * m.costOf(b.kind, b.entries)
	}
	return sum
}

// fill returns what of the demand goes into a room, longest first, in the memory
// of out.
func (m *model) fill(out []entry, demand []int, room int64) (entries []entry, used int64) {
	out = out[:0]
	for i, n := range demand {
		if n = min(n, int((room-used)/m.width[i])); n > 0 {
			out = append(out, entry{i, n})
			used += int64(n) * m.width[i]
		}
	}
	return out, used
}

// fit cuts bar by bar, longest first; of the kinds at hand it takes the one
// that costs least for the width that it carries. With one kind it is first
// fit, longest first. It reports false when the supply runs out, or when the
// plan would not cost less than a limit.
func (m *model) fit(demand, supply []int, limit int64) (plan []bars, cost int64, ok bool) {
	demand, supply = slices.Clone(demand), slices.Clone(supply)
	var best, entries []entry
	for left := total(demand); left > 0; left = total(demand) {
		kind, bestUsed := -1, int64(0)
		for s, k := range m.kinds {
			if supply[s] == 0 {
				continue
			}
			var used int64
			if entries, used = m.fill(entries, demand, k.room); used == 0 {
				continue
			}
			if kind < 0 || dearer(m.costOf(kind, best), used, m.costOf(s, entries), bestUsed) {
				kind, bestUsed = s, used
				best, entries = entries, best
			}
		}
		if kind < 0 {
			return nil, 0, false
		}
		b := bars{kind: kind, entries: best}
		b.count = most(b, demand, supply)
		if cost += int64(b.count) * m.costOf(kind, best); cost >= limit {
			return nil, 0, false
		}
		take(b, demand, supply)
		b.entries = slices.Clone(best)
		plan = append(plan, b)
	}
	return plan, cost, true
}

// dearer reports whether a·b > c·d.
func dearer(a, b, c, d int64) bool {
	h1, l1 := bits.Mul64(uint64(a), uint64(b))
	h2, l2 := bits.Mul64(uint64(c), uint64(d))
	return h1 > h2 || h1 == h2 && l1 > l2
}

// most is how many such bars the demand and the supply allow.
func most(b bars, demand, supply []int) int {
	n := supply[b.kind]
	for _, e := range b.entries {
		n = min(n, demand[e.row]/e.count)
	}
	return n
}

// take takes bars off the demand and the supply.
func take(b bars, demand, supply []int) {
	supply[b.kind] -= b.count
	for _, e := range b.entries {
		demand[e.row] -= b.count * e.count
	}
}

func total(counts []int) int {
	sum := 0
	for _, n := range counts {
		sum += n
	}
	return sum
}
