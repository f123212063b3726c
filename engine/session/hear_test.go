package session_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/session"
	"blockfield/engine/words"
)

const earPath = "walls[0].listenerDistance"

// listenTo has another session hear what is open in s, and brings s the answer.
func listenTo(t testing.TB, s *session.Session) session.Response {
	t.Helper()
	return ask(t, s, heardBy(t, s))
}

// heardBy is the request with which the page brings s what another session heard.
func heardBy(t testing.TB, s *session.Session) session.Request {
	t.Helper()
	answer := ask(t, fresh(), session.Request{Op: "hear", Text: string(design.Encode(s.Document()))})
	require.Equal(t, s.Plan().Revision, answer.Revision)
	return session.Request{Op: "heard", Revision: answer.Revision, Text: answer.Heard}
}

func fragment(res session.Response, target string) string {
	for _, f := range res.Fragments {
		if f.Target == target {
			return wrapped(f.HTML)
		}
	}
	return ""
}

// The verdicts that go through the page say word for word what the hearing
// itself says: sentences, fit and watch-outs.
func TestVerdictsGoThroughThePageUnchanged(t *testing.T) {
	for _, name := range []string{"s1", "s2", "s3", "s5", "s7", "s8", "p1"} {
		d := designtest.Job(t, name)
		h, err := engine.Hear(d)
		require.NoError(t, err)
		text, err := json.Marshal(h.Heard())
		require.NoError(t, err)
		var back engine.Heard
		require.NoError(t, json.Unmarshal(text, &back))
		plan, err := engine.Plan(d, design.DefaultBook())
		require.NoError(t, err)
		again, ok := back.In(d, plan)
		require.True(t, ok, name)
		assert.Equal(t, h.Fit, again.Fit, name)
		assert.Equal(t, h.Room, again.Room, name)
		assert.Equal(t, h.WatchOuts, again.WatchOuts, name)
		for i, g := range h.Groups {
			assert.Equal(t, g.Verdict.Maker(), again.Groups[i].Verdict.Maker(), name)
		}
	}
}

// Before it is heard the section says that it listens; then it says what was
// heard; after an edit it says so until the next hearing, by what is known.
func TestTheSectionListens(t *testing.T) {
	s := fresh()
	ask(t, s, session.Request{Op: "section", Name: "sound"})
	before := html(ask(t, s, session.Request{Op: "hello"}))
	assert.Contains(t, before, "Listening…")
	assert.NotContains(t, before, "Good fit")

	after := fragment(listenTo(t, s), "sound-said")
	assert.Contains(t, after, "Good fit")
	assert.Contains(t, after, "does nothing for bass")
	assert.NotContains(t, after, " listening")

	edited := fragment(set(t, s, "walls[0].groups[0].width", "1.6 m"), "sound-said")
	assert.Contains(t, edited, "Good fit")
	assert.Contains(t, edited, " listening", "that is of the design before")
	assert.NotContains(t, fragment(listenTo(t, s), "sound-said"), " listening")
}

// What was heard of a design that is no longer open is dropped.
func TestAStaleHearingIsDropped(t *testing.T) {
	s := fresh()
	ask(t, s, session.Request{Op: "section", Name: "sound"})
	stale := heardBy(t, s)
	set(t, s, "walls[0].groups[0].width", "1.6 m")
	assert.Empty(t, ask(t, s, stale).Fragments)
	assert.Contains(t, html(ask(t, s, session.Request{Op: "hello"})), "Listening…")

	swapped := heardBy(t, s)
	swapped.Text = stale.Text
	assert.Empty(t, ask(t, s, swapped).Fragments, "verdicts of another revision")
}

// Another document that is opened is not judged by the last one.
func TestAnotherDesignIsNotJudgedByTheLast(t *testing.T) {
	for _, from := range []string{"file", "saved"} {
		s := fresh()
		ask(t, s, session.Request{Op: "section", Name: "sound"})
		listenTo(t, s)
		doc := design.Default()
		doc.Design = designtest.Job(t, "s8")
		opened := ask(t, s, session.Request{Op: "open", Text: string(design.Encode(doc)), From: from})
		assert.NotContains(t, fragment(opened, "section"), `class="fit"`, from)
		assert.Contains(t, fragment(opened, "section"), "Listening…", from)
	}
}

// A design that could not be heard is said, and the next one is tried.
func TestADesignThatCouldNotBeHeard(t *testing.T) {
	s := fresh()
	ask(t, s, session.Request{Op: "section", Name: "sound"})
	listenTo(t, s)
	res := ask(t, s, session.Request{Op: "heard", Name: "deaf", Revision: s.Plan().Revision})
	assert.Contains(t, fragment(res, "sound-said"), "could not be worked out")
	assert.NotContains(t, fragment(res, "sound-said"), "Good fit")
	assert.Contains(t, fragment(set(t, s, "walls[0].groups[0].width", "1.6 m"), "sound-said"), "Listening…")
	assert.Contains(t, fragment(listenTo(t, s), "sound-said"), "Good fit")
}

// The seat that is too near is said beside its field at once, by what is known
// of the panel, with a change that clears it.
func TestASeatTooNearIsSaidAtItsField(t *testing.T) {
	s := fresh()
	set(t, s, "view.reading", "maker")
	ask(t, s, session.Request{Op: "section", Name: "sound"})
	listenTo(t, s)
	res := set(t, s, earPath, "800 mm")
	at := fragment(res, "w-walls-0-listenerDistance")
	assert.Contains(t, at, "sits 800 mm")
	assert.Contains(t, at, "Mend it")
	assert.Contains(t, fragment(res, "strip"), "caution")
	start := strings.Index(at, `value="`) + len(`value="`)
	set(t, s, earPath, at[start:start+strings.Index(at[start:], `"`)])
	assert.Empty(t, fragment(listenTo(t, s), "w-walls-0-listenerDistance"))
}

// Every reading says the same in its own way: the client one sentence and no
// picture, the maker all.
func TestReadingsOfSound(t *testing.T) {
	s := fresh()
	listenTo(t, s)
	ask(t, s, session.Request{Op: "section", Name: "sound"})
	client := read(t, s, "client", "sound")
	maker := read(t, s, "maker", "sound")
	builder := read(t, s, "builder", "sound")
	for _, text := range []string{client, maker, builder} {
		assert.Contains(t, text, words.Reader{Language: words.English()}.Say("sound/fit-good"))
	}
	assert.NotContains(t, client, "sound-share")
	assert.NotContains(t, client, "half a wave")
	assert.Contains(t, maker, "sound-share-0-0")
	assert.Contains(t, maker, "One clump")
	assert.Contains(t, builder, "sound-share-0-0")
	assert.NotContains(t, builder, "One clump")
}

// A nonsense hearing changes nothing.
func TestNonsenseHearing(t *testing.T) {
	s := fresh()
	res := ask(t, s, session.Request{Op: "heard", Revision: s.Plan().Revision, Text: "{"})
	assert.NotEmpty(t, res.Faults)
	res = ask(t, s, session.Request{Op: "heard", Revision: s.Plan().Revision, Text: `{"revision":"` + s.Plan().Revision + `"}`})
	assert.Empty(t, res.Fragments)
	res = ask(t, s, session.Request{Op: "hear", Text: "{"})
	assert.NotEmpty(t, res.Faults)
	assert.Equal(t, design.Default().Design.Revision(), s.Plan().Revision)
}

func BenchmarkHear(b *testing.B) {
	s := fresh()
	text := string(design.Encode(s.Document()))
	for b.Loop() {
		ask(b, s, session.Request{Op: "hear", Text: text})
	}
}

// What is soft in a small room is noted in the section, and counts at once.
func TestWhatIsSoftInTheRoomCounts(t *testing.T) {
	s := fresh()
	set(t, s, "view.reading", "maker")
	set(t, s, "room.width", "2200 mm")
	section := html(ask(t, s, session.Request{Op: "section", Name: "sound"}))
	assert.Contains(t, section, `data-path="room.surfaces"`)
	listenTo(t, s)
	const first = "the first money is better spent on absorbing panels"
	assert.Contains(t, html(ask(t, s, session.Request{Op: "hello"})), first)
	added := html(ask(t, s, session.Request{Op: "act", Name: "add", Path: "room.surfaces"}))
	assert.Contains(t, added, `name="room.surfaces[0].share"`)
	assert.Contains(t, added, "Soft panels, 50 mm")
	assert.Contains(t, added, first, "a tenth of the walls is not enough")
	res := set(t, s, "room.surfaces[0].share", "40")
	assert.NotContains(t, fragment(res, "watch-outs"), first)
	assert.Contains(t, fragment(res, "sound-said"), "Good fit")
	assert.Contains(t, fragment(res, "sound-room"), "With what is noted")
	assert.Contains(t, fragment(set(t, s, "room.surfaces[0].lining", "heavy curtain"), "surface-0-name"), "Heavy curtain")
	gone := html(ask(t, s, session.Request{Op: "act", Name: "remove", Path: "room.surfaces[0]"}))
	assert.Contains(t, gone, first)
}
