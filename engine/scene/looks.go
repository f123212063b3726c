package scene

import "math"

// View is a place to look from.
type View string

// The views.
const (
	Front        View = "front"
	ThreeQuarter View = "three-quarter"
	Seated       View = "seated"
	CloseUp      View = "close-up"
	WholeWall    View = "whole wall"
)

// Views returns all views, the usual ones first.
func Views() []View { return []View{Front, ThreeQuarter, Seated, CloseUp, WholeWall} }

// Presets of views and lights, chosen by eye.
const (
	threeQuarterYawDeg, threeQuarterPitchDeg, threeQuarterZoom = 34, 9, 1.02
	closeYawDeg, closePitchDeg, closeZoom                      = -24, 14, 4.2
	// seatedZoom takes in what a person sees around the panels without turning.
	seatedZoom = 0.72
	wallMargin = 1.04 // of the whole wall
	// windowWarmthK is daylight as a camera set to it shows it, windowAzimuthDeg a window at the
	// left whose light comes down a little.
	windowWarmthK, windowAzimuthDeg, windowElevationDeg = 4600, 285, 38
	// The sun of a day: where it comes from and goes to by the left of the wall's
	// top, how high over the wall it stands at its ends and at noon, and its colour.
	dayFirstDeg, dayLastDeg = 280, 440
	dayLowDeg, dayHighDeg   = 9, 52
	dayWarmK, dayPaleK      = 2500, 4400
	// rakingElevationDeg shows the relief at its strongest with wells still lit.
	rakingElevationDeg = 16
)

// Look returns the scene from a view. A seated listener's ears are earM above
// the floor and distanceM before the wall's foremost blocks.
func (s Scene) Look(v View, distanceM, earM float64) Scene {
	s.Figure = false
	switch v {
	case ThreeQuarter:
		s.Camera = Camera{YawDeg: threeQuarterYawDeg, PitchDeg: threeQuarterPitchDeg, Zoom: threeQuarterZoom}
	case Seated:
		lo, hi := s.bounds()
		up, out := earM-(lo.Y+hi.Y)/2, distanceM+hi.Z/2
		s.Camera = Camera{PitchDeg: degrees(math.Atan2(up, out)), DistanceM: math.Hypot(up, out), Zoom: seatedZoom}.clamped()
	case CloseUp:
		s.Camera = Camera{YawDeg: closeYawDeg, PitchDeg: closePitchDeg, Zoom: closeZoom}
	case WholeWall:
		lo, hi := s.bounds()
		need := max(s.Wall.HeightM-(lo.Y+hi.Y)/2, (lo.Y+hi.Y)/2) * 2 * wallMargin
		s.Camera = Camera{Zoom: (hi.Y - lo.Y) * fitMargin / need}.clamped()
		s.Figure = true
	default:
		s.Camera = Camera{Zoom: 1}
	}
	return s
}

// Size is the width and height (m) of all panels together.
func (s Scene) Size() (widthM, heightM float64) {
	lo, hi := s.bounds()
	return hi.X - lo.X, hi.Y - lo.Y
}

// bounds are the corners of the box round all panels.
func (s Scene) bounds() (lo, hi vec) {
	v := newView(s, 1, 1)
	return v.lo, v.hi
}

// Window is the light of a window at the left, in place of a lamp.
func Window() Lamp {
	return Lamp{AzimuthDeg: windowAzimuthDeg, ElevationDeg: windowElevationDeg, WarmthK: windowWarmthK, SpreadDeg: WindowSpreadDeg}
}

// Day is the sun through a window at a part k (0 to 1) of a day: it comes in from
// the left, climbs over the wall and leaves at the right, warm at both ends.
func Day(k float64) Lamp {
	k = clamp(k, 0, 1)
	up := math.Sin(math.Pi * k)
	return Lamp{
		AzimuthDeg:   math.Mod(mix(dayFirstDeg, dayLastDeg, k), 360),
		ElevationDeg: mix(dayLowDeg, dayHighDeg, up),
		WarmthK:      mix(dayWarmK, dayPaleK, up),
		SpreadDeg:    LampSpreadDeg,
	}
}

// Raking is the same light from the same side, but almost along the wall.
func (l Lamp) Raking() Lamp {
	l.ElevationDeg = rakingElevationDeg
	return l
}
