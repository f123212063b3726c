package cut

import (
	"math/big"
	"slices"
)

// taken is one sheet that is there, cut to a pattern.
type taken struct {
	there  int // from 1
	builds *builds
	build  *build
}

// mostTaken is how many sheets that are there are tried at most, and tryings how many
// ways to use them: a shop has a few rests that are good for a backer.
const (
	mostTaken  = 24
	tryings    = 300
	fewTryings = 40 // where parts are so many that whole sheets are filled strip by strip, which takes longer
)

// thereSearch tries the patterns of the sheets that are there, one sheet after the
// other, and covers the rest with whole ones.
type thereSearch struct {
	whole   *covering
	fills   []*covering // of each kind that is there
	kinds   []int       // of the sheets, one entry each, from 0
	tries   int
	cutOff  bool
	best    []choice // of whole sheets
	taken   []taken
	least   int // whole sheets that any of the ways tried takes at the least
	current []taken
}

// withThere looks for a plan with fewer whole sheets than the chosen ones, by using those
// that are there. It returns what is taken of them, the whole sheets, and how many
// whole ones no plan goes below.
func (c *covering) withThere(demand []int, chosen []choice) ([]taken, []choice, int) {
	s := thereSearch{whole: c, best: chosen, least: c.bound}
	for i, t := range c.p.There {
		p := c.p
		p.Width, p.Length = t.Width, t.Length
		s.fills = append(s.fills, newCovering(p, buildSteps/len(c.p.There)))
		for range min(t.Count, mostTaken-len(s.kinds)) {
			s.kinds = append(s.kinds, i)
		}
		s.cutOff = s.cutOff || !s.fills[i].complete || t.Count > mostTaken
	}
	floor := c.floor(demand)
	s.try(0, 0, demand, floor)
	if s.cutOff {
		s.least = floor
	}
	return s.taken, s.best, min(s.least, len(s.best))
}

// floor is how many whole sheets no plan goes below, by area alone.
func (c *covering) floor(demand []int) int {
	sum := new(big.Int)
	for j, n := range demand {
		q := c.p.Parts[j]
		sum.Add(sum, new(big.Int).Mul(product(q.Width+c.p.Kerf, q.Length+c.p.Kerf), big.NewInt(int64(n))))
	}
	for _, t := range c.p.There {
		room := product(max(0, t.Width-c.p.Trim+c.p.Kerf), max(0, t.Length-c.p.Trim+c.p.Kerf))
		sum.Sub(sum, room.Mul(room, big.NewInt(int64(t.Count))))
	}
	if sum.Sign() <= 0 {
		return 0
	}
	sheet := product(c.p.Width-c.p.Trim+c.p.Kerf, c.p.Length-c.p.Trim+c.p.Kerf)
	sum.Add(sum, sheet).Sub(sum, big.NewInt(1))
	return int(sum.Div(sum, sheet).Int64())
}

// try goes on with the sheet at a place among those that are there. Sheets of a kind
// take their patterns in order, since it is all one which of them has which; to leave
// one unused comes last, and is for all of the kind that follow.
func (s *thereSearch) try(at, from int, demand []int, floor int) {
	if len(s.best) <= floor || s.cutOff && s.tries >= tryings {
		return
	}
	if at == len(s.kinds) || total(demand) == 0 {
		s.leaf(demand)
		return
	}
	kind := s.kinds[at]
	next := at + 1
	for next < len(s.kinds) && s.kinds[next] == kind {
		next++
	}
	s.try(next, 0, demand, floor) // none more of this kind
	fill := s.fills[kind]
	patterns := fill.patterns
	if !fill.complete {
		patterns = fill.builds.shelves(demand)
		from = 0
	}
	for i := from; i < len(patterns); i++ {
		rest := slices.Clone(demand)
		got := false
		for j, n := range patterns[i].counts {
			got = got || min(n, rest[j]) > 0
			rest[j] = max(0, rest[j]-n)
		}
		if !got {
			continue
		}
		s.current = append(s.current, taken{kind + 1, fill.builds, patterns[i]})
		following := 0
		if next > at+1 {
			following = i
		}
		s.try(at+1, following, rest, floor)
		s.current = s.current[:len(s.current)-1]
	}
}

// leaf covers what is left with whole sheets.
func (s *thereSearch) leaf(demand []int) {
	s.tries++
	if !s.whole.complete {
		s.tries += tryings / fewTryings
	}
	s.cutOff = s.cutOff || s.tries >= tryings
	c := *s.whole
	c.patterns = slices.Clone(c.patterns)
	chosen := c.solve(demand)
	s.whole.steps = c.steps // all leaves share them
	s.least = min(s.least, c.bound)
	fewer := len(chosen) < len(s.best)
	same := len(chosen) == len(s.best) && len(s.taken) > len(s.current)
	if fewer || same {
		s.best, s.taken = chosen, slices.Clone(s.current)
		if !c.complete {
			s.whole.patterns = c.patterns
		}
	}
}
