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
	liftMarginMM    = 6.0 // air over what the bevel needs
	cableMM         = 150 // either side of a socket or switch
	grilleMM        = 150
	heatMM          = 300
	detectorMM      = 500
	belowSprinklers = 450
	reachMM         = 1200 // a lower edge below it is in reach in a public room
	dampPercent     = 70
	coldC           = 12
)

// Kinds of obstacles that checks ask for.
const (
	socket    = "socket"
	switchBox = "switch"
	grille    = "grille"
	radiator  = "radiator"
	detector  = "detector"
	sprinkler = "sprinkler"
	doorSwing = "door swing"
	window    = "window"
)

// LiftRoom is the air above a panel that hooking it on takes: the thickness of
// the cleat times the tangent of its bevel, and 6 mm.
func LiftRoom(cleat length.Length, bevelDeg float64) length.Length {
	const um = 1000
	mm := cleat.Millimetres()*math.Tan(bevelDeg*math.Pi/180) + liftMarginMM
	return length.Micrometres(int64(math.Ceil(mm*um - dustOfFloats*um)))
}

// box is a rectangle on the wall, in mm from its lower left corner.
type box struct{ left, bottom, right, top float64 }

func (h Hung) box() box {
	left, bottom := h.Built.Left.Millimetres(), h.Built.Bottom.Millimetres()
	return box{left, bottom, left + h.Built.TotalWidth.Millimetres(), bottom + h.Built.TotalHeight.Millimetres()}
}

// boxOf is an obstacle; without a height of its own it goes up to the ceiling.
func (h Hung) boxOf(o design.Obstacle) box {
	b := box{left: o.X.Millimetres(), bottom: o.Y.Millimetres()}
	b.right, b.top = b.left+o.Width.Millimetres(), b.bottom+o.Height.Millimetres()
	if o.Height.IsZero() {
		b.top = math.Max(b.bottom, h.Wall.Height.Millimetres())
	}
	return b
}

// apart is the shortest way between two boxes; 0 where they overlap.
func (b box) apart(c box) float64 {
	dx := max(0, b.left-c.right, c.left-b.right)
	dy := max(0, b.bottom-c.top, c.bottom-b.top)
	return math.Hypot(dx, dy)
}

func (b box) overlaps(c box) bool {
	return b.left < c.right && c.left < b.right && b.bottom < c.top && c.bottom < b.top
}

// around is what the wall has about a panel.
func (h Hung) around(room design.Room) []check.WatchOut {
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
	return all
}

// near is what one obstacle has to say.
func (h Hung) near(o design.Obstacle) []check.WatchOut {
	mine, its := h.box(), h.boxOf(o)
	apart := mine.apart(its)
	say := func(code string, level check.Level, gate check.Gate) []check.WatchOut {
		return []check.WatchOut{{
			Code: code, Level: level, Gate: gate, Evidence: level == check.Stop,
			Args: words.Args{
				"kind": words.Key("choice/" + o.Kind), "apart": tenths(apart), "x": o.X, "y": o.Y,
			},
			Field: h.Path + ".place.left", Source: check.CommonPractice,
		}}
	}
	switch {
	case o.Kind == grille && apart < grilleMM:
		return say("wall/grille", check.Caution, check.NoGate)
	case o.Kind == radiator && apart < heatMM:
		return say("wall/heat", check.Caution, check.NoGate)
	case (o.Kind == socket || o.Kind == switchBox) && h.drillsAbove(its):
		return say("wall/cable", check.Caution, check.Hang)
	case o.Kind == detector && apart < detectorMM,
		o.Kind == sprinkler && mine.top > its.bottom-belowSprinklers,
		o.Kind == doorSwing && mine.overlaps(its):
		return say("wall/safety-device", check.Stop, check.Offer)
	}
	return nil
}

// drillsAbove reports whether a fixing may go in within 150 mm left or right of
// a box, above or below it. On timber studs fixings go where the studs are; in
// any other wall they may be anywhere behind the panel.
func (h Hung) drillsAbove(its box) bool {
	if h.standing() {
		return false
	}
	from, to := its.left-cableMM, its.right+cableMM
	if h.Wall.Kind != timberStuds || len(h.allStuds()) == 0 {
		b := h.box()
		return b.left <= to && b.right >= from
	}
	for _, x := range h.allStuds() {
		if x *= millimetresInM; x >= from && x <= to {
			return true
		}
	}
	return false
}

// tenths is a length in mm as a length, to 0.1 mm.
func tenths(mm float64) length.Length { return length.Micrometres(int64(math.Round(mm*10)) * 100) }

// liftRoom compares the air above the panels with what hooking on takes: up to
// the ceiling, or to the lowest thing above. What the panel would lie on leaves
// none.
func (h Hung) liftRoom() []check.WatchOut {
	if h.standing() {
		return nil
	}
	need := LiftRoom(h.Design.Cleat.Thickness, h.Design.Cleat.Bevel)
	top := h.Built.Bottom.Add(h.Built.TotalHeight)
	ceiling := h.Wall.Height
	mine := h.box()
	for _, o := range h.Wall.Obstacles {
		its := h.boxOf(o)
		if flat(o.Kind) || its.left >= mine.right || its.right <= mine.left || its.top <= mine.bottom {
			continue
		}
		if o.Y.Cmp(ceiling) < 0 {
			ceiling = o.Y
		}
	}
	free := ceiling.Sub(top)
	if free.Cmp(need) >= 0 {
		return nil
	}
	w := check.WatchOut{
		Code: "wall/lift-room", Level: check.Stop, Gate: check.Offer, Evidence: true,
		Args:  words.Args{"need": need, "free": length.Max(free, length.MM(0)), "bevel": words.Degrees(h.Design.Cleat.Bevel)},
		Field: h.Path + ".place.height", Source: check.Computed,
	}
	place := h.Design.Place.Height
	move := need.Sub(free).CeilAs(place.Notation())
	if bottom := h.Built.Bottom.Sub(move); bottom.Cmp(length.MM(0)) >= 0 && h.lowerIsFree(mine, move.Millimetres()) {
		w.Fix = &check.Fix{Path: w.Field, Value: place.Sub(move).String()}
	}
	return []check.WatchOut{w}
}

// lowerIsFree reports whether nothing stands in the way of a panel that comes
// down.
func (h Hung) lowerIsFree(mine box, down float64) bool {
	lower := box{mine.left, mine.bottom - down, mine.right, mine.top - down}
	for _, o := range h.Wall.Obstacles {
		if !flat(o.Kind) && h.boxOf(o).overlaps(lower) {
			return false
		}
	}
	return true
}

// flat is what a panel can hang over or is not on the wall; other checks speak
// of it.
func flat(kind string) bool {
	switch kind {
	case socket, switchBox, grille, doorSwing, window:
		return true
	}
	return false
}

// climate asks for more care at a damp or cold wall.
func climate(room design.Room) []check.WatchOut {
	if room.HumidityHigh <= dampPercent && room.TemperatureLow >= coldC {
		return nil
	}
	return []check.WatchOut{{
		Code: "wall/damp-or-cold", Level: check.Caution,
		Args:  words.Args{"humidity": words.Percent(room.HumidityHigh), "cold": words.Celsius(room.TemperatureLow)},
		Field: "room.humidityHigh", Source: check.CommonPractice,
	}}
}
