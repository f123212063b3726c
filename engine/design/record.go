package design

import (
	"reflect"
	"slices"
	"sync"

	"blockfield/engine/length"
)

// The name and version that open a job record.
const (
	RecordFormat  = "blockfield job record"
	RecordVersion = 1
)

// Record is what becomes of a design at the bench: days, sticks as measured, blocks
// counted, rows laid, minutes and money that were really spent, and Stops that were
// signed off. It is a document of its own that is kept beside the design in the
// browser; it never enters the file of a design, a copy for a client or a link.
//
// A design may change while a record goes on. So what was counted or laid carries the
// revision that it was counted or laid for, and bins are known by wood, section and
// height and not by their place in a design.
type Record struct {
	Format   string    `json:"format"`
	Version  int       `json:"version"`
	Days     Days      `json:"days"`
	Lay      Lay       `json:"lay"`
	Cards    []Card    `json:"cards"`
	Meter    []Reading `json:"meter"`
	Bins     []Bin     `json:"bins"`
	Rows     []Rows    `json:"rows"`
	Times    []Time    `json:"times"`
	Spent    []Spent   `json:"spent"`
	SignOffs []SignOff `json:"signOffs"`
	Learn    Learn     `json:"learn"`
	Tools    []string  `json:"tools"`
	Asked    Asked     `json:"asked"`
	Weighed  []Weighed `json:"weighed"`
	Hung     Hung      `json:"hung"`
	Treated  Treated   `json:"treated,omitzero"`
	Client   Client    `json:"client"`
	States   []Passed  `json:"states,omitempty"`
	Lock     *Lock     `json:"lock,omitempty"` // nil: nothing was agreed on
	Slips    []Slip    `json:"slips,omitempty"`
	Calls    []Call    `json:"calls,omitempty"`
	Held     *Held     `json:"held,omitempty"` // nil: the work has not begun, and nothing was agreed on
	Road     Road      `json:"road,omitzero"`
	Printed  []string  `json:"printed,omitempty"` // revisions that papers were printed of, the last one last
}

// Client is who the job is for, what they wrote, and what was answered: on the client's
// own page as on the workshop's.
type Client struct {
	Name     string `json:"name,omitempty"`
	Reach    string `json:"reach,omitempty"` // a mail address or a telephone number
	Message  string `json:"message,omitempty"`
	Wrote    string `json:"wrote,omitempty"`    // on which day
	Asked    string `json:"asked,omitempty"`    // client copy that they sent, as EncodeCopy writes it; empty: none came
	Answer   string `json:"answer,omitempty"`   // what the workshop writes
	Answered string `json:"answered,omitempty"` // on which day the answer came; empty on the workshop's page
	Returned string `json:"returned,omitempty"` // client copy that came with it
}

// Asked is what was asked about the building: who said what, and when. An empty answer
// is none yet.
type Asked struct {
	Fire       string `json:"fire"`       // class of the surface
	Walkway    string `json:"walkway"`    // how far it may stand out
	Devices    string `json:"devices"`    // who allows a place that crowds a safety device or a way out
	DevicesFor string `json:"devicesFor"` // revision of the design for which that was allowed
	Reach      string `json:"reach"`      // whether it may hang within reach
	Protected  string `json:"protected"`  // whether the wall is protected as a monument, and what may touch it
	Drill      string `json:"drill"`      // who may drill, and where the plans of pipes and cables are
	Other      string `json:"other"`

	Professional string `json:"professional,omitempty"` // who is licensed to judge what holds, and has looked, by name
	Licence      string `json:"licence,omitempty"`      // theirs, or their firm
	LookedOn     string `json:"lookedOn,omitempty"`     // on which day
	LookedAt     string `json:"lookedAt,omitempty"`     // at what
	LookedFor    string `json:"lookedFor,omitempty"`    // revision of the design that they were shown
}

// Looked reports whether a professional has looked: who, by which licence, when and at
// what.
func (a Asked) Looked() bool {
	return !blank(a.Professional) && !blank(a.Licence) && a.LookedOn != "" && !blank(a.LookedAt)
}

// LookedAtThis reports whether they looked at the design of a revision.
func (a Asked) LookedAtThis(revision string) bool { return a.Looked() && a.LookedFor == revision }

// Weighed is what the scales say of the heaviest panel of a group, in kg, and what it was
// reckoned to weigh when that was typed; 0 where nobody knows. Walls and groups count
// from 1.
type Weighed struct {
	Wall     int     `json:"wall"`
	Group    int     `json:"group"`
	Kg       float64 `json:"kg"`
	Reckoned float64 `json:"reckonedKg"`
}

// Hung is what there is to say of the day of hanging.
type Hung struct {
	People []string `json:"people"`  // who lift, by name
	Proof  float64  `json:"proofKg"` // weights that the strip was tried with
	By     string   `json:"by"`      // who answers for it
	Day    string   `json:"day"`
	Found  string   `json:"found"` // at the trial and afterwards
}

// Treated is what was put on the panels against fire: a record for whoever answers for
// the building, and no class of the surface.
type Treated struct {
	Product  string  `json:"product,omitempty"`  // and its maker
	Batch    string  `json:"batch,omitempty"`    // one or several
	Coverage float64 `json:"coverage,omitempty"` // g/m², wet, all coats together, as put on
	Where    string  `json:"where,omitempty"`    // which faces
	Day      string  `json:"day,omitempty"`      // of the last coat
	By       string  `json:"by,omitempty"`
}

// Days is when the work is done. Empty days are not known.
type Days struct {
	Start       string  `json:"start"`  // first day on which the sticks are there
	NeedBy      string  `json:"needBy"` // last day on which it may be ready
	Hang        string  `json:"hang"`   // day on which it is to be hung
	HoursPerDay float64 `json:"hoursPerDay"`
	DaysPerWeek int     `json:"daysPerWeek"`
	People      int     `json:"people"`   // at the bench
	Settle      int     `json:"settle"`   // days that the sticks lie in the room's air
	GlueSets    float64 `json:"glueSets"` // hours until a glued field may be stood up and trimmed
}

// Lay is how the rows are laid, and how far the maker has come.
type Lay struct {
	Start string `json:"start"` // edge at which the first row lies: "bottom" or "top"
	Paper string `json:"paper"` // revision on the row cards in hand; empty: they are on the screen
	At    int    `json:"at"`    // card that is on the screen, from 1 in the order of work
}

// Card is what a calliper says of the sticks of one wood and section, one reading
// after another.
type Card struct {
	Wood        string          `json:"wood"`
	Size        length.Length   `json:"size"` // of the design when they were measured
	Widths      []length.Length `json:"widths"`
	Thicknesses []length.Length `json:"thicknesses"`
}

// Reading is what a moisture meter says of the sticks on a day, in percent.
type Reading struct {
	Day     string  `json:"day"`
	Percent float64 `json:"percent"`
}

// Bin is how many blocks of one height were cut and thrown out.
type Bin struct {
	Wood     string        `json:"wood"`
	Size     length.Length `json:"size"`
	Height   length.Length `json:"height"`
	Cut      int           `json:"cut"`
	Rejects  int           `json:"rejects"`
	Revision string        `json:"revision"` // of the design for which they were counted last
}

// Good is how many blocks lie in the bin that may be glued.
func (b Bin) Good() int { return max(0, b.Cut-b.Rejects) }

// Rows is which rows of one panel are laid. Walls, groups and panels count from 1,
// rows from 1 at the top.
type Rows struct {
	Wall     int    `json:"wall"`
	Group    int    `json:"group"`
	Panel    int    `json:"panel"`
	Laid     []int  `json:"laid"`     // rising
	Revision string `json:"revision"` // of the design from whose cards they were laid
	Field    string `json:"field"`    // code of the panel's own cards
}

// Time is how long a task of the time table really took, all of it together, and how
// long it was reckoned to take when that was typed.
type Time struct {
	Task     string  `json:"task"`
	Reckoned float64 `json:"reckonedMinutes"`
	Minutes  float64 `json:"minutes"`
	Aside    bool    `json:"aside,omitempty"` // nothing is learned from it
	Sure     bool    `json:"sure,omitempty"`  // it holds, however far it is off
	Taught   float64 `json:"taught,omitempty"`
	Before   float64 `json:"before,omitempty"` // factor of the task before it was taught; Taught are the minutes that were
}

// Spent is what a line of the bill really cost, and what it was reckoned to cost when
// that was typed.
type Spent struct {
	Line     string `json:"line"`
	Reckoned Amount `json:"reckoned"`
	Amount   Amount `json:"amount"`
	Aside    bool   `json:"aside,omitempty"`  // nothing is learned from it
	Sure     bool   `json:"sure,omitempty"`   // it holds, however far it is off
	Taught   Amount `json:"taught,omitempty"` // that was learned from
}

// Road is what the way to the client and back really took, all trips together; 0 where
// nobody has said it.
type Road struct {
	Minutes float64 `json:"minutes,omitempty"`
	Km      float64 `json:"km,omitempty"`
}

// Held is what a job is held against: all that was reckoned when it was agreed on or the
// work began, at the rates of one price book. A book that comes in force later does not
// change it.
type Held struct {
	Revision string     `json:"revision"` // of the design that it was reckoned for
	Book     string     `json:"book"`     // code of the price book
	Currency string     `json:"currency"`
	Net      Amount     `json:"net"`     // price without tax
	Beside   Amount     `json:"beside"`  // in it, sold as it stands
	Cost     Amount     `json:"cost"`    // goods, hours, overhead and road
	Reserve  Amount     `json:"reserve"` // mark-up on goods and contingency
	Asked    float64    `json:"asked"`   // margin that the book asks for, in percent
	Floor    float64    `json:"floor"`   // least margin that it allows
	Km       float64    `json:"km"`
	PerKm    Amount     `json:"perKm"`
	Tasks    []HeldTask `json:"tasks"`
	Lines    []HeldLine `json:"lines"`
}

// MinutesOf returns what was reckoned for a task; false where nothing was.
func (h Held) MinutesOf(task string) (float64, bool) {
	for _, t := range h.Tasks {
		if t.Task == task {
			return t.Minutes, true
		}
	}
	return 0, false
}

// AmountOf returns what was reckoned for a line of the bill; false where nothing was.
func (h Held) AmountOf(line string) (Amount, bool) {
	for _, l := range h.Lines {
		if l.Line == line {
			return l.Amount, true
		}
	}
	return 0, false
}

// HeldTask is one task of what a job is held against.
type HeldTask struct {
	Task    string  `json:"task"`
	Minutes float64 `json:"minutes"`
	PerHour Amount  `json:"perHour"` // with overhead, where it is work in the shop
}

// HeldLine is one line of the bill of what a job is held against.
type HeldLine struct {
	Line   string `json:"line"`
	Amount Amount `json:"amount"`
}

// SignOff is a Stop that somebody takes upon themselves: it holds once there is a name
// and a reason.
type SignOff struct {
	Check    string `json:"check"` // code of the watch-out
	Field    string `json:"field"` // that it stood at; may be empty
	Name     string `json:"name"`
	Reason   string `json:"reason"`
	Day      string `json:"day"`
	Revision string `json:"revision"` // of the design for which it holds
}

// Learn is what the times of this job are good for.
type Learn struct {
	Aside bool   `json:"aside"` // an odd job: nothing is learned from it
	Why   string `json:"why"`
	From  string `json:"from,omitempty"` // code of the price book in force before
	Into  string `json:"into"`           // code of the price book that learned from it; empty: none has
}

// The table and the tree that joins the struct with it are built once.
var (
	recordTable = sync.OnceValue(recordRows)
	recordTree  = sync.OnceValue(func() *node { return buildTree(reflect.TypeFor[Record](), recordTable()) })
)

// Holds reports whether somebody stands for it, with a reason.
func (s SignOff) Holds() bool { return !blank(s.Name) && !blank(s.Reason) }

// Revisions are the revisions of the design that the record speaks of, each as often as
// it does; a code may be empty.
func (r Record) Revisions() []string {
	all := []string{r.Lay.Paper, r.Asked.DevicesFor, r.Asked.LookedFor}
	for _, b := range r.Bins {
		all = append(all, b.Revision)
	}
	for _, one := range r.Rows {
		all = append(all, one.Revision)
	}
	for _, s := range r.SignOffs {
		all = append(all, s.Revision)
	}
	for _, s := range r.States {
		all = append(all, s.Revision)
	}
	if r.Lock != nil {
		all = append(all, r.Lock.Revision)
	}
	if r.Held != nil {
		all = append(all, r.Held.Revision)
	}
	for _, s := range r.Slips {
		all = append(all, s.Before, s.Revision)
	}
	for _, c := range r.Calls {
		all = append(all, c.Revision)
	}
	return append(all, r.Printed...)
}

// WithPrinted is the record with a revision that papers were printed of. The oldest one
// gives way where there are too many.
func (r Record) WithPrinted(revision string) Record {
	all := slices.DeleteFunc(slices.Clone(r.Printed), func(code string) bool { return code == revision })
	all = append(all, revision)
	r.Printed = all[max(0, len(all)-maxPrinted):]
	return r
}

// NewRecord is the record of a job that has not begun. Its habits are common
// practice.
func NewRecord() Record {
	return Record{
		Format: RecordFormat, Version: RecordVersion,
		Days:  Days{HoursPerDay: 6, DaysPerWeek: 5, People: 1, Settle: 10, GlueSets: 24},
		Lay:   Lay{Start: BottomEdge, At: 1},
		Cards: []Card{}, Meter: []Reading{}, Bins: []Bin{}, Rows: []Rows{}, Times: []Time{}, Spent: []Spent{},
		SignOffs: []SignOff{}, Tools: []string{}, Weighed: []Weighed{}, Hung: Hung{People: []string{}},
	}
}

// newRecordEntry is what a part of a list starts as where a file leaves some of its
// fields out.
func newRecordEntry(list string) any {
	const noCode = "000000"
	switch list {
	case "cards":
		return Card{Wood: Woods()[0], Size: length.MM(36), Widths: []length.Length{}, Thicknesses: []length.Length{}}
	case "meter":
		return Reading{Percent: 9}
	case "bins":
		return Bin{Wood: Woods()[0], Size: length.MM(36), Revision: noCode}
	case "rows":
		return Rows{Wall: 1, Group: 1, Panel: 1, Laid: []int{}, Revision: noCode, Field: noCode}
	case "times":
		return Time{}
	case "spent":
		return Spent{}
	case "weighed":
		return Weighed{Wall: 1, Group: 1}
	case "signOffs":
		return SignOff{Revision: noCode}
	case "states":
		return Passed{State: States()[0], Revision: noCode}
	case "lock.taxes", "slips[].taxes", "calls[].taxes":
		return TaxPart{}
	case "lock.stages":
		return Stage{}
	case "held.tasks":
		return HeldTask{}
	case "held.lines":
		return HeldLine{}
	case "slips":
		return Slip{Number: 1, Before: noCode, Revision: noCode}
	case "calls":
		return Call{Revision: noCode}
	default:
		panic("design: internal error: no new entry for " + list)
	}
}

// EncodeRecord writes a job record in its canonical form.
func EncodeRecord(r Record) []byte { return file(recordTree(), reflect.ValueOf(&r).Elem()) }

// DecodeRecord reads a job record; what is missing is as in NewRecord. The error, if
// any, is of type Faults.
func DecodeRecord(data []byte) (Record, error) {
	rec := NewRecord()
	d := decoder{data: unmarked(data), fresh: newRecordEntry}
	if !d.envelope(RecordFormat, RecordVersion) {
		return Record{}, d.all()
	}
	d.read(recordTree(), reflect.ValueOf(&rec).Elem())
	d.parts(recordTree(), reflect.ValueOf(&rec).Elem(), nil)
	d.record(&rec)
	if faults := d.all(); faults != nil {
		return Record{}, faults
	}
	return rec, nil
}

// ValidateRecord checks every value of a job record against the table and against
// its neighbours. The error, if any, is of type Faults.
func ValidateRecord(rec Record) error { return asError(validateRecord(&rec)) }

func validateRecord(rec *Record) Faults {
	c := checker{}
	c.parts(recordTree(), reflect.ValueOf(rec).Elem(), nil)
	c.record(rec)
	return c.all()
}

// CloneRecord returns a copy that shares nothing with rec.
func CloneRecord(rec Record) Record {
	deepen(reflect.ValueOf(&rec).Elem())
	return rec
}

// RecordSchema returns the JSON Schema of job records.
func RecordSchema() []byte {
	return schema(recordTree(), "Blockfield job record", "What becomes of a design at the bench: days, sticks, counts, rows, minutes, sign-offs.")
}
