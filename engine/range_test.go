package engine_test

import (
	"testing"

	"blockfield/engine/design/designtest"

	"github.com/stretchr/testify/assert"
)

// The client's range is one that a person can plan with: at least 7 % either
// way with a survey and 15 % without, and never the sum of every task at its
// worst, which is half as much again. Steps of the price of 10 before tax may
// take a part off the lower half.
func TestRangesOfWorkedJobs(t *testing.T) {
	for _, name := range []string{"s1", "s1-second", "s2", "s3", "s4", "s5", "s6", "s7", "p1", "p2"} {
		d := designtest.Job(t, name)
		p := plan(t, d).Price
		low, high := float64(p.Low.Minor), float64(p.High.Minor)
		gross, step := float64(p.Gross.Minor), 1200.0
		least, most := 0.07, 0.20
		if !d.Work.Survey {
			least, most = 0.15, 0.25
		}
		assert.LessOrEqual(t, low, gross*(1-least)+step, name)
		assert.GreaterOrEqual(t, low, gross*(1-most), name)
		assert.GreaterOrEqual(t, high, gross*(1+least)-step, name)
		assert.LessOrEqual(t, high, gross*(1+most), name)
	}
}
