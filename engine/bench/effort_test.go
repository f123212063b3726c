package bench_test

import (
	"testing"

	"blockfield/engine/cut"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
)

// A longer search is made for the blocks and sticks that it was asked for and for no
// others; it is never worse, and it says that it was made.
func TestLongerSearch(t *testing.T) {
	fewer := 0
	for _, name := range []string{"s1", "s2", "s3", "s4", "s5", "s6", "s7", "s8"} {
		d := designtest.Job(t, name)
		quick := estimateWith(t, d, priced())
		assert.False(t, quick.Longer, name)
		assert.Len(t, quick.CutsCode, 6, name)
		d.Bench.LongerFor = quick.CutsCode
		longer := estimateWith(t, d, priced())
		assert.True(t, longer.Longer, name)
		assert.False(t, longer.Searchable(), name)
		assert.Equal(t, quick.CutsCode, longer.CutsCode, name)
		for i, l := range longer.Lots {
			first := quick.Lots[i]
			assert.LessOrEqual(t, l.Curve[0].Wood, first.Curve[0].Wood, name)
			assert.LessOrEqual(t, l.Curve[l.Chosen].Cost(), first.Curve[first.Chosen].Cost(), name)
			assert.True(t, l.Proven || !first.Proven, name)
			checkCuts(t, d, l)
			if l.Cuts.Visits < first.Cuts.Visits {
				fewer++
			}
		}
		d.Bench.Kerf = d.Bench.Kerf.Add(length.Micrometres(100))
		assert.False(t, estimate(t, d).Longer, "%s: another saw", name)
	}
	assert.Positive(t, fewer, "it found nothing for any of the jobs")
}

// What is kept of a longer search serves the next plan of the job, and changes nothing.
func TestLongerSearchIsKept(t *testing.T) {
	d := designtest.Job(t, "s2")
	d.Bench.LongerFor = estimate(t, d).CutsCode
	p := priced()
	p.Plans = &cut.Memory{}
	first, second := estimateWith(t, d, p), estimateWith(t, d, p)
	assert.Equal(t, estimateWith(t, d, priced()), first)
	assert.Equal(t, first, second)
}
