package session_test

import (
	"strings"
	"testing"

	"blockfield/engine/design/designtest"
	"blockfield/engine/session"

	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
)

// One key takes all that is private off the page, wherever the maker is, and brings it
// back to the same place. It is no step of the history.
func TestFiguresAreHiddenDuringATalk(t *testing.T) {
	sentinel, digits := designtest.Sentinel(t)
	for _, section := range []string{"look", "wall", "bench", "money"} {
		s := atTheBook(t, sentinel)
		act(t, s, session.Request{Name: "why-open"})
		ask(t, s, session.Request{Op: "section", Name: section})
		before := s.Plan()
		res := act(t, s, session.Request{Name: "hide-figures"})
		assert.Equal(t, "client", res.Reading, section)
		assert.False(t, res.CanUndo, section)
		targets := map[string]bool{}
		for _, f := range res.Fragments {
			targets[f.Target] = true
			for _, d := range digits {
				assert.False(t, strings.Contains(f.HTML, d), "%s: %s in %s", section, d, f.Target)
			}
			for _, m := range []string{before.Price.Cost.Plain(), before.Price.Net.Format("en"), before.Price.Margin.Format("en"), `name="book.`, `name="record.`} {
				assert.False(t, strings.Contains(f.HTML, m), "%s: %s in %s", section, m, f.Target)
			}
		}
		for _, place := range []string{"strip", "nav", "section", "picture-text"} {
			assert.True(t, targets[place], "%s is drawn anew", place)
		}
		back := act(t, s, session.Request{Name: "hide-figures"})
		assert.Equal(t, "maker", back.Reading)
		assert.Equal(t, section, back.Section, "back to where the maker was")
		assert.Equal(t, before.Price, s.Plan().Price)
	}

	// A client who has the page alone gets nothing by it.
	s := fresh()
	openBook(t, s, design.EncodeBook(sentinel), "file")
	assert.Equal(t, "client", act(t, s, session.Request{Name: "hide-figures"}).Reading)
	assert.Equal(t, "client", act(t, s, session.Request{Name: "hide-figures"}).Reading)
}

// A page that is loaded again, or whose engine was begun anew, during a talk still hides the
// figures from a client who has it beside the maker, and the same key brings them back. A
// maker who chose to read as one again has ended the talk.
func TestATalkOutlastsItsSession(t *testing.T) {
	s := fresh()
	read(t, s, "maker", "bench")
	hidden := act(t, s, session.Request{Name: "hide-figures"})
	assert.Equal(t, "bench", hidden.Talk)

	again := fresh()
	ask(t, again, session.Request{Op: "open", Text: hidden.Text, From: "saved", Talk: hidden.Talk})
	res := ask(t, again, session.Request{Op: "section", Name: "money"})
	assert.NotContains(t, html(res), `name="record.`, "it is no client alone")
	assert.Equal(t, "bench", res.Talk)
	back := act(t, again, session.Request{Name: "hide-figures"})
	assert.Equal(t, "maker", back.Reading)
	assert.Equal(t, "bench", back.Section)
	assert.Empty(t, back.Talk)

	act(t, again, session.Request{Name: "hide-figures"})
	read(t, again, "maker", "look")
	assert.Contains(t, read(t, again, "client", "money"), `name="record.client.name"`, "a client's own page")

	invented := fresh()
	assert.Empty(t, ask(t, invented, session.Request{Op: "hello", Talk: "<b>"}).Talk)
}

// What was only visited, an example say, is read after another loading of the page as it was
// read before it, whatever the job beside it was: hidden figures stay hidden.
func TestAVisitIsReadAsItWas(t *testing.T) {
	s := fresh()
	read(t, s, "maker", "bench")
	job := ask(t, s, session.Request{Op: "section", Name: "bench"}).Text
	example := design.Default()
	example.Design.Walls[0].Groups[0].Wood = "oak"
	visit := ask(t, s, session.Request{Op: "open", Text: string(design.Encode(example)), From: "scenario"})
	assert.Equal(t, "maker", visit.Reading, "opened, it is read as the job was")
	hidden := act(t, s, session.Request{Name: "hide-figures"})
	assert.Equal(t, "bench", hidden.Talk)

	again := fresh()
	ask(t, again, session.Request{Op: "open", Text: job, From: "saved", Talk: hidden.Talk})
	res := ask(t, again, session.Request{Op: "open", Text: hidden.Text, From: "visit", Talk: hidden.Talk})
	assert.Equal(t, "client", res.Reading)
	assert.Equal(t, "bench", res.Talk)
	assert.NotContains(t, html(ask(t, again, session.Request{Op: "section", Name: "money"})), `name="record.`)
	back := act(t, again, session.Request{Name: "hide-figures"})
	assert.Equal(t, "maker", back.Reading)
	assert.Equal(t, hidden.Revision, back.Revision, "the example, not the job")
}
