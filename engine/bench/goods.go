package bench

import (
	"fmt"

	"blockfield/engine/wood"
)

// Habits of buying. Common practice, no source.
const (
	gluePerM2   = 0.30 // kg on end grain
	sideReach   = 0.60 // share of the sides that a brush gets to
	finishWaste = 1.15 // what stays in brush and tin
	frameFaces  = 2    // inside and outside of the frame's depth are finished
	bradsAFrame = 20
)

// What stays on a panel of wet glue and finish. Common practice, no source.
const (
	glueStays   = 0.5 // kg for a kg of glue: the rest is water that leaves
	finishStays = 0.4 // kg for a litre of finish, what is lost in the tin included
)

// glue is spread on the bases of the blocks.
func (b *Bill) glue(jobs []job) {
	for i, j := range jobs {
		for _, p := range j.built.Panels {
			b.Groups[i].GlueKg += p.BasesM2 * gluePerM2
		}
		b.GlueKg += b.Groups[i].GlueKg
	}
}

// finishes pools what fields and frames drink by finish, coat by coat.
func (b *Bill) finishes(jobs []job) error {
	for i, j := range jobs {
		finish, ok := wood.FindFinish(j.design.Finish.Kind)
		if !ok {
			return fmt.Errorf("%s.finish.kind: unknown finish %q", j.path, j.design.Finish.Kind)
		}
		coats, frameCoats := j.coats()
		b.Surfaces.FrameM2 += j.frameM2()
		for _, p := range j.built.Panels {
			b.Surfaces.EndM2 += p.TopsM2
			b.Surfaces.LongM2 += p.SidesM2 + p.BareM2
		}
		field := 0.0
		for _, p := range j.built.Panels {
			for coat := range coats {
				tops, long := coatLitres(finish.Coverage, p, coat+1)
				field += tops + long
			}
		}
		frame := j.frameM2() * float64(frameCoats) / finish.Coverage.Frame * finishWaste
		if field+frame == 0 {
			continue
		}
		at, known := b.finishNeed(finish.Name)
		if !known {
			b.coatsOf(finish, jobs)
		}
		line := &b.Finishes[at]
		line.FieldLitres += field
		line.FrameLitres += frame
		line.Litres += field + frame
		b.Groups[i].Litres = field + frame
	}
	return nil
}

// unfinished is the finish that takes no coats, whatever their number says.
const unfinished = "none"

// coats returns the coats on field and frame.
func (j job) coats() (field, frame int) {
	if j.design.Finish.Kind == unfinished {
		return 0, 0
	}
	if j.built.Framed {
		frame = j.design.Finish.FrameCoats
	}
	return j.design.Finish.Coats, frame
}

// finishNeed returns the index of the line of a finish, which it adds where it is
// missing.
func (b *Bill) finishNeed(name string) (at int, known bool) {
	for i := range b.Finishes {
		if b.Finishes[i].Finish == name {
			return i, true
		}
	}
	b.Finishes = append(b.Finishes, FinishNeed{Finish: name})
	return len(b.Finishes) - 1, false
}

// weigh adds to the mass of each panel its share of the group's glue and
// finish.
func (b *Bill) weigh(jobs []job) {
	for i, j := range jobs {
		g := &b.Groups[i]
		g.AddedKg = (glueStays*g.GlueKg + finishStays*g.Litres) / float64(j.panels())
		for _, p := range j.built.Panels {
			kg := p.MassKg + g.AddedKg
			g.TotalKg += kg
			g.HeaviestKg = max(g.HeaviestKg, kg)
		}
		b.TotalKg += g.TotalKg
		b.HeaviestKg = max(b.HeaviestKg, g.HeaviestKg)
	}
}
