package papers_test

import (
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// As many panels as there can be, each of a size of its own pattern: tables with a
// column for each of them fit their sheets all the same.
func TestTwelvePanels(t *testing.T) {
	doc := design.Default()
	g := &doc.Design.Walls[0].Groups[0]
	g.PanelsWide, g.Order = 12, "ABABABABABAB"
	g.Block.Size, g.Block.Slack = length.MM(40), length.MM(0)
	g.Columns, g.Rows, g.Width, g.Height = 0, 0, length.MM(6000), length.MM(1000)
	doc.Design.Walls[0].Width = length.MM(8000)
	require.NoError(t, design.Validate(doc))
	p := planOf(t, doc, design.DefaultBook())
	for _, format := range []sheet.Format{sheet.A4(), sheet.Letter()} {
		in := p.input(length.Metric, format)
		for _, set := range []string{papers.OfferSet, papers.CutSet, papers.GlueSet, papers.HangSet, papers.BookSet} {
			made, ok := papers.Make(in, set)
			require.True(t, ok, set)
			sheets := made.Sheets
			assert.NotEmpty(t, sheets, set)
			for i, one := range sheets {
				assert.Empty(t, one.Overflow, "%s, sheet %d", set, i+1)
			}
		}
	}
}
