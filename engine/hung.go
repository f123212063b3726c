package engine

import (
	"blockfield/engine/design"
	"blockfield/engine/wall"
)

// hang works out how each group hangs, and gives its panels their cleats where the
// screws want them.
func (r *Result) hang(d design.Design) {
	for i, g := range r.Groups {
		h := wall.Hang(wall.Hung{
			Path: g.Path, Wall: d.Walls[g.Wall], Design: g.Design, Built: g.Built, WayIn: d.WayIn,
			PanelKg: r.Bill.Groups[i].HeaviestKg,
		})
		r.Groups[i].Built = h.Built
		r.Hangings = append(r.Hangings, h)
	}
	r.WatchOuts = append(r.WatchOuts, wall.WatchOuts(d.Room, d.Work, r.Hangings)...)
}
