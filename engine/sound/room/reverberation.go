package room

import "math"

// decay is ln 10⁶·4, the constant of Sabine's formula times the speed of sound:
// T = decay·V/(c·A), 0.161 s/m at 20 °C.
const decay = 24 * math.Ln10

// patch is a part of a room's surface.
type patch struct {
	areaM2 float64
	alpha  alpha
}

// Decay is how long a room rings, in seconds for 60 dB: the mean of the octaves
// of 500 Hz and 1 kHz, by W. C. Sabine and by C. F. Eyring.
type Decay struct{ SabineS, EyringS float64 }

// reverberation returns the reverberation times of a room, octave by octave: by
// Sabine T = 24·ln 10·V/(c·ΣS·α), and by Eyring with −S·ln(1 − ᾱ) for ΣS·α. The
// absorption of the air is left out: in rooms of this size it matters above
// 4 kHz only.
func reverberation(volumeM3, speedMS float64, surface []patch) (sabineS, eyringS alpha) {
	for i := range octaves {
		var area, absorbing float64
		for _, p := range surface {
			area += p.areaM2
			absorbing += p.areaM2 * p.alpha[i]
		}
		sabineS[i] = decay * volumeM3 / (speedMS * absorbing)
		eyringS[i] = decay * volumeM3 / (speedMS * -area * math.Log(1-absorbing/area))
	}
	return sabineS, eyringS
}
