package page

import (
	"html/template"
	"strconv"
)

// PaperView is what the section of papers shows: the sets that there are, and the
// sheets of the one that is chosen.
type PaperView struct {
	Sets, Formats []string // names
	Set, Format   string   // that are chosen
	Sheets        []string // SVG, each of the size of its paper, as far as they are shown
	Count         int      // of all sheets
	Parts         []int    // first sheets of the parts that come when they are printed, from 0
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

// More is how many sheets print and are not shown.
func (v *view) More() int { return v.Papers.Count - len(v.Papers.Sheets) }

// PaperPart is the place of a further part of the papers with its sheets.
func PaperPart(in Input, first int) Fragment {
	v := newView(in)
	return Fragment{paperPart(first), v.render("leaves", v)}
}

// PartID names the place of a part.
func (v *view) PartID(first int) string { return paperPart(first) }

func paperPart(first int) string { return "papers-part-" + strconv.Itoa(first) }

// paperSlots are the sheets, which follow from every edit.
func (v *view) paperSlots() []slot {
	return []slot{{id: "papers-sheets", template: "papers-sheets", data: v}}
}
