package page

import (
	"encoding/json"
	"html/template"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"blockfield/engine/design"
	"blockfield/engine/length"
)

// Control is one field of a form, with everything said already.
type Control struct {
	ID, Name, Label, Value string
	Kind                   string // text, area, choice, radio, check, date or range
	Look                   string // class of a radio group
	Hint                   string // the range that the field takes
	Standing               bool   // the hint is there before the field has the focus
	Options                []Option
	Suggestions            []string
	InputMode              string
	Min, Max, Step         string // of a range
	Unit                   string
	Checked                bool
	Steps                  bool // arrow keys take it up and down
	Wide                   bool // a list needs the whole line
	Watch                  *Watch
	WatchID                string
}

// Option is one entry of a choice.
type Option struct {
	Value, Label string
	Note         string
	Selected     bool
	Picture      template.HTML
	Also         []Edit // further fields that this option sets
}

// Edit is a field with what is to be typed there.
type Edit struct {
	Path  string `json:"path"`
	Value string `json:"value"`
}

// AlsoJSON is what else the option sets, for the page's script.
func (o Option) AlsoJSON() (string, error) {
	text, err := json.Marshal(o.Also)
	return string(text), err
}

// control returns the control of a field, false where there is none for a
// person to use.
func (v *view) control(path string) (Control, bool) {
	f, ok := Lookup(path)
	units := v.Doc.View.Units
	text, found := v.fieldText(path)
	if !ok || !found || f.Kind == design.KindParts {
		return Control{}, false
	}
	c := Control{
		ID: controlID(path), Name: path, Label: v.T(labelKey(path)), Value: text,
		Kind: "text", WatchID: watchID(path), Wide: f.IsList || path == "title" || path == "room.use" || strings.HasSuffix(path, ".block.section"),
	}
	if v.Reading != Client && longChoice(path) {
		c.Wide = true
	}
	c.Watch, _ = v.watchAt(path)
	switch {
	case slider(path):
		c.Kind = "range"
		c.Min, c.Max, c.Step = decimal(f.Min), decimal(f.Max), "any"
	case f.Kind == design.KindChoice || f.Kind == design.KindInteger && len(f.Choices) > 0:
		c.Kind, c.Options = "choice", v.options(f, text)
	case f.Kind == design.KindYesNo:
		c.Kind, c.Checked = "check", text == "true" || text == "yes"
	case f.Lines || f.IsList && f.Kind == design.KindText:
		c.Kind = "area"
	case f.Kind == design.KindText:
		c.Suggestions = v.suggestions(f)
	case f.Kind == design.KindDate:
		c.Kind = "date"
	default:
		c.Hint, c.Unit = v.T("hint/allowed", "allowed", f.Allowed()), f.Unit
		c.InputMode, c.Steps = inputMode(f, units), Steps(path)
	}
	if path == goalsPath {
		c.Hint, c.Standing = v.T("hear/for-instance", "choices", strings.Join(v.suggestions(f), "; ")), true
		if v.Reading != Maker {
			c.Label = v.T("hear/hopes")
		}
	}
	if zero := "zero" + strings.TrimPrefix(labelKey(path), "label"); v.Words.Language.Has(zero) {
		c.Hint, c.Standing = v.T(zero), true
	}
	return c, true
}

// Steps reports whether arrow keys take a field up and down: the numbers of a design.
func Steps(path string) bool {
	f, ok := design.Lookup(path)
	return ok && f.Numeric() && f.Step > 0 && !f.IsList
}

// Long reports whether an entry of a choice is too long for half the width of a phone.
func (c Control) Long() bool {
	const letters = 16
	return c.Kind == "choice" && slices.ContainsFunc(c.Options, func(o Option) bool { return utf8.RuneCountInString(o.Label) > letters })
}

// longChoice reports whether the entries of a choice are too long for half a line.
func longChoice(path string) bool {
	return strings.HasSuffix(path, ".pattern.kind") || strings.HasSuffix(path, ".lining") || strings.HasSuffix(path, ".finish.kind") ||
		strings.HasPrefix(path, "walls[") && strings.Count(path, ".") == 1 && strings.HasSuffix(path, ".kind")
}

// inputMode asks a phone for the keys that a field needs: inches need more than
// digits, lists a comma, and some numbers a sign.
func inputMode(f design.Field, u length.Units) string {
	if f.IsList || f.Min < 0 || f.Kind == design.KindLength && u.Bare() == length.InInch {
		return ""
	}
	if f.Kind == design.KindInteger {
		return "numeric"
	}
	return "decimal"
}

func (v *view) options(f design.Field, now string) []Option {
	var all []Option
	for _, choice := range f.Choices {
		label := choice
		if f.Kind == design.KindChoice {
			label = capital(v.T("choice/" + choice))
		} else {
			label = v.T("choice/degrees", "n", choice)
		}
		all = append(all, Option{Value: choice, Label: label, Selected: choice == now})
	}
	return all
}

// suggestions are what may be typed into a field of free words.
func (v *view) suggestions(f design.Field) []string {
	all := make([]string, len(f.Choices))
	for i, choice := range f.Choices {
		all[i] = v.Words.Given(choice)
	}
	return all
}

// capital starts a text that stands alone with a capital letter.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// shown is the value as a person reads it.
func (c Control) shown() string {
	switch c.Kind {
	case "choice":
		if i := slices.IndexFunc(c.Options, func(o Option) bool { return o.Selected }); i >= 0 {
			return c.Options[i].Label
		}
	case "check":
		return c.Value
	}
	if c.Unit != "" {
		return c.Value + " " + c.Unit
	}
	return c.Value
}

// controls returns the controls of several fields below a common path.
func (v *view) controls(base string, names []string) []Control {
	var all []Control
	for _, name := range names {
		if c, ok := v.control(base + name); ok {
			all = append(all, c)
		}
	}
	return all
}

// set is a group of controls under a heading. Rarer ones stand under "more".
type set struct {
	id         string
	heading    string // key of its words
	base       string // path before the names of the fields
	fields     []string
	slot       string   // what follows from them, below them
	inSlot     []string // names of the fields in it
	inMore     []string // those of them that stand under "more"
	more       []string
	part       string // path of what the set describes, where that can be taken away
	taking     string // key of the words for that
	add        string // path of a list that grows below the set
	adding     string // key of the words for that
	also       string // path of another one
	alsoAdding string
	name       string // slot with the heading, where that follows from an edit
	folded     bool   // its fields are looked at only when they are asked for
}

// Set is a group of controls, ready for its template.
type Set struct {
	*view
	ID, Heading string
	Fields      []Control
	More        []Control
	SlotID      string
	NameID      string
	Remove      string // path of what can be taken away
	Removing    string
	Adds        []Adding // lists that grow below the set
	Folded      bool
}

// Adding is a button that adds a part to a list.
type Adding struct{ List, Label string }

// Sets are the groups of controls of the open section.
func (v *view) Sets() []Set {
	var all []Set
	for _, s := range v.sets() {
		one := Set{
			view: v, ID: s.id, Heading: v.T(s.heading), SlotID: s.slot, NameID: s.name, Remove: s.part, Removing: s.taking, Folded: s.folded,
			Fields: v.controls(s.base, s.fields), More: v.controls(s.base, s.more),
		}
		for _, a := range []Adding{{s.add, s.adding}, {s.also, s.alsoAdding}} {
			if a.List != "" {
				one.Adds = append(one.Adds, Adding{a.List, v.T(a.Label)})
			}
		}
		for i := range one.More {
			one.More[i].Watch = nil // it is in the list, where it can be seen
		}
		for i := range one.Fields {
			if s.folded {
				one.Fields[i].Watch = nil
			}
		}
		all = append(all, one)
	}
	return all
}

// SetColumns are the groups of controls as they stand on a wide page: in two
// columns of about the same height, each read from the top.
func (v *view) SetColumns() [][]Set {
	all := v.Sets()
	whole := 0
	for _, s := range all {
		whole += s.weight()
	}
	above, cut, off := 0, 0, whole
	for i, s := range all {
		if d := max(2*above-whole, whole-2*above); d < off {
			cut, off = i, d
		}
		above += s.weight()
	}
	return [][]Set{all[:cut], all[cut:]}
}

// weight is the height of a set on the page, in rows of fields, about: its
// fields stand two and two, below a heading.
func (s Set) weight() int {
	const heading, slot = 1, 2
	rows := heading
	if !s.Folded {
		rows += (len(s.Fields) + 1) / 2
	}
	if s.SlotID != "" {
		rows += slot
	}
	return rows
}

func (v *view) sets() []set {
	switch v.Open {
	case Sound:
		return v.soundSets()
	case Wall:
		return v.wallSets()
	case Bench:
		return v.benchSets()
	case Money:
		return v.moneySets()
	case Papers:
		return nil
	default:
		return v.lookSets()
	}
}
