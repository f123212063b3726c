package length_test

import (
	"testing"

	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
)

func TestCeilAs(t *testing.T) {
	for _, c := range []struct {
		l    length.Length
		n    length.Notation
		want string
	}{
		{length.MM(109), length.InMM, "109 mm"},
		{length.Micrometres(109_075), length.InMM, "110 mm"},
		{length.Micrometres(109_075), length.InCM, "11 cm"},
		{length.MM(150), length.InInch, "5 15/16 in"},        // 150 / 1.5875 = 94.49 sixteenths
		{length.Sixtyfourths(96), length.InInch, "1 1/2 in"}, // exact
		{length.Sixtyfourths(97), length.InInch, "1 9/16 in"},
		{length.MM(1700), length.InFeet, `5' 6 15/16"`},
		{length.Micrometres(-500), length.InMM, "0 mm"},
		{length.MM(-3), length.InMM, "-3 mm"},
	} {
		got := c.l.CeilAs(c.n)
		assert.Equal(t, c.want, got.String())
		assert.GreaterOrEqual(t, got.Cmp(c.l), 0)
	}
}
