package sound

// panels joins the transforms of several panels. All of them follow from one:
// a counter-panel has the levels from the other end, and a panel turned by 180°
// the conjugate transform, because places are measured from its middle.
type panels struct {
	one    bool // a single panel, as designed and in the middle
	places [3][][2]float64
}

// newPanels takes both coordinates of the panels, or for a plane the one along
// its axis.
func newPanels(a Arrangement, axes ...Axis) panels {
	var p panels
	modules := a.modules()
	p.one = len(modules) == 1 && modules[0] == Module{}
	for _, m := range modules {
		at := [2]float64{m.XM, m.YM}
		if len(axes) == 1 {
			at = [2]float64{m.XM, 0}
			if axes[0] == Down {
				at[0] = m.YM
			}
		}
		p.places[m.Turn] = append(p.places[m.Turn], at)
	}
	return p
}

// join adds up the panels' transforms for the phases ku and kv of a metre along
// the two coordinates.
func (p panels) join(ku, kv float64, own, out []complex128) {
	designed, counter, turned := p.sum(AsDesigned, ku, kv), p.sum(Counter, ku, kv), p.sum(HalfTurn, ku, kv)
	last := len(own) - 1
	for l, f := range own {
		out[l] = designed*f + counter*own[last-l] + turned*conj(f)
	}
}

// sum adds up the places of the panels of one turn.
func (p panels) sum(t Turn, ku, kv float64) complex128 {
	var sum complex128
	for _, at := range p.places[t] {
		sum += unit(ku*at[0] + kv*at[1])
	}
	return sum
}
