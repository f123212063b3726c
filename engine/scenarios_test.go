package engine_test

import (
	"strconv"
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The figures are a separate reference model's for the same jobs with the
// placeholder book; bought-in may differ by a cent, because our sums are sums of
// rounded lines. The school, s4, is not among the jobs whose results are printed:
// its figures are those of a second program, written from the rules that are printed
// with the jobs and held against the booth's first. The booth agrees to the cent; so do
// the others where they are given the model's count of fixings (package cost).
//
// Here the published rules count screws, where the model has an old rule, and a strip
// that is higher than those of the shop is bought as a board: more is added to bought-in,
// by hand, at 0.12 for a screw of the cleat, 0.45 for one in the wall and 1500 for a m³
// of strip with a tenth of waste. First panel: 11 instead of 6, 8 instead of 4, and 0.9136
// × (0.3944 − 0.0900) × 0.018 m³: 0.60 + 1.80 + 8.26. Each screw in the wall takes 2.5
// minutes. Its cost of 1865.86 becomes 1886.83, and 1886.83 / 0.82 is 2310 in tens.
func TestReferenceJobsFromEndToEnd(t *testing.T) {
	for name, want := range map[string]struct {
		sticks, sheets  int
		heaviestKg      float64
		shop, total     float64 // typical hours
		boughtIn, more  float64 // of the model, and for screws and strips
		screws          int     // in the wall, more than the model's
		net, tax, gross string
	}{
		"s1": {10, 1, 16.8, 11.8, 17.0, 154.91, 0, 0, "1300.00", "260.00", "1560.00"},
		"s4": {42, 3, 42.62, 37.36, 53.01, 1348.34, 21*0.12 + 30*0.45 + 3*1.1075*0.30108*0.018*1650, 30, "5840.00", "1168.00", "7008.00"},
		"s5": {13, 1, 50.7, 17.1, 27.4, 807.54, 11*0.12 + 8*0.45 + 1.4181*0.13753*0.01905*1650, 8, "3090.00", "618.00", "3708.00"},
		"p1": {15, 1, 36.0, 14.6, 25.1, 388.44, 5*0.12 + 4*0.45 + 0.9136*0.30443*0.018*1650, 4, "2310.00", "462.00", "2772.00"},
		"p2": {33, 1, 77.3, 26.0, 36.7, 701.20, 15*0.12 + 9*0.45 + 1.3842*0.30443*0.018*1650, 9, "3630.00", "726.00", "4356.00"},
	} {
		t.Run(name, func(t *testing.T) {
			r := plan(t, designtest.Job(t, name)).Report(words.Reader{Language: words.English()})
			assert.Equal(t, want.sticks, r.Stock.Sticks)
			assert.Equal(t, want.sheets, r.Stock.Sheets)
			assert.InDelta(t, want.heaviestKg, r.Mass.HeaviestPanelKg, 0.01*want.heaviestKg)
			assert.InDelta(t, want.shop, r.Hours.Shop.Typical, 0.1)
			const minutesAScrew = 2.5
			assert.InDelta(t, want.total+float64(want.screws)*minutesAScrew/60, r.Hours.Total.Typical, 0.1)
			boughtIn, err := strconv.ParseFloat(*r.Money.BoughtIn, 64)
			require.NoError(t, err)
			assert.InDelta(t, want.boughtIn+want.more, boughtIn, 0.011)
			assert.Equal(t, []string{want.net, want.tax, want.gross}, []string{*r.Money.Net, *r.Money.Tax, *r.Money.Gross})
		})
	}
	home := plan(t, designtest.Job(t, "s8"))
	assert.Equal(t, "205.15", home.Price.Materials.Plain(), "203.43, and 0.5188 × (0.2014 − 0.0900) × 0.018 m³ more of strip")
	assert.InDelta(t, 14.1, home.Mass.HeaviestPanelKg, 0.14)
	assert.InDelta(t, 10.3, home.Bill.Hours.Total.Typical, 0.1)
}

func TestEveryScenarioHasAPlanAndAPicture(t *testing.T) {
	for _, name := range []string{"s1", "s2", "s3", "s4", "s5", "s6", "s7", "s8", "p1", "p2"} {
		d := designtest.Job(t, name)
		r := plan(t, d)
		s, err := engine.Scene(d, r, design.Default().View)
		require.NoError(t, err, name)
		assert.NoError(t, s.Validate(), name)
	}
}

func TestAMissingPriceIsSaid(t *testing.T) {
	d := design.Default().Design
	d.Walls[0].Groups[0].Backer.Thickness = length.MM(15)
	r := plan(t, d)
	assert.Zero(t, r.Price.Net.Minor)
	assert.Positive(t, r.Mass.TotalKg, "everything else is known")
	assert.Contains(t, codes(r.WatchOuts), "price/missing")
}

// Every watch-out of every scenario has a sentence.
func TestWatchOutsHaveSentences(t *testing.T) {
	reader := words.Reader{Language: words.English(), Units: length.Metric}
	for _, name := range []string{"s1", "s2", "s3", "s4", "s5", "s6", "s7", "s8"} {
		for _, w := range plan(t, designtest.Job(t, name)).Report(reader).WatchOuts {
			assert.NotContains(t, w.Sentence, "⟪", "%s: %s", name, w.Code)
		}
	}
}
