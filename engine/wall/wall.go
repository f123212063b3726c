// Package wall answers what it takes to hang a panel and where it hangs: what
// holds it in the wall and on its cleat, whether it comes in and can be lifted on,
// who lifts it, what is near it, and what has to be asked in a public room.
//
// Screws in wood follow the published rules of package fixing, at four times the
// load; every other base takes the value that the fixing's maker gives for it.
// What cannot be counted is a Stop that says so, never silence.
//
// Lengths are exact and measured on the wall, from its left corner and up from the
// floor; masses are kg of one panel with glue and finish, as weighed together by
// package bench, or as somebody has weighed it. What people can carry is habit of
// the trade without a source; limits of the law differ by country, which is why a
// sentence asks and never rules.
package wall

import (
	"strings"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/words"
)

const (
	earApartMM   = 500  // between the middle of the panels and the ears; common practice, no source
	dustOfFloats = 1e-9 // what a sum of floats adds to a whole number by accident
)

// Hung is a group of panels at its wall.
type Hung struct {
	Path    string // below the design: "walls[0].groups[0]"
	Wall    design.Wall
	Design  design.Group
	Built   panel.Group
	WayIn   design.WayIn
	PanelKg float64 // the heaviest panel as computed, with glue and finish
	Seismic bool    // the ground may shake
	Looked  bool    // a professional has looked at this very design

	WeighedKg    float64 // the heaviest panel as weighed; 0: nobody has
	WeighedField string  // where that is typed
}

// Kg is the mass that counts: of the heaviest panel as weighed, or else as
// computed.
func (h Hung) Kg() float64 {
	if h.WeighedKg > 0 {
		return h.WeighedKg
	}
	return h.PanelKg
}

// wallPath is where the group's wall stands below the design.
func (h Hung) wallPath() string {
	wall, _, _ := strings.Cut(h.Path, ".")
	return wall
}

// WatchOuts returns what is to be said of the wall, of what holds, of the way in,
// of lifting, of ears and of the room.
func WatchOuts(room design.Room, work design.Work, hanging []Hanging) []check.WatchOut {
	return Answered(room, work, hanging, design.Asked{}, "")
}

// Answered is WatchOuts with what was asked about the building, for the design with a
// revision.
func Answered(room design.Room, work design.Work, hanging []Hanging, asked design.Asked, revision string) []check.WatchOut {
	var all []check.WatchOut
	for _, h := range hanging {
		all = append(all, h.hands(work)...)
		all = append(all, h.weighed()...)
		all = append(all, h.hold()...)
		if h.Means != Stand {
			all = append(all, h.cells()...)
		}
		all = append(all, allowed(h.around(room), asked, revision)...)
		all = append(all, h.comesIn()...)
		all = append(all, h.ears()...)
	}
	all = append(all, professional(asked, revision)...)
	all = append(all, climate(room)...)
	return append(all, fire(room, asked.Fire)...)
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
