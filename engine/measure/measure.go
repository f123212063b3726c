// Package measure works out what a calliper says of the sticks for a field: the
// mean and the spread of their section, how far a row of blocks may end from
// where it should, and where the rows should lie on the way there.
//
// A section is measured on ten sticks, width and thickness of each. Both count
// alike, because a cut block may be turned. The spread is the sample standard
// deviation, with n − 1. With a mean error μ of one block and a spread σ, a row
// of n blocks ends n·μ ± 2σ√n from its drawn length: errors of single blocks add
// up as squares, and two spreads hold about 95 of 100 rows. That takes the blocks
// of a row from many sticks: out of one stick all are wrong by the same amount, so
// bins are mixed. The mean itself is known to about ± 2σ/√readings only, which is
// why rows are measured while they are laid.
//
// Lengths are exact; spreads and errors are millimetres.
package measure

import (
	"math"

	"blockfield/engine/length"
)

// Sticks is how many are measured before the first cut. Common practice, no
// source.
const Sticks = 10

// AssumedSpreadMM is the spread of planed sticks that nobody has measured.
// Common practice, no source.
const AssumedSpreadMM = 0.25

// sides of a stick that are measured.
const sides = 2

// Stick is what a calliper says of one stick.
type Stick struct{ Width, Thickness length.Length }

// Section is what all sticks say together.
type Section struct {
	Sticks      int
	Mean        length.Length // of widths and thicknesses, to the step of a calliper
	SpreadMM    float64
	WithinMM    float64       // the mean of all sticks lies as near to Mean, in 95 of 100 cases
	WidthMM     float64       // mean of the widths
	ThicknessMM float64       // mean of the thicknesses
	Least, Most length.Length // of all readings
}

// Whole reports whether enough sticks were measured.
func (s Section) Whole() bool { return s.Sticks >= Sticks }

// OfReadings returns the section out of two lists, in the order of the sticks. Where one
// has fewer readings the sticks behind them were measured on one side only, and are left
// out.
func OfReadings(widths, thicknesses []length.Length) (Section, bool) {
	var sticks []Stick
	for i := range min(len(widths), len(thicknesses)) {
		sticks = append(sticks, Stick{widths[i], thicknesses[i]})
	}
	return Of(sticks)
}

// Of returns the section that sticks have; false for none.
func Of(sticks []Stick) (Section, bool) {
	if len(sticks) == 0 {
		return Section{}, false
	}
	first := sticks[0].Width
	s := Section{Sticks: len(sticks), Least: first, Most: first}
	// Sums of differences from the first reading stay small, so that nothing is
	// lost to rounding: readings are whole nanometres.
	var width, thickness int64
	for _, stick := range sticks {
		width += stick.Width.Sub(first).Nanometres()
		thickness += stick.Thickness.Sub(first).Nanometres()
		for _, l := range []length.Length{stick.Width, stick.Thickness} {
			if l.Cmp(s.Least) < 0 {
				s.Least = l
			}
			s.Most = length.Max(s.Most, l)
		}
	}
	n := float64(len(sticks))
	readings := n * sides
	offNM := float64(width+thickness) / readings
	s.Mean = toStep(float64(first.Nanometres())+offNM, first.Notation())
	s.WidthMM = first.Millimetres() + float64(width)/n/nmPerMM
	s.ThicknessMM = first.Millimetres() + float64(thickness)/n/nmPerMM
	s.SpreadMM = spread(sticks, first, offNM)
	s.WithinMM = spreads * s.SpreadMM / math.Sqrt(readings)
	return s, true
}

// spread is the sample standard deviation about a mean that lies offNM from the
// reading first.
func spread(sticks []Stick, first length.Length, offNM float64) float64 {
	var squares float64
	for _, stick := range sticks {
		for _, l := range []length.Length{stick.Width, stick.Thickness} {
			d := (float64(l.Sub(first).Nanometres()) - offNM) / nmPerMM
			squares += float64(d * d) // not fused: the same on every processor
		}
	}
	return math.Sqrt(squares / float64(len(sticks)*sides-1))
}

const nmPerMM = 1e6

// Steps of a usual calliper.
const (
	stepNM     = 10_000 // 0.01 mm
	inchStepNM = 25_400 // 0.001 in
)

// toStep writes a mean as a calliper would show it.
func toStep(nm float64, n length.Notation) length.Length {
	step := float64(stepNM)
	if n == length.InInch || n == length.InFeet {
		step = inchStepNM
	}
	return length.Nanometres(int64(math.Round(nm/step)*step), n)
}

// spreads on either side hold about 95 of 100 rows of a normal distribution.
const spreads = 2

// Drift is how far the end of a row may lie from where it is drawn, in mm.
type Drift struct {
	Blocks int
	MeanMM float64 // n·μ, positive where the row ends long
	BandMM float64 // 2σ√n, on either side of it
}

// Forecast returns the drift of a row of blocks, each of which is wrong by
// errorMM on average, with a spread.
func Forecast(blocks int, errorMM, spreadMM float64) Drift {
	n := float64(blocks)
	return Drift{Blocks: blocks, MeanMM: float64(n * errorMM), BandMM: float64(spreads * spreadMM * math.Sqrt(n))}
}

// WorstMM is the drift that is reckoned with, long or short.
func (d Drift) WorstMM() float64 { return math.Abs(d.MeanMM) + d.BandMM }

// Every is after how many rows the field is measured, and Tolerance how far it
// may be off then. Common practice, no source.
const (
	Every       = 5
	ToleranceMM = 1
)

// Mark is what should be measured once a row is laid.
type Mark struct {
	Row int // from 1, counted from the start edge
	// Distance is from the start edge to the far face of the row. The first row
	// touches the edge, so it is one slack short of a whole number of pitches.
	Distance length.Length
}

// Marks returns where to measure in a field of rows: each fifth row, and the last.
func Marks(rows int, size, slack length.Length) []Mark {
	var all []Mark
	for row := 1; row <= rows; row++ {
		if row%Every == 0 || row == rows {
			all = append(all, Mark{row, Reach(row, size, slack)})
		}
	}
	return all
}

// Reach is the distance from the start edge to the far face of a row.
func Reach(row int, size, slack length.Length) length.Length {
	return size.Add(slack).Times(row).Sub(slack)
}
