package wood_test

import (
	"testing"

	"blockfield/engine/length"
	"blockfield/engine/wood"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func section(t *testing.T, system wood.System, nominal string) wood.Section {
	t.Helper()
	for _, s := range wood.Sections() {
		if s.System == system && s.Nominal == nominal {
			return s
		}
	}
	t.Fatalf("no section %s %s", system, nominal)
	return wood.Section{}
}

// The millimetres that PS 20 prints beside its inches: another column of the
// standard, rounded to whole millimetres.
func TestDressedSoftwoodInMillimetres(t *testing.T) {
	for _, c := range []struct {
		nominal      string
		thick, width float64
	}{
		{"1×2", 19, 38}, {"1×3", 19, 64}, {"1×4", 19, 89}, {"1×6", 19, 140}, {"1×8", 19, 184},
		{"1×10", 19, 235}, {"1×12", 19, 286}, {"2×2", 38, 38}, {"2×3", 38, 64}, {"2×4", 38, 89},
		{"2×6", 38, 140}, {"2×8", 38, 184}, {"2×10", 38, 235}, {"2×12", 38, 286}, {"4×4", 89, 89},
	} {
		s := section(t, wood.DressedSoftwood, c.nominal)
		assert.InDelta(t, c.thick, s.Thickness.Millimetres(), 0.51, c.nominal)
		assert.InDelta(t, c.width, s.Width.Millimetres(), 0.51, c.nominal)
	}
	assert.Equal(t, "1 1/2 in", section(t, wood.DressedSoftwood, "2×4").Thickness.String())
	assert.Equal(t, "3 1/2 in", section(t, wood.DressedSoftwood, "2×4").Width.String())
}

func TestHardwoodInMillimetres(t *testing.T) {
	for nominal, mm := range map[string]float64{"4/4": 20.6, "5/4": 27.0, "6/4": 33.3, "8/4": 44.4, "12/4": 69.8, "16/4": 95.2} {
		s := section(t, wood.HardwoodBoard, nominal)
		assert.InDelta(t, mm, s.Thickness.Millimetres(), 0.06, nominal)
		assert.True(t, s.Width.IsZero(), "random width")
		assert.False(t, s.Square())
	}
}

func TestSquares(t *testing.T) {
	assert.Equal(t, "36 mm", section(t, wood.PlanedSquare, "hardwood sawn 40 × 40, planed").Width.String())
	assert.Equal(t, "1 3/8 in", section(t, wood.PlanedSquare, "6/4 board, planed").Width.String())
	assert.Equal(t, "1 3/4 in", section(t, wood.PlanedSquare, "8/4 board, planed").Width.String())
	assert.True(t, section(t, wood.DressedSoftwood, "2×2").Square())
	assert.False(t, section(t, wood.DressedSoftwood, "2×3").Square())
	seen := map[string]bool{}
	for _, s := range wood.Sections() {
		key := string(s.System) + " " + s.Nominal
		assert.False(t, seen[key], "twice: %s", key)
		seen[key] = true
		assert.NotEmpty(t, s.Source, key)
		assert.Positive(t, s.Thickness.Nanometres(), key)
		if s.System == wood.PlanedSquare {
			assert.True(t, s.Square(), key)
		}
	}
}

func TestSheets(t *testing.T) {
	for _, s := range wood.Sheets() {
		found, ok := wood.FindSheet(s.Name)
		assert.True(t, ok)
		assert.Equal(t, s, found)
		last := length.Length{}
		for _, th := range s.Thicknesses {
			assert.Equal(t, 1, th.Cmp(last), "%s: thicknesses rise", s.Name)
			last = th
		}
		assert.NotEmpty(t, s.Source)
	}
	birch, _ := wood.FindSheet("birch ply")
	assert.True(t, birch.DensityKgM3 >= 640 && birch.DensityKgM3 <= 700, "the range birch ply is sold in")
	soft, _ := wood.FindSheet("softwood ply")
	assert.True(t, soft.DensityKgM3 >= 400 && soft.DensityKgM3 <= 600, "GTR-190 table 12-1, from memory")
	_, ok := wood.FindSheet("oak ply")
	assert.False(t, ok)
	assert.Len(t, wood.SheetSizes(), 4)
}

// PS 1 prints a target for the label, which must lie inside its range; the
// tolerance is 1/32 in up to 13/16 and 5 % above.
func TestPlyRanges(t *testing.T) {
	targets := map[string]int64{ // thousandths of an inch
		"1/4": 225, "11/32": 322, "3/8": 354, "7/16": 418, "15/32": 451, "1/2": 483, "19/32": 578, "5/8": 609,
		"23/32": 703, "3/4": 734, "13/16": 788, "7/8": 849, "1": 970, "1-1/8": 1091, "1-1/4": 1213,
	}
	ranges := wood.PlyRanges()
	require.Len(t, ranges, len(targets))
	for _, r := range ranges {
		target := length.Nanometres(targets[r.Label]*25_400, length.InInch)
		assert.Equal(t, 1, target.Cmp(r.Min), r.Label)
		assert.Equal(t, -1, target.Cmp(r.Max), r.Label)
	}
	for label, mm := range map[string][2]float64{"15/32": {11.13, 12.70}, "23/32": {17.48, 19.05}, "3/4": {18.26, 19.84}} {
		for _, r := range ranges {
			if r.Label == label {
				assert.InDelta(t, mm[0], r.Min.Millimetres(), 0.01, label)
				assert.InDelta(t, mm[1], r.Max.Millimetres(), 0.01, label)
			}
		}
	}
}

func TestFinishes(t *testing.T) {
	oily := map[string]bool{}
	for _, f := range wood.Finishes() {
		found, ok := wood.FindFinish(f.Name)
		assert.True(t, ok)
		assert.Equal(t, f, found)
		oily[f.Name] = f.OilyRags
		c := f.Coverage
		// Stain on saw-textured wood, to which end grain is likened:
		// 100-200 ft² for a US gallon, GTR-190 ch. 16.
		const m2PerLitre = 0.09290304 / 3.785411784
		assert.GreaterOrEqual(t, c.EndFirst, 100*m2PerLitre, f.Name)
		assert.LessOrEqual(t, c.EndFirst, 200*m2PerLitre, f.Name)
		assert.True(t, c.EndFirst < c.EndNext && c.EndNext < c.FaceFirst && c.FaceFirst < c.FaceNext, "the first coat and end grain drink more: %s", f.Name)
		assert.True(t, f.CoatsMin <= f.CoatsMax && f.NextCoat.Low <= f.NextCoat.High && f.FullyDry.Low <= f.FullyDry.High, f.Name)
	}
	assert.Equal(t, map[string]bool{
		"none": false, "waterborne varnish": false, "shellac": false, "fire-retardant varnish": false,
		"hard-wax oil": true, "drying oil": true,
	}, oily, "what hardens by taking up oxygen heats its rags")
	_, ok := wood.FindFinish("tar")
	assert.False(t, ok)
}

func TestStockLengths(t *testing.T) {
	nordic := 0
	for _, s := range wood.StockLengths() {
		assert.NotEmpty(t, s.Source)
		mm := s.Length.Millimetres()
		assert.True(t, mm >= 900 && mm <= 6000, "%v", s.Length)
		if mm >= 2700 && mm <= 5400 && s.Length.Notation() == length.InMM {
			nordic++
		}
	}
	assert.Equal(t, 10, nordic, "2.7 to 5.4 m in steps of 0.3 m")
}

// What a caller does to a table stays with the caller.
func TestTablesAreFresh(t *testing.T) {
	wood.All()[0].Name = "x"
	wood.Sheets()[0].Thicknesses[0] = length.MM(1)
	assert.Equal(t, "pine", wood.All()[0].Name)
	assert.Equal(t, "9 mm", wood.Sheets()[0].Thicknesses[0].String())
}
