package moisture

import (
	"math"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Handbook is where movement comes from.
const Handbook = "Wood Handbook FPL-GTR-190, equilibrium moisture of chapter 4, movement of chapter 13 and table 13-5; the limit: common practice, no source"

// WatchOuts returns what is to be said of the moisture of one group's blocks. The
// path is that of the group, below the design.
func WatchOuts(room design.Room, bench design.Bench, g design.Group, path string) []check.WatchOut {
	m, ok := Of(room, bench, g)
	if !ok {
		return nil
	}
	all := m.growth(room, bench, g, path)
	return append(all, m.frameGap(g, path)...)
}

// Stock compares the sticks with the room. They are of one moisture for the whole
// job.
func Stock(room design.Room, bench design.Bench) []check.WatchOut {
	m := Movement{Room: RangeOf(room), StockPct: bench.StockMoisture}
	if math.Abs(printed(m.OffPoints())) <= offPoints {
		return nil
	}
	return []check.WatchOut{{
		Code: "moisture/stock", Level: check.Caution, Gate: check.Cut,
		Args: words.Args{
			"stock": points(m.StockPct), "middle": points(m.Room.Middle()),
			"low": points(m.Room.Low), "high": points(m.Room.High), "days": m.Settling().Plan,
		},
		Field: "bench.stockMoisture", Source: Handbook,
	}}
}

// points writes a moisture to a tenth.
func points(pct float64) words.Fixed { return words.Fixed{Value: pct, Places: 1, Unit: "%"} }

// tenth is a size as it is printed.
func tenth(mm float64) length.Length { return length.Micrometres(int64(math.Round(mm*10)) * 100) }

// growth is said where the joints leave less room than the field wants.
func (m Movement) growth(room design.Room, bench design.Bench, g design.Group, path string) []check.WatchOut {
	if printed(m.GrowthMM) <= printed(m.SlackMM) {
		return nil
	}
	w := check.WatchOut{
		Code: "moisture/growth-beyond", Level: check.Caution, Gate: check.Buy,
		Args: words.Args{
			"stock": points(m.StockPct), "high": points(m.Room.High), "side": tenth(m.SideMM),
			"growth": tenth(m.GrowthMM), "slack": tenth(m.SlackMM),
		},
		Field: path + ".block.slack", Source: Handbook,
	}
	if slack, ok := wider(room, bench, g); ok {
		w.Code = "moisture/growth"
		w.Args["each"] = words.Exact(slack) // finer than what inches are rounded to
		w.Fix = &check.Fix{Path: w.Field, Value: slack.String()}
	}
	return []check.WatchOut{w}
}

// Slack that a form takes, and the steps in which it is offered.
const (
	mostSlackMM  = 1.5
	slackStepsMM = 20 // in a millimetre: 0.05 mm
)

// wider is the smallest slack with which the joints take the growth up. Another
// slack is another pitch, and may be another number of blocks.
func wider(room design.Room, bench design.Bench, g design.Group) (length.Length, bool) {
	for step := 1; step <= mostSlackMM*slackStepsMM; step++ {
		other := g
		other.Block.Slack = length.Micrometres(int64(step) * 1000 / slackStepsMM)
		other.Columns, other.Rows = 0, 0 // as an edit of the slack does
		m, _ := Of(room, bench, other)
		if other.Block.Slack.Cmp(g.Block.Slack) > 0 && printed(m.GrowthMM) <= printed(m.SlackMM) {
			return other.Block.Slack, true
		}
	}
	return length.Length{}, false
}

// frameGap is said where the frame leaves too little air.
func (m Movement) frameGap(g design.Group, path string) []check.WatchOut {
	need := m.FrameGapMM()
	if !g.Framed() || printed(g.Frame.Gap.Millimetres()) >= printed(need) {
		return nil
	}
	w := check.WatchOut{
		Code: "moisture/frame-gap", Level: check.Caution,
		Args: words.Args{
			"gap": g.Frame.Gap, "need": tenth(need), "growth": tenth(m.GrowthMM), "slack": tenth(m.SlackMM),
		},
		Field: path + ".frame.gap", Source: Handbook,
	}
	const mostGapMM, halves = 30, 2
	if wide := math.Ceil(printed(need)*halves) / halves; wide <= mostGapMM {
		w.Fix = &check.Fix{Path: path + ".frame.gap", Value: length.Micrometres(int64(wide * 1000)).String()}
	}
	return []check.WatchOut{w}
}
