package engine_test

import (
	"testing"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/money"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func maker() engine.Paying {
	return engine.Paying{Book: design.DefaultBook(), Selling: engine.ExampleSelling()}
}

func client() engine.Paying { p := maker(); p.Client = true; return p }

// stops are the codes of all Stops, as they stand when their gates are asked for.
func stops(r engine.Result) map[string]bool {
	all := map[string]bool{}
	for _, w := range r.AllWatchOuts() {
		if w.Asked().Level == check.Stop {
			all[w.Code] = true
		}
	}
	return all
}

// Every way that is proposed brings the job within its budget when it is gone, with no
// Stop that was not there; the money and the hours are those of a plan.
func TestWaysToBudget(t *testing.T) {
	for _, c := range []struct {
		job, budget string
		least       int // changes that are needed at least
	}{{"s2", "7000", 1}, {"s2", "5000", 3}, {"s4", "7000", 1}, {"s7", "15000", 1}, {"p2", "3300", 2}} {
		t.Run(c.job, func(t *testing.T) {
			doc := design.Default()
			doc.Design = designtest.Job(t, c.job)
			doc = edit(t, doc, "money.budget = "+c.budget)
			r := plan(t, doc.Design)
			require.Positive(t, r.Price.Gross.Cmp(cost.Budget(doc.Design.Money, r.Price.Currency)), "over its budget: %s", r.Price.Gross.Plain())
			ways := engine.WaysToBudget(doc, r, maker()).Found
			require.NotEmpty(t, ways)
			for _, w := range ways {
				assert.GreaterOrEqual(t, len(w.Changes), c.least)
				next, err := engine.GoWay(doc, w)
				require.NoError(t, err)
				is := plan(t, next.Design)
				assert.InDelta(t, float64(w.Paid.Minor), float64(is.Price.Gross.Minor), 0)
				assert.LessOrEqual(t, is.Price.Gross.Cmp(cost.Budget(next.Design.Money, r.Price.Currency)), 0)
				for code := range stops(is) {
					assert.True(t, stops(r)[code], "%s is new", code)
				}
				assert.InDelta(t, r.Bill.Hours.Total.Typical-is.Bill.Hours.Total.Typical, w.Hours, 1e-9)
			}
		})
	}
}

// No way where none is needed or none is enough.
func TestNoWayToBudget(t *testing.T) {
	doc := design.Default()
	r := plan(t, doc.Design)
	assert.Empty(t, engine.WaysToBudget(doc, r, maker()).Found, "no budget was said")
	assert.Empty(t, engine.WaysToBudget(edit(t, doc, "money.budget = 100000"), r, maker()).Found)
	hopeless := engine.WaysToBudget(edit(t, doc, "money.budget = 20"), r, maker())
	assert.Empty(t, hopeless.Found)
	near := hopeless.Nearest
	require.NotEmpty(t, near.Changes)
	gone, err := engine.GoWay(doc, near)
	require.NoError(t, err)
	gone = engine.KeepPlaced(doc, r, gone)
	assert.Equal(t, plan(t, gone.Design).Price.Gross, near.Paid, "it costs what is said")
	assert.Negative(t, near.Paid.Cmp(r.Price.Gross))
}

// A budget and a wall: each candidate is within the budget, on the wall, free of new Stops
// and as large as it can be; for a client by the selling book alone.
func TestFromBudget(t *testing.T) {
	for _, by := range []engine.Paying{maker(), client()} {
		for _, c := range []struct{ job, budget string }{{"s2", "6000"}, {"s4", "6500"}, {"s7", "12000"}, {"", "2500"}} {
			doc := design.Default()
			if c.job != "" {
				doc.Design = designtest.Job(t, c.job)
			}
			doc = edit(t, doc, "money.budget = "+c.budget)
			r := plan(t, doc.Design)
			buys, err := engine.FromBudget(doc, r, by)
			require.NoError(t, err)
			all := buys.Found
			require.NotEmpty(t, all, c.job)
			assert.Len(t, buys.Missing, 3-len(all), "each of the three is there, or it is said why not")
			for _, one := range all {
				require.NoError(t, design.Validate(one.Doc))
				is := plan(t, one.Doc.Design)
				paid := is.Price.Gross
				if by.Client {
					_, high, err := engine.Quote(one.Doc.Design, is, engine.ExampleSelling())
					require.NoError(t, err)
					assert.Positive(t, high.Minor)
					paid = one.Paid
				}
				assert.LessOrEqual(t, paid.Cmp(cost.Budget(doc.Design.Money, "XXX")), 0, "%s %s", c.job, one.Key)
				for code := range stops(is) {
					assert.True(t, stops(r)[code], "%s %s: %s is new", c.job, one.Key, code)
				}
			}
			assert.LessOrEqual(t, len(all), 3)
		}
	}
	_, err := engine.FromBudget(design.Default(), plan(t, design.Default().Design), maker())
	assert.ErrorIs(t, err, engine.ErrNoBudget)
}

// What the open design itself is within the budget is no larger than what the budget buys,
// also where it hangs elsewhere than in the middle; and a budget that is too small says from
// where on it is not.
func TestFromBudgetIsAsLargeAsCanBe(t *testing.T) {
	doc := design.Default()
	doc.Design = designtest.Job(t, "s2") // above a radiator
	doc = edit(t, doc, group+"wood = oak\n"+group+"frame.wood = oak\n"+group+"block.size = 58 mm\nmoney.budget = 9500")
	r := plan(t, doc.Design)
	now := r.Groups[0].Built
	for _, by := range []engine.Paying{maker(), client()} {
		buys, err := engine.FromBudget(doc, r, by)
		require.NoError(t, err)
		for _, c := range buys.Found {
			if c.Key == "fine" {
				continue
			}
			built := c.Plan.Groups[0].Built
			assert.Positive(t, built.TotalWidth.Cmp(now.TotalWidth), "%s: %v", c.Key, built.TotalWidth)
			for code := range stops(c.Plan) {
				assert.True(t, stops(r)[code], "%s: %s is new", c.Key, code)
			}
			right := built.Left.Add(built.TotalWidth).Add(engine.FreeBeside())
			assert.LessOrEqual(t, right.Cmp(c.Doc.Design.Walls[0].Width), 0, "%s: room at the right", c.Key)
			assert.GreaterOrEqual(t, built.Left.Cmp(engine.FreeBeside()), 0, "%s: room at the left", c.Key)
		}
		small := edit(t, doc, "money.budget = 600")
		buys, err = engine.FromBudget(small, r, by)
		require.NoError(t, err)
		assert.Empty(t, buys.Found)
		assert.Len(t, buys.Missing, 3)
		assert.Greater(t, buys.Least.Minor, int64(600_00))
		enough := edit(t, doc, "money.budget = "+money.New(buys.Least.Minor+buys.Least.Minor/10, "XXX").Plain())
		buys, err = engine.FromBudget(enough, r, by)
		require.NoError(t, err)
		assert.NotEmpty(t, buys.Found)
	}

	// Between sizes that hang on too few studs and those that are too dear there are some.
	doc = edit(t, design.Default(), "money.budget = 2600")
	buys, err := engine.FromBudget(doc, plan(t, doc.Design), client())
	require.NoError(t, err)
	require.Len(t, buys.Found, 3)
	for _, c := range buys.Found {
		assert.Greater(t, c.Paid.Minor, int64(2500_00), "%s: a size more costs about 40", c.Key)
	}
}

// A client's candidates hold nothing of a private book: two workshops with the same
// selling book show the same.
func TestFromBudgetIsPublic(t *testing.T) {
	doc := edit(t, design.Default(), "money.budget = 2400")
	dear := design.DefaultBook()
	dear.Rates.Shop, dear.Policy.Margin, dear.Woods[3].SquaresPerM3 = design.Units(99), 40, design.Units(9000)
	key := func(book design.Book) []string {
		by := client()
		by.Book = book
		r, err := engine.Plan(doc.Design, book)
		require.NoError(t, err)
		buys, err := engine.FromBudget(doc, r, by)
		require.NoError(t, err)
		ways := engine.WaysToBudget(doc, r, by)
		var out []string
		for _, c := range buys.Found {
			out = append(out, c.Key+" "+c.Plan.Revision+" "+c.Paid.Plain())
		}
		for _, w := range ways.Found {
			out = append(out, w.Paid.Plain())
		}
		return out
	}
	assert.Equal(t, key(design.DefaultBook()), key(dear))
}

// The odds of a job are those of its revision, and the floor decides.
func TestOddsOfAJob(t *testing.T) {
	d := designtest.Job(t, "s4")
	r := plan(t, d)
	o := engine.Odds(d, r, design.DefaultBook())
	assert.Equal(t, o, engine.Odds(d, r, design.DefaultBook()))
	assert.Less(t, o.Loss, o.BelowFloor)
	strict := design.DefaultBook()
	strict.Policy.MarginFloor = strict.Policy.Margin
	assert.Greater(t, engine.Odds(d, r, strict).BelowFloor, o.BelowFloor)
}

// A panel that has one of the Stops that are of no place has it wherever it hangs.
func TestStopsOfNoPlace(t *testing.T) {
	codes := []string{"bench/sheet-too-small", "wall/too-few-cells", "wall/lifting-method", "wall/way-in"}
	seen := map[string]bool{}
	for _, name := range []string{"s2", "s5", "s7", "s8"} {
		for _, width := range []string{"380 mm", "900 mm", "2600 mm"} {
			doc := design.Default()
			doc.Design = designtest.Job(t, name)
			doc = edit(t, doc, group+"width = "+width+"\n"+group+"height = 900 mm")
			times := map[string]int{}
			places := []string{"150 mm", "333 mm", "900 mm"}
			for _, left := range places {
				for _, up := range []string{"300 mm", "1100 mm"} {
					moved := edit(t, doc, group+"place.left = "+left+"\n"+group+"place.edge = bottom\n"+group+"place.height = "+up)
					for code := range stops(plan(t, moved.Design)) {
						times[code]++
					}
				}
			}
			for _, code := range codes {
				if times[code] > 0 {
					seen[code] = true
					assert.Equal(t, 2*len(places), times[code], "%s at %s: %s", name, width, code)
				}
			}
		}
	}
	assert.Len(t, seen, len(codes), "each was there: %v", seen)
}

// A budget that buys nothing is the longest search.
func BenchmarkHopelessBudget(b *testing.B) {
	for _, name := range []string{"s2", "s7", "s8"} {
		doc := design.Default()
		doc.Design = designtest.Job(b, name)
		doc = edit(b, doc, "money.budget = 100")
		r := plan(b, doc.Design)
		b.Run(name+"/from-budget", func(b *testing.B) {
			for b.Loop() {
				_, err := engine.FromBudget(doc, r, maker())
				require.NoError(b, err)
			}
		})
		b.Run(name+"/ways", func(b *testing.B) {
			for b.Loop() {
				engine.WaysToBudget(doc, r, maker())
			}
		})
	}
}
