package sound

import "math"

// Band is a third-octave band of IEC 61260-1, by its place in the base-ten
// series: 0 is 1 kHz, 10 is 10 kHz.
type Band int

// The bands that a panel is looked at in, 100 Hz to 10 kHz.
const (
	firstBand Band = -10
	lastBand  Band = 10
)

// linesPerBand is how many frequencies stand for a band. Seven are enough for
// the coefficients of a lobed pattern to settle; common practice, no source.
const linesPerBand = 7

// Hz returns the exact centre, 1000·10^(x/10) (IEC 61260-1:2014, base ten).
func (b Band) Hz() float64 { return 1000 * math.Pow(10, float64(b)/10) }

// edges returns the lower and upper edge, a twentieth of a decade either way.
func (b Band) edges() (lowHz, highHz float64) {
	half := math.Pow(10, 1.0/20)
	return b.Hz() / half, b.Hz() * half
}

// NominalHz returns the rounded frequency that names the band.
func (b Band) NominalHz() float64 {
	names := [10]float64{1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000}
	decade := int(math.Floor(float64(b) / 10))
	name := names[int(b)-10*decade] * math.Pow(10, float64(decade))
	return math.Round(name*10) / 10 // 31.5 and 12.5 are the finest
}

// lines returns n frequencies inside the band, at the midpoints of n equal
// steps of the logarithm.
func (b Band) lines(n int) []float64 {
	low, high := b.edges()
	out := make([]float64, n)
	for i := range out {
		out[i] = low * math.Pow(high/low, (float64(i)+0.5)/float64(n))
	}
	return out
}

// BandOf returns the band that a frequency lies in.
func BandOf(hz float64) Band { return Band(math.Round(10 * math.Log10(hz/1000))) }

// Bands returns the bands from low to high, both included.
func Bands(low, high Band) []Band {
	var out []Band
	for b := low; b <= high; b++ {
		out = append(out, b)
	}
	return out
}

// Speed of sound at the reference temperature of ISO 9613-1:1993.
const (
	referenceMS = 343.2
	referenceK  = 293.15
	zeroK       = 273.15
)

// SpeedMS returns the speed of sound in air of a temperature,
// 343.2·√(T/293.15 K) (ISO 9613-1:1993).
func SpeedMS(celsius float64) float64 {
	return referenceMS * math.Sqrt((celsius+zeroK)/referenceK)
}
