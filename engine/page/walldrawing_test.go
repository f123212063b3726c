package page_test

import (
	"strconv"
	"strings"
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/page"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// texts are the words and figures of the wall's drawing with their height on it.
func wallTexts(t *testing.T, doc design.Document) map[string]float64 {
	t.Helper()
	doc.View.Reading = page.Client
	all := map[string]float64{}
	parse(t, section(t, doc, design.DefaultBook(), page.Wall)).walk(func(n *node) {
		if n.tag == "text" {
			y, err := strconv.ParseFloat(n.attrs["y"], 64)
			require.NoError(t, err)
			all[strings.Join(n.visible(), " ")] = y
		}
	})
	return all
}

// The name of a switch stands above it, and below it where a panel would hide
// it. The wall is 2500 mm high, the panel's lower edge 700 mm above the floor.
func TestNamesOnTheWallAreNotHidden(t *testing.T) {
	doc := design.Default()
	g := doc.Design.Walls[0].Groups[0]
	at := func(y int64) float64 {
		doc.Design.Walls[0].Obstacles = []design.Obstacle{{
			Kind: "switch", X: g.Place.Left.Add(length.MM(100)), Y: length.MM(y), Width: length.MM(80), Height: length.MM(80),
		}}
		return wallTexts(t, doc)["Switch"]
	}
	bottom := g.Place.Height.Millimetres()
	free, tight := int64(bottom)-600, int64(bottom)-90
	assert.Less(t, at(free), 2500-float64(free+80), "above the switch")
	assert.Greater(t, at(tight), 2500-float64(tight), "below it")
}

// A place too narrow for its figure has a line of its own: the figure of the
// panel's width then stands lower.
func TestNarrowPlacesHaveTheirOwnLine(t *testing.T) {
	doc := design.Default()
	wide := wallTexts(t, doc)
	assert.InDelta(t, wide["1130"], wide["1240.6"], 1e-9, "side by side")
	doc.Design.Walls[0].Groups[0].Place.Left = length.MM(100)
	narrow := wallTexts(t, doc)
	assert.Greater(t, narrow["1240.6"], narrow["100"])
	assert.Greater(t, narrow["3500"], narrow["1240.6"])
}

// The figure of a short upright span stands above it, and the drawing is high
// enough for it: the café's panel is 36 15/16 in high, just below the ceiling.
func TestTheWallDrawingHoldsItsFigures(t *testing.T) {
	doc := scenarios(t)["s5.json"]
	doc.View.Reading = page.Client
	found := false
	parse(t, section(t, doc, design.DefaultBook(), page.Wall)).walk(func(n *node) {
		if n.tag != "svg" || !strings.Contains(n.attrs["class"], "wall-drawing") {
			return
		}
		box := strings.Fields(n.attrs["viewBox"])
		require.Len(t, box, 4)
		top, err := strconv.ParseFloat(box[1], 64)
		require.NoError(t, err)
		n.walk(func(text *node) {
			if text.tag != "text" || !strings.Contains(text.attrs["transform"], "rotate") {
				return
			}
			y, err := strconv.ParseFloat(text.attrs["y"], 64)
			require.NoError(t, err)
			size, err := strconv.ParseFloat(text.attrs["font-size"], 64)
			require.NoError(t, err)
			long := 0.6 * size * float64(len([]rune(strings.Join(text.visible(), ""))))
			if text.attrs["text-anchor"] == "middle" {
				long /= 2
			}
			assert.GreaterOrEqual(t, y-long, top, "%v", text.visible())
			found = true
		})
	})
	assert.True(t, found)
}

// A panel that goes beyond its wall is drawn whole, and a client reads that it does not fit.
// By hand: 4000 mm of blocks and two frame boards at 650 mm from the corner of a wall of
// 3500 mm, 3000 mm at 900 mm above the floor of one of 2500 mm.
func TestAPanelBeyondItsWallIsSeenAndSaid(t *testing.T) {
	doc := design.Default()
	g := &doc.Design.Walls[0].Groups[0]
	g.Width, g.Height, g.Place.Left, g.Place.Height = length.MM(4000), length.MM(3000), length.MM(650), length.MM(900)
	doc.View.Reading = page.Client
	var right, top float64
	parse(t, section(t, doc, design.DefaultBook(), page.Wall)).walk(func(n *node) {
		if n.tag != "svg" || !strings.Contains(n.attrs["class"], "wall-drawing") {
			return
		}
		box := strings.Fields(n.attrs["viewBox"])
		x, _ := strconv.ParseFloat(box[0], 64)
		y, _ := strconv.ParseFloat(box[1], 64)
		width, _ := strconv.ParseFloat(box[2], 64)
		right, top = x+width, y
	})
	assert.Greater(t, right, 650+4000.0)
	assert.Less(t, top, 2500-900-3000.0)
	assert.Contains(t, section(t, doc, design.DefaultBook(), page.Look), "beyond the wall", "beside its width")
	assert.Contains(t, section(t, doc, design.DefaultBook(), page.Look), "above the wall", "beside its height")
	assert.Contains(t, section(t, doc, design.DefaultBook(), page.Wall), "\u00a0in Look</a>", "in the place where it is drawn too")
	g.Width, g.Height = length.MM(1200), length.MM(800)
	assert.NotContains(t, section(t, doc, design.DefaultBook(), page.Look), "beyond the wall")
}

// A Stop that stands beside a field far down is led to from the list, from the line of
// figures. By hand: 2500 mm of wall less 900 mm
// leave 1600 mm, of which a panel of 1590 mm with its frame leaves no room to lift it.
func TestStopsAreLedTo(t *testing.T) {
	doc := design.Default()
	g := &doc.Design.Walls[0].Groups[0]
	g.Height, g.Place.Height = length.MM(1500), length.MM(950)
	doc.View.Reading = page.Maker
	lead := `data-field="walls[0].groups[0].place.height" data-section="wall" class="to-field"`
	in := input(t, doc, design.DefaultBook(), words.English(), page.Wall)
	var stops int
	for _, w := range in.Plan.WatchOuts {
		if w.Level == check.Stop && w.Field == "walls[0].groups[0].place.height" {
			stops++
		}
	}
	require.Positive(t, stops)
	parts := map[string]string{}
	for _, f := range page.Whole(in) {
		parts[f.Target] = f.HTML
	}
	assert.Contains(t, parts["strip"], `data-field="work.lifting.method" data-section="wall"`, "to the first of them")
	list := parts["section"][strings.Index(parts["section"], `id="watch-outs"`):]
	assert.Contains(t, list[:strings.Index(list, "</ul>")], "Beside its field:")
	assert.Contains(t, list[:strings.Index(list, "</ul>")], lead)
}
