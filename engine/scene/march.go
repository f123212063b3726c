package scene

import "math"

// what a ray can meet.
type what int

const (
	nothing what = iota
	theWall
	theFloor
	theSide // side walls and ceiling
	theFrame
	theBacker
	theBlock
)

// hit is the first thing that a ray meets.
type hit struct {
	what     what
	t        float64 // distance along the ray
	n        vec     // outward normal, along an axis
	panel    int
	col, row int
}

const never = 1e30

// axis numbers: which pair of a box's faces a ray passed last.
const (
	axisX = iota
	axisY
	axisZ
)

func solid(v float64) float64 {
	if math.Abs(v) < tiny {
		return tiny
	}
	return v
}

// slab clips a ray to a box: it is inside from t0 to t1, having come in through
// the faces of axis.
func slab(o, d, lo, hi vec) (t0, t1 float64, axis int) {
	ax, bx := (lo.X-o.X)/solid(d.X), (hi.X-o.X)/solid(d.X)
	ay, by := (lo.Y-o.Y)/solid(d.Y), (hi.Y-o.Y)/solid(d.Y)
	az, bz := (lo.Z-o.Z)/solid(d.Z), (hi.Z-o.Z)/solid(d.Z)
	ix, iy, iz := min(ax, bx), min(ay, by), min(az, bz)
	t0, axis = ix, axisX
	if iy > t0 {
		t0, axis = iy, axisY
	}
	if iz > t0 {
		t0, axis = iz, axisZ
	}
	return t0, min(max(ax, bx), max(ay, by), max(az, bz)), axis
}

// facing is the normal of a face of the given axis that looks against d.
func facing(axis int, d vec) vec {
	switch axis {
	case axisX:
		return vec{X: -math.Copysign(1, d.X)}
	case axisY:
		return vec{Y: -math.Copysign(1, d.Y)}
	}
	return vec{Z: -math.Copysign(1, d.Z)}
}

// field walks a ray through the grid of heights and returns the distance to the
// first block, or never; bare cells are left to the backer's plane.
func (b *board) field(o, d vec) (t float64, axis, col, row int) {
	lo := vec{b.gridX, b.gridY - float64(b.rows)*b.pitch, b.feet}
	hi := vec{b.gridX + float64(b.cols)*b.pitch, b.gridY, b.feet + b.tallest}
	t0, t1, axis := slab(o, d, lo, hi)
	t0 = max(t0, 0)
	if t0 >= t1 {
		return never, 0, 0, 0
	}
	// Grid coordinates: one unit a cell, the second one growing downwards.
	gx, gy := (o.X-b.gridX)/b.pitch, (b.gridY-o.Y)/b.pitch
	kx, ky := solid(d.X/b.pitch), solid(-d.Y/b.pitch)
	col = int(clamp(math.Floor(gx+kx*t0), 0, float64(b.cols-1)))
	row = int(clamp(math.Floor(gy+ky*t0), 0, float64(b.rows-1)))
	stepX, stepY := 1, 1
	nextX, nextY := (float64(col+1)-gx)/kx, (float64(row+1)-gy)/ky
	if kx < 0 {
		stepX, nextX = -1, (float64(col)-gx)/kx
	}
	if ky < 0 {
		stepY, nextY = -1, (float64(row)-gy)/ky
	}
	dX, dY := math.Abs(1/kx), math.Abs(1/ky)
	for range 2 * MaxSide {
		tb := min(nextX, nextY, t1)
		if h := b.heights[b.levels[row*b.cols+col]]; h > 0 {
			ta, tb, axis := t0, tb, axis
			if b.gapOpen {
				ta, tb, axis = b.clip(o, d, col, row, ta, tb, axis)
			}
			top := b.feet + h
			if ta < tb && o.Z+d.Z*ta < top {
				return ta, axis, col, row
			}
			if ta < tb && o.Z+d.Z*tb < top {
				return (top - o.Z) / d.Z, axisZ, col, row
			}
		}
		if tb >= t1 {
			break
		}
		if t0 = tb; nextX < nextY {
			nextX, col, axis = nextX+dX, col+stepX, axisX
		} else {
			nextY, row, axis = nextY+dY, row+stepY, axisY
		}
		if col < 0 || row < 0 || col >= b.cols || row >= b.rows {
			break
		}
	}
	return never, 0, 0, 0
}

// clip narrows a ray's way through a cell to the block that stands in it.
func (b *board) clip(o, d vec, col, row int, ta, tb float64, axis int) (float64, float64, int) {
	x := b.gridX + (float64(col)+0.5)*b.pitch
	y := b.gridY - (float64(row)+0.5)*b.pitch
	half := b.block / 2
	t0, t1, a := slab(o, d, vec{x - half, y - half, -never}, vec{x + half, y + half, never})
	if t0 > ta {
		ta, axis = t0, a
	}
	return ta, min(tb, t1), axis
}

// rimHit returns the distance to the frame: its outside, its front or, through the
// opening, its inside.
func (b *board) rimHit(o, d vec) (t float64, n vec) {
	if !b.framed {
		return never, vec{}
	}
	t0, t1, axis := slab(o, d, b.lo, vec{b.hi.X, b.hi.Y, b.depth})
	if t0 >= t1 || t1 <= 0 {
		return never, vec{}
	}
	start := max(t0, 0)
	p := o.at(d, start)
	if p.X <= b.inLo.X || p.X >= b.inHi.X || p.Y <= b.inLo.Y || p.Y >= b.inHi.Y {
		if t0 <= 0 { // starts in the wood: only rounding brings a ray there
			return never, vec{}
		}
		return t0, facing(axis, d)
	}
	// In the opening: the inside of the frame is where the ray leaves it.
	ex := (b.inLo.X - o.X) / solid(d.X)
	if d.X >= 0 {
		ex = (b.inHi.X - o.X) / solid(d.X)
	}
	ey := (b.inLo.Y - o.Y) / solid(d.Y)
	if d.Y >= 0 {
		ey = (b.inHi.Y - o.Y) / solid(d.Y)
	}
	t, axis = ex, axisX
	if ey < ex {
		t, axis = ey, axisY
	}
	if t >= t1 {
		return never, vec{}
	}
	return t, facing(axis, d)
}

// backer returns the distance to the backer, which fills the frame's inside.
func (b *board) backer(o, d vec) (t float64, n vec) {
	t0, t1, axis := slab(o, d, b.inLo, b.inHi)
	n = facing(axis, d)
	if b.bevel != 0 {
		slant, at := b.slant()
		far, along := slant.dot(at.sub(o)), solid(slant.dot(d))
		switch t := far / along; {
		case along > 0:
			t1 = min(t1, t)
		case t > t0:
			t0, n = t, slant
		}
	}
	if t0 >= t1 || t0 <= 0 {
		return never, vec{}
	}
	return t0, n
}

// slant is the bevelled edge of the backer: its outward normal, and a place on it.
func (b *board) slant() (n, at vec) {
	n = vec{0, -1, b.bevel}.unit()
	if b.bevel < 0 {
		return vec{0, 1, b.bevel}.unit(), b.inHi
	}
	return n, b.inLo
}

// meets reports whether a ray passes through the box of the whole panel.
func (b *board) meets(o, d vec) bool {
	t0, t1, _ := slab(o, d, b.lo, b.hi)
	return t0 < t1 && t1 > 0
}

// trace returns the first thing on a ray's way.
func (v *view) trace(o, d vec) hit {
	best := v.room(o, d)
	for i := range v.panels {
		b := &v.panels[i]
		if !b.meets(o, d) {
			continue
		}
		if t, n := b.rimHit(o, d); t < best.t {
			best = hit{what: theFrame, t: t, n: n, panel: i}
		}
		if t, n := b.backer(o, d); t < best.t {
			best = hit{what: theBacker, t: t, n: n, panel: i}
		}
		if t, axis, col, row := b.field(o, d); t < best.t {
			best = hit{what: theBlock, t: t, n: facing(axis, d), panel: i, col: col, row: row}
		}
	}
	return best
}

// shaded reports whether something stands between a point and the lamp.
func (v *view) shaded(o, d vec) bool {
	for i := range v.panels {
		b := &v.panels[i]
		if !b.meets(o, d) {
			continue
		}
		if t, _ := b.rimHit(o, d); t < never {
			return true
		}
		if t, _ := b.backer(o, d); t < never {
			return true
		}
		if t, _, _, _ := b.field(o, d); t < never {
			return true
		}
	}
	return false
}

// room returns where a ray meets wall, floor, side walls or ceiling. Each is
// seen from its front only, so a viewer outside looks into the room.
func (v *view) room(o, d vec) hit {
	best := hit{what: nothing, t: never}
	plane := func(w what, t float64, n vec) {
		if n.dot(d) < -tiny && t > 0 && t < best.t {
			best = hit{what: w, t: t, n: n}
		}
	}
	plane(theWall, -o.Z/solid(d.Z), vec{Z: 1})
	plane(theFloor, -o.Y/solid(d.Y), vec{Y: 1})
	plane(theSide, (v.wallH-o.Y)/solid(d.Y), vec{Y: -1})
	plane(theSide, -o.X/solid(d.X), vec{X: 1})
	plane(theSide, (v.wallW-o.X)/solid(d.X), vec{X: -1})
	return best
}
