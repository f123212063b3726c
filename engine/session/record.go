package session

import (
	"errors"
	"strconv"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
)

// The record of a job comes in beside its design: each opening of a design has its
// own, so that a step of the history that leads to another job leads to that one's
// record. It is no step of the history itself: what was laid stays laid when an edit
// of the design is undone. The page keeps it where it keeps the job.

// record is the one of the open design.
func (s *Session) record() design.Record {
	if rec, ok := s.records[s.now.opening]; ok {
		return rec
	}
	return design.NewRecord()
}

// job is the open design with its record.
func (s *Session) job() engine.Job { return engine.Follow(s.now.doc.Design, s.now.plan, s.record()) }

// recorded makes rec the record of the open design, and answers that the page should
// keep it.
func (s *Session) recorded(rec design.Record) Response {
	s.records[s.now.opening] = rec
	text := string(design.EncodeRecord(rec))
	return Response{Record: &text}
}

// openRecord takes up what the page has kept of the open job, or a file of it.
func (s *Session) openRecord(req Request) Response {
	rec, err := design.DecodeRecord([]byte(req.Text))
	if err != nil {
		return s.refuse(err)
	}
	announce := "page/record-opened"
	if req.From == "saved" {
		announce = ""
	}
	text := s.recorded(rec).Record
	res := s.whole(announce)
	res.Record = text
	return res
}

// row shows one row of the lay-up, or does something with it: "next" says that it is
// laid and goes on, "back" goes one back, "tick" says that it is laid or that it is
// not, "anew" forgets what was laid of its panel.
func (s *Session) row(req Request) Response {
	job := s.job()
	at := job.At()
	if req.Name == "" || at < 0 {
		return s.showRow(Response{})
	}
	c := job.Cards[at]
	rec := job.Record
	switch req.Name {
	case "next":
		job.Record = job.Ticked(c, true)
		rec = job.Moved(1)
	case "back":
		rec = job.Moved(-1)
	case "tick":
		rec = job.Ticked(c, !job.Laid(c))
	case "anew":
		rec = job.Anew(c)
	default:
		return s.refuse(errors.New("internal error: no such step: " + strconv.Quote(req.Name)))
	}
	return s.showRow(s.recorded(rec))
}

// showRow adds the screen of the row.
func (s *Session) showRow(res Response) Response {
	res.Fragments = append(res.Fragments, page.Rows(s.input()))
	return s.common(res)
}
