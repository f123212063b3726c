package page

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// mostFound is how many fields a search lists.
const mostFound = 8

// FoundField is a field that was looked for by its name.
type FoundField struct {
	Path, Label   string
	Section, Home string // name and label of the section that has it
}

// found is what a search lists: what is meant, or the keys where nothing is looked for.
type found struct {
	*view
	Sections []Tab
	Fields   []FoundField
	Keys     []key
}

// Nothing reports whether nothing bears the name that is looked for.
func (f found) Nothing() bool { return len(f.Sections)+len(f.Fields)+len(f.Keys) == 0 }

// key is a key of the keyboard with what it does.
type key struct{ Key, Does string }

// Find lists the sections, and the fields of all sections of the reader, whose name, with
// the heading that they stand under, holds each of the words; those that begin with them
// first. Without words it lists the keys that the page knows.
func Find(in Input, words string) Fragment {
	v := newView(in)
	wanted := strings.Fields(strings.ToLower(words))
	all := found{view: v, Keys: v.keys()}
	if len(wanted) > 0 {
		all = found{v, v.sectionsCalled(wanted), v.find(wanted), nil}
	}
	return Fragment{"found", v.render("found", all)}
}

// keys are those that the reader can use.
func (v *view) keys() []key {
	names := []string{"find", "undo", "redo", "save", "open", "size", "picture"}
	if v.Reading == Maker {
		names = append(names, "hide")
	}
	var all []key
	for _, name := range names {
		all = append(all, key{v.T("key/" + name), v.T("key-does/" + name)})
	}
	return all
}

func (v *view) sectionsCalled(words []string) []Tab {
	return slices.DeleteFunc(v.Tabs(), func(t Tab) bool { return !holdsEach(strings.ToLower(t.Label), words) })
}

func (v *view) find(words []string) []FoundField {
	tabs := map[string]string{}
	for _, tab := range v.Tabs() {
		tabs[tab.Name] = tab.Label
	}
	headings := v.headings()
	var all []FoundField
	for path, home := range v.homes {
		c, ok := v.control(path)
		if ok && holdsEach(strings.ToLower(c.Label+" "+headings[path]), words) {
			all = append(all, FoundField{path, c.Label, home, tabs[home]})
		}
	}
	first := func(f FoundField) int {
		if at := strings.Index(strings.ToLower(f.Label), words[0]); at >= 0 {
			return at
		}
		return math.MaxInt
	}
	slices.SortFunc(all, func(a, b FoundField) int {
		return cmp.Or(cmp.Compare(first(a), first(b)), cmp.Compare(a.Label, b.Label), cmp.Compare(a.Path, b.Path))
	})
	return all[:min(len(all), mostFound)]
}

// headings are those that fields stand under, by the paths of the fields.
func (v *view) headings() map[string]string {
	all := map[string]string{}
	for _, name := range Sections(v.Reading) {
		other := view{Input: v.Input, Reading: v.Reading, Open: name}
		for _, s := range other.sets() {
			for _, f := range slices.Concat(s.fields, s.more, s.inSlot, s.inMore) {
				all[s.base+f] = v.T(s.heading)
			}
		}
	}
	return all
}

func holdsEach(text string, words []string) bool {
	return !slices.ContainsFunc(words, func(word string) bool { return !strings.Contains(text, word) })
}
