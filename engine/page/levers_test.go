package page_test

import (
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// moneyText is the text of the price section of the booth over its budget, with
// the levers that its reader is shown.
func moneyText(t *testing.T, reading string, budget int64) (text string, shown []engine.Lever) {
	doc := scenarios(t)["s1.json"]
	doc.View.Reading = reading
	doc.Design.Money.Budget = design.Units(budget)
	in := input(t, doc, design.DefaultBook(), words.English(), page.Money)
	in.Levers = engine.Levers(doc, in.Plan, engine.NewPlanner(in.Book))
	if reading == page.Client {
		in.Levers = engine.QuoteLevers(doc, in.Plan, engine.NewPlanner(in.Book), engine.ExampleSelling())
	}
	for _, f := range page.Whole(in) {
		if f.Target == "section" {
			return said(t, f.HTML), in.Levers
		}
	}
	require.Fail(t, "no section")
	return "", nil
}

func TestLeversForTheMaker(t *testing.T) {
	text, shown := moneyText(t, page.Maker, 1000)
	require.Len(t, shown, 3)
	assert.Contains(t, text, "Over the budget of ¤1,000.")
	for _, l := range shown {
		assert.Contains(t, text, "Saves "+l.Saves.Format("en"), l.Key)
	}
	assert.Contains(t, text, "h less work.")
}

// A client reads round figures and no hours, which are the workshop's.
func TestLeversForTheClient(t *testing.T) {
	text, shown := moneyText(t, page.Client, 1500)
	require.Len(t, shown, 3)
	for _, l := range shown {
		assert.Contains(t, text, "Saves about "+l.Saves.Whole("en"), l.Key)
	}
	assert.Contains(t, text, "A budget of ¤1,500 may not be enough.")
	assert.NotContains(t, text, "less work")
}

// Either side of the lower end of the range: what is surely not enough is said so.
func TestABudgetBelowTheRange(t *testing.T) {
	for budget, want := range map[int64]string{
		1400: "A budget of ¤1,400 may not be enough.", 1399: "The price is above the budget of ¤1,399.",
	} {
		text, _ := moneyText(t, page.Client, budget)
		require.Contains(t, text, "¤1,400 – ")
		assert.Contains(t, text, want)
	}
}
