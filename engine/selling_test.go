package engine_test

import (
	"reflect"
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func selling(t testing.TB, b design.Book) design.SellingBook {
	t.Helper()
	s, err := engine.SellingBook(b)
	require.NoError(t, err)
	return s
}

// The usual price of every worked job that is sold lies in the range that a
// client would see, though none of them is a sample job.
func TestQuotesHoldThePriceOfWorkedJobs(t *testing.T) {
	book := selling(t, design.DefaultBook())
	assert.True(t, book.Placeholder)
	for _, name := range []string{"s1", "s1-second", "s2", "s3", "s4", "s5", "s5-second", "s6", "s7", "p1", "p2"} {
		d := designtest.Job(t, name)
		r := plan(t, d)
		low, high, err := engine.Quote(d, r, book)
		require.NoError(t, err)
		assert.LessOrEqual(t, low.Minor, r.Price.Gross.Minor, name)
		assert.GreaterOrEqual(t, high.Minor, r.Price.Gross.Minor, name)
		assert.Less(t, high.Minor, 3*low.Minor/2, "%s: %s to %s says little", name, low.Plain(), high.Plain())
	}
}

// A client compares woods: from one to another the middle of the range goes as far as the
// price does, to within the error that the range states; and what is clearly dearer is not
// read as cheaper.
func TestLooksDifferAsTheirPrices(t *testing.T) {
	private := design.ConfirmBook(design.DefaultBook(), "")
	private.Rates.Shop, private.Policy.Margin, private.Policy.MaterialMarkup = design.Units(111)/2, 22, 15 // invented
	book := selling(t, private)
	for _, name := range []string{"s1", "s2"} {
		d := designtest.Job(t, name)
		middle, gross := map[string]float64{}, map[string]float64{}
		for _, wood := range design.Woods() {
			for w := range d.Walls {
				for i := range d.Walls[w].Groups {
					g := &d.Walls[w].Groups[i]
					g.Wood, g.SecondWood, g.Frame.Wood = wood, "", wood
				}
			}
			r, err := engine.Plan(d, private)
			require.NoError(t, err)
			low, high, err := engine.Quote(d, r, book)
			require.NoError(t, err)
			middle[wood], gross[wood] = float64(low.Minor+high.Minor)/2, float64(r.Price.Gross.Minor)
		}
		for _, from := range design.Woods() {
			for _, to := range design.Woods() {
				truly, shown := gross[to]-gross[from], middle[to]-middle[from]
				assert.InDelta(t, truly, shown, book.Below/100*max(gross[from], gross[to]), "%s: %s to %s", name, from, to)
				if truly > 0.05*gross[from] {
					assert.Positive(t, shown, "%s: %s to %s", name, from, to)
				}
			}
		}
	}
}

// A range needs no price: it is the same whatever the private book that the
// design was planned with.
func TestQuoteNeedsNoPrivateBook(t *testing.T) {
	book := selling(t, design.DefaultBook())
	d := designtest.Job(t, "s5")
	dear := design.DefaultBook()
	dear.Rates.Shop *= 2
	with, err := engine.Plan(d, dear)
	require.NoError(t, err)
	low, high, err := engine.Quote(d, plan(t, d), book)
	require.NoError(t, err)
	low2, high2, err := engine.Quote(d, with, book)
	require.NoError(t, err)
	assert.NotEqual(t, plan(t, d).Price.Gross, with.Price.Gross)
	assert.Equal(t, []any{low, high}, []any{low2, high2})
}

// The private figures cannot be worked back: workshops with other rates, other
// mark-ups and margins, and other times publish the same selling book. What
// does change the price of a job changes it.
func TestManyPrivateBooksHaveOneSellingBook(t *testing.T) {
	first := selling(t, design.DefaultBook())
	for name, change := range map[string]func(*design.Book){
		"a dearer hour, less overhead": func(b *design.Book) {
			b.Rates.Shop, b.Rates.Overhead = design.Units(50), design.Units(6)
		},
		// 1.07 / 0.82 is 1.109146 / 0.85: the same price of the same cost.
		"more contingency, less margin": func(b *design.Book) {
			b.Policy.Contingency, b.Policy.Margin = 10.9146, 15
		},
		"another mark-up on dearer goods": func(b *design.Book) {
			b.Policy.MaterialMarkup = 40
			for i := range b.Woods {
				b.Woods[i].SquaresPerM3 = b.Woods[i].SquaresPerM3 * 4 / 5 // 1.40 × 0.80 = 1.12
				b.Woods[i].BoardsPerM3 = b.Woods[i].BoardsPerM3 * 4 / 5
			}
			for i := range b.Sheets {
				b.Sheets[i].Price = b.Sheets[i].Price * 4 / 5
			}
			for i := range b.Finishes {
				b.Finishes[i].PerLitre = b.Finishes[i].PerLitre * 4 / 5
			}
			b.Goods.GluePerKg, b.Goods.CleatPerM3, b.Goods.PackingPerPanel = b.Goods.GluePerKg*4/5, b.Goods.CleatPerM3*4/5, b.Goods.PackingPerPanel*4/5
			b.Goods.WoodScrew, b.Goods.WallFixing, b.Goods.Brad = b.Goods.WoodScrew*4/5, b.Goods.WallFixing*4/5, b.Goods.Brad*4/5
			b.Goods.AbrasivesPer100, b.Goods.BladesPer1000 = b.Goods.AbrasivesPer100*4/5, b.Goods.BladesPer1000*4/5
		},
		"faster sanding, slower gluing": func(b *design.Book) {
			at := map[string]*design.Task{}
			for i := range b.Tasks {
				at[b.Tasks[i].ID] = &b.Tasks[i]
			}
			// Both are counted by the glued block, so a second goes from one to the other.
			at["e3"].Typical, at["e4"].Typical = at["e3"].Typical-0.5, at["e4"].Typical+0.5
		},
		"another floor, minimum and table of stages": func(b *design.Book) {
			b.Policy.MarginFloor, b.Policy.MinimumCharge = 3, design.Units(111)
			b.Stages = b.Stages[:1]
			b.Stages[0].Percent = 100
		},
	} {
		t.Run(name, func(t *testing.T) {
			private := design.DefaultBook()
			change(&private)
			assert.NotEqual(t, design.DefaultBook().Code(), private.Code())
			assert.Equal(t, first, selling(t, private))
		})
	}
	for name, change := range map[string]func(*design.Book){
		"dearer hours": func(b *design.Book) { b.Rates.Shop = design.Units(60) },
		"more margin":  func(b *design.Book) { b.Policy.Margin = 30 },
	} {
		private := design.DefaultBook()
		change(&private)
		assert.NotEqual(t, first, selling(t, private), name)
	}
}

// At most a dozen figures, of two digits, and none of them one of the private
// book's unique ones.
func TestSellingBookSaysLittle(t *testing.T) {
	private, digits := designtest.Sentinel(t)
	for i := range private.Tasks { // times that a job can have, in a book of unique rates
		private.Tasks[i] = design.DefaultBook().Tasks[i]
	}
	private.Policy.Margin, private.Policy.Contingency, private.Travel.SpeedKmh = 18, 7, 45
	book := selling(t, private)
	assert.Empty(t, leaks(string(design.EncodeSelling(book)), digits))
	figures := 0
	v := reflect.ValueOf(book)
	for i := range v.NumField() {
		switch x := v.Field(i).Interface().(type) {
		case design.Amount:
			figures++
			for x != 0 && x%10 == 0 {
				x /= 10
			}
			assert.Less(t, max(x, -x), design.Amount(100), "%s has more than two digits", v.Type().Field(i).Name)
		case float64:
			figures++
			assert.Equal(t, float64(int(x)), x, "whole percents")
		}
	}
	assert.LessOrEqual(t, figures, 12)
}

// A bought-in line that a maker adds is in the price and in the client's range,
// which still holds the price; and it is quoted by nothing private: workshops
// whose mark-up and margin differ, and whose selling books are the same, quote
// the same.
func TestBoughtInLinesEnterTheRange(t *testing.T) {
	book := selling(t, design.DefaultBook())
	doc := design.Default()
	without := plan(t, doc.Design)
	low, high, err := engine.Quote(doc.Design, without, book)
	require.NoError(t, err)

	doc.Design.Money.Extras = []design.Extra{{Name: "scaffold tower", Amount: design.Units(600)}}
	with := plan(t, doc.Design)
	low2, high2, err := engine.Quote(doc.Design, with, book)
	require.NoError(t, err)
	assert.Greater(t, with.Price.Gross.Minor, without.Price.Gross.Minor)
	assert.Greater(t, low2.Minor, low.Minor)
	assert.Greater(t, high2.Minor, high.Minor)
	assert.True(t, low2.Minor <= with.Price.Gross.Minor && with.Price.Gross.Minor <= high2.Minor)

	// 1.07 / 0.82 is 1.109146 / 0.85.
	other := design.DefaultBook()
	other.Policy.Contingency, other.Policy.Margin, other.Policy.MarginFloor = 10.9146, 15, 5
	theirs, err := engine.Plan(doc.Design, other)
	require.NoError(t, err)
	low3, high3, err := engine.Quote(doc.Design, theirs, selling(t, other))
	require.NoError(t, err)
	assert.Equal(t, []any{low2, high2}, []any{low3, high3})
}

// Clients read whose prices they are and until when: name and last day come
// along from the private book.
func TestSellingBookHasNameAndLastDay(t *testing.T) {
	private := design.DefaultBook()
	private.Name, private.ValidUntil = "Bench prices", "2026-12-31"
	book := selling(t, private)
	assert.Equal(t, []string{"Bench prices", "2026-12-31"}, []string{book.Name, book.ValidUntil})
}
