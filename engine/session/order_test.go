package session_test

import (
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Undo takes back what was noted of the order, an entry at a time and in its turn with the
// edits of the design; redo brings it back. What was counted since stays.
func TestUndoOfTheOrder(t *testing.T) {
	s := fresh()
	act := func(req session.Request) session.Response {
		t.Helper()
		req.Today = "2026-03-02"
		res := ask(t, s, req)
		require.True(t, res.OK, "%v", res.Faults)
		return res
	}
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	read(t, s, "maker", "money")
	act(session.Request{Op: "act", Name: "make-offer", Value: "30"})
	act(session.Request{Op: "act", Name: "lock"})
	set(t, s, group+".wood", "oak")
	act(session.Request{Op: "act", Name: "slip"})
	set(t, s, "record.slips[0].reason", "oak after all")
	act(session.Request{Op: "act", Name: "accept-slip"})
	act(session.Request{Op: "act", Name: "count", Path: "0 10 0"})

	back := act(session.Request{Op: "undo"})
	assert.Contains(t, back.Announce, "the last entry of the order")
	require.NotNil(t, back.Record, "the page has to keep it")
	rec := kept(t, back)
	require.Len(t, rec.Slips, 1)
	assert.Empty(t, rec.Slips[0].Accepted)
	assert.Equal(t, "oak after all", rec.Slips[0].Reason)
	assert.Equal(t, 10, rec.Bins[0].Cut, "what was cut stays cut")
	rec = kept(t, act(session.Request{Op: "redo"}))
	assert.Equal(t, "2026-03-02", rec.Slips[0].Accepted)

	act(session.Request{Op: "undo"}) // accepted
	act(session.Request{Op: "undo"}) // what was typed
	rec = kept(t, act(session.Request{Op: "undo"}))
	assert.Empty(t, rec.Slips)
	assert.NotNil(t, rec.Lock)
	assert.Equal(t, "Undone.", act(session.Request{Op: "undo"}).Announce)
	assert.Equal(t, "poplar", s.Document().Design.Walls[0].Groups[0].Wood)
	rec = kept(t, act(session.Request{Op: "undo"}))
	assert.Nil(t, rec.Lock)
	assert.Empty(t, rec.States)
}

// A change that cannot be offered is priced, but cannot be accepted; the page says why in
// the place of the button.
func TestSlipOfWhatCannotBeOffered(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	read(t, s, "maker", "money")
	act := func(name, value string) session.Response {
		return ask(t, s, session.Request{Op: "act", Name: name, Value: value, Today: "2026-03-02"})
	}
	require.True(t, set(t, s, group+".place.left", "3000 mm").OK)
	held := html(ask(t, s, session.Request{Op: "section", Name: "money", Today: "2026-03-02"}))
	assert.Contains(t, held, ` the offer back. <a href="#f-walls-0-groups-0-place-left" data-field="walls[0].groups[0].place.left" data-section="wall" class="to-field">Show the Stop</a>`)
	require.True(t, ask(t, s, session.Request{Op: "undo"}).OK)
	require.True(t, act("make-offer", "30").OK)
	require.True(t, act("lock", "").OK)
	require.True(t, ask(t, s, session.Request{Op: "act", Name: "add", Path: "walls[0].obstacles"}).OK)
	for path, value := range map[string]string{"x": "1500 mm", "y": "600 mm", "kind": "sprinkler"} {
		require.True(t, set(t, s, "walls[0].obstacles[0]."+path, value).OK)
	}
	shown := html(act("slip", ""))
	assert.Contains(t, shown, "Change 1:")
	assert.Contains(t, shown, "may be priced, but not accepted: 1 Stop keeps the offer of this design back")
	assert.NotContains(t, shown, `data-act="accept-slip"`)
	res := act("accept-slip", "")
	require.False(t, res.OK)
	assert.Contains(t, res.Faults[0].Message, "may be priced, but not accepted")
}

// From the offer to the last invoice: a look is locked, changed on a slip and invoiced; it
// all stays in the record.
func TestAnOrder(t *testing.T) {
	s := fresh()
	today := func(req session.Request) session.Response {
		t.Helper()
		req.Op, req.Today = "act", "2026-03-02"
		res := ask(t, s, req)
		require.True(t, res.OK, "%v", res.Faults)
		return res
	}
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	assert.Contains(t, read(t, s, "maker", "money"), "make the offer first")
	res := ask(t, s, session.Request{Op: "act", Name: "lock", Today: "2026-03-02"})
	require.False(t, res.OK)
	assert.Contains(t, res.Faults[0].Message, "There is no offer of this very design")
	today(session.Request{Name: "make-offer", Value: "30"})
	res = today(session.Request{Name: "lock"})
	require.NotNil(t, res.Record)
	assert.Contains(t, *res.Record, `"lock":`)
	assert.Contains(t, html(res), "Locked: revision "+s.Plan().Revision)

	assert.Contains(t, html(ask(t, s, session.Request{Op: "section", Name: "money"})), "Agreed, net")
	changed := html(set(t, s, group+".wood", "oak"))
	assert.Contains(t, changed, "Price the change on a slip")
	assert.Contains(t, changed, "Net, before the change", "what was agreed on is not for what is shown beside it")
	assert.NotContains(t, changed, "Agreed, net")
	assert.Contains(t, html(ask(t, s, session.Request{Op: "section", Name: "money"})), "<b>"+s.Plan().Price.Gross.Format("en")+"</b></p><p>With tax.")
	shown := html(today(session.Request{Name: "slip"}))
	assert.Contains(t, shown, "Change 1:")
	require.True(t, set(t, s, "record.slips[0].reason", "oak after all").OK)
	assert.False(t, set(t, s, "record.slips[0].net", "1").OK, "what was priced is not typed")
	shown = html(today(session.Request{Name: "accept-slip"}))
	assert.Contains(t, shown, "Accepted on 2026-03-02")
	assert.NotContains(t, shown, "Price the change on a slip")
	for range 3 {
		today(session.Request{Name: "call-stage"})
	}
	require.True(t, set(t, s, "record.calls[0].number", "17").OK)
	require.True(t, set(t, s, "record.calls[0].paid", "2026-03-20").OK)
	assert.False(t, ask(t, s, session.Request{Op: "act", Name: "call-stage", Today: "2026-03-02"}).OK, "all are invoiced")
	today(session.Request{Name: "state", Path: "stock ordered"})
	assert.False(t, ask(t, s, session.Request{Op: "act", Name: "state", Path: "sold", Today: "2026-03-02"}).OK)
	shown = html(ask(t, s, session.Request{Op: "section", Name: "money"}))
	assert.Contains(t, shown, "Stock ordered")
	assert.Contains(t, shown, "€0.00 still to be invoiced")
	assert.Contains(t, shown, "Not due yet: it falls due with the state “Ready”, which nobody has noted.")
	assert.Contains(t, shown, "Not due yet: it falls due with the state “Hung”")
	assert.NotContains(t, shown, "with the state “Agreed”")
	assert.Equal(t, 2, strings.Count(shown, "has no number yet"))

	papers := html(ask(t, s, session.Request{Op: "section", Name: "papers"}))
	assert.Contains(t, papers, `data-path="order"`)
	assert.Contains(t, html(today(session.Request{Name: "papers-set", Path: "order"})), "Invoice 17")

	// Nobody else may change it, and no file or link holds it.
	for _, reading := range []string{"client", "builder"} {
		shown := read(t, s, reading, "money")
		assert.NotContains(t, shown, "Change 1:")
		assert.NotContains(t, shown, "record.calls")
	}
	assert.NotContains(t, read(t, s, "builder", "money"), "Agreed", "a home builder buys goods")
	file := ask(t, s, session.Request{Op: "save"}).File.Text
	assert.NotContains(t, file, "slips")
	assert.NotContains(t, file, "calls")
	saved := ask(t, s, session.Request{Op: "save", Name: "record"}).File.Text
	rec, err := design.DecodeRecord([]byte(saved))
	require.NoError(t, err)
	assert.Len(t, rec.Calls, 3)
}

// A slip on paper says what was before and what is after, and both totals.
func TestSlipOnPaper(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	read(t, s, "maker", "money")
	act := func(name, value string) session.Response {
		res := ask(t, s, session.Request{Op: "act", Name: name, Value: value, Today: "2026-03-02"})
		require.True(t, res.OK, "%v", res.Faults)
		return res
	}
	set(t, s, group+".density", "430")
	act("make-offer", "30")
	act("lock", "")
	before := s.Plan().Price.Gross.Format("en")
	set(t, s, group+".wood", "oak")
	set(t, s, group+".density", "0")
	act("slip", "")
	ask(t, s, session.Request{Op: "section", Name: "papers"})
	text := plain(choose(t, s, "papers-set", "order"))
	for _, want := range []string{"Wood", "Poplar", "Oak", "430 kg/m³", "as in the tables", before, s.Plan().Revision} {
		assert.Contains(t, text, want)
	}
}

// Once a change is accepted the agreed sum is what the page states, to maker and client:
// headline, payments and the line under the picture. What the design of now would cost by
// itself stands beside it, for the maker alone; no range, no offer and no word of a change
// is left.
func TestWhatWasAgreedIsStated(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	read(t, s, "maker", "money")
	act := func(name, value string) session.Response {
		t.Helper()
		res := ask(t, s, session.Request{Op: "act", Name: name, Value: value, Today: "2026-03-02"})
		require.True(t, res.OK, "%v", res.Faults)
		return res
	}
	money := func(reading string) string {
		t.Helper()
		return strings.ReplaceAll(plain(read(t, s, reading, "money")), "&#43;", "+")
	}
	act("make-offer", "30")
	offered, locked := s.Plan().Price.Gross, s.Plan().Revision
	act("lock", "")
	whole := html(ask(t, s, session.Request{Op: "section", Name: "money"}))
	assert.NotContains(t, whole, `data-act="make-offer"`)
	assert.NotContains(t, whole, `data-act="withdraw-offer"`)
	for _, name := range []string{"make-offer", "withdraw-offer"} {
		res := ask(t, s, session.Request{Op: "act", Name: name, Value: "30", Today: "2026-03-02"})
		require.False(t, res.OK, name)
		assert.Contains(t, res.Faults[0].Message, "A change goes by a slip")
	}
	require.NotNil(t, s.Document().Offer)

	require.True(t, set(t, s, group+".wood", "oak").OK)
	text := money("client")
	assert.Contains(t, text, offered.Format("en"))
	assert.Contains(t, text, "A change holds once its slip is accepted.")
	read(t, s, "client", "papers")
	unagreed := plain(choose(t, s, "papers-set", "offer"))
	for _, want := range []string{"A change, not agreed on", "Agreed for revision " + locked, offered.Format("en")} {
		assert.Contains(t, unagreed, want)
	}
	assert.NotContains(t, unagreed, "Order confirmation")
	read(t, s, "maker", "money")
	act("slip", "")
	require.True(t, set(t, s, "record.slips[0].reason", "Oak after all.").OK)
	res := act("accept-slip", "")
	slip := kept(t, res).Slips[0]
	now := s.Plan().Price.Gross
	require.NotZero(t, slip.Fee)
	more := slip.Gross.In(now.Currency)
	agreed := offered.Add(more)
	require.NotEqual(t, now, agreed, "the fee is no part of what the design costs")

	text = money("maker")
	for _, want := range []string{
		agreed.Format("en"), "Change 1, accepted on 2026-03-02: +" + more.Format("en"), "Oak after all.",
		"The design of now would cost " + now.Format("en") + " by itself (−" + agreed.Sub(now).Format("en") + ")",
		"+" + (slip.Net - slip.Fee).In(now.Currency).Format("en") + " for the look and +" + slip.Fee.In(now.Currency).Format("en") + " for the change itself",
	} {
		assert.Contains(t, text, want)
	}
	for _, not := range []string{"The design has changed since it was offered", "What brings the price down", "The client sees"} {
		assert.NotContains(t, text, not)
	}
	var due []string
	rec := kept(t, res)
	for _, st := range rec.Lock.Stages {
		due = append(due, agreed.MulDiv(int64(st.Percent), 100, 0).Format("en"))
	}
	assert.Contains(t, text, due[0])

	client := money("client")
	for _, want := range []string{agreed.Format("en"), offered.Format("en"), "Change 1, accepted on 2026-03-02: +" + more.Format("en"), due[0]} {
		assert.Contains(t, client, want)
	}
	low, high := s.Plan().Price.Low, s.Plan().Price.High
	for _, not := range []string{"Offered at", "has changed since", "by itself", now.Format("en"), " – ", low.Whole("en"), high.Whole("en")} {
		assert.NotContains(t, client, not)
	}
	read(t, s, "maker", "money")
	hidden := plain(html(act("hide-figures", "")))
	assert.Contains(t, hidden, agreed.Format("en"))
	assert.Contains(t, hidden, "Agreed, with tax")
	assert.NotContains(t, hidden, "by itself")
	act("hide-figures", "")

	// The client's paper says the same, whoever prints it.
	for _, reading := range []string{"maker", "client"} {
		read(t, s, reading, "papers")
		paper := plain(choose(t, s, "papers-set", "offer"))
		for _, want := range []string{"Order confirmation", agreed.Format("en"), offered.Format("en"), "Change 1, accepted on 2026-03-02", due[0]} {
			assert.Contains(t, paper, want, reading)
		}
		for _, not := range []string{"Indication", "Not an offer yet", now.Format("en")} {
			assert.NotContains(t, paper, not, reading)
		}
	}

	// So does whoever gets a link, a file or an answer, years later and without the record.
	link := ask(t, s, session.Request{Op: "link"}).Link
	file := ask(t, s, session.Request{Op: "save"}).File.Text
	letter := ask(t, s, session.Request{Op: "save", Name: "letter"}).File.Text
	assert.Empty(t, s.Document().Offer.Agreed, "what is kept here is the offer, beside its record")
	for name, req := range map[string]session.Request{
		"link": {Op: "open", Link: link, From: "link"}, "file": {Op: "open", Text: file, From: "file"}, "letter": {Op: "open", Text: letter, From: "file"},
	} {
		client := fresh()
		req.Today = "2031-01-01"
		opened := ask(t, client, req)
		require.True(t, opened.OK, "%s: %v", name, opened.Faults)
		text := plain(read(t, client, "client", "money"))
		assert.Contains(t, text, "Agreed at "+agreed.Format("en")+" with tax, on 2026-03-02.", name)
		assert.Contains(t, text, due[0], name)
		for _, not := range []string{" – ", "has changed since", "The offer held until", "Example figures"} {
			assert.NotContains(t, text, not, name)
		}
		read(t, client, "client", "papers")
		paper := plain(choose(t, client, "papers-set", "offer"))
		for _, want := range []string{"Order confirmation", agreed.Format("en"), "Agreed on 2026-03-02", due[0]} {
			assert.Contains(t, paper, want, name)
		}
		for _, not := range []string{"Indication", "Valid until", "Not an offer yet", "Ordered by offer"} {
			assert.NotContains(t, paper, not, name)
		}
		require.True(t, set(t, client, group+".wood", "beech").OK)
		assert.Contains(t, plain(read(t, client, "client", "money")), "revision "+s.Plan().Revision+" is ordered", name)
	}
}

// No end of a line parts a date from its year, or a difference from its sign.
func TestDatesAndSumsStayWhole(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	read(t, s, "maker", "money")
	for _, name := range []string{"make-offer", "lock"} {
		require.True(t, ask(t, s, session.Request{Op: "act", Name: name, Value: "30", Today: "2026-03-02"}).OK)
	}
	set(t, s, group+".wood", "oak")
	res := ask(t, s, session.Request{Op: "act", Name: "slip", Today: "2026-03-02"})
	var page strings.Builder
	for _, f := range res.Fragments {
		page.WriteString(f.HTML)
	}
	text := plain(page.String())
	assert.Contains(t, text, "2026\u2060-\u206003\u2060-\u206002")
	assert.NotRegexp(t, `\d{4}-\d\d-\d\d`, text)
	assert.Regexp(t, `[+−]\x{2060}[€$]`, strings.ReplaceAll(text, "&#43;", "+"))
	assert.NotRegexp(t, `[+−][€$]`, strings.ReplaceAll(text, "&#43;", "+"))
}
