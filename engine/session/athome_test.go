package session_test

import (
	"strings"
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// opened is the money of an example job that a reader opens over the first design.
func opened(t testing.TB, job, reading string) (*session.Session, string) {
	t.Helper()
	s := fresh()
	require.True(t, set(t, s, "view.reading", reading).OK)
	require.True(t, openBook(t, s, designtest.Files(t)[job+".json"], "file").OK)
	return s, html(ask(t, s, session.Request{Op: "section", Name: "money"}))
}

// Nobody sells a panel that is built at home: a client and a maker read that, with
// a way to a shopping list and one to a price, and nothing of a budget, of levers
// or of terms; a home builder reads the list.
func TestMoneyOfAPanelBuiltAtHome(t *testing.T) {
	const atHome, budget, levers = "planned to be built at home", "udget", "brings the price down"
	for _, reading := range []string{"client", "maker"} {
		s, shown := opened(t, "s8", reading)
		assert.Equal(t, reading, s.Document().View.Reading)
		require.Contains(t, shown, atHome, reading)
		assert.Contains(t, shown, `data-set="view.reading" value="builder"`, reading)
		assert.NotContains(t, shown, budget, reading)
		assert.NotContains(t, shown, levers, reading)
		assert.NotContains(t, shown, "¤", reading)
		assert.NotContains(t, shown, "money.discount", reading)

		// The other way leads to a price, and to all that goes with it.
		require.Contains(t, shown, `data-set="work.ownBuild" value="no"`, reading)
		res := set(t, s, "work.ownBuild", "no")
		assert.Contains(t, res.Told, "Built by a workshop now", "hours, price and revision have changed with it")
		assert.Contains(t, res.Told, s.Plan().Revision)
		assert.Empty(t, set(t, s, "title", "Another").Told)
		priced := html(ask(t, s, session.Request{Op: "section", Name: "money"}))
		assert.NotContains(t, priced, atHome, reading)
		assert.Contains(t, priced, levers, "%s: 220 was to pay for the goods", reading)
		assert.Contains(t, priced, "¤", reading)
		assert.Equal(t, reading == "maker", s.Plan().Price.Sold && strings.Contains(priced, "money.discount"), "%s: the terms are there again", reading)
	}
	s, shown := opened(t, "s8", "builder")
	assert.Regexp(t, `A workshop would ask some ¤[\d,]+ – ¤[\d,]+ for the same, with tax, without delivery and hanging; example figures`, shown)
	low, high, err := engine.AtWorkshop(s.Document().Design, engine.NewPlanner(design.DefaultBook()), engine.ExampleSelling())
	require.NoError(t, err)
	assert.Contains(t, shown, low.Whole("en")+" – "+high.Whole("en"))
	assert.NotContains(t, shown, atHome)
	assert.Contains(t, shown, "¤205.15", "the goods of the worked job, and its strip")
	assert.Contains(t, shown, "money.budget")
	assert.NotContains(t, shown, levers, "220 is enough for them")
}

// Whoever looks for a price is told that there is none, when such a design is opened; and
// that the reading is another, where a job that was left in another one is opened again.
func TestOpeningSaysWhoBuildsAndReads(t *testing.T) {
	s := fresh()
	s8 := designtest.Files(t)["s8.json"]
	require.True(t, set(t, s, "view.reading", "maker").OK)
	assert.Contains(t, openBook(t, s, s8, "file").Told, "planned to be built at home")
	assert.Empty(t, openBook(t, s, designtest.Files(t)["s1.json"], "file").Told)
	assert.Contains(t, openBook(t, s, s8, "saved").Told, "read in that again: “I build it myself”")
	assert.Empty(t, openBook(t, s, s8, "saved").Told, "the same reading")
	assert.Empty(t, openBook(t, fresh(), s8, "saved").Told, "nothing was read before")
}

// A home builder who reads the design of a workshop gets a shopping list and
// nothing of the workshop's price.
func TestAWorkshopsDesignReadByAHomeBuilder(t *testing.T) {
	for _, job := range []string{"s1", "s3", "s5"} {
		s, shown := opened(t, job, "builder")
		price := s.Plan().Price
		require.True(t, price.Sold)
		assert.Contains(t, shown, price.Materials.Format("en"), job)
		for _, secret := range []string{price.Gross.Format("en"), price.Net.Format("en"), "this price", "brings the price down"} {
			assert.NotContains(t, shown, secret, job)
		}
	}
}
