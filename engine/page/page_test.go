package page_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/page"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var readings = []string{page.Client, page.Maker, page.Builder}

// planned and listened hold what was worked out already, by the text of the design
// and of the price book: most tests look at the same designs, in many sections.
var (
	planned  = map[string]engine.Result{}
	listened = map[string]engine.Hearing{}
)

// designText is a design without its view, which neither a plan nor a hearing
// knows.
func designText(d design.Design) string { return string(design.Encode(design.Document{Design: d})) }

func plan(t testing.TB, d design.Design, book design.Book) engine.Result {
	t.Helper()
	key := designText(d) + string(design.EncodeBook(book))
	if _, known := planned[key]; !known {
		result, err := engine.Plan(d, book)
		require.NoError(t, err)
		planned[key] = result
	}
	return planned[key]
}

func hear(t testing.TB, d design.Design) engine.Hearing {
	t.Helper()
	key := designText(d)
	if _, known := listened[key]; !known {
		heard, err := engine.Hear(d)
		require.NoError(t, err)
		listened[key] = heard
	}
	return listened[key]
}

func input(t testing.TB, doc design.Document, book design.Book, lang words.Language, section string) page.Input {
	t.Helper()
	result := plan(t, doc.Design, book)
	job := engine.Follow(doc.Design, result, design.NewRecord(), "")
	return page.Input{
		Doc: doc, Book: book, Plan: result.During(job), Job: job, Section: section,
		Words: words.Reader{Language: lang, Units: doc.View.Units},
	}
}

func assets() page.Assets {
	return page.Assets{
		Folder:   "a-0/",
		Posters:  []page.Picture{{Address: "small.jpg", Width: 640, Height: 480}, {Address: "large.jpg", Width: 1280, Height: 960}},
		Examples: []page.Example{{Address: "designs/x.json", Doc: bracketed(design.Default())}},
	}
}

// bracketed marks what a person has typed the way the pseudo-language marks its
// sentences.
func bracketed(doc design.Document) design.Document {
	doc = design.Clone(doc)
	doc.Design.Title = "⟦title⟧"
	for _, w := range doc.Design.Walls {
		for i := range w.Obstacles {
			w.Obstacles[i].Note = "⟦" + w.Obstacles[i].Note + "⟧"
		}
	}
	for i := range doc.Design.Money.Extras {
		doc.Design.Money.Extras[i].Name = "⟦extra⟧"
	}
	return doc
}

func bracketedBook() design.Book {
	b := design.DefaultBook()
	for i := range b.Stages {
		b.Stages[i].Name = "⟦stage⟧"
	}
	for i := range b.Tasks {
		b.Tasks[i].Name = "⟦task⟧"
	}
	return b
}

// everyPage calls visit with the document of each reading and section, as text
// and as what it was read as.
func everyPage(t *testing.T, doc design.Document, book design.Book, lang words.Language, visit func(t *testing.T, text string, root *node)) {
	for _, reading := range readings {
		for _, section := range page.Sections(reading) {
			t.Run(reading+"/"+section, func(t *testing.T) {
				doc.View.Reading = reading
				var b bytes.Buffer
				require.NoError(t, page.Index(&b, assets(), input(t, doc, book, lang, section)))
				visit(t, b.String(), parse(t, b.String()))
			})
		}
	}
}

func scenarios(t testing.TB) map[string]design.Document {
	all := map[string]design.Document{"default": design.Default()}
	for name, doc := range designtest.Documents(t) {
		all[name] = doc
	}
	return all
}

// everyScenario are the designs of the tests that look at all of them. As
// WebAssembly, where each takes several times as long, these are a few that differ
// most: the same templates and the same Go code are gone through for all of them
// on the processor.
func everyScenario(t testing.TB) map[string]design.Document {
	all := scenarios(t)
	all["two woods"] = designtest.TwoWoods(all["s1.json"], design.MixedAtRandom)
	if runtime.GOOS != "js" {
		return all
	}
	few := map[string]design.Document{}
	for _, name := range []string{"default", "s1.json", "s5.json", "s7-second.json"} {
		require.Contains(t, all, name)
		few[name] = all[name]
	}
	return few
}

// A text that did not come out of the catalogue is one that cannot be
// translated. Numbers, units and signs may stand alone.
func TestEverySentenceComesFromTheCatalogue(t *testing.T) {
	for name, doc := range everyScenario(t) {
		if strings.HasPrefix(name, "p") {
			continue // like the others, and slow
		}
		t.Run(name, func(t *testing.T) {
			everyPage(t, bracketed(doc), bracketedBook(), words.Pseudo(), func(t *testing.T, text string, root *node) {
				assert.NotContains(t, text, "⟪")
				for _, s := range root.visible() {
					assert.True(t, allowedAlone(outside(s)), "not out of the catalogue: %q", s)
				}
			})
		})
	}
}

// outside is what stands outside all brackets of the pseudo-language.
func outside(s string) string {
	depth, out := 0, ""
	for _, r := range s {
		switch {
		case r == '⟦':
			depth++
		case r == '⟧':
			depth--
		case depth == 0:
			out += string(r)
		}
	}
	return out
}

// allowedAlone reports whether a text is no more than figures and units.
func allowedAlone(s string) bool {
	for _, word := range strings.FieldsFunc(s, func(r rune) bool {
		return strings.ContainsRune(" \u00a0\u202f0123456789.,-−–+/×()°%¤$€£\"'=:", r)
	}) {
		switch word {
		case "mm", "cm", "m", "in", "kg", "lb", "h", "l", "min", "kN", "K", "C", "km", "m³", "g", "m²":
		default:
			return false
		}
	}
	return true
}

func TestTheNetSeesWhatCameFromElsewhere(t *testing.T) {
	assert.True(t, allowedAlone(outside("⟦Width ⟦x⟧⟧ 1200 mm")))
	assert.False(t, allowedAlone(outside("⟦Width⟧ of the panel")))
}

// TestPages holds every page of every example and of designs at the edges of what
// is allowed against what must be true of all pages.
func TestPages(t *testing.T) {
	all := everyScenario(t)
	for name, edits := range map[string][]page.Edit{
		"at most columns":  {{Path: "columns", Value: "400"}, {Path: "rows", Value: "100"}},
		"at least columns": {{Path: "columns", Value: "1"}, {Path: "rows", Value: "1"}},
		"widest wish":      {{Path: "width", Value: "6 m"}, {Path: "height", Value: "300 mm"}},
		"widest panels":    {{Path: "panelsWide", Value: "12"}, {Path: "columns", Value: "44"}}, // 12 · (44 · 36.2 + 46) + 33 mm = 19.7 m
	} {
		all[name] = edited(t, design.Default(), append([]page.Edit{{Path: "place.left", Value: "0"}}, edits...))
	}
	for name, doc := range all {
		t.Run(name, func(t *testing.T) {
			taken := map[offer]bool{}
			everyPage(t, doc, design.DefaultBook(), words.English(), func(t *testing.T, _ string, root *node) {
				nothingThatThePolicyRefuses(t, root)
				formHoldsTogether(t, root)
				whatIsOfferedIsTaken(t, doc, root, taken)
			})
		})
	}
}

// Nothing in the page may be refused by the strict content policy: no inline
// style, script or handler.
func nothingThatThePolicyRefuses(t *testing.T, root *node) {
	root.walk(func(n *node) {
		for key := range n.attrs {
			if key == "style" || strings.HasPrefix(key, "on") {
				t.Errorf("%s has the attribute %s", n.tag, key)
			}
		}
		if n.tag == "script" {
			assert.NotEmpty(t, n.attrs["src"])
		}
		if n.tag == "style" {
			t.Error("a style sheet within the page")
		}
	})
}

// Every id stands once, every reference leads somewhere, every control has a
// label, and its name is a field that the design can set.
func formHoldsTogether(t *testing.T, root *node) {
	ids, labelled := map[string]int{}, map[string]bool{}
	root.walk(func(n *node) {
		if id := n.attrs["id"]; id != "" {
			ids[id]++
		}
		if n.tag == "label" {
			labelled[n.attrs["for"]] = true
		}
	})
	for id, n := range ids {
		if n != 1 {
			t.Errorf("id %s stands %d times", id, n)
		}
	}
	root.walk(func(n *node) {
		for _, id := range strings.Fields(n.attrs["aria-describedby"] + " " + n.attrs["aria-labelledby"]) {
			assert.NotZero(t, ids[id], "%s, which %s refers to", id, n.tag)
		}
		path := n.path()
		if path == "" {
			return
		}
		_, ok := design.Lookup(path)
		if rest, ours := strings.CutPrefix(path, design.RecordPrefix); ours {
			_, ok = design.LookupRecord(rest)
		}
		assert.True(t, ok, "%s is no field", path)
		inLabel := n.parent.tag == "label"
		assert.True(t, inLabel || labelled[n.attrs["id"]], "%s has no label", path)
	})
}

// offer is a value for a field of the design, with others that go along.
type offer struct{ path, value, also string }

// What is offered must be taken: every option of every choice and every button
// that sets a field leads to a valid design. What was tried before, in another
// section or for another reader of the same design, is in taken.
func whatIsOfferedIsTaken(t *testing.T, doc design.Document, root *node, taken map[offer]bool) {
	root.walk(func(n *node) {
		path, value := n.attrs["data-set"], n.attrs["value"]
		if n.tag == "input" && n.attrs["type"] == "radio" {
			path = n.attrs["name"]
		}
		if n.tag == "option" && n.parent.tag == "select" {
			path = n.parent.attrs["name"]
		}
		one := offer{path, value, n.attrs["data-also"]}
		if path == "" || taken[one] {
			return
		}
		taken[one] = true
		if rest, ours := strings.CutPrefix(path, design.RecordPrefix); ours {
			_, err := design.SetRecord(design.NewRecord(), rest, value, doc.View.Units)
			assert.NoError(t, err, "%s = %s", path, value)
			return
		}
		after, err := design.Set(doc, path, value, doc.View.Units)
		assert.NoError(t, err, "%s = %s", path, value)
		var also []page.Edit
		if one.also != "" {
			require.NoError(t, json.Unmarshal([]byte(one.also), &also))
		}
		for _, e := range also {
			after, err = design.Set(after, e.Path, e.Value, doc.View.Units)
			assert.NoError(t, err, "%s = %s", e.Path, e.Value)
		}
	})
}

// edited types values into fields of the first group.
func edited(t *testing.T, doc design.Document, edits []page.Edit) design.Document {
	t.Helper()
	for _, e := range edits {
		var err error
		doc, err = design.Set(doc, "walls[0].groups[0]."+e.Path, e.Value, length.Metric)
		require.NoError(t, err, "%s = %s", e.Path, e.Value)
	}
	return doc
}

// Private figures of the price book never reach a client: with odd, unique
// amounts in the book none of what follows from them alone may be in the page,
// in its fragments or in its sections.
func TestClientSeesNoPrivateFigure(t *testing.T) {
	book := oddBook()
	doc := design.Default()
	doc.View.Reading = page.Client
	maker := doc
	maker.View.Reading = page.Maker
	secrets := private(t, input(t, maker, book, words.English(), page.Money))
	if len(secrets) == 0 {
		t.Fatal("the book has no private figures to look for")
	}
	var client strings.Builder
	for _, section := range []string{page.Look, page.Wall, page.Bench, page.Money} {
		in := input(t, doc, book, words.English(), section)
		require.NoError(t, page.Index(&client, assets(), in))
		for _, f := range append(page.Whole(in), page.Fragments(in, "walls[0].groups[0].width")...) {
			client.WriteString(f.HTML)
		}
	}
	for what, figure := range secrets {
		assert.NotContains(t, client.String(), figure, what)
	}
	// The net must be able to catch: the same figures do stand on the maker's page.
	in := input(t, maker, book, words.English(), page.Money)
	text := page.Whole(in)
	assert.Contains(t, html2text(t, text), secrets["cost"])
}

func html2text(t *testing.T, all []page.Fragment) string {
	var b strings.Builder
	for _, f := range all {
		b.WriteString(f.HTML)
	}
	return b.String()
}

// oddBook is a book whose figures are not met by chance.
func oddBook() design.Book {
	b := design.DefaultBook()
	amount := func(text string) design.Amount {
		a, err := design.ParseAmount(text)
		if err != nil {
			panic(err)
		}
		return a
	}
	b.Rates = design.Rates{Shop: amount("47.31"), Office: amount("39.17"), Site: amount("53.93"), Overhead: amount("13.79")}
	b.Policy.MaterialMarkup, b.Policy.Contingency, b.Policy.Margin = 13.7, 7.3, 19.3
	b.Policy.MinimumCharge = amount("463.7")
	return b
}

// private are the figures that only the workshop may know, as the page would
// write them.
func private(t *testing.T, in page.Input) map[string]string {
	p := in.Plan.Price
	require.True(t, p.Sold, "nothing is sold")
	all := map[string]string{
		"rate shop": "47.31", "rate office": "39.17", "rate site": "53.93", "overhead": "13.79",
		"mark-up": "13.7", "contingency share": "7.3 %", "margin share": "19.3",
		"bought in": p.BoughtIn.Format("en"), "markup": p.Markup.Format("en"), "labour": p.Labour.Format("en"),
		"overhead sum": p.Overhead.Format("en"), "direct": p.Direct.Format("en"), "cost": p.Cost.Format("en"),
		"margin": p.Margin.Format("en"), "net": p.Net.Format("en"), "net whole": p.Net.Whole("en"),
		"contingency": p.Contingency.Format("en"), "gross": p.Gross.Format("en"), "gross whole": p.Gross.Whole("en"),
	}
	for i, l := range p.Lines {
		all[fmt.Sprintf("line %d", i)] = l.Amount.Format("en")
	}
	return all
}

// A client meets no more than eight controls in any section.
func TestAClientMeetsEightControlsAtMost(t *testing.T) {
	for name, doc := range everyScenario(t) {
		doc.View.Reading = page.Client
		for _, section := range page.Sections(page.Client) {
			in := input(t, doc, design.DefaultBook(), words.English(), section)
			var form string
			for _, f := range page.Whole(in) {
				if f.Target == "section" {
					form = f.HTML
				}
			}
			root := parse(t, form)
			names := map[string]bool{}
			root.walk(func(n *node) {
				if path := n.path(); path != "" {
					names[path] = true
				}
			})
			assert.LessOrEqual(t, len(names), 8, "%s %s", name, section)
		}
	}
}

// A client's price comes first: what it includes, other looks and what leaves the browser
// wait until they are asked for. An agreed price stands there with what it includes.
func TestAClientsPriceIsShort(t *testing.T) {
	doc := design.Default()
	doc.View.Reading = page.Client
	root := parse(t, section(t, doc, design.DefaultBook(), page.Money))
	folded := map[string]bool{}
	pressed := 0
	root.walk(func(n *node) {
		inside := false
		for at := n.parent; at != nil; at = at.parent {
			inside = inside || at.tag == "details"
		}
		if n.tag == "details" && n.attrs["id"] != "" {
			_, open := n.attrs["open"]
			assert.False(t, open, n.attrs["id"])
			folded[n.attrs["id"]] = true
		}
		if n.tag == "button" && !inside {
			pressed++
		}
		if !inside {
			assert.NotContains(t, []string{"plain-list", "leaving", "look-cards"}, n.attrs["class"], "in sight at first")
		}
	})
	for _, id := range []string{"includes-more", "looks-more", "leaves-more"} {
		assert.True(t, folded[id], id)
	}
	assert.Equal(t, 1, pressed, "one button: to send or save")
}

// A fragment never holds the control that is being edited.
func TestFragmentsLeaveTheEditedControlAlone(t *testing.T) {
	for _, reading := range readings {
		doc := design.Default()
		doc.View.Reading = reading
		for _, section := range page.Sections(reading) {
			in := input(t, doc, design.DefaultBook(), words.English(), section)
			for _, whole := range page.Whole(in) {
				if whole.Target != "section" {
					continue
				}
				root := parse(t, whole.HTML)
				root.walk(func(n *node) {
					path := n.path()
					if path == "" {
						return
					}
					for _, f := range page.Fragments(in, path) {
						assert.NotContains(t, f.HTML, `name="`+path+`"`, "fragment %s", f.Target)
						assert.True(t, f.Target == "strip" || f.Target == "picture-text" || strings.Contains(whole.HTML, `id="`+f.Target+`"`),
							"fragment %s has no place in section %s", f.Target, section)
					}
				})
			}
		}
	}
}

// What is fragment and what is section must say the same.
func TestFragmentsEqualTheSection(t *testing.T) {
	for name, doc := range everyScenario(t) {
		for _, reading := range readings {
			doc.View.Reading = reading
			for _, section := range page.Sections(reading) {
				in := input(t, doc, design.DefaultBook(), words.English(), section)
				var whole string
				for _, f := range page.Whole(in) {
					if f.Target == "section" {
						whole = f.HTML
					}
				}
				for _, f := range page.Fragments(in, "title") {
					if f.Target == "strip" || f.Target == "picture-text" {
						continue
					}
					assert.Contains(t, whole, f.HTML, "%s %s %s: %s", name, reading, section, f.Target)
				}
			}
		}
	}
}

// Which controls there are changes with an edit only within what is drawn anew after it: no
// choice leaves a control behind, or out.
func TestAChoiceLeavesNoControlBehind(t *testing.T) {
	bare := design.Default()
	bare.Design.Walls[0].Groups[0].Frame.Joint = design.NoFrame
	for name, doc := range map[string]design.Document{"default": design.Default(), "without a frame": bare, "s2": scenarios(t)["s2.json"]} {
		for _, reading := range readings {
			doc.View.Reading = reading
			for _, section := range page.Sections(reading) {
				before := parse(t, sectionOf(t, input(t, doc, design.DefaultBook(), words.English(), section)))
				for _, one := range choices(before) {
					if strings.HasPrefix(one.path, "view.") || strings.HasPrefix(one.path, design.RecordPrefix) || strings.HasPrefix(one.path, design.BookPrefix) {
						continue
					}
					edited, err := design.Set(doc, one.path, one.value, doc.View.Units)
					require.NoError(t, err)
					in := input(t, edited, design.DefaultBook(), words.English(), section)
					anew := map[string]bool{}
					for _, f := range page.Fragments(in, one.path) {
						anew[f.Target] = true
					}
					assert.Equal(t, standing(before, anew), standing(parse(t, sectionOf(t, in)), anew),
						"%s %s %s: %s = %s", name, reading, section, one.path, one.value)
				}
			}
		}
	}
}

// choices are the values that the choices of a page offer.
func choices(root *node) []offer {
	var all []offer
	root.walk(func(n *node) {
		switch {
		case n.tag == "option" && n.parent.tag == "select":
			all = append(all, offer{path: n.parent.attrs["name"], value: n.attrs["value"]})
		case n.tag == "input" && n.attrs["type"] == "checkbox":
			all = append(all, offer{n.attrs["name"], "yes", ""}, offer{n.attrs["name"], "no", ""})
		}
	})
	return all
}

// standing are the names of the controls outside the parts that are drawn anew, in order.
func standing(root *node, anew map[string]bool) []string {
	var all []string
	root.walk(func(n *node) {
		for at := n; at != nil; at = at.parent {
			if anew[at.attrs["id"]] {
				return
			}
		}
		if path := n.path(); path != "" && !slices.Contains(all, path) {
			all = append(all, path)
		}
	})
	return all
}

// A title is text, whatever stands in it.
func TestATitleIsText(t *testing.T) {
	doc := design.Default()
	doc.Design.Title = `<script>alert(1)</script> "x" & </title>`
	var b bytes.Buffer
	require.NoError(t, page.Index(&b, assets(), input(t, doc, design.DefaultBook(), words.English(), page.Look)))
	assert.NotContains(t, b.String(), "<script>alert")
	assert.Contains(t, b.String(), "&lt;script&gt;alert(1)&lt;/script&gt;")
}

func TestSectionThatAReaderDoesNotHave(t *testing.T) {
	doc := design.Default()
	in := input(t, doc, design.DefaultBook(), words.English(), page.Bench)
	for _, f := range page.Whole(in) {
		if f.Target == "nav" {
			assert.Contains(t, f.HTML, `href="#look" aria-current="page"`)
			assert.NotContains(t, f.HTML, "#bench")
		}
	}
}

// In inches a step to the next block still is exactly a whole block.
func TestStepsToTheNextBlockAreExact(t *testing.T) {
	doc := design.Default()
	doc.View.Units = length.Inch16
	in := input(t, doc, design.DefaultBook(), words.English(), page.Look)
	columns := in.Plan.Groups[0].Built.Columns
	for _, f := range page.Fragments(in, "walls[0].groups[0].width") {
		if f.Target != "snap-0-0" {
			continue
		}
		root := parse(t, f.HTML)
		var steps []int
		root.walk(func(n *node) {
			if n.attrs["data-set"] != "walls[0].groups[0].width" {
				return
			}
			after, err := design.Set(doc, n.attrs["data-set"], n.attrs["value"], doc.View.Units)
			require.NoError(t, err)
			got, _ := after.Design.Walls[0].Groups[0].Grid()
			steps = append(steps, got-columns)
		})
		assert.Equal(t, []int{-1, 1}, steps)
	}
}

func BenchmarkFragments(b *testing.B) {
	for _, reading := range readings {
		doc := design.Default()
		doc.View.Reading = reading
		in := input(b, doc, design.DefaultBook(), words.English(), page.Look)
		b.Run(reading, func(b *testing.B) {
			for b.Loop() {
				page.Fragments(in, "walls[0].groups[0].width")
			}
		})
	}
}

// How a job went stands on the workshop's page once it has begun, and on nobody else's.
func TestOutcomeIsTheWorkshops(t *testing.T) {
	doc := design.Default()
	at := func(reading string, change func(*engine.Job)) string {
		doc.View.Reading = reading
		in := input(t, doc, design.DefaultBook(), words.English(), page.Money)
		change(&in.Job)
		return html2text(t, page.Whole(in))
	}
	timed := func(j *engine.Job) {
		j.Record = design.CloneRecord(j.Record)
		for i := range j.Record.Times {
			if j.Record.Times[i].Task == "d2" {
				j.Record.Times[i].Reckoned, j.Record.Times[i].Minutes = 200, 260
			}
		}
	}
	before := at(page.Maker, func(*engine.Job) {})
	assert.Contains(t, before, "Once you have typed what the job really took")
	for _, path := range []string{"record.times[0].minutes", "record.spent[0].amount", "record.weighed[0].kg"} {
		assert.Contains(t, before, `data-field="`+path+`"`, "and the way there")
	}
	assert.NotContains(t, before, "Left after cost")
	text := at(page.Maker, timed)
	assert.NotContains(t, text, "Once you have typed")
	assert.Contains(t, text, "<li>Cut the blocks, in all</li>", "what still counts as reckoned is named")
	assert.Contains(t, text, "<li>Tidy the shop</li>")
	for _, want := range []string{"How it went", "<td>200\u00a0min</td><td>260\u00a0min</td><td>&#43;60\u00a0min</td>", "Left after cost", "and no less than", " points</td>"} {
		assert.Contains(t, text, want)
	}
	begun := func(j *engine.Job) {
		j.Record = design.CloneRecord(j.Record)
		j.Record.States = []design.Passed{{State: "on the bench", Revision: "000000"}}
	}
	assert.Contains(t, at(page.Maker, begun), "How it went")
	for _, reading := range []string{page.Client, page.Builder} {
		assert.NotContains(t, at(reading, timed), "How it went", reading)
	}
}

// A place of no height has no block, and the reader is told why blocks are fewer than
// places: together they are all of the field, 33 × 22 = 726.
func TestPlacesWithoutABlockAreSaid(t *testing.T) {
	doc := design.Default()
	doc.View.Reading = page.Client
	shown := section(t, doc, design.DefaultBook(), page.Look)
	assert.Contains(t, shown, "726 blocks")
	assert.NotContains(t, shown, "no block")
	doc.Design.Walls[0].Groups[0].Heights = []length.Length{length.MM(0), length.MM(42), length.MM(64), length.MM(92)}
	shown = section(t, doc, design.DefaultBook(), page.Look)
	assert.Contains(t, shown, "542 blocks")
	assert.Contains(t, shown, "184 places have no block")
}
