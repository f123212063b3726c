package design

import "blockfield/engine/words"

// The places of a room that something else may be put on.
const (
	Floor   = "floor"
	Ceiling = "ceiling"
	Walls   = "walls"
)

// What a surface of a room may be made of.
const (
	PlasterLining   = "plaster"
	BrickLining     = "brick"
	ConcreteLining  = "concrete"
	BoardLining     = "board on studs"
	GlassLining     = "glass"
	WoodLining      = "wooden floor"
	CarpetLining    = "carpet"
	CurtainLining   = "heavy curtain"
	SoftPanelLining = "soft panel 50 mm"
	SeatsLining     = "soft seats"
)

// Linings returns the names of what a surface may be made of, the soft ones
// first.
func Linings() []string {
	return []string{
		CarpetLining, CurtainLining, SoftPanelLining, SeatsLining,
		WoodLining, PlasterLining, BrickLining, ConcreteLining, BoardLining, GlassLining,
	}
}

const (
	maxSurfaces  = 24
	newSharePct  = 10 // of a surface that is added, as far as there is room
	wholePercent = 100
)

func surfaceRows() []Field {
	const at = "design.room."
	return []Field{
		partsRow(at+"surfaces", 0, maxSurfaces,
			"What covers parts of floor, ceiling and walls; the rest is a wooden floor, a plastered ceiling and walls like the first one.").sparse(),
		choiceRow(at+"surfaces[].place", "Where it is.", Floor, Ceiling, Walls),
		choiceRow(at+"surfaces[].lining", "What it is.", Linings()...),
		numberRow(at+"surfaces[].share", 0, wholePercent, 5, "%", "How much of that place it covers."),
	}
}

// uncovered is the share of a place that no surface but one covers; −1 counts
// them all.
func (r Room) uncovered(place string, but int) float64 {
	rest := float64(wholePercent)
	for i, s := range r.Surfaces {
		if i != but && s.Place == place {
			rest -= s.Share
		}
	}
	return max(rest, 0)
}

// newSurface is what a surface starts as: soft panels on walls that have room
// for them.
func newSurface(r Room) Surface {
	return Surface{Place: Walls, Lining: SoftPanelLining, Share: min(newSharePct, r.uncovered(Walls, -1))}
}

// surfaces may not cover more of a place than there is.
func (c *checker) surfaces(all []Surface, p *at) {
	sums := map[string]float64{}
	for i := range min(len(all), maxSurfaces) {
		s, path := all[i], p.item(i)
		if !c.clean(path) {
			continue
		}
		rest := wholePercent - sums[s.Place]
		sums[s.Place] += s.Share
		if s.Share > rest {
			c.add(path.field("share"), OutOfRange, words.Plain(words.Quantity{Value: s.Share, Unit: "%"}),
				phrase("allowed/range", "low", words.Quantity{Unit: "%"}, "high", words.Quantity{Value: max(rest, 0), Unit: "%"}))
		}
	}
}

// settleSurface takes a surface that is moved to another place down to what is
// free there.
func (r *Room) settleSurface(i int) {
	s := &r.Surfaces[i]
	s.Share = min(s.Share, r.uncovered(s.Place, i))
}
