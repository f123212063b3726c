package page

import (
	"fmt"
	"slices"
	"strings"

	"blockfield/engine/design"
	"blockfield/engine/words"
)

// The parts of the Bench and of a price, and what is asked once of the Look and the Wall, are
// folded, each with its answer in the line that is left of it.
// No Stop is hidden so: watch-outs of what is folded stand in the list above.

// HoursAnswer is what all of it takes, and at home how many weekends.
func (v *view) HoursAnswer() string {
	h := v.Plan.Bill.Hours.Total
	if v.Reading == Builder {
		return v.T("fold/weekends", "hours", hours(v.HomeHours()), "n", v.Weekends())
	}
	return v.T("fold/hours", "typical", hours(h.Typical), "low", hours(h.Low), "high", hours(h.High))
}

// CutsAnswer is what is cut.
func (v *view) CutsAnswer() string {
	sticks, heights, blocks := 0, 0, 0
	for _, l := range v.Plan.Bill.Lots {
		sticks += l.SticksBeforeDefects
		heights += len(l.Heights)
		for _, h := range l.Heights {
			blocks += h.Cut
		}
	}
	return v.T("fold/cuts", "blocks", blocks, "heights", heights, "n", sticks)
}

// Choosable reports whether any sticks leave a choice between boards and handling.
func (v *view) Choosable() bool {
	for _, l := range v.CutLots() {
		if l.Choosable() {
			return true
		}
	}
	return false
}

// HandlingAnswer is what was chosen.
func (v *view) HandlingAnswer() string {
	bought := 0
	for _, l := range v.Plan.Bill.Lots {
		bought += l.Sticks
	}
	return v.T("fold/handling", "bought", bought, "n", v.Plan.Bill.Visits)
}

// SheetsAnswer is how many sheets are bought, and how many of one's own are cut.
func (v *view) SheetsAnswer() string {
	bought, own := 0, 0
	for _, s := range v.Plan.Bill.Sheets {
		bought += s.Count
		own += s.Plan.Own
	}
	if own > 0 {
		return v.T("fold/sheets-own", "n", bought, "own", own)
	}
	return v.T("fold/sheets", "n", bought)
}

// FinishAnswer is what the coats take together.
func (v *view) FinishAnswer() string {
	litres := 0.0
	for _, f := range v.Plan.Bill.Finishes {
		litres += f.Litres
	}
	if litres == 0 {
		return v.T("fold/unfinished", "h", v.GlueSet())
	}
	return v.T("fold/finish", "h", v.GlueSet(), "litres", words.Litres(litres))
}

// answerID names the slot of a set.
func answerID(set string) string { return set + "-name" }

// benchAnswers are the lines of the sets of the Bench, all of which are folded.
func (v *view) benchAnswers() []setAnswer {
	all := []setAnswer{
		{"sticks", v.T("bench/sticks"), v.sawAnswer}, {"boards", v.T("bench/boards"), v.boardsAnswer},
		{"glue", v.T("bench/shop"), v.shopAnswer}, {"work", v.T("bench/work"), v.workAnswer},
	}
	for _, g := range v.Groups() {
		all = append(all, setAnswer{"finish-when-" + g.Key, v.finishHeading(g), func() string { return v.T("choice/" + g.Design.Finish.When) }})
	}
	number := v.Words.Number
	for i, s := range v.Doc.Design.Bench.Stock {
		key := "stock/yard"
		if s.Owned {
			key = "stock/there"
		}
		all = append(all, setAnswer{fmt.Sprintf("stock-%d", i), capital(v.T(key, "wood", v.T("choice/"+s.Wood))), func() string {
			return v.several(s.Count, v.T("fold/stock", "width", number(s.Width), "thickness", number(s.Thickness), "length", s.Length))
		}})
	}
	for i, s := range v.Doc.Design.Bench.Sheets {
		sheet := capital(v.T("stock/sheet", "sheet", v.T("choice/"+s.Sheet), "thickness", s.Thickness))
		all = append(all, setAnswer{fmt.Sprintf("own-sheet-%d", i), sheet, func() string {
			return v.several(s.Count, v.T("cuts/backer", "width", number(s.Width), "height", s.Length))
		}})
	}
	return all
}

func (v *view) sawAnswer() string {
	b := v.Doc.Design.Bench
	return v.T("fold/sticks", "length", b.StickLength, "kerf", b.Kerf, "tail", b.HoldTail)
}

func (v *view) boardsAnswer() string {
	b := v.Doc.Design.Bench
	boards := v.T("fold/by-metre")
	if !b.BoardLength.IsZero() {
		boards = v.T("fold/boards", "length", b.BoardLength)
	}
	return v.T("fold/boards-trim", "boards", boards, "more", b.BackerOversize, "trim", words.Key("choice/"+b.Trim))
}

func (v *view) shopAnswer() string {
	b := v.Doc.Design.Bench
	return v.T("fold/shop", "pct", words.Percent(b.StockMoisture), "min", words.Minutes(b.GlueOpenMinutes), "warm", words.Celsius(b.Temperature))
}

func (v *view) workAnswer() string {
	w := v.Doc.Design.Work
	if v.Reading == Maker {
		return v.T("fold/people-road", "n", w.Crew, "km", int(w.DistanceKm+0.5))
	}
	return v.T("fold/people", "n", w.Crew)
}

// setAnswer is the line of a folded set: of what is asked once and then only looked up.
type setAnswer struct {
	set  string // its id
	Name string
	Text func() string
}

// folded folds those sets that have an answer.
func folded(all []set, answers []setAnswer) []set {
	for i := range all {
		if slices.ContainsFunc(answers, func(a setAnswer) bool { return a.set == all[i].id }) {
			all[i].folded, all[i].name = true, answerID(all[i].id)
		}
	}
	return all
}

func answerSlots(answers []setAnswer) []slot {
	var all []slot
	for _, a := range answers {
		all = append(all, slot{id: answerID(a.set), template: "answer", data: a, inline: true})
	}
	return all
}

func (v *view) lookAnswers() []setAnswer {
	if v.Reading == Client {
		return nil
	}
	all := []setAnswer{{"light", v.T("look/light"), v.lightAnswer}, {"job", v.T("look/job"), v.jobAnswer}}
	for _, g := range v.Groups() {
		all = append(all,
			setAnswer{"backer-" + g.Key, v.T("look/backer"), g.backerAnswer},
			setAnswer{"panels-" + g.Key, v.T("look/panels"), g.panelsAnswer},
		)
	}
	return all
}

func (v *view) lightAnswer() string {
	l := v.Doc.View.Lamp
	return v.T("fold/light", "off", words.Degrees(l.Elevation), "warmth", words.Kelvin(l.Warmth))
}

func (v *view) jobAnswer() string {
	if title := v.Doc.Design.Title; title != "" {
		return v.Words.Given(title)
	}
	return v.T("fold/untitled")
}

func (g groupView) backerAnswer() string {
	b := g.Design.Backer
	return g.T("fold/backer", "sheet", words.Key("choice/"+b.Sheet), "thickness", b.Thickness)
}

func (g groupView) panelsAnswer() string {
	d := g.Design
	if d.PanelsWide*d.PanelsHigh == 1 {
		return g.T("fold/one-panel")
	}
	return g.T("fold/panels", "wide", d.PanelsWide, "high", d.PanelsHigh, "gap", d.PanelGap)
}

func (v *view) wallAnswers() []setAnswer {
	all := []setAnswer{
		{"lifting", v.T("wall/lifting"), v.liftingAnswer}, {"hung", v.T("wall/hung"), v.hungAnswer},
		{"room", v.T("wall/room"), v.roomAnswer}, {"way", v.T("wall/way"), v.wayAnswer},
	}
	for i, g := range v.Groups() {
		all = append(all,
			setAnswer{"cleat-" + g.Key, v.T("wall/cleat"), g.cleatAnswer},
			setAnswer{"weigh-" + g.Key, v.T("wall/weighing"), func() string { return v.weighedAnswer(i) }},
		)
	}
	return all
}

func (v *view) liftingAnswer() string {
	l := v.Doc.Design.Work.Lifting
	method := v.T("choice/" + l.Method)
	if l.Lead == "" {
		return method
	}
	return v.T("lifting/method-value", "method", method, "lead", l.Lead)
}

func (v *view) hungAnswer() string {
	if day := v.Job.Record.Hung.Day; day != "" {
		return v.T("fold/hung", "day", day)
	}
	return v.T("fold/nothing-noted")
}

func (v *view) roomAnswer() string {
	r := v.Doc.Design.Room
	climate := v.T("fold/climate", "low", words.Celsius(r.TemperatureLow), "high", words.Celsius(r.TemperatureHigh),
		"dry", words.Percent(r.HumidityLow), "wet", words.Percent(r.HumidityHigh))
	switch {
	case v.Reading == Builder:
		return climate
	case r.Public:
		return v.T("fold/public", "climate", climate)
	}
	return v.T("fold/private", "climate", climate)
}

func (v *view) wayAnswer() string {
	w := v.Doc.Design.WayIn
	return v.T("fold/way", "width", v.Words.Number(w.DoorWidth), "height", w.DoorHeight, "corridor", w.Corridor)
}

func (g groupView) cleatAnswer() string {
	c := g.Design.Cleat
	return g.T("fold/cleat", "thickness", c.Thickness, "bevel", words.Degrees(c.Bevel), "lock", words.Key("choice/"+c.Lock))
}

// weighedAnswer is what the scales said of a group of the plan.
func (v *view) weighedAnswer(group int) string {
	if kg := v.Job.Weighing(group).Kg; kg > 0 {
		return v.Words.Show(words.Kg(kg))
	}
	return v.T("fold/not-weighed")
}

// several is a number of things; 0 of them is as many as are wanted.
func (v *view) several(n int, what string) string {
	if n == 0 {
		return what
	}
	return v.T("fold/several", "n", n, "what", what)
}

func (v *view) finishHeading(g groupView) string {
	if len(v.Plan.Groups) > 1 {
		return v.T("fold/of", "what", v.T("finish/heading"), "name", g.Design.Name)
	}
	return v.T("finish/heading")
}

// shopAnswers are what the parts of the record come to.
func (v *view) shopAnswers() []slot {
	said := map[string]string{
		"sticks": v.sticksAnswer(), "counts": v.countsAnswer(), "lay": v.layAnswer(), "days": v.daysAnswer(),
	}
	if v.Job.Treatable() {
		said["treated"] = v.T("fold/nothing-noted")
		if product := v.Job.Record.Treated.Product; product != "" {
			said["treated"] = product
		}
	}
	order := []string{"sticks", "counts", "lay", "treated", "days"}
	switch v.Reading {
	case Builder:
		said["tools"] = v.T("fold/tools", "n", len(v.Job.Record.Tools), "of", len(design.Tools()))
		order = append(order, "tools")
	case Maker:
		said["signs"] = v.signsAnswer()
		timed := 0
		for _, t := range v.Job.Record.Times {
			if t.Minutes > 0 {
				timed++
			}
		}
		said["learn"] = v.T("fold/timed", "n", timed)
		order = append(order, "signs", "learn")
	}
	var all []slot
	for _, name := range order {
		if text, ok := said[name]; ok {
			all = append(all, slot{id: "shop-" + name + "-answer", template: "part-name", data: text, inline: true})
		}
	}
	return all
}

func (v *view) sticksAnswer() string {
	var all []string
	for _, s := range v.Job.Sections {
		if !s.Section.Whole() {
			return v.T("fold/not-measured")
		}
		all = append(all, s.Section.Mean.String())
	}
	return v.T("fold/mean", "mean", strings.Join(all, ", "))
}

func (v *view) countsAnswer() string {
	counted, short := 0, 0
	for _, c := range v.Job.Counts {
		if c.Counted {
			counted++
			if c.Short > 0 {
				short++
			}
		}
	}
	if short > 0 {
		return v.T("fold/short", "n", short, "of", len(v.Job.Counts))
	}
	return v.T("fold/counted", "n", counted, "of", len(v.Job.Counts))
}

func (v *view) layAnswer() string {
	return v.T("fold/lay", "edge", words.Key("choice/"+v.Job.Record.Lay.Start), "n", v.Job.LaidRows(), "of", len(v.Job.Cards))
}

func (v *view) daysAnswer() string {
	ready := v.Job.Days.Plan.Ready.Day()
	if !v.Job.Days.Dated {
		return v.T("fold/days", "n", int(ready-v.Job.Days.Start)+1)
	}
	return v.T("fold/ready", "day", v.date(ready))
}

func (v *view) signsAnswer() string {
	holding := 0
	for _, s := range v.Job.Record.SignOffs {
		if s.Holds() {
			holding++
		}
	}
	if len(v.Job.Record.SignOffs) == 0 {
		return v.T("fold/unsigned")
	}
	return v.T("fold/signed", "n", holding, "of", len(v.Job.Record.SignOffs))
}
