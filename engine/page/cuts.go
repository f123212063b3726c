package page

import (
	"html/template"
	"math"
	"slices"
	"strings"

	"blockfield/engine/bench"
	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// CutLot is how the blocks of one kind of stick are cut.
type CutLot struct {
	*view
	bench.Lot
}

// CutLots are the lots of the job.
func (v *view) CutLots() []CutLot {
	var all []CutLot
	for _, l := range v.Plan.Bill.Lots {
		all = append(all, CutLot{v, l})
	}
	return all
}

// Heading names the stick.
func (l CutLot) Heading() string {
	return capital(l.T("cuts/lot", "wood", l.T("choice/"+l.Wood), "size", l.Size))
}

// Several reports whether sticks of more than one length are cut.
func (l CutLot) Several() bool {
	n := 0
	for _, b := range l.Bars {
		if b.Used > 0 {
			n++
		}
	}
	return n > 1
}

// CutGroup is a number of sticks that are cut alike.
type CutGroup struct {
	Letter, Sticks, Length, Pieces, Rest string
	Bar                                  template.HTML
}

// CutGroups are the sticks as they lie beside the saw, those with the longest
// blocks first.
func (l CutLot) CutGroups() []CutGroup {
	var all []CutGroup
	for i, b := range l.Cuts.Boards {
		var pieces []string
		for _, p := range b.Pieces {
			pieces = append(pieces, l.T("cuts/pieces", "n", p.Count, "height", l.height(p.Length)))
		}
		all = append(all, CutGroup{
			Letter: l.T("cuts/letter", "letter", bench.GroupLetter(i)), Sticks: l.Show(b.Count), Length: l.stick(l.Bars[b.Bar]),
			Pieces: strings.Join(pieces, ", "), Rest: l.Show(l.Whole(l.like(b.Offcut))), Bar: l.bar(b),
		})
	}
	return all
}

// stick is the length of a kind of stick, and whether it is there already.
func (l CutLot) stick(b bench.Bar) string {
	if b.Owned {
		return l.T("cuts/own-stick", "length", b.Length)
	}
	return l.Show(b.Length)
}

// like is a length of the plan in the notation of the sticks.
func (l CutLot) like(nm int64) length.Length {
	return length.Nanometres(nm, l.StickLength.Notation())
}

// height writes a length of the plan as the height that it is.
func (l CutLot) height(nm int64) string { return l.Show(l.HeightOf(nm)) }

func (l CutLot) level(nm int64) int {
	return max(0, slices.IndexFunc(l.Heights, func(h bench.HeightCount) bool { return h.Height.Nanometres() == nm }))
}

// bar draws one stick of a group as long as the longest stick is wide, each block
// in the tone of its height.
func (l CutLot) bar(b cut.Board) template.HTML {
	const high, gap = 60, 1.5 // mm; a saw cut would not be seen
	longest := 0.0
	for _, bar := range l.Bars {
		longest = max(longest, bar.Length.Millimetres())
	}
	long := l.Bars[b.Bar].Length.Millimetres()
	c := draw.New("bar", draw.Box{X: 0, Y: 0, Width: longest, Height: high})
	c.Class("stick-bar")
	c.Rect(draw.Box{X: 0, Y: 0, Width: long, Height: high}, draw.Class("rest"), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(3))
	x := 0.0
	for _, p := range b.Pieces {
		mm := l.like(p.Length).Millimetres()
		var d strings.Builder
		for range p.Count {
			d.WriteString(draw.Polygon(x, 0, x+mm-gap, 0, x+mm-gap, high, x, high))
			x += mm + l.Doc.Design.Bench.Kerf.Millimetres()
		}
		c.Path(d.String(), draw.Class("level"), draw.Fill(tone(l.level(p.Length), len(l.Heights))))
	}
	return template.HTML(c.String())
}

// StopLine is one height at the stop block.
type StopLine struct{ Height, Need, Spare, Cut, From string }

// StopLines are the settings of the stop, the longest blocks first.
func (l CutLot) StopLines() []StopLine {
	var all []StopLine
	for _, h := range slices.Backward(l.Heights) {
		var from []string
		for i, b := range l.Cuts.Boards {
			for _, p := range b.Pieces {
				if p.Length == h.Height.Nanometres() {
					from = append(from, l.T("cuts/from", "group", bench.GroupLetter(i), "n", p.Count))
				}
			}
		}
		all = append(all, StopLine{l.Show(h.Height), l.Show(h.Need), l.Show(h.Spare), l.Show(h.Cut), strings.Join(from, ", ")})
	}
	return all
}

// Proof says how good the plan with the fewest sticks is.
func (l CutLot) Proof() string {
	several := len(l.Bars) > 1
	switch {
	case l.Proven && several:
		return l.T("cuts/proven-cost")
	case l.Proven:
		return l.T("cuts/proven-sticks", "n", l.Curve[0].Sticks)
	default:
		return l.T("cuts/gap", "share", share(l.GapPercent))
	}
}

// share is how far a plan can be from the best, rounded up: what is not proven is never
// said to be 0 %.
func share(percent float64) words.Quantity {
	const parts = 100
	return words.Quantity{Value: math.Ceil(percent*parts) / parts, Unit: "%"}
}

// LookedLonger says how good the plans of the longer search are.
func (v *view) LookedLonger() string {
	gap, visits := 0.0, 0
	for _, l := range v.Plan.Bill.Lots {
		gap = max(gap, l.GapPercent)
		visits += l.Cuts.Visits - l.Curve[l.Chosen].Least
	}
	switch {
	case gap == 0 && visits == 0:
		return v.T("cuts/looked-best")
	case gap == 0:
		return v.T("cuts/looked-visits", "n", visits)
	}
	return v.T("cuts/looked-gap", "share", share(gap), "n", visits)
}

// HandlingLine is one point of boards against handling.
type HandlingLine struct {
	Sticks, Bought, Visits, Minutes, Cost string
	Chosen                                bool
}

// HandlingLines are the points to choose from, the fewest boards first.
func (l CutLot) HandlingLines() []HandlingLine {
	var all []HandlingLine
	for i, h := range l.Curve {
		all = append(all, HandlingLine{
			Sticks: l.Show(h.Sticks), Bought: l.Show(h.Bought), Visits: l.Show(h.Visits),
			Minutes: l.T("cuts/minutes", "n", int(h.Minutes+0.5)), Cost: l.steps(h.Cost()), Chosen: i == l.Chosen,
		})
	}
	return all
}

// Choosable reports whether there is something to choose.
func (l CutLot) Choosable() bool { return len(l.Curve) > 1 }

// Weighed reports whether wood and time are weighed against each other in money.
func (l CutLot) Weighed() bool { return l.Priced && l.Reading == Maker && !l.Doc.Design.Work.OwnBuild }

// steps writes ten-thousandths of a unit of the book's currency.
func (l CutLot) steps(n int64) string {
	const stepsPerUnit = 10_000
	return l.Amount(money.Priced(n, 1, stepsPerUnit, l.Book.Currency, money.HalfAway))
}

// Choice says by what the plan was chosen.
func (l CutLot) Choice() string {
	switch wish := l.Doc.Design.Bench.Handling; {
	case wish != design.CheaperPlan:
		return l.T("cuts/chosen-wish", "wish", l.T("choice/"+wish))
	case !l.Weighed():
		return l.T("cuts/chosen-fewest")
	default:
		return l.T("cuts/chosen-cost", "rate", l.steps((l.Book.Rates.Shop + l.Book.Rates.Overhead).Steps()))
	}
}

// VisitTime says how long one visit is reckoned to take; a home builder has no time
// table of his own.
func (l CutLot) VisitTime() string {
	const secondsAMinute = 60
	key := "cuts/visit-time"
	if l.Reading == Builder {
		key = "cuts/visit-home"
	}
	for _, h := range l.Curve {
		if h.Visits > 0 {
			return l.T(key, "s", int(h.Minutes/float64(h.Visits)*secondsAMinute+0.5))
		}
	}
	return ""
}

// SheetFigure is a number of sheets that are cut alike.
type SheetFigure struct {
	Caption string
	Drawing template.HTML
}

// mostSheets is how many layouts of one board are drawn.
const mostSheets = 6

// SheetLot is the sheets of one board.
type SheetLot struct {
	*view
	bench.SheetNeed
	index int
}

// SheetLots are the boards of the job.
func (v *view) SheetLots() []SheetLot {
	var all []SheetLot
	for i, s := range v.Plan.Bill.Sheets {
		all = append(all, SheetLot{v, s, i})
	}
	return all
}

// Heading names the board.
func (s SheetLot) Heading() string {
	return capital(s.T("cuts/board", "sheet", s.T("choice/"+s.Sheet), "thickness", s.Thickness))
}

// Proof says how good the plan is.
func (s SheetLot) Proof() string {
	switch {
	case s.TooLarge:
		return s.T("cuts/sheet-joined")
	case s.Plan.Proven:
		return s.T("cuts/sheet-proven", "n", s.Count)
	default:
		return s.T("cuts/sheet-bound", "n", s.Count, "bound", s.Plan.Bound)
	}
}

// Figures are the sheets as they are cut.
func (s SheetLot) Figures() []SheetFigure {
	var all []SheetFigure
	for i, l := range s.Plan.Layouts[:min(len(s.Plan.Layouts), mostSheets)] {
		all = append(all, SheetFigure{s.T("cuts/sheet-alike", "n", l.Count), s.layout(i, l)})
		if l.There > 0 {
			width, long := s.Size(l)
			all[i].Caption = s.T("cuts/sheet-own", "n", l.Count, "width", s.Words.Number(width), "length", long)
		}
	}
	return all
}

// RestsText is what is left over of the sheets and worth keeping; empty: nothing.
func (s SheetLot) RestsText() string {
	var all []words.Phrase
	for _, r := range s.Rests {
		all = append(all, words.Phrase{Key: "cuts/rest-of", Args: words.Args{"n": r.Count, "width": s.Words.Number(s.Whole(r.Width)), "length": s.Whole(r.Length)}})
	}
	if len(all) == 0 {
		return ""
	}
	return s.T("cuts/rests", "rests", all)
}

// BackerLine is one size of backer.
type BackerLine struct{ Size, Count string }

// BackerLines are the sizes that are cut out of the sheets.
func (s SheetLot) BackerLines() []BackerLine {
	var all []BackerLine
	for _, k := range s.Backers {
		all = append(all, BackerLine{
			s.T("cuts/backer", "width", s.Words.Number(s.Whole(k.Width)), "height", s.Whole(k.Height)),
			s.Show(k.Count),
		})
	}
	return all
}

// FinishLine is one coat.
type FinishLine struct{ Coat, Tops, Long, Frame, Next string }

// FinishLines are the coats in the order of the work.
func (v *view) FinishLines() []FinishLine {
	var all []FinishLine
	litres := func(x float64) string {
		if x == 0 {
			return ""
		}
		return v.Litres(x)
	}
	for _, c := range v.Plan.Bill.Coats {
		key := "finish/field"
		if c.Frame {
			key = "finish/frame"
		}
		all = append(all, FinishLine{
			Coat: capital(v.T(key, "finish", v.T("choice/"+c.Finish), "n", c.Number, "of", c.Of)),
			Tops: litres(c.TopsLitres), Long: litres(c.LongLitres), Frame: litres(c.FrameLitres),
			Next: v.wait(c),
		})
	}
	return all
}

// wait is how long to wait after a coat.
func (v *view) wait(c bench.Coat) string {
	const day = 24
	low, high := c.Next.Low, c.Next.High
	key := "finish/next"
	if c.Number == c.Of {
		key = "finish/dry"
	}
	if high == 0 {
		return v.T("finish/by-label")
	}
	span := "finish/hours"
	if low >= 2*day {
		span, low, high = "finish/days", low/day, high/day
	}
	if low == high {
		span += "-about"
	}
	return v.T(key, "span", v.T(span, "low", int(low), "high", int(high)))
}

// GlueSet is how long the glue sets in this shop.
func (v *view) GlueSet() int { return int(bench.GlueSetHours(v.Doc.Design.Bench.Temperature) + 0.5) }

// FinishFirst reports whether some blocks are finished before they are glued.
func (v *view) FinishFirst() bool {
	return slices.ContainsFunc(v.Groups(), func(g groupView) bool { return g.Design.Finish.When != design.FinishAfter })
}

// TrimStart says how long the glue sets, and where the rows start.
func (v *view) TrimStart() string {
	edge := v.T("edge/" + v.Job.Record.Lay.Start)
	return v.T("trim/set-from", "h", v.GlueSet(), "edge", edge)
}

// TrimLine is one edge of the panels of a group.
type TrimLine struct{ Edge, Off, Depth string }

// TrimGroup is the edges of the panels of a group.
type TrimGroup struct {
	Name  string // empty where there is one group
	Lines []TrimLine
}

// TrimGroups are the edges of all groups.
func (v *view) TrimGroups() []TrimGroup {
	var all []TrimGroup
	groups := v.Groups()
	for i, bill := range v.Plan.Bill.Groups {
		g := TrimGroup{}
		if len(groups) > 1 {
			g.Name = v.Words.Given(groups[i].Design.Name)
		}
		for _, t := range bill.TrimsFrom(v.Job.Record.Lay.Start) {
			g.Lines = append(g.Lines, v.trimLine(t))
		}
		all = append(all, g)
	}
	return all
}

func (v *view) trimLine(t bench.Trim) TrimLine {
	l := TrimLine{Edge: capital(v.T("edge/" + string(t.Edge)))}
	switch {
	case t.Factory:
		l.Off = v.T("trim/factory")
	case !t.Sawn():
		l.Off = v.T("trim/nothing")
	case t.Reached:
		l.Off, l.Depth = v.T("trim/off", "off", t.Off), v.T("trim/depth", "depth", t.Depth)
	default:
		l.Off, l.Depth = v.T("trim/off", "off", t.Off), v.T("trim/too-deep", "depth", t.Depth)
	}
	if t.Bare && !t.Factory {
		l.Depth += " " + v.T("trim/bare")
	}
	return l
}
