package sheet

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

var update = flag.Bool("update", false, "write widths.txt from the font")

// fonts are the very fonts that print.
func fonts(t testing.TB) [2]*sfnt.Font {
	t.Helper()
	var all [2]*sfnt.Font
	for i, ttf := range [][]byte{goregular.TTF, gobold.TTF} {
		f, err := sfnt.Parse(ttf)
		require.NoError(t, err)
		all[i] = f
	}
	return all
}

// advance is the width of a character in units of the font; false where it has
// none.
func advance(t testing.TB, f *sfnt.Font, r rune) (int, bool) {
	t.Helper()
	var b sfnt.Buffer
	glyph, err := f.GlyphIndex(&b, r)
	require.NoError(t, err)
	if glyph == 0 {
		return 0, false
	}
	a, err := f.GlyphAdvance(&b, glyph, fixed.I(int(f.UnitsPerEm())), font.HintingNone)
	require.NoError(t, err)
	return a.Round(), true
}

// The table of widths is that of the fonts, character by character.
func TestWidthsAreTheFonts(t *testing.T) {
	all := fonts(t)
	var b strings.Builder
	// What the fonts have lies in the first plane.
	for r := ' '; r <= 0xffff; r++ {
		regular, ok := advance(t, all[Regular], r)
		bold, okBold := advance(t, all[Bold], r)
		require.Equal(t, ok, okBold, "%U", r)
		if ok && (unicode.IsPrint(r) || r == '\u00a0') {
			fmt.Fprintf(&b, "%04x %d %d\n", r, regular, bold)
		}
	}
	if *update {
		require.NoError(t, os.WriteFile("widths.txt", []byte(b.String()), 0o644))
	}
	assert.Equal(t, b.String(), widthsText, "run with -update")
}

func TestProportionsAreTheFonts(t *testing.T) {
	for i, f := range fonts(t) {
		var b sfnt.Buffer
		require.Equal(t, unitsEm, int(f.UnitsPerEm()))
		m, err := f.Metrics(&b, fixed.I(unitsEm), font.HintingNone)
		require.NoError(t, err)
		assert.InDelta(t, capHeight, float64(m.CapHeight.Round())/unitsEm, 5e-4, "%d", i)
		assert.InDelta(t, descent, float64(m.Descent.Round())/unitsEm, 5e-4, "%d", i)
		// A figure is as high as a capital letter and a hair more where it is round.
		glyph, err := f.GlyphIndex(&b, '8')
		require.NoError(t, err)
		bounds, _, err := f.GlyphBounds(&b, glyph, fixed.I(unitsEm), font.HintingNone)
		require.NoError(t, err)
		assert.InDelta(t, capHeight, float64(-bounds.Min.Y.Round())/unitsEm, 0.02, "%d", i)
	}
}

// No pair of characters is moved together or apart, so widths add up.
func TestFontHasNoKerning(t *testing.T) {
	for _, ttf := range [][]byte{goregular.TTF, gobold.TTF} {
		tables := int(ttf[4])<<8 | int(ttf[5])
		for i := range tables {
			tag := string(ttf[12+16*i : 16+16*i])
			assert.NotContains(t, []string{"kern", "GPOS", "GSUB"}, tag)
		}
	}
}

func TestWidth(t *testing.T) {
	for i, f := range fonts(t) {
		sum := 0
		for _, r := range "Wooden blocks: 84 × 1 1/2" {
			a, ok := advance(t, f, r)
			require.True(t, ok)
			sum += a
		}
		assert.InDelta(t, 3.5*float64(sum)/2048, Width(Face(i), 3.5, "Wooden blocks: 84 × 1 1/2"), 1e-9)
	}
	// "84": two figures of 1139 units each.
	assert.InDelta(t, 2*1139*7.0/2048, Width(Bold, 7, "84"), 1e-9)
	assert.InDelta(t, 5.0, Width(Regular, 5, "木"), 1e-9, "what the font does not have counts as a square")
	assert.Zero(t, Width(Regular, 5, "\u0301"), "an accent stands on its letter")
	assert.True(t, Covered("Größe ½ → ≥ ×"))
	assert.False(t, Covered("木"))
}

func TestWrap(t *testing.T) {
	text := "Straight-grained  sticks,\nfree of knots/pith"
	for _, width := range []float64{5, 12, 20, 33, 60, 200} {
		lines := Wrap(Regular, 4, width, text)
		for _, line := range lines {
			assert.LessOrEqual(t, Width(Regular, 4, line), width, "%q", line)
			assert.Equal(t, strings.TrimSpace(line), line)
		}
		joined := strings.ReplaceAll(strings.Join(lines, ""), " ", "")
		assert.Equal(t, "Straight-grainedsticks,freeofknots/pith", joined, "nothing is lost at %v", width)
	}
	assert.Equal(t, []string{"Straight-", "grained sticks,", "free of knots/", "pith"}, Wrap(Regular, 4, 26, text))
	assert.Equal(t, []string{"priced on", "2030-05-14,", "1 1/2 in"}, Wrap(Regular, 4, 24, "priced on 2030-05-14, 1 1/2 in"))
	for _, text := range []string{"between 35 and 60 % of", "the tip 79 7/16 in up", "by 12 3/4"} { // at any width that the longest of its parts has
		for width := 16.0; width < 60; width++ {
			for _, line := range Wrap(Regular, 4, width, text) {
				assert.NotRegexp(t, `^(%|\d+/)`, line, "%q at %v", text, width)
			}
		}
	}
	assert.Equal(t, []string{"m", "m", "m"}, Wrap(Regular, 4, 0.5, "mmm"), "one character at least")
	assert.Empty(t, Wrap(Regular, 4, 20, " \n"))
	assert.Equal(t, []string{"10\u00a0000 blocks"}, Wrap(Regular, 4, 40, "10\u202f000\u0007 blocks"))
}

func TestFit(t *testing.T) {
	assert.Equal(t, "a wall", Fit(Regular, 4, 30, "a wall"))
	short := Fit(Regular, 4, 30, "a wall of many words and of more")
	assert.True(t, strings.HasSuffix(short, "…"), short)
	assert.LessOrEqual(t, Width(Regular, 4, short), 30.0)
	assert.Equal(t, []string{"one", "two…"}, shorten([]string{"one", "two", "three"}, 2, Regular, 4, 12))
}
