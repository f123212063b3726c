package page

import (
	"slices"

	"blockfield/engine/bench"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wood"
	"blockfield/engine/words"
)

const (
	gramsPerKg  = 1000
	cleatHalves = 2 // on the panel and on the wall
)

// Purchase is one row of the shopping list, named like the line of the price.
type Purchase struct {
	Key, Label string
	Items      []Item
	Amount     string // of money; empty where nothing has a price
}

// Item is one kind of goods in a row, or what is cut out of them.
type Item struct {
	Text     string
	Quantity string
}

// Purchases are what the job takes, in the order of the price's lines.
func (v *view) Purchases() []Purchase {
	all := []Purchase{
		{Key: "line/block-stock", Items: v.stickItems()},
		{Key: "line/sheet", Items: v.sheetItems()},
		{Key: "line/glue", Items: v.glueItems()},
		{Key: "line/finish", Items: v.finishItems()},
		{Key: "line/frame-stock", Items: v.frameItems()},
		{Key: "line/cleat-stock", Items: v.stripItems()},
		{Key: "line/fixings", Items: v.fixingItems()},
		{Key: "line/abrasives", Items: []Item{{Text: v.T("buy/abrasives", "n", v.Plan.Bill.CutBlocks)}}},
	}
	all = slices.DeleteFunc(all, func(p Purchase) bool { return len(p.Items) == 0 })
	for i := range all {
		all[i].Label = v.T(all[i].Key)
		for _, l := range v.Plan.Price.Lines {
			if l.Key == all[i].Key {
				all[i].Amount = v.Amount(l.Amount)
			}
		}
	}
	for _, l := range v.Plan.Price.Lines {
		if l.Role == cost.Material && l.Name != "" {
			all = append(all, Purchase{Key: l.Key, Label: l.Name, Amount: v.Amount(l.Amount)})
		}
	}
	return all
}

func (v *view) stickItems() []Item {
	var all []Item
	for _, l := range v.Plan.Bill.Lots {
		wood := v.T("choice/" + l.Wood)
		all = append(all, v.barItems(l.Bars, func(long length.Length) string {
			return v.T("buy/sticks", "wood", wood, "size", l.Size, "length", long)
		})...)
	}
	return all
}

// barItems are what is bought of each length, and below it what is there already.
func (v *view) barItems(bars []bench.Bar, say func(length.Length) string) []Item {
	var all []Item
	for _, bar := range bars {
		if bar.Bought > 0 {
			all = append(all, Item{say(bar.Length), v.T("buy/pieces", "n", bar.Bought)})
		}
	}
	for _, bar := range bars {
		if bar.Owned && bar.Used > 0 {
			all = append(all, Item{say(bar.Length), v.T("buy/there", "n", bar.Used)})
		}
	}
	return all
}

// sheetItems are the sheets, and below them what is cut out of them.
func (v *view) sheetItems() []Item {
	var all []Item
	for _, s := range v.Plan.Bill.Sheets {
		text := v.T("buy/sheet", "sheet", v.T("choice/"+s.Sheet), "thickness", s.Thickness)
		if whole, ok := wood.FindSheet(s.Sheet); ok {
			text = v.T("buy/sheet-of", "sheet", v.T("choice/"+s.Sheet), "thickness", s.Thickness,
				"size", []length.Length{whole.Width, whole.Length})
		}
		if s.Count > 0 {
			all = append(all, Item{text, v.T("buy/sheets", "n", s.Count)})
		}
		for _, l := range s.Plan.Layouts {
			if l.There > 0 {
				width, long := s.Size(l)
				all = append(all, Item{
					v.T("buy/sheet-of", "sheet", v.T("choice/"+s.Sheet), "thickness", s.Thickness, "width", v.Words.Number(width), "length", long),
					v.T("buy/there", "n", l.Count),
				})
			}
		}
	}
	number, in := v.Words.Number, v.Doc.Design.Bench
	for _, g := range v.Groups() {
		all = append(all, Item{
			v.T("buy/backer", "width", number(v.Whole(bench.CutBacker(g.Built.FieldWidth, in))), "height", v.Whole(bench.CutBacker(g.Built.FieldHeight, in)),
				"fieldWidth", number(g.Built.FieldWidth), "fieldHeight", g.Built.FieldHeight),
			v.T("buy/pieces", "n", g.Panels()),
		})
	}
	return all
}

func (v *view) glueItems() []Item {
	joints := v.Plan.Bill.GlueKg
	if joints == 0 {
		return nil
	}
	item := Item{Text: v.T("buy/glue", "grams", v.Grams(joints))}
	if bottle := v.Book.Goods.GlueBottleKg; bottle > 0 {
		item.Quantity = v.T("buy/bottles", "n", v.bottles(), "size", v.Grams(bottle))
	}
	return []Item{item}
}

// bottles is how many the price counts: whole ones.
func (v *view) bottles() int {
	return int(cost.GlueBottles(cost.Steps(v.Plan.Bill.GlueKg, cost.GPerKg), v.Book.Goods.GlueBottleKg))
}

func (v *view) finishItems() []Item {
	var all []Item
	for _, f := range v.Plan.Bill.Finishes {
		bought := cost.TinnedML(cost.Steps(f.Litres, cost.MLPerLitre))
		all = append(all, Item{
			v.T("buy/finish", "finish", v.T("choice/"+f.Finish), "litres", words.Litres(f.Litres)),
			v.Litres(float64(bought) / cost.MLPerLitre),
		})
	}
	return all
}

// frameItems are the boards, and below them the pieces that are cut out of
// them.
func (v *view) frameItems() []Item {
	var all []Item
	for _, f := range v.Plan.Bill.Frame {
		board := v.T("buy/board", "wood", v.T("choice/"+f.Wood), "size", []length.Length{f.Thickness, f.Board})
		if f.Cuts.Planned() {
			all = append(all, v.barItems(f.Cuts.Bars, func(long length.Length) string {
				return v.T("buy/board-of", "board", board, "length", long)
			})...)
		} else {
			all = append(all, Item{board, v.Metres(f.BoughtM)})
		}
		for _, g := range v.Groups() {
			d := g.Design.Frame
			if g.Built.Framed && d.Wood == f.Wood && d.Thickness.Same(f.Thickness) && d.Board.Same(f.Board) {
				all = append(all, v.framePieces(g)...)
			}
		}
	}
	return all
}

func (v *view) framePieces(g groupView) []Item {
	key := "buy/frame-mitred"
	if g.Design.Frame.Joint == design.Butt {
		key = "buy/frame-butt"
	}
	var pieces pieceList
	for _, p := range g.Built.Panels {
		for _, part := range p.Parts {
			if part.Kind == panel.FramePart {
				pieces.add(length.Max(part.Width, part.Height), part.Count)
			}
		}
	}
	var all []Item
	for _, piece := range pieces {
		all = append(all, Item{
			v.T(key, "length", piece.long, "depth", g.Built.FrameDepth),
			v.T("buy/pieces", "n", piece.n),
		})
	}
	return all
}

// pieceList counts pieces of one section by their length.
type pieceList []struct {
	long length.Length
	n    int
}

func (l *pieceList) add(long length.Length, n int) {
	for i := range *l {
		if (*l)[i].long.Same(long) {
			(*l)[i].n += n
			return
		}
	}
	*l = append(*l, struct {
		long length.Length
		n    int
	}{long, n})
}

// stripItems are the strips for cleats and spacers, with their pieces.
func (v *view) stripItems() []Item {
	if v.Plan.Bill.Cleat.RunningM == 0 {
		return nil
	}
	var all []Item
	for _, s := range v.Plan.Bill.Cleat.Strips {
		if !s.Cuts.Planned() {
			all = append(all, Item{
				v.T("buy/strips", "width", bench.StripWidth(), "thickness", s.Thickness), v.Metres(s.BoughtM),
			})
			continue
		}
		all = append(all, v.barItems(s.Cuts.Bars, func(long length.Length) string {
			return v.T("buy/strips-of", "width", bench.StripWidth(), "thickness", s.Thickness, "length", long)
		})...)
	}
	for i, g := range v.Groups() {
		halves := cleatHalves
		if v.Plan.Bill.Groups[i].StripM2 > 0 {
			halves = 1
		}
		for _, part := range g.Built.Panels[0].Parts {
			n, key := g.Panels(), "buy/spacer"
			switch part.Kind {
			case panel.CleatPart:
				n, key = halves*n, "buy/cleat"
			case panel.SpacerPart:
			default:
				continue
			}
			all = append(all, Item{
				v.T(key, "height", v.Words.Number(part.Height), "thickness", part.Depth, "length", part.Width,
					"bevel", words.Degrees(g.Design.Cleat.Bevel)),
				v.T("buy/pieces", "n", n),
			})
		}
	}
	return append(all, v.wallStripItems()...)
}

// wallStripItems are the strips in the wall that are higher than those of the shop, out of
// which they cannot be cut.
func (v *view) wallStripItems() []Item {
	var all []Item
	for _, s := range v.Plan.WallStrips() {
		text := v.T("buy/wall-strip", "height", v.Words.Number(s.Height), "thickness", s.Thickness,
			"length", s.Length, "bevel", words.Degrees(s.BevelDegrees))
		all = append(all, Item{v.T("buy/apart", "what", text), v.T("buy/pieces", "n", s.Count)})
	}
	return all
}

func (v *view) fixingItems() []Item {
	bill := v.Plan.Bill
	var all []Item
	add := func(text string, n int) {
		if n > 0 {
			all = append(all, Item{text, v.T("buy/pieces", "n", n)})
		}
	}
	byKind := map[string]int{}
	var order []string
	count := func(text string, n int) {
		if byKind[text] == 0 {
			order = append(order, text)
		}
		byKind[text] += n
	}
	for i, g := range v.Groups() {
		count(v.cleatScrewText(bill.Groups[i].Cleat), bill.Groups[i].CleatScrews*g.Panels())
	}
	for i, g := range v.Groups() {
		text := v.fixingText(g, bill.Groups[i]) + ". " + v.T("count/"+string(bill.Groups[i].Rule))
		count(text, bill.Groups[i].WallFixings*g.Panels())
	}
	for _, text := range order {
		add(text, byKind[text])
	}
	add(v.T("buy/brads"), bill.Brads)
	add(v.T("buy/lock"), v.Plan.LiftLocks())
	return all
}

// cleatScrewText names the screws through cleat and backer; a screw without a gauge is
// one that nobody could choose.
func (v *view) cleatScrewText(s bench.Screw) string {
	if s.Gauge == 0 {
		return v.T("buy/cleat-screws")
	}
	return v.T("buy/cleat-screws-of", "gauge", s.Gauge, "long", s.Long)
}

// fixingText names the wall fixings of a group as far as the design says.
func (v *view) fixingText(g groupView, bill bench.GroupBill) string {
	f := v.Doc.Design.Walls[g.Wall].Fixing
	switch {
	case bill.Rule == bench.PublishedRules:
		return v.T("buy/fixings-stud", "gauge", bill.Wall.Gauge, "long", bill.Wall.Long)
	case f.What != "":
		return v.T("buy/fixings-named", "what", f.What)
	case f.Kind != "automatic":
		return v.T("buy/fixings-named", "what", v.T("choice/"+f.Kind))
	default:
		return v.T("buy/fixings-open")
	}
}
