package design_test

import (
	"maps"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every path of the table is found again with its text, and nothing else.
func TestDifferencesGiveWhatAFormShows(t *testing.T) {
	before := design.Default()
	after := design.Clone(before)
	for _, e := range []struct{ path, text string }{
		{"walls[0].groups[0].width", "1.5 m"},
		{"walls[0].groups[0].heights", "10, 20, 30, 45"},
		{"walls[0].groups[0].pattern.clump", "4"},
		{"view.lamp.azimuth", "12"},
		{"money.discount", "3"},
	} {
		var err error
		after, err = design.Set(after, e.path, e.text, length.Metric)
		require.NoError(t, err, e.path)
	}
	got := maps.Collect(design.Differences(before, after, length.Metric))
	for path, text := range got {
		shown, ok := design.Text(after, path, length.Metric)
		require.True(t, ok, path)
		assert.Equal(t, shown, text, path)
		was, _ := design.Text(before, path, length.Metric)
		assert.NotEqual(t, was, text, path)
	}
	assert.Equal(t, map[string]string{
		"walls[0].groups[0].width": "1.5 m", "walls[0].groups[0].heights": "10 mm, 20 mm, 30 mm, 45 mm",
		"walls[0].groups[0].pattern.clump": "4", "view.lamp.azimuth": "12", "money.discount": "3",
	}, got)
}

// An entry that was not there before differs in all of its fields; one that has
// gone has no text any more.
func TestDifferencesOfLists(t *testing.T) {
	before := design.Default()
	after := design.Clone(before)
	w := &after.Design.Walls[0]
	w.Groups = append(w.Groups, w.Groups[0])
	got := maps.Collect(design.Differences(before, after, length.Metric))
	assert.Equal(t, "1200 mm", got["walls[0].groups[1].width"])
	for path := range got {
		assert.Contains(t, path, "walls[0].groups[1].")
	}
	assert.Empty(t, maps.Collect(design.Differences(after, before, length.Metric)))

	after = design.Clone(before)
	after.Looks = []design.Look{{Name: "calm", Design: before.Design}}
	assert.Equal(t, map[string]string{"looks[0].name": "calm"}, maps.Collect(design.Differences(before, after, length.Metric)))
}

// The texts follow the reader's units, and a length that is the same in another
// notation shows the same.
func TestDifferencesInInches(t *testing.T) {
	before := design.Default()
	after := design.Clone(before)
	after.Design.Walls[0].Groups[0].Width = length.MM(1524)
	assert.Equal(t, map[string]string{"walls[0].groups[0].width": "60 in"},
		maps.Collect(design.Differences(before, after, length.Inch16)))
}
