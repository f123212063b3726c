package panel_test

import (
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// two has a stack of 18 + 10 + 100 = 128 mm. The rule is common practice; the
// three sums are exact.
func TestFrameBoardAgainstStack(t *testing.T) {
	mm, um := length.MM, length.Micrometres
	for _, c := range []struct {
		name   string
		board  length.Length
		reveal length.Length
		want   string
		level  check.Level
		fix    string
	}{
		{"as wide as stack and reveal", mm(130), mm(2), "", 0, ""},
		{"a hair less than the wanted reveal", um(129_999), mm(2), "frame/less-reveal", check.Caution, "130 mm"},
		{"as wide as the stack", mm(128), mm(2), "frame/less-reveal", check.Caution, "130 mm"},
		{"a hair less than the stack", um(127_999), mm(2), "frame/too-shallow", check.Stop, "130 mm"},
		{"inches stay inches", length.Sixtyfourths(5 * 64), mm(2), "frame/too-shallow", check.Stop, "5 1/8 in"},
		{"wanted to stand proud", mm(123), mm(-5), "", 0, ""},
		{"more proud than wanted", um(122_999), mm(-5), "frame/too-shallow", check.Stop, "123 mm"},
		{"flush", mm(128), mm(0), "", 0, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := two()
			in.Frame.Board, in.Frame.Reveal = c.board, c.reveal
			got := aboutFrame(t, in)
			if c.want == "" {
				assert.Empty(t, got)
				return
			}
			require.Len(t, got, 1)
			assert.Equal(t, c.want, got[0].Code)
			assert.Equal(t, c.level, got[0].Level)
			assert.Equal(t, check.Buy, got[0].Gate)
			assert.False(t, got[0].Evidence, "the maker may sign it off")
			assert.Equal(t, c.fix, got[0].Fix.Value)
		})
	}
	in := two()
	in.Frame.Board, in.Frame.Joint = mm(20), design.NoFrame
	assert.Empty(t, aboutFrame(t, in), "a bare edge needs no board")

	in = two()
	in.Frame.Board = mm(110)
	args := aboutFrame(t, in)[0].Args
	assert.Equal(t, "18 mm", args["proud"].(length.Length).String(), "128 − 110")
	assert.Equal(t, "80 mm", args["tallest"].(length.Length).String(), "110 − 2 − 18 − 10")
}

func aboutFrame(t *testing.T, in design.Group) []check.WatchOut {
	t.Helper()
	var out []check.WatchOut
	for _, w := range build(t, in).WatchOuts(in, "g") {
		if w.Field == "g.frame.board" {
			out = append(out, w)
		}
	}
	return out
}
