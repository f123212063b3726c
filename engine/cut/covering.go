package cut

import (
	"math/big"
	"slices"
)

// covering looks for the fewest sheets, each cut to one of the patterns, that
// yield all parts.
type covering struct {
	p        SheetProblem
	builds   *builds
	patterns []*build
	complete bool // these are all patterns; otherwise they are made as needed
	steps    int
	bound    int
	best     []choice
	failed   map[string]int // demand → sheets that were not enough for it
}

type choice struct{ pattern int }

// newCovering grows the ways to fill a sheet of a problem, in so many steps.
func newCovering(p SheetProblem, steps int) *covering {
	b := newBuilds(p)
	b.steps = steps
	c := &covering{p: p, builds: b, steps: coverSteps, complete: b.run()}
	if c.complete {
		c.patterns = b.patterns()
	}
	return c
}

// solve starts from the fullest patterns and tries one sheet less until that
// cannot be, or the steps are spent.
func (c *covering) solve(demand []int) []choice {
	c.failed = map[string]int{}
	c.best = c.greedy(demand)
	if c.bound = c.least(demand); !c.complete {
		return c.best
	}
	for n := c.bound; n < len(c.best); n++ {
		found, ok := c.try(demand, n)
		if ok {
			c.best = found
			break
		}
		if c.steps < 0 {
			break
		}
		c.bound = n + 1
	}
	return c.best
}

// greedy takes, sheet by sheet, the pattern with most area of what is left.
func (c *covering) greedy(demand []int) []choice {
	demand = slices.Clone(demand)
	var out []choice
	for total(demand) > 0 {
		if !c.complete {
			c.patterns = append(c.patterns, c.builds.shelves(demand)...)
		}
		best, most := -1, 0.0
		for i, p := range c.patterns {
			area := 0.0
			for j, n := range p.counts {
				area += float64(min(n, demand[j])) * c.area(j)
			}
			if area > most {
				best, most = i, area
			}
		}
		out = append(out, choice{best})
		c.take(demand, best)
	}
	return out
}

func (c *covering) area(part int) float64 {
	q := c.p.Parts[part]
	return float64(q.Width+c.p.Kerf) * float64(q.Length+c.p.Kerf)
}

func (c *covering) take(demand []int, pattern int) {
	for j, n := range c.patterns[pattern].counts {
		demand[j] = max(0, demand[j]-n)
	}
}

// try looks for a plan with n sheets: some sheet must yield the first size that
// is still needed.
func (c *covering) try(demand []int, n int) ([]choice, bool) {
	at := slices.IndexFunc(demand, func(d int) bool { return d > 0 })
	if at < 0 {
		return nil, true
	}
	k := key(demand)
	if c.failed[k] >= n || c.least(demand) > n {
		return nil, false
	}
	for i, p := range c.patterns {
		if p.counts[at] == 0 {
			continue
		}
		if c.steps -= len(c.patterns); c.steps < 0 {
			return nil, false
		}
		rest := slices.Clone(demand)
		c.take(rest, i)
		if found, ok := c.try(rest, n-1); ok {
			return append([]choice{{i}}, found...), true
		}
	}
	c.failed[k] = n
	return nil, false
}

// least is a number of sheets that no plan goes below: all parts with their
// kerfs over the area of a sheet with one; and, where all patterns are known,
// the number of each size over the most that a pattern yields.
func (c *covering) least(demand []int) int {
	sum := new(big.Int)
	for j, n := range demand {
		q := c.p.Parts[j]
		sum.Add(sum, new(big.Int).Mul(product(q.Width+c.p.Kerf, q.Length+c.p.Kerf), big.NewInt(int64(n))))
	}
	sheet := product(c.p.Width-c.p.Trim+c.p.Kerf, c.p.Length-c.p.Trim+c.p.Kerf)
	sum.Add(sum, sheet).Sub(sum, big.NewInt(1))
	least := int(sum.Div(sum, sheet).Int64())
	if !c.complete {
		return least
	}
	for j, n := range demand {
		most := 0
		for _, p := range c.patterns {
			most = max(most, p.counts[j])
		}
		if most > 0 {
			least = max(least, (n+most-1)/most)
		}
	}
	return least
}
