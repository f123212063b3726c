package sound

import "math"

// circleSteps is how many unit vectors a circle holds. With 256 an angle is at
// most π/256 from one of them.
const circleSteps = 256

// circle is unit vectors at equal steps of the angle, from which the one of any
// angle follows by the first terms of the series of cosine and sine for the rest:
// faster than the library's, whose last bits nothing here needs. The error is
// that of the angle itself as a float64, 2·10⁻¹³ for the largest here.
type circle [circleSteps]turner

func newCircle() *circle {
	c := new(circle)
	for i := range c {
		c[i] = towards(2 * math.Pi * float64(i) / circleSteps)
	}
	return c
}

// at returns the unit vector at an angle.
func (c *circle) at(angle float64) turner {
	near, rest := c.near(angle)
	r2 := rest * rest
	cos := 1 - r2*(1.0/2-r2*(1.0/24))
	sin := rest * (1 - r2*(1.0/6-r2*(1.0/120)))
	return turner{cos: near.cos*cos - near.sin*sin, sin: near.sin*cos + near.cos*sin}
}

// near returns the unit vector of the circle that is nearest to an angle, and
// the rest of the angle.
func (c *circle) near(angle float64) (turner, float64) {
	// Adding 1.5·2⁵² leaves the nearest whole number in the last bits.
	const whole = 3 << 51
	shifted := angle*(circleSteps/(2*math.Pi)) + whole
	steps := shifted - whole
	return c[math.Float64bits(shifted)%circleSteps], angle - steps*(2*math.Pi/circleSteps)
}

// unit returns exp(j·angle).
func (c *circle) unit(angle float64) complex128 {
	u := c.at(angle)
	return complex(u.cos, u.sin)
}

// sinc returns sin x / x.
func (c *circle) sinc(x float64) float64 {
	if math.Abs(x) < sincNear {
		return 1 - x*x/6
	}
	return c.at(x).sin / x
}

// sincNear is where the series of sinc, x⁴/120 short of it, is exact to the
// last bit of a float64.
const sincNear = 1e-4
