package sheet

import (
	"fmt"
	"math"
	"slices"

	"blockfield/engine/draw"
)

// slab is a part of a paper that is never split.
type slab struct {
	height float64
	gap    float64 // above it, unless it is the first on its sheet
	draw   func(Pen)
	head   *slab // stands above it again at the top of a sheet
	keep   bool  // stays on one sheet with the next
	fresh  bool  // begins a sheet
}

// Block is a part of a paper. The blocks are those of this package; what is
// drawn by its maker is a Piece.
type Block interface{ slabs(width float64) []slab }

// Gaps above blocks.
const (
	gapHeading = 6
	gapBlock   = 3.5
	gapItem    = 1.2
)

func flow(blocks []Block, width float64) []slab {
	var all []slab
	for _, b := range blocks {
		all = append(all, b.slabs(width)...)
	}
	return all
}

// paginate breaks slabs into sheets of a height.
func paginate(slabs []slab, height float64) [][]slab {
	var pages [][]slab
	var page []slab
	y := 0.0
	turn := func() {
		if len(page) > 0 {
			pages = append(pages, page)
		}
		page, y = nil, 0
	}
	put := func(s slab) {
		if len(page) > 0 {
			y += s.gap
		}
		page = append(page, s)
		y += s.height
	}
	for i := 0; i < len(slabs); i++ {
		s := slabs[i]
		if s.fresh || len(page) > 0 && y+s.gap+together(slabs[i:], height) > height {
			turn()
		}
		if len(page) == 0 && s.head != nil {
			put(*s.head)
		}
		put(s)
	}
	turn()
	return pages
}

// fewest breaks slabs into as few sheets as they take with narrower gaps, which are
// narrowed only where that saves a sheet.
func fewest(slabs []slab, height float64) [][]slab {
	best := paginate(slabs, height)
	for _, share := range narrower()[1:] {
		if pages := paginate(narrow(slabs, share), height); len(pages) < len(best) {
			best = pages
		}
	}
	return best
}

// narrower are shares of the usual gaps, from all of them.
func narrower() []float64 { return []float64{1, 0.8, 0.6, 0.45} }

// narrow is slabs with a share of their gaps.
func narrow(slabs []slab, share float64) []slab {
	closer := slices.Clone(slabs)
	for i := range closer {
		closer[i].gap *= share
	}
	return closer
}

// paired keeps the last two of many together: one by itself at the head of a sheet is
// overlooked.
func paired(all []slab) []slab {
	const many = 3
	if n := len(all); n >= many {
		all[n-2].keep = true
	}
	return all
}

// together is the height of the first slab with those that it has to stay with,
// or of itself where they do not fit on one sheet.
func together(slabs []slab, height float64) float64 {
	sum := slabs[0].height
	for i := 0; slabs[i].keep && i+1 < len(slabs); i++ {
		sum += slabs[i+1].gap + slabs[i+1].height
	}
	if sum > height {
		return slabs[0].height
	}
	return sum
}

// Piece is drawn by its maker, in one piece.
type Piece struct {
	Height float64
	Gap    float64 // above it; 0: the usual one
	Keep   bool    // stays on one sheet with what follows
	Draw   func(Pen)
}

func (b Piece) slabs(float64) []slab {
	gap := b.Gap
	if gap == 0 {
		gap = gapBlock
	}
	return []slab{{height: b.Height, gap: gap, keep: b.Keep, draw: b.Draw}}
}

// Fitted is blocks that depend on the width that they get.
type Fitted func(width float64) []Block

func (f Fitted) slabs(width float64) []slab { return flow(f(width), width) }

// Fresh begins a new sheet.
type Fresh []Block

func (f Fresh) slabs(width float64) []slab {
	all := flow(f, width)
	if len(all) > 0 {
		all[0].fresh = true
	}
	return all
}

// Heading is a line above what follows.
type Heading string

const headingSize = 5.2

func (h Heading) slabs(width float64) []slab {
	lines := TextHeight(Bold, headingSize, width, string(h))
	return []slab{{height: lines, gap: gapHeading, keep: true, draw: func(p Pen) {
		p.Lines(Type{Size: headingSize, Face: Bold}, string(h))
	}}}
}

// Text is a paragraph.
type Text struct {
	Text string
	Type
}

// Say is a paragraph of plain text.
func Say(text string) Text { return Text{Text: text} }

// Small is a paragraph in small type.
func Small(text string) Text { return Text{Text: text, Type: Type{Size: SmallSize}} }

func (t Text) slabs(width float64) []slab {
	lines := Wrap(t.Face, t.size(), width, t.Text)
	all := make([]slab, len(lines))
	for i, line := range lines {
		all[i] = slab{height: Leading(t.size()), draw: func(p Pen) { p.Lines(t.Type, line) }}
	}
	if len(all) > 0 {
		all[0].gap, all[0].keep = gapBlock, len(all) > 1
	}
	return paired(all)
}

// Mark is what stands before the items of a list.
type Mark uint8

// The marks.
const (
	Bullet Mark = iota
	Ticks       // boxes to tick
	Numbers
)

// List is items, each with its mark.
type List struct {
	Mark  Mark
	Size  float64 // of the type; 0: body text
	Items []string
}

func (l List) slabs(width float64) []slab {
	t := Type{Size: l.Size}
	indent := map[Mark]float64{Bullet: 4, Ticks: 7, Numbers: 8}[l.Mark]
	var all []slab
	for i, item := range l.Items {
		height := max(TextHeight(Regular, t.size(), width-indent, item), Leading(t.size()))
		if l.Mark == Ticks {
			height = max(height, TickSize+0.6)
		}
		s := slab{height: height, gap: gapItem, draw: func(p Pen) {
			y := baseline(t.size())
			switch l.Mark {
			case Ticks:
				p.Tick(0, max(y, TickSize-0.4))
			case Numbers:
				p.Text(0, y, Type{Size: t.Size, Face: Bold}, fmt.Sprint(i+1))
			default:
				p.Text(0, y, t, "•")
			}
			p.In(indent, 0, width-indent, p.Height).Lines(t, item)
		}}
		if i == 0 {
			s.gap = gapBlock
		}
		all = append(all, s)
	}
	return paired(all)
}

// Sign is the figure at the left of a box.
type Sign uint8

// The signs, which grey paper tells apart by their shape.
const (
	NoSign Sign = iota
	CautionSign
	StopSign
)

// Notice is a sentence in a box.
type Notice struct {
	Sign   Sign
	Lead   string // before the sentence, in bold
	Text   string
	Blanks Blanks  // to be filled in below it
	Size   float64 // of the type; 0: body text
}

const (
	noticePad  = 2.2
	signSize   = 9
	signColumn = signSize + noticePad
)

func (n Notice) slabs(width float64) []slab {
	inner := width - 2*noticePad
	if n.Sign != NoSign {
		inner -= signColumn
	}
	height := n.height(inner)
	if n.Sign != NoSign {
		height = max(height, signSize)
	}
	return []slab{{height: height + 2*noticePad, gap: gapBlock, draw: func(p Pen) {
		x := noticePad
		weight := draw.Outline
		if n.Sign != NoSign {
			n.Sign.draw(p.In(noticePad, noticePad, signSize, signSize))
			x += signColumn
		}
		if n.Sign == StopSign {
			weight = draw.Heavy
		}
		p.Box(0, 0, width, p.Height, weight)
		n.write(p.In(x, noticePad, inner, height))
	}}}
}

func (n Notice) size() float64 { return Type{Size: n.Size}.size() }

func (n Notice) height(width float64) float64 {
	sum := 0.0
	if n.Lead != "" {
		sum += TextHeight(Bold, n.size(), width, n.Lead)
	}
	sum += TextHeight(Regular, n.size(), width, n.Text)
	if len(n.Blanks) > 0 {
		sum += blankHeight
	}
	return sum
}

func (n Notice) write(p Pen) {
	y := 0.0
	if n.Lead != "" {
		y += p.Lines(Type{Face: Bold, Size: n.Size}, n.Lead)
	}
	y += p.In(0, y, p.Width, p.Height-y).Lines(Type{Size: n.Size}, n.Text)
	if len(n.Blanks) > 0 {
		n.Blanks.draw(p.In(0, y, p.Width, blankHeight))
	}
}

// Blank is a place to write, behind its label. Share is its part of the line.
type Blank struct {
	Label string
	Share float64
}

// Blanks are places to write on one line.
type Blanks []Blank

// blankHeight is room for handwriting.
const blankHeight = 9.5

func (b Blanks) slabs(float64) []slab {
	return []slab{{height: blankHeight, gap: gapItem, draw: b.draw}}
}

func (b Blanks) draw(p Pen) {
	const foot = 2.2
	whole := 0.0
	for _, one := range b {
		whole += one.Share
	}
	free := p.Width - gutter*float64(len(b)-1)
	x := 0.0
	for _, one := range b {
		width := free * one.Share / whole
		label := Fit(Regular, SmallSize, width*0.7, one.Label)
		p.Text(x, p.Height-foot, Type{Size: SmallSize}, label)
		p.Rule(x+Width(Regular, SmallSize, label)+1.5, x+width, p.Height-foot)
		x += width + gutter
	}
}

// draw is a triangle with an exclamation mark, or an octagon with a bar.
func (s Sign) draw(p Pen) {
	size := p.Width
	if s == CautionSign {
		p.Polygon(draw.Outline, draw.Fill("none"), size/2, 0, size, 0.87*size, 0, 0.87*size)
		p.Text(size/2, 0.79*size, Type{Size: 0.72 * size, Face: Bold, Align: Middle}, "!")
		return
	}
	in := size * (1 - math.Sqrt2/2)
	p.Polygon(draw.Outline, Black(), in, 0, size-in, 0, size, in, size, size-in, size-in, size, in, size, 0, size-in, 0, in)
	p.Fill(0.2*size, 0.42*size, 0.6*size, 0.16*size, White())
}

// Beside sets blocks side by side, in one piece. Shares divide the width.
type Beside struct {
	Shares  []float64
	Columns [][]Block
}

const gutter = 6

func (b Beside) slabs(width float64) []slab {
	whole := 0.0
	for _, s := range b.Shares {
		whole += s
	}
	free := width - gutter*float64(len(b.Shares)-1)
	height := 0.0
	columns := make([][]slab, len(b.Columns))
	for i, blocks := range b.Columns {
		columns[i] = flow(blocks, free*b.Shares[i]/whole)
		height = max(height, stacked(columns[i]))
	}
	return []slab{{height: height, gap: gapBlock, draw: func(p Pen) {
		x := 0.0
		for i, slabs := range columns {
			w := free * b.Shares[i] / whole
			y := 0.0
			for j, s := range slabs {
				if j > 0 {
					y += s.gap
				}
				s.draw(p.In(x, y, w, s.height))
				y += s.height
			}
			x += w + gutter
		}
	}}}
}

// stacked is how high slabs are on top of each other.
func stacked(slabs []slab) float64 {
	sum := 0.0
	for i, s := range slabs {
		if i > 0 {
			sum += s.gap
		}
		sum += s.height
	}
	return sum
}

// Drawing is a drawing that also stands as a file of its own.
type Drawing struct {
	Name          string // of the file: "backer"
	Title         string
	View          View // from which side the thing is seen
	Width, Height float64
	Draw          func(Pen)
}

func (d Drawing) slabs(float64) []slab {
	return []slab{{height: d.Height, gap: gapBlock, draw: func(p Pen) {
		d.Draw(p.In((p.Width-d.Width)/2, 0, d.Width, d.Height))
	}}}
}

// SVG is the drawing by itself, at its size.
func (d Drawing) SVG() string {
	c := draw.New(d.Name, draw.Box{Width: d.Width, Height: d.Height})
	c.Class("paper")
	c.ActualSize()
	c.Family(Family + ", sans-serif")
	c.Title(d.Title)
	var out []string
	d.Draw(Pen{canvas: c, out: &out, Width: d.Width, Height: d.Height})
	return c.String()
}
