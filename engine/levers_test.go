package engine_test

import (
	"fmt"
	"maps"
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func over(t *testing.T, name, budget string) (design.Document, engine.Result) {
	t.Helper()
	doc := design.Default()
	doc.Design = designtest.Job(t, name)
	doc = edit(t, doc, "money.budget = "+budget)
	return doc, plan(t, doc.Design)
}

func leverKeys(all []engine.Lever) []string {
	var keys []string
	for _, l := range all {
		keys = append(keys, l.Key)
	}
	return keys
}

// The second reference panel with a budget far below its price. What one change
// saves is worked out in the trade's own table for it, before tax and in whole
// tens: blocks of 44 mm 380 and 5.5 hours; spruce blocks 510. The frame goes
// along to spruce: 0.01568 m³ of board × (5600 − 2400) × 1.12 × 1.07 / 0.82 is
// 73 more. No frame 320, hung by the client 330 and a coat less 100 are weaker
// than a tenth off each side, which stands in no table.
func TestStrongestLeversOfTheSecondReferencePanel(t *testing.T) {
	doc, r := over(t, "p2", "1000")
	all := engine.Levers(doc, r, engine.NewPlanner(design.DefaultBook()))
	require.Equal(t, []string{"larger-blocks", "another-wood", "smaller"}, leverKeys(all))
	assert.InDelta(t, (510+73)*120, all[1].Saves.Minor, 10*120, "a step of ten, with 20 % tax")
	assert.InDelta(t, 0, all[1].Hours, 0.001, "no hours: the lighter panel has as many screws in the wall")
	middling := plan(t, edit(t, doc, group+"block.size = 44 mm").Design)
	assert.InDelta(t, 380*120, r.Price.Gross.Sub(middling.Price.Gross).Minor, 10*120, "a step of ten: a lighter panel has fewer screws in its cleat")
	assert.InDelta(t, 5.5, r.Bill.Hours.Total.Typical-middling.Bill.Hours.Total.Typical, 0.05)
}

// No size of block saves more than the lever of larger blocks, or than the weakest lever
// where that is none of the three; and no lever brings a Stop.
func TestLeversAreTheStrongest(t *testing.T) {
	for _, name := range []string{"s2", "s4", "s7", "p2"} {
		doc, r := over(t, name, "10")
		all := engine.Levers(doc, r, engine.NewPlanner(design.DefaultBook()))
		require.Len(t, all, 3)
		blocks := all[2].Saves // of larger ones, or else of the weakest that is shown
		for _, l := range all {
			if l.Key == "larger-blocks" {
				blocks = l.Saves
			}
		}
		for _, size := range engine.BlockSizes(length.InMM) {
			if size.Cmp(doc.Design.Walls[0].Groups[0].Block.Size) <= 0 {
				continue
			}
			text := ""
			for w, wall := range doc.Design.Walls {
				for g := range wall.Groups {
					text += fmt.Sprintf("walls[%d].groups[%d].block.size = %s\n", w, g, size)
				}
			}
			next := engine.KeepPlaced(doc, r, edit(t, doc, text))
			other := plan(t, next.Design)
			if maps.Equal(stops(other), stops(r)) {
				assert.GreaterOrEqual(t, blocks.Minor, r.Price.Gross.Sub(other.Price.Gross).Minor, "%s %s", name, size)
			}
		}
		for _, l := range all {
			next, ok := engine.Pull(doc, all, l.Key)
			require.True(t, ok)
			for code := range stops(plan(t, engine.KeepPlaced(doc, r, next).Design)) {
				assert.True(t, stops(r)[code], "%s %s: %s is new", name, l.Key, code)
			}
		}
	}
}

// What a lever says that it saves is what the price shows once it is pulled,
// in every job that is sold or built at home.
func TestALeverSavesWhatItSays(t *testing.T) {
	pulled := 0
	for _, name := range []string{"s1", "s4", "s5", "s7", "s8", "p1", "p2"} {
		doc, r := over(t, name, "10")
		all := engine.Levers(doc, r, engine.NewPlanner(design.DefaultBook()))
		if !r.Price.Sold {
			assert.Empty(t, all, "no price, nothing to bring down")
			all = engine.GoodsLevers(doc, r, engine.NewPlanner(design.DefaultBook()))
		}
		for _, l := range all {
			next, ok := engine.Pull(doc, []engine.Lever{l}, l.Key)
			require.True(t, ok)
			after := plan(t, engine.KeepPlaced(doc, r, next).Design) // as an edit is
			was, is := r.Price.Gross, after.Price.Gross
			if !r.Price.Sold {
				was, is = r.Price.Materials, after.Price.Materials
			}
			assert.Equal(t, was.Sub(is), l.Saves, "%s %s", name, l.Key)
			assert.InDelta(t, r.Bill.Hours.Total.Typical-after.Bill.Hours.Total.Typical, l.Hours, 1e-9)
			assert.False(t, l.Enough, "nothing comes down to 10")
			pulled++
		}
	}
	assert.Equal(t, 7*3, pulled)
}

// A softer wood than the one chosen says that it dents; an equally soft one has nothing to
// say.
func TestASofterWoodDents(t *testing.T) {
	for name, want := range map[string]bool{"s4": true, "p2": true, "s3": false} { // beech, beech, and a soft one
		doc, r := over(t, name, "10")
		found := false
		for _, l := range engine.Levers(doc, r, engine.NewPlanner(design.DefaultBook())) {
			found = found || l.Dents
			if l.Dents {
				assert.Equal(t, "another-wood", l.Key)
			}
		}
		assert.Equal(t, want, found, name)
	}
	doc, r := over(t, "s4", "5000")
	buys, err := engine.FromBudget(doc, r, client())
	require.NoError(t, err)
	for _, c := range buys.Found {
		assert.Equal(t, c.Plan.Groups[0].Design.Wood != "beech" && c.Key == "large", c.Dents, c.Key)
	}
}

// Either side of the budget.
func TestLeversOnlyOverTheBudget(t *testing.T) {
	doc, r := over(t, "s1", "1560") // its price, with tax
	require.Equal(t, "1560.00", r.Price.Gross.Plain())
	assert.Empty(t, engine.Levers(doc, r, engine.NewPlanner(design.DefaultBook())))
	doc, r = over(t, "s1", "1559.99")
	all := engine.Levers(doc, r, engine.NewPlanner(design.DefaultBook()))
	require.Len(t, all, 3)
	for i, l := range all {
		assert.True(t, l.Enough, "%s: a cent is soon saved", l.Key)
		if i > 0 {
			assert.LessOrEqual(t, l.Saves.Minor, all[i-1].Saves.Minor, "the strongest first")
		}
	}
	doc, r = over(t, "s1", "0")
	assert.Empty(t, engine.Levers(doc, r, engine.NewPlanner(design.DefaultBook())), "no budget was said")
}

// What is built at home has no price that a client could be told to bring down.
func TestNoQuoteLeversForAHomeBuild(t *testing.T) {
	doc, r := over(t, "s8", "10")
	assert.Empty(t, engine.QuoteLevers(doc, r, engine.NewPlanner(design.DefaultBook()), engine.ExampleSelling()))
	doc = edit(t, doc, "work.ownBuild = no")
	assert.NotEmpty(t, engine.QuoteLevers(doc, plan(t, doc.Design), engine.NewPlanner(design.DefaultBook()), engine.ExampleSelling()))
}

// A client's levers know nothing of the private book: the same selling book
// gives the same ones.
func TestClientLeversNeedNoPrivateBook(t *testing.T) {
	doc, r := over(t, "s5", "3000")
	book := selling(t, design.DefaultBook())
	dear := design.DefaultBook()
	dear.Rates.Shop, dear.Woods[1].SquaresPerM3 = design.Units(90), design.Units(20_000)
	with, err := engine.Plan(doc.Design, dear)
	require.NoError(t, err)
	one := engine.QuoteLevers(doc, r, engine.NewPlanner(design.DefaultBook()), book)
	two := engine.QuoteLevers(doc, with, engine.NewPlanner(dear), book)
	require.NotEmpty(t, one)
	require.Equal(t, leverKeys(one), leverKeys(two))
	for i := range one {
		assert.Equal(t, one[i].Saves, two[i].Saves)
		assert.Equal(t, one[i].Enough, two[i].Enough)
		assert.Zero(t, one[i].Saves.Minor%500, "%s: rounded as a range is", one[i].Saves.Plain())
	}
}
