package cut_test

import (
	"testing"

	"blockfield/engine/cut"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is kept is what would be found anew, of each problem and effort its own.
func TestMemoryChangesNoPlan(t *testing.T) {
	p := cut.Problem{
		Bars: []cut.Bar{{Name: "a", Length: 2400, Price: 600}, {Name: "b", Length: 3000, Price: 740}}, Kerf: 3, Tail: 80,
		Pieces: []cut.Piece{{Length: 26, Count: 400}, {Length: 42, Count: 380}, {Length: 64, Count: 390}, {Length: 92, Count: 410}},
	}
	other := p
	other.Kerf = 4
	hard := cut.Problem{Bars: []cut.Bar{{Length: 1000, Price: 1}}} // which these steps do not settle
	for i := range 150 {
		hard.Pieces = append(hard.Pieces, cut.Piece{Length: 200 + int64(i*i*37%601), Count: 1})
	}
	var m cut.Memory
	for range 2 {
		for _, q := range []cut.Problem{p, other, hard} {
			for _, steps := range []int64{1000, cut.QuickSteps, 2 * cut.QuickSteps, 4 * cut.QuickSteps} {
				want, err := cut.Solve(q, steps)
				require.NoError(t, err)
				got, err := m.Solve(q, steps)
				require.NoError(t, err)
				assert.Equal(t, want, got)
				curve, err := cut.FewestVisits(q, want, 2, steps)
				require.NoError(t, err)
				found, err := m.FewestVisits(q, got, 2, steps)
				require.NoError(t, err)
				assert.Equal(t, curve, found)
			}
		}
	}
	_, err := m.Solve(cut.Problem{}, 2*cut.QuickSteps)
	assert.Error(t, err)
}
