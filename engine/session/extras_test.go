package session_test

import (
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is bought in for one job is part of its design. The maker reads that it goes
// along with the link; a client reads what it is and no figure of it; the link holds
// both, so that the client's range does too.
func TestBoughtInLinesGoWithTheLink(t *testing.T) {
	doc := design.Default()
	doc.Design.Money.Extras = []design.Extra{{Name: "Floor stand", Amount: 70_13_57_00}}
	s := fresh()
	require.True(t, openBook(t, s, design.Encode(doc), "file").OK)
	const what, figure = "Floor stand", "7013.57"

	link := ask(t, s, session.Request{Op: "link"}).Link
	back, err := design.DecodeLink(link)
	require.NoError(t, err)
	assert.Equal(t, doc.Design, back.Design, "the same design, with the same revision")
	assert.Equal(t, figure, back.Design.Money.Extras[0].Amount.String())

	assert.Contains(t, read(t, s, "maker", "money"), "its link hold "+what+" with the amounts")
	for _, section := range []string{"look", "sound", "wall", "money"} {
		shown := read(t, s, "client", section)
		assert.NotContains(t, shown, figure, section)
		assert.NotContains(t, shown, "7,013", section)
		assert.NotContains(t, shown, "with the amounts", section)
	}
	assert.Contains(t, read(t, s, "client", "money"), "beside the panels: "+what)

	other := fresh()
	require.True(t, ask(t, other, session.Request{Op: "open", Link: link, From: "link"}).OK)
	require.True(t, set(t, other, "view.reading", "client").OK)
	assert.Equal(t, read(t, s, "client", "money"), read(t, other, "client", "money"), "the client reads what the maker said the client would read")
}
