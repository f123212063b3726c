package design_test

import (
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A line of wood starts as one more stick of those that the design is cut from.
func TestOtherWood(t *testing.T) {
	doc := design.Default()
	doc.Design.Walls[0].Groups[0].Wood = "oak"
	doc.Design.Walls[0].Groups[0].Block.Size = length.MM(40)
	doc, path, err := design.Add(doc, "bench.stock")
	require.NoError(t, err)
	assert.Equal(t, "bench.stock[0]", path)
	assert.Equal(t, design.Stock{
		Wood: "oak", Width: length.MM(40), Thickness: length.MM(40), Length: length.MM(2400), Count: 1, Owned: true,
	}, doc.Design.Bench.Stock[0])

	// Square stock stays square; a board's thickness is its own.
	doc, err = design.Set(doc, "bench.stock[0].width", "44", length.Metric)
	require.NoError(t, err)
	assert.True(t, doc.Design.Bench.Stock[0].Thickness.Same(length.MM(44)))
	doc, err = design.Set(doc, "bench.stock[0].thickness", "20", length.Metric)
	require.NoError(t, err)
	doc, err = design.Set(doc, "bench.stock[0].width", "130", length.Metric)
	require.NoError(t, err)
	assert.True(t, doc.Design.Bench.Stock[0].Thickness.Same(length.MM(20)))

	// Nobody owns as many as are wanted; what a yard has may be without number.
	_, err = design.Set(doc, "bench.stock[0].count", "0", length.Metric)
	assert.EqualError(t, err, "design.bench.stock[0].count: 0 is out of range (allowed from 1)")
	doc, err = design.Set(doc, "bench.stock[0].owned", "no", length.Metric)
	require.NoError(t, err)
	doc, err = design.Set(doc, "bench.stock[0].count", "0", length.Metric)
	require.NoError(t, err)
	doc, err = design.Set(doc, "bench.stock[0].owned", "yes", length.Metric)
	require.NoError(t, err)
	assert.Equal(t, 1, doc.Design.Bench.Stock[0].Count, "a number comes along")

	again, err := design.Decode(design.Encode(doc))
	require.NoError(t, err)
	assert.Equal(t, doc, again)
	doc, err = design.Remove(doc, "bench.stock[0]")
	require.NoError(t, err)
	assert.Empty(t, doc.Design.Bench.Stock)
}

// A file of before, without the lines of wood and of boards, takes the usual ones.
func TestFilesWithoutStock(t *testing.T) {
	doc, err := design.Decode([]byte(in(`"bench": {"stickLength": "3000 mm"}`)))
	require.NoError(t, err)
	b := doc.Design.Bench
	assert.Equal(t, []any{"2400 mm", design.CheaperPlan, 0}, []any{b.BoardLength.String(), b.Handling, len(b.Stock)})
	assert.NotContains(t, doc.Assumed, "bench.stock")
}

// Sticks that are sold by the piece are lines of the price book; a book without
// them is whole, and is written as it was.
func TestSticksInThePriceBook(t *testing.T) {
	book := design.DefaultBook()
	code := book.Code()
	assert.NotContains(t, string(design.EncodeBook(book)), `"sticks":`)
	mm := length.MM
	book.Sticks = []design.StickPrice{
		{Wood: "poplar", Size: mm(36), Length: mm(2400), Price: design.Units(10)},
		{Wood: "poplar", Size: mm(36), Length: mm(3000), Price: design.Units(12)},
	}
	again, err := design.DecodeBook(design.EncodeBook(book))
	require.NoError(t, err)
	assert.Equal(t, book, again)
	assert.NotEqual(t, code, book.Code())

	book.Sticks[1].Length = length.Nanometres(2_400_000_000, length.InInch)
	_, err = design.DecodeBook(design.EncodeBook(book))
	assert.ErrorContains(t, err, "sticks[1].length: ")
	half := strings.Replace(string(design.EncodeBook(book)), `"price": "12"`, `"name": "12"`, 1)
	_, err = design.DecodeBook([]byte(half))
	assert.ErrorContains(t, err, "sticks[1].price: is missing")
}
