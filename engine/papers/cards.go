package papers

import (
	"fmt"
	"math"
	"strings"

	"blockfield/engine/draw"
	"blockfield/engine/layup"
	"blockfield/engine/measure"
	"blockfield/engine/papers/sheet"
)

// Sizes of a row card in mm.
const (
	cardNumber     = 8.0 // height of the row's number
	cardHead       = 12.1
	cardCountLine  = 6.2 // what each further wood adds to the head
	cardLeastCount = 2.6 // counts of very many heights are written that small
	cardSmall      = 3.6 // type of what the row takes
	cardAbove      = 1.9 // in a box above and below its numeral
	cardAboveClose = 0.9 // where that saves a sheet
	cardColumns    = 5.9 // of the column numbers above them
	cardGroup      = 5   // boxes in a group
	cardApart      = 1.6 // between groups
	cardSide       = 0.4 // beside the widest numeral in its box, at least, as wide as it is usually
	cardClear      = 1.0 // what numerals are made narrower for: a divider close by reads as a figure
	cardNarrow     = 0.85
	cardMostSide   = 2.0
	cardMeasure    = 7.5
	arrowWidth     = 5.0
)

// secondShade marks blocks of the second wood; figures stay readable on it, on a
// copier too.
const secondShade = "#d0d0d0"

// rowCards are the rows in the order of the work, one strip each. Very many are close from
// the start, since to lay them out twice takes longer than anybody waits.
func (m *maker) rowCards() sheet.Paper {
	const many = 150
	if len(m.Job.Cards) > many {
		m.close = true
		defer func() { m.close = false }()
		return m.cardStrips()
	}
	return m.fewest(m.cardStrips)
}

func (m *maker) cardStrips() sheet.Paper {
	var blocks []sheet.Block
	for i, c := range m.Job.Cards {
		if i > 0 && m.Job.Cards[i-1].Field == c.Field && m.Job.Cards[i-1].Panel == c.Panel {
			blocks = append(blocks, m.card(c))
			continue
		}
		blocks = append(blocks, sheet.Fresh{
			sheet.Heading(m.panelName(c.Field, c.Panel)), sheet.Small(m.cardLegend(c)), m.card(c),
		})
	}
	return m.paper("row-cards", sheet.Front, blocks...)
}

// start is the edge that the rows begin at.
func (m *maker) start() string { return m.Job.Record.Lay.Start }

// panelName tells a panel from the others of the job: of which group it is, and
// which of its panels.
func (m *maker) panelName(field, panel int) string {
	g := m.Plan.Groups[field]
	name := m.T("cards/panel", "n", panel+1, "of", len(g.Built.Panels), "letter", string(g.Built.Panels[panel].Letter))
	if len(g.Built.Panels) == 1 {
		name = m.T("cards/one-panel")
	}
	if len(m.Plan.Groups) > 1 {
		name = m.T("cards/group", "group", m.groupName(field), "panel", name)
	}
	return name
}

// groupName is what a group is called; groups without a name are numbered.
func (m *maker) groupName(i int) string {
	if name := m.Plan.Groups[i].Design.Name; name != "" {
		return m.Words.Given(name)
	}
	return m.T("cards/group-number", "n", i+1)
}

// cardLegend says once for each panel how to read its cards.
func (m *maker) cardLegend(c layup.Card) string {
	text := m.T("cards/legend", "edge", m.T("edge/"+m.start()), "rows", c.Rows, "every", measure.Every)
	if len(c.Parts) > 1 {
		text += " " + m.T("cards/legend-parts")
	}
	if g := m.Plan.Groups[c.Field].Design; len(g.Woods()) > 1 {
		text += " " + m.T("cards/legend-woods", "one", m.wood(g.Woods()[0]), "other", m.wood(g.Woods()[1]))
	}
	if m.bare(c.Field) {
		text += " " + m.T("cards/legend-bare")
	}
	return text
}

// bare reports whether a field has cells of bare backer.
func (m *maker) bare(field int) bool {
	g := m.Plan.Groups[field]
	return g.Design.Heights[0].IsZero() && g.Built.Counts[0] > 0
}

// card is one row: its head, and its boxes over as many lines as they take.
func (m *maker) card(c layup.Card) sheet.Block {
	above := m.either(cardAbove, cardAboveClose)
	return sheet.Fitted(func(width float64) []sheet.Block {
		b := m.cardBoxes(c.Field, width)
		b.high += 2 * above
		blocks := []sheet.Block{sheet.Piece{Height: cardHead + cardCountLine*float64(len(c.WoodCounts)-1), Gap: 3, Keep: true, Draw: func(p sheet.Pen) {
			p.Group("card-head", func() { m.cardHead(p, c) })
		}}}
		for first := 0; first < len(c.Levels); first += b.aLine {
			last := min(first+b.aLine, len(c.Levels))
			more := last < len(c.Levels)
			blocks = append(blocks, sheet.Piece{
				Height: cardColumns + b.high + 0.8, Gap: 0.6, Keep: more || c.Measure,
				Draw: func(p sheet.Pen) { p.Group("card-line", func() { m.cardLine(p, c, first, last, b) }) },
			})
		}
		if c.Measure {
			blocks = append(blocks, sheet.Piece{Height: cardMeasure, Gap: 0.6, Draw: func(p sheet.Pen) { m.cardMeasure(p, c) }})
		}
		return blocks
	})
}

// boxes is how the boxes of a field are set: their size, the type of their numerals, and how
// many go on a line.
type boxes struct {
	wide, high float64
	figures
	aLine int
}

// cardBoxes sets the boxes of a field: whole groups, on as few lines as can be, and then as
// few on each of them. One line leaves no room for an arrow to the next.
func (m *maker) cardBoxes(field int, width float64) boxes {
	b := boxes{figures: figures{sheet.FigureSize(armFigure), stacked, 1}}
	g := m.Plan.Groups[field]
	widest := 0.0
	for _, h := range g.Design.Heights {
		widest = max(widest, b.width(m.numeral(h)))
		b.high = max(b.high, b.figures.high(m.numeral(h)))
	}
	least := widest + 2*cardSide
	aLine := func(room float64) int { return max(int((room+cardApart)/(cardGroup*least+cardApart)), 1) * cardGroup }
	room, columns := width, g.Built.Columns
	if aLine(room) < columns {
		room -= arrowWidth
	}
	lines := ceilDiv(columns, aLine(room))
	groups := ceilDiv(ceilDiv(columns, lines), cardGroup)
	b.aLine = groups * cardGroup
	b.wide = (room - cardApart*float64(groups-1)) / float64(b.aLine)
	b.wide = min(max(b.wide, least), widest+2*cardMostSide)
	const hundredth = 100 // as drawings are written
	b.narrow = min(max(math.Floor(hundredth*(b.wide-2*cardClear)/widest)/hundredth, cardNarrow), 1)
	return b
}

func ceilDiv(a, b int) int { return (a + b - 1) / b }

// cardHead has the row's number, what to count off, and a box to tick.
func (m *maker) cardHead(p sheet.Pen, c layup.Card) {
	p.Dashed(0, 0, p.Width, 0, draw.Hidden)
	number := fmt.Sprint(c.Row + 1)
	size := sheet.FigureSize(cardNumber)
	counts := m.cardCounts(c)
	foot := 11.5 + cardCountLine*float64(len(c.WoodCounts)-1)
	p.Text(0, foot, sheet.Type{Size: sheet.SmallSize}, m.T("cards/row"))
	x := sheet.Width(sheet.Regular, sheet.SmallSize, m.T("cards/row")) + 1.5
	p.Text(x, foot, sheet.Type{Size: size, Face: sheet.Bold, Class: "row"}, number)
	x += sheet.Width(sheet.Bold, size, number) + 5
	done := m.T("cards/laid")
	tick := p.Width - sheet.TickSize - sheet.Width(sheet.Regular, sheet.SmallSize, done) - 2
	p.Text(tick, 6.5, sheet.Type{Size: sheet.SmallSize}, done)
	p.Tick(p.Width-sheet.TickSize, 7)
	room := tick - x - 3
	for i, line := range counts {
		size := armSize()
		if wide := sheet.Width(sheet.Bold, size, line); wide > room {
			size = max(size*(room-0.01)/wide, cardLeastCount) // a hair, so that nothing is cut off
		}
		p.Text(x, 6.2+cardCountLine*float64(i), sheet.Type{Size: size, Face: sheet.Bold, Class: "counts"}, sheet.Fit(sheet.Bold, size, room, line))
	}
	work := m.cardWork(c)
	size = cardSmall
	room = m.cardOf(p, c, foot) - 4 - x
	if wide := sheet.Width(sheet.Regular, size, work); wide > room {
		size = max(size*room/wide, cardLeastCount)
	}
	p.Text(x, foot, sheet.Type{Size: size}, sheet.Fit(sheet.Regular, size, room, work))
}

// cardOf says at the right of a card of which panel and revision it is, and returns where
// that begins: cut apart, each card stands for itself. Of a long name of a group only the
// beginning is there; number, letter and revision stay whole.
func (m *maker) cardOf(p sheet.Pen, c layup.Card, foot float64) float64 {
	const mostGroup = 30.0
	end := p.Width
	write := func(class, text string) {
		p.Text(end, foot, sheet.Type{Size: cardSmall, Face: sheet.Bold, Align: sheet.Right, Class: class}, text)
		end -= sheet.Width(sheet.Bold, cardSmall, text) + 3
	}
	write("card-revision", m.Plan.Revision)
	g := m.Plan.Groups[c.Field]
	name := ""
	if len(g.Built.Panels) > 1 {
		name = m.T("cards/of", "n", c.Panel+1, "letter", string(g.Built.Panels[c.Panel].Letter))
	}
	if len(m.Plan.Groups) > 1 {
		group := sheet.Fit(sheet.Bold, cardSmall, mostGroup, m.groupName(c.Field))
		if name == "" {
			name = group
		} else {
			name = m.T("cards/group", "group", group, "panel", name)
		}
	}
	if name != "" {
		write("card-panel", name)
	}
	return end + 3
}

// cardCounts are the blocks of each height in the row, a line for each wood.
func (m *maker) cardCounts(c layup.Card) []string {
	g := m.Plan.Groups[c.Field].Design
	var woods []string
	for w, counts := range c.WoodCounts {
		var all []string
		for level, n := range counts {
			if n > 0 && !g.Heights[level].IsZero() {
				all = append(all, m.T("cards/count", "n", n, "height", m.Words.Number(g.Heights[level])))
			}
		}
		if len(all) == 0 {
			continue
		}
		text := strings.Join(all, " · ")
		if len(c.WoodCounts) > 1 {
			text = m.T("cards/count-wood", "wood", m.wood(g.Woods()[w]), "counts", text)
		}
		woods = append(woods, text)
	}
	return woods
}

// cardWork is what the row takes: blocks in parts, glue, and loose blocks.
func (m *maker) cardWork(c layup.Card) string {
	var parts []string
	for _, n := range c.Parts {
		parts = append(parts, m.Show(n))
	}
	text := m.T("cards/glue", "n", c.Blocks, "grams", c.WholeGrams())
	if len(parts) > 1 {
		text = m.T("cards/glue-parts", "parts", strings.Join(parts, " + "), "grams", c.WholeGrams())
	}
	if c.Set > 0 {
		text += " · " + m.T("cards/set", "n", c.Set)
	}
	if c.Pull > 0 {
		text += " · " + m.T("cards/pull", "n", c.Pull)
	}
	return text
}

// cardLine is some boxes of a row, from a column up to another.
func (m *maker) cardLine(p sheet.Pen, c layup.Card, first, last int, b boxes) {
	heights := m.Plan.Groups[c.Field].Design.Heights
	at := func(column int) float64 {
		i := column - first
		return float64(i)*b.wide + float64(i/cardGroup)*cardApart
	}
	for column := first; column < last; column++ { // below the boxes' edges
		if c.WoodOf(column) > 0 {
			p.Fill(at(column), cardColumns, b.wide, b.high, draw.Fill(secondShade))
		}
	}
	var numerals []placed
	var dividers [][4]float64
	foot := cardColumns + (b.high+armFigure)/2
	for column := first; column < last; column++ {
		x := at(column)
		n := numeral{whole: "·"}
		if h := heights[c.Levels[column]]; !h.IsZero() {
			n = m.numeral(h)
		}
		numerals = append(numerals, placed{n, x + b.wide/2, cardColumns + b.high/2})
		if (column-first)%cardGroup == 0 {
			end := min(column+cardGroup, last)
			p.Box(x, cardColumns, at(end-1)+b.wide-x, b.high, draw.Visible)
		} else {
			dividers = append(dividers, [4]float64{x, cardColumns, x, cardColumns + b.high})
		}
		if number := column + 1; number%cardGroup == 0 || column == first {
			p.Text(x+b.wide/2, cardColumns-0.6, sheet.Type{Size: armSize(), Align: sheet.Middle, Grey: true, Class: "column"}, fmt.Sprint(number))
		}
	}
	p.Grid(draw.Fine, dividers...)
	b.write(p, numerals)
	for _, end := range c.Ends[:max(len(c.Ends)-1, 0)] { // glue up to here
		if end > first && end <= last {
			x := at(end-1) + b.wide
			p.Line(x, cardColumns-2, x, cardColumns+b.high+0.6, draw.Heavy)
		}
	}
	if last < len(c.Levels) {
		p.Text(p.Width, foot, sheet.Type{Size: 5.5, Face: sheet.Bold, Align: sheet.Right}, "→")
	}
}

// cardMeasure asks for the distance from the start edge.
func (m *maker) cardMeasure(p sheet.Pen, c layup.Card) {
	p.Fill(0, 0, p.Width, cardMeasure-1, draw.Fill("#e4e4e4"))
	text := m.T("cards/measure", "distance", c.Distance, "tolerance", m.within("row"))
	p.Text(2, 4.6, sheet.Type{Face: sheet.Bold}, sheet.Fit(sheet.Bold, sheet.BodySize, p.Width*0.72, text))
	p.Rule(p.Width*0.78, p.Width-2, 5)
}
