package papers_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The cover says how long it all takes, how many work on it and how much each does a day;
// the time sheet has a line for everything that those hours are made of, and ends with them.
func TestHoursAgree(t *testing.T) {
	doc := design.Clone(job(t, "s1").doc)
	doc.Design.Work.ExtraShop, doc.Design.Work.ExtraSite, doc.Design.Work.Crew = 90, 30, 3
	p := planOf(t, doc, design.DefaultBook())
	in := p.input(length.Metric, sheet.A4())
	set := make1(t, in, papers.GlueSet)
	hours := p.plan.Bill.Hours
	cover := said(t, papers.Set{Sheets: of(set, "cover")})
	total := in.Words.Show(words.Hours(hours.Total.Typical))
	assert.Contains(t, cover, total+" in all, "+in.Words.Show(words.Hours(hours.Shop.Typical))+" of them in")
	assert.Contains(t, strings.Join(strings.Fields(cover), " "), "3, each "+in.Words.Show(words.Hours(6))+" of work a day")

	var minutes []int
	var names []string
	for _, s := range of(set, "time-sheet") {
		for _, text := range texts(t, s.SVG) {
			if n, err := strconv.Atoi(text.text); err == nil && text.anchor == "end" {
				minutes = append(minutes, n)
			}
			names = append(names, text.text)
		}
	}
	require.NotEmpty(t, minutes)
	sum, last := 0, minutes[len(minutes)-1]
	for _, n := range minutes[:len(minutes)-1] {
		sum += n
	}
	assert.InDelta(t, hours.Total.Typical*60, float64(last), 0.5)
	assert.InDelta(t, last, sum, float64(len(minutes))/2, "each line is rounded by itself")
	for _, want := range []string{"Further time in the shop", "Further time on site", "On the road", "All: " + total} {
		assert.Contains(t, names, want)
	}
}

// One figure reads the same wherever it is printed: how far the frame stands before the
// blocks is what lies between the two depths beside it, on the bench's paper and the client's.
func TestRevealReadsTheSame(t *testing.T) {
	for _, units := range []length.Units{length.Metric, length.Inch16, length.Inch32} {
		p := job(t, "s5")
		in := p.input(units, sheet.Letter())
		list := strings.Join(strings.Fields(said(t, papers.Set{Sheets: of(make1(t, in, papers.CutSet), "frame")})), " ")
		card := strings.Join(strings.Fields(said(t, papers.Set{Sheets: of(make1(t, in, papers.OfferSet), "look-card")})), " ")
		_, rest, ok := strings.Cut(list, "the blocks stand ")
		require.True(t, ok, list)
		reveal, _, _ := strings.Cut(rest, " behind its edge")
		assert.Contains(t, card, "its edge "+reveal+" in front of the tallest block", units)
		built := p.plan.Groups[0].Built
		if units != length.Metric {
			steps := 16.0
			if units == length.Inch32 {
				steps = 32
			}
			shown := func(l length.Length) int { return int(l.Millimetres()/25.4*steps + 0.5) }
			assert.Equal(t, in.Words.Show(length.Sixtyfourths(int64(float64(shown(built.FrameDepth)-shown(built.Stack))*64/steps))), reveal)
		}
	}
}

// The parts of the section through the frame have their names.
func TestSectionNamesItsParts(t *testing.T) {
	in := job(t, "s5").input(length.Metric, sheet.A4())
	for paper, set := range map[string]string{"frame": papers.CutSet, "look-card": papers.OfferSet} {
		var names []string
		for _, s := range of(make1(t, in, set), paper) {
			for _, text := range texts(t, s.SVG) {
				if text.class == "layer" {
					names = append(names, text.text)
				}
			}
		}
		assert.Equal(t, []string{"Wall", "Cleat", "Backer", "Tallest block"}, names, paper)
	}
}

// Figures that are read with both hands at the work are 5 mm high: dimensions of every
// drawing, sums of a tally, numbers of rows and columns, settings, distances.
func TestFiguresAtArmsLength(t *testing.T) {
	const least = 5.0 - 0.01
	figures := map[string]bool{
		"column": true, "row": true, "tally": true, "row-number": true, "row-distance": true, "ring-number": true, "ring-distance": true, "setting": true,
	}
	for _, name := range jobs() {
		seen := map[string]int{}
		for _, in := range []papers.Input{job(t, name).input(length.Metric, sheet.A4()), job(t, name).input(length.Inch16, sheet.Letter())} {
			for _, set := range []string{papers.CutSet, papers.GlueSet, papers.HangSet} {
				for i, s := range make1(t, in, set).Sheets {
					for _, text := range texts(t, s.SVG) {
						what := text.class
						if text.in == "dimension" || text.in == "heights" || text.in == "fractions" {
							what = text.in
						} else if !figures[what] {
							continue
						}
						seen[what]++
						assert.GreaterOrEqual(t, text.size/sheet.FigureSize(1), least, "%s %s sheet %d (%s): %s %q", name, set, i+1, s.Paper, what, text.text)
					}
				}
			}
		}
		for _, what := range []string{"dimension", "column", "tally", "row-distance", "heights"} {
			assert.Positive(t, seen[what], fmt.Sprintf("%s: %s", name, what))
		}
	}
}

// What a client may sign, and what a home builder begins with, names every Stop that stands:
// in the box with the sign of a Stop, or under its gate.
func TestStopsAreNeverSilent(t *testing.T) {
	doc := design.Clone(job(t, "s5").doc)
	doc.Design.Work.OwnBuild = true
	home := planOf(t, doc, design.DefaultBook())
	for _, p := range []planned{job(t, "s5"), home} {
		require.Contains(t, codesOf(p.plan), "wall/lift-room")
		in := p.input(length.Inch16, sheet.Letter())
		sets := map[string]string{papers.OfferSet: "offer", papers.BookSet: "before"}
		for set, paper := range sets {
			text := strings.Join(strings.Fields(said(t, papers.Set{Sheets: of(make1(t, in, set), paper)})), " ")
			for _, w := range p.plan.WatchOuts {
				if w.Level == check.Stop {
					assert.Contains(t, text, in.Words.Say(w.Code, w.Args), "%s: %s", set, w.Code)
				}
			}
		}
	}
}

func codesOf(r engine.Result) []string {
	var all []string
	for _, w := range r.WatchOuts {
		if w.Level == check.Stop {
			all = append(all, w.Code)
		}
	}
	return all
}
