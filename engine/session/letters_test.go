package session_test

import (
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const today = "2030-03-01"

// written is the letter that the reader of a session would send.
func written(t *testing.T, s *session.Session, photos ...design.Photo) *session.File {
	t.Helper()
	res := ask(t, s, session.Request{Op: "save", Name: "letter", Today: today, Photos: photos})
	require.True(t, res.OK, "%v", res.Faults)
	require.NotNil(t, res.File)
	return res.File
}

// enquired is a client's session with an enquiry written, and the enquiry.
func enquired(t *testing.T) (*session.Session, *session.File) {
	t.Helper()
	s := fresh()
	ask(t, s, session.Request{Op: "section", Name: "money"})
	set(t, s, "money.budget", "2400")
	for path, value := range map[string]string{
		"name": "Ada Beech", "reach": "ada@example.org", "message": "For the music room.",
	} {
		require.True(t, set(t, s, "record.client."+path, value).OK)
	}
	require.True(t, set(t, s, "record.days.needBy", "2030-06-30").OK)
	return s, written(t, s)
}

// What a client sees before a letter leaves is what is in it; and no link and no design
// file ever holds who writes.
func TestWhatLeavesIsShown(t *testing.T) {
	s, file := enquired(t)
	shown := html(ask(t, s, session.Request{Op: "section", Name: "money", Workshop: "shop@example.org"}))
	l, doc, err := design.DecodeLetter([]byte(file.Text))
	require.NoError(t, err)
	assert.Equal(t, s.Document().Design, doc.Design)
	for _, what := range []string{l.Name, l.Reach, l.Message, l.Wished, "2400", doc.Design.Revision(), "shop@example.org"} {
		assert.Contains(t, shown, what)
	}
	assert.Contains(t, shown, `href="mailto:shop@example.org?subject=Enquiry%3a%20`)
	_, mail, _ := strings.Cut(shown, `href="mailto:`)
	mail, _, _ = strings.Cut(mail, `"`)
	link := ask(t, s, session.Request{Op: "link"}).Link
	linked, err := design.DecodeLink(link)
	require.NoError(t, err)
	for _, who := range []string{"Ada", "ada@", "music%20room", "music room"} {
		assert.NotContains(t, mail, who)
		assert.NotContains(t, string(design.Encode(linked)), who)
		assert.NotContains(t, ask(t, s, session.Request{Op: "save"}).File.Text, who)
		assert.NotContains(t, l.Copy, who)
	}
	assert.True(t, strings.HasSuffix(file.Name, doc.Design.Revision()+".txt"), file.Name)
	assert.NotContains(t, file.Name, "ada")
}

// An enquiry opens as a job of its own with whoever wrote it; the answer shows the client
// what was changed, and whoever has written keeps their name.
func TestAnEnquiryIsAnswered(t *testing.T) {
	client, file := enquired(t)
	maker := fresh()
	set(t, maker, "view.reading", "maker")
	set(t, maker, "record.days.people", "3") // of the job before
	before := ask(t, maker, session.Request{Op: "section", Name: "money"}).Opening
	res := open(t, maker, file.Text)
	require.True(t, res.OK, "%v", res.Faults)
	assert.NotEqual(t, before, res.Opening, "a job of its own")
	require.NotNil(t, res.Record)
	assert.Contains(t, *res.Record, "Ada Beech")
	assert.NotContains(t, *res.Record, `"people": 3`)
	assert.Equal(t, "maker", res.Reading)
	shown := html(ask(t, maker, session.Request{Op: "section", Name: "money"}))
	for _, what := range []string{"Ada Beech", "For the music room.", "2030-06-30", "2030-03-01", `href="mailto:ada@example.org?`, "Nothing that the client sees."} {
		assert.Contains(t, shown, what)
	}
	set(t, maker, "walls[0].groups[0].wood", "oak")
	set(t, maker, "bench.kerf", "4")
	set(t, maker, "record.client.answer", "Oak goes with your floor.")

	answer := written(t, maker)
	l, _, err := design.DecodeLetter([]byte(answer.Text))
	require.NoError(t, err)
	assert.Empty(t, l.Name)
	assert.NotContains(t, answer.Text, "Ada")
	assert.NotContains(t, answer.Text, "music")
	asked, _, err := design.DecodeLetter([]byte(file.Text))
	require.NoError(t, err)
	assert.Equal(t, asked.Copy, l.Asked)

	res = open(t, client, answer.Text)
	require.True(t, res.OK, "%v", res.Faults)
	assert.Equal(t, "client", res.Reading)
	shown = html(ask(t, client, session.Request{Op: "section", Name: "money"}))
	assert.Contains(t, shown, "Oak goes with your floor.")
	assert.Contains(t, shown, `<th scope="row">Wood</th><td>Poplar</td><td><b>Oak</b></td>`)
	assert.Contains(t, shown, "1 further value that concerns the work in the shop.")
	assert.NotContains(t, shown, "bench.kerf")
	assert.Contains(t, shown, `value="Ada Beech"`, "nobody types their name twice")

	// Somebody who did not write gets the answer without a name.
	other := fresh()
	set(t, other, "record.client.name", "Ben")
	require.True(t, open(t, other, answer.Text).OK)
	assert.NotContains(t, html(ask(t, other, session.Request{Op: "section", Name: "money"})), "Ben")
}

// A letter that is refused leaves everything as it was, and says so.
func TestARefusedLetterChangesNothing(t *testing.T) {
	_, file := enquired(t)
	s := fresh()
	before := s.Document()
	for _, bad := range []string{
		strings.Replace(file.Text, `"copy": "`, `"copy": "A`, 1), strings.Replace(file.Text, `"name"`, `"nome"`, 1), file.Text[:len(file.Text)-40],
	} {
		res := open(t, s, bad)
		assert.False(t, res.OK)
		assert.NotEmpty(t, res.Faults)
		assert.NotEmpty(t, res.Stays)
		assert.Nil(t, res.Record)
		assert.Equal(t, before, s.Document())
	}
	tooMany := ask(t, s, session.Request{Op: "save", Name: "letter", Photos: make([]design.Photo, 7)})
	assert.False(t, tooMany.OK)
	assert.Nil(t, tooMany.File)
}

// Neither letter holds a figure of the workshop's book, a line of its price or anything of
// the record beside what its writer has typed for the other to read.
func TestLettersHoldNoPrivateFigure(t *testing.T) {
	book, digits := designtest.Sentinel(t)
	_, file := enquired(t)
	maker := fresh()
	require.True(t, openBook(t, maker, design.EncodeBook(book), "file").OK)
	set(t, maker, "view.reading", "maker")
	require.True(t, open(t, maker, file.Text).OK)
	ask(t, maker, session.Request{Op: "section", Name: "money"})
	set(t, maker, "record.client.answer", "As you like it.")
	set(t, maker, "record.times[0].minutes", "4711")
	set(t, maker, "record.spent[0].amount", "8123")
	set(t, maker, "record.asked.fire", "asked the fire officer")
	set(t, maker, "record.hung.found", "a crack")
	require.True(t, ask(t, maker, session.Request{Op: "act", Name: "make-offer", Value: "30", Today: today}).OK)
	price := maker.Plan().Price
	secrets := append([]string{"4711", "8123", "fire officer", "crack", "Ada", "ada@"}, digits...)
	for _, l := range price.Lines {
		secrets = append(secrets, l.Amount.Plain())
	}
	for _, m := range []interface{ Plain() string }{price.BoughtIn, price.Markup, price.Labour, price.Overhead, price.Direct, price.Contingency, price.Cost, price.List, price.Margin, price.Low, price.High} {
		secrets = append(secrets, m.Plain())
	}
	whole := func(text string) string {
		l, doc, err := design.DecodeLetter([]byte(text))
		require.NoError(t, err)
		all := string(design.Encode(doc))
		if l.Asked != "" {
			asked, err := design.DecodeCopy(l.Asked)
			require.NoError(t, err)
			all += string(design.Encode(asked))
		}
		l.Copy, l.Asked = "", "" // their letters hold digits by chance
		return all + string(design.EncodeLetter(l))
	}
	leaks := func(text string) []string { return leaked(text, secrets) }
	answer := whole(written(t, maker).Text)
	assert.Contains(t, answer, `"gross"`, "the offer goes along")
	assert.Contains(t, answer, `"readyBy"`, "with its days")
	assert.Empty(t, leaks(answer))
	assert.Equal(t, []string{"Ada", "ada@"}, leaks(whole(file.Text)), "who writes an enquiry, and nothing else")

	// What the client sees of it, neither; and the net can catch.
	client := fresh()
	require.True(t, open(t, client, written(t, maker).Text).OK)
	assert.Empty(t, leaks(html(ask(t, client, session.Request{Op: "section", Name: "money"}))))
	assert.NotEmpty(t, leaks(ask(t, maker, session.Request{Op: "save", Name: "record"}).File.Text))
}

// open opens a text as a chosen file.
func open(t *testing.T, s *session.Session, text string) session.Response {
	t.Helper()
	return ask(t, s, session.Request{Op: "open", Text: text, From: "file", Today: today})
}

// A second enquiry of the same client about the same design is known, and becomes a change
// of the job that is kept: what the workshop has settled stays.
func TestASecondEnquiryIsAChange(t *testing.T) {
	client, first := enquired(t)
	maker := fresh()
	set(t, maker, "view.reading", "maker")
	require.True(t, open(t, maker, first.Text).OK)
	set(t, maker, "bench.kerf", "4")
	set(t, maker, "money.discount", "3")
	set(t, maker, "record.days.people", "2")
	kept := session.Job{ID: "ada", Text: ask(t, maker, session.Request{Op: "save"}).File.Text, Record: ask(t, maker, session.Request{Op: "save", Name: "record"}).File.Text}
	other, _ := named("oak")

	require.True(t, set(t, client, "walls[0].groups[0].wood", "oak").OK)
	set(t, client, "money.budget", "2900")
	set(t, client, "record.client.message", "And in oak?")
	second := written(t, client)
	known := func(text string, jobs ...session.Job) session.Response {
		res := ask(t, maker, session.Request{Op: "known", Text: text, Jobs: jobs})
		assert.True(t, res.OK)
		assert.Empty(t, res.Fragments)
		return res
	}
	assert.Equal(t, "letter", known(second.Text).Wants)
	assert.Empty(t, known(kept.Text).Wants, "a design")
	res := known(second.Text, other, session.Job{ID: "broken", Text: "{"}, kept)
	assert.Equal(t, "ada", res.Found)
	assert.Contains(t, res.Old, "Ada Beech")
	assert.Empty(t, known(second.Text, other).Found, "nobody else's job")
	assert.Empty(t, known(kept.Text, kept).Found, "no letter")
	assert.Empty(t, known(strings.Replace(second.Text, "ada@example.org", "ben@example.org", 1), kept).Found, "somebody else")
	assert.Equal(t, "ada", known(strings.Replace(second.Text, "ada@example.org", "Ada@Example.org ", 1), kept).Found)
	set(t, client, "title", "The porch")
	assert.Empty(t, known(written(t, client).Text, kept).Found, "about another design")

	later := fresh()
	set(t, later, "view.reading", "maker")
	require.True(t, ask(t, later, session.Request{Op: "open", Text: kept.Text, From: "saved"}).OK)
	res = ask(t, later, session.Request{Op: "open", Text: kept.Record, From: "saved"})
	require.True(t, res.OK)
	before := later.Document()
	taken := ask(t, later, session.Request{Op: "open", Text: second.Text, From: "again", Today: today})
	require.True(t, taken.OK, "%v", taken.Faults)
	assert.Equal(t, res.Opening, taken.Opening, "no other job")
	require.NotNil(t, taken.Record)
	for _, want := range []string{"And in oak?", `"people": 2`} {
		assert.Contains(t, *taken.Record, want)
	}
	d := later.Document().Design
	assert.Equal(t, "oak", d.Walls[0].Groups[0].Wood)
	assert.Equal(t, design.Units(2900), d.Money.Budget)
	assert.Equal(t, before.Design.Bench, d.Bench)
	assert.InDelta(t, 3, d.Money.Discount, 0)
	assert.Contains(t, taken.Details, "Wood: Poplar → Oak")
	assert.Contains(t, taken.Announce, "undo")
	require.True(t, ask(t, later, session.Request{Op: "undo"}).OK)
	assert.Equal(t, before, later.Document())

	broken := ask(t, later, session.Request{Op: "open", Text: second.Text[:80], From: "again"})
	assert.False(t, broken.OK)
	assert.Equal(t, before, later.Document())
}
