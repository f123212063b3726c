package cut

import (
	"cmp"
	"slices"
)

// builds are the ways to fill one sheet, grown from single parts by putting two
// builds beside or behind each other (Wang, Operations Research 31, 1983):
// every layout of through-going cuts comes about so. Of builds with the same
// parts only those are kept that no other undercuts in both sides.
type builds struct {
	p             SheetProblem
	width, length int64      // of a sheet, with one kerf
	byParts       [][]*build // by number of parts
	known         map[string][]*build
	steps         int
}

// build is a rectangle with parts in it; each part takes one kerf both ways.
type build struct {
	width, length int64
	counts        []int
	part          int // for a single part
	turned        bool
	first, second *build
	behind        bool // second lies behind first, along the sheet
}

func newBuilds(p SheetProblem) *builds {
	b := &builds{
		p: p, width: p.Width - p.Trim + p.Kerf, length: p.Length - p.Trim + p.Kerf,
		known: map[string][]*build{}, byParts: make([][]*build, 2),
	}
	for i, q := range p.Parts {
		if q.Count == 0 {
			continue
		}
		counts := make([]int, len(p.Parts))
		counts[i] = 1
		b.keep(&build{width: q.Width + p.Kerf, length: q.Length + p.Kerf, counts: counts, part: i})
		if q.Turn && q.Width != q.Length {
			b.keep(&build{width: q.Length + p.Kerf, length: q.Width + p.Kerf, counts: counts, part: i, turned: true})
		}
	}
	b.collect(1)
	return b
}

// run grows builds until nothing more goes on a sheet, and reports whether it
// looked at all of them.
func (b *builds) run() bool {
	for n := 2; ; n++ {
		b.byParts = append(b.byParts, nil)
		for k := 1; 2*k <= n; k++ {
			for _, one := range b.byParts[k] {
				for _, two := range b.byParts[n-k] {
					if b.steps--; b.steps < 0 {
						return false
					}
					b.join(one, two)
				}
			}
		}
		if b.collect(n); len(b.byParts[n]) == 0 {
			return true
		}
	}
}

// join puts two builds together both ways.
func (b *builds) join(one, two *build) {
	for i, n := range one.counts {
		if n+two.counts[i] > b.p.Parts[i].Count {
			return
		}
	}
	b.keep(join(one, two, false))
	b.keep(join(one, two, true))
}

// keep keeps a build that fits the sheet and is not undercut.
func (b *builds) keep(n *build) {
	if n.width > b.width || n.length > b.length {
		return
	}
	k := key(n.counts)
	list := b.known[k]
	for _, o := range list {
		if o.width <= n.width && o.length <= n.length {
			return
		}
	}
	list = slices.DeleteFunc(list, func(o *build) bool { return n.width <= o.width && n.length <= o.length })
	b.known[k] = append(list, n)
}

func key(counts []int) string {
	out := make([]byte, 0, 2*len(counts))
	for _, n := range counts {
		out = append(out, byte(n), byte(n>>8))
	}
	return string(out)
}

// collect lists the builds with n parts in an order that is always the same.
func (b *builds) collect(n int) {
	for _, list := range b.known {
		if total(list[0].counts) == n {
			b.byParts[n] = append(b.byParts[n], list...)
		}
	}
	slices.SortFunc(b.byParts[n], func(x, y *build) int {
		return cmp.Or(slices.Compare(y.counts, x.counts), cmp.Compare(x.width, y.width))
	})
}

// patterns are the fullest builds: those to which no part can be added.
func (b *builds) patterns() []*build {
	var out []*build
	for n := len(b.byParts) - 1; n > 0; n-- {
		for i, p := range b.byParts[n] {
			if i > 0 && slices.Equal(p.counts, b.byParts[n][i-1].counts) {
				continue
			}
			if !slices.ContainsFunc(out, func(o *build) bool { return within(p.counts, o.counts) }) {
				out = append(out, p)
			}
		}
	}
	return out
}

func within(a, b []int) bool {
	for i := range a {
		if a[i] > b[i] {
			return false
		}
	}
	return true
}

// place lays out a build, without the parts that are no longer needed, and takes those
// that are off the demand.
func (b *builds) place(n *build, demand []int) SheetLayout {
	l := layer{kerf: b.p.Kerf, demand: demand}
	l.put(n, Rest{Width: b.width, Length: b.length})
	slices.SortStableFunc(l.out.Rests, func(x, y Rest) int { return product(y.Width, y.Length).Cmp(product(x.Width, x.Length)) })
	return l.out
}

// layer lays out one sheet.
type layer struct {
	kerf   int64
	demand []int
	out    SheetLayout
}

// put lays a build into the corner of a box that holds it. What is over of the box is
// cut off first, so that the larger rest stays whole. Boxes carry one kerf both ways.
func (l *layer) put(n *build, box Rest) {
	right, behind := box.Width-n.width, box.Length-n.length
	if product(right, box.Length).Cmp(product(box.Width, behind)) >= 0 {
		l.rest(Rest{box.X + n.width, box.Y, right, box.Length})
		l.rest(Rest{box.X, box.Y + n.length, n.width, behind})
	} else {
		l.rest(Rest{box.X, box.Y + n.length, box.Width, behind})
		l.rest(Rest{box.X + n.width, box.Y, right, n.length})
	}
	switch {
	case n.first == nil && l.demand[n.part] > 0:
		l.demand[n.part]--
		l.out.Parts = append(l.out.Parts, Placed{
			Part: n.part, X: box.X, Y: box.Y, Width: n.width - l.kerf, Length: n.length - l.kerf,
			Turned: n.turned, FactoryX: box.X == 0, FactoryY: box.Y == 0,
		})
	case n.first == nil:
		l.rest(Rest{box.X, box.Y, n.width, n.length})
	case n.behind:
		l.put(n.first, Rest{box.X, box.Y, n.width, n.first.length})
		l.put(n.second, Rest{box.X, box.Y + n.first.length, n.width, n.second.length})
	default:
		l.put(n.first, Rest{box.X, box.Y, n.first.width, n.length})
		l.put(n.second, Rest{box.X + n.first.width, box.Y, n.second.width, n.length})
	}
}

// rest keeps what is left over, without the cut that frees it.
func (l *layer) rest(r Rest) {
	if r.Width -= l.kerf; r.Width > 0 {
		if r.Length -= l.kerf; r.Length > 0 {
			l.out.Rests = append(l.out.Rests, r)
		}
	}
}
