package wall

import (
	"math"

	"blockfield/engine/design"
	"blockfield/engine/length"
)

// snapMM is how near a panel that is moved by hand comes to a place that suits it
// before it takes that place. Common practice.
const snapMM = 20

// KeySteps are how far a key moves a group, and how far it does finely: 10 and 1 mm,
// or 1/2 and 1/16 in.
func KeySteps(n length.Notation) (step, fine length.Length) {
	if n == length.InInch || n == length.InFeet {
		return length.Sixtyfourths(32), length.Sixtyfourths(4)
	}
	return length.MM(10), length.MM(1)
}

// Spot is a place that suits a group: a field of the design and what to type there.
type Spot struct {
	Name string // key of its name: "spot/middle", "spot/studs", "spot/ears"
	Path string
	To   length.Length
}

// Spots are the places that suit the group and where it is not yet: in the middle of
// its wall, the nearest that shares its load well among two studs, and with its middle
// at the ears.
func (h Hanging) Spots() []Spot {
	place := h.Design.Place
	var all []Spot
	add := func(name, field string, to, is length.Length) {
		if !to.Same(is) {
			all = append(all, Spot{name, h.Path + field, to})
		}
	}
	if h.hangsAt(h.middleLeft()) {
		add("spot/middle", ".place.left", h.middleLeft(), place.Left)
	}
	if to, ok := h.balancedLeft(); ok {
		add("spot/studs", ".place.left", to, place.Left)
	}
	if up := h.earsBottom(); h.standsAt(up) {
		add("spot/ears", ".place.height", h.PlaceHeight(up), place.Height)
	}
	return all
}

// hangsAt reports whether the group hangs on its wall with its left edge there, and
// standsAt with its lower edge there.
func (h Hung) hangsAt(left length.Length) bool {
	return left.Cmp(length.MM(0)) >= 0 && left.Add(h.Built.TotalWidth).Cmp(h.Wall.Width) <= 0
}

func (h Hung) standsAt(bottom length.Length) bool {
	return bottom.Cmp(length.MM(0)) >= 0 && bottom.Add(h.Built.TotalHeight).Cmp(h.Wall.Height) <= 0
}

// middleLeft is the left edge of a group in the middle of its wall.
func (h Hung) middleLeft() length.Length {
	return nearestAs(h.Wall.Width.Sub(h.Built.TotalWidth).Metres()/2, h.Design.Place.Left.Notation())
}

// earsBottom is the lower edge of a group with its middle at the ears.
func (h Hung) earsBottom() length.Length {
	return nearestAs(h.Wall.EarHeight.Metres()-h.Built.TotalHeight.Metres()/2, h.Design.Place.Height.Notation())
}

// PlaceHeight is what the field of the height has for a lower edge: that edge, or the
// upper one.
func (h Hung) PlaceHeight(bottom length.Length) length.Length {
	if h.Design.Place.Edge == design.BottomEdge {
		return bottom
	}
	return bottom.Add(h.Built.TotalHeight)
}

// balancedLefts are the left edges that bring the middle of a panel to a stud or
// between two, where the group hangs on its wall and every panel meets two.
func (h Hanging) balancedLefts() []length.Length {
	place := h.Design.Place.Left
	var all []length.Length
	for _, way := range h.balances() {
		to := nearestAs(place.Metres()+way, place.Notation())
		if h.hangsAt(to) && h.reachesAt(to) {
			all = append(all, to)
		}
	}
	return all
}

// reachesAt reports whether every panel meets two studs with the group's left edge
// there.
func (h Hanging) reachesAt(left length.Length) bool {
	way := left.Sub(h.Built.Left).Metres()
	studs := h.studs()
	for _, p := range h.Built.Panels {
		var b Bay
		b.LeftM, b.RightM = cleatEnds(p)
		b.LeftM, b.RightM = b.LeftM+way, b.RightM+way
		if b.reach(studs, h.Wall.Width.Metres(), false); len(b.StudsM) < wantedStuds {
			return false
		}
	}
	return true
}

// balancedLeft is the nearest of them.
func (h Hanging) balancedLeft() (length.Length, bool) {
	return nearest(h.Design.Place.Left, h.balancedLefts())
}

// Snap is where a group goes that is moved by hand to a left and a lower edge: to a
// place that suits it, where one is near; else to whole millimetres or sixteenths of
// an inch; and always on its wall, as far as it is no larger.
func (h Hanging) Snap(left, bottom length.Length) (atLeft, atBottom length.Length) {
	place := h.Design.Place
	lefts := append(h.balancedLefts(), h.middleLeft())
	atLeft = snapped(left, lefts, place.Left.Notation())
	atBottom = snapped(bottom, []length.Length{h.earsBottom()}, place.Height.Notation())
	return h.Onto(atLeft, atBottom)
}

// Onto is where a group goes that is moved to a left and a lower edge: there, or as
// near as it still hangs on its wall.
func (h Hanging) Onto(left, bottom length.Length) (atLeft, atBottom length.Length) {
	return onto(left, h.Wall.Width.Sub(h.Built.TotalWidth)), onto(bottom, h.Wall.Height.Sub(h.Built.TotalHeight))
}

func snapped(to length.Length, spots []length.Length, n length.Notation) length.Length {
	if spot, ok := nearest(to, spots); ok && math.Abs(spot.Sub(to).Millimetres()) <= snapMM {
		return spot
	}
	return nearestAs(to.Metres(), n)
}

// onto keeps a place between 0 and the last one on the wall.
func onto(at, last length.Length) length.Length {
	if at.Cmp(last) > 0 {
		at = last
	}
	return length.Max(at, length.Nanometres(0, at.Notation()))
}

func nearest(to length.Length, all []length.Length) (length.Length, bool) {
	best, found := length.Length{}, false
	for _, one := range all {
		if !found || math.Abs(one.Sub(to).Metres()) < math.Abs(best.Sub(to).Metres()) {
			best, found = one, true
		}
	}
	return best, found
}

// nearestAs is a number of metres as the nearest length that a tape shows.
func nearestAs(m float64, n length.Notation) length.Length {
	step := length.MM(1)
	if n == length.InInch || n == length.InFeet {
		step = length.Sixtyfourths(4)
	}
	return length.Nanometres(int64(math.Round(m/step.Metres()))*step.Nanometres(), n)
}
