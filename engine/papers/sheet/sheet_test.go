package sheet

import (
	"encoding/xml"
	"fmt"
	"io"
	"strings"
	"testing"

	"blockfield/engine/draw"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func frame() Frame {
	return Frame{
		Job: "A job", Code: "ABC123", CodeLabel: "Revision", Units: "mm", Bar: "100 mm", Front: "FRONT", Rear: "REAR",
		Number: func(n, of int) string { return fmt.Sprintf("%d of %d", n, of) },
	}
}

// texts are the texts of a drawing in their order, each with the class of its
// element.
func texts(t testing.TB, svg string) (all []string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(svg))
	in := false
	for {
		token, err := d.Token()
		if err == io.EOF {
			return all
		}
		require.NoError(t, err)
		switch x := token.(type) {
		case xml.StartElement:
			in = x.Name.Local == "text"
		case xml.EndElement:
			in = false
		case xml.CharData:
			if in {
				all = append(all, string(x))
			}
		}
	}
}

func block(height, gap float64) slab {
	return slab{height: height, gap: gap, draw: func(Pen) {}}
}

// heights are the heights of the slabs, sheet by sheet.
func heights(pages [][]slab) [][]float64 {
	var all [][]float64
	for _, p := range pages {
		var page []float64
		for _, s := range p {
			page = append(page, s.height)
		}
		all = append(all, page)
	}
	return all
}

// Sheets of 100, by hand.
func TestPaginate(t *testing.T) {
	a, b := block(60, 5), block(35, 5)
	assert.Equal(t, [][]float64{{60, 35}}, heights(paginate([]slab{a, b}, 100)), "60 + 5 + 35 fills it")
	assert.Equal(t, [][]float64{{60}, {35}}, heights(paginate([]slab{a, b}, 99.9)), "a hair too much")
	assert.Equal(t, [][]float64{{95}, {5}}, heights(paginate([]slab{block(95, 9), block(5, 1)}, 100)), "no gap above the first")
	assert.Empty(t, paginate(nil, 100))

	heading := block(10, 0)
	heading.keep = true
	assert.Equal(t, [][]float64{{60, 20}, {10, 20}},
		heights(paginate([]slab{block(60, 0), block(20, 0), heading, block(20, 0)}, 100)), "a heading goes along with what follows")
	assert.Equal(t, [][]float64{{60, 10}, {95}},
		heights(paginate([]slab{block(60, 0), heading, block(95, 0)}, 100)), "unless they do not go on one sheet together")

	fresh := block(10, 0)
	fresh.fresh = true
	assert.Equal(t, [][]float64{{10}, {10, 20}}, heights(paginate([]slab{block(10, 0), fresh, block(20, 0)}, 100)))
	assert.Equal(t, [][]float64{{10}}, heights(paginate([]slab{fresh}, 100)), "no empty sheet before the first")
}

// A paper that may stand below another does so where all of it fits with its title, and only
// where no strip at the head says something else of its drawings.
func TestPapersShareASheet(t *testing.T) {
	of := func(name string, view View, high float64) Paper {
		return Paper{Name: name, Title: "Title of " + name, View: view, Below: true, Blocks: []Block{Piece{Height: high, Draw: func(Pen) {}}}}
	}
	names := func(papers ...Paper) (all [][]string) {
		for _, s := range Layout("t", A4(), frame(), papers, Span{}) {
			assert.Empty(t, s.Overflow)
			all = append(all, append([]string{s.Paper}, s.Also...))
			for _, name := range append([]string{s.Paper}, s.Also...) {
				assert.Equal(t, 1, strings.Count(s.SVG, ">Title of "+name+"<"), name)
			}
		}
		return all
	}
	together, apart := [][]string{{"a", "b"}}, [][]string{{"a"}, {"b"}}
	assert.Equal(t, together, names(of("a", NoView, 120), of("b", NoView, 90)))
	assert.Equal(t, apart, names(of("a", NoView, 120), of("b", NoView, 120)), "too high")
	assert.Equal(t, [][]string{{"a", "b", "c"}}, names(of("a", NoView, 60), of("b", NoView, 60), of("c", NoView, 60)))
	assert.Equal(t, together, names(of("a", Front, 60), of("b", Front, 60)))
	assert.Equal(t, apart, names(of("a", Front, 60), of("b", Rear, 60)))
	assert.Equal(t, apart, names(of("a", Front, 60), of("b", NoView, 60)))
	plain := of("b", NoView, 60)
	plain.Plain = true
	assert.Equal(t, together, names(of("a", Rear, 60), plain))
	assert.Equal(t, together, names(of("a", NoView, 60), of("b", Rear, 60)))
	strip := Layout("t", A4(), frame(), []Paper{of("a", NoView, 60), of("b", Rear, 60)}, Span{})[0].SVG
	assert.Contains(t, strip, frame().Rear, "its own strip")
	other := of("b", NoView, 60)
	other.Code = "OTHER1"
	assert.Equal(t, apart, names(of("a", NoView, 60), other), "of another revision")
	other = of("b", NoView, 60)
	other.Below = false
	assert.Equal(t, apart, names(of("a", NoView, 60), other))
	other = of("b", NoView, 60)
	other.Blocks = []Block{Fresh(other.Blocks)}
	assert.Equal(t, apart, names(of("a", NoView, 60), other), "it begins a sheet")
}

// The last row of a table is never alone at the head of a sheet.
func TestLastRowsStayTogether(t *testing.T) {
	f := A4()
	for rows := 3; rows < 120; rows++ {
		table := Table{Columns: []Column{{Head: "Head"}, {Grow: true}}}
		for i := range rows {
			table.Rows = append(table.Rows, Row(fmt.Sprint(i), "x"))
		}
		pages := paginate(flow([]Block{table}, f.BodyWidth()), f.bodyHeight(NoView))
		last := len(pages[len(pages)-1])
		assert.GreaterOrEqual(t, last, 3, "%d rows: head and two", rows)
	}
}

// The head of a table stands again on each sheet, a row is never split, and each row
// is there once.
func TestTableOverSheets(t *testing.T) {
	table := Table{Columns: []Column{{Head: "Head"}, {Head: "What", Grow: true}}}
	const rows = 90
	for i := range rows {
		table.Rows = append(table.Rows, Row(fmt.Sprint("row", i), strings.Repeat("some words ", i%9)))
	}
	for _, f := range Formats() {
		sheets := Layout("t", f, frame(), []Paper{{Name: "t", Title: "Table", Blocks: []Block{table}}}, Span{})
		require.Greater(t, len(sheets), 2)
		var seen []string
		for i, s := range sheets {
			assert.Empty(t, s.Overflow)
			all := texts(t, s.SVG)
			assert.Contains(t, all, "Head", "sheet %d", i+1)
			assert.Contains(t, all, "ABC123", "sheet %d", i+1)
			for _, text := range all {
				if strings.HasPrefix(text, "row") {
					seen = append(seen, text)
				}
			}
		}
		require.Len(t, seen, rows, f.Name)
		for i, text := range seen {
			assert.Equal(t, fmt.Sprint("row", i), text)
		}
	}
}

// What leaves its place is told: on the sheet, in an area of it, and in text that
// is too long.
func TestOverflowIsTold(t *testing.T) {
	of := func(do func(Pen)) []string {
		s := Layout("o", A4(), frame(), []Paper{{Blocks: []Block{Piece{Height: 20, Draw: do}}}}, Span{})
		return s[0].Overflow
	}
	assert.Empty(t, of(func(p Pen) { p.Text(0, 10, Type{}, "short"); p.Box(0, 0, p.Width, 20, draw.Outline) }))
	for name, do := range map[string]func(Pen){
		"long text":  func(p Pen) { p.Text(0, 10, Type{}, strings.Repeat("long ", 40)) },
		"right":      func(p Pen) { p.Text(3, 10, Type{Align: Right}, "long") },
		"above":      func(p Pen) { p.Text(0, 1, Type{}, "high") },
		"below":      func(p Pen) { p.Line(0, 0, 0, 21, draw.Fine) },
		"rectangle":  func(p Pen) { p.Box(0, 0, p.Width+2, 5, draw.Fine) },
		"circle":     func(p Pen) { p.Circle(2, 2, 3, draw.Fine) },
		"polygon":    func(p Pen) { p.Polygon(draw.Fine, White(), 0, 0, -3, 4) },
		"grid":       func(p Pen) { p.Grid(draw.Fine, [4]float64{0, 0, 0, 22}) },
		"many":       func(p Pen) { p.Many(Type{}, 1, "", func(put func(x, y float64, text string)) { put(0, 30, "x") }) },
		"field":      func(p Pen) { p.Cells(0, 0, draw.Field{Columns: 9, Rows: 9, Pitch: 3, Levels: make([]uint8, 81)}, 0) },
		"area":       func(p Pen) { p.In(0, 0, 10, 30) },
		"inner area": func(p Pen) { p.In(0, 0, 10, 10).Text(0, 5, Type{}, "wider than ten") },
		"lines":      func(p Pen) { p.In(0, 0, 30, 10).Lines(Type{}, strings.Repeat("word ", 20)) },
		"dimension":  func(p Pen) { p.Across(0, 300, 5, 5, "300") },
		"beside it":  func(p Pen) { p.Across(p.Width-5, p.Width, 5, 5, "a long text") },
		"above it":   func(p Pen) { p.Upright(2, 8, 5, 5, "a long text") },
	} {
		assert.NotEmpty(t, of(do), name)
	}
}

// Everything stands within the margins, whatever somebody has typed.
func TestHostileTextsStayInPlace(t *testing.T) {
	for _, text := range []string{
		strings.Repeat("W", 500), strings.Repeat("word ", 400), "", " ", "木材の吸音" + strings.Repeat("板", 200),
		"\u202e\u0000\x1b[2J", strings.Repeat("e\u0301", 200), "👩‍👩‍👧‍👦 family", strings.Repeat("i", 2000),
	} {
		fr := frame()
		fr.Job, fr.Code, fr.Units, fr.Bar = text, "ABC123", text, text
		fr.Notes = []string{text}
		table := Table{Columns: []Column{{Head: text}, {Head: text, Grow: true}, {Head: "x", Width: 20}}, Rows: [][]Cell{Row(text, text, text)}}
		blocks := []Block{
			Heading(text), Say(text), Small(text), List{Mark: Ticks, Items: []string{text}}, List{Mark: Numbers, Items: []string{text}},
			Notice{Sign: StopSign, Lead: "Stop", Text: text, Blanks: Blanks{{Label: text, Share: 1}, {Label: text, Share: 3}}}, table,
			Beside{Shares: []float64{1, 2}, Columns: [][]Block{{Say("x")}, {Small("y")}}}, Blanks{{Label: text, Share: 1}},
		}
		for _, f := range Formats() {
			for _, view := range []View{NoView, Front, Rear} {
				for _, s := range Layout("h", f, fr, []Paper{{Title: text, View: view, Blocks: blocks}}, Span{}) {
					assert.Empty(t, s.Overflow, "%.20q", text)
					assert.NotContains(t, s.SVG, "\u202e")
				}
			}
		}
	}
}

// Characters that the font lacks are squeezed into the width that was reckoned
// with, so that no other font can push them out of their place.
func TestMissingCharactersAreSqueezed(t *testing.T) {
	s := Layout("m", A4(), frame(), []Paper{{Blocks: []Block{Say("木材 wood")}}}, Span{})[0]
	assert.Contains(t, s.SVG, `textLength=`)
	assert.NotContains(t, Layout("m", A4(), frame(), []Paper{{Blocks: []Block{Say("wood")}}}, Span{})[0].SVG, "textLength")
}

// The bar at the foot is 100 mm of a sheet that is drawn at its own size.
func TestBarAndSize(t *testing.T) {
	for _, f := range Formats() {
		s := Layout("b", f, frame(), []Paper{{Blocks: []Block{Say("x")}}}, Span{})[0]
		assert.Contains(t, s.SVG, fmt.Sprintf(`width="%smm"`, draw.Number(f.Width)))
		assert.Contains(t, s.SVG, fmt.Sprintf(`viewBox="0 0 %s `, draw.Number(f.Width)), "one unit is one mm")
		assert.Contains(t, s.SVG, `width="100" height="2"`)
	}
}

func TestPapersWithoutBlocksDropOut(t *testing.T) {
	sheets := Layout("e", A4(), frame(), []Paper{{Title: "Nothing"}, {Title: "Something", Blocks: []Block{Say("x")}}, {Title: "Table", Blocks: []Block{Table{}}}}, Span{})
	require.Len(t, sheets, 1)
	assert.Equal(t, "Something", sheets[0].Title)
	assert.Contains(t, sheets[0].SVG, "1 of 1")
}

func TestViews(t *testing.T) {
	of := func(v View) string {
		return Layout("v", A4(), frame(), []Paper{{View: v, Blocks: []Block{Say("x")}}}, Span{})[0].SVG
	}
	assert.NotContains(t, of(NoView), "FRONT")
	assert.Contains(t, of(Front), ">FRONT<")
	assert.Contains(t, of(Rear), ">REAR<")
	assert.Contains(t, of(Rear), `fill="white"`, "white letters on black")
}

// More columns than a sheet has room for are narrower, as far as words are broken;
// nothing runs on for ever, and nothing leaves the sheet.
func TestTableOfManyColumns(t *testing.T) {
	for _, given := range []float64{0, 30} {
		var table Table
		for range 15 {
			table.Columns = append(table.Columns, Column{Head: "Panel of the wall", Width: given})
		}
		table.Columns[0] = Column{Head: "Height"}
		table.Columns[14] = Column{Head: "What is left", Grow: true}
		row := make([]string, 15)
		for i := range row {
			row[i] = "12"
		}
		table.Rows = [][]Cell{Row(row...)}
		sum := 0.0
		for _, w := range table.widths(180) {
			assert.Positive(t, w)
			sum += w
		}
		assert.InDelta(t, 180, sum, 1e-9)
		for _, s := range Layout("e", A4(), frame(), []Paper{{Title: "Many", Blocks: []Block{table}}}, Span{}) {
			assert.Empty(t, s.Overflow)
		}
	}
	assert.Equal(t, []string{"a", "b"}, Wrap(Regular, 2, -1, "ab"))
}

// Sheets that are not asked for have their number and no drawing; those that are, are
// as they are among all.
func TestSpan(t *testing.T) {
	papers := []Paper{{Title: "One", Blocks: []Block{Say("x")}}, {Title: "Two", Blocks: []Block{Say("y")}}, {Title: "Three", Blocks: []Block{Say("z")}}}
	all := Layout("s", A4(), frame(), papers, Span{})
	some := Layout("s", A4(), frame(), papers, Span{From: 1, To: 2})
	assert.Equal(t, all[1], some[1])
	for _, i := range []int{0, 2} {
		assert.NotEmpty(t, all[i].SVG)
		assert.Empty(t, some[i].SVG)
		assert.Equal(t, all[i].Number, some[i].Number)
	}
	for _, one := range Layout("s", A4(), frame(), papers, NoSheets()) {
		assert.Empty(t, one.SVG)
	}
}

// A column of a given width is wider where a word of its head would be broken, and lists side
// by side that are set alike have columns alike.
func TestColumnsHoldTheirHeads(t *testing.T) {
	table := Table{Columns: []Column{{Head: "Anstrich und Lasur", Width: 10}, {Head: "What", Grow: true}}, Rows: [][]Cell{Row("1", "one")}}
	sheets := Layout("t", A4(), frame(), []Paper{{Name: "t", Title: "Table", Blocks: []Block{table}}}, Span{})
	assert.Contains(t, texts(t, sheets[0].SVG), "Anstrich")
	short, long := [][]Cell{Row("1", "2")}, [][]Cell{Row("1", "2"), Row("1000", "2")}
	one, other := Table{Columns: []Column{{}, {}}, Rows: short, Alike: long}, Table{Columns: []Column{{}, {}}, Rows: long}
	assert.Equal(t, other.widths(80), one.widths(80))
}
