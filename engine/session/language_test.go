package session_test

import (
	"encoding/json"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func german(t *testing.T, s *session.Session, req session.Request) session.Response {
	t.Helper()
	if req.Language == "" {
		req.Language = "de"
	}
	request, err := json.Marshal(req)
	require.NoError(t, err)
	var res session.Response
	require.NoError(t, json.Unmarshal(s.Handle(request), &res))
	return res
}

// The first design is in the language that the page came in, whatever it turns to later.
func TestLanguageOfThePage(t *testing.T) {
	s := session.New(design.DefaultBook())
	res := german(t, s, session.Request{Op: "hello"})
	assert.Empty(t, res.Language, "the page is in it already")
	assert.Equal(t, "de", s.Document().View.Language)
	assert.Equal(t, "Paneel für ein Wohnzimmer", res.Title)

	res = german(t, s, session.Request{Op: "set", Path: "view.language", Value: "en"})
	assert.Equal(t, "en", res.Language)
	assert.Equal(t, "File", res.Says["page/menu"])
	assert.Equal(t, "Panel for a living room", res.Title)
	res = german(t, s, session.Request{Op: "new", Language: "en"})
	assert.Equal(t, "en", s.Document().View.Language, "the reader's own stays")
	assert.Empty(t, res.Language)
	assert.False(t, res.CanUndo, "a change of the view is no step")
}

// What was typed is read with the marks of the reader's language, and a fault repeats it so.
func TestTypedInGerman(t *testing.T) {
	s := session.New(design.DefaultBook())
	german(t, s, session.Request{Op: "hello"})
	slack := "walls[0].groups[0].block.slack"
	set := func(path, value string, typed bool) session.Response {
		return german(t, s, session.Request{Op: "set", Path: path, Value: value, Typed: typed})
	}
	require.Empty(t, set(slack, "0,35 mm", true).Faults)
	assert.Equal(t, "0.35 mm", s.Document().Design.Walls[0].Groups[0].Block.Slack.String())
	require.Empty(t, set(slack, "0.25 mm", false).Faults, "a button's values are as in files")
	assert.Equal(t, "0.25 mm", s.Document().Design.Walls[0].Groups[0].Block.Slack.String())
	require.Empty(t, set("walls[0].groups[0].heights", "26,5; 42; 64; 92", true).Faults)
	assert.Equal(t, "26.5 mm", s.Document().Design.Walls[0].Groups[0].Heights[0].String())
	require.Empty(t, set("title", "1.500, oder mehr", true).Faults)
	assert.Equal(t, "1.500, oder mehr", s.Document().Design.Title, "a text is no number")

	require.Empty(t, set("money.budget", "1.500", true).Faults)
	assert.Equal(t, design.Units(1500), s.Document().Design.Money.Budget)
	for typed, want := range map[string]string{
		"12,5x": "12,5x ist kein Geldbetrag. Schreiben Sie ihn wie 42 oder 0,55, ohne die Währung.",
	} {
		res := set("money.budget", typed, true)
		require.Len(t, res.Faults, 1, typed)
		assert.Contains(t, res.Faults[0].Message, want)
		assert.Equal(t, "Budget, mit Steuer", res.Faults[0].Label)
	}
	assert.Contains(t, set("walls[0].width", "1.500", true).Faults[0].Message,
		"1.500 kann 1500 oder 1,5 heißen. Schreiben Sie kein Tausenderzeichen, und ein Komma vor die Dezimalen.")
	res := set(slack, "9,5", true)
	require.Len(t, res.Faults, 1)
	assert.Equal(t, "9,5 mm liegt außerhalb des Bereichs. Erlaubt: 0 mm bis 1,5 mm.", res.Faults[0].Message)
}
