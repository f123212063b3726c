package engine

import (
	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/layup"
)

// Layup returns the row cards of a planned design, laid from a start edge. In the
// bins lies what was planned to be cut.
func (r Result) Layup(d design.Design, start string) []layup.Card {
	return r.layup(d, start, r.planned)
}

// layup is Layup with what lies in the bins.
func (r Result) layup(d design.Design, start string, good func(layup.Bin) int) []layup.Card {
	fields := make([]layup.Field, len(r.Groups))
	for i, g := range r.Groups {
		fields[i] = layup.Field{Group: g.Design, GramsPerBlock: r.gramsPerBlock(i)}
		for _, p := range g.Built.Panels {
			fields[i].Panels = append(fields[i].Panels, p.Grid)
			fields[i].Woods = append(fields[i].Woods, p.Woods)
		}
	}
	return layup.Lay(fields, layup.Way{Start: start, AtOnce: r.Bill.BlocksAtATime(d.Bench), Good: good})
}

// gramsPerBlock is the glue under one block of a group.
func (r Result) gramsPerBlock(group int) float64 {
	blocks := 0
	for _, p := range r.Groups[group].Built.Panels {
		blocks += p.Blocks
	}
	if blocks == 0 {
		return 0
	}
	const gramsPerKg = 1000
	return r.Bill.Groups[group].GlueKg * gramsPerKg / float64(blocks)
}

// planned is how many blocks of a bin are to be cut.
func (r Result) planned(b layup.Bin) int {
	h, _ := heightIn(r.Bill.Lots, b)
	return h.Cut
}

// heightIn finds the blocks of a bin among what is cut.
func heightIn(lots []bench.Lot, b layup.Bin) (bench.HeightCount, bool) {
	for _, lot := range lots {
		if lot.Wood != b.Wood || !lot.Size.Same(b.Size) {
			continue
		}
		for _, h := range lot.Heights {
			if h.Height.Same(b.Height) {
				return h, true
			}
		}
	}
	return bench.HeightCount{}, false
}
