// Package papers makes what is held in a hand: the papers of a job as sheets that
// print, their drawings as files, and tables for a spreadsheet.
//
// A set is what one occasion needs: the offer for the client; the papers to buy
// and cut by, to glue by and to hang by; and the home builder's build book. All of
// it is a view of a design and its plan: nothing is computed here that is not
// known there. A paper with nothing to say drops out, and a client's set holds no
// figure of the price book.
//
// Text comes from package words. Sheets come from package sheet, which proves that
// nothing leaves its place.
package papers

import (
	"slices"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// Input is what papers are made of.
type Input struct {
	Doc     design.Document
	Plan    engine.Result       // of the document, as of Today
	Job     engine.Job          // the plan with what its record says of the work
	Book    design.Book         // that the plan was made with
	Selling *design.SellingBook // that clients are quoted by; nil: the example's
	Looks   []engine.Result     // plans of the looks that are kept with the document, in their order; nil: not known
	Heard   *engine.Hearing     // what the panels do to sound; nil: not known
	Changed [][]Change          // what each slip of the record changes, as far as it is known
	Picture Picture             // of the panels; none: they are drawn
	Client  bool                // a client prints it, who knows no more than a range
	Today   string              // ISO date; empty: nobody knows
	Site    string              // address of the page, for codes to scan; empty or none that can be (IsSite): no codes
	Maker   string              // name of the workshop whose site it is, for where the book has none
	WriteTo string              // and its mail address; empty: unknown
	Words   words.Reader
	Format  sheet.Format
	Drawn   sheet.Span // which sheets of a set
}

// Change is one field that a slip changes, in words.
type Change struct{ Label, Was, Now string }

// Changes are lines of another room's that have the same parts.
func Changes[L ~struct{ Label, Was, Now string }](lines []L) []Change {
	all := make([]Change, len(lines))
	for i, l := range lines {
		all[i] = Change(l)
	}
	return all
}

// Picture is a rendered picture of the panels.
type Picture struct {
	Type          string // of medium: "image/jpeg" or "image/png"
	Body          []byte
	Width, Height int // in pixels
}

// Names of sets.
const (
	OfferSet  = "offer" // for the client
	OrderSet  = "order" // change slips and invoices
	CutSet    = "cut"
	GlueSet   = "glue"
	HangSet   = "hang"
	SurveySet = "survey"
	BookSet   = "book" // the home builder's
)

// Reader is who prints papers.
type Reader uint8

// The readers.
const (
	Client Reader = iota
	Maker
	Builder
)

// For names the sets that a reader has of a job of a scope, in its order. A kit and a plan
// go to the client with a build book; once a look is locked there are its slips and
// invoices.
func For(r Reader, scope design.Scope, locked bool) []string {
	switch r {
	case Client:
		return []string{OfferSet}
	case Builder:
		return []string{BookSet, SurveySet}
	}
	all := []string{OfferSet, SurveySet}
	if locked {
		all = append(all, OrderSet)
	}
	switch scope {
	case design.KitScope:
		return append(all, CutSet, BookSet)
	case design.PlanScope:
		return append(all, BookSet)
	}
	return append(all, CutSet, GlueSet, HangSet)
}

// Set is one set of papers.
type Set struct {
	Name     string
	Title    string
	Format   sheet.Format
	Sheets   []sheet.Sheet
	Drawings []sheet.Drawing
	FullSize []sheet.Drawing // of the size of the thing, on no sheet
	tables   []table
}

// Make makes a set; false for a name that is none.
func Make(in Input, name string) (Set, bool) {
	m := &maker{Input: in}
	if name == BookSet {
		m.atHome = true
		m.handOver()
	}
	papers, tables := m.set(name)
	if papers == nil {
		return Set{}, false
	}
	sheets := sheet.Layout("sheet-"+name+"-", in.Format, m.frame(), papers, in.Drawn)
	return Set{
		Name: name, Title: m.T("papers/set-" + name), Format: in.Format, Sheets: sheets, Drawings: m.drawings, FullSize: m.fullSize(name), tables: tables,
	}, true
}

// set is the papers of a set in the order of the work, with the tables that go
// along.
func (m *maker) set(name string) ([]sheet.Paper, []table) {
	switch name {
	case OfferSet:
		return []sheet.Paper{m.offerPaper(), m.fewest(m.lookCard)}, nil
	case OrderSet:
		return slices.Concat([]sheet.Paper{}, m.changeSlips(), m.invoices()), nil
	case BookSet:
		return m.buildBook()
	case CutSet:
		tables := []table{m.stock(), m.cuts(), m.counts(), m.prices()}
		if m.kit() {
			return []sheet.Paper{m.fewest(m.cover), m.fewest(m.stockOrder), m.stopList(), below(m.countCard()), below(m.recutList()), below(m.binLabels()), m.fewest(m.safety)}, tables
		}
		return []sheet.Paper{
			m.fewest(m.cover), m.fewest(m.stockOrder), below(m.sheetCutting()), below(m.backerSheet()), m.stopList(), below(m.countCard()), below(m.recutList()), below(m.binLabels()), below(m.frameList()), m.fewest(m.safety),
		}, tables
	case GlueSet:
		return []sheet.Paper{
			m.fewest(m.cover), m.countCard(), m.recutList(), m.layOrder(), m.rowCards(), m.fewest(m.trimSheet), m.finishSchedule(), m.fireRecord(), m.fewest(m.timeSheet), m.fewest(m.safety),
		}, append([]table{m.counts(), m.hours()}, m.fields()...)
	case HangSet:
		return []sheet.Paper{
			m.fewest(m.cover), m.fewest(m.cleatPaper), m.fewest(m.rearMap), m.weighSlip(), m.liftingPlan(), below(m.wayIn()), m.fewest(m.hangSheet), m.standSheet(), m.fewest(m.safety),
		}, nil
	case SurveySet:
		return []sheet.Paper{m.fewest(m.surveyBlank), m.fewest(m.surveyFilled)}, nil
	default:
		return nil, nil
	}
}

// fullSize are the drawings that a set has for a plotter: of backers where they are
// cut, of holes where they are bored.
func (m *maker) fullSize(set string) []sheet.Drawing {
	switch set {
	case CutSet:
		if m.kit() {
			return nil
		}
		return m.fullBackers()
	case HangSet:
		return slices.Concat(m.fullRears(), m.fullWalls())
	case BookSet:
		return slices.Concat(m.fullBackers(), m.fullRears(), m.fullWalls())
	default:
		return nil
	}
}

// maker makes the papers of one input.
type maker struct {
	Input
	drawings []sheet.Drawing
	close    bool // type and pictures are smaller
	parted   bool // what may be apart is
	atHome   bool // the build book, whose sheets of the wall are in larger type
}

// fewest makes a paper, in smaller type and with smaller pictures where that saves a sheet.
func (m *maker) fewest(paper func() sheet.Paper) sheet.Paper {
	return m.fewestOf(func() []sheet.Paper { return []sheet.Paper{paper()} })[0]
}

// fewestOf makes papers, all of them smaller where that saves a sheet.
func (m *maker) fewestOf(papers func() []sheet.Paper) []sheet.Paper {
	before := m.drawings
	count := func(all []sheet.Paper) int {
		n := sheet.Count(m.Format, all...)
		m.drawings = before
		return n
	}
	usual := papers()
	sheets := count(usual)
	if sheets < 2 {
		return usual
	}
	m.close = true
	if closer := papers(); count(closer) < sheets {
		usual = closer
	}
	m.close = false
	return usual
}

// inHand is the type of what is read in the hand.
func (m *maker) inHand() sheet.Type { return sheet.Type{Size: m.either(sheet.BodySize, 3.5)} }

// either is the size of type or of a picture, or the smaller one that saves a sheet.
func (m *maker) either(usual, closer float64) float64 {
	if m.close {
		return closer
	}
	return usual
}

// T says a message. Its arguments come in pairs of name and value.
func (m *maker) T(key string, pairs ...any) string {
	args := words.Args{}
	for i := 0; i+1 < len(pairs); i += 2 {
		args[pairs[i].(string)] = pairs[i+1]
	}
	return m.Words.Say(key, args)
}

// said is a phrase as a sentence of its own.
func (m *maker) said(p words.Phrase) string { return m.Words.Say(p.Key, p.Args) }

// Show says a value.
func (m *maker) Show(value any) string { return m.Words.Show(value) }

// within is how far something may be off, as a rule of the reader's units shows it:
// "row" (measure.ToleranceMM), "block" or "diagonals".
func (m *maker) within(what string) words.Key {
	return words.Key("within/" + what + "-" + m.Words.Units.Word())
}

// below is a paper that may stand below the one before it.
func below(p sheet.Paper) sheet.Paper {
	p.Below = true
	return p
}

// paper is a paper with its title.
func (m *maker) paper(name string, view sheet.View, blocks ...sheet.Block) sheet.Paper {
	return sheet.Paper{Name: name, Title: m.T("paper/" + name), View: view, Scan: scanned(name), Blocks: blocks}
}

// frame is what stands on every sheet.
func (m *maker) frame() sheet.Frame {
	f := sheet.Frame{
		Job: m.Words.Given(m.Doc.Design.Title), Code: m.Plan.Revision, CodeLabel: m.T("papers/revision"),
		Units: m.T("papers/units-" + m.Words.Units.Word()), Bar: m.T("papers/bar-" + m.Words.Units.Word()),
		Front: m.T("papers/front"), Rear: m.T("papers/rear"),
		Scan:   m.scan(),
		Number: func(n, of int) string { return m.T("papers/number", "n", n, "of", of) },
	}
	if m.Today != "" {
		f.Notes = append(f.Notes, m.Show(m.Today))
	}
	return f
}
