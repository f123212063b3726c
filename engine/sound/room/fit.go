package room

import (
	"math"
	"slices"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/sound"
	"blockfield/engine/words"
)

// Fit is the answer to the first question of a job: whether blocks are the
// right thing at all. It comes of the five questions what the room is for, how
// large it is, how near the nearest ear is, what annoys, and who may see the
// wall, and of what is noted of the room's surfaces.
type Fit struct {
	Answer  string // one of the answers below; its sentence is "sound/fit-" + Answer
	Reasons []sound.Line
}

// The answers.
const (
	GoodFit   = "good"
	SoftFirst = "soft-first" // absorbing surfaces first
	LooksOnly = "looks"
	WrongTool = "wrong-tool"
)

// Limits of the answer. Common practice, no source.
const (
	smallM3      = 25 // below, absorbing surfaces come first
	smallishM3   = 40 // below, soft surfaces and blocks want to be mixed
	decorationM2 = 1  // of blocks; less is heard little
)

// FitOf answers for the first wall and what hangs there.
func FitOf(d design.Design, r Room, v sound.Verdict) Fit {
	near := v.TooNear(d.Walls[0].ListenerDistance.Metres())
	f := Fit{Reasons: r.reasons(d, v)}
	switch {
	case onlyWrong(d.Room.Goals):
		f.Answer = WrongTool
	case near || v.Nothing || v.TrebleOnly():
		f.Answer = LooksOnly
	case r.tooSmall() || r.ringsLong():
		f.Answer = SoftFirst
	default:
		f.Answer = GoodFit
	}
	return f
}

// tooSmall reports whether the first money of such a room belongs to soft
// surfaces.
func (r Room) tooSmall() bool { return r.VolumeM3 < smallM3 && !r.soft() }

func (r Room) reasons(d design.Design, v sound.Verdict) []sound.Line {
	var all []sound.Line
	say := func(when bool, code string, args words.Args) {
		if when {
			all = append(all, sound.Line{Code: code, Args: args})
		}
	}
	ear := d.Walls[0].ListenerDistance
	size := words.Args{"length": d.Room.Length, "width": d.Room.Width, "height": d.Room.Height}
	say(slices.ContainsFunc(d.Room.Goals, wantsBass), "sound/no-bass", nil)
	say(slices.ContainsFunc(d.Room.Goals, wantsQuiet), "sound/no-insulation", nil)
	say(v.TooNear(ear.Metres()), "sound/too-near", words.Args{"ear": ear, "near": v.Near()})
	say(v.Nothing || v.TrebleOnly(), "sound/little-spread", nil)
	say(r.ringsLong(), "sound/rings-long", words.Args{"sabine": r.Rings.SabineS, "wanted": r.WantedS})
	say(r.tooSmall(), "sound/small-room", size)
	say(!r.soft() && !r.ringsLong() && r.VolumeM3 >= smallM3 && r.VolumeM3 < smallishM3, "sound/smallish-room", size)
	say(!r.Noted && r.VolumeM3 >= smallishM3, "sound/if-it-rings", nil)
	say(r.FieldM2 < decorationM2, "sound/small-area", words.Args{"area": words.M2(r.FieldM2)})
	say(d.Room.Public, "sound/public", nil)
	return all
}

// onlyWrong reports whether all that is hoped for is what blocks cannot do.
func onlyWrong(goals []string) bool {
	other := func(g string) bool { return !wantsBass(g) && !wantsQuiet(g) }
	return len(goals) > 0 && !slices.ContainsFunc(goals, other)
}

// What a client hopes for is free text with suggestions; these words of it
// matter here.
func wantsBass(goal string) bool  { return mentions(goal, "boomy", "bass", "dröhn") }
func wantsQuiet(goal string) bool { return mentions(goal, "neighbour", "nachbar") }

// Lines returns what is said of the room, deeper down.
func (r Room) Lines(d design.Design) []sound.Line {
	between := length.Micrometres(int64(r.FlutterM * 1e6))
	return append(r.ringing(),
		sound.Line{Code: "sound/reflection", Args: words.Args{
			"ear": d.Walls[0].ListenerDistance, "delay": whole(r.DelayMS), "level": whole(-r.LevelDB), "source": words.About(length.MM(sourceM * 1000)),
		}},
		sound.Line{Code: "sound/flutter", Args: words.Args{"distance": between, "n": whole(r.FlutterS)}},
		sound.Line{Code: "sound/area", Args: words.Args{"area": words.M2(r.FieldM2), "wall": words.M2(r.WallM2)}},
		sound.Line{Code: "sound/out-of-scope"},
	)
}

// whole rounds a figure that is worth no more.
func whole(x float64) int { return int(math.Round(x)) }

// tenths is a figure as it is said, in tenths.
func tenths(x float64) int { return whole(10 * x) }

// ringing says how long the room rings, and what is missing.
func (r Room) ringing() []sound.Line {
	times := words.Phrase{Key: "sound/times", Args: words.Args{"sabine": r.Rings.SabineS, "eyring": r.Rings.EyringS}}
	if tenths(r.Rings.SabineS) == tenths(r.Rings.EyringS) {
		times.Key = "sound/times-alike"
	}
	rings := sound.Line{Code: "sound/ring", Args: words.Args{"times": times}}
	if r.Noted {
		rings.Code = "sound/ring-noted"
	}
	wanted := sound.Line{Args: words.Args{"wanted": r.WantedS, "share": words.Percent(r.SoftPct)}}
	switch {
	case r.WantedS == 0:
		wanted.Code = "sound/use-unknown"
	case r.SoftPct > r.FreePct:
		wanted.Code = "sound/soft-much"
	case r.SoftPct > 0 && r.Noted:
		wanted.Code = "sound/soft-more"
	case r.SoftPct > 0:
		wanted.Code = "sound/soft-missing"
	default:
		wanted.Code = "sound/soft-enough"
	}
	return []sound.Line{rings, wanted}
}

// WatchOuts returns what is to be said of the room and of what is hoped for.
func (r Room) WatchOuts(room design.Room) []check.WatchOut {
	var all []check.WatchOut
	hope := func(wants func(goal string) bool, code string) {
		if slices.ContainsFunc(room.Goals, wants) {
			all = append(all, check.WatchOut{
				Code: code, Level: check.Note, Field: "room.goals", Source: check.CommonPractice,
			})
		}
	}
	hope(wantsBass, "sound/no-bass")
	hope(wantsQuiet, "sound/no-insulation")
	if r.tooSmall() {
		all = append(all, check.WatchOut{
			Code: "sound/small-room", Level: check.Caution,
			Args:  words.Args{"length": room.Length, "width": room.Width, "height": room.Height},
			Field: "room.surfaces", Source: check.CommonPractice,
		})
	}
	return all
}
