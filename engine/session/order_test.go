package session_test

import (
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

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

	changed := html(set(t, s, group+".wood", "oak"))
	assert.Contains(t, changed, "Price the change on a slip")
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

	papers := html(ask(t, s, session.Request{Op: "section", Name: "papers"}))
	assert.Contains(t, papers, `data-path="order"`)
	assert.Contains(t, html(today(session.Request{Name: "papers-set", Path: "order"})), "Invoice 17")

	// Nobody else reads of it, and no file or link holds it.
	for _, reading := range []string{"client", "builder"} {
		shown := read(t, s, reading, "money")
		assert.NotContains(t, shown, "Change 1:")
		assert.NotContains(t, shown, "record.calls")
	}
	file := ask(t, s, session.Request{Op: "save"}).File.Text
	assert.NotContains(t, file, "slips")
	assert.NotContains(t, file, "calls")
	saved := ask(t, s, session.Request{Op: "save", Name: "record"}).File.Text
	rec, err := design.DecodeRecord([]byte(saved))
	require.NoError(t, err)
	assert.Len(t, rec.Calls, 3)
}
