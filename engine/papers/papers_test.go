package papers_test

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Nothing leaves its place, no text runs into another, and every sheet has the
// revision, its number and the bar of 100 mm: on A4 and Letter, in millimetres and
// inches, of every worked job.
func TestSheets(t *testing.T) {
	everySet(t, func(t *testing.T, p planned, in papers.Input, s papers.Set) {
		require.NotEmpty(t, s.Sheets)
		for i, one := range s.Sheets {
			checkSheet(t, in, s, i, one)
		}
	})
}

func checkSheet(t *testing.T, in papers.Input, s papers.Set, i int, one sheet.Sheet) {
	t.Helper()
	at := fmt.Sprintf("%s %s %s, sheet %d (%s)", s.Name, in.Format.Name, in.Words.Units, i+1, one.Paper)
	assert.Empty(t, one.Overflow, at)
	all := texts(t, one.SVG)
	apart(t, all, at)
	figuresApart(t, all, at)
	require.Equal(t, i+1, one.Number)
	require.Equal(t, 1, count(all, func(p printed) bool { return p.class == "revision" && p.text == in.Plan.Revision }), at)
	number := in.Words.Say("papers/number", words.Args{"n": i + 1, "of": len(s.Sheets)})
	require.Equal(t, 1, count(all, func(p printed) bool { return p.class == "page-number" && strings.HasSuffix(p.text, number) }), at)
	require.Contains(t, one.SVG, `class="scale-bar"`, at)
	for _, text := range all {
		require.True(t, sheet.Covered(text.text) || strings.Contains(text.text, "¤"), "%s: the font lacks a character of %q", at, text.text)
		require.NotContains(t, text.text, "⟪", at)
	}
}

func count(all []printed, want func(printed) bool) int {
	n := 0
	for _, p := range all {
		if want(p) {
			n++
		}
	}
	return n
}

// apart finds texts that are written over one another.
func apart(t *testing.T, all []printed, at string) {
	t.Helper()
	const touch = 0.05
	level := slices.DeleteFunc(slices.Clone(all), func(p printed) bool { return p.turned })
	slices.SortFunc(level, func(a, b printed) int { return cmp.Compare(a.y-a.size, b.y-b.size) })
	for i, a := range level {
		for _, b := range level[i+1:] {
			if b.y-b.size > a.y {
				break
			}
			wide := min(a.left()+a.width(), b.left()+b.width()) - max(a.left(), b.left())
			high := min(a.y, b.y) - max(a.y-0.72*a.size, b.y-0.72*b.size)
			require.False(t, wide > touch && high > touch, "%s: %q is written over %q", at, a.text, b.text)
		}
	}
}

// figuresApart finds figures of level dimensions that stand so close above one another that
// they read as one.
func figuresApart(t *testing.T, all []printed, at string) {
	t.Helper()
	const figure, least = 5.0, 1.0
	level := slices.DeleteFunc(slices.Clone(all), func(p printed) bool { return p.turned || p.in != "dimension" })
	for i, a := range level {
		for _, b := range level[i+1:] {
			wide := min(a.left()+a.width(), b.left()+b.width()) - max(a.left(), b.left())
			gap := math.Abs(a.y-b.y) - figure
			require.False(t, wide > 0 && gap < least, "%s: %q stands %.1f mm above or below %q", at, a.text, gap, b.text)
		}
	}
}

// heightText is a height as papers write it.
func heightText(in papers.Input, h length.Length) string { return in.Words.Number(h) }

// The blocks of each height are the same on stop list, bin labels, count card, row
// cards and in the table, and those of the design.
func TestCountsAgree(t *testing.T) {
	for _, name := range jobs() {
		p := job(t, name)
		in := p.input(length.Metric, sheet.A4())
		cut, glue := make1(t, in, papers.CutSet), make1(t, in, papers.GlueSet)
		want, cutWant := map[string]int{}, map[string]int{}
		for _, lot := range p.plan.Bill.Lots {
			for _, h := range lot.Heights {
				want[heightText(in, h.Height)] += h.Need
				cutWant[heightText(in, h.Height)] += h.Cut
			}
		}
		blocks := map[string]int{} // of the fields themselves
		for _, g := range p.plan.Groups {
			for _, panel := range g.Built.Panels {
				for _, level := range panel.Grid.Levels {
					if h := g.Design.Heights[level]; !h.IsZero() {
						blocks[heightText(in, h)]++
					}
				}
			}
		}
		require.Equal(t, blocks, want, name)

		need, toCut := stopList(t, cut)
		assert.Equal(t, want, need, "%s: stop list", name)
		assert.Equal(t, cutWant, toCut, "%s: stop list", name)
		need, toCut = labels(t, cut)
		assert.Equal(t, want, need, "%s: bin labels", name)
		assert.Equal(t, cutWant, toCut, "%s: bin labels", name)
		for _, set := range []papers.Set{cut, glue} {
			need, toCut = countCard(t, set)
			assert.Equal(t, want, need, "%s: count card", name)
			assert.Equal(t, cutWant, toCut, "%s: count card", name)
		}
		onCards := map[string]int{}
		for _, c := range cards(t, glue) {
			for _, h := range c.heights {
				if h != "·" {
					onCards[h]++
				}
			}
		}
		assert.Equal(t, want, onCards, "%s: row cards", name)
		assert.Equal(t, cutWant, tallied(t, cut), "%s: the last box of each tally", name)
	}
}

func number(t testing.TB, text string) int {
	t.Helper()
	var n int
	_, err := fmt.Sscan(strings.ReplaceAll(text, "\u00a0", ""), &n)
	require.NoError(t, err, text)
	return n
}

var stopCounts = regexp.MustCompile(`^Cut ([\d\x{a0}]+): ([\d\x{a0}]+) and ([\d\x{a0}]+) spare$`)

// stopList reads settings and counts off the stop list.
func stopList(t *testing.T, s papers.Set) (need, toCut map[string]int) {
	need, toCut = map[string]int{}, map[string]int{}
	for _, one := range of(s, "stop-list") {
		setting := ""
		for _, text := range texts(t, one.SVG) {
			switch text.class {
			case "setting":
				setting = text.text
			case "counts":
				m := stopCounts.FindStringSubmatch(text.text)
				require.NotNil(t, m, text.text)
				toCut[setting] += number(t, m[1])
				need[setting] += number(t, m[2])
				require.Equal(t, number(t, m[1]), number(t, m[2])+number(t, m[3]))
			}
		}
	}
	return need, toCut
}

// tallied is the number in the last box of each height's tally.
func tallied(t *testing.T, s papers.Set) map[string]int {
	all := map[string]int{}
	setting, last := "", 0
	done := func() {
		if setting != "" {
			all[setting] += last
		}
		last = 0
	}
	for _, one := range of(s, "stop-list") {
		for _, text := range texts(t, one.SVG) {
			switch text.class {
			case "setting":
				done()
				setting = text.text
			case "tally":
				n := number(t, text.text)
				require.Greater(t, n, last, "boxes count up")
				last = n
			}
		}
	}
	done()
	return all
}

// labels reads the bin labels.
func labels(t *testing.T, s papers.Set) (need, toCut map[string]int) {
	need, toCut = map[string]int{}, map[string]int{}
	for _, one := range of(s, "bin-labels") {
		height := ""
		for _, text := range texts(t, one.SVG) {
			switch {
			case text.in == "heights":
				height = text.text
			case strings.HasSuffix(text.text, " in the panels"):
				need[height] += number(t, strings.TrimSuffix(text.text, " in the panels"))
			case strings.Contains(text.text, " to cut, "):
				n, _, _ := strings.Cut(text.text, " to cut")
				toCut[height] += number(t, n)
			}
		}
	}
	return need, toCut
}

// under are the texts of a sheet that stand below a title of a paper and above the next one.
func under(all []printed, title string) []printed {
	from, to := math.Inf(1), math.Inf(1)
	for _, text := range all {
		if text.class == "paper-title" && text.text == title {
			from = text.y
		}
	}
	for _, text := range all {
		if text.class == "paper-title" && text.y > from {
			to = min(to, text.y)
		}
	}
	return slices.DeleteFunc(slices.Clone(all), func(text printed) bool { return text.y <= from || text.y >= to })
}

// countCard reads the rows of the count card.
func countCard(t *testing.T, s papers.Set) (need, toCut map[string]int) {
	need, toCut = map[string]int{}, map[string]int{}
	for _, one := range of(s, "count-card") {
		rows := map[float64][]printed{}
		for _, text := range under(texts(t, one.SVG), "Count card") {
			if math.Abs(text.size-sheet.FigureSize(5)) < 0.01 {
				rows[text.y] = append(rows[text.y], text)
			}
		}
		for _, row := range rows {
			slices.SortFunc(row, func(a, b printed) int { return int(a.x - b.x) })
			if row[0].text == "All" {
				continue
			}
			require.Len(t, row, 4)
			need[row[0].text] += number(t, row[1].text)
			toCut[row[0].text] += number(t, row[3].text)
			require.Equal(t, number(t, row[3].text), number(t, row[1].text)+number(t, row[2].text))
		}
	}
	return need, toCut
}

// rowCard is a row as it is printed.
type rowCard struct {
	panel   int // from 0, over all groups
	row     int // as its number says
	heights []string
}

// cards reads the row cards the way a maker does: sheet after sheet, line after
// line from the top, from left to right. A number at the head begins a card; a dot is
// bare backer; a fraction belongs to the whole at its left.
func cards(t *testing.T, s papers.Set) []rowCard {
	var all []rowCard
	panel := -1
	for _, one := range of(s, "row-cards") {
		var marks []printed
		for _, text := range texts(t, one.SVG) {
			if text.class == "card-panel" {
				continue
			}
			if text.class == "row" || text.in == "heights" || text.in == "fractions" || strings.HasPrefix(text.text, "Panel ") && text.bold || text.text == "The panel" || strings.Contains(text.text, ": Panel ") || strings.Contains(text.text, ": The panel") {
				marks = append(marks, text)
			}
		}
		for _, line := range lines(marks) {
			first := line[0]
			switch {
			case first.class == "row":
				all = append(all, rowCard{panel: panel, row: number(t, first.text)})
			case first.in == "heights" || first.in == "fractions":
				require.NotEmpty(t, all)
				card := &all[len(all)-1]
				card.heights = append(card.heights, numerals(line)...)
			default:
				panel++
			}
		}
	}
	return all
}

// lines are texts that stand beside one another, from the top. The figures of a
// fraction stand with their whole.
func lines(all []printed) [][]printed {
	slices.SortStableFunc(all, func(a, b printed) int { return int(100*a.y) - int(100*b.y) })
	var out [][]printed
	for _, p := range all {
		if n := len(out); n > 0 && p.y-out[n-1][0].y < 8 && p.class != "row" && out[n-1][0].class != "row" {
			out[n-1] = append(out[n-1], p)
			continue
		}
		out = append(out, []printed{p})
	}
	for _, line := range out {
		slices.SortStableFunc(line, func(a, b printed) int { return int(100*a.left()) - int(100*b.left()) })
	}
	return out
}

// numerals puts wholes and fractions of a line together.
func numerals(line []printed) []string {
	var all []string
	var over []printed
	for _, p := range line {
		if p.in == "fractions" {
			over = append(over, p)
		}
	}
	// Of a pair above one another the upper figure is the numerator.
	slices.SortStableFunc(over, func(a, b printed) int { return int(100*a.x) - int(100*b.x) })
	pairs := map[float64]string{}
	for i := 0; i+1 < len(over); i += 2 {
		a, b := over[i], over[i+1]
		if a.y > b.y {
			a, b = b, a
		}
		pairs[a.x] = a.text + "/" + b.text
	}
	var wholes []printed
	for _, p := range line {
		if p.in == "heights" {
			wholes = append(wholes, p)
		}
	}
	type figure struct {
		x    float64
		text string
	}
	var figures []figure
	used := map[float64]bool{}
	for i, w := range wholes {
		next := 1e9
		if i+1 < len(wholes) {
			next = wholes[i+1].left()
		}
		text := w.text
		for x, fraction := range pairs {
			if x > w.left()+w.width() && x < w.left()+w.width()+6 && x < next && !used[x] {
				text += " " + fraction
				used[x] = true
			}
		}
		figures = append(figures, figure{w.left(), text})
	}
	for x, fraction := range pairs {
		if !used[x] {
			figures = append(figures, figure{x, fraction})
		}
	}
	slices.SortFunc(figures, func(a, b figure) int { return int(100*a.x) - int(100*b.x) })
	for _, f := range figures {
		all = append(all, f.text)
	}
	return all
}

// Row cards, read back, give the field: every row of every panel is on exactly one
// card, left to right and with its own number, from either edge, on both papers and
// in both units by turns. A mirrored card fails.
func TestRowCardsAreTheField(t *testing.T) {
	for _, name := range jobs() {
		up, down := withStart(job(t, name), design.BottomEdge), withStart(job(t, name), design.TopEdge)
		metric, inch := up.input(length.Metric, sheet.A4()), down.input(length.Inch16, sheet.Letter())
		checkCards(t, up, metric, cards(t, make1(t, metric, papers.GlueSet)), name)
		checkCards(t, down, inch, cards(t, make1(t, inch, papers.GlueSet)), name)
	}
}

func checkCards(t *testing.T, p planned, in papers.Input, got []rowCard, name string) {
	t.Helper()
	panel, rows := 0, 0
	for _, g := range p.plan.Groups {
		for _, built := range g.Built.Panels {
			seen := map[int]bool{}
			for _, c := range got {
				if c.panel != panel {
					continue
				}
				require.False(t, seen[c.row], "%s: panel %d row %d is on two cards", name, panel+1, c.row)
				seen[c.row] = true
				var want []string
				for column := range built.Grid.Columns {
					h := g.Design.Heights[built.Grid.At(c.row-1, column)]
					if h.IsZero() {
						want = append(want, "·")
						continue
					}
					want = append(want, heightText(in, h))
				}
				require.Equal(t, want, c.heights, "%s: panel %d row %d", name, panel+1, c.row)
			}
			require.Len(t, seen, built.Grid.Rows, "%s: panel %d: a row is missing", name, panel+1)
			panel++
			rows += built.Grid.Rows
		}
	}
	require.Len(t, got, rows, name)
}

// Every Stop and Caution of a job is on some sheet of the workshop's sets, as it is
// said on the page.
func TestCautionsArePrinted(t *testing.T) {
	for _, name := range jobs() {
		p := job(t, name)
		in := p.input(length.Metric, sheet.A4())
		all := flat(said(t, make1(t, in, papers.CutSet)) + said(t, make1(t, in, papers.GlueSet)) + said(t, make1(t, in, papers.HangSet)))
		for _, w := range p.plan.AllWatchOuts() {
			if w.Level < check.Caution {
				continue
			}
			assert.Contains(t, all, flat(in.Words.Say(w.Code, words.Args(w.Args))), "%s: %s", name, w.Code)
		}
	}
}

// flat is text without its breaks, as it is told apart by its letters.
func flat(text string) string {
	return strings.Map(func(r rune) rune {
		if r == ' ' || r == '\n' || r == '\u00a0' || r == '\u202f' {
			return -1
		}
		return r
	}, text)
}

// A paper with nothing to say drops out.
func TestPapersDropOut(t *testing.T) {
	doc := design.Default()
	g := &doc.Design.Walls[0].Groups[0]
	g.Frame.Joint = design.NoFrame
	g.Finish.Kind, g.Finish.Coats, g.Finish.FrameCoats = "none", 0, 0
	bare := planOf(t, doc, design.DefaultBook())
	names := func(p planned, set string) []string {
		var all []string
		for _, one := range make1(t, p.input(length.Metric, sheet.A4()), set).Sheets {
			for _, paper := range append([]string{one.Paper}, one.Also...) {
				if !slices.Contains(all, paper) {
					all = append(all, paper)
				}
			}
		}
		return all
	}
	assert.Contains(t, names(job(t, "default"), papers.CutSet), "frame")
	assert.NotContains(t, names(bare, papers.CutSet), "frame")
	assert.Contains(t, names(job(t, "default"), papers.GlueSet), "finish")
	assert.NotContains(t, names(bare, papers.GlueSet), "finish")

	g.Heights = []length.Length{length.MM(0), length.MM(40)}
	g.Columns, g.Rows = 3, 2
	g.Pattern = design.Pattern{Kind: design.Drawn, Clump: 1, Drawn: []string{"000", "000"}}
	empty := planOf(t, doc, design.DefaultBook())
	for _, paper := range []string{"stop-list", "bin-labels", "count-card"} {
		assert.Contains(t, names(job(t, "default"), papers.CutSet), paper)
		assert.NotContains(t, names(empty, papers.CutSet), paper)
	}
	_, ok := papers.Make(job(t, "default").input(length.Metric, sheet.A4()), "nothing")
	assert.False(t, ok)
}

// Every set in German: nothing leaves its sheet or runs into something else, and every
// number has a decimal comma.
func TestGermanSheets(t *testing.T) {
	for _, name := range jobs() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := job(t, name)
			p.doc.Design.Walls = slices.Clone(p.doc.Design.Walls)
			for i := range p.doc.Design.Walls {
				p.doc.Design.Walls[i].Note = "" // as somebody wrote it, in whatever language
			}
			for _, in := range []papers.Input{p.input(length.Metric, sheet.A4()), p.input(length.Inch16, sheet.Letter())} {
				in.Words.Language = words.German()
				for _, set := range sets() {
					whole := make1(t, in, set)
					for i, one := range whole.Sheets {
						checkSheet(t, in, whole, i, one)
						for _, text := range texts(t, one.SVG) {
							assert.NotRegexp(t, pointed, text.text, "%s %s", set, one.Paper)
							assert.False(t, strings.HasSuffix(text.text, "…"), "%s %s: cut off: %q", set, one.Paper, text.text)
						}
					}
				}
			}
		})
	}
}

// pointed is a number with a decimal point; those of dates have more digits behind it.
var pointed = regexp.MustCompile(`\b\d{1,2}\.\d{1,2}\b([^.]|$)|\b\d+\.\d+ (mm|kg|m|h|%)`)

// A text that did not come out of the catalogue is one that cannot be translated.
// What somebody typed, numbers, units and letters may stand alone.
func TestEverySentenceComesFromTheCatalogue(t *testing.T) {
	book := design.DefaultBook()
	for _, name := range []string{"default", "s3", "s8"} {
		p := job(t, name)
		p.doc.Design.Title = "⟦title⟧"
		in := p.input(length.Metric, sheet.A4())
		in.Words.Language = words.Pseudo()
		for _, set := range sets() {
			for _, one := range make1(t, in, set).Sheets {
				var open strings.Builder
				for _, text := range texts(t, one.SVG) {
					open.WriteString(text.text + "\n")
				}
				for line := range strings.SplitSeq(outside(open.String()), "\n") {
					line = strings.TrimSpace(line)
					assert.True(t, typed(p, book, line) || alone.MatchString(line), "%s %s: not out of the catalogue: %q", set, one.Paper, line)
				}
			}
		}
	}
}

var alone = regexp.MustCompile(`^[\d\s\x{a0}./,×+·–:→!•¤€%°()-]*(mm|kg|l|h|min|XXX|Hz)?$|^[A-Z]{1,2}$|^[a-z]\d+[a-z]?$|^[0-9A-Z]{6}$|^…$`)

// typed reports whether a line is out of the book or the design.
func typed(p planned, book design.Book, line string) bool {
	for _, task := range book.Tasks {
		if strings.Contains(flat(strings.ToLower(task.Name)), flat(strings.ToLower(line))) {
			return true
		}
	}
	for _, s := range book.Stages {
		if strings.EqualFold(s.Name, line) {
			return true
		}
	}
	for _, x := range p.doc.Design.Money.Extras {
		if strings.Contains(line, x.Name) {
			return true
		}
	}
	return false
}

// outside is what stands outside all brackets of the pseudo-language; a sentence may
// go over several lines.
func outside(s string) string {
	depth := 0
	var out strings.Builder
	for _, r := range s {
		switch {
		case r == '⟦':
			depth++
		case r == '⟧':
			depth--
		case depth <= 0 || r == '\n':
			out.WriteRune(r)
		}
	}
	return out.String()
}
