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
)

// lampReach is how far a drag over the picture's height moves the lamp across
// the dome over the wall, whose radius is 1.
const lampReach = 2

// Lamp is the one light that throws shadows. Azimuth is where it hangs, seen
// from the room and clockwise: 0 above, 90 at the right, 315 at the upper left.
// Elevation is its angle above the wall's plane: at 10 degrees it rakes, at 80
// it is nearly straight on. WarmthK is its colour temperature in kelvins.
type Lamp struct{ AzimuthDeg, ElevationDeg, WarmthK float64 }

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
	}
}

func radians(deg float64) float64 { return deg * math.Pi / 180 }
func degrees(rad float64) float64 { return rad * 180 / math.Pi }
