package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"
)

// A field is found by words of its name, wherever the reader has it; and none that
// the reader does not have.
func TestFind(t *testing.T) {
	doc := design.Default()
	find := func(reading, text string) string {
		doc.View.Reading = reading
		f := page.Find(input(t, doc, design.DefaultBook(), words.English(), page.Look), text)
		assert.Equal(t, "found", f.Target)
		return f.HTML
	}
	kerf := `data-field="bench.kerf" data-section="bench"`
	assert.Contains(t, find(page.Maker, "saw cut"), kerf)
	assert.Contains(t, find(page.Maker, "CUT  saw"), kerf, "in any order")
	assert.NotContains(t, find(page.Client, "saw cut"), kerf)
	assert.Contains(t, find(page.Maker, "ben"), `<a href="#bench">`, "a section too")
	assert.NotContains(t, find(page.Client, "ben"), `<a href="#bench">`)
	assert.Contains(t, find(page.Maker, "  "), "<kbd>F8</kbd>", "without words: the keys")
	assert.NotContains(t, find(page.Builder, ""), "<kbd>F8</kbd>")
	assert.Contains(t, find(page.Maker, "no such name"), "under Money")
	assert.NotContains(t, find(page.Client, "no such name"), "Money")
	assert.Contains(t, find(page.Client, "no such name"), "No field has this name.")
	assert.Contains(t, find(page.Maker, "light"), `data-field="view.lamp.elevation"`, "by the heading that it stands under")
	wide := find(page.Maker, "width")
	assert.Equal(t, 8, strings.Count(find(page.Maker, "a"), `class="to-field"`), "no more are listed")
	assert.True(t, strings.HasPrefix(wide, `<li><a class="to-field" href="#look" data-field="walls[0].groups[0].width"`), wide)
}
