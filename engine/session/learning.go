package session

import (
	"errors"
	"slices"

	"blockfield/engine/design"
)

// A price book that learns from a job is a step of the history: whoever has just let it
// learn expects that undo takes it back, the book and what the record says of it.

// lesson is what a step of learning goes back to.
type lesson struct {
	prices prices
	times  []design.Time
	spent  []design.Spent
	learn  design.Learn
}

func (s *Session) lesson() *lesson {
	rec := design.CloneRecord(s.record())
	return &lesson{s.prices, rec.Times, rec.Spent, rec.Learn}
}

// into returns the record with what it said of learning then. What was typed since stays.
func (l *lesson) into(rec design.Record) design.Record {
	rec = design.CloneRecord(rec)
	for i := range rec.Times {
		rec.Times[i].Taught, rec.Times[i].Before = 0, 0
		for _, had := range l.times {
			if had.Task == rec.Times[i].Task {
				rec.Times[i].Taught, rec.Times[i].Before = had.Taught, had.Before
			}
		}
	}
	for i := range rec.Spent {
		rec.Spent[i].Taught = 0
		for _, had := range l.spent {
			if had.Line == rec.Spent[i].Line {
				rec.Spent[i].Taught = had.Taught
			}
		}
	}
	rec.Learn.From, rec.Learn.Into = l.learn.From, l.learn.Into
	return rec
}

// holding is a record with what its job is held against, once it is agreed on or begun.
func (s *Session) holding(rec design.Record) design.Record {
	if s.prices.sellingOnly {
		return rec
	}
	job := s.job()
	job.Record = rec
	return job.Holding(s.prices.book())
}

// learn puts a price book in force that holds what this job took and no book has learned
// from it yet, never for a job that was set aside. The book before goes onto the shelf.
func (s *Session) learn() Response {
	job := s.job()
	if !job.CanLearn(s.prices.book()) {
		return s.refuse(errors.New("internal error: nothing to learn"))
	}
	step := s.now.kept()
	step.lesson = s.lesson()
	book, rec := job.Learned(s.prices.book())
	if _, err := s.inForce(privatePrices(book)); err != nil {
		return s.refuse(err)
	}
	rec.Learn.Into = s.prices.book().Code()
	s.remember(step)
	return s.taught(rec, s.booksName("page/book-opened"))
}

// taught answers that a record and the book in force are to be kept, with all that an answer
// about the open job carries.
func (s *Session) taught(rec design.Record, announce string) Response {
	text := s.recorded(rec).Record
	res := s.whole("")
	res.Announce, res.Record = announce, text
	res.Book, res.Shelf = &s.prices.text, s.shelfText()
	return res
}

// stepLesson moves one step of learning from one end of the history to the other. The book
// that gives way goes onto the shelf, but for a learned one that redo brings back.
func (s *Session) stepLesson(from, to *[]kept, done string) Response {
	n := len(*from)
	then, back := (*from)[n-1], s.now.kept()
	back.lesson = s.lesson()
	if done == "redone" || s.prices.book().Code() != s.record().Learn.Into {
		s.shelve()
	}
	if err := s.putBook(then.lesson.prices); err != nil {
		return s.refuse(err)
	}
	s.shelf = slices.DeleteFunc(s.shelf, func(text string) bool { return text == then.lesson.prices.text })
	*from, *to = (*from)[:n-1], append(*to, back)
	return s.taught(then.lesson.into(s.record()), s.booksName("page/learning-"+done))
}
