package page

import "html/template"

// PaperView is what the section of papers shows: the sets that there are, and the
// sheets of the one that is chosen.
type PaperView struct {
	Sets, Formats []string // names
	Set, Format   string   // that are chosen
	Sheets        []string // SVG, each of the size of its paper
	More          int      // sheets of it that print and are not shown
	Picturable    bool     // a picture of the panels may go on them
	Pictured      bool     // and one does
}

// Choice is a button for one of several.
type Choice struct {
	Value, Label string
	Chosen       bool
}

// PaperSets are the sets to choose from.
func (v *view) PaperSets() []Choice { return v.choices("papers/set-", v.Papers.Sets, v.Papers.Set) }

// PaperFormats are the sizes of paper to choose from.
func (v *view) PaperFormats() []Choice {
	return v.choices("papers/format-", v.Papers.Formats, v.Papers.Format)
}

func (v *view) choices(key string, names []string, chosen string) []Choice {
	all := make([]Choice, len(names))
	for i, name := range names {
		all[i] = Choice{name, v.T(key + name), name == chosen}
	}
	return all
}

// Leaves are the sheets of the chosen set.
func (v *view) Leaves() []template.HTML {
	all := make([]template.HTML, len(v.Papers.Sheets))
	for i, svg := range v.Papers.Sheets {
		all[i] = template.HTML(svg) // written by package draw, which escapes
	}
	return all
}

// paperSlots are the sheets, which follow from every edit.
func (v *view) paperSlots() []slot {
	return []slot{{id: "papers-sheets", template: "papers-sheets", data: v}}
}
