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
	// ByEnergy is the scattering share of the whole band's energy, to which a
	// line where hardly anything comes back adds hardly anything. Verdicts and
	// charts go by it.
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
	sources := make([]*source, len(incidenceDeg))
	for i, deg := range incidenceDeg {
		out[i] = Polar{Axis: axis, IncidenceDeg: deg, AnglesDeg: p.angles}
		if twin := slices.Index(incidenceDeg[:i], -deg); twin >= 0 {
			sources[i] = sources[twin]
		} else {
			sources[i] = newSource(math.Abs(deg))
			p.sources = append(p.sources, sources[i])
		}
		if deg < 0 {
			sources[i].down = newBandSum(planeReceivers)
		}
	}
	for _, band := range p.o.Bands {
		p.band(band)
		for i, deg := range incidenceDeg {
			sum := sources[i].up
			if deg < 0 {
				sum = sources[i].down
			}
			out[i].Bands = append(out[i].Bands, sum.spread(band, nil))
		}
	}
	return out
}

// source is where sound comes from. The pattern of a source on the other side
// of the normal is that of this one with the transforms conjugated and the
// receivers in reverse.
type source struct {
	sin, cos float64
	normal   bool
	up, down *bandSum // of the source, and of that on the other side; nil where nobody asks for it
}

func newSource(deg float64) *source {
	s := &source{normal: deg == 0, up: newBandSum(planeReceivers)}
	s.sin, s.cos = math.Sincos(deg * math.Pi / 180)
	return s
}

// planeWork is one arrangement in one plane, made ready.
type planeWork struct {
	a       Arrangement
	axis    Axis
	o       Options
	levels  int
	depths  []float64
	line    *lineTable
	scale   float64 // 1 over all cells
	panels  panels
	sources []*source
	angles  []float64 // of the receivers, in degrees
	sines   []float64
	cosines []float64
	circle  *circle
	in      []complex128 // phases of one line on the way in, of each of the depths
	out     []complex128 // those on the way out: for each cosine, of each of the depths
	phases  []complex128 // of both ways
	f, own  []complex128 // transforms of one direction: with all panels, of one panel
}

func newPlaneWork(a Arrangement, axis Axis, o Options) *planeWork {
	a = a.used()
	p := &planeWork{a: a, axis: axis, o: o.whole(), levels: len(a.HeightsM), depths: a.depths()}
	p.line = newLineTable(newLineSum(a.counts(axis)))
	p.scale = a.scale()
	p.circle = newCircle()
	p.panels = newPanels(a, axis)
	for deg := -90; deg <= 90; deg += stepDeg {
		sin, cos := math.Sincos(float64(deg) * math.Pi / 180)
		p.angles = append(p.angles, float64(deg))
		p.sines, p.cosines = append(p.sines, sin), append(p.cosines, math.Abs(cos))
	}
	p.phases = make([]complex128, planeReceivers*len(p.depths))
	p.in, p.out = make([]complex128, len(p.depths)), make([]complex128, planeReceivers*len(p.depths))
	p.f, p.own = make([]complex128, p.levels), make([]complex128, p.levels)
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

// band listens to one band for all sources.
func (p *planeWork) band(band Band) {
	for _, s := range p.sources {
		s.up.reset()
		if s.down != nil {
			s.down.reset()
		}
	}
	for _, hz := range band.lines(p.o.Lines) {
		k := 2 * math.Pi * hz / p.o.SpeedMS
		p.prepare(k)
		for _, s := range p.sources {
			p.wayIn(k, s)
			p.oneLine(k, s)
		}
	}
}

// prepare works out the phases of every level on the way out at one frequency,
// which are the same on both sides of the normal.
func (p *planeWork) prepare(k float64) {
	for i := planeReceivers / 2; i < planeReceivers; i++ {
		_, out, _ := p.o.Phase.path(1, p.cosines[i])
		for l, d := range p.depths {
			p.out[i*len(p.depths)+l] = p.circle.unit(-k * d * out)
		}
	}
}

// wayIn adds the way in, which depends on the source alone.
func (p *planeWork) wayIn(k float64, s *source) {
	in, _, _ := p.o.Phase.path(s.cos, 1)
	for l, d := range p.depths {
		p.in[l] = p.circle.unit(-k * d * in)
	}
	for i := planeReceivers / 2 * len(p.depths); i < len(p.out); i += len(p.depths) {
		phases := p.phases[i : i+len(p.depths)]
		for l, z := range p.out[i : i+len(p.depths)] {
			phases[l] = z * p.in[l]
		}
	}
}

// oneLine adds one frequency to the sums of a source and of the one on the
// other side.
func (p *planeWork) oneLine(k float64, s *source) {
	first := 0
	if s.normal {
		first = planeReceivers / 2 // the other half is the same with conjugated transforms
	}
	s.up.begin()
	if s.down != nil {
		s.down.begin()
	}
	for i := first; i < planeReceivers; i++ {
		twin := planeReceivers - 1 - i
		u := p.sines[i] + s.sin
		f := p.transform(k * u)
		_, _, obliquity := p.o.Phase.path(s.cos, p.cosines[i])
		blocks, floor := p.element(k*u, obliquity)
		pressure, mirrored, flat := weigh(f, p.phasesOf(i), blocks, floor)
		flat *= complex(blocks+floor, 0)
		s.up.add(i, 1, pressure, flat)
		switch {
		case s.down != nil:
			s.down.add(twin, 1, mirrored, conj(flat))
		case s.normal && twin != i:
			s.up.add(twin, 1, mirrored, conj(flat))
		}
	}
	s.up.end()
	if s.down != nil {
		s.down.end()
	}
}

// element returns the pattern of one block's face and that of the floor of the
// gap round it, for the phase ku of a metre.
func (p *planeWork) element(ku, obliquity float64) (blocks, floor float64) {
	scale := obliquity * p.scale
	whole := scale * p.circle.sinc(ku*p.a.PitchM/2)
	gap := p.a.gap()
	if gap == 0 {
		return whole, 0
	}
	blocks = scale * p.a.faceShare() * p.circle.sinc(ku*(p.a.PitchM-gap)/2)
	return blocks, whole - blocks
}

// phasesOf returns the phases of the levels, and of the backer last where there
// are gaps, towards a receiver.
func (p *planeWork) phasesOf(receiver int) []complex128 {
	i, n := max(receiver, planeReceivers-1-receiver), len(p.depths)
	return p.phases[i*n : (i+1)*n]
}

// transform returns the transform of each level of the whole arrangement.
func (p *planeWork) transform(ku float64) []complex128 {
	if p.panels.one {
		p.line.at(ku*p.a.PitchM, p.f)
		return p.f
	}
	p.line.at(ku*p.a.PitchM, p.own)
	p.panels.join(ku, 0, p.own, p.f)
	return p.f
}

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
