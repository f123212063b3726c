// Package engine answers every question about a design by calling the rooms
// below it and passing plain structs between them.
//
// Plan and Scene are pure functions: the same design and the same price book
// give the same result everywhere. Each screen, paper, picture and file is a
// view of what they return; no number that a person sees is computed anywhere
// else.
package engine

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"blockfield/engine/bench"
	"blockfield/engine/check"
	"blockfield/engine/cost"
	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wall"
	"blockfield/engine/words"
)

// Result is everything that is known of a design and fast to know.
type Result struct {
	Revision  string // code of the design
	BookCode  string // code of the price book
	Title     string
	Groups    []Group
	Hangings  []wall.Hanging // of each group
	Mass      Mass
	Bill      bench.Bill
	Price     cost.Price
	WatchOuts []check.WatchOut // the worst first
	Private   []check.WatchOut // those with figures of the price book, which no client may see
}

// AllWatchOuts returns the private watch-outs with the others, for who may see
// both, the worst first.
func (r Result) AllWatchOuts() []check.WatchOut {
	all := slices.Concat(r.WatchOuts, r.Private)
	check.Sort(all)
	return all
}

// Group is one group of panels, built, with its place in the design.
type Group struct {
	Wall, Index int    // from 0
	Path        string // below the design: "walls[0].groups[0]"
	Design      design.Group
	Built       panel.Group
}

// Mass is what hangs on the wall and what has to be lifted, in kg, with glue
// and finish.
type Mass struct {
	HeaviestPanelKg float64
	TotalKg         float64
}

// Cells returns how many cells all panels have together, and how many of them
// carry a block.
func (r Result) Cells() (cells, blocks int) {
	for _, g := range r.Groups {
		for _, p := range g.Built.Panels {
			cells += len(p.Grid.Levels)
			blocks += p.Blocks
		}
	}
	return cells, blocks
}

// Plan returns what a design with a price book comes to. It returns an error
// for a design that design.Validate refuses, and for a design that cannot be
// built as it is: a block that no stick is long enough for.
//
// A book that lacks a price gives a Result without a Price and a watch-out that
// names what is missing; so does one with which the job comes to more than can be
// reckoned.
func Plan(d design.Design, b design.Book) (Result, error) { return NewPlanner(b).Plan(d) }

// Planner plans many designs with one price book.
type Planner struct {
	book  design.Book
	code  string      // of the book: taking it needs the whole of it written
	plans *cut.Memory // that took long; they change no result
	last  *recent     // neither do these
}

// NewPlanner returns a planner with a price book, which must not change while the
// planner is in use.
func NewPlanner(b design.Book) Planner {
	return Planner{book: b, code: b.Code(), plans: &cut.Memory{}, last: &recent{}}
}

// Book returns the planner's price book.
func (p Planner) Book() design.Book { return p.book }

// Plan is the function Plan with the planner's price book.
func (p Planner) Plan(d design.Design) (Result, error) {
	out, err := p.last.of(d, func() (Result, error) { return p.reckon(d) })
	if err != nil {
		return Result{}, err
	}
	return p.priced(out, d), nil
}

// reckon is everything about a design but its revision and its money.
func (p Planner) reckon(d design.Design) (Result, error) {
	b := p.book
	out := Result{BookCode: p.code, Title: d.Title}
	groups, err := build(d)
	if err != nil {
		return Result{}, err
	}
	out.Groups = groups
	built := make([]panel.Group, len(groups))
	for i, g := range groups {
		built[i] = g.Built
		out.WatchOuts = append(out.WatchOuts, g.Built.WatchOuts(g.Design, g.Path)...)
	}
	out.WatchOuts = append(out.WatchOuts, placed(d, groups)...)
	out.WatchOuts = append(out.WatchOuts, sticksAndAir(d, groups)...)
	out.Hangings = make([]wall.Hanging, len(groups))
	pace := paceOf(d, b)
	pace.Plans = p.plans
	pace.Holds = func(group int, panelKg float64) bench.Held { return out.hang(d, group, panelKg) }
	out.Bill, err = bench.Estimate(d, pace, built)
	if err != nil {
		return Result{}, err
	}
	out.Mass = Mass{HeaviestPanelKg: out.Bill.HeaviestKg, TotalKg: out.Bill.TotalKg}
	out.WatchOuts = append(out.WatchOuts, out.Bill.WatchOuts(d, built)...)
	out.WatchOuts = append(out.WatchOuts, wall.WatchOuts(d.Room, d.Work, out.Hangings)...)
	return out, nil
}

// priced adds revision and money.
func (p Planner) priced(out Result, d design.Design) Result {
	b := p.book
	out.Revision = d.Revision()
	out.WatchOuts = slices.Clone(out.WatchOuts)
	var err error
	out.Price, err = cost.Calculate(quantities(d, out.Bill), b, d.Money)
	out.WatchOuts = append(out.WatchOuts, unpriced(err)...)
	out.WatchOuts = append(out.WatchOuts, cost.Indication(d.Work)...)
	out.WatchOuts = append(out.WatchOuts, out.Price.WatchOuts(b, d.Money)...)
	out.WatchOuts = append(out.WatchOuts, supply(d, out.Mass)...)
	out.sort()
	return out
}

// paceOf is how the shop works and what it pays, by its price book and the habits
// that the design has.
func paceOf(d design.Design, b design.Book) bench.Pace {
	return bench.Pace{
		Tasks: b.Tasks, SpeedKmh: b.Travel.SpeedKmh,
		Factors: bench.Factors{Wood: d.Bench.WoodTimes, Fatigue: d.Bench.Fatigue, Gang: d.Bench.Gang},
		Prices:  bench.Prices{Woods: b.Woods, Sticks: b.Sticks, Hour: b.Rates.Shop + b.Rates.Overhead},
	}
}

// sort takes the private watch-outs out of the others and puts the worst of
// either first.
func (r *Result) sort() {
	for _, w := range r.WatchOuts {
		if w.Private {
			r.Private = append(r.Private, w)
		}
	}
	r.WatchOuts = slices.DeleteFunc(r.WatchOuts, func(w check.WatchOut) bool { return w.Private })
	check.Sort(r.WatchOuts)
	check.Sort(r.Private)
}

// unpriced says why there is no price.
func unpriced(err error) []check.WatchOut {
	switch {
	case err == nil:
		return nil
	case errors.Is(err, cost.ErrTooLarge):
		return []check.WatchOut{{
			Code: "price/too-large", Level: check.Caution, Gate: check.Offer, Source: check.Computed,
		}}
	}
	missing := &cost.MissingError{What: err.Error()}
	errors.As(err, &missing)
	return []check.WatchOut{{
		Code: "price/missing", Level: check.Caution, Gate: check.Offer,
		Args: words.Args{"goods": goods(missing)}, Source: check.Computed,
	}}
}

// goods are what has no price, in words: a wood, a finish, or a sheet and its thickness.
func goods(missing *cost.MissingError) any {
	switch missing.Path {
	case "woods", "finishes":
		return words.Key("choice/" + missing.What)
	case "sheets":
		field, _ := design.Lookup("walls[0].groups[0].backer.sheet")
		for _, sheet := range field.Choices {
			rest, ours := strings.CutPrefix(missing.What, sheet+" ")
			if thickness, err := length.ParseExact(rest); ours && err == nil {
				return words.Phrase{Key: "cuts/board", Args: words.Args{"sheet": words.Key("choice/" + sheet), "thickness": thickness}}
			}
		}
	}
	return missing.What
}

func build(d design.Design) ([]Group, error) {
	var groups []Group
	for w, wall := range d.Walls {
		for i, g := range wall.Groups {
			path := groupPath(w, i)
			built, err := panel.Build(g)
			if err != nil {
				return nil, fmt.Errorf("design.%s: %w", path, err)
			}
			groups = append(groups, Group{Wall: w, Index: i, Path: path, Design: g, Built: built})
		}
	}
	return groups, nil
}

// groupPath is where a group stands below the design.
func groupPath(wall, group int) string {
	return fmt.Sprintf("walls[%d].groups[%d]", wall, group)
}
