package session

import (
	"encoding/json"
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"
)

// The jobs beside the open one lie with the browser, which hands them in where something
// is to be said of them.

// listJobs lists those that are looked for, but for the open one; none while a client sits
// by, whom they are no business of.
func (s *Session) listJobs(req Request) Response {
	var all []page.KeptJob
	for _, job := range req.Jobs {
		if job.ID != req.Name && !s.talking() {
			all = append(all, said(job))
		}
	}
	return Response{Fragments: []page.Fragment{page.JobList(s.reader(), all, req.Value)}}
}

// said is what the list says of a job.
func said(job Job) page.KeptJob {
	kept := page.KeptJob{ID: job.ID, Begun: job.Begun}
	doc, err := design.Decode([]byte(job.Text))
	if err != nil {
		return kept
	}
	kept.Title, kept.Revision = doc.Design.Title, doc.Design.Revision()
	if rec, err := design.DecodeRecord([]byte(job.Record)); err == nil && job.Record != "" {
		kept.Client = rec.Client.Name
		if n := len(rec.States); n > 0 {
			kept.State = rec.States[n-1].State
		}
	}
	return kept
}

// jobsFormat opens a file of kept jobs.
const (
	jobsFormat = "blockfield jobs"
	jobsFile   = "jobs"
)

// keptJobs is a file of jobs, to be kept elsewhere: texts of designs, each with the record
// of the work on it. Pictures of the place and price books are not in it.
type keptJobs struct {
	Format string    `json:"format"`
	Jobs   []keptJob `json:"jobs"`
}

type keptJob struct {
	Design string `json:"design"`
	Record string `json:"record,omitempty"`
}

// mostJobs bounds the jobs of a file.
const mostJobs = 1000

// saveJobs writes all kept jobs into one file.
func (s *Session) saveJobs(req Request) Response {
	file := keptJobs{Format: jobsFormat, Jobs: []keptJob{}}
	for _, job := range req.Jobs {
		file.Jobs = append(file.Jobs, keptJob{job.Text, job.Record})
	}
	data, err := json.MarshalIndent(file, "", " ")
	if err != nil {
		return s.refuse(err)
	}
	return Response{File: &File{Name: "blockfield-jobs-" + s.today + ".json", Type: "application/json", Text: string(data)}}
}

// openJobs answers with the jobs of a file that the browser does not keep yet. The open
// one stays open.
func (s *Session) openJobs(req Request) Response {
	var file keptJobs
	if err := json.Unmarshal([]byte(req.Text), &file); err != nil {
		return s.refuse(err)
	}
	if n := len(file.Jobs); n > mostJobs {
		return Response{Faults: []Fault{{Message: s.reader().Say("jobs/too-many", words.Args{"n": n, "most": mostJobs})}}}
	}
	had, unread := 0, 0
	all := []Job{}
	for _, kept := range file.Jobs {
		job := Job{Text: kept.Design, Record: kept.Record}
		same := func(other Job) bool { return other.Text == job.Text && other.Record == job.Record }
		switch {
		case !readable(job):
			unread++
		case slices.ContainsFunc(req.Jobs, same) || slices.ContainsFunc(all, same):
			had++
		default:
			all = append(all, job)
		}
	}
	told := s.reader().Say("jobs/taken", words.Args{"n": len(all), "had": had, "unread": unread})
	if len(all) == 0 && had == 0 {
		return Response{Faults: []Fault{{Message: told}}}
	}
	return s.common(Response{Jobs: all, Announce: told})
}

// readable reports whether a job could be opened.
func readable(job Job) bool {
	if _, err := design.Decode([]byte(job.Text)); err != nil {
		return false
	}
	if job.Record == "" {
		return true
	}
	_, err := design.DecodeRecord([]byte(job.Record))
	return err == nil
}
