package page_test

import (
	"math"
	"strings"
	"testing"

	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/page"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// section is the open section of a page, as text with its tags.
func section(t *testing.T, doc design.Document, book design.Book, name string) string {
	t.Helper()
	for _, f := range page.Whole(input(t, doc, book, words.English(), name)) {
		if f.Target == "section" {
			return f.HTML
		}
	}
	t.Fatal("no section")
	return ""
}

// said is the visible text of a piece of the page.
func said(t *testing.T, html string) string { return strings.Join(parse(t, html).visible(), " ") }

// A home builder's list says enough to buy from. The default: 1194.6 mm of
// field is cut as 1204.6, and a mitred frame of 1240.6 × 842.4 has two boards
// of either length.
func TestAHomeBuilderCanBuyFromTheList(t *testing.T) {
	doc := design.Default()
	doc.View.Reading, doc.Design.Work.OwnBuild = page.Builder, true
	text := said(t, section(t, doc, design.DefaultBook(), page.Money))
	for _, want := range []string{
		"36 mm square, 2400 mm long", "whole sheets of 1220 × 2440 mm", "backer cut to 1205 × 806 mm",
		"20 × 130 mm", "piece of 1240.6 mm at the long points", "piece of 842.4 mm",
		"half of a cleat: 80 × 18 mm, 1094.6 mm long, one edge at 45°", "spacer: 40 × 18 mm",
		"1 × 800 g", "waterborne varnish", "wood screws No. 12, 100 mm long, into the studs",
		"board for the strip in the wall: 337 × 18 mm, 1094.6 mm long, its upper edge at 45°",
		"through the backer: wood screws No. 8, 50 mm long", "brads for the frame",
		"Abrasives and blade",
	} {
		assert.Contains(t, text, want)
	}
	assert.NotContains(t, text, "Packing", "the sum does not hold it")
	assert.NotContains(t, said(t, section(t, doc, design.DefaultBook(), page.Bench)), "Sheets for backers", "it stands under Shopping")
	w := &doc.Design.Walls[0]
	w.Fixing.What = "8 mm coach screws"
	assert.NotContains(t, said(t, section(t, doc, design.DefaultBook(), page.Money)), "8 mm coach screws", "the screws that were counted")
	w.Kind, w.Fixing.RatedShear, w.Fixing.RatedPull, w.Fixing.Source = "brick", 1, 1, "Invented"
	assert.Contains(t, said(t, section(t, doc, design.DefaultBook(), page.Money)), "8 mm coach screws")
}

// Bottles and tins in the list are those that the price counts: with glue at
// 1 a gram and the finish at 1 a millilitre the money is the quantity.
func TestTheListCountsBottlesAndTinsAsThePrice(t *testing.T) {
	book := design.DefaultBook()
	amount := func(text string) design.Amount {
		a, err := design.ParseAmount(text)
		require.NoError(t, err)
		return a
	}
	book.Goods.GluePerKg = amount("1000")
	for i := range book.Finishes {
		book.Finishes[i].PerLitre = amount("1000")
	}
	for name, doc := range everyScenario(t) {
		doc.View.Reading, doc.Design.Work.OwnBuild = page.Builder, true
		in := input(t, doc, book, words.English(), page.Money)
		text := said(t, section(t, doc, book, page.Money))
		for _, l := range in.Plan.Price.Lines {
			switch l.Key {
			case "line/glue":
				bottle := book.Goods.GlueBottleKg * 1000
				n := math.Round(whole(l.Amount) / bottle)
				assert.Contains(t, text, words.Reader{Language: words.English()}.Say("buy/bottles", words.Args{"n": int(n), "size": "800 g"}), name)
			case "line/finish":
				if len(in.Plan.Bill.Finishes) == 1 {
					assert.Contains(t, text, words.Reader{}.Show(words.Litres(whole(l.Amount)/1000)), name)
				}
			}
		}
	}
}

// whole is an amount in units of its currency, all of which have cents here.
func whole(m money.Money) float64 { return float64(m.Minor) / 100 }

// The sentence about weekends is a sum that a person can follow: at the
// plan's 1.6 for a first time (invented, as package bench says).
func TestWeekendsAreASum(t *testing.T) {
	doc := design.Default()
	doc.View.Reading, doc.Design.Work.OwnBuild = page.Builder, true
	text := said(t, section(t, doc, design.DefaultBook(), page.Bench))
	assert.Equal(t, []any{2, 6, 1.6}, []any{bench.WeekendDays, bench.HomeDayHours, bench.HomeFactor}, "as the sentence says them")
	assert.Regexp(t, `\d+\.\d h × 1\.6 for a first time with hand tools = \d+\.\d h: \d weekends? of two six-hour days`, text)
	assert.NotContains(t, text, "Office and survey")
	assert.NotContains(t, text, "Weigh and pack")
}
