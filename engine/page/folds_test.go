package page_test

import (
	"slices"
	"strings"
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/page"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// inSight are the texts of a section that no fold hides: of a folded part only the line
// that is left of it.
func (n *node) inSight() []string {
	if n.tag != "details" {
		if n.tag == "" {
			return n.visible()
		}
		var all []string
		for _, k := range n.kids {
			all = append(all, k.inSight()...)
		}
		return all
	}
	for _, k := range n.kids {
		if k.tag == "summary" {
			return k.visible()
		}
	}
	return nil
}

// The parts of the Bench, and what is asked once of the Look and the Wall, are folded, each with
// its answer in the line that is left; and no Stop and no Caution is hidden by that, whatever it is about.
func TestFoldsHideNoStop(t *testing.T) {
	jobs := scenarios(t)
	for name, edits := range map[string][]page.Edit{
		"short tail":    {{Path: "bench.carrier", Value: "no"}, {Path: "bench.holdTail", Value: "149 mm"}},
		"finished":      {{Path: "walls[0].groups[0].finish.when", Value: "before gluing"}},
		"alike":         {{Path: "walls[0].groups[0].panelsWide", Value: "3"}},
		"too shallow":   {{Path: "walls[0].groups[0].frame.board", Value: "60 mm"}},
		"cold and tiny": {{Path: "bench.temperature", Value: "9"}, {Path: "walls[0].groups[0].heights", Value: "11.9, 42, 64, 92"}},
	} {
		doc := design.Default()
		for _, e := range edits {
			var err error
			doc, err = design.Set(doc, e.Path, e.Value, length.Metric)
			require.NoError(t, err)
		}
		jobs[name] = doc
	}
	for _, place := range []struct {
		section string
		rooms   []string
		folds   int
	}{
		{page.Bench, []string{"bench", "moisture", "record"}, 7},
		{page.Wall, []string{"wall"}, 7},
		{page.Look, []string{"panel", "pattern", "frame"}, 4},
	} {
		stops := 0
		for name, doc := range jobs {
			for _, reading := range []string{page.Maker, page.Builder} {
				doc.View.Reading = reading
				html := section(t, doc, design.DefaultBook(), place.section)
				root := parse(t, html)
				seen := strings.Join(root.inSight(), " ")
				in := input(t, doc, design.DefaultBook(), words.English(), place.section)
				for _, w := range in.Plan.WatchOuts {
					room, _, _ := strings.Cut(w.Code, "/")
					if w.Level < check.Caution || !slices.Contains(place.rooms, room) {
						continue
					}
					if field := w.Field; field != "" && !strings.Contains(html, `name="`+field+`"`) {
						continue // it stands in the section that has its field
					}
					if w.Level == check.Stop {
						stops++
					}
					said := strings.ReplaceAll(in.Words.Say(w.Code, w.Args), "\u00a0", " ")
					assert.Contains(t, seen, said, "%s, %s: %s", name, reading, w.Code)
				}
				folds := 0
				root.walk(func(n *node) {
					class := " " + n.attrs["class"] + " "
					if n.tag != "details" || !strings.Contains(class, " part ") && !strings.Contains(class, " folded ") || strings.HasPrefix(n.attrs["id"], "obstacle-") {
						return
					}
					folds++
					assert.NotContains(t, n.attrs, "open", "%s: %s", name, n.attrs["id"])
					answer := ""
					n.walk(func(k *node) {
						if k.attrs["class"] == "answer" {
							answer = textOf(k)
						}
					})
					assert.NotEmpty(t, answer, "%s: %s", name, n.attrs["id"])
					assert.Empty(t, n.having("watch"), "%s: %s", name, n.attrs["id"])
				})
				assert.GreaterOrEqual(t, folds, place.folds, name)
			}
		}
		assert.Positive(t, stops, place.section)
	}
}
