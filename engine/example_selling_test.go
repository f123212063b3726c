package engine_test

import (
	"os"
	"testing"

	"blockfield/engine"
	"blockfield/engine/cost"
	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const exampleSellingFile = "example-selling.json"

// The selling book that the first page quotes by is the one of the example
// figures. Run with -update where it is another one by now, and read the
// difference.
func TestExampleSellingIsThatOfTheExampleFigures(t *testing.T) {
	made := selling(t, design.DefaultBook())
	if *update {
		require.NoError(t, os.WriteFile(exampleSellingFile, design.EncodeSelling(made), 0o600))
		t.Skip("written")
	}
	assert.Equal(t, made, engine.ExampleSelling())
	assert.True(t, engine.ExampleSelling().Placeholder)
}

// A workshop that sells two woods, one board and one finish has a selling book
// too. What it does not have is not quoted, rather than given away.
func TestASmallWorkshopHasASellingBook(t *testing.T) {
	small := design.DefaultBook()
	small.Woods = []design.WoodPrice{small.Woods[0], small.Woods[4]}
	require.Equal(t, []string{"pine", "beech"}, []string{small.Woods[0].Wood, small.Woods[1].Wood})
	small.Sheets, small.Finishes = small.Sheets[:1], small.Finishes[:1]
	book := selling(t, small)
	assert.Positive(t, book.SoftwoodL)
	assert.Positive(t, book.MiddleWoodL)
	assert.Zero(t, book.FineWoodL)

	d := design.Default().Design
	quote := func(wood string) (low, high int64, err error) {
		d.Walls[0].Groups[0].Wood = wood
		r := plan(t, d)
		l, h, err := engine.Quote(d, r, book)
		return l.Minor, h.Minor, err
	}
	low, high, err := quote("beech")
	require.NoError(t, err)
	gross := plan(t, d).Price.Gross.Minor
	assert.True(t, low < gross && gross < high, "%d is not within %d and %d", gross, low, high)
	_, _, err = quote("walnut")
	assert.ErrorIs(t, err, cost.ErrNoSuchWood)

	small.Woods = nil
	_, err = engine.SellingBook(small)
	assert.ErrorIs(t, err, cost.ErrFewSamples)
}
