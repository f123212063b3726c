package pace_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/wasm/preview/pace"
)

// hardware imitates graphics: how long a drawing takes, and a frame besides.
type hardware struct {
	frameMS, sampleMS float64
	width, height     int
}

func (h hardware) draws(s pace.Step) float64 {
	samples := (s.To - s.From) * h.width * s.Side * s.Side
	if s.Coarse > 0 {
		samples += h.width * h.height / s.Coarse / s.Coarse
	}
	return float64(samples) * h.sampleMS
}

// frame plays one frame and returns its step and duration.
func (h hardware) frame(p *pace.Pacer, now float64) (pace.Step, float64) {
	s := p.Next(now, h.height)
	took := h.draws(s)
	if s.Draws() {
		p.Took(s, took, h.height)
	}
	return s, took + h.frameMS
}

// play runs frames until the pacer rests and returns the steps and the time.
func (h hardware) play(t *testing.T, p *pace.Pacer, from float64) (steps []pace.Step, now float64) {
	t.Helper()
	now = from
	for range 10000 {
		s, took := h.frame(p, now)
		if s.Rest {
			return steps, now
		}
		steps = append(steps, s)
		now += took
	}
	t.Fatal("the pacer never rests")
	return nil, 0
}

var (
	// fast is a graphics chip: bound by the display's 60 Hz.
	fast = hardware{16.7, 0.000002, 800, 600}
	// software is what was measured without one: 50 ms a frame, 0.7 µs a sample.
	software = hardware{50, 0.0007, 800, 600}
)

func TestZeroPacerRests(t *testing.T) {
	var p pace.Pacer
	assert.Equal(t, pace.Step{Rest: true}, p.Next(0, 600))
}

// TestEveryRowOfEveryPass: after a change comes a coarse picture, then passes
// that cover all rows once and in order, the last one with all samples.
func TestEveryRowOfEveryPass(t *testing.T) {
	for name, hw := range map[string]hardware{"fast": fast, "software": software} {
		finest := map[string]int{"fast": pace.FinestSide, "software": pace.FineSide}[name]
		var p pace.Pacer
		p.Touch(0, false)
		for round := range 4 {
			steps, now := hw.play(t, &p, float64(round)*1e5)
			require.NotZero(t, steps[0].Coarse, name)
			next, side := 0, 0
			for _, s := range steps[1:] {
				require.Zero(t, s.Coarse)
				require.Equal(t, next, s.From, name)
				require.Greater(t, s.To, s.From)
				require.Equal(t, s.To == hw.height, s.Whole)
				next, side = s.To%hw.height, s.Side
			}
			assert.Zero(t, next, "%s: the last pass is complete", name)
			if round > 0 { // the speed is known
				assert.Equal(t, finest, side, "%s: and fine", name)
			}
			p.Touch(now, false)
		}
	}
}

// drag moves the picture with every frame for a while.
func drag(p *pace.Pacer, hw hardware, seconds float64) (pictures int, worstMS, now float64) {
	for now < 1000*seconds {
		p.Touch(now, true)
		s, took := hw.frame(p, now)
		if s.Coarse > 0 {
			pictures++
		}
		now += took
		if now > 1000 {
			worstMS = max(worstMS, took)
		}
	}
	return pictures, worstMS, now
}

func TestDragDrawsOnlyCoarsePictures(t *testing.T) {
	var p pace.Pacer
	pictures, worst, now := drag(&p, software, 5)
	assert.Greater(t, float64(pictures)/5, 10.0, "pictures a second")
	assert.Less(t, worst, 100.0, "once it knows the hardware")
	s := p.Next(now+10, 600)
	assert.Zero(t, s.To, "the full picture waits until the hand rests")
	s = p.Next(now+200, 600)
	assert.NotZero(t, s.To)

	p = pace.Pacer{}
	_, _, now = drag(&p, fast, 5)
	p.Touch(now, true)
	assert.Equal(t, 1, p.Next(now, 600).Coarse, "fast hardware draws every pixel in a drag")
}

// TestBandsStayShort: once the hardware is known no band blocks it for much
// longer than wanted; fast hardware needs one a pass.
func TestBandsStayShort(t *testing.T) {
	var p pace.Pacer
	for range 4 {
		p.Touch(0, false)
		software.play(t, &p, 0)
	}
	p.Touch(0, false)
	steps, _ := software.play(t, &p, 0)
	for _, s := range steps {
		assert.Less(t, software.draws(s), 150.0, "%+v", s)
	}
	p = pace.Pacer{}
	for range 8 {
		p.Touch(0, false)
		fast.play(t, &p, 0)
	}
	p.Touch(0, false)
	steps, now := fast.play(t, &p, 0)
	assert.Len(t, steps, 3, "one coarse picture of full size, one rough pass, one fine")
	assert.Less(t, now, 200.0)
}

// TestChangeStartsAgain: a change in the middle of a pass starts from the top.
func TestChangeStartsAgain(t *testing.T) {
	var p pace.Pacer
	p.Touch(0, false)
	p.Next(0, 600)
	s := p.Next(50, 600)
	require.Positive(t, s.To)
	p.Touch(60, false)
	assert.Positive(t, p.Next(70, 600).Coarse)
	assert.Zero(t, p.Next(120, 600).From)
}

// TestCoarsePicturesDoNotMislead: coarse pictures with little grain to draw say
// nothing of the bands.
func TestCoarsePicturesDoNotMislead(t *testing.T) {
	var p pace.Pacer
	p.Touch(0, false)
	_, now := software.play(t, &p, 0)
	for range 200 {
		p.Touch(now, true)
		s := p.Next(now, software.height)
		require.Positive(t, s.Coarse)
		p.Took(s, software.draws(s)/20, software.height)
		now += 20
	}
	steps, _ := software.play(t, &p, now+200)
	for _, s := range steps {
		assert.Less(t, software.draws(s), 150.0, "%+v", s)
		assert.LessOrEqual(t, s.Side, pace.FineSide, "%+v", s)
	}
}

// What makes a picture fine builds upon a whole pass with one sample a pixel, of the
// same movement: on any graphics one comes before it.
func TestFineBuildsOnAWholePass(t *testing.T) {
	for name, h := range map[string]hardware{"fast": fast, "software": software} {
		var p pace.Pacer
		now := 0.0
		for turn := range 10 {
			p.Touch(now, turn > 0)
			var steps []pace.Step
			steps, now = h.play(t, &p, now)
			rows := 0
			for _, s := range steps {
				if s.Side == 1 {
					rows += s.To - s.From
				}
				if s.Side > 1 {
					require.Equal(t, h.height, rows, "%s, turn %d", name, turn)
				}
			}
			require.Equal(t, h.height, rows, name)
		}
	}
}
