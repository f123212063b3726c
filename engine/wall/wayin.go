package wall

import (
	"math"
	"strings"

	"blockfield/engine/check"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

const wrapMM = 20 // of packing round a panel on its way; common practice

// Packed is a panel as it is carried, in metres: two edges and its depth.
type Packed struct{ WidthM, HeightM, DeepM float64 }

// upright reports whether either edge may lie along the way while the other one
// stands up under a height.
func (p Packed) upright(underM float64, passes func(alongM float64) bool) bool {
	return p.HeightM <= underM && passes(p.WidthM) || p.WidthM <= underM && passes(p.HeightM)
}

// Step is one narrow place on the way in.
type Step struct {
	Name     string        // key of its name: "way/door", …
	Measured bool          // somebody has typed its sizes
	Passes   bool          // as packed
	Bare     bool          // without frame and packing
	Longest  length.Length // that turns or lies there; 0 where length is not what matters
	Size     words.Phrase  // its sizes
	A, B     length.Length // of two passages round a corner; 0 where there is no corner
}

// WaySteps is the way from the street to the wall, step by step, for one panel of the
// group. A door counts as a passage as wide, which is the cautious way. What it
// leaves open: handrails, ceilings over stairs, and the edge of a lift's door.
func (h Hung) WaySteps() []Step {
	in, packed, bare := h.WayIn, h.Packed(), h.bare()
	step := func(name string, passes func(Packed) bool, longest float64, args words.Args, sizes ...length.Length) Step {
		s := Step{Name: name, Measured: true, Size: words.Phrase{Key: "way-size/" + strings.TrimPrefix(name, "way/"), Args: args}}
		for _, size := range sizes {
			s.Measured = s.Measured && !size.IsZero()
		}
		if s.Measured {
			s.Passes, s.Bare = passes(packed), passes(bare)
			s.Longest = tenths(math.Floor(longest * millimetresInM))
		}
		return s
	}
	door, tall := in.DoorWidth.Metres(), in.DoorHeight.Metres()
	turn := func(a, b, under float64) func(Packed) bool {
		return func(p Packed) bool {
			longest := LongestTurn(a, b, p.DeepM)
			return p.upright(under, func(along float64) bool { return along <= longest })
		}
	}
	all := []Step{
		step("way/door", turn(in.Corridor.Metres(), door, tall), LongestTurn(in.Corridor.Metres(), door, packed.DeepM),
			words.Args{"door": in.DoorWidth, "high": in.DoorHeight, "corridor": in.Corridor}, in.DoorWidth, in.DoorHeight, in.Corridor),
	}
	all[0].A, all[0].B = in.Corridor, in.DoorWidth
	if filled(in.Stairs) || !in.StairWidth.IsZero() {
		a, b := in.StairWidth.Metres(), in.Landing.Metres()
		stairs := step("way/stairs", turn(a, b, math.Inf(1)), LongestTurn(a, b, packed.DeepM),
			words.Args{"flight": in.StairWidth, "landing": in.Landing}, in.StairWidth, in.Landing)
		stairs.A, stairs.B = in.StairWidth, in.Landing
		all = append(all, stairs)
	}
	if filled(in.Lift) || !in.LiftDoor.IsZero() {
		wide, deep, high := in.LiftWidth.Metres(), in.LiftDepth.Metres(), in.LiftHeight.Metres()
		car := func(p Packed) bool {
			longest := LongestInCar(wide, deep, p.DeepM)
			return p.DeepM <= in.LiftDoor.Metres() && p.upright(high, func(along float64) bool { return along <= longest })
		}
		all = append(all, step("way/lift", car, LongestInCar(wide, deep, packed.DeepM),
			words.Args{"door": in.LiftDoor, "wide": in.LiftWidth, "deep": in.LiftDepth, "high": in.LiftHeight}, in.LiftDoor, in.LiftWidth, in.LiftDepth, in.LiftHeight))
	}
	if !in.Vehicle.IsZero() {
		floor := func(p Packed) bool { return math.Max(p.WidthM, p.HeightM) <= in.Vehicle.Metres() }
		all = append(all, step("way/vehicle", floor, in.Vehicle.Metres(), words.Args{"long": in.Vehicle}, in.Vehicle))
	}
	return all
}

// deep is how far a panel stands out: its stack, or its frame.
func (h Hung) deep() length.Length { return length.Max(h.Built.Stack, h.Built.FrameDepth) }

// Packed is a panel with its packing, and bare one without packing and frame.
func (h Hung) Packed() Packed {
	wrap := length.MM(wrapMM).Times(2)
	return Packed{
		WidthM: h.Built.OuterWidth.Add(wrap).Metres(), HeightM: h.Built.OuterHeight.Add(wrap).Metres(),
		DeepM: h.deep().Add(wrap).Metres(),
	}
}

func (h Hung) bare() Packed {
	return Packed{WidthM: h.Built.FieldWidth.Metres(), HeightM: h.Built.FieldHeight.Metres(), DeepM: h.Built.Stack.Metres()}
}

// comesIn asks for another way where a step is too narrow. Stairs or lift are
// enough: where both are there, one has to do.
func (h Hung) comesIn() []check.WatchOut {
	if len(h.Built.Panels) == 0 {
		return nil
	}
	var all []check.WatchOut
	var up []Step
	for _, s := range h.WaySteps() {
		switch {
		case s.Name == "way/stairs" || s.Name == "way/lift":
			up = append(up, s)
		case s.Measured && !s.Passes:
			all = append(all, h.stuck(s))
		}
	}
	return append(all, h.comesUp(up)...)
}

// comesUp is what is to be said of stairs and lift.
func (h Hung) comesUp(up []Step) []check.WatchOut {
	open := false
	for _, s := range up {
		if s.Measured && s.Passes {
			return nil
		}
		open = open || !s.Measured
	}
	if open {
		p := h.Packed()
		return []check.WatchOut{{
			Code: "wall/way-in-open", Level: check.Caution, Gate: check.Offer, Field: "wayIn.stairs", Source: check.CommonPractice,
			Args: words.Args{"wide": metres(p.WidthM), "high": metres(p.HeightM), "deep": metres(p.DeepM)},
		}}
	}
	if len(up) > 0 {
		return []check.WatchOut{h.stuck(up[0])}
	}
	return nil
}

func metres(m float64) length.Length { return tenths(m * millimetresInM) }

// stuck says where a panel does not pass, and whether it would without its frame.
func (h Hung) stuck(s Step) check.WatchOut {
	field := map[string]string{
		"way/door": "wayIn.doorWidth", "way/stairs": "wayIn.landing", "way/lift": "wayIn.liftDepth", "way/vehicle": "wayIn.vehicle",
	}[s.Name]
	bare := words.Key("way/not-bare")
	if s.Bare {
		bare = "way/bare"
	}
	return check.WatchOut{
		Code: "wall/way-in", Level: check.Stop, Gate: check.Offer, Field: field, Source: check.Computed,
		Args: words.Args{
			"wide": h.Built.OuterWidth, "high": h.Built.OuterHeight, "step": words.Key(s.Name), "longest": s.Longest, "bare": bare,
		},
	}
}
