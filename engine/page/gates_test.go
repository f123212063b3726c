package page_test

import (
	"strings"
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/page"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
)

// What is pending is said as what it will be, beside its watch-out and in the
// list of the gates; and what nothing checks is not called open.
func TestGatesOfTheMaker(t *testing.T) {
	doc := design.Default()
	doc.View.Reading = page.Maker
	look := said(t, section(t, doc, design.DefaultBook(), page.Look))
	assert.Contains(t, look, "Once it comes to cutting, this is a Stop. Or somebody signs it off")
	bench := said(t, section(t, doc, design.DefaultBook(), page.Bench))
	assert.Contains(t, bench, "The offer nothing known Buying nothing known Cutting 1 thing to settle Gluing 1 thing to settle Hanging waits for cutting")
	assert.Contains(t, bench, "nobody here has seen the bench")

	heavy := scenarios(t)["s6.json"]
	heavy.View.Reading = page.Maker
	bench = said(t, section(t, heavy, design.DefaultBook(), page.Bench))
	assert.Contains(t, bench, "The offer 1 thing to settle, with evidence")
	wall := said(t, section(t, heavy, design.DefaultBook(), page.Wall))
	assert.Contains(t, wall, "Until it is solved it holds up the offer. Only evidence clears it, no signature.")
	assert.Contains(t, wall, "Who leads the lift", "and here is where to name it")

	heavy.View.Reading = page.Builder
	wall = said(t, section(t, heavy, design.DefaultBook(), page.Wall))
	assert.Contains(t, wall, "Until it is solved it holds up the start of work. Only evidence", "nobody makes an offer at home")
}

// The papers of an offer name every Stop that is open; beside an offer the client's page does.
func TestAClientWithAnOfferReadsEveryStop(t *testing.T) {
	doc := design.Default()
	doc.View.Reading = page.Client
	doc.Design.Walls[0].StudStep = length.MM(2000)
	in := input(t, doc, design.DefaultBook(), words.English(), page.Wall)
	plain := strings.NewReplacer("\u2060", "", "\u00a0", " ").Replace
	before := plain(said(t, sectionOf(t, in)))
	in.Doc.Offer = &design.Offer{Revision: in.Plan.Revision, Currency: "EUR", ValidUntil: "2030-06-30"}
	after := plain(said(t, sectionOf(t, in)))
	stops := 0
	for _, w := range in.Plan.WatchOuts {
		if sentence := plain(in.Words.Say(w.Code, w.Args)); w.Level == check.Stop && strings.HasPrefix(w.Code, "wall/") {
			stops++
			assert.NotContains(t, before, sentence)
			assert.Contains(t, after, sentence)
		}
	}
	assert.NotZero(t, stops)
}

// A client's page has no gates: they are the workshop's.
func TestNoGatesForTheClient(t *testing.T) {
	doc := scenarios(t)["s6.json"]
	doc.View.Reading = page.Client
	for _, open := range page.Sections(page.Client) {
		text := said(t, section(t, doc, design.DefaultBook(), open))
		assert.NotContains(t, text, "holds up")
		assert.NotContains(t, text, "signs it off")
	}
}
