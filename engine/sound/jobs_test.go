package sound_test

import (
	"fmt"
	"math"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/field"
	"blockfield/engine/sound"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// laid is a pattern on a pitch in mm with heights in mm.
func laid(t testing.TB, p design.Pattern, columns, rows int, pitchMM float64, heightsMM ...float64) sound.Arrangement {
	t.Helper()
	g, err := field.Lay(p, columns, rows, len(heightsMM))
	require.NoError(t, err)
	s := sound.Surface{Columns: columns, Rows: rows, PitchM: pitchMM / 1000}
	for _, h := range heightsMM {
		s.HeightsM = append(s.HeightsM, h/1000)
	}
	for _, l := range g.Levels {
		s.Levels = append(s.Levels, uint16(l))
	}
	return sound.Arrangement{Surface: s}
}

// referenceListening is how the separate reference model listened: straight on,
// whole half space, path 2·d with obliquity, 343 m/s, three lines a band, share
// of the band's energy. Its bands stood at their nominal frequencies, 1250 Hz
// instead of 1258.9, which matters where the curve is steep (found by comparing,
// not stated with the figures); a band here is moved there by the speed of sound.
func referenceListening(a sound.Arrangement, bands ...sound.Band) []sound.Spread {
	var out []sound.Spread
	for _, b := range bands {
		o := sound.Options{
			SpeedMS: 343 * b.Hz() / b.NominalHz(), Phase: sound.GratingOblique, Lines: 3, Bands: []sound.Band{b},
		}
		out = append(out, sound.HalfSpace(a, 0, o).Bands[0])
	}
	return out
}

const (
	points = 0.03 // the tolerance that was set for the comparison
	// evennessApart: the reference's evenness, (mean I)²/mean(I²) less the flat
	// board's over directions of its own choice, is near the normalised diffusion
	// coefficient but not the same.
	evennessApart = 0.04
	// risingApart: in this band the first order of a repeat of 7 × 36.2 mm rises
	// over the edge of the panel, at 1354 Hz, and the place of the three lines
	// decides.
	risingApart = 0.04
)

// The worked jobs: percent and evenness as a separate reference model printed
// them with the jobs, for one panel.
func TestFullSumOfWorkedJobs(t *testing.T) {
	bands := []sound.Band{-3, 0, 2, 4, 6} // 500, 1000, 1600, 2500, 4000 Hz
	for name, job := range map[string]struct {
		a        sound.Arrangement
		share    []float64
		evenness []float64
	}{
		"booth": {
			laid(t, design.Pattern{Kind: design.QuadraticResidue, Order: 11}, 26, 18, 34.2, 0, 18, 36, 54, 72),
			[]float64{0, 0.04, 0.57, 0.80, 0.98}, []float64{0, 0.01, 0.11, 0.17, 0.32},
		},
		"cafe": {
			laid(t, design.Pattern{Kind: design.PrimitiveRoot, Order: 821, FoldRows: 20, FoldColumns: 41}, 34, 20, 44.65, 12.7, 28.575, 47.625, 73.025),
			[]float64{0.01, 0.09, 0.56, 0.85, 0.97}, []float64{0, 0.01, 0.05, 0.16, 0.28},
		},
		"home": {
			laid(t, design.Pattern{Kind: design.QuadraticResidue, Order: 7}, 14, 14, 44.2, 14, 38, 62, 86),
			[]float64{0, 0.06, 0.61, 0.99, 0.99}, []float64{0, 0.01, 0.17, 0.31, 0.28},
		},
	} {
		for i, s := range referenceListening(job.a, bands...) {
			t.Logf("%s %v Hz: share %.3f (%.2f), evenness %.3f (%.2f)", name, s.Band.NominalHz(), s.ByEnergy, job.share[i], s.Normalised, job.evenness[i])
			assert.InDelta(t, job.share[i], s.ByEnergy, points, "%s %v Hz", name, s.Band.NominalHz())
			assert.InDelta(t, job.evenness[i], s.Normalised, evennessApart, "%s evenness %v Hz", name, s.Band.NominalHz())
		}
	}
}

// The reference panel of one metre, same source: 20/44/84/93/85/96 %.
func TestFullSumOfTheReferencePanel(t *testing.T) {
	a := laid(t, design.Pattern{Kind: design.Shuffled, Seed: 1, Clump: 2}, 28, 19, 36.2, 15, 32, 55, 84)
	want := []float64{0.20, 0.44, 0.84, 0.93, 0.85, 0.96}
	for i, s := range referenceListening(a, 0, 1, 2, 3, 4, 6) {
		assert.InDelta(t, want[i], s.ByEnergy, points, "%v Hz", s.Band.NominalHz())
	}
}

// Same wood, same depth, different order: 31 × 21 cells of 36 mm, six heights
// 0–95 mm, as the reference model printed them. A chequer scatters nothing, and
// a chequer of 3 × 3 but a little.
func TestOrderDecides(t *testing.T) {
	bands := []sound.Band{-2, 0, 1, 2, 4, 6} // 630, 1000, 1250, 1600, 2500, 4000 Hz
	chequer := func(m int) design.Pattern {
		p := design.Pattern{Kind: design.Drawn}
		for i := range 21 {
			line := ""
			for j := range 31 {
				line += fmt.Sprint(5 * ((i/m + j/m) % 2))
			}
			p.Drawn = append(p.Drawn, line)
		}
		return p
	}
	for name, row := range map[string]struct {
		pattern design.Pattern
		want    []float64
	}{
		"chequer":          {chequer(1), []float64{0, 0, 0, 0, 0, 0}},
		"chequer of three": {chequer(3), []float64{0, 0.03, 0.01, 0, 0.76, 0.31}},
		"stripes of 7":     {design.Pattern{Kind: design.QuadraticResidueStripes, Order: 7}, []float64{0, 0.01, 0.15, 0.67, 0.53, 0.84}},
		"residues of 7":    {design.Pattern{Kind: design.QuadraticResidue, Order: 7}, []float64{0, 0.03, 0.42, 0.83, 0.83, 0.95}},
		"residues of 23":   {design.Pattern{Kind: design.QuadraticResidue, Order: 23}, []float64{0, 0.07, 0.33, 0.95, 0.86, 0.98}},
		"primitive root":   {design.Pattern{Kind: design.PrimitiveRoot, Order: 691}, []float64{0.02, 0.19, 0.61, 0.91, 0.81, 0.95}},
	} {
		a := laid(t, row.pattern, 31, 21, 36.2, 0, 19, 38, 57, 76, 95)
		for i, s := range referenceListening(a, bands...) {
			t.Logf("%s %v Hz: %.3f (%.2f)", name, s.Band.NominalHz(), s.ByEnergy, row.want[i])
			apart := points
			if s.Band == 1 && row.pattern.Order == 7 {
				apart = risingApart
			}
			assert.InDelta(t, row.want[i], s.ByEnergy, apart, "%s %v Hz", name, s.Band.NominalHz())
		}
	}
	// Shuffles, mean of seeds 1 to 3.
	for clump, want := range map[int][]float64{
		1: {0.01, 0.16, 0.56, 0.94, 0.85, 0.96}, 2: {0.03, 0.33, 0.77, 0.98, 0.94, 0.98}, 3: {0.09, 0.54, 0.89, 0.99, 0.96, 0.98},
	} {
		sums := make([]float64, len(bands))
		for seed := int64(1); seed <= 3; seed++ {
			a := laid(t, design.Pattern{Kind: design.Shuffled, Seed: seed, Clump: clump}, 31, 21, 36.2, 0, 19, 38, 57, 76, 95)
			for i, s := range referenceListening(a, bands...) {
				sums[i] += s.ByEnergy / 3
			}
		}
		t.Logf("clumps of %d: %.3f (%.2f)", clump, sums, want)
		assert.InDeltaSlice(t, want, sums, points, "clumps of %d", clump)
	}
}

// The share is an integral over the half space: a plain sum over directions
// 1.5° and 3° apart comes to the same.
func TestShareDoesNotDependOnTheReceivers(t *testing.T) {
	const c = 343.2
	a := laid(t, design.Pattern{Kind: design.QuadraticResidue, Order: 7}, 14, 14, 44.2, 14, 38, 62, 86)
	for _, band := range []sound.Band{0, 2, 6} {
		o := sound.Options{SpeedMS: c, Phase: sound.GratingOblique, Bands: []sound.Band{band}, Lines: 1}
		var panel, flat []complex128
		var weights []float64
		for theta := 0.75; theta < 90; theta += 1.5 {
			for phi := 0.0; phi < 360; phi += 3 {
				p, p0 := pressure(a, sound.GratingOblique, 2*math.Pi*band.Hz()/c, vec{0, 0, 1}, toward(theta, phi))
				panel, flat = append(panel, p), append(flat, p0)
				weights = append(weights, math.Sin(theta*math.Pi/180))
			}
		}
		want := sound.CorrelationScattering(panel, flat, weights)
		assert.InDelta(t, want, sound.HalfSpace(a, 0, o).Bands[0].Scattering, 0.003, "%v Hz", band.NominalHz())
	}
}
