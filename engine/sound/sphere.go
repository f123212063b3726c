package sound

import "math"

// Directions of the half space: rings of equal angle from the normal to the
// wall, and azimuths on each.
const (
	ringStepDeg = 2.5
	rings       = int(90/ringStepDeg) + 1
	azimuthStep = 5
	azimuths    = 360 / azimuthStep
	quarter     = 90/azimuthStep + 1 // azimuths from 0° to 90°
)

// ringCosines returns the cosines of the rings, the normal first.
func ringCosines() (sines, cosines []float64) {
	for r := range rings {
		theta := float64(r) * ringStepDeg * math.Pi / 180
		sines, cosines = append(sines, math.Sin(theta)), append(cosines, math.Cos(theta))
	}
	cosines[rings-1] = 0
	return sines, cosines
}

// ringWeights returns the solid angle of one receiver of each ring: the cap
// round the normal, zones divided by their azimuths, and half a zone at the
// wall.
func ringWeights() []float64 {
	half := ringStepDeg / 2 * math.Pi / 180
	out := make([]float64, rings)
	for r := range out {
		theta := float64(r) * ringStepDeg * math.Pi / 180
		upper := min(theta+half, math.Pi/2)
		out[r] = 2 * math.Pi * (math.Cos(max(theta-half, 0)) - math.Cos(upper))
		if r > 0 {
			out[r] /= azimuths
		}
	}
	return out
}

// receiverOf numbers the receivers: the normal is 0, then ring by ring, each
// from azimuth 0 on.
func receiverOf(ring, azimuth int) int {
	if ring == 0 {
		return 0
	}
	return 1 + (ring-1)*azimuths + (azimuth%azimuths+azimuths)%azimuths
}

// sphereReceivers is how many receivers the half space has.
const sphereReceivers = 1 + (rings-1)*azimuths

// sphereWeights returns the solid angle of every receiver.
func sphereWeights() []float64 {
	byRing := ringWeights()
	out := make([]float64, sphereReceivers)
	for r, w := range byRing {
		for a := range azimuths {
			out[receiverOf(r, a)] = w
		}
	}
	return out
}
