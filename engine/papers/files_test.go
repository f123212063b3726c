package papers_test

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// export is all files of a job by their names.
func export(t *testing.T, in papers.Input, sets ...string) map[string][]byte {
	t.Helper()
	all := map[string][]byte{}
	for _, f := range papers.Files(in, sets, papers.Fonts{Regular: []byte("regular"), Bold: []byte("bold")}) {
		require.NotContains(t, all, f.Name)
		require.Regexp(t, `^[a-z0-9-]+(/[a-z0-9-]+)?\.(html|svg|csv)$`, f.Name)
		all[f.Name] = f.Body
	}
	return all
}

// One archive holds all files as they are, and is the same bytes each time.
func TestZip(t *testing.T) {
	in := job(t, "s2").input(length.Metric, sheet.A4())
	files := papers.Files(in, papers.For(papers.Maker, design.HungScope, false), papers.Fonts{})
	packed, err := papers.Zip(files)
	require.NoError(t, err)
	again, err := papers.Zip(papers.Files(in, papers.For(papers.Maker, design.HungScope, false), papers.Fonts{}))
	require.NoError(t, err)
	assert.Equal(t, packed, again)
	r, err := zip.NewReader(bytes.NewReader(packed), int64(len(packed)))
	require.NoError(t, err)
	require.Len(t, r.File, len(files))
	for i, f := range r.File {
		body, err := f.Open()
		require.NoError(t, err)
		got, err := io.ReadAll(body)
		require.NoError(t, err)
		assert.Equal(t, files[i].Name, f.Name)
		assert.Equal(t, files[i].Body, got)
	}
}

// A document stands alone: no script, no address, its own font, every id once.
func TestHTML(t *testing.T) {
	p := job(t, "s7")
	p.doc.Design.Title = `</title><script>alert(1)</script>`
	for name, body := range export(t, p.input(length.Metric, sheet.Letter()), papers.For(papers.Maker, design.HungScope, false)...) {
		if !strings.HasSuffix(name, ".html") {
			continue
		}
		text := string(body)
		assert.NotContains(t, text, "<script", name)
		assert.NotRegexp(t, `(src|href)="?https?:`, text, name)
		assert.Contains(t, text, "default-src 'none'", name)
		assert.Contains(t, text, "@page { size: Letter; margin: 0; }", name)
		assert.Contains(t, text, "base64,cmVndWxhcg==", name)
		assert.Contains(t, text, "base64,Ym9sZA==", name)
		ids := regexp.MustCompile(` id="([^"]*)"`).FindAllString(text, -1)
		slices.Sort(ids)
		assert.Len(t, slices.Compact(slices.Clone(ids)), len(ids), "%s: an id stands twice", name)
	}
}

// Each drawing is a file that can be read alone, of its own size.
func TestDrawings(t *testing.T) {
	for _, name := range []string{"s1", "s5", "s7"} {
		n := 0
		for file, body := range export(t, job(t, name).input(length.Inch16, sheet.Letter()), sets()...) {
			if !strings.HasPrefix(file, "drawings/") {
				continue
			}
			n++
			root := parse(t, string(body))
			assert.Regexp(t, `^[\d.]+mm$`, root.attr("width"), file)
			assert.Equal(t, "img", root.attr("role"), file)
		}
		assert.GreaterOrEqual(t, n, 2, name)
	}
}

// Tables by RFC 4180: as many fields in each line as in its head, CR LF, a decimal
// point, units in the heading.
func TestTables(t *testing.T) {
	for _, name := range []string{"s1", "s5", "s8"} {
		for file, body := range export(t, job(t, name).input(length.Metric, sheet.A4()), sets()...) {
			if !strings.HasSuffix(file, ".csv") {
				continue
			}
			r := csv.NewReader(bytes.NewReader(body))
			rows, err := r.ReadAll()
			require.NoError(t, err, file)
			require.Equal(t, bytes.Count(body, []byte("\n")), bytes.Count(body, []byte("\r\n")), file)
			require.Len(t, rows, bytes.Count(body, []byte("\r\n")), file)
			if !strings.HasPrefix(file, "tables/field") {
				assert.Regexp(t, `\((mm|min|XXX)\)|Quantity`, strings.Join(rows[0], " "), file)
			}
		}
	}
}

// The table of the field is the field.
func TestFieldTable(t *testing.T) {
	p := job(t, "s1")
	rows, err := csv.NewReader(bytes.NewReader(export(t, p.input(length.Inch16, sheet.A4()), papers.GlueSet)["tables/field-1-1-mm.csv"])).ReadAll()
	require.NoError(t, err)
	// The first row as it is printed with the worked job, in mm whatever the reader's units.
	assert.Equal(t, strings.Fields("0 0 18 72 36 18 18 36 72 18 0 0 0 18 72 36 18 18 36 72 18 0 0 0 18 72"), rows[0])
	assert.Len(t, rows, p.plan.Groups[0].Built.Rows)
}

// A table in inches is in decimal inches.
func TestTablesInInches(t *testing.T) {
	body := string(export(t, job(t, "default").input(length.Inch16, sheet.A4()), papers.CutSet)["tables/counts.csv"])
	assert.Contains(t, body, "Height (in)")
	// 26 mm are 1.02362 in.
	assert.Contains(t, body, ",1.0236,")
	metric := string(export(t, job(t, "default").input(length.Metric, sheet.A4()), papers.CutSet)["tables/counts.csv"])
	assert.Contains(t, metric, "Height (mm)")
	assert.Contains(t, metric, ",26,")
}

// A text that a spreadsheet would take for a formula stays a text; a number stays a
// number.
func TestFormulasAreGuarded(t *testing.T) {
	doc := design.Default()
	doc.Design.Money.Extras = nil
	for _, name := range []string{"=1+1", "+cmd", "-2", "@sum", "＝1", "plain", "a=b"} {
		doc.Design.Money.Extras = append(doc.Design.Money.Extras, design.Extra{Name: name, Amount: design.Units(5)})
	}
	p := planOf(t, doc, design.DefaultBook())
	body := export(t, p.input(length.Metric, sheet.A4()), papers.CutSet)["tables/prices.csv"]
	rows, err := csv.NewReader(bytes.NewReader(body)).ReadAll()
	require.NoError(t, err)
	var names []string
	for _, row := range rows[1:] {
		_, err := strconv.ParseFloat(row[2], 64)
		require.NoError(t, err, "%q", row)
		names = append(names, row[0])
	}
	for _, want := range []string{"'=1+1", "'+cmd", "'-2", "'@sum", "'＝1", "plain", "a=b"} {
		assert.Contains(t, names, want)
	}
}

// Drawings of full size, read back in mm: the backer as it is cut with its field in the
// start corner, each screw of the cleat where the rear map has it, and the holes in the
// wall as far apart as they are bored, the upper ones above.
func TestFullSize(t *testing.T) {
	p := job(t, "s1")
	for _, start := range []string{design.TopEdge, design.BottomEdge} {
		files := export(t, withStart(p, start).input(length.Metric, sheet.A4()), papers.CutSet, papers.HangSet)
		built := p.plan.Groups[0].Built
		cut, field := fullSize(t, files["full-size/backer-1.svg"], "cut"), fullSize(t, files["full-size/backer-1.svg"], "field")
		over := p.doc.Design.Bench.BackerOversize.Millimetres()
		assert.InDelta(t, built.FieldWidth.Millimetres()+over, cut[0].number("width"), 0.01)
		assert.InDelta(t, built.FieldHeight.Millimetres()+over, cut[0].number("height"), 0.01)
		assert.InDelta(t, built.FieldWidth.Millimetres(), field[0].number("width"), 0.01)
		assert.InDelta(t, cut[0].number("x"), field[0].number("x"), 0.01)
		if start == design.TopEdge {
			assert.InDelta(t, cut[0].number("y"), field[0].number("y"), 0.01)
		} else {
			assert.InDelta(t, cut[0].number("y")+over, field[0].number("y"), 0.01)
		}
	}

	files := export(t, p.input(length.Metric, sheet.A4()), papers.HangSet)
	half := p.plan.Hangings[0].Halves[0]
	field := fullSize(t, files["full-size/rear-holes-1.svg"], "field")[0]
	bored := fullSize(t, files["full-size/rear-holes-1.svg"], "bore")
	require.Len(t, bored, len(half.Row.Places))
	assert.InDelta(t, half.FieldMM(), field.number("width"), 0.01)
	for i, hole := range half.Holes(half.Row) {
		assert.InDelta(t, half.FieldMM()-(float64(hole.Column)+0.5)*half.PitchMM, bored[i].number("cx")-field.number("x"), 0.02, "from the rear's left edge")
		assert.InDelta(t, (float64(hole.Row)+0.5)*half.PitchMM, bored[i].number("cy")-field.number("y"), 0.02)
	}

	d := job(t, "default")
	files = export(t, d.input(length.Metric, sheet.A4()), papers.HangSet)
	h := d.plan.Hangings[0]
	panel, holes := fullSize(t, files["full-size/wall-holes-1.svg"], "panel")[0], fullSize(t, files["full-size/wall-holes-1.svg"], "bore")
	require.Len(t, holes, len(h.Holes()))
	require.NotEmpty(t, holes)
	for i, hole := range h.Holes() {
		assert.InDelta(t, hole.XM*1000-h.Built.Left.Millimetres(), holes[i].number("cx")-panel.number("x"), 0.02)
		up := panel.number("y") + panel.number("height") - holes[i].number("cy")
		assert.InDelta(t, hole.YM*1000-h.Built.Panels[0].Bottom.Millimetres(), up, 0.02, "above the lower edge")
	}
}

// No hole in a wall is drawn as long as evidence is asked for.
func TestFullSizeWaitsForEvidence(t *testing.T) {
	for _, name := range append(jobs(), "s6") {
		p := job(t, name)
		_, drawn := export(t, p.input(length.Metric, sheet.A4()), papers.HangSet)["full-size/wall-holes-1.svg"]
		text := said(t, make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet))
		if strings.Contains(text, "NOT TO BE HUNG YET") {
			assert.False(t, drawn, name)
		}
	}
}

// fullSize are the shapes of a class of a drawing whose units are mm.
func fullSize(t *testing.T, svg []byte, class string) []node {
	t.Helper()
	root := parse(t, string(svg))
	box := strings.Fields(root.attr("viewBox"))
	require.Len(t, box, 4)
	require.Equal(t, []string{box[2] + "mm", box[3] + "mm"}, []string{root.attr("width"), root.attr("height")}, "one unit is one mm")
	var all []node
	for _, n := range root.Children {
		if n.attr("class") == class {
			require.Len(t, n.Children, 1)
			all = append(all, n.Children[0])
		}
	}
	require.NotEmpty(t, all, class)
	return all
}
