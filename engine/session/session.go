// Package session is one open design and everything that a person does to it:
// open, edit, undo, redo, save, share; and the prices that it is planned with.
//
// Handle is the whole boundary: one JSON request in, one JSON response out. It
// keeps the last good plan; a refused edit changes nothing and comes back with
// its fault. The same package runs in the browser's worker and in tests.
package session

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/page"
	"blockfield/engine/papers"
	"blockfield/engine/scene"
	"blockfield/engine/words"
)

// maxHistory bounds the undo history; a document of the largest field is about
// 50 kB.
const maxHistory = 200

// Session is one open design. Make it with New; it is not for use from several
// goroutines.
type Session struct {
	prices   prices
	today    string // as the page says it; empty: nobody knows
	site     string // address of the page, as it says it; empty: unknown
	workshop string // mail address that clients write to, as the page says it
	maker    string // name of the workshop whose site it is, as the page says it
	quoted   string // selling book that the site was built with, as the page says it
	section  string
	paper    paper
	asked    asked    // of a price
	talk     string   // section to go back to once the figures may be seen again; empty: they are not hidden
	desk     desk     // where the price book is edited
	shelf    []string // texts of further price books
	ear      ear
	grip     grip                     // on the drawing of a wall
	stretch  stretch                  // on the picture
	alone    scene.View               // shows one panel in another way than it hangs; empty: none does
	looks    map[string]engine.Result // plans of kept looks with the prices in force, by revision
	now      state
	undo     []kept
	redo     []kept
	met      bool                   // the page has said which language it came in
	openings int                    // how many designs were opened
	records  map[int]design.Record  // of the work on each opening; none: nothing was done yet
	earlier  map[int]design.Earlier // what files of earlier programs had for them
}

// state is a document with its plan.
type state struct {
	doc     design.Document
	plan    engine.Result
	opening int
}

// kept is a document of the history, and which opening of a design it goes back
// to: a step may lead to what was open before. A step of the order alone has the order to
// go back to; others leave that as it is.
type kept struct {
	doc     design.Document
	opening int
	order   *order
	lesson  *lesson // of a step of learning alone
}

func (s state) kept() kept { return kept{doc: s.doc, opening: s.opening} }

// New returns a session that has the default design open.
func New(book design.Book) *Session {
	s := &Session{
		prices: privatePrices(book), section: "look", records: map[int]design.Record{}, earlier: map[int]design.Earlier{},
	}
	now, err := s.planned(design.Default())
	if err != nil {
		panic(fmt.Sprintf("session: internal error: the default design has no plan: %v", err))
	}
	s.now = now
	return s
}

func (s *Session) planned(doc design.Document) (state, error) {
	plan, err := s.prices.planner.Plan(doc.Design)
	return state{doc: doc, plan: plan, opening: s.now.opening}, err
}

// Document returns the open document.
func (s *Session) Document() design.Document { return s.now.doc }

// Plan returns the plan of the open document.
func (s *Session) Plan() engine.Result { return s.now.plan }

func (s *Session) units() length.Units { return s.now.doc.View.Units }

func (s *Session) reader() words.Reader {
	return words.Reader{Language: words.In(s.now.doc.View.Language), Units: s.units()}
}

// Handle answers one request. It never panics: a request that brings the
// engine down is answered with a fault, and the design stays as it was.
func (s *Session) Handle(request []byte) (response []byte) {
	var req Request
	defer func() {
		if broken := recover(); broken != nil {
			response = encode(Response{ID: req.ID, Faults: []Fault{{Message: fmt.Sprintf("internal error: %v", broken)}}})
		}
	}()
	if err := json.Unmarshal(request, &req); err != nil {
		return encode(Response{Faults: []Fault{{Message: "internal error: unreadable request: " + err.Error()}}})
	}
	if design.IsDate(req.Today) {
		s.today = req.Today
	}
	if papers.IsSite(req.Site) {
		s.site = req.Site
	}
	if req.Workshop != "" {
		s.workshop = req.Workshop
	}
	if req.Maker != "" {
		s.maker = req.Maker
	}
	if slices.Contains(page.Sections(page.Maker), req.Talk) {
		s.talk = req.Talk
	}
	s.quote(req.Prices)
	s.meet(req.Language)
	res := s.inLanguage(req.Language, s.answer(req))
	res.ID, res.Opening = req.ID, s.now.opening // what goes to another opening than the page knows is not done
	return encode(res)
}

// meet takes up the language that the page came in, for the design that it came with.
func (s *Session) meet(language string) {
	if !s.met && slices.Contains(words.Tags(), language) {
		s.now.doc.View.Language = language
	}
	s.met = s.met || language != ""
}

// inLanguage adds to an answer about the open document what turns the page from its own
// language to that of the document.
func (s *Session) inLanguage(now string, res Response) Response {
	wanted := s.now.doc.View.Language
	if now == "" || now == wanted || res.Text == "" {
		return res
	}
	frame := page.FrameOf(s.plain())
	res.Language, res.Says = wanted, frame.Says
	res.Fragments = append(res.Fragments, frame.Fragments...)
	return res
}

func encode(res Response) []byte {
	res.OK = len(res.Faults) == 0 && !res.Elsewhere
	data, err := json.Marshal(res)
	if err != nil {
		panic("session: internal error: " + err.Error())
	}
	return data
}

// edited makes an edited document the open one. A panel in the middle of its
// wall stays there, and none runs past a corner.
func (s *Session) edited(doc design.Document) error {
	return s.change(engine.KeepPlaced(s.now.doc, s.now.plan, doc))
}

// change makes doc the open document.
func (s *Session) change(doc design.Document) error {
	next, err := s.planned(doc)
	if err != nil {
		return err
	}
	if plain, stale := engine.LookedLonger(doc, next.plan); stale {
		if next, err = s.planned(plain); err != nil {
			return err
		}
	}
	s.take(next)
	return nil
}

// take makes a planned document the open one, as a step of the history. A change
// of the view alone is none: looking at a design is not an edit.
func (s *Session) take(next state) {
	if next.plan.Revision != s.now.plan.Revision || !sameBeside(next.doc, s.now.doc) {
		s.remember(s.now.kept())
	}
	s.show(next)
}

// remember adds a step to the history.
func (s *Session) remember(before kept) {
	s.undo = append(s.undo, before)
	if len(s.undo) > maxHistory {
		s.undo = s.undo[1:]
	}
	s.redo = nil
}

// sameBeside reports whether two documents hold the same beside their design and
// their view: the looks kept with it and the offer.
func sameBeside(a, b design.Document) bool {
	return reflect.DeepEqual(a.Looks, b.Looks) && reflect.DeepEqual(a.Offer, b.Offer)
}

// throughHistory answers a step of the history that says so, or that there is none.
func (s *Session) throughHistory(from, to *[]kept, done, none string) Response {
	n := len(*from)
	if n > 0 && (*from)[n-1].order != nil {
		return s.stepOrder(from, to, done)
	}
	if n > 0 && (*from)[n-1].lesson != nil {
		return s.stepLesson(from, to, done)
	}
	if !s.step(from, to) {
		return Response{Announce: s.reader().Say("page/" + none)}
	}
	return s.whole("page/" + done)
}

// step moves one document from one end of the history to the other. The view
// stays as it is; but a design that was open before comes back in the units that
// it was seen in.
func (s *Session) step(from, to *[]kept) bool {
	n := len(*from)
	if n == 0 {
		return false
	}
	then := (*from)[n-1]
	doc := then.doc
	doc.View = s.now.doc.View
	if then.opening != s.now.opening {
		doc.View.Units = then.doc.View.Units
	}
	next, err := s.planned(doc)
	if err != nil {
		return false
	}
	next.opening = then.opening
	*from = (*from)[:n-1]
	*to = append(*to, s.now.kept())
	s.show(next)
	return true
}
