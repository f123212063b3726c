package design_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/length"
)

// earlierFile is the first design as an earlier program wrote it, with answers and a
// weighed panel in it.
func earlierFile(t testing.TB, fire, answers, weighed string) string {
	t.Helper()
	text := string(design.Encode(design.Default()))
	for _, change := range [][2]string{
		{`"public": false,`, `"public": false, "fireAnswer": ` + fire + `, "answers": ` + answers + `,`},
		{`"stand": {`, `"weighed": ` + weighed + `, "stand": {`},
	} {
		require.Equal(t, 1, strings.Count(text, change[0]), change[0])
		text = strings.Replace(text, change[0], change[1], 1)
	}
	return text
}

// A file of an earlier program opens; what belongs into the record of the job is taken
// out of the design, whose code is that of a design without, and is written no more.
func TestEarlierFilesOpen(t *testing.T) {
	doc, err := design.Decode([]byte(earlierFile(t, `"B. Warden: class C"`, `"Two\nlines"`, "41.5")))
	require.NoError(t, err)
	assert.Equal(t, design.Default().Design.Revision(), doc.Design.Revision())
	assert.Equal(t, string(design.Encode(design.Default())), string(design.Encode(doc)))
	d, earlier, found := design.TakeEarlier(doc.Design)
	require.True(t, found)
	assert.Equal(t, design.Default().Design, d)
	rec := earlier.Into(design.NewRecord())
	assert.Equal(t, "B. Warden: class C", rec.Asked.Fire)
	assert.Equal(t, "Two\nlines", rec.Asked.Other)
	assert.Equal(t, []design.Weighed{{Wall: 1, Group: 1, Kg: 41.5}}, rec.Weighed)
	require.NoError(t, design.ValidateRecord(rec))
	assert.Equal(t, "B. Warden: class C", doc.Design.Room.FireAnswer, "what was given is left as it was")

	mine := design.NewRecord()
	mine.Asked.Fire, mine.Weighed = "Mine", []design.Weighed{{Wall: 1, Group: 1, Kg: 40}}
	kept := earlier.Into(mine)
	assert.Equal(t, []any{"Mine", 40.0}, []any{kept.Asked.Fire, kept.Weighed[0].Kg}, "the record has the last word")

	_, _, found = design.TakeEarlier(design.Default().Design)
	assert.False(t, found)
	_, err = design.Set(doc, "room.fireAnswer", "x", doc.View.Units)
	assert.Error(t, err, "nobody writes it there any more")
}

// What was refused in an earlier file is refused still.
func TestEarlierFilesAreChecked(t *testing.T) {
	for _, c := range [][4]string{
		{"3", `""`, "0", "fireAnswer"}, {`"` + strings.Repeat("x", 121) + `"`, `""`, "0", "fireAnswer"},
		{`""`, `""`, "-1", "weighed"}, {`""`, `"\u202e"`, "0", "answers"},
	} {
		_, err := design.Decode([]byte(earlierFile(t, c[0], c[1], c[2])))
		require.Error(t, err, c)
		assert.Contains(t, err.Error(), c[3])
	}
}

// What the scales say is typed in kg, or in pounds with their sign: 112 lb are 50.802 kg.
func TestWeighedInPounds(t *testing.T) {
	rec := design.NewRecord()
	rec.Weighed = []design.Weighed{{Wall: 1, Group: 1}}
	for text, want := range map[string]float64{"50.8": 50.8, "50.8 kg": 50.8, "112 lb": 50.8, "112lbs": 50.8, "0": 0} {
		got, err := design.SetRecord(rec, "weighed[0].kg", text, length.Inch16)
		require.NoError(t, err, text)
		assert.Equal(t, want, got.Weighed[0].Kg, text)
	}
	for _, text := range []string{"lb", "112 oz", "-1 lb", "3000 lb"} {
		_, err := design.SetRecord(rec, "weighed[0].kg", text, length.Inch16)
		assert.Error(t, err, text)
	}
}
