package page

import (
	"cmp"
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

// Find lists the fields of all sections of the reader whose name holds each of the words,
// those that begin with them first.
func Find(in Input, words string) Fragment {
	v := newView(in)
	return Fragment{"found", v.render("found", v.find(strings.Fields(strings.ToLower(words))))}
}

func (v *view) find(words []string) []FoundField {
	if len(words) == 0 {
		return nil
	}
	tabs := map[string]string{}
	for _, tab := range v.Tabs() {
		tabs[tab.Name] = tab.Label
	}
	var all []FoundField
	for path, home := range v.homes {
		c, ok := v.control(path)
		if ok && holdsEach(strings.ToLower(c.Label), words) {
			all = append(all, FoundField{path, c.Label, home, tabs[home]})
		}
	}
	first := func(f FoundField) int {
		return strings.Index(strings.ToLower(f.Label), words[0])
	}
	slices.SortFunc(all, func(a, b FoundField) int {
		return cmp.Or(cmp.Compare(first(a), first(b)), cmp.Compare(a.Label, b.Label), cmp.Compare(a.Path, b.Path))
	})
	return all[:min(len(all), mostFound)]
}

func holdsEach(text string, words []string) bool {
	return !slices.ContainsFunc(words, func(word string) bool { return !strings.Contains(text, word) })
}
