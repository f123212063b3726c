package page

import (
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// BookDesk is where a maker edits the price book.
type BookDesk struct {
	Open             bool
	Group            string // that is shown; empty: the first
	Find             string // what the rows are searched for; empty: not at all
	CanUndo, CanRedo bool
	Shelf            []design.Book // kept beside the one in force
	Unread           int           // books on the shelf that cannot be read
}

// FindPath names the field that searches the price book.
const FindPath = "find.book"

// ofBook is for slots that follow from edits of the price book.
func ofBook(changed string) bool { return strings.HasPrefix(changed, design.BookPrefix) }

// bookSlots are the parts of the price book, where its maker has opened it.
func (v *view) bookSlots() []slot {
	if !v.Editing() {
		return nil
	}
	return []slot{
		{id: "book-count", template: "book-count", data: v, after: ofBook},
		{id: "book-rows", template: "book-rows", data: v, after: func(changed string) bool { return changed == FindPath }},
	}
}

// Editing reports whether the price book is open.
func (v *view) Editing() bool { return v.Desk != nil && v.Desk.Open }

// bookPart is one group of rows of the price book. A list has a row for each entry and
// a column for each of its fields; else each field is a row.
type bookPart struct {
	name    string
	list    string
	fields  []string
	units   []string // keys of units behind "book-unit/", in the order of fields; empty: the field's own
	growing bool     // entries may be added and taken out
	text    bool     // of words and days: they stand as a form
}

// bookParts are the groups of the book, in the order of a workshop's sheet.
func bookParts() []bookPart {
	return []bookPart{
		{name: "hours", fields: []string{"rates.shop", "rates.office", "rates.site", "rates.overhead", "travel.perKm", "travel.speedKmh"}, units: []string{"hour", "hour", "hour", "hour", "km", ""}},
		{name: "policy", fields: []string{
			"policy.materialMarkup", "policy.contingency", "policy.margin", "policy.marginFloor", "policy.discountLimit",
			"policy.minimumCharge", "policy.roundTo", "policy.validDays", "policy.changeFee", "policy.sample",
		}, units: []string{"", "", "", "", "", "job", "money", "days", "change", "piece"}},
		{name: "woods", list: "woods", fields: []string{"wood", "squaresPerM3", "boardsPerM3"}, units: []string{"", "m3", "m3"}, growing: true},
		{name: "sticks", list: "sticks", fields: []string{"wood", "size", "length", "price"}, units: []string{"", "", "", "piece"}, growing: true},
		{name: "sheets", list: "sheets", fields: []string{"sheet", "thickness", "price"}, units: []string{"", "", "sheet"}, growing: true},
		{name: "finishes", list: "finishes", fields: []string{"finish", "perLitre"}, units: []string{"", "litre"}, growing: true},
		{name: "goods", fields: []string{
			"goods.gluePerKg", "goods.glueBottleKg", "goods.cleatPerM3", "goods.woodScrew", "goods.wallFixing", "goods.brad",
			"goods.abrasivesPer100", "goods.bladesPer1000", "goods.packingPerPanel",
		}, units: []string{"kg", "", "m3", "piece", "piece", "piece", "hundred-blocks", "thousand-blocks", "panel"}},
		{name: "tasks", list: "tasks", fields: []string{"low", "typical", "high"}, units: []string{"", "", ""}},
		{name: "stages", list: "stages", fields: []string{"name", "percent"}, units: []string{"", ""}, growing: true},
		{name: "taxes", list: "taxes", fields: []string{"name", "percent"}, units: []string{"", ""}, growing: true},
		{name: "texts", fields: []string{"name", "currency", "validFrom", "validUntil", "workshop", "address", "taxNumber", "terms", "reverseCharge"}, text: true},
	}
}

// BookPart is a group of rows, ready for its template.
type BookPart struct {
	Name, Label string
	Heads       []string // of a list
	Rows        []BookRow
	Controls    []Control // of words and days
	Add         string    // path of the list that grows; empty: it does not
}

// BookRow is a row of the price book.
type BookRow struct {
	Name   string // empty where its first cell is a control that names it
	Note   string // below the name: what all its figures are counted in
	Cells  []BookCell
	Mark   BookMark
	Remove string // path of what can be taken out
}

// BookCell is one field of the price book with its unit.
type BookCell struct {
	Control
	Unit string
}

// BookMark says of a row that it holds an invented figure, until all of them are set.
type BookMark struct {
	*view
	ID       string
	Path     string
	Label    string
	Invented bool
}

// BookChoices are the groups to choose from.
func (v *view) BookChoices() []Choice {
	var all []Choice
	for _, p := range bookParts() {
		all = append(all, Choice{p.name, v.T("book-part/" + p.name), v.Desk.Find == "" && p.name == v.bookGroup()})
	}
	return all
}

func (v *view) bookGroup() string {
	names := bookParts()
	if slices.ContainsFunc(names, func(p bookPart) bool { return p.name == v.Desk.Group }) {
		return v.Desk.Group
	}
	return names[0].name
}

// BookParts are the rows in sight: those of the chosen group, or of all groups those that
// hold what is searched for.
func (v *view) BookParts() []BookPart {
	var all []BookPart
	for _, p := range bookParts() {
		if v.Desk.Find == "" && p.name != v.bookGroup() {
			continue
		}
		part := v.bookPart(p)
		if v.Desk.Find != "" {
			part.Rows = slices.DeleteFunc(part.Rows, func(r BookRow) bool { return !holds(r.text(), v.Desk.Find) })
			part.Controls = slices.DeleteFunc(part.Controls, func(c Control) bool { return !holds(c.Label, v.Desk.Find) })
			part.Add = ""
		}
		if len(part.Rows)+len(part.Controls) > 0 || v.Desk.Find == "" {
			all = append(all, part)
		}
	}
	return all
}

// holds reports whether a text has all words that are searched for.
func holds(text, find string) bool {
	for word := range strings.FieldsSeq(strings.ToLower(find)) {
		if !strings.Contains(strings.ToLower(text), word) {
			return false
		}
	}
	return true
}

// text is what a row can be found by.
func (r BookRow) text() string {
	all := []string{r.Name, r.Note}
	for _, c := range r.Cells {
		all = append(all, c.Label)
		if c.Kind == "choice" || c.Kind == "text" && c.Unit == "" {
			all = append(all, c.shown())
		}
	}
	return strings.Join(all, " ")
}

func (v *view) bookPart(p bookPart) BookPart {
	part := BookPart{Name: p.name, Label: v.T("book-part/" + p.name)}
	switch {
	case p.text:
		for _, f := range p.fields {
			c := v.bookControl(f, "")
			c.Wide = c.Kind == "area"
			part.Controls = append(part.Controls, c)
		}
	case p.list == "":
		for i, f := range p.fields {
			cell := v.bookCell(f, p.units[i], "")
			part.Rows = append(part.Rows, BookRow{Name: cell.Label, Cells: []BookCell{cell}, Mark: v.bookMark(f, cell.Label)})
		}
	default:
		for _, f := range p.fields {
			part.Heads = append(part.Heads, v.T(labelKey(design.BookPrefix+p.list+"."+f)))
		}
		for i := range v.bookLength(p.list) {
			part.Rows = append(part.Rows, v.bookEntry(p, i))
		}
		if p.growing {
			part.Add = design.BookPrefix + p.list
		}
	}
	return part
}

// bookLength is how many entries a list of the book has.
func (v *view) bookLength(list string) int {
	b := v.Book
	return map[string]int{
		"woods": len(b.Woods), "sticks": len(b.Sticks), "sheets": len(b.Sheets), "finishes": len(b.Finishes),
		"tasks": len(b.Tasks), "stages": len(b.Stages), "taxes": len(b.Taxes),
	}[list]
}

// bookEntry is the row of an entry. Tasks are named, other entries have their name in
// their first cell.
func (v *view) bookEntry(p bookPart, i int) BookRow {
	row, path, name := BookRow{}, p.list+"["+strconv.Itoa(i)+"]", ""
	if p.list == "tasks" {
		t := v.Book.Tasks[i]
		row.Name = v.taskName(t.ID, t.Name)
		row.Note = v.T("book-unit/task-"+t.Unit, "per", v.bookPer(t.Per))
		name = row.Name + ", " + row.Note
	} else {
		c := v.bookControl(path+"."+p.fields[0], "")
		name = c.shown()
	}
	for k, f := range p.fields {
		row.Cells = append(row.Cells, v.bookCell(path+"."+f, p.units[k], name))
	}
	if p.growing {
		row.Remove = design.BookPrefix + path
	}
	row.Mark = v.bookMark(path, name)
	return row
}

func (v *view) bookControl(path, of string) Control {
	c, ok := v.control(design.BookPrefix + path)
	if !ok {
		panic("page: internal error: no control " + path)
	}
	c.Watch = nil
	if of != "" {
		c.Label = of + ", " + c.Label
	}
	return c
}

// bookCell is a field with its unit beside it. of names the entry that it belongs to.
func (v *view) bookCell(path, unit, of string) BookCell {
	c := BookCell{Control: v.bookControl(path, of)}
	c.Unit = c.Control.Unit
	if unit != "" {
		c.Unit = v.T("book-unit/"+unit, "currency", money.Sign(v.Book.Currency, v.locale()))
	}
	return c
}

// bookPer is the word for what a task is counted by, or what the book calls it.
func (v *view) bookPer(per string) any {
	if key := "per/" + per; v.Words.Language.Has(key) {
		return words.Key(key)
	}
	return per
}

// bookMark is the mark of the row at a path: a figure, or an entry of a list.
func (v *view) bookMark(path, label string) BookMark {
	full := design.BookPrefix + path
	return BookMark{view: v, ID: "own-" + controlID(full), Path: full, Label: label, Invented: !v.Book.IsOwn(path)}
}

// bookFragments are the marks that an edit of the book takes away.
func (v *view) bookFragments(changed string) []Fragment {
	path, ours := strings.CutPrefix(changed, design.BookPrefix)
	if !ours || !v.Editing() {
		return nil
	}
	if entry, _, list := strings.Cut(path, "]"); list {
		path = entry + "]"
	}
	mark := v.bookMark(path, "")
	return []Fragment{{mark.ID, v.render("book-mark", mark)}}
}

// BookCount says how many figures are still invented.
func (v *view) BookCount() string {
	switch invented, all := v.Book.Invented(); invented {
	case 0:
		return v.T("book/all-own", "all", all)
	case all:
		return v.T("book/all-invented", "all", all)
	default:
		return v.T("book/some-invented", "n", invented, "all", all)
	}
}

// ConfirmTakes says how many invented figures one press takes over as the workshop's own.
func (v *view) ConfirmTakes() string {
	invented, _ := v.Book.Invented()
	return v.T("book/confirm-takes", "n", invented)
}

// FindControl searches the book.
func (v *view) FindControl() Control {
	return Control{ID: controlID(FindPath), Name: FindPath, Label: v.T("book/find"), Value: v.Desk.Find, Kind: "text", WatchID: watchID(FindPath)}
}

// ShelfBook is a price book that is kept beside the one in force.
type ShelfBook struct {
	Name, Code, Days string
	Holds            bool // on the day
}

// Shelf are the books that are kept beside the one in force.
func (v *view) Shelf() []ShelfBook {
	if v.Desk == nil {
		return nil
	}
	var all []ShelfBook
	for _, b := range v.Desk.Shelf {
		if b.Code() == v.Plan.BookCode {
			continue
		}
		all = append(all, ShelfBook{
			Name: b.Name, Code: b.Code(), Days: v.bookDays(b), Holds: !b.Lapsed(v.Today) && !b.Early(v.Today),
		})
	}
	return all
}

// bookDays says on which days a book holds; empty where it always does.
func (v *view) bookDays(b design.Book) string {
	switch {
	case b.ValidFrom != "" && b.ValidUntil != "":
		return v.T("prices/from-until", "date", b.ValidFrom, "until", b.ValidUntil)
	case b.ValidUntil != "":
		return v.T("prices/until", "date", b.ValidUntil)
	case b.ValidFrom != "":
		return v.T("prices/from", "date", b.ValidFrom)
	}
	return ""
}
