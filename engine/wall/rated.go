package wall

import "math"

const (
	mostFixings = 1000 // more say only that the typed value is far too low; invented
	newtonsAKN  = 1000.0

	// pryOut is what a row of fixings in the middle of its strip feels of a force at
	// the strip's tip: the strip pivots about its foot.
	pryOut = 2.0
)

// Rated is a count of fixings by what their maker gives for this base.
type Rated struct {
	Count  int
	Needed float64 // before rounding up and the least count
	Use    float64
}

// ChooseRated counts fixings with typed values, in kN for one, in one row along
// the middle of the strip, shear and pull added: four at least.
func ChooseRated(l Load, shearKN, pullKN, factor float64) Rated {
	needed := factor * (l.DownN()/shearKN + pryOut*l.OutN()/pullKN) / newtonsAKN
	n := max(LeastFixings, int(math.Ceil(math.Min(needed, mostFixings)-dustOfFloats)))
	return Rated{Count: n, Needed: needed, Use: needed / float64(n)}
}

// ratedEndM is from an end of a strip to its first fixing. Common practice, no source.
const ratedEndM = 0.050

// StepM is how far apart, in metres, so many fixings sit along the strip.
func (r Rated) StepM(b Bay) float64 {
	return (b.ToM - b.FromM - 2*ratedEndM) / float64(r.Count-1)
}

// Holes are where so many fixings go, even along the middle of the strip.
func (r Rated) Holes(b Bay) []Point {
	step := r.StepM(b)
	var all []Point
	for i := range r.Count {
		all = append(all, Point{b.FromM + ratedEndM + float64(i)*step, b.TipM - halfHighMM/2/millimetresInM})
	}
	return all
}
