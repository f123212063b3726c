package papers_test

import (
	"testing"

	"blockfield/engine/length"
	"blockfield/engine/measure"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
)

// What the cards allow is what the marks of a field are reckoned with, and a rule in
// inches allows no more.
func TestWithin(t *testing.T) {
	r := words.Reader{Language: words.English()}
	for key, mm := range map[string]float64{"row": measure.ToleranceMM, "block": 0.4, "diagonals": 2} {
		for _, unit := range []string{"mm", "in"} {
			l, err := length.Parse(r.Say("within/"+key+"-"+unit), length.InMM)
			assert.NoError(t, err)
			assert.LessOrEqual(t, l.Millimetres(), mm, key)
			assert.Greater(t, l.Millimetres(), 0.7*mm, key)
		}
	}
}
