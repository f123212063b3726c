package bench

import (
	"math"
	"strconv"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/wood"
	"blockfield/engine/words"
)

// sanding spreads the hours of a sander in the hand. Work.Crew is not asked: it
// is who carries and hangs, and says nothing of who sands.
func (b Bill) sanding() []check.WatchOut {
	hours := b.SandingHours.Typical
	days := roundUp(hours / sandingHoursADay)
	if days <= 1 {
		return nil
	}
	return []check.WatchOut{{
		Code: "bench/sanding-time", Level: check.Caution,
		Args: words.Args{
			"hours": words.Hours(hours), "days": days,
			"limit": words.Hours(sandingHoursADay),
		},
		Source: sandingSource,
	}}
}

// BlocksAtATime is how many blocks may be glued before the first ones skin: what the
// safe part of the glue's open time is enough for, one at least. It is 0 where the
// time table does not say how long a block takes.
func (b Bill) BlocksAtATime(in design.Bench) int {
	if b.BlockSeconds <= 0 {
		return 0
	}
	return max(1, int(math.Floor(in.GlueOpenMinutes*secondsAMinute*safeOpenPct/100/b.BlockSeconds)))
}

// longRow compares the time for gluing the fullest row with the glue's.
func (b Bill) longRow(in design.Bench) []check.WatchOut {
	open := in.GlueOpenMinutes * secondsAMinute
	safe := open * safeOpenPct / 100
	if b.GlueRowSeconds <= safe {
		return nil
	}
	w := check.WatchOut{
		Code: "bench/glue-skins", Level: check.Caution,
		Args: words.Args{
			"row": roundUp(b.GlueRowSeconds), "open": int(open), "safe": int(safe),
			"blocks": b.BlocksAtATime(in),
		},
		Field: "bench.glueOpenMinutes", Source: check.CommonPractice,
	}
	if slower := roundUp(b.GlueRowSeconds * 100 / safeOpenPct / secondsAMinute); slower <= longestOpen {
		w.Fix = &check.Fix{Path: "bench.glueOpenMinutes", Value: strconv.Itoa(slower)}
	}
	return []check.WatchOut{w}
}

func coldShop(in design.Bench) []check.WatchOut {
	if in.Temperature >= coldestShopC {
		return nil
	}
	return []check.WatchOut{{
		Code: "bench/cold-shop", Level: check.Caution,
		Args:  words.Args{"now": words.Celsius(in.Temperature), "least": words.Celsius(coldestShopC)},
		Field: "bench.temperature", Source: check.CommonPractice,
		Fix: &check.Fix{Path: "bench.temperature", Value: strconv.Itoa(coldestShopC)},
	}}
}

// oilyRags is said wherever an oil is used that hardens by taking up oxygen.
// No edit clears it but another finish, which is for the maker to choose: rags
// are dangerous, not the panel.
func oilyRags(j job, at string) []check.WatchOut {
	finish, _ := wood.FindFinish(j.design.Finish.Kind)
	coats, frameCoats := j.coats()
	if !finish.OilyRags || coats+frameCoats == 0 {
		return nil
	}
	return []check.WatchOut{{
		Code: "bench/oily-rags", Level: check.Caution,
		Args:  words.Args{"finish": words.Key("choice/" + finish.Name)},
		Field: at + ".finish.kind", Source: check.CommonPractice,
	}}
}

// finishedBases is about blocks that are finished before they are glued: glue does
// not hold on a finish.
func finishedBases(j job, at string) []check.WatchOut {
	coats, _ := j.coats()
	if j.design.Finish.When != design.FinishBefore || coats == 0 {
		return nil
	}
	return []check.WatchOut{{
		Code: "bench/finished-bases", Level: check.Stop, Gate: check.Glue,
		Field: at + ".finish.when", Source: check.CommonPractice,
		Fix: &check.Fix{Path: at + ".finish.when", Value: design.FinishMasked},
	}}
}

// sawReach is about edges that are thicker than the saw cuts, the thickest of them.
// The rows may start at the top or at the bottom, and either edge may be sawn.
func (b Bill) sawReach(in design.Bench) []check.WatchOut {
	deepest, reaches := Trim{}, true // whether the saw goes through every backer alone
	for _, g := range b.Groups {
		for _, t := range g.Trims {
			sawn := t.Edge != LeftEdge && !in.BackerOversize.IsZero()
			if sawn && !t.Reached && t.Depth.Cmp(deepest.Depth) > 0 {
				deepest = t
			}
			reaches = reaches && t.Backer.Cmp(in.SawDepth) <= 0
		}
	}
	if deepest.Edge == "" {
		return nil
	}
	w := check.WatchOut{
		Code: "bench/saw-reach", Level: check.Caution,
		Args:  words.Args{"depth": deepest.Depth, "saw": in.SawDepth, "edge": words.Key("edge/" + string(deepest.Edge))},
		Field: "bench.trim", Source: check.Computed,
	}
	if in.Trim == design.TrimBlocks && reaches {
		w.Fix = &check.Fix{Path: "bench.trim", Value: design.TrimBacker}
	}
	return []check.WatchOut{w}
}
