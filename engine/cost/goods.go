package cost

import (
	"blockfield/engine/design"
	"blockfield/engine/money"
)

// How goods are sold. Common practice, no source.
const (
	tinML        = 250 // finish is bought in quarter litres
	glueSparePct = 125 // of what the joints hold, for what stays in bottle and spreader
)

// Counts that prices of small goods are for.
const (
	abrasivesPer = 100
	bladesPer    = 1000
)

// goods sets the lines of what is bought in.
func (c *calculator) goods(extras []design.Extra) {
	q, goods := c.quantities, c.book.Goods
	c.timber("line/block-stock", q.Squares, func(w design.WoodPrice) design.Amount { return w.SquaresPerM3 })
	c.sheets()
	c.glue()
	c.finishes()
	c.timber("line/frame-stock", q.Boards, func(w design.WoodPrice) design.Amount { return w.BoardsPerM3 })
	c.buy("line/cleat-stock", c.priced(goods.CleatPerM3, q.CleatMM3, MM3PerM3))
	c.buy("line/fixings", c.priced(
		goods.WoodScrew*design.Amount(q.CleatScrews)+
			goods.WallFixing*design.Amount(q.WallFixings)+
			goods.Brad*design.Amount(q.Brads), 1, 1))
	c.buy("line/abrasives", c.priced(
		goods.AbrasivesPer100*(bladesPer/abrasivesPer)+goods.BladesPer1000, int64(q.CutBlocks), bladesPer))
	if !q.OwnBuild {
		c.packing = c.priced(goods.PackingPerPanel, int64(q.Panels), 1)
		c.buy("line/packing", c.packing)
	}
	for _, x := range extras {
		role := map[string]Role{design.ExtraWork: Labour, design.ExtraSold: Sold}[x.Role]
		if role == "" {
			role = Material
		}
		if c.quantities.OwnBuild && role != Material {
			continue // nobody works for money or sells
		}
		c.lines = append(c.lines, Line{Key: "line/extra", Name: x.Name, Role: role, Amount: c.priced(x.Amount, 1, 1)})
	}
}

// buy adds a line of goods that cost something.
func (c *calculator) buy(key string, amount money.Money) {
	if amount.Minor != 0 {
		c.add(Material, key, amount)
	}
}

func (c *calculator) timber(key string, lots []Timber, price func(design.WoodPrice) design.Amount) {
	total := money.New(0, c.book.Currency)
	for _, lot := range lots {
		each, found := c.piece(lot)
		if found {
			total = total.Add(c.priced(each, lot.Count, 1))
			continue
		}
		for _, w := range c.book.Woods {
			if w.Wood == lot.Wood {
				total, found = total.Add(c.priced(price(w), lot.VolumeMM3, MM3PerM3)), true
				break
			}
		}
		if !found {
			c.lack("woods", lot.Wood)
		}
	}
	c.buy(key, total)
}

// piece is the price of one stick, where the book sells such sticks by the piece.
func (c *calculator) piece(lot Timber) (design.Amount, bool) {
	for _, s := range c.book.Sticks {
		if lot.Count > 0 && s.Wood == lot.Wood && s.Size.Same(lot.Size) && s.Length.Same(lot.Length) {
			return s.Price, true
		}
	}
	return 0, false
}

func (c *calculator) sheets() {
	total := money.New(0, c.book.Currency)
	for _, s := range c.quantities.Sheets {
		found := false
		for _, p := range c.book.Sheets {
			if p.Sheet == s.Sheet && p.Thickness.Same(s.Thickness) {
				total, found = total.Add(c.priced(p.Price, int64(s.Count), 1)), true
				break
			}
		}
		if !found {
			c.lack("sheets", s.Sheet+" "+s.Thickness.String())
		}
	}
	c.buy("line/sheet", total)
}

// glue is bought in whole bottles.
func (c *calculator) glue() {
	bottles := GlueBottles(c.quantities.GlueG, c.book.Goods.GlueBottleKg)
	c.buy("line/glue", c.priced(c.book.Goods.GluePerKg, bottles*bottleG(c.book.Goods.GlueBottleKg), GPerKg))
}

func bottleG(bottleKg float64) int64 { return max(1, Steps(bottleKg, GPerKg)) }

// GlueBottles is how many bottles are bought for the glue that is in the
// joints.
func GlueBottles(glueG int64, bottleKg float64) int64 {
	return ceilDiv(glueG*glueSparePct, 100*bottleG(bottleKg))
}

// TinnedML is how much finish is bought where so much is used.
func TinnedML(ml int64) int64 { return ceilDiv(ml, tinML) * tinML }

func (c *calculator) finishes() {
	total := money.New(0, c.book.Currency)
	for _, f := range c.quantities.Finishes {
		ml := TinnedML(f.VolumeML)
		found := false
		for _, p := range c.book.Finishes {
			if p.Finish == f.Finish {
				total, found = total.Add(c.priced(p.PerLitre, ml, MLPerLitre)), true
				break
			}
		}
		if !found {
			c.lack("finishes", f.Finish)
		}
	}
	c.buy("line/finish", total)
}

func ceilDiv(n, d int64) int64 { return (n + d - 1) / d }
