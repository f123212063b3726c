package sound_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"slices"
	"testing"

	"blockfield/engine/sound"

	"github.com/stretchr/testify/assert"
)

// A level field is a flat panel: its pressure is O·sinc(k·a·w·u/2) in the plane,
// it scatters nothing, and nothing is left of its diffusion.
func TestALevelFieldIsAFlatPanel(t *testing.T) {
	const columns, pitch, c = 14, 0.044, 343.2
	s := sound.Surface{Columns: columns, Rows: 5, PitchM: pitch, HeightsM: []float64{0.03}, Levels: make([]uint16, 5*columns)}
	a := sound.Arrangement{Surface: s}
	for _, incidence := range []float64{0, 30, -60} {
		p := sound.Plane(a, sound.Across, []float64{incidence}, sound.Options{SpeedMS: c, Lines: 1})[0]
		for _, band := range p.Bands {
			k := 2 * math.Pi * band.Band.Hz() / c
			for i, deg := range p.AnglesDeg {
				u := math.Sin(deg*math.Pi/180) + math.Sin(incidence*math.Pi/180)
				o := (math.Cos(deg*math.Pi/180) + math.Cos(incidence*math.Pi/180)) / 2
				want := o * sinc(k*columns*pitch*u/2)
				assert.InDelta(t, want*want, band.Energy[i], 1e-9, "%v Hz, %v°", band.Band.NominalHz(), deg)
			}
			assert.InDelta(t, 0, band.Scattering, 1e-9)
			assert.InDelta(t, 0, band.Normalised, 1e-9)
			assert.Equal(t, band.Flat, band.Diffusion)
		}
	}
	for _, band := range sound.HalfSpace(a, 0, sound.Options{}).Bands {
		assert.InDelta(t, 0, band.Scattering, 1e-9)
	}
	assert.Zero(t, a.DeepestM())
}

// Source and receiver may change places.
func TestReciprocity(t *testing.T) {
	a := random(rand.New(rand.NewPCG(7, 8)), 17, 6, 5)
	var angles []float64
	for deg := -85.0; deg <= 85; deg += 5 {
		angles = append(angles, deg)
	}
	o := sound.Options{Bands: []sound.Band{2, 8}}
	polars := sound.Plane(a, sound.Down, angles, o)
	for b := range o.Bands {
		for i := range angles {
			for j := range angles {
				assert.InDelta(t, polars[i].Bands[b].Energy[j+1], polars[j].Bands[b].Energy[i+1], 1e-11,
					"%v° to %v°", angles[i], angles[j])
			}
		}
	}
}

// The mirror image of a field answers with the mirror image of its pattern.
func TestMirror(t *testing.T) {
	a := random(rand.New(rand.NewPCG(9, 10)), 12, 7, 4)
	m := a
	m.Levels = slices.Clone(a.Levels)
	for i := range a.Rows {
		slices.Reverse(m.Levels[i*a.Columns : (i+1)*a.Columns])
	}
	o := sound.Options{Bands: []sound.Band{1, 9}}
	for _, source := range []float64{0, 30} {
		p, q := sound.Plane(a, sound.Across, []float64{source}, o)[0], sound.Plane(m, sound.Across, []float64{-source}, o)[0]
		for b := range o.Bands {
			back := slices.Clone(q.Bands[b].Energy)
			slices.Reverse(back)
			assert.InDeltaSlice(t, p.Bands[b].Energy, back, 1e-11)
			assert.InDelta(t, p.Bands[b].Diffusion, q.Bands[b].Diffusion, 1e-11)
			assert.InDelta(t, p.Bands[b].Scattering, q.Bands[b].Scattering, 1e-11)
		}
		assert.NotEqual(t, p.Bands[0].Energy[5], q.Bands[0].Energy[5], "the field is not its own mirror image")
	}
	turned := a
	turned.Modules = []sound.Module{{Turn: sound.HalfTurn}}
	halfTurn := a
	halfTurn.Levels = slices.Clone(a.Levels)
	slices.Reverse(halfTurn.Levels)
	one, other := sound.HalfSpace(turned, 0, o), sound.HalfSpace(halfTurn, 0, o)
	for b := range o.Bands {
		assert.InDeltaSlice(t, other.Bands[b].Energy, one.Bands[b].Energy, 1e-9, "a panel turned by 180°")
	}
}

// Where the panel hangs does not matter to the far field, nor how far all its
// blocks stand off.
func TestShift(t *testing.T) {
	a := random(rand.New(rand.NewPCG(11, 12)), 10, 11, 5)
	moved := a
	moved.Modules = []sound.Module{{XM: 0.37, YM: -0.21}}
	raised := a
	raised.HeightsM = slices.Clone(a.HeightsM)
	for i := range raised.HeightsM {
		raised.HeightsM[i] += 0.05
	}
	o := sound.Options{Bands: []sound.Band{-4, 6}}
	want, dome := sound.Plane(a, sound.Down, []float64{30}, o)[0], sound.HalfSpace(a, 0, o)
	for _, b := range []sound.Arrangement{moved, raised} {
		got := sound.Plane(b, sound.Down, []float64{30}, o)[0]
		other := sound.HalfSpace(b, 0, o)
		for i := range o.Bands {
			assert.InDeltaSlice(t, want.Bands[i].Energy, got.Bands[i].Energy, 1e-9)
			assert.InDelta(t, dome.Bands[i].Scattering, other.Bands[i].Scattering, 1e-9)
		}
	}
}

// Like panels answer with the pattern of one times that of their places.
func TestLikePanelsAreAnArray(t *testing.T) {
	a := random(rand.New(rand.NewPCG(13, 14)), 8, 6, 4)
	row, places := a, []float64{-0.9, -0.1, 0.8}
	for _, x := range places {
		row.Modules = append(row.Modules, sound.Module{XM: x})
	}
	const c = 343.2
	o := sound.Options{SpeedMS: c, Bands: []sound.Band{4}, Lines: 1}
	one, all := sound.Plane(a, sound.Across, []float64{0}, o)[0], sound.Plane(row, sound.Across, []float64{0}, o)[0]
	for i, deg := range one.AnglesDeg {
		var factor complex128
		for _, x := range places {
			factor += cmplx.Exp(complex(0, 2*math.Pi*sound.Band(4).Hz()/c*math.Sin(deg*math.Pi/180)*x)) / 3
		}
		want := one.Bands[0].Energy[i] * real(factor*cmplx.Conj(factor))
		assert.InDelta(t, want, all.Bands[0].Energy[i], 1e-11)
	}
}

// Lengths twice as long answer an octave lower.
func TestScale(t *testing.T) {
	a := random(rand.New(rand.NewPCG(15, 16)), 9, 9, 5)
	b := a
	b.PitchM, b.HeightsM = 2*a.PitchM, slices.Clone(a.HeightsM)
	for i := range b.HeightsM {
		b.HeightsM[i] *= 2
	}
	want := sound.HalfSpace(a, 0, sound.Options{SpeedMS: 340, Bands: []sound.Band{3}}).Bands[0]
	got := sound.HalfSpace(b, 0, sound.Options{SpeedMS: 680, Bands: []sound.Band{3}}).Bands[0]
	assert.InDelta(t, want.Scattering, got.Scattering, 1e-10)
	assert.InDelta(t, want.Diffusion, got.Diffusion, 1e-10)
}

// Where all heights are whole half waves the field is a flat board: closed
// form, f = c/(2·step), exact in the grating variant.
func TestHalfWavesAreAFlatBoard(t *testing.T) {
	const c, step = 343.2, 0.024
	a := random(rand.New(rand.NewPCG(17, 18)), 14, 14, 4)
	for i := range a.HeightsM {
		a.HeightsM[i] = 0.014 + step*float64(i)
	}
	// The band's centre is put where the half wave is the step.
	speed := 2 * step * sound.Band(8).Hz()
	o := sound.Options{SpeedMS: speed, Phase: sound.GratingOblique, Bands: []sound.Band{8}, Lines: 1}
	assert.InDelta(t, 0, sound.HalfSpace(a, 0, o).Bands[0].Scattering, 1e-9)
	o.SpeedMS = speed * 1.2
	assert.Greater(t, sound.HalfSpace(a, 0, o).Bands[0].Scattering, 0.3, "elsewhere it is not")
}

// The solid angles of the receivers are those of half a sphere, 2π.
func TestDomeWeights(t *testing.T) {
	all := sound.DomeReceivers()
	assert.Len(t, all, 36*72+1)
	var sum, squares float64
	for _, d := range all {
		sum += d.Weight
		squares += d.Weight * math.Pow(math.Cos(d.AngleDeg*math.Pi/180), 2)
	}
	assert.InDelta(t, 2*math.Pi, sum, 1e-9)
	assert.InDelta(t, 2*math.Pi/3, squares, 1e-3, "∫cos²θ over the half space")
}

// Random incidence is the mean of its sources with the weight cos θ (Paris),
// normalised last.
func TestRandomIncidence(t *testing.T) {
	a := random(rand.New(rand.NewPCG(19, 20)), 11, 8, 4)
	o := sound.Options{Bands: []sound.Band{2}}
	var d, flat, weights float64
	for deg := -85.0; deg <= 85; deg += 10 {
		s := sound.Plane(a, sound.Across, []float64{deg}, o)[0].Bands[0]
		w := math.Cos(deg * math.Pi / 180)
		d, flat, weights = d+w*s.Diffusion, flat+w*s.Flat, weights+w
	}
	got := sound.RandomIncidence(a, sound.Across, o)[0]
	assert.InDelta(t, d/weights, got.Diffusion, 1e-12)
	assert.InDelta(t, flat/weights, got.Flat, 1e-12)
	assert.InDelta(t, (d-flat)/(weights-flat), got.Normalised, 1e-12)
}

func TestValidate(t *testing.T) {
	good := func() sound.Arrangement { return random(rand.New(rand.NewPCG(1, 1)), 4, 3, 2) }
	assert.NoError(t, good().Validate())
	for name, spoil := range map[string]func(*sound.Arrangement){
		"no cells":         func(a *sound.Arrangement) { a.Rows, a.Levels = 0, nil },
		"too many a side":  func(a *sound.Arrangement) { a.Columns, a.Rows, a.Levels = 401, 1, make([]uint16, 401) },
		"too many":         func(a *sound.Arrangement) { a.Columns, a.Rows, a.Levels = 400, 101, make([]uint16, 40400) },
		"ragged":           func(a *sound.Arrangement) { a.Levels = a.Levels[1:] },
		"too many heights": func(a *sound.Arrangement) { a.HeightsM = make([]float64, 257) },
		"no pitch":         func(a *sound.Arrangement) { a.PitchM = 0 },
		"pitch no number":  func(a *sound.Arrangement) { a.PitchM = math.NaN() },
		"gap too wide":     func(a *sound.Arrangement) { a.GapM = a.PitchM },
		"unknown level":    func(a *sound.Arrangement) { a.Levels[3] = 2 },
		"negative height":  func(a *sound.Arrangement) { a.HeightsM[0] = -0.001 },
	} {
		a := good()
		spoil(&a)
		assert.Error(t, a.Validate(), name)
	}
}
