package papers_test

import (
	"fmt"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The build book has fourteen steps, each with a drawing of its own beside its words,
// which is a file too.
func TestStepsAreDrawn(t *testing.T) {
	in := job(t, "s8").input(length.Metric, sheet.A4())
	drawn, boxes := map[string]bool{}, 0
	for _, one := range of(make1(t, in, papers.BookSet), "steps") {
		require.Empty(t, one.Overflow)
		for _, n := range parse(t, one.SVG).Children {
			if n.attr("class") == "step" {
				boxes++
				assert.GreaterOrEqual(t, len(n.Children), 6, "step %d", boxes)
			}
		}
	}
	assert.Equal(t, 14, boxes)
	files := export(t, in, papers.BookSet)
	for i := range 14 {
		body := string(files[fmt.Sprintf("drawings/step-%02d.svg", i+1)])
		require.NotEmpty(t, body)
		group := parse(t, body).Children
		require.Equal(t, "step", group[len(group)-1].attr("class"))
		drawn[fmt.Sprint(group[len(group)-1].Children)] = true
	}
	assert.Len(t, drawn, 14)
}

// The straight edge that the rows begin at is drawn where the job has it: it is the one
// heavy level line of the backer.
func TestStepsBeginAtTheJobsEdge(t *testing.T) {
	for start, want := range map[string]float64{design.BottomEdge: 22, design.TopEdge: 2} {
		body := export(t, withStart(job(t, "s8"), start).input(length.Metric, sheet.A4()), papers.BookSet)["drawings/step-04.svg"]
		found := 0
		for _, n := range parse(t, string(body)).Children {
			for _, line := range n.Children {
				if line.attr("stroke-width") == "1" && line.attr("y1") == line.attr("y2") {
					found++
					assert.Equal(t, want, line.number("y1"), start)
				}
			}
		}
		assert.Equal(t, 1, found)
	}
}
