package papers

import (
	"slices"

	"blockfield/engine"
	"blockfield/engine/bench"
	"blockfield/engine/draw"
	"blockfield/engine/papers/sheet"
)

// bin is the blocks of one height of one kind of stick.
type bin struct {
	bench.Lot
	bench.HeightCount
}

// bins are all of them, the longest blocks of each kind of stick first, in the
// order in which they are cut.
func (m *maker) bins() []bin {
	var all []bin
	for _, lot := range m.Plan.Bill.Lots {
		for i := range lot.Heights {
			all = append(all, bin{lot, lot.Heights[len(lot.Heights)-1-i]})
		}
	}
	return all
}

// Sizes of a bin label in mm, two beside one another.
const (
	labelHeight = 55
	labelFigure = 24
	labelSwatch = 22
	labelGutter = 4
)

// binLabels are labels to cut out, one for each height.
func (m *maker) binLabels() sheet.Paper {
	bins := m.bins()
	var blocks []sheet.Block
	for i := 0; i < len(bins); i += 2 {
		pair := bins[i:min(i+2, len(bins))]
		blocks = append(blocks, sheet.Piece{Height: labelHeight, Gap: labelGutter, Draw: func(p sheet.Pen) {
			width := (p.Width - labelGutter) / 2
			for j, b := range pair {
				m.binLabel(p.In(float64(j)*(width+labelGutter), 0, width, labelHeight), b)
			}
		}})
	}
	return m.paper("bin-labels", sheet.NoView, blocks...)
}

func (m *maker) binLabel(p sheet.Pen, b bin) {
	const pad = 3
	p.DashedBox(0, 0, p.Width, p.Height, draw.Hidden)
	p.Group("bin-label", func() {
		m.swatch(p, pad, pad, labelSwatch, b.Height)
		n := m.numeral(b.Height)
		f := figures{sheet.FigureSize(labelFigure), beside, 1}
		if room := p.Width - labelSwatch - 3*pad; f.width(n) > room {
			f.size *= room / f.width(n)
		}
		if high := f.high(n); high > labelFigure {
			f.size *= labelFigure / high
		}
		f.write(p, []placed{{n, p.Width - pad - f.width(n)/2, pad + labelFigure/2}})
		p.Text(pad, 35, sheet.Type{Size: 6, Face: sheet.Bold, Class: "need"}, m.T("bins/need", "n", b.Need))
		p.Text(pad, 41, sheet.Type{}, m.T("bins/cut", "n", b.Cut, "spare", b.Spare))
		line := m.T("bins/stick", "wood", capital(m.wood(b.Wood)), "size", b.Size)
		stick := sheet.Type{Size: sheet.SmallSize}
		if len(m.Plan.Bill.Lots) > 1 { // it tells bins of one height apart
			stick = sheet.Type{Size: sheet.BodySize, Face: sheet.Bold}
		}
		p.Text(pad, 46.5, stick, sheet.Fit(stick.Face, stick.Size, p.Width-2*pad, line))
		line = m.T("bins/job", "code", m.Plan.Revision, "title", m.Doc.Design.Title)
		p.Text(pad, 51.5, sheet.Type{Size: sheet.SmallSize}, sheet.Fit(sheet.Regular, sheet.SmallSize, p.Width-2*pad, line))
	})
}

// countCard is where the blocks are counted in, and where somebody says that the
// glue may be opened.
func (m *maker) countCard() sheet.Paper {
	bins := m.bins()
	if len(bins) == 0 {
		return m.paper("count-card", sheet.NoView)
	}
	var blocks []sheet.Block
	for i, lot := range m.Plan.Bill.Lots {
		blocks = append(blocks, sheet.Heading(capital(m.T("cuts/lot", "wood", m.wood(lot.Wood), "size", lot.Size))), m.countTable(i))
	}
	return m.paper("count-card", sheet.NoView, append(blocks,
		sheet.Small(m.T("counts/how")),
		sheet.Notice{Lead: m.T("counts/release"), Text: m.T("counts/release-text"), Blanks: m.signature()},
	)...)
}

// counted is what the record of the job says of a bin; false where nobody has counted.
func (m *maker) counted(b bin) (engine.Count, bool) {
	i := slices.IndexFunc(m.Job.Counts, func(c engine.Count) bool {
		return c.Counted && c.Bin.Wood == b.Wood && c.Bin.Size.Same(b.Size) && c.Bin.Height.Same(b.Height)
	})
	if i < 0 {
		return engine.Count{}, false
	}
	return m.Job.Counts[i], true
}

// signature is who, and when.
func (m *maker) signature() sheet.Blanks {
	return sheet.Blanks{{Label: m.T("blank/name"), Share: 2}, {Label: m.T("blank/date"), Share: 1}}
}

// writingHeight is that of a row to be written into.
const writingHeight = 11

func (m *maker) countTable(lot int) sheet.Block {
	t := sheet.Table{Grid: true, Least: writingHeight, Size: armSize()}
	for _, key := range []string{"height", "need", "spare", "cut", "sawn", "rejects", "good", "short"} {
		t.Columns = append(t.Columns, sheet.Column{Head: m.T("counts/" + key), Right: key == "need" || key == "spare" || key == "cut"})
	}
	l := m.Plan.Bill.Lots[lot]
	var need, spare, cut int
	for i := range l.Heights {
		h := l.Heights[len(l.Heights)-1-i]
		need, spare, cut = need+h.Need, spare+h.Spare, cut+h.Cut
		var sawn, rejects, good, short sheet.Cell // to be written into, where nobody has counted
		if c, ok := m.counted(bin{l, h}); ok {
			sawn.Text, rejects.Text, good.Text, short.Text = m.Show(c.Cut), m.Show(c.Rejects), m.Show(c.Good), m.Show(c.Short)
		}
		t.Rows = append(t.Rows, []sheet.Cell{
			{Text: m.Words.Number(h.Height), Bold: true}, {Text: m.Show(h.Need)}, {Text: m.Show(h.Spare)}, {Text: m.Show(h.Cut)},
			sawn, rejects, good, short,
		})
	}
	t.Rows = append(t.Rows, []sheet.Cell{
		{Text: m.T("counts/all"), Bold: true}, {Text: m.Show(need), Bold: true}, {Text: m.Show(spare), Bold: true}, {Text: m.Show(cut), Bold: true},
		{}, {}, {}, {},
	})
	return t
}
