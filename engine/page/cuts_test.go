package page_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/page"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// benchOf is the section of a design as a reader has it.
func benchOf(t *testing.T, doc design.Document, reading string) string {
	t.Helper()
	doc.View.Reading = reading
	return section(t, doc, design.DefaultBook(), page.Bench)
}

// What the cut list says adds up: the sticks of its groups are those that are cut,
// and each height comes out as often as it is to be cut.
func TestCutListAddsUp(t *testing.T) {
	for name, doc := range scenarios(t) {
		for _, lot := range plan(t, doc.Design, design.DefaultBook()).Bill.Lots {
			text := said(t, benchOf(t, doc, page.Maker))
			_, groups, ok := strings.Cut(text, "From each stick Left over ")
			require.True(t, ok, name)
			groups, stops, _ := strings.Cut(groups, "Stop at Need Spare Cut Blocks from each stick ")
			number := map[string]int{} // of the sticks of a group
			sticks := 0
			for _, m := range regexp.MustCompile(`\b([A-Z]) (\d+) (?:\S+ mm(?:, there)? |\S+ in(?:, there)? )?\d+ × `).FindAllStringSubmatch(groups, -1) {
				n := 0
				_, _ = fmt.Sscan(m[2], &n)
				number[m[1]] = n
				sticks += n
			}
			assert.Equal(t, lot.SticksBeforeDefects, sticks, "%s: %s", name, groups)
			stops, _, _ = strings.Cut(stops, "Set the stop")
			cut := 0
			for _, m := range regexp.MustCompile(`([A-Z]) (\d+)`).FindAllStringSubmatch(stops, -1) {
				n := 0
				_, _ = fmt.Sscan(m[2], &n)
				cut += n * number[m[1]]
			}
			all := 0
			for _, h := range lot.Heights {
				all += h.Cut
			}
			assert.Equal(t, all, cut, "%s: %s", name, stops)
		}
	}
}

// A maker reads money beside boards and handling, a home builder does not: his time
// has no price, and the fewest boards are taken.
func TestBoardsAgainstHandling(t *testing.T) {
	doc := design.Default()
	text := said(t, benchOf(t, doc, page.Maker))
	assert.Contains(t, text, "Sticks To buy Visits Handling Wood and time 20 chosen 23 3 2 min ¤237.95 21 24 0 0 min ¤246.34")
	assert.Contains(t, text, "No plan takes fewer than 20 sticks.")
	assert.Contains(t, text, "Chosen: what costs less, with an hour in the shop at ¤56.00.")

	least, err := design.Set(doc, "bench.handling", design.FewestVisits, length.Metric)
	require.NoError(t, err)
	assert.Contains(t, said(t, benchOf(t, least, page.Maker)), "21 chosen 24 0 0 min")

	home, err := design.Set(doc, "work.ownBuild", "yes", length.Metric)
	require.NoError(t, err)
	text = said(t, benchOf(t, home, page.Builder))
	assert.Contains(t, text, "Sticks To buy Visits Handling 20 chosen 23 3 2 min 21 24 0 0 min")
	assert.Contains(t, text, "time has no price here")
}

// Wood that is there stands in the shopping list as one's own, and in the cut list.
func TestWoodThatIsThere(t *testing.T) {
	doc, _, err := design.Add(design.Default(), "bench.stock")
	require.NoError(t, err)
	text := said(t, benchOf(t, doc, page.Maker))
	assert.Contains(t, text, "Sticks for blocks poplar, 36 mm square, 2400 mm long 22")
	assert.Contains(t, text, "poplar, 36 mm square, 2400 mm long 1 of your own")
	assert.Contains(t, text, "22 are bought, with what knots and splits may take. 1 is there already.")
	assert.Contains(t, text, "A 1 2400 mm, there 23 × 92 mm")
	assert.Contains(t, text, "Poplar that is there 1 of 36 × 36 × 2400 mm")
}

// The sheet, the coats and the edges in words.
func TestSheetsFinishAndTrim(t *testing.T) {
	text := said(t, benchOf(t, design.Default(), page.Maker))
	for _, want := range []string{
		// The backer is 1204.6 × 806.4 mm, a sheet 2440 × 1220 with 10 mm off at its far
		// edges: 2430 − 1204.6 − 3 = 1222.4 behind it, 1210 − 806.4 − 3 = 400.6 beside it.
		"1205 × 806 mm 1 Left over and worth keeping (broken lines), across and along the grain: 1 of 1210 × 1222 mm, 1 of 400 × 1204 mm. No plan takes fewer than 1 sheet.",
		"The glued field lies for 24 h in this shop",
		"Top edge 10 mm comes off through 12 mm Left edge stays as it is Right edge 10 mm comes off through 12 mm Bottom edge stays as it is",
		"Waterborne varnish on the field, 1 of 2 next coat after 2 to 4 h 0.24 l 0.04 l",
		"Waterborne varnish on the frame, 2 of 2 fully dry after 7 days 0.11 l",
	} {
		assert.Contains(t, text, want)
	}
	doc, err := design.Set(design.Default(), "bench.trim", design.TrimBlocks, length.Metric)
	require.NoError(t, err)
	assert.Contains(t, said(t, benchOf(t, doc, page.Maker)), "deeper than your saw cuts")
}
