package room

// Coefficients of a lining, and formulas, for their own checks.

func Alpha(lining string) [octaves]float64 { return linings()[lining] }

func OctaveHz(i int) float64 { return octaveHz(i) }

// Patch is an area in m² with its coefficients.
type Patch struct {
	AreaM2 float64
	Alpha  [octaves]float64
}

func Reverberation(volumeM3, speedMS float64, surface []Patch) (sabineS, eyringS [octaves]float64) {
	var all []patch
	for _, p := range surface {
		all = append(all, patch{p.AreaM2, p.Alpha})
	}
	s, e := reverberation(volumeM3, speedMS, all)
	return s, e
}

func Middle(a [octaves]float64) float64 { return alpha(a).middle() }

func Reflection(earM, sourceM, speedMS float64) (delayMS, levelDB float64) {
	return reflection(earM, sourceM, speedMS)
}
