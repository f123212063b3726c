package design

import (
	"reflect"
	"strconv"
	"strings"

	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Sequence reports whether the kind is laid by a sequence of prime order.
func (p Pattern) Sequence() bool {
	return p.Kind == QuadraticResidue || p.Kind == QuadraticResidueStripes || p.Kind == PrimitiveRoot
}

// Pitch is the distance from one block to the next.
func (g Group) Pitch() length.Length { return g.Block.Size.Add(g.Block.Slack) }

// Panels is how many panels the group has.
func (g Group) Panels() int { return g.PanelsWide * g.PanelsHigh }

// document holds the rules that compare fields with one another.
func (c *checker) document(doc *Document) {
	c.design(&doc.Design, (*at)(nil).field("design"))
	for i := range doc.Looks {
		c.design(&doc.Looks[i].Design, (*at)(nil).field("looks").item(i).field("design"))
	}
	if doc.Offer != nil {
		c.offer(doc.Offer, (*at)(nil).field("offer"))
	}
	c.assumed(doc)
}

// offer holds the days and the sums of an offer.
func (c *checker) offer(o *Offer, p *at) {
	for _, days := range []struct{ name, from, by string }{{"readyBy", o.ReadyFrom, o.ReadyBy}, {"laterBy", o.LaterFrom, o.LaterBy}} {
		if by := p.field(days.name); days.from > days.by && c.clean(by) {
			c.add(by, DaysReversed, days.by, phrase("allowed/not-before", "day", days.from))
		}
	}
	tax, due := Amount(0), Amount(0)
	for _, t := range o.Taxes[:min(len(o.Taxes), maxTaxParts)] {
		tax += t.Tax
	}
	for _, s := range o.Stages[:min(len(o.Stages), maxStages)] {
		due += s.Amount
	}
	for _, sum := range []struct {
		name     string
		parts    int
		all, got Amount
	}{{"tax", len(o.Taxes), tax, o.Tax}, {"gross", len(o.Stages), due, o.Gross}} {
		if parts := p.field(sum.name); sum.parts > 0 && sum.all != sum.got && c.clean(parts) {
			c.add(parts, BadSum, sum.got.String(), words.Plain(sum.all.String()))
		}
	}
}

func (c *checker) design(d *Design, p *at) {
	room := p.field("room")
	if c.clean(room) {
		c.rising(room.field("temperatureHigh"), d.Room.TemperatureLow, d.Room.TemperatureHigh, "°C")
		c.rising(room.field("humidityHigh"), d.Room.HumidityLow, d.Room.HumidityHigh, "%")
	}
	c.supply(d.Work, p.field("work"))
	c.surfaces(d.Room.Surfaces, room.field("surfaces"))
	c.ownedStock(d.Bench.Stock, p.field("bench").field("stock"))
	walls, job := p.field("walls"), jobCells{}
	for i := range min(len(d.Walls), maxWalls) {
		w, wall := &d.Walls[i], walls.item(i)
		c.obstacles(w, wall)
		for j := range min(len(w.Groups), maxGroups) {
			path := wall.field("groups").item(j)
			job.add(&w.Groups[j], path, c.group(&w.Groups[j], path))
		}
	}
	if job.all > maxJobCells {
		c.add(job.where, TooManyCells, phrase("found/all-cells", "n", count(job.all)), phrase("allowed/at-most", "n", count(maxJobCells)))
	}
}

// supply reports what nobody does with a kit or a plan.
func (c *checker) supply(w Work, p *at) {
	switch {
	case w.Hung && w.Supply != "":
		c.add(p.field("hung"), NotSupplied, "yes", words.Phrase{Key: "allowed/supply-panels"})
	case w.Delivered && w.Supply == SupplyPlan:
		c.add(p.field("delivered"), NotSupplied, "yes", words.Phrase{Key: "allowed/supply-goods"})
	}
}

// jobCells adds up the cells of a design.
type jobCells struct {
	all, most int
	where     *at // what to change in the group with the most cells
}

func (j *jobCells) add(g *Group, p *at, cells int) {
	j.all += cells
	if cells <= j.most {
		return
	}
	j.most, j.where = cells, p.field("panelsWide")
	if g.Panels() == 1 {
		j.where = p.field(g.crowded())
	}
}

func (c *checker) rising(p *at, low, high float64, unit string) {
	if low > high {
		c.reversed(p, words.Quantity{Value: low, Unit: unit}, words.Quantity{Value: high, Unit: unit})
	}
}

// reversed says of both ends which may be changed, since the fault stands at
// whichever is edited.
func (c *checker) reversed(p *at, low, high words.Quantity) {
	c.add(p, LowAboveHigh, phrase("found/low-high", "low", low, "high", high), phrase("allowed/low-high", "low", low, "high", high))
}

// obstacles must lie on their wall.
func (c *checker) obstacles(w *Wall, wall *at) {
	if !c.clean(wall.field("width")) || !c.clean(wall.field("height")) {
		return
	}
	for i := range min(len(w.Obstacles), maxObstacles) {
		o, p := w.Obstacles[i], wall.field("obstacles").item(i)
		if c.clean(p.field("kind")) && o.Height.IsZero() && !onCeiling(o.Kind) {
			c.add(p.field("height"), OutOfRange, o.Height.String(),
				phrase("allowed/from", "low", words.Least(length.MM(1))))
		}
		if !c.clean(p) {
			continue
		}
		if right := o.X.Add(o.Width); right.Cmp(w.Width) > 0 {
			c.add(p.field("x"), Outside, phrase("found/right-edge", "what", words.Key("choice/"+o.Kind), "at", right),
				phrase("allowed/up-to", "high", w.Width))
		}
		if top := o.Y.Add(o.Height); top.Cmp(w.Height) > 0 {
			c.add(p.field("y"), Outside, phrase("found/upper-edge", "what", words.Key("choice/"+o.Kind), "at", top),
				phrase("allowed/up-to", "high", w.Height))
		}
	}
}

// onCeiling reports whether a thing may hang above the wall instead of on it,
// and so have no height there: its distance to the panels counts all the same.
func onCeiling(kind string) bool { return kind == "detector" || kind == "sprinkler" }

// group checks one group and returns the cells of all its panels.
func (c *checker) group(g *Group, p *at) int {
	c.heights(g.Heights, p.field("heights"))
	c.pattern(g.Pattern, p.field("pattern"))
	if !c.clean(p.field("panelsWide")) || !c.clean(p.field("panelsHigh")) {
		return 0
	}
	if g.Panels() > maxPanels {
		c.add(p.field("panelsWide"), OutOfRange, phrase("found/panels", "wide", g.PanelsWide, "high", g.PanelsHigh),
			phrase("allowed/in-group", "n", maxPanels))
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
		c.add(p.field(g.crowded()), TooManyCells, phrase("found/cells", "columns", columns, "rows", rows),
			phrase("allowed/side-and-all", "side", maxSide, "all", count(maxCells)))
		return 0
	}
	c.drawn(g, columns, rows, p.field("pattern").field("drawn"))
	c.extent(g, p)
	return columns * rows * g.Panels()
}

// extent holds the panels to what the largest wall can carry, wherever they
// are on it. Whether they fit this very wall is for the watch-outs: a design is
// drawn before it fits.
func (c *checker) extent(g *Group, p *at) {
	for _, name := range []string{"frame", "panelGap", "place"} {
		if !c.clean(p.field(name)) {
			return
		}
	}
	most := millimetres(maxWallMM)
	fieldWidth, fieldHeight := g.Field()
	width, height := g.Total()
	for _, side := range []struct {
		reach length.Length
		found string
		field *at
	}{
		{width, "found/wide", p.field(g.stretched(g.PanelsWide, fieldWidth, g.across()))},
		{height, "found/high", p.field(g.stretched(g.PanelsHigh, fieldHeight, g.down()))},
		{g.Place.Left.Add(width), "found/right", p.field("place").field("left")},
		{g.Bottom().Add(height), "found/top", p.field("place").field("height")},
	} {
		if side.reach.Cmp(most) > 0 {
			c.add(side.field, Oversize, phrase(side.found, "size", side.reach, "at", side.reach),
				phrase("allowed/up-to", "high", words.Most(most)))
			return
		}
	}
}

func (c *checker) heights(heights []length.Length, p *at) {
	for i := 1; i < len(heights) && i < maxHeights; i++ {
		low, high := heights[i-1], heights[i]
		if high.Cmp(low) <= 0 && c.clean(p.item(i)) && c.clean(p.item(i-1)) {
			c.add(p.item(i), NotRising, high.String(), phrase("allowed/more-than", "low", low.String()))
		}
	}
}

func (c *checker) pattern(pat Pattern, p *at) {
	order := p.field("order")
	if !pat.Sequence() || !c.clean(p) {
		return
	}
	if !IsPrime(pat.Order) {
		c.add(order, NotPrime, strconv.Itoa(pat.Order), neighbours(pat.Order, IsPrime))
		return
	}
	if pat.Kind != PrimitiveRoot {
		return
	}
	if !Foldable(pat.Order) {
		c.add(order, NotFoldable, strconv.Itoa(pat.Order), neighbours(pat.Order, Foldable))
		return
	}
	chosen := pat.FoldRows == 0 && pat.FoldColumns == 0
	if !chosen && !folds(pat.Order, pat.FoldRows, pat.FoldColumns) {
		c.add(p.field("foldRows"), NotFoldable, phrase("found/fold", "rows", pat.FoldRows, "columns", pat.FoldColumns),
			phrase("allowed/fold", "product", pat.Order-1))
	}
}

// neighbours names the fit orders next to n.
func neighbours(n int, fit func(int) bool) words.Phrase {
	near := nearestOrder(n, fit)
	for m := 2*n - near; m >= firstOrder && m <= lastOrder; m += sign(n - near) {
		if fit(m) {
			return phrase("allowed/primes", "one", min(near, m), "other", max(near, m))
		}
	}
	return phrase("allowed/prime", "one", near)
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
		c.add(p, BadOrder, g.Order, phrase("allowed/letters", "n", g.Panels()))
	}
}

// drawn checks the rows of a drawn field.
func (c *checker) drawn(g *Group, columns, rows int, p *at) {
	drawn := g.Pattern.Drawn
	if !c.clean(p) || g.Pattern.Kind != Drawn && len(drawn) == 0 {
		return
	}
	if g.Pattern.Kind != Drawn {
		c.add(p, BadDrawing, phrase("found/rows", "n", len(drawn)), phrase("allowed/no-drawing", "kind", Drawn))
		return
	}
	if len(drawn) != rows {
		c.add(p, BadDrawing, phrase("found/rows", "n", len(drawn)), phrase("allowed/rows", "n", rows))
		return
	}
	levels := "0123456789"[:min(max(len(g.Heights), 1), maxHeights)]
	for i, row := range drawn {
		if len(row) != columns || strings.Trim(row, levels) != "" {
			c.add(p.item(i), BadDrawing, row, phrase("allowed/digits", "n", columns, "top", levels[len(levels)-1:]))
		}
	}
}

// assumed paths must lead to values that come from the real world, in order and
// each once.
func (c *checker) assumed(doc *Document) {
	for i, path := range doc.Assumed {
		p := (*at)(nil).field("assumed").item(i)
		to, found := find(designTree(), reflect.ValueOf(doc).Elem(), designPrefix+path)
		switch {
		case !found || to.entry >= 0 || !to.node.field.Assumable:
			c.add(p, NotAssumable, path, words.Phrase{})
		case i > 0 && doc.Assumed[i-1] >= path:
			c.add(p, NotUnique, path, words.Phrase{Key: "allowed/sorted"})
		}
	}
}
