package papers_test

import (
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

// What was counted stands on the count card, and what the bins lack on a list of its own:
// need 52, 40 good, so 12 are short and 14 are cut. Without a count there is neither.
func TestPapersOfWhatWasCounted(t *testing.T) {
	plain := job(t, "s8")
	set := make1(t, plain.input(length.Metric, sheet.A4()), papers.CutSet)
	assert.Empty(t, of(set, "recut"))
	before := textOf(t, set, "count-card")

	c := plain.job.Counts[0]
	require.Greater(t, c.Need, 12)
	counted := withRecord(plain, func(r *design.Record) {
		r.Bins = []design.Bin{{Wood: c.Bin.Wood, Size: c.Bin.Size, Height: c.Bin.Height, Cut: c.Need - 7, Rejects: 5, Revision: "000000"}}
	})
	for _, name := range []string{papers.CutSet, papers.GlueSet} {
		set = make1(t, counted.input(length.Metric, sheet.A4()), name)
		require.Len(t, of(set, "recut"), 1, name)
		lines := strings.Join(strings.Fields(textOf(t, set, "recut")), " ")
		height := c.Bin.Height.String()
		assert.Contains(t, lines, height+" "+strconv.Itoa(c.Need)+" "+strconv.Itoa(c.Need-12)+" 12 14", name)
		card := strings.Join(strings.Fields(textOf(t, set, "count-card")), " ")
		assert.Contains(t, card, strconv.Itoa(c.Need+c.Spare)+" "+strconv.Itoa(c.Need-7)+" 5 "+strconv.Itoa(c.Need-12)+" 12", name)
		assert.NotEqual(t, before, textOf(t, set, "count-card"))
	}
}

// A room that the public comes into has a sheet for what was put on against fire, with
// what is noted and with blank lines for what is not; it says that it proves nothing.
func TestFireRecord(t *testing.T) {
	assert.Empty(t, of(make1(t, job(t, "s8").input(length.Metric, sheet.A4()), papers.GlueSet), "fire-record"), "at home nobody asks")
	school := job(t, "s4")
	text := textOf(t, make1(t, school.input(length.Metric, sheet.A4()), papers.GlueSet), "fire-record")
	assert.Contains(t, text, "This is a record, not a class, a test or an approval")
	assert.Contains(t, text, "for the authority")
	assert.Contains(t, text, "Nobody has written down an answer yet")

	noted := withRecord(school, func(r *design.Record) {
		r.Treated = design.Treated{Product: "Invented clear coat, Invented Ltd", Batch: "A-17", Coverage: 350, Where: "all faces", Day: "2026-03-02", By: "B. Brush"}
		r.Asked.Fire = "C. Warden, 3 May: class B"
	})
	text = strings.Join(strings.Fields(textOf(t, make1(t, noted.input(length.Metric, sheet.A4()), papers.GlueSet), "fire-record")), " ")
	for _, want := range []string{"Invented clear coat", "A-17", "350 g/m²", "all faces", "2026-03-02", "B. Brush", "class B"} {
		assert.Contains(t, text, want)
	}
	// By hand: the blocks' tops and sides, at 350 g/m².
	s := school.plan.Bill.Surfaces
	tops := 0.0
	for _, g := range school.plan.Groups {
		for _, p := range g.Built.Panels {
			tops += p.TopsM2
		}
	}
	assert.InDelta(t, tops, s.EndM2, 1e-12)
	assert.Positive(t, s.LongM2)
	assert.Positive(t, s.FrameM2)

	// A finish that is for it asks as well, wherever the panel hangs.
	varnished := design.Clone(job(t, "s8").doc)
	varnished.Design.Walls[0].Groups[0].Finish.Kind = "fire-retardant varnish"
	assert.NotEmpty(t, of(make1(t, planOf(t, varnished, design.DefaultBook()).input(length.Metric, sheet.A4()), papers.GlueSet), "fire-record"))
}

// The hang sheet of a wall out of flat says what is packed where, and the survey how far
// out of flat it is; of a wall without studs nobody asks for them.
func TestShimsOnPaper(t *testing.T) {
	doc := design.Clone(design.Default())
	doc.Design.Walls[0].Bow = length.MM(8)
	p := planOf(t, doc, design.DefaultBook())
	text := strings.Join(strings.Fields(textOf(t, make1(t, p.input(length.Metric, sheet.A4()), papers.HangSet), "hang-sheet")), " ")
	assert.Contains(t, text, "2 mm at 1500 mm, 2 mm at 2100 mm from the left corner")
	assert.Contains(t, text, "Hold the strip to the line and look along it")
	assert.Contains(t, text, "more than 5 mm is much")
	survey := textOf(t, make1(t, p.input(length.Metric, sheet.A4()), papers.SurveySet), "survey")
	assert.Contains(t, survey, "Out of flat under 2 m")
	assert.Contains(t, survey, "First stud")
	brick := textOf(t, make1(t, job(t, "s2").input(length.Metric, sheet.A4()), papers.SurveySet), "survey")
	assert.NotContains(t, brick, "First stud")
	plain := strings.Join(strings.Fields(textOf(t, make1(t, job(t, "default").input(length.Metric, sheet.A4()), papers.HangSet), "hang-sheet")), " ")
	assert.NotContains(t, plain, "Packed behind")
}
