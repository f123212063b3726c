package scene

import "math"

// vec is a point or direction in metres, axes as in the package doc.
type vec struct{ X, Y, Z float64 }

func (a vec) add(b vec) vec           { return vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a vec) sub(b vec) vec           { return vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }
func (a vec) times(k float64) vec     { return vec{a.X * k, a.Y * k, a.Z * k} }
func (a vec) dot(b vec) float64       { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }
func (a vec) length() float64         { return math.Sqrt(a.dot(a)) }
func (a vec) unit() vec               { return a.times(1 / a.length()) }
func (a vec) at(d vec, t float64) vec { return a.add(d.times(t)) }

func (a vec) cross(b vec) vec {
	return vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

func (c RGB) plus(o RGB) RGB           { return RGB{c.R + o.R, c.G + o.G, c.B + o.B} }
func (c RGB) mul(o RGB) RGB            { return RGB{c.R * o.R, c.G * o.G, c.B * o.B} }
func (c RGB) mix(o RGB, k float64) RGB { return scale(c, 1-k).plus(scale(o, k)) }

// mix, smooth and fract are the shader's functions of the same meaning.
func mix(a, b, k float64) float64 { return a + (b-a)*k }

func smooth(lo, hi, v float64) float64 {
	k := clamp((v-lo)/(hi-lo), 0, 1)
	return k * k * (3 - 2*k)
}

func fract(v float64) float64 { return v - math.Floor(v) }
