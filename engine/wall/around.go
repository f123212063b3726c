package wall

import (
	"math"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Limits of what is near a panel. Common practice, no source.
const (
	liftMarginMM = 6.0  // air over what the bevel needs
	reachMM      = 1200 // a lower edge below it is in reach in a public room
	dampPercent  = 70
	coldC        = 12
	walkOutMM    = 100 // stands out on a walking route …
	walkLowMM    = 680 // … between these heights of its lower edge
	walkHighMM   = 2030
)

// safetyDevice is the code of what crowds a safety device or a way out.
const safetyDevice = "wall/safety-device"

// Kinds of obstacles that have no rule of their own but matter for the lift.
const window = "window"

// rule is what a kind of obstacle asks of a panel: to stay so far away.
type rule struct {
	code    string
	level   check.Level
	gate    check.Gate
	awayMM  float64
	upright bool // the whole height of the wall counts: a cable runs up or down
	below   bool // the whole width of the wall counts, this far below it
}

// ruleOf is the rule for a kind. Common practice, no source.
func ruleOf(kind string) (rule, bool) {
	switch kind {
	case "socket", "switch":
		return rule{code: "wall/cable", level: check.Caution, gate: check.Hang, awayMM: 150, upright: true}, true
	case "grille":
		return rule{code: "wall/grille", level: check.Caution, awayMM: 150}, true
	case "radiator":
		return rule{code: "wall/heat", level: check.Caution, awayMM: 300}, true
	case "detector", "call point", "exit sign":
		return rule{code: safetyDevice, level: check.Stop, gate: check.Offer, awayMM: 500}, true
	case "sprinkler":
		return rule{code: safetyDevice, level: check.Stop, gate: check.Offer, awayMM: 450, below: true}, true
	case "door swing":
		return rule{code: safetyDevice, level: check.Stop, gate: check.Offer}, true
	default:
		return rule{}, false
	}
}

// flat is what a panel can hang over or is not on the wall; other checks speak
// of it.
func flat(kind string) bool {
	switch kind {
	case "socket", "switch", "grille", "door swing", window:
		return true
	}
	return false
}

// LiftRoom is the air above a panel that hooking it on takes: the thickness of
// the cleat times the tangent of its bevel, and 6 mm.
func LiftRoom(cleat length.Length, bevelDeg float64) length.Length {
	const um = 1000
	mm := cleat.Millimetres()*math.Tan(bevelDeg*math.Pi/180) + liftMarginMM
	return length.Micrometres(int64(math.Ceil(mm*um - dustOfFloats*um)))
}

// Box is a rectangle on the wall, in mm from its lower left corner.
type Box struct{ Left, Bottom, Right, Top float64 }

// grown is a box with a margin round it.
func (b Box) grown(mm float64) Box {
	return Box{b.Left - mm, b.Bottom - mm, b.Right + mm, b.Top + mm}
}

// within is the part of a box on a wall.
func (b Box) within(wall Box) Box {
	return Box{
		math.Max(b.Left, wall.Left), math.Max(b.Bottom, wall.Bottom),
		math.Min(b.Right, wall.Right), math.Min(b.Top, wall.Top),
	}
}

// apart is the shortest way between two boxes; 0 where they overlap.
func (b Box) apart(c Box) float64 {
	dx := max(0, b.Left-c.Right, c.Left-b.Right)
	dy := max(0, b.Bottom-c.Top, c.Bottom-b.Top)
	return math.Hypot(dx, dy)
}

func (b Box) overlaps(c Box) bool {
	return b.Left < c.Right && c.Left < b.Right && b.Bottom < c.Top && c.Bottom < b.Top
}

// Box is where the group hangs.
func (h Hung) Box() Box {
	left, bottom := h.Built.Left.Millimetres(), h.Built.Bottom.Millimetres()
	return Box{left, bottom, left + h.Built.TotalWidth.Millimetres(), bottom + h.Built.TotalHeight.Millimetres()}
}

// wallBox is the wall itself.
func wallBox(w design.Wall) Box {
	return Box{Right: w.Width.Millimetres(), Top: w.Height.Millimetres()}
}

// boxOf is an obstacle; without a height of its own it goes up to the ceiling.
func boxOf(w design.Wall, o design.Obstacle) Box {
	b := Box{Left: o.X.Millimetres(), Bottom: o.Y.Millimetres()}
	b.Right, b.Top = b.Left+o.Width.Millimetres(), b.Bottom+o.Height.Millimetres()
	if o.Height.IsZero() {
		b.Top = math.Max(b.Bottom, w.Height.Millimetres())
	}
	return b
}

// Zone is where on a wall something is to be kept away from what an obstacle
// is: a panel at the level Stop, or with care at the level Caution.
type Zone struct {
	Box
	Code  string // of the check that it belongs to
	Level check.Level
}

// Zones are those of a wall, in the order of its obstacles.
func Zones(w design.Wall) []Zone {
	var all []Zone
	for _, o := range w.Obstacles {
		r, ok := ruleOf(o.Kind)
		if !ok {
			continue
		}
		b := boxOf(w, o).grown(r.awayMM)
		if r.upright {
			b.Bottom, b.Top = 0, w.Height.Millimetres()
		}
		if r.below {
			b = Box{Bottom: b.Bottom, Right: w.Width.Millimetres(), Top: w.Height.Millimetres()}
		}
		all = append(all, Zone{Box: b.within(wallBox(w)), Code: r.code, Level: r.level})
	}
	return all
}

// around is what the wall has about a panel.
func (h Hanging) around(room design.Room) []check.WatchOut {
	all := h.liftRoom()
	for _, o := range h.Wall.Obstacles {
		all = append(all, h.near(o)...)
	}
	if bottom := h.Built.Bottom; room.Public && bottom.Cmp(length.MM(reachMM)) < 0 {
		all = append(all, check.WatchOut{
			Code: "wall/in-reach", Level: check.Caution,
			Args:  words.Args{"bottom": bottom, "limit": length.MM(reachMM)},
			Field: h.Path + ".place.height", Source: check.CommonPractice,
		})
	}
	return append(append(all, h.weather()...), h.walkway()...)
}

// weather is what an outside wall and the sun ask for. Common practice, no source.
func (h Hanging) weather() []check.WatchOut {
	var all []check.WatchOut
	for _, one := range []struct {
		is          bool
		code, field string
	}{{h.Wall.Outside && h.Means != Stand, "wall/outside", "outside"}, {h.Wall.Sun, "wall/sun", "sun"}} {
		if one.is {
			all = append(all, check.WatchOut{Code: one.code, Level: check.Caution, Field: h.wallField(one.field), Source: check.CommonPractice})
		}
	}
	return all
}

// near is what one obstacle has to say.
func (h Hanging) near(o design.Obstacle) []check.WatchOut {
	r, ok := ruleOf(o.Kind)
	if !ok || !h.crowds(o, r) {
		return nil
	}
	return []check.WatchOut{{
		Code: r.code, Level: r.level, Gate: r.gate, Evidence: r.level == check.Stop,
		Args: words.Args{
			"kind": words.Key("choice/" + o.Kind), "apart": tenths(h.Box().apart(boxOf(h.Wall, o))), "x": o.X, "y": o.Y,
		},
		Field: h.Path + ".place.left", Source: check.CommonPractice,
	}}
}

// crowds reports whether the panels, or their fixings, come too near.
func (h Hanging) crowds(o design.Obstacle, r rule) bool {
	mine, its := h.Box(), boxOf(h.Wall, o)
	switch {
	case r.upright:
		return h.drillsBetween(its.Left-r.awayMM, its.Right+r.awayMM)
	case r.below:
		return mine.Top > its.Bottom-r.awayMM
	case r.awayMM == 0:
		return mine.overlaps(its)
	default:
		return mine.apart(its) < r.awayMM
	}
}

// drillsBetween reports whether a fixing may go in between two places along the
// wall. In timber studs fixings go where the studs are; in any other wall they may
// be anywhere behind the panel.
func (h Hanging) drillsBetween(from, to float64) bool {
	if h.Means == Stand {
		return false
	}
	if h.Means == Studs && h.FewestStuds() > 0 {
		for _, b := range h.Bays {
			for _, x := range b.StudsM {
				if x *= millimetresInM; x >= from && x <= to {
					return true
				}
			}
		}
		return false
	}
	b := h.Box()
	return b.Left <= to && b.Right >= from
}

// tenths is a length in mm as a length, to 0.1 mm.
func tenths(mm float64) length.Length { return length.Micrometres(int64(math.Round(mm*10)) * 100) }

// FreeAbove is the air above the panels, up to the ceiling or to the lowest thing
// in their way. What the panel would lie on leaves none: it is below zero then.
func (h Hung) FreeAbove() length.Length {
	ceiling, mine := h.Wall.Height, h.Box()
	for _, o := range h.Wall.Obstacles {
		its := boxOf(h.Wall, o)
		if flat(o.Kind) || its.Left >= mine.Right || its.Right <= mine.Left || its.Top <= mine.Bottom {
			continue
		}
		if o.Y.Cmp(ceiling) < 0 {
			ceiling = o.Y
		}
	}
	return ceiling.Sub(h.Built.Bottom.Add(h.Built.TotalHeight))
}

// liftRoom compares the air above the panels with what hooking on takes.
func (h Hanging) liftRoom() []check.WatchOut {
	free := h.FreeAbove()
	if h.Means == Stand || free.Cmp(h.LiftRoom) >= 0 {
		return nil
	}
	w := check.WatchOut{
		Code: "wall/lift-room", Level: check.Stop, Gate: check.Offer, Evidence: true,
		Args: words.Args{
			"need": h.LiftRoom, "free": length.Max(free, length.MM(0)), "bevel": words.Degrees(h.Design.Cleat.Bevel),
		},
		Field: h.Path + ".place.height", Source: check.Computed,
	}
	place := h.Design.Place.Height
	move := h.LiftRoom.Sub(free).CeilAs(place.Notation())
	if h.Built.Bottom.Cmp(move) >= 0 && h.lowerIsFree(move.Millimetres()) {
		w.Fix = &check.Fix{Path: w.Field, Value: place.Sub(move).String()}
	}
	return []check.WatchOut{w}
}

// lowerIsFree reports whether nothing stands in the way of a panel that comes
// down.
func (h Hung) lowerIsFree(down float64) bool {
	lower := h.Box()
	lower.Bottom -= down
	lower.Top -= down
	for _, o := range h.Wall.Obstacles {
		if !flat(o.Kind) && boxOf(h.Wall, o).overlaps(lower) {
			return false
		}
	}
	return true
}
