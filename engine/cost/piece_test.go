package cost_test

import (
	"testing"

	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A stick that the book sells by the piece costs that; one of another length, wood
// or section goes by its volume, and so does timber that is no stick.
func TestSticksByThePiece(t *testing.T) {
	book := design.DefaultBook()
	book.Sticks = []design.StickPrice{{Wood: "oak", Size: length.MM(36), Length: length.MM(3000), Price: design.Units(25)}}
	stick := cost.Timber{Wood: "oak", VolumeMM3: 4 * 3000 * 36 * 36, Size: length.MM(36), Length: length.MM(3000), Count: 4}
	bought := func(lot cost.Timber) string {
		p, err := cost.Calculate(cost.Quantities{OwnBuild: true, Squares: []cost.Timber{lot}}, book, design.Money{})
		require.NoError(t, err)
		return p.Materials.Plain()
	}
	const byVolume = "96.42" // 0.015552 m³ at 6200
	assert.Equal(t, "100.00", bought(stick))
	for name, change := range map[string]func(*cost.Timber){
		"another length":  func(s *cost.Timber) { s.Length = length.MM(3001) },
		"another section": func(s *cost.Timber) { s.Size = length.MM(37) },
		"no stick":        func(s *cost.Timber) { s.Count = 0 },
	} {
		other := stick
		change(&other)
		assert.Equal(t, byVolume, bought(other), name)
	}
	stick.Wood = "ash"
	assert.Equal(t, "74.65", bought(stick), "0.015552 m³ at 4800")
}
