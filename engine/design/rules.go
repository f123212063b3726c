package design

import (
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/length"
)

// Sequence reports whether the kind is laid by a sequence of prime order.
func (p Pattern) Sequence() bool {
	return p.Kind == QuadraticResidue || p.Kind == QuadraticResidueStripes || p.Kind == PrimitiveRoot
}

// Pitch is the distance from one block to the next.
func (g Group) Pitch() length.Length { return g.Block.Size.Add(g.Block.Slack) }

// Panels is how many panels the group has.
func (g Group) Panels() int { return g.PanelsWide * g.PanelsHigh }

// Grid returns the columns and rows of one panel: those that are fixed, and
// else the whole blocks nearest to the wished size, at least one.
func (g Group) Grid() (columns, rows int) {
	columns, rows = g.Columns, g.Rows
	if columns == 0 {
		columns = max(1, g.Width.Round(g.Pitch().Times(g.PanelsWide)))
	}
	if rows == 0 {
		rows = max(1, g.Height.Round(g.Pitch().Times(g.PanelsHigh)))
	}
	return columns, rows
}

// document holds the rules that compare fields with one another.
func (c *checker) document(doc *Document) {
	c.design(&doc.Design, (*at)(nil).field("design"))
	for i := range doc.Looks {
		c.design(&doc.Looks[i].Design, (*at)(nil).field("looks").item(i).field("design"))
	}
	c.assumed(doc)
}

func (c *checker) design(d *Design, p *at) {
	room := p.field("room")
	if c.clean(room) {
		c.rising(room.field("temperatureHigh"), d.Room.TemperatureLow, d.Room.TemperatureHigh, "°C")
		c.rising(room.field("humidityHigh"), d.Room.HumidityLow, d.Room.HumidityHigh, "%")
	}
	cells, walls := 0, p.field("walls")
	for i := range min(len(d.Walls), maxWalls) {
		w, wall := &d.Walls[i], walls.item(i)
		c.obstacles(w, wall)
		for j := range min(len(w.Groups), maxGroups) {
			cells += c.group(&w.Groups[j], wall.field("groups").item(j))
		}
	}
	if cells > maxJobCells {
		c.add(walls, TooManyCells, strconv.Itoa(cells)+" cells in all panels", "at most "+strconv.Itoa(maxJobCells))
	}
}

func (c *checker) rising(p *at, low, high float64, unit string) {
	if low > high {
		c.add(p, NotRising, number(high)+" "+unit, "not below the lowest, "+number(low)+" "+unit)
	}
}

// obstacles must lie on their wall.
func (c *checker) obstacles(w *Wall, wall *at) {
	if !c.clean(wall.field("width")) || !c.clean(wall.field("height")) {
		return
	}
	for i := range min(len(w.Obstacles), maxObstacles) {
		o, p := w.Obstacles[i], wall.field("obstacles").item(i)
		if !c.clean(p) {
			continue
		}
		if right := o.X.Add(o.Width); right.Cmp(w.Width) > 0 {
			c.add(p.field("x"), Outside, o.Kind+", right edge at "+right.String(), "up to "+w.Width.String())
		}
		if top := o.Y.Add(o.Height); top.Cmp(w.Height) > 0 {
			c.add(p.field("y"), Outside, o.Kind+", upper edge at "+top.String(), "up to "+w.Height.String())
		}
	}
}

// group checks one group and returns the cells of all its panels.
func (c *checker) group(g *Group, p *at) int {
	c.heights(g.Heights, p.field("heights"))
	c.pattern(g.Pattern, p.field("pattern"))
	if !c.clean(p.field("panelsWide")) || !c.clean(p.field("panelsHigh")) {
		return 0
	}
	if g.Panels() > maxPanels {
		c.add(p.field("panelsWide"), OutOfRange,
			strconv.Itoa(g.PanelsWide)+" × "+strconv.Itoa(g.PanelsHigh)+" panels",
			"at most "+strconv.Itoa(maxPanels)+" in a group")
		return 0
	}
	c.panelOrder(g, p.field("order"))
	for _, name := range []string{"width", "height", "columns", "rows", "block"} {
		if !c.clean(p.field(name)) {
			return 0
		}
	}
	columns, rows := g.Grid()
	if columns > maxSide || rows > maxSide || columns*rows > maxCells {
		c.add(p.field("width"), TooManyCells, strconv.Itoa(columns)+" × "+strconv.Itoa(rows)+" cells in a panel",
			"at most "+strconv.Itoa(maxSide)+" a side and "+strconv.Itoa(maxCells)+" in all")
		return 0
	}
	c.drawn(g, columns, rows, p.field("pattern").field("drawn"))
	return columns * rows * g.Panels()
}

func (c *checker) heights(heights []length.Length, p *at) {
	for i := 1; i < len(heights) && i < maxHeights; i++ {
		low, high := heights[i-1], heights[i]
		if high.Cmp(low) <= 0 && c.clean(p.item(i)) && c.clean(p.item(i-1)) {
			c.add(p.item(i), NotRising, high.String(), "more than "+low.String())
		}
	}
}

func (c *checker) pattern(pat Pattern, p *at) {
	order := p.field("order")
	if !pat.Sequence() || !c.clean(p) {
		return
	}
	if !IsPrime(pat.Order) {
		c.add(order, NotPrime, strconv.Itoa(pat.Order), "a prime such as "+neighbours(pat.Order, IsPrime))
		return
	}
	if pat.Kind != PrimitiveRoot {
		return
	}
	if !Foldable(pat.Order) {
		c.add(order, NotFoldable, strconv.Itoa(pat.Order), "a prime such as "+neighbours(pat.Order, Foldable))
		return
	}
	chosen := pat.FoldRows == 0 && pat.FoldColumns == 0
	if !chosen && !folds(pat.Order, pat.FoldRows, pat.FoldColumns) {
		c.add(p.field("foldRows"), NotFoldable, strconv.Itoa(pat.FoldRows)+" × "+strconv.Itoa(pat.FoldColumns),
			"two numbers above 1 without a common factor that make "+strconv.Itoa(pat.Order-1)+", or 0 and 0")
	}
}

// neighbours names the fit orders next to n.
func neighbours(n int, fit func(int) bool) string {
	near := nearestOrder(n, fit)
	for m := 2*n - near; m >= firstOrder && m <= lastOrder; m += sign(n - near) {
		if fit(m) {
			return strconv.Itoa(min(near, m)) + " or " + strconv.Itoa(max(near, m))
		}
	}
	return strconv.Itoa(near)
}

func sign(n int) int {
	if n < 0 {
		return -1
	}
	return 1
}

// panelOrder checks the letters that say how each panel hangs.
func (c *checker) panelOrder(g *Group, p *at) {
	if g.Order == "" || !c.clean(p) {
		return
	}
	if len(g.Order) != g.Panels() || strings.Trim(g.Order, "ABR") != "" {
		c.add(p, BadOrder, g.Order, strconv.Itoa(g.Panels())+" letters out of A, B and R, or none")
	}
}

// drawn checks the rows of a drawn field.
func (c *checker) drawn(g *Group, columns, rows int, p *at) {
	drawn := g.Pattern.Drawn
	if !c.clean(p) || g.Pattern.Kind != Drawn && len(drawn) == 0 {
		return
	}
	if g.Pattern.Kind != Drawn {
		c.add(p, BadDrawing, rowCount(len(drawn)), "none unless the pattern is "+Drawn)
		return
	}
	if len(drawn) != rows {
		c.add(p, BadDrawing, rowCount(len(drawn)), rowCount(rows))
		return
	}
	levels := "0123456789"[:min(max(len(g.Heights), 1), maxHeights)]
	for i, row := range drawn {
		if len(row) != columns || strings.Trim(row, levels) != "" {
			c.add(p.item(i), BadDrawing, row,
				strconv.Itoa(columns)+" digits from 0 to "+levels[len(levels)-1:])
		}
	}
}

func rowCount(n int) string {
	if n == 1 {
		return "1 row"
	}
	return strconv.Itoa(n) + " rows"
}

// assumed paths must lead to values that come from the real world, in order and
// each once.
func (c *checker) assumed(doc *Document) {
	known := assumable(doc.Design)
	for i, path := range doc.Assumed {
		p := (*at)(nil).field("assumed").item(i)
		_, found := slices.BinarySearch(known, path)
		switch {
		case !found:
			c.add(p, NotAssumable, path, "")
		case i > 0 && doc.Assumed[i-1] >= path:
			c.add(p, NotUnique, path, "each once, in alphabetical order")
		}
	}
}
