package page

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"blockfield/engine/design"
	"blockfield/engine/words"
)

// The letters between a client and a workshop: what leaves the browser before it does,
// and what came back.

// senderFields are the fields of the record that a client fills in to write.
func senderFields() []string {
	return []string{"client.name", "client.reach", "days.needBy", "client.message"}
}

// letterSlots are the letters of this reader. Their controls are fields of the record.
func (v *view) letterSlots() []slot {
	switch v.Reading {
	case Client:
		return []slot{
			{id: "came", template: "came", data: v, after: ofDesign},
			{id: "send-fields", template: "send-fields", data: v, after: ofDesign},
			{id: "send-leaves", template: "send-leaves", data: v},
		}
	case Maker:
		return []slot{
			{id: "enquiry", template: "enquiry", data: v, after: ofDesign},
			{id: "enquiry-leaves", template: "enquiry-leaves", data: v},
		}
	}
	return nil
}

// letterFields are the paths of the controls of the letters.
func (v *view) letterFields() []string {
	var all []string
	switch {
	case v.CanWrite():
		for _, f := range senderFields() {
			all = append(all, design.RecordPrefix+f)
		}
	case v.Reading == Maker && v.Enquired():
		all = append(all, design.RecordPrefix+"client.answer")
	}
	return all
}

// CanWrite reports whether the reader is a client, alone with the page, with something that
// a workshop can make.
func (v *view) CanWrite() bool { return v.Reading == Client && !v.Talk && !v.Doc.Design.Work.OwnBuild }

// client is what the record holds of the client.
func (v *view) client() design.Client { return v.Job.Record.Client }

// SenderControls are what a client fills in to write.
func (v *view) SenderControls() []Control {
	var all []Control
	for _, f := range senderFields() {
		label := ""
		if f == "days.needBy" {
			label = v.T("send/wished")
		}
		all = append(all, v.recordControl(label, "%s", f))
	}
	all[len(all)-1].Wide = true
	return all
}

// NoReach is the field of how a client is reached while it is empty; else there is none.
func (v *view) NoReach() string {
	if strings.TrimSpace(v.client().Reach) != "" {
		return ""
	}
	return design.RecordPrefix + "client.reach"
}

// WishPast is the field of the day by which the panel is wished, where that has passed;
// else there is none.
func (v *view) WishPast() string {
	if wished := v.Job.Record.Days.NeedBy; wished == "" || wished >= v.Today {
		return ""
	}
	return design.RecordPrefix + "days.needBy"
}

// Leaving is one thing that leaves the browser.
type Leaving struct{ Label, Value string }

// LeavingLines are all things that leave a client's browser with a letter.
func (v *view) LeavingLines() []Leaving {
	c, room := v.client(), v.Doc.Design.Room
	all := []Leaving{{v.T("leaves/design"), v.designLine()}}
	add := func(key, value string) {
		if value = strings.TrimSpace(value); value != "" {
			all = append(all, Leaving{v.T("leaves/" + key), value})
		}
	}
	number := v.Words.Number
	add("room", v.T("leaves/room-size", "length", number(room.Length), "width", number(room.Width), "height", room.Height))
	add("use", v.typed(room.Use))
	add("hopes", v.typed(v.hopes()))
	add("note", v.typed(v.Doc.Design.Note))
	if b := v.Doc.Design.Money.Budget; b > 0 {
		add("budget", v.Words.Written(b.String()))
	}
	add("wished", v.Words.Show(v.Job.Record.Days.NeedBy))
	add("name", v.typed(c.Name))
	add("reach", v.typed(c.Reach))
	add("message", v.typed(c.Message))
	return all
}

// LeavingAnswer says in the line of what is folded how many things leave.
func (v *view) LeavingAnswer() string { return v.T("leaves/answer", "n", len(v.LeavingLines())) }

// hopes are what is hoped for, one after another.
func (v *view) hopes() string {
	text, _ := v.fieldText(goalsPath)
	return text
}

// typed is what a person has typed, in quotes; empty where there is nothing.
func (v *view) typed(text string) string {
	if strings.TrimSpace(text) == "" {
		return ""
	}
	return v.T("leaves/typed", "text", text)
}

// designLine says what the open design is.
func (v *view) designLine() string {
	g := v.First()
	return v.T("leaves/design-line", "wood", capital(v.Words.Show(g.Design.WoodName())), "size", g.Design.Block.Size,
		"width", v.Words.Number(v.Whole(g.Built.TotalWidth)), "height", v.Whole(g.Built.TotalHeight),
		"mass", v.KgOf(v.Plan.Mass.TotalKg), "revision", v.Plan.Revision)
}

// SetByHand are the values that differ from those of a fresh page: the rest of what leaves
// with a design is known to everybody.
func (v *view) SetByHand() []ChangeLine {
	lines, _ := v.changeLines(design.Default(), v.Doc, func(string) bool { return true })
	return lines
}

// Enquired reports whether somebody has written, or is known by name.
func (v *view) Enquired() bool {
	c := v.client()
	return c.Asked != "" || c.Name != "" || c.Reach != ""
}

// EnquiryLines say who wrote, and what.
func (v *view) EnquiryLines() []Leaving {
	c := v.client()
	var all []Leaving
	for _, l := range []Leaving{
		{"name", v.typed(c.Name)}, {"reach", v.typed(c.Reach)}, {"wished", v.Words.Show(v.Job.Record.Days.NeedBy)}, {"message", v.typed(c.Message)},
	} {
		if l.Value != "" {
			all = append(all, Leaving{v.T("leaves/" + l.Label), l.Value})
		}
	}
	return all
}

// EnquiryHeading says from when an enquiry is.
func (v *view) EnquiryHeading() string {
	if day := v.client().Wrote; day != "" {
		return v.T("enquiry/heading-day", "date", day)
	}
	return v.T("enquiry/heading")
}

// AnswerControl is what the workshop writes.
func (v *view) AnswerControl() Control {
	c := v.recordControl("", "client.answer")
	c.Wide = true
	return c
}

// Answered reports whether an answer has come.
func (v *view) Answered() bool { return v.client().Returned != "" }

// AnswerHeading says from when it is.
func (v *view) AnswerHeading() string {
	if day := v.client().Answered; day != "" {
		return v.T("answer/heading-day", "date", day)
	}
	return v.T("answer/heading")
}

// AnswerText is what the workshop writes.
func (v *view) AnswerText() string { return v.client().Answer }

// Written reports whether a client has made the letter already.
func (v *view) Written() string {
	if c := v.client(); c.Wrote != "" {
		return v.T("send/written", "date", c.Wrote)
	}
	return ""
}

// CameChanges is what the answer has changed in the design that was asked for.
func (v *view) CameChanges() Changed {
	return v.changedSince(v.client().Asked, v.client().Returned, nil)
}

// WorkshopChanges is what a maker has changed so far.
func (v *view) WorkshopChanges() Changed { return v.changedSince(v.client().Asked, "", &v.Doc) }

// Changed is how one design differs from another, in words.
type Changed struct {
	Known bool // there are two designs to compare
	Lines []ChangeLine
	Rest  string // says how many further values differ that mean nothing to a client; empty: none
}

// ChangeLine is one difference.
type ChangeLine struct{ Label, Was, Now string }

// changedSince compares a client copy with a later one, or with a document where that is
// given. What cannot be read is not compared.
func (v *view) changedSince(before, after string, doc *design.Document) Changed {
	if before == "" {
		return Changed{}
	}
	from, err := design.DecodeCopy(before)
	if err != nil {
		return Changed{}
	}
	if doc == nil {
		to, err := design.DecodeCopy(after)
		if err != nil {
			return Changed{}
		}
		doc = &to
	}
	lines, rest := v.changeLines(from, *doc, meansSomething)
	out := Changed{Known: true, Lines: lines}
	if rest > 0 {
		out.Rest = v.T("change/rest", "n", rest)
	}
	return out
}

// meansSomething reports whether a value means something to a client. What is about how
// the workshop works does not, and what a line of the price costs the workshop is its own.
func meansSomething(path string) bool {
	if strings.HasPrefix(path, "work.") {
		return slices.Contains([]string{"work.supply", "work.delivered", "work.hung", "work.ownBuild"}, path)
	}
	if strings.HasPrefix(path, "money.extras[") {
		return strings.HasSuffix(path, "].name") || strings.HasSuffix(path, "]")
	}
	return !strings.HasPrefix(path, "bench.")
}

// changeLines are the differences between two designs, those that fit in words, and how
// many others there are.
func (v *view) changeLines(before, after design.Document, fits func(string) bool) (lines []ChangeLine, rest int) {
	from, to := *v, *v
	from.Doc, to.Doc = before, after
	from.Doc.View.Units, to.Doc.View.Units = v.Doc.View.Units, v.Doc.View.Units
	for _, a := range design.Alterations(before, after, v.Doc.View.Units) {
		switch {
		case !fits(a.Path):
			rest++
		case a.Added:
			lines = append(lines, ChangeLine{to.entryName(a.Path), v.T("change/absent"), v.T("change/added")})
		case a.Gone:
			lines = append(lines, ChangeLine{from.entryName(a.Path), v.T("change/present"), v.T("change/gone")})
		default:
			label, now, ok := to.told(a.Path)
			if !ok {
				rest++
				continue
			}
			_, was, _ := from.told(a.Path)
			lines = append(lines, ChangeLine{label, was, now})
		}
	}
	return lines, rest
}

// ChangesSaid are the differences between two designs, one a line.
func ChangesSaid(in Input, before, after design.Document) []string {
	v := newView(in)
	lines, _ := v.changeLines(before, after, func(string) bool { return true })
	all := make([]string, len(lines))
	for i, l := range lines {
		all[i] = v.T("change/line", "label", l.Label, "was", l.Was, "now", l.Now)
	}
	return all
}

// SlipChanges are what each slip of the record changes, as far as the designs before and
// after it were kept, in what means something to a client.
func SlipChanges(in Input) [][]ChangeLine {
	v := newView(in)
	all := make([][]ChangeLine, len(in.Job.Record.Slips))
	for i := range all {
		if before, after, ok := in.Job.Changed(i); ok {
			all[i], _ = v.changeLines(before, after, meansSomething)
		}
	}
	return all
}

// longValue is from how many characters on a value is not repeated.
const longValue = 80

// told is a field in words: what it is called, with the wall and the group where there are
// several, and its value. False where a person has no word for it.
func (v *view) told(path string) (label, value string, ok bool) {
	c, ok := v.control(path)
	if !ok || !v.Words.Language.Has(labelKey(path)) {
		return "", "", false
	}
	c.Label = v.T(labelKey(path)) // as it is called whoever reads
	value = c.shown()
	meaning, means := strings.CutPrefix(c.Hint, c.Value+": ") // "0: as in the tables"
	switch {
	case c.Standing && means:
		value = meaning
	case c.Kind == "check" && c.Checked:
		value = v.T("change/yes")
	case c.Kind == "check":
		value = v.T("change/no")
	case strings.TrimSpace(value) == "":
		value = v.T("change/nothing")
	case utf8.RuneCountInString(value) > longValue:
		value = v.T("change/long")
	case c.Kind == "area" || len(c.Suggestions) > 0 || c.Kind == "text" && c.Hint == "":
		value = v.typed(value)
	}
	return v.placed(path, c.Label), value, true
}

// placeOf are the numbers of the wall and of the group, from 0, that a path belongs to; a
// group of −1 where it belongs to the wall itself.
func placeOf(path string) (wall, group int, ok bool) {
	if n, _ := fmt.Sscanf(path, "walls[%d].groups[%d]", &wall, &group); n == 2 {
		return wall, group, true
	}
	n, _ := fmt.Sscanf(path, "walls[%d]", &wall)
	return wall, -1, n == 1
}

// placed puts the wall and the group of a path before a label, where there are several.
func (v *view) placed(path, label string) string {
	wall, group, ok := placeOf(path)
	if !ok || wall >= len(v.Doc.Design.Walls) {
		return label
	}
	if w := v.Doc.Design.Walls[wall]; group >= 0 && len(w.Groups) > 1 {
		label = v.T("change/in-group", "n", group+1, "label", label)
	}
	if len(v.Doc.Design.Walls) > 1 {
		name := v.Doc.Design.Walls[wall].Name
		if name == "" {
			return v.T("change/in-wall", "n", wall+1, "label", label)
		}
		return v.T("change/in-named", "name", name, "label", label)
	}
	return label
}

// entryName is what a list's entry is called that came or went as a whole.
func (v *view) entryName(path string) string {
	list := path[strings.LastIndex(path, ".")+1:]
	list, _, _ = strings.Cut(list, "[")
	key := "change/entry-" + list
	if !v.Words.Language.Has(key) {
		key = "change/entry"
	}
	if text, ok := design.Text(v.Doc, path+".name", v.Doc.View.Units); ok && text != "" {
		return v.T("change/named", "what", words.Key(key), "name", text)
	}
	return v.placed(path, v.T(key))
}

// MailAddress is the address that letters of this reader go to; empty where none is known.
func (v *view) MailAddress() string {
	if v.Reading == Client {
		return v.Workshop
	}
	if reach := strings.TrimSpace(v.client().Reach); strings.Count(reach, "@") == 1 && !strings.ContainsAny(reach, " \t,;<>?&%") {
		return reach
	}
	return ""
}

// MailSubject and MailText are what a mail begins with. Names and telephone numbers are in
// the file alone.
func (v *view) MailSubject() string {
	return v.T("mail/subject-"+v.Reading, "title", v.Doc.Design.Title, "revision", v.Plan.Revision)
}

// MailText is the text of the mail.
func (v *view) MailText() string {
	return v.T("mail/hello") + "\n\n" + v.T("mail/text-"+v.Reading) + "\n\n" + v.Doc.Design.Title + "\n" + v.designLine() + "\n"
}
