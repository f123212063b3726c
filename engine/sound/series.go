package sound

import "math"

// turner is a unit vector in the plane: the cosine and the sine of an angle.
type turner struct{ cos, sin float64 }

// towards returns the unit vector at an angle.
func towards(angle float64) turner {
	sin, cos := math.Sincos(angle)
	return turner{cos: cos, sin: sin}
}

// next returns t turned further by the angle of step.
func (t turner) next(step turner) turner {
	return turner{cos: t.cos*step.cos - t.sin*step.sin, sin: t.sin*step.cos + t.cos*step.sin}
}

// unit returns exp(jx).
func unit(x float64) complex128 {
	sin, cos := math.Sincos(x)
	return complex(cos, sin)
}

func conj(z complex128) complex128 { return complex(real(z), -imag(z)) }

// series fills in exp(j·α·x_m) for the places x_m = m − (n−1)/2 of a line, from
// the middle outwards, and returns its sum over all n places, which is real.
// half is the angle α/2. Two turners take every other place, so that a processor
// need not wait for the turn before.
func series(half turner, n int, cosines, sines []float64) float64 {
	step := half.next(half)
	a := half
	if n%2 == 1 {
		a = turner{cos: 1}
	}
	b, twice := a.next(step), step.next(step)
	var even, odd float64
	sines = sines[:len(cosines)]
	for m := 0; m+1 < len(cosines); m += 2 {
		cosines[m], sines[m] = a.cos, a.sin
		cosines[m+1], sines[m+1] = b.cos, b.sin
		even += a.cos
		odd += b.cos
		a, b = a.next(twice), b.next(twice)
	}
	if last := len(cosines) - 1; last%2 == 0 {
		cosines[last], sines[last] = a.cos, a.sin
		even += a.cos
	}
	if n%2 == 1 {
		return 2*(even+odd) - 1 // the middle is one place, not two
	}
	return 2 * (even + odd)
}
