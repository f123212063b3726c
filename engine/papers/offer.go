package papers

import (
	"slices"
	"strings"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/money"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// The papers of this file go to the client. What they say of money is what was agreed on,
// the price that was offered, the price of the job, or the range of a selling book: no cost,
// no rate, no margin and no line of the price. That is so for whoever prints
// them.

// offerPaper is the offer on one sheet, or else on two that are filled evenly.
func (m *maker) offerPaper() sheet.Paper {
	p := m.fewest(m.offer)
	if sheet.Count(m.Format, p) < 2 {
		return p
	}
	m.parted = true
	parted := m.fewest(m.offer)
	m.parted = false
	return parted
}

// offer is what a client signs: what it is, what it does and does not do, what is
// in it and what it costs.
func (m *maker) offer() sheet.Paper {
	p := m.paper("offer", sheet.NoView)
	own := m.Doc.Design.Work.OwnBuild
	switch {
	case own:
		p.Title = m.T("paper/glance")
	case m.ordered() && !m.Job.IsAgreed():
		p.Title = m.T("paper/not-agreed")
	case m.ordered(), m.wasAgreed():
		p.Title = m.T("paper/confirmation")
	case !m.offered():
		p.Title = m.T("paper/indication")
	}
	if !own {
		p.Blocks = append(append(m.letterhead(), m.addressee()...), m.otherThanAgreed()...)
	}
	p.Blocks = append(p.Blocks, sheet.Beside{Shares: []float64{1.08, 1}, Columns: [][]sheet.Block{{m.offerPicture()}, {m.offerFacts()}}},
		sheet.Heading(m.T("offering/sound")))
	sound := m.soundText()
	if m.close || m.parted {
		sound = []string{strings.Join(sound, " ")}
	}
	for _, s := range sound {
		p.Blocks = append(p.Blocks, sheet.Text{Text: s, Type: m.inHand()})
	}
	if own {
		p.Blocks = append(p.Blocks, sheet.Heading(m.T("offering/price")), sheet.Say(m.T("offering/own-build")))
		return m.withOpen(p)
	}
	out := "offering/out"
	if len(m.Doc.Design.Money.Extras) > 0 {
		out = "offering/out-beyond" // what a line is for, nobody knows but whoever typed it
	}
	list := func(items []string) sheet.Block { return sheet.List{Size: m.inHand().Size, Items: items} }
	in := []sheet.Block{sheet.Heading(m.T("offering/in")), list(m.included())}
	not := []sheet.Block{sheet.Heading(m.T(out)), list(m.phrases(engine.Excluded(m.Doc.Design)))}
	if !m.parted { // on two sheets the first one is filled better in smaller pieces
		in, not = append(in, not...), nil
	}
	p.Blocks = append(p.Blocks, sheet.Beside{Shares: []float64{1.08, 1}, Columns: [][]sheet.Block{
		in, append([]sheet.Block{sheet.Heading(m.T("offering/price"))}, m.priceBlocks()...),
	}})
	p.Blocks = append(p.Blocks, not...)
	p.Blocks = append(p.Blocks, m.otherLooks()...)
	p.Blocks = append(p.Blocks, m.cautions("supply/")...)
	p = m.withOpen(p)
	for line := range strings.Lines(m.terms()) {
		p.Blocks = append(p.Blocks, sheet.Small(strings.TrimSpace(line)))
	}
	return m.signed(p)
}

// withOpen is a paper with what is still open, in a box.
func (m *maker) withOpen(p sheet.Paper) sheet.Paper {
	if open := m.openQuestions(); len(open) > 0 {
		sign := sheet.CautionSign
		if slices.ContainsFunc(m.Plan.WatchOuts, isStop) {
			sign = sheet.StopSign
		}
		p.Blocks = append(p.Blocks, sheet.Notice{Sign: sign, Lead: m.T("offering/open"), Text: strings.Join(open, " ")})
	}
	return p
}

// signed is a paper with its days and where both sides sign it. An indication binds
// nobody and is not signed.
func (m *maker) signed(p sheet.Paper) sheet.Paper {
	var days []string
	switch {
	case m.ordered():
		days = m.phrases(m.Job.ReadyDays(m.Doc))
	case m.offered():
		days = m.phrases(engine.PromisedDays(*m.Doc.Offer))
	}
	if len(days) > 0 {
		p.Blocks = append(p.Blocks, sheet.Heading(m.T("offering/delivery")))
		for _, line := range days {
			p.Blocks = append(p.Blocks, sheet.Text{Text: line, Type: m.inHand()})
		}
	} else {
		p.Blocks = append(p.Blocks, sheet.Blanks{{Label: m.T("offering/delivery"), Share: 1}, {Label: m.T("offering/starts"), Share: 1}})
	}
	lead := ""
	switch {
	case m.ordered() && !m.Job.IsAgreed(): // nobody signs for what the sheet shows
		return p
	case m.ordered():
		agreed, _ := m.Job.Agreed()
		lead = m.confirmedLead(agreed.Revision, agreed.Gross)
	case m.wasAgreed():
		lead = m.confirmedLead(m.Doc.Offer.Revision, m.ofAmount(m.Doc.Offer.Gross))
	case m.offered():
		lead = m.T("offering/order-lead", "number", m.Doc.Offer.Code(), "gross", m.ofAmount(m.Doc.Offer.Gross).Format(m.locale()))
	default:
		return p
	}
	p.Blocks = append(p.Blocks, sheet.Beside{Shares: []float64{1}, Columns: [][]sheet.Block{{ // the strip stays in one piece
		sheet.Heading(m.T("offering/order")),
		sheet.Text{Text: lead, Type: m.inHand()},
		sheet.Blanks{
			{Label: m.T("offering/for-client"), Share: 3}, {Label: m.T("blank/date"), Share: 1.3},
			{Label: m.T("offering/for-workshop"), Share: 3}, {Label: m.T("blank/date"), Share: 1.3},
		},
	}}})
	return p
}

// confirmedLead is what both sides sign of an order.
func (m *maker) confirmedLead(revision string, gross money.Money) string {
	return m.T("offering/confirmed-lead", "revision", revision, "gross", gross.Format(m.locale()))
}

// addressee is who the offer is for, with a line where nobody is named: a name goes into
// no file and no link. Beside it stands the number of the offer.
func (m *maker) addressee() []sheet.Block {
	var to sheet.Block = sheet.Blanks{{Label: m.T("offering/to"), Share: 1}}
	if name := strings.TrimSpace(m.Job.Record.Client.Name); name != "" {
		to = sheet.Say(m.T("order-paper/to", "name", name))
	}
	if m.ordered() {
		return m.numbered(to, m.orderNumber())
	}
	if !m.offered() {
		return []sheet.Block{to}
	}
	if m.wasAgreed() {
		return m.numbered(to, m.T("offering/agreed-on", "date", m.Doc.Offer.Agreed))
	}
	number := m.T("offering/number", "number", m.Doc.Offer.Code())
	if made := m.Doc.Offer.Made; made != "" {
		number = m.T("offering/number-of", "number", m.Doc.Offer.Code(), "date", made)
	}
	return m.numbered(to, number)
}

// numbered is an addressee with what the paper is known by beside it.
func (m *maker) numbered(to sheet.Block, number string) []sheet.Block {
	return []sheet.Block{sheet.Beside{Shares: []float64{1.08, 1}, Columns: [][]sheet.Block{{to}, {sheet.Text{Text: number, Type: sheet.Type{Face: sheet.Bold}}}}}}
}

// orderNumber is the day of an order, with the offer that it goes by where the document
// still has that.
func (m *maker) orderNumber() string {
	day := m.Job.Record.Lock.Day
	if o := m.Job.LockedOffer(m.Doc); o != nil {
		return m.T("offering/ordered-by", "number", o.Code(), "date", day)
	}
	return m.T("offering/ordered-on", "date", day)
}

// otherThanAgreed says that the sheet shows another design than the one that was agreed on,
// where it does.
func (m *maker) otherThanAgreed() []sheet.Block {
	if !m.ordered() || m.Job.IsAgreed() {
		return nil
	}
	a, _ := m.Job.Agreed()
	return []sheet.Block{sheet.Notice{Sign: sheet.StopSign, Text: m.T("order/other", "agreed", a.Revision, "now", m.Plan.Revision)}}
}

// agreedBlocks are what was agreed on: what was locked, each change that was accepted, and
// the payments of both together.
func (m *maker) agreedBlocks() []sheet.Block {
	a, _ := m.Job.Agreed()
	var taxes []cost.TaxAmount
	for _, t := range a.Taxes {
		taxes = append(taxes, cost.TaxAmount{Percent: t.Percent, Base: m.agreed(t.Base), Amount: m.agreed(t.Tax)})
	}
	reverse := ""
	if o := m.snapshot(); o != nil {
		reverse = o.ReverseCharge
	}
	lines := m.taxesSaid(a.Net, a.Tax, taxes, reverse)
	if m.close {
		lines = []string{strings.Join(lines, " · ")}
	}
	blocks := []sheet.Block{m.large(a.Gross.Format(m.locale()))}
	if !m.Job.IsAgreed() {
		blocks = append(blocks, sheet.Say(m.T("offering/agreed-for", "revision", a.Revision)))
	}
	for _, line := range lines {
		blocks = append(blocks, sheet.Small(line))
	}
	table := func(head string, rows [][]sheet.Cell) {
		blocks = append(blocks, sheet.Table{Size: m.inHand().Size, Columns: []sheet.Column{{Head: head, Grow: true}, {Right: true}}, Rows: rows})
	}
	if slips := m.Job.AcceptedSlips(); len(slips) > 0 {
		rows := [][]sheet.Cell{sheet.Row(m.T("order-paper/locked", "revision", m.Job.Record.Lock.Revision), m.Show(m.agreed(m.Job.Record.Lock.Gross)))}
		for _, s := range slips {
			rows = append(rows, sheet.Row(m.T("order-paper/change", "n", s.Number, "date", s.Accepted), m.Show(m.agreed(s.Gross))))
		}
		table(m.T("offering/agreed"), rows)
	}
	var rows [][]sheet.Cell
	for _, d := range m.Job.Payments() {
		rows = append(rows, sheet.Row(capital(m.Words.Given(d.Stage)), m.Show(d.Gross)))
	}
	table(m.T("money/stages"), rows)
	return blocks
}

// terms are those of the offer, or of the workshop's own book.
func (m *maker) terms() string {
	if o := m.snapshot(); o != nil {
		return strings.TrimSpace(o.Terms)
	}
	if m.Client || m.Book.Placeholder {
		return ""
	}
	return strings.TrimSpace(m.Book.Terms)
}

// snapshot is the offer that was locked, or else that of this very design, where it carries
// all that is signed; nil where there is none, or one of an earlier program.
func (m *maker) snapshot() *design.Offer {
	o := m.Job.LockedOffer(m.Doc)
	if o == nil && m.offered() {
		o = m.Doc.Offer
	}
	if o == nil || o.Made == "" {
		return nil
	}
	return o
}

// ordered reports whether anything was agreed on.
func (m *maker) ordered() bool { return m.Job.Record.Lock != nil && !m.Doc.Design.Work.OwnBuild }

// otherLooks are what was kept beside this look, with what each costs.
func (m *maker) otherLooks() []sheet.Block {
	all, prices := m.kept()
	if len(all) == 0 {
		return nil
	}
	t := sheet.Table{Size: m.inHand().Size, Columns: []sheet.Column{
		{}, {Head: m.T("offering/wood"), Grow: true}, {Head: m.T("offering/size")}, {Head: m.T("offering/mass"), Right: true}, {Head: m.T("offering/with-tax"), Right: true},
	}}
	for i, o := range all {
		wood := design.Group{Wood: o.Wood, SecondWood: o.SecondWood}.WoodName()
		t.Rows = append(t.Rows, []sheet.Cell{
			{Text: o.Name, Bold: true}, {Text: capital(m.Show(wood))},
			{Text: m.T("offering/size-value", "width", m.Words.Number(m.round(o.Width)), "height", m.round(o.Height))},
			{Text: m.Show(words.Kg(o.Kg))}, {Text: prices[i], Bold: true},
		})
	}
	return []sheet.Block{sheet.Heading(m.T("offering/others")), t, sheet.Small(m.T("offering/others-lead"))}
}

// kept are the looks that were kept beside this one, and what each costs this reader.
func (m *maker) kept() (all []design.OfferedLook, prices []string) {
	if m.ordered() {
		return nil, nil
	}
	if o := m.snapshot(); o != nil {
		for _, other := range o.Others {
			prices = append(prices, m.against(m.ofAmount(other.Gross), m.ofAmount(o.Gross)))
		}
		return o.Others, prices
	}
	if m.offered() {
		return nil, nil
	}
	price := m.Plan.Price
	all = engine.Beside(design.Offer{Revision: m.Plan.Revision, Currency: price.Currency}, m.Doc, m.Looks).Others
	for _, other := range all {
		if m.Client {
			prices = append(prices, m.rangeOf(other.Revision))
			continue
		}
		prices = append(prices, m.against(other.Gross.In(price.Currency), price.Gross))
	}
	return all, prices
}

// against is the price of another look, with its difference to this one.
func (m *maker) against(gross, this money.Money) string {
	more := gross.Sub(this)
	switch {
	case gross.Minor == 0:
		return m.T("offering/other-open")
	case more.Minor > 0:
		return m.T("offering/other-more", "gross", gross, "more", more)
	case more.Minor < 0:
		return m.T("offering/other-less", "gross", gross, "less", this.Sub(gross))
	}
	return m.Show(gross)
}

// rangeOf is what a kept look costs by the selling book.
func (m *maker) rangeOf(revision string) string {
	for i, r := range m.Looks {
		if r.Revision != revision {
			continue
		}
		if low, high, err := engine.Quote(m.Doc.Looks[i].Design, r, m.selling()); err == nil && high.Minor > 0 {
			return m.T("money/range", "low", low.Whole(m.locale()), "high", high.Whole(m.locale()))
		}
	}
	return m.T("offering/no-price")
}

// offered reports whether this very design was offered.
func (m *maker) offered() bool { return m.Doc.Offer.For(m.Plan.Revision) }

// wasAgreed reports whether this very design was agreed on, as far as its document says it.
func (m *maker) wasAgreed() bool { return m.Doc.Offer.AgreedFor(m.Plan.Revision) }

// offerPicture is the rendered picture where there is one, or else the panels on
// their wall, to scale, with a person beside them.
func (m *maker) offerPicture() sheet.Block {
	most := m.either(88, 50)
	return sheet.Fitted(func(width float64) []sheet.Block {
		if p := m.Picture; len(p.Body) > 0 {
			high := width * float64(p.Height) / float64(p.Width)
			return []sheet.Block{sheet.Piece{Height: high, Draw: func(pen sheet.Pen) { pen.Picture(0, 0, width, high, p.Type, p.Body, m.T("offering/picture")) }}}
		}
		return []sheet.Block{m.wallPicture(width, most)}
	})
}

// wallPicture is the first wall with its panels and a person, so high at most.
func (m *maker) wallPicture(width, most float64) sheet.Block {
	w := m.Doc.Design.Walls[m.Plan.Groups[0].Wall]
	wide, high := w.Width.Millimetres(), w.Height.Millimetres()
	k := scale(max(wide/width, high/most))
	return sheet.Piece{Height: k.of(high) + 1, Draw: func(p sheet.Pen) {
		p.Fill(0, 0, k.of(wide), k.of(high), draw.Fill("#f4f4f4"))
		right := 0.0
		for _, g := range m.Plan.Groups {
			if g.Wall != m.Plan.Groups[0].Wall {
				continue
			}
			for _, panel := range g.Built.Panels {
				x, y := k.of(panel.Left.Millimetres()), k.of(high-panel.Bottom.Millimetres()-g.Built.OuterHeight.Millimetres())
				ow, oh := k.of(g.Built.OuterWidth.Millimetres()), k.of(g.Built.OuterHeight.Millimetres())
				right = max(right, x+ow)
				if x < 0 || y < 0 || x+ow > k.of(wide) || y+oh > k.of(high) {
					continue // beyond its wall: a Stop of its own
				}
				in := (g.Built.OuterWidth.Millimetres() - g.Built.FieldWidth.Millimetres()) / 2
				p.Fill(x, y, ow, oh, draw.Fill(edge(g)))
				tonedField(p.In(x+k.of(in), y+k.of(in), ow-2*k.of(in), oh-2*k.of(in)), g, panel, k.of(g.Built.Pitch.Millimetres()))
				p.Box(x, y, ow, oh, draw.Visible)
			}
		}
		m.person(p, k, right, k.of(wide), k.of(high))
		p.Line(0, k.of(high), k.of(wide), k.of(high), draw.Outline)
	}}
}

// edge is the tone of what is seen round the blocks of a group.
func edge(g engine.Group) string {
	tones := engine.TonesOf(g.Design)
	if g.Built.Framed {
		return tones.Frame.Face.Hex()
	}
	return tones.Backer.Face.Hex()
}

// person stands at the side where there is room, for scale.
func (m *maker) person(p sheet.Pen, k scale, right, wide, high float64) {
	tall := k.of(draw.PersonMM)
	half := tall * draw.PersonHalf
	x := wide - 1.5*half
	if right > x-half {
		x = 1.5 * half
	}
	if tall < high && wide > 4*half {
		p.Person(x, high, tall)
	}
}

// offerFacts are size, mass and make, in plain words.
func (m *maker) offerFacts() sheet.Block {
	t := sheet.Table{Size: m.inHand().Size, Columns: []sheet.Column{{}, {Grow: true}}}
	add := func(key string, value string) {
		t.Rows = append(t.Rows, []sheet.Cell{{Text: m.T("offering/" + key)}, {Text: value, Bold: true}})
	}
	if o := m.snapshot(); o != nil && o.Look != "" && o.Revision == m.Plan.Revision {
		add("look", o.Look)
	}
	n := 0
	for i, g := range m.Plan.Groups {
		n += len(g.Built.Panels)
		label := m.T("offering/size")
		if len(m.Plan.Groups) > 1 {
			label = m.groupName(i)
		}
		t.Rows = append(t.Rows, []sheet.Cell{{Text: label}, {Text: m.T("offering/size-value",
			"width", m.Words.Number(m.round(g.Built.TotalWidth)), "height", m.round(g.Built.TotalHeight)), Bold: true}})
		if len(g.Built.Panels) > 1 {
			add("each", m.T("offering/size-value", "width", m.Words.Number(m.round(g.Built.OuterWidth)), "height", m.round(g.Built.OuterHeight)))
		}
	}
	g := m.Plan.Groups[0]
	depth := g.Built.Stack
	if g.Built.Framed {
		depth = g.Built.FrameDepth
	}
	add("depth", m.Show(m.round(depth)))
	add("panels", m.Show(n))
	add("mass", m.T("offering/mass-value", "mass", words.Kg(m.Plan.Mass.TotalKg)))
	add("wood", capital(m.T("offering/wood-value", "wood", g.Design.WoodName())))
	if g.Built.Framed {
		add("frame", capital(m.T("offering/frame-value", "wood", m.wood(g.Design.Frame.Wood))))
	}
	add("finish", capital(m.wood(g.Design.Finish.Kind)))
	return t
}

// round is a size that nobody saws by.
func (m *maker) round(l length.Length) length.Length {
	if m.Words.Units.Bare() == length.InInch {
		return l
	}
	return length.MM(int64(l.Millimetres() + 0.5))
}

// soundText is whether blocks are the right thing and what was heard of the panels, if
// anything was, and always what they do not do.
func (m *maker) soundText() []string {
	var all []string
	if h := m.Heard; h != nil && len(h.Groups) > 0 {
		all = append(all, m.T("sound/fit-"+h.Fit.Answer))
		first := h.Groups[0]
		line := first.Verdict.Client(m.Doc.Design.Walls[first.Wall].ListenerDistance)
		all = append(all, m.Words.Say(line.Code, line.Args))
	}
	return append(all, m.T("sound/not"), m.T("offering/calculated"))
}

// included is what the price holds, with the amounts of lines that are sold as they stand.
func (m *maker) included() []string {
	in := engine.Included(m.Doc.Design, m.Plan)
	all := m.phrases(slices.DeleteFunc(in, func(p words.Phrase) bool { return p.Key == "includes/beside" }))
	for _, x := range m.Doc.Design.Money.Extras {
		if x.Role == design.ExtraSold && x.Name != "" {
			all = append(all, m.T("offering/line", "name", x.Name, "net", x.Amount.In(m.currency())))
		}
	}
	return all
}

// currency is that of the price on this paper.
func (m *maker) currency() string {
	switch {
	case m.ordered():
		return m.Job.Record.Lock.Currency
	case m.offered():
		return m.Doc.Offer.Currency
	case m.Client:
		return m.selling().Currency
	}
	return m.Plan.Price.Currency
}

func (m *maker) phrases(all []words.Phrase) []string {
	said := make([]string, len(all))
	for i, p := range all {
		said[i] = m.Words.Say(p.Key, p.Args)
	}
	return said
}

// priceBlocks are the price as this reader may know it.
func (m *maker) priceBlocks() []sheet.Block {
	switch {
	case m.ordered():
		return m.agreedBlocks()
	case m.offered():
		holds := m.T("offering/until", "date", m.Doc.Offer.ValidUntil)
		if m.wasAgreed() {
			holds = ""
		}
		return m.firm(m.ofAmount(m.Doc.Offer.Net), m.ofAmount(m.Doc.Offer.Tax), m.ofAmount(m.Doc.Offer.Gross), holds)
	case !m.Client && m.Plan.Price.Sold && m.Plan.Price.Gross.Minor > 0:
		return m.firm(m.Plan.Price.Net, m.Plan.Price.Tax, m.Plan.Price.Gross, m.notYet())
	}
	low, high, err := engine.Quote(m.Doc.Design, m.Plan, m.selling())
	if err != nil || high.Minor == 0 {
		return []sheet.Block{sheet.Say(m.T("offering/no-price"))}
	}
	blocks := []sheet.Block{m.large(m.T("money/range", "low", low.Whole(m.locale()), "high", high.Whole(m.locale()))), sheet.Small(m.T("money/range-lead"))}
	if m.selling().Placeholder {
		blocks = append(blocks, sheet.Say(m.T("offering/example")))
	}
	if s := m.selling(); s.Lapsed(m.Today) {
		blocks = append(blocks, sheet.Say(m.T("prices/client-lapsed", "date", s.ValidUntil)))
	}
	return blocks
}

// notYet says of a price that it was not offered, and whether its book has run out.
func (m *maker) notYet() string {
	if m.Book.Lapsed(m.Today) {
		return m.T("offering/lapsed", "date", m.Book.ValidUntil)
	}
	return m.T("offering/not-yet")
}

// firm is a price with its tax, its payments and until when it holds; empty for one that
// was agreed on.
func (m *maker) firm(net, tax, gross money.Money, holds string) []sheet.Block {
	lines := m.taxLines(net, tax)
	if d := m.Doc.Design.Money; d.Discount > 0 {
		key := "offering/discount"
		if strings.TrimSpace(d.Reason) == "" {
			key = "offering/discount-plain"
		}
		lines = append(lines, m.T(key, "share", words.Quantity{Value: d.Discount, Unit: "%"}, "reason", d.Reason))
	}
	if holds != "" {
		lines = append(lines, holds)
	}
	if m.close {
		lines = []string{strings.Join(lines, " · ")}
	}
	blocks := []sheet.Block{m.large(gross.Format(m.locale()))}
	if m.Book.Placeholder && !m.offered() {
		blocks = append(blocks, sheet.Text{Text: m.T("offering/example"), Type: m.inHand()})
	}
	for _, line := range lines {
		blocks = append(blocks, sheet.Small(line))
	}
	if stages := m.stages(gross); len(stages) > 0 {
		blocks = append(blocks, sheet.Table{Size: m.inHand().Size, Columns: []sheet.Column{{Head: m.T("money/stages"), Grow: true}, {Right: true}}, Rows: stages})
	}
	return blocks
}

// taxLines say the tax in a price: at one rate, at each of several, or by whom it is owed.
func (m *maker) taxLines(net, tax money.Money) []string {
	taxes, reverse := m.Plan.Price.Taxes, ""
	if !m.Client {
		reverse = m.Book.ReverseCharge
	}
	if o := m.snapshot(); o != nil {
		taxes, reverse = nil, o.ReverseCharge
		for _, t := range o.Taxes {
			taxes = append(taxes, cost.TaxAmount{Percent: t.Percent, Base: m.ofAmount(t.Base), Amount: m.ofAmount(t.Tax)})
		}
	} else if m.Plan.Price.Tax != tax {
		taxes = nil
	}
	return m.taxesSaid(net, tax, taxes, reverse)
}

// taxesSaid say the taxes of a price; reverse is the sentence of whoever asks it where the
// client owes the tax, or empty.
func (m *maker) taxesSaid(net, tax money.Money, taxes []cost.TaxAmount, reverse string) []string {
	terms := m.Doc.Design.Money
	switch {
	case terms.Reverse && reverse != "":
		return []string{m.T("offering/net-only", "net", net), m.Words.Given(reverse)}
	case terms.Reverse:
		return []string{m.T("offering/net-only", "net", net), m.T("includes/reverse-charge")}
	case len(taxes) < 2:
		return []string{m.T("offering/net-tax", "net", net, "tax", tax, "share", words.Percent(terms.Tax))}
	}
	lines := []string{m.T("offering/net-only", "net", net)}
	for _, t := range taxes {
		lines = append(lines, m.T("offering/tax-on", "share", words.Quantity{Value: t.Percent, Unit: "%"}, "base", t.Base, "tax", t.Amount))
	}
	return lines
}

// stages are what falls due when, where they are known of the price that is shown.
func (m *maker) stages(gross money.Money) [][]sheet.Cell {
	var rows [][]sheet.Cell
	if o := m.snapshot(); o != nil {
		for _, s := range o.Stages {
			rows = append(rows, sheet.Row(capital(m.Words.Given(s.Name)), m.Show(m.ofAmount(s.Amount))))
		}
		return rows
	}
	if m.Client || m.Plan.Price.Gross != gross {
		return nil
	}
	for _, s := range m.Plan.Price.Stages {
		rows = append(rows, sheet.Row(capital(m.Words.Given(s.Name)), m.Show(s.Amount)))
	}
	return rows
}

// large is the only large figure of the sheet.
func (m *maker) large(text string) sheet.Block {
	const size = 8.5
	return sheet.Fitted(func(width float64) []sheet.Block {
		fit := size * min(1, width/sheet.Width(sheet.Bold, size, text))
		return []sheet.Block{sheet.Piece{Height: 12, Draw: func(p sheet.Pen) {
			p.Text(0, 9.5, sheet.Type{Size: fit, Face: sheet.Bold, Class: "price"}, text)
		}}}
	})
}

// ofAmount is an amount of the offer as money.
func (m *maker) ofAmount(a design.Amount) money.Money {
	return a.In(m.Doc.Offer.Currency)
}

func (m *maker) selling() design.SellingBook {
	if m.Selling == nil {
		return engine.ExampleSelling()
	}
	return *m.Selling
}

func (m *maker) locale() string { return m.Words.MoneyLocale() }

// isStop reports whether a watch-out is a Stop as things are.
func isStop(w check.WatchOut) bool { return w.Level == check.Stop }

// openQuestions are what has to be answered before the price is firm, and every Stop that
// stands: nobody signs for what cannot be hung.
func (m *maker) openQuestions() []string {
	var all []string
	d := m.Doc.Design
	if !d.Work.Survey && !d.Work.OwnBuild {
		all = append(all, m.T("offering/no-survey"))
	}
	if d.Room.Public && m.Job.Record.Asked.Fire == "" {
		all = append(all, m.T("label/record.asked.fire"))
	}
	for _, w := range d.Walls {
		if w.Kind == "unknown" {
			all = append(all, m.T("offering/wall-unknown"))
			break
		}
	}
	for _, w := range m.Plan.WatchOuts { // those of the workshop's money are private, and not here
		if isStop(w) {
			all = append(all, m.Words.Say(w.Code, w.Args))
		}
	}
	return all
}
