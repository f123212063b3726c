package page

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"blockfield/engine/check"
	"blockfield/engine/layup"
	"blockfield/engine/length"
	"blockfield/engine/measure"
	"blockfield/engine/words"
)

// rowsTarget is the element of the screen that shows one row and nothing else.
const rowsTarget = "rows"

// Rows returns the screen for the bench: the card that the record is at.
func Rows(in Input) Fragment {
	v := newView(in)
	return Fragment{rowsTarget, v.render(rowsTarget, v.rowScreen())}
}

// RowScreen is one row card, ready to be read from a distance.
type RowScreen struct {
	*view
	Empty bool // there is no card
	Number,
	Place, Order string
	Fives       [][]RowCell
	Counts      []RowCount
	Lines       []RowLine
	Laid        bool
	Held        string // says that gluing is held up; empty: it is not
	Stale       string // says that the panel was laid from other cards; empty: it was not
	First, Last bool
	AllLaid     bool
	Progress    string
}

// RowCell is one cell of a row.
type RowCell struct {
	Height string // numeral; empty: bare backer
	Level  int
	Second string // the wood, where it is the second one
	Ends   bool   // the glue is opened anew behind it
	Column int
}

// Long reports whether the numeral needs smaller figures.
func (c RowCell) Long() bool {
	const most = 3
	return utf8.RuneCountInString(c.Height) > most
}

// RowCount is how many blocks of one height a row takes, and of which wood where there
// are two.
type RowCount struct{ Number, Height, Wood string }

// RowLine is a sentence, and what it is about.
type RowLine struct{ Kind, Text string }

func (v *view) rowScreen() RowScreen {
	at := v.Job.At()
	if at < 0 {
		return RowScreen{view: v, Empty: true}
	}
	all := v.Job.Cards
	c := all[at]
	s := RowScreen{
		view: v, Number: strconv.Itoa(c.Row + 1),
		Place: v.rowPlace(c), Order: v.T("rows/order", "n", c.Order, "all", c.Rows, "edge", v.edge(), "unit", v.Words.Unit()),
		Fives: v.fives(c), Counts: v.rowCounts(c), Lines: v.rowLines(c),
		Laid: v.Job.Laid(c), First: at == 0, Last: at == len(all)-1,
	}
	if n := v.glueStops(); n > 0 {
		s.Held = v.T("rows/held", "n", n)
	}
	laid := v.Job.LaidRows()
	s.AllLaid = laid == len(all)
	s.Progress = v.T("rows/progress", "n", laid, "all", len(all))
	if panel := v.Job.Panel(c); panel.Stale {
		s.Stale = v.T("rows/stale", "n", panel.Laid, "revision", panel.Revision, "now", v.Plan.Revision)
	}
	return s
}

// glueStops is how many Stops of its own hold up gluing now.
func (v *view) glueStops() int {
	n := 0
	for _, w := range v.Plan.WatchOuts {
		if w.Level == check.Stop && w.Gate == check.Glue {
			n++
		}
	}
	return n
}

// edge is the one at which the first row lies.
func (v *view) edge() words.Key { return words.Key("rows/edge-" + v.Job.Record.Lay.Start) }

// rowPlace says on which panel a row lies.
func (v *view) rowPlace(c layup.Card) string {
	g := v.Plan.Groups[c.Field]
	key := "rows/panel"
	if len(v.Plan.Groups) > 1 {
		key = "rows/panel-of-group"
	}
	return v.T(key, "group", g.Design.Name, "n", c.Panel+1, "all", len(g.Built.Panels))
}

// fives are the cells from the left in groups of five, as rulers are read.
func (v *view) fives(c layup.Card) [][]RowCell {
	const five = 5
	heights := v.Plan.Groups[c.Field].Design.Heights
	ends := map[int]bool{}
	for _, column := range c.Ends {
		ends[column] = column < len(c.Levels)
	}
	var all [][]RowCell
	for i, level := range c.Levels {
		if i%five == 0 {
			all = append(all, nil)
		}
		cell := RowCell{Level: int(level), Column: i + 1, Ends: ends[i+1]}
		if h := heights[level]; !h.IsZero() {
			cell.Height = v.Words.Number(h)
			if c.WoodOf(i) > 0 {
				cell.Second = v.T("choice/" + v.Plan.Groups[c.Field].Design.SecondWood)
			}
		}
		all[len(all)-1] = append(all[len(all)-1], cell)
	}
	return all
}

// rowCounts are the blocks to take out of the bins, tallest first: the bins that a
// hand can tell apart.
func (v *view) rowCounts(c layup.Card) []RowCount {
	g := v.Plan.Groups[c.Field].Design
	var all []RowCount
	for level := len(c.Counts) - 1; level >= 0; level-- {
		for w, wood := range g.Woods() {
			n := c.WoodCounts[w][level]
			if n == 0 || g.Heights[level].IsZero() {
				continue
			}
			one := RowCount{Number: v.Words.Count(n), Height: v.Words.Number(g.Heights[level])}
			if len(g.Woods()) > 1 {
				one.Wood = v.T("choice/" + wood)
			}
			all = append(all, one)
		}
	}
	return all
}

// LastColumn is the number of the last cell of a group.
func (s RowScreen) LastColumn(five []RowCell) int { return five[len(five)-1].Column }

func (v *view) rowLines(c layup.Card) []RowLine {
	var all []RowLine
	say := func(kind, key string, pairs ...any) { all = append(all, RowLine{kind, v.T(key, pairs...)}) }
	if woods := v.Plan.Groups[c.Field].Design.Woods(); len(woods) > 1 {
		say("woods", "rows/woods", "one", words.Key("choice/"+woods[0]), "other", words.Key("choice/"+woods[1]))
	}
	grams := c.WholeGrams()
	switch {
	case c.Blocks == 0:
		say("glue", "rows/no-glue")
	case len(c.Parts) > 1:
		say("glue", "rows/glue-parts", "blocks", c.Blocks, "parts", v.then(c.Parts), "grams", grams)
	default:
		say("glue", "rows/glue", "blocks", c.Blocks, "grams", grams)
	}
	switch {
	case c.Set > 0 && c.Lacking > 0:
		say("loose", "rows/set-some", "n", c.Set, "from", c.Set-c.Lacking, "height", v.lender(c), "lacking", c.Lacking)
	case c.Set > 0:
		say("loose", "rows/set", "n", c.Set, "height", v.lender(c))
	}
	if c.Pull > 0 {
		say("loose", "rows/pull", "n", c.Pull)
	}
	if c.Measure {
		say("measure", "rows/measure", "distance", v.tapeMeasure(c.Distance), "tolerance", length.MM(measure.ToleranceMM), "edge", v.edge())
	}
	return all
}

// lender names the bin that loose blocks come out of.
func (v *view) lender(c layup.Card) any {
	if len(v.Plan.Groups[c.Field].Design.Woods()) == 1 {
		return c.Bin.Height
	}
	return words.Phrase{Key: "rows/bin-of", Args: words.Args{"height": c.Bin.Height, "wood": words.Key("choice/" + c.Bin.Wood)}}
}

// then lists parts in the order in which they are glued.
func (v *view) then(parts []int) string {
	texts := make([]string, len(parts))
	for i, n := range parts {
		texts[i] = v.Words.Count(n)
	}
	return strings.Join(texts, v.T("rows/then"))
}

// tapeMeasure is a distance as a tape shows it: to half a millimetre, or as inches
// are shown.
func (v *view) tapeMeasure(l length.Length) length.Length {
	if v.Words.Units.Bare() == length.InInch {
		return l
	}
	const halves = 2
	return length.Micrometres(int64(math.Round(l.Millimetres()*halves)) * 1000 / halves)
}
