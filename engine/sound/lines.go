package sound

import (
	"math"

	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Line is one sentence: its code, which is its key in package words, and its
// arguments.
type Line struct {
	Code string
	Args words.Args
}

// trebleOnlyAbove, 3150 Hz, is the band above which what a panel spreads is
// treble only. Common practice, no source.
const trebleOnlyAbove Band = 5

// smallRangeM is the range of heights below which only the treble is spread.
// Common practice, no source.
const smallRangeM = 0.040

// TrebleOnly reports whether a client should choose the panel for its looks.
func (v Verdict) TrebleOnly() bool {
	return v.RangeM < smallRangeM || v.Most == nil || v.Most.High > trebleOnlyAbove
}

// TooNear reports whether a listener at a distance hears single blocks.
func (v Verdict) TooNear(distanceM float64) bool { return distanceM < v.NearM }

// Client returns the one sentence for a client whose nearest ear is at a
// distance.
func (v Verdict) Client(ear length.Length) Line {
	switch {
	case v.Nothing:
		return Line{Code: "sound/client-nothing"}
	case v.TooNear(ear.Metres()):
		return Line{"sound/client-near", words.Args{"ear": ear, "near": v.Near()}}
	case v.TrebleOnly():
		return Line{Code: "sound/client-looks"}
	default:
		return Line{"sound/client-fits", words.Args{"low": hz(v.Most.Low), "high": hz(v.Most.High)}}
	}
}

// Near is how near an ear may be.
func (v Verdict) Near() words.NoLess { return words.NoLess(metres(v.NearM)) }

// metres is a length of float metres in millimetres.
func metres(m float64) length.Length { return length.Micrometres(int64(math.Round(m * 1e6))) }

// Maker returns the sentences for the workshop, the main ones first.
func (v Verdict) Maker() []Line {
	var all []Line
	say := func(code string, args words.Args) { all = append(all, Line{code, args}) }
	if v.Nothing {
		say("sound/nothing", words.Args{"to": hz(v.Between), "share": words.Percent(100 * v.Largest)})
	} else {
		all = append(all, v.spread()...)
	}
	say("sound/block", words.Args{"hz": rounded(v.BlockHz)})
	if v.ClumpHz > 0 {
		say("sound/clump", words.Args{"hz": rounded(v.ClumpHz)})
	}
	switch {
	case v.FlatHz > 0:
		say("sound/flat-board", words.Args{"hz": rounded(v.FlatHz), "step": v.Step})
	case v.Dip != nil:
		say("sound/dip", words.Args{"hz": hz(*v.Dip)})
	}
	if v.RepeatM > 0 {
		say("sound/repeats", words.Args{"n": v.Repeats, "repeat": words.About(metres(v.RepeatM))})
	}
	if v.Alike > likeNeighbour*v.Chance {
		say("sound/alike", words.Args{"share": words.Percent(100 * v.Alike)})
	}
	say("sound/sit", words.Args{"near": v.Near()})
	say("sound/not", nil)
	say("sound/calculated", nil)
	return all
}

// spread says from where on half and most of the energy are spread.
func (v Verdict) spread() []Line {
	switch {
	case v.Half == nil:
		return []Line{{"sound/never-half", words.Args{"share": words.Percent(100 * v.Largest), "to": hz(v.Between)}}}
	case v.Most == nil:
		return []Line{{"sound/half", words.Args{"low": hz(v.Half.Low), "high": hz(v.Half.High)}}}
	case *v.Half == *v.Most:
		return []Line{{"sound/half-and-most", words.Args{"low": hz(v.Most.Low), "high": hz(v.Most.High)}}}
	default:
		return []Line{
			{"sound/half", words.Args{"low": hz(v.Half.Low), "high": hz(v.Half.High)}},
			{"sound/most", words.Args{"low": hz(v.Most.Low), "high": hz(v.Most.High)}},
		}
	}
}

func hz(b Band) words.Hz { return words.Hz(b.NominalHz()) }

// rounded writes a frequency to two digits: more would be false precision.
func rounded(f float64) words.Hz {
	if f <= 0 {
		return 0
	}
	step := math.Pow(10, math.Floor(math.Log10(f))-1)
	return words.Hz(math.Round(f/step) * step)
}
