package session

import (
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"
)

// letterFile is the name by which a letter is saved.
const letterFile = "letter"

// letterFile is the letter that the reader may write, as a file: a client's enquiry, or
// the workshop's answer to one. It holds the client copy of the design and what was typed
// to go along with it; nothing else of the record, and no price book.
//
// It is called a text, which it is: of the files that a browser hands to its share sheet,
// JSON is none (from memory).
func (s *Session) letterFile(req Request) Response {
	job := s.job()
	rec := job.Record
	from := design.FromClient
	if s.now.doc.View.Reading == page.Maker {
		from = design.FromWorkshop
	}
	l, err := design.NewLetter(from, job.AsAgreed(s.now.doc))
	if err != nil {
		return s.refuse(err)
	}
	l.Day = s.today
	if from == design.FromWorkshop {
		l.Message, l.Asked, l.Reach = rec.Client.Answer, rec.Client.Asked, s.workshop
	} else {
		l.Name, l.Reach, l.Message, l.Wished = rec.Client.Name, rec.Client.Reach, rec.Client.Message, rec.Days.NeedBy
		l.Photos = req.Photos
	}
	if err := design.ValidateLetter(l); err != nil {
		return s.refuse(err)
	}
	res := Response{}
	if from == design.FromClient { // whoever has written waits for an answer
		rec.Client.Wrote = s.today
		res = s.recorded(rec)
		res.Fragments = page.Whole(s.input())
		res = s.common(res)
	}
	name := s.reader().Say("letter/file-"+s.now.doc.View.Reading, words.Args{"title": s.now.doc.Design.Title})
	res.File = &File{Name: nameOf(name, s.now.plan.Revision, ".txt"), Type: "text/plain", Text: string(design.EncodeLetter(l))}
	return res
}

// openLetter opens a letter as a job of its own: an enquiry with whoever wrote it, or an
// answer with what it answers.
func (s *Session) openLetter(req Request) Response {
	l, doc, err := design.DecodeLetter([]byte(req.Text))
	if err != nil {
		res := s.refuse(err)
		res.Stays = s.reader().Say("page/stays")
		return res
	}
	if req.From == takenIn && l.From == design.FromClient {
		return s.takeLetter(l, doc)
	}
	rec := design.NewRecord()
	if l.From == design.FromClient {
		rec.Client = design.Client{Name: l.Name, Reach: l.Reach, Message: l.Message, Wrote: l.Day, Asked: l.Copy}
		rec.Days.NeedBy = l.Wished
	} else {
		if s.wrote(l) { // whose own words need not be typed again
			rec = s.job().Record
		}
		rec.Client.Asked, rec.Client.Answer, rec.Client.Answered, rec.Client.Returned = l.Asked, l.Message, l.Day, l.Copy
	}
	res := s.openJob(s.readAsNow(doc), &rec, "letter/opened-"+l.From)
	if len(res.Faults) == 0 {
		res.Photos = l.Photos
	}
	return res
}

// wrote reports whether a letter answers what was written from the open job.
func (s *Session) wrote(l design.Letter) bool {
	doc, err := design.DecodeCopy(l.Asked)
	return err == nil && doc.Design.Revision() == s.now.plan.Revision && s.record().Client.Wrote != ""
}
