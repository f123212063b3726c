package sound

import "blockfield/engine/length"

// The transforms themselves, for closed forms.

// LineTransform sums a line of cells: levels[m] at place m.
func LineTransform(s Surface, axis Axis, alpha float64) []complex128 {
	out := make([]complex128, len(s.HeightsM))
	newLineTable(newLineSum(s.counts(axis))).at(alpha, out)
	return out
}

// GridTransform sums the cells of a surface.
func GridTransform(s Surface, alpha, beta float64) []complex128 {
	up, down := make([]complex128, len(s.HeightsM)), make([]complex128, len(s.HeightsM))
	newGridSum(s).at(alpha, beta, up, down)
	return up
}

// What the package keeps to itself, for its own checks.
const (
	FirstBand    = firstBand
	LastBand     = lastBand
	LinesPerBand = linesPerBand
)

func (b Band) Edges() (lowHz, highHz float64) { return b.edges() }

func (b Band) Lines(n int) []float64 { return b.lines(n) }

func Normalise(d, flat float64) float64 { return normalise(d, flat) }

func EqualStep(heights []length.Length) length.Length { return equalStep(heights) }

func FlatBoardHz(step length.Length, speedMS float64) float64 { return flatBoardHz(step, speedMS) }

// Receiver is what one direction received.
type Receiver struct{ Energy, Weight float64 }

func Diffusion(all []Receiver) float64 {
	var own []receiver
	for _, r := range all {
		own = append(own, receiver{r.Energy, r.Weight})
	}
	return diffusion(own)
}

// CorrelationScattering is the coefficient of pressures; weights may be nil.
func CorrelationScattering(panel, flat []complex128, weights []float64) float64 {
	var c correlation
	for i, p := range panel {
		w := 1.0
		if weights != nil {
			w = weights[i]
		}
		c.add(w, real(p), imag(p), real(flat[i]), imag(flat[i]))
	}
	return c.scattering()
}

// Unit is exp(j·angle) as the sums have it.
func Unit(angle float64) complex128 { return newCircle().unit(angle) }
