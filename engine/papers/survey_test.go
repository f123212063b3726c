package papers_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/wall"
)

// textOf is what a paper of a set says.
func textOf(t *testing.T, s papers.Set, paper string) string {
	t.Helper()
	var b strings.Builder
	for _, one := range of(s, paper) {
		for _, text := range texts(t, one.SVG) {
			b.WriteString(text.text + "\n")
		}
	}
	return b.String()
}

// withRecord is a job with something in its record, planned for it.
func withRecord(p planned, change func(*design.Record)) planned {
	rec := design.NewRecord()
	change(&rec)
	p.job = engine.Follow(p.doc.Design, p.plan, rec, "")
	p.plan = p.plan.During(p.job)
	return p
}

// The sheet to be filled in is one page for everybody; the filled one has what is known,
// marks what nobody has measured, and repeats the answers of the record.
func TestSurveySheets(t *testing.T) {
	for _, f := range []sheet.Format{sheet.A4(), sheet.Letter()} {
		for _, u := range []length.Units{length.Metric, length.Inch16} {
			assert.Equal(t, 1, len(of(make1(t, job(t, "s7").input(u, f), papers.SurveySet), "survey-blank")), "sheets")
		}
	}
	cafe := withRecord(job(t, "s5"), func(r *design.Record) { r.Asked.Drill = "The landlord, 4 May" })
	text := textOf(t, make1(t, cafe.input(length.Inch16, sheet.A4()), papers.SurveySet), "survey")
	for _, want := range []string{"168 in", "16 in\n", "88 1/2", "144 × 10 3/4", "The landlord, 4 May", "3/4 in is there"} {
		assert.Contains(t, text, want)
	}
	assert.NotContains(t, text, " *\n", "all of it was measured")
	assert.NotContains(t, text, "Door of the lift", "there is none")
	first := textOf(t, make1(t, job(t, "default").input(length.Metric, sheet.A4()), papers.SurveySet), "survey")
	assert.Contains(t, first, "3500 mm *")
	assert.Contains(t, first, "Nobody has measured it yet")
	flat := textOf(t, make1(t, job(t, "s3").input(length.Metric, sheet.A4()), papers.SurveySet), "survey")
	assert.Contains(t, flat, "850 mm")
}

// A line for each of those who lift, with the names that are known; the mass that was
// weighed, or between what it may be.
func TestLiftingPlan(t *testing.T) {
	p := job(t, "p2")
	kg := p.plan.Hangings[0].Kg()
	text := textOf(t, make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet), "lifting-plan")
	assert.Contains(t, text, "weigh it before it is lifted")
	assert.Contains(t, text, "4 to carry it upright (25 kg each), 6 to lift it")
	assert.Contains(t, text, "nobody should lift more than")
	assert.InDelta(t, 77.3, kg, 1)
	weighed := withRecord(p, func(r *design.Record) {
		r.Weighed = []design.Weighed{{Wall: 1, Group: 1, Kg: 74}}
		r.Hung.People = []string{"Ada", "Bo", "Cy", "Di", "Ed"}
	})
	text = textOf(t, make1(t, weighed.input(length.Metric, sheet.A4()), papers.HangSet), "lifting-plan")
	assert.Contains(t, text, "74.0 kg on the scales")
	for _, name := range weighed.job.Record.Hung.People {
		assert.Contains(t, text, name+"\n")
	}
	assert.Equal(t, wall.Lifters(74), strings.Count(text, "\n1\n")+strings.Count(text, "\n2\n")+strings.Count(text, "\n3\n")+strings.Count(text, "\n4\n")+strings.Count(text, "\n5\n"))
}

// Where nothing may go into the wall there is a stand sheet and no hang sheet, with the
// angle and the foot that it takes; one that tips is not set up. The drawing's line over
// which it falls has the angle that is said.
func TestStandSheet(t *testing.T) {
	p := job(t, "s3")
	s := make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet)
	assert.Empty(t, of(s, "hang-sheet"))
	assert.Empty(t, of(s, "cleat"))
	text := textOf(t, s, "stand-sheet")
	for _, want := range []string{"forwards at 12°", "203 mm from the middle of mass", "Tie it back where children", "try it with a push"} {
		assert.True(t, strings.Contains(flat(text), flat(want)), want)
	}
	assert.NotContains(t, text, "Bore")
	var slanted []float64
	var walk func(n node)
	walk = func(n node) {
		if n.XMLName.Local == "line" && n.attr("stroke-dasharray") != "" && n.attr("x1") != n.attr("x2") {
			slanted = append(slanted, math.Abs(n.number("x2")-n.number("x1"))/math.Abs(n.number("y2")-n.number("y1")))
		}
		for _, c := range n.Children {
			walk(c)
		}
	}
	walk(parse(t, of(s, "stand-sheet")[0].SVG))
	require.Len(t, slanted, 1)
	assert.InDelta(t, 260.0/1150, slanted[0], 2e-3)
	tips := textOf(t, make1(t, job(t, "s3-second").input(length.Metric, sheet.A4()), papers.HangSet), "stand-sheet")
	assert.Contains(t, tips, "NOT TO BE SET UP YET")
	assert.NotContains(t, tips, "try it with a push")
	for _, name := range []string{"default", "s1", "s7"} {
		assert.Empty(t, of(make1(t, job(t, name).input(length.Metric, sheet.A4()), papers.HangSet), "stand-sheet"), name)
	}
}

// Each fixing stands on the hang sheet with its rule, or with its maker's value and source.
func TestHangSheetSaysWhatHolds(t *testing.T) {
	text := textOf(t, make1(t, job(t, "s1").input(length.Metric, sheet.A4()), papers.HangSet), "hang-sheet")
	f := job(t, "s1").doc.Design.Walls[0].Fixing
	assert.Contains(t, flat(text), flat(f.What))
	assert.Contains(t, flat(text), flat(f.Source))
	text = textOf(t, make1(t, job(t, "default").input(length.Metric, sheet.A4()), papers.HangSet), "hang-sheet")
	assert.Contains(t, flat(text), flat("the busiest screw to 90 %"))
	hung := withRecord(job(t, "default"), func(r *design.Record) { r.Hung.By, r.Hung.Day = "Ada", "2030-06-01" })
	assert.Contains(t, textOf(t, make1(t, hung.input(length.Metric, sheet.A4()), papers.HangSet), "hang-sheet"), "Hung by Ada on 2030-06-01.")
}

// The corners of the way in are drawn with the packed panel where it has least room: both
// its outer corners touch an outer wall, and what it has left over at the inner corner is
// what the formula says.
func TestTurnsAreDrawn(t *testing.T) {
	p := job(t, "s3")
	s := make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet)
	h := p.plan.Hangings[0]
	text := textOf(t, s, "way-in")
	for _, want := range []string{"door 762 mm × 1981 mm, corridor", "flight 850 mm, landing", "1946 mm", "2072 mm"} {
		assert.Contains(t, flat(text), flat(want))
	}
	angle := wall.TightestTurn(0.85, 0.762, h.Packed().DeepM)
	sin, cos := math.Sincos(angle)
	assert.InDelta(t, wall.LongestTurn(0.85, 0.762, h.Packed().DeepM), (0.85*cos+0.762*sin-h.Packed().DeepM)/(sin*cos), 1e-9)
	names := map[string]bool{}
	for _, d := range s.Drawings {
		names[d.Name] = true
	}
	assert.True(t, names["turn-1-1"] && names["turn-1-2"], "%v", names)
}
