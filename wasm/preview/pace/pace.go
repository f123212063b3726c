// Package pace decides what the preview draws in each frame, so that it answers
// at once on any graphics hardware: a coarse picture while something moves,
// then the full picture in bands of rows, first with one sample a pixel, then
// with several. The caller says how long each drawing took; coarseness and
// bands follow from that. Times are milliseconds, sizes pixels of the full
// picture. It knows no clock and no graphics.
package pace

import "math"

// Limits, from trying them on software graphics on two cores.
const (
	// quietMS is how long nothing may move before the full picture begins. Edits of
	// somebody who drags a slider or holds a key come closer together.
	quietMS = 180
	// coarseMS is what a picture in a drag may take.
	coarseMS = 35
	// bandMS is what a band may take: the longest that a movement waits.
	bandMS = 45
	// minRows is the smallest band.
	minRows = 4
	// maxCoarse: coarse pictures have at least 1/maxCoarse of the pixels a side.
	maxCoarse = 8
	// guessMS is the time of a pass before anything was measured: that of
	// software graphics.
	guessMS = 500
	// FineSide is the samples along one side of a pixel in the finished
	// picture: four a pixel smooth edges and soften shadows, on slow graphics.
	FineSide = 2
	// FinestSide is the same on fast graphics.
	FinestSide = 3
	// slowMS is from which time of a pass on graphics count as slow.
	slowMS = 50
)

// Step is what to draw in one frame.
type Step struct {
	Coarse   int     // draw the whole picture at 1/Coarse of its size; 0: do not
	From, To int     // draw these rows of the full picture; equal: none
	Side     int     // samples along one side of a pixel in these rows
	Whole    bool    // with these rows the full picture can be shown
	Rest     bool    // nothing to do until the next Touch
	WaitMS   float64 // nothing to do for so long, unless there is a Touch
}

// Draws reports whether there is anything to draw in the step.
func (s Step) Draws() bool { return s.Coarse > 0 || s.To > s.From }

// Pacer holds where the picture stands. The zero Pacer rests.
type Pacer struct {
	// Estimates for the full picture: with one sample a pixel, by the bands and by
	// coarse pictures, which have less grain to draw; and for what makes it fine, which
	// is more or less by what there is in the picture.
	passMS, coarsePassMS, finePassMS float64
	warm                             bool    // the first drawing, which compiles the shader, is over
	dirty                            bool    // the coarse picture is out of date
	side                             int     // samples of the pass under way; 0: at rest
	next                             int     // first row of that pass that is not drawn
	movedAt                          float64 // time of the last movement
}

// Slow reports whether the graphics are slow, as far as is known.
func (p *Pacer) Slow() bool { return p.passMS > slowMS }

// Touch says that the picture is out of date. Moving means that more changes
// are likely to follow at once, as in a drag.
func (p *Pacer) Touch(nowMS float64, moving bool) {
	p.dirty, p.side, p.next = true, 1, 0
	p.movedAt = nowMS - quietMS
	if moving {
		p.movedAt = nowMS
	}
}

// Next returns what to draw in the frame that begins at nowMS, for a picture of
// height rows.
func (p *Pacer) Next(nowMS float64, height int) Step {
	if p.passMS == 0 {
		p.passMS, p.coarsePassMS, p.finePassMS = guessMS, guessMS, guessMS
	}
	switch {
	case p.side == 0:
		return Step{Rest: true}
	case p.dirty:
		p.dirty = false
		coarse := int(math.Ceil(math.Sqrt(p.coarsePassMS / coarseMS)))
		return Step{Coarse: min(max(coarse, 1), maxCoarse)}
	case nowMS-p.movedAt < quietMS:
		return Step{WaitMS: quietMS - (nowMS - p.movedAt)}
	}
	return p.band(height)
}

// fine is the samples along one side of a pixel in the finished picture.
func (p *Pacer) fine() int {
	if p.Slow() {
		return FineSide
	}
	return FinestSide
}

func (p *Pacer) band(height int) Step {
	pass := p.passMS
	if p.side > 1 {
		pass = p.finePassMS
	}
	rows := bandMS / pass * float64(height)
	rows = math.Min(math.Max(rows, minRows), float64(height))
	s := Step{From: p.next, To: min(p.next+int(rows), height), Side: p.side}
	p.next = s.To
	if s.To == height {
		s.Whole, p.next = true, 0
		if p.side > 1 {
			p.side = 0
		} else {
			p.side = p.fine()
		}
	}
	return s
}

// Took tells how long the drawing of a step took, for a picture of height rows.
func (p *Pacer) Took(s Step, ms float64, height int) {
	if !p.warm {
		p.warm = true
		return
	}
	ms = max(ms, 0.1)
	if s.Coarse > 0 {
		p.coarsePassMS = (p.coarsePassMS + ms*float64(s.Coarse*s.Coarse)) / 2
		return
	}
	whole := ms * float64(height) / float64(s.To-s.From)
	if s.Side > 1 {
		p.finePassMS = (p.finePassMS + whole) / 2
	} else {
		p.passMS = (p.passMS + whole) / 2
	}
}
