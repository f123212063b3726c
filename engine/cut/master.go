package cut

import (
	"fmt"
	"math"
	"slices"
)

// master is the linear program over ways to cut a bar: the least cost at which
// the columns, each a way to cut one bar, cover the demand. It is the revised
// simplex method (Dantzig and Orchard-Hays 1953) with an explicit inverse; the
// columns are made as they are needed (Gilmore and Gomory, Operations Research
// 9, 1961).
//
// It only ever suggests: what is proven is proven in whole numbers from its dual
// values, by model.lagrange. Every product is rounded before it is added, so
// that no processor may fuse the two: each step is an operation of IEEE 754 with
// one possible result, and a plan is the same everywhere.
//
// A variable of the basis that has no business there is foreign and costs so
// much that the method drives it out. There are two sorts. One has a negative
// value, which its column turned round makes positive: pieces that are missing,
// bars beyond the supply, a bar that was begun but not whole when it was fixed.
// The other is a bar that yields more pieces of a length than are still needed.
// With that, the basis stays usable whatever was fixed, and the primal method is
// all that it takes.
type master struct {
	m       *model
	columns *columns
	rows    int   // one for each length that is needed, then one for each scarce kind
	lengths int   // how many of the first sort
	row     []int // of each length, −1 for none
	scarce  []int // row of each kind, −1 for none
	usable  []int // columns that are no more than what is left
	known   int   // columns of the pool that were looked at for it
	right   []float64
	basis   []basic
	x       []float64 // of the basis
	y       []float64 // dual values, by row
	worth   []float64 // dual values by length, while columns are compared
	inv     []float64 // rows × rows
	alpha   []float64 // the column that enters, in terms of the basis
	pivots  int       // since the inverse was made
	work    int64
}

// basic is a variable of the basis: a column, or the slack of a row.
type basic struct {
	column  int  // index among the columns, or −1−row for a slack
	turned  bool // its column counts with the other sign
	foreign bool
}

// columns holds the columns made so far and is shared by all programs of a search.
type columns struct {
	all  []column
	seen map[string]bool
}

// column is one way to cut one bar.
type column struct {
	kind    int
	entries []entry
	cost    float64
}

// add adds a column unless it is known.
func (p *columns) add(m *model, kind int, entries []entry) bool {
	key := fmt.Sprint(kind, entries)
	if p.seen[key] {
		return false
	}
	p.seen[key] = true
	p.all = append(p.all, column{kind, entries, float64(m.costOf(kind, entries))})
	return true
}

// Tolerances of the linear program, in bars and in units of cost. They decide
// how long it works, not what is proven.
const (
	tiny       = 1e-9
	nearlyZero = 1e-7
	// shading is less than any share of a bar that matters, and more than
	// rounding errors; nearlyWhole is more than shading adds up to.
	shading     = 1e-6
	nearlyWhole = 1e-3
	// foreignCost is what a foreign variable costs, in highest dual values.
	foreignCost = 64
	// refresh is after how many pivots the inverse is made anew.
	refresh = 150
)

func newMaster(m *model, p *columns, demand, supply []int) *master {
	lp := &master{m: m, columns: p, row: make([]int, len(demand)), scarce: make([]int, len(m.kinds))}
	for i, n := range demand {
		lp.row[i] = lp.addRow(n > 0)
	}
	lp.lengths = lp.rows
	for s, k := range m.kinds {
		lp.scarce[s] = lp.addRow(k.scarce)
	}
	n := lp.rows
	lp.right, lp.x, lp.y, lp.alpha = make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	lp.inv, lp.basis, lp.worth = make([]float64, n*n), make([]basic, n), make([]float64, len(demand))
	for i := range n {
		lp.basis[i] = basic{column: -1 - i}
		lp.inv[i*n+i] = lp.slackSign(i)
	}
	lp.restart(demand, supply)
	return lp
}

func (lp *master) addRow(needed bool) int {
	if !needed {
		return -1
	}
	lp.rows++
	return lp.rows - 1
}

// copyFrom makes lp a copy of another program, in the memory that it has.
func (lp *master) copyFrom(from *master) {
	was := *lp
	*lp = *from
	lp.usable = append(was.usable[:0], from.usable...)
	lp.right, lp.x = append(was.right[:0], from.right...), append(was.x[:0], from.x...)
	lp.basis, lp.inv = append(was.basis[:0], from.basis...), append(was.inv[:0], from.inv...)
	lp.y, lp.alpha = append(was.y[:0], from.y...), append(was.alpha[:0], from.alpha...)
	lp.worth = append(was.worth[:0], from.worth...)
}

// slackSign is the entry of the slack of a row: pieces may be too many, bars
// too few.
func (lp *master) slackSign(row int) float64 {
	if row < lp.lengths {
		return -1
	}
	return 1
}

// continued is the program for what is left of the demand and the supply. The
// basis stays, unless so many lengths are done with that a smaller program from
// the start is less work.
func (lp *master) continued(demand, supply []int) *master {
	needed := 0
	for _, n := range demand {
		needed += min(n, 1)
	}
	if 2*needed < lp.rows {
		return newMaster(lp.m, lp.columns, demand, supply)
	}
	lp.restart(demand, supply)
	return lp
}

// restart takes a new demand and supply and keeps the basis.
func (lp *master) restart(demand, supply []int) {
	for i, row := range lp.row {
		if row >= 0 {
			lp.right[row] = float64(demand[i]) - shade(i)
		}
	}
	for s, row := range lp.scarce {
		if row >= 0 {
			lp.right[row] = float64(supply[s])
		}
	}
	lp.usable = slices.DeleteFunc(lp.usable, func(c int) bool {
		return !fits(lp.columns.all[c], demand, supply)
	})
	lp.values()
	for i := range lp.basis {
		b := &lp.basis[i]
		if lp.x[i] < -nearlyZero {
			lp.turn(i)
		}
		lp.x[i] = max(lp.x[i], 0)
		b.foreign = b.turned || b.column >= 0 && !fits(lp.columns.all[b.column], demand, supply)
	}
	lp.prices()
}

// shade is a little less of the demand, different for each length. Where all
// pieces are single ones, hundreds of variables would be zero at once, and the
// method could go round in circles among them.
func shade(row int) float64 {
	const golden = 0.6180339887498949
	turns := float64(golden * float64(row+1))
	return float64(shading * (1 + turns - math.Floor(turns)))
}

// turn makes a negative variable positive.
func (lp *master) turn(i int) {
	lp.x[i] = -lp.x[i]
	b := &lp.basis[i]
	b.turned = !b.turned
	b.foreign = b.turned
	for j := range lp.rows {
		lp.inv[i*lp.rows+j] = -lp.inv[i*lp.rows+j]
	}
}

// fits reports whether one such bar is no more than what is left.
func fits(c column, demand, supply []int) bool {
	for _, e := range c.entries {
		if e.count > demand[e.row] {
			return false
		}
	}
	return supply[c.kind] > 0
}

// values computes the basis' values from the right side.
func (lp *master) values() {
	n := lp.rows
	for i := range n {
		sum := 0.0
		for j, r := range lp.right {
			sum += float64(lp.inv[i*n+j] * r)
		}
		lp.x[i] = sum
	}
}

// prices computes the dual values from the costs of the basis.
func (lp *master) prices() {
	n := lp.rows
	clear(lp.y)
	for i, b := range lp.basis {
		c := lp.costOf(b)
		if c == 0 {
			continue
		}
		for j := range n {
			lp.y[j] += float64(c * lp.inv[i*n+j])
		}
	}
}

func (lp *master) costOf(b basic) float64 {
	switch {
	case b.foreign:
		return foreignCost * float64(lp.m.top())
	case b.column >= 0:
		return lp.columns.all[b.column].cost
	}
	return 0
}

// objective is the cost of the basis and how many bars or pieces in it are
// foreign.
func (lp *master) objective() (cost, foreign float64) {
	for i, b := range lp.basis {
		if b.foreign {
			foreign += lp.x[i]
		} else {
			cost += float64(lp.costOf(b) * lp.x[i])
		}
	}
	return cost, foreign
}

// reduced is what a column costs beyond the dual value of what it yields.
func (lp *master) reduced(c *column) float64 {
	r := c.cost
	for _, e := range c.entries {
		r -= float64(lp.worth[e.row] * float64(e.count))
	}
	if row := lp.scarce[c.kind]; row >= 0 {
		r -= lp.y[row]
	}
	return r
}

// improve lets the best column at hand enter the basis, and reports false when
// none promises to lower the cost by more than least for a bar.
func (lp *master) improve(demand, supply []int, least float64) bool {
	best, entering := -max(tiny*float64(lp.m.dearest()), least), basic{}
	found := false
	for ; lp.known < len(lp.columns.all); lp.known++ {
		if fits(lp.columns.all[lp.known], demand, supply) {
			lp.usable = append(lp.usable, lp.known)
		}
	}
	for i, row := range lp.row {
		if row >= 0 {
			lp.worth[i] = lp.y[row]
		}
	}
	for i, y := range lp.y {
		if r := -lp.slackSign(i) * y; r < best {
			best, entering, found = r, basic{column: -1 - i}, true
		}
	}
	for _, i := range lp.usable {
		if r := lp.reduced(&lp.columns.all[i]); r < best {
			best, entering, found = r, basic{column: i}, true
		}
	}
	return found && lp.enter(entering, best)
}

// enter exchanges one variable of the basis.
func (lp *master) enter(b basic, reduced float64) bool {
	lp.express(b)
	leaving := lp.leaving()
	if leaving < 0 {
		return false
	}
	lp.pivot(leaving, b, reduced)
	if lp.pivots++; lp.pivots >= refresh {
		lp.invert()
	}
	return true
}

// express writes a column in terms of the basis.
func (lp *master) express(b basic) {
	n := lp.rows
	sign := 1.0
	if b.turned {
		sign = -1
	}
	clear(lp.alpha)
	add := func(row int, count float64) {
		for i := range n {
			lp.alpha[i] += float64(lp.inv[i*n+row] * count)
		}
	}
	if b.column < 0 {
		row := -1 - b.column
		add(row, sign*lp.slackSign(row))
		return
	}
	c := &lp.columns.all[b.column]
	for _, e := range c.entries {
		add(lp.row[e.row], sign*float64(e.count))
	}
	if row := lp.scarce[c.kind]; row >= 0 {
		add(row, sign)
	}
}

// leaving is the variable that reaches zero first; among equals the one with
// the largest entry, which loses the fewest digits.
func (lp *master) leaving() int {
	leaving, least := -1, 0.0
	for i, a := range lp.alpha {
		if a <= nearlyZero {
			continue
		}
		switch ratio := lp.x[i] / a; {
		case leaving < 0 || ratio < least-tiny:
			leaving, least = i, ratio
		case ratio <= least+tiny && a > lp.alpha[leaving]:
			leaving, least = i, min(least, ratio)
		}
	}
	return leaving
}

// pivot puts b in the place of a variable that leaves.
func (lp *master) pivot(leaving int, b basic, reduced float64) {
	step := max(0, lp.x[leaving]/lp.alpha[leaving])
	for i, a := range lp.alpha {
		lp.x[i] = max(0, lp.x[i]-float64(a*step))
	}
	lp.x[leaving] = step
	lp.eliminate(leaving)
	for j := range lp.rows {
		lp.y[j] += float64(reduced * lp.inv[leaving*lp.rows+j])
	}
	lp.basis[leaving] = b
}

// eliminate turns alpha into the unit column of a row, in the inverse.
func (lp *master) eliminate(at int) {
	n := lp.rows
	row := lp.inv[at*n : at*n+n]
	for j := range row {
		row[j] /= lp.alpha[at]
	}
	for i, a := range lp.alpha {
		if i == at || a == 0 {
			continue
		}
		other := lp.inv[i*n : i*n+n]
		for j, r := range row {
			other[j] -= float64(a * r)
		}
		lp.work += int64(n)
	}
}

// invert makes the inverse anew from the unit matrix, variable by variable with
// the largest pivot that is left, so that rounding does not add up over many
// exchanges. Should that fail, the old inverse stays.
func (lp *master) invert() {
	lp.pivots = 0
	n := lp.rows
	old, oldBasis := slices.Clone(lp.inv), slices.Clone(lp.basis)
	clear(lp.inv)
	for i := range n {
		lp.inv[i*n+i] = 1
	}
	placed := make([]bool, n)
	for _, b := range oldBasis {
		lp.express(b)
		at := -1
		for i, a := range lp.alpha {
			if !placed[i] && (at < 0 || abs(a) > abs(lp.alpha[at])) {
				at = i
			}
		}
		if abs(lp.alpha[at]) < nearlyZero {
			lp.inv, lp.basis = old, oldBasis
			return
		}
		placed[at] = true
		lp.eliminate(at)
		lp.basis[at] = b
	}
	lp.values()
	for i := range lp.x {
		if lp.x[i] < -nearlyZero {
			lp.turn(i)
		}
		lp.x[i] = max(0, lp.x[i])
	}
	lp.prices()
}

func abs(a float64) float64 { return max(a, -a) }
