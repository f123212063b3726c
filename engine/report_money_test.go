package engine_test

import (
	"encoding/json"
	"testing"

	"blockfield/engine"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The report has every figure of the price, as texts to the cent, under the names
// that other programs read.
func TestReportHasTheWholePrice(t *testing.T) {
	r := plan(t, designtest.Job(t, "p1"))
	got := r.Report(english()).Money
	p := r.Price
	require.Len(t, got.Lines, len(p.Lines))
	for i, l := range got.Lines {
		assert.Equal(t, engine.LineReport{
			Key: p.Lines[i].Key, Name: english().Say(p.Lines[i].Key), Role: string(p.Lines[i].Role), Amount: p.Lines[i].Amount.Plain(),
		}, l)
	}
	var told map[string]any
	text, err := json.Marshal(got)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &told))
	// The first reference panel, as it is printed but for its screws and its strip, which
	// add 10.66 to what is bought and ten minutes (TestReferenceJobsFromEndToEnd); 399.10
	// and 204.19 are sums of rounded lines.
	for name, want := range map[string]any{
		"currency": "XXX", "boughtIn": "399.10", "labour": "1068.21", "overhead": "204.19", "travel": "44.00",
		"direct": "1763.39", "cost": "1886.83", "net": "2310.00", "tax": "462.00", "gross": "2772.00", "minimumApplied": false,
		"discount": "0.00",
	} {
		assert.Equal(t, want, told[name], name)
	}
	assert.Equal(t, []engine.StageReport{{"order", "1386.00"}, {"ready", "1108.80"}, {"handed over", "277.20"}}, got.Stages)
	assert.InDelta(t, 100*(1-1886.83/2310), *got.MarginPercent, 0.05)
}

// Where there is no price, nothing stands for one: a home builder has goods, and a
// job that lacks a price has nothing.
func TestReportWithoutAPrice(t *testing.T) {
	home := plan(t, designtest.Job(t, "s8")).Report(english()).Money
	assert.Equal(t, "205.15", *home.Materials)
	assert.Nil(t, home.Net)
	assert.Nil(t, home.Low)
	assert.Empty(t, home.Stages)
	for _, l := range home.Lines {
		assert.Equal(t, string(cost.Material), l.Role)
	}

	d := design.Default().Design
	d.Walls[0].Groups[0].Backer.Thickness = length.MM(15)
	lacking := plan(t, d).Report(english()).Money
	assert.Empty(t, lacking.Currency)
	assert.Nil(t, lacking.BoughtIn)
	assert.Nil(t, lacking.Gross)
	text, err := json.Marshal(lacking)
	require.NoError(t, err)
	assert.Contains(t, string(text), `"lines":[]`)
	assert.Contains(t, string(text), `"gross":null`)
}
