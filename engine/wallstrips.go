package engine

import (
	"slices"

	"blockfield/engine/length"
	"blockfield/engine/wall"
)

// LiftLocks is how many screws or clips hold the panels against being lifted off.
func (r Result) LiftLocks() int {
	n := 0
	for _, h := range r.Hangings {
		if h.Means != wall.Stand && h.Design.Cleat.Lock != "none" {
			n += len(h.Built.Panels)
		}
	}
	return n
}

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
				Height: length.ToTenth(s.HeightM * mmPerM).CeilMM(), Thickness: h.Design.Cleat.Thickness,
				Length: length.ToTenth((s.RightM - s.LeftM) * mmPerM), BevelDegrees: h.Design.Cleat.Bevel,
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
