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
	// Rear and Apart show one panel: from behind, and in its parts.
	Rear  View = "rear"
	Apart View = "pulled apart"
)

// Views returns all views, the usual ones first.
func Views() []View { return []View{Front, ThreeQuarter, Seated, CloseUp, WholeWall, Rear, Apart} }

// Alone reports whether a view has one panel in other parts than it hangs on the wall.
func (v View) Alone() bool { return v == Rear || v == Apart }

// Presets of views and lights, chosen by eye.
const (
	threeQuarterYawDeg, threeQuarterPitchDeg = 34, 9
	closeYawDeg, closePitchDeg, closeZoom    = -24, 14, 4.2
	rearYawDeg, rearPitchDeg                 = -18, 14
	apartYawDeg, apartPitchDeg               = 50, 17
	aloneZoom                                = 0.92 // leaves room for what is said above
	// filled is how much of the picture's sides a panel seen from the side may fill.
	filled = 0.92
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
	// A person who walks past: height of the eyes, how near by the distance of a calm
	// picture, how far to the sides, and how large the panels are in passing.
	walkEyeM, walkNear, walkYawDeg, walkZoom = 1.62, 0.7, 58, 0.9
	// rakingElevationDeg shows the relief at its strongest with wells still lit.
	rakingElevationDeg = 16
)

// Viewer is who looks and at what. The zero Viewer has a picture of unknown size.
type Viewer struct {
	// A seated listener's ears are EarM above the floor and DistanceM before the
	// wall's foremost blocks.
	DistanceM, EarM float64
	// PictureM is the height of the picture as it lies before the eyes, and Shape its
	// width by its height; 0: nobody knows.
	PictureM, Shape float64
}

// Look returns the scene from a view.
func (s Scene) Look(v View, by Viewer) Scene {
	s.Figure = false
	switch v {
	case ThreeQuarter:
		s.Camera = Camera{YawDeg: threeQuarterYawDeg, PitchDeg: threeQuarterPitchDeg, Zoom: 1}
		s.Camera.Zoom = clamp(s.filling(by.Shape), MinZoom, MaxZoom)
	case Rear:
		s.Camera = Camera{YawDeg: rearYawDeg, PitchDeg: rearPitchDeg, Zoom: 1}
		s.Camera.Zoom = clamp(aloneZoom*s.filling(by.Shape), MinZoom, MaxZoom)
	case Apart:
		s.Camera = Camera{YawDeg: apartYawDeg, PitchDeg: apartPitchDeg, Zoom: 1}
		s.Camera.Zoom = clamp(aloneZoom*s.filling(by.Shape), MinZoom, MaxZoom)
	case Seated:
		lo, hi := s.bounds()
		up, out := by.EarM-(lo.Y+hi.Y)/2, by.DistanceM+hi.Z/2
		s.Camera = Camera{PitchDeg: degrees(math.Atan2(up, out)), DistanceM: math.Hypot(up, out), Zoom: seatedZoom}.clamped()
	case CloseUp:
		s.Camera = Camera{YawDeg: closeYawDeg, PitchDeg: closePitchDeg, Zoom: s.naturalZoom(by)}
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

// filling is the zoom by which the corners of all panels just stay in a picture of a
// shape, at the camera's angles; a shape of 0 is the usual one.
func (s Scene) filling(shape float64) float64 {
	if shape <= 0 {
		shape = usualShape
	}
	const height = 1000 // pixels; any will do
	v := newView(s, int(math.Round(height*shape)), height)
	most := 0.0
	for i := range 8 {
		corner := vec{v.lo.X, v.lo.Y, 0}
		if i&1 != 0 {
			corner.X = v.hi.X
		}
		if i&2 != 0 {
			corner.Y = v.hi.Y
		}
		if i&4 != 0 {
			corner.Z = v.hi.Z
		}
		to := corner.sub(v.eye)
		out := to.dot(v.forward) * v.tanHalf
		most = max(most, math.Abs(to.dot(v.up))/out, math.Abs(to.dot(v.right))/out/shape)
	}
	return filled / most
}

// naturalZoom is the zoom at which the foremost plane has its natural size in the
// picture, or closeZoom where the picture's size is not known.
func (s Scene) naturalZoom(by Viewer) float64 {
	if by.PictureM <= 0 || by.Shape <= 0 {
		return closeZoom
	}
	width, height := s.Size()
	return clamp(max(height, width/by.Shape)*fitMargin/by.PictureM, 1, MaxZoom)
}

// Walk is the camera of a person who walks past, at a part k (0 to 1) of the way: from
// the left to the right at an even pace, with the eyes on the middle of the panels.
func (s Scene) Walk(k float64) Camera {
	v := newView(Scene{Wall: s.Wall, Panels: s.Panels, Camera: Camera{Zoom: 1}}, 1, 1)
	near := v.eye.sub(v.centre).length() * walkNear
	up := walkEyeM - v.centre.Y
	along := near * math.Tan(radians(walkYawDeg)) * (2*clamp(k, 0, 1) - 1)
	out := math.Hypot(along, near)
	far := math.Hypot(out, up)
	return Camera{
		YawDeg: degrees(math.Atan2(along, near)), PitchDeg: degrees(math.Atan2(up, out)),
		DistanceM: far, Zoom: walkZoom * near / far, // the angle of view stays
	}.clamped()
}

// Size is the width and height (m) of all panels together.
func (s Scene) Size() (widthM, heightM float64) {
	lo, hi := s.bounds()
	return hi.X - lo.X, hi.Y - lo.Y
}

// Reach is the size (m) by which all panels are fitted into a picture of a shape: zoom by
// Reach is the same as long as what is in the picture keeps its size there.
func (s Scene) Reach(shape float64) float64 {
	width, height := s.Size()
	return max(height, width/shape)
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
