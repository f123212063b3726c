package papers

import (
	"math"
	"slices"
	"strings"

	"blockfield/engine/check"
	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/wall"
	"blockfield/engine/words"
)

// cleatPaper is the section through panel, cleat and wall, with its sizes.
func (m *maker) cleatPaper() sheet.Paper {
	high := m.either(112, 84)
	var blocks []sheet.Block
	for i, h := range m.Plan.Hangings {
		if h.Means == wall.Stand {
			continue // it hangs on its stand: no strip, no wall
		}
		if len(m.Plan.Groups) > 1 {
			blocks = append(blocks, sheet.Heading(m.groupName(i)))
		}
		blocks = append(blocks,
			sheet.Beside{Shares: []float64{1.1, 1}, Columns: [][]sheet.Block{
				{sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.drawing(m.cleatSection(i, h, width, high))} })},
				{sheet.Text{Text: m.T("cleat/back"), Type: sheet.Type{Face: sheet.Bold}},
					sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.drawing(m.cleatBack(i, h, width, high))} })},
			}},
			m.cleatTable(h), sheet.Small(m.T("hold/section-rule")))
	}
	if len(blocks) > 0 {
		blocks = append(blocks, m.cautions("wall/lift-room", "wall/no-lock")...)
	}
	return m.paper("cleat", sheet.NoView, blocks...)
}

// factRow is a line of a table.
func (m *maker) factRow(f wall.Fact) []sheet.Cell {
	return []sheet.Cell{{Text: m.said(f.Label()), Bold: true}, {Text: m.said(f.Value())}}
}

// cleatTable is the sizes of cleat, strip and lift.
func (m *maker) cleatTable(h wall.Hanging) sheet.Block {
	t := sheet.Table{Size: m.either(sheet.BodySize, 3.7), Columns: []sheet.Column{{}, {Grow: true}}}
	for _, f := range h.CleatFacts() {
		t.Rows = append(t.Rows, m.factRow(f))
	}
	d := h.Design
	at := backOf(h)
	for _, part := range h.Built.Panels[0].Parts {
		if part.Kind == panel.CleatPart || part.Kind == panel.SpacerPart {
			key := "buy/cleat"
			if part.Kind == panel.SpacerPart {
				key = "buy/spacer"
			}
			t.Rows = append(t.Rows, []sheet.Cell{{Text: m.T("part/" + string(part.Kind)), Bold: true}, {Text: m.T(key,
				"height", m.Words.Number(part.Height), "thickness", part.Depth, "length", part.Width, "bevel", words.Degrees(d.Cleat.Bevel))}})
		}
	}
	row := func(key, text string) {
		t.Rows = append(t.Rows, []sheet.Cell{{Text: m.T(key), Bold: true}, {Text: text}})
	}
	row("cleat/place", m.T("cleat/place-value", "top", m.mm(at.top), "foot", m.mm(at.foot), "side", m.mm(at.side)))
	if at.spacer > 0 {
		row("cleat/spacer", m.T("cleat/spacer-value", "up", m.mm(at.spacerUp), "side", m.mm(at.spacerSide)))
	}
	return t
}

// backPlaces is where cleat and spacer lie on the back of a field, in mm: below its top,
// above its foot, and from its sides.
type backPlaces struct {
	wide, tall                   float64 // of the field
	top, foot, side              float64 // the cleat's upper edge, its lower corner at the backer, its ends
	spacer, spacerUp, spacerSide float64 // its height, its lower edge above the field's foot, its ends
}

// backOf measures the back of the first panel of a group: cleat and spacer lie alike on
// all of them.
func backOf(h wall.Hanging) backPlaces {
	built := h.Built.Panels[0]
	at := backPlaces{
		wide: h.Built.FieldWidth.Millimetres(), tall: h.Built.FieldHeight.Millimetres(), foot: h.Halves[0].Foot.Millimetres(),
	}
	bottom := built.FieldTop().Millimetres() - at.tall // of the field, above the panel's foot
	for _, part := range built.Parts {
		switch part.Kind {
		case panel.CleatPart: // its height is the mean of both faces
			bevel := h.Design.Cleat.Thickness.Millimetres() * math.Tan(h.Design.Cleat.Bevel*math.Pi/180)
			at.top, at.side = max(at.foot-part.Height.Millimetres()+bevel/2, 0), (at.wide-part.Width.Millimetres())/2
		case panel.SpacerPart:
			at.spacer, at.spacerUp, at.spacerSide = part.Height.Millimetres(), part.Y.Millimetres()-bottom, (at.wide-part.Width.Millimetres())/2
		}
	}
	return at
}

// cleatBack is the back with cleat and spacer on it, and their distances from its edges.
func (m *maker) cleatBack(i int, h wall.Hanging, width, high float64) sheet.Drawing {
	const left, right, below = 12.0, 20.0, 16.0
	at := backOf(h)
	number := func(mm float64) string { return m.Words.Number(m.mm(mm)) }
	above := max(besideShort(number(at.top)), besideShort(number(at.foot)))
	k := fitted(at.wide, at.tall, width-left-right, high-above-below)
	w, t := k.of(at.wide), k.of(at.tall)
	return sheet.Drawing{
		Name: m.name("back", i), Title: m.T("cleat/back"), View: sheet.Rear, Width: width, Height: above + t + below,
		Draw: func(p sheet.Pen) {
			x := left + (width-left-right-w)/2
			o := p.In(x, above, w+right, t+below)
			o.Box(0, 0, w, t, draw.Outline)
			band := func(side, top, foot float64) {
				o.Fill(k.of(side), k.of(top), w-2*k.of(side), k.of(foot-top), o.Hatch(1, 4))
				o.Box(k.of(side), k.of(top), w-2*k.of(side), k.of(foot-top), draw.Visible)
			}
			band(at.side, at.top, at.foot)
			p.Upright(above, above+k.of(at.top), x+w+7, x+w, number(at.top))
			p.Upright(above, above+k.of(at.foot), x+w+15, x+w, number(at.foot))
			if at.spacer > 0 {
				foot := at.tall - at.spacerUp
				band(at.spacerSide, foot-at.spacer, foot)
				o.Upright(k.of(foot), t, w+7, w, number(at.spacerUp))
			}
			p.Across(x, x+k.of(at.side), above+t+6, above+t, number(at.side))
			m.scaleBar(p.In(0, above+t+10, width, scaleHeight), k)
		},
	}
}

// cleatSection is the upper part of a panel on its strip, the wall at the left; on a wall
// that is out of flat where most is packed between the two.
func (m *maker) cleatSection(i int, h wall.Hanging, width, high float64) sheet.Drawing {
	const left, right = 36.0, 22.0
	above := besideShort(m.Words.Number(h.LiftRoom))
	cleat, backer := h.Design.Cleat.Thickness.Millimetres(), h.Design.Backer.Thickness.Millimetres()
	deep := math.Max(h.Built.Stack.Millimetres(), h.Built.FrameDepth.Millimetres())
	tip, lift := h.TipBelowTop().Millimetres(), h.LiftRoom.Millimetres()
	shown, shim := tip+95, 0.0
	if len(h.Shims()) > 0 {
		shim = h.ShimMM
	}
	k := fitted(deep+shim, shown+lift, width-left-right, high)
	back := k.of(shim) // of the panel, from the wall
	spans := []span{{back, back + k.of(cleat), m.Words.Number(h.Design.Cleat.Thickness)}, {back, back + k.of(deep), m.Words.Number(m.mm(deep))}}
	if shim > 0 {
		spans = append(spans, span{0, back, m.Words.Number(m.mm(shim))})
	}
	below := spansHeight(spans) + scaleHeight
	return sheet.Drawing{
		Name: m.name("cleat", i), Title: m.T("hold/section-title"), Width: width, Height: above + k.of(shown+lift) + below,
		Draw: func(p sheet.Pen) {
			top := above + k.of(lift) // the upper edge of the panel
			at := p.In(left, top, width-left, k.of(shown)+below)
			o := at.In(back, 0, at.Width-back, at.Height)
			p.Fill(left-5, above-4, 5, k.of(shown+lift)+4, p.Hatch(1, 3))
			p.Line(left, above-4, left, top+k.of(shown), draw.Heavy)
			section{maker: m, Pen: o, h: h, k: k, cleat: cleat, backer: backer, tip: tip, shown: shown}.draw()
			if shim > 0 {
				from := tip + cleat*math.Tan(h.Design.Cleat.Bevel*math.Pi/180)
				at.Group("shim", func() { at.Fill(0, k.of(from), back, k.of(stripFoot(tip, shown)-from), sheet.Black()) })
			}
			p.Upright(above, top, left+back+k.of(deep)+16, left+back+k.of(deep)+2, m.Words.Number(h.LiftRoom))
			o.Line(k.of(cleat), k.of(tip), k.of(deep), k.of(tip), draw.Fine) // the dimension begins at the tip itself
			o.Upright(0, k.of(tip), k.of(deep)+8, k.of(deep), m.Words.Number(h.TipBelowTop()))
			m.nameParts(p, left, top, k, h, tip, shim)
			foot := k.of(shown)
			drawSpans(at, foot, spans)
			m.scaleBar(p.In(0, top+foot+below-scaleHeight, width, scaleHeight), k)
		},
	}
}

// besideShort is the room that the figures of an upright dimension take that is too short to
// hold them.
func besideShort(text string) float64 {
	const around = 5
	return sheet.Width(sheet.Regular, armSize(), text) + around
}

// nameParts says at the left of a section which part is which.
func (m *maker) nameParts(p sheet.Pen, left, top float64, k scale, h wall.Hanging, tip, shim float64) {
	type part struct {
		key  string
		x, y float64 // a place in it, mm of the thing
	}
	cleat := h.Design.Cleat.Thickness.Millimetres()
	fieldTop := h.Built.OuterHeight.Sub(h.Built.Panels[0].FieldTop()).Millimetres()
	parts := []part{
		{"part/backer", cleat + h.Design.Backer.Thickness.Millimetres()/2, fieldTop + 8},
		{"part/cleat", cleat / 2, tip - 22}, {"cleat/wall-strip", cleat / 2, tip + 2*cleat},
	}
	if h.Built.Framed {
		parts = append([]part{{"part/frame", cleat / 2, h.Design.Frame.Thickness.Millimetres() / 2}}, parts...)
	}
	if shim > 0 {
		parts = append(parts, part{"part/shim", -shim / 2, tip + 3*cleat})
	}
	last := -10.0
	for _, one := range parts {
		y := max(top+k.of(one.y), last+4.4)
		last = y
		room := left - 9
		p.Text(room, y+1.1, sheet.Type{Size: sheet.SmallSize, Align: sheet.Right}, sheet.Fit(sheet.Regular, sheet.SmallSize, room, capital(m.T(one.key))))
		p.Line(room+1, y, left+k.of(shim+one.x), top+k.of(one.y), draw.Fine)
		p.Circle(left+k.of(shim+one.x), top+k.of(one.y), 0.5, draw.Visible)
	}
}

// section draws the parts of a cleat section, x out from the wall and y down from
// the upper edge of the panel, in mm of the thing.
type section struct {
	*maker
	sheet.Pen
	h                         wall.Hanging
	k                         scale
	cleat, backer, tip, shown float64
}

func (s section) part(x, y, width, height float64, hatch int) {
	end := min(y+height, s.shown)
	if end <= y {
		return
	}
	k := s.k
	s.Fill(k.of(x), k.of(y), k.of(width), k.of(end-y), s.Hatch(hatch, 4))
	s.Box(k.of(x), k.of(y), k.of(width), k.of(end-y), draw.Outline)
}

func (s section) draw() {
	h, k := s.h, s.k
	fieldTop := (h.Built.OuterHeight.Millimetres() - h.Built.Panels[0].FieldTop().Millimetres())
	if h.Built.Framed {
		s.part(0, 0, h.Built.FrameDepth.Millimetres(), h.Design.Frame.Thickness.Millimetres(), 0)
	}
	s.part(s.cleat, fieldTop, s.backer, h.Built.FieldHeight.Millimetres(), 2)
	half := h.Halves[0]
	column := 0
	if len(half.Row.Places) > 0 {
		column = half.Row.Places[0].Column
	}
	for row := range half.Grid.Rows {
		tall := half.HeightsMM[half.Grid.At(row, column)]
		from := fieldTop + float64(row)*half.PitchMM
		if tall > 0 && from < s.shown {
			s.part(s.cleat+s.backer, from, tall, half.BlockMM, 0)
		}
	}
	bevel := s.cleat * math.Tan(h.Design.Cleat.Bevel*math.Pi/180)
	upper := max(s.tip+bevel/2-halfHigh(h), fieldTop)
	s.Polygon(draw.Outline, s.Hatch(1, 4), k.of(0), k.of(upper), k.of(s.cleat), k.of(upper), k.of(s.cleat), k.of(s.tip), k.of(0), k.of(s.tip+bevel))
	foot := stripFoot(s.tip, s.shown)
	s.Polygon(draw.Outline, s.Hatch(2, 3), k.of(0), k.of(s.tip+bevel), k.of(s.cleat), k.of(s.tip), k.of(s.cleat), k.of(foot), k.of(0), k.of(foot))
	for _, row := range half.Row.Rows {
		y := fieldTop + half.RowY(row)
		if y < s.shown {
			s.Line(0, k.of(y), k.of(half.Row.ScrewMM), k.of(y), draw.Heavy)
		}
	}
}

// stripFoot is how far down the strip in the wall is drawn.
func stripFoot(tip, shown float64) float64 { return min(tip+80, shown) }

// halfHigh is the height of the panel's half of the cleat.
func halfHigh(h wall.Hanging) float64 {
	for _, part := range h.Built.Panels[0].Parts {
		if part.Kind == panel.CleatPart {
			return part.Height.Millimetres()
		}
	}
	return 0
}

// hangBlocked lists the Stops that no day of hanging may pass: what holds the panels, their
// lock, their lift room, their stand, and what they cover.
func (m *maker) hangBlocked() []check.WatchOut {
	return slices.DeleteFunc(slices.Clone(m.Plan.WatchOuts), func(w check.WatchOut) bool {
		return w.Level != check.Stop || !strings.HasPrefix(w.Code, "wall/") || !w.Evidence
	})
}

// stands reports whether all panels stand on the floor.
func (m *maker) stands() bool {
	return !slices.ContainsFunc(m.Plan.Hangings, func(h wall.Hanging) bool { return h.Means != wall.Stand })
}

// hangSheet is the day of hanging: the wall with its marks and holes, and the order
// of moves. As long as evidence is asked for it says so, and nothing else.
func (m *maker) hangSheet() sheet.Paper {
	if m.stands() {
		return m.paper("hang-sheet", sheet.NoView) // the stand has a sheet of its own
	}
	if stops := m.hangBlocked(); len(stops) > 0 {
		return below(m.paper("hang-sheet", sheet.NoView, append([]sheet.Block{m.shout(m.T("hanging/not"))}, m.stopNotices(stops)...)...))
	}
	var moves, holds, holes []sheet.Block
	for i, h := range m.Plan.Hangings {
		if h.Means != wall.Stand {
			moves, holds, holes = append(moves, m.hangBlocks(i, h)...), append(holds, m.holdBlock(i, h)), append(holes, m.holeBlocks(i, h)...)
		}
	}
	// The Cautions fill the room below the moves: lists stand in one piece.
	return m.paper("hang-sheet", sheet.Front, slices.Concat(moves, m.cautions("wall/"), holds, holes, []sheet.Block{m.hungBy()})...)
}

// hungBy is who answers for it, as far as the record has it.
func (m *maker) hungBy() sheet.Block {
	by, day, kg := m.Job.Record.Hung.By, m.Job.Record.Hung.Day, 0.0
	for _, h := range m.Plan.Hangings {
		kg = max(kg, h.WeighedKg)
	}
	if by == "" || day == "" {
		return sheet.Blanks{{Label: m.T("hanging/hung-by"), Share: 2}, {Label: m.T("blank/date"), Share: 1}, {Label: m.T("hanging/weighed"), Share: 1}}
	}
	text := m.T("hanging/done", "by", by, "day", day)
	if kg > 0 {
		text += " " + m.T("hanging/done-weighed", "mass", words.Kg(kg))
	}
	return sheet.Notice{Text: text}
}

// shout is a line in the largest type.
func (m *maker) shout(text string) sheet.Block {
	const size = 15
	return sheet.Fitted(func(width float64) []sheet.Block {
		fit := size * min(1, width/sheet.Width(sheet.Bold, size, text))
		return []sheet.Block{sheet.Piece{Height: 22, Draw: func(p sheet.Pen) { p.Text(0, 16, sheet.Type{Size: fit, Face: sheet.Bold}, text) }}}
	})
}

// stopNotices are Stops, each with the line of evidence that clears it.
func (m *maker) stopNotices(stops []check.WatchOut) []sheet.Block {
	var blocks []sheet.Block
	for _, w := range stops {
		n := sheet.Notice{Sign: sheet.StopSign, Text: m.Words.Say(w.Code, w.Args), Blanks: m.evidence()}
		if onlyDesign(w) {
			n.Lead, n.Blanks = m.T("cover/no-way"), nil
		}
		blocks = append(blocks, n)
	}
	return blocks
}

func (m *maker) hangBlocks(i int, h wall.Hanging) []sheet.Block {
	high := m.either(92, 70)
	var blocks []sheet.Block
	if len(m.Plan.Groups) > 1 {
		blocks = append(blocks, sheet.Heading(m.groupName(i)))
	}
	seen := sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.drawing(m.hangDrawing(i, h, width, high))} })
	blocks = append(blocks,
		sheet.Fitted(func(width float64) []sheet.Block {
			if narrow := width * wallShare / (1 + wallShare); wallScale(h, narrow-gutter, high) == wallScale(h, width, high) {
				return []sheet.Block{sheet.Beside{Shares: []float64{wallShare, 1}, Columns: [][]sheet.Block{{seen}, {m.hook(i, h)}}}}
			}
			return []sheet.Block{seen, m.hook(i, h)}
		}),
		sheet.List{Mark: sheet.Ticks, Size: m.atTheWall(), Items: m.day(h)})
	return blocks
}

// holdBlock is what holds one group.
func (m *maker) holdBlock(i int, h wall.Hanging) sheet.Block {
	t := sheet.Table{Size: m.inHand().Size, Columns: []sheet.Column{{}, {Grow: true}}}
	for _, f := range h.HoldFacts() {
		t.Rows = append(t.Rows, m.factRow(f))
	}
	return sheet.Beside{Shares: []float64{1}, Columns: [][]sheet.Block{{sheet.Heading(m.ofGroup(i, m.T("hold/heading"))), t, sheet.Small(m.T("hold/not-counted"))}}}
}

// wallShare is how much wider than what shows the strip a wall is that has it beside itself,
// which it has where it is drawn no smaller for it; gutter is between the two.
const (
	wallShare = 1.5
	gutter    = 6
)

// wallLeft is what stands at the left of the wall, and wallRight at its right.
const (
	wallLeft  = 16.0
	wallRight = 4.0
)

// wallScale is how large a wall is drawn.
func wallScale(h wall.Hanging, width, high float64) scale {
	return fitted(h.Wall.Width.Millimetres(), h.Wall.Height.Millimetres(), width-wallLeft-wallRight, high)
}

// holeBlocks are the list of the holes in the wall for one group.
func (m *maker) holeBlocks(i int, h wall.Hanging) []sheet.Block {
	t := m.holeTable(h)
	if len(t.Rows) == 0 {
		return nil
	}
	blocks := []sheet.Block{sheet.Heading(m.ofGroup(i, m.T("day/holes")))}
	if n := len(t.Rows); m.Words.Units.Bare() == length.InInch || len(h.Holes()) > n { // fractions and several heights take too much room for two columns
		return append(blocks, t)
	}
	return append(blocks, halved(t, 12)...)
}

// atTheWall is the type of the moves of a day: larger for somebody who does it the first
// time.
func (m *maker) atTheWall() float64 {
	const large = 5
	if m.atHome {
		return large
	}
	return m.either(sheet.BodySize, 3.8)
}

// hook shows which way the strip goes on the wall: the other way round nothing catches.
func (m *maker) hook(i int, h wall.Hanging) sheet.Block {
	const high, picture, shown = 26.0, 30.0, 42.0 // mm; of the thing above and below the tip
	const narrow, pad = 100.0, 2.0                // less wide the words stand below the picture
	lead, text := m.T("day/strip-lead"), m.T("day/strip")
	below := func(width float64) float64 {
		return sheet.TextHeight(sheet.Bold, sheet.BodySize, width, lead) + sheet.TextHeight(sheet.Regular, sheet.BodySize, width, text)
	}
	box := func(p sheet.Pen) {
		p.Box(0, 0, p.Width, p.Height, draw.Outline)
		k := fitted(shown, 2*shown, picture-12, high-2)
		d := m.drawing(sheet.Drawing{Name: m.name("strip", i), Title: m.T("day/strip-title"), Width: picture, Height: high - 2, View: sheet.NoView, Draw: func(p sheet.Pen) {
			const x = 8.0
			y := p.Height / 2
			at := func(corners []float64) []float64 {
				all := slices.Clone(corners)
				for n := range all {
					all[n] = k.of(all[n])
					if n%2 == 0 {
						all[n] += x
					} else {
						all[n] = min(max(all[n]+y, 0), p.Height)
					}
				}
				return all
			}
			p.Fill(x-5, 0, 5, p.Height, p.Hatch(1, 3))
			p.Line(x, 0, x, p.Height, draw.Heavy)
			strip, half := h.Hook(shown)
			p.Group("half", func() { p.Polygon(draw.Fine, sheet.White(), at(half)...) })
			p.Group("strip", func() { p.Polygon(draw.Outline, p.Hatch(2, 3), at(strip)...) })
		}})
		d.Draw(p.In(1, 1, picture, high-2))
		at := p.In(picture+4, pad, p.Width-picture-4-pad, high-2*pad)
		if p.Width < narrow {
			at = p.In(pad, high, p.Width-2*pad, p.Height-high)
		}
		y := at.Lines(sheet.Type{Face: sheet.Bold}, lead)
		at.In(0, y, at.Width, at.Height-y).Lines(sheet.Type{}, text)
	}
	return sheet.Fitted(func(width float64) []sheet.Block {
		tall := high
		if width < narrow {
			tall += below(width-2*pad) + pad
		}
		return []sheet.Block{sheet.Piece{Height: tall, Draw: box}}
	})
}

// halved sets a list of more than so many short lines as two lists side by side, so many
// lines at a time as stand on a sheet for sure.
func halved(t sheet.Table, long int) []sheet.Block {
	const aSheet = 16
	if len(t.Rows) <= long {
		return []sheet.Block{t}
	}
	var blocks []sheet.Block
	for rest := t.Rows; len(rest) > 0; {
		half := min(aSheet, (len(rest)+1)/2)
		left, right := t, t
		left.Alike, right.Alike = t.Rows, t.Rows
		left.Rows, rest = rest[:half], rest[half:]
		right.Rows = rest[:min(half, len(rest))]
		rest = rest[len(right.Rows):]
		blocks = append(blocks, sheet.Beside{Shares: []float64{1, 1}, Columns: [][]sheet.Block{{left}, {right}}})
	}
	return blocks
}

// holeTable is each hole from the left corner and from the floor, those above one another
// in one line.
func (m *maker) holeTable(h wall.Hanging) sheet.Table {
	unit, number := m.Words.Unit(), m.Words.Number
	t := sheet.Table{Size: armSize(), Tight: m.close, Columns: []sheet.Column{
		{Width: 8}, {Head: m.T("hanging/hole")}, {Head: m.T("day/along", "unit", unit), Width: 29, Right: true}, {Head: m.T("day/up", "unit", unit)},
		{Head: m.T("hanging/found"), Width: 13, Grow: true},
	}}
	n := 0
	for _, row := range h.HoleRows() {
		numbers := m.Show(n + 1)
		if len(row.Up) > 1 {
			numbers = m.T("hanging/holes", "from", n+1, "to", n+len(row.Up))
		}
		n += len(row.Up)
		up := make([]string, len(row.Up))
		for i, l := range row.Up {
			up[i] = number(l)
		}
		t.Rows = append(t.Rows, []sheet.Cell{{Tick: true}, {Text: numbers}, {Text: number(row.Along), Bold: true}, {Text: m.Words.List(up), Bold: true}, {}})
	}
	return t
}

// day is the day of hanging in the order of the moves.
func (m *maker) day(h wall.Hanging) []string {
	var all []string
	for _, step := range h.Day(m.Doc.Design.Work.Lifting, m.Job.Record.Hung.People) {
		all = append(all, m.said(step))
	}
	return all
}

// hangDrawing is the wall to scale, seen from the room: studs, what is on it, the
// panels, the level line and the holes.
func (m *maker) hangDrawing(i int, h wall.Hanging, width, high float64) sheet.Drawing {
	const left = wallLeft
	w := h.Wall
	wide, tall := w.Width.Millimetres(), w.Height.Millimetres()
	k := wallScale(h, width, high)
	var spans []span
	if l, t := h.Built.Left.Millimetres(), h.Built.TotalWidth.Millimetres(); l >= 0 && l+t <= wide {
		spans = []span{{k.of(l), k.of(l + t), m.Words.Number(h.Built.TotalWidth)}, {0, k.of(l), m.Words.Number(h.Built.Left)}}
	}
	spans = append(spans, span{0, k.of(wide), m.Words.Number(w.Width)})
	below := spansHeight(spans) + scaleHeight
	return sheet.Drawing{
		Name: m.name("wall", i), Title: m.T("hanging/title"), Width: width, Height: k.of(tall) + below + 1,
		Draw: func(p sheet.Pen) {
			o := p.In(left, 1, width-left, k.of(tall)+below)
			floor := k.of(tall)
			m.wallMarks(o, h.Hung, k)
			for _, built := range h.Built.Panels {
				m.onWall(o, k, wide, tall, built.Left.Millimetres(), built.Bottom.Millimetres(), h.Built.OuterWidth.Millimetres(), h.Built.OuterHeight.Millimetres(), draw.Outline)
			}
			if h.Means != wall.Stand {
				for _, b := range h.Bays {
					from, to := k.of(max(b.FromM*1000, 0)), k.of(min(b.ToM*1000, wide))
					if y := floor - k.of(b.TipM*1000); y > 0 && y < floor && to > from {
						o.Line(from, y, to, y, draw.Heavy)
					}
				}
			}
			for _, hole := range h.Holes() {
				x, y := k.of(hole.XM*1000), floor-k.of(hole.YM*1000)
				if x > 0 && x < k.of(wide) && y > 0 && y < floor {
					o.Circle(x, y, 0.8, draw.Visible)
				}
			}
			o.Line(0, floor, k.of(wide), floor, draw.Heavy)
			drawSpans(o, floor, spans)
			if tip := h.Bays[0].TipM * 1000; h.Means != wall.Stand && tip > 0 && tip < tall {
				p.Upright(1+floor-k.of(tip), 1+floor, left-sheet.DimensionRow, left, m.Words.Number(m.mm(tip)))
			}
			m.scaleBar(o.In(0, floor+below-scaleHeight, k.of(wide)+3, scaleHeight), k)
		},
	}
}

// wallMarks are the wall itself, its studs and what is on it.
func (m *maker) wallMarks(o sheet.Pen, h wall.Hung, k scale) {
	wide, tall := h.Wall.Width.Millimetres(), h.Wall.Height.Millimetres()
	o.Box(0, 0, k.of(wide), k.of(tall), draw.Visible)
	for _, x := range h.StudPlaces() {
		if mm := x.Millimetres(); mm > 0 && mm < wide {
			o.Dashed(k.of(mm), 0, k.of(mm), k.of(tall), draw.Hidden)
		}
	}
	for _, obstacle := range h.Wall.Obstacles {
		x, y, w, t := obstacle.X.Millimetres(), obstacle.Y.Millimetres(), obstacle.Width.Millimetres(), obstacle.Height.Millimetres()
		if x < 0 || y < 0 || x+w > wide || y+t > tall {
			continue
		}
		top := k.of(tall - y - t)
		o.Fill(k.of(x), top, k.of(w), k.of(t), o.Hatch(1, 3))
		o.Box(k.of(x), top, k.of(w), k.of(t), draw.Visible)
	}
}

// onWall draws a rectangle on a wall, y up from the floor, where it lies on it.
func (m *maker) onWall(o sheet.Pen, k scale, wide, tall, x, y, w, t float64, weight draw.Weight) {
	if x >= 0 && y >= 0 && x+w <= wide && y+t <= tall {
		o.Box(k.of(x), k.of(tall-y-t), k.of(w), k.of(t), weight)
	}
}
