package page_test

import (
	"strconv"
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
	for name, doc := range everyScenario(t) {
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
	for name, doc := range everyScenario(t) {
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
// row: 2144.26 + 470.69 + 5.05 = 2620.00, and 475.74 / 2620 = 18.2 %.
func TestTheMakersPriceInWords(t *testing.T) {
	doc := design.Default()
	doc.View.Reading = page.Maker
	in := input(t, doc, design.DefaultBook(), words.English(), page.Money)
	text := said(t, section(t, doc, design.DefaultBook(), page.Money))
	assert.Equal(t, "¤5.05", in.Plan.Price.RoundedUp.Format("en"), "the example of this test")
	assert.Contains(t, text, "Margin asked for: 18 % of the price ¤470.69 Rounded up to the next 10.00 ¤5.05 Net price ¤2,620.00 "+
		"Left of it after cost: 18.2 % of net ¤475.74 Tax: 20 % of net ¤524.00 With tax ¤3,144.00")
	assert.Contains(t, said(t, section(t, doc, design.DefaultBook(), page.Bench)), "days in the shop for 2 people")
}

// Whoever adds the maker's table up, line by line, comes to each of its sums to
// the cent: lines that are sums of the lines above them, and the one line that
// only says what is left, are not added.
func TestTheMakersPriceAddsUp(t *testing.T) {
	for name, doc := range everyScenario(t) {
		doc.View.Reading, doc.Design.Work.OwnBuild = page.Maker, false
		for _, discount := range []float64{0, 7.5} {
			doc.Design.Money.Discount = discount
			sums := 0
			var total, group, folded int64
			parse(t, section(t, doc, design.DefaultBook(), page.Money)).walk(func(n *node) {
				if n.attrs["class"] == "answer" && strings.HasPrefix(n.parent.parent.attrs["id"], "money-") {
					folded, _ = centsOf(textOf(n)) // not of the way to the price, which ends with its own sum
					group = 0
				}
				if n.tag != "tr" || n.parent.parent.attrs["class"] != "ledger money" {
					return
				}
				cells := n.visible()
				cents, isMoney := centsOf(cells[len(cells)-1])
				switch class := n.attrs["class"]; {
				case !isMoney:
					assert.Fail(t, "a row without money", "%s: %v", name, cells)
				case class == "":
					total, group = total+cents, group+cents
					if n.parent.kids[len(n.parent.kids)-1] == n {
						assert.Equal(t, folded, group, "%s: %v", name, cells)
						sums++
					}
				case class == "sum" || class == "total":
					assert.Equal(t, total, cents, "%s: %v", name, cells)
					sums++
				}
			})
			assert.Equal(t, 7, sums, name) // material, work, beside; direct, cost, net, gross
		}
	}
}

// centsOf reads "¤1,234.50" and "−¤12.00".
func centsOf(text string) (int64, bool) {
	plain := strings.NewReplacer("¤", "", ",", "", ".", "", "\u2212", "-", "\u00a0", "").Replace(text)
	n, err := strconv.ParseInt(plain, 10, 64)
	return n, err == nil && strings.Contains(text, "¤")
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
	assert.Contains(t, html, `id="obstacle-0-0-name">Beam: `)
	assert.Contains(t, html, "room.public")
	doc.View.Reading, doc.Design.Work.OwnBuild = page.Client, true
	html = section(t, doc, design.DefaultBook(), page.Money)
	assert.Contains(t, html, `data-set="view.reading" value="builder"`)
	assert.NotContains(t, html, "Example figures", "there are none")
}
