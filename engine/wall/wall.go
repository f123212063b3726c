// Package wall answers what it takes to hang a panel and where it hangs: what
// holds it in the wall and on its cleat, whether it comes in and can be lifted on,
// who lifts it, what is near it, and what has to be asked in a public room.
//
// Screws in wood follow the published rules of package fixing, at four times the
// load; every other base takes the value that the fixing's maker gives for it.
// What cannot be counted is a Stop that says so, never silence.
//
// Lengths are exact and measured on the wall, up from the floor; masses are kg
// of one panel with glue and finish, as weighed together by package bench. What
// people can carry is habit of the trade without a source; limits of the law
// differ by country, which is why a sentence asks and never rules.
package wall

import (
	"math"
	"strconv"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/words"
)

// Limits of the checks. Common practice, no source.
const (
	carryKgEach  = 25   // of a panel that is carried upright
	liftKgEach   = 15   // of a panel that is lifted above the chest
	chestMM      = 1500 // a panel whose top is higher is lifted above the chest
	methodKg     = 60   // from here on hands alone are no method
	earApartMM   = 500  // between the middle of the panels and the ears
	dustOfFloats = 1e-9 // what a sum of floats adds to a whole number by accident
)

// Hung is a group of panels at its wall.
type Hung struct {
	Path    string // below the design: "walls[0].groups[0]"
	Wall    design.Wall
	Design  design.Group
	Built   panel.Group
	WayIn   design.WayIn
	PanelKg float64 // the heaviest panel, with glue and finish
}

// WatchOuts returns what is to be said of the wall, of what holds, of the way in,
// of lifting, of ears and of the room.
func WatchOuts(room design.Room, work design.Work, hung []Hung) []check.WatchOut {
	var all []check.WatchOut
	for _, h := range hung {
		all = append(all, h.hands(work)...)
		all = append(all, h.hold()...)
		all = append(all, h.cells()...)
		all = append(all, h.around(room)...)
		all = append(all, h.comesIn()...)
		all = append(all, h.ears()...)
	}
	all = append(all, climate(room)...)
	return append(all, fire(room)...)
}

// Carriers is how many people carry a panel upright.
func Carriers(kg float64) int { return peopleFor(kg, carryKgEach) }

// Lifters is how many people lift it above the chest.
func Lifters(kg float64) int { return peopleFor(kg, liftKgEach) }

func peopleFor(kg, each float64) int { return int(math.Ceil(kg/each - dustOfFloats)) }

// hands compares the mass of one panel with those who lift it. Above 60 kg no
// number of hands clears it: the person who leads the lift names a method, and
// both stand on the papers.
func (h Hung) hands(work design.Work) []check.WatchOut {
	crew := work.Crew
	top := h.Built.Bottom.Add(h.Built.TotalHeight)
	each, code := float64(carryKgEach), "wall/hands-to-carry"
	if top.Cmp(length.MM(chestMM)) > 0 {
		each, code = liftKgEach, "wall/hands-to-lift"
	}
	people := peopleFor(h.PanelKg, each)
	args := words.Args{"mass": words.Kg(h.PanelKg), "people": people, "crew": crew, "top": top}
	if h.PanelKg > methodKg {
		return []check.WatchOut{lift(h.PanelKg, work.Lifting)}
	}
	if people <= crew {
		return nil
	}
	return []check.WatchOut{{
		Code: code, Level: check.Caution, Gate: check.Offer,
		Args: args, Field: "work.crew", Source: check.CommonPractice,
		Fix: &check.Fix{Path: "work.crew", Value: strconv.Itoa(people)},
	}}
}

// lift asks who answers for the lift of a heavy panel, and repeats the answer
// where it is given. At the wall the weighed mass counts, which no design holds.
func lift(kg float64, l design.Lifting) check.WatchOut {
	if l.Named() {
		return check.WatchOut{
			Code: "wall/lift-named", Level: check.Caution, Gate: check.Hang, Pending: check.ByEvidence,
			Args:  words.Args{"mass": words.Kg(kg), "lead": l.Lead, "method": words.Key("choice/" + l.Method)},
			Field: "work.lifting.lead", Source: check.CommonPractice,
		}
	}
	field := "work.lifting.method"
	if l.Method != design.ByHand {
		field = "work.lifting.lead"
	}
	return check.WatchOut{
		Code: "wall/lifting-method", Level: check.Stop, Gate: check.Offer, Evidence: true,
		Args:  words.Args{"mass": words.Kg(kg), "limit": words.Kg(methodKg)},
		Field: field, Source: check.CommonPractice,
	}
}

// ears compares the middle of the group with the ears of those who listen.
func (h Hung) ears() []check.WatchOut {
	middle := h.Built.Bottom.Add(h.Built.TotalHeight.Half())
	off, code := middle.Sub(h.Wall.EarHeight), "wall/above-ears"
	if off.Cmp(length.MM(0)) < 0 {
		off, code = h.Wall.EarHeight.Sub(middle), "wall/below-ears"
	}
	over := off.Sub(length.MM(earApartMM))
	if over.Cmp(length.MM(0)) <= 0 {
		return nil
	}
	w := check.WatchOut{
		Code: code, Level: check.Note,
		Args:  words.Args{"off": off, "ears": h.Wall.EarHeight},
		Field: h.Path + ".place.height", Source: check.CommonPractice,
	}
	// The edge that the design gives moves by as much as the middle does.
	place := h.Design.Place.Height
	move := over.CeilAs(place.Notation())
	bottom := h.Built.Bottom.Sub(move)
	to := place.Sub(move)
	if code == "wall/below-ears" {
		bottom, to = h.Built.Bottom.Add(move), place.Add(move)
	}
	top := bottom.Add(h.Built.TotalHeight)
	if bottom.Cmp(length.MM(0)) >= 0 && top.Cmp(h.Wall.Height) <= 0 {
		w.Fix = &check.Fix{Path: w.Field, Value: to.String()}
	}
	return []check.WatchOut{w}
}

// fire asks for the class that the surface must have. The design has no field
// for the answer: it belongs to the record of the job.
func fire(room design.Room) []check.WatchOut {
	if !room.Public {
		return nil
	}
	return []check.WatchOut{{
		Code: "wall/fire-question", Level: check.Caution, Gate: check.Buy, Pending: check.SignOff,
		Field: "room.public", Source: check.CommonPractice,
	}}
}
