package measure

import (
	"math"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Known is what drift is forecast from: the sticks of a card, or habit.
type Known struct {
	ErrorMM  float64 // of one block's size against the design's
	SpreadMM float64
	Measured bool
}

// KnownOf returns what a card says of blocks of a size. A card of fewer than ten
// sticks says too little: the usual spread is taken, as if nobody had measured.
func KnownOf(s Section, size length.Length) Known {
	if !s.Whole() {
		return Known{SpreadMM: AssumedSpreadMM}
	}
	return Known{ErrorMM: s.Mean.Sub(size).Millimetres(), SpreadMM: s.SpreadMM, Measured: true}
}

// Longest is the drift of the longer rows of a group's fields, across or up.
func Longest(g design.Group, k Known) Drift {
	columns, rows := g.Grid()
	return Forecast(max(columns, rows), k.ErrorMM, k.SpreadMM)
}

// WatchOuts says where a row may grow too long or too short for the air in its
// frame. Without a frame there is nothing to miss. The path is that of the group,
// below the design.
func WatchOuts(g design.Group, k Known, path string) []check.WatchOut {
	if fits(g, k) {
		return nil
	}
	d := Longest(g, k)
	basis := words.Key("measure/basis-assumed")
	if k.Measured {
		basis = "measure/basis-card"
	}
	w := check.WatchOut{
		Code: "measure/drift", Level: check.Caution, Gate: check.Cut,
		Args: words.Args{
			"n": d.Blocks, "off": tenth(d.WorstMM()), "air": air(g), "basis": basis,
		},
		Field: path + ".frame.gap", Source: driftSource,
	}
	w.Fix = mend(g, k, path)
	return []check.WatchOut{w}
}

// fits reports whether the longest row, as far off as it may be, ends within the
// air that its frame leaves at both sides; as both are printed.
func fits(g design.Group, k Known) bool {
	return !g.Framed() || printed(Longest(g, k).WorstMM()) <= printed(air(g).Millimetres())
}

// air is what a frame leaves at both sides together.
func air(g design.Group) length.Length {
	const sides = 2
	return g.Frame.Gap.Times(sides)
}

const driftSource = "sum of independent errors, two standard deviations; the limit: common practice, no source"

// mend is the air that lets the rows into their frame. Where the blocks are off on
// average there is none to offer: their size is to be corrected first, with the number
// of blocks kept, which no single edit does.
func mend(g design.Group, k Known, path string) *check.Fix {
	centred := k
	centred.ErrorMM = 0
	if fits(g, centred) {
		return nil
	}
	const mostGapMM, halves = 30, 2
	gap := math.Ceil(printed(Longest(g, k).WorstMM()/2)*halves) / halves
	if gap > mostGapMM {
		return nil
	}
	return &check.Fix{Path: path + ".frame.gap", Value: length.Micrometres(int64(gap * 1000)).String()}
}

func printed(mm float64) float64 { return math.Round(mm*10) / 10 }

func tenth(mm float64) length.Length { return length.Micrometres(int64(math.Round(mm*10)) * 100) }
