package cut

import (
	"slices"
	"sync"
)

// knapsack finds the pieces of most value that fit one room. It is the dynamic
// program over (width, value) of Nemhauser and Ullmann (Management Science 15,
// 1969) with bounded counts: of all choices among the lengths seen so far only
// those are kept that no other choice beats in both width and value, and of
// those only the ones that could still beat the best with what is left, filled
// with the length that is worth most for its width. So its work follows the
// problem and not the room, and it stays exact in any unit of length.
type knapsack struct {
	items []item
	room  int64
	fee   int64
	best  int64
	at    int32 // node of the best choice, 0 for none that beats the floor
	nodes []node
	work  int64

	shortest            []int64 // of the lengths from each on
	states, used, spare []state
}

// bags keeps the memory of knapsacks from one search to the next.
var bags = sync.Pool{New: func() any { return new(knapsack) }}

// item is a length that is worth something.
type item struct {
	row          int
	width, value int64
	most         int
}

// state is a choice: the width that it takes up, its value, and how it came
// about.
type state struct {
	width, value int64
	node         int32
}

// node is one step of a choice; node 0 is the empty choice.
type node struct {
	parent int32
	row    int32
	count  int32
}

// maxNodes bounds the memory of one search; 2²⁰ nodes are 12 MiB.
const maxNodes = 1 << 20

// byWorth orders the lengths that can be worth their fee by value for width,
// highest first.
func (m *model) byWorth(out []item, value []int64, demand []int, fee int64) []item {
	out = out[:0]
	for i, v := range value {
		if n := min(int64(demand[i]), m.roomiest()/m.width[i]); v*n > fee {
			out = append(out, item{row: i, width: m.width[i], value: v, most: demand[i]})
		}
	}
	slices.SortFunc(out, func(a, b item) int {
		switch x, y := a.value*b.width, b.value*a.width; {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return a.row - b.row
	})
	return out
}

// solve returns the largest value that one bar with this room carries, or floor
// if none is larger. When it runs out of memory it returns a value that no bar
// exceeds.
func (k *knapsack) solve(items []item, room, fee, floor int64) int64 {
	k.work = 0
	k.items, k.room, k.fee, k.best, k.at = items, room, fee, floor, 0
	k.nodes = append(k.nodes[:0], node{})
	k.states = append(k.states[:0], state{})
	k.shortest = append(k.shortest[:0], make([]int64, len(items))...)
	least := room + 1
	for i := len(items) - 1; i >= 0; i-- {
		least = min(least, items[i].width)
		k.shortest[i] = least
	}
	for i := range items {
		if len(k.nodes) > maxNodes {
			return k.ceiling(i)
		}
		k.item(i)
	}
	return k.best
}

// item offers every choice so far up to all pieces of one length: the first
// pays the fee, the others come in lots of 1, 2, 4, …, so that each number of
// pieces is a sum of lots and each lot is a plain yes or no.
func (k *knapsack) item(i int) {
	it := k.items[i]
	most := min(int64(it.most), k.room/it.width)
	if most == 0 {
		return
	}
	after := rest{worth: item{width: 1}, shortest: k.room + 1}
	if i+1 < len(k.items) {
		after = rest{k.items[i+1], k.shortest[i+1]}
	}
	if most == 1 {
		k.spare = k.merge(k.spare[:0], k.states, k.states, lot{it, 1, it.value - k.fee, after})
		k.states, k.spare = k.spare, k.states
		return
	}
	here := rest{it, k.shortest[i]}
	k.used = k.merge(k.used[:0], nil, k.states, lot{it, 1, it.value - k.fee, here})
	for left, n := most-1, int64(1); left > 0; left, n = left-n, 2*n {
		n = min(n, left)
		k.spare = k.merge(k.spare[:0], k.used, k.used, lot{it, n, n * it.value, here})
		k.used, k.spare = k.spare, k.used
	}
	k.spare = k.merge(k.spare[:0], k.states, k.used, lot{rest: after})
	k.states, k.spare = k.spare, k.states
}

// lot is a number of pieces of one length, none for a plain merge.
type lot struct {
	item  item
	count int64
	value int64 // of all of them
	rest
}

// rest is what is known of the lengths that may still follow.
type rest struct {
	worth    item  // the one worth most for its width
	shortest int64 // width
}

// merge appends to out the choices of a and those of b with the lot added, by
// rising width, without those that are beaten or cannot lead to the best.
func (k *knapsack) merge(out, a, b []state, l lot) []state {
	dw := l.count * l.item.width
	highest := int64(-1) << 62
	k.work += int64(len(a) + len(b))
	for i, j := 0, 0; i < len(a) || j < len(b); {
		var s state
		added := i == len(a) || j < len(b) && (b[j].width+dw < a[i].width ||
			b[j].width+dw == a[i].width && b[j].value+l.value > a[i].value)
		if added {
			s = state{b[j].width + dw, b[j].value + l.value, b[j].node}
			j++
		} else {
			s = a[i]
			i++
		}
		if s.width > k.room {
			break
		}
		if s.value <= highest {
			continue
		}
		left := k.room - s.width
		if s.value <= k.best && (left < l.shortest || (k.best-s.value)*l.worth.width >= left*l.worth.value) {
			continue
		}
		highest = s.value
		if added && l.count > 0 {
			k.nodes = append(k.nodes, node{s.node, int32(l.item.row), int32(l.count)})
			s.node = int32(len(k.nodes) - 1)
		}
		if s.value > k.best {
			k.best, k.at = s.value, s.node
		}
		out = append(out, s)
	}
	return out
}

// ceiling is what no choice can exceed once the first i lengths are decided.
func (k *knapsack) ceiling(i int) int64 {
	most := k.best
	for _, s := range k.states {
		most = max(most, s.value+(k.room-s.width)*k.items[i].value/k.items[i].width+1)
	}
	return most
}

// found appends the pieces of the best choice in the order of the model.
func (k *knapsack) found() []entry {
	var out []entry
	for at := k.at; at > 0; at = k.nodes[at].parent {
		n := k.nodes[at]
		if last := len(out) - 1; last >= 0 && out[last].row == int(n.row) {
			out[last].count += int(n.count)
			continue
		}
		out = append(out, entry{int(n.row), int(n.count)})
	}
	slices.SortFunc(out, func(a, b entry) int { return a.row - b.row })
	return out
}
