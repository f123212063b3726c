package wall

import (
	"math"

	"blockfield/engine/check"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wall/fixing"
	"blockfield/engine/wood"
	"blockfield/engine/words"
)

// What the screws of the panel's half are counted with. Common practice where no
// source stands.
const (
	leastCleatScrews = 6
	plyG             = 0.42 // plywood of any grade, NDS 2018 table 12.3.3B, from memory
	lightestG        = 0.35 // for woods that the standard does not list: below all of the shop that it does
	longerMM         = 20   // than the usual screw, where that is not deep enough
	plentyMM         = 300  // depth of the block, which the choice of cells looks after
)

// CleatScrews are the screws that hold the panel's half of the cleat: through
// backer and cleat from behind, into blocks that are tall enough.
type CleatScrews struct {
	Gauge  int
	Needed int
	Row    CleatRow
	Found  bool // there are that many places
}

// RearOf is the back of a panel of the group.
func (h Hung) RearOf(p panel.Panel) Rear {
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

// CleatScrewsOf chooses row, screw and places for a panel: the usual length, or
// one that is longer where that is not deep enough, and the thinnest screw with
// enough places. Shear goes through backer and end grain together, pull is held
// by the backer alone, and glue is not counted.
func (h Hung) CleatScrewsOf(p panel.Panel) CleatScrews {
	r := h.RearOf(p)
	last := CleatScrews{Needed: leastCleatScrews, Row: CleatRow{ScrewMM: r.UsualScrewMM()}}
	for _, screwMM := range cleatScrewsMM() {
		if screwMM < r.UsualScrewMM() || screwMM > r.UsualScrewMM()+longerMM {
			continue
		}
		for _, gauge := range cleatGauges() {
			s, _ := fixing.Find(gauge)
			need, ok := h.cleatNeed(s, screwMM, p)
			if !ok {
				continue
			}
			apart := s.Spaced(true).InRowIn * fixing.MMPerInch
			row, found := r.ChooseRow(screwMM, apart, need)
			last = CleatScrews{Gauge: gauge, Needed: need, Row: row, Found: found}
			if found {
				return last
			}
		}
	}
	return last
}

// cleatGauges are the screws for the panel's half, thin ones first.
func cleatGauges() []int { return []int{8, 10, 12, 14} }

// cleatNeed is how many screws of a kind the panel's half takes.
func (h Hung) cleatNeed(s fixing.Screw, screwMM float64, p panel.Panel) (int, bool) {
	g := lightestG
	if w, ok := wood.Find(h.Design.Wood); ok && w.NDSG > 0 {
		g = w.NDSG
	}
	holds, err := fixing.Joint{
		Screw: s, LengthIn: screwMM / fixing.MMPerInch,
		SideG: stripG, SideIn: h.Design.Cleat.Thickness.Millimetres() / fixing.MMPerInch,
		MainG: g, MainIn: plentyMM / fixing.MMPerInch, Adjust: fixing.Adjust{EndGrain: true},
		PullIn: h.Design.Backer.Thickness.Millimetres() / fixing.MMPerInch, PullG: plyG,
	}.Holds()
	if err != nil {
		return 0, false
	}
	single := h
	single.Wall.Rail = false // each panel has its own half
	l := single.load(p)
	l.CleatFootM = (rowToMM + halfHighMM/2) / millimetresInM // the lowest that the row may bring
	factor := Factor(h.Wall.Fixing.LoadFactor, "") / fixing.NewtonsPerPound
	for n := leastCleatScrews; n <= mostFixings; n++ {
		if holds.Use(l.DownN()*factor/float64(n), l.MomentN()*factor/float64(n)) <= 1 {
			return n, true
		}
	}
	return 0, false
}

// cells asks for enough safe places for the screws of every panel.
func (h Hung) cells() []check.WatchOut {
	if h.standing() {
		return nil
	}
	for _, p := range h.Built.Panels {
		got := h.CleatScrewsOf(p)
		if got.Found {
			continue
		}
		return []check.WatchOut{h.stop("wall/too-few-cells", check.Hang, h.Path+".heights", published, words.Args{
			"need": got.Needed, "have": len(got.Row.Places),
			"long": length.MM(int64(math.Round(got.Row.ScrewMM))),
		})}
	}
	return nil
}

// comesIn compares the wrapped panel with doors and corridor. Stairs and lift are
// described in words, which nobody has checked.
func (h Hung) comesIn() []check.WatchOut {
	in, wrap := h.WayIn, length.MM(wrapMM).Times(2)
	if in.DoorWidth.IsZero() || in.Corridor.IsZero() || in.DoorHeight.IsZero() || len(h.Built.Panels) == 0 {
		return nil
	}
	deep := length.Max(h.Built.Stack, h.Built.FrameDepth)
	way := Way{
		DoorWidthM: in.DoorWidth.Metres(), DoorHeightM: in.DoorHeight.Metres(), CorridorM: in.Corridor.Metres(),
		WidthM: h.Built.OuterWidth.Add(wrap).Metres(), HeightM: h.Built.OuterHeight.Add(wrap).Metres(),
		DeepM: deep.Add(wrap).Metres(),
	}
	var all []check.WatchOut
	if passes, longest := way.Passes(); !passes {
		all = append(all, check.WatchOut{
			Code: "wall/way-in", Level: check.Stop, Gate: check.Offer, Field: "wayIn.doorWidth", Source: check.Computed,
			Args: words.Args{
				"wide": h.Built.OuterWidth, "high": h.Built.OuterHeight, "door": in.DoorWidth, "tall": in.DoorHeight,
				"corridor": in.Corridor, "longest": tenths(math.Floor(longest * millimetresInM)),
			},
		})
	}
	if filled(in.Stairs) || filled(in.Lift) {
		all = append(all, check.WatchOut{
			Code: "wall/way-in-open", Level: check.Caution, Gate: check.Offer, Field: "wayIn.stairs", Source: check.CommonPractice,
			Args: words.Args{"wide": h.Built.OuterWidth.Add(wrap), "high": h.Built.OuterHeight.Add(wrap), "deep": deep.Add(wrap)},
		})
	}
	return all
}
