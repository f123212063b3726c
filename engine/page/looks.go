package page

import (
	"html/template"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/scene"
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
	Wood        template.HTML // a swatch of each
}

// LookCards are the looks that are kept, and the open design where it is none of
// them. Their prices are those that their reader may see.
func (v *view) LookCards() []LookCard {
	var cards []LookCard
	if !v.openIsKept() {
		cards = append(cards, v.lookCard("", v.T("look-card/open"), v.Doc.Design, v.Plan))
	}
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
	card := LookCard{
		Path: path, ID: controlID(path), Name: name,
		Line: v.T("look-card/line", "wood", g.Design.WoodName(), "size", g.Design.Block.Size,
			"width", v.Words.Number(v.Whole(g.Built.TotalWidth)), "height", v.Whole(g.Built.TotalHeight),
			"mass", v.KgOf(plan.Mass.TotalKg)),
		Price:   v.lookPrice(d, plan),
		Picture: template.HTML(woodPicture(corner(g.Built.Panels[0].Grid, exampleColumns, exampleRows), engine.TonesOf(g.Design).Woods[0])),
	}
	for _, wood := range g.Design.Woods() {
		if m, ok := scene.WoodMaterial(wood, g.Design.Finish.Kind); ok {
			card.Wood += swatch(m)
		}
	}
	return card
}

// lookPrice is the client's range, or the price with tax for a maker; empty where
// there is none. Beside an offer no made-up figure stands, and beside an agreement no range.
func (v *view) lookPrice(d design.Design, plan engine.Result) string {
	if v.Reading == Client {
		if v.Ordered() || v.OfferHolds() && v.selling().Placeholder {
			return ""
		}
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

// WoodsCompared reports whether a client compares looks of several woods by their ranges.
func (v *view) WoodsCompared() bool {
	if v.Reading != Client || v.Ordered() || !v.HasRange() {
		return false
	}
	wood := v.First().Design.Wood
	return slices.ContainsFunc(v.Looks, func(r engine.Result) bool { return len(r.Groups) > 0 && r.Groups[0].Design.Wood != wood })
}

// leastKg is the least difference in mass that is worth a word.
const leastKg = 0.05

// signed is a difference, whose sign no end of a line parts from the sign of its currency.
func signed(m money.Money, locale string) string {
	if text, negative := strings.CutPrefix(m.Format(locale), "-"); negative {
		return "−" + joiner + text
	}
	return "+" + joiner + m.Format(locale)
}

// CanKeepLook reports whether there is room for another look, and the open design
// is none of those that are kept.
func (v *view) CanKeepLook() bool {
	row, _ := design.Lookup("looks")
	return !v.openIsKept() && len(v.Doc.Looks) < row.Most
}

func (v *view) openIsKept() bool {
	return slices.ContainsFunc(v.Looks, func(r engine.Result) bool { return r.Revision == v.Plan.Revision })
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

// OfferStop is the first of the Stops where nothing else keeps an offer back.
func (v *view) OfferStop() *Watch {
	if engine.OfferHindrance(v.Plan, v.Book, v.Today).Key != "offer/gate-shut" {
		return nil
	}
	return &Watch{view: v, Out: v.Plan.ShutAt(check.Offer)[0]}
}

// OfferLacks says what an offer by the price book in force would leave out.
func (v *view) OfferLacks() []string {
	var all []string
	if v.Book.Currency == money.None {
		all = append(all, v.T("offer/no-currency"))
	}
	if strings.TrimSpace(v.Book.Workshop) == "" {
		all = append(all, v.T("offer/no-workshop"))
	}
	return all
}

// NoNewOffer says why a locked order gets no other offer.
func (v *view) NoNewOffer() string {
	p := v.Job.NoNewOffer()
	return v.Words.Say(p.Key, p.Args)
}

// OfferDays are the days for which an offer is usually held open.
func (v *view) OfferDays() []int { return []int{14, 30, 60} }

// Offered reports whether the open design is what the offer was made for.
func (v *view) Offered() bool { return v.Doc.Offer.For(v.Plan.Revision) }

// OfferHolds reports whether the offer still is what the open design costs. One that was
// agreed on does not run out.
func (v *view) OfferHolds() bool {
	return v.WasAgreed() || v.Offered() && v.Today <= v.Doc.Offer.ValidUntil
}

// WasAgreed reports whether this very design was agreed on, as far as its document says it.
func (v *view) WasAgreed() bool { return v.Doc.Offer.AgreedFor(v.Plan.Revision) }

// OfferedPrice is the price of the offer with tax.
func (v *view) OfferedPrice() string {
	o := v.Doc.Offer
	return o.Gross.In(o.Currency).Format(v.locale())
}

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
