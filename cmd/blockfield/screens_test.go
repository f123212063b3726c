package main_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

var screensDir = flag.String("screens", "", "folder for screenshots of the page, for TestScreens")

var screensLanguage = flag.String("screens-language", "en", "language of the page on them")

// Screenshots for people to look at: every reading and every section of it, on
// a desk, a tablet and a phone, in light and in dark colours (make screens). A part
// of them:
//
//	go test ./cmd/blockfield -run TestScreens/390/maker -screens DIR [-screens-language de]
func TestScreens(t *testing.T) {
	if *screensDir == "" {
		t.Skip("only with -screens DIR")
	}
	require.NoError(t, os.MkdirAll(*screensDir, 0o755))
	s := newServer(t, builtSite(t).Handler())
	for _, width := range []int64{1440, 768, 390} {
		t.Run(fmt.Sprint(width), func(t *testing.T) {
			for _, reading := range readings {
				t.Run(reading, func(t *testing.T) { shootReading(t, s.URL, reading, width) })
			}
		})
	}
}

// shootReading takes the pictures of all sections that a reader meets, at one width.
func shootReading(t *testing.T, url, reading string, width int64) {
	b := newProfile(t)
	b.patient()
	b.size(width, 900)
	b.open(url + "/")
	b.alive()
	b.drawn()
	b.speak(*screensLanguage)
	b.read(reading)
	for _, section := range b.sections() {
		b.section(section)
		b.settle()
		for _, scheme := range []string{"light", "dark"} {
			b.dark(scheme == "dark")
			name := fmt.Sprintf("%s-%s-%d-%s.png", reading, section, width, scheme)
			shot, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(100))
			require.NoError(t, err)
			require.NoError(t, os.WriteFile(filepath.Join(*screensDir, name), shot, 0o644))
		}
		b.dark(false)
	}
}
