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
	There         []There // sheets that are there already and cost nothing
}

// There is a number of sheets of a size that are there already: the rests of other
// jobs. Their grain runs along their length, and they lose as much to their edges as a
// whole sheet.
type There struct {
	Width, Length int64
	Count         int
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
	Sheets  int  // whole ones, to buy
	Own     int  // that are there and are cut
	Bound   int  // no plan needs fewer sheets
	Proven  bool // this plan needs no more
}

// SheetLayout is a number of sheets that are cut alike.
type SheetLayout struct {
	Count int
	There int // which of the sheets that are there, from 1; 0: a whole one
	Parts []Placed
	Rests []Rest // what is left over, in one piece each, the largest first
}

// Rest is a rectangle that is left over of a sheet, as it lies.
type Rest struct{ X, Y, Width, Length int64 }

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
//
// Sheets that are there are taken where that saves whole ones, and no more of them than
// it takes.
func SolveSheets(p SheetProblem) (SheetPlan, error) {
	if err := p.check(); err != nil {
		return SheetPlan{}, err
	}
	demand := make([]int, len(p.Parts))
	for i, q := range p.Parts {
		demand[i] = q.Count
	}
	c := newCovering(p, buildSteps)
	chosen := c.solve(demand)
	plan := SheetPlan{Bound: c.bound}
	if len(chosen) > 0 && len(p.There) > 0 {
		var taken []taken
		if taken, chosen, plan.Bound = c.withThere(demand, chosen); len(taken) > 0 {
			for _, one := range taken {
				plan.add(one.builds, one.build, one.there, demand)
			}
		}
	}
	plan.Sheets, plan.Proven = len(chosen), plan.Bound == len(chosen)
	for _, at := range chosen {
		plan.add(c.builds, c.patterns[at.pattern], 0, demand)
	}
	return plan, nil
}

// add cuts one more sheet to a pattern, without what is no longer needed, which it
// takes off the demand.
func (p *SheetPlan) add(b *builds, pattern *build, there int, demand []int) {
	one := b.place(pattern, demand)
	one.There, one.Count = there, 1
	if there > 0 {
		p.Own++
	}
	if n := len(p.Layouts); n > 0 && p.Layouts[n-1].There == there && slices.Equal(p.Layouts[n-1].Parts, one.Parts) {
		p.Layouts[n-1].Count++
		return
	}
	p.Layouts = append(p.Layouts, one)
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
	for i, t := range p.There {
		path := fmt.Sprintf("there[%d]", i)
		outside(path+".width", t.Width, 1, maxSheetLength)
		outside(path+".length", t.Length, 1, maxSheetLength)
		outside(path+".count", int64(t.Count), 0, MaxParts)
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
