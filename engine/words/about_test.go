package words_test

import (
	"testing"

	"blockfield/engine/length"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
)

// By hand: 1500 mm are 59.06 in, 2000 mm 78.74 in, 40 mm 1.575 in, 995 mm
// 39.17 in.
func TestAbout(t *testing.T) {
	for _, c := range []struct {
		mm           float64
		units        length.Units
		about, least string
	}{
		{1500, length.Metric, "1.5 m", "1.5 m"},
		{1500.001, length.Metric, "1.5 m", "1.6 m"},
		{1549, length.Metric, "1.5 m", "1.6 m"},
		{2000, length.Metric, "2 m", "2 m"},
		{40, length.Metric, "40 mm", "40 mm"},
		{62, length.Metric, "60 mm", "65 mm"},
		{995.5, length.Metric, "995 mm", "1 m"},
		{1500, length.Inch16, "59 in", "60 in"},
		{1524, length.Inch32, "60 in", "60 in"},
		{2000, length.Inch16, "79 in", "79 in"},
		{40, length.Inch16, "1 5/8 in", "1 5/8 in"},
		{38.1, length.Inch16, "1 1/2 in", "1 1/2 in"},
		{995, length.Inch16, "39 in", "40 in"},
	} {
		r := words.Reader{Language: words.English(), Units: c.units}
		l := length.Nanometres(int64(c.mm*1e6), length.InMM)
		assert.Equal(t, c.about, r.Show(words.About(l)), "%v mm, %v", c.mm, c.units)
		assert.Equal(t, c.least, r.Show(words.NoLess(l)), "%v mm, %v", c.mm, c.units)
		assert.GreaterOrEqual(t, words.NoLess(l).In(c.units).Cmp(l), 0, "%v mm, %v", c.mm, c.units)
	}
}
