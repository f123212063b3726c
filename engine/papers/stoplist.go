package papers

import (
	"fmt"
	"slices"
	"strings"

	"blockfield/engine/bench"
	"blockfield/engine/cut"
	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/papers/sheet"
)

// How the stop list counts. Common practice, no source.
const (
	remeasureEvery = 50  // cuts, since a stop creeps
	mostBoxes      = 120 // of one height, so that the sheet can still be read
)

// stopList says how the blocks are cut: for each height the setting of the stop,
// how many, from which sticks, and boxes to tally them.
func (m *maker) stopList() sheet.Paper {
	var blocks []sheet.Block
	for i, lot := range m.Plan.Bill.Lots {
		lotBlocks := []sheet.Block{
			sheet.Heading(capital(m.T("cuts/lot", "wood", m.wood(lot.Wood), "size", lot.Size))),
			sheet.Say(m.T("stop/sticks", "n", lot.SticksBeforeDefects, "bought", lot.Sticks)),
			m.stickPlan(lot),
		}
		if i == 0 {
			lotBlocks = append(lotBlocks, sheet.Small(m.T("stop/legend", "tolerance", m.within("block"))))
		}
		for _, h := range slices.Backward(lot.Heights) {
			lotBlocks = append(lotBlocks, m.stopEntry(lot, h))
		}
		blocks = append(blocks, lotBlocks...)
	}
	return m.paper("stop-list", sheet.NoView, blocks...)
}

// wood is the name of a wood.
func (m *maker) wood(name string) string { return m.T("choice/" + name) }

// stickPlan is the table of sticks that are cut alike, each group with a letter.
func (m *maker) stickPlan(lot bench.Lot) sheet.Block {
	t := sheet.Table{Size: armSize(), Columns: []sheet.Column{
		{Head: m.T("cuts/group")}, {Head: m.T("cuts/sticks"), Right: true}, {Head: m.T("cuts/length"), Right: true},
		{Head: m.T("cuts/each"), Grow: true}, {Head: m.T("cuts/rest"), Right: true},
	}}
	for i, b := range lot.Cuts.Boards {
		var pieces []string
		for _, p := range b.Pieces {
			pieces = append(pieces, m.T("cuts/pieces", "n", p.Count, "height", m.number(p.Length, lot)))
		}
		t.Rows = append(t.Rows, []sheet.Cell{
			{Text: bench.GroupLetter(i), Bold: true}, {Text: m.Show(b.Count)}, {Text: m.Words.Number(lot.Bars[b.Bar].Length)},
			{Text: strings.Join(pieces, ", ")},
			{Text: m.Words.Number(length.Nanometres(b.Offcut, lot.StickLength.Notation()))},
		})
	}
	return t
}

// number writes a length of the cutting plan as the height that it is.
func (m *maker) number(nm int64, lot bench.Lot) string { return m.Words.Number(lot.HeightOf(nm)) }

// from says out of which sticks a height comes, and how many of each.
func (m *maker) from(plan cut.Plan, h length.Length) string {
	var all []string
	for i, b := range plan.Boards {
		for _, p := range b.Pieces {
			if p.Length == h.Nanometres() {
				all = append(all, m.T("stop/from-group", "group", bench.GroupLetter(i), "n", p.Count))
			}
		}
	}
	return m.T("stop/from", "groups", strings.Join(all, ", "))
}

const (
	stopFigure = 9  // height of the figures of a setting
	entryHead  = 15 // of an entry above its boxes
)

// stopEntry is one height: its setting, its counts, and boxes in tens.
func (m *maker) stopEntry(lot bench.Lot, h bench.HeightCount) sheet.Block {
	return sheet.Fitted(func(width float64) []sheet.Block {
		holding := m.holding(h.Height)
		from := m.from(lot.Cuts, h.Height)
		size := sheet.FigureSize(stopFigure)
		setting := m.Words.Number(h.Height)
		left := max(36, sheet.Width(sheet.Bold, size, setting)+4)
		counts := m.T("stop/counts", "cut", h.Cut, "need", h.Need, "spare", h.Spare)
		countsSize := min(armSize(), armSize()*(width-left-entryHead)/sheet.Width(sheet.Bold, armSize(), counts))
		fromHeight := sheet.TextHeight(sheet.Regular, sheet.BodySize, width-left-entryHead, from)
		head := max(entryHead, fromHeight+9)
		blocks := []sheet.Block{sheet.Piece{Height: head, Gap: 5, Keep: true, Draw: func(p sheet.Pen) {
			p.Line(0, 0, p.Width, 0, draw.Outline)
			m.swatch(p, 0, 2, 12, h.Height)
			p.Text(entryHead, 12, sheet.Type{Size: size, Face: sheet.Bold, Class: "setting"}, setting)
			text := p.In(entryHead+left, 2, width-left-entryHead, head-2)
			text.Text(0, 5.4, sheet.Type{Size: countsSize, Face: sheet.Bold, Class: "counts"}, counts)
			text.In(0, 7, text.Width, text.Height-7).Lines(sheet.Type{}, from)
		}}}
		blocks = append(blocks, m.trueSize(h.Height, width))
		blocks = append(blocks, m.tally(h.Cut, width)...)
		if holding != "" {
			blocks = append(blocks, sheet.Notice{Sign: sheet.CautionSign, Text: holding})
		}
		return blocks
	})
}

// holding is how a height is held; empty where a hand is far enough away.
func (m *maker) holding(h length.Length) string {
	for _, w := range m.Plan.WatchOuts {
		if w.Code != "bench/short-block" && w.Code != "bench/tiny-block" {
			continue
		}
		if shortest, ok := w.Args["height"].(length.Length); ok && h.Cmp(shortest) <= 0 {
			return m.Words.Say(w.Code, w.Args)
		}
	}
	return ""
}

// trueSize is a bar as long as the block is high, to hold a block against.
func (m *maker) trueSize(h length.Length, width float64) sheet.Block {
	const high, most = 3, 0.97
	mm := h.Millimetres()
	if mm > width*most {
		return sheet.Small(m.T("stop/too-long"))
	}
	return sheet.Piece{Height: high, Gap: 2, Keep: true, Draw: func(p sheet.Pen) {
		p.Group("true-size", func() { p.Fill(0, 0, mm, high, sheet.Black()) })
		p.Text(mm+2, high, sheet.Type{Size: sheet.SmallSize}, sheet.Fit(sheet.Regular, sheet.SmallSize, p.Width-mm-2, m.T("stop/true-size")))
	}}
}

// Sizes of the boxes of a tally in mm.
const (
	boxBeside = 1.6 // beside its figures
	boxHeight = 7.5
	lineGap   = 1.6
	ringWidth = 6.4 // after each fifty: measure again
)

// tallyStep is how many blocks one box counts: tens, or more where tens would
// fill the sheet.
func tallyStep(n int) int {
	for _, step := range []int{10, 50, 100, 500} {
		if (n+step-1)/step <= mostBoxes {
			return step
		}
	}
	return 1000
}

// tally is boxes to cross, each for so many blocks, with the sum so far in it
// and a ring wherever a block is to be measured again.
func (m *maker) tally(n int, width float64) []sheet.Block {
	step := tallyStep(n)
	each := max(remeasureEvery/step, 1) // boxes up to a ring
	least := sheet.Width(sheet.Regular, armSize(), m.Show(n)) + boxBeside
	groups := max(int(width/(float64(each)*least+ringWidth)), 1)
	aLine, boxWidth := groups*each, (width/float64(groups)-ringWidth)/float64(each)
	boxes := (n + step - 1) / step
	var all []sheet.Block
	for first := 0; first < boxes; first += aLine {
		last := min(first+aLine, boxes)
		all = append(all, sheet.Piece{Height: boxHeight, Gap: lineGap, Keep: last < boxes, Draw: func(p sheet.Pen) {
			for i := first; i < last; i++ {
				at := i - first
				x := float64(at)*boxWidth + float64(at/each)*ringWidth
				p.Box(x, 0, boxWidth, boxHeight, draw.Visible)
				sum := min((i+1)*step, n)
				p.Text(x+boxWidth-0.8, (boxHeight+armFigure)/2, sheet.Type{Size: armSize(), Align: sheet.Right, Class: "tally"}, fmt.Sprint(sum))
				if (i+1)%each == 0 && sum < n {
					p.Circle(x+boxWidth+ringWidth/2, boxHeight/2, 2, draw.Visible)
				}
			}
		}})
	}
	if step > 10 {
		all = append(all, sheet.Small(m.T("stop/step", "n", step)))
	}
	return all
}
