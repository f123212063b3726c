package papers

import (
	"slices"
	"strconv"

	"blockfield/engine/bench"
	"blockfield/engine/cost"
	"blockfield/engine/length"
	"blockfield/engine/measure"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/wood"
	"blockfield/engine/words"
)

// aisle is the kind of seller that goods come from.
type aisle string

// The aisles, in the order of the walk.
const (
	timberAisle aisle = "timber"
	sheetAisle  aisle = "sheet"
	paintAisle  aisle = "paint"
	glueAisle   aisle = "glue"
)

func aisles() []aisle { return []aisle{timberAisle, sheetAisle, paintAisle, glueAisle} }

// goods is one thing to buy.
type goods struct {
	aisle    aisle
	count    string
	what     string
	look     string // what to look for in the shop; empty: nothing to choose
	instead  string // what is good enough in its place
	price    string // key of the line of the price that it is part of
	quantity float64
	unit     string // key of the unit of the quantity, for tables
}

// goods is everything that is bought for the job, in whole sticks, sheets, bottles
// and tins.
func (m *maker) goods() []goods {
	if m.kit() && m.Plan.Price.Sold {
		return slices.DeleteFunc(m.stickGoods(), func(g goods) bool { return g.count == "" }) // the client buys the rest
	}
	sticks := m.stickGoods()
	if m.kit() {
		sticks = []goods{{aisle: timberAisle, count: m.T("buy/kit-count"), what: m.T("buy/kit"), unit: "pieces", quantity: 1}}
	}
	all := slices.Concat(sticks, m.frameGoods(), m.stripGoods(), m.sheetGoods(), m.paintGoods(), m.glueGoods(), m.fixingGoods())
	return slices.DeleteFunc(all, func(g goods) bool { return g.count == "" })
}

func (m *maker) pieces(n int) string {
	if n == 0 {
		return ""
	}
	return m.T("buy/pieces", "n", n)
}

// bars are what is bought of each length.
func (m *maker) bars(bars []bench.Bar, like goods, say func(length.Length) string) []goods {
	var all []goods
	for _, bar := range bars {
		if bar.Bought > 0 {
			one := like
			one.count, one.what = m.pieces(bar.Bought), say(bar.Length)
			one.quantity, one.unit = float64(bar.Bought), "pieces"
			all = append(all, one)
		}
	}
	return all
}

func (m *maker) stickGoods() []goods {
	var all []goods
	for _, l := range m.Plan.Bill.Lots {
		look := m.T("stock/look-sticks")
		if section := m.boughtAs(l); section != "" {
			look = m.T("stock/look-section", "section", section, "size", l.Size) + " " + look
		}
		like := goods{aisle: timberAisle, look: look, instead: m.T("stock/instead-sticks"), price: "line/block-stock"}
		all = append(all, m.bars(l.Bars, like, func(long length.Length) string {
			return capital(m.T("buy/sticks", "wood", m.wood(l.Wood), "size", l.Size, "length", long))
		})...)
	}
	return all
}

// boughtAs is the section that sticks are bought in, as the design says: its name on the
// shelf, and what it becomes.
func (m *maker) boughtAs(l bench.Lot) string {
	for _, g := range m.Plan.Groups {
		if b := g.Design.Block; b.Size.Same(l.Size) && slices.Contains(g.Design.Woods(), l.Wood) && b.Section != "" {
			return m.Words.Given(b.Section)
		}
	}
	return ""
}

func (m *maker) frameGoods() []goods {
	var all []goods
	for _, f := range m.Plan.Bill.Frame {
		like := goods{aisle: timberAisle, look: m.T("stock/look-boards"), instead: m.T("stock/instead-boards"), price: "line/frame-stock"}
		board := capital(m.T("buy/board", "wood", m.wood(f.Wood), "size", []length.Length{f.Thickness, f.Board}))
		if f.Cuts.Planned() {
			all = append(all, m.bars(f.Cuts.Bars, like, func(long length.Length) string {
				return m.T("buy/board-of", "board", board, "length", long)
			})...)
			continue
		}
		like.count, like.what, like.quantity, like.unit = m.running(f.BoughtM), board, f.BoughtM, "metres"
		all = append(all, like)
	}
	return all
}

func (m *maker) stripGoods() []goods {
	var all []goods
	for _, s := range m.Plan.Bill.Cleat.Strips {
		like := goods{aisle: timberAisle, look: m.T("stock/look-strips"), instead: m.T("stock/instead-strips"), price: "line/cleat-stock"}
		say := func(long length.Length) string {
			return capital(m.T("buy/strips-of", "width", bench.StripWidth(), "thickness", s.Thickness, "length", long))
		}
		if s.Cuts.Planned() {
			all = append(all, m.bars(s.Cuts.Bars, like, say)...)
			continue
		}
		like.count, like.quantity, like.unit = m.running(s.BoughtM), s.BoughtM, "metres"
		like.what = m.T("stock/strip", "width", bench.StripWidth(), "thickness", s.Thickness)
		all = append(all, like)
	}
	return append(all, m.wallStripGoods()...)
}

// wallStripGoods are the strips in the wall that are higher than those of the shop.
func (m *maker) wallStripGoods() []goods {
	var all []goods
	for _, s := range m.Plan.WallStrips() {
		all = append(all, goods{
			aisle: timberAisle, look: m.T("stock/look-strips"), instead: m.T("stock/instead-strips"), price: "line/cleat-stock",
			count: m.pieces(s.Count), what: capital(m.T("buy/wall-strip", "height", m.Words.Number(s.Height), "thickness", s.Thickness,
				"length", s.Length, "bevel", words.Degrees(s.BevelDegrees))), quantity: float64(s.Count), unit: "pieces",
		})
	}
	return all
}

// running is a running length as it is asked for at the counter.
func (m *maker) running(metres float64) string {
	if metres == 0 {
		return ""
	}
	if m.Words.Units.Bare() == length.InInch {
		const feetPerM = 1 / 0.3048 // exact
		return m.T("bench/feet", "n", metres*feetPerM)
	}
	return m.T("bench/metres", "n", metres)
}

func (m *maker) sheetGoods() []goods {
	var all []goods
	for _, s := range m.Plan.Bill.Sheets {
		what := m.T("buy/sheet", "sheet", m.wood(s.Sheet), "thickness", s.Thickness)
		if whole, ok := wood.FindSheet(s.Sheet); ok {
			what = m.T("buy/sheet-of", "sheet", m.wood(s.Sheet), "thickness", s.Thickness,
				"size", []length.Length{whole.Width, whole.Length})
		}
		if s.Count == 0 {
			continue // all come out of what is there
		}
		all = append(all, goods{
			aisle: sheetAisle, count: m.T("buy/sheets", "n", s.Count), what: capital(what), look: m.T("stock/look-sheets"),
			instead: m.T("stock/instead-sheets"), price: "line/sheet", quantity: float64(s.Count), unit: "sheets",
		})
	}
	return all
}

func (m *maker) paintGoods() []goods {
	var all []goods
	for _, f := range m.Plan.Bill.Finishes {
		bought := float64(cost.TinnedML(cost.Steps(f.Litres, cost.MLPerLitre))) / cost.MLPerLitre
		all = append(all, goods{
			aisle: paintAisle, count: m.Show(words.Litres(bought)), what: capital(m.wood(f.Finish)),
			look: m.T("stock/look-finish", "litres", words.Litres(f.Litres)), instead: m.T("stock/instead-finish"),
			price: "line/finish", quantity: bought, unit: "litres",
		})
	}
	return all
}

func (m *maker) glueGoods() []goods {
	kg := m.Plan.Bill.GlueKg
	if kg == 0 {
		return nil
	}
	g := goods{
		aisle: glueAisle, count: m.grams(kg), what: m.T("stock/glue"), look: m.T("stock/look-glue", "minutes", words.Minutes(m.Doc.Design.Bench.GlueOpenMinutes)),
		instead: m.T("stock/instead-glue"), price: "line/glue", quantity: kg, unit: "kg",
	}
	if bottle := m.Book.Goods.GlueBottleKg; bottle > 0 {
		n := int(cost.GlueBottles(cost.Steps(kg, cost.GPerKg), bottle))
		g.count, g.quantity = m.T("buy/bottles", "n", n, "size", m.grams(bottle)), float64(n)*bottle
	}
	return []goods{g}
}

// grams is a small mass.
func (m *maker) grams(kg float64) string {
	return m.T("bench/grams", "n", int(cost.Steps(kg, cost.GPerKg)))
}

func (m *maker) fixingGoods() []goods {
	bill := m.Plan.Bill
	screws := goods{aisle: glueAisle, price: "line/fixings", unit: "pieces"}
	of := func(n int, what, look string) goods {
		one := screws
		one.count, one.what, one.look, one.quantity = m.pieces(n), what, look, float64(n)
		return one
	}
	all := m.cleatScrewGoods(of)
	for i, g := range m.Plan.Groups {
		b := bill.Groups[i]
		all = append(all, of(b.WallFixings*len(g.Built.Panels), capital(m.fixingName(i)), m.T("count/"+string(b.Rule))))
	}
	all = append(all, of(bill.Brads, capital(m.T("buy/brads")), ""), of(m.Plan.LiftLocks(), capital(m.T("buy/lock")), m.T("stock/look-lock")))
	if bill.CutBlocks == 0 || m.kit() {
		return all
	}
	discs := of(1, capital(m.T("buy/abrasives", "n", bill.CutBlocks)), m.T("stock/look-abrasives"))
	discs.count, discs.price, discs.unit = m.T("buy/set"), "line/abrasives", "pieces"
	return append(all, discs)
}

// cleatScrewGoods are the screws of the panels' halves, with gauge and length where they
// are known.
func (m *maker) cleatScrewGoods(of func(n int, what, look string) goods) []goods {
	var all []goods
	counted := 0
	for i, h := range m.Plan.Hangings {
		half := h.Halves[0]
		n := m.Plan.Bill.Groups[i].CleatScrews * len(m.Plan.Groups[i].Built.Panels)
		if !half.Found || n == 0 {
			continue
		}
		counted += n
		what := capital(m.T("buy/cleat-screws-of", "gauge", half.Gauge, "long", length.MM(int64(half.Row.ScrewMM))))
		all = append(all, of(n, what, m.T("stock/look-screws-plain")))
	}
	if counted != m.Plan.Bill.CleatScrews {
		return []goods{of(m.Plan.Bill.CleatScrews, capital(m.T("buy/cleat-screws")), m.T("stock/look-screws"))}
	}
	return all
}

// fixingName names the wall fixings of a group as far as the design says.
func (m *maker) fixingName(group int) string {
	f := m.Doc.Design.Walls[m.Plan.Groups[group].Wall].Fixing
	switch {
	case m.Plan.Bill.Groups[group].Rule == bench.PublishedRules:
		screw := m.Plan.Bill.Groups[group].Wall
		return m.T("buy/fixings-stud", "gauge", screw.Gauge, "long", screw.Long)
	case f.What != "":
		return m.T("buy/fixings-named", "what", f.What)
	case f.Kind != "automatic":
		return m.T("buy/fixings-named", "what", m.wood(f.Kind))
	default:
		return m.T("buy/fixings-open")
	}
}

// stockOrder is what is bought, by seller, with room for what it cost.
func (m *maker) stockOrder() sheet.Paper {
	all := m.goods()
	if len(all) == 0 {
		return m.paper("stock-order", sheet.NoView)
	}
	var blocks []sheet.Block
	for _, a := range aisles() {
		t := sheet.Table{Size: m.either(sheet.BodySize, 3.6), Columns: []sheet.Column{
			{Width: 8}, {Head: m.T("buy/how-much"), Width: 23}, {Head: m.T("buy/what"), Grow: true}, {Head: m.T("stock/wanted"), Grow: true}, {Head: m.T("stock/paid"), Width: 22},
		}, Grid: true}
		for _, g := range all {
			if g.aisle == a {
				t.Rows = append(t.Rows, []sheet.Cell{{Tick: true}, {Text: g.count, Bold: true}, {Text: g.what}, {Text: g.look}, {}})
			}
		}
		if len(t.Rows) > 0 {
			blocks = append(blocks, sheet.Heading(m.T("aisle/"+string(a))), t)
			if expected := m.expected(all, a); expected != "" {
				blocks = append(blocks, sheet.Small(expected))
			}
		}
	}
	blocks = append(blocks, m.cautions("bench/sheet", "bench/board-too-short", "moisture/stock", "wall/fire-question")...)
	return m.paper("stock-order", sheet.NoView, append(blocks, m.measuringCard()...)...)
}

// expected is what the lines of an aisle cost by the price book; empty where it
// has no price.
func (m *maker) expected(all []goods, a aisle) string {
	var keys []string
	for _, g := range all {
		if g.aisle == a && !slices.Contains(keys, g.price) {
			keys = append(keys, g.price)
		}
	}
	var parts []string
	for _, l := range m.Plan.Price.Lines {
		if slices.Contains(keys, l.Key) && l.Amount.Minor > 0 {
			parts = append(parts, m.T("stock/line", "line", m.T(l.Key), "amount", l.Amount))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	key := "stock/expected"
	if m.Book.Placeholder {
		key = "stock/expected-example"
	}
	return m.T(key, "lines", parts, "code", m.Plan.BookCode)
}

// measuringCard is where ten sticks are measured before the first cut.
func (m *maker) measuringCard() []sheet.Block {
	if len(m.Plan.Bill.Lots) == 0 {
		return nil
	}
	t := sheet.Table{Grid: true, Least: m.either(8, 7), Columns: []sheet.Column{
		{Head: m.T("measuring/stick"), Width: 16}, {Head: m.T("measuring/width"), Grow: true}, {Head: m.T("measuring/thickness"), Grow: true},
		{Head: m.T("measuring/square"), Grow: true}, {Head: m.T("measuring/moisture"), Grow: true},
	}}
	for i := range measure.Sticks {
		t.Rows = append(t.Rows, []sheet.Cell{{Text: strconv.Itoa(i + 1), Bold: true}, {}, {}, {Tick: true}, {}})
	}
	blocks := []sheet.Block{sheet.Heading(m.T("measuring/heading")), sheet.Say(m.T("measuring/how")), t}
	return append(blocks, m.cautions("bench/not-measured", "measure/", "moisture/")...)
}
