package scene

import "math"

// Look of the wood and its edges, chosen by eye.
const (
	seamDark   = 0.34 // what is left of the light in the joint between two blocks
	arrisM     = 6e-4 // eased edge of a block, half of its joint's look
	arrisLight = 0.6  // how much brighter or darker it is than the top
	freeEdgeM  = 1e-3 // a neighbour lower by more leaves the edge free
	mitreM     = 4e-4 // half width of a frame's joint line

	// Blocks are cut from sticks: cut from one they share their rings, and are
	// glued down turned by any quarter.
	stickBits   = 5 // of a seed byte: 32 sticks a panel
	sticks      = 1 << stickBits
	pieces      = 1 << (8 - stickBits)
	driftM      = 0.0015 // how far the pith wanders between two pieces of a stick
	pithNearM   = 0.019  // nearest pith, from the middle of a stick: mostly outside of it
	pithSpanM   = 0.085  // and how much farther the farthest is
	heartEdgeM  = 0.004  // how sharply sapwood turns into heartwood
	stickSpread = 0.70   // how much of the tone's spread is between sticks; the rest is between pieces
	warmSpread  = 0.6    // change of warmth along with the tone, as a part of it

	// Boards of the frame are flat-sawn: the pith lies beside their broad faces,
	// which show flames where it leans; their edges, which are seen from the
	// front, show straight lines.
	boardPithM = 0.045
	boardLean  = 0.006 // metres a metre
	boardWaveM = 0.0025

	waverM    = 0.0008 // how far rings waver along a stick
	lateMean  = 0.21   // means of the profiles of latewood and earlywood over a ring, so that
	earlyMean = 0.15   // grain neither lightens nor darkens a wood
	// Good and poor years come in spells, which show from farther away than rings do:
	// how long they are, and how deep as a part of what rings are.
	spellYears, spellDeep = 9, 0.16
	raysRound             = 180     // rays in a full turn
	rayHalfM              = 0.00015 // half of a ray's width
	poreM                 = 0.00045 // side of a pore's cell across the stick, and along it
	poreLongM             = 0.006
	// Samples so many times as wide as a pore or half a ray do not show it.
	poreSeen, raySeen = 1.2, 8
	// sideGrain is how much of the contrast of end grain the sides show.
	sideGrain = 0.8
)

// Cut is a byte per block, the only chance in the picture: the lower bits name the
// stick that it is cut from, the upper ones the piece of that.
type Cut uint8

// CutOf is that of a stick and a piece by their numbers, which begin anew after
// thirty-two sticks and eight pieces.
func CutOf(stick, piece int) Cut { return Cut(stick%sticks | piece%pieces<<stickBits) }

// cutOf is that of a cell.
func (p *Panel) cutOf(cell int) Cut {
	if len(p.Cut) > 0 {
		return p.Cut[cell]
	}
	return chanceCut(foldSeed(p.Seed), cell%p.Columns, cell/p.Columns)
}

// chanceCut is an integer hash finaliser of the murmur kind (common practice).
func chanceCut(seed uint32, col, row int) Cut {
	h := seed*0x9E3779B1 ^ uint32(col)*0x85EBCA6B ^ uint32(row)*0xC2B2AE35
	h ^= h >> 16
	h *= 0x7FEB352D
	h ^= h >> 15
	h *= 0x846CA68B
	h ^= h >> 16
	return Cut(h & 0xff)
}

// stick is what the blocks of a stick share: where the pith lies, seen from its
// middle, how far the heartwood reaches from there, and its tone.
type stick struct {
	pithX, pithY, heart, tone, spacing float64
}

// stickOf is the stick of a number from 0 on. Multiples of irrational numbers
// spread without repeating (common practice).
func (g *Grain) stickOf(n, piece float64) stick {
	a := 2 * math.Pi * fract(n*0.7548777)
	f := fract(n*0.5698403 + 0.13)
	far := pithNearM + pithSpanM*f*math.Sqrt(f) // rather near than far
	s := stick{
		pithX: far*math.Cos(a) + driftM*(2*fract(piece*0.37+n*0.61)-1),
		pithY: far*math.Sin(a) + driftM*(2*fract(piece*0.71+n*0.43)-1),
	}
	// The bark side of some sticks is sapwood.
	s.heart = far + (fract(n*0.3247180+0.41)-g.Sap)*0.09 + 0.02
	s.tone = stickSpread*(2*fract(n*0.6180340+0.27)-1) + (1-stickSpread)*(2*fract(piece*0.3819660+n*0.2360680)-1)
	s.spacing = g.RingM * (0.75 + 0.5*fract(n*0.4503599+0.6))
	return s
}

// saw looks up what the blocks of a panel are cut from.
func (b *board) saw(p *Panel) {
	for wood, g := range []Grain{b.blocks.Grain, b.second.Grain} {
		b.pieces[wood] = new([256]stick)
		for i := range b.pieces[wood] {
			piece := i / sticks
			b.pieces[wood][i] = g.stickOf(float64(i-piece*sticks), float64(piece))
		}
	}
	b.cuts = make([]Cut, len(p.Levels))
	for i := range b.cuts {
		b.cuts[i] = p.cutOf(i)
	}
}

// light is how light the grain is at a place of a stick's section, seen from its
// pith, and how far along the stick; 1 in the mean. On end grain rays show. foot
// is the width of one sample; patterns finer than that fade out instead of
// flickering.
func (g *Grain) light(x, y, along, spacing, foot float64, end bool) float64 {
	seen := spacing / (2.2 * max(foot, tiny))
	clear, broad := clamp(seen-0.5, 0, 1), clamp(seen*spellYears-0.5, 0, 1)
	if spacing <= 0 || broad == 0 {
		return 1
	}
	spell := math.Sin(length2(x, y) * 2 * math.Pi / (spellYears * spacing))
	light := 1 - broad*spellDeep*(g.Late+g.Early)*spell
	if clear == 0 {
		return light
	}
	x += waverM*math.Sin(along*31) + 0.6*waverM*math.Sin(y*170)
	y += waverM * math.Cos(along*23)
	r, a := length2(x, y), math.Atan2(y, x)
	// Rings are no circles, and no two years are alike.
	year := r * (1 + 0.02*math.Sin(3*a+1) + 0.012*math.Sin(5*a)) / spacing
	year += 0.35*spell + 0.2*math.Sin(year*0.37+2)
	ring := fract(year)
	late := ring * ring * ring * (1 - smooth(0.94, 1, ring))
	early := 1 - smooth(0, 0.3, ring)
	light -= clear * (g.Late*(late-lateMean) + g.Early*(early-earlyMean))
	// Pores and rays show from near by only.
	if fine := g.Pores * clamp(poreM*poreSeen/foot-0.5, 0, 1); fine > 0 {
		light -= fine * pore(x/poreM, y/poreM, along/poreLongM) * (0.3 + 0.7*early)
	}
	if fine := g.Rays * clamp(rayHalfM*raySeen/foot-0.5, 0, 1); end && fine > 0 {
		turn := a * raysRound / (2 * math.Pi)
		n := math.Floor(turn)
		apart := max(r*2*math.Pi/raysRound, 2*rayHalfM)
		off := math.Abs(turn-n-0.3-0.4*fract(n*0.6180340)) * apart
		light += fine * (line(off, rayHalfM, max(foot, rayHalfM)) - 2*rayHalfM/apart)
	}
	return light
}

// pore is how much of a pore lies at a place of the section and along the stick,
// in cells of a pore each; some cells have none. Products of fractions stand for
// chance, since sines of large numbers differ between 32 and 64 bits.
func pore(x, y, along float64) float64 {
	cx, cy := math.Floor(x), math.Floor(y)
	cz := math.Floor(along + fract(cx*0.7548777+cy*0.5698403))
	here := fract(71.3*fract(cx*0.7548777+0.31)*fract(cy*0.5698403+0.57) + 5.1*fract(cx*0.2360680+cy*0.4142136+cz*0.7320508))
	return smooth(0.4, 0.6, here) * (1 - smooth(0.2, 0.5, length2(x-cx-0.5, y-cy-0.5)))
}

// tint is the colour of sap or heart at distance r from the pith, and the
// stick's own tone.
func (g *Grain) tint(s *stick, r float64) RGB {
	sap := smooth(s.heart-heartEdgeM, s.heart+heartEdgeM, r)
	light := 1 + g.Spread*s.tone
	warm := g.Spread * warmSpread * s.tone * (1 - 2*math.Abs(s.tone))
	c := RGB{light * (1 + warm), light, light * (1 - warm)}
	return c.mul(RGB{1, 1, 1}.mix(g.SapTint, sap))
}

// blockWood is the wood of a block at a point of its top or its sides: one solid
// texture, so that the rings of the top run on as the grain of the sides.
func (b *board) blockWood(h hit, p vec, foot float64) RGB {
	cell := h.row*b.cols + h.col
	of, wood, from := &b.blocks, 0, b.cuts[cell]
	if b.woods != nil && b.woods[cell] == 1 {
		of, wood = &b.second, 1
	}
	piece := float64(from / sticks)
	x := p.X - (b.gridX + (float64(h.col)+0.5)*b.pitch)
	y := p.Y - (b.gridY - (float64(h.row)+0.5)*b.pitch)
	x, y = quarter(x, y, piece)
	g, s := &of.Grain, &b.pieces[wood][from]
	x, y = x-s.pithX, y-s.pithY
	c := g.tint(s, length2(x, y))
	top := h.n.Z > 0.5
	light := g.light(x, y, p.Z+piece*0.3, s.spacing, foot, top)
	if top {
		return scale(c.mul(of.End), light)
	}
	return scale(c.mul(of.Face), 1+(light-1)*sideGrain)
}

// quarter turns a place by a number of right angles.
func quarter(x, y, turns float64) (float64, float64) {
	if math.Mod(turns, 2) > 0.5 {
		x, y = -y, x
	}
	if turns > 1.5 && turns < 3.5 || turns > 5.5 {
		x, y = -x, -y
	}
	return x, y
}

// rimWood is the wood of the frame, along each board, with its joints.
func (b *board) rimWood(h hit, p vec, foot float64) RGB {
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
	across, along, number := level, p.X-b.lo.X, 1.0
	if top < low {
		number = 2
	}
	if upright {
		across, along, number = side, p.Y-b.lo.Y, 3.0
		if right < left {
			number = 4
		}
	}
	g := &b.rim.Grain
	number += b.boards()
	s := g.stickOf(number, 0)
	x := across + boardPithM*(0.7+0.6*fract(number*0.77)) + boardLean*along + boardWaveM*math.Sin(along*2.1+number)
	y := p.Z - b.depth*0.4 + 0.01*math.Sin(along*1.3+number*2)
	light := g.light(x, y, along, s.spacing, foot, false)
	c := g.tint(&stick{tone: s.tone, heart: 1}, 0)
	return scale(c.mul(b.rim.Face), (1+(light-1)*sideGrain)*mix(1, seamDark, dark))
}

// boards is the number before that of the frame's first board, so that panels
// have boards of their own.
func (b *board) boards() float64 { return 4 * float64(b.seed%8) }

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

func foldSeed(seed uint64) uint32 { return uint32(seed) ^ uint32(seed>>32) }
