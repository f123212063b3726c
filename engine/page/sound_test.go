package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"
)

// heardJobs are a near seat in a small room, a good fit, several panels, a café
// and the first design.
func heardJobs() []string { return []string{"s1.json", "s5.json", "s7.json", "s8.json", "default"} }

// heardInput is input with what was heard.
func heardInput(t testing.TB, doc design.Document, lang words.Language, section string) (page.Input, engine.Hearing) {
	t.Helper()
	in := input(t, doc, design.DefaultBook(), lang, section)
	h := hear(t, doc.Design)
	in.Heard, in.Plan = &h, in.Plan.With(h)
	return in, h
}

func sectionOf(t testing.TB, in page.Input) string {
	t.Helper()
	for _, f := range page.Whole(in) {
		if f.Target == "section" {
			return f.HTML
		}
	}
	t.Fatal("no section")
	return ""
}

// Whatever is said of sound comes out of the catalogue, the policy refuses none
// of it, and every picture has a place in the section and ids of its own.
func TestSoundIsSaidAndDrawn(t *testing.T) {
	for _, name := range heardJobs() {
		doc := bracketed(scenarios(t)[name])
		for _, reading := range readings {
			doc.View.Reading = reading
			in, h := heardInput(t, doc, words.Pseudo(), page.Sound)
			whole := sectionOf(t, in)
			ids := map[string]bool{}
			check := func(html string) {
				root := parse(t, html)
				for _, s := range root.visible() {
					assert.True(t, allowedAlone(outside(s)), "%s %s: not out of the catalogue: %q", name, reading, s)
				}
				root.walk(func(n *node) {
					assert.NotContains(t, n.attrs, "style")
					if id := n.attrs["id"]; id != "" {
						assert.False(t, ids[id], "id %s stands twice", id)
						ids[id] = true
					}
				})
			}
			check(whole)
			for _, f := range page.SoundPictures(h, in.Words) {
				check(f.HTML)
				assert.Equal(t, reading != page.Client, strings.Contains(whole, `id="`+f.Target+`"`), "%s %s %s", name, reading, f.Target)
			}
		}
	}
}

// What comes after a hearing is what the section says when it is drawn whole.
func TestAfterHearingEqualsTheSection(t *testing.T) {
	for _, name := range heardJobs() {
		doc := scenarios(t)[name]
		for _, reading := range readings {
			doc.View.Reading = reading
			for _, open := range page.Sections(reading) {
				in, _ := heardInput(t, doc, words.English(), open)
				whole := sectionOf(t, in)
				for _, f := range page.AfterHearing(in) {
					if f.Target != "strip" {
						assert.Contains(t, whole, f.HTML, "%s %s %s: %s", name, reading, open, f.Target)
					}
				}
			}
		}
	}
}

// A maker finds each watch-out about sound once in all sections: beside its
// field or in a list, or its sentence at the verdict.
func TestWatchOutsOfSoundAreSaidOnce(t *testing.T) {
	seen := 0
	for _, name := range heardJobs() {
		doc := scenarios(t)[name]
		doc.View.Reading = page.Maker
		for _, open := range page.Sections(page.Maker) {
			in, h := heardInput(t, doc, words.English(), open)
			text := strings.Join(parse(t, sectionOf(t, in)).visible(), " ")
			for _, w := range h.WatchOuts {
				n := strings.Count(text, in.Words.Say(w.Code, words.Args(w.Args)))
				assert.LessOrEqual(t, n, 1, "%s %s %s", name, open, w.Code)
				if w.Level > check.Note {
					seen += n
				}
			}
		}
	}
	assert.GreaterOrEqual(t, seen, 3, "the near seat and the small room of the booth, the room of the café")
}

// A client reads one answer and one sentence, and no frequency of a block, no
// chart and no watch-out of the workshop; the maker's strip counts what is wrong.
func TestClientsSound(t *testing.T) {
	doc := scenarios(t)["s1.json"]
	doc.View.Reading = page.Client
	in, _ := heardInput(t, doc, words.English(), page.Sound)
	text := strings.Join(parse(t, sectionOf(t, in)).visible(), " ")
	assert.Contains(t, text, "For its looks")
	assert.Contains(t, text, "too near for a spread to form")
	assert.NotContains(t, text, "The nearest listener sits", "said once, in the sentence")
	assert.NotContains(t, text, "half a wave")
	in.Section = page.Look
	assert.Contains(t, strings.Join(parse(t, sectionOf(t, in)).visible(), " "), "For its looks")
}
