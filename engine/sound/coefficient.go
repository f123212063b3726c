package sound

// receiver is what one direction received: its energy and the solid angle that
// it stands for, in any unit that is the same for all.
type receiver struct{ energy, weight float64 }

// diffusion returns the directional diffusion coefficient of ISO 17497-2:2012,
//
//	d = ((ΣN·E)² − ΣN·E²) / ((ΣN − 1)·ΣN·E²),
//
// with N the weight over the smallest weight: 1 where all receivers hear the
// same, 0 where one hears everything. No energy at all has no distribution; it
// is called 0.
func diffusion(all []receiver) float64 {
	var least float64
	for _, r := range all {
		if least == 0 || r.weight < least {
			least = r.weight
		}
	}
	var n, sum, squares float64
	for _, r := range all {
		w := r.weight / least
		n += w
		sum += w * r.energy
		squares += w * r.energy * r.energy
	}
	if squares == 0 || n <= 1 {
		return 0
	}
	return (sum*sum - squares) / ((n - 1) * squares)
}

// normalise takes out what a flat panel of the same size spreads by its edges:
// (d − d_flat)/(1 − d_flat).
func normalise(d, flat float64) float64 {
	if flat >= 1 {
		return 0
	}
	return (d - flat) / (1 - flat)
}

// correlation gathers the sums of the correlation scattering coefficient.
type correlation struct {
	crossRe, crossIm float64 // Σ N·p·p0*
	panel, flat      float64 // Σ N·|p|², Σ N·|p0|²
}

func (c *correlation) add(weight, re, im, flatRe, flatIm float64) {
	c.crossRe += weight * (re*flatRe + im*flatIm)
	c.crossIm += weight * (im*flatRe - re*flatIm)
	c.panel += weight * (re*re + im*im)
	c.flat += weight * (flatRe*flatRe + flatIm*flatIm)
}

// scattering returns the share of the energy that does not follow the pattern of
// a flat panel, 1 − |Σ p·p0*|² / (Σ|p|²·Σ|p0|²) (E. Mommertz, Applied Acoustics
// 60, 2000, 201): 0 for a scaled copy of it, 1 where both have nothing in common.
// A panel that sends nothing back scatters nothing.
func (c correlation) scattering() float64 {
	if c.panel == 0 || c.flat == 0 {
		return 0
	}
	return max(0, 1-(c.crossRe*c.crossRe+c.crossIm*c.crossIm)/(c.panel*c.flat))
}
