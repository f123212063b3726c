package sound_test

import (
	"math"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/sound"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
)

// heard is a Listening whose half space has shares from 100 Hz on.
func heard(from sound.Band, shares ...float64) sound.Listening {
	l := sound.Listening{SpeedMS: 343}
	for i, s := range shares {
		l.Dome.Bands = append(l.Dome.Bands, sound.Spread{Band: from + sound.Band(i), ByEnergy: s})
	}
	return l
}

func fieldOf(t *testing.T, kind string, clump int) sound.Arrangement {
	return laid(t, design.Pattern{Kind: kind, Order: 7, Seed: 1, Clump: clump}, 21, 21, 36, 20, 44, 68, 92)
}

func codesOf(lines []sound.Line) []string {
	var out []string
	for _, l := range lines {
		out = append(out, l.Code)
	}
	return out
}

// Half is the first third octave with a share of 0.5, most the first with 0.8;
// real blocks begin up to two third octaves lower.
func TestJudgeFindsHalfAndMost(t *testing.T) {
	a := fieldOf(t, design.Shuffled, 1)
	l := heard(0, 0.1, 0.499, 0.5, 0.79, 0.9, 0.95, 0.9, 0.8, 0.49)
	v := sound.Judge(a, l, sound.Facts{Repeats: 1})
	assert.Equal(t, &sound.Span{Low: 0, High: 2}, v.Half)
	assert.Equal(t, &sound.Span{Low: 2, High: 4}, v.Most)
	assert.Equal(t, sound.Band(8), *v.Dip, "the first band above Most that falls below half")
	assert.InDelta(t, 0.95, v.Largest, 1e-12)
	assert.InDelta(t, 343/0.072, v.BlockHz, 1e-9)
	assert.InDelta(t, 1.5, v.NearM, 1e-12, "three waves at 1 kHz are 1.03 m")
	assert.InDelta(t, 0.072, v.RangeM, 1e-12)

	low := sound.Judge(a, heard(-6, 0.6), sound.Facts{}) // 250 Hz, real blocks from 160 Hz on
	assert.InDelta(t, 3*343/158.489, low.NearM, 0.01)
	never := sound.Judge(a, heard(0, 0.2, 0.3, 0.4), sound.Facts{})
	assert.Nil(t, never.Half)
	assert.Nil(t, never.Most)
	assert.Nil(t, never.Dip)
	assert.False(t, never.Nothing)
}

// Equal steps: 19 mm act like a flat board at 9.0 kHz, 30 mm at 5.7 kHz, 40 mm at
// 4.3 kHz, 25.4 mm at 6756 Hz with 343.2 m/s (f = c/(2·step), by hand).
func TestFlatBoard(t *testing.T) {
	mm := func(all ...int64) []length.Length {
		out := make([]length.Length, len(all))
		for i, v := range all {
			out[i] = length.MM(v)
		}
		return out
	}
	for _, c := range []struct {
		heights []length.Length
		stepMM  float64
		hz      float64
	}{
		{mm(0, 19, 38, 57), 19, 9026}, {mm(10, 40, 70), 30, 5717}, {mm(0, 40, 80), 40, 4288},
		{mm(0, 40, 120), 40, 4288}, // not even, but whole steps all the same
		{mm(26, 42, 64, 92), 2, 85_750}, {mm(14, 38, 62, 86), 24, 7146},
		{[]length.Length{length.Sixtyfourths(32), length.Sixtyfourths(72), length.Sixtyfourths(120), length.Sixtyfourths(184)}, 3.175, 54_016},
	} {
		step := sound.EqualStep(c.heights)
		assert.InDelta(t, c.stepMM, step.Millimetres(), 1e-9, "%v", c.heights)
		assert.InEpsilon(t, c.hz, sound.FlatBoardHz(step, 343), 1e-3)
	}
	assert.InDelta(t, 6756, sound.FlatBoardHz(length.Micrometres(25_400), 343.2), 0.5)
	assert.True(t, sound.EqualStep(mm(5)).IsZero())
	assert.True(t, math.IsInf(sound.FlatBoardHz(length.Length{}, 343), 1))
}

// A chequer is called what it is, whatever its depth.
func TestAChequerIsCalledFlat(t *testing.T) {
	p := design.Pattern{Kind: design.Drawn}
	for i := range 22 {
		p.Drawn = append(p.Drawn, "030303030303030303030303"[i%2:i%2+23])
	}
	a := laid(t, p, 23, 22, 36, 0, 30, 60, 95)
	l := sound.Listen(a, sound.Options{})
	v := sound.Judge(a, l, sound.Facts{Heights: []length.Length{length.MM(0), length.MM(30), length.MM(60), length.MM(95)}, Repeats: 11, RepeatCells: 2})
	assert.True(t, v.Nothing)
	assert.Less(t, v.Largest, 0.02)
	assert.Equal(t, "sound/client-nothing", v.Client(length.MM(3000)).Code)
	assert.Equal(t, "sound/nothing", v.Maker()[0].Code)
	assert.Contains(t, codesOf(v.Maker()), "sound/repeats")
	assert.NotContains(t, codesOf(v.Maker()), "sound/alike")
	watch := v.WatchOuts(sound.Place{Wall: design.Wall{ListenerDistance: length.MM(3000)}})
	assert.Equal(t, "sound/spreads-nothing", watch[0].Code)
}

func TestClientSentence(t *testing.T) {
	a := fieldOf(t, design.Shuffled, 2)
	good := sound.Judge(a, heard(0, 0.1, 0.6, 0.9), sound.Facts{Clump: 2, Repeats: 1})
	line := good.Client(length.MM(2000))
	assert.Equal(t, "sound/client-fits", line.Code)
	assert.Equal(t, words.Args{"low": words.Hz(1000), "high": words.Hz(1600)}, line.Args)
	near := good.Client(length.MM(1499))
	assert.Equal(t, "sound/client-near", near.Code)
	assert.Equal(t, "1.5 m", reader().Show(near.Args["near"]))
	assert.Equal(t, "60 in", words.Reader{Units: length.Inch16}.Show(near.Args["near"]), "as a person would say it, and no less")
	treble := sound.Judge(a, heard(0, 0.1, 0.3, 0.4, 0.4, 0.4, 0.6, 0.9), sound.Facts{Repeats: 1})
	assert.Equal(t, "sound/client-looks", treble.Client(length.MM(2000)).Code)
	clumps := codesOf(good.Maker())
	assert.Contains(t, clumps, "sound/clump")
	assert.Contains(t, clumps, "sound/alike", "clumps of two make like neighbours")
	single := sound.Judge(fieldOf(t, design.Shuffled, 1), heard(0, 0.1, 0.6, 0.9), sound.Facts{Clump: 1, Repeats: 1})
	assert.NotContains(t, codesOf(single.Maker()), "sound/alike")
	assert.NotContains(t, codesOf(single.Maker()), "sound/repeats")
	assert.Equal(t, []string{"sound/sit", "sound/not", "sound/calculated"}, codesOf(single.Maker())[len(single.Maker())-3:])
}

func TestSpreadSentences(t *testing.T) {
	a := fieldOf(t, design.Shuffled, 1)
	for _, c := range []struct {
		shares []float64
		want   []string
	}{
		{[]float64{0.1, 0.6, 0.9}, []string{"sound/half", "sound/most"}},
		{[]float64{0.1, 0.9}, []string{"sound/half-and-most"}},
		{[]float64{0.1, 0.6}, []string{"sound/half"}},
		{[]float64{0.1, 0.4}, []string{"sound/never-half"}},
		{[]float64{0.01, 0.04}, []string{"sound/nothing"}},
	} {
		v := sound.Judge(a, heard(0, c.shares...), sound.Facts{Repeats: 1})
		assert.Equal(t, c.want, codesOf(v.Maker())[:len(c.want)])
		assert.Equal(t, "sound/block", codesOf(v.Maker())[len(c.want)])
	}
}

// Every sentence that this room can say is in the catalogue, and says all of
// its arguments.
func TestSentencesExist(t *testing.T) {
	r := words.Reader{Language: words.English(), Units: length.Metric}
	for _, shares := range [][]float64{{0.1, 0.6, 0.9, 0.3}, {0.9}, {0.6}, {0.3}, {0.01}, {0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.9}} {
		for _, clump := range []int{1, 2} {
			a := fieldOf(t, design.Shuffled, clump)
			for _, heights := range [][]length.Length{nil, {length.MM(20), length.MM(44), length.MM(68)}} {
				v := sound.Judge(a, heard(0, shares...), sound.Facts{Clump: clump, Repeats: 2, RepeatCells: 9, Heights: heights})
				lines := append(v.Maker(), v.Client(length.MM(1000)), v.Client(length.MM(3000)))
				for _, l := range lines {
					assert.NotContains(t, r.Say(l.Code, l.Args), "⟪", l.Code)
				}
			}
		}
	}
}
