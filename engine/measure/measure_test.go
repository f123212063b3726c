package measure_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"blockfield/engine/length"
	"blockfield/engine/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func um(n int64) length.Length { return length.Micrometres(n) }

// square are sticks as wide as thick.
func square(readings ...length.Length) []measure.Stick {
	var all []measure.Stick
	for i := 0; i+1 < len(readings); i += 2 {
		all = append(all, measure.Stick{Width: readings[i], Thickness: readings[i+1]})
	}
	return all
}

// The data sets NumAcc1, 3 and 4 of NIST's Statistical Reference Datasets for
// univariate statistics, from memory: their certified means are 10000002,
// 1000000.2 and 10000000.2, their standard deviations 1, 0.1 and 0.1. Their many
// leading digits break sums of squares. NumAcc1 has three readings; it is given
// four here, and the deviation of those by hand.
func TestSectionOfHardNumbers(t *testing.T) {
	alternate := func(middle, step int64) []measure.Stick {
		readings := []length.Length{um(middle)}
		for i := range 999 {
			readings = append(readings, um(middle+step-2*step*int64(i%2)))
		}
		return square(readings...)
	}
	for _, c := range []struct {
		name          string
		sticks        []measure.Stick
		meanUM        int64
		spreadMM, off float64
	}{
		// 1, 3, 2 and 2 behind 10000000 µm: squares 1 + 1 over 3.
		{"NumAcc1", square(um(10_000_001), um(10_000_003), um(10_000_002), um(10_000_002)), 10_000_000, math.Sqrt(2.0/3) / 1000, 1e-12},
		// One reading fewer than the 1001 of the set, so that sticks have two sides:
		// 999 steps of 0.1 off the middle, and one more up than down, over 999.
		{"NumAcc3", alternate(1_000_000_200, 100), 1_000_000_200, 0.1, 1e-6},
		{"NumAcc4", alternate(10_000_000_200, 100), 10_000_000_200, 0.1, 1e-6},
	} {
		s, ok := measure.Of(c.sticks)
		require.True(t, ok, c.name)
		assert.Equal(t, um(c.meanUM), s.Mean, c.name)
		assert.InDelta(t, c.spreadMM, s.SpreadMM, c.off, c.name)
	}
}

// Ten sticks, by hand: widths 36.0 … 36.4 twice, thicknesses 0.1 less; mean 36.15,
// squares about it 20·(0.02 + 0.0025) = 0.45, over 19: 0.153897.
func TestSectionByHand(t *testing.T) {
	var sticks []measure.Stick
	for range 2 {
		for i := range int64(5) {
			sticks = append(sticks, measure.Stick{Width: um(36_000 + 100*i), Thickness: um(35_900 + 100*i)})
		}
	}
	s, ok := measure.Of(sticks)
	require.True(t, ok)
	assert.True(t, s.Whole())
	assert.Equal(t, "36.15 mm", s.Mean.String())
	assert.InDelta(t, 0.153897, s.SpreadMM, 5e-7)
	assert.InDelta(t, 2*0.153897/math.Sqrt(20), s.WithinMM, 5e-7)
	assert.InDelta(t, 36.2, s.WidthMM, 1e-12)
	assert.InDelta(t, 36.1, s.ThicknessMM, 1e-12)
	assert.Equal(t, "35.9 mm", s.Least.String())
	assert.Equal(t, "36.4 mm", s.Most.String())

	nine, _ := measure.Of(sticks[:9])
	assert.False(t, nine.Whole())
	_, ok = measure.Of(nil)
	assert.False(t, ok)
}

// Two lists are the same sticks; a side that was not measured leaves its stick out.
func TestSectionOfReadings(t *testing.T) {
	widths, thicknesses := []length.Length{um(36_000), um(36_200)}, []length.Length{um(36_100), um(36_300)}
	s, _ := measure.OfReadings(widths, thicknesses)
	want, _ := measure.Of([]measure.Stick{{widths[0], thicknesses[0]}, {widths[1], thicknesses[1]}})
	assert.Equal(t, want, s)
	s, _ = measure.OfReadings(append(widths, um(50_000)), thicknesses)
	assert.Equal(t, want, s)
	_, ok := measure.OfReadings(widths, nil)
	assert.False(t, ok)
}

// Inches are read to a thousandth: 1.496, 1.499, 1.5, 1.5 have the mean 1.49875.
func TestSectionInInches(t *testing.T) {
	inch := func(thousandths int64) length.Length {
		return length.Nanometres(thousandths*25_400, length.InInch)
	}
	s, _ := measure.Of(square(inch(1496), inch(1499), inch(1500), inch(1500)))
	assert.Equal(t, "1.499 in", s.Mean.String())
	even, _ := measure.Of(square(inch(1500), inch(1500)))
	assert.Equal(t, "1 1/2 in", even.Mean.String())
	assert.Zero(t, even.SpreadMM)
}

// Order and turning of the sticks change nothing; moving all readings moves the
// mean and leaves the spread.
func TestSectionLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		var a, turned, moved []measure.Stick
		for range 10 {
			w, th := 36_000+r.Int64N(600), 36_000+r.Int64N(600)
			a = append(a, measure.Stick{Width: um(w), Thickness: um(th)})
			turned = append([]measure.Stick{{Width: um(th), Thickness: um(w)}}, turned...)
			moved = append(moved, measure.Stick{Width: um(w + 2000), Thickness: um(th + 2000)})
		}
		s, _ := measure.Of(a)
		o, _ := measure.Of(turned)
		m, _ := measure.Of(moved)
		assert.Equal(t, s.Mean, o.Mean)
		assert.InDelta(t, s.SpreadMM, o.SpreadMM, 1e-9)
		assert.Equal(t, s.Mean.Add(um(2000)), m.Mean)
		assert.InDelta(t, s.SpreadMM, m.SpreadMM, 1e-9)
	}
}

// The closed form by hand, and the two rows of the trade's own warning: 0.3 mm too
// much on each of 41 blocks is 12 mm.
func TestForecast(t *testing.T) {
	d := measure.Forecast(41, 0.3, 0)
	assert.InDelta(t, 12.3, d.MeanMM, 1e-9)
	assert.Zero(t, d.BandMM)

	d = measure.Forecast(25, -0.1, 0.25)
	assert.InDelta(t, -2.5, d.MeanMM, 1e-12)
	assert.InDelta(t, 2.5, d.BandMM, 1e-12)
	assert.InDelta(t, 5, d.WorstMM(), 1e-12)
}

// Rows that are put together out of random blocks end within the band in about
// 95 of 100 cases (95.4 of a normal distribution), and their lengths spread as
// σ√n, which a band that grew with n would miss by far.
func TestForecastAgainstRandomRows(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 9))
	const rows, mean, sigma = 4000, 0.05, 0.2
	for _, n := range []int{10, 40, 160} {
		d := measure.Forecast(n, mean, sigma)
		within, squares := 0, 0.0
		for range rows {
			sum := 0.0
			for range n {
				sum += mean + sigma*r.NormFloat64()
			}
			off := sum - d.MeanMM
			squares += off * off
			if math.Abs(off) <= d.BandMM {
				within++
			}
		}
		assert.InDelta(t, 0.954, float64(within)/rows, 0.015, "%d blocks", n)
		assert.InDelta(t, d.BandMM/2, math.Sqrt(squares/rows), 0.05*d.BandMM, "%d blocks", n)
	}
}

// By hand: 12 rows of 36 mm with 0.2 mm of slack reach 5·36.2 − 0.2 = 180.8,
// 361.8 and 434.2 mm from the edge.
func TestMarks(t *testing.T) {
	marks := measure.Marks(12, length.MM(36), um(200))
	require.Len(t, marks, 3)
	for i, want := range []struct {
		row int
		at  string
	}{{5, "180.8 mm"}, {10, "361.8 mm"}, {12, "434.2 mm"}} {
		assert.Equal(t, want.row, marks[i].Row)
		assert.Equal(t, want.at, marks[i].Distance.String())
	}
	assert.Equal(t, "36 mm", measure.Reach(1, length.MM(36), um(200)).String())
	assert.Len(t, measure.Marks(10, length.MM(36), um(0)), 2, "the last row once")
	assert.Len(t, measure.Marks(4, length.MM(36), um(0)), 1)
}
