package wall

import (
	"math"
	"slices"

	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wall/fixing"
	"blockfield/engine/wood"
)

// What the screws of the panel's half are counted with. Common practice where no
// source stands.
const (
	leastCleatScrews = 6
	plyG             = 0.42 // plywood of any grade, NDS 2018 table 12.3.3B, from memory
	lightestG        = 0.35 // for woods that the standard does not list: below all of the shop that it does
	longerMM         = 20   // than the usual screw, where that is not deep enough
	plentyMM         = 300  // depth of the block, which the choice of cells looks after
	halfHighMM       = 80.0 // height of the panel's half, as panels are built
	leastFootMM      = 90.0 // from the field's top to its lower edge: its upper edge stays 10 mm under it
)

// Half is the panel's half of the cleat, and the screws that hold it: through cleat
// and backer from behind, into blocks that are tall enough.
type Half struct {
	Rear
	Gauge  int
	Needed int
	Row    CleatRow
	Found  bool          // there are that many places
	Use    float64       // of one screw, the load factor counted in; 0 where no screw is deep enough
	Foot   length.Length // its lower inner corner, below the field's top
}

// rear is the back of a panel of the group.
func (h Hung) rear(p panel.Panel) Rear {
	heights := make([]float64, len(h.Design.Heights))
	for i, x := range h.Design.Heights {
		heights[i] = x.Millimetres()
	}
	return Rear{
		Grid: p.Grid, HeightsMM: heights, PitchMM: h.Built.Pitch.Millimetres(),
		BlockMM: h.Design.Block.Size.Millimetres(), CleatMM: h.Design.Cleat.Thickness.Millimetres(),
		BackerMM: h.Design.Backer.Thickness.Millimetres(),
	}
}

// halves chooses screw and rows for all panels of the group, which share a screw:
// of the usual length, or longer where that is not deep enough, and the thinnest
// with enough places on every panel.
func (h Hung) halves(factor float64) []Half {
	var last []Half
	for _, screwMM := range h.cleatLengths() {
		for _, gauge := range cleatGauges() {
			s, _ := fixing.Find(gauge)
			all, ok := h.halvesWith(s, screwMM, factor)
			if ok {
				return all
			}
			if all != nil {
				last = all
			}
		}
	}
	if last == nil {
		return h.unscrewed()
	}
	return last
}

// cleatLengths are the usual length of a screw, and somewhat longer ones, in mm.
func (h Hung) cleatLengths() []float64 {
	usual := h.rear(panel.Panel{}).UsualScrewMM()
	return slices.DeleteFunc(cleatScrewsMM(), func(mm float64) bool { return mm < usual || mm > usual+longerMM })
}

// halvesWith is every panel with screws of a kind, and whether each has places
// enough; nil where the rules have no value for that kind.
func (h Hung) halvesWith(s fixing.Screw, screwMM, factor float64) (all []Half, ok bool) {
	ok = true
	rows := map[byte]Half{} // panels of one letter have one back
	for _, p := range h.Built.Panels {
		half, done := rows[p.Letter]
		if !done {
			need, use, counted := h.cleatNeed(s, screwMM, p, factor)
			if !counted {
				return nil, false
			}
			half = Half{Rear: h.rear(p), Gauge: s.Gauge, Needed: need, Use: use}
			half.Row, half.Found = half.ChooseRow(Want{
				ScrewMM: screwMM, Count: need,
				ApartMM: s.Spaced().InRowIn * fixing.MMPerInch, EdgeMM: edgeDiameters * s.DiameterIn * fixing.MMPerInch,
			})
			half.Foot = half.foot(half.Row)
			rows[p.Letter] = half
		}
		all, ok = append(all, half), ok && half.Found
	}
	return all, ok
}

// unscrewed is every panel with a cleat that no screw is known to hold.
func (h Hung) unscrewed() []Half {
	var all []Half
	for _, p := range h.Built.Panels {
		r := h.rear(p)
		all = append(all, Half{Rear: r, Needed: leastCleatScrews, Row: CleatRow{ScrewMM: r.UsualScrewMM()}, Foot: length.MM(leastFootMM)})
	}
	return all
}

// cleatGauges are the screws for the panel's half, thin ones first.
func cleatGauges() []int { return []int{8, 10, 12, 14} }

// foot is how far below the field's top the panel's half ends, at its lower inner
// corner, so that it lies with its middle on the screws.
func (r Rear) foot(row CleatRow) length.Length {
	if len(row.Rows) == 0 {
		return length.MM(leastFootMM)
	}
	middle := (r.RowY(row.Rows[0]) + r.RowY(row.Rows[len(row.Rows)-1])) / 2
	return tenths(math.Max(leastFootMM, middle+halfHighMM/2))
}

// cleatNeed is how many screws of a kind the panel's half takes, and to what share
// each is used then. Shear goes through backer and end grain together, counted with
// the lighter of the two; pull is held by the backer alone, and glue is not counted.
// The lean pulls at the half's foot, which turns about its upper edge: a row in its
// middle feels twice that. The wedge presses the half against the backer.
func (h Hung) cleatNeed(s fixing.Screw, screwMM float64, p panel.Panel, factor float64) (n int, use float64, ok bool) {
	g := math.Inf(1) // of two woods the lighter one: a screw may meet either
	for _, name := range h.Design.Woods() {
		own := lightestG
		if w, found := wood.Find(name); found && w.NDSG > 0 {
			own = w.NDSG
		}
		g = math.Min(g, own)
	}
	holds, err := fixing.Joint{
		Screw: s, LengthIn: screwMM / fixing.MMPerInch,
		SideG: stripG, SideIn: h.Design.Cleat.Thickness.Millimetres() / fixing.MMPerInch,
		MainG: math.Min(g, plyG), MainIn: plentyMM / fixing.MMPerInch, Adjust: fixing.Adjust{EndGrain: true},
		PullIn: h.Design.Backer.Thickness.Millimetres() / fixing.MMPerInch, PullG: plyG,
	}.Holds()
	if err != nil {
		return 0, 0, false
	}
	l := h.load(p, length.MM(rowToMM+halfHighMM/2)) // the lowest that the row may bring
	shear, pull := l.DownN()*factor/fixing.NewtonsPerPound, pryOut*l.LeanN()*factor/fixing.NewtonsPerPound
	for n = leastCleatScrews; n <= mostFixings; n++ {
		if use = holds.Use(shear/float64(n), pull/float64(n)); use <= 1 {
			return n, use, true
		}
	}
	return 0, 0, false
}

// tip is the height above the floor of the tip of the strip behind a panel: at the
// lower inner corner of the panel's half, between its bevel and the backer.
func (h Hanging) tip(i int) length.Length {
	p := h.Built.Panels[i]
	return p.Bottom.Add(p.FieldTop()).Sub(h.Halves[i].Foot)
}
