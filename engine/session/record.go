package session

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"
)

// The record of a job comes in beside its design: each opening of a design has its
// own, so that a step of the history that leads to another job leads to that one's
// record. It is no step of the history itself, but for the order: what was laid stays laid
// when an edit of the design is undone. The page keeps it where it keeps the job.

// record is the one of the open design.
func (s *Session) record() design.Record {
	if rec, ok := s.records[s.now.opening]; ok {
		return rec
	}
	rec := design.NewRecord()
	if s.now.doc.Design.Work.OwnBuild {
		const weekend = 2
		rec.Days.DaysPerWeek = weekend
	}
	return rec
}

// job is the open design with its record.
func (s *Session) job() engine.Job {
	return engine.Follow(s.now.doc.Design, s.now.plan, s.record(), s.today)
}

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
	if earlier, ok := s.earlier[s.now.opening]; ok && req.From == "saved" {
		rec = s.with(earlier, rec)
	}
	text := s.recorded(rec).Record
	res := s.whole(announce)
	res.Record = text
	return res
}

// with is a record with what a design file of an earlier program held for it, as
// weighed for the design of now.
func (s *Session) with(earlier design.Earlier, rec design.Record) design.Record {
	job := engine.Follow(s.now.doc.Design, s.now.plan, earlier.Into(rec), s.today)
	for i, w := range job.Record.Weighed {
		if w.Kg > 0 && w.Reckoned == 0 {
			job.Record = job.Noted(fmt.Sprintf("weighed[%d].kg", i))
		}
	}
	return job.Record
}

// wholeWith answers an opening, and that the page should keep what the file held for the
// record of the job, where it held anything.
func (s *Session) wholeWith(earlier design.Earlier, found bool, announce string) Response {
	if !found {
		return s.whole(announce)
	}
	s.earlier[s.now.opening] = earlier
	text := s.recorded(s.with(earlier, s.record())).Record
	res := s.whole(announce)
	res.Record = text
	return res
}

// setRecord edits a field of the record.
func (s *Session) setRecord(path string, req Request) Response {
	job := s.job()
	rec, err := design.SetRecord(job.Record, path, req.Value, s.units())
	if err != nil {
		return s.refuseAt(req.Path, err)
	}
	job.Record = rec
	res := s.entered(s.holding(job.Noted(path)))
	res.Fragments = page.Fragments(s.input(), req.Path)
	return s.common(res)
}

// works are the commands that change the record: each says what it becomes.
var works = map[string]func(*Session, engine.Job, Request) (design.Record, error){
	"count": func(_ *Session, job engine.Job, req Request) (design.Record, error) {
		var entry, cut, rejects int
		if _, err := fmt.Sscanf(req.Path, "%d %d %d", &entry, &cut, &rejects); err != nil {
			return job.Record, fmt.Errorf("internal error: no count: %q", req.Path)
		}
		return job.Counted(entry, cut, rejects), nil
	},
	"sign": func(s *Session, job engine.Job, req Request) (design.Record, error) {
		check, field := page.SignedCheck(req.Path)
		return job.Signing(check, field, s.today), nil
	},
	"meter": func(s *Session, job engine.Job, _ Request) (design.Record, error) {
		return design.AddReading(job.Record, design.Reading{Day: s.today, Percent: s.now.doc.Design.Bench.StockMoisture})
	},
	"drop": func(_ *Session, job engine.Job, req Request) (design.Record, error) {
		return design.RemoveEntry(job.Record, strings.TrimPrefix(req.Path, design.RecordPrefix))
	},
	"lock": func(s *Session, job engine.Job, _ Request) (design.Record, error) {
		return s.unless(job.Locking(s.now.doc, s.prices.book(), s.today))
	},
	"unlock": func(s *Session, job engine.Job, _ Request) (design.Record, error) { return s.unless(job.Unlocking()) },
	"slip": func(s *Session, job engine.Job, _ Request) (design.Record, error) {
		return s.unless(job.Slip(s.prices.book(), s.now.doc.Design.Money, s.today))
	},
	"accept-slip": func(s *Session, job engine.Job, _ Request) (design.Record, error) {
		return s.unless(job.Accepting(s.today))
	},
	"call-stage": func(s *Session, job engine.Job, _ Request) (design.Record, error) {
		return s.unless(job.Calling(s.today))
	},
	"state": func(s *Session, job engine.Job, req Request) (design.Record, error) {
		return job.Reached(req.Path, s.today), nil
	},
	"tool": func(_ *Session, job engine.Job, req Request) (design.Record, error) {
		return job.Tool(req.Path), nil
	},
}

// unless is a record, or what hinders its change as an error.
func (s *Session) unless(rec design.Record, hindrance words.Phrase) (design.Record, error) {
	if hindrance.Key != "" {
		return rec, errors.New(s.reader().Say(hindrance.Key, hindrance.Args))
	}
	return rec, nil
}

// work does one of the commands that change the record.
func (s *Session) work(do func(*Session, engine.Job, Request) (design.Record, error), req Request) Response {
	rec, err := do(s, s.job(), req)
	if err == nil {
		rec = s.holding(rec)
		err = design.ValidateRecord(rec)
	}
	if err != nil {
		return s.refuse(err)
	}
	text := s.entered(rec).Record
	res := s.whole("")
	res.Record = text
	if req.Name == "sign" {
		res.Next = page.SignaturePath(s.job(), req.Path)
	}
	return res
}

// taken is the design with what was measured of its sticks: their mean as the size of
// the blocks, or what the moisture meter said last.
func (s *Session) taken(req Request) (design.Document, error) {
	job := s.job()
	if req.Name == "take-moisture" {
		return job.TakeMoisture(s.now.doc)
	}
	i, err := strconv.Atoi(req.Path)
	if err != nil || i < 0 || i >= len(job.Sections) {
		return design.Document{}, errors.New("internal error: no such sticks: " + strconv.Quote(req.Path))
	}
	return job.TakeSize(s.now.doc, job.Sections[i])
}

// recordFile is the name by which the record is saved.
const recordFile = "record"

// recordFile is the record as a file, for another device at the bench.
func (s *Session) recordFile() *File {
	name := s.reader().Say("shop/file", words.Args{"title": s.now.doc.Design.Title})
	return &File{
		Name: fileName(name, s.now.plan.Revision), Type: "application/json", Text: string(design.EncodeRecord(s.job().Record)),
	}
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
	var rec design.Record
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
