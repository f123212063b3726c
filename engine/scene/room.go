package scene

import "math"

// The room round the panel, chosen by eye.
const (
	skirtingM    = 0.09   // height of the skirting board
	skirtingTopM = 0.0015 // half of its edge's line
	plankM       = 0.14   // width of a floor board
	plankLineM   = 0.001
	floorGloss   = 0.15
	// outlineM is half the width of the lines that show a person and a sofa.
	outlineM = 0.006
	// outlineDark is what is left of the wall's light in them.
	outlineDark = 0.5
	// besideM is how far from the panels the person stands.
	besideM   = 0.55
	shoulderM = 0.3 // and from the corner of the room
	sofaTopM  = 0.85
	// FigureM is the height of the person that stands for scale.
	FigureM = 1.75
)

// furnish places a person beside the panels, where there is more room, and a
// sofa below their middle, if it fits there.
func (v *view) furnish(figure bool, lo, hi vec) {
	if !figure {
		return
	}
	v.figure = 1
	if lo.Y > sofaTopM {
		v.figure = 2
	}
	v.sofaX = (lo.X + hi.X) / 2
	v.figureX = min(hi.X+besideM, v.wallW-shoulderM)
	if lo.X > v.wallW-hi.X {
		v.figureX = max(lo.X-besideM, shoulderM)
	}
}

func skirtingPaint() RGB { return RGB{0.80, 0.785, 0.76} }
func floorWood() RGB     { return RGB{0.27, 0.19, 0.125} }

// albedo is the colour of a hit's surface. foot is the width of one sample on
// it, in metres.
func (v *view) albedo(h hit, p vec, foot float64) (c RGB, gloss float64) {
	switch h.what {
	case theBlock:
		b := &v.panels[h.panel]
		seams := b.sideSeams
		if h.n.Z > 0.5 {
			return scale(b.blockWood(h, p, foot), v.seams(b, h, p, foot)), b.blocks.Gloss
		}
		return scale(b.blockWood(h, p, foot), seams(h, p, foot)), b.blocks.Gloss
	case theBacker:
		b := &v.panels[h.panel]
		if h.n.Z > 0.5 {
			return b.ply.Face, b.ply.Gloss
		}
		return b.ply.End, b.ply.Gloss
	case theFrame:
		b := &v.panels[h.panel]
		return b.rimWood(h, p, foot), b.rim.Gloss
	case theFloor:
		return scale(floorWood(), planks(p, foot)), floorGloss
	}
	return v.paint(h, p, foot), 0
}

// paint is the wall's colour, with a pale skirting board along the floor and,
// where asked for, a person and a sofa in outline.
func (v *view) paint(h hit, p vec, foot float64) RGB {
	c := v.wall
	if h.n.Y < -0.5 { // the ceiling
		return c
	}
	if p.Y < skirtingM {
		c = skirtingPaint()
	}
	c = scale(c, mix(1, 0.6, line(math.Abs(p.Y-skirtingM), skirtingTopM, foot)))
	if v.figure > 0 && h.what == theWall {
		d := figure(p.X-v.figureX, p.Y)
		if v.figure > 1 {
			d = min(d, sofa(p.X-v.sofaX, p.Y))
		}
		c = scale(c, mix(1, outlineDark, line(math.Abs(d), outlineM, foot)))
	}
	return c
}

// planks are floor boards along the wall.
func planks(p vec, foot float64) float64 {
	across := p.Z / plankM
	f := fract(across)
	number := math.Floor(across)
	vary := 0.88 + 0.24*fract(number*0.6180339)
	along := p.X + 3*fract(number*0.7548777)
	grain := math.Sin(p.Z*610+1.7*math.Sin(along*4+number)) * clamp(0.006/foot-0.5, 0, 1)
	return vary * (1 + 0.06*grain) * mix(1, seamDark, line(min(f, 1-f)*plankM, plankLineM, foot))
}

// figure is the distance (m) from the outline of a standing person, negative
// inside: head, trunk and legs as rounded shapes.
func figure(x, y float64) float64 {
	x = math.Abs(x)
	head := length2(x, y-1.63) - 0.12
	trunk := rounded(x, y-1.16, 0.13, 0.27, 0.09)
	legs := rounded(x-0.10, y-0.45, 0.025, 0.40, 0.05)
	return min(head, trunk, legs)
}

// sofa is the same for a sofa of 1.8 m.
func sofa(x, y float64) float64 {
	x = math.Abs(x)
	seat := rounded(x, y-0.31, 0.80, 0.13, 0.06)
	back := rounded(x, y-0.55, 0.70, 0.22, 0.07)
	arm := rounded(x-0.84, y-0.37, 0.03, 0.19, 0.06)
	foot := rounded(x-0.74, y-0.07, 0.015, 0.05, 0.01)
	return min(seat, back, arm, foot)
}

// rounded is the distance to a box of the given half sides with a round edge.
func rounded(x, y, halfX, halfY, edge float64) float64 {
	dx, dy := math.Abs(x)-halfX, math.Abs(y)-halfY
	return length2(max(dx, 0), max(dy, 0)) + min(max(dx, dy), 0) - edge
}

func length2(x, y float64) float64 { return math.Sqrt(x*x + y*y) }
