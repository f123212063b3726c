package engine

import (
	"math"

	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/wall"
)

// hang works out how a group hangs whose heaviest panel has a mass, gives its panels
// their cleats where the screws want them, and says what it takes to hold them.
func (r *Result) hang(d design.Design, group int, panelKg float64) bench.Held {
	g := &r.Groups[group]
	h := wall.Hang(wall.Hung{
		Path: g.Path, Wall: d.Walls[g.Wall], Design: g.Design, Built: g.Built, WayIn: d.WayIn, PanelKg: panelKg, Seismic: d.Room.Seismic,
		WeighedField: weighedField(group),
	})
	g.Built = h.Built
	r.Hangings[group] = h
	return held(h)
}

// held is what a bill needs to know of what holds a group.
func held(h wall.Hanging) bench.Held {
	half := h.Halves[0]
	out := bench.Held{
		CleatScrews: half.Needed, Cleat: bench.Screw{Gauge: half.Gauge, Long: wholeMM(half.Row.ScrewMM)},
		WallFixings: wall.LeastFixings, Rule: bench.NotChecked,
	}
	panels := float64(len(h.Built.Panels))
	switch h.Means {
	case wall.Stand:
		out.WallFixings, out.Rule = 0, bench.NoFixings
	case wall.Studs:
		all := 0
		for _, s := range h.Strips {
			all += s.Screws()
			out.Wall = bench.Screw{Gauge: s.Gauge, Long: wholeMM(s.ScrewMM)}
			if s.HeightM > bench.StripWidth().Metres() {
				out.StripM2 += (s.RightM - s.LeftM) * s.HeightM
			}
		}
		if all > 0 {
			out.WallFixings, out.Rule = int(math.Ceil(float64(all)/panels)), bench.PublishedRules
		}
	case wall.RatedValue:
		all := 0
		for _, n := range h.Rated {
			all += n.Count
		}
		out.WallFixings, out.Rule = int(math.Ceil(float64(all)/panels)), bench.RatedValue
	default:
		if h.NothingMayGoIn() {
			out.WallFixings, out.Rule = 0, bench.NoFixings
		}
	}
	return out
}

func wholeMM(mm float64) length.Length { return length.MM(int64(math.Round(mm))) }
