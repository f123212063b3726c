package page_test

import (
	"strings"
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
)

// A watch-out stands beside its field or in the list, not in both: in the list
// where its field waits under "more".
func TestAWatchOutIsSaidOnce(t *testing.T) {
	seen := 0
	for name, doc := range scenarios(t) {
		for _, reading := range readings {
			doc.View.Reading = reading
			for _, open := range page.Sections(reading) {
				in := input(t, doc, design.DefaultBook(), words.English(), open)
				text := said(t, section(t, doc, design.DefaultBook(), open))
				times := map[string]int{}
				for _, w := range in.Plan.AllWatchOuts() {
					times[in.Words.Say(w.Code, words.Args(w.Args))]++
				}
				for sentence, n := range times {
					got := strings.Count(text, sentence)
					seen += got
					assert.LessOrEqual(t, got, n, "%s %s %s: %s", name, reading, open, sentence)
				}
			}
		}
	}
	assert.Positive(t, seen, "no sentence was looked for in vain only")
}

// Nothing is lost either: what the maker's plan watches is said or counted.
func TestEveryWatchOutIsSaidSomewhere(t *testing.T) {
	for name, doc := range scenarios(t) {
		doc.View.Reading = page.Maker
		var all strings.Builder
		for _, open := range page.Sections(page.Maker) {
			all.WriteString(said(t, section(t, doc, design.DefaultBook(), open)))
		}
		in := input(t, doc, design.DefaultBook(), words.English(), page.Look)
		for _, w := range in.Plan.AllWatchOuts() {
			if w.Level > check.Note {
				assert.Contains(t, all.String(), in.Words.Say(w.Code, words.Args(w.Args)), name)
			}
		}
	}
}

// The maker's margin is that of the net price, and what rounding adds has a
// row: 2111.76 + 463.56 + 4.68 = 2580.00, and 468.24 / 2580 = 18.1 %.
func TestTheMakersPriceAddsUp(t *testing.T) {
	doc := design.Default()
	doc.View.Reading = page.Maker
	in := input(t, doc, design.DefaultBook(), words.English(), page.Money)
	text := said(t, section(t, doc, design.DefaultBook(), page.Money))
	assert.Equal(t, "¤4.68", in.Plan.Price.RoundedUp.Format("en"), "the example of this test")
	assert.Contains(t, text, "Margin asked for ¤463.56 Rounded up ¤4.68 Net price ¤2,580.00 Left of it after cost, 18.1 % of net ¤468.24")
	assert.Contains(t, said(t, section(t, doc, design.DefaultBook(), page.Bench)), "days in the shop for 2 people")
}

// 33 blocks of 36.2 mm are 1194.6 mm; frame and gap add 23 mm at either end.
func TestAStepSaysItsSize(t *testing.T) {
	doc := design.Default()
	text := said(t, section(t, doc, design.DefaultBook(), page.Look))
	assert.Contains(t, text, "33 across = 1195 mm, 1241 mm with the frame")
	assert.Contains(t, text, "1158 mm , 32 blocks across")
}

func TestEachReaderIsAskedItsOwn(t *testing.T) {
	doc := design.Default()
	html := section(t, doc, design.DefaultBook(), page.Look)
	assert.Contains(t, html, `id="link-note"`)
	assert.Contains(t, html, `id="link-text"`)
	doc.View.Reading = page.Builder
	assert.NotContains(t, section(t, doc, design.DefaultBook(), page.Wall), "room.public")
	doc.View.Reading = page.Maker
	doc.Design.Walls[0].Obstacles = []design.Obstacle{{Kind: "beam"}}
	html = section(t, doc, design.DefaultBook(), page.Wall)
	assert.Contains(t, html, `id="obstacle-0-0-name">Beam<`)
	assert.Contains(t, html, "room.public")
	doc.View.Reading, doc.Design.Work.OwnBuild = page.Client, true
	html = section(t, doc, design.DefaultBook(), page.Money)
	assert.Contains(t, html, `data-set="view.reading" value="builder"`)
	assert.NotContains(t, html, "Example figures", "there are none")
}
