package engine_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/scene"
)

// TestEveryDesignCanBeDrawn: designs at the edges of what the document takes lie
// within the limits of the picture.
func TestEveryDesignCanBeDrawn(t *testing.T) {
	set := func(doc design.Document, edits ...string) (design.Document, error) {
		var err error
		for i := 0; i < len(edits) && err == nil; i += 2 {
			doc, err = design.Set(doc, edits[i], edits[i+1], length.Metric)
		}
		return doc, err
	}
	const g = "walls[0].groups[0]."
	cases := map[string][]string{
		"largest wall":     {"walls[0].width", "20 m", "walls[0].height", "20 m"},
		"far to the right": {"walls[0].width", "20 m", g + "place.left", "18.7 m", g + "place.height", "19 m"},
		"small blocks":     {g + "block.size", "18 mm", g + "width", "6000 mm", g + "height", "1800 mm"},
		"large blocks":     {g + "block.size", "100 mm", g + "block.slack", "1.5 mm", g + "width", "6000 mm", g + "height", "6000 mm"},
		"tall blocks":      {g + "heights", "0, 250 mm", g + "frame.board", "400 mm", g + "frame.thickness", "60 mm"},
		"thin frame":       {g + "frame.thickness", "6 mm", g + "frame.gap", "30 mm"},
		"no frame":         {g + "frame.joint", "none"},
		"a dozen":          {"walls[0].width", "20 m", g + "panelsWide", "12", g + "panelGap", "500 mm", g + "width", "6000 mm"},
		"a long row":       {"walls[0].width", "20 m", g + "panelsWide", "6", g + "panelGap", "3000 mm", g + "width", "3000 mm"},
	}
	for name, edits := range cases {
		t.Run(name, func(t *testing.T) {
			doc, err := set(design.Default(), edits...)
			require.NoError(t, err)
			plan, err := engine.Plan(doc.Design, design.DefaultBook())
			require.NoError(t, err)
			s, err := engine.Scene(doc.Design, plan, doc.View)
			require.NoError(t, err)
			assert.NoError(t, s.Validate())
			assert.NoError(t, plan.Show(s, scene.Rear).Validate())
			assert.NoError(t, plan.Show(s, scene.Apart).Validate())
		})
	}
	// The breaker's own: so wide a job is refused as a design, at a field.
	_, err := set(design.Default(), "walls[0].width", "20 m", g+"panelsWide", "12", g+"columns", "400")
	require.Error(t, err)
	assert.Contains(t, fmt.Sprint(err), "walls[0].groups[0]")
}
