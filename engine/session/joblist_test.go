package session_test

import (
	"encoding/json"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// withRecord is a job of a wood with a client and a state.
func withRecord(wood, client, state string) session.Job {
	job, _ := named(wood)
	rec := design.NewRecord()
	rec.Client.Name = client
	rec.States = []design.Passed{{State: state, Day: "2026-11-02", Revision: "AAAAAA"}}
	job.Record = string(design.EncodeRecord(rec))
	return job
}

// The list has every job but the open one; what nobody works on any more is folded away,
// what is looked for is found by client or revision, and a job that cannot be read stands
// in it, to be taken out.
func TestJobList(t *testing.T) {
	s := fresh()
	oak, ash := withRecord("oak", "Ada <b>", "on the bench"), withRecord("ash", "Bo", "closed")
	pine, _ := named("pine")
	list := func(wanted string) string {
		jobs := []session.Job{oak, ash, pine, {ID: "broken", Text: "{"}}
		return fragment(ask(t, s, session.Request{Op: "jobs", Jobs: jobs, Name: pine.ID, Value: wanted}), "job-list")
	}
	all := list("")
	for _, there := range []string{`data-job="oak"`, `data-job="broken"`, "On the bench", "Ada &lt;b&gt;", "1 closed or lapsed"} {
		assert.Contains(t, all, there)
	}
	assert.NotContains(t, all, `data-job="pine"`)
	assert.Less(t, strings.Index(all, "<details"), strings.Index(all, `data-job="ash"`), "folded away")
	_, code := named("oak")
	for _, wanted := range []string{"ADA", strings.ToLower(code)} {
		found := list(wanted)
		assert.Contains(t, found, `data-job="oak"`)
		assert.NotContains(t, found, `data-job="ash"`)
	}
	assert.Contains(t, list("bo"), `<details class="more" open>`)
	assert.Contains(t, list("nobody"), "No job is called so.")
}

// While the figures are hidden from a client, nothing is said of other clients.
func TestNoJobListDuringATalk(t *testing.T) {
	s := fresh()
	read(t, s, "maker", "look")
	list := func() string {
		return html(ask(t, s, session.Request{Op: "jobs", Jobs: []session.Job{withRecord("oak", "Ada", "agreed")}}))
	}
	assert.Contains(t, list(), "Ada")
	act(t, s, session.Request{Name: "hide-figures"})
	assert.NotContains(t, list(), "Ada")
	act(t, s, session.Request{Name: "hide-figures"})
	assert.Contains(t, list(), "Ada")
}

// A file of all jobs brings those back that are not there, with their records, and leaves
// the open one alone.
func TestJobsGoIntoOneFileAndComeBack(t *testing.T) {
	s := fresh()
	before := s.Document()
	oak, ash := withRecord("oak", "Ada", "agreed"), withRecord("ash", "Bo", "closed")
	file := ask(t, s, session.Request{Op: "save", Name: "jobs", Jobs: []session.Job{oak, ash, {ID: "broken", Text: "{"}}}).File
	require.NotNil(t, file)

	res := ask(t, s, session.Request{Op: "open", From: "file", Text: file.Text, Jobs: []session.Job{oak}})
	require.True(t, res.OK)
	require.Len(t, res.Jobs, 1)
	assert.Equal(t, session.Job{Text: ash.Text, Record: ash.Record}, res.Jobs[0])
	assert.Equal(t, "1 was taken in, 1 was here already, 1 could not be read.", res.Announce)
	assert.Equal(t, before, s.Document())

	res = ask(t, s, session.Request{Op: "open", From: "file", Text: file.Text, Jobs: []session.Job{oak, ash}})
	assert.True(t, res.OK)
	data, err := json.Marshal(res)
	require.NoError(t, err)
	assert.Contains(t, string(data), `"jobs":[]`, "the page says that nothing came")
}

// A hostile or empty file of jobs is refused.
func TestBadFilesOfJobs(t *testing.T) {
	many := `{"format":"blockfield jobs","jobs":[` + strings.Repeat(`{},`, 1000) + `{}]}`
	for _, text := range []string{
		`{"format":"blockfield jobs"}`, `{"format":"blockfield jobs","jobs":[{"design":"{"}]}`,
		`{"format":"blockfield jobs","jobs":7}`, `{"format":"blockfield jobs","jobs":[{"design":"`, many,
	} {
		s := fresh()
		before := s.Document()
		res := ask(t, s, session.Request{Op: "open", From: "file", Text: text})
		assert.False(t, res.OK, "%.60s", text)
		assert.Empty(t, res.Jobs)
		assert.Equal(t, before, s.Document())
	}
}
