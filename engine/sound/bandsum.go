package sound

// bandSum gathers the lines of one band.
type bandSum struct {
	lines        int
	energy, flat []float64 // by receiver
	line         correlation
	scattering   float64 // sum over the lines
	kept, total  float64 // energy that follows the flat pattern, and all of it
}

func newBandSum(receivers int) *bandSum {
	return &bandSum{energy: make([]float64, receivers), flat: make([]float64, receivers)}
}

// begin starts a line.
func (b *bandSum) begin() { b.line = correlation{} }

// add adds what one receiver hears of a line.
func (b *bandSum) add(receiver int, weight float64, pressure, flat complex128) {
	re, im, flatRe, flatIm := real(pressure), imag(pressure), real(flat), imag(flat)
	b.energy[receiver] += re*re + im*im
	b.flat[receiver] += flatRe*flatRe + flatIm*flatIm
	b.line.add(weight, re, im, flatRe, flatIm)
}

// end closes a line.
func (b *bandSum) end() {
	b.lines++
	b.scattering += b.line.scattering()
	b.total += b.line.panel
	b.kept += b.line.panel * (1 - b.line.scattering())
}

// spread returns the coefficients of the band. Weights may be nil where all
// receivers weigh alike.
func (b *bandSum) spread(band Band, weights []float64) Spread {
	panel, flat := make([]Receiver, len(b.energy)), make([]Receiver, len(b.energy))
	for i := range panel {
		w := 1.0
		if weights != nil {
			w = weights[i]
		}
		panel[i] = Receiver{b.energy[i] / float64(b.lines), w}
		flat[i] = Receiver{b.flat[i] / float64(b.lines), w}
	}
	s := Spread{
		Band: band, Diffusion: Diffusion(panel), Flat: Diffusion(flat),
		Scattering: b.scattering / float64(b.lines),
		Energy:     energies(panel), FlatEnergy: energies(flat),
	}
	s.Normalised = Normalise(s.Diffusion, s.Flat)
	if b.total > 0 {
		s.ByEnergy = 1 - b.kept/b.total
	}
	return s
}

func energies(all []Receiver) []float64 {
	out := make([]float64, len(all))
	for i, r := range all {
		out[i] = r.Energy
	}
	return out
}
