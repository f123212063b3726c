package design

import (
	"reflect"
	"strconv"
	"strings"

	"blockfield/engine/length"
)

// accompany changes what has to go along with an edit at a path, so that one
// edit of a person never ends between two valid states. All such rules:
//
//   - A sequence kind takes the nearest order that it can use: a prime, and for
//     a primitive root one that can be folded.
//   - A new order, and a new kind, give up a fold that is not theirs.
//   - One number of a fold brings the other one along; 0 means both are chosen.
//   - Leaving "drawn" drops the drawing. Choosing it without a drawing starts
//     with the lowest height everywhere.
//   - A drawing follows the size of its field: rows and columns are cut off at
//     the bottom and at the right, or repeated from the top left corner. Digits
//     above the last height become the last height.
//   - The order of the panels follows their number: letters are cut off, or A is
//     added.
//   - A new wished size or another block gives up a fixed number of columns or
//     rows, which would keep the size as it was.
//   - A room that is as long, as wide or as high as its only wall stays so when that
//     changes.
//   - A thing on the ceiling that becomes one on the wall gets the height of a
//     new one, down from where it was.
//   - Another wood of the blocks has another density: the weighed one is dropped.
//   - Colours are in the finish: without one there are none, and with the first
//     colour there is one.
//   - A surface of the room that is put elsewhere covers no more than is free there.
//   - Nobody hangs a kit, and nobody delivers a plan: whoever wants that gets panels.
//   - Wood that is there already has a number; square stock stays square when its
//     width changes.
func accompany(before, after *Design, full string) {
	if list, _, ok := strings.Cut(full, "].kind"); ok && strings.Contains(list, ".obstacles[") {
		settleObstacle(after, list+"]")
		return
	}
	if at, ok := strings.CutPrefix(full, "design.room.surfaces["); ok {
		number, field, _ := strings.Cut(at, "].")
		if i, err := strconv.Atoi(number); err == nil && i < len(after.Room.Surfaces) && field == "place" {
			after.Room.settleSurface(i)
		}
		return
	}
	after.Work.settleSupply(full)
	followWall(before, after, full)
	settleStock(before, after, full)
	g := groupAt(after, full)
	if g == nil {
		return
	}
	field := patternOf(full)
	_, field, _ = strings.Cut(field, "groups[].")
	switch field {
	case "pattern.kind", "pattern.order":
		g.Pattern.settleOrder(field == "pattern.kind")
	case "pattern.foldRows":
		g.Pattern.FoldColumns = g.Pattern.otherFold(g.Pattern.FoldRows, g.Pattern.FoldColumns)
	case "pattern.foldColumns":
		g.Pattern.FoldRows = g.Pattern.otherFold(g.Pattern.FoldColumns, g.Pattern.FoldRows)
	case "panelsWide", "panelsHigh":
		if was := groupAt(before, full); g.Order != "" && was.Panels() != g.Panels() {
			g.Order = fitted(g.Order, g.Panels())
		}
	case "width":
		g.Columns = 0
	case "height":
		g.Rows = 0
	case "block.size", "block.slack":
		g.Columns, g.Rows = 0, 0
	case "wood":
		if was := groupAt(before, full); was.Wood != g.Wood {
			g.Density = 0
		}
	case "finish.kind":
		if g.Finish.Kind == Unfinished {
			g.Finish.Colour, g.Finish.FrameColour = Clear, Clear
		}
	case "finish.colour", "finish.frameColour":
		if g.Finish.Kind == Unfinished && (g.Finish.Colour != Clear || g.Finish.FrameColour != Clear) {
			g.Finish.Kind = Finishes()[0]
		}
	}
	if field != "pattern.drawn" {
		g.settleDrawing()
	}
}

// followWall keeps a room as large as its only wall, where it was: on the side of the
// same length, or else of the same width.
func followWall(before, after *Design, full string) {
	if len(before.Walls) != 1 {
		return
	}
	was, now := before.Walls[0], after.Walls[0]
	side, wall, old := "", now.Width, was.Width
	switch r := after.Room; {
	case full == "design.walls[0].height" && r.Height.Same(was.Height):
		side, wall, old = "height", now.Height, was.Height
	case full != "design.walls[0].width":
	case r.Length.Same(was.Width):
		side = "length"
	case r.Width.Same(was.Width):
		side = "width"
	}
	if row, ok := Lookup("room." + side); !ok || old.Same(wall) || wall.Millimetres() < row.Min || wall.Millimetres() > row.Max {
		return // no room is so small or so large: it stays
	}
	switch side {
	case "length":
		after.Room.Length = wall
	case "width":
		after.Room.Width = wall
	case "height":
		after.Room.Height = wall
	}
}

// settleSupply makes what is done with the goods fit what they are, and the other way
// round.
func (w *Work) settleSupply(full string) {
	switch full {
	case "design.work.supply":
		w.Hung = w.Hung && w.Supply == ""
		w.Delivered = w.Delivered && w.Supply != SupplyPlan
	case "design.work.hung":
		if w.Hung {
			w.Supply = ""
		}
	case "design.work.delivered":
		if w.Delivered && w.Supply == SupplyPlan {
			w.Supply = ""
		}
	}
}

// settleObstacle gives the thing at a full path a height where it must have one.
func settleObstacle(d *Design, full string) {
	tree, _ := designTree().child("design")
	p, ok := find(tree, reflect.ValueOf(d).Elem(), shortPath(full))
	if !ok {
		return
	}
	o := p.value.Addr().Interface().(*Obstacle)
	if !o.Height.IsZero() || onCeiling(o.Kind) {
		return
	}
	o.Height = newEntry("design.walls[].obstacles").(Obstacle).Height
	o.Y = length.Max(length.MM(0), o.Y.Sub(o.Height))
}

// groupAt returns the group that a full path leads into, or nil.
func groupAt(d *Design, full string) *Group {
	rest, ok := strings.CutPrefix(full, "design.walls[")
	if !ok {
		return nil
	}
	number, rest, _ := strings.Cut(rest, "].groups[")
	wall, err := strconv.Atoi(number)
	number, _, _ = strings.Cut(rest, "].")
	group, err2 := strconv.Atoi(number)
	if err != nil || err2 != nil || wall >= len(d.Walls) || group >= len(d.Walls[wall].Groups) {
		return nil
	}
	return &d.Walls[wall].Groups[group]
}

// settleOrder makes order and fold fit the kind. A typed order is left as it
// is: where it does not fit, its writer is told.
func (p *Pattern) settleOrder(newKind bool) {
	if newKind && p.Sequence() {
		fit := IsPrime
		if p.Kind == PrimitiveRoot {
			fit = Foldable
		}
		p.Order = nearestOrder(p.Order, fit)
	}
	if !folds(p.Order, p.FoldRows, p.FoldColumns) {
		p.FoldRows, p.FoldColumns = 0, 0
	}
}

// otherFold returns the number that goes with one number of a fold, or keeps
// the present one where there is none.
func (p *Pattern) otherFold(one, present int) int {
	if one == 0 {
		return 0
	}
	if (p.Order-1)%one == 0 && folds(p.Order, one, (p.Order-1)/one) {
		return (p.Order - 1) / one
	}
	return present
}

// fitted cuts off letters, or adds As.
func fitted(order string, panels int) string {
	if panels > maxPanels {
		return order // refused anyway
	}
	return (order + strings.Repeat("A", maxPanels))[:panels]
}

// settleDrawing makes the drawing fit kind, grid and heights.
func (g *Group) settleDrawing() {
	if g.Pattern.Kind != Drawn {
		g.Pattern.Drawn = nil
		return
	}
	columns, rows := g.Grid()
	if columns > maxSide || rows > maxSide || len(g.Heights) == 0 {
		return // refused anyway
	}
	top := byte('0' + len(g.Heights) - 1)
	drawn := make([]string, rows)
	for i := range drawn {
		row := make([]byte, columns)
		for j := range row {
			row[j] = min(g.Pattern.digit(i, j), top)
		}
		drawn[i] = string(row)
	}
	g.Pattern.Drawn = drawn
}

// digit is the level of a cell of the drawing, repeated without end; the lowest
// where nothing is drawn.
func (p *Pattern) digit(i, j int) byte {
	if len(p.Drawn) == 0 {
		return '0'
	}
	row := p.Drawn[i%len(p.Drawn)]
	if row == "" {
		return '0'
	}
	return row[j%len(row)]
}
