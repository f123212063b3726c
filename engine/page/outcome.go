package page

import (
	"fmt"
	"strings"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// OutcomeView is how a job went, in words.
type OutcomeView struct {
	Begun  bool
	Groups []OutcomeGroup
	Says   []string // how it stands to what was asked for
	Open   string   // how much still counts as reckoned; empty: nothing
	Opens  []string // what does
	Leads  []FieldLead
}

// FieldLead is a way to the first field of a kind.
type FieldLead struct{ Label, Section, Path string }

// OutcomeGroup is one table of it.
type OutcomeGroup struct {
	Label string
	Lines []OutcomeLine
}

// OutcomeLine is one line of it.
type OutcomeLine struct {
	Label, Reckoned, Took, Off string
	Total                      bool
}

// Outcome is how the job went, or where that is typed; nil where there is no price, and for
// everybody but the workshop.
func (v *view) Outcome() *OutcomeView {
	if v.Reading != Maker || !v.HasPrice() {
		return nil
	}
	o := v.Job.Outcome(v.Book)
	out := &OutcomeView{Begun: o.Begun(), Leads: v.outcomeLeads()}
	if !out.Begun {
		return out
	}
	out.add(v.T("outcome/minutes"), v.minuteLines(o))
	out.add(v.T("outcome/purchases"), v.purchaseLines(o))
	if r := o.Road; r != nil {
		out.add(v.T("outcome/road"), []OutcomeLine{{
			Label: v.T("line/kilometres"), Reckoned: v.Words.Show(inKm(r.Reckoned)), Took: v.Words.Show(inKm(r.Km)),
			Off: withSign(fmt.Sprintf("%+.0f km", r.Km-r.Reckoned)),
		}})
	}
	out.add(v.T("outcome/mass"), v.massLines(o))
	out.add(v.T("outcome/money"), v.leftLines(o))
	left, floor := o.Share(o.Left), o.Floor
	out.Says = append(out.Says, v.T("outcome/scale", "asked", words.Quantity{Value: o.Asked}, "floor", words.Quantity{Value: floor}))
	if left < floor {
		out.Says = append(out.Says, v.T("outcome/below-floor"))
	}
	out.Says = append(out.Says, v.T("outcome/reserve", "reserve", v.Amount(o.Reserve), "with", v.Amount(o.Left.Add(o.Reserve))))
	for _, t := range o.OpenTasks {
		out.Opens = append(out.Opens, v.totalName(t.ID, t.Name))
	}
	for _, line := range o.OpenLines {
		out.Opens = append(out.Opens, v.T(line))
	}
	if o.OpenRoad {
		out.Opens = append(out.Opens, v.T("line/kilometres"))
	}
	if len(out.Opens) > 0 {
		out.Open = v.T("outcome/open", "tasks", len(o.OpenTasks), "lines", len(out.Opens)-len(o.OpenTasks))
	}
	return out
}

func inKm(km float64) words.Fixed { return words.Fixed{Value: km, Places: 0, Unit: "km"} }

// leftLines go from the price to what is left of it, as the price itself is reckoned.
func (v *view) leftLines(o engine.Outcome) []OutcomeLine {
	net := "outcome/net"
	if o.Agreed {
		net = "outcome/net-agreed"
	}
	same := func(key string, m money.Money) OutcomeLine {
		return OutcomeLine{Label: v.T(key), Reckoned: v.Amount(m), Took: v.Amount(m)}
	}
	lines := []OutcomeLine{same(net, o.Net)}
	if o.Beside.Minor != 0 {
		lines = append(lines, same("outcome/beside", o.Beside))
	}
	left := v.moneyLine(v.T("outcome/left"), o.ReckonedLeft, o.Left)
	left.Total = true
	planned, real := o.Share(o.ReckonedLeft), o.Share(o.Left)
	return append(lines,
		v.moneyLine(v.T("outcome/cost"), o.Reckoned, o.Took),
		same("outcome/kept-back", o.Reserve),
		left,
		OutcomeLine{Label: v.T("outcome/share"), Reckoned: v.inPercent(planned), Took: v.inPercent(real), Off: v.inPoints(real - planned)},
	)
}

// outcomeLeads are the ways to the fields of minutes, purchases, road and mass.
func (v *view) outcomeLeads() []FieldLead {
	var all []FieldLead
	add := func(key, section string, controls []Control) {
		if len(controls) > 0 {
			all = append(all, FieldLead{v.T(key), section, controls[0].Name})
		}
	}
	add("outcome/minutes-lead", Bench, v.TimeControls())
	add("outcome/purchases-lead", Bench, v.SpentControls())
	add("outcome/road-lead", Bench, v.RoadControls())
	if len(v.Job.Plan.Groups) > 0 {
		all = append(all, FieldLead{v.T("outcome/mass-lead"), Wall, fmt.Sprintf("%sweighed[%d].kg", design.RecordPrefix, v.Job.Weighing(0).Entry)})
	}
	return all
}

func (o *OutcomeView) add(label string, lines []OutcomeLine) {
	if len(lines) > 0 {
		o.Groups = append(o.Groups, OutcomeGroup{label, lines})
	}
}

func (v *view) minuteLines(o engine.Outcome) []OutcomeLine {
	var lines []OutcomeLine
	var reckoned, took float64
	for _, t := range o.Tasks {
		lines = append(lines, v.minuteLine(v.totalName(t.ID, t.Name), t.Reckoned, t.Minutes))
		reckoned, took = reckoned+t.Reckoned, took+t.Minutes
	}
	if len(lines) > 1 {
		sum := v.minuteLine(v.T("money/sum"), reckoned, took)
		sum.Total = true
		lines = append(lines, sum)
	}
	return lines
}

func (v *view) minuteLine(label string, reckoned, took float64) OutcomeLine {
	return OutcomeLine{
		Label: label, Reckoned: v.Words.Show(words.Minutes(reckoned)), Took: v.Words.Show(words.Minutes(took)),
		Off: withSign(fmt.Sprintf("%+.0f min", took-reckoned)),
	}
}

func (v *view) purchaseLines(o engine.Outcome) []OutcomeLine {
	var lines []OutcomeLine
	var reckoned, took []money.Money
	for _, s := range o.Spent {
		lines = append(lines, v.moneyLine(v.T(s.Line), s.Reckoned, s.Amount))
		reckoned, took = append(reckoned, s.Reckoned), append(took, s.Amount)
	}
	if len(lines) > 1 {
		sum := v.moneyLine(v.T("money/sum"), money.Sum(reckoned...), money.Sum(took...))
		sum.Total = true
		lines = append(lines, sum)
	}
	return lines
}

func (v *view) moneyLine(label string, reckoned, took money.Money) OutcomeLine {
	return OutcomeLine{Label: label, Reckoned: v.Amount(reckoned), Took: v.Amount(took), Off: signed(took.Sub(reckoned), v.locale())}
}

func (v *view) massLines(o engine.Outcome) []OutcomeLine {
	var lines []OutcomeLine
	for _, m := range o.Masses {
		label := v.T("outcome/heaviest")
		if len(v.Plan.Groups) > 1 {
			label = v.T("change/in-group", "n", m.Group+1, "label", label)
		}
		line := OutcomeLine{Label: label, Took: v.Words.Show(words.Kg(m.Kg)), Reckoned: v.T("outcome/not-known")}
		if m.Reckoned > 0 {
			line.Reckoned = v.Words.Show(words.Kg(m.Reckoned))
			line.Off = withSign(fmt.Sprintf("%+.0f %%", 100*(m.Kg/m.Reckoned-1)))
		}
		lines = append(lines, line)
	}
	return lines
}

func (v *view) inPercent(percent float64) string {
	return withSign(v.Words.Show(words.Fixed{Value: percent, Places: 1, Unit: "%"}))
}

// withSign writes a minus as wide as a figure.
func withSign(text string) string { return strings.Replace(text, "-", "−", 1) }

// inPoints is how far two shares lie apart.
func (v *view) inPoints(points float64) string {
	n := withSign(v.Words.Show(words.Fixed{Value: points, Places: 1}))
	if points > 0 {
		n = "+" + n
	}
	return v.T("outcome/points", "n", words.Plain(n))
}
