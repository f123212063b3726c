package papers_test

import (
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
)

// The build book of the largest field, 200 × 200 blocks.
func BenchmarkLargestField(b *testing.B) {
	doc := design.Default()
	g := &doc.Design.Walls[0].Groups[0]
	g.Block.Size, g.Columns, g.Rows = length.MM(20), 200, 200
	g.Width, g.Height = length.MM(4000), length.MM(4000)
	in := planOf(b, doc, design.DefaultBook()).input(length.Metric, sheet.A4())
	b.ReportAllocs()
	for b.Loop() {
		papers.Make(in, papers.BookSet)
	}
}

// The papers to glue by of the default design, as an edit shows them.
func BenchmarkGlueSet(b *testing.B) {
	in := job(b, "default").input(length.Metric, sheet.A4())
	for b.Loop() {
		papers.Make(in, papers.GlueSet)
	}
}
