package web

import (
	"fmt"
	"math"
	"strconv"
)

// Accent is the colour of what can be done, on light and on dark paper.
type Accent struct{ Light, Dark Colour }

// Colour is one of sRGB.
type Colour struct{ R, G, B uint8 }

// The colours of site/page.css that an accent meets: the papers that it is written on and
// what is written on it. The first of each scheme is the page's own paper.
var (
	LightPapers = []string{"#fbf8f2", "#f2ece1"}
	DarkPapers  = []string{"#1a1612", "#241f19"}
	OnAccents   = []string{"#fffaf2", "#1f1710"}
)

// LeastContrast is what text needs on its ground (WCAG 2.2, 1.4.3, level AA).
const LeastContrast = 4.5

// ParseColour reads "#rrggbb".
func ParseColour(text string) (Colour, bool) {
	v, err := strconv.ParseUint(text[min(1, len(text)):], 16, 32)
	if err != nil || len(text) != len("#rrggbb") || text[0] != '#' || text[1] == '+' {
		return Colour{}, false
	}
	return Colour{uint8(v >> 16), uint8(v >> 8), uint8(v)}, true
}

func (c Colour) String() string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// luminance is the relative one of WCAG 2.2.
func (c Colour) luminance() float64 {
	part := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*part(c.R) + 0.7152*part(c.G) + 0.0722*part(c.B)
}

// Contrast is the contrast ratio of two colours by WCAG 2.2, 1 to 21.
func Contrast(a, b Colour) float64 {
	high, low := a.luminance(), b.luminance()
	if high < low {
		high, low = low, high
	}
	return (high + 0.05) / (low + 0.05)
}

// Worst is the paper among papers on which the colour is hardest to read, with its
// contrast there.
func (c Colour) Worst(papers []string) (paper string, contrast float64) {
	contrast = math.Inf(1)
	for _, p := range papers {
		ground, _ := ParseColour(p)
		if v := Contrast(c, ground); v < contrast {
			paper, contrast = p, v
		}
	}
	return paper, contrast
}

// on is what is written on the colour: the one of OnAccents that is read best.
func (c Colour) on() string {
	light, _ := ParseColour(OnAccents[0])
	dark, _ := ParseColour(OnAccents[1])
	if Contrast(c, light) >= Contrast(c, dark) {
		return OnAccents[0]
	}
	return OnAccents[1]
}

// style is what follows in the style sheet of the page.
func (a Accent) style() string {
	return fmt.Sprintf("\n:root { --accent: %v; --on-accent: %v; }\n@media (prefers-color-scheme: dark) { :root { --accent: %v; --on-accent: %v; } }\n",
		a.Light, a.Light.on(), a.Dark, a.Dark.on())
}
