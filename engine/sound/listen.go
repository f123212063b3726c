package sound

import "math"

// Listening is everything that is computed of one arrangement.
type Listening struct {
	SpeedMS float64
	DepthHz float64 // its quarter wave is as deep as the deepest face
	Dome    Dome    // the half space, straight on
	Across  Sweep
	Down    Sweep
}

// Sweep is one plane, for sources straight on, at ±30° and ±60°, and for sound
// from everywhere.
type Sweep struct {
	Polars []Polar // in the order of incidences
	Random []Spread
}

// incidences are the sources of a Sweep, in degrees.
func incidences() []float64 { return []float64{0, 30, -30, 60, -60} }

// Listen computes an arrangement in every way. The planes take the phase of the
// options. The half space always takes the path of 2·d with obliquity: verdicts
// live below the frequency where a block is 0.7 waves wide, and there it is the
// closer of the two in the comparison that Trust stands on; above all it lets a
// chequer, which sends everything back into the mirror direction, be one at the
// frequencies where that reflection almost vanishes.
func Listen(a Arrangement, o Options) Listening {
	o = o.whole()
	dome := o
	dome.Phase = GratingOblique
	sweep := func(axis Axis) Sweep {
		return Sweep{Plane(a, axis, incidences(), o), RandomIncidence(a, axis, o)}
	}
	return Listening{
		SpeedMS: o.SpeedMS,
		DepthHz: DepthHz(a.DeepestM(), o.SpeedMS),
		Dome:    HalfSpace(a, 0, dome),
		Across:  sweep(Across),
		Down:    sweep(Down),
	}
}

// randomStepDeg is the step of the sources of random incidence; they stand at
// the midpoints of the steps.
const randomStepDeg = 10

// RandomIncidence returns the coefficients for sound from all directions of a
// plane: those of the single sources weighted with the cosine of their angle
// (Paris' formula; ISO 17497-2, 8.4), averaged before they are normalised.
func RandomIncidence(a Arrangement, axis Axis, o Options) []Spread {
	var angles []float64
	for deg := -90 + randomStepDeg/2.0; deg < 90; deg += randomStepDeg {
		angles = append(angles, deg)
	}
	return mean(Plane(a, axis, angles, o))
}

// mean averages the coefficients of several sources.
func mean(polars []Polar) []Spread {
	out := make([]Spread, len(polars[0].Bands))
	var total float64
	for _, p := range polars {
		weight := math.Cos(p.IncidenceDeg * math.Pi / 180)
		total += weight
		for i, s := range p.Bands {
			out[i].Band = s.Band
			out[i].Diffusion += weight * s.Diffusion
			out[i].Flat += weight * s.Flat
			out[i].Scattering += weight * s.Scattering
			out[i].ByEnergy += weight * s.ByEnergy
		}
	}
	for i := range out {
		s := &out[i]
		s.Diffusion, s.Flat = s.Diffusion/total, s.Flat/total
		s.Scattering, s.ByEnergy = s.Scattering/total, s.ByEnergy/total
		s.Normalised = normalise(s.Diffusion, s.Flat)
	}
	return out
}
