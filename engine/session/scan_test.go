package session_test

import (
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// named is a job of a wood with its revision.
func named(wood string) (session.Job, string) {
	doc := design.Default()
	doc.Design.Walls[0].Groups[0].Wood = wood
	return session.Job{ID: wood, Text: string(design.Encode(doc))}, doc.Design.Revision()
}

// The code of a paper finds its job and changes nothing; the open job needs no search.
func TestScanFindsTheJob(t *testing.T) {
	s := fresh()
	before := s.Document()
	oak, oakCode := named("oak")
	ash, ashCode := named("ash")
	scan := func(code string, jobs ...session.Job) session.Response {
		return ask(t, s, session.Request{Op: "scan", Name: "paper-" + code, Jobs: jobs})
	}
	res := scan(ashCode, oak, session.Job{ID: "broken", Text: "{"}, ash)
	assert.True(t, res.OK)
	assert.Equal(t, "ash", res.Found)
	assert.Empty(t, res.Old)
	res = scan(s.Plan().Revision, oak, ash)
	assert.True(t, res.OK)
	assert.Empty(t, res.Found+res.Old)

	res = scan(ashCode, oak)
	require.Len(t, res.Faults, 1)
	assert.Contains(t, res.Faults[0].Message, "-"+ashCode+".json", "the file that is wanted")
	for _, bad := range []string{"", "1", oakCode + "0", "<b>"} {
		res = scan(bad, oak, ash)
		require.Len(t, res.Faults, 1, bad)
		assert.Contains(t, res.Faults[0].Message, "no code of a paper", bad)
	}
	assert.Equal(t, before, s.Document())
}

// A paper of an earlier revision leads to its job and is told to be old: by the steps of
// the history, or by what the job's record speaks of.
func TestScanTellsAnOldPaper(t *testing.T) {
	s := fresh()
	before := s.Plan().Revision
	require.True(t, set(t, s, group+".wood", "oak").OK)
	res := ask(t, s, session.Request{Op: "scan", Name: "paper-" + before})
	assert.True(t, res.OK)
	assert.Empty(t, res.Found)
	assert.Contains(t, res.Old, before)
	assert.Contains(t, res.Old, s.Plan().Revision)

	ash, ashCode := named("ash")
	record := design.NewRecord()
	record.Lay.Paper = "ABC123"
	ash.Record = string(design.EncodeRecord(record))
	res = ask(t, s, session.Request{Op: "scan", Name: "paper-abci23", Jobs: []session.Job{ash}})
	assert.Equal(t, "ash", res.Found)
	assert.Contains(t, res.Old, ashCode)

	// What was printed is known after a reload as well, by the record that was kept.
	printing := fresh()
	ask(t, printing, session.Request{Op: "section", Name: "papers"})
	res = ask(t, printing, session.Request{Op: "printed"})
	assert.Nil(t, res.Record, "a client's papers have no code")
	require.True(t, set(t, printing, "view.reading", "maker").OK)
	res = ask(t, printing, session.Request{Op: "printed"})
	require.NotNil(t, res.Record)
	assert.Empty(t, res.Fragments, "the sheets stay as they are while they print")
	oak, oakCode := named("oak")
	oak.Record = *res.Record
	res = ask(t, fresh(), session.Request{Op: "scan", Name: "paper-" + printing.Plan().Revision, Jobs: []session.Job{oak}})
	assert.True(t, res.OK, "open is the default design itself")
	reloaded := fresh()
	require.True(t, ask(t, reloaded, session.Request{Op: "open", Text: ash.Text, From: "saved"}).OK)
	res = ask(t, reloaded, session.Request{Op: "scan", Name: "paper-" + printing.Plan().Revision, Jobs: []session.Job{oak}})
	assert.Equal(t, "oak", res.Found)
	assert.Contains(t, res.Old, oakCode)

	// What was open before in this tab is another job.
	res = ask(t, s, session.Request{Op: "open", Text: ash.Text, From: "file"})
	require.True(t, res.OK)
	res = ask(t, s, session.Request{Op: "scan", Name: "paper-" + before})
	assert.Len(t, res.Faults, 1)
}

// Papers have a code where the page has said where it is.
func TestPapersHaveTheSitesCode(t *testing.T) {
	s := fresh()
	assert.NotContains(t, sheets(t, s, "builder"), `class="scan"`)
	res := ask(t, s, session.Request{Op: "section", Name: "papers", Site: "https://blocks.example/"})
	assert.Contains(t, html(res), `class="scan"`)
	res = ask(t, s, session.Request{Op: "section", Name: "papers", Site: "javascript:1"})
	assert.Contains(t, html(res), `class="scan"`, "nonsense changes nothing")
}
