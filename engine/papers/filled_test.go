package papers_test

import (
	"testing"

	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// filled is how far down the texts of a sheet reach, as a share of its body.
func filled(t *testing.T, in papers.Input, s sheet.Sheet) float64 {
	t.Helper()
	const top, foot = 27, 22
	low := float64(top)
	for _, text := range texts(t, s.SVG) {
		if text.y < in.Format.Height-foot {
			low = max(low, text.y)
		}
	}
	return (low - top) / (in.Format.Height - foot - top)
}

// No sheet of a job's papers holds next to nothing, and the home builder's book is no thicker
// than its work asks for: what is short shares a sheet.
func TestNoSheetIsNearlyEmpty(t *testing.T) {
	const least = 0.15
	for _, name := range []string{"default", "s1", "s2", "s5", "s7", "s8"} {
		in := job(t, name).input(length.Metric, sheet.A4())
		in.Site = "https://blocks.example/"
		all := papers.For(papers.Maker, in.Doc.Design.Work.Scope(), false)
		if in.Doc.Design.Work.OwnBuild {
			all = papers.For(papers.Builder, in.Doc.Design.Work.Scope(), false)
		}
		for _, set := range all {
			made := make1(t, in, set)
			for i, s := range made.Sheets {
				assert.Greater(t, filled(t, in, s), least, "%s %s, sheet %d of %d (%s)", name, set, i+1, len(made.Sheets), s.Paper)
			}
			if set == papers.BookSet {
				assert.LessOrEqual(t, len(made.Sheets), 24)
				lay := of(made, "troubles")
				require.Len(t, lay, 1)
				assert.Equal(t, "lay-up", lay[0].Paper, "what goes wrong stands where the rows are laid")
			}
		}
	}
}
