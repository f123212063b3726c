package engine_test

import (
	"slices"
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The first panel is 33 × 36.2 mm = 1194.6 mm of field wide and 22 × 36.2 =
// 796.4 mm tall, with 3 mm of gap and 20 mm of frame on each side 1240.6 ×
// 842.4 mm (by hand). On a wall of 3500 × 2500 mm it may start at 2259.4 mm from
// the left, its bottom may be at 1657.6 mm, and its top at 842.4 mm: at each of
// these it touches, a tenth of a millimetre further it is off the wall.
func TestAGroupHangsOnItsWall(t *testing.T) {
	off := []string{"wall/above-top", "wall/below-floor", "wall/beyond-side"}
	const byTop = group + "place.edge = top\n" + group + "place.height = "
	for _, c := range []struct{ edits, code, fix string }{
		{group + "place.left = 2259.4 mm", "", ""},
		{group + "place.left = 2259.5 mm", "wall/beyond-side", "2259 mm"},
		{group + "place.height = 1657.6 mm", "", ""},
		{group + "place.height = 1657.7 mm", "wall/above-top", "1657 mm"},
		{group + "place.height = 0 mm", "", ""},
		{byTop + "842.4 mm", "", ""},
		{byTop + "842.3 mm", "wall/below-floor", "843 mm"},
		{byTop + "2500 mm", "", ""},
		{byTop + "2500.1 mm", "wall/above-top", "2500 mm"},
		{"walls[0].width = 1240.6 mm\n" + group + "place.left = 0 mm", "", ""},
		{"walls[0].width = 1240.5 mm\n" + group + "place.left = 0 mm", "wall/beyond-side", ""},
		{"walls[0].height = 842.3 mm\n" + group + "place.height = 0 mm", "wall/above-top", ""},
	} {
		doc := edit(t, design.Default(), c.edits)
		var found []check.WatchOut
		for _, w := range plan(t, doc.Design).WatchOuts {
			if slices.Contains(off, w.Code) {
				found = append(found, w)
			}
		}
		if c.code == "" {
			assert.Empty(t, found, c.edits)
			continue
		}
		require.Len(t, found, 1, c.edits)
		assert.Equal(t, c.code, found[0].Code, c.edits)
		assert.Equal(t, check.Stop, found[0].Level)
		if c.fix == "" {
			assert.Nil(t, found[0].Fix, "%s: larger than its wall, wherever it hangs", c.edits)
			continue
		}
		require.NotNil(t, found[0].Fix, c.edits)
		assert.Contains(t, found[0].Fix.Value, c.fix)
		mended, err := design.Set(doc, found[0].Fix.Path, found[0].Fix.Value, length.Metric)
		require.NoError(t, err)
		for _, w := range plan(t, mended.Design).WatchOuts {
			assert.NotContains(t, off, w.Code, "%s: still after %v", c.edits, *found[0].Fix)
		}
	}
}

// A second group of the first design's size, one panel to the right of the first: at
// 1130 + 1240.6 = 2370.6 mm they touch, a tenth of a millimetre nearer they overlap.
func TestGroupsKeepApart(t *testing.T) {
	const second = "walls[0].groups[1].place."
	at := func(left, height string) (check.WatchOut, bool) {
		doc := edit(t, design.Default(), "walls[0].width = 5000 mm\nwalls[0].groups = +\n"+second+"left = "+left+"\n"+second+"height = "+height)
		for _, w := range plan(t, doc.Design).WatchOuts {
			if w.Code == "wall/overlap" {
				return w, true
			}
		}
		return check.WatchOut{}, false
	}
	_, fires := at("2370.6 mm", "900 mm")
	assert.False(t, fires)
	w, fires := at("2370.5 mm", "900 mm")
	require.True(t, fires)
	assert.Equal(t, []any{check.Stop, check.Offer, "walls[0].groups[1].place.left"}, []any{w.Level, w.Gate, w.Field})
	assert.False(t, w.Evidence)
	assert.Equal(t, []string{"0.1 mm", "842.4 mm"}, []string{w.Args["wide"].(length.Length).String(), w.Args["high"].(length.Length).String()})
	_, fires = at("1130 mm", "1742.4 mm")
	assert.False(t, fires, "one above the other")
	_, fires = at("1130 mm", "1742.3 mm")
	assert.True(t, fires)
}
