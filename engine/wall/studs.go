package wall

import "math"

// studGroup is the studs that a strip is screwed to, with what falls on the
// busiest of them. A strip is stiff in its height and soft across its thickness:
// shares are taken both ways, as of a stiff strip on springs and as of a soft one
// that hands its load to the nearest stud, and the larger counts.
type studGroup struct {
	studsM  []float64
	offM    float64 // from the middle of the studs to that of the load
	farM    float64 // from the middle of the studs to the last one on the load's side
	squares float64 // Σ of the squared distances from the middle of the studs, m²
	nearest float64 // largest share of a stud when each takes what is nearest to it
	out     float64 // share of the outward force
}

// groupOf is the group of some studs, from left to right.
func groupOf(l Load, studsM []float64) studGroup {
	g := studGroup{studsM: studsM, nearest: nearestShare(l, studsM)}
	k := float64(len(studsM))
	middle := 0.0
	for _, x := range studsM {
		middle += x / k
	}
	g.offM = l.CentreM - middle
	side := math.Copysign(1, g.offM)
	for _, x := range studsM {
		g.squares += (x - middle) * (x - middle)
		g.farM = math.Max(g.farM, side*(x-middle))
	}
	g.out = math.Max(g.nearest, g.outOf(l))
	return g
}

// outOf is the largest part of the outward force as a stiff strip shares it. On a
// lone stud the strip turns about its end across from the load.
func (g studGroup) outOf(l Load) float64 {
	off := math.Abs(g.offM)
	if len(g.studsM) > 1 {
		return 1/float64(len(g.studsM)) + off*g.farM/g.squares
	}
	arm := g.studsM[0] - l.LeftM
	if g.offM < 0 {
		arm = l.RightM - g.studsM[0]
	}
	if arm <= 0 {
		return math.Inf(1)
	}
	return 1 + off/arm
}

// nearestShare is the largest share of a load, even along the strip, that lies
// nearer to one stud than to any other.
func nearestShare(l Load, studsM []float64) float64 {
	most, from := 0.0, l.LeftM
	for i := range studsM {
		to := l.RightM
		if i+1 < len(studsM) {
			to = (studsM[i] + studsM[i+1]) / 2
		}
		to = math.Min(math.Max(to, l.LeftM), l.RightM)
		most = math.Max(most, to-from)
		from = to
	}
	return most / (l.RightM - l.LeftM)
}

// down is the part of the weight on the busiest of n screws in every stud, one
// above another: all screws together as a stiff group that is loaded off its
// middle, the elastic method of an eccentric group of bolts, or the nearest share
// over the stud's screws.
func (g studGroup) down(n int, stepM float64) float64 {
	k, each := float64(len(g.studsM)), float64(n)
	high := stepM * (each - 1) / 2
	polar := each*g.squares + k*stepM*stepM*each*(each*each-1)/12
	if polar == 0 {
		return math.Inf(1) // a lone screw is a pivot
	}
	off := math.Abs(g.offM)
	part, across := 1/(k*each)+off*g.farM/polar, off*high/polar
	return math.Max(math.Hypot(part, across), g.nearest/each)
}

// groups are the choices of studs that follow one another: all of them, or some
// that balance the load better, but two at least where there are two. With a stud
// more there is a choice more, and never a worse one.
func groups(l Load, studsM []float64) []studGroup {
	var all []studGroup
	least := min(2, len(studsM))
	for from := range studsM {
		for to := from + least; to <= len(studsM); to++ {
			all = append(all, groupOf(l, studsM[from:to]))
		}
	}
	return all
}
