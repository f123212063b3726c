package words_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"blockfield/engine/length"
	"blockfield/engine/money"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
)

func english() words.Reader {
	return words.Reader{Language: words.English(), Units: length.Metric}
}

func TestSayFillsPlaceholders(t *testing.T) {
	got := english().Say("pattern/long-run", words.Args{"n": 5, "place": words.Key("pattern/row"), "at": 3})
	assert.Equal(t, "A bar of 5 equal blocks at row 3: it shows, and it reflects as one strip.", got)
}

func TestSayShowsWhatIsMissing(t *testing.T) {
	assert.Equal(t, "⟪no/such-key⟫", english().Say("no/such-key"))
	assert.Contains(t, english().Say("pattern/long-run", words.Args{"n": 5}), "⟪place⟫")
}

func TestPseudoWrapsEverySentence(t *testing.T) {
	r := english()
	r.Language = words.Pseudo()
	for _, key := range r.Language.Keys() {
		text := r.Say(key)
		assert.True(t, strings.HasPrefix(text, "⟦") && strings.HasSuffix(text, "⟧"), "%s: %s", key, text)
	}
}

// Goods are called by their trade size, whatever the reader's own units.
func TestGoodsBySize(t *testing.T) {
	mm, in := length.MM, length.Sixtyfourths
	for _, units := range []length.Units{length.Metric, length.Inch16, length.Inch32} {
		r := words.Reader{Language: words.English(), Units: units}
		sheet := func(size ...length.Length) string {
			return r.Say("buy/sheet-of", words.Args{"sheet": "ply", "thickness": in(30), "size": size})
		}
		assert.Equal(t, "ply, 15/32 in, whole sheets of 1220 × 2440 mm", sheet(mm(1220), mm(2440)), units)
		assert.Equal(t, "ply, 15/32 in, whole sheets of 3/4 in × 130 mm", sheet(in(48), mm(130)), units)
		assert.Contains(t, r.Say("buy/cleat-screws-of", words.Args{"gauge": 8, "long": mm(50)}), "No. 8, 50 mm long", units)
	}
}

func TestShow(t *testing.T) {
	r := english()
	inch := r
	inch.Units = length.Inch16
	for _, c := range []struct {
		reader words.Reader
		value  any
		want   string
	}{
		{r, 726, "726"},
		{r, 12345, "12\u202f345"},
		{r, -1234567, "-1\u202f234\u202f567"},
		{r, length.MM(36), "36 mm"},
		{inch, length.MM(36), "1 7/16 in"},
		{r, []length.Length{length.MM(26), length.MM(42)}, "26 / 42 mm"},
		{r, words.Kg(38.04), "38.0 kg"},
		{r, words.Percent(12.4), "12 %"},
		{r, words.Hours(9.75), "9.8 h"},
		{r, words.Hz(4763.9), "4764\u00a0Hz"},
		{r, money.New(156000, "EUR"), "€1,560.00"},
		{r, words.Key("level/stop"), "Stop"},
		{r, words.Quantity{Value: 0.05, Unit: "kN"}, "0.05 kN"},
		{r, words.Quantity{Value: -5, Unit: "°C"}, "-5 °C"},
		{r, words.Quantity{Value: 90, Unit: "°"}, "90°"},
		{r, words.Quantity{Value: 40000}, "40000"},
		{r, []string{"oak", "ash"}, "oak, ash"},
		{r, words.Plain(words.Key("level/stop")), "Stop"},
		{r, words.Phrase{}, ""},
		{r, words.Phrase{Key: "no/such-key"}, "⟪no/such-key⟫"},
		{r, words.Phrase{Key: "found/rows", Args: words.Args{"n": 1}}, "1 row"},
		{r, words.Least(length.MM(18)), "18 mm"},
		// 18 mm are 45.35 and 100 mm 251.97 sixty-fourths of an inch.
		{inch, words.Least(length.MM(18)), "23/32 in"},
		{inch, words.Most(length.MM(100)), "3 59/64 in"},
		{inch, words.Least(length.MM(-20)), "-25/32 in"}, // −50.39 sixty-fourths: inwards is up
		{inch, words.Most(length.Sixtyfourths(96)), "1 1/2 in"},
	} {
		assert.Equal(t, c.want, c.reader.Show(c.value))
	}
	assert.Panics(t, func() { r.Show(struct{}{}) }, "a type that nobody knows how to say")
}

// What a file holds cannot steer a terminal or turn the writing round; what
// people write stays as it is.
func TestPrintable(t *testing.T) {
	for text, want := range map[string]string{
		"Größe 木 👩 \u00a0½\u202f″": "Größe 木 👩 \u00a0½\u202f″",
		"\x1b[2J\a":                `\x1b[2J\a`,
		"a\nb\r":                   `a\nb\r`,
		"oak\u202egnp":             `oak\u202egnp`,
		"\u009b31m\u2066\ufeff":    `\u009b31m\u2066\ufeff`,
		"\U000e0041":               `\U000e0041`,
	} {
		assert.Equal(t, want, words.Printable(text))
	}
}

func TestUnseen(t *testing.T) {
	for text, want := range map[string]string{
		"Größe 木 👩\u200d🔧 \u00a0½": "", "می\u200cخواهم": "", "oak\u202egnp": "U+202E 4", "\u2066a": "U+2066 1", "a\x1b": "U+001B 2",
		"a\nb": "U+000A 2", "木\U000e0041": "U+E0041 2", "a\u2028b": "U+2028 2", "a\u200eb": "U+200E 2",
	} {
		code, place := words.Unseen(text, false)
		got := ""
		if code != "" {
			got = fmt.Sprint(code, " ", place)
		}
		assert.Equal(t, want, got, "%q", text)
	}
	code, _ := words.Unseen("a\nb", true)
	assert.Empty(t, code, "a text of lines")
}

// A phrase inside a sentence of the pseudo-language is said and not bracketed
// once more; one that has no message shows.
func TestPhrasesInSentences(t *testing.T) {
	r := words.Reader{Language: words.Pseudo(), Units: length.Metric}
	limit := words.Phrase{Key: "allowed/at-most", Args: words.Args{"n": 3}}
	assert.Equal(t, "⟦x Allowed: at most 3.⟧", r.Say("fault/allowed", words.Args{"fault": "x", "allowed": limit}))
	missing := words.Phrase{Key: "allowed/nothing-like-it"}
	assert.Contains(t, r.Say("fault/allowed", words.Args{"fault": "x", "allowed": missing}), "⟪allowed/nothing-like-it⟫")
}

// Every message is well formed: braces are closed, and a choice has two words.
func TestMessagesAreWellFormed(t *testing.T) {
	r := english()
	for _, key := range r.Language.Keys() {
		text := r.Say(key)
		assert.NotContains(t, text, "{", key)
		assert.NotContains(t, text, "}", key)
	}
}

// A limit that is round in both notations is said in the reader's alone.
func TestLimitsInTheReadersUnits(t *testing.T) {
	r := english()
	r.Units = length.Metric
	assert.Contains(t, r.Say("safety/saw-hands"), "Hands stay 150 mm from the blade.")
	for _, inches := range []length.Units{length.Inch16, length.Inch32} {
		r.Units = inches
		assert.Contains(t, r.Say("safety/saw-hands"), "Hands stay 6 in from the blade.")
	}
	both := regexp.MustCompile(`\d (mm|m|cm|kg) \(\d[\d /,.]* (in|lb|Zoll)\)`)
	for _, l := range []words.Language{words.English(), words.German()} {
		for _, key := range l.Keys() {
			assert.NotRegexp(t, both, l.Message(key), "%s: %s", l.Tag, key)
		}
	}
}

func BenchmarkEnglish(b *testing.B) {
	for b.Loop() {
		english().Say("level/stop")
	}
}
