package engine

import (
	"blockfield/engine/bench"
	"blockfield/engine/chance"
)

// Origin is what a block is cut from: a sound stick of its lot, counted from 1 as
// the cutting plan has them, out of so many, and which piece of that stick. The
// zero Origin is that of a bare cell.
//
// Blocks of one height lie on one pile, and the plan leaves open which of them goes
// where. Here each pile is mixed once and always in the same way, as a hand does that
// takes them as they come.
type Origin struct{ Stick, Sticks, Piece int }

// Origins returns what each block is cut from, by group, panel and cell.
func (r Result) Origins() [][][]Origin {
	piles := make(map[pile]*[]Origin)
	for _, lot := range r.Bill.Lots {
		cutInto(piles, lot)
	}
	for b, blocks := range piles {
		chance.Shuffle(*blocks, uint64(b.heightNM))
	}
	all := make([][][]Origin, len(r.Groups))
	for i, g := range r.Groups {
		byWood := make([][]*[]Origin, len(g.Design.Woods()))
		for w, wood := range g.Design.Woods() {
			byWood[w] = make([]*[]Origin, len(g.Design.Heights))
			for level, h := range g.Design.Heights {
				left := piles[pile{wood, g.Design.Block.Size.Nanometres(), h.Nanometres()}]
				if left == nil {
					left = new([]Origin)
				}
				byWood[w][level] = left
			}
		}
		all[i] = make([][]Origin, len(g.Built.Panels))
		for j, p := range g.Built.Panels {
			cells := make([]Origin, len(p.Grid.Levels))
			for k, level := range p.Grid.Levels {
				if left := byWood[p.WoodOf(k)][level]; len(*left) > 0 {
					cells[k], *left = (*left)[0], (*left)[1:]
				}
			}
			all[i][j] = cells
		}
	}
	return all
}

// pile is the blocks of one height out of one kind of stick.
type pile struct {
	wood             string
	sizeNM, heightNM int64
}

// cutInto cuts the sticks of a lot.
func cutInto(piles map[pile]*[]Origin, lot bench.Lot) {
	stick := 0
	for _, board := range lot.Cuts.Boards {
		for range board.Count {
			stick++
			piece := 0
			for _, p := range board.Pieces {
				kind := pile{lot.Wood, lot.Size.Nanometres(), p.Length}
				if piles[kind] == nil {
					piles[kind] = new([]Origin)
				}
				to := piles[kind]
				for range p.Count {
					piece++
					*to = append(*to, Origin{stick, lot.Cuts.BoardCount, piece})
				}
			}
		}
	}
}
