package engine_test

import (
	"math"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"

	"github.com/stretchr/testify/assert"
)

// The cards of a job glue what the bill glues, with the glue that it buys, and take
// from the bins what was planned to be cut.
func TestCardsAndBillAgree(t *testing.T) {
	for _, name := range []string{"s1", "s2", "s3", "s4", "s5", "s6", "s7", "s8", "p1", "p2"} {
		d := designtest.Job(t, name)
		r := plan(t, d)
		cards := r.Layup(d, design.BottomEdge)
		blocks, grams, longest := 0, 0.0, 0
		for _, c := range cards {
			blocks += c.Blocks
			grams += c.Grams
			for _, n := range c.Parts {
				longest = max(longest, n)
			}
		}
		assert.Equal(t, r.Bill.Blocks, blocks, name)
		assert.InDelta(t, r.Bill.GlueKg*1000, grams, 1e-9*math.Max(1, grams), name)
		assert.LessOrEqual(t, longest, r.Bill.BlocksAtATime(d.Bench), name)
		for _, c := range cards {
			assert.Equal(t, c.Set > 0, c.Bin.Wood != "", name)
		}
	}
}

// About 16 g of glue a row of P2, and the café's rows in two parts: 34 blocks at
// 9 s, of which 210 s are safe. Both from a separate model of the job.
func TestCardsOfWorkedJobs(t *testing.T) {
	d := designtest.Job(t, "p2")
	assert.InDelta(t, 16, plan(t, d).Layup(d, design.BottomEdge)[0].Grams, 0.5)
	d = designtest.Job(t, "s5")
	assert.Equal(t, []int{17, 17}, plan(t, d).Layup(d, design.BottomEdge)[0].Parts)
}
