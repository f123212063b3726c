package web_test

import (
	"fmt"
	"io/fs"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/cmd/blockfield/web"
	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/site"
)

// TestStyleSheetKnowsThePoster: the style sheet scales the poster by the shape of
// the default design's panel, and by two and a half times that where its width is
// meant.
func TestStyleSheetKnowsThePoster(t *testing.T) {
	doc := design.Default()
	plan, err := engine.Plan(doc.Design, design.DefaultBook())
	require.NoError(t, err)
	s, err := engine.Scene(doc.Design, plan, doc.View)
	require.NoError(t, err)
	css, err := fs.ReadFile(site.Assets(), "page.css")
	require.NoError(t, err)
	tall := 100 * web.PosterTall(s)
	assert.Contains(t, string(css), fmt.Sprintf("%.2fcqh", tall))
	assert.Contains(t, string(css), fmt.Sprintf("%.1fcqh", 2.5*tall))
}
