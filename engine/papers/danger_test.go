package papers_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// corners are those of the polygon in a group of a drawing, x and y in turn.
func corners(t *testing.T, root node, group string) [][2]float64 {
	t.Helper()
	var path string
	var walk func(n node, in string)
	walk = func(n node, in string) {
		if n.XMLName.Local == "g" {
			in = n.attr("class")
		}
		if n.XMLName.Local == "path" && in == group {
			path = n.attr("d")
		}
		for _, c := range n.Children {
			walk(c, in)
		}
	}
	walk(root, "")
	require.NotEmpty(t, path, group)
	var all [][2]float64
	numbers := regexp.MustCompile(`-?[\d.]+`).FindAllString(path, -1)
	for i := 0; i+1 < len(numbers); i += 2 {
		x, _ := strconv.ParseFloat(numbers[i], 64)
		y, _ := strconv.ParseFloat(numbers[i+1], 64)
		all = append(all, [2]float64{x, y})
	}
	return all
}

// A cleat holds when its wall half stands highest away from the wall and slopes towards
// it, with the panel's half reaching down behind that edge: so it is drawn on the day of
// hanging, and so it is said in both languages.
func TestStripCatches(t *testing.T) {
	p := job(t, "s2")
	in := p.input(length.Metric, sheet.A4())
	s := make1(t, in, papers.HangSet)
	for _, one := range of(s, "hang-sheet")[:1] {
		root := parse(t, one.SVG)
		strip, half := corners(t, root, "strip"), corners(t, root, "half")
		wall, room := math.Inf(1), math.Inf(-1)
		for _, c := range strip {
			wall, room = min(wall, c[0]), max(room, c[0])
		}
		top := func(all [][2]float64, x float64, better func(a, b float64) float64, y float64) float64 {
			for _, c := range all {
				if math.Abs(c[0]-x) < 0.02 {
					y = better(y, c[1])
				}
			}
			return y
		}
		less, more := func(a, b float64) float64 { return min(a, b) }, func(a, b float64) float64 { return max(a, b) }
		atWall, atRoom := top(strip, wall, less, math.Inf(1)), top(strip, room, less, math.Inf(1))
		assert.Less(t, atRoom, atWall-1, "y grows downwards: the high edge is away from the wall")
		hook := top(half, wall, more, math.Inf(-1))
		assert.Greater(t, hook, atRoom+1, "the panel's half reaches down behind the strip's edge")
		assert.InDelta(t, atWall, hook, 0.05, "and lies on its slope")
	}
	flat := func(s papers.Set) string { return strings.ReplaceAll(said(t, s), "\n", " ") }
	assert.Contains(t, flat(s), "high edge away from the wall, its slope falling towards the wall")
	in.Words = words.Reader{Language: words.German(), Units: length.Metric}
	assert.Contains(t, flat(make1(t, in, papers.HangSet)), "hohe Kante von der Wand weg, ihre Schräge zur Wand hin abfallend")
}

// Row cards are cut apart: each says its panel, where there are several, with its letter,
// and the revision. The panels of a job differ.
func TestEachRowCardSaysItsPanel(t *testing.T) {
	for _, name := range []string{"s7", "s3", "s8", twoWoods} {
		p := job(t, name)
		for _, in := range []papers.Input{p.input(length.Metric, sheet.A4()), p.input(length.Inch16, sheet.Letter())} {
			rows := 0
			named := map[string]int{}
			for _, one := range of(make1(t, in, papers.GlueSet), "row-cards") {
				cards := 0
				for _, text := range texts(t, one.SVG) {
					switch text.class {
					case "row":
						rows++
						cards++
					case "card-revision":
						cards--
						assert.Equal(t, p.plan.Revision, text.text)
					case "card-panel":
						named[text.text]++
					}
				}
				assert.Zero(t, cards, "%s: as many revisions as rows", name)
			}
			require.Len(t, p.job.Cards, rows)
			g := p.plan.Groups[0].Built
			if len(g.Panels) == 1 {
				continue
			}
			require.Len(t, named, len(g.Panels), name)
			for i, panel := range g.Panels {
				assert.Equal(t, g.Rows, named["Panel "+strconv.Itoa(i+1)+" ("+string(panel.Letter)+")"], name)
			}
		}
	}
}

// Numerals of row cards keep clear of one another and of the divider between them, which
// reads as a figure where it stands close by.
func TestNumeralsOfCardsAreApart(t *testing.T) {
	const least = 1.9 // mm
	for _, name := range jobs() {
		for _, in := range []papers.Input{job(t, name).input(length.Metric, sheet.A4()), job(t, name).input(length.Metric, sheet.Letter())} {
			pairs := 0
			for _, one := range of(make1(t, in, papers.GlueSet), "row-cards") {
				all := slices.DeleteFunc(texts(t, one.SVG), func(p printed) bool { return p.in != "heights" })
				for _, line := range lines(all) {
					for i := range line[1:] {
						pairs++
						gap := line[i+1].left() - line[i].left() - line[i].width()
						require.Greater(t, gap, least, "%s, %s: %q and %q", name, one.Title, line[i].text, line[i+1].text)
					}
				}
			}
			require.Positive(t, pairs, name)
		}
	}
}

// Numerals of inches on cards and labels: every figure of a fraction is as high as those
// of the whole where hands are busy, and no bar runs through one.
func TestFractionsAreClear(t *testing.T) {
	s5 := job(t, "s5").input(length.Inch16, sheet.Letter())
	for _, c := range []struct {
		set, paper string
		least      float64
	}{{papers.GlueSet, "row-cards", 5}, {papers.CutSet, "bin-labels", 5}} {
		found := 0
		for _, one := range of(make1(t, s5, c.set), c.paper) {
			var figures []printed
			for _, text := range texts(t, one.SVG) {
				if text.in == "heights" || text.in == "fractions" {
					figures = append(figures, text)
					assert.GreaterOrEqual(t, text.size/sheet.FigureSize(1), c.least-0.01, "%s: %q", c.paper, text.text)
				}
			}
			var walk func(n node, in string)
			walk = func(n node, in string) {
				if n.XMLName.Local == "g" {
					in = n.attr("class")
				}
				if n.XMLName.Local == "line" && in == "bars" {
					found++
					y, from, to := n.number("y1"), n.number("x1"), n.number("x2")
					for _, f := range figures {
						if f.left() < to && f.left()+f.width() > from {
							high := f.size / sheet.FigureSize(1)
							clear := f.y < y-0.4 || f.y-high > y+0.4
							assert.True(t, clear || f.in == "heights", "%s: the bar at %.1f runs into %q", c.paper, y, f.text)
						}
					}
				}
				for _, c := range n.Children {
					walk(c, in)
				}
			}
			walk(parse(t, one.SVG), "")
		}
		assert.NotZero(t, found, c.paper)
	}
}

// Each ring of a rear map has its distance from the left edge at it, as the list has it,
// in figures of 5 mm; the list stands beside the map or faces it whole.
func TestRingsHaveTheirDistances(t *testing.T) {
	for _, name := range jobs() {
		p := job(t, name)
		for _, in := range []papers.Input{p.input(length.Metric, sheet.A4()), p.input(length.Inch16, sheet.Letter())} {
			want, got := map[string]int{}, map[string]int{}
			for _, h := range p.plan.Hangings {
				seen := map[byte]bool{}
				for i, built := range h.Built.Panels {
					if seen[built.Letter] {
						continue
					}
					seen[built.Letter] = true
					for _, hole := range h.Halves[i].Holes(h.Halves[i].Row) {
						want[in.Words.Number(length.ToTenth(hole.FromLeftMM))]++
					}
				}
			}
			for _, one := range of(make1(t, in, papers.HangSet), "rear-map") {
				for _, text := range texts(t, one.SVG) {
					if text.class == "ring-distance" {
						got[text.text]++
						assert.GreaterOrEqual(t, text.size/sheet.FigureSize(1), 4.99)
					}
				}
			}
			assert.Equal(t, want, got, name)
		}
	}
}

// What one person may not carry nobody weighs in the arms.
func TestHeavyPanelsAreNotWeighedInArms(t *testing.T) {
	for _, name := range jobs() {
		p := job(t, name)
		heaviest := 0.0
		for _, h := range p.plan.Hangings {
			heaviest = max(heaviest, h.Kg())
		}
		text := said(t, make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet))
		assert.Equal(t, heaviest <= 25, strings.Contains(text, "weigh yourself with the panel"), "%s: %.1f kg", name, heaviest)
	}
}

// Room to hook a panel on is cleared by nothing but another design: there is no line to
// sign.
func TestNoLineClearsTheLiftRoom(t *testing.T) {
	in := job(t, "s5").input(length.Inch16, sheet.Letter())
	for _, set := range []string{papers.CutSet, papers.HangSet} {
		text := strings.ReplaceAll(said(t, make1(t, in, set)), "\n", " ")
		require.Contains(t, text, "Hooking the panel on takes")
		assert.Contains(t, text, "neither signature nor evidence clears this")
	}
}

// Files that are taken out of the archive say by themselves of which job and revision
// they are, from which side they are seen, and whether they print true.
func TestFilesStandAlone(t *testing.T) {
	p := job(t, "s7")
	s := make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet)
	for _, d := range s.Drawings {
		assert.Contains(t, d.SVG(), p.plan.Revision, d.Name)
		if strings.HasPrefix(d.Name, "rear-map") {
			assert.Contains(t, d.SVG(), "REAR VIEW", d.Name)
		}
	}
	backs := map[string]string{"rear-holes-1": "Back A: panels 1, 2, 3, 5 of 5", "rear-holes-2": "Back B: panel 4 of 5"}
	for _, d := range s.FullSize {
		assert.Contains(t, d.SVG(), "Scale check", d.Name)
		assert.Contains(t, d.SVG(), p.plan.Revision, d.Name)
		if back, ok := backs[d.Name]; ok {
			assert.Contains(t, d.SVG(), back, d.Name)
			delete(backs, d.Name)
		}
	}
	assert.Empty(t, backs)
}

// Lifting plan, weigh slip and the day of hanging ask for the same number of people. Of
// S2, 57.8 kg by four are 14.5 kg each, and the equation allows 12.3: five.
func TestPapersAgreeOnLifters(t *testing.T) {
	s := make1(t, job(t, "s2").input(length.Metric, sheet.A4()), papers.HangSet)
	for paper, want := range map[string]string{
		"lifting-plan": "5 to lift it by the limit below", "weigh-slip": "5 to lift it above the chest", "hang-sheet": "5 people lift the panel on",
	} {
		text := strings.ReplaceAll(textOf(t, s, paper), "\n", " ")
		assert.Contains(t, text, want, paper)
	}
}
