package wall

import (
	"math"
	"strconv"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/wood"
	"blockfield/engine/words"
)

// What people carry. Habit of the trade, no source; limits of the law differ by
// country.
const (
	carryKgEach   = 25   // of a panel that is carried upright
	liftKgEach    = 15   // of a panel that is lifted above the chest
	chestMM       = 1500 // a panel whose top is higher is lifted above the chest
	methodKg      = 60   // from here on hands alone are no method
	weighedOffPct = 10   // between the weighed mass and the computed one
)

// Carriers is how many people carry a panel upright.
func Carriers(kg float64) int { return peopleFor(kg, carryKgEach) }

// Lifters is how many people lift it above the chest.
func Lifters(kg float64) int { return peopleFor(kg, liftKgEach) }

// Lifters is how many people lift the group's heaviest panel above the chest: by the habit
// of the trade, and no fewer than share it within the lifting equation's limit for one.
// Where one alone should not lift so much there are two at the least.
func (h Hanging) Lifters() int {
	n := max(Lifters(h.Kg()), h.LimitLifters())
	if n == 1 && h.Kg() > h.LiftOn().LimitKg() {
		return 2
	}
	return n
}

// LimitLifters is how many people would share the group's heaviest panel without anybody
// lifting more than the lifting equation's limit for one; 0 outside its range. The equation
// says nothing of teams: it is a least number.
func (h Hanging) LimitLifters() int {
	limit := h.LiftOn().LimitKg()
	if limit == 0 {
		return 0
	}
	return peopleFor(h.Kg(), limit)
}

// HandsSaid says how the group's heaviest panel is lifted above the chest.
func (h Hanging) HandsSaid() words.Phrase {
	if h.Heavy() {
		return words.Phrase{Key: "wall/no-hands", Args: words.Args{"limit": words.Kg(methodKg)}}
	}
	return words.Phrase{Key: "wall/hands", Args: words.Args{"n": h.Lifters()}}
}

// Heavy reports whether hands alone are no method for the group's heaviest panel.
func (h Hung) Heavy() bool { return h.Kg() > methodKg }

func peopleFor(kg, each float64) int { return int(math.Ceil(kg/each - dustOfFloats)) }

// hands compares the mass of one panel with those who lift it, by the habit of the trade;
// what the lifting equation asks for beyond that stands on the page and on the papers. Above 60 kg no
// number of hands clears it: the person who leads the lift names a method, and
// both stand on the papers.
func (h Hanging) hands(work design.Work) []check.WatchOut {
	kg, top := h.Kg(), h.Built.Bottom.Add(h.Built.TotalHeight)
	if h.Heavy() {
		return []check.WatchOut{h.lift(work.Lifting)}
	}
	people, code := Carriers(kg), "wall/hands-to-carry"
	if top.Cmp(length.MM(chestMM)) > 0 {
		people, code = Lifters(kg), "wall/hands-to-lift"
	}
	if work.Scope() != design.HungScope && !work.OwnBuild && (code == "wall/hands-to-lift" || !work.Delivered) {
		return h.handsOfOthers(people)
	}
	if people <= work.Crew {
		return nil
	}
	return []check.WatchOut{{
		Code: code, Level: check.Caution, Gate: check.Offer,
		Args:  words.Args{"mass": words.Kg(kg), "people": people, "crew": work.Crew, "top": top},
		Field: "work.crew", Source: check.CommonPractice,
		Fix: &check.Fix{Path: "work.crew", Value: strconv.Itoa(people)},
	}}
}

// handsOfOthers is about those who hang what a workshop only makes: nobody knows how
// many they are.
func (h Hung) handsOfOthers(people int) []check.WatchOut {
	if people < 2 {
		return nil
	}
	return []check.WatchOut{{
		Code: "wall/hands-of-others", Level: check.Caution, Gate: check.Offer,
		Args:  words.Args{"mass": words.Kg(h.Kg()), "people": people, "top": h.Built.Bottom.Add(h.Built.TotalHeight)},
		Field: "work.supply", Source: check.CommonPractice,
	}}
}

// lift asks who answers for the lift of a heavy panel, and repeats the answer
// where it is given. At the wall the weighed mass is asked for too.
func (h Hung) lift(l design.Lifting) check.WatchOut {
	mass := words.Kg(h.Kg())
	if !l.Named() {
		field := "work.lifting.method"
		if l.Method != design.ByHand {
			field = "work.lifting.lead"
		}
		return check.WatchOut{
			Code: "wall/lifting-method", Level: check.Stop, Gate: check.Offer, Evidence: true,
			Args:  words.Args{"mass": mass, "limit": words.Kg(methodKg)},
			Field: field, Source: check.CommonPractice,
		}
	}
	w := check.WatchOut{
		Code: "wall/lift-named", Level: check.Caution, Gate: check.Hang,
		Args:  words.Args{"mass": mass, "lead": l.Lead, "method": words.Key("choice/" + l.Method)},
		Field: h.WeighedField, Source: check.CommonPractice,
	}
	if h.WeighedKg == 0 {
		w.Pending = check.ByEvidence
	}
	return w
}

// weighed compares the weighed mass with the computed one.
func (h Hung) weighed() []check.WatchOut {
	measured, computed := h.WeighedKg, h.PanelKg
	if measured == 0 || math.Abs(measured-computed) <= computed*weighedOffPct/100 {
		return nil
	}
	return []check.WatchOut{{
		Code: "wall/weighed-off", Level: check.Caution, Gate: check.Hang,
		Args:  words.Args{"measured": words.Kg(measured), "computed": words.Kg(computed)},
		Field: h.WeighedField, Source: check.CommonPractice,
	}}
}

// proofTimes is the multiple of what a strip carries that it is tried with before a
// panel hangs on it. Common practice, no source.
const proofTimes = 2

// ProofKg is what a strip is tried with: weights, never a person.
func (b Bay) ProofKg() float64 { return proofTimes * b.Kg }

// Spread of densities. The specific gravity of a species varies by about a tenth from
// piece to piece (coefficient of variation, Wood Handbook, from memory); sheets by half
// of that (common practice).
const (
	woodSpread  = 0.10
	sheetSpread = 0.05
)

// MassRange is what the heaviest panel may weigh: its wood as light and dry as it may
// be, or as heavy and moist. The moisture is that of the stock, or where wood comes to
// rest in the extremes of the room. Wood whose density was weighed does not spread, but
// a panel on the scales may still be off by what the weigh slip lets pass.
func (h Hung) MassRange(room design.Room, stockPct float64) (low, high float64) {
	dry := math.Min(stockPct, wood.EMC(room.TemperatureHigh, room.HumidityLow))
	moist := math.Max(stockPct, wood.EMC(room.TemperatureLow, room.HumidityHigh))
	heaviest := h.Built.Panels[0]
	for _, p := range h.Built.Panels {
		if p.MassKg > heaviest.MassKg {
			heaviest = p
		}
	}
	low, high = h.PanelKg, h.PanelKg
	for _, part := range heaviest.Parts {
		less, more := sheetSpread, sheetSpread
		if species, ok := wood.Find(part.Wood); ok {
			spread := woodSpread
			if h.Design.Density > 0 && part.Wood == h.Design.Wood {
				spread = 0
			}
			at := func(pct float64) float64 {
				g12 := species.DensityKgM3 / wood.DensityAt(1, printedPct)
				return wood.DensityAt(g12, pct) / species.DensityKgM3
			}
			less, more = 1-(1-spread)*at(dry), (1+spread)*at(moist)-1
		}
		low -= part.MassKg * less
		high += part.MassKg * more
	}
	off := h.PanelKg * weighedOffPct / 100
	return math.Min(low, h.PanelKg-off), math.Max(high, h.PanelKg+off)
}

// printedPct is the moisture that the densities of the tables are for.
const printedPct = 12

// Lifting is one lift by one person with two hands, in the centimetres of the
// revised equation of NIOSH: Waters, Putz-Anderson and Garg, Applications manual
// for the revised NIOSH lifting equation, DHHS (NIOSH) 94-110, revised 2021.
// The equation is not for teams, and a panel is mostly lifted by one.
type Lifting struct {
	AwayCm   float64 // hands in front of the ankles (H)
	StartCm  float64 // hands above the floor (V)
	RiseCm   float64 // up to where they end (D)
	TwistDeg float64 // of the body (A)
	Grip     Grip
}

// Grip is how well the hands hold.
type Grip uint8

// The grips of the equation's coupling factor; a bare panel edge is poor.
const (
	PoorGrip Grip = iota
	FairGrip
	GoodGrip
)

// Constants of the equation.
const (
	loadConstantKg = 23
	leastAwayCm    = 25
	mostAwayCm     = 63
	mostHandsCm    = 175
	leastRiseCm    = 25
	mostTwistDeg   = 135
	fairBelowCm    = 75
)

// How a panel is lifted on, as far as nobody has said better. Common practice.
const (
	bodyCm   = 25.0 // from the ankles to the back of the panel; the least that the equation knows
	gripPart = 3.0  // hands hold the panel's sides at a third of its height
	cmInM    = 100.0
)

// LiftOn is the lift of one panel from the floor onto its cleat, body straight,
// hands at its bare sides in the middle of its depth.
func (h Hanging) LiftOn() Lifting {
	return Lifting{
		AwayCm:  bodyCm + h.deep().Metres()*cmInM/2,
		StartCm: h.Built.OuterHeight.Metres() * cmInM / gripPart,
		RiseCm:  (h.Built.Bottom.Metres() + h.Built.TotalHeight.Metres() - h.Built.OuterHeight.Metres() + h.LiftRoom.Metres()) * cmInM,
	}
}

// LimitKg is the recommended weight limit for a lift now and then (at most once
// in five minutes, for an hour): 23 kg × 25/H × (1 − 0.003 |V − 75|) × (0.82 +
// 4.5/D) × (1 − 0.0032 A) × coupling. It is 0 outside the equation's range.
func (l Lifting) LimitKg() float64 {
	away, start, rise, twist := l.Factors()
	return loadConstantKg * away * start * rise * twist * l.grip()
}

// Factors are the multipliers of reach, start, rise and twist.
func (l Lifting) Factors() (away, start, rise, twist float64) {
	end := l.StartCm + l.RiseCm
	if l.AwayCm > mostAwayCm || l.StartCm < 0 || l.StartCm > mostHandsCm || end > mostHandsCm || l.TwistDeg > mostTwistDeg {
		return 0, 0, 0, 0
	}
	away = leastAwayCm / math.Max(l.AwayCm, leastAwayCm)
	start = 1 - 0.003*math.Abs(l.StartCm-75)
	rise = 0.82 + 4.5/math.Max(l.RiseCm, leastRiseCm)
	return away, start, rise, 1 - 0.0032*math.Max(0, l.TwistDeg)
}

// grip is the coupling multiplier, from memory of the manual's table 7.
func (l Lifting) grip() float64 {
	switch {
	case l.Grip == GoodGrip, l.Grip == FairGrip && l.StartCm >= fairBelowCm:
		return 1
	case l.Grip == FairGrip:
		return 0.95
	default:
		return 0.9
	}
}
