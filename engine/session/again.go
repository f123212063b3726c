package session

import (
	"slices"
	"strings"

	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"
)

// Somebody who has written may write again about the same design. Opened as a job of its
// own, that would part the client from what was measured, agreed on and invoiced; so the
// page asks first whether a file is such a letter, and offers to take it into the job.

// takenIn is from where a letter comes that is a change of the open job.
const takenIn = "again"

// known says which of the kept jobs a file is an enquiry of, if it is one: of the same
// client, about a design that the job knows by its revision or by its title. It changes
// nothing. Asked without the jobs it says what a file that is to be held
// against them is.
func (s *Session) known(req Request) Response {
	text := []byte(req.Text)
	format := design.FormatOf(text)
	if format != design.LetterFormat {
		if format == jobsFormat {
			return Response{Wants: "jobs"}
		}
		return Response{}
	}
	l, doc, err := design.DecodeLetter(text)
	if err != nil || l.From != design.FromClient {
		return Response{} // what is wrong is said where it is opened
	}
	found, best := Response{Wants: "letter"}, 0
	for _, job := range req.Jobs {
		kept, err := design.Decode([]byte(job.Text))
		if err != nil {
			continue
		}
		rec, err := design.DecodeRecord([]byte(job.Record))
		if err != nil || !sameClient(l, rec.Client) {
			continue
		}
		if likeness := alike(doc, kept, rec); likeness > best {
			best, found.Found = likeness, job.ID
			found.Old = s.reader().Say("letter/again", words.Args{"name": orBefore(rec.Client.Name, rec.Client.Reach), "title": kept.Design.Title})
		}
	}
	return found
}

// sameClient goes by what the client is reached at, and by the name where one of both has
// not said that.
func sameClient(l design.Letter, c design.Client) bool {
	same := func(a, b string) bool {
		a, b = strings.Join(strings.Fields(a), " "), strings.Join(strings.Fields(b), " ")
		return a != "" && strings.EqualFold(a, b)
	}
	if l.Reach != "" && c.Reach != "" {
		return same(l.Reach, c.Reach)
	}
	return same(l.Name, c.Name)
}

// alike is 2 where a job knows the revision of a design, 1 where it only has its title, 0
// where it has neither.
func alike(doc, kept design.Document, rec design.Record) int {
	revisions := append(rec.Revisions(), kept.Design.Revision())
	for _, text := range []string{rec.Client.Asked, rec.Client.Returned} {
		if sent, err := design.DecodeCopy(text); err == nil {
			revisions = append(revisions, sent.Design.Revision())
		}
	}
	switch {
	case slices.Contains(revisions, doc.Design.Revision()):
		return 2
	case doc.Design.Title == kept.Design.Title:
		return 1
	}
	return 0
}

// takeLetter makes an enquiry a change of the open job: a step of its history, with what
// the client wrote in its record. What the workshop has settled stays: how it works, what
// it asks and gives, its looks and its offer.
func (s *Session) takeLetter(l design.Letter, doc design.Document) Response {
	before := s.now.doc
	next := before
	next.Design, _, _ = design.TakeEarlier(doc.Design)
	next.Design.Bench = before.Design.Bench
	work, asked := before.Design.Work, next.Design.Work
	work.Supply, work.Delivered, work.Hung = asked.Supply, asked.Delivered, asked.Hung
	next.Design.Work = work
	terms := before.Design.Money
	terms.Budget = next.Design.Money.Budget
	next.Design.Money = terms
	rec := design.CloneRecord(s.record())
	rec.Client.Name, rec.Client.Reach = orBefore(l.Name, rec.Client.Name), orBefore(l.Reach, rec.Client.Reach)
	rec.Client.Message, rec.Client.Wrote, rec.Client.Asked = l.Message, l.Day, l.Copy
	rec.Days.NeedBy = orBefore(l.Wished, rec.Days.NeedBy)
	if err := design.ValidateRecord(rec); err != nil {
		return s.refuse(err)
	}
	if err := s.change(next); err != nil {
		return s.refuse(err)
	}
	text := s.recorded(rec).Record
	res := s.whole("letter/taken-in")
	res.Record, res.Photos = text, l.Photos
	res.Details = page.ChangesSaid(s.input(), before, s.now.doc)
	return res
}

// orBefore is what was said, or else what was before.
func orBefore(said, before string) string {
	if strings.TrimSpace(said) == "" {
		return before
	}
	return said
}
