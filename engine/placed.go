package engine

import (
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// placed holds every group against its own wall, and against the others there: no
// edge of it under the floor, above the wall or beside it, and no two over one another. A panel that touches the floor, the ceiling or a
// corner is still on its wall. The document takes such places, since somebody
// who types a size and then a place passes through them; nobody can hang one.
func placed(d design.Design, groups []Group) []check.WatchOut {
	all := inRoom(d)
	for _, g := range groups {
		all = append(all, g.upright(d.Walls[g.Wall].Height)...)
		all = append(all, g.sideways(d.Walls[g.Wall].Width)...)
	}
	for i, g := range groups {
		for _, other := range groups[:i] {
			all = append(all, g.over(other)...)
		}
	}
	return all
}

// inRoom holds the walls against the room: what the room does to sound goes by its own
// sizes, and one of the two is wrong where a wall is larger.
func inRoom(d design.Design) []check.WatchOut {
	long, field := d.Room.Length, "room.length"
	if d.Room.Width.Cmp(long) > 0 {
		long, field = d.Room.Width, "room.width"
	}
	var all []check.WatchOut
	say := func(wall, room length.Length, code, field string) {
		if wall.Cmp(room) > 0 {
			all = append(all, check.WatchOut{
				Code: code, Level: check.Note, Args: words.Args{"wall": wall, "room": room}, Field: field, Source: check.Computed,
				Fix: &check.Fix{Path: field, Value: wall.String()},
			})
		}
	}
	var width, height length.Length
	for _, w := range d.Walls {
		width, height = length.Max(width, w.Width), length.Max(height, w.Height)
	}
	say(width, long, "wall/wider-than-room", field)
	say(height, d.Room.Height, "wall/higher-than-room", "room.height")
	return all
}

// over is a group that hangs over another one on the same wall.
func (g Group) over(other Group) []check.WatchOut {
	if g.Wall != other.Wall {
		return nil
	}
	wide := shared(g.Built.Left, g.Built.TotalWidth, other.Built.Left, other.Built.TotalWidth)
	high := shared(g.Built.Bottom, g.Built.TotalHeight, other.Built.Bottom, other.Built.TotalHeight)
	none := length.MM(0)
	if wide.Cmp(none) <= 0 || high.Cmp(none) <= 0 {
		return nil
	}
	w := offWall("wall/overlap", words.Args{"wide": wide, "high": high})
	w.Field = g.Path + ".place.left"
	return []check.WatchOut{w}
}

// shared is how much two stretches have in common; below 0 it is how far they are
// apart.
func shared(a, wide, b, otherWide length.Length) length.Length {
	from, to := length.Max(a, b), a.Add(wide)
	if end := b.Add(otherWide); end.Cmp(to) < 0 {
		to = end
	}
	return to.Sub(from)
}

// upright is the height of a group on a wall of some height.
func (g Group) upright(wall length.Length) []check.WatchOut {
	tall, bottom := g.Built.TotalHeight, g.Built.Bottom
	top := bottom.Add(tall)
	floor := length.MM(0)
	byTop := g.Design.Place.Edge != design.BottomEdge
	var w check.WatchOut
	var fix string
	switch {
	case bottom.Cmp(floor) < 0:
		w = offWall("wall/below-floor", words.Args{"below": floor.Sub(bottom)})
		fix = tall.CeilAs(g.Design.Place.Height.Notation()).String()
	case top.Cmp(wall) > 0:
		w = offWall("wall/above-top", words.Args{"over": top.Sub(wall), "wall": wall})
		if fix = wall.String(); !byTop {
			fix = floorPlace(wall.Sub(tall), g.Design.Place.Height.Notation())
		}
	default:
		return nil
	}
	if tall.Cmp(wall) > 0 {
		w.Field = g.Path + ".height"
		return []check.WatchOut{w}
	}
	w.Field = g.Path + ".place.height"
	w.Fix = &check.Fix{Path: w.Field, Value: fix}
	return []check.WatchOut{w}
}

// sideways is its place along a wall of some width; no left edge is below 0.
func (g Group) sideways(wall length.Length) []check.WatchOut {
	wide := g.Built.TotalWidth
	right := g.Built.Left.Add(wide)
	if right.Cmp(wall) <= 0 {
		return nil
	}
	w := offWall("wall/beyond-side", words.Args{"over": right.Sub(wall), "wall": wall})
	if wide.Cmp(wall) > 0 {
		w.Field = g.Path + ".width"
		return []check.WatchOut{w}
	}
	w.Field = g.Path + ".place.left"
	w.Fix = &check.Fix{Path: w.Field, Value: floorPlace(wall.Sub(wide), g.Design.Place.Left.Notation())}
	return []check.WatchOut{w}
}

// offWall is a Stop before anything is offered. Somebody who knows better, as
// where a panel runs on around a corner, signs it off.
func offWall(code string, args words.Args) check.WatchOut {
	return check.WatchOut{Code: code, Level: check.Stop, Gate: check.Offer, Args: args, Source: check.Computed}
}
