package sound

import "math"

// Dome is what receivers all over the half space hear for one direction of the
// source.
type Dome struct {
	IncidenceDeg float64
	Bands        []Spread // energies by receiver, as DomeReceivers lists them
}

// Direction is where a receiver of the half space stands, and the solid angle
// that it stands for, in steradian.
type Direction struct{ AngleDeg, AzimuthDeg, Weight float64 }

// DomeReceivers lists the receivers of a Dome: the normal, then ring by ring.
func DomeReceivers() []Direction {
	weights := sphereWeights()
	out := make([]Direction, sphereReceivers)
	for r := range rings {
		for a := range azimuths {
			i := receiverOf(r, a)
			if r == 0 && a > 0 {
				continue
			}
			out[i] = Direction{float64(r) * ringStepDeg, float64(a * azimuthStep), weights[i]}
		}
	}
	return out
}

// HalfSpace returns what receivers all over the half space hear of a source in
// the plane across, at an angle to the right. Straight on is a tenth of the
// work: then the transform is that of rays from the middle.
func HalfSpace(a Arrangement, incidenceDeg float64, o Options) Dome {
	w := newDomeWork(a, o)
	if incidenceDeg != 0 {
		return w.oblique(incidenceDeg)
	}
	w.makeRays()
	for r := range quarter {
		w.sample(r)
		w.hear(r)
	}
	return w.dome(0)
}

// domeWork is one arrangement made ready for the half space.
type domeWork struct {
	a              Arrangement
	o              Options
	levels         int
	depths         []float64
	grid           *gridSum
	scale          float64 // 1 over all cells
	circle         *circle
	panels         panels
	at             sampling
	ray            *ray
	sines, cosines []float64 // of the rings
	lines          []domeLine
	sums           []*bandSum
	ringWeight     []float64
	up, down       []complex128 // transforms of one panel at one direction and below the horizontal
	upAll, downAll []complex128 // of the whole arrangement
}

// domeLine is one frequency: its sums, and what does not depend on the azimuth.
type domeLine struct {
	k       float64
	band    int
	sums    correlation
	first   []int        // of each ring: where its taps begin
	weights []float64    // of each ring, taps numbers
	phases  []complex128 // of each ring: of each level, and of the backer
}

func newDomeWork(a Arrangement, o Options) *domeWork {
	a = a.used()
	w := &domeWork{a: a, o: o.whole(), levels: len(a.HeightsM), depths: a.depths()}
	w.grid = newGridSum(a.Surface)
	w.scale = a.scale()
	w.circle = newCircle()
	w.panels = newPanels(a, Across, Down)
	w.sines, w.cosines = ringCosines()
	w.ringWeight = ringWeights()
	w.up, w.down = make([]complex128, w.levels), make([]complex128, w.levels)
	w.upAll, w.downAll = w.up, w.down
	if !w.panels.one {
		w.upAll, w.downAll = make([]complex128, w.levels), make([]complex128, w.levels)
	}
	for b, band := range w.o.Bands {
		w.sums = append(w.sums, newBandSum(sphereReceivers))
		for _, hz := range band.lines(w.o.Lines) {
			w.lines = append(w.lines, domeLine{k: 2 * math.Pi * hz / w.o.SpeedMS, band: b})
		}
	}
	return w
}

// makeRays makes ready what is heard straight on.
func (w *domeWork) makeRays() {
	var most float64
	for _, line := range w.lines {
		most = math.Max(most, line.k*w.a.PitchM)
	}
	w.at = newSampling(w.a.reach(), most)
	w.ray = newRay(w.levels, w.at.count)
	for i := range w.lines {
		w.prepare(&w.lines[i])
	}
}

// reach is how far a cell's centre can be from the middle of the arrangement,
// in cells.
func (a Arrangement) reach() float64 {
	var most float64
	for _, m := range a.modules() {
		x := math.Abs(m.XM)/a.PitchM + float64(a.Columns-1)/2
		y := math.Abs(m.YM)/a.PitchM + float64(a.Rows-1)/2
		most = math.Max(most, math.Hypot(x, y))
	}
	return most
}

// prepare works out what a line needs on every ring: where its transforms are
// read, and the phases of the levels.
func (w *domeWork) prepare(line *domeLine) {
	line.first = make([]int, rings)
	line.weights = make([]float64, rings*taps)
	line.phases = make([]complex128, 0, rings*len(w.depths))
	for r := range rings {
		line.first[r] = w.at.weights(line.k*w.a.PitchM*w.sines[r], line.weights[r*taps:(r+1)*taps])
		in, out, _ := w.o.Phase.path(1, w.cosines[r])
		for _, d := range w.depths {
			line.phases = append(line.phases, w.circle.unit(-line.k*d*(in+out)))
		}
	}
}

// sample sums the cells along one azimuth of the first quarter.
func (w *domeWork) sample(azimuth int) {
	sin, cos := math.Sincos(float64(azimuth*azimuthStep) * math.Pi / 180)
	for i := halfTaps; i < w.at.count; i++ {
		kappa := w.at.kappa(i)
		w.transform(kappa*cos/w.a.PitchM, kappa*sin/w.a.PitchM)
		w.ray.set(w.ray.up, i, w.upAll)
		w.ray.set(w.ray.down, i, w.downAll)
	}
}

// hear adds the directions of one azimuth of the first quarter, its mirror
// image below the horizontal, and the two opposite ones, to all lines.
func (w *domeWork) hear(azimuth int) {
	sin, cos := math.Sincos(float64(azimuth*azimuthStep) * math.Pi / 180)
	for i := range w.lines {
		line := &w.lines[i]
		sum := w.sums[line.band]
		sum.line = line.sums
		for r := range rings {
			if r == 0 && azimuth > 0 {
				continue // the normal has no azimuth
			}
			weights := line.weights[r*taps : (r+1)*taps]
			phases := line.phases[r*len(w.depths) : (r+1)*len(w.depths)]
			blocks, floor := w.element(line.k*w.sines[r]*cos, line.k*w.sines[r]*sin, w.obliquity(r))
			read(w.ray.up, line.first[r], weights, w.upAll)
			w.add(sum, r, azimuth, phases, w.upAll, blocks, floor)
			if r > 0 && azimuth > 0 && azimuth < quarter-1 {
				read(w.ray.down, line.first[r], weights, w.downAll)
				w.add(sum, r, -azimuth, phases, w.downAll, blocks, floor)
			}
		}
		line.sums = sum.line
	}
}

func (w *domeWork) obliquity(ring int) float64 {
	_, _, o := w.o.Phase.path(1, w.cosines[ring])
	return o
}

// element returns the pattern of one block's face and that of the floor of the
// gap round it, for the phases ku and kv of a metre.
func (w *domeWork) element(ku, kv, obliquity float64) (blocks, floor float64) {
	pitch := w.a.PitchM
	scale := obliquity * w.scale
	whole := scale * w.circle.sinc(ku*pitch/2) * w.circle.sinc(kv*pitch/2)
	gap := w.a.gap()
	if gap == 0 {
		return whole, 0
	}
	side := pitch - gap
	blocks = scale * w.a.faceShare() * w.circle.sinc(ku*side/2) * w.circle.sinc(kv*side/2)
	return blocks, whole - blocks
}

// add adds a direction and the opposite one.
func (w *domeWork) add(sum *bandSum, ring, azimuth int, phases, f []complex128, blocks, floor float64) {
	pressure, opposite, all := weigh(f, phases, blocks, floor)
	flat := all * complex(blocks+floor, 0)
	weight := w.ringWeight[ring]
	sum.add(receiverOf(ring, azimuth), weight, pressure, flat)
	if ring > 0 {
		sum.add(receiverOf(ring, azimuth+azimuths/2), weight, opposite, conj(flat))
	}
}

// dome closes the sums.
func (w *domeWork) dome(incidenceDeg float64) Dome {
	for i := range w.lines {
		sum := w.sums[w.lines[i].band]
		sum.line = w.lines[i].sums
		sum.end()
	}
	weights := sphereWeights()
	out := Dome{IncidenceDeg: incidenceDeg}
	for b, band := range w.o.Bands {
		out.Bands = append(out.Bands, w.sums[b].spread(band, weights))
	}
	return out
}
