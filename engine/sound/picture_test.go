package sound_test

import (
	"encoding/xml"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/sound"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// listened is the reference panel.
func listened(t testing.TB) sound.Listening {
	a := laid(t, design.Pattern{Kind: design.Shuffled, Seed: 1, Clump: 2}, 28, 19, 36.2, 15, 32, 55, 84)
	return sound.Listen(a, sound.Options{})
}

func reader() words.Reader { return words.Reader{Language: words.English(), Units: length.Metric} }

// element is one element of a drawing with its attributes.
type element struct {
	name  string
	attrs map[string]string
}

// elements reads a drawing, which has to be well-formed XML without styles.
func elements(t *testing.T, svg string) []element {
	t.Helper()
	var out []element
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return out
		}
		require.NoError(t, err)
		if start, ok := token.(xml.StartElement); ok {
			e := element{start.Name.Local, map[string]string{}}
			for _, a := range start.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			assert.NotContains(t, e.attrs, "style")
			out = append(out, e)
		}
	}
}

func withClass(all []element, class string) []element {
	var out []element
	for _, e := range all {
		if e.attrs["class"] == class {
			out = append(out, e)
		}
	}
	return out
}

// To look at the pictures: SOUND_PICTURES=/some/folder go test ./engine/sound.
func keepPicture(t *testing.T, name, svg string) {
	t.Helper()
	assert.NotContains(t, svg, "⟪")
	if dir := os.Getenv("SOUND_PICTURES"); dir != "" {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name+".svg"), []byte(svg), 0o644))
	}
}

func TestShareChart(t *testing.T) {
	l := listened(t)
	svg := sound.ShareChart("share", reader(), l)
	keepPicture(t, "share", svg)
	bars := withClass(elements(t, svg), "bars")
	require.Len(t, bars, 1)
	var want int // bars that are high enough to show, 315 Hz to 8 kHz
	for _, s := range l.Dome.Bands {
		if s.Band >= -5 && s.Band <= 9 && s.ByEnergy > 0.5/(230-26-40) {
			want++
		}
	}
	assert.Equal(t, want, strings.Count(bars[0].attrs["d"], "z"))
	assert.Contains(t, svg, ">5000<")
	assert.Contains(t, svg, ">50 %<")

	level := sound.Listen(sound.Arrangement{Surface: sound.Surface{Columns: 4, Rows: 4, PitchM: 0.04, HeightsM: []float64{0}, Levels: make([]uint16, 16)}}, sound.Options{})
	assert.Empty(t, withClass(elements(t, sound.ShareChart("flat", reader(), level)), "bars"), "a flat board has no bars")
}

// Straight on the curve is a hint below twice the depth's frequency and solid
// above, at 30° and from everywhere a hint throughout, at 60° not drawn.
func TestDiffusionChart(t *testing.T) {
	l := listened(t)
	polars := l.Across.Polars
	for name, c := range map[string]struct {
		curve sound.Curve
		want  [2]int
	}{
		"straight": {l.From(polars[0]), [2]int{1, 1}}, "30": {l.From(polars[1]), [2]int{1, 0}}, "60": {l.From(polars[3]), [2]int{0, 0}},
		"everywhere": {l.FromEverywhere(l.Across), [2]int{1, 0}},
	} {
		svg := sound.DiffusionChart("d", reader(), c.curve)
		keepPicture(t, "diffusion-"+name, svg)
		all := elements(t, svg)
		assert.Equal(t, c.want, [2]int{len(withClass(all, "hint")), len(withClass(all, "curve"))}, name)
		assert.Len(t, withClass(all, "ribbon"), c.want[0], name)
		assert.Len(t, withClass(all, "flat"), 1)
	}
}

func TestPolars(t *testing.T) {
	l := listened(t)
	svg := sound.Polars("polars", reader(), l, l.Across)
	keepPicture(t, "polars", svg)
	all := elements(t, svg)
	assert.Len(t, withClass(all, "polar"), 3*5, "0°, 30° and 60° in five octaves")
	// Twice the frequency of its depth, 69 mm, is 2.5 kHz: 4 and 8 kHz straight on
	// are more than a hint.
	assert.Len(t, withClass(all, "curve"), 2)
	assert.Len(t, withClass(all, "hint"), 13)
	assert.Len(t, withClass(all, "flat"), 15)
}

func TestMap(t *testing.T) {
	l := listened(t)
	svg := sound.Map("map", reader(), l.Dome, 3)
	keepPicture(t, "map", svg)
	assert.Less(t, len(svg), 64<<10, "small enough for a page")
	all := elements(t, svg)
	require.Len(t, withClass(all, "level-0"), 1)
	assert.NotEmpty(t, withClass(all, "level-4"))
	flat := sound.Map("flat", reader(), sound.Dome{Bands: []sound.Spread{{Band: 3, Energy: l.Dome.Bands[13].FlatEnergy}}}, 3)
	keepPicture(t, "map-flat", flat)
	loud := withClass(elements(t, flat), "level-0")[0].attrs["d"]
	assert.Less(t, strings.Count(loud, "z"), 10, "a flat board sends it straight back")
	assert.True(t, strings.HasPrefix(loud, "M"))
}
