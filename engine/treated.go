package engine

import (
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/words"
)

// fireRetardant is a finish that is put on against fire.
const fireRetardant = "fire-retardant varnish"

// Treatable reports whether somebody may ask what the panels were treated with against
// fire: the public comes in, a finish of theirs is for that, or something is noted already.
func (j Job) Treatable() bool {
	finish := slices.ContainsFunc(j.Plan.Groups, func(g Group) bool { return g.Design.Finish.Kind == fireRetardant })
	return j.design.Room.Public || finish || j.Record.Treated != (design.Treated{})
}

// TreatedSaid is what there is to treat, and what it takes at the coverage that is noted.
func (j Job) TreatedSaid() []words.Phrase {
	s, gramsPerM2 := j.Plan.Bill.Surfaces, j.Record.Treated.Coverage
	all := []words.Phrase{{Key: "treated/need", Args: words.Args{
		"end": words.M2(s.EndM2), "long": words.M2(s.LongM2), "frame": words.M2(s.FrameM2),
	}}}
	if gramsPerM2 > 0 {
		const gramsPerKg = 1000
		all = append(all, words.Phrase{Key: "treated/mass", Args: words.Args{
			"coverage": words.Quantity{Value: gramsPerM2, Unit: "g/m²"}, "mass": words.Kg((s.EndM2 + s.LongM2) * gramsPerM2 / gramsPerKg),
			"frame": words.Kg(s.FrameM2 * gramsPerM2 / gramsPerKg),
		}})
	}
	return all
}
