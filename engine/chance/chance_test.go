package chance_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"blockfield/engine/chance"
)

// The first values of seed 1234567, as they are commonly published beside the generator;
// from memory.
func TestNext(t *testing.T) {
	state := uint64(1234567)
	for _, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821} {
		var got uint64
		got, state = chance.Next(state)
		assert.Equal(t, want, got)
	}
}

// A shuffle keeps everything, and a seed means the same one for ever.
func TestShuffle(t *testing.T) {
	all := []int{0, 1, 2, 3, 4, 5, 6, 7}
	one, again, other := slices.Clone(all), slices.Clone(all), slices.Clone(all)
	chance.Shuffle(one, 7)
	chance.Shuffle(again, 7)
	chance.Shuffle(other, 8)
	assert.Equal(t, one, again)
	assert.NotEqual(t, one, other)
	assert.ElementsMatch(t, all, one)
}
