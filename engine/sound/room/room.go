// Package room answers what kind of room a wall stands in: how long it rings,
// what comes back from the wall, and whether blocks are the right thing there at
// all.
//
// Reverberation is statistical (Sabine, Eyring): sound that is the same
// everywhere in a room whose surfaces absorb little. Units: metres, seconds, m/s.
// Ceilings, wet rooms and outdoors are out of scope.
package room

import (
	"math"
	"slices"
	"strings"

	"blockfield/engine/design"
)

// Room is what is computed of the room round a wall.
type Room struct {
	VolumeM3 float64
	Rings    Decay   // with what is noted of its surfaces, and without furniture
	Noted    bool    // something is noted of its surfaces
	WantedS  float64 // usual for its use, mean of 500 Hz and 1 kHz; 0: the use is not understood
	SoftPct  float64 // of all walls under soft panels of 50 mm, which brings the room there
	FreePct  float64 // of all walls that nothing is noted for
	MeanSoft float64 // mean absorption coefficient of all surfaces
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

// Round returns what is computed of the room round the first wall.
func Round(d design.Design, fieldM2, speedMS float64) Room {
	wall := d.Walls[0]
	r := Room{
		VolumeM3: volumeM3(d.Room), Noted: len(d.Room.Surfaces) > 0, FieldM2: fieldM2,
		WallM2:   wall.Width.Metres() * wall.Height.Metres(),
		FlutterM: opposite(d.Room, wall),
	}
	r.ring(d.Room, wall, speedMS)
	r.DelayMS, r.LevelDB = reflection(wall.ListenerDistance.Metres(), sourceM, speedMS)
	r.FlutterS = speedMS / (2 * r.FlutterM)
	return r
}

// ring fills in how long the room rings, and what is missing.
func (r *Room) ring(room design.Room, wall design.Wall, speedMS float64) {
	surface, free := surfaces(room, wall)
	sabine, eyring := reverberation(r.VolumeM3, speedMS, surface)
	r.Rings = Decay{sabine.middle(), eyring.middle()}
	var area, have float64
	for _, p := range surface {
		area += p.areaM2
		have += p.areaM2 * p.alpha.middle()
	}
	r.MeanSoft = have / area
	walls := areaM2(room, design.Walls)
	r.FreePct = 100 * free.areaM2 / walls
	if r.WantedS = wanted(room.Use, r.VolumeM3); r.WantedS > 0 {
		missing := decay*r.VolumeM3/(speedMS*r.WantedS) - have
		panel := linings()[design.SoftPanelLining]
		r.SoftPct = 100 * max(0, missing/(panel.middle()-free.alpha.middle())) / walls
	}
}

func volumeM3(r design.Room) float64 {
	return r.Length.Metres() * r.Width.Metres() * r.Height.Metres()
}

// areaM2 is the area of a place of the room.
func areaM2(r design.Room, place string) float64 {
	l, w, h := r.Length.Metres(), r.Width.Metres(), r.Height.Metres()
	if place == design.Walls {
		return 2 * (l + w) * h
	}
	return l * w
}

// surfaces returns the surfaces of the room. Where nothing is noted the floor is
// of wood, the ceiling of plaster and the walls of the kind of the first one: a
// guess, said as one. It also returns what is left of the walls.
func surfaces(room design.Room, wall design.Wall) (all []patch, freeWalls patch) {
	for _, place := range []string{design.Floor, design.Ceiling, design.Walls} {
		area, covered := areaM2(room, place), 0.0
		for _, s := range room.Surfaces {
			if s.Place == place {
				all = append(all, patch{area * s.Share / 100, linings()[s.Lining]})
				covered += s.Share / 100
			}
		}
		rest := patch{area * max(0, 1-covered), linings()[bare(place, wall)]}
		all = append(all, rest)
		freeWalls = rest
	}
	return all, freeWalls
}

// bare is what a place is made of where nothing is noted.
func bare(place string, wall design.Wall) string {
	switch place {
	case design.Floor:
		return design.WoodLining
	case design.Ceiling:
		return design.PlasterLining
	}
	switch wall.Kind {
	case "board on timber studs", "board on steel studs", "no fixing allowed", "unknown":
		return design.BoardLining
	case "brick", "stone with lime":
		return design.BrickLining
	default: // concrete and block
		return design.ConcreteLining
	}
}

// reflection returns by how much the reflection of a wall comes later than the
// direct sound, and its level against it, for an ear at a distance from the wall
// and a source further out on the same line: the way is longer by twice the
// distance, and spherical waves lose 6 dB with each doubling. Blocks weaken it
// further by their mirror drop.
func reflection(earM, sourceM, speedMS float64) (delayMS, levelDB float64) {
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
	case mentions(use, "speech", "teaching", "sprache", "unterricht", "vortrag"):
		return math.Max(0.32*lg-0.17, leastWantedS)
	case mentions(use, "practice", "rehearsal", "worship", "music", "choir", "üben", "probe", "gottesdienst", "musik", "chor"):
		return math.Max(0.45*lg+0.07, leastWantedS)
	case mentions(use, "listening", "mixing", "hören", "mischen"):
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

// Limits of when a room is soft enough. Common practice, no source.
const (
	muchLonger = 1.5 // times what is usual, and the room rings too long for blocks to come first
	furnished  = 0.2 // mean absorption coefficient of a room that is furnished softly, where no time is known to be usual
)

// soft reports whether enough that is soft is noted in the room.
func (r Room) soft() bool {
	switch {
	case !r.Noted:
		return false
	case r.WantedS > 0:
		return r.Rings.SabineS <= muchLonger*r.WantedS
	default:
		return r.MeanSoft >= furnished
	}
}

// ringsLong reports whether the room, by what is noted in it, rings much too long.
func (r Room) ringsLong() bool { return r.Noted && r.WantedS > 0 && !r.soft() }
