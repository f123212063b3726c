package engine_test

import (
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
// placeholder book. Net, tax and gross agree to the cent; bought-in may differ
// by a cent, because our sums are sums of rounded lines. The school, s4, is not
// among the jobs whose results are printed: its figures are those of a second
// program, written from the rules that are printed with the jobs and held against
// the booth's first. It was given the twelve wall fixings, which the published
// rules for screws decide.
func TestReferenceJobsFromEndToEnd(t *testing.T) {
	for name, want := range map[string]struct {
		sticks, sheets            int
		heaviestKg                float64
		shop, total               float64 // typical hours
		boughtIn, net, tax, gross string
	}{
		"s1": {10, 1, 16.8, 11.8, 17.0, "154.91", "1300.00", "260.00", "1560.00"},
		"s4": {42, 3, 42.62, 37.36, 53.01, "1348.34", "5700.00", "1140.00", "6840.00"},
		"s5": {13, 1, 50.7, 17.1, 27.4, "807.54", "3060.00", "612.00", "3672.00"},
		"p1": {15, 1, 36.0, 14.6, 25.1, "388.44", "2280.00", "456.00", "2736.00"},
		"p2": {33, 1, 77.3, 26.0, 36.7, "701.20", "3580.00", "716.00", "4296.00"},
	} {
		t.Run(name, func(t *testing.T) {
			r := plan(t, designtest.Job(t, name)).Report(words.Reader{Language: words.English()})
			assert.Equal(t, want.sticks, r.Stock.Sticks)
			assert.Equal(t, want.sheets, r.Stock.Sheets)
			assert.InDelta(t, want.heaviestKg, r.Mass.HeaviestPanelKg, 0.01*want.heaviestKg)
			assert.InDelta(t, want.shop, r.Hours.Shop.Typical, 0.1)
			assert.InDelta(t, want.total, r.Hours.Total.Typical, 0.1)
			assert.Equal(t, []string{want.boughtIn, want.net, want.tax, want.gross},
				[]string{*r.Money.BoughtIn, *r.Money.Net, *r.Money.Tax, *r.Money.Gross})
		})
	}
	home := plan(t, designtest.Job(t, "s8"))
	assert.Equal(t, "203.43", home.Price.Materials.Plain(), "the home builder's shopping sum")
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
