package tools_test

import (
	"slices"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/tools"

	"github.com/stretchr/testify/assert"
)

func mm(all ...int64) []length.Length {
	var out []length.Length
	for _, n := range all {
		out = append(out, length.MM(n))
	}
	return out
}

// Every rule's tool is one that can be ticked.
func TestToolsCanBeTicked(t *testing.T) {
	for _, missing := range tools.Advise([]string{"calliper"}, nil).Missing {
		assert.Contains(t, design.Tools(), missing)
	}
	for _, name := range []string{"mitre saw", "mitre box", "stop block", "clamped carrier", "bench saw", "sander"} {
		assert.Contains(t, design.Tools(), name)
	}
}

// Either side of what each way of cutting holds: 25 mm with fingers at a machine, 12 in a
// clamped carrier, 15 in a mitre box; without a saw nothing is said to be safe.
func TestSafeHeights(t *testing.T) {
	for _, c := range []struct {
		tools    []string
		cut      string
		safe     int64
		tooShort int64
	}{
		{[]string{"mitre saw"}, "tools/cut-machine", 25, 24},
		{[]string{"bench saw", "stop block"}, "tools/cut-machine", 25, 24},
		{[]string{"mitre saw", "clamped carrier"}, "tools/cut-carrier", 12, 11},
		{[]string{"mitre box"}, "tools/cut-box", 15, 14},
		{[]string{"mitre box", "mitre saw"}, "tools/cut-machine-box", 15, 14},
		{[]string{"mitre box", "clamped carrier"}, "tools/cut-box", 15, 14},
	} {
		a := tools.Advise(c.tools, mm(86, c.safe, c.tooShort, c.tooShort, 0))
		assert.Equal(t, c.cut, a.Cut, "%v", c.tools)
		assert.Equal(t, mm(c.tooShort), a.TooShort, "%v", c.tools)
	}
	none := tools.Advise([]string{"drill"}, mm(14, 86))
	assert.Equal(t, "tools/cut-none", none.Cut)
	assert.True(t, none.Least.IsZero())
	assert.Empty(t, none.TooShort)
	assert.Contains(t, none.Missing, "mitre saw")
}

// By hand: machines for both leave the first panel's 1.35, hand tools for both make the
// trade's 1.6, and marking by hand a little more. Nothing ticked is taken for hand tools.
func TestFactor(t *testing.T) {
	for _, c := range []struct {
		tools []string
		want  float64
	}{
		{nil, 1.6},
		{[]string{"mitre saw", "sander", "stop block"}, 1.35},
		{[]string{"mitre box", "stop block"}, 1.6},
		{[]string{"mitre box"}, 1.65},
		{[]string{"mitre saw", "stop block"}, 1.48},
		{[]string{"mitre saw", "sander"}, 1.4},
	} {
		assert.InDelta(t, c.want, tools.Advise(c.tools, nil).Factor, 0.006, "%v", c.tools)
	}
}

// One more tool never makes the work longer or a block unsafe.
func TestMoreToolsNeverHurt(t *testing.T) {
	heights := mm(10, 12, 14, 20, 30)
	for i := range design.Tools() {
		for j := range design.Tools() {
			some := []string{"calliper", design.Tools()[i]}
			more := append(slices.Clone(some), design.Tools()[j])
			a, b := tools.Advise(some, heights), tools.Advise(more, heights)
			assert.LessOrEqual(t, b.Factor, a.Factor, "%v", more)
			assert.LessOrEqual(t, len(b.Missing), len(a.Missing), "%v", more)
			if !a.Least.IsZero() {
				assert.LessOrEqual(t, len(b.TooShort), len(a.TooShort), "%v", more)
			}
		}
	}
}

// A bench saw rips the bevel; without one the strips are bought.
func TestCleat(t *testing.T) {
	assert.Equal(t, "tools/cleat-rip", tools.Advise([]string{"bench saw"}, nil).Cleat)
	assert.Equal(t, "tools/cleat-buy", tools.Advise([]string{"mitre saw"}, nil).Cleat)
}

// The jigs of the first panel at home, by hand: fields of 618.8 mm have a diagonal of
// 618.8·√2 = 875.1 mm, and the carrier keeps both hands 150 mm away from an 86 mm block.
func TestJigs(t *testing.T) {
	j := tools.JigsFor(designtest.Job(t, "s8").Walls[0].Groups[0])
	assert.Equal(t, mm(86, 62, 38, 14), j.Stops)
	assert.Equal(t, "386 mm", j.CarrierLength.String())
	assert.Equal(t, "104 mm", j.CarrierWidth.String())
	assert.InDelta(t, 875.115, j.Diagonal.Millimetres(), 0.001)
	assert.Equal(t, "618.8 mm", j.FenceWidth.String())
	assert.Len(t, tools.JigsFor(designtest.Job(t, "s1").Walls[0].Groups[0]).Stops, 4, "no stop for bare backer")
}
