package web_test

import (
	"bytes"
	"encoding/json"
	"image"
	"image/png"
	"io/fs"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/cmd/blockfield/web"
	"blockfield/engine/page"
	"blockfield/site"
)

// The papers and inks that an accent is held against are those of the style sheet.
func TestAccentKnowsThePapers(t *testing.T) {
	t.Parallel()
	css, err := fs.ReadFile(site.Assets(), "page.css")
	require.NoError(t, err)
	values := func(name string) []string {
		var all []string
		for _, m := range regexp.MustCompile(`(?m)^ *--`+name+`: (#[0-9a-f]{6});`).FindAllStringSubmatch(string(css), -1) {
			all = append(all, m[1])
		}
		return all
	}
	paper, deep := values("paper"), values("paper-deep")
	require.Len(t, paper, 2)
	assert.Equal(t, []string{paper[0], deep[0]}, web.LightPapers)
	assert.Equal(t, []string{paper[1], deep[1]}, web.DarkPapers)
	assert.Equal(t, values("on-accent"), web.OnAccents)
}

// Black on white is 21 to 1 by definition; #767676 on white is the lightest grey that
// reaches 4.5, #777777 falls short with 4.47 (WebAIM's and W3C's examples, from memory).
func TestContrast(t *testing.T) {
	t.Parallel()
	of := func(a, b string) float64 {
		x, ok := web.ParseColour(a)
		require.True(t, ok)
		y, ok := web.ParseColour(b)
		require.True(t, ok)
		return web.Contrast(x, y)
	}
	assert.InDelta(t, 21, of("#000000", "#ffffff"), 1e-9)
	assert.InDelta(t, 1, of("#123456", "#123456"), 1e-9)
	assert.InDelta(t, 4.54, of("#767676", "#ffffff"), 0.005)
	assert.InDelta(t, 4.48, of("#ffffff", "#777777"), 0.005)
	for _, bad := range []string{"", "#", "#fff", "7b4a20f", "#7b4a2g", "#+b4a20", "#7b4a200"} {
		_, ok := web.ParseColour(bad)
		assert.False(t, ok, bad)
	}
}

func drawing(inner string) []byte {
	return []byte(`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="80px" height="20">` + inner + `</svg>`)
}

// A drawing is taken as drawing programs write it.
func TestImages(t *testing.T) {
	t.Parallel()
	for _, good := range []string{
		`<rect width="8" height="8"/>`,
		`<defs><linearGradient id="a"><stop offset="0"/></linearGradient></defs><rect fill="url(#a)" style="filter:url('#b')"/>`,
		`<style>.a { fill: red } .b { fill: url(#a) }</style><use xlink:href="#a"/>`,
		`<metadata><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"/></metadata>`,
		`<image href="data:image/png;base64,AAAA" width="1" height="1"/>`,
	} {
		got, err := web.ReadImage(drawing(good))
		require.NoError(t, err, good)
		assert.Equal(t, ".svg", got.Suffix)
		assert.InDelta(t, 80, got.Width, 0)
		assert.InDelta(t, 20, got.Height, 0)
	}
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, image.NewGray(image.Rect(0, 0, 30, 10))))
	got, err := web.ReadImage(b.Bytes())
	require.NoError(t, err)
	assert.Equal(t, ".png", got.Suffix)
	assert.InDelta(t, 30, got.Width, 0)
	_, err = web.ReadImage(b.Bytes()[:b.Len()-20])
	assert.ErrorContains(t, err, "is a broken PNG")
}

// Whatever a drawing could do beside being looked at is refused.
func TestHostileImages(t *testing.T) {
	t.Parallel()
	for inner, why := range map[string]string{
		`<script>alert(1)</script>`:                             "<script>",
		`<g><SCRIPT/></g>`:                                      "<SCRIPT>",
		`<rect onclick="alert(1)"/>`:                            "onclick on <rect>",
		`<rect OnLoad="alert(1)"/>`:                             "OnLoad",
		`<foreignObject><p/></foreignObject>`:                   "<foreignObject>",
		`<p xmlns="http://www.w3.org/1999/xhtml"/>`:             "none of SVG's",
		`<a xlink:href="javascript:alert(1)"><rect/></a>`:       "<a>",
		`<use href="https://evil.example/x.svg#a"/>`:            "href=",
		`<image href="data:image/svg+xml;base64,AAAA"/>`:        "href=",
		`<animate attributeName="href" to="javascript:1"/>`:     "<animate>",
		`<set attributeName="onload" to="alert(1)"/>`:           "<set>",
		`<rect fill="url(https://evil.example/a)"/>`:            "fetches something",
		`<rect style="fill: url( 'https://evil.example/a' )"/>`: "fetches something",
		`<style>@import "https://evil.example/a.css";</style>`:  "fetches something",
		`<style>rect { fill: u\72l(//evil.example) }</style>`:   "fetches something",
		`<?xml-stylesheet href="https://evil.example/a.css"?>`:  "instruction",
		strings.Repeat(`<g>`, 40) + strings.Repeat(`</g>`, 40):  "too much in it",
		strings.Repeat(`<g/>`, 21_000):                          "too much in it",
		`<g>`:                                                   "broken SVG",
		`&unknown;`:                                             "broken SVG",
	} {
		_, err := web.ReadImage(drawing(inner))
		assert.ErrorContains(t, err, why, inner[:min(40, len(inner))])
	}
	for text, why := range map[string]string{
		`<!DOCTYPE svg [<!ENTITY a "b">]><svg xmlns="http://www.w3.org/2000/svg" width="1" height="1"/>`: "names entities",
		`<svg width="1" height="1"/>`:                            "none of SVG's",
		`<svg xmlns="http://www.w3.org/2000/svg"/>`:              "does not say its size",
		`<html><svg xmlns="http://www.w3.org/2000/svg"/></html>`: "none of SVG's",
		strings.Repeat("x", web.MaxImageBytes+1):                 "bytes (allowed up to",
		"GIF89a":                                                 "no picture that can be read",
	} {
		_, err := web.ReadImage([]byte(text))
		assert.ErrorContains(t, err, why, text[:min(40, len(text))])
	}
}

// The brand stands in the head, the title, the manifest and the style sheet; what was
// typed is text everywhere.
func TestBrandedSite(t *testing.T) {
	t.Parallel()
	logo, err := web.ReadImage(drawing(`<rect width="8" height="8"/>`))
	require.NoError(t, err)
	light, _ := web.ParseColour("#0a5c5c")
	dark, _ := web.ParseColour("#7fd1cc")
	in, err := web.Carried(fstest.MapFS{"engine.wasm": {}, "preview.wasm": {}, "wasm_exec.js": {}}, web.Settings{
		Name: `Elm & "Yard" <i>`, Logo: &logo, Accent: &web.Accent{Light: light, Dark: dark},
		Footer: []page.Note{{Text: "Imprint <b>", Address: "https://example.org/imprint?a=1&b=2"}},
		Frames: &[]string{"https://www.example.org"},
	})
	require.NoError(t, err)
	s := build(t, in, 0)
	index := string(s.File("index.html").Body)
	for _, part := range []string{
		`data-maker="Elm &amp; &#34;Yard&#34; &lt;i&gt;"`, `Elm &amp; &#34;Yard&#34; &lt;i&gt;: wooden block sound diffusers</title>`,
		`width="80" height="20" alt=""`, `<a href="https://example.org/imprint?a=1&amp;b=2" target="_blank" rel="noopener">Imprint &lt;b&gt;</a>`,
	} {
		assert.Contains(t, index, part)
	}
	assert.NotContains(t, index, "Blockfield<")
	name := regexp.MustCompile(`logo-[0-9a-f]{12}\.svg`).FindString(index)
	require.NotNil(t, s.File(name))
	assert.Equal(t, "image/svg+xml", s.File(name).Type)
	assert.Contains(t, string(s.File("service-worker.js").Body), name, "kept for flights")
	var about map[string]any
	require.NoError(t, json.Unmarshal(s.File("manifest.webmanifest").Body, &about))
	assert.Equal(t, `Elm & "Yard" <i>`, about["name"])
	assert.Equal(t, "#0a5c5c", about["theme_color"])
	css := string(s.File(folder(t, s) + "page.css").Body)
	assert.True(t, strings.HasSuffix(css, "dark) { :root { --accent: #7fd1cc; --on-accent: #1f1710; } }\n"))
	assert.Contains(t, css, ":root { --accent: #0a5c5c; --on-accent: #fffaf2; }")
	res := ask(t, s.Handler(), "GET", "/", nil)
	assert.Contains(t, res.Header.Get("Content-Security-Policy"), "; frame-ancestors 'self' https://www.example.org")

	in.Settings.Frames = &[]string{}
	assert.Contains(t, ask(t, build(t, in, 0).Handler(), "GET", "/", nil).Header.Get("Content-Security-Policy"), "; frame-ancestors 'none'")
}
