package page

import (
	"fmt"
	"slices"
	"strings"

	"blockfield/engine"
	"blockfield/engine/bench"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/layup"
	"blockfield/engine/learn"
	"blockfield/engine/length"
	"blockfield/engine/measure"
	"blockfield/engine/moisture"
	"blockfield/engine/words"
)

// The part of the Bench that belongs to the record of the job. What a person types there
// stands in forms that follow from edits of the design only; what is said of it stands
// beside them and follows from every edit.

// ofDesign is for slots that hold controls of the record.
func ofDesign(changed string) bool { return !strings.HasPrefix(changed, design.RecordPrefix) }

// shopSlots are the parts of the record.
func (v *view) shopSlots() []slot {
	all := []slot{
		{id: "shop-sticks", template: "shop-sticks", data: v, after: ofDesign},
		{id: "shop-sticks-said", template: "shop-sticks-said", data: v},
		{id: "shop-meter-said", template: "shop-meter-said", data: v},
		{id: "shop-counts", template: "shop-counts", data: v, after: ofDesign},
		{id: "shop-counts-said", template: "shop-counts-said", data: v},
		{id: "shop-lay", template: "shop-lay", data: v, after: ofDesign},
		{id: "shop-days", template: "shop-days", data: v, after: ofDesign},
		{id: "shop-days-said", template: "shop-days-said", data: v},
	}
	all = append(all, v.shopAnswers()...)
	if v.Job.Treatable() {
		all = append(all,
			slot{id: "shop-treated", template: "shop-treated", data: v, after: ofDesign},
			slot{id: "shop-treated-said", template: "shop-treated-said", data: v},
		)
	}
	if v.Reading == Builder {
		all = append(all,
			slot{id: "shop-tools", template: "shop-tools", data: v, after: ofDesign},
			slot{id: "shop-jigs", template: "shop-jigs", data: v, after: ofDesign},
		)
	}
	if v.Reading == Maker {
		all = append(all,
			slot{id: "shop-signs", template: "shop-signs", data: v, after: ofDesign},
			slot{id: "shop-learn", template: "shop-learn", data: v, after: ofDesign},
			slot{id: "shop-learn-said", template: "shop-learn-said", data: v},
		)
	}
	return all
}

// recordFields are the paths of the controls of the record.
func (v *view) recordFields() []string {
	var all []string
	add := func(format string, args ...any) { all = append(all, design.RecordPrefix+fmt.Sprintf(format, args...)) }
	for _, s := range v.Job.Sections {
		add("cards[%d].widths", s.Card)
		add("cards[%d].thicknesses", s.Card)
	}
	for i := range v.Job.Record.Meter {
		add("meter[%d].day", i)
		add("meter[%d].percent", i)
	}
	for _, c := range v.Job.Counts {
		add("bins[%d].cut", c.Entry)
		add("bins[%d].rejects", c.Entry)
	}
	if v.Job.Treatable() {
		for _, name := range treatedFields() {
			add("treated.%s", name)
		}
	}
	add("lay.start")
	add("lay.paper")
	for _, name := range dayFields() {
		add("days.%s", name)
	}
	return all
}

// Lookup is that of package design, for a field of the design, of the record or of the
// price book.
func Lookup(path string) (design.Field, bool) {
	if rest, ours := strings.CutPrefix(path, design.BookPrefix); ours {
		return design.LookupBook(rest)
	}
	if rest, ours := strings.CutPrefix(path, design.RecordPrefix); ours {
		return design.LookupRecord(rest)
	}
	return design.Lookup(path)
}

// fieldText is the text of such a field, as its control shows it.
func (v *view) fieldText(path string) (text string, ok bool) {
	if rest, ours := strings.CutPrefix(path, design.BookPrefix); ours {
		text, ok = design.BookText(v.Book, rest, v.Doc.View.Units)
	} else if rest, ours := strings.CutPrefix(path, design.RecordPrefix); ours {
		text, ok = design.RecordText(v.Job.Record, rest, v.Doc.View.Units)
	} else {
		text, ok = design.Text(v.Doc, path, v.Doc.View.Units)
	}
	return FieldText(v.Words, path, text), ok
}

// FieldText is the text of a field, as package design gives it, as its control shows it.
func FieldText(r words.Reader, path, text string) string {
	f, ok := Lookup(path)
	if !ok || slider(path) {
		return text
	}
	return f.Shown(r, text)
}

// slider reports whether a field is moved and not typed: its texts are the browser's.
func slider(path string) bool { return strings.HasPrefix(path, "view.lamp.") }

// recordControl is a control of the record with a label of its own; empty: that of its
// field.
func (v *view) recordControl(label, format string, args ...any) Control {
	c, ok := v.control(design.RecordPrefix + fmt.Sprintf(format, args...))
	if !ok {
		panic("page: internal error: no control " + fmt.Sprintf(format, args...))
	}
	c.Watch = nil // it is in the list, where it can be seen
	if label != "" {
		c.Label = label
	}
	return c
}

// Sticks as measured

// SectionForm is the card of one section.
type SectionForm struct {
	Name                string
	Widths, Thicknesses Control
}

// SectionForms are the cards of the job's sections.
func (v *view) SectionForms() []SectionForm {
	var all []SectionForm
	for _, s := range v.Job.Sections {
		all = append(all, SectionForm{
			Name:        v.T("measure/card", "wood", capital(v.T("choice/"+s.Wood)), "size", s.Size),
			Widths:      v.recordControl("", "cards[%d].widths", s.Card),
			Thicknesses: v.recordControl("", "cards[%d].thicknesses", s.Card),
		})
	}
	return all
}

// SectionSaid is what the sticks of one section say.
type SectionSaid struct {
	Lines []string
	Take  string // what a button takes over; empty: nothing
	Index int    // of the section
}

// SectionsSaid is what all sticks say.
func (v *view) SectionsSaid() []SectionSaid {
	var all []SectionSaid
	for i, s := range v.Job.Sections {
		said := SectionSaid{Index: i}
		said.Lines = append(said.Lines, v.sectionLine(s))
		for _, g := range v.Plan.Groups {
			if slices.Contains(g.Design.Woods(), s.Wood) && g.Design.Block.Size.Same(s.Size) {
				said.Lines = append(said.Lines, v.driftLine(g, s))
				if line, ok := v.takenLine(g, s); ok {
					said.Lines = append(said.Lines, line)
					said.Take = v.T("measure/take", "mean", words.Exact(s.Section.Mean))
				}
			}
		}
		all = append(all, said)
	}
	return all
}

// sectionLine says the mean and the spread. Hundredths of a millimetre are said in
// millimetres whatever the units.
func (v *view) sectionLine(s engine.Section) string {
	if !s.Section.Whole() {
		return v.T("measure/some", "n", s.Section.Sticks, "all", measure.Sticks)
	}
	return v.T("measure/section", "n", s.Section.Sticks, "mean", words.Exact(s.Section.Mean),
		"within", hundredths(s.Section.WithinMM), "spread", hundredths(s.Section.SpreadMM),
		"least", words.Exact(s.Section.Least), "most", words.Exact(s.Section.Most))
}

func hundredths(mm float64) words.Fixed { return words.Fixed{Value: mm, Places: 2, Unit: "mm"} }

// driftLine says how far the longer rows of a group may end from where they are drawn.
func (v *view) driftLine(g engine.Group, s engine.Section) string {
	d := measure.Longest(g.Design, s.Known)
	basis := "measure/basis-assumed"
	if s.Known.Measured {
		basis = "measure/basis-card"
	}
	return v.T("measure/row", "n", d.Blocks, "from", v.offBy(d.MeanMM-d.BandMM), "to", v.offBy(d.MeanMM+d.BandMM), "basis", words.Key(basis))
}

func (v *view) offBy(mm float64) string {
	return withSign(v.Words.Written(fmt.Sprintf("%+.1f mm", mm)))
}

// takenLine says what the field is with the measured size; false where it is the size
// already, or nobody has measured.
func (v *view) takenLine(g engine.Group, s engine.Section) (string, bool) {
	if !s.Known.Measured || s.Section.Mean.Same(s.Size) {
		return "", false
	}
	other := g.Design
	other.Block.Size, other.Columns, other.Rows = s.Section.Mean, g.Built.Columns, g.Built.Rows
	width, height := other.Field()
	number := v.Words.Number
	return v.T("measure/field", "mean", words.Exact(s.Section.Mean), "width", number(width), "height", height,
		"wasWidth", number(g.Built.FieldWidth), "wasHeight", g.Built.FieldHeight), true
}

// Moisture

// MeterForm is one reading of the meter.
type MeterForm struct {
	Day, Percent Control
	Path         string
}

// MeterForms are the readings of the meter.
func (v *view) MeterForms() []MeterForm {
	var all []MeterForm
	for i := range v.Job.Record.Meter {
		all = append(all, MeterForm{
			Day: v.recordControl("", "meter[%d].day", i), Percent: v.recordControl("", "meter[%d].percent", i),
			Path: fmt.Sprintf("%smeter[%d]", design.RecordPrefix, i),
		})
	}
	return all
}

// CanTakeMoisture reports whether the meter said something else than the design has.
func (v *view) CanTakeMoisture() bool {
	last, ok := v.Job.LastReading()
	return ok && last.Percent != v.Doc.Design.Bench.StockMoisture
}

// MoistureLines say what the room's air does to the fields, both ways.
func (v *view) MoistureLines() []string {
	d := v.Doc.Design
	var all []string
	for _, g := range v.Plan.Groups {
		m, ok := moisture.Of(d.Room, d.Bench, g.Design)
		if !ok {
			continue
		}
		key := "moisture/said"
		if !g.Design.Framed() {
			key = "moisture/said-frameless"
		}
		all = append(all, v.T(key, "wood", capital(v.T("choice/"+m.Wood)), "low", pct(m.Room.Low), "high", pct(m.Room.High),
			"stock", pct(m.StockPct), "side", tenths(m.SideMM), "growth", tenths(m.GrowthMM), "shrink", tenths(m.ShrinkMM),
			"slack", tenths(m.SlackMM), "joint", hundredths(m.JointMM()), "gap", tenths(m.FrameGapMM())))
		if m.Beyond {
			all = append(all, v.T("moisture/beyond"))
		}
		if len(all) > 0 && g.Path == v.Plan.Groups[len(v.Plan.Groups)-1].Path {
			days := m.Settling()
			all = append(all, v.T("moisture/settle", "least", days.Least, "plan", days.Plan))
		}
	}
	switch settled, known := v.Job.Settled(); {
	case known && settled:
		all = append(all, v.T("moisture/settled"))
	case known:
		all = append(all, v.T("moisture/not-settled"))
	}
	return all
}

func pct(p float64) words.Fixed { return words.Fixed{Value: p, Places: 1, Unit: "%"} }

// tenths is a size to a tenth of a millimetre.
func tenths(mm float64) length.Length { return length.Micrometres(int64(mm*10+0.5) * 100) }

// Counts

// BinForm is where one bin is counted.
type BinForm struct {
	Name, Key    string
	Entry        int
	Cut, Rejects Control
}

// BinForms are the bins, the tallest first, as they are cut.
func (v *view) BinForms() []BinForm {
	var all []BinForm
	for _, c := range v.Job.Counts {
		all = append(all, BinForm{
			Name: v.binName(c.Bin), Entry: c.Entry, Key: fmt.Sprintf("bin-%d", c.Entry),
			Cut:     v.recordControl("", "bins[%d].cut", c.Entry),
			Rejects: v.recordControl("", "bins[%d].rejects", c.Entry),
		})
	}
	slices.Reverse(all)
	return all
}

// binName tells a bin from the others of the job.
func (v *view) binName(b layup.Bin) string {
	if len(v.Job.Sections) > 1 {
		return v.T("count/bin-of", "height", b.Height, "wood", words.Key("choice/"+b.Wood), "size", b.Size)
	}
	return v.T("count/bin", "height", b.Height)
}

// binHeight is the height of its blocks, and the rest where that does not tell it
// from all others.
func (v *view) binHeight(b layup.Bin) string {
	if len(v.Job.Sections) > 1 {
		return v.binName(b)
	}
	return v.Words.Show(b.Height)
}

// CountLine is one line of the count card.
type CountLine struct {
	Height                          string
	Need, Spare, Cut, Rejects, Good string
	Short                           string // empty: enough
}

// CountLines are the count card, the tallest first.
func (v *view) CountLines() []CountLine {
	var all []CountLine
	n := v.Words.Count
	for _, c := range v.Job.Counts {
		line := CountLine{
			Height: v.binHeight(c.Bin), Need: n(c.Need), Spare: n(c.Spare),
			Cut: n(c.Cut), Rejects: n(c.Rejects), Good: n(c.Good),
		}
		if c.Short > 0 && c.Counted {
			line.Short = v.T("count/short", "n", c.Short)
		}
		all = append(all, line)
	}
	slices.Reverse(all)
	return all
}

// RecutLines are what has to be cut anew.
func (v *view) RecutLines() []string {
	var all []string
	for _, c := range v.Job.Recut() {
		all = append(all, v.T("count/recut", "n", c.Recut, "height", v.binHeight(c.Bin)))
	}
	return all
}

// treatedFields are what is noted of a treatment against fire.
func treatedFields() []string {
	return []string{"product", "batch", "coverage", "where", "day", "by"}
}

// TreatedControls are where it is typed.
func (v *view) TreatedControls() []Control {
	var all []Control
	for _, name := range treatedFields() {
		all = append(all, v.recordControl("", "treated.%s", name))
	}
	return all
}

// TreatedLines say what there is to treat, and what it takes.
func (v *view) TreatedLines() []string {
	var all []string
	for _, p := range v.Job.TreatedSaid() {
		all = append(all, v.Words.Say(p.Key, p.Args))
	}
	return all
}

// LayControls are how the rows are laid.
func (v *view) LayControls() []Control {
	return []Control{v.recordControl("", "lay.start"), v.recordControl("", "lay.paper")}
}

// Signatures

// Sign is what a button beside a Stop names that a signature would clear, and that nobody
// has begun to sign; empty for others, and for who has nothing to sign.
func (w Watch) Sign() string {
	asked := w.Out.Asked()
	if w.Reading != Maker || asked.Level != check.Stop || asked.Evidence {
		return ""
	}
	if _, begun := w.signOff(w.Out); begun {
		return ""
	}
	return stopName(w.Out.Code, w.Out.Field)
}

// Signing is the field where a signature that was begun waits for its name; empty where
// none was, or where it is given.
func (w Watch) Signing() string {
	if i, begun := w.signOff(w.Out); begun && w.Reading == Maker && w.Out.Signed == nil {
		return signaturePath(i)
	}
	return ""
}

// ControlID is the id of the control with a path.
func (w Watch) ControlID(path string) string { return controlID(path) }

func stopName(code, field string) string { return code + " " + field }

// SignedCheck is the code and the field of what a button to sign off names.
func SignedCheck(name string) (code, field string) {
	code, field, _ = strings.Cut(name, " ")
	return code, field
}

// SignaturePath is the path of the name under what a button to sign off names.
func SignaturePath(job engine.Job, name string) string {
	return signaturePath(slices.IndexFunc(job.Record.SignOffs, func(s design.SignOff) bool { return stopName(s.Check, s.Field) == name }))
}

func signaturePath(i int) string { return fmt.Sprintf("%ssignOffs[%d].name", design.RecordPrefix, i) }

// signOff finds the entry of a watch-out, for the design of now.
func (v *view) signOff(w check.WatchOut) (int, bool) {
	i := slices.IndexFunc(v.Job.Record.SignOffs, func(s design.SignOff) bool {
		return s.Check == w.Code && s.Field == w.Field && s.Revision == v.Plan.Revision
	})
	return i, i >= 0
}

// SignForm is where a Stop is signed off.
type SignForm struct {
	Sentence, State string
	Name, Reason    Control
	Path            string
}

// SignForms are the signatures of the job. One of another revision does not hold any
// more, and says so.
func (v *view) SignForms() []SignForm {
	var all []SignForm
	for i, s := range v.Job.Record.SignOffs {
		f := SignForm{
			Sentence: s.Check, Path: fmt.Sprintf("%ssignOffs[%d]", design.RecordPrefix, i),
			Name: v.recordControl("", "signOffs[%d].name", i), Reason: v.recordControl("", "signOffs[%d].reason", i),
		}
		if s.Revision != v.Plan.Revision {
			f.State = v.T("sign/lapsed", "revision", s.Revision, "now", v.Plan.Revision)
		}
		for _, w := range v.Plan.AllWatchOuts() {
			if w.Code == s.Check && w.Field == s.Field {
				f.Sentence = v.Words.Say(w.Code, words.Args(w.Args))
			}
		}
		all = append(all, f)
	}
	return all
}

// What it took

// TimeControls are the tasks of the job, each with what was reckoned for all of it.
func (v *view) TimeControls() []Control {
	var all []Control
	for _, t := range v.Plan.Bill.Timed(v.Doc.Design.Work) {
		i := slices.IndexFunc(v.Job.Record.Times, func(had design.Time) bool { return had.Task == t.ID })
		if i < 0 {
			continue
		}
		c := v.recordControl(v.totalName(t.ID, t.Name), "times[%d].minutes", i)
		c.Hint, c.Standing = v.T("learn/reckoned-minutes", "minutes", words.Minutes(v.heldMinutes(t.ID, t.Minutes.Typical))), true
		all = append(all, c)
	}
	return all
}

// RoadControls are what the way there and back took; none where nobody drives.
func (v *view) RoadControls() []Control {
	if v.Plan.Bill.RoadKm <= 0 {
		return nil
	}
	hours, way := v.recordControl("", "road.minutes"), v.recordControl("", "road.km")
	const minutesPerHour = 60
	hours.Hint, hours.Standing = v.T("learn/reckoned-minutes", "minutes", words.Minutes(v.heldMinutes(bench.Road, v.Plan.Bill.Hours.Travel.Typical*minutesPerHour))), true
	km := v.Plan.Bill.RoadKm
	if h := v.Job.Record.Held; h != nil {
		km = h.Km
	}
	way.Hint, way.Standing = v.T("learn/reckoned-amount", "amount", inKm(km)), true
	return []Control{hours, way}
}

// heldMinutes are those that the job is held against, or those that the plan has.
func (v *view) heldMinutes(task string, planned float64) float64 {
	if h := v.Job.Record.Held; h != nil {
		if held, ok := h.MinutesOf(task); ok {
			return held
		}
	}
	return planned
}

// totalName is the word for a task as a whole: what the time table has for one block is
// done to all of them.
func (v *view) totalName(id, name string) string {
	if v.Words.Language.Has("total/" + id) {
		return v.T("total/" + id)
	}
	return v.taskName(id, name)
}

// taskName is the word for a task, or what the book calls it.
func (v *view) taskName(id, name string) string {
	if key := bench.TimeKey(id); key != "" {
		return v.T(key)
	}
	if v.Words.Language.Has("task/" + id) {
		return v.T("task/" + id)
	}
	return name
}

// SpentControls are the lines of the bill, each with what was reckoned.
func (v *view) SpentControls() []Control {
	var all []Control
	for i, s := range v.Job.Record.Spent {
		for _, l := range v.Plan.Price.Lines {
			if l.Key == s.Line && l.Name == "" {
				c := v.recordControl(v.T(l.Key), "spent[%d].amount", i)
				reckoned := l.Amount
				if h := v.Job.Record.Held; h != nil {
					if held, ok := h.AmountOf(s.Line); ok {
						reckoned = held.In(h.Currency)
					}
				}
				c.Hint, c.Standing = v.T("learn/reckoned-amount", "amount", v.Amount(reckoned)), true
				all = append(all, c)
			}
		}
	}
	return all
}

// LearnControls say whether anything is learned.
func (v *view) LearnControls() []Control {
	return []Control{v.recordControl("", "learn.aside"), v.recordControl("", "learn.why")}
}

// LessonLine is what a job says of one task or one line, and what becomes of it.
type LessonLine struct {
	Name, Ratio, Factor, Jobs string
	Note                      string // what is to be thought of; empty: nothing
	Choice                    *Control
}

// LessonLines are what the job says to the book.
func (v *view) LessonLines() []LessonLine {
	times, prices := v.Job.Lessons(v.Book)
	var all []LessonLine
	for _, l := range times {
		line := LessonLine{Name: v.totalName(l.Task, v.Book.TaskName(l.Task)), Ratio: v.Words.Show(factor(l.Ratio))}
		if l.Standing == learn.Learns {
			line.Factor = v.T("learn/factor", "was", factor(l.Was), "now", factor(l.Now))
			line.Jobs = v.T("learn/jobs", "n", l.Jobs, "low", factor(l.Low), "high", factor(l.High))
		}
		i := slices.IndexFunc(v.Job.Record.Times, func(t design.Time) bool { return t.Task == l.Task })
		v.judge(&line, l.Standing, l.Beyond(), l.Far(), fmt.Sprintf("times[%d]", i))
		all = append(all, line)
	}
	for _, l := range prices {
		line := LessonLine{Name: v.T(l.Line), Ratio: v.Words.Show(factor(l.Ratio))}
		if l.Standing == learn.Learns {
			line.Factor = v.T("learn/price-factor", "factor", factor(l.Factor))
		}
		i := slices.IndexFunc(v.Job.Record.Spent, func(s design.Spent) bool { return s.Line == l.Line })
		v.judge(&line, l.Standing, l.Beyond(), l.Far(), fmt.Sprintf("spent[%d]", i))
		all = append(all, line)
	}
	return all
}

// judge says what becomes of a lesson, and gives the box to tick for another end of it.
func (v *view) judge(line *LessonLine, standing learn.Standing, beyond, far bool, entry string) {
	choose := func(label, field string) {
		c := v.recordControl(v.T(label), "%s", entry+field)
		line.Choice = &c
	}
	switch {
	case standing == learn.Taught:
		line.Note = v.T("learn/taught")
		return
	case standing == learn.Aside:
		line.Note = v.T("learn/left-out")
	case standing == learn.Doubtful:
		line.Note = v.T("learn/doubtful", "times", words.Quantity{Value: learn.Credible()})
	case far:
		line.Note = v.T("learn/far")
	}
	if beyond && standing != learn.Aside {
		choose("learn/sure", ".sure")
		return
	}
	choose("learn/leave-out", ".aside")
}

// LearnLines say how the job and the price books stand to each other.
func (v *view) LearnLines() []string {
	var all []string
	can := v.CanLearn()
	if into := v.Job.Record.Learn.Into; into != "" {
		all = append(all, v.T("learn/into", "code", into))
		if can {
			all = append(all, v.T("learn/more"))
		} else {
			all = append(all, v.T("learn/no-more"))
		}
	}
	if can || v.Job.Record.Learn.Into != "" {
		all = append(all, v.T("learn/back"))
	}
	return all
}

// CanLearn reports whether a book may learn from the job.
func (v *view) CanLearn() bool { return v.Job.CanLearn(v.Book) }

func factor(x float64) words.Fixed { return words.Fixed{Value: x, Places: 2} }
