package session

import (
	"blockfield/engine/design"
	"blockfield/engine/page"
)

// talking reports whether a maker has hidden the figures.
func (s *Session) talking() bool { return s.talk != "" }

// show makes a state the open one. Whoever chooses another reading by hand ends a talk.
func (s *Session) show(next state) {
	s.now = next
	if next.doc.View.Reading != page.Client {
		s.talk = ""
	}
}

// hideFigures takes what is private off the page of a maker who talks with a client, and
// brings it back when it is asked for again. The page is read as a client reads it
// meanwhile: nothing private is left in it, shown or not. It is no edit: whose job it is
// stays as it was.
func (s *Session) hideFigures() Response {
	reading, section, talk := page.Client, s.section, s.section
	switch {
	case s.now.doc.View.Reading == page.Maker:
	case s.talking():
		reading, section, talk = page.Maker, s.talk, ""
	default:
		return s.whole("")
	}
	doc, err := design.Set(s.now.doc, "view.reading", reading, s.units())
	if err == nil {
		err = s.change(doc)
	}
	if err != nil {
		return s.refuse(err)
	}
	s.section, s.talk = section, talk
	return s.whole("")
}
