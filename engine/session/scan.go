package session

import (
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/papers"
	"blockfield/engine/words"
)

// Job is one that the browser keeps, as the page reads it.
type Job struct {
	ID     string `json:"id"`
	Begun  string `json:"begun,omitempty"` // day and time, as the browser writes them
	Text   string `json:"text"`
	Record string `json:"record,omitempty"` // of the work on it
}

// scan finds the job of a paper whose code was read: the open one, or one of those that
// the browser keeps. It changes nothing. A paper of an earlier revision leads to its
// job too, which is told; of one that nobody knows it says which file is wanted.
func (s *Session) scan(req Request) Response {
	code, _ := papers.Scanned(req.Name)
	if !design.IsRevision(code) {
		return Response{Faults: []Fault{{Message: s.reader().Say("scan/no-code", words.Args{"code": words.Printable(req.Name)})}}}
	}
	if code == s.now.plan.Revision {
		return Response{}
	}
	earlier, now := -1, ""
	for i, job := range req.Jobs {
		doc, err := design.Decode([]byte(job.Text))
		if err != nil {
			continue // what cannot be read is said where it is opened
		}
		d, _, _ := design.TakeEarlier(doc.Design)
		revision := d.Revision()
		if revision == code {
			return Response{Found: job.ID}
		}
		if earlier < 0 && mentions(doc, job.Record, code) {
			earlier, now = i, revision
		}
	}
	switch {
	case s.was(code):
		return Response{Old: s.reader().Say("scan/old", words.Args{"code": code, "now": s.now.plan.Revision})}
	case earlier >= 0:
		return Response{Found: req.Jobs[earlier].ID, Old: s.reader().Say("scan/old", words.Args{"code": code, "now": now})}
	}
	return Response{Faults: []Fault{{Message: s.reader().Say("scan/unknown", words.Args{"code": code})}}}
}

// was reports whether the open design had a revision, as far as its history or its
// record know.
func (s *Session) was(code string) bool {
	for _, k := range slices.Concat(s.undo, s.redo) {
		if k.opening == s.now.opening && k.doc.Design.Revision() == code {
			return true
		}
	}
	return slices.Contains(s.record().Revisions(), code) || s.now.doc.Offer.For(code)
}

// mentions reports whether a kept job knows a revision that it is no more.
func mentions(doc design.Document, record, code string) bool {
	if doc.Offer.For(code) {
		return true
	}
	r, err := design.DecodeRecord([]byte(record))
	return err == nil && slices.Contains(r.Revisions(), code)
}
