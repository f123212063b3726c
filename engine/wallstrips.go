package engine

import (
	"math"
	"slices"

	"blockfield/engine/length"
)

// WallStrip is a strip in the wall that is higher than those of the shop, so that each
// is a board of its own; and how many are alike.
type WallStrip struct {
	Height, Thickness, Length length.Length
	BevelDegrees              float64
	Count                     int
}

// WallStrips are those of the whole job, in the order of its groups.
func (r Result) WallStrips() []WallStrip {
	var all []WallStrip
	for i, h := range r.Hangings {
		if r.Bill.Groups[i].StripM2 == 0 {
			continue
		}
		for _, s := range h.Strips {
			one := WallStrip{
				Height: tenths(s.HeightM).CeilMM(), Thickness: h.Design.Cleat.Thickness,
				Length: tenths(s.RightM - s.LeftM), BevelDegrees: h.Design.Cleat.Bevel,
			}
			same := slices.IndexFunc(all, func(had WallStrip) bool {
				had.Count = 0
				return had == one
			})
			if same < 0 {
				same, all = len(all), append(all, one)
			}
			all[same].Count++
		}
	}
	return all
}

// tenths is a length in metres to a tenth of a millimetre.
func tenths(m float64) length.Length {
	const micrometre, tenth = 1e6, 100
	return length.Micrometres(int64(math.Round(m*micrometre/tenth)) * tenth)
}
