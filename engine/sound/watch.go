package sound

import (
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Limits of the checks. Common practice, no source.
const (
	flatBoardNoted  = 8000 // Hz, at or below which a flat board is heard
	nearSource      = "common practice, no source: 1.5 m, and three wavelengths at the lowest frequency that is spread"
	flatBoardSource = "closed form: f = c/(2·step), all paths whole wavelengths"
	spreadSource    = "computed: correlation scattering straight on, with the model's known error at its cautious end"
)

// Place is where a group of panels hangs: the paths of its wall and of itself
// below the design.
type Place struct {
	WallPath, GroupPath string
	Wall                design.Wall
}

// WatchOuts returns what is to be said of one group.
func (v Verdict) WatchOuts(at Place) []check.WatchOut {
	all := v.tooNear(at)
	all = append(all, v.weak(at)...)
	return append(all, v.flatBoard(at)...)
}

func (v Verdict) tooNear(at Place) []check.WatchOut {
	ear := at.Wall.ListenerDistance
	if !v.TooNear(ear.Metres()) {
		return nil
	}
	field := at.WallPath + ".listenerDistance"
	return []check.WatchOut{{
		Code: "sound/too-near", Level: check.Caution,
		Args:  words.Args{"ear": ear, "near": v.Near()},
		Field: field, Source: nearSource,
		Fix: &check.Fix{Path: field, Value: v.Near().In(unitsOf(ear)).String()},
	}}
}

// unitsOf are those that a length was written in.
func unitsOf(l length.Length) length.Units {
	if n := l.Notation(); n == length.InInch || n == length.InFeet {
		return length.Inch16
	}
	return length.Metric
}

// weak says that a panel spreads nothing, or only the treble.
func (v Verdict) weak(at Place) []check.WatchOut {
	w := check.WatchOut{Level: check.Note, Field: at.GroupPath + ".heights", Source: spreadSource}
	switch {
	case v.Nothing:
		w.Code, w.Field = "sound/spreads-nothing", at.GroupPath+".pattern.kind"
		w.Args = words.Args{"to": hz(v.Between), "share": words.Percent(100 * v.Largest)}
	case v.RangeM < smallRangeM:
		w.Code, w.Source = "sound/small-range", check.CommonPractice
		w.Args = words.Args{"range": metres(v.RangeM), "least": words.About(metres(smallRangeM))}
	case v.Most == nil:
		w.Code = "sound/never-most"
	case v.TrebleOnly():
		w.Code = "sound/treble-only"
		w.Args = words.Args{"low": hz(v.Most.Low), "high": hz(v.Most.High)}
	default:
		return nil
	}
	return []check.WatchOut{w}
}

func (v Verdict) flatBoard(at Place) []check.WatchOut {
	if v.FlatHz == 0 || v.FlatHz > flatBoardNoted {
		return nil
	}
	w := check.WatchOut{
		Code: "sound/flat-board-high", Level: check.Note,
		Args:  words.Args{"hz": rounded(v.FlatHz), "step": v.Step},
		Field: at.GroupPath + ".heights", Source: flatBoardSource,
	}
	if v.FlatHz <= v.BlockHz {
		w.Code, w.Level = "sound/flat-board-low", check.Caution
		w.Args["block"] = rounded(v.BlockHz)
	}
	return []check.WatchOut{w}
}
