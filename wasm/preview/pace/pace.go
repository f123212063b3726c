// Package pace decides what the preview draws in each frame, so that the
// browser stays responsive on any graphics hardware: a coarse picture while
// something moves, then the full picture in bands of rows, first with one
// sample a pixel, then with several. It adapts the coarseness and the height of
// the bands to the time between frames. Times are milliseconds, sizes pixels of
// the full picture. It knows no clock and no graphics; the caller passes the
// time in.
package pace

// Limits, from trying them on software graphics, where a frame has a fixed cost
// of 35 ms, so that bands of less would be waste.
const (
	// quietMS is how long nothing may move before the full picture begins.
	quietMS = 90
	// A coarse picture should take between these: 16 to 40 pictures a second.
	coarseFastMS, coarseSlowMS = 25, 60
	// A band of the full picture should take between these: a movement waits
	// for one band at most.
	bandFastMS, bandSlowMS = 40, 100
	// firstRows is the first band, for hardware of which nothing is known.
	firstRows = 64
	minRows   = 16
	// Coarse pictures have 1/minCoarse to 1/maxCoarse of the pixels a side.
	minCoarse, maxCoarse, firstCoarse = 1, 4, 2
	// FineSide is the samples along one side of a pixel in the finished
	// picture: four a pixel smooth edges and soften shadows.
	FineSide = 2
)

// Step is what to draw in one frame.
type Step struct {
	Coarse   int  // draw the whole picture at 1/Coarse of its size; 0: do not
	From, To int  // draw these rows of the full picture; equal: none
	Side     int  // samples along one side of a pixel in these rows
	Whole    bool // with these rows the full picture can be shown
	Rest     bool // nothing to do until the next Touch
}

// Pacer holds where the picture stands. The zero Pacer rests.
type Pacer struct {
	coarse, rows int     // what the hardware was last seen to manage; rows for one sample a pixel
	dirty        bool    // the coarse picture is out of date
	side         int     // samples of the pass under way; 0: at rest
	next         int     // first row of that pass that is not drawn
	movedAt      float64 // time of the last movement
	frameAt      float64 // time of the last frame
	took         float64 // smoothed time between frames that drew alike
	drew         drawing
}

// drawing is what the last frame drew.
type drawing int

const (
	drewNothing drawing = iota
	drewCoarse
	drewBand
)

// Touch says that the picture is out of date. Moving means that more changes
// are likely to follow at once, as in a drag.
func (p *Pacer) Touch(nowMS float64, moving bool) {
	if p.coarse == 0 {
		p.coarse, p.rows = firstCoarse, firstRows
	}
	p.dirty, p.side, p.next = true, 1, 0
	p.movedAt = nowMS - quietMS
	if moving {
		p.movedAt = nowMS
	}
}

// Next returns what to draw in the frame that begins at nowMS, for a picture of
// height rows.
func (p *Pacer) Next(nowMS float64, height int) Step {
	gap := nowMS - p.frameAt
	p.frameAt = nowMS
	switch {
	case p.side == 0:
		p.drew = drewNothing
		return Step{Rest: true}
	case p.dirty:
		p.adapt(drewCoarse, gap)
		p.dirty = false
		if p.coarse == 1 { // as good as the first full pass
			p.side = FineSide
		}
		return Step{Coarse: p.coarse}
	case nowMS-p.movedAt < quietMS:
		p.drew = drewNothing
		return Step{}
	}
	p.adapt(drewBand, gap)
	return p.band(height)
}

func (p *Pacer) band(height int) Step {
	rows := max(p.rows/(p.side*p.side), minRows)
	s := Step{From: p.next, To: min(p.next+rows, height), Side: p.side}
	p.next = s.To
	if s.To == height {
		s.Whole, p.next = true, 0
		if p.side == FineSide {
			p.side = 0
		} else {
			p.side = FineSide
		}
	}
	return s
}

// adapt learns from how long the last frame held up this one, when both draw
// the same. Graphics run behind the program, so one gap says little: the mean
// of the last ones counts.
func (p *Pacer) adapt(draws drawing, gapMS float64) {
	again := p.drew == draws
	p.drew = draws
	if !again {
		p.took = 0
		return
	}
	if p.took == 0 {
		p.took = gapMS
		return
	}
	p.took = (p.took + gapMS) / 2
	switch {
	case draws == drewCoarse && p.took > coarseSlowMS:
		p.coarse, p.took = min(p.coarse+1, maxCoarse), 0
	case draws == drewCoarse && p.took < coarseFastMS:
		p.coarse, p.took = max(p.coarse-1, minCoarse), 0
	case draws == drewBand && p.took > bandSlowMS:
		p.rows, p.took = max(p.rows/2, minRows), 0
	case draws == drewBand && p.took < bandFastMS:
		p.rows, p.took = p.rows*2, 0
	}
}
