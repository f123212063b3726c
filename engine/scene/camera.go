package scene

import "math"

// Limits of the camera. Steeper views show nothing but frame; nearer than
// MaxZoom a block fills the picture.
const (
	MaxYawDeg   = 80
	MaxPitchDeg = 60
	MinZoom     = 0.3
	MaxZoom     = 24
	// MinDistanceM and MaxDistanceM hold a viewer in the room.
	MinDistanceM = 0.3
	MaxDistanceM = 60
)

// orbitDegPerHeight is how far a drag over the picture's height turns the view:
// a drag over half of it goes from straight on to the side.
const orbitDegPerHeight = 150

// Camera looks at the centre of all panels. Yaw and pitch 0 are straight on;
// a positive yaw has the viewer step to the right, a positive pitch go up.
// Zoom 1 fits all panels with a margin, zoom 2 shows them twice as large.
// DistanceM is how far the viewer stands from that centre; 0 is far enough for a
// calm picture.
type Camera struct{ YawDeg, PitchDeg, Zoom, DistanceM float64 }

// Orbit returns the camera after a drag by dx to the right and dy down, in
// fractions of the picture's height. What lies under the pointer follows it.
func (c Camera) Orbit(dx, dy float64) Camera {
	c.YawDeg -= finite(dx) * orbitDegPerHeight
	c.PitchDeg += finite(dy) * orbitDegPerHeight
	return c.clamped()
}

// ZoomBy returns the camera with its zoom multiplied by f, which is ignored
// unless it is positive.
func (c Camera) ZoomBy(f float64) Camera {
	c = c.clamped()
	if f > 0 {
		c.Zoom *= f
	}
	return c.clamped()
}

// Toward returns the camera a part k (0 to 1) of the way to another. Where one of
// them stands at a distance of its own it jumps there.
func (c Camera) Toward(to Camera, k float64) Camera {
	if (c.DistanceM == 0) != (to.DistanceM == 0) {
		return to
	}
	return Camera{
		YawDeg: mix(c.YawDeg, to.YawDeg, k), PitchDeg: mix(c.PitchDeg, to.PitchDeg, k),
		Zoom:      c.Zoom * math.Pow(to.Zoom/c.Zoom, k), // even steps to the eye
		DistanceM: mix(c.DistanceM, to.DistanceM, k),
	}.clamped()
}

// clamped brings every part into its limits; a zoom of 0 (or no number) is
// taken as 1, so that the zero Camera looks straight on.
func (c Camera) clamped() Camera {
	if c.Zoom == 0 || math.IsNaN(c.Zoom) {
		c.Zoom = 1
	}
	if c.DistanceM != 0 {
		c.DistanceM = clamp(finite(c.DistanceM), MinDistanceM, MaxDistanceM)
	}
	return Camera{
		DistanceM: c.DistanceM,
		YawDeg:    clamp(finite(c.YawDeg), -MaxYawDeg, MaxYawDeg),
		PitchDeg:  clamp(finite(c.PitchDeg), -MaxPitchDeg, MaxPitchDeg),
		Zoom:      clamp(c.Zoom, MinZoom, MaxZoom),
	}
}

// finite returns v, or 0 where v is no finite number.
func finite(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return v
}

func clamp(v, lo, hi float64) float64 { return min(max(v, lo), hi) }
