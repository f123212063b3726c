package session

import (
	"blockfield/engine/design"
	"blockfield/engine/page"
)

// talking reports whether a maker has hidden the figures. Whoever chooses another reading by
// hand ends that.
func (s *Session) talking() bool {
	return s.talk != "" && s.now.doc.View.Reading == page.Client
}

// hideFigures takes what is private off the page of a maker who talks with a client, and
// brings it back when it is asked for again. The page is read as a client reads it
// meanwhile: nothing private is left in it, shown or not. It is no edit: whose job it is
// stays as it was.
func (s *Session) hideFigures() Response {
	reading := page.Client
	switch {
	case s.now.doc.View.Reading == page.Maker:
		s.talk = s.section
	case s.talking():
		reading, s.section, s.talk = page.Maker, s.talk, ""
	default:
		s.talk = ""
		return s.whole("")
	}
	doc, err := design.Set(s.now.doc, "view.reading", reading, s.units())
	if err == nil {
		err = s.change(doc)
	}
	if err != nil {
		return s.refuse(err)
	}
	return s.whole("")
}
