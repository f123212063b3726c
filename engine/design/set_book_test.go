package design_test

import (
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// editBook makes edits of a price book, "path = text" each.
func editBook(t *testing.T, b design.Book, edits ...string) design.Book {
	t.Helper()
	for _, e := range edits {
		path, text, _ := strings.Cut(e, " = ")
		var err error
		b, err = design.SetBook(b, path, text, length.Metric)
		require.NoError(t, err, e)
	}
	return b
}

// What is typed counts as the workshop's own, figure by figure; once the last one is
// set, nothing is invented any more.
func TestFiguresBecomeTheWorkshopsOwn(t *testing.T) {
	b := design.DefaultBook()
	invented, all := b.Invented()
	assert.Equal(t, all, invented)
	assert.Greater(t, all, 150)
	b = editBook(t, b, "rates.shop = 51.50", "rates.office = 38", "name = Ours")
	assert.Equal(t, []string{"rates.shop", "rates.office"}, b.Own, "also one that is typed as it was, and no text")
	assert.True(t, b.IsOwn("rates.shop"))
	assert.False(t, b.IsOwn("rates.site"))
	assert.False(t, b.IsOwn("rates"))
	b = design.ConfirmBook(b, "rates")
	assert.True(t, b.IsOwn("rates"))
	invented, _ = b.Invented()
	assert.Equal(t, all-4, invented)

	back, err := design.DecodeBook(design.EncodeBook(b))
	require.NoError(t, err)
	assert.Equal(t, b, back)

	b = design.ConfirmBook(b, "")
	assert.False(t, b.Placeholder)
	assert.Nil(t, b.Own)
	assert.True(t, b.IsOwn("woods[0].squaresPerM3"))

	// A further wood comes with an example's price, which is not its own yet.
	b, err = design.RemoveFromBook(b, "woods[3]")
	require.NoError(t, err)
	assert.False(t, b.Placeholder)
	b, err = design.AddToBook(b, "woods")
	require.NoError(t, err)
	last := len(b.Woods) - 1
	assert.Equal(t, "poplar", b.Woods[last].Wood)
	invented, _ = b.Invented()
	assert.Equal(t, 2, invented)
	at := "woods[" + strconv.Itoa(last) + "]"
	b = editBook(t, b, at+".squaresPerM3 = 3400", at+".boardsPerM3 = 4400")
	assert.False(t, b.Placeholder)
}

// Figures keep their owner when an entry before them goes.
func TestOwnFiguresMoveWithTheirEntry(t *testing.T) {
	b := editBook(t, design.DefaultBook(), "woods[4].boardsPerM3 = 5700", "woods[0].boardsPerM3 = 2950")
	b, err := design.RemoveFromBook(b, "woods[1]")
	require.NoError(t, err)
	assert.Equal(t, []string{"woods[0].boardsPerM3", "woods[3].boardsPerM3"}, b.Own)
	b, err = design.RemoveFromBook(b, "woods[3]")
	require.NoError(t, err)
	assert.Equal(t, []string{"woods[0].boardsPerM3"}, b.Own)
}

// A list of own figures is one of figures that the book has, each once, beside invented
// ones.
func TestOwnFiguresAreFigures(t *testing.T) {
	for _, own := range [][]string{{"name"}, {"woods[99].boardsPerM3"}, {"rates.shop", "rates.shop"}, {"version"}} {
		b := design.DefaultBook()
		b.Own = own
		_, err := design.DecodeBook(design.EncodeBook(b))
		assert.ErrorContains(t, err, "own[", own)
	}
	b := design.DefaultBook()
	b.Placeholder, b.Own = false, []string{"rates.shop"}
	assert.ErrorContains(t, design.ValidateBook(b), "own[0]")
}

// No edit gets stuck between two states that hold: stages stay a whole, rates in order.
func TestBookEditsBringAlong(t *testing.T) {
	b := editBook(t, design.DefaultBook(), "stages[0].percent = 33.3")
	assert.Equal(t, []float64{33.3, 40, 26.7}, percents(b))
	b = editBook(t, b, "stages[2].percent = 10")
	assert.Equal(t, []float64{33.3, 56.7, 10}, percents(b))
	_, err := design.SetBook(b, "stages[0].percent", "60", length.Metric)
	require.ErrorContains(t, err, "book.stages[0].percent")
	b, err = design.RemoveFromBook(b, "stages[1]")
	require.NoError(t, err)
	assert.Equal(t, []float64{33.3, 66.7}, percents(b))
	b, err = design.AddToBook(b, "stages")
	require.NoError(t, err)
	assert.Equal(t, []float64{33.3, 66.7, 0}, percents(b))

	b = editBook(t, b, "tasks[0].typical = 120")
	assert.Equal(t, []float64{20, 120, 120}, []float64{b.Tasks[0].Low, b.Tasks[0].Typical, b.Tasks[0].High})
	b = editBook(t, b, "tasks[0].high = 15")
	assert.Equal(t, []float64{15, 15, 15}, []float64{b.Tasks[0].Low, b.Tasks[0].Typical, b.Tasks[0].High})
	b = editBook(t, b, "tasks[0].low = 16")
	assert.Equal(t, []float64{16, 16, 16}, []float64{b.Tasks[0].Low, b.Tasks[0].Typical, b.Tasks[0].High})
}

func percents(b design.Book) []float64 {
	var all []float64
	for _, s := range b.Stages {
		all = append(all, s.Percent)
	}
	return all
}

// A text that cannot be taken changes nothing, and says where and what is allowed.
func TestBookRefusesWithRange(t *testing.T) {
	b := design.DefaultBook()
	for path, text := range map[string]string{
		"rates.shop": "-1", "policy.margin": "95", "currency": "euro", "validUntil": "31.12.2026", "goods.glueBottleKg": "0",
		"policy.validDays": "6", "name": "", "woods[0].wood": "plastic", "sheets[0].thickness": "1 m", "rates.x": "1", "own": "a", "tasks[0].per": "",
	} {
		next, err := design.SetBook(b, path, text, length.Metric)
		require.Error(t, err, path)
		assert.Contains(t, err.Error(), "book."+path, "%s", path)
		assert.Equal(t, b, next, path)
	}
	_, err := design.SetBook(b, "policy.margin", "5", length.Metric) // below the floor
	assert.ErrorContains(t, err, "book.policy.margin")
	for _, list := range []string{"tasks", "learned", "name", "x"} {
		_, err := design.AddToBook(b, list)
		assert.Error(t, err, list)
	}
	for _, path := range []string{"tasks[0]", "woods", "woods[99]", "woods[-1]", "woods[0].wood", "own[0]"} {
		_, err := design.RemoveFromBook(b, path)
		assert.Error(t, err, path)
	}
}

// Whatever is done to a book, it can be written and read again, and the figures that
// are its own are figures of it.
func TestBooksSurviveRandomEdits(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	b := design.DefaultBook()
	lists := []string{"woods", "sheets", "finishes", "sticks", "stages", "taxes"}
	for range 400 {
		list := lists[r.IntN(len(lists))]
		figures := design.Figures(b)
		var err error
		switch r.IntN(5) {
		case 0:
			b, err = design.AddToBook(b, list)
		case 1:
			b, err = design.RemoveFromBook(b, list+"["+strconv.Itoa(r.IntN(6))+"]")
		case 2:
			b = design.ConfirmBook(b, figures[r.IntN(len(figures))])
		default:
			b, err = design.SetBook(b, figures[r.IntN(len(figures))], strconv.Itoa(r.IntN(120)), length.Metric)
		}
		_ = err // refused: the book is as it was
		back, err := design.DecodeBook(design.EncodeBook(b))
		require.NoError(t, err)
		require.Equal(t, b, back)
	}
}
