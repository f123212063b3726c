package design

import (
	"blockfield/engine/chance"
	"blockfield/engine/words"
)

// NoSecondWood is the choice of blocks of one wood. A design has no word for it.
const NoSecondWood = "none"

// Which blocks are of the second wood. A design has no word for the usual one.
const (
	MixedTaller     = "taller heights"     // the upper half of those that have blocks
	MixedEveryOther = "every other height" // of those, from the second lowest on
	MixedAtRandom   = "at random"
)

// Woods are those of the blocks, the first one first: one or two.
func (g Group) Woods() []string {
	if g.SecondWood == "" || g.SecondWood == g.Wood {
		return []string{g.Wood}
	}
	return []string{g.Wood, g.SecondWood}
}

// WoodName is what the woods of the blocks are called.
func (g Group) WoodName() words.Phrase {
	all := g.Woods()
	if len(all) == 1 {
		return words.Phrase{Key: "choice/" + all[0]}
	}
	return words.Phrase{Key: "woods/two", Args: words.Args{"one": words.Key("choice/" + all[0]), "other": words.Key("choice/" + all[1])}}
}

// secondPercent is the share of blocks of the second wood where they stand at random.
func (g Group) secondPercent() float64 {
	const half = 50
	if g.SecondShare == 0 {
		return half
	}
	return g.SecondShare
}

// secondLevel reports whether the blocks of a level are of the second wood where woods are
// mixed by height.
func (g Group) secondLevel(level int) bool {
	first := 0 // level with blocks
	if g.Heights[0].IsZero() {
		first = 1
	}
	n, i := len(g.Heights)-first, level-first
	if i < 0 {
		return false
	}
	if g.Mixed == MixedEveryOther {
		return i%2 == 1
	}
	return i >= (n+1)/2
}

// WoodsOf returns which of Woods each cell of a panel is of, by the levels of its
// cells; nil where there is one wood alone. Chance is that of the pattern's seed and
// of the panel's number in the group.
func (g Group) WoodsOf(panel int, levels []uint8) []uint8 {
	if len(g.Woods()) == 1 {
		return nil
	}
	all := make([]uint8, len(levels))
	for i, level := range levels {
		second := g.secondLevel(int(level))
		if g.Mixed == MixedAtRandom {
			second = drawnLots(uint64(g.Pattern.Seed), uint64(panel), uint64(i)) < g.secondPercent()
		}
		if second && !g.Heights[level].IsZero() {
			all[i] = 1
		}
	}
	return all
}

// drawnLots is a percentage for a cell.
func drawnLots(seed, panel, cell uint64) float64 {
	const steps, whole = 1 << 20, 100
	value, _ := chance.Next(seed)
	value, _ = chance.Next(value + panel)
	value, _ = chance.Next(value + cell)
	return float64(value%steps) * whole / steps
}
