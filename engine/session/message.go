package session

import (
	"blockfield/engine/design"
	"blockfield/engine/page"
)

// Request is what the page asks. Op decides which of the other fields count.
type Request struct {
	ID       int            `json:"id"`
	Op       string         `json:"op"`
	Path     string         `json:"path,omitempty"`
	Value    string         `json:"value,omitempty"`
	Of       *int           `json:"of,omitempty"`   // the opening that an edit is meant for; nil: whichever is shown
	Also     []Value        `json:"also,omitempty"` // edits that go along with the first, as one step
	Name     string         `json:"name,omitempty"`
	Text     string         `json:"text,omitempty"`
	Link     string         `json:"link,omitempty"`
	From     string         `json:"from,omitempty"`
	Kind     string         `json:"kind,omitempty"`
	DX       float64        `json:"dx,omitempty"`
	DY       float64        `json:"dy,omitempty"`
	Factor   float64        `json:"factor,omitempty"`
	Width    int            `json:"width,omitempty"`
	Height   int            `json:"height,omitempty"`
	Scene    []byte         `json:"scene,omitempty"`    // to draw
	At       int            `json:"at,omitempty"`       // first sheet of a part, from 0
	Samples  int            `json:"samples,omitempty"`  // along one side of a pixel of it
	Quiet    bool           `json:"quiet,omitempty"`    // the picture already shows it
	Revision string         `json:"revision,omitempty"` // that was heard
	Picture  []byte         `json:"picture,omitempty"`  // JPEG or PNG, of what the page shows
	Jobs     []Job          `json:"jobs,omitempty"`     // that the browser keeps
	Site     string         `json:"site,omitempty"`     // the page's own address
	Today    string         `json:"today,omitempty"`    // the day where the page is, an ISO date
	Workshop string         `json:"workshop,omitempty"` // the mail address that the site was built with
	Maker    string         `json:"maker,omitempty"`    // the name of the workshop whose site it is
	Prices   string         `json:"prices,omitempty"`   // the selling book that the site was built with
	Talk     string         `json:"talk,omitempty"`     // of the last answer of a session before this one
	Photos   []design.Photo `json:"photos,omitempty"`   // that go along with a letter
	Language string         `json:"language,omitempty"` // that the page is in now, a tag of package words
	Typed    bool           `json:"typed,omitempty"`    // Value was typed, with the marks of that language
}

// Response is what the page does. Empty fields mean: nothing to do. What carries a record
// carries the document too: they are kept together.
type Response struct {
	ID        int             `json:"id"`
	OK        bool            `json:"ok"`
	Fragments []page.Fragment `json:"fragments,omitempty"`
	Values    []Value         `json:"values,omitempty"`
	Scene     []byte          `json:"scene,omitempty"`
	Text      string          `json:"text,omitempty"`   // the document, for safe keeping
	Record    *string         `json:"record,omitempty"` // of the work on this job, where it has changed, for safe keeping
	Book      *string         `json:"book,omitempty"`   // the prices now in force, for safe keeping in this browser; empty: the example figures
	Shelf     *string         `json:"shelf,omitempty"`  // the price books beside it, where they may have changed, for safe keeping
	Revision  string          `json:"revision,omitempty"`
	Title     string          `json:"title,omitempty"`
	Section   string          `json:"section,omitempty"`
	Reading   string          `json:"reading,omitempty"`
	Editing   bool            `json:"editing,omitempty"`   // the price book is open
	Talk      string          `json:"talk,omitempty"`      // section that a maker goes back to who has hidden the figures; empty: they are not hidden
	Opening   int             `json:"opening"`             // which opening of a design this one goes back to
	Elsewhere bool            `json:"elsewhere,omitempty"` // the edit was meant for an opening that is not shown any more, and was not made
	CanUndo   bool            `json:"canUndo"`
	CanRedo   bool            `json:"canRedo"`
	Found     string          `json:"found,omitempty"` // id of the kept job that was looked for; empty: it is open
	Wants     string          `json:"wants,omitempty"` // what a file is that is to be held against the kept jobs, "letter" or "jobs"; empty: none such
	Old       string          `json:"old,omitempty"`   // of a paper of an earlier revision: what to do about it
	Faults    []Fault         `json:"faults,omitempty"`
	Details   []string        `json:"details,omitempty"` // lines that say more than Announce
	Stays     string          `json:"stays,omitempty"`   // of a document that was refused: what is as it was
	Announce  string          `json:"announce,omitempty"`
	Told      string          `json:"told,omitempty"` // what an edit has changed beside its own field, for everybody to see
	Next      string          `json:"next,omitempty"` // field of the section Bench to be filled in now
	File      *File           `json:"file,omitempty"`
	Link      string          `json:"link,omitempty"`
	Picture   []byte          `json:"picture,omitempty"` // JPEG or PNG
	Heard     string          `json:"heard,omitempty"`   // verdicts on the sound of a design
	Handles   []Handle        `json:"handles,omitempty"` // of sizes, on the picture
	Point     string          `json:"point,omitempty"`   // what lies at a place of the picture
	Photos    []design.Photo  `json:"photos,omitempty"`  // that came with a letter, to be kept with the job
	Jobs      []Job           `json:"jobs,omitzero"`     // of a file, to be kept beside the open one

	// Language is another one than the page is in, and Says what its frame says in it.
	Language string            `json:"language,omitempty"`
	Says     map[string]string `json:"says,omitempty"`
}

// Value is the text of a form field.
type Value struct {
	Path  string `json:"path"`
	Value string `json:"value"`
}

// Fault is something that the person has to put right.
type Fault struct {
	Path    string `json:"path,omitempty"`    // name of the form field
	Section string `json:"section,omitempty"` // where an edit was refused: the one that has the field
	Label   string `json:"label,omitempty"`   // what the page calls that field
	Message string `json:"message"`
}

// File is something to save.
type File struct {
	Name  string `json:"name"`
	Type  string `json:"type"`
	Text  string `json:"text"`
	Bytes []byte `json:"bytes,omitempty"` // of a file that is no text
}
