package sound

import "math"

// The model was held against rigid blocks in a two-dimensional boundary-element
// solution: eight sections through block panels on a 19 mm backer in a free
// field, a separate computation of this project. Fields that vary in both
// directions, losses, finite distance and the room were not compared.

// Doubt is how far a calculated coefficient can be off, and what may be done
// with it.
type Doubt struct {
	Mean, Worst float64 // error of the diffusion coefficient in the comparison
	Indicative  bool    // to be drawn as a hint only
	NoClaim     bool    // nothing may be said by it
}

// LeastDifference is the difference of two coefficients below which nothing is
// claimed: among shuffles of one family the model's ranking means little.
const LeastDifference = 0.05

// Angles of incidence from which on the comparison's columns for 30° and for
// 60° stand, and from which on nothing is claimed.
const (
	slantedDeg = 15
	grazingDeg = 45
)

// usableFrom is the multiple of the depth's frequency above which the model is
// usable straight on.
const usableFrom = 2

// DepthHz returns the frequency whose quarter wave is as deep as the deepest
// face below the highest, to which the errors of the model are related;
// infinite for a level field.
func DepthHz(deepestM, speedMS float64) float64 {
	if deepestM == 0 {
		return math.Inf(1)
	}
	return speedMS / (4 * deepestM)
}

// Trust returns the doubt of a coefficient at a frequency, for a field with a
// depth's frequency of depthHz and a source at an angle.
func Trust(hz, depthHz, incidenceDeg float64) Doubt {
	slant := math.Abs(incidenceDeg)
	rows := doubts()
	row := rows[len(rows)-1]
	for _, r := range rows {
		if hz/depthHz < r.below {
			row = r
			break
		}
	}
	switch {
	case slant >= grazingDeg:
		return Doubt{row.at60[0], row.at60[1], true, true}
	case slant >= slantedDeg:
		return Doubt{row.at30[0], row.at30[1], true, false}
	default:
		return Doubt{row.at0[0], row.at0[1], hz < usableFrom*depthHz, false}
	}
}

// TrustRandom returns the doubt of random incidence, which holds grazing sound
// too: that of 60°, as an indication.
func TrustRandom(hz, depthHz float64) Doubt {
	d := Trust(hz, depthHz, grazingDeg)
	d.NoClaim = false
	return d
}

// doubtRow is one row of the comparison: mean and worst error of the diffusion
// coefficient for sources at 0°, 30° and 60°.
type doubtRow struct {
	below           float64 // of hz over the depth's frequency
	at0, at30, at60 [2]float64
}

// doubts are the rows of the comparison; where it gives a range, its upper end.
func doubts() []doubtRow {
	return []doubtRow{
		{0.5, [2]float64{0.04, 0.19}, [2]float64{0.05, 0.16}, [2]float64{0.13, 0.29}},
		{0.7, [2]float64{0.05, 0.14}, [2]float64{0.10, 0.34}, [2]float64{0.25, 0.43}},
		{1, [2]float64{0.13, 0.32}, [2]float64{0.18, 0.36}, [2]float64{0.28, 0.53}},
		{1.4, [2]float64{0.16, 0.43}, [2]float64{0.20, 0.50}, [2]float64{0.35, 0.56}},
		{2, [2]float64{0.14, 0.40}, [2]float64{0.06, 0.11}, [2]float64{0.26, 0.48}},
		{2.8, [2]float64{0.06, 0.18}, [2]float64{0.14, 0.32}, [2]float64{0.15, 0.33}},
		{math.Inf(1), [2]float64{0.05, 0.22}, [2]float64{0.14, 0.35}, [2]float64{0.27, 0.50}},
	}
}
