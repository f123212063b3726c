package engine

import (
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/measure"
	"blockfield/engine/moisture"
)

// sticksAndAir is what the sections of the sticks and the moisture of the room do
// to the fields. A design does not hold what was measured of sticks: their usual
// spread is taken.
func sticksAndAir(d design.Design, groups []Group) []check.WatchOut {
	all := moisture.Stock(d.Room, d.Bench)
	for _, g := range groups {
		all = append(all, moisture.WatchOuts(d.Room, d.Bench, g.Design, g.Path)...)
		all = append(all, measure.WatchOuts(g.Design, measure.KnownOf(measure.Section{}, g.Design.Block.Size), g.Path)...)
	}
	return all
}
