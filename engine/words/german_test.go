package words_test

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"blockfield/engine/length"
	"blockfield/engine/money"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"
	"golang.org/x/text/message"
)

func german() words.Reader {
	return words.Reader{Language: words.German(), Units: length.Metric}
}

var placeholder = regexp.MustCompile(`\{([^}|]*)(\|[^}]*)?\}`)

// arguments are the names of a message, with :sold where goods are said.
func arguments(message string) []string {
	names := map[string]bool{}
	for _, found := range placeholder.FindAllStringSubmatch(message, -1) {
		names[found[1]] = true
	}
	return slices.Sorted(maps.Keys(names))
}

// sameInBoth are the messages of letters that are the same in both languages: names,
// units, and words that German has too.
func sameInBoth() []string {
	return []string{
		"bench/feet", "bench/grams", "bench/metres", "blank/name", "book-unit/kg", "book-unit/m3", "choice/de",
		"choice/en", "csv/name", "cuts/minutes", "finish/hours-about", "fire-record/reached", "label/book.name",
		"label/record.signOffs.name", "leaves/budget", "leaves/name", "lifting/name", "look/relief", "page/brand",
		"page/revision", "papers/format-Letter", "papers/revision", "rearing/ring", "sound/axis-hz", "unit/kg",
		"unit/litres", "unit/metres", "watch/in-section", "within/diagonals-mm", "within/row-mm",
	}
}

// Whatever English says German says, with the same arguments.
func TestGermanIsComplete(t *testing.T) {
	en, de := words.English(), words.German()
	assert.Equal(t, en.Keys(), de.Keys())
	for _, key := range en.Keys() {
		english, german := en.Message(key), de.Message(key)
		assert.NotEmpty(t, strings.TrimSpace(german), key)
		assert.Equal(t, arguments(english), arguments(german), key)
		if strings.ContainsAny(placeholder.ReplaceAllString(english, ""), "abcdefghijklmnopqrstuvwxyz") {
			assert.Equal(t, slices.Contains(sameInBoth(), key), english == german, "%s: %s", key, german)
		}
	}
}

// A choice has a word for one and a word for any other number; they may be one word in
// German, but not where English adds no more than an s to what German inflects.
func TestGermanChoicesHaveTwoWords(t *testing.T) {
	same := []string{"Zeichen", "Ständer"}
	for _, key := range words.German().Keys() {
		for _, found := range placeholder.FindAllStringSubmatch(words.German().Message(key), -1) {
			if found[2] == "" {
				continue
			}
			choice := strings.Split(found[2], "|")
			assert.Len(t, choice, 3, key)
			assert.NotEmpty(t, choice[1], key)
			assert.NotEmpty(t, choice[2], key)
			if choice[1] == choice[2] {
				assert.Contains(t, same, choice[1], key)
			}
		}
	}
}

// By the rules of the Unicode locale data, as golang.org/x/text has them.
func TestRulesOfLanguages(t *testing.T) {
	for _, tag := range words.Tags() {
		of := language.MustParse(tag)
		r := words.Reader{Language: words.In(tag), Units: length.Metric}
		for n := range 1200 {
			one := plural.Cardinal.MatchPlural(of, n, 0, 0, 0, 0) == plural.One
			assert.Equal(t, one, r.Say("found/rows", words.Args{"n": n}) == r.Count(n)+" "+oneRow(r), "%s, %d", tag, n)
		}
		assert.Equal(t, message.NewPrinter(of).Sprintf("%.1f", 26.5), r.Show(26.5), tag)
	}
}

func oneRow(r words.Reader) string {
	return strings.TrimPrefix(r.Say("found/rows", words.Args{"n": 1}), "1 ")
}

func TestGermanPlurals(t *testing.T) {
	for n, want := range map[int]string{0: "0 Reihen", 1: "1 Reihe", 2: "2 Reihen"} {
		assert.Equal(t, want, german().Say("found/rows", words.Args{"n": n}))
	}
	assert.Equal(t, "1 Halt hält das Angebot zurück.", german().Say("offer/gate-shut", words.Args{"n": 1}))
	assert.Equal(t, "2 Halte halten das Angebot zurück.", german().Say("offer/gate-shut", words.Args{"n": 2}))
}

func TestGermanNumbers(t *testing.T) {
	mm, inch := german(), german()
	inch.Units = length.Inch16
	for _, c := range []struct {
		reader words.Reader
		value  any
		want   string
	}{
		{mm, length.Micrometres(36_200), "36,2 mm"},
		{inch, length.MM(36), "1 7/16 Zoll"},
		{mm, []length.Length{length.MM(26), length.Micrometres(42_500)}, "26 / 42,5 mm"},
		{mm, words.Places{length.MM(300), length.Micrometres(905_500)}, "300; 905,5 mm"},
		{mm, words.Kg(38.04), "38,0 kg"},
		{mm, words.Quantity{Value: 0.05, Unit: "kN"}, "0,05 kN"},
		{mm, words.Fixed{Value: 8, Places: 1, Unit: "%"}, "8,0 %"},
		{mm, words.About(length.MM(1500)), "1,5 m"},
		{mm, words.Exact(length.Micrometres(250)), "0,25 mm"},
		{mm, money.New(156000, "EUR"), "1.560,00\u00a0€"},
		{mm, 12345, "12\u202f345"},
		{mm, "2026-03-31", "31.03.2026"},
		{mm, "2026-03-3x", "2026-03-3x"},
		{mm, "No. 2.5, as I call it", "No. 2.5, as I call it"},
	} {
		assert.Equal(t, c.want, c.reader.Show(c.value))
	}
	sheet := mm.Say("buy/sheet-of", words.Args{"sheet": "x", "thickness": length.Sixtyfourths(30), "size": []length.Length{length.Sixtyfourths(48), length.MM(130)}})
	assert.Equal(t, "x, 15/32 Zoll, ganze Platten von 3/4 Zoll × 130 mm", sheet)
	assert.Equal(t, "26; 42; 64,5 mm", mm.Written("26, 42, 64.5 mm"))
	assert.Equal(t, "26, 42, 64.5 mm", english().Written("26, 42, 64.5 mm"))
}

// What a German types is what English fields take. A point is no decimal mark then, and
// a single one before three digits is as doubtful as a comma in English.
func TestGermanTyping(t *testing.T) {
	for typed, want := range map[string]string{
		"36,2": "36.2", "1,125": "1.125", "1.500": "1,500", "1.500,25": "1,500.25", "0.5": "0,5", "38 mm": "38 mm",
		"26; 42,5; 64": "26; 42.5; 64", "26, 42, 64": "26, 42, 64", "26,5, 42,5": "26.5, 42.5",
	} {
		assert.Equal(t, want, german().Read(typed, false), typed)
		assert.Equal(t, typed, english().Read(typed, false))
	}
	assert.Equal(t, "26,42,64", german().Read("26,42,64", true), "commas alone are between entries")
	assert.Equal(t, "26; 42.5", german().Read("26; 42,5", true))
	l, err := length.Parse("1 1/2 Zoll", length.InMM)
	assert.NoError(t, err)
	assert.True(t, l.Same(length.Sixtyfourths(96)))
}

// Texts that documents come with are said in every language, all others as they are.
func TestGiven(t *testing.T) {
	assert.Equal(t, "Paneel für ein Wohnzimmer", german().Given("Panel for a living room"))
	assert.Equal(t, "Panel for a living room", english().Given("Panel for a living room"))
	assert.Equal(t, "A panel of mine", german().Given("A panel of mine"))
}
