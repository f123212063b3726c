package page

import (
	"fmt"
	"html/template"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/words"
)

// view is one rendering of one input. Templates call its methods.
type view struct {
	Input
	Reading string
	Open    string            // the section that this reader has open
	homes   map[string]string // sections by the paths of their fields
}

func newView(in Input) *view {
	v := &view{Input: in, Reading: in.Doc.View.Reading, Open: in.Section}
	if !slices.Contains(Sections(v.Reading), v.Open) {
		v.Open = Look
	}
	v.homes = map[string]string{}
	for _, name := range Sections(v.Reading) {
		other := view{Input: in, Reading: v.Reading, Open: name}
		for _, path := range other.fields() {
			if v.homes[path] == "" || name == v.Open {
				v.homes[path] = name
			}
		}
	}
	return v
}

// Homes are the sections by the paths of their fields, for the reader.
func Homes(in Input) map[string]string { return newView(in).homes }

// T says a message. Its arguments come in pairs of name and value.
func (v *view) T(key string, pairs ...any) string {
	args := words.Args{}
	for i := 0; i+1 < len(pairs); i += 2 {
		args[pairs[i].(string)] = pairs[i+1]
	}
	return v.Words.Say(key, args)
}

// joiner keeps two signs on one line: Word Joiner of Unicode.
const joiner = "\u2060"

// Is reports whether one of readings is the reader's.
func (v *view) Is(readings ...string) bool { return slices.Contains(readings, v.Reading) }

// render runs one template. What it makes is escaped by context already.
func (v *view) render(name string, data any) string {
	var b strings.Builder
	must(templates.ExecuteTemplate(&b, name, data))
	return together(b.String())
}

// Lang is the language of the page.
func (v *view) Lang() string { return v.Words.Language.Tag }

// Tab is a link to a section.
type Tab struct {
	Name, Label string
	Current     bool
}

// Tabs are the sections of this reader.
func (v *view) Tabs() []Tab {
	var tabs []Tab
	for _, name := range Sections(v.Reading) {
		tabs = append(tabs, Tab{name, v.T("section/" + name + "/" + v.Reading), name == v.Open})
	}
	return tabs
}

// slot is a part of the open section that an edit renders anew.
type slot struct {
	id       string
	template string
	data     any
	// after says of which edits something follows here; nil: of any. A slot
	// that holds controls must not follow from an edit of them.
	after  func(changed string) bool
	inline bool // stands within a line
}

// endsIn is for slots that follow from one field only.
func endsIn(suffix string) func(string) bool {
	return func(changed string) bool { return strings.HasSuffix(changed, suffix) }
}

// within is for slots that follow from the fields of one part.
func within(base string) func(string) bool {
	return func(changed string) bool { return strings.HasPrefix(changed, base) }
}

// never is for slots that follow from no edit of the design.
func never(string) bool { return false }

// assumable reports whether an edit may change what is assumed.
func assumable(changed string) bool {
	f, ok := design.Lookup(changed)
	return ok && f.Assumable
}

// slots are the parts of the open section that follow from edits.
func (v *view) slots() []slot {
	switch v.Open {
	case Sound:
		return v.soundSlots()
	case Wall:
		return v.wallSlots()
	case Bench:
		return v.benchSlots()
	case Money:
		return v.moneySlots()
	case Papers:
		return v.paperSlots()
	default:
		return v.lookSlots()
	}
}

// atTheEnd are the slots that Look, Wall and Bench have in common.
func (v *view) atTheEnd() []slot {
	all := []slot{{id: "watch-outs", template: "watch-outs", data: v}}
	if v.Reading != Client {
		all = append(all, slot{id: "assumed", template: "assumed", data: v, after: assumable})
	}
	return all
}

// Slot renders a slot in its place.
func (v *view) Slot(id string) template.HTML {
	for _, s := range v.slots() {
		if s.id == id {
			tag := "div"
			if s.inline {
				tag = "span"
			}
			return template.HTML(fmt.Sprintf(`<%s class="slot" id="%s">%s</%s>`, tag, s.id, v.render(s.template, s.data), tag))
		}
	}
	return ""
}

// fields are the paths of the controls of the open section.
func (v *view) fields() []string {
	paths := v.openFields()
	for _, c := range v.sets() {
		hidden := slices.Concat(c.more, c.inMore)
		if c.folded {
			hidden = slices.Concat(c.fields, c.inSlot, hidden)
		}
		for _, f := range hidden {
			paths = append(paths, c.base+f)
		}
	}
	switch v.Open {
	case Bench:
		paths = append(paths, v.recordFields()...)
	case Wall:
		paths = append(paths, v.askedFields()...)
	case Money:
		paths = append(paths, v.letterFields()...)
	}
	return paths
}

// openFields are those of them that do not wait under "more" or in a fold: watch-outs may
// stand beside them.
func (v *view) openFields() []string {
	var paths []string
	for _, c := range v.sets() {
		if c.folded {
			continue
		}
		for _, f := range slices.Concat(c.fields, c.inSlot) {
			paths = append(paths, c.base+f)
		}
	}
	if v.Open == Look && v.Reading != Client {
		for _, g := range v.Groups() {
			for _, f := range append(kindFields(g.Design.Pattern), frameFields(g.Design.Frame)...) {
				paths = append(paths, g.Path+"."+f)
			}
		}
	}
	return paths
}

// Watch is what stands beside a field: its worst watch-out.
type Watch struct {
	*view
	Out  check.WatchOut
	More int // further ones about the same field
	N    int // its place in the list of the section, from 1 on; 0: it stands beside its field
}

// SaidID is the id of its sentence, for what is pressed because of it.
func (w Watch) SaidID() string {
	if w.N == 0 {
		return watchID(w.Out.Field) + "-said"
	}
	return "said-" + strconv.Itoa(w.N)
}

// Level is the name of its level.
func (w Watch) Level() string { return w.Out.Level.String() }

// Heading is what a note that is folded beside its field is opened by: what it is about,
// where that has a few words of its own.
func (w Watch) Heading() string {
	if key := "note/" + w.Out.Code; w.Words.Language.Has(key) {
		return w.Words.Say(key, words.Args(w.Out.Args))
	}
	return w.T("level/note")
}

// Sentence says it.
func (w Watch) Sentence() string { return w.view.sentence(w.Out) }

func (v *view) sentence(w check.WatchOut) string {
	said := v.Words.Say(w.Code, words.Args(w.Args))
	if by := w.Signed; by != nil {
		said += " " + v.T("sign/signed", "name", by.Name, "reason", by.Reason)
	}
	return said
}

// watchAt returns the worst watch-out about a field.
func (v *view) watchAt(path string) (*Watch, bool) {
	var found *Watch
	for _, w := range v.watchOuts() {
		if w.Field != path {
			continue
		}
		if found == nil {
			found = &Watch{view: v, Out: w}
		} else {
			found.More++
		}
	}
	return found, found != nil
}

// clientConcerns are the watch-outs that a client can do something about: the
// choice of pattern, whether it fits the wall and keeps clear of what is on that, and
// what has to be asked about the room. Loads, saws and hours are the workshop's; but the
// papers of an offer name every Stop that is open, and so does the page beside one.
func clientConcerns() []string {
	return []string{
		"pattern/", "panel/", "wall/fire-question", "wall/lifting-method", "wall/safety-device",
		"wall/beyond-side", "wall/above-top", "wall/below-floor", "wall/overlap",
	}
}

// watchOuts are those that this reader meets.
func (v *view) watchOuts() []check.WatchOut {
	switch v.Reading {
	case Maker:
		return v.Plan.AllWatchOuts()
	case Builder: // nothing of a workshop's price, where the design is one of a workshop
		return slices.DeleteFunc(slices.Clone(v.Plan.WatchOuts), func(w check.WatchOut) bool { return w.Code == "price/indication" })
	}
	bound := v.Offered() || v.Ordered()
	return slices.DeleteFunc(slices.Clone(v.Plan.WatchOuts), func(w check.WatchOut) bool {
		if bound && w.Level == check.Stop {
			return false
		}
		return w.Level < check.Caution || !slices.ContainsFunc(clientConcerns(), func(start string) bool {
			return strings.HasPrefix(w.Code, start)
		})
	})
}

// Watches are the watch-outs of the open section that do not stand beside their
// field already, as a list.
func (v *view) Watches() []Watch {
	list, _ := v.watches()
	return list
}

// StopsBeside are the Stops that stand beside their field, which may be far down: the list
// leads to them.
func (v *view) StopsBeside() []Watch {
	_, beside := v.watches()
	return slices.DeleteFunc(beside, func(w Watch) bool { return w.Out.Level < check.Stop })
}

func (v *view) watches() (list, beside []Watch) {
	free := map[string]bool{} // fields in sight whose watch-out has not come by yet
	for _, path := range v.openFields() {
		free[path] = true
	}
	for _, w := range v.watchOuts() {
		one := Watch{view: v, Out: w}
		if one.Section() != v.Open {
			continue
		}
		if free[w.Field] {
			delete(free, w.Field)
			beside = append(beside, one)
			continue
		}
		one.N = len(list) + 1
		list = append(list, one)
	}
	return list, beside
}

// Elsewhere is how many watch-outs stand in another section.
type Elsewhere struct {
	Section string
	N       int
}

// WatchesElsewhere are the watch-outs of the other sections, counted.
func (v *view) WatchesElsewhere() []Elsewhere {
	n := map[string]int{}
	for _, w := range v.watchOuts() {
		n[Watch{view: v, Out: w}.Section()]++
	}
	var all []Elsewhere
	for _, name := range Sections(v.Reading) {
		if name != v.Open && n[name] > 0 {
			all = append(all, Elsewhere{name, n[name]})
		}
	}
	return all
}

// Target is the id of the control that a watch-out leads to.
func (w Watch) Target() string { return controlID(w.Out.Field) }

// FieldLabel is the name of its field.
func (w Watch) FieldLabel() string {
	c, _ := w.control(w.Out.Field)
	return c.Label
}

// Home is the section that has its field; empty where none has.
func (w Watch) Home() string { return w.homes[w.Out.Field] }

// Section is the section that a watch-out belongs to: the one that has its
// field, or else the one that its room is about.
func (w Watch) Section() string {
	if home := w.Home(); home != "" {
		return home
	}
	room, _, _ := strings.Cut(w.Out.Code, "/")
	home := map[string]string{"bench": Bench, "measure": Bench, "moisture": Bench, "record": Bench, "days": Bench, "sound": Sound, "wall": Wall, "price": Money, "supply": Money}[room]
	if slices.Contains(Sections(w.Reading), home) {
		return home
	}
	return Look
}

// FixShown is what the field of its change shows afterwards.
func (w Watch) FixShown() string { return FieldText(w.Words, w.Out.Fix.Path, w.Out.Fix.Value) }

// HasField reports whether the open section shows the field of a watch-out.
func (w Watch) HasField() bool { return w.Home() == w.Open }

// Assumed is a value that nobody has typed or measured.
type Assumed struct{ Path, Label, Value string }

// publicPath is a question that nobody asks of a room at home.
const publicPath = "room.public"

// AssumedValues are listed so that they can be checked.
func (v *view) AssumedValues() []Assumed {
	var all []Assumed
	for _, path := range v.Doc.Assumed {
		if v.Reading == Builder && path == publicPath {
			continue
		}
		c, ok := v.control(path)
		if !ok {
			all = append(all, Assumed{path, v.T(labelKey(path)), v.T("assumed/list")})
			continue
		}
		value := c.shown()
		if c.Kind == "check" {
			value = v.T(map[bool]string{true: "change/yes", false: "change/no"}[c.Checked])
		}
		all = append(all, Assumed{path, c.Label, value})
	}
	return all
}

// labelKey is the key of a field's label.
func labelKey(path string) string { return design.LabelKey(path) }

// controlID is the id of the control of a field.
func controlID(path string) string {
	return "f-" + strings.Trim(strings.NewReplacer("[", "-", "].", "-", "]", "", ".", "-").Replace(path), "-")
}

func watchID(path string) string { return "w" + strings.TrimPrefix(controlID(path), "f") }
