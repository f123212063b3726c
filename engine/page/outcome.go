package page

import (
	"fmt"
	"slices"
	"strings"

	"blockfield/engine"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// OutcomeView is how a job went, in words.
type OutcomeView struct {
	Begun  bool
	Groups []OutcomeGroup
	Open   string // what still counts as reckoned; empty: nothing
}

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

// latestStates are those in which a job has something to say of itself.
func latestStates() []string {
	return []string{"on the bench", "drying", "ready", "hung", "closed", "reworked"}
}

// Outcome is how the job went, once it is at the bench or anything is known of it; nil
// before, and for everybody but the workshop.
func (v *view) Outcome() *OutcomeView {
	if v.Reading != Maker || !v.HasPrice() {
		return nil
	}
	o := v.Job.Outcome(v.Book)
	if !o.Begun() && !slices.Contains(latestStates(), v.Job.State()) {
		return nil
	}
	out := &OutcomeView{Begun: o.Begun()}
	if !out.Begun {
		return out
	}
	out.add(v.T("outcome/minutes"), v.minuteLines(o))
	out.add(v.T("outcome/purchases"), v.purchaseLines(o))
	out.add(v.T("outcome/mass"), v.massLines(o))
	net := "outcome/net"
	if o.Agreed {
		net = "outcome/net-agreed"
	}
	profit := v.moneyLine(v.T("outcome/profit"), o.ReckonedProfit, o.Profit)
	profit.Total = true
	out.add(v.T("outcome/money"), []OutcomeLine{
		{Label: v.T(net), Reckoned: v.Amount(o.Net), Took: v.Amount(o.Net)},
		v.moneyLine(v.T("outcome/cost"), o.Reckoned, o.Took),
		profit,
		{Label: v.T("outcome/share"), Reckoned: v.inPercent(o.Share(o.ReckonedProfit)), Took: v.inPercent(o.Share(o.Profit))},
	})
	if o.OpenTasks+o.OpenLines > 0 {
		out.Open = v.T("outcome/open", "tasks", o.OpenTasks, "lines", o.OpenLines)
	}
	return out
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
		lines = append(lines, v.minuteLine(v.taskName(t.ID, t.Name), t.Reckoned, t.Minutes))
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
