package wall

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"blockfield/engine/check"
	"blockfield/engine/length"
)

// What is tried to make a strip hold. Common practice.
const (
	balanceMM    = 300 // no farther is a panel moved to lie better on its studs
	flattestDeg  = 30  // of a bevel
	bevelStepDeg = 5
)

// toTwoStuds is the shortest way along the wall after which every panel reaches two
// studs and their screws hold; or else after which it reaches two; or else a rail,
// where that does. It is nil where nothing does.
func (h Hanging) toTwoStuds() *check.Fix {
	holds := func(moved Hung) bool { return Hang(moved).holds() }
	if fix := h.shortest(h.ways(), holds); fix != nil {
		return fix
	}
	reaches := func(moved Hung) bool { return Hang(moved).FewestStuds() >= wantedStuds }
	if fix := h.shortest(h.ways(), reaches); fix != nil {
		return fix
	}
	return h.railed(reaches)
}

// toHold is a small change with which the strips hold that do not: another screw, a
// place that shares the load better, a flatter bevel or a rail. It is nil where
// none does.
func (h Hanging) toHold() *check.Fix {
	holds := func(changed Hung) bool { return Hang(changed).holds() }
	if !h.Wall.Fixing.Diameter.IsZero() {
		any := h.Hung
		any.Wall.Fixing.Diameter = length.Length{}
		if holds(any) {
			return &check.Fix{Path: h.wallField("fixing.diameter"), Value: any.Wall.Fixing.Diameter.String()}
		}
	}
	if fix := h.shortest(h.ways(), holds); fix != nil {
		return fix
	}
	for bevel := h.Design.Cleat.Bevel - bevelStepDeg; bevel >= flattestDeg; bevel -= bevelStepDeg {
		flat := h.Hung
		flat.Design.Cleat.Bevel = bevel
		if holds(flat) {
			return &check.Fix{Path: h.Path + ".cleat.bevel", Value: strconv.FormatFloat(bevel, 'f', -1, 64)}
		}
	}
	return h.railed(holds)
}

// holds reports whether every strip is counted and holds.
func (h Hanging) holds() bool {
	s, ok := h.Worst()
	return ok && s.Enough() && h.FewestStuds() >= wantedStuds
}

// railed is a rail, where it makes something true.
func (h Hanging) railed(works func(Hung) bool) *check.Fix {
	rail := h.Hung
	rail.Wall.Rail = true
	if h.Wall.Rail || !works(rail) {
		return nil
	}
	return &check.Fix{Path: h.wallField("rail"), Value: "yes"}
}

// ways are the ways, not too long, that bring an end of a cleat just far enough beyond
// a stud, or its middle to a stud or between two.
func (h Hanging) ways() []float64 {
	const end = studEndMM / millimetresInM
	ways := h.balances()
	for _, p := range h.Built.Panels {
		left, right := cleatEnds(p)
		for _, x := range h.studs() {
			ways = append(ways, x+end-right, x-end-left)
		}
	}
	return slices.DeleteFunc(ways, func(m float64) bool { return math.Abs(m) > balanceMM/millimetresInM })
}

// balances are the ways that bring the middle of a panel to a stud or between two.
func (h Hanging) balances() []float64 {
	var ways []float64
	studs := h.studs()
	for _, p := range h.Built.Panels {
		left, right := cleatEnds(p)
		middle := (left + right) / 2
		for i, x := range studs {
			ways = append(ways, x-middle)
			if i > 0 {
				ways = append(ways, (x+studs[i-1])/2-middle)
			}
		}
	}
	return ways
}

// shortest is the shortest of some ways along the wall, in metres, after which the
// group still hangs on it and something is true. Each is rounded away from where
// the group is, to what a tape shows.
func (h Hanging) shortest(ways []float64, works func(Hung) bool) *check.Fix {
	slices.SortFunc(ways, func(a, b float64) int { return cmp.Compare(math.Abs(a), math.Abs(b)) })
	place := h.Design.Place.Left
	for _, m := range ways {
		way := awayAs(m, place.Notation())
		if !h.hangsAt(h.Built.Left.Add(way)) {
			continue
		}
		if works(h.movedBy(way)) {
			return &check.Fix{Path: h.Path + ".place.left", Value: place.Add(way).String()}
		}
	}
	return nil
}

// movedBy is the group so much farther along its wall.
func (h Hung) movedBy(way length.Length) Hung {
	h.Design.Place.Left = h.Design.Place.Left.Add(way)
	h.Built.Left = h.Built.Left.Add(way)
	h.Built.Panels = slices.Clone(h.Built.Panels)
	for i := range h.Built.Panels {
		h.Built.Panels[i].Left = h.Built.Panels[i].Left.Add(way)
	}
	return h
}

// awayAs is a number of metres as a length that a tape shows, no shorter than it;
// the micrometre keeps dust of floats from making it so.
func awayAs(m float64, n length.Notation) length.Length {
	const um = 1e6
	l := length.Micrometres(int64(math.Ceil(math.Abs(m)*um)) + 1).CeilAs(n)
	if m < 0 {
		return length.Nanometres(0, n).Sub(l)
	}
	return l
}
