package page

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"blockfield/engine/words"
)

// What is not proven is never said to be at 0 %.
func TestShareOfAGap(t *testing.T) {
	for percent, want := range map[float64]string{0.0004: "0.01 %", 0.021: "0.03 %", 1.5: "1.5 %", 12: "12 %"} {
		assert.Equal(t, want, words.Reader{Language: words.English()}.Show(share(percent)), percent)
	}
}
