// Package page makes the HTML of the page: the whole document of the first
// paint, one section when it is opened, and the fragments that an edit changes.
//
// Everything is a view of a design and its plan; nothing is computed here that
// a person could act on. Text comes from package words, limits and choices from
// the design's table of fields. A form field's name is its path below the
// design, and a fragment never holds the control that is being edited.
//
// The same design is read by three people. What a reader may not see is left
// out here, not hidden by style: a client's page holds no cost, rate or margin.
//
// A strict content policy holds: no script or style inside the HTML. Templates
// escape by context; drawings come ready from package draw.
package page

import (
	"fmt"
	"io"
	"strings"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/scene"
	"blockfield/engine/words"
)

// Input is what there is to show.
type Input struct {
	Doc              design.Document
	Plan             engine.Result
	Job              engine.Job          // the plan with what its record says of the work
	Today            string              // ISO date; empty: nobody knows
	Book             design.Book         // that the plan was made with
	Selling          *design.SellingBook // that clients are quoted by; nil: the example's
	SellingOnly      bool                // the selling book is somebody's, and Book is not
	SellingGiven     bool                // it came with the site
	Why              Why                 // what the reader has asked of the price; for the money section
	SellingWaits     bool                // Book is being edited, and the selling book is not made anew before it is closed
	Desk             *BookDesk           // where Book is edited; nil: this reader does not, or not here
	AtWorkshop       []money.Money       // the range that a workshop would ask for the design, low and high; for a home builder's money section; empty: not known
	Levers           []engine.Lever      // what brings a job over its budget down; for the money section
	Looks            []engine.Result     // plans of the looks that are kept with the design; for the money section
	Words            words.Reader
	Section          string          // that is open: "look", "sound", "wall", "bench", "money" or "papers"
	Papers           PaperView       // for their section
	Heard            *engine.Hearing // what the panels do to sound; nil: not known yet
	Listening        bool            // what was heard is of the design before, and a newer hearing is on its way
	Deaf             bool            // this design could not be heard
	CanUndo, CanRedo bool
	Talk             bool       // a maker has the page and shows it to a client
	Workshop         string     // mail address that clients write to; empty: the site was built without one
	Alone            scene.View // shows one panel in another way than it hangs; empty: none does
}

// Fragment is new content for the element whose id is Target.
type Fragment struct {
	Target string `json:"target"`
	HTML   string `json:"html"`
}

// Assets are the addresses that the page needs, relative to it.
type Assets struct {
	Folder   string // of style sheets, scripts and modules, with its slash
	Posters  []Picture
	Examples []Example
	Brand    Brand
	Policy   string // content policy of the document
}

// Brand is whose page it is, as far as a workshop has said when it built the site.
type Brand struct {
	Name           string // of the workshop; empty: nobody's
	NameInLogo     bool   // it need not stand beside the logo
	Logo, DarkLogo *Picture
	Icon           Picture
	Prices         string // selling book that its clients are quoted by; empty: the example's
	Notes          []Note // at the foot of the page
}

// Note is a line at the foot of the page, as the workshop has written it.
type Note struct {
	Text    string
	Address string // that it leads to; empty: nowhere
}

// Picture is a picture beside the page, in pixels.
type Picture struct {
	Address       string
	Width, Height int
}

// Example is a design that the page offers to open.
type Example struct {
	Address string // of its file
	Doc     design.Document
}

// The readings of the page.
const (
	Client  = "client"
	Maker   = "maker"
	Builder = "builder"
)

// The sections.
const (
	Look   = "look"
	Sound  = "sound"
	Wall   = "wall"
	Bench  = "bench"
	Money  = "money"
	Papers = "papers"
)

// Sections are the sections that a reader meets, in the order of the talk.
func Sections(reading string) []string {
	if reading == Client {
		return []string{Look, Sound, Wall, Money, Papers}
	}
	return []string{Look, Sound, Wall, Bench, Money, Papers}
}

// Index writes the whole document of the first paint.
func Index(w io.Writer, a Assets, in Input) error {
	v := newView(in)
	examples, err := v.examples(a.Examples)
	if err != nil {
		return err
	}
	var b strings.Builder
	if err := templates.ExecuteTemplate(&b, "index", indexData{view: v, Assets: a, Gallery: examples}); err != nil {
		return err
	}
	_, err = io.WriteString(w, together(b.String()))
	return err
}

// Whole returns the open section with its form and everything around it, for
// when no control is being edited.
func Whole(in Input) []Fragment {
	v := newView(in)
	return append(v.around(),
		Fragment{"nav", v.render("nav", v)},
		Fragment{"section", v.render("section", v)},
	)
}

// Fragments returns what follows from an edit of the field at path changed,
// outside the control itself.
func Fragments(in Input, changed string) []Fragment {
	v := newView(in)
	all := v.around()
	for _, s := range v.slots() {
		if s.after != nil && !s.after(changed) {
			continue
		}
		all = append(all, Fragment{s.id, v.render(s.template, s.data)})
	}
	all = append(all, v.bookFragments(changed)...)
	return append(all, v.watchFragments()...)
}

// watchFragments are the watch-outs beside the fields in sight.
func (v *view) watchFragments() []Fragment {
	var all []Fragment
	for _, path := range v.openFields() {
		html := ""
		if w, ok := v.watchAt(path); ok {
			html = v.render("watch-at", w)
		}
		all = append(all, Fragment{watchID(path), html})
	}
	return all
}

// PictureText is what stands at the picture.
func PictureText(in Input) Fragment { return newView(in).pictureText() }

func (v *view) pictureText() Fragment { return Fragment{"picture-text", v.render("picture-text", v)} }

// AloneNote says what a picture of one panel shows; empty where they hang.
func (v *view) AloneNote() string {
	switch v.Alone {
	case scene.Rear:
		return v.T("stage/alone-rear")
	case scene.Apart:
		return v.T("stage/alone-apart")
	}
	return ""
}

// around returns what surrounds the open section.
func (v *view) around() []Fragment {
	return []Fragment{
		{"strip", v.render("strip", v.Strip())},
		v.pictureText(),
	}
}

// must panics on what can only be a fault of the program.
func must(err error) {
	if err != nil {
		panic(fmt.Sprintf("page: internal error: %v", err))
	}
}
