package scene

import "math"

// Light of the picture, all chosen by eye on the default design.
const (
	lampStrength = 0.83
	fillStrength = 0.47
	// windowFill is how much more fill a window gives than a lamp.
	windowFill = 0.12
	// balanceK is the colour temperature that the picture shows as white:
	// lamps below it look warm, but not as orange as they measure.
	balanceK = 3900
	// lampTint is how much of the remaining colour of the lamp is shown.
	lampTint = 0.24
	// fillTint is how much of that colour the room throws back.
	fillTint = 0.5
	// goldenAngle in radians.
	goldenAngle = 2.39996323
	// lampRim is where the first samples look for the lamp, as a part of its radius.
	lampRim = 0.95
	// bounce is the light that wood throws back into wells and corners, as a
	// part of the fill.
	bounce = 0.20
	// sideLift brightens side walls and ceiling, which only the fill reaches.
	sideLift = 1.85
	// A glossy surface mirrors the lamp: how bright, and how sharply it does
	// so at gloss 0 and by how much more at gloss 1.
	glossShine, glossDull, glossSharp = 0.35, 8, 56
	// shoulder is where highlights begin to roll off instead of clipping.
	shoulder = 0.6
)

// fillColour is that of the room's light: a little of the sky, and of the lamp's.
func fillColour(kelvin float64) RGB { return RGB{0.985, 1, 1.02}.mix(lampColour(kelvin), fillTint) }

// lampColour is the linear colour of a black body, balanced and of unit
// luminance. Source: Kim et al., "Design of advanced color temperature control
// system for HDTV applications" (2002), cubic fit of the Planckian locus, from
// memory; conversion to linear sRGB by IEC 61966-2-1.
func lampColour(kelvin float64) RGB {
	c, w := planck(kelvin), planck(balanceK)
	c = RGB{c.R / w.R, c.G / w.G, c.B / w.B}
	c = scale(c, 1/luminance(c))
	return RGB{1, 1, 1}.mix(c, lampTint)
}

func luminance(c RGB) float64 { return 0.2126*c.R + 0.7152*c.G + 0.0722*c.B }

// planck is the linear colour of a black body of unit luminance.
func planck(t float64) RGB {
	x, y := planckXY(t)
	cx, cz := x/y, (1-x-y)/y // CIE XYZ with Y = 1
	return RGB{
		max(3.2406*cx-1.5372-0.4986*cz, 0.02),
		max(-0.9689*cx+1.8758+0.0415*cz, 0.02),
		max(0.0557*cx-0.2040+1.0570*cz, 0.02),
	}
}

// planckXY is its chromaticity in the CIE 1931 diagram.
func planckXY(t float64) (x, y float64) {
	if t < 4000 {
		x = ((-0.2661239e9/t-0.2343589e6)/t+0.8776956e3)/t + 0.179910
	} else {
		x = ((-3.0258469e9/t+2.1070379e6)/t+0.2226347e3)/t + 0.240390
	}
	switch {
	case t < 2222:
		y = ((-1.1063814*x-1.34811020)*x+2.18555832)*x - 0.20219683
	case t < 4000:
		y = ((-0.9549476*x-1.37418593)*x+2.09137015)*x - 0.16748867
	default:
		y = ((3.0817580*x-5.87338670)*x+3.75112997)*x - 0.37001483
	}
	return x, y
}

// lampPoint is a point of the lamp's disc for a sample. A lone sample is at the
// middle and gives a sharp shadow, a rough one anywhere. The first samples of a pixel are spread evenly
// along the rim, where they notice a shadow's edge; those that it then takes lie
// all over the disc, by the golden angle (common practice). All are turned and
// drawn out by the pixel, so that soft edges have a fine grain instead of steps.
func (v *view) lampPoint(c chance) vec {
	r, a := 0.0, 2*math.Pi*c.turn
	if c.rough {
		r = math.Sqrt(c.out)
	}
	if c.least > 1 {
		r = lampRim
		a += 2 * math.Pi / float64(c.least) * float64(c.number)
	}
	if round := c.number / c.least; round > 0 {
		r = math.Sqrt((float64(c.number%c.least) + fract(c.out+scatterX*float64(round))) / float64(c.least))
		a = goldenAngle*float64(c.number) + 2*math.Pi*c.turn
	}
	return v.lampAt.at(v.lampU, r*math.Cos(a)).at(v.lampV, r*math.Sin(a))
}

// falloff is the lamp's brightness at a distance: 1 at the centre of the panels
// and by the inverse square elsewhere.
func (v *view) falloff(distance float64) float64 {
	k := v.lampReachM / distance
	return k * k
}

// beside is the part of the room's light that a long wall of height h takes
// from a point at distance d in front of it: (1 - cos θ)/2 with tan θ = h/d,
// the view factor of a perpendicular strip (Lambert).
func beside(h, d float64) float64 {
	if h <= 0 {
		return 0
	}
	d = max(d, 1e-5)
	return (1 - d/math.Sqrt(d*d+h*h)) / 2
}

// opposite is the part of the open half of its view that an upright face loses
// to a wall at distance d which reaches h higher: sin θ with tan θ = h/d, the
// view factor of that strip.
func opposite(h, d float64) float64 {
	if h <= 0 {
		return 0
	}
	return h / math.Sqrt(d*d+h*h)
}

// openness is how much of the fill reaches a point of a hit, 0 to 1.
func (v *view) openness(h hit, p vec) float64 {
	switch h.what {
	case theBlock, theBacker:
		b := &v.panels[h.panel]
		if h.n.Z > 0.5 {
			return b.openTop(p)
		}
		if h.what == theBacker {
			return openOutside(p)
		}
		return b.openSide(h, p)
	case theFrame:
		return v.panels[h.panel].openRim(h, p)
	case theWall, theFloor, theSide:
		return v.openRoom(h, p)
	}
	return 1
}

// openTop multiplies what the four neighbours leave of the fill.
func (b *board) openTop(p vec) float64 {
	gx, gy := (p.X-b.gridX)/b.pitch, (b.gridY-p.Y)/b.pitch
	cx := clamp(math.Floor(gx), 0, float64(b.cols-1))
	cy := clamp(math.Floor(gy), 0, float64(b.rows-1))
	fx, fy := clamp(gx-cx, 0, 1), clamp(gy-cy, 0, 1)
	col, row := int(cx), int(cy)
	z := p.Z - b.feet
	open := 1 - beside(b.height(col-1, row)-z, fx*b.pitch)
	open *= 1 - beside(b.height(col+1, row)-z, (1-fx)*b.pitch)
	open *= 1 - beside(b.height(col, row-1)-z, fy*b.pitch)
	open *= 1 - beside(b.height(col, row+1)-z, (1-fy)*b.pitch)
	return open
}

// amongBlocks reports whether a block stands beside the cell at a place.
func (b *board) amongBlocks(p vec) bool {
	col := int(clamp(math.Floor((p.X-b.gridX)/b.pitch), 0, float64(b.cols-1)))
	row := int(clamp(math.Floor((b.gridY-p.Y)/b.pitch), 0, float64(b.rows-1)))
	return col > 0 && b.height(col-1, row) > 0 || col < b.cols-1 && b.height(col+1, row) > 0 ||
		row > 0 && b.height(col, row-1) > 0 || row < b.rows-1 && b.height(col, row+1) > 0
}

// openSide is for the upright faces of blocks and backer: half of what they see
// is the field below, the rest is open down to the block across.
func (b *board) openSide(h hit, p vec) float64 {
	dc, dr := int(h.n.X), -int(h.n.Y)
	z := p.Z - b.feet
	floor := b.height(h.col+dc, h.row+dr)
	across := b.height(h.col+2*dc, h.row+2*dr)
	open := 0.5 * (1 - opposite(across-z, b.pitch))
	low := max(z-floor, 0) // height over the ground in front; the frame may be higher
	return open * (0.55 + 0.45*low/(low+0.5*b.pitch))
}

// openRim is for the frame: its front is open, its inside darkens with depth,
// its outside towards the wall.
func (b *board) openRim(h hit, p vec) float64 {
	if h.n.Z > 0.5 {
		return 1
	}
	inside := p.X > b.lo.X+liftM && p.X < b.hi.X-liftM && p.Y > b.lo.Y+liftM && p.Y < b.hi.Y-liftM
	if inside {
		return 0.5 * smooth(b.feet-0.01, b.depth+0.02, p.Z)
	}
	return openOutside(p)
}

// openOutside is for the upright outer faces of a panel: half of their view is
// wall, and near it there is little light.
func openOutside(p vec) float64 { return 0.3 + 0.3*p.Z/(p.Z+0.05) }

// openRoom darkens the wall round the panels and the corners of the room.
func (v *view) openRoom(h hit, p vec) float64 {
	open := 1.0
	if h.what == theWall {
		for i := range v.panels {
			b := &v.panels[i]
			dx := max(b.lo.X-p.X, p.X-b.hi.X, 0)
			dy := max(b.lo.Y-p.Y, p.Y-b.hi.Y, 0)
			open *= 1 - 0.9*beside(b.hi.Z, math.Sqrt(dx*dx+dy*dy))
		}
		open *= 1 - 0.35*beside(0.6, p.Y)
		return open
	}
	open *= 1 - 0.5*beside(0.6, p.Z)
	if h.what == theSide { // no lamp reaches them, but the room's light does
		open *= sideLift
	}
	return open
}

// tone rolls off highlights: straight up to the shoulder, then towards 1. Half
// of it goes by the brightest part for all three, which keeps the hue, half part
// by part, which lets the brightest spots pale as on a photograph.
func tone(c RGB) RGB {
	top := max(c.R, c.G, c.B)
	if top <= shoulder {
		return c
	}
	kept := scale(c, roll(top)/top)
	return kept.mix(RGB{roll(c.R), roll(c.G), roll(c.B)}, 0.5)
}

func roll(c float64) float64 {
	if c <= shoulder {
		return c
	}
	return shoulder + (1-shoulder)*(1-math.Exp(-(c-shoulder)/(1-shoulder)))
}
