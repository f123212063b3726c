package engine_test

import (
	"testing"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/scene"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func plan(t testing.TB, d design.Design) engine.Result {
	t.Helper()
	r, err := engine.Plan(d, design.DefaultBook())
	require.NoError(t, err)
	return r
}

func TestDefaultDesign(t *testing.T) {
	d := design.Default().Design
	r := plan(t, d)
	assert.Equal(t, []int{33, 22}, []int{r.Groups[0].Built.Columns, r.Groups[0].Built.Rows})
	cells, blocks := r.Cells()
	assert.Equal(t, 726, cells)
	assert.Equal(t, 726, blocks)
	assert.LessOrEqual(t, check.Worst(r.WatchOuts), check.Caution, "%v", r.WatchOuts)
	assert.Equal(t, "127 mm", r.Groups[0].Built.FrameDepth.String())
}

func TestSceneShowsThePanelAtItsPlace(t *testing.T) {
	doc := design.Default()
	r := plan(t, doc.Design)
	s, err := engine.Scene(doc.Design, r, doc.View)
	require.NoError(t, err)
	p := s.Panels[0]
	assert.InDelta(t, 1.130, p.LeftM, 1e-9)
	assert.InDelta(t, 0.900, p.BottomM, 1e-9)
	assert.InDelta(t, r.Groups[0].Built.OuterWidth.Metres(), p.OuterWidthM, 1e-9)
	assert.Equal(t, r.Groups[0].Built.Panels[0].Grid.Levels, p.Levels)
	back, err := scene.Decode(s.Encode())
	require.NoError(t, err)
	assert.Equal(t, p.Levels, back.Panels[0].Levels)
}

func BenchmarkPlan50x30(b *testing.B) {
	d := design.Default().Design
	d.Walls[0].Groups[0].Columns, d.Walls[0].Groups[0].Rows = 50, 30
	book := design.DefaultBook()
	for b.Loop() {
		if _, err := engine.Plan(d, book); err != nil {
			b.Fatal(err)
		}
	}
}

// The habits of the shop are fields of the design. Off, as in a new design, the
// hours are those of the time table; each changes the hours by what it says.
// By hand for the first design: 750 blocks of poplar, 36 mm; cutting 100 min,
// sanding ends 225 min.
func TestHabitsOfTheShopChangeTheHours(t *testing.T) {
	minutes := func(edits string) map[string]float64 {
		all := map[string]float64{}
		for _, task := range plan(t, edit(t, design.Default(), edits).Design).Bill.Tasks {
			all[task.ID] = task.Minutes.Typical
		}
		return all
	}
	was := minutes("bench.gang = 1")
	require.InDelta(t, 100, was["c3"], 1e-9)
	require.InDelta(t, 225, was["d2"], 1e-9)
	assert.InDelta(t, 45, minutes("bench.gang = 4")["c3"], 1e-9, "× 0.45")
	assert.InDelta(t, 229.5, minutes("bench.fatigue = yes")["d2"], 1e-9, "45 min past three hours, a tenth more")
	oak := minutes(group + "wood = oak\nbench.woodTimes = yes")
	assert.InDelta(t, 1.15*225, oak["d2"], 1e-9)
	assert.InDelta(t, 115, oak["c3"], 1e-9)
	assert.InDelta(t, 225, minutes(group + "wood = oak")["d2"], 1e-9, "off until it is asked for")
}
