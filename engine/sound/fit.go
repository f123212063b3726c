package sound

import (
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Fit is the answer to the first question of a job: whether blocks are the
// right thing at all. It comes of the five questions what the room is for, how
// large it is, how near the nearest ear is, what annoys, and who may see the
// wall.
type Fit struct {
	Answer  string // one of the answers below; its sentence is "sound/fit-" + Answer
	Reasons []Line
}

// The answers.
const (
	GoodFit   = "good"
	SoftFirst = "soft-first" // absorbing surfaces first
	LooksOnly = "looks"
	WrongTool = "wrong-tool"
)

// smallishRoomM3 is where soft surfaces and blocks want to be mixed. Common
// practice, no source.
const smallishRoomM3 = 40

// decorationM2 is the area of blocks below which they are heard little. Common
// practice, no source.
const decorationM2 = 1

// FitOf answers for the first wall and what hangs there.
func FitOf(d design.Design, r Room, v Verdict) Fit {
	var f Fit
	say := func(code string, args words.Args) { f.Reasons = append(f.Reasons, Line{code, args}) }
	ear := d.Walls[0].ListenerDistance
	small, near := r.VolumeM3 < smallRoomM3, v.TooNear(ear.Metres())
	if slices.ContainsFunc(d.Room.Goals, wantsBass) {
		say("sound/no-bass", nil)
	}
	if slices.ContainsFunc(d.Room.Goals, wantsQuiet) {
		say("sound/no-insulation", nil)
	}
	if near {
		say("sound/too-near", words.Args{"ear": ear, "near": v.near(ear)})
	}
	if v.Nothing || v.TrebleOnly() {
		say("sound/little-spread", nil)
	}
	size := words.Args{"length": d.Room.Length, "width": d.Room.Width, "height": d.Room.Height}
	switch {
	case small:
		say("sound/small-room", size)
	case r.VolumeM3 < smallishRoomM3:
		say("sound/smallish-room", size)
	}
	if r.FieldM2 < decorationM2 {
		say("sound/small-area", words.Args{"area": words.M2(r.FieldM2)})
	}
	if d.Room.Public {
		say("sound/public", nil)
	}
	switch {
	case onlyWrong(d.Room.Goals):
		f.Answer = WrongTool
	case near || v.Nothing || v.TrebleOnly():
		f.Answer = LooksOnly
	case small:
		f.Answer = SoftFirst
	default:
		f.Answer = GoodFit
	}
	return f
}

// onlyWrong reports whether all that is hoped for is what blocks cannot do.
func onlyWrong(goals []string) bool {
	other := func(g string) bool { return !wantsBass(g) && !wantsQuiet(g) }
	return len(goals) > 0 && !slices.ContainsFunc(goals, other)
}

// What a client hopes for is free text with suggestions; these words of it
// matter here.
func wantsBass(goal string) bool  { return mentions(goal, "boomy", "bass") }
func wantsQuiet(goal string) bool { return mentions(goal, "neighbour") }

// Lines returns what is said of the room, deeper down.
func (r Room) Lines(d design.Design) []Line {
	wall := d.Walls[0]
	between := length.Micrometres(int64(r.FlutterM * 1e6))
	lines := []Line{{"sound/ring", words.Args{
		"sabine": MiddleS(r.Bare.SabineS), "eyring": MiddleS(r.Bare.EyringS),
	}}}
	switch {
	case r.SoftPct > 100:
		lines = append(lines, Line{"sound/soft-much", words.Args{"wanted": r.WantedS}})
	case r.SoftPct > 0:
		lines = append(lines, Line{"sound/soft-missing", words.Args{"wanted": r.WantedS, "share": words.Percent(r.SoftPct)}})
	}
	return append(lines,
		Line{"sound/reflection", words.Args{
			"ear": wall.ListenerDistance, "delay": r.DelayMS, "level": -r.LevelDB, "source": length.MM(sourceM * 1000),
		}},
		Line{"sound/flutter", words.Args{"distance": between, "n": int(r.FlutterS + 0.5)}},
		Line{"sound/area", words.Args{"area": words.M2(r.FieldM2), "wall": words.M2(r.WallM2)}},
		Line{Code: "sound/out-of-scope"},
	)
}

// metres is a length of float metres in millimetres.
func metres(m float64) length.Length { return length.Micrometres(int64(m*1e6 + 0.5)) }
