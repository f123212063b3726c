package bench

import (
	"math"

	"blockfield/engine/length"
)

// Counts of screws.
const (
	leastCleatScrews = 6
	kgACleatScrew    = 20.0 // for twice the mass; old simple rule, no source
	leastFixings     = 4    // a panel
	mostFixings      = 1000 // a panel: more says only that the typed value is far too low; invented
	kgAThinScrew     = 25.0 // for twice the mass; 5 mm screw into a stud, old simple rule, no source
	kgAThickScrew    = 35.0 // the same, 6 mm screw
	thinScrewMM      = 5
	thickScrewMM     = 6
	safetyOfMass     = 2.0  // of the old simple rules
	gravity          = 9.81 // m/s²
	newtonsAKN       = 1000.0

	// cleatArmLessM is what the cleat's place and the foot of the spacer take
	// off the panel's height as a lever; a low panel keeps half of it.
	cleatArmLessM = 0.150
)

// Words of the design that decide how fixings are counted.
const (
	timberStuds  = "board on timber studs"
	noFixingWall = "no fixing allowed"
	automatic    = "automatic"
	woodScrew    = "wood screw"
	noFixing     = "none"
)

// fixings counts what holds the panels: screws of the cleats, fixings in the
// wall and brads of the frames. All panels of a group get what the heaviest
// needs.
func (b *Bill) fixings(jobs []job) {
	for i, j := range jobs {
		g := &b.Groups[i]
		for _, p := range j.built.Panels {
			arm := max(j.built.FieldHeight.Metres()-cleatArmLessM, j.built.FieldHeight.Metres()/2)
			g.PullKg = max(g.PullKg, (p.MassKg+g.AddedKg)*p.CentroidM/arm)
		}
		g.CleatScrews = max(leastCleatScrews, roundUp(safetyOfMass*g.HeaviestKg/kgACleatScrew))
		g.WallFixings, g.FixingsNeeded, g.Rule = wallFixings(j, *g)
		if g.Rule == OldSimpleRule {
			g.Screw = screwOf(j.wall.Fixing.Diameter)
		}
		b.CleatScrews += g.CleatScrews * j.panels()
		b.WallFixings += g.WallFixings * j.panels()
		if j.built.Framed {
			b.Brads += bradsAFrame * j.panels()
		}
	}
}

// wallFixings counts the fixings of one panel: by the rated value where it was
// typed, by the old simple rule for wood screws into timber studs, and else
// the least count, which says nothing about what holds.
func wallFixings(j job, g GroupBill) (n int, needed float64, rule FixingRule) {
	f := j.wall.Fixing
	switch {
	case !j.design.Stand.BaseDepth.IsZero(), f.Kind == noFixing, j.wall.Kind == noFixingWall:
		return 0, 0, NoFixings
	case f.RatedShear > 0 && f.RatedPull > 0:
		needed = f.LoadFactor * (g.HeaviestKg/f.RatedShear + g.PullKg/f.RatedPull) * gravity / newtonsAKN
		needed = min(needed, mostFixings)
		return max(leastFixings, roundUp(needed)), needed, RatedValue
	case j.wall.Kind == timberStuds && (f.Kind == woodScrew || f.Kind == automatic) && kgAScrew(screwOf(f.Diameter)) > 0:
		needed = safetyOfMass * g.HeaviestKg / kgAScrew(screwOf(f.Diameter))
		return max(leastFixings, roundUp(needed)), needed, OldSimpleRule
	}
	return leastFixings, 0, NotChecked
}

// screwOf is the diameter that somebody has said, or the thinner of the two that
// the old rule knows.
func screwOf(said length.Length) length.Length {
	if said.IsZero() {
		return length.MM(thinScrewMM)
	}
	return said
}

// kgAScrew is what the old rule, which knows two screws only, gives one of a
// diameter, and nothing for one that is thinner than both.
func kgAScrew(diameter length.Length) float64 {
	switch {
	case diameter.Cmp(length.MM(thickScrewMM)) >= 0:
		return kgAThickScrew
	case diameter.Cmp(length.MM(thinScrewMM)) >= 0:
		return kgAThinScrew
	default:
		return 0
	}
}

// roundUp is the whole number not below x. What a float adds to a whole number
// by accident does not make one more.
func roundUp(x float64) int {
	const accident = 1e-9
	return int(math.Ceil(x - accident))
}
