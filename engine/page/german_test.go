package page_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pointed is a number with a decimal point.
var pointed = regexp.MustCompile(`(^|[^\d.])\d+\.\d{1,2}($|[^\d.])`)

// The page in German says so, and writes numbers as Germans do, in its text and in its
// fields.
func TestGermanPage(t *testing.T) {
	for _, name := range []string{"default", "s2.json", "s3.json", "s5.json", "s8.json"} {
		doc := scenarios(t)[name]
		for i := range doc.Design.Walls {
			doc.Design.Walls[i].Note = "" // as somebody wrote it, in whatever language
			for j := range doc.Design.Walls[i].Obstacles {
				doc.Design.Walls[i].Obstacles[j].Note = ""
			}
		}
		doc.Design.Note = ""
		t.Run(name, func(t *testing.T) {
			for _, w := range input(t, doc, design.DefaultBook(), words.German(), page.Look).Plan.AllWatchOuts() {
				r := words.Reader{Language: words.German()}
				assert.NotEqual(t, w.Source, r.Given(w.Source), w.Code)
			}
			everyPage(t, doc, design.DefaultBook(), words.German(), func(t *testing.T, text string, root *node) {
				assert.Contains(t, text, `<html lang="de"`)
				assert.NotContains(t, text, "⟪")
				for _, s := range root.visible() {
					assert.NotRegexp(t, pointed, s)
				}
				root.walk(func(n *node) {
					if n.tag == "input" && n.attrs["type"] == "text" {
						assert.NotRegexp(t, pointed, n.attrs["value"], n.attrs["name"])
					}
				})
			})
		})
	}
}

// What stands around the sections can be said in another language: each text of it names
// its key, or is drawn anew by an answer.
func TestFrameInAnotherLanguage(t *testing.T) {
	in := input(t, design.Default(), design.DefaultBook(), words.German(), page.Look)
	frame := page.FrameOf(in)
	drawn := []string{"section", "strip", "nav", "picture-text", "title", "revision"}
	for _, f := range append(frame.Fragments, page.Whole(in)...) {
		drawn = append(drawn, f.Target)
	}
	var b strings.Builder
	require.NoError(t, page.Index(&b, assets(), in))
	said := 0
	parse(t, b.String()).walk(func(n *node) {
		for attr, name := range map[string]string{"data-say-title": "title", "data-say-label": "aria-label", "data-say-content": "content"} {
			if key, ok := n.attrs[attr]; ok {
				said++
				assert.Equal(t, frame.Says[key], strings.TrimSuffix(n.attrs[name], " (/)"), key)
			}
		}
		if key, ok := n.attrs["data-say"]; ok {
			said++
			assert.Equal(t, frame.Says[key], n.kids[0].text, key)
			return
		}
		for _, child := range n.kids {
			if child.tag == "" && strings.ContainsAny(child.text, "abcdefghijklmnopqrstuvwxyz") && n.attrs["data-in-de"] == "" {
				assert.True(t, anew(n, drawn), "%s: %q", n.tag, child.text)
			}
		}
	})
	assert.Greater(t, said, 100)
}

// Whatever a task can be counted by has its word in both languages.
func TestTasksAreCountedInWords(t *testing.T) {
	for _, measure := range bench.Measures() {
		for _, language := range []words.Language{words.English(), words.German()} {
			assert.True(t, language.Has("per/"+measure), "%s: %s", language.Tag, measure)
		}
	}
}

// anew reports whether an answer draws an element, or whether it says the same in every
// language.
func anew(n *node, drawn []string) bool {
	for ; n != nil; n = n.parent {
		if slices.Contains(drawn, n.attrs["id"]) || n.attrs["name"] == "view.language" {
			return true
		}
	}
	return false
}
