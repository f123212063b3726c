package layup

import "slices"

// spacers chooses for each field the bin that its loose blocks come out of.
func spacers(fields []Field, cards []Card, good func(Bin) int) []Spacers {
	all := make([]Spacers, len(fields))
	used := map[key]int{} // glued so far, by bin
	for f, work := range fields {
		bins := work.bins()
		spare := make([]int, len(bins)) // least number that a bin has left beyond the loose blocks
		for k, b := range bins {
			spare[k] = good(b)
		}
		held := 0 // loose blocks of the row before
		for _, c := range cards {
			if c.Field != f {
				continue
			}
			if c.Order == 1 {
				held = 0
			}
			for k, n := range c.Counts {
				used[work.bin(k).key()] += n
			}
			if loose := held + c.Set; loose > 0 {
				all[f].Most = max(all[f].Most, loose)
				for k, b := range bins {
					spare[k] = min(spare[k], good(b)-used[b.key()]-loose)
				}
			}
			held = c.Set
		}
		if all[f].Most > 0 && len(bins) > 0 {
			best := choose(spare)
			all[f].Bin, all[f].Short = bins[best], max(0, -spare[best])
		}
	}
	return all
}

func (f Field) bin(level int) Bin {
	return Bin{Wood: f.Group.Wood, Size: f.Group.Block.Size, Height: f.Group.Heights[level]}
}

// bins are those of the field's blocks, rising.
func (f Field) bins() []Bin {
	var all []Bin
	for k, h := range f.Group.Heights {
		if !h.IsZero() {
			all = append(all, f.bin(k))
		}
	}
	return all
}

// choose takes the tallest bin that never runs short, since a tall block can be
// pulled; if all do, the one that is least short.
func choose(spare []int) int {
	for k := len(spare) - 1; k >= 0; k-- {
		if spare[k] >= 0 {
			return k
		}
	}
	return slices.Index(spare, slices.Max(spare))
}
