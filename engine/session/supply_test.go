package session_test

import (
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A maker says how far the workshop goes, adds lines, and the page follows; a client of a
// kit reads that the workshop names the price.
func TestTermsOfAJob(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	money := read(t, s, "maker", "money")
	assert.Equal(t, 5, strings.Count(money, `name="work.supply"`))
	assert.Contains(t, money, "the workshop answers for the rates")
	hung := s.Plan().Price
	res := ask(t, s, session.Request{Op: "set", Path: "work.supply", Value: "panels", Also: []session.Value{
		{Path: "work.delivered", Value: "no"}, {Path: "work.hung", Value: "no"},
	}})
	require.True(t, res.OK, "%v", res.Faults)
	assert.Less(t, s.Plan().Price.Net.Minor, hung.Net.Minor)
	assert.Contains(t, html(res), "Others hang this")
	ask(t, s, session.Request{Op: "undo"})
	assert.Equal(t, hung, s.Plan().Price, "one step")

	require.True(t, set(t, s, "work.supply", "kit").OK)
	assert.Contains(t, html(ask(t, s, session.Request{Op: "hello"})), `name="work.delivered"`)
	client := read(t, s, "client", "money")
	assert.Contains(t, client, "The workshop names the price of this")
	assert.NotContains(t, client, `name="work.supply"`)
	read(t, s, "maker", "money")

	act(t, s, session.Request{Name: "sample"})
	act(t, s, session.Request{Name: "add", Path: "money.extras"})
	require.True(t, set(t, s, "money.extras[1].name", "Shelf").OK)
	require.True(t, set(t, s, "money.extras[1].amount", "250").OK)
	require.True(t, set(t, s, "money.extras[1].role", "sold").OK)
	require.True(t, set(t, s, "money.extras[1].ownTax", "yes").OK)
	shown := html(set(t, s, "money.extras[1].tax", "7"))
	assert.Contains(t, shown, "Price of the panels")
	assert.Contains(t, shown, "Tax: 7 % of €250.00")
	assert.Contains(t, shown, "Sample of wood and finish")
	act(t, s, session.Request{Name: "remove", Path: "money.extras[0]"})
	require.Len(t, s.Document().Design.Money.Extras, 1)

	res = set(t, s, "money.discount", "11")
	assert.Contains(t, html(res), "may be given without the owner")
	refused := set(t, s, "money.discount", "26")
	require.False(t, refused.OK)
	assert.Contains(t, refused.Faults[0].Message, "25")
}

// An offer waits for the owner where the discount is beyond the limit.
func TestADiscountBeyondItsLimitHoldsTheOffer(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	read(t, s, "maker", "money")
	require.True(t, set(t, s, "money.discount", "11").OK)
	offer := session.Request{Op: "act", Name: "make-offer", Value: "30", Today: "2026-06-30"}
	assert.False(t, ask(t, s, offer).OK)
	act(t, s, session.Request{Name: "sign", Path: "price/discount-limit money.discount"})
	require.True(t, set(t, s, "record.signOffs[0].name", "A. Owner").OK)
	require.True(t, set(t, s, "record.signOffs[0].reason", "a school").OK)
	assert.True(t, ask(t, s, offer).OK, "the owner stands for it")
	require.NotNil(t, s.Document().Offer)
}
