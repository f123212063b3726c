package cli_test

import (
	"encoding/json"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestReportHears(t *testing.T) {
	t.Parallel()
	got := run(t, "", "report", jobs+"s1.json", "-hear")
	require.Equal(t, 0, got.code, got.err)
	var r struct {
		Revision  string
		WatchOuts []struct{ Code, Level string }
		Sound     *struct {
			Fit    struct{ Answer string }
			Client string
			Groups []struct {
				Sentences []string
				HalfSpace []struct{ Hz, Scattering float64 }
				Planes    []struct{ Plane string }
			}
		}
	}
	require.NoError(t, json.Unmarshal([]byte(got.out), &r))
	require.NotNil(t, r.Sound)
	assert.NotEmpty(t, r.Revision, "the plan is there too")
	assert.Equal(t, "looks", r.Sound.Fit.Answer)
	assert.Contains(t, r.Sound.Client, "too near")
	require.Len(t, r.Sound.Groups, 1)
	assert.Len(t, r.Sound.Groups[0].HalfSpace, 21)
	assert.Len(t, r.Sound.Groups[0].Planes, 12, "two planes, five sources and sound from everywhere")
	var codes []string
	for _, w := range r.WatchOuts {
		codes = append(codes, w.Code)
	}
	assert.Subset(t, codes, []string{"sound/too-near", "sound/small-room", "bench/short-block"})
	assert.True(t, slices.IsSortedFunc(r.WatchOuts, func(a, b struct{ Code, Level string }) int {
		order := []string{"stop", "caution", "note"}
		return slices.Index(order, a.Level) - slices.Index(order, b.Level)
	}), "the worst first")

	plain := run(t, "", "report", jobs+"s1.json")
	assert.NotContains(t, plain.out, `"sound"`)
	assert.NotContains(t, plain.out, "sound/")
}
