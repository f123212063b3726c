package engine_test

import (
	"strings"
	"testing"

	"blockfield/engine"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// scoped is the school's job with another scope.
func scoped(t *testing.T, scope design.Scope) design.Document {
	t.Helper()
	doc := design.Default()
	doc.Design = designtest.Job(t, "s4")
	edits := map[design.Scope]string{
		design.HungScope:      "work.hung = yes",
		design.DeliveredScope: "work.hung = no",
		design.CollectedScope: "work.hung = no\nwork.delivered = no",
		design.KitScope:       "work.supply = kit\nwork.delivered = no",
		design.PlanScope:      "work.supply = plan",
	}[scope]
	return edit(t, doc, edits)
}

// Each scope takes some of the tasks and goods of the one before it, and costs no more.
func TestScopesOfSupply(t *testing.T) {
	want := map[design.Scope]struct{ has, lacks []string }{
		design.HungScope:      {[]string{"a5", "c3", "e4", "g2", "h2", "i2", "j5"}, nil},
		design.DeliveredScope: {[]string{"a5", "c3", "e4", "g2", "h2", "i2"}, []string{"j1", "j5"}},
		design.CollectedScope: {[]string{"a5", "c3", "e4", "g2", "h2", "i2"}, []string{"j1", "j5"}},
		design.KitScope:       {[]string{"a5", "b1", "c1", "c2", "c3", "c4", "d1", "d2", "d3", "i1", "i2", "k1"}, []string{"e1", "e4", "f1", "g1", "g2", "h1", "h2", "j1", "j5"}},
		design.PlanScope:      {[]string{"a1", "a3", "a4", "a6"}, []string{"a5", "b1", "c1", "c3", "e4", "i2", "k1", "j1"}},
	}
	goods := map[design.Scope][]string{
		design.KitScope:  {"line/block-stock", "line/abrasives", "line/packing"},
		design.PlanScope: nil,
	}
	var before engine.Result
	for i, scope := range design.Scopes() {
		doc := scoped(t, scope)
		require.Equal(t, scope, doc.Design.Work.Scope())
		r := plan(t, doc.Design)
		tasks := map[string]bool{}
		for _, task := range r.Bill.Tasks {
			tasks[task.ID] = true
		}
		for _, id := range want[scope].has {
			assert.True(t, tasks[id], "%s has %s", scope, id)
		}
		for _, id := range want[scope].lacks {
			assert.False(t, tasks[id], "%s has no %s", scope, id)
		}
		if lines, ok := goods[scope]; ok {
			var got []string
			for _, l := range r.Price.Lines {
				if l.Role == cost.Material {
					got = append(got, l.Key)
				}
			}
			assert.Equal(t, lines, got, scope)
		}
		if i > 0 {
			assert.LessOrEqual(t, r.Price.Net.Minor, before.Price.Net.Minor, "%s costs no more than what holds it", scope)
		}
		caution := map[design.Scope]string{
			design.DeliveredScope: "supply/by-others", design.CollectedScope: "supply/by-others",
			design.KitScope: "supply/kit", design.PlanScope: "supply/plan",
		}[scope]
		for _, code := range []string{"supply/by-others", "supply/kit", "supply/plan"} {
			assert.Equal(t, code == caution, strings.Contains(strings.Join(codes(r.WatchOuts), " "), code), "%s: %s", scope, code)
		}
		_, _, err := engine.Quote(doc.Design, r, engine.ExampleSelling())
		if scope == design.KitScope || scope == design.PlanScope {
			require.ErrorIs(t, err, engine.ErrNotQuoted)
			assert.Empty(t, engine.QuoteLevers(edit(t, doc, "money.budget = 10"), r, engine.NewPlanner(design.DefaultBook()), engine.ExampleSelling()))
		} else {
			require.NoError(t, err)
		}
		before = r
	}
}

// What is in a price and what is not follow from the scope.
func TestWhatIsInAndOut(t *testing.T) {
	said := func(scope design.Scope) (in, out string) {
		doc := scoped(t, scope)
		for _, p := range engine.Included(doc.Design, plan(t, doc.Design)) {
			in += english().Say(p.Key, p.Args) + "; "
		}
		for _, p := range engine.Excluded(doc.Design) {
			out += english().Say(p.Key, p.Args) + "; "
		}
		return in, out
	}
	in, out := said(design.HungScope)
	assert.Contains(t, in, "glued")
	assert.Contains(t, in, "hanging on the wall")
	assert.NotContains(t, out, "hanging")
	in, out = said(design.CollectedScope)
	assert.NotContains(t, in, "delivery")
	assert.Contains(t, out, "delivery")
	assert.Contains(t, out, "hanging on the wall")
	in, out = said(design.KitScope)
	assert.Contains(t, in, "cut, sanded and sorted by height")
	assert.NotContains(t, in, "frame")
	assert.Contains(t, out, "backer, frame, glue")
	in, out = said(design.PlanScope)
	assert.Contains(t, in, "the plan")
	assert.Contains(t, out, "the plan is all")
}

// An edit never ends with a kit that is hung or a plan that is delivered; a file that says
// so is refused.
func TestScopesBringAlong(t *testing.T) {
	work := func(edits string) design.Work { return edit(t, design.Default(), edits).Design.Work }
	assert.Equal(t, design.KitScope, work("work.supply = kit").Scope())
	assert.True(t, work("work.supply = kit").Delivered)
	assert.False(t, work("work.supply = plan").Delivered)
	assert.Equal(t, design.HungScope, work("work.supply = plan\nwork.hung = yes").Scope())
	assert.Equal(t, design.DeliveredScope, work("work.supply = plan\nwork.delivered = yes").Scope())
	assert.Equal(t, design.KitScope, work("work.supply = kit\nwork.delivered = no\nwork.delivered = yes").Scope())
	for _, change := range [][2]string{
		{`"survey": true,`, `"survey": true, "supply": "kit",`},
		{`"delivered": true,`, `"delivered": true, "supply": "plan",`},
	} {
		text := strings.Replace(string(design.Encode(design.Default())), change[0], change[1], 1)
		_, err := design.Decode([]byte(text))
		assert.ErrorContains(t, err, "design.work.hung")
	}
	// The usual scope is not written, so that codes of designs stay what they were.
	assert.NotContains(t, string(design.Encode(design.Default())), "supply")
	text := strings.Replace(string(design.Encode(design.Default())), `"survey": true,`, `"survey": true, "supply": "panels",`, 1)
	doc, err := design.Decode([]byte(text))
	require.NoError(t, err)
	assert.Equal(t, design.Default().Design, doc.Design)
}

// A sample is a line that is sold at the price of the book.
func TestASampleIsSold(t *testing.T) {
	doc, err := engine.Sample(design.Default(), design.DefaultBook(), "Sample")
	require.NoError(t, err)
	assert.Equal(t, []design.Extra{{Name: "Sample", Amount: design.Units(85), Role: design.ExtraSold}}, doc.Design.Money.Extras)
	was, is := plan(t, design.Default().Design).Price, plan(t, doc.Design).Price
	assert.Equal(t, "85.00", is.Net.Sub(was.Net).Plain())
	assert.Equal(t, "102.00", is.Gross.Sub(was.Gross).Plain())
	none := design.DefaultBook()
	none.Policy.Sample = 0
	_, err = engine.Sample(design.Default(), none, "Sample")
	assert.Error(t, err)
}
