package sound

// bandSum gathers the lines of one band.
type bandSum struct {
	lines        int
	energy, flat []float64 // by receiver
	line         correlation
	scattering   float64 // sum over the lines
	kept, total  float64 // energy that follows the flat pattern, and all of it
	receivers    []receiver
}

func newBandSum(receivers int) *bandSum {
	return &bandSum{
		energy: make([]float64, receivers), flat: make([]float64, receivers), receivers: make([]receiver, receivers),
	}
}

// reset forgets all lines.
func (b *bandSum) reset() {
	clear(b.energy)
	clear(b.flat)
	*b = bandSum{energy: b.energy, flat: b.flat, receivers: b.receivers}
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
	s := Spread{Band: band, Scattering: b.scattering / float64(b.lines)}
	s.Energy, s.Diffusion = b.mean(b.energy, weights)
	s.FlatEnergy, s.Flat = b.mean(b.flat, weights)
	s.Normalised = normalise(s.Diffusion, s.Flat)
	if b.total > 0 {
		s.ByEnergy = 1 - b.kept/b.total
	}
	return s
}

// mean returns the means over the lines of sums of energies, and their
// diffusion.
func (b *bandSum) mean(sums, weights []float64) (energy []float64, d float64) {
	energy = make([]float64, len(sums))
	for i, sum := range sums {
		energy[i] = sum / float64(b.lines)
		b.receivers[i] = receiver{energy[i], 1}
		if weights != nil {
			b.receivers[i].weight = weights[i]
		}
	}
	return energy, diffusion(b.receivers)
}
