// Package tools says what the tools that somebody has at hand mean for a job: how short
// a block may be cut with them, how much longer the work takes, what else will do, and
// the sizes of the jigs that make it safe.
//
// The names of the tools are those of design.Tools. Where nobody has ticked any, nothing
// is known: the work is reckoned with hand tools, as it is for every first panel.
// Limits are common practice without a source, factors are invented, as each says.
package tools

import (
	"math"
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/length"
)

// Tools that a rule knows by name.
const (
	mitreSaw  = "mitre saw"
	mitreBox  = "mitre box"
	stopBlock = "stop block"
	carrier   = "clamped carrier"
	benchSaw  = "bench saw"
	sander    = "sander"
)

// How much longer a home builder takes than a workshop: a first panel alone (the trade's
// 1.35), and hand tools for cutting and for sanding, which together make its 1.6.
// Invented.
const (
	firstPanel = 1.35
	byHand     = 0.125 // for each of cutting and sanding without a machine
	noStop     = 0.05  // every block marked by hand
)

// Shortest blocks. Common practice, no source.
const (
	shortByHandMM    = 25 // at a machine, with fingers
	shortInCarrierMM = 12 // at a machine, in a clamped carrier
	shortInBoxMM     = 15 // with a hand saw in a mitre box, clamped
)

// Advice is what the tools at hand mean.
type Advice struct {
	Known    bool            // something was ticked
	Factor   float64         // on a workshop's hours
	Cut      string          // how blocks are cut: the key of its words
	Least    length.Length   // shortest block that way; 0: no saw at hand
	TooShort []length.Length // heights of the job below it, rising
	Cleat    string          // how the bevelled strips are had: the key of its words
	Missing  []string        // tools that every step needs and that nobody has ticked
}

// must are the tools without which no panel is made well; any of a row will do.
func must() [][]string {
	return [][]string{
		{mitreSaw, mitreBox, benchSaw}, {stopBlock}, {"square"}, {"straight-edges"}, {sander}, {"drill"}, {"level"},
		{"stud finder"}, {"bathroom scale"},
	}
}

// Advise says what tools mean for the heights of a job. heights are those that are cut,
// in any order; 0 is none.
func Advise(at []string, heights []length.Length) Advice {
	has := func(name string) bool { return slices.Contains(at, name) }
	a := Advice{Known: len(at) > 0, Factor: firstPanel + 2*byHand, Cut: "tools/cut-unknown", Cleat: "tools/cleat-buy"}
	if !a.Known {
		return a
	}
	a.Factor = firstPanel
	a.Cut, a.Least = cutting(has)
	if !has(mitreSaw) && !has(benchSaw) {
		a.Factor += byHand
	}
	if !has(sander) {
		a.Factor += byHand
	}
	if !has(stopBlock) {
		a.Factor += noStop
	}
	a.Factor = math.Round(a.Factor*100) / 100
	if has(benchSaw) {
		a.Cleat = "tools/cleat-rip"
	}
	for _, h := range heights {
		if !h.IsZero() && !a.Least.IsZero() && h.Cmp(a.Least) < 0 {
			a.TooShort = append(a.TooShort, h)
		}
	}
	slices.SortFunc(a.TooShort, length.Length.Cmp)
	a.TooShort = slices.CompactFunc(a.TooShort, length.Length.Same)
	for _, any := range must() {
		if !slices.ContainsFunc(any, has) {
			a.Missing = append(a.Missing, any[0])
		}
	}
	return a
}

// cutting is how blocks are cut, and how short they may be.
func cutting(has func(string) bool) (string, length.Length) {
	machine := has(mitreSaw) || has(benchSaw)
	switch {
	case machine && has(carrier):
		return "tools/cut-carrier", length.MM(shortInCarrierMM)
	case machine && has(mitreBox):
		return "tools/cut-machine-box", length.MM(shortInBoxMM)
	case machine:
		return "tools/cut-machine", length.MM(shortByHandMM)
	case has(mitreBox):
		return "tools/cut-box", length.MM(shortInBoxMM)
	default:
		return "tools/cut-none", length.Length{}
	}
}

// Jigs are the sizes of what is made before the first block is cut.
type Jigs struct {
	Stops         []length.Length // from the blade to the stop, the longest first
	CarrierLength length.Length   // of the clamped carrier
	CarrierWidth  length.Length
	FenceWidth    length.Length // of the start fence, along the first row
	FenceHeight   length.Length // up the side of the field
	Diagonal      length.Length // from end to end of its arms when they are square
}

// Sizes of jigs. Common practice, no source.
const (
	handsAwayMM = 150 // from a hand to the blade
	cheeksMM    = 60  // of the carrier beside the block, for its clamp
)

// JigsFor returns the jigs of a group of panels.
func JigsFor(g design.Group) Jigs {
	width, height := g.Field()
	j := Jigs{
		CarrierLength: length.MM(2 * handsAwayMM).Add(g.Heights[len(g.Heights)-1]),
		CarrierWidth:  g.Block.Size.Add(length.MM(cheeksMM)),
		FenceWidth:    width, FenceHeight: height,
	}
	for _, h := range slices.Backward(g.Heights) {
		if !h.IsZero() {
			j.Stops = append(j.Stops, h)
		}
	}
	const um = 1000
	j.Diagonal = length.Micrometres(int64(math.Round(math.Hypot(width.Millimetres(), height.Millimetres()) * um)))
	return j
}
