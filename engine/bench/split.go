package bench

import (
	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/wood"
)

// What two people and a door take of one panel. Common practice, no source.
const (
	carryKg  = 25 // for each of two people
	carriers = 2
	wrapMM   = 20 // of wrapping, all round
)

// Split is a proposal to make a panel of several, where a sheet, a door or two
// people cannot take it. Wide and High are 0 where even the most panels that a
// group may have are too large, or none is needed.
type Split struct {
	Wide, High          int // panels of the group, side by side and above one another
	Sheet, Door, People bool
}

// Needed reports whether something cannot take the panel.
func (s Split) Needed() bool { return s.Sheet || s.Door || s.People }

// splits makes the proposals.
func (b *Bill) splits(d design.Design, jobs []job) {
	for i, j := range jobs {
		g := &b.Groups[i]
		high := j.built.OuterWidth // as it is carried through a door, on its longer edge
		if j.built.OuterHeight.Cmp(high) < 0 {
			high = j.built.OuterHeight
		}
		g.Split = Split{
			Sheet:  g.PerSheet == 0,
			Door:   high.Add(length.MM(2*wrapMM)).Cmp(d.WayIn.DoorHeight) > 0,
			People: g.HeaviestKg > carriers*carryKg,
		}
		if g.Split.Needed() {
			g.Split.Wide, g.Split.High = j.split(d, *g)
		}
	}
}

// split is the fewest panels that sheet, door and two people can take; where no
// number is enough for all three, the fewest that come out of sheets, if it does
// not come out of one now.
func (j job) split(d design.Design, g GroupBill) (wide, high int) {
	sheet, _ := wood.FindSheet(j.design.Backer.Sheet)
	across, along := usable(sheet)
	if d.Bench.BackerGrain == design.GrainAcross {
		across, along = along, across
	}
	limits := cut.SplitLimits{
		Width: across.Nanometres(), Length: along.Nanometres(), Turn: d.Bench.BackerGrain == design.AnyGrain,
		Oversize: d.Bench.BackerOversize.Nanometres(),
	}
	onSheets := limits
	frame := j.built.OuterWidth.Sub(j.built.FieldWidth)
	limits.Passage = max(1, d.WayIn.DoorHeight.Sub(frame).Sub(length.MM(2*wrapMM)).Nanometres())
	limits.MassG, limits.MaxMassG = int64(g.HeaviestKg*float64(j.panels())*gPerKg), carriers*carryKg*gPerKg
	columns, rows := j.built.Columns*j.design.PanelsWide, j.built.Rows*j.design.PanelsHigh
	pitch := j.built.Pitch.Nanometres()
	wide, high, ok := cut.Split(columns, rows, pitch, limits)
	if !ok && g.Split.Sheet {
		wide, high, _ = cut.Split(columns, rows, pitch, onSheets)
	}
	return wide, high
}

const gPerKg = 1000
