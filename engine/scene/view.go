package scene

import "math"

// Optics of the picture. Chosen by eye for a calm, catalogue-like view.
const (
	// viewAngleDeg is the height of the view at zoom 1 in a picture of the shape
	// usualShape: a short telephoto, so that blocks at the edge do not lean. In
	// other shapes the viewer stands in the same place, so that one picture is a
	// part of the other.
	viewAngleDeg = 19
	usualShape   = 4.0 / 3
	// fitMargin is how much larger than the panels the view is at zoom 1.
	fitMargin = 1.22
	// minDistanceM keeps the viewer of a tiny panel at arm's length and more.
	minDistanceM = 1.2
	// lampDistanceM is how far the lamp hangs from the centre, at least; with
	// large groups it moves away by lampPerSpan of their diagonal.
	lampDistanceM = 3.2
	lampPerSpan   = 1.9
	// tiny stands for 0 where the maths divides by a direction.
	tiny = 1e-9
	// liftM is how far a shadow ray starts off its surface: more than the
	// shader's float32 can lose over a few metres, less than any slack.
	liftM = 4e-5
)

// view is a scene made ready for tracing: the shader's uniforms, in float64.
type view struct {
	eye, forward, right, up vec
	tanHalf                 float64 // half the picture's height at distance 1
	width, height           float64 // pixels
	wallW, wallH            float64
	wall                    RGB
	lo, hi, centre          vec // of the box round all panels
	lampDir                 vec // from the centre of the panels towards the lamp
	lampU, lampV            vec // from the lamp's middle to its edge, two ways
	lampAt                  vec
	lampReachM              float64 // from the centre to the lamp
	figure                  float64 // 1: a person is drawn on the wall, 2: a sofa too
	figureX, sofaX          float64
	lampLight, fillLight    RGB
	panels                  []board
}

// board is one panel made ready: rectangles in wall coordinates, heights over
// the wall, and what a cell looks up.
type board struct {
	lo, hi           vec // the whole panel
	inLo, inHi       vec // inside of the frame, or the field without one; inLo.Z rear and inHi.Z front of the backer
	framed, mitred   bool
	bevel            float64 // of the backer's lower edge, or negative of its upper one
	depth            float64 // z of the frame's front
	gridX, gridY     float64 // upper left corner of the field
	pitch, block     float64
	cols, rows       int
	feet, tallest    float64 // z of the block feet, greatest height over it
	gapOpen          bool    // the slack is wide enough to be walked through
	heights          []float64
	levels           []uint8
	seed             uint32
	blocks, rim, ply Material
	second           Material
	woods            []uint8        // of the cells; nil: all are of the first look
	cuts             []Cut          // of the cells; for Render alone
	pieces           [2]*[256]stick // that the blocks are cut from, by their look and their Cut; for Render alone
}

// gapLineM is the widest slack that is drawn as a line on closed blocks; wider
// ones are real gaps that light and view pass through. A line can be filtered
// to the width of a pixel, a real gap of a hair's width would flicker.
const gapLineM = 1e-3

func newView(s Scene, width, height int) *view {
	v := &view{
		width: float64(width), height: float64(height),
		wallW: s.Wall.WidthM, wallH: s.Wall.HeightM, wall: s.Wall.Colour,
	}
	lo, hi := vec{math.Inf(1), math.Inf(1), 0}, vec{math.Inf(-1), math.Inf(-1), 0}
	for i := range s.Panels {
		b := newBoard(&s.Panels[i])
		v.panels = append(v.panels, b)
		lo = vec{min(lo.X, b.lo.X), min(lo.Y, b.lo.Y), 0}
		hi = vec{max(hi.X, b.hi.X), max(hi.Y, b.hi.Y), max(hi.Z, b.hi.Z)}
	}
	v.lo, v.hi = lo, hi
	v.centre = lo.add(hi).times(0.5)
	v.furnish(s.Figure, lo, hi)
	v.aim(s.Camera.clamped(), lo, hi)
	v.light(s.Lamp.clamped(), hi.sub(lo))
	return v
}

// aim places the viewer. Zooming changes the angle of view, not the distance,
// so the viewer never ends up inside a block.
func (v *view) aim(c Camera, lo, hi vec) {
	tan := math.Tan(radians(viewAngleDeg) / 2)
	half := hi.sub(lo).times(0.5)
	dist := c.DistanceM
	if dist == 0 {
		dist = max(max(half.Y, half.X/usualShape)/tan*fitMargin+half.Z, minDistanceM)
	}
	yaw, pitch := radians(c.YawDeg), radians(c.PitchDeg)
	back := vec{math.Sin(yaw) * math.Cos(pitch), math.Sin(pitch), math.Cos(yaw) * math.Cos(pitch)}
	v.eye = v.centre.at(back, dist)
	v.forward = back.times(-1)
	v.right = vec{0, 1, 0}.cross(back).unit()
	v.up = back.cross(v.right)
	fit := max(half.Y, half.X/(v.width/v.height)) * fitMargin / max(dist-half.Z, MinDistanceM/2)
	v.tanHalf = fit / c.Zoom
}

// light places the lamp and sets its colour and strength against the fill. A
// raking lamp is turned up, as a photographer would, so that no lamp leaves the
// picture dark.
func (v *view) light(l Lamp, span vec) {
	x, y, z := l.Towards()
	v.lampDir = vec{x, y, z}
	across := vec{0, 1, 0}
	if math.Abs(y) > 0.9 {
		across = vec{1, 0, 0}
	}
	reach := max(lampDistanceM, lampPerSpan*span.length())
	radius := reach * math.Tan(radians(l.spread()))
	v.lampU = across.cross(v.lampDir).unit().times(radius)
	v.lampV = v.lampDir.cross(v.lampU)
	v.lampReachM = reach
	v.lampAt = v.centre.at(v.lampDir, reach)
	strength := lampStrength / math.Pow(max(z, 0.25), 0.75)
	v.lampLight = scale(lampColour(l.WarmthK), strength)
	// A large light also lights the room.
	fill := fillStrength * (1 + windowFill*smooth(LampSpreadDeg, WindowSpreadDeg, l.spread()))
	v.fillLight = scale(fillColour(l.WarmthK), fill)
}

func newBoard(p *Panel) board {
	b := board{
		lo:     vec{p.LeftM, p.BottomM, p.OutM},
		hi:     vec{p.LeftM + p.OuterWidthM, p.BottomM + p.OuterHeightM, 0},
		framed: p.FrameThicknessM > 0, mitred: p.Mitred, depth: p.OutM + p.FrameDepthM, bevel: p.Bevel,
		pitch: p.PitchM, block: p.BlockM, cols: p.Columns, rows: p.Rows,
		feet:    p.OutM + p.CleatThicknessM + p.BackerThicknessM,
		gapOpen: p.PitchM-p.BlockM > gapLineM,
		heights: p.HeightsM, levels: p.Levels, seed: foldSeed(p.Seed),
		blocks: p.Blocks.ready(), rim: p.Frame.ready(), ply: p.Backer,
		second: p.Second.ready(), woods: p.Woods,
	}
	inset := p.FrameThicknessM
	if !b.framed {
		b.depth = 0
	}
	b.inLo = vec{b.lo.X + inset, b.lo.Y + inset, p.OutM + p.CleatThicknessM}
	b.inHi = vec{b.hi.X - inset, b.hi.Y - inset, b.feet}
	b.gridX = (b.lo.X+b.hi.X)/2 - float64(p.Columns)*p.PitchM/2
	b.gridY = (b.lo.Y+b.hi.Y)/2 + float64(p.Rows)*p.PitchM/2
	for _, l := range p.Levels {
		b.tallest = max(b.tallest, p.HeightsM[l])
	}
	b.tallest = max(b.tallest, liftM) // a flat box would have no inside
	b.hi.Z = max(b.depth, b.feet+b.tallest)
	return b
}

// height is the height of a cell; beyond the field it is the frame's front, or
// far below for a bare edge.
func (b *board) height(col, row int) float64 {
	if col < 0 || row < 0 || col >= b.cols || row >= b.rows {
		if b.framed {
			return b.depth - b.feet
		}
		return -b.feet
	}
	return b.heights[b.levels[row*b.cols+col]]
}

// ray is the direction of the view through a point of the picture.
func (v *view) ray(px, py float64) vec {
	k := 2 * v.tanHalf / v.height
	return v.forward.
		at(v.right, (px-v.width/2)*k).
		at(v.up, (v.height/2-py)*k).unit()
}
