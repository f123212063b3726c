package engine_test

import (
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a planner remembers changes no result: a job whose terms, size or notation is edited
// and brought back has the plan that it has on its own.
func TestAPlannerRemembersNothingWrong(t *testing.T) {
	for name, doc := range designtest.Documents(t) {
		planner := engine.NewPlanner(design.DefaultBook())
		d := doc.Design
		for _, edit := range [][2]string{
			{"money.discount", "4"}, {"money.tax", "7"}, {"money.budget", "900"}, {"title", "Other"}, {"walls[0].groups[0].width", "31 1/2 in"},
			{"money.discount", "0"}, {"walls[0].groups[0].width", "800.1 mm"}, {"work.supply", "kit"}, {"money.discount", "4"}, {"work.supply", "panels"},
		} {
			next, err := design.Set(design.Document{Design: d, View: doc.View}, edit[0], edit[1], length.Metric)
			if err != nil {
				continue // that job has no such field
			}
			d = next.Design
			want, err := engine.Plan(d, design.DefaultBook())
			require.NoError(t, err)
			for range 2 {
				got, err := planner.Plan(d)
				require.NoError(t, err)
				require.Equal(t, want, got, "%s: %s = %s", name, edit[0], edit[1])
			}
		}
		assert.Equal(t, doc.Design.Walls[0].Name, d.Walls[0].Name)
	}
}
