package sound_test

import (
	"testing"

	"blockfield/engine/sound"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParseHeights(t *testing.T) {
	s, err := sound.ParseHeights("\ufeff0, 12.5 ,30\r\n30,0,1e1\r\n\n")
	require.NoError(t, err)
	assert.Equal(t, []int{3, 2}, []int{s.Columns, s.Rows})
	assert.InDeltaSlice(t, []float64{0, 0.010, 0.0125, 0.030}, s.HeightsM, 1e-12)
	assert.Equal(t, []uint16{0, 2, 3, 3, 0, 1}, s.Levels)
}

func TestParseHeightsListsEveryFault(t *testing.T) {
	_, err := sound.ParseHeights("1,x,-3\n1,2\n,2,3\n")
	var faults sound.GridFaults
	require.ErrorAs(t, err, &faults)
	var at [][2]int
	for _, f := range faults {
		at = append(at, [2]int{f.Line, f.Column})
	}
	assert.Equal(t, [][2]int{{1, 2}, {1, 3}, {2, 3}, {3, 1}}, at)
}

// Whatever is read can be heard.
func FuzzParseHeights(f *testing.F) {
	for _, text := range []string{"1,2\n3,4\n", "", "0", "1e3,2\n", "a", "1,\n", "\xff"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := sound.ParseHeights(text)
		if err != nil {
			assert.NotEmpty(t, err.Error())
			return
		}
		s.PitchM = 0.04
		assert.NoError(t, sound.Arrangement{Surface: s}.Validate())
	})
}
