package cut

import (
	"errors"
	"fmt"
	"slices"
)

// SheetProblem is a list of rectangular parts to be cut out of sheets of one
// size, with cuts that go right through what is being cut, as a saw makes them.
//
// The grain runs along the length of the sheet. The corner where x and y begin
// keeps its two factory-straight edges: what is lost to crooked edges is taken
// off at the far ends, and so parts there have a straight edge to start from.
type SheetProblem struct {
	Width, Length int64 // of a sheet, across and along the grain
	Kerf          int64 // taken by each cut
	Trim          int64 // lost each way, at the far edges, kerf included
	Parts         []Part
}

// Part is a number of parts of one size, oversize included.
type Part struct {
	Width, Length int64 // across and along the grain
	Count         int
	Turn          bool // the grain may run the other way
}

// SheetPlan says how to cut all parts.
type SheetPlan struct {
	Layouts []SheetLayout
	Sheets  int
	Bound   int  // no plan needs fewer sheets
	Proven  bool // this plan needs no more
}

// SheetLayout is a number of sheets that are cut alike.
type SheetLayout struct {
	Count int
	Parts []Placed
}

// Placed is where a part lies, from the corner with the factory edges: x across
// and y along the sheet.
type Placed struct {
	Part          int
	X, Y          int64
	Width, Length int64 // as it lies
	Turned        bool
	FactoryX      bool // its edge at low x is the edge of the sheet
	FactoryY      bool
}

const (
	// MaxParts bounds the parts of one problem.
	MaxParts = 10_000
	// MaxSizes bounds their sizes.
	MaxSizes = 40
	// maxSheetLength keeps areas within an int64: 3 m in nanometres.
	maxSheetLength = 3_000_000_000
	// buildSteps is what the search for ways to fill one sheet may use, and
	// coverSteps the search for the fewest sheets.
	buildSteps = 100_000
	coverSteps = 2_000_000
)

// SolveSheets plans how to cut all parts from as few sheets as possible. Where
// few parts go on a sheet, as backers do, it looks at every way to fill one and
// the plan is proven; where there are too many ways it says how far it can be
// from the best.
func SolveSheets(p SheetProblem) (SheetPlan, error) {
	if err := p.check(); err != nil {
		return SheetPlan{}, err
	}
	b := newBuilds(p)
	c := covering{p: p, builds: b, steps: coverSteps, complete: b.run()}
	if c.complete {
		c.patterns = b.patterns()
	}
	demand := make([]int, len(p.Parts))
	for i, q := range p.Parts {
		demand[i] = q.Count
	}
	chosen := c.solve(demand)
	plan := SheetPlan{Sheets: len(chosen), Bound: c.bound, Proven: c.bound == len(chosen)}
	for _, at := range chosen {
		left := slices.Clone(demand)
		parts := b.place(c.patterns[at.pattern], left, p)
		for _, q := range parts {
			demand[q.Part]--
		}
		plan.add(parts)
	}
	return plan, nil
}

// add adds a sheet to those that are cut like it.
func (p *SheetPlan) add(parts []Placed) {
	if n := len(p.Layouts); n > 0 && slices.Equal(p.Layouts[n-1].Parts, parts) {
		p.Layouts[n-1].Count++
		return
	}
	p.Layouts = append(p.Layouts, SheetLayout{Count: 1, Parts: parts})
}

func (p SheetProblem) check() error {
	var faults []error
	outside := func(path string, value, low, high int64) {
		if value < low || value > high {
			faults = append(faults, fmt.Errorf("%s: %d out of range (allowed %d to %d)", path, value, low, high))
		}
	}
	outside("width", p.Width, 1, maxSheetLength)
	outside("length", p.Length, 1, maxSheetLength)
	outside("kerf", p.Kerf, 0, maxSheetLength)
	outside("trim", p.Trim, 0, maxSheetLength)
	if n := len(p.Parts); n > MaxSizes {
		faults = append(faults, fmt.Errorf("parts: %d sizes (allowed up to %d)", n, MaxSizes))
		return errors.Join(faults...)
	}
	count := 0
	for i, q := range p.Parts {
		path := fmt.Sprintf("parts[%d]", i)
		outside(path+".width", q.Width, 1, maxSheetLength)
		outside(path+".length", q.Length, 1, maxSheetLength)
		outside(path+".count", int64(q.Count), 0, MaxParts)
		if q.Count > 0 && !p.holds(q.Width, q.Length) && (!q.Turn || !p.holds(q.Length, q.Width)) {
			faults = append(faults, fmt.Errorf("%s: %d × %d does not fit a sheet (allowed up to %d × %d)",
				path, q.Width, q.Length, p.Width-p.Trim, p.Length-p.Trim))
		}
		count += max(0, min(q.Count, MaxParts+1))
	}
	if count > MaxParts {
		faults = append(faults, fmt.Errorf("parts: more than %d in all", MaxParts))
	}
	return errors.Join(faults...)
}

// holds reports whether a sheet holds a part that lies so.
func (p SheetProblem) holds(width, length int64) bool {
	return width <= p.Width-p.Trim && length <= p.Length-p.Trim
}
