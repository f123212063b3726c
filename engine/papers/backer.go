package papers

import (
	"math"
	"slices"

	"blockfield/engine/bench"
	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/measure"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// sheetCutting says how the backers come out of their sheets. A part may lie on its side
// there: it is no view of a panel.
func (m *maker) sheetCutting() sheet.Paper {
	var blocks []sheet.Block
	for i, s := range m.Plan.Bill.Sheets {
		blocks = append(blocks, sheet.Heading(capital(m.T("cuts/board", "sheet", m.wood(s.Sheet), "thickness", s.Thickness))))
		if len(s.Backers) > 0 {
			blocks = append(blocks, m.backerTable(s))
		}
		blocks = append(blocks, m.cautions("bench/sheet")...)
		for j, l := range s.Plan.Layouts {
			blocks = append(blocks, m.sheetLayout(i, j, s, l))
		}
		if text := m.rests(s); text != "" {
			blocks = append(blocks, sheet.Say(text))
		}
		if len(s.Plan.Layouts) > 0 {
			blocks = append(blocks, sheet.Small(m.T("cuts/sheet-edges")))
		}
	}
	return m.paper("backer", sheet.NoView, blocks...)
}

// backerSheet says how the backers are marked before the first row.
func (m *maker) backerSheet() sheet.Paper {
	var blocks []sheet.Block
	for i := range m.Plan.Groups {
		blocks = append(blocks, m.markUp(i)...)
	}
	return m.paper("backer", sheet.Front, blocks...)
}

// backerTable lists the sizes of one board, as they are cut.
func (m *maker) backerTable(s bench.SheetNeed) sheet.Block {
	t := sheet.Table{Columns: []sheet.Column{
		{Width: 8}, {Head: m.T("backer/count"), Right: true}, {Head: m.T("backer/cut"), Grow: true}, {Head: m.T("backer/diagonal"), Grow: true},
	}}
	for _, k := range s.Backers {
		size := m.T("cuts/backer", "width", m.Words.Number(k.Width), "height", k.Height)
		t.Rows = append(t.Rows, []sheet.Cell{{Tick: true}, {Text: m.Show(k.Count)}, {Text: size, Bold: true, Size: armSize()}, {Text: m.Show(m.diagonal(k.Width, k.Height)), Size: armSize()}})
	}
	return t
}

// rests is what is left over of the sheets of a board and worth keeping; empty: nothing.
func (m *maker) rests(s bench.SheetNeed) string {
	var all []words.Phrase
	for _, r := range s.Rests {
		all = append(all, words.Phrase{Key: "cuts/rest-of", Args: words.Args{"n": r.Count, "width": m.Words.Number(r.Width), "length": r.Length}})
	}
	if len(all) == 0 {
		return ""
	}
	return m.T("cuts/rests", "rests", all)
}

// diagonal is from corner to corner of a rectangle, to the nearest tenth of a mm.
func (m *maker) diagonal(width, height length.Length) length.Length {
	mm := math.Hypot(width.Millimetres(), height.Millimetres())
	const stepNM = 100_000
	return length.Nanometres(int64(math.Round(mm*1e6/stepNM))*stepNM, width.Notation())
}

// sheetLayout draws a sheet lying on its long side, with the parts that come out
// of it; the thick edges are those of the factory.
func (m *maker) sheetLayout(i, j int, s bench.SheetNeed, l cut.SheetLayout) sheet.Block {
	across, along := s.Size(l)
	caption := m.T("cuts/sheet-alike", "n", l.Count)
	if l.There > 0 {
		caption = m.T("cuts/sheet-own", "n", l.Count, "width", m.Words.Number(across), "length", along)
	}
	return sheet.Fitted(func(width float64) []sheet.Block {
		const high, below = 60, 12
		k := fitted(along.Millimetres(), across.Millimetres(), width, high)
		w, h := k.of(along.Millimetres()), k.of(across.Millimetres())
		up := func(y, _ float64) float64 { return y }
		if m.start() == design.BottomEdge { // parts lie at the edge that their rows begin at
			up = func(y, deep float64) float64 { return h - y - deep }
		}
		d := sheet.Drawing{
			Name: m.name("sheet", i, j), Title: m.T("cuts/sheet-title", "n", len(l.Parts)), Width: width, Height: h + below,
			Draw: func(p sheet.Pen) {
				p.Box(0, 0, w, h, draw.Visible)
				for _, part := range l.Parts {
					x, y := k.of(float64(part.Y)/1e6), k.of(float64(part.X)/1e6)
					long, deep := k.of(float64(part.Length)/1e6), k.of(float64(part.Width)/1e6)
					y = up(y, deep)
					p.Box(x, y, long, deep, draw.Outline)
					back := s.Backers[part.Part]
					text := m.T("cuts/backer", "width", m.Words.Number(back.Width), "height", m.Words.Number(back.Height))
					size := min(armSize(), max(armSize()*(long-2)/sheet.Width(sheet.Regular, armSize(), text), sheet.SmallSize))
					p.Text(x+long/2, y+deep/2+0.36*size, sheet.Type{Size: size, Align: sheet.Middle}, sheet.Fit(sheet.Regular, size, max(long-1.8, 0), text))
				}
				for _, r := range l.Rests {
					if bench.WorthKeeping(r) {
						deep := k.of(float64(r.Width) / 1e6)
						p.DashedBox(k.of(float64(r.Y)/1e6), up(k.of(float64(r.X)/1e6), deep), k.of(float64(r.Length)/1e6), deep, draw.Hidden)
					}
				}
				if l.There == 0 {
					p.Line(0, up(0, 0), w, up(0, 0), draw.Heavy)
					p.Line(0, 0, 0, h, draw.Heavy)
				}
				p.Text(0, h+4.5, sheet.Type{Size: sheet.SmallSize}, sheet.Fit(sheet.Regular, sheet.SmallSize, width, caption))
				m.scaleBar(p.In(0, h+6, width, scaleHeight), k)
			},
		}
		return []sheet.Block{m.drawing(d)}
	})
}

// drawing keeps a drawing for a file of its own.
func (m *maker) drawing(d sheet.Drawing) sheet.Drawing {
	m.keep(m.headed(d))
	return d
}

// sketch keeps a drawing that is of no job, as it is.
func (m *maker) sketch(d sheet.Drawing) sheet.Drawing {
	m.keep(d)
	return d
}

func (m *maker) keep(d sheet.Drawing) {
	if !slices.ContainsFunc(m.drawings, func(had sheet.Drawing) bool { return had.Name == d.Name }) {
		m.drawings = append(m.drawings, d)
	}
}

// headed is a drawing as a file by itself: below a line that says of which job and
// revision it is, and from which side it is seen. A rear view stands below a black strip,
// as on paper.
func (m *maker) headed(d sheet.Drawing) sheet.Drawing {
	const strip, line, least = 6.0, 6.0, 60.0
	head := line
	if d.View != sheet.NoView {
		head += strip
	}
	out := d
	out.Width, out.Height = max(d.Width, least), d.Height+head
	out.Draw = func(p sheet.Pen) {
		title := m.Words.Given(m.Doc.Design.Title)
		code := sheet.Type{Size: sheet.SmallSize, Face: sheet.Bold, Class: "revision"}
		p.Text(0, 4, code, m.Plan.Revision)
		x := sheet.Width(sheet.Bold, sheet.SmallSize, m.Plan.Revision) + 2
		p.Text(x, 4, sheet.Type{Size: sheet.SmallSize}, sheet.Fit(sheet.Regular, sheet.SmallSize, p.Width-x, title))
		if d.View != sheet.NoView {
			view, white := m.T("papers/front"), d.View == sheet.Rear
			if white {
				view = m.T("papers/rear")
				p.Fill(0, line, p.Width, strip-1, sheet.Black())
			}
			p.Box(0, line, p.Width, strip-1, draw.Outline)
			p.Text(p.Width/2, line+3.7, sheet.Type{Size: sheet.SmallSize, Face: sheet.Bold, Align: sheet.Middle, White: white, Class: "view"},
				sheet.Fit(sheet.Bold, sheet.SmallSize, p.Width-2, view))
		}
		d.Draw(p.In((p.Width-d.Width)/2, head, d.Width, d.Height))
	}
	return out
}

// markUp is the drawing of a backer with its start corner, and the steps to mark
// it.
func (m *maker) markUp(i int) []sheet.Block {
	g := m.Plan.Groups[i]
	name := m.T("backer/mark")
	if len(m.Plan.Groups) > 1 {
		name = m.T("cards/group", "group", m.groupName(i), "panel", name)
	}
	number := m.Words.Number
	w, h := bench.CutBacker(g.Built.FieldWidth, m.Doc.Design.Bench), bench.CutBacker(g.Built.FieldHeight, m.Doc.Design.Bench)
	steps := sheet.List{Mark: sheet.Ticks, Items: []string{
		m.T("backer/step-square", "diagonal", m.diagonal(w, h), "most", m.within("diagonals")),
		m.T("backer/step-start", "edge", m.T("edge/"+m.start())),
		m.T("backer/step-field", "width", number(g.Built.FieldWidth), "height", g.Built.FieldHeight),
		m.T("backer/step-rows", "every", measure.Every),
		m.T("backer/step-rear"),
	}}
	// A list of steps by itself on a further sheet is overlooked.
	one := sheet.Beside{Shares: []float64{1}, Columns: [][]sheet.Block{{sheet.Fitted(func(width float64) []sheet.Block {
		return []sheet.Block{m.drawing(m.backerDrawing(i, width))}
	}), steps}}}
	return []sheet.Block{sheet.Heading(name), one}
}

// backerDrawing is a backer seen from the front: as cut, with the field in it, the
// start corner, and a line at every fifth row.
func (m *maker) backerDrawing(i int, width float64) sheet.Drawing {
	g := m.Plan.Groups[i]
	const left, below, high = 16, 16, 94
	marks := measure.Marks(g.Built.Rows, g.Design.Block.Size, g.Design.Block.Slack)
	rows := m.T("backer/rows")
	right, count, first := 0.0, 0.0, 0.0
	for _, mark := range marks {
		count = max(count, sheet.Width(sheet.Regular, armSize(), m.Show(mark.Row)))
		first = count + sheet.Width(sheet.Regular, rowLabel, rows) + 3*rowLabelGap
		right = max(right, sheet.Width(sheet.Bold, armSize(), m.Words.Number(mark.Distance)))
	}
	right += first + 0.5
	w, h := bench.CutBacker(g.Built.FieldWidth, m.Doc.Design.Bench), bench.CutBacker(g.Built.FieldHeight, m.Doc.Design.Bench)
	k := fitted(w.Millimetres(), h.Millimetres(), width-left-right, high)
	cutW, cutH := k.of(w.Millimetres()), k.of(h.Millimetres())
	fieldW, fieldH := k.of(g.Built.FieldWidth.Millimetres()), k.of(g.Built.FieldHeight.Millimetres())
	// The edge that the rows begin at, and which way they go from it.
	edge, into := 0.0, 1.0
	if m.start() == design.BottomEdge {
		edge, into = cutH, -1
	}
	return sheet.Drawing{
		Name: m.name("backer", i), Title: m.T("backer/title"), View: sheet.Front, Width: width, Height: cutH + below + 2,
		Draw: func(p sheet.Pen) {
			o := p.In(left, 2, width-left, cutH+below)
			o.Box(0, 0, cutW, cutH, draw.Outline)
			o.DashedBox(0, edge+min(0, into*fieldH), fieldW, fieldH, draw.Hidden)
			o.Line(0, edge, cutW, edge, draw.Heavy)
			o.Line(0, 0, 0, cutH, draw.Heavy)
			o.Polygon(draw.Fine, sheet.Black(), 1, edge+into, 9, edge+into, 1, edge+9*into)
			start, bold := m.T("backer/start"), sheet.Type{Face: sheet.Bold}
			if long := sheet.Width(sheet.Bold, sheet.BodySize, start); 12+long < cutW {
				o.Text(11, edge+5*into+1.5, bold, start)
			} else { // along the left edge
				o.TextUp(5, max(edge+11*into, edge+into*(11+long*(into+1)/2)), bold, start)
			}
			labelled := -leastLabels
			for _, mark := range marks {
				y := edge + into*k.of(mark.Distance.Millimetres())
				o.Line(0, y, fieldW, y, draw.Fine)
				if at := k.of(mark.Distance.Millimetres()); at-labelled >= leastLabels {
					labelled = at
					foot := min(max(y+armFigure/2, armFigure), cutH)
					o.Text(cutW+rowLabelGap+count, foot, sheet.Type{Size: armSize(), Align: sheet.Right, Class: "row-number"}, m.Show(mark.Row))
					o.Text(cutW+1.5*rowLabelGap+count, foot, sheet.Type{Size: rowLabel}, rows)
					o.Text(cutW+first, foot, sheet.Type{Size: armSize(), Face: sheet.Bold, Class: "row-distance"}, m.Words.Number(mark.Distance))
				}
			}
			o.Across(0, cutW, cutH+sheet.DimensionRow, cutH, m.Words.Number(w))
			p.Upright(2, 2+cutH, left-sheet.DimensionRow, left, m.Words.Number(h))
			m.scaleBar(p.In(left, cutH+2+below-scaleHeight, width-left, scaleHeight), k)
		},
	}
}

// Size of the word beside the number of rows, and their distance from the backer, in mm.
const rowLabel, rowLabelGap = 2.8, 1.5

// leastLabels is how far apart the labels of rows stand at least, in mm.
const leastLabels = 7.0

// trimSheet says what comes off which edge, and that the corners are square.
func (m *maker) trimSheet() sheet.Paper {
	blocks := []sheet.Block{sheet.Say(m.T("trim/set-from", "h", int(bench.GlueSetHours(m.Doc.Design.Bench.Temperature)+0.5), "edge", m.T("edge/"+m.start())))}
	high := m.either(62, 42)
	for i, g := range m.Plan.Groups {
		if len(m.Plan.Groups) > 1 {
			blocks = append(blocks, sheet.Heading(m.groupName(i)))
		}
		t := sheet.Table{Least: 9, Columns: []sheet.Column{
			{Width: 8}, {Head: m.T("trimming/edge")}, {Head: m.T("trimming/off")}, {Head: m.T("trimming/depth"), Grow: true}, {Head: m.T("trimming/measured"), Width: 34},
		}}
		for _, e := range m.Plan.Bill.Groups[i].TrimsFrom(m.start()) {
			off, depth := m.trim(i, e)
			t.Rows = append(t.Rows, []sheet.Cell{{Tick: true}, {Text: capital(m.T("edge/" + string(e.Edge))), Bold: true}, {Text: off, Size: armSize()}, {Text: depth}, {}})
		}
		number := m.Words.Number
		blocks = append(blocks, sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.drawing(m.trimDrawing(i, width, high))} }), t,
			sheet.Text{Type: sheet.Type{Size: armSize()}, Text: m.T("trimming/to", "width", number(g.Built.FieldWidth), "height", g.Built.FieldHeight, "diagonal", m.diagonal(g.Built.FieldWidth, g.Built.FieldHeight))},
			m.trimRecord(i))
	}
	blocks = append(blocks, m.cautions("bench/saw-reach")...)
	return m.paper("trim", sheet.Front, blocks...)
}

// trimDrawing is a panel seen from the front with what comes off it hatched; the
// thick edges stay.
func (m *maker) trimDrawing(i int, width, high float64) sheet.Drawing {
	const left, right, below = 34, 34, 12
	g := m.Plan.Groups[i]
	k := fitted(g.Built.FieldWidth.Millimetres(), g.Built.FieldHeight.Millimetres(), width-left-right, high)
	w, h := k.of(g.Built.FieldWidth.Millimetres()), k.of(g.Built.FieldHeight.Millimetres())
	return sheet.Drawing{
		Name: m.name("trim", i), Title: m.T("trimming/title"), Width: width, Height: h + 2*below,
		Draw: func(p sheet.Pen) {
			p.Box(left, below, w, h, draw.Visible)
			for _, e := range m.Plan.Bill.Groups[i].TrimsFrom(m.start()) {
				at := placeOf(e.Edge, w, h)
				if e.Sawn() {
					strip := p.In(left+at.strip[0], below+at.strip[1], at.strip[2], at.strip[3])
					strip.Fill(0, 0, strip.Width, strip.Height, strip.Hatch(1, 3))
					strip.DashedBox(0, 0, strip.Width, strip.Height, draw.Hidden)
					p.Text(left+at.x, below+at.y, sheet.Type{Size: armSize(), Face: sheet.Bold, Align: at.align}, m.Show(m.offShown(i, e)))
				}
				if e.Factory {
					p.Line(left+at.line[0], below+at.line[1], left+at.line[2], below+at.line[3], draw.Heavy)
				}
			}
		},
	}
}

// edgePlace is where an edge of a panel lies in a drawing of w by h: its line from
// end to end, the strip that comes off beyond it, and where that is written.
type edgePlace struct {
	line, strip [4]float64
	x, y        float64
	align       sheet.Align
}

func placeOf(e bench.Edge, w, h float64) edgePlace {
	const strip, off = 3.5, 1.5
	switch e {
	case bench.TopEdge:
		return edgePlace{[4]float64{0, 0, w, 0}, [4]float64{0, -strip, w, strip}, w / 2, -strip - off, sheet.Middle}
	case bench.BottomEdge:
		return edgePlace{[4]float64{0, h, w, h}, [4]float64{0, h, w, strip}, w / 2, h + strip + off + armFigure, sheet.Middle}
	case bench.LeftEdge:
		return edgePlace{[4]float64{0, 0, 0, h}, [4]float64{-strip, 0, strip, h}, -strip - off, h / 2, sheet.Right}
	default:
		return edgePlace{[4]float64{w, 0, w, h}, [4]float64{w, 0, strip, h}, w + strip + off, h / 2, sheet.Left}
	}
}

// trim says what comes off an edge, and through how much.
func (m *maker) trim(group int, e bench.Trim) (off, depth string) {
	switch {
	case e.Factory:
		return m.T("trim/factory"), ""
	case !e.Sawn():
		return m.T("trim/nothing"), ""
	}
	key := "trim/depth"
	if !e.Reached {
		key = "trim/too-deep"
	}
	depth = m.T(key, "depth", e.Depth)
	if e.Bare {
		depth += " " + m.T("trim/bare")
	}
	return m.T("trim/off", "off", m.offShown(group, e)), depth
}

// asShown is a length as it is printed, so that sums of printed lengths are right: inches
// are rounded to what the reader's rule shows.
func (m *maker) asShown(l length.Length) length.Length {
	if m.Words.Units.Bare() != length.InInch {
		return l
	}
	const mmPerInch, sixtyFourths = 25.4, 64
	steps := 16.0
	if m.Words.Units == length.Inch32 {
		steps = 32
	}
	return length.Sixtyfourths(int64(math.Round(l.Millimetres()/mmPerInch*steps) * sixtyFourths / steps))
}

// offShown is what comes off an edge: what is between the printed sizes before and after.
func (m *maker) offShown(group int, e bench.Trim) length.Length {
	field := m.Plan.Groups[group].Built.FieldWidth
	if e.Edge == bench.TopEdge || e.Edge == bench.BottomEdge {
		field = m.Plan.Groups[group].Built.FieldHeight
	}
	cut := bench.CutBacker(field, m.Doc.Design.Bench)
	if !cut.Sub(field).Same(e.Off) {
		return e.Off
	}
	return m.asShown(cut).Sub(m.asShown(field))
}

// trimRecord is where each panel's sizes are written after trimming.
func (m *maker) trimRecord(group int) sheet.Block {
	t := sheet.Table{Grid: true, Least: 9, Columns: []sheet.Column{
		{Head: m.T("trimming/panel")}, {Head: m.T("trimming/width"), Grow: true}, {Head: m.T("trimming/height"), Grow: true},
		{Head: m.T("trimming/diagonal-one"), Grow: true}, {Head: m.T("trimming/diagonal-two"), Grow: true},
	}}
	for i := range m.Plan.Groups[group].Built.Panels {
		t.Rows = append(t.Rows, []sheet.Cell{{Text: m.Show(i + 1), Bold: true}, {}, {}, {}, {}})
	}
	return t
}
