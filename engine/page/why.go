package page

import (
	"cmp"
	"html/template"
	"maps"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine"
	"blockfield/engine/bench"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// Why is what a reader has asked of a price.
type Why struct {
	Open  bool        // the price is explained; for its maker
	Odds  cost.Odds   // how the job may end, where it is open
	Asked bool        // what would have to change for the budget
	Ways  engine.Ways // that answer it
	Begun bool        // from the budget
	Buys  engine.Buys // what it buys
}

// whySlots are the answers.
func (v *view) whySlots() []slot {
	all := []slot{{id: "begin", template: "from-budget", data: v}}
	if v.Reading != Client {
		all = append(all, slot{id: "ways", template: "ways", data: v})
	}
	if v.Reading == Maker {
		all = append(all, slot{id: "why-price", template: "why-price", data: v})
	}
	return all
}

// Explained reports whether the price is explained.
func (v *view) Explained() bool { return v.Why.Open && v.HasPrice() }

// OverBudget reports whether the levers are shown.
func (v *view) OverBudget() bool { return len(v.Levers) > 0 }

// BudgetWay is one way to the budget in words.
type BudgetWay struct {
	Changes []string
	Ends    string
	Index   int
}

// BudgetWays are the ways to the budget.
func (v *view) BudgetWays() []BudgetWay {
	var all []BudgetWay
	for i, w := range v.Why.Ways.Found {
		line := v.budgetWay(w)
		line.Index = i
		all = append(all, line)
	}
	return all
}

// NearestWay is where the strongest changes lead that are not enough; nil where none saves.
func (v *view) NearestWay() *BudgetWay {
	if len(v.Why.Ways.Nearest.Changes) == 0 {
		return nil
	}
	line := v.budgetWay(v.Why.Ways.Nearest)
	return &line
}

func (v *view) budgetWay(w engine.Way) BudgetWay {
	var line BudgetWay
	for _, l := range w.Changes {
		line.Changes = append(line.Changes, v.leverSentence(l))
	}
	line.Ends = v.T("way/ends", "n", len(w.Changes), "paid", w.Paid.Format(v.locale()))
	if w.Hours >= leastHours {
		line.Ends += " " + v.T("lever/hours", "hours", hours(w.Hours))
	}
	return line
}

// HasBudget reports whether a budget was said.
func (v *view) HasBudget() bool { return v.Doc.Design.Money.Budget > 0 }

// CanBegin reports whether a budget can buy anything: somebody pays.
func (v *view) CanBegin() bool {
	if v.Reading != Builder && (v.Ordered() || v.WasAgreed()) { // what was agreed on changes by a slip
		return false
	}
	switch v.Reading {
	case Client:
		return v.HasRange()
	case Builder:
		return v.HasShopping()
	}
	return v.HasPrice()
}

// CandidateLead says what a budget buys, and within which limits.
func (v *view) CandidateLead() string {
	return v.T("candidate/lead-"+v.Reading, "room", engine.FreeBeside())
}

// CandidatesMissing say why there is no suggestion of a kind.
func (v *view) CandidatesMissing() []string {
	var all []string
	for _, p := range v.Why.Buys.Missing {
		args := maps.Clone(p.Args)
		if least, ok := args["least"].(money.Money); ok {
			args["least"] = least.Whole(v.locale())
		}
		all = append(all, v.Words.Say(p.Key, args))
	}
	return all
}

// NoCandidate says why there is no suggestion at all.
func (v *view) NoCandidate() string {
	switch least := v.Why.Buys.Least; {
	case !v.HasBudget():
		return v.T("candidate/no-budget")
	case least.Minor > 0:
		return v.T("candidate/none-from", "least", least.Whole(v.locale()))
	}
	return v.T("candidate/none")
}

// CandidateCard is a design that the budget buys.
type CandidateCard struct {
	LookCard
	Index  int
	Panels string // how many of which size
	Dents  string // what a softer wood costs beside money; empty: it is none
}

// CandidateCards are what the budget buys.
func (v *view) CandidateCards() []CandidateCard {
	var all []CandidateCard
	for i, c := range v.Why.Buys.Found {
		card := CandidateCard{LookCard: v.lookCard("candidate["+strconv.Itoa(i)+"]", v.T("candidate/"+c.Key), c.Doc.Design, c.Plan), Index: i}
		if card.Price == "" {
			card.Price = c.Paid.Whole(v.locale())
		}
		card.Same = c.Plan.Revision == v.Plan.Revision
		card.Panels = v.panelsSaid(c.Plan)
		if c.Dents {
			card.Dents = v.T("lever/dents")
		}
		all = append(all, card)
	}
	return all
}

// panelsSaid says how many panels a plan has, and how large one is, group by group.
func (v *view) panelsSaid(r engine.Result) string {
	var all []string
	for _, g := range r.Groups {
		all = append(all, v.T("candidate/panels", "n", len(g.Built.Panels), "wood", g.Design.WoodName(),
			"width", v.Words.Number(v.Whole(g.Built.OuterWidth)), "height", v.Whole(g.Built.OuterHeight)))
	}
	return strings.Join(all, " ")
}

// OddsLines say how the job may end.
func (v *view) OddsLines() []string {
	o := v.Why.Odds
	if o.Tries == 0 {
		return nil
	}
	const tenths = 1000
	inTen := func(n int) float64 { return float64(n*tenths/o.Tries) / 10 }
	key := "odds/surveyed"
	if !v.Doc.Design.Work.Survey {
		key = "odds/unsurveyed"
	}
	return []string{
		v.T("odds/below", "share", inTen(o.BelowFloor), "floor", words.Quantity{Value: v.Book.Policy.MarginFloor}),
		v.T("odds/loss", "share", inTen(o.Loss)),
		v.T("odds/margin", "worst", o.Worst, "middle", o.Middle, "best", o.Best),
		v.T(key, "tries", o.Tries),
	}
}

// TaskLine is one task with its hours.
type TaskLine struct {
	Name, Hours, Span string
	Bar               template.HTML
}

// TaskLines are the tasks that take most, the longest first; the rest in one line, which
// takes no longer than the longest.
func (v *view) TaskLines() []TaskLine {
	const usual = 12
	tasks := slices.DeleteFunc(v.Plan.Bill.Timed(v.Doc.Design.Work), func(t bench.TaskTime) bool { return t.Minutes.Typical <= 0 })
	slices.SortStableFunc(tasks, func(x, y bench.TaskTime) int { return cmp.Compare(y.Minutes.Typical, x.Minutes.Typical) })
	most := len(tasks)
	rest := bench.Spread{}
	for most > 0 {
		m := tasks[most-1].Minutes
		more := bench.Spread{Low: rest.Low + m.Low, Typical: rest.Typical + m.Typical, High: rest.High + m.High}
		if most <= usual || more.Typical > tasks[0].Minutes.Typical {
			break
		}
		rest, most = more, most-1
	}
	longest := rest.High
	for _, t := range tasks[:most] {
		longest = max(longest, t.Minutes.High)
	}
	var all []TaskLine
	for _, t := range tasks[:most] {
		all = append(all, v.taskLine(v.totalName(t.ID, t.Name), t.Minutes, longest))
	}
	if rest.Typical > 0 {
		all = append(all, v.taskLine(v.T("why/rest"), rest, longest))
	}
	return all
}

// taskLine is a line with a bar from the best to the worst, and a mark at the usual.
func (v *view) taskLine(name string, m bench.Spread, longest float64) TaskLine {
	const width, height, minutesPerHour = 120.0, 8.0, 60
	c := draw.New("", draw.Box{Width: width, Height: height})
	c.Class("task-bar")
	x := func(minutes float64) float64 { return width * minutes / longest }
	c.Rect(draw.Box{X: x(m.Low), Y: 2, Width: max(1, x(m.High)-x(m.Low)), Height: 4}, draw.Class("span"))
	c.Rect(draw.Box{X: x(m.Typical) - 1, Y: 0, Width: 2, Height: height}, draw.Class("usual"))
	return TaskLine{
		Name: name, Hours: v.Words.Show(hours(m.Typical / minutesPerHour)),
		Span: v.T("why/span", "low", hours(m.Low/minutesPerHour), "high", hours(m.High/minutesPerHour)),
		Bar:  template.HTML(c.String()),
	}
}

// step is one step of the waterfall: what it adds, or where it has come to.
type step struct {
	label  string
	amount money.Money
	sum    bool
}

// FallLine is one step of the waterfall, with a bar that begins where the one above it ends.
type FallLine struct {
	Name, Amount string
	Bar          template.HTML
	Sum          bool
}

// Waterfall is the way from the goods to the price with tax: what each step adds to
// the ones above it, and the sums between them.
func (v *view) Waterfall() []FallLine {
	const width, height, least = 250.0, 11.0, 0.6
	steps := v.steps()
	most := max(1, v.Plan.Price.Gross.Minor)
	for _, s := range steps {
		most = max(most, s.amount.Minor)
	}
	x := func(minor int64) float64 { return width * float64(minor) / float64(most) }
	var all []FallLine
	var at int64
	for _, s := range steps {
		from, to, class := at, at+s.amount.Minor, "adds"
		switch {
		case s.sum:
			from, to, class = 0, s.amount.Minor, "sum"
		case s.amount.Minor < 0:
			from, to, class = to, from, "takes"
		}
		c := draw.New("", draw.Box{Width: width, Height: height})
		c.Class("fall-bar")
		c.Rect(draw.Box{X: min(x(from), width-least), Width: max(least, x(to)-x(from)), Height: height}, draw.Class(class))
		all = append(all, FallLine{Name: s.label, Amount: v.Amount(s.amount), Bar: template.HTML(c.String()), Sum: s.sum})
		if s.sum {
			at = s.amount.Minor
		} else {
			at += s.amount.Minor
		}
	}
	return all
}

// steps are those of the waterfall.
func (v *view) steps() []step {
	p := v.Plan.Price
	var all []step
	add := func(key string, m money.Money) {
		if m.Minor != 0 {
			all = append(all, step{label: v.T("fall/" + key), amount: m})
		}
	}
	sum := func(key string, m money.Money) {
		all = append(all, step{label: v.T("fall/" + key), amount: m, sum: true})
	}
	none := money.New(0, p.Currency)
	add("goods", p.BoughtIn)
	add("markup", p.Markup)
	add("labour", p.Labour)
	add("overhead", p.Overhead)
	add("road", p.Travel)
	add("contingency", p.Contingency)
	sum("cost", p.Cost)
	add("asked", p.List.Sub(p.Cost))
	add("discount", none.Sub(p.Discount))
	add("rounded", p.RoundedUp)
	add("beside", p.Beside)
	sum("net", p.Net)
	add("tax", p.Tax)
	sum("gross", p.Gross)
	return all
}

// Paying says who pays in this reading.
func Paying(reading string, book design.Book, selling design.SellingBook) engine.Paying {
	return engine.Paying{Book: book, Selling: selling, Client: reading == Client}
}
