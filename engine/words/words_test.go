package words_test

import (
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
		{r, words.Hz(4763.9), "4764 Hz"},
		{r, money.New(156000, "EUR"), "€1,560.00"},
		{r, words.Key("level/stop"), "Stop"},
	} {
		assert.Equal(t, c.want, c.reader.Show(c.value))
	}
	assert.Panics(t, func() { r.Show(struct{}{}) }, "a type that nobody knows how to say")
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
