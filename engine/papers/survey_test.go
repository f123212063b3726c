package papers_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
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
	assert.Contains(t, text, "4 to carry it upright (25 kg each), a named method to lift it (above 60")
	light := textOf(t, make1(t, job(t, "default").input(length.Metric, sheet.A4()), papers.HangSet), "lifting-plan")
	// 38.8 kg by three are 12.9 kg each, more than the 12.3 kg of the equation (TestLiftOn).
	assert.Contains(t, strings.ReplaceAll(light, "\n", " "), "2 to carry it upright (25 kg each: common practice, no source), 4 to lift it by the limit below")
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
	// A foot that reaches further ahead than behind lies so under the middle of mass.
	doc := p.doc
	doc.Design = designtest.Job(t, "s3")
	doc.Design.Walls[0].Groups[0].Stand.BaseDepth, doc.Design.Walls[0].Groups[0].Stand.ToeAhead = length.MM(560), length.MM(320)
	uneven := of(make1(t, planOf(t, doc, design.DefaultBook()).input(length.Metric, sheet.A4()), papers.HangSet), "stand-sheet")
	middle, foot := 0.0, node{}
	walk = func(n node) {
		if n.XMLName.Local == "line" && n.attr("stroke-dasharray") != "" && n.attr("x1") == n.attr("x2") {
			middle = n.number("x1")
		}
		if n.XMLName.Local == "rect" && n.number("height") > 1 && n.number("height") < 1.9 && foot.XMLName.Local == "" && n.attr("fill") == "none" {
			foot = n
		}
		for _, c := range n.Children {
			walk(c)
		}
	}
	walk(parse(t, uneven[0].SVG))
	assert.InDelta(t, 240.0/320, (middle-foot.number("x"))/(foot.number("x")+foot.number("width")-middle), 0.01)
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
	drawn := 0
	for _, d := range s.Drawings {
		for i, step := range h.WaySteps() {
			if d.Name == fmt.Sprintf("turn-1-%d", i+1) {
				drawn++
				turnIsDrawn(t, d.SVG(), step.A.Millimetres(), step.B.Millimetres(), 1087, 1000*h.Packed().DeepM)
			}
		}
	}
	assert.Equal(t, 2, drawn)
	for _, name := range jobs() {
		p, corners, drawn := job(t, name), 0, 0
		for _, h := range p.plan.Hangings {
			for _, step := range h.WaySteps() {
				if step.Measured && !step.A.IsZero() && !step.B.IsZero() {
					corners++
				}
			}
		}
		for _, d := range make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet).Drawings {
			if strings.HasPrefix(d.Name, "turn-") {
				drawn++
			}
		}
		assert.Equal(t, corners, drawn, "%s: each corner that was measured is drawn", name)
	}
}

// turnIsDrawn reads a corner back: a box so long and thick between the outer walls of
// passages a and b wide.
func turnIsDrawn(t *testing.T, svg string, a, b, long, thick float64) {
	t.Helper()
	var walls [][4]float64
	var box []float64
	var walk func(n node)
	walk = func(n node) {
		switch {
		case n.XMLName.Local == "line" && n.attr("stroke-width") == "1":
			walls = append(walls, [4]float64{n.number("x1"), n.number("y1"), n.number("x2"), n.number("y2")})
		case n.XMLName.Local == "path" && strings.HasPrefix(n.attr("fill"), "url") && box == nil:
			for _, part := range strings.FieldsFunc(n.attr("d"), func(r rune) bool { return strings.ContainsRune("MLz ,", r) }) {
				v, err := strconv.ParseFloat(part, 64)
				require.NoError(t, err, n.attr("d"))
				box = append(box, v)
			}
		}
		for _, c := range n.Children {
			walk(c)
		}
	}
	walk(parse(t, svg))
	require.Len(t, walls, 4)
	require.Len(t, box, 8)
	outX, outY, inX, inY := walls[0][2], walls[0][3], walls[2][2], walls[2][3]
	k := a / (outY - inY)
	assert.InDelta(t, b, k*(outX-inX), 0.02*k)
	px, py, qx, qy := box[0], box[1], box[2], box[3]
	assert.InDelta(t, outY, py, 0.02, "one end touches the first outer wall")
	assert.InDelta(t, outX, qx, 0.02, "and the other one the second")
	assert.InDelta(t, long, k*math.Hypot(qx-px, qy-py), 0.05*k)
	assert.InDelta(t, thick, k*math.Hypot(box[4]-qx, box[5]-qy), 0.05*k)
	square := ((box[4]-qx)*(qx-px) + (box[5]-qy)*(qy-py)) / math.Hypot(qx-px, qy-py)
	assert.InDelta(t, 0, square, 0.05, "its corners are square")
	// The inner corner lies beyond the box by what is left over at the tightest angle.
	sin, cos := math.Sincos(wall.TightestTurn(a/1000, b/1000, thick/1000))
	off := math.Abs((inX-qx)*(qy-py)-(inY-qy)*(qx-px)) / math.Hypot(qx-px, qy-py)
	assert.InDelta(t, a*cos+b*sin-long*sin*cos, k*off, 0.05*k)
	assert.Greater(t, k*off, thick, "it passes")
}

// A strip in the wall that is higher than those of the shop is bought as a board of its
// own: the list says so for each.
func TestStripsInTheWallAreBought(t *testing.T) {
	p := job(t, "s8")
	require.NotZero(t, p.plan.Bill.Groups[0].StripM2)
	made, ok := papers.Make(p.input(length.Metric, sheet.A4()), papers.BookSet)
	require.True(t, ok)
	var bought []string
	for _, s := range made.Sheets {
		for _, text := range texts(t, s.SVG) {
			if strings.HasPrefix(text.text, "Board for the strip in the wall") {
				bought = append(bought, text.text)
			}
		}
	}
	assert.NotEmpty(t, bought)
}
