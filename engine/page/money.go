package page

import (
	"errors"
	"fmt"
	"slices"

	"blockfield/engine"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

func (v *view) moneySets() []set {
	heading, fields, more := "money/terms", []string{"discount", "tax", "budget"}, []string{"discountReason", "reverseCharge"}
	switch {
	case v.Reading != Builder && v.Doc.Design.Work.OwnBuild: // nothing is sold
		return nil
	case v.Reading != Maker:
		heading, fields, more = "money/budget", []string{"budget"}, nil
	}
	all := []set{{id: "money", heading: heading, base: "money.", fields: fields, more: more}}
	if v.Reading == Maker {
		for i := range v.Doc.Design.Money.Extras {
			path := fmt.Sprintf("money.extras[%d]", i)
			all = append(all, set{
				id: fmt.Sprintf("extra-%d", i), heading: "money/line", base: path + ".", fields: []string{"name", "amount", "role"},
				more: []string{"ownTax", "tax"}, part: path, taking: "money/take-line",
			})
		}
		last := &all[len(all)-1]
		last.add, last.adding = "money.extras", "money/add-line"
	}
	return all
}

// ScopeControl is how far the workshop goes, each scope with all that it sets.
func (v *view) ScopeControl() Control {
	c, _ := v.control("work.supply")
	c.Kind, c.Look, c.Watch = "radio", "", nil
	c.Options = nil
	now := v.Doc.Design.Work.Scope()
	for _, s := range design.Scopes() {
		o := Option{Value: design.SupplyPanels, Label: v.T("scope/" + string(s)), Selected: s == now}
		switch s {
		case design.KitScope:
			o.Value = design.SupplyKit
		case design.PlanScope:
			o.Value = design.SupplyPlan
		default:
			o.Also = []Edit{{"work.delivered", yesNo(s != design.CollectedScope)}, {"work.hung", yesNo(s == design.HungScope)}}
		}
		c.Options = append(c.Options, o)
	}
	return c
}

// ByWorkshop reports whether a client reads no range because a selling book has none for
// a kit or a plan.
func (v *view) ByWorkshop() bool {
	_, _, err := engine.Quote(v.Doc.Design, v.Plan, v.selling())
	return v.Reading == Client && errors.Is(err, engine.ErrNotQuoted)
}

// Scoped reports whether somebody sets how far the workshop goes.
func (v *view) Scoped() bool { return v.Reading == Maker && !v.Doc.Design.Work.OwnBuild }

// KitControls say whether a kit is delivered.
func (v *view) KitControls() []Control {
	if v.Doc.Design.Work.Scope() != design.KitScope {
		return nil
	}
	return v.controls("work.", []string{"delivered"})
}

func yesNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}

// SamplePrice is what a sample of wood and finish is sold for; empty where none is.
func (v *view) SamplePrice() string {
	if v.Reading != Maker || v.Book.Policy.Sample <= 0 || v.Doc.Design.Work.OwnBuild {
		return ""
	}
	return v.Book.Policy.Sample.In(v.Book.Currency).Format(v.locale())
}

func (v *view) moneySlots() []slot {
	all := []slot{
		{id: "money-" + v.Reading, template: "money-" + v.Reading, data: v},
		{id: "watch-outs", template: "watch-outs", data: v},
	}
	all = append(all, slot{id: "levers", template: "levers", data: v},
		slot{id: "terms", template: "terms", data: v, after: endsIn("work.ownBuild")})
	all = append(all, v.whySlots()...)
	all = append(all, v.looksSlots()...)
	all = append(all, v.orderSlots()...)
	all = append(all, v.letterSlots()...)
	if v.Reading == Maker {
		all = append(all, slot{id: "outcome", template: "outcome", data: v})
		all = append(all, slot{id: "prices", template: "prices", data: v, after: ofBook})
		all = append(all, v.bookSlots()...)
	}
	return all
}

// MoneyGroup is the lines of what belongs together, folded under what they come to.
type MoneyGroup struct {
	ID, Label string
	Lines     []MoneyLine
	Sum       string
}

// MoneyLine is one line of a table of money.
type MoneyLine struct {
	Label, Amount string
	Class         string
}

// MoneyGroups are the lines of the direct cost, and the way from there to the price.
func (v *view) MoneyGroups() []MoneyGroup {
	var all []MoneyGroup
	for _, one := range []struct {
		key   string
		roles []cost.Role
	}{
		{"material", []cost.Role{cost.Material}},
		{"labour", []cost.Role{cost.Labour}},
		{"beside", []cost.Role{cost.Overhead, cost.Travel}},
	} {
		g := MoneyGroup{ID: "money-" + one.key + "-part", Label: v.T("money/role-" + one.key)}
		var sum money.Money
		for _, l := range v.Plan.Price.Lines {
			if slices.Contains(one.roles, l.Role) && l.Amount.Minor != 0 {
				g.Lines = append(g.Lines, MoneyLine{Label: v.lineName(l), Amount: v.Amount(l.Amount)})
				sum = sum.Add(l.Amount)
			}
		}
		if len(g.Lines) > 0 {
			g.Sum = v.Amount(sum)
			all = append(all, g)
		}
	}
	return append(all, v.buildUp())
}

func (v *view) lineName(l cost.Line) string {
	if l.Name != "" {
		return l.Name
	}
	return v.T(l.Key)
}

// Amount writes money with its cents, and what is taken off with a minus as wide
// as a figure.
func (v *view) Amount(m money.Money) string {
	return withSign(m.Format(v.locale()))
}

// PriceLead says what stands behind the price with tax.
func (v *view) PriceLead() string {
	p := v.Plan.Price
	return v.T("money/price-lead", "net", v.Amount(p.Net), "left", v.Amount(p.Margin), "share", p.MarginPercent)
}

// buildUp is the way from the direct cost to the gross price, each line in words;
// down to the net price each is added to the ones above it.
func (v *view) buildUp() MoneyGroup {
	p, policy, terms := v.Plan.Price, v.Book.Policy, v.Doc.Design.Money
	line := func(key string, m money.Money, class string, args ...any) MoneyLine {
		return MoneyLine{v.T("waterfall/"+key, args...), v.Amount(m), class}
	}
	share := func(percent float64) []any { return []any{"share", words.Quantity{Value: percent}} }
	lines := []MoneyLine{
		line("markup", p.Markup, "", share(policy.MaterialMarkup)...),
		line("direct", p.Direct, "sum"),
		line("contingency", p.Contingency, "", share(policy.Contingency)...),
		line("cost", p.Cost, "sum"),
	}
	if p.MinimumApplied {
		lines = append(lines, line("minimum", p.List.Sub(p.Cost), ""))
	} else {
		lines = append(lines, line("asked", p.List.Sub(p.Cost), "", share(policy.Margin)...))
	}
	if p.Discount.Minor != 0 {
		lines = append(lines, line("discount", money.New(0, p.Currency).Sub(p.Discount), "", share(terms.Discount)...))
	}
	if p.RoundedUp.Minor != 0 {
		step := policy.RoundTo.In(p.Currency)
		lines = append(lines, line("rounded-up", p.RoundedUp, "", "step", v.Words.Written(step.Plain())))
	}
	if p.Beside.Minor != 0 {
		lines = append(lines, line("made", p.Made, "sum"), line("margin", p.Margin, "aside", "share", p.MarginPercent))
		for _, l := range p.Lines {
			if l.Role == cost.Sold {
				lines = append(lines, MoneyLine{v.lineName(l), v.Amount(l.Amount), ""})
			}
		}
		lines = append(lines, line("net", p.Net, "sum"))
	} else {
		lines = append(lines, line("net", p.Net, "sum"), line("margin", p.Margin, "aside", "share", p.MarginPercent))
	}
	for _, t := range p.Taxes {
		if len(p.Taxes) == 1 {
			lines = append(lines, line("tax", t.Amount, "", share(t.Percent)...))
		} else {
			lines = append(lines, line("tax-on", t.Amount, "", "share", words.Quantity{Value: t.Percent}, "base", t.Base))
		}
	}
	if terms.Reverse {
		lines = append(lines, line("reverse", p.Tax, ""))
	}
	return MoneyGroup{
		ID: "money-build-up-part", Label: v.T("money/build-up"), Lines: append(lines, line("gross", p.Gross, "total")),
		Sum: v.T("fold/build-up", "direct", v.Amount(p.Direct), "net", v.Amount(p.Net)),
	}
}

// Stages are what falls due when, of what was agreed on or offered, or else of the price.
func (v *view) Stages() []MoneyLine {
	var all []MoneyLine
	if v.Ordered() {
		for _, d := range v.Job.Payments() {
			all = append(all, MoneyLine{v.Words.Given(d.Stage), v.Amount(d.Gross), ""})
		}
		return all
	}
	if v.Reading == Client { // who knows what was offered, and no price of the plan
		if o := v.Doc.Offer; o != nil {
			for _, s := range o.Stages {
				all = append(all, MoneyLine{v.Words.Given(s.Name), s.Amount.In(o.Currency).Format(v.locale()), ""})
			}
		}
		return all
	}
	for _, s := range v.Plan.Price.Stages {
		all = append(all, MoneyLine{v.Words.Given(s.Name), v.Amount(s.Amount), ""})
	}
	return all
}

// Includes is what the client's price holds.
func (v *view) Includes() []string {
	var all []string
	for _, p := range engine.Included(v.Doc.Design, v.Plan) {
		all = append(all, v.Words.Say(p.Key, p.Args))
	}
	if v.Doc.Design.Money.Reverse {
		return append(all, v.T("includes/reverse-charge"))
	}
	return append(all, v.T("includes/tax", "share", words.Percent(v.Doc.Design.Money.Tax)))
}

// WorkshopAsks tells a home builder what a workshop would ask for the same panels; empty
// where that is not known.
func (v *view) WorkshopAsks() string {
	if len(v.AtWorkshop) == 0 {
		return ""
	}
	key := "money/workshop-asks"
	if v.selling().Placeholder {
		key += "-example"
	}
	asked := v.T("money/range", "low", v.AtWorkshop[0].Whole(v.locale()), "high", v.AtWorkshop[1].Whole(v.locale()))
	w := v.Doc.Design.Work
	w.OwnBuild = false
	return v.T(key, "range", asked, "scope", words.Key("asked/"+string(w.Scope())))
}

// RangeLead says what a range is, and what comes before a firm price.
func (v *view) RangeLead() string {
	if v.Doc.Design.Work.Survey && v.Doc.Design.Work.Scope() != design.PlanScope {
		return v.T("money/range-lead-survey")
	}
	return v.T("money/range-lead")
}

// extraNames are the free lines of the design, in the words of whoever typed them.
func (v *view) extraNames() []string {
	var names []string
	for _, x := range v.Doc.Design.Money.Extras {
		names = append(names, v.lineName(cost.Line{Key: "line/extra", Name: x.Name}))
	}
	return names
}

// ExtrasLine tells a maker that the bought-in lines of the job go along with the
// design; empty where there are none.
func (v *view) ExtrasLine() string {
	names := v.extraNames()
	if len(names) == 0 {
		return ""
	}
	return v.T("money/extras", "names", names)
}
