package design_test

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/jpeg"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func photo(t testing.TB, side int) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, side, 8)), nil))
	return base64.StdEncoding.EncodeToString(b.Bytes())
}

func enquiry(t testing.TB, doc design.Document) design.Letter {
	t.Helper()
	l, err := design.NewLetter(design.FromClient, doc)
	require.NoError(t, err)
	l.Day, l.Name, l.Reach, l.Wished = "2030-03-01", "Ada Beech", "ada@example.org", "2030-06-30"
	l.Message = "For the music room.\nWhat does oak cost?"
	l.Photos = []design.Photo{{Kind: "wall", Day: "2030-02-27", JPEG: photo(t, 40)}}
	return l
}

// What is written is read again, byte for byte, whatever the design.
func TestLettersGoRound(t *testing.T) {
	s := compiled(t, design.LetterSchema())
	for name, doc := range designtest.Documents(t) {
		l := enquiry(t, doc)
		require.NoError(t, design.ValidateLetter(l))
		text := design.EncodeLetter(l)
		assert.Equal(t, design.LetterFormat, design.FormatOf(text))
		back, copied, err := design.DecodeLetter(text)
		require.NoError(t, err, name)
		assert.Equal(t, l, back, name)
		doc.Looks = nil
		assert.Equal(t, doc, copied, name)
		assert.Equal(t, text, design.EncodeLetter(back), name)
		assert.NoError(t, validate(t, s, text), name)
	}
}

// A letter that was made to harm, or came to harm, is refused with what is wrong.
func TestHostileLetters(t *testing.T) {
	good := string(design.EncodeLetter(enquiry(t, design.Default())))
	_, _, err := design.DecodeLetter([]byte(good))
	require.NoError(t, err)
	link, err := design.EncodeCopy(design.Default())
	require.NoError(t, err)
	wide := design.Default()
	wide.Design.Walls[0].Width = length.MM(1)
	outOfRange, err := design.EncodeCopy(wide)
	require.NoError(t, err)
	bomb := packed(t, bytes.Repeat([]byte(" "), 40<<20))
	with := func(name, value string) string {
		_, rest, ok := strings.Cut(good, `"`+name+`": "`)
		require.True(t, ok, name)
		old, _, _ := strings.Cut(rest, `"`)
		return strings.Replace(good, `"`+name+`": "`+old, `"`+name+`": "`+value, 1)
	}
	for name, c := range map[string]struct{ text, want string }{
		"cut off":            {good[:len(good)/2], "cut off at line"},
		"newer":              {strings.Replace(good, `"version": 1`, `"version": 2`, 1), "version: was written by a newer program"},
		"a field of a book":  {strings.Replace(good, `"from"`, `"rates": {}, "from"`, 1), "rates: is not a field"},
		"from nobody":        {with("from", "bank"), "from: bank"},
		"no day":             {with("day", "2030-02-30"), "day: 2030-02-30"},
		"a long name":        {with("name", strings.Repeat("x", 121)), "name: "},
		"a name turned":      {with("name", "Ada\u202ehceeB"), "name: "},
		"a damaged copy":     {with("copy", "AA"+link[2:]), "copy: is damaged or cut off"},
		"a copy cut off":     {with("copy", link[:99]), "copy: is damaged or cut off"},
		"a copy of a bomb":   {with("copy", bomb), "copy: is too large"},
		"a copy of no wall":  {with("copy", outOfRange), "copy.design.walls[0].width: 1 mm"},
		"an enquiry answers": {strings.Replace(good, `"photos"`, `"asked": "`+link+`", "photos"`, 1), "asked: an enquiry answers nothing"},
		"no picture":         {with("jpeg", "AAAA"), "photos[0].jpeg: is no picture"},
		"a script":           {with("jpeg", base64.StdEncoding.EncodeToString([]byte("<svg onload=x>"))), "photos[0].jpeg: is no picture"},
		"a huge picture":     {with("jpeg", photo(t, 2001)), "photos[0].jpeg: is no picture"},
		"another kind":       {with("kind", "../wall"), "photos[0].kind: "},
	} {
		_, _, err := design.DecodeLetter([]byte(c.text))
		if assert.ErrorContains(t, err, c.want, name) {
			assert.ErrorAs(t, err, &design.Faults{}, name)
		}
	}
	_, _, err = design.DecodeLetter(bytes.Repeat([]byte("["), 5<<20))
	assert.Error(t, err)
}

// Every way in which two designs differ is told once, from either side.
func TestAlterations(t *testing.T) {
	before := design.Default()
	after := before
	for _, e := range [][2]string{{"walls[0].groups[0].wood", "oak"}, {"walls[0].groups[0].heights", "26, 42, 64"}, {"money.budget", "900"}} {
		var err error
		after, err = design.Set(after, e[0], e[1], length.Metric)
		require.NoError(t, err)
	}
	after, _, err := design.Add(after, "walls[0].groups")
	require.NoError(t, err)
	after.View.Lamp.Azimuth = 10 // no change of the design
	assert.Equal(t, []design.Alteration{
		{Path: "walls[0].groups[0].heights"}, {Path: "walls[0].groups[0].wood"}, {Path: "walls[0].groups[1]", Added: true}, {Path: "money.budget"},
	}, design.Alterations(before, after, length.Metric))
	back := design.Alterations(after, before, length.Metric)
	assert.Contains(t, back, design.Alteration{Path: "walls[0].groups[1]", Gone: true})
	assert.Len(t, back, 4)
	assert.Empty(t, design.Alterations(before, before, length.Metric))
}
