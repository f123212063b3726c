package page

import (
	"html/template"
	"strconv"
	"strings"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/money"
)

// LookCard is one look in the comparison: the open design, or one that was kept.
type LookCard struct {
	Path, ID    string // empty for the open design
	Name        string
	NameField   Control // of a kept look
	Line, Price string
	Against     string // how it differs from the open design; empty for that
	Same        bool   // the open design is this very look
	Picture     template.HTML
}

// LookCards are the open design and the looks kept beside it. Their prices are
// those that their reader may see.
func (v *view) LookCards() []LookCard {
	cards := []LookCard{v.lookCard("", v.T("look-card/open"), v.Doc.Design, v.Plan)}
	for i, look := range v.Doc.Looks {
		if i >= len(v.Looks) || len(v.Looks[i].Groups) == 0 {
			continue
		}
		path := "looks[" + strconv.Itoa(i) + "]"
		card := v.lookCard(path, look.Name, look.Design, v.Looks[i])
		card.NameField, _ = v.control(path + ".name")
		card.Same = v.Looks[i].Revision == v.Plan.Revision
		if !card.Same {
			card.Against = v.against(v.Looks[i])
		}
		cards = append(cards, card)
	}
	return cards
}

func (v *view) lookCard(path, name string, d design.Design, plan engine.Result) LookCard {
	g := plan.Groups[0]
	return LookCard{
		Path: path, ID: controlID(path), Name: name,
		Line: v.T("look-card/line", "wood", v.T("choice/"+g.Design.Wood), "size", g.Design.Block.Size,
			"width", v.Words.Units.Number(v.Whole(g.Built.TotalWidth)), "height", v.Whole(g.Built.TotalHeight),
			"mass", v.KgOf(plan.Mass.TotalKg)),
		Price:   v.lookPrice(d, plan),
		Picture: template.HTML(fieldPicture("", corner(g.Built.Panels[0].Grid, exampleColumns, exampleRows), 1, 0)),
	}
}

// lookPrice is the client's range, or the price with tax for a maker; empty where
// there is none.
func (v *view) lookPrice(d design.Design, plan engine.Result) string {
	if v.Reading == Client {
		low, high, err := engine.Quote(d, plan, v.selling())
		if err != nil || d.Work.OwnBuild || high.Minor <= 0 {
			return ""
		}
		return v.T("money/range", "low", low.Whole(v.locale()), "high", high.Whole(v.locale()))
	}
	if !plan.Price.Sold {
		return ""
	}
	return plan.Price.Gross.Format(v.locale())
}

// against says what another look costs and weighs more or less than the open
// design. A client has the ranges, whose differences mean little.
func (v *view) against(plan engine.Result) string {
	var parts []string
	if v.Reading == Maker && plan.Price.Sold && v.Plan.Price.Sold {
		parts = append(parts, signed(plan.Price.Gross.Sub(v.Plan.Price.Gross), v.locale()))
	}
	switch more := plan.Mass.TotalKg - v.Plan.Mass.TotalKg; {
	case more >= leastKg:
		parts = append(parts, v.T("look-card/heavier", "mass", v.KgOf(more)))
	case more <= -leastKg:
		parts = append(parts, v.T("look-card/lighter", "mass", v.KgOf(-more)))
	}
	return strings.Join(parts, ", ")
}

// leastKg is the least difference in mass that is worth a word.
const leastKg = 0.05

func signed(m money.Money, locale string) string {
	if text, negative := strings.CutPrefix(m.Format(locale), "-"); negative {
		return "−" + text
	}
	return "+" + m.Format(locale)
}

// CanKeepLook reports whether there is room for another look, and the open design
// is none of those that are kept.
func (v *view) CanKeepLook() bool {
	for _, plan := range v.Looks {
		if plan.Revision == v.Plan.Revision {
			return false
		}
	}
	row, _ := design.Lookup("looks")
	return len(v.Doc.Looks) < row.Most
}

// OfferHindrance says why nothing can be offered; empty where an offer can be
// made.
func (v *view) OfferHindrance() string {
	h := engine.OfferHindrance(v.Plan, v.Book, v.Today)
	if h.Key == "" {
		return ""
	}
	return v.Words.Say(h.Key, h.Args)
}

// OfferDays are the days for which an offer is usually held open.
func (v *view) OfferDays() []int { return []int{14, 30, 60} }

// Offered reports whether the open design is what the offer was made for.
func (v *view) Offered() bool { return v.Doc.Offer != nil && v.Doc.Offer.Revision == v.Plan.Revision }

// Indication reports whether a price is an indication only, since nobody has
// seen the room.
func (v *view) Indication() bool {
	for _, w := range v.Plan.AllWatchOuts() {
		if w.Code == "price/indication" {
			return true
		}
	}
	return false
}

func (v *view) looksSlots() []slot {
	if v.Reading == Builder {
		return nil
	}
	notNames := func(changed string) bool { return !strings.HasPrefix(changed, "looks[") }
	all := []slot{{id: "looks", template: "looks", data: v, after: notNames}}
	if v.Reading == Maker {
		all = append(all, slot{id: "offer", template: "make-offer", data: v})
	}
	return all
}
