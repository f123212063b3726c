package papers_test

import (
	"image"
	"image/color"
	"strings"
	"testing"

	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"

	qr "github.com/piglig/go-qr"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The code on the papers of the bench, drawn as a camera sees it and read by another
// library than the one that made it, is the address of the page with the revision.
func TestScan(t *testing.T) {
	const site = "https://blocks.example/made/"
	for _, format := range []sheet.Format{sheet.A4(), sheet.Letter()} {
		in := job(t, "s2").input(length.Metric, format)
		in.Site = site
		on := map[string]bool{}
		for _, set := range []string{papers.CutSet, papers.GlueSet, papers.HangSet, papers.BookSet, papers.SurveySet, papers.OfferSet} {
			made := make1(t, in, set)
			for _, one := range made.Sheets {
				require.Empty(t, one.Overflow, "%s, %s", set, one.Title)
				code := scanOf(t, one.SVG)
				on[one.Paper] = code != nil
				if code == nil {
					continue
				}
				text, err := qr.Decode(code)
				require.NoError(t, err, one.Title)
				assert.Equal(t, site+"#paper-"+in.Plan.Revision, text)
			}
		}
		for _, paper := range []string{"cover", "before", "stop-list", "count-card", "lay-up", "row-cards", "time-sheet"} {
			assert.True(t, on[paper], paper)
		}
		for _, paper := range []string{"offer", "look-card", "rear-map", "hang-sheet", "bin-labels"} {
			assert.False(t, on[paper], paper)
		}
	}
}

// Where nobody knows where the page is there is no code, and the sheets are as they were.
func TestNoScanWithoutSite(t *testing.T) {
	in := job(t, "s2").input(length.Metric, sheet.A4())
	plain := make1(t, in, papers.CutSet)
	for _, site := range []string{"", "file:///home/me/index.html", "javascript:alert(1)", "https://", "https:///x", "https://a b/", "https://a/?q=1", "https://a/#x", "https://" + strings.Repeat("a", 80)} {
		in.Site = site
		assert.Equal(t, plain.Sheets, make1(t, in, papers.CutSet).Sheets, "%q", site)
	}
	for _, one := range plain.Sheets {
		assert.Nil(t, scanOf(t, one.SVG))
	}
}

func TestScanned(t *testing.T) {
	for fragment, want := range map[string]string{"paper-F7142N": "F7142N", "paper-f7i42n": "F7142N", "paper-FOLD00": "F01D00", "paper-": ""} {
		code, ok := papers.Scanned(fragment)
		assert.True(t, ok, fragment)
		assert.Equal(t, want, code, fragment)
	}
	for _, fragment := range []string{"", "papers", "bench", "F7142N"} {
		_, ok := papers.Scanned(fragment)
		assert.False(t, ok, fragment)
	}
	assert.True(t, papers.IsSite("http://127.0.0.1:8080/"))
}

// scanOf draws the code of a sheet in pixels, with white round it;
// nil where there is none.
func scanOf(t *testing.T, svg string) image.Image {
	t.Helper()
	for _, n := range parse(t, svg).Children {
		if n.attr("class") != "scan" {
			continue
		}
		const dots, white = 12, 48 // in a mm; round the code
		dark := boxes(t, n.Children[0])
		side := 0.0
		for _, b := range dark {
			side = max(side, b.X+b.Width, b.Y+b.Height)
		}
		size := int(side*dots+0.5) + 2*white
		out := image.NewGray(image.Rect(0, 0, size, size))
		for y := range size {
			for x := range size {
				at := color.Gray{Y: 255}
				if covers(dark, (float64(x-white)+0.5)/dots, (float64(y-white)+0.5)/dots) {
					at.Y = 0
				}
				out.SetGray(x, y, at)
			}
		}
		return out
	}
	return nil
}
