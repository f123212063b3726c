package session_test

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// atTheBench is a session with a worked job open, for its maker.
func atTheBench(t testing.TB, name string) *session.Session {
	t.Helper()
	doc := design.Default()
	doc.Design = designtest.Job(t, name)
	s := fresh()
	require.True(t, ask(t, s, session.Request{Op: "open", Text: string(design.Encode(doc)), From: "saved"}).OK)
	require.True(t, set(t, s, "view.reading", "maker").OK)
	return s
}

func row(t testing.TB, s *session.Session, name string) session.Response {
	t.Helper()
	res := ask(t, s, session.Request{Op: "row", Name: name})
	require.True(t, res.OK, "%v", res.Faults)
	return res
}

func kept(t testing.TB, res session.Response) design.Record {
	t.Helper()
	require.NotNil(t, res.Record)
	rec, err := design.DecodeRecord([]byte(*res.Record))
	require.NoError(t, err)
	return rec
}

var (
	cellOf   = regexp.MustCompile(`<li class="rows-cell tone-(\d+)[^"]*">(.*?)</li>`)
	numberOf = regexp.MustCompile(`</span> <b>(\d+)</b></h2>`)
	placeOf  = regexp.MustCompile(`<p class="rows-place">(?:.*, p|P)anel (\d+) of`)
)

// The screens of a job, read back as a person reads them, give its field: each row of
// each panel stands on exactly one of them, with the heights of the design in its
// places. In both notations, from either edge.
func TestScreensGiveTheFieldBack(t *testing.T) {
	for _, c := range []struct {
		job, start string
		units      length.Units
	}{
		{"s7", "bottom", length.Metric}, {"s1", "top", length.Metric}, {"s5", "bottom", length.Inch16}, {"s3", "top", length.Metric},
	} {
		s := atTheBench(t, c.job)
		rec := design.NewRecord()
		rec.Lay.Start = c.start
		require.True(t, ask(t, s, session.Request{Op: "open", Text: string(design.EncodeRecord(rec)), From: "saved"}).OK)
		require.True(t, set(t, s, "view.units", string(c.units)).OK)
		g := s.Plan().Groups[0]
		seen := map[string]bool{}
		screen := row(t, s, "")
		for range g.Built.Rows * len(g.Built.Panels) {
			html := fragment(screen, "rows")
			panel, number := placeOf.FindStringSubmatch(html), numberOf.FindStringSubmatch(html)
			require.NotNil(t, panel, html)
			require.NotNil(t, number)
			at := panel[1] + " " + number[1]
			require.False(t, seen[at], "%s: row %s is on two screens", c.job, at)
			seen[at] = true
			var p, r int
			_, err := fmt.Sscan(at, &p, &r)
			require.NoError(t, err)
			grid := g.Built.Panels[p-1].Grid
			cells := cellOf.FindAllStringSubmatch(html, -1)
			require.Len(t, cells, grid.Columns)
			for column, cell := range cells {
				h := g.Design.Heights[grid.At(r-1, column)]
				want := c.units.Number(h)
				if h.IsZero() {
					want = `<span aria-hidden="true">·</span><span class="sr">empty</span>`
				}
				require.Equal(t, want, cell[2], "%s: panel %d, row %d, column %d", c.job, p, r, column+1)
			}
			screen = row(t, s, "next")
		}
		assert.Len(t, seen, g.Built.Rows*len(g.Built.Panels), c.job)
		assert.Contains(t, fragment(screen, "rows"), "All rows are laid")
	}
}

// What is ticked is in the record that the page keeps, and comes back with it.
func TestTicksAreKept(t *testing.T) {
	s := atTheBench(t, "s8")
	assert.Nil(t, row(t, s, "").Record, "looking changes nothing")
	row(t, s, "next")
	rec := kept(t, row(t, s, "next"))
	assert.Equal(t, []int{13, 14}, rec.Rows[0].Laid, "from the bottom")
	assert.Equal(t, s.Plan().Revision, rec.Rows[0].Revision)
	assert.Equal(t, 3, rec.Lay.At)
	back := row(t, s, "back")
	assert.Contains(t, fragment(back, "rows"), `aria-pressed="true"`)
	rec = kept(t, row(t, s, "tick"))
	assert.Equal(t, []int{14}, rec.Rows[0].Laid)

	again := atTheBench(t, "s8")
	res := ask(t, again, session.Request{Op: "open", Text: string(design.EncodeRecord(rec)), From: "saved"})
	require.True(t, res.OK)
	assert.Equal(t, rec, kept(t, res))
	assert.Contains(t, fragment(row(t, again, ""), "rows"), "1 of 14 rows laid")
	assert.Equal(t, s.Document().Design, again.Document().Design)
}

// Undoing an edit of the design leaves the work as it is; going back to another job
// goes back to that one's work.
func TestTheRecordStaysWithItsJob(t *testing.T) {
	s := atTheBench(t, "s8")
	row(t, s, "next")
	require.True(t, set(t, s, group+".finish.coats", "1").OK)
	row(t, s, "next")
	ask(t, s, session.Request{Op: "undo"})
	assert.Contains(t, fragment(row(t, s, ""), "rows"), "2 of 14 rows laid")

	doc := design.Default()
	doc.Design = designtest.Job(t, "s7")
	require.True(t, ask(t, s, session.Request{Op: "open", Text: string(design.Encode(doc)), From: "file"}).OK)
	assert.Contains(t, fragment(row(t, s, ""), "rows"), "0 of 295 rows laid")
	row(t, s, "next")
	require.True(t, ask(t, s, session.Request{Op: "undo"}).OK)
	assert.Contains(t, fragment(row(t, s, ""), "rows"), "2 of 14 rows laid")
	require.True(t, ask(t, s, session.Request{Op: "redo"}).OK)
	assert.Contains(t, fragment(row(t, s, ""), "rows"), "1 of 295 rows laid")
}

// Rows from other cards are said, nothing is ticked on them, and a panel can be begun
// anew.
func TestRowsOfAnotherRevision(t *testing.T) {
	s := atTheBench(t, "s8")
	before := s.Plan().Revision
	row(t, s, "next")
	require.True(t, set(t, s, group+".pattern.order", "11").OK)
	screen := fragment(row(t, s, ""), "rows")
	assert.Contains(t, screen, "cards of revision "+before)
	assert.NotContains(t, screen, "rows-cell")
	assert.Equal(t, []int{14}, kept(t, row(t, s, "tick")).Rows[0].Laid)
	anew := row(t, s, "anew")
	assert.Empty(t, kept(t, anew).Rows[0].Laid)
	assert.Contains(t, fragment(anew, "rows"), "rows-cell")
}

// A record that cannot be read changes nothing and says why.
func TestRefusedRecordsLeaveTheWork(t *testing.T) {
	s := atTheBench(t, "s8")
	row(t, s, "next")
	for _, text := range []string{
		`{"format":"blockfield job record","version":2}`, `{"format":"blockfield job record","version":1,"lay":{"at":0}}`,
		`{"format":"blockfield job record"`,
	} {
		res := ask(t, s, session.Request{Op: "open", Text: text, From: "saved"})
		assert.False(t, res.OK, text)
		assert.NotEmpty(t, res.Faults[0].Message)
		assert.Nil(t, res.Record)
	}
	assert.Contains(t, fragment(row(t, s, ""), "rows"), "1 of 14 rows laid")
	assert.False(t, ask(t, s, session.Request{Op: "row", Name: "sideways"}).OK)
}

// A Stop at the glue is said on the screen of the row as well, once a row is laid.
func TestAStopAtTheGlueIsSaidAtTheRow(t *testing.T) {
	s := atTheBench(t, "s8")
	assert.NotContains(t, fragment(row(t, s, ""), "rows"), "up gluing")
	assert.Contains(t, fragment(row(t, s, "next"), "rows"), "1 Stop holds up gluing", "nobody has counted")
	for i, c := range []int{36, 64, 64, 32} {
		work(t, s, "count", fmt.Sprintf("%d %d 0", i, c))
	}
	assert.NotContains(t, fragment(row(t, s, ""), "rows"), "up gluing")
}

// A client's page holds nothing of the bench.
func TestNoBenchForAClient(t *testing.T) {
	s := atTheBench(t, "s8")
	assert.Contains(t, read(t, s, "maker", "bench"), `href="#rows"`)
	assert.Contains(t, read(t, s, "builder", "bench"), `href="#rows"`)
	for _, section := range []string{"look", "sound", "wall", "bench", "money"} {
		assert.NotContains(t, read(t, s, "client", section), `href="#rows"`, section)
	}
}

// The sentences of a screen, by hand: the booth's rows of 26 cells with bare ones, in
// the parts that the glue takes, are measured every fifth row.
func TestSentencesOfARow(t *testing.T) {
	s := atTheBench(t, "s1")
	texts := map[int]string{}
	screen := row(t, s, "")
	for i := 1; i <= 18; i++ {
		texts[i] = fragment(screen, "rows")
		screen = row(t, s, "next")
	}
	assert.Contains(t, texts[1], "1 of 18 from the bottom edge")
	assert.NotContains(t, texts[1], "Should measure")
	assert.NotContains(t, texts[1], "pull")
	// 5 · 34.2 − 0.2 = 170.8 mm, to half a millimetre on a tape; the last row at 615.4.
	assert.Contains(t, texts[5], "Should measure 171 mm from the bottom edge")
	assert.Contains(t, texts[18], "Should measure 615.5 mm")
	loose := regexp.MustCompile(`(Set|pull) (\d+) loose`)
	var set, pulled int
	for _, text := range texts {
		for _, m := range loose.FindAllStringSubmatch(text, -1) {
			var n int
			require.NoError(t, json.Unmarshal([]byte(m[2]), &n))
			if m[1] == "Set" {
				set += n
			} else {
				pulled += n
			}
		}
	}
	assert.Equal(t, 102, set, "bare cells of the booth")
	assert.Equal(t, set, pulled)
	assert.Contains(t, texts[2], "from the 72 mm bin")
	assert.Equal(t, 1, strings.Count(texts[1], "Glue "), "one sentence of glue")
}
