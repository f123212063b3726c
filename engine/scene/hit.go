package scene

// Hit returns the panel and the cell under a point of a picture of the given
// size: a block's top or side, or bare backer within the field. It is false on
// frame, gap, wall and beyond.
func (s Scene) Hit(width, height int, px, py float64) (panel, column, row int, ok bool) {
	return s.Hits(width, height)(px, py)
}

// Hits returns Hit for many points of one picture: what they have in common is
// worked out once.
func (s Scene) Hits(width, height int) func(px, py float64) (panel, column, row int, ok bool) {
	if width < 1 || height < 1 {
		return func(float64, float64) (int, int, int, bool) { return 0, 0, 0, false }
	}
	return newView(s, width, height).hit
}

// hit returns the panel and the cell under a point of the picture, as Hit has it.
func (v *view) hit(px, py float64) (panel, column, row int, ok bool) {
	d := v.ray(px, py)
	h := v.trace(v.eye, d)
	switch h.what {
	case theBlock:
		return h.panel, h.col, h.row, true
	case theBacker:
		if h.n.Z < 0.5 {
			return 0, 0, 0, false
		}
		b := &v.panels[h.panel]
		p := v.eye.at(d, h.t)
		x, y := (p.X-b.gridX)/b.pitch, (b.gridY-p.Y)/b.pitch
		if x < 0 || y < 0 || x >= float64(b.cols) || y >= float64(b.rows) {
			return 0, 0, 0, false
		}
		return h.panel, int(x), int(y), true
	}
	return 0, 0, 0, false
}

// Box is where panel i stands, in m: along the wall from its left end, up from the floor,
// and how far its foremost part is off the wall.
func (s Scene) Box(i int) (left, right, bottom, top, front float64) {
	b := newBoard(&s.Panels[i])
	return b.lo.X, b.hi.X, b.lo.Y, b.hi.Y, b.hi.Z
}

// Where returns, for a picture of the given size, a function from points of the room, in m
// along the wall, up and out of it, to the places that show them. It is false where a point
// lies behind the viewer. What many points have in common is worked out once.
func (s Scene) Where(width, height int) func(x, y, z float64) (px, py float64, ok bool) {
	v := newView(s, width, height)
	return func(x, y, z float64) (px, py float64, ok bool) {
		to := vec{x, y, z}.sub(v.eye)
		deep := to.dot(v.forward)
		if deep <= 0 {
			return 0, 0, false
		}
		k := v.height / (2 * v.tanHalf * deep)
		return v.width/2 + to.dot(v.right)*k, v.height/2 - to.dot(v.up)*k, true
	}
}
