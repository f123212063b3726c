package session_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/session"
)

// A design file of an earlier program brings its weighed mass and its answers into the
// record of the job, which the page keeps; what the page has kept itself comes first.
func TestEarlierFilesFillTheRecord(t *testing.T) {
	doc := design.Default()
	doc.Design.Title = "Of an earlier program"
	text := strings.Replace(string(design.Encode(doc)), `"public": false,`, `"public": true, "fireAnswer": "B. Warden: class C",`, 1)
	text = strings.Replace(text, `"stand": {`, `"weighed": 45, "stand": {`, 1)
	for _, from := range []string{"file", "saved"} {
		s := fresh()
		res := ask(t, s, session.Request{Op: "open", Text: text, From: from})
		require.True(t, res.OK, "%v", res.Faults)
		require.NotNil(t, res.Record, "the page is to keep it")
		rec, err := design.DecodeRecord([]byte(*res.Record))
		require.NoError(t, err)
		assert.Equal(t, "B. Warden: class C", rec.Asked.Fire)
		require.Len(t, rec.Weighed, 1)
		assert.Equal(t, 45.0, rec.Weighed[0].Kg)
		assert.InDelta(t, 38.8, rec.Weighed[0].Reckoned, 0.1, "as the design of now is reckoned")
		assert.NotContains(t, res.Text, "fireAnswer")

		kept := design.NewRecord()
		kept.Asked.Drill = "The janitor"
		res = ask(t, s, session.Request{Op: "open", Text: string(design.EncodeRecord(kept)), From: "saved"})
		require.NotNil(t, res.Record)
		rec, err = design.DecodeRecord([]byte(*res.Record))
		require.NoError(t, err)
		assert.Equal(t, []any{"B. Warden: class C", "The janitor", 45.0}, []any{rec.Asked.Fire, rec.Asked.Drill, rec.Weighed[0].Kg})
	}
}
