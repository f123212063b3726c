package cut

import "slices"

// shelves fills a sheet strip by strip, for parts so small that not every way to
// fill a sheet can be looked at: each strip is as deep as its first part, the
// longest that is left, and takes what else fits, longest first. It does so with
// all parts as they are and, where they may be, turned.
func (b *builds) shelves(demand []int) []*build {
	var out []*build
	for _, turned := range []bool{false, true} {
		left := slices.Clone(demand)
		var all *build
		depth := int64(0)
		for {
			strip := b.strip(left, b.length-depth, turned)
			if strip == nil {
				break
			}
			depth += strip.length
			all = join(all, strip, true)
		}
		if all != nil {
			out = append(out, all)
		}
	}
	return out
}

// strip takes parts off what is left.
func (b *builds) strip(left []int, depth int64, turned bool) *build {
	var single []*build
	for i, q := range b.p.Parts {
		s := &build{width: q.Width + b.p.Kerf, length: q.Length + b.p.Kerf, part: i}
		if turned && q.Turn {
			s.width, s.length, s.turned = s.length, s.width, true
		}
		s.counts = make([]int, len(left))
		s.counts[i] = 1
		single = append(single, s)
	}
	slices.SortStableFunc(single, func(x, y *build) int { return int(min(1, max(-1, y.length-x.length))) })
	var strip *build
	width := b.width
	for _, s := range single {
		for left[s.part] > 0 && s.width <= width && s.length <= depth {
			left[s.part]--
			width -= s.width
			strip = join(strip, s, false)
		}
		if strip != nil {
			depth = strip.length
		}
	}
	return strip
}

// join puts two beside or behind each other; the first may be missing.
func join(first, second *build, behind bool) *build {
	if first == nil {
		return second
	}
	n := &build{first: first, second: second, behind: behind, counts: slices.Clone(first.counts)}
	for i, c := range second.counts {
		n.counts[i] += c
	}
	if behind {
		n.width, n.length = max(first.width, second.width), first.length+second.length
	} else {
		n.width, n.length = first.width+second.width, max(first.length, second.length)
	}
	return n
}
