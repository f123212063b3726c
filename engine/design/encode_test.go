package design_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/base32"
	"encoding/json"
	"math/big"
	"regexp"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFilesAreCanonical(t *testing.T) {
	for name, data := range designtest.Files(t) {
		doc, err := design.Decode(data)
		require.NoError(t, err, name)
		assert.Equal(t, string(data), string(design.Encode(doc)), name)
	}
}

// The standard library's encoder agrees on names, order, indentation and texts.
func TestCanonicalFormAgainstLibrary(t *testing.T) {
	for name, data := range designtest.Files(t) {
		doc, err := design.Decode(data)
		require.NoError(t, err, name)
		var b bytes.Buffer
		e := json.NewEncoder(&b)
		e.SetEscapeHTML(false)
		e.SetIndent("", "  ")
		require.NoError(t, e.Encode(doc))
		assert.Equal(t, b.String(), string(data), name)
	}
}

func TestEncodeDefaultAndBack(t *testing.T) {
	doc := design.Default()
	doc.Design.Title = "Quotes \" and \\, <b>, é, 木, a\u200cb"
	doc.Design.Note = "two\nlines"
	doc.Design.Work.SpeedFactor = 1.0000001
	doc.Design.Walls[0].Fixing.RatedShear = 1.5e-9
	doc.Design.Walls[0].Fixing.RatedPull = 3e-12
	doc.Looks = []design.Look{{Name: "first", Design: doc.Design}}
	doc.Offer = &design.Offer{
		Revision: doc.Design.Revision(), BookCode: design.DefaultBook().Code(),
		Net: design.Units(2280), Tax: design.Units(456), Gross: design.Units(2736), Currency: "XXX", ValidUntil: "2028-02-29",
	}
	data := design.Encode(doc)
	assert.Contains(t, string(data), `"ratedShear": 1.5e-9,`)
	assert.Contains(t, string(data), `"ratedPull": 3e-12,`)
	again, err := design.Decode(data)
	require.NoError(t, err)
	assert.Equal(t, doc, again)
	assert.Equal(t, string(data), string(design.Encode(again)))
}

func TestCloneSharesNothing(t *testing.T) {
	doc := design.Default()
	doc.Offer = &design.Offer{Currency: "XXX"}
	before := design.Encode(doc)
	c := design.Clone(doc)
	g := &c.Design.Walls[0].Groups[0]
	g.Heights[0] = length.MM(1)
	g.Name = "other"
	c.Design.Room.Goals[0] = "other"
	c.Assumed[0] = "other"
	c.Offer.Currency = "EUR"
	assert.Equal(t, string(before), string(design.Encode(doc)))
}

// The rule of the revision code, followed with the standard library: six letters
// of base 32 of the SHA-256 of the design without spaces, its lengths in
// millimetres.
func TestRevisionAgainstLibrary(t *testing.T) {
	crockford := base32.NewEncoding("0123456789ABCDEFGHJKMNPQRSTVWXYZ").WithPadding(base32.NoPadding)
	seen := map[string]string{}
	for name, data := range designtest.Files(t) {
		var file struct{ Design json.RawMessage }
		require.NoError(t, json.Unmarshal(data, &file))
		var plain bytes.Buffer
		require.NoError(t, json.Compact(&plain, file.Design))
		sum := sha256.Sum256(inMillimetres(t, plain.Bytes()))
		doc, err := design.Decode(data)
		require.NoError(t, err)
		code := doc.Design.Revision()
		assert.Equal(t, crockford.EncodeToString(sum[:])[:6], code, name)
		assert.Empty(t, seen[code], "%s has the code of %s", name, seen[code])
		seen[code] = name
	}
}

// inMillimetres writes the lengths in inches of a file anew, with exact numbers
// of the standard library: an inch is 25.4 mm.
func inMillimetres(t *testing.T, file []byte) []byte {
	t.Helper()
	return regexp.MustCompile(`"((\d+) )?(\d+(/\d+)?) in"`).ReplaceAllFunc(file, func(text []byte) []byte {
		sum := new(big.Rat)
		for _, number := range strings.Fields(strings.TrimSuffix(strings.Trim(string(text), `"`), " in")) {
			part, ok := new(big.Rat).SetString(number)
			require.True(t, ok, "%s", text)
			sum.Add(sum, part)
		}
		sum.Mul(sum, big.NewRat(254, 10))
		return []byte(`"` + strings.TrimSuffix(strings.TrimRight(sum.FloatString(6), "0"), ".") + ` mm"`)
	})
}

// What is built has one code, however it was typed; the file keeps what was.
func TestRevisionDoesNotDependOnNotation(t *testing.T) {
	doc := set(t, design.Default(), group+"width", "900 mm")
	code, book := doc.Design.Revision(), design.DefaultBook().Code()
	for _, text := range []string{"0.9 m", "90 cm", "90.0cm", "900.000 mm", "0,90 m"} {
		other := set(t, design.Default(), group+"width", text)
		assert.Equal(t, code, other.Design.Revision(), text)
	}
	metres := set(t, doc, group+"width", "0.9 m")
	assert.Contains(t, string(design.Encode(metres)), `"width": "0.9 m"`)
	again, err := design.Decode(design.Encode(metres))
	require.NoError(t, err)
	assert.Equal(t, string(design.Encode(metres)), string(design.Encode(again)))
	assert.NotEqual(t, code, set(t, doc, group+"width", "900.001 mm").Design.Revision())

	inch := set(t, doc, group+"block.size", "1 1/2 in")
	assert.Equal(t, inch.Design.Revision(), set(t, doc, group+"block.size", "38.1 mm").Design.Revision())

	b := design.DefaultBook()
	b.Sheets[0].Thickness = length.Nanometres(b.Sheets[0].Thickness.Nanometres(), length.InCM)
	assert.Equal(t, book, b.Code())
}

func TestRevisionIsOfTheDesignAlone(t *testing.T) {
	doc := design.Default()
	code := doc.Design.Revision()
	doc.View.Units, doc.View.Lamp.Azimuth, doc.Assumed = length.Inch16, 10, nil
	assert.Equal(t, code, doc.Design.Revision())
	doc.Design.Walls[0].Groups[0].Heights[0] = length.MM(27)
	assert.NotEqual(t, code, doc.Design.Revision())
}
