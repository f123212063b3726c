package papers_test

import (
	"testing"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What belongs on one sheet stands on one, on A4 and on Letter: what a client signs and
// keeps, the cautions with whoever was told, and what a home builder reads first.
func TestOneSheetEach(t *testing.T) {
	for _, name := range jobs() {
		for _, in := range []papers.Input{job(t, name).input(length.Metric, sheet.A4()), job(t, name).input(length.Metric, sheet.Letter())} {
			in.Site = "https://blocks.example/"
			offer, cut, hang := make1(t, in, papers.OfferSet), make1(t, in, papers.CutSet), make1(t, in, papers.HangSet)
			assert.LessOrEqual(t, len(of(offer, "look-card")), 2, "%s on %s: what is seen, and what it is made of with its care", name, in.Format.Name)
			for paper, set := range map[string]papers.Set{"offer": offer, "safety": cut, "cleat": hang} {
				all := of(set, paper)
				if name == "s3" && paper == "cleat" { // it stands on the floor
					require.Empty(t, all)
					continue
				}
				assert.Len(t, all, 1, "%s on %s, %s", name, in.Format.Name, paper)
			}
		}
	}
	for _, format := range sheet.Formats() {
		in := job(t, "s8").input(length.Metric, format)
		in.Site = "https://blocks.example/"
		book := make1(t, in, papers.BookSet)
		assert.Len(t, of(book, "before"), 1, format.Name)
		assert.Len(t, of(book, "rear-map"), 1, format.Name)
		assert.Len(t, of(book, "row-cards"), 2, format.Name)
	}
}

// The time sheet of a job that others hang is one sheet, and a rear map has its list of rings
// below it, where smaller type and a smaller picture are enough for that.
func TestListsStandWithTheirMaps(t *testing.T) {
	for _, language := range []words.Language{words.English(), words.German()} {
		in := job(t, "s1").input(length.Metric, sheet.A4())
		in.Words.Language = language
		assert.Len(t, of(make1(t, in, papers.GlueSet), "time-sheet"), 1, language.Tag)
	}
	assert.Len(t, of(make1(t, job(t, "s1").input(length.Metric, sheet.Letter()), papers.HangSet), "hang-sheet"), 2, "what shows the strip stands beside a wall that leaves room for it")
	in := job(t, "s7").input(length.Metric, sheet.A4())
	maps := of(make1(t, in, papers.HangSet), "rear-map")
	require.Len(t, maps, 2, "a sheet for each back")
	for _, one := range maps {
		assert.Positive(t, count(texts(t, one.SVG), func(p printed) bool { return p.text == "Ring" }), "the list stands below its map")
	}
}

// A cover is one sheet wherever closer facts and a strip of gates make it one: all that holds
// the job up is seen at once.
func TestCoversAreOneSheet(t *testing.T) {
	for _, name := range []string{"default", "s1", "s2", "s3", "s4", "s5", "s7", "s8", "p2"} {
		for _, in := range []papers.Input{job(t, name).input(length.Metric, sheet.A4()), job(t, name).input(length.Inch16, sheet.Letter())} {
			in.Site = "https://blocks.example/"
			cover := of(make1(t, in, papers.CutSet), "cover")
			require.Len(t, cover, 1, "%s on %s", name, in.Format.Name)
			said := flat(said(t, papers.Set{Sheets: cover}))
			for _, g := range in.Plan.Gates() {
				if g.Gate != check.Share {
					assert.Contains(t, said, flat(in.Words.Say("gate/"+string(g.Gate), nil))[1:], name)
				}
			}
			for _, who := range []string{"maker", "helper", "start", "ready", "hung"} {
				assert.Contains(t, said, flat(in.Words.Say("cover/"+who, nil)), name)
			}
		}
	}
}

// German, which is longer, takes no sheet more for what belongs on one, and what goes wrong
// stands with the rows that are laid.
func TestOneSheetEachInGerman(t *testing.T) {
	in := job(t, "s5").input(length.Inch16, sheet.Letter())
	in.Words.Language = words.German()
	assert.Len(t, of(make1(t, in, papers.HangSet), "cleat"), 1)
	assert.Len(t, of(make1(t, in, papers.SurveySet), "survey-blank"), 1)
	in = job(t, "s8").input(length.Metric, sheet.A4())
	in.Words.Language = words.German()
	heard, err := engine.Hear(in.Doc.Design)
	require.NoError(t, err)
	in.Heard = &heard
	book := make1(t, in, papers.BookSet)
	assert.Len(t, of(book, "before"), 1)
	troubles := of(book, "troubles")
	require.Len(t, troubles, 1)
	assert.Equal(t, "lay-up", troubles[0].Paper)
}

// A code takes no room from what stands on a sheet.
func TestACodeCostsNoSheet(t *testing.T) {
	for _, name := range []string{"s2", "s8"} {
		for _, set := range []string{papers.CutSet, papers.GlueSet, papers.BookSet} {
			in := job(t, name).input(length.Metric, sheet.Letter())
			without := len(make1(t, in, set).Sheets)
			in.Site = "https://blocks.example/"
			assert.Len(t, make1(t, in, set).Sheets, without, "%s, %s", name, set)
		}
	}
}

// Counting sheets draws nothing twice: each drawing is a file of its own once.
func TestDrawingsOnce(t *testing.T) {
	set := make1(t, job(t, "s1").input(length.Metric, sheet.Letter()), papers.HangSet)
	names := map[string]bool{}
	for _, d := range set.Drawings {
		assert.False(t, names[d.Name], d.Name)
		names[d.Name] = true
	}
	assert.NotEmpty(t, names)
}
