package engine_test

import (
	"slices"
	"testing"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/sound"
	"blockfield/engine/sound/room"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// mostHeard is the number of cells of a panel above which the tests do not
// listen to a state that is there for other reasons.
const mostHeard = 5000

func hear(t testing.TB, d design.Design) engine.Hearing {
	t.Helper()
	h, err := engine.Hear(d)
	require.NoError(t, err)
	return h
}

// heard are the watch-outs of a state's sound.
func heard(t testing.TB, s state) []check.WatchOut {
	t.Helper()
	if columns, rows := s.Design.Walls[0].Groups[0].Grid(); columns*rows > mostHeard {
		return nil
	}
	return hear(t, s.Design).WatchOuts
}

// The worked jobs list what has to fire of ear, hopes, small room, weak fields
// and flat boards; exactly that does. The jobs without printed results follow
// the same rules by hand: steps of 23 mm are half a wave at 7.5 kHz.
func TestSoundWatchOutsOfWorkedJobs(t *testing.T) {
	for name, want := range map[string][]string{
		"s1": {"sound/small-room", "sound/too-near"}, "s1-second": {"sound/small-room"},
		"s2": nil, "s3": {"sound/flat-board-high"}, "s4": nil, "s5": nil, "s5-second": nil,
		"s6": nil, "s6-second": nil, "s7": nil,
		"s8": {"sound/flat-board-high", "sound/small-room"}, "p1": nil, "p2": nil,
	} {
		h := hear(t, designtest.Job(t, name))
		assert.ElementsMatch(t, want, codes(h.WatchOuts), name)
	}
	assert.Empty(t, hear(t, design.Default().Design).WatchOuts, "the first design")
}

// The bands are those of the jobs' sentences, as spans that reach two third
// octaves below them; the fit is what the jobs say the tool should answer.
func TestVerdictsOfWorkedJobs(t *testing.T) {
	band := func(hz float64) sound.Band { return sound.BandOf(hz) }
	for name, want := range map[string]struct {
		half, most, block float64
		fit               string
	}{
		"s1": {1600, 2000, 5044, room.LooksOnly}, // too near, in a small room
		"s2": {0, 0, 0, room.GoodFit},
		"s3": {0, 0, 0, room.GoodFit}, // "good fit for the distance"
		"s5": {1600, 2000, 3858, room.GoodFit},
		"s8": {1600, 2000, 3898, room.SoftFirst},
		"p1": {1600, 1600, 4764, room.GoodFit},
	} {
		h := hear(t, designtest.Job(t, name))
		assert.Equal(t, want.fit, h.Fit.Answer, name)
		if want.half == 0 {
			continue
		}
		v := h.Groups[0].Verdict
		require.NotNil(t, v.Half, name)
		require.NotNil(t, v.Most, name)
		assert.Equal(t, sound.Span{Low: band(want.half) - 2, High: band(want.half)}, *v.Half, name)
		assert.Equal(t, sound.Span{Low: band(want.most) - 2, High: band(want.most)}, *v.Most, name)
		// The jobs divide 343 m/s by the block; here the pitch counts, and the air
		// is as warm as the room.
		assert.InEpsilon(t, want.block, v.BlockHz, 0.01, name)
	}
}

// After the change that a watch-out of sound offers, it is gone.
func TestSoundFixesClear(t *testing.T) {
	for _, trigger := range []string{"sound/too-near"} {
		doc := edit(t, design.Default(), triggers[trigger])
		i := slices.IndexFunc(hear(t, doc.Design).WatchOuts, func(w check.WatchOut) bool { return w.Code == trigger })
		require.GreaterOrEqual(t, i, 0, trigger)
		fix := hear(t, doc.Design).WatchOuts[i].Fix
		require.NotNil(t, fix)
		doc, err := design.Set(doc, fix.Path, fix.Value, length.Metric)
		require.NoError(t, err)
		assert.NotContains(t, codes(hear(t, doc.Design).WatchOuts), trigger)
	}
}

// A millimetre decides about the ear; a shuffle on the same wood decides about a
// chequer.
func TestSoundWatchOutsJustDoNotFire(t *testing.T) {
	for edits, code := range map[string]string{
		"walls[0].listenerDistance = 1500 mm":                            "sound/too-near",
		"room.length = 4000 mm\nroom.width = 2500 mm":                    "sound/small-room", // 25 m³
		group + "heights = 40, 50, 60, 80":                               "sound/small-range",
		group + "heights = 20, 41, 62, 83":                               "sound/flat-board-high", // 8.2 kHz
		thinSticks + "26, 30, 60, 66":                                    "sound/treble-only",
		group + "heights = 20, 44, 68, 92\n" + group + "block.size = 25": "sound/flat-board-low",
	} {
		assert.NotContains(t, codes(hear(t, edit(t, design.Default(), edits).Design).WatchOuts), code, edits)
	}
}

// Several panels are heard as one arrangement: at their places, with their
// turns, and the flat boards beside them.
func TestPanelsAreHeardTogether(t *testing.T) {
	d := designtest.Job(t, "s7") // five panels, A A A B A
	a := hear(t, d).Groups[0].Arrangement
	require.Len(t, a.Modules, 5)
	pitch := a.Modules[1].XM - a.Modules[0].XM
	for i, m := range a.Modules {
		assert.InDelta(t, float64(i-2)*pitch, m.XM, 1e-9)
		assert.InDelta(t, 0, m.YM, 1e-9)
		want := sound.AsDesigned
		if i == 3 {
			want = sound.Counter
		}
		assert.Equal(t, want, m.Turn)
	}
	assert.InDelta(t, 0.604+2*0.023+0.040, pitch, 1e-9, "field, frame and gap on both sides, and the air between")
	single := hear(t, design.Default().Design).Groups[0].Arrangement
	assert.Equal(t, []sound.Module{{}}, single.Modules, "one panel in the middle")
	assert.Equal(t, 33*22, len(single.Levels))
}

// The same design gives the same result, and every sentence is said.
func TestHearingIsPureAndSaid(t *testing.T) {
	reader := english()
	for _, name := range []string{"s1", "s7", "s8"} {
		d := designtest.Job(t, name)
		h := hear(t, d)
		assert.Equal(t, h, hear(t, d), name)
		r := h.Report(d, reader)
		text := append(append(slices.Clone(r.Room), r.Fit.Sentence, r.Client), r.Fit.Reasons...)
		for _, g := range r.Groups {
			text = append(text, g.Sentences...)
		}
		for _, sentence := range text {
			assert.NotContains(t, sentence, "⟪", name)
		}
	}
}
