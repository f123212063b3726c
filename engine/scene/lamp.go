package scene

import "math"

// Limits of the lamp. Below MinElevationDeg everything lies in shadow;
// MaxElevationDeg is straight on. The warmth runs from candle light to an
// overcast sky.
const (
	MinElevationDeg = 5
	MaxElevationDeg = 90
	MinWarmthK      = 1800
	MaxWarmthK      = 8000
	// MaxSpreadDeg is the widest lamp: a large window near by.
	MaxSpreadDeg = 20
)

// Spreads of usual lights, as seen from the panel.
const (
	LampSpreadDeg   = 2.8 // a paper shade of 30 cm at three metres
	WindowSpreadDeg = 12  // a window of a metre and a half at three metres
)

// lampReach is how far a drag over the picture's height moves the lamp across
// the dome over the wall, whose radius is 1.
const lampReach = 2

// Lamp is the one light that throws shadows. Azimuth is where it hangs, seen
// from the room and clockwise: 0 above, 90 at the right, 315 at the upper left.
// Elevation is its angle above the wall's plane: at 10 degrees it rakes, at 80
// it is nearly straight on. WarmthK is its colour temperature in kelvins.
// SpreadDeg is its apparent radius, which softens the edges of shadows; 0 stands
// for that of a picture lamp.
type Lamp struct{ AzimuthDeg, ElevationDeg, WarmthK, SpreadDeg float64 }

// Drag returns the lamp after a drag by dx to the right and dy down, in
// fractions of the picture's height: the lamp moves across the dome over the
// wall the way the pointer moves.
func (l Lamp) Drag(dx, dy float64) Lamp {
	l = l.clamped()
	az, el := radians(l.AzimuthDeg), radians(l.ElevationDeg)
	x := math.Cos(el)*math.Sin(az) + finite(dx)*lampReach
	y := math.Cos(el)*math.Cos(az) - finite(dy)*lampReach
	out := math.Hypot(x, y)
	if out > 1e-9 { // at the very top of the dome every azimuth is right: keep the old one
		l.AzimuthDeg = degrees(math.Atan2(x, y))
	}
	l.ElevationDeg = degrees(math.Acos(min(out, 1)))
	return l.clamped()
}

// Toward returns the lamp a part k (0 to 1) of the way to another, the short way
// round.
func (l Lamp) Toward(to Lamp, k float64) Lamp {
	turn := math.Mod(to.AzimuthDeg-l.AzimuthDeg+540, 360) - 180
	return Lamp{
		AzimuthDeg:   l.AzimuthDeg + turn*k,
		ElevationDeg: mix(l.ElevationDeg, to.ElevationDeg, k),
		WarmthK:      mix(l.WarmthK, to.WarmthK, k),
		SpreadDeg:    mix(l.spread(), to.spread(), k),
	}.clamped()
}

// Towards returns the unit vector from the wall to the lamp.
func (l Lamp) Towards() (x, y, z float64) {
	az, el := radians(l.AzimuthDeg), radians(l.ElevationDeg)
	return math.Cos(el) * math.Sin(az), math.Cos(el) * math.Cos(az), math.Sin(el)
}

// clamped brings every part into its limits and the azimuth into 0 to 360.
func (l Lamp) clamped() Lamp {
	az := math.Mod(finite(l.AzimuthDeg), 360)
	if az < 0 {
		az += 360
	}
	return Lamp{
		AzimuthDeg:   az,
		ElevationDeg: clamp(finite(l.ElevationDeg), MinElevationDeg, MaxElevationDeg),
		WarmthK:      clamp(finite(l.WarmthK), MinWarmthK, MaxWarmthK),
		SpreadDeg:    clamp(finite(l.SpreadDeg), 0, MaxSpreadDeg),
	}
}

// spread is the apparent radius in degrees.
func (l Lamp) spread() float64 {
	if l.SpreadDeg == 0 {
		return LampSpreadDeg
	}
	return l.SpreadDeg
}

func radians(deg float64) float64 { return deg * math.Pi / 180 }
func degrees(rad float64) float64 { return rad * 180 / math.Pi }
