package sound

import (
	"math"
	"slices"
	"strings"

	"blockfield/engine/design"
)

// decay is ln 10⁶·4, the constant of Sabine's formula times the speed of sound:
// T = decay·V/(c·A), 0.161 s/m at 20 °C.
const decay = 24 * math.Ln10

// Patch is a part of a room's surface.
type Patch struct {
	AreaM2 float64
	Alpha  [octaves]float64
}

// Decay is how long a room rings, in seconds for 60 dB, by octave.
type Decay struct{ SabineS, EyringS [octaves]float64 }

// Reverberation returns the reverberation time of a room by W. C. Sabine,
// T = 24·ln 10·V/(c·ΣS·α), and by C. F. Eyring, with −S·ln(1 − ᾱ) for ΣS·α. The
// absorption of the air is left out: in rooms of this size it matters above
// 4 kHz only.
func Reverberation(volumeM3, speedMS float64, surface []Patch) Decay {
	var d Decay
	for i := range octaves {
		var area, absorbing float64
		for _, p := range surface {
			area += p.AreaM2
			absorbing += p.AreaM2 * p.Alpha[i]
		}
		d.SabineS[i] = decay * volumeM3 / (speedMS * absorbing)
		d.EyringS[i] = decay * volumeM3 / (speedMS * -area * math.Log(1-absorbing/area))
	}
	return d
}

// MiddleS returns the mean of 500 Hz and 1 kHz.
func MiddleS(times [octaves]float64) float64 { return (times[2] + times[3]) / 2 }

// Room is what is computed of the room round a wall, without anything in it
// that the design does not know.
type Room struct {
	VolumeM3 float64
	Bare     Decay   // with hard walls and nothing in it
	WantedS  float64 // usual for its use, mean of 500 Hz and 1 kHz; 0: the use is not understood
	SoftPct  float64 // of all walls under soft panels of 50 mm, which brings the bare room there
	DelayMS  float64 // of the wall's reflection after the sound that passes the ear, at the first wall
	LevelDB  float64 // of that reflection, of a flat wall, against the direct sound from sourceM away
	FlutterM float64 // between this wall and the one opposite
	FlutterS float64 // echoes a second between them, if both are hard
	FieldM2  float64 // of all blocks
	WallM2   float64
}

// sourceM is how far the source is taken to be from the ear, in line with the
// wall: a usual distance; invented, and said with the figure.
const sourceM = 2.0

// InRoom returns what is computed of the room round the first wall.
func InRoom(d design.Design, fieldM2, speedMS float64) Room {
	wall := d.Walls[0]
	r := Room{
		VolumeM3: volumeM3(d.Room), FieldM2: fieldM2,
		WallM2:   wall.Width.Metres() * wall.Height.Metres(),
		FlutterM: opposite(d.Room, wall),
	}
	surface := bare(d.Room, wall)
	r.Bare = Reverberation(r.VolumeM3, speedMS, surface)
	r.WantedS = wanted(d.Room.Use, r.VolumeM3)
	if r.WantedS > 0 {
		r.SoftPct = 100 * soft(r, surface, speedMS) / surface[len(surface)-1].AreaM2
	}
	r.DelayMS, r.LevelDB = Reflection(wall.ListenerDistance.Metres(), sourceM, speedMS)
	r.FlutterS = speedMS / (2 * r.FlutterM)
	return r
}

func volumeM3(r design.Room) float64 {
	return r.Length.Metres() * r.Width.Metres() * r.Height.Metres()
}

// Reflection returns by how much the reflection of a wall comes later than the
// direct sound, and its level against it, for an ear at a distance from the wall
// and a source further out on the same line: the way is longer by twice the
// distance, and spherical waves lose 6 dB with each doubling. Blocks weaken it
// further by their mirror drop.
func Reflection(earM, sourceM, speedMS float64) (delayMS, levelDB float64) {
	return 2 * earM / speedMS * 1000, -20 * math.Log10((sourceM+2*earM)/sourceM)
}

// opposite returns the distance to the wall opposite: the side of the room that
// is less like the width of this wall.
func opposite(room design.Room, wall design.Wall) float64 {
	w, l, s := wall.Width.Metres(), room.Length.Metres(), room.Width.Metres()
	if math.Abs(w-l) < math.Abs(w-s) {
		return s
	}
	return l
}

// bare returns the surfaces of the room with nothing in it: a wooden floor, a
// plastered ceiling and four walls of the kind of this one. A guess, said as
// one.
func bare(room design.Room, wall design.Wall) []Patch {
	l, w, h := room.Length.Metres(), room.Width.Metres(), room.Height.Metres()
	patch := func(name string, area float64) Patch {
		lining, ok := FindLining(name)
		if !ok {
			panic("sound: internal error: no lining " + name)
		}
		return Patch{area, lining.Alpha}
	}
	return []Patch{
		patch("wooden floor", l*w),
		patch("plaster", l*w),
		patch(liningOf(wall.Kind), 2*(l+w)*h),
	}
}

func liningOf(kind string) string {
	switch kind {
	case "board on timber studs", "board on steel studs", "no fixing allowed", "unknown":
		return "board on studs"
	case "brick", "stone with lime":
		return "brick"
	case "concrete", "block":
		return "concrete"
	default:
		return "plaster"
	}
}

// leastWantedS keeps the formulas below from asking for less than a furnished
// room has; invented.
const leastWantedS = 0.3

// wanted returns the usual reverberation time of a room in the middle of the
// range: for speech and teaching 0.32·lg V − 0.17 s, for music made in it
// 0.45·lg V + 0.07 s (DIN 18041:2016, groups A3 and A1; from memory), for
// listening 0.25·(V/100 m³)^⅓ s (ITU-R BS.1116; from memory). The use is free
// text: 0 where it has none of the words known here.
func wanted(use string, volume float64) float64 {
	lg := math.Log10(volume)
	switch {
	case mentions(use, "speech", "teaching"):
		return math.Max(0.32*lg-0.17, leastWantedS)
	case mentions(use, "practice", "rehearsal", "worship", "music", "choir"):
		return math.Max(0.45*lg+0.07, leastWantedS)
	case mentions(use, "listening", "mixing"):
		return math.Max(0.25*math.Cbrt(volume/100), leastWantedS)
	default:
		return 0
	}
}

// mentions reports whether a text has one of some words.
func mentions(text string, words ...string) bool {
	text = strings.ToLower(text)
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(text, w) })
}

// soft returns the area of soft panels on hard walls that brings the bare room
// to what is wanted, by Sabine, in the middle of the range.
func soft(r Room, surface []Patch, speedMS float64) float64 {
	panel, _ := FindLining("soft panel 50 mm")
	var have float64
	for _, p := range surface {
		have += p.AreaM2 * MiddleS(p.Alpha)
	}
	wall := MiddleS(surface[len(surface)-1].Alpha)
	missing := decay*r.VolumeM3/(speedMS*r.WantedS) - have
	return math.Max(0, missing/(MiddleS(panel.Alpha)-wall))
}
