package engine

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/money"
	"blockfield/engine/wood"
	"blockfield/engine/words"
)

// strongest is how many levers are shown: more than three is a catalogue.
const strongest = 3

// Lever is one change to a job that is over its budget: what to change, and
// what it saves.
type Lever struct {
	Key    string // which lever; "lever/" and it is the key of its sentence
	Args   words.Args
	Saves  money.Money // of what is paid, with tax
	Hours  float64     // fewer hours of work; below zero: more
	Dents  bool        // it is a softer wood, which takes dents as the one before does not
	Enough bool        // alone it brings the job within the budget
	edits  []edit
}

// edit is what a person would type at a path.
type edit struct{ path, value string }

// Levers returns the three changes that save most and bring no new Stop, the strongest
// first, where the price of a job is over its budget; else none. Of the sizes of blocks and
// of the woods the one that saves most stands for its kind. Each is planned again by the
// planner that planned the job, so that what it saves is what the price will show. A job that is not
// sold has no price and no levers.
func Levers(doc design.Document, r Result, p Planner) []Lever {
	paid := func(_ design.Design, r Result) (money.Money, bool) { return r.Price.Gross, r.Price.Sold }
	return levers(doc, r, p, cheapWoods(p.book), paid)
}

// GoodsLevers returns the same for a home builder, who pays for goods alone.
func GoodsLevers(doc design.Document, r Result, p Planner) []Lever {
	paid := func(_ design.Design, r Result) (money.Money, bool) {
		return r.Price.Materials, r.Price.Materials.Minor > 0
	}
	return levers(doc, r, p, cheapWoods(p.book), paid)
}

// QuoteLevers returns the same for a client: reckoned with the selling book,
// from nothing that is private. The savings are rounded down, as a range is. Where
// nothing is sold, or the book has no price for the job, there are none.
func QuoteLevers(doc design.Document, r Result, p Planner, selling design.SellingBook) []Lever {
	paid := func(d design.Design, r Result) (money.Money, bool) {
		usual, err := cost.Usual(visible(d, r), selling, d.Money)
		return usual, err == nil && !d.Work.OwnBuild && quoted(d)
	}
	all := levers(doc, r, p, publicWoods(), paid)
	for i := range all {
		all[i].Saves = cost.RoundedDown(all[i].Saves)
	}
	return all
}

// cheapWoods are the two cheapest woods of a price book, as squares.
func cheapWoods(b design.Book) []string {
	woods := slices.Clone(b.Woods)
	slices.SortStableFunc(woods, func(x, y design.WoodPrice) int { return cmp.Compare(x.SquaresPerM3, y.SquaresPerM3) })
	var names []string
	for _, w := range woods[:min(2, len(woods))] {
		names = append(names, w.Wood)
	}
	return names
}

// publicWoods are one of each class that a selling book knows, but for the
// dearest; what everybody in the trade knows to be cheaper.
func publicWoods() []string { return []string{"pine", "poplar"} }

// paidFor is what a job costs whoever pays for it.
type paidFor func(design.Design, Result) (money.Money, bool)

func levers(doc design.Document, r Result, p Planner, woods []string, paid paidFor) []Lever {
	now, ok := paid(doc.Design, r)
	budget := cost.Budget(doc.Design.Money, now.Currency)
	if !ok || budget.Minor == 0 || now.Cmp(budget) <= 0 {
		return nil
	}
	best := map[string]Lever{}
	stops := stopsOf(r)
	for _, l := range candidates(doc, woods) {
		next, err := pulled(doc, l.edits)
		if err != nil {
			continue
		}
		next = KeepPlaced(doc, r, next)
		other, err := p.Plan(next.Design)
		if err != nil || !subset(stopsOf(other), stops) {
			continue
		}
		price, ok := paid(next.Design, other)
		l.Saves = now.Sub(price)
		if !ok || l.Saves.Minor <= 0 || l.Saves.Cmp(best[l.Key].savesOr(now)) <= 0 {
			continue
		}
		l.Hours = r.Bill.Hours.Total.Typical - other.Bill.Hours.Total.Typical
		l.Enough = price.Cmp(budget) <= 0
		l.say(r, other)
		best[l.Key] = l
	}
	var all []Lever
	for _, l := range best {
		all = append(all, l)
	}
	slices.SortFunc(all, func(x, y Lever) int {
		return cmp.Or(y.Saves.Cmp(x.Saves), cmp.Compare(x.Key, y.Key))
	})
	return all[:min(len(all), strongest)]
}

// savesOr is what l saves, nothing where there is no lever yet.
func (l Lever) savesOr(like money.Money) money.Money {
	if l.Key == "" {
		return money.New(0, like.Currency)
	}
	return l.Saves
}

// say sets the arguments of the sentence that take the planned change to know.
func (l *Lever) say(before, after Result) {
	_, had := before.Cells()
	_, has := after.Cells()
	g := after.Groups[0]
	l.Dents = dents(before, after)
	l.Args = words.Args{
		"size": g.Design.Block.Size, "wood": g.Design.WoodName(),
		"was": before.Groups[0].Design.WoodName(),
		"n":   len(g.Design.Heights), "heights": g.Design.Heights,
		"width": g.Built.TotalWidth.CeilMM(), "height": g.Built.TotalHeight.CeilMM(),
		"fewer": words.Percent(100 * (1 - float64(has)/float64(max(had, 1)))),
	}
}

// dents reports whether a change makes soft blocks of hard ones.
func dents(before, after Result) bool {
	soft := func(r Result) bool {
		return slices.ContainsFunc(r.Groups, func(g Group) bool {
			return slices.ContainsFunc(g.Design.Woods(), func(name string) bool {
				w, ok := wood.Find(name)
				return ok && w.Soft()
			})
		})
	}
	return soft(after) && !soft(before)
}

// Pull returns the document after a lever, by its key; false where the job has
// no such lever.
func Pull(doc design.Document, all []Lever, key string) (design.Document, bool) {
	for _, l := range all {
		if l.Key == key {
			next, err := pulled(doc, l.edits)
			return next, err == nil
		}
	}
	return doc, false
}

func pulled(doc design.Document, edits []edit) (design.Document, error) {
	var err error
	for _, e := range edits {
		if doc, err = design.Set(doc, e.path, e.value, length.Metric); err != nil {
			return doc, err
		}
	}
	return doc, nil
}

// candidates are the changes that are tried. Those of panels are made to every
// group that has something to give up.
func candidates(doc design.Document, woods []string) []Lever {
	d := doc.Design
	var all []Lever
	add := func(key string, edits []edit) {
		if len(edits) > 0 {
			all = append(all, Lever{Key: key, edits: edits})
		}
	}
	for step := 1; step <= len(BlockSizes(length.InMM)); step++ {
		add("larger-blocks", eachGroup(d, func(g design.Group, at string) []edit { return blocksOf(g, at, step) }))
	}
	add("fewer-heights", eachGroup(d, fewerHeights))
	add("fewer-coats", eachGroup(d, fewerCoats))
	add("no-frame", eachGroup(d, noFrame))
	add("smaller", eachGroup(d, smaller))
	for _, wood := range woods {
		add("another-wood", eachGroup(d, func(g design.Group, at string) []edit { return anotherWood(g, at, wood) }))
	}
	if !d.Work.OwnBuild && d.Work.Hung {
		add("no-hanging", []edit{{"work.hung", "no"}, {"work.delivered", "no"}})
	}
	return all
}

// eachGroup collects the edits of all groups; at is the path of one, with its
// point.
func eachGroup(d design.Design, change func(g design.Group, at string) []edit) []edit {
	var all []edit
	for w, wall := range d.Walls {
		for i, g := range wall.Groups {
			all = append(all, change(g, groupPath(w, i)+".")...)
		}
	}
	return all
}

// BlockSizes are the sections that are offered, in the notation of the one that a
// design has: what sawn 32, 40, 50 and 63 mm stock planes down to, or 5/4, 6/4,
// 8/4 and 10/4 stock. Common practice, no source.
func BlockSizes(n length.Notation) []length.Length {
	if n == length.InInch || n == length.InFeet {
		return []length.Length{
			length.Sixtyfourths(72), length.Sixtyfourths(88), length.Sixtyfourths(112), length.Sixtyfourths(144),
		}
	}
	return []length.Length{length.MM(28), length.MM(36), length.MM(44), length.MM(58)}
}

// blocksOf takes a larger size that is offered: the next one, or so many steps on.
func blocksOf(g design.Group, at string, step int) []edit {
	for _, size := range BlockSizes(g.Block.Size.Notation()) {
		if size.Cmp(g.Block.Size) > 0 {
			if step--; step == 0 {
				return []edit{{at + "block.size", size.String()}}
			}
		}
	}
	return nil
}

// leastHeights keeps a relief that is one.
const leastHeights = 3

// fewerHeights leaves out the lowest but one: the range stays, and with it the
// band that the panel works in.
func fewerHeights(g design.Group, at string) []edit {
	if len(g.Heights) <= leastHeights {
		return nil
	}
	var texts []string
	for i, h := range g.Heights {
		if i != 1 {
			texts = append(texts, h.String())
		}
	}
	return []edit{{at + "heights", strings.Join(texts, "; ")}}
}

func fewerCoats(g design.Group, at string) []edit {
	if g.Finish.Coats < 2 {
		return nil
	}
	return []edit{{at + "finish.coats", strconv.Itoa(g.Finish.Coats - 1)}}
}

func noFrame(g design.Group, at string) []edit {
	if g.Frame.Joint == design.NoFrame {
		return nil
	}
	return []edit{{at + "frame.joint", design.NoFrame}}
}

// smallerBy is what a side gives up: the sound of a panel does not change with
// a tenth of its width, and its price does.
const smallerBy = 0.1

func smaller(g design.Group, at string) []edit {
	less := func(l length.Length) string {
		mm := int64(math.Round(l.Millimetres() * (1 - smallerBy)))
		return length.MM(mm).CeilAs(l.Notation()).String()
	}
	return []edit{{at + "width", less(g.Width)}, {at + "height", less(g.Height)}}
}

// anotherWood is for all blocks, and for a frame of the same wood.
func anotherWood(g design.Group, at, wood string) []edit {
	if len(g.Woods()) == 1 && g.Wood == wood {
		return nil
	}
	edits := []edit{{at + "wood", wood}, {at + "secondWood", design.NoSecondWood}}
	if g.Frame.Wood == g.Wood {
		edits = append(edits, edit{at + "frame.wood", wood})
	}
	return edits
}
