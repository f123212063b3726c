// Package pace decides what the preview draws in each frame, so that the
// browser stays responsive on any graphics hardware: a coarse picture while
// something moves, then the full picture in bands of rows. It adapts the
// coarseness and the height of the bands to the time between frames. Times are
// milliseconds, sizes pixels of the full picture. It knows no clock and no
// graphics; the caller passes the time in.
package pace

// Limits, chosen so that a frame stays near the two refreshes of a 60 Hz
// display that still feel immediate.
const (
	// quietMS is how long nothing may move before the full picture begins.
	quietMS = 90
	// fastMS and slowMS bound the time between frames that is left alone.
	fastMS = 22
	slowMS = 48
	// firstRows is the first band of the first full picture: small enough for
	// a renderer without any graphics hardware.
	firstRows = 48
	minRows   = 16
	// Coarse pictures have 1/minCoarse to 1/maxCoarse of the pixels a side.
	minCoarse, maxCoarse, firstCoarse = 1, 4, 2
)

// Step is what to draw in one frame.
type Step struct {
	Coarse   int  // draw the whole picture at 1/Coarse of its size; 0: do not
	From, To int  // draw these rows of the full picture; equal: none
	Done     bool // with these rows the full picture is complete
	Rest     bool // nothing to do until the next Touch
}

// Pacer holds where the picture stands. The zero Pacer rests.
type Pacer struct {
	coarse, rows int     // what the hardware was last seen to manage
	dirty        bool    // the coarse picture is out of date
	busy         bool    // the full picture is out of date
	next         int     // first row of the full picture that is not drawn
	movedAt      float64 // time of the last movement
	frameAt      float64 // time of the last frame that drew something
	drewCoarse   bool
	drewRows     bool
}

// Touch says that the picture is out of date. Moving means that more changes
// are likely to follow at once, as in a drag.
func (p *Pacer) Touch(nowMS float64, moving bool) {
	if p.coarse == 0 {
		p.coarse, p.rows = firstCoarse, firstRows
	}
	p.dirty, p.busy, p.next = true, true, 0
	p.movedAt = nowMS - quietMS
	if moving {
		p.movedAt = nowMS
	}
}

// Next returns what to draw in the frame that begins at nowMS, for a picture of
// height rows.
func (p *Pacer) Next(nowMS float64, height int) Step {
	if !p.busy {
		p.drewCoarse, p.drewRows = false, false
		return Step{Rest: true}
	}
	p.adapt(nowMS - p.frameAt)
	p.frameAt = nowMS
	if p.dirty {
		p.dirty = false
		p.drewCoarse, p.drewRows = true, false
		return Step{Coarse: p.coarse}
	}
	p.drewCoarse = false
	if nowMS-p.movedAt < quietMS {
		p.drewRows = false
		return Step{}
	}
	s := Step{From: p.next, To: min(p.next+p.rows, height)}
	p.next, p.drewRows = s.To, true
	if s.To == height {
		p.busy, s.Done = false, true
	}
	return s
}

// adapt learns from how long the last drawing held up this frame.
func (p *Pacer) adapt(tookMS float64) {
	switch {
	case p.drewCoarse && tookMS > slowMS:
		p.coarse = min(p.coarse+1, maxCoarse)
	case p.drewCoarse && tookMS < fastMS:
		p.coarse = max(p.coarse-1, minCoarse)
	case p.drewRows && tookMS > slowMS:
		p.rows = max(p.rows/2, minRows)
	case p.drewRows && tookMS < fastMS:
		p.rows *= 2
	}
}
