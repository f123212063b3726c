package papers_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/wall"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ring is one screw as the rear map prints it.
type ring struct {
	fromLeft, fromTop float64 // mm, as the table has them
	row, column       int
}

// rearMaps reads the tables of the rear map, a list for each back: a back begins with
// ring 1.
func rearMaps(t *testing.T, s papers.Set) [][]ring {
	t.Helper()
	var all [][]ring
	for _, one := range of(s, "rear-map") {
		var table []printed
		for _, text := range texts(t, one.SVG) {
			if _, err := strconv.ParseFloat(text.text, 64); err == nil && text.class == "" && !text.turned && math.Abs(text.size-sheet.FigureSize(5)) < 0.01 {
				table = append(table, text)
			}
		}
		var rows [][]printed // of a list that may stand in two columns
		for _, line := range lines(table) {
			require.Zero(t, len(line)%5)
			for len(line) > 0 {
				rows, line = append(rows, line[:5]), line[5:]
			}
		}
		slices.SortFunc(rows, func(a, b []printed) int { return number(t, a[0].text) - number(t, b[0].text) })
		for _, line := range rows {
			n := number(t, line[0].text)
			r := ring{row: number(t, line[3].text), column: number(t, line[4].text)}
			r.fromLeft, _ = strconv.ParseFloat(line[1].text, 64)
			r.fromTop, _ = strconv.ParseFloat(line[2].text, 64)
			if n == 1 {
				all = append(all, nil)
			}
			all[len(all)-1] = append(all[len(all)-1], r)
			require.Len(t, all[len(all)-1], n)
		}
	}
	return all
}

// The rear map, read back: turned to the front, each ring lies on the cell that the
// table names, on a block that is tall enough for the screw by 6 mm, and is one of the
// places that were chosen. Distances are those of the rear's own left edge: a map that
// is not mirrored fails.
func TestRearMapHitsTheBlocks(t *testing.T) {
	rings := 0
	for _, name := range jobs() {
		p := job(t, name)
		got := rearMaps(t, make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet))
		n := 0
		for _, h := range p.plan.Hangings {
			seen := map[byte]bool{}
			for i, built := range h.Built.Panels {
				half := h.Halves[i]
				if seen[built.Letter] || len(half.Row.Places) == 0 {
					continue
				}
				seen[built.Letter] = true
				require.Greater(t, len(got), n, name)
				require.Len(t, got[n], len(half.Row.Places), name)
				for _, r := range got[n] {
					rings++
					front := half.FieldMM() - r.fromLeft
					require.Equal(t, r.column, int(math.Floor(front/half.PitchMM))+1, "%s: %v", name, r)
					require.Equal(t, r.row, int(math.Floor(r.fromTop/half.PitchMM))+1, "%s: %v", name, r)
					block := h.Design.Heights[built.Grid.At(r.row-1, r.column-1)].Millimetres()
					require.GreaterOrEqual(t, half.CleatMM+half.BackerMM+block, half.Row.ScrewMM+6, "%s: the screw would show: %v", name, r)
					require.True(t, slices.Contains(half.Row.Places, wall.Place{Row: r.row - 1, Column: r.column - 1}), "%s: %v", name, r)
				}
				n++
			}
		}
		require.Len(t, got, n, name)
	}
	assert.Greater(t, rings, 6*len(jobs()), "screws that were looked at")
}

// What is drawn is what the table says: rings lie at their distance from the left
// edge of the drawn field, and hatched and black cells are those of the rear.
func TestRearMapIsDrawnAsItsTable(t *testing.T) {
	p := job(t, "s1")
	s := make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet)
	root := parse(t, of(s, "rear-map")[0].SVG)
	half := p.plan.Hangings[0].Halves[0]
	var field node
	var rings []node
	paths := map[string][]draw.Box{}
	var walk func(n node, group string)
	walk = func(n node, group string) {
		switch {
		case n.XMLName.Local == "g":
			group = n.attr("class")
		case n.XMLName.Local == "rect" && group == "rear-field":
			field = n
		case n.XMLName.Local == "circle" && group == "ring":
			rings = append(rings, n)
		case n.XMLName.Local == "path" && (group == "short" || group == "void"):
			paths[group] = boxes(t, n)
		}
		for _, c := range n.Children {
			walk(c, group)
		}
	}
	walk(root, "")
	table := rearMaps(t, s)[0]
	require.Len(t, rings, len(table))
	k := half.FieldMM() / field.number("width")
	for i, r := range rings {
		// A hundredth of a mm on the paper is a tenth and more on the panel.
		assert.InDelta(t, table[i].fromLeft, k*(r.number("cx")-field.number("x")), 0.02*k)
		assert.InDelta(t, table[i].fromTop, k*(r.number("cy")-field.number("y")), 0.02*k)
	}
	drawn := int(math.Round(k * field.number("height") / half.PitchMM))
	require.Greater(t, drawn, slices.Max(half.Row.Rows)+1)
	for row := range drawn {
		for column := range half.Grid.Columns {
			x, y := half.RearX(column)/k, half.RowY(row)/k
			mark := half.Mark(row, column, half.Row.ScrewMM)
			assert.Equal(t, mark == wall.Short, covers(paths["short"], x, y), "row %d, column %d", row+1, column+1)
			assert.Equal(t, mark == wall.Void, covers(paths["void"], x, y), "row %d, column %d", row+1, column+1)
		}
	}
}

// boxes are the rectangles of a path that is written with relative moves.
func boxes(t *testing.T, path node) []draw.Box {
	t.Helper()
	var all []draw.Box
	var b draw.Box
	for _, part := range strings.Split(strings.TrimSuffix(path.attr("d"), "z"), "z") {
		var dx, dy, back float64
		_, err := fmt.Sscanf(strings.NewReplacer("m", "", "h", " ", "v", " ").Replace(part), "%g %g %g %g %g", &dx, &dy, &b.Width, &b.Height, &back)
		require.NoError(t, err, part)
		require.InDelta(t, b.Width, -back, 1e-9)
		b.X, b.Y = b.X+dx, b.Y+dy
		all = append(all, b)
	}
	return all
}

func covers(all []draw.Box, x, y float64) bool {
	return slices.ContainsFunc(all, func(b draw.Box) bool {
		return x > b.X && x < b.X+b.Width && y > b.Y && y < b.Y+b.Height
	})
}

// As long as evidence is asked for, nothing is said of hanging but that; once the
// wall holds, the sheet has each hole.
func TestHangSheetWaitsForEvidence(t *testing.T) {
	shut, open := 0, 0
	for _, name := range append(jobs(), "s6", "s6-second", "s7-second") {
		p := job(t, name)
		in := p.input(length.Metric, sheet.A4())
		for _, set := range []string{papers.HangSet, papers.BookSet} {
			var text strings.Builder
			for _, one := range of(make1(t, in, set), "hang-sheet") {
				for _, x := range texts(t, one.SVG) {
					text.WriteString(x.text + "\n")
				}
			}
			blocked := slices.ContainsFunc(p.plan.WatchOuts, func(w check.WatchOut) bool {
				return w.Level == check.Stop && w.Evidence && strings.HasPrefix(w.Code, "wall/")
			})
			if blocked {
				shut++
				assert.Contains(t, text.String(), "NOT TO BE HUNG YET", name)
				assert.NotContains(t, text.String(), "Hole", name)
				continue
			}
			open++
			assert.NotContains(t, text.String(), "NOT TO BE", name)
			for _, h := range p.plan.Hangings {
				for _, s := range h.Strips {
					for _, hole := range s.Holes() {
						at := in.Words.Number(length.Micrometres(int64(math.Round(hole.XM*1e4)) * 100))
						assert.Contains(t, text.String(), at+"\n", name)
					}
				}
			}
		}
	}
	assert.NotZero(t, shut)
	assert.NotZero(t, open)
}

// The default design is hung by its papers: nothing in it asks for evidence.
func TestDefaultHangs(t *testing.T) {
	doc := design.Default()
	p := planOf(t, doc, design.DefaultBook())
	text := said(t, make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet))
	assert.NotContains(t, text, "NOT TO BE HUNG YET")
	assert.Contains(t, text, "Holes in the wall")
}

// The section shows what is packed between a wall that is out of flat and the strip, where it
// is thickest, to scale, with its name and its size; on a flat wall there is none.
func TestSectionShowsTheShims(t *testing.T) {
	section := func(doc design.Document) (p planned, wide float64, text string) {
		p = planOf(t, doc, design.DefaultBook())
		set := make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet)
		for _, one := range of(set, "cleat") {
			assert.Empty(t, one.Overflow)
			apart(t, texts(t, one.SVG), "cleat")
			for _, n := range parse(t, one.SVG).Children {
				if n.attr("class") == "shim" {
					wide = n.Children[0].number("width")
				}
			}
		}
		return p, wide, said(t, papers.Set{Sheets: of(set, "cleat")})
	}
	doc := design.Clone(job(t, "s2").doc)
	_, wide, text := section(doc)
	assert.Zero(t, wide)
	assert.NotContains(t, text, "Shims")
	doc.Design.Walls[0].Bow = length.MM(8)
	p, wide, text := section(doc)
	shim := p.plan.Hangings[0].ShimMM
	require.Positive(t, shim)
	assert.Contains(t, text, "Shims\n")
	scale := regexp.MustCompile(`scale 1 : ([\d.]+)`).FindStringSubmatch(text)
	require.NotNil(t, scale)
	k, err := strconv.ParseFloat(scale[1], 64)
	require.NoError(t, err)
	assert.InDelta(t, shim/k, wide, 0.02)
}

// What was found at the wall is written behind each hole: there is room for a hand. Lists that
// stand side by side are set alike.
func TestHoleListsHaveRoomToWrite(t *testing.T) {
	const hand = 40.0 // mm
	for _, units := range []length.Units{length.Metric, length.Inch16} {
		in := job(t, "s1").input(units, sheet.A4())
		found := false
		for _, one := range of(make1(t, in, papers.HangSet), "hang-sheet") {
			for _, text := range texts(t, one.SVG) {
				if text.text == "As found" {
					found = true
					assert.Less(t, text.x, in.Format.Width-14-hand, units)
				}
			}
		}
		assert.True(t, found, "the head stands on one line")
	}
	in := job(t, "s2").input(length.Metric, sheet.A4())
	in.Words.Language = words.German()
	offsets := map[string][]float64{}
	first := 0.0
	for _, one := range of(make1(t, in, papers.HangSet), "rear-map") {
		for _, text := range texts(t, one.SVG) {
			switch text.text {
			case "Ring":
				first = text.x
			case "Reihe":
				offsets[text.text] = append(offsets[text.text], text.x-first)
			}
		}
	}
	require.Len(t, offsets["Reihe"], 2)
	assert.InDelta(t, offsets["Reihe"][0], offsets["Reihe"][1], 0.02)
}
