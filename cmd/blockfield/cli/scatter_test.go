package cli_test

import (
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// heard is what other programs read of scatter.
type heard struct {
	Pitch        string
	IncidenceDeg any
	SpeedMS      float64
	Columns      int
	Rows         int
	Bands        []struct {
		Hz, Diffusion, Flat, Normalised, Scattering float64
		Indicative, NoClaim                         bool
	}
	Polar []struct {
		Hz                            float64
		AngleDeg, AzimuthDeg, LevelDb []float64
	}
}

func scatter(t *testing.T, in string, args ...string) heard {
	t.Helper()
	got := run(t, in, append([]string{"scatter", "-"}, args...)...)
	require.Equal(t, 0, got.code, got.err)
	var h heard
	require.NoError(t, json.Unmarshal([]byte(got.out), &h))
	return h
}

// residues of 7, at a design frequency of 500 Hz: 49.03 mm a step (M. R.
// Schroeder; speed 343.2 m/s).
const residues = "294.171,245.143,98.057,196.114,196.114,98.057,245.143\n"

func TestScatterPrintsThePlane(t *testing.T) {
	t.Parallel()
	h := scatter(t, residues, "-pitch", "80 mm", "-bands", "250:1000", "-phase", "grating", "-c", "343.2")
	assert.Equal(t, "80 mm", h.Pitch)
	assert.Equal(t, []int{7, 1}, []int{h.Columns, h.Rows})
	require.Len(t, h.Bands, 7)
	assert.Equal(t, 250.0, h.Bands[0].Hz)
	assert.Equal(t, 1000.0, h.Bands[6].Hz)
	assert.Len(t, h.Polar[3].AngleDeg, 37)
	// At the design frequency each order has 1/7 of the energy, −8.45 dB.
	assert.InDelta(t, -8.45, h.Polar[3].LevelDb[18], 0.5, "the mirror direction, over a third octave")
	assert.Empty(t, h.Polar[0].AzimuthDeg)

	slanted := scatter(t, residues, "-pitch", "80", "-incidence", "60", "-bands", "500:500")
	assert.Equal(t, 60.0, slanted.IncidenceDeg)
	assert.True(t, slanted.Bands[0].NoClaim)
	everywhere := scatter(t, residues, "-pitch", "80", "-incidence", "random", "-plane", "across", "-bands", "500:500")
	assert.Equal(t, "random", everywhere.IncidenceDeg)
	assert.Empty(t, everywhere.Polar)
	assert.True(t, everywhere.Bands[0].Indicative)
	flat := scatter(t, "5,5\n5,5\n", "-pitch", "2 in", "-plane", "down")
	assert.Zero(t, flat.Bands[10].Scattering)
	assert.Equal(t, "2 in", flat.Pitch)
}

func TestScatterPrintsTheHalfSpace(t *testing.T) {
	t.Parallel()
	h := scatter(t, "0,30\n60,30\n", "-pitch", "100", "-plane", "hemisphere", "-bands", "2000:2500", "-temperature", "0")
	assert.InDelta(t, 331.29, h.SpeedMS, 0.005, "ISO 9613-1")
	require.Len(t, h.Polar, 2)
	assert.Len(t, h.Polar[0].LevelDb, 36*72+1)
	assert.Equal(t, []float64{0, 2.5, 2.5}, h.Polar[0].AngleDeg[:3])
	assert.Equal(t, []float64{0, 0, 5}, h.Polar[0].AzimuthDeg[:3])
	assert.Greater(t, h.Bands[0].Scattering, 0.1)
}

// Several lines in one file: each fault with its line and column.
func TestScatterRefusesBadGrids(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct{ in, want string }{
		"letters":      {"0,1\n2,x\n", `standard input: line 2, column 2: "x" is not a height in mm (allowed 0 to 2000)`},
		"ragged":       {"0,1,2\n0,1\n", "standard input: line 2, column 3: 2 heights (allowed 3, as in line 1)"},
		"too long":     {"0,1\n0,1,2\n", "standard input: line 2, column 3: 3 heights (allowed 2, as in line 1)"},
		"negative":     {"0,-1\n", "standard input: line 1, column 2: -1 mm is out of range (allowed 0 to 2000)"},
		"too tall":     {"3000\n", "standard input: line 1, column 1: 3000 mm is out of range (allowed 0 to 2000)"},
		"no number":    {"NaN,1\n", `standard input: line 1, column 1: "NaN" is not a height in mm (allowed 0 to 2000)`},
		"hexadecimal":  {"0x1p4,1\n", `standard input: line 1, column 1: "0x1p4" is not a height in mm (allowed 0 to 2000)`},
		"boundless":    {"1,Inf\n", "standard input: line 1, column 2: Inf mm is out of range (allowed 0 to 2000)"},
		"hole":         {"1,,2\n", "standard input: line 1, column 2: nothing where a height in mm should be (allowed 0 to 2000)"},
		"empty":        {"", "standard input: line 1: no heights"},
		"empty line":   {"1\n\n2\n", "standard input: line 2: no heights"},
		"too wide":     {strings.Repeat("1,", 400) + "1\n", "standard input: line 1, column 401: 401 columns (allowed up to 400)"},
		"too high":     {strings.Repeat("1\n", 401), "standard input: line 401: more rows than a field may have (allowed 400)"},
		"too many":     {strings.Repeat(strings.Repeat("1,", 399)+"1\n", 101), "standard input: line 101: 40\u202f400 cells (allowed up to 40\u202f000)"},
		"control":      {"1,\x1b[2J\n", `standard input: line 1, column 2: "\x1b[2J" is not a height in mm (allowed 0 to 2000)`},
		"several":      {"a\nb\n", "standard input: line 1, column 1: \"a\" is not a height in mm (allowed 0 to 2000)\nstandard input: line 2, column 1: \"b\" is not a height in mm (allowed 0 to 2000)"},
		"windows ends": {"1,2\r\n3\r\n", "standard input: line 2, column 2: 1 height (allowed 2, as in line 1)"},
		"heights":      {distinct(257), "standard input: line 1, column 257: more different heights than a field may have (allowed 256: round them)"},
	} {
		got := run(t, c.in, "scatter", "-", "-pitch", "40")
		assert.Equal(t, result{2, "", c.want + "\n"}, got, name)
	}
}

// distinct is a row of n different heights.
func distinct(n int) string {
	cells := make([]string, n)
	for i := range cells {
		cells[i] = strconv.Itoa(i)
	}
	return strings.Join(cells, ",") + "\n"
}

func TestScatterRefusesBadOptions(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"-pitch", "0"}, `-pitch: "0" is not a pitch (allowed above 0 mm to 1000 mm)`},
		{[]string{"-pitch", "wide"}, `-pitch: "wide" is not a pitch (allowed above 0 mm to 1000 mm)`},
		{[]string{"-pitch", "40", "-gap", "40"}, `-gap: "40" is not a gap (allowed 0 mm to less than the pitch)`},
		{[]string{"-pitch", "40", "-incidence", "90"}, `-incidence: "90" is not an angle (allowed -85 to 85, or random in a plane)`},
		{[]string{"-pitch", "40", "-incidence", "random", "-plane", "hemisphere"}, `-incidence: "random" is not an angle (allowed -85 to 85, or random in a plane)`},
		{[]string{"-pitch", "40", "-temperature", "hot"}, `-temperature: "hot" is not a temperature (allowed -40 to 60 °C)`},
		{[]string{"-pitch", "40", "-c", "343", "-temperature", "20"}, `-c: "343" beside -temperature, from which the speed of sound follows (allowed one of the two)`},
		{[]string{"-pitch", "40", "-c", "0"}, `-c: "0" is not a speed of sound (allowed 200 to 2000 m/s)`},
		{[]string{"-pitch", "40", "-bands", "8000:100"}, `-bands: "8000:100" is not a range (allowed LOW:HIGH from 20 to 20000 Hz)`},
		{[]string{"-pitch", "40", "-plane", "up"}, `-plane: "up" is not a plane (allowed across, down, hemisphere)`},
		{[]string{"-pitch", "40", "-phase", "blue"}, `-phase: "blue" is not a phase (allowed kirchhoff, grating, grating-oblique)`},
	} {
		got := run(t, "1,2\n", append([]string{"scatter", "-"}, c.args...)...)
		assert.Equal(t, result{2, "", c.want + "\n"}, got, c.args)
	}
	assert.Equal(t, 2, run(t, "1\n", "scatter", "-").code, "no pitch")
	assert.Contains(t, run(t, "1\n", "scatter", "-").err, "usage: blockfield scatter ")
}
