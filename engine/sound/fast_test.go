package sound_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"

	"blockfield/engine/sound"

	"github.com/stretchr/testify/assert"
)

// agree is how near the fast paths stay to the plain sum, of a flat panel's
// mirror reflection.
const agree = 1e-9

var phases = []sound.Phase{sound.Kirchhoff, sound.Grating, sound.GratingOblique}

// arrangements of every kind: single and several panels, turns, gaps, odd and
// even sides, one height to many, one cell.
func arrangements() map[string]sound.Arrangement {
	r := rand.New(rand.NewPCG(1, 2))
	all := map[string]sound.Arrangement{
		"even sides":   random(r, 12, 8, 5),
		"odd sides":    random(r, 13, 7, 4),
		"odd and even": random(r, 9, 10, 9),
		"two heights":  random(r, 6, 5, 2),
		"one height":   random(r, 6, 5, 1),
		"one cell":     random(r, 1, 1, 3),
		"one row":      random(r, 31, 1, 6),
		"many heights": random(r, 11, 6, 40),
		"gaps":         random(r, 10, 9, 4),
		"hair gaps":    random(r, 10, 9, 4),
		"panels":       random(r, 7, 6, 4),
	}
	gaps := all["gaps"]
	gaps.GapM = 0.004
	all["gaps"] = gaps
	hair := all["hair gaps"]
	hair.GapM = 0.0009
	all["hair gaps"] = hair
	several := all["panels"]
	several.GapM = 0.002
	several.Modules = []sound.Module{
		{Turn: sound.AsDesigned, XM: -0.5, YM: 0.2}, {Turn: sound.Counter, XM: 0.1, YM: 0.2},
		{Turn: sound.HalfTurn, XM: 0.7, YM: 0.2}, {Turn: sound.AsDesigned, XM: 0.1, YM: -0.3},
	}
	all["panels"] = several
	return all
}

// lines of a band at the speed of sound, as wave numbers.
func wavenumbers(b sound.Band, n int, c float64) []float64 {
	var out []float64
	for _, hz := range b.Lines(n) {
		out = append(out, 2*math.Pi*hz/c)
	}
	return out
}

func TestPlaneEqualsThePlainSum(t *testing.T) {
	const c = 345.0
	incidences := []float64{0, 30, -30, -60, 85}
	for name, a := range arrangements() {
		for _, phase := range phases {
			o := sound.Options{SpeedMS: c, Phase: phase, Bands: []sound.Band{-5, 3, 10}, Lines: 3}
			for _, axis := range []sound.Axis{sound.Across, sound.Down} {
				for _, polar := range sound.Plane(a, axis, incidences, o) {
					for _, s := range polar.Bands {
						energy, flat := slowPlane(a, phase, axis, polar.IncidenceDeg, polar.AnglesDeg, wavenumbers(s.Band, 3, c))
						assert.InDeltaSlice(t, energy, s.Energy, agree, "%s %v %v %v°", name, phase, axis, polar.IncidenceDeg)
						assert.InDeltaSlice(t, flat, s.FlatEnergy, agree, "%s flat", name)
					}
				}
			}
		}
	}
}

func slowPlane(a sound.Arrangement, phase sound.Phase, axis sound.Axis, incidence float64, angles, ks []float64) (energy, flat []float64) {
	azimuth := 0.0
	if axis == sound.Down {
		azimuth = 90
	}
	for _, angle := range angles {
		var e, f float64
		for _, k := range ks {
			p, p0 := pressure(a, phase, k, toward(incidence, azimuth), toward(angle, azimuth))
			e += real(p)*real(p) + imag(p)*imag(p)
			f += real(p0)*real(p0) + imag(p0)*imag(p0)
		}
		energy, flat = append(energy, e/float64(len(ks))), append(flat, f/float64(len(ks)))
	}
	return energy, flat
}

func TestHalfSpaceEqualsThePlainSum(t *testing.T) {
	const c, lines = 343.2, 2
	for name, a := range arrangements() {
		for n, phase := range phases {
			for _, incidence := range []float64{0, 25 * float64(n)} {
				o := sound.Options{SpeedMS: c, Phase: phase, Bands: []sound.Band{-5, 3, 10}, Lines: lines}
				dome := sound.HalfSpace(a, incidence, o)
				for _, s := range dome.Bands {
					for i, d := range sound.DomeReceivers() {
						if i%17 != 0 {
							continue // on every ring some; the plain sum is slow
						}
						var e, f float64
						for _, k := range wavenumbers(s.Band, lines, c) {
							p, p0 := pressure(a, phase, k, toward(incidence, 0), toward(d.AngleDeg, d.AzimuthDeg))
							e += (real(p)*real(p) + imag(p)*imag(p)) / lines
							f += (real(p0)*real(p0) + imag(p0)*imag(p0)) / lines
						}
						assert.InDelta(t, e, s.Energy[i], agree, "%s %v %v° %v", name, phase, incidence, d)
						assert.InDelta(t, f, s.FlatEnergy[i], agree, "%s flat", name)
					}
				}
			}
		}
	}
}

// The transforms themselves, sign and all, over more than a turn of the phase.
func TestTransformsEqualThePlainSum(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	for _, a := range []sound.Arrangement{random(r, 12, 5, 4), random(r, 9, 6, 3), random(r, 5, 3, 30)} {
		for range 20 {
			alpha, beta := 30*r.Float64()-15, 30*r.Float64()-15
			line, grid := make([]complex128, len(a.HeightsM)), make([]complex128, len(a.HeightsM))
			for i := range a.Rows {
				for j := range a.Columns {
					level := a.Levels[i*a.Columns+j]
					x, y := float64(j)-float64(a.Columns-1)/2, float64(a.Rows-1)/2-float64(i)
					line[level] += cmplx.Exp(complex(0, alpha*x))
					grid[level] += cmplx.Exp(complex(0, alpha*x+beta*y))
				}
			}
			gotLine, gotGrid := sound.LineTransform(a.Surface, sound.Across, alpha), sound.GridTransform(a.Surface, alpha, beta)
			for l := range line {
				assert.InDelta(t, 0, cmplx.Abs(line[l]-gotLine[l]), 1e-9*float64(a.Columns*a.Rows), "level %d of a line, %v", l, alpha)
				assert.InDelta(t, 0, cmplx.Abs(grid[l]-gotGrid[l]), 1e-9*float64(a.Columns*a.Rows), "level %d of a grid", l)
			}
		}
	}
}

// The unit vectors are those of the library, up to the largest angle that comes
// up: there and back along the two metres of the tallest block at 20 kHz.
func TestUnitVectors(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	for _, reach := range []float64{1e-6, 1, 100, 1500} {
		for range 1000 {
			angle := reach * (2*r.Float64() - 1)
			got := sound.Unit(angle)
			assert.InDelta(t, 0, cmplx.Abs(got-cmplx.Exp(complex(0, angle))), 1e-13+2e-16*math.Abs(angle), "%v", angle)
		}
	}
}
