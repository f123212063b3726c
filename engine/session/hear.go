package session

import (
	"encoding/json"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"
)

// What panels do to sound takes many times as long as all else, so two sessions
// share the work. One in a worker of its own is asked to "hear" a document: it
// leaves its own design alone and answers with pictures, and with verdicts that
// the page brings to the session of the edits as "heard". That one says what
// they mean. Until the next ones come it goes by the last, in the room of now,
// and marks them as of before.

// deafTo is the name with which "heard" says that a design could not be heard.
const deafTo = "deaf"

// ear is what a session knows of sound.
type ear struct {
	heard engine.Heard
	deaf  string // revision that could not be heard; empty: none
}

// hearing is what was heard last, as it is in the open design.
func (s *Session) hearing() (engine.Hearing, bool) {
	return s.ear.heard.In(s.now.doc.Design, s.now.plan)
}

// listen adds to what there is to show what is known of sound.
func (s *Session) listen(in page.Input) page.Input {
	if s.ear.deaf == s.now.plan.Revision {
		in.Deaf = true
		return in
	}
	if h, ok := s.hearing(); ok {
		in.Heard, in.Listening = &h, h.Revision != s.now.plan.Revision
		in.Plan = in.Plan.With(h)
	}
	return in
}

// hear works out the sound of the document in the request, and changes nothing.
func (s *Session) hear(req Request) Response {
	doc, err := design.Decode([]byte(req.Text))
	if err != nil {
		return s.refuse(err)
	}
	h, err := engine.Hear(doc.Design)
	if err != nil {
		return s.refuse(err)
	}
	verdicts, err := json.Marshal(h.Heard())
	if err != nil {
		return s.refuse(err)
	}
	return Response{
		Revision: h.Revision, Heard: string(verdicts),
		Fragments: page.SoundPictures(h, words.Reader{Language: words.In(doc.View.Language), Units: doc.View.Units}),
	}
}

// heard takes verdicts up, or that there are none. Those of another design than
// the open one are dropped: newer ones are on their way.
func (s *Session) heard(req Request) Response {
	if req.Revision != s.now.plan.Revision {
		return Response{}
	}
	if req.Name == deafTo {
		s.ear = ear{deaf: req.Revision}
		return Response{Fragments: page.AfterHearing(s.input())}
	}
	var h engine.Heard
	if err := json.Unmarshal([]byte(req.Text), &h); err != nil {
		return s.refuse(err)
	}
	if h.Revision != req.Revision || len(h.Verdicts) != len(s.now.plan.Groups) {
		return Response{}
	}
	s.ear = ear{heard: h}
	return Response{Fragments: page.AfterHearing(s.input())}
}
