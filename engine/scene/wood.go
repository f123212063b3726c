package scene

import "math"

// Grain of the wood, chosen by eye.
const (
	toneSpread   = 0.26 // lightest to darkest block, as a part of the tone
	ringContrast = 0.22 // depth of the rings on end grain
	vesselGrain  = 0.05 // depth of the streaks on long grain
	seamDark     = 0.30 // what is left of the light in the joint between two blocks
	arrisM       = 5e-4 // eased edge of a block, half of its joint's look
	arrisLight   = 0.55 // how much brighter or darker it is than the top
	freeEdgeM    = 1e-3 // a neighbour lower by more leaves the edge free
	mitreM       = 4e-4 // half width of a frame's joint line
	skirtingM    = 0.07 // height of the skirting board
	plankM       = 0.14 // width of a floor board
)

// cellSeed is a byte per block, the only chance in the picture. Integer hash
// finaliser of the murmur kind (common practice).
func cellSeed(seed uint32, col, row int) uint8 {
	h := seed*0x9E3779B1 ^ uint32(col)*0x85EBCA6B ^ uint32(row)*0xC2B2AE35
	h ^= h >> 16
	h *= 0x7FEB352D
	h ^= h >> 15
	h *= 0x846CA68B
	h ^= h >> 16
	return uint8(h)
}

// albedo is the colour of a hit's surface. foot is the width of one sample on
// it, in metres; patterns finer than that fade out instead of flickering.
func (v *view) albedo(h hit, p vec, foot float64) (c RGB, gloss float64) {
	switch h.what {
	case theBlock:
		b := &v.panels[h.panel]
		seed := float64(cellSeed(b.seed, h.col, h.row))
		vary := blockTone(seed)
		if h.n.Z > 0.5 {
			c = b.blocks.End.mul(vary)
			return scale(c, b.endGrain(h, p, seed, foot)*v.seams(b, h, p, foot)), b.blocks.Gloss
		}
		c = b.blocks.Face.mul(vary)
		across := p.X + p.Y // one of them is constant on an upright face
		return scale(c, streaks(across+seed*0.37, p.Z, foot)*b.sideSeams(h, p, foot)), b.blocks.Gloss
	case theBacker:
		b := &v.panels[h.panel]
		if h.n.Z > 0.5 {
			return b.ply.Face, b.ply.Gloss
		}
		return b.ply.End, b.ply.Gloss
	case theFrame:
		b := &v.panels[h.panel]
		return scale(b.rim.Face, b.rimGrain(h, p, foot)), b.rim.Gloss
	case theFloor:
		return scale(RGB{0.25, 0.18, 0.12}, planks(p, foot)), 0
	}
	return v.paint(h, p, foot), 0
}

// paint is the wall's colour, with a pale skirting board along the floor.
func (v *view) paint(h hit, p vec, foot float64) RGB {
	c := v.wall
	if h.n.Y > -0.5 { // not the ceiling
		if p.Y < skirtingM {
			c = RGB{0.74, 0.72, 0.69}
		}
		c = scale(c, mix(1, 0.6, line(math.Abs(p.Y-skirtingM), 0.0015, foot)))
	}
	return c
}

// planks are floor boards along the wall.
func planks(p vec, foot float64) float64 {
	across := p.Z / plankM
	f := fract(across)
	vary := 0.9 + 0.2*fract(math.Floor(across)*0.6180339)
	return vary * streaks(p.Z*0.5, p.X*0.5, foot) * mix(1, seamDark, line(min(f, 1-f)*plankM, 0.001, foot))
}

// blockTone varies light and warmth from block to block.
func blockTone(seed float64) RGB {
	light := 1 + toneSpread*(fract(seed*0.6180339)-0.5)
	warm := 0.07 * (fract(seed*0.3819660+0.25) - 0.5)
	return RGB{light * (1 + warm), light, light * (1 - warm)}
}

// endGrain draws growth rings round a pith that lies somewhere beside the
// block: slowly darkening latewood with a sharp edge.
func (b *board) endGrain(h hit, p vec, seed, foot float64) float64 {
	x := p.X - (b.gridX + (float64(h.col)+0.5)*b.pitch)
	y := p.Y - (b.gridY - (float64(h.row)+0.5)*b.pitch)
	a := 2 * math.Pi * fract(seed*0.4142136)
	far := 0.012 + 0.075*fract(seed*0.7320508)
	spacing := 0.0022 + 0.0026*fract(seed*0.2360680)
	dx, dy := x-far*math.Cos(a), y-far*math.Sin(a)
	r := math.Sqrt(dx*dx + dy*dy)
	r += 0.0006 * (math.Sin(dx*190+seed) + math.Sin(dy*230-seed))
	ring := fract(r/spacing + fract(seed*0.13))
	profile := ring*ring - smooth(0.88, 1, ring) // mean about 0.27
	fade := clamp(spacing/(2.5*foot)-0.4, 0, 1)
	pores := 0.02 * math.Sin(x*5200+3*math.Sin(y*4100)) * clamp(0.0008/foot-0.4, 0, 1)
	return 1 - ringContrast*fade*(profile-0.27) + pores
}

// seams draws the edge of a block's top that lies nearest, by the part of the
// sample that it covers: a dark joint where the neighbour is as tall, an eased
// arris where it is lower, bright towards the lamp and dark away from it.
func (v *view) seams(b *board, h hit, p vec, foot float64) float64 {
	gx, gy := (p.X-b.gridX)/b.pitch, (b.gridY-p.Y)/b.pitch
	fx, fy := clamp(gx-float64(h.col), 0, 1), clamp(gy-float64(h.row), 0, 1)
	dx, dy := math.Copysign(1, fx-0.5), math.Copysign(1, fy-0.5)
	nearX, nearY := min(fx, 1-fx), min(fy, 1-fy)
	if nearX < nearY {
		dy = 0
	} else {
		dx = 0
	}
	look, half := seamDark, b.seamHalf()
	if p.Z-b.feet-b.height(h.col+int(dx), h.row+int(dy)) > freeEdgeM {
		look, half = 1+arrisLight*(dx*v.lampDir.X-dy*v.lampDir.Y), 2*arrisM
	}
	return mix(1, look, line(min(nearX, nearY)*b.pitch, half, foot))
}

// sideSeams draws the joints between the upright faces of neighbours in line.
func (b *board) sideSeams(h hit, p vec, foot float64) float64 {
	f := (p.X-b.gridX)/b.pitch - float64(h.col)
	if h.n.X*h.n.X > 0.5 {
		f = (b.gridY-p.Y)/b.pitch - float64(h.row)
	}
	f = clamp(f, 0, 1)
	return mix(1, seamDark, line(min(f, 1-f)*b.pitch, b.seamHalf(), foot))
}

// seamHalf is half of what a joint shows: its slack, unless that is a gap of
// its own, and the eased edge of the block.
func (b *board) seamHalf() float64 {
	if b.gapOpen {
		return arrisM / 2
	}
	return arrisM/2 + (b.pitch-b.block)/2
}

// line is the part of a sample of width foot that a line covers, which reaches
// half to both sides and whose middle is d away.
func line(d, half, foot float64) float64 {
	a, b := clamp(d-foot/2, -half, half), clamp(d+foot/2, -half, half)
	return (b - a) / foot
}

// streaks are the vessels of long grain: fine across, long along.
func streaks(across, along, foot float64) float64 {
	s := math.Sin(across*610+1.7*math.Sin(along*9)) + 0.7*math.Sin(across*1490+2*math.Sin(along*5+across*40))
	broad := math.Sin(across*130 + 1.3*math.Sin(along*3))
	return 1 + vesselGrain*(0.5*s*clamp(0.008/foot-1, 0, 1)+0.6*broad)
}

// rimGrain runs along each board of the frame and draws the joints.
func (b *board) rimGrain(h hit, p vec, foot float64) float64 {
	left, right := p.X-b.lo.X, b.hi.X-p.X
	low, top := p.Y-b.lo.Y, b.hi.Y-p.Y
	side, level := min(left, right), min(low, top)
	upright := side < level // which board: nearest outer edge, halves at 45 degrees
	joint := (side - level) / math.Sqrt2
	if !b.mitred { // top and bottom boards run through
		upright = level > b.inLo.Y-b.lo.Y
		joint = level - (b.inLo.Y - b.lo.Y)
	}
	dark := 0.0
	if h.n.Z > 0.5 && side < b.inLo.X-b.lo.X+tiny && level < b.inLo.Y-b.lo.Y+mitreM {
		dark = line(math.Abs(joint), mitreM, foot)
	}
	grain := streaks(p.Y+p.Z*0.8, p.X*2, foot)
	if upright {
		grain = streaks(p.X+p.Z*0.8, p.Y*2, foot)
	}
	return grain * mix(1, seamDark, dark)
}

func foldSeed(seed uint64) uint32 { return uint32(seed) ^ uint32(seed>>32) }
