package measure_test

import (
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// card is ten sticks that are all off by an error, half of them up and half of
// them down by a spread of about so much.
func card(size length.Length, errorUM, spreadUM int64) measure.Section {
	var sticks []measure.Stick
	for range measure.Sticks {
		sticks = append(sticks, measure.Stick{
			Width: size.Add(um(errorUM + spreadUM)), Thickness: size.Add(um(errorUM - spreadUM)),
		})
	}
	s, _ := measure.Of(sticks)
	return s
}

// What nobody has measured, and too small a card, is taken for the usual spread.
func TestKnownOf(t *testing.T) {
	size := length.MM(36)
	assert.Equal(t, measure.Known{SpreadMM: 0.25}, measure.KnownOf(measure.Section{}, size))
	few, _ := measure.Of([]measure.Stick{{Width: length.MM(40), Thickness: length.MM(40)}})
	assert.Equal(t, measure.Known{SpreadMM: 0.25}, measure.KnownOf(few, size))
	k := measure.KnownOf(card(size, 100, 0), size)
	assert.Equal(t, measure.Known{ErrorMM: 0.1, Measured: true}, k)
}

// The first design has 33 blocks in a row and 3 mm of air on either side. Either
// side of the limit of 6 mm: 33·0.18 = 5.94 is printed 5.9, 33·0.19 = 6.27 is 6.3.
func TestDriftAgainstTheFrame(t *testing.T) {
	g := design.Default().Design.Walls[0].Groups[0]
	size := g.Block.Size
	assert.Empty(t, measure.WatchOuts(g, measure.KnownOf(measure.Section{}, size), "here"), "2·0.25·√33 = 2.9 mm")
	for errorUM, fires := range map[int64]bool{180: false, 190: true, -180: false, -190: true} {
		all := measure.WatchOuts(g, measure.KnownOf(card(size, errorUM, 0), size), "here")
		require.Equal(t, fires, len(all) == 1, "%d µm", errorUM)
		if !fires {
			continue
		}
		assert.Equal(t, "measure/drift", all[0].Code)
		assert.Equal(t, check.Caution, all[0].Level)
		assert.Equal(t, check.Cut, all[0].Gate)
		assert.Equal(t, "6.3 mm", all[0].Args["off"].(length.Length).String())
		assert.Nil(t, all[0].Fix, "the size is to be corrected")
	}
	g.Frame.Joint = design.NoFrame
	assert.Empty(t, measure.WatchOuts(g, measure.KnownOf(card(size, 500, 0), size), "here"), "nothing to miss")
}

// A spread that no mean mends asks for more air: 2·0.8·√33 = 9.19 mm of 6, so 5 mm
// on either side.
func TestDriftOfASpread(t *testing.T) {
	g := design.Default().Design.Walls[0].Groups[0]
	k := measure.Known{SpreadMM: 0.8, Measured: true}
	all := measure.WatchOuts(g, k, "here")
	require.Len(t, all, 1)
	assert.Equal(t, check.Fix{Path: "here.frame.gap", Value: "5 mm"}, *all[0].Fix)
	g.Frame.Gap = length.MM(5)
	assert.Empty(t, measure.WatchOuts(g, k, "here"))

	// The longer side counts, whichever it is.
	g.Columns, g.Rows = 4, 100
	assert.Equal(t, 100, measure.Longest(g, k).Blocks)

	g.Rows = 400
	all = measure.WatchOuts(g, measure.Known{SpreadMM: 2, Measured: true}, "here")
	require.Len(t, all, 1)
	assert.Nil(t, all[0].Fix, "no frame has so much air: 2·2·√400 = 80 mm")
}
