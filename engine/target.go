package engine

import (
	"cmp"
	"errors"
	"iter"
	"math"
	"slices"
	"sort"
	"strconv"

	"blockfield/engine/check"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// How far the search for a way to the budget goes. Each try is a plan.
const (
	mostChanges = 3 // that a person weighs at once
	mostWays    = 3
	mostTries   = 80
	together    = 1.25 // how much more changes are taken to save together, at the most
)

// Way is a few changes that together bring a job within its budget.
type Way struct {
	Changes []Lever     // in the order in which they were found
	Paid    money.Money // what the job costs then, with tax
	Hours   float64     // fewer hours of work
}

// Paying says who pays for a job, and so what the budget is for.
type Paying struct {
	Book    design.Book
	Selling design.SellingBook
	Client  bool // who knows no more than a range: its middle counts
}

func (p Paying) paid(d design.Design, r Result) (money.Money, bool) {
	switch {
	case p.Client:
		usual, err := cost.Usual(visible(d, r), p.Selling, d.Money)
		return usual, err == nil && !d.Work.OwnBuild && quoted(d)
	case d.Work.OwnBuild:
		return r.Price.Materials, r.Price.Materials.Minor > 0
	}
	return r.Price.Gross, r.Price.Sold
}

func (p Paying) woods() []string {
	if p.Client {
		return publicWoods()
	}
	return cheapWoods(p.Book)
}

// Ways are what would have to change for a budget.
type Ways struct {
	Found   []Way
	Nearest Way // where none was found: the strongest changes that can be made together; without any, none saves
}

// WaysToBudget returns up to three sets of changes that bring a job within its budget, the
// smallest sets first and of those the ones that leave most of the price, while no Stop
// comes that was not there: what would have to change. None where the job is within its
// budget, or no three changes are enough. It plans up to some dozens of jobs: it is for
// who asks for it.
func WaysToBudget(doc design.Document, r Result, by Paying) Ways {
	now, ok := by.paid(doc.Design, r)
	budget := cost.Budget(doc.Design.Money, now.Currency)
	if !ok || budget.Minor == 0 || now.Cmp(budget) <= 0 {
		return Ways{}
	}
	s := search{doc: doc, plan: r, planner: NewPlanner(by.Book), by: by, now: now, stops: stopsOf(r)}
	s.single(candidates(doc, by.woods()))
	for n := 1; n <= mostChanges && len(s.found) == 0; n++ {
		s.combine(nil, 0, n, budget)
	}
	if len(s.found) == 0 {
		return Ways{Nearest: s.nearest()}
	}
	slices.SortStableFunc(s.found, func(x, y Way) int {
		return cmp.Or(y.Paid.Cmp(x.Paid), cmp.Compare(len(x.Changes), len(y.Changes)))
	})
	return Ways{Found: s.found[:min(len(s.found), mostWays)]}
}

// nearest adds the strongest change of each kind to those before it, as long as they can be
// made together and save more.
func (s *search) nearest() Way {
	best := Way{Paid: s.now}
	for _, l := range s.one {
		if len(best.Changes) == mostChanges {
			break
		}
		if slices.ContainsFunc(best.Changes, func(had Lever) bool { return had.Key == l.Key }) {
			continue
		}
		if way, _, ok := s.try(append(slices.Clone(best.Changes), l)); ok && way.Paid.Cmp(best.Paid) < 0 {
			best = way
		}
	}
	return best
}

// search looks for ways.
type search struct {
	doc     design.Document
	plan    Result
	planner Planner
	by      Paying
	now     money.Money
	stops   map[string]bool
	one     []Lever // single changes that save, the strongest first
	tries   int
	found   []Way
}

// single plans each change alone.
func (s *search) single(all []Lever) {
	for _, l := range all {
		if way, next, ok := s.try([]Lever{l}); ok && way.Paid.Cmp(s.now) < 0 {
			l.Saves = s.now.Sub(way.Paid)
			l.Hours = way.Hours
			l.say(s.plan, next)
			s.one = append(s.one, l)
		}
	}
	slices.SortStableFunc(s.one, func(x, y Lever) int { return y.Saves.Cmp(x.Saves) })
}

// combine tries all sets of n changes of which no two are of one kind, those that hold the
// strongest first.
func (s *search) combine(with []Lever, from, n int, budget money.Money) {
	if len(with) == n {
		if !s.mayReach(with, budget) {
			return
		}
		if way, _, ok := s.try(with); ok && way.Paid.Cmp(budget) <= 0 {
			s.found = append(s.found, way)
		}
		return
	}
	for i := from; i < len(s.one) && s.tries < mostTries; i++ {
		if !slices.ContainsFunc(with, func(l Lever) bool { return l.Key == s.one[i].Key }) {
			s.combine(append(with[:len(with):len(with)], s.one[i]), i+1, n, budget)
		}
	}
}

// mayReach is whether a set is worth a plan: what its changes save one by one comes near to
// what is wanted. Together they save less rather than more, as each leaves less to save from.
func (s *search) mayReach(with []Lever, budget money.Money) bool {
	saves := money.Money{Currency: budget.Currency}
	for _, l := range with {
		saves = saves.Add(l.Saves)
	}
	return together*float64(saves.Minor) >= float64(s.now.Sub(budget).Minor)
}

// try plans a set of changes; false where they cannot be made together, or bring a Stop.
func (s *search) try(changes []Lever) (Way, Result, bool) {
	s.tries++
	doc := s.doc
	for _, l := range changes {
		var err error
		if doc, err = pulled(doc, l.edits); err != nil {
			return Way{}, Result{}, false
		}
	}
	doc = KeepPlaced(s.doc, s.plan, doc)
	next, err := s.planner.Plan(doc.Design)
	if err != nil || !subset(stopsOf(next), s.stops) {
		return Way{}, Result{}, false
	}
	paid, ok := s.by.paid(doc.Design, next)
	hours := s.plan.Bill.Hours.Total.Typical - next.Bill.Hours.Total.Typical
	return Way{Changes: changes, Paid: paid, Hours: hours}, next, ok
}

// stopsOf are the codes of all Stops of a job, as they stand when their gates are asked
// for.
func stopsOf(r Result) map[string]bool {
	stops := map[string]bool{}
	for _, w := range r.AllWatchOuts() {
		if w.Asked().Level == check.Stop {
			stops[w.Code] = true
		}
	}
	return stops
}

func subset(some, all map[string]bool) bool {
	for code := range some {
		if !all[code] {
			return false
		}
	}
	return true
}

// GoWay returns the document after all changes of a way.
func GoWay(doc design.Document, w Way) (design.Document, error) {
	var err error
	for _, l := range w.Changes {
		if doc, err = pulled(doc, l.edits); err != nil {
			return doc, err
		}
	}
	return doc, nil
}

// Candidate is a design that a budget buys.
type Candidate struct {
	Key  string // "candidate/" and it is the key of its sentence
	Doc  design.Document
	Plan Result
	Paid money.Money
	// Dents is whether it is of a softer wood, which takes dents as the design's does not.
	Dents bool
}

// Buys is what a budget buys.
type Buys struct {
	Found   []Candidate
	Missing []words.Phrase // why there is none of a kind
	Least   money.Money    // where there is none at all: what the smallest of any kind costs that passes the checks; 0: none does
}

// ErrNoBudget says that there is no budget, or nobody who pays.
var ErrNoBudget = errors.New("no budget was said")

// FromBudget returns up to three designs for the wall of a document that its budget buys:
// as large as can be of a plain wood and large blocks, of the wood and the blocks that the
// design has, and one of a finer wood. Each is as large as wall and budget allow at the
// proportions of the design, in its place or in the middle of the wall with some room on
// either side, and has no Stop that the design does not have. It plans some dozens of jobs.
func FromBudget(doc design.Document, r Result, by Paying) (Buys, error) {
	now, ok := by.paid(doc.Design, r)
	budget := cost.Budget(doc.Design.Money, now.Currency)
	if !ok || budget.Minor <= 0 {
		return Buys{}, ErrNoBudget
	}
	at := groupPath(0, 0) + "."
	g := doc.Design.Walls[0].Groups[0]
	f := filling{doc: doc, plan: r, stops: stopsOf(r), budget: budget, planner: NewPlanner(by.Book), by: by}
	var out Buys
	for _, kind := range []struct {
		key   string
		edits []edit
	}{
		{"large", slices.Concat(anotherWood(g, at, by.woods()[0]), blocksOf(g, at, 1))},
		{"as-it-is", nil},
		{"fine", anotherWood(g, at, finerWood(g.Wood, by))},
	} {
		none := func(key string, args words.Args) {
			args["what"] = words.Key("candidate/" + kind.key)
			out.Missing = append(out.Missing, words.Phrase{Key: "candidate/" + key, Args: args})
		}
		start, err := pulled(doc, kind.edits)
		switch {
		case err != nil:
			none("no-room", words.Args{})
			continue
		case kind.key == "fine" && len(kind.edits) == 0:
			none("no-finer", words.Args{})
			continue
		}
		c, least, ok := f.fill(start)
		if ok {
			c.Key, c.Dents = kind.key, dents(r, c.Plan)
		}
		same := func(o Candidate) bool { return o.Plan.Revision == c.Plan.Revision }
		switch {
		case !ok && least.Minor == 0:
			none("no-room", words.Args{})
		case !ok:
			none("too-dear", words.Args{"least": paidAtLeast(least, by)})
			if out.Least.Minor == 0 || least.Cmp(out.Least) < 0 {
				out.Least = least
			}
		case slices.ContainsFunc(out.Found, same):
			none("same", words.Args{})
		default:
			out.Found = append(out.Found, c)
		}
	}
	out.Least = paidAtLeast(out.Least, by)
	return out, nil
}

// paidAtLeast is an amount as its reader may see it: a client's is no surer than a range.
func paidAtLeast(m money.Money, by Paying) money.Money {
	if by.Client {
		return cost.RoundedDown(m)
	}
	return m
}

// finerWood is a wood of the class that costs more, or the next better one that the book
// has. Which wood is fine is common knowledge of the trade.
func finerWood(now string, by Paying) string {
	order := []string{"pine", "spruce", "poplar", "cedar", "beech", "ash", "maple", "oak", "cherry", "walnut"}
	at := slices.Index(order, now)
	for i := min(at+3, len(order)-1); i > at; i-- {
		if by.Client || slices.ContainsFunc(by.Book.Woods, func(w design.WoodPrice) bool { return w.Wood == order[i] }) {
			return order[i]
		}
	}
	return now
}

// Room that stays free at either side of a panel in the middle of its wall, and the least
// width of one.
const (
	besideMM    = 150
	leastSideMM = 300
	sizeSteps   = 80 // between the least and the largest
	nearSteps   = 6  // that are taken one by one
	farStep     = 8
)

// FreeBeside is the room that stays free at either side of what FromBudget makes larger.
func FreeBeside() length.Length { return length.MM(besideMM) }

// filling makes panels that a budget buys, with no Stop beside those that are known.
type filling struct {
	doc     design.Document // that is begun with, and its plan
	plan    Result
	stops   map[string]bool
	budget  money.Money
	planner Planner
	by      Paying
}

// fill makes the first group of a document as large as wall and budget allow; false where
// no size within the budget passes the checks. least is then the price of the smallest that
// does, 0 where none does.
func (f filling) fill(doc design.Document) (best Candidate, least money.Money, ok bool) {
	if c, passes := f.planned(KeepPlaced(f.doc, f.plan, doc)); passes && c.Paid.Cmp(f.budget) <= 0 {
		best, ok = c, true // as large as it is now, where it is now
	}
	wall, g := doc.Design.Walls[0], doc.Design.Walls[0].Groups[0]
	ratio := g.Height.Millimetres() / g.Width.Millimetres()
	most := min(wall.Width.Millimetres()-2*besideMM, (wall.Height.Millimetres()-2*besideMM)/ratio)
	narrow := leastSideMM * max(1, 1/ratio)
	if most < narrow {
		return best, least, ok
	}
	widthOf := func(step int) float64 { return narrow + (most-narrow)*float64(step)/sizeSteps }
	dear := func(step int) bool {
		paid, ok := f.price(doc, widthOf(step), ratio)
		return !ok || paid.Cmp(f.budget) > 0
	}
	at := func(step int) (Candidate, bool) { return f.sized(doc, widthOf(step), ratio) }
	// The price grows with the size, so what the budget reaches is searched by halves.
	reach := -1
	if !dear(0) {
		reach = sort.Search(sizeSteps, func(step int) bool { return dear(step + 1) })
	}
	if one, found := passing(at, reach, -1); found && (!ok || one.area() > best.area()) {
		best, ok = one, true
	}
	if !ok {
		one, _ := passing(at, reach+1, sizeSteps+1)
		least = one.Paid
	}
	return best, least, ok
}

// passing is the first size from one step on, to before another, that passes the checks. A
// Stop may come and go with the size, so the near ones are tried one by one; farther ones
// in steps that grow, and then what lies between the last that does not pass and the first
// that does, by halves. So it tries no more than two dozen sizes.
func passing(at func(step int) (Candidate, bool), from, end int) (Candidate, bool) {
	way := 1
	if end < from {
		way = -1
	}
	failed, jump := from-way, 1
	for step := from; (end-step)*way > 0; step += way * jump {
		if one, passes := at(step); passes {
			good := step
			for (good-failed)*way > 1 {
				middle := (good + failed) / 2
				if between, passes := at(middle); passes {
					one, good = between, middle
				} else {
					failed = middle
				}
			}
			return one, true
		}
		failed = step
		if (step-from)*way >= nearSteps {
			jump = min(2*jump, farStep)
		}
	}
	return Candidate{}, false
}

// area is that of the first group, in square metres.
func (c Candidate) area() float64 {
	built := c.Plan.Groups[0].Built
	return built.TotalWidth.Metres() * built.TotalHeight.Metres()
}

// sized is the document with its first group so wide, in the first place that brings no new
// Stop; false where none does.
func (f filling) sized(doc design.Document, widthMM, ratio float64) (Candidate, bool) {
	places, fits := f.places(doc, widthMM, ratio)
	if !fits {
		return Candidate{}, false
	}
	for hung := range places {
		c, passes := f.planned(hung)
		if passes {
			return c, true
		}
		if f.failsAnywhere(c.Plan) {
			break
		}
	}
	return Candidate{}, false
}

// ofNoPlace are Stops of a panel, its weight and its way to the wall: where it hangs does
// not change them.
var ofNoPlace = []string{"bench/sheet-too-small", "wall/too-few-cells", "wall/lifting-method", "wall/way-in"}

// failsAnywhere is whether a plan has a new Stop that it has in every other place too.
func (f filling) failsAnywhere(r Result) bool {
	now := stopsOf(r)
	return slices.ContainsFunc(ofNoPlace, func(code string) bool { return now[code] && !f.stops[code] })
}

// price is what the document costs with its first group so wide; false where it cannot be
// made. Where it hangs changes little of that.
func (f filling) price(doc design.Document, widthMM, ratio float64) (money.Money, bool) {
	places, _ := f.places(doc, widthMM, ratio)
	for hung := range places {
		plan, err := f.planner.Plan(hung.Design)
		if err != nil {
			return money.Money{}, false
		}
		return f.by.paid(hung.Design, plan)
	}
	return money.Money{}, false
}

// places are the document with its first group so wide, in each place where it may hang: in
// the middle of the wall at the height of the ear, or as high as the design hangs now;
// between two studs; and where the design hangs now. fits is false where it is too wide for
// its wall.
func (f filling) places(doc design.Document, widthMM, ratio float64) (each iter.Seq[design.Document], fits bool) {
	at := groupPath(0, 0) + "."
	mm := func(v float64) string { return strconv.Itoa(int(v)) + " mm" }
	next, err := pulled(doc, []edit{{at + "width", mm(widthMM)}, {at + "height", mm(widthMM * ratio)}})
	if err != nil {
		return noPlace, false
	}
	groups, err := build(next.Design)
	if err != nil {
		return noPlace, false
	}
	wall, built := next.Design.Walls[0], groups[0].Built
	rightmost := wall.Width.Sub(FreeBeside()).Sub(built.TotalWidth) // of its left edge
	if rightmost.Cmp(FreeBeside()) < 0 {
		rightmost = FreeBeside() // with frames and gaps it is too wide
	}
	fits = FreeBeside().Add(built.TotalWidth).Add(FreeBeside()).Cmp(wall.Width) <= 0
	middle := wall.Width.Half()
	lowest := wall.Height.Sub(built.TotalHeight).Half()
	if ear := wall.EarHeight.Sub(built.TotalHeight.Half()); !wall.EarHeight.IsZero() && ear.Cmp(lowest) < 0 {
		lowest = length.Max(ear, length.MM(besideMM))
	}
	now := f.plan.Groups[0].Built
	inside := func(left length.Length) length.Length {
		if left.Cmp(rightmost) > 0 {
			left = rightmost
		}
		return length.Max(left, FreeBeside())
	}
	from := func(middle length.Length) length.Length { return inside(middle.Sub(built.TotalWidth.Half())) }
	places := []corner{{from(middle), lowest}, {from(middle), now.Bottom}}
	if !wall.StudStep.IsZero() {
		first, step := wall.StudFirst.Millimetres(), wall.StudStep.Millimetres()
		n := math.Round((middle.Millimetres()-first)/step - 0.5)
		places = append(places, corner{from(length.MM(int64(first + (n+0.5)*step))), lowest})
	}
	places = append(places, corner{inside(now.Left), now.Bottom})
	return func(yield func(design.Document) bool) {
		tried := map[[2]string]bool{}
		for _, p := range places {
			x, y := roundPlace(p.left, length.InMM), roundPlace(p.bottom, length.InMM)
			if tried[[2]string{x, y}] {
				continue
			}
			tried[[2]string{x, y}] = true
			hung, err := pulled(next, []edit{{at + "place.left", x}, {at + "place.edge", design.BottomEdge}, {at + "place.height", y}})
			if err == nil && !yield(hung) {
				return
			}
		}
	}, fits
}

// corner is where the lower left one of a group hangs.
type corner struct{ left, bottom length.Length }

func noPlace(func(design.Document) bool) {}

// planned plans a document; false where it has a new Stop or no price.
func (f filling) planned(doc design.Document) (Candidate, bool) {
	plan, err := f.planner.Plan(doc.Design)
	if err != nil {
		return Candidate{}, false
	}
	paid, ok := f.by.paid(doc.Design, plan)
	return Candidate{Doc: doc, Plan: plan, Paid: paid}, ok && subset(stopsOf(plan), f.stops)
}
