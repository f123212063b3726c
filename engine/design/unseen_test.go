package design_test

import (
	"reflect"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Characters that turn the writing round, hide in it or steer a terminal: the
// explicit directional formatting of the Unicode bidirectional algorithm (UAX 9,
// section 2), invisible operators, tags, line separators, controls.
const unseen = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u200e\u200f\u061c\u200b\u2060\u2063\ufeff\u00ad\ufff9\U000e0041\u2028\u2029\x1b\u009b\x00"

// No text that a person can type or a file can hold takes them: whatever is shown
// to others, on the page, on paper or in a terminal, reads as it stands.
func TestNoTextTakesUnseenCharacters(t *testing.T) {
	texts := 0
	for _, f := range design.Fields() {
		if f.Kind != design.KindText || f.Fixed || strings.HasSuffix(f.Path, "].order") || strings.HasSuffix(f.Path, ".drawn") {
			continue
		}
		texts++
		path := strings.TrimPrefix(strings.ReplaceAll(f.Path, "[]", "[0]"), "design.")
		doc := design.Default()
		doc.Looks = []design.Look{{Name: "kept", Design: doc.Design}}
		for _, list := range []string{"walls[0].obstacles", "money.extras"} {
			var err error
			doc, _, err = design.Add(doc, list)
			require.NoError(t, err)
		}
		for _, r := range unseen {
			_, err := design.Set(doc, path, "a"+string(r)+"b", length.Metric)
			require.ErrorContains(t, err, "which is not seen", "%s %U", path, r)
			require.ErrorContains(t, err, "at place 2", "%s %U", path, r)
		}
	}
	assert.Greater(t, texts, 12, "the table has texts")
}

// Nor does any text of a price book or a selling book.
func TestNoTextOfABookTakesUnseenCharacters(t *testing.T) {
	texts := 0
	for _, f := range design.BookFields() {
		if f.Kind != design.KindText {
			continue
		}
		texts++
		book := design.DefaultBook()
		book.Learned = []design.Learned{{Task: "c3", Factor: 1, Jobs: 1, Low: 1, High: 1}}
		book.Taxes = []design.TaxRate{{Name: "Books", Percent: 7}}
		book.Own = []string{"rates.shop"}
		v := reflect.ValueOf(&book).Elem()
		for name := range strings.SplitSeq(f.Path, ".") {
			entry, list := strings.CutSuffix(name, "[]")
			v = v.FieldByNameFunc(func(field string) bool { return strings.EqualFold(field, entry) })
			if list {
				v = v.Index(0)
			}
		}
		place := strings.ReplaceAll(f.Path, "[]", "[0]")
		if f.IsList {
			v, place = v.Index(0), place+"[0]"
		}
		v.SetString("a\u202eb")
		want := place + `: a\u202eb has the character U+202E at place 2, which is not seen and can turn or hide what is written`
		_, err := design.DecodeBook(design.EncodeBook(book))
		assert.EqualError(t, err, want)
	}
	assert.Equal(t, 13, texts)

	_, err := design.DecodeSelling(design.EncodeSelling(design.SellingBook{
		Format: design.SellingFormat, Version: 1, Name: "a\u2066b", Currency: "EUR",
	}))
	assert.ErrorContains(t, err, "name: ")
	assert.ErrorContains(t, err, "the character U+2066 at place 2")
}
