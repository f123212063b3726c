package sound

import (
	"math"
	"slices"
)

// Axis is the direction of a plane of receivers through the panel's middle.
type Axis uint8

// The axes. Angles grow to the right across, and upwards down the panel.
const (
	Across Axis = iota
	Down
)

// Receivers of a plane, as ISO 17497-2 has them: 37, from −90° to 90°.
const (
	stepDeg        = 5
	planeReceivers = 180/stepDeg + 1
)

// Spread is what one band does: the coefficients, and the energies that they
// come from, as means over the lines of the band.
type Spread struct {
	Band       Band
	Diffusion  float64 // directional diffusion coefficient
	Flat       float64 // that of a flat panel of the same size
	Normalised float64
	Scattering float64 // correlation scattering coefficient, mean over the lines
	// ByEnergy is the scattering share of the whole band's energy; loud lines
	// weigh more in it than in the mean.
	ByEnergy   float64
	Energy     []float64 // by receiver; 1 is a flat panel's mirror reflection, straight on
	FlatEnergy []float64
}

// Polar is what one plane of receivers hears for one direction of the source.
type Polar struct {
	Axis         Axis
	IncidenceDeg float64
	AnglesDeg    []float64
	Bands        []Spread
}

// Plane returns what the receivers of one plane hear, for each angle of a
// source in that plane. Angles of opposite sign share their work.
func Plane(a Arrangement, axis Axis, incidenceDeg []float64, o Options) []Polar {
	p := newPlaneWork(a, axis, o)
	out := make([]Polar, len(incidenceDeg))
	for i, deg := range incidenceDeg {
		twin := slices.Index(incidenceDeg, -deg)
		if twin >= 0 && twin < i {
			continue
		}
		plus, minus := p.listen(math.Abs(deg))
		here, there := plus, minus
		if deg < 0 {
			here, there = minus, plus
		}
		out[i] = here
		if twin > i {
			out[twin] = there
		}
	}
	return out
}

// planeWork is one arrangement in one plane, made ready.
type planeWork struct {
	a       Arrangement
	axis    Axis
	o       Options
	levels  int
	depths  []float64
	line    *lineSum
	panels  panels
	sines   []float64 // of the receivers
	cosines []float64
	phases  []complex128 // of one line: for each cosine, of each level and of the backer
	f, own  []complex128 // transforms of one direction: with all panels, of one panel
	steps   []complex128 // phase of each level on the way in
}

func newPlaneWork(a Arrangement, axis Axis, o Options) *planeWork {
	a = a.used()
	p := &planeWork{a: a, axis: axis, o: o.whole(), levels: len(a.HeightsM), depths: a.depths()}
	p.line = newLineSum(a.counts(axis))
	p.panels = newPanels(a, axis)
	for deg := -90; deg <= 90; deg += stepDeg {
		p.sines = append(p.sines, math.Sin(float64(deg)*math.Pi/180))
		p.cosines = append(p.cosines, math.Abs(math.Cos(float64(deg)*math.Pi/180)))
	}
	p.phases = make([]complex128, planeReceivers*len(p.depths))
	p.f, p.own = make([]complex128, p.levels), make([]complex128, p.levels)
	p.steps = make([]complex128, len(p.depths))
	return p
}

// counts returns how many cells of each level stand at each place along an
// axis, and how many cells stand there in all.
func (s Surface) counts(axis Axis) (counts [][]float64, across int) {
	places, across := s.Columns, s.Rows
	if axis == Down {
		places, across = s.Rows, s.Columns
	}
	counts = make([][]float64, places)
	for m := range counts {
		counts[m] = make([]float64, len(s.HeightsM))
	}
	for i := range s.Rows {
		for j, level := range s.Levels[i*s.Columns : (i+1)*s.Columns] {
			m := j
			if axis == Down {
				m = s.Rows - 1 - i // y grows upwards
			}
			counts[m][level]++
		}
	}
	return counts, across
}

// listen returns what is heard for a source at +deg and at −deg. The pattern of
// a source at −deg is that of the one at +deg with the transforms conjugated
// and the receivers in reverse.
func (p *planeWork) listen(deg float64) (plus, minus Polar) {
	angles := make([]float64, planeReceivers)
	for i := range angles {
		angles[i] = float64(i*stepDeg - 90)
	}
	plus = Polar{Axis: p.axis, IncidenceDeg: deg, AnglesDeg: angles}
	minus = Polar{Axis: p.axis, IncidenceDeg: -deg, AnglesDeg: angles}
	for _, band := range p.o.Bands {
		up, down := newBandSum(planeReceivers), newBandSum(planeReceivers)
		for _, hz := range band.Lines(p.o.Lines) {
			p.oneLine(2*math.Pi*hz/p.o.SpeedMS, deg, up, down)
		}
		plus.Bands = append(plus.Bands, up.spread(band, nil))
		minus.Bands = append(minus.Bands, down.spread(band, nil))
	}
	return plus, minus
}

// oneLine adds one frequency to the sums of both sources.
func (p *planeWork) oneLine(k, deg float64, up, down *bandSum) {
	theta := deg * math.Pi / 180
	sinSource, cosSource := math.Sin(theta), math.Cos(theta)
	p.prepare(k, cosSource)
	first := 0
	if deg == 0 {
		first = planeReceivers / 2 // the other half is the same with conjugated transforms
	}
	up.begin()
	down.begin()
	w, face := p.a.PitchM, p.a.faceShare()
	side := w - p.a.gap()
	scale := 1 / float64(p.a.Columns*p.a.Rows*len(p.a.modules()))
	for i := first; i < planeReceivers; i++ {
		u := p.sines[i] + sinSource
		f := p.transform(k, u)
		_, _, obliquity := p.o.Phase.path(cosSource, p.cosines[i])
		whole := scale * obliquity * sinc(k*w*u/2)
		blocks, floor := whole, 0.0
		if side != w {
			blocks = scale * obliquity * face * sinc(k*side*u/2)
			floor = whole - blocks
		}
		phases := p.phasesOf(i)
		pressure, mirrored, flat := weigh(f, phases, blocks, floor)
		flat *= complex(whole, 0)
		if deg == 0 {
			up.add(i, 1, pressure, flat)
			if i != planeReceivers/2 {
				up.add(planeReceivers-1-i, 1, mirrored, conj(flat))
			}
			continue
		}
		up.add(i, 1, pressure, flat)
		down.add(planeReceivers-1-i, 1, mirrored, conj(flat))
	}
	up.end()
	down.end()
}

func conj(z complex128) complex128 { return complex(real(z), -imag(z)) }

// weigh returns the pressure of the levels with their phases and of the floor
// of the gaps, the same with conjugated transforms, and the transform of all
// levels together.
func weigh(f, phases []complex128, blocks, floor float64) (pressure, mirrored, all complex128) {
	var rr, ii, ri, ir float64 // real and imaginary parts of phase and transform, multiplied
	for l, z := range f {
		e := phases[l]
		rr += real(e) * real(z)
		ii += imag(e) * imag(z)
		ri += real(e) * imag(z)
		ir += imag(e) * real(z)
		all += z
	}
	pressure = complex((rr-ii)*blocks, (ir+ri)*blocks)
	mirrored = complex((rr+ii)*blocks, (ir-ri)*blocks)
	if floor != 0 {
		backer := phases[len(f)] * complex(floor, 0)
		pressure += backer * all
		mirrored += backer * conj(all)
	}
	return pressure, mirrored, all
}

// prepare works out the phases of every level at one frequency: the way in,
// which depends on the source, times the way out, which depends on the cosine
// of the receiver and is the same on both sides of the normal.
func (p *planeWork) prepare(k, cosSource float64) {
	n := len(p.depths)
	for l, d := range p.depths {
		in, _, _ := p.o.Phase.path(cosSource, 1)
		p.steps[l] = turn(-k * d * in)
	}
	for i := planeReceivers / 2; i < planeReceivers; i++ {
		_, out, _ := p.o.Phase.path(cosSource, p.cosines[i])
		for l, d := range p.depths {
			p.phases[i*n+l] = p.steps[l] * turn(-k*d*out)
		}
	}
}

// phasesOf returns the phases of the levels, and of the backer last, towards a
// receiver.
func (p *planeWork) phasesOf(receiver int) []complex128 {
	i, n := max(receiver, planeReceivers-1-receiver), len(p.depths)
	return p.phases[i*n : (i+1)*n]
}

// transform returns the transform of each level of the whole arrangement.
func (p *planeWork) transform(k, u float64) []complex128 {
	if p.panels.one {
		p.line.at(k*p.a.PitchM*u, p.f)
		return p.f
	}
	p.line.at(k*p.a.PitchM*u, p.own)
	p.panels.join(k*u, 0, p.own, p.f)
	return p.f
}

// turn returns exp(jx).
func turn(x float64) complex128 {
	sin, cos := math.Sincos(x)
	return complex(cos, sin)
}
