package layup

// lend chooses for each row with bare cells the bin that its loose blocks come out
// of, and says what is lacking there.
//
// A loose block stands from its own row until the next one is pressed. So a bin lends
// what it has left after both rows, and after what it has lent to the row before.
func lend(fields []Field, cards []Card, good func(Bin) int) {
	glued := map[key]int{} // so far, by bin
	for i := range cards {
		c := &cards[i]
		work := fields[c.Field]
		for wood, counts := range c.WoodCounts {
			for level, n := range counts {
				glued[work.bin(wood, level).key()] += n
			}
		}
		if c.Set == 0 {
			continue
		}
		bins := work.bins()
		left := make([]int, len(bins))
		for k, b := range bins {
			left[k] = good(b) - glued[b.key()] - c.Set
			if c.Order > 1 && cards[i-1].Set > 0 && cards[i-1].Bin.key() == b.key() {
				left[k] -= cards[i-1].Set - cards[i-1].Lacking
			}
			if c.Order < c.Rows {
				left[k] -= cards[i+1].of(work, b)
			}
		}
		if len(bins) > 0 {
			best := choose(left)
			c.Bin, c.Lacking = bins[best], min(c.Set, max(0, -left[best]))
		}
	}
}

// of is how many blocks of a bin a row takes.
func (c Card) of(work Field, b Bin) int {
	n := 0
	for wood, counts := range c.WoodCounts {
		for level, count := range counts {
			if work.bin(wood, level).key() == b.key() {
				n += count
			}
		}
	}
	return n
}

func (f Field) bin(wood, level int) Bin {
	return Bin{Wood: f.Group.Woods()[wood], Size: f.Group.Block.Size, Height: f.Group.Heights[level]}
}

// bins are those of the field's blocks, rising, of each height the first wood last.
func (f Field) bins() []Bin {
	var all []Bin
	for k, h := range f.Group.Heights {
		for wood := len(f.Group.Woods()) - 1; wood >= 0 && !h.IsZero(); wood-- {
			all = append(all, f.bin(wood, k))
		}
	}
	return all
}

// choose takes the tallest bin that has enough, since a tall block can be pulled; if
// none has, the one that lacks least.
func choose(left []int) int {
	best := len(left) - 1
	for k := best; k >= 0; k-- {
		if left[k] >= 0 {
			return k
		}
		if left[k] > left[best] {
			best = k
		}
	}
	return best
}
