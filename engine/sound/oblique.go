package sound

import "math"

// oblique hears a source off the normal: every direction of every line is
// summed by itself, but for those above and below the horizontal, which share
// their sums.
func (w *domeWork) oblique(incidenceDeg float64) Dome {
	sinSource, cosSource := math.Sincos(incidenceDeg * math.Pi / 180)
	phases := make([]complex128, len(w.depths))
	for i := range w.lines {
		line := &w.lines[i]
		sum := w.sums[line.band]
		sum.begin()
		for r := range rings {
			in, out, obliquity := w.o.Phase.path(cosSource, w.cosines[r])
			for l, d := range w.depths {
				phases[l] = w.circle.unit(-line.k * d * (in + out))
			}
			for azimuth := range azimuths/2 + 1 {
				if r == 0 && azimuth > 0 {
					break // the normal has no azimuth
				}
				sin, cos := math.Sincos(float64(azimuth*azimuthStep) * math.Pi / 180)
				ku, kv := line.k*(w.sines[r]*cos+sinSource), line.k*w.sines[r]*sin
				w.transform(ku, kv)
				blocks, floor := w.element(ku, kv, obliquity)
				w.addOne(sum, r, azimuth, phases, w.upAll, blocks, floor)
				if azimuth > 0 && azimuth < azimuths/2 {
					w.addOne(sum, r, -azimuth, phases, w.downAll, blocks, floor)
				}
			}
		}
		line.sums = sum.line
	}
	return w.dome(incidenceDeg)
}

// transform sums the cells of all panels for the phases ku and kv of a metre,
// and for ku and −kv.
func (w *domeWork) transform(ku, kv float64) {
	w.grid.at(ku*w.a.PitchM, kv*w.a.PitchM, w.up, w.down)
	if !w.panels.one {
		w.panels.join(ku, kv, w.up, w.upAll)
		w.panels.join(ku, -kv, w.down, w.downAll)
	}
}

// addOne adds a direction.
func (w *domeWork) addOne(sum *bandSum, ring, azimuth int, phases, f []complex128, blocks, floor float64) {
	pressure, _, all := weigh(f, phases, blocks, floor)
	sum.add(receiverOf(ring, azimuth), w.ringWeight[ring], pressure, all*complex(blocks+floor, 0))
}
