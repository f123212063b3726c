package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/cmd/blockfield/web"
	"blockfield/engine/design"
	"blockfield/engine/page"
)

// The address that clients write to is one, and nothing more than one: it stands in a link.
func TestMailAddresses(t *testing.T) {
	t.Parallel()
	for _, good := range []string{"workshop@example.org", "a.b+c@x.example", "o'neil@example.org"} {
		assert.True(t, isMailAddress(good), good)
	}
	for _, bad := range []string{
		"workshop", "@example.org", "Workshop <workshop@example.org>", "a@b@example.org", "a@example.org?bcc=b@example.org", "a@example.org,b@example.org",
		"a b@example.org", "a@example.org ", `"a&b"@example.org`, "a%0d@example.org", "javascript:x",
	} {
		assert.False(t, isMailAddress(bad), bad)
	}
}

// squareSVG is a drawing of its own.
const squareSVG = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64"><rect width="64" height="64" fill="#0a5c5c"/></svg>`

// folder is what lies beside a settings file.
func folder(files map[string]string) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		text, ok := files[name]
		if !ok {
			return nil, fmt.Errorf("%s: %w", name, os.ErrNotExist)
		}
		return []byte(text), nil
	}
}

// settings is a settings file with more members.
func settings(more string) []byte {
	return []byte(`{"format": "blockfield site", "version": 1` + more + `}`)
}

// All that a settings file says, and what a site makes of it.
func TestSettings(t *testing.T) {
	t.Parallel()
	got, err := readSettings(settings(`, "name": "Holz & Klang <Werkstatt>", "logo": {"light": "l.svg", "dark": "d.svg"}, "icon": "i.svg",
		"nameInLogo": true, "accent": {"light": "#0a5c5c", "dark": "#7fd1cc"}, "language": "de", "writeTo": "post@example.org",
		"footer": [{"text": "Impressum", "address": "https://example.org/impressum"}, {"text": "Hauptstraße 1, Musterstadt"}],
		"frames": ["https://www.example.org", "http://localhost:8080"]`),
		folder(map[string]string{"l.svg": squareSVG, "d.svg": squareSVG, "i.svg": squareSVG}))
	require.NoError(t, err)
	assert.Equal(t, "Holz & Klang <Werkstatt>", got.Name)
	assert.True(t, got.NameInLogo)
	assert.InDelta(t, 64, got.Logo.Width, 0)
	assert.Equal(t, "#0a5c5c", got.Accent.Light.String())
	assert.Equal(t, []page.Note{{Text: "Impressum", Address: "https://example.org/impressum"}, {Text: "Hauptstraße 1, Musterstadt"}}, got.Footer)
	assert.Equal(t, []string{"https://www.example.org", "http://localhost:8080"}, *got.Frames)

	none, err := readSettings(settings(""), nil)
	require.NoError(t, err)
	assert.Equal(t, web.Settings{}, none)
}

// Each fault has its field, the value and what is allowed, and all are told at once.
func TestSettingsFaults(t *testing.T) {
	t.Parallel()
	beside := folder(map[string]string{
		"wide.svg": strings.Replace(squareSVG, "0 0 64 64", "0 0 128 64", 1), "logo.txt": "no picture",
		"script.svg": strings.Replace(squareSVG, "<rect", "<script>alert(1)</script><rect", 1),
		"s1.json":    `{"format":"blockfield design","version":1}`, "selling.json": `{"format":"blockfield selling book","version":1}`,
	})
	for more, want := range map[string]string{
		`, "nmae": "x"`:                    `nmae: is not a field of the settings of a site`,
		`, "name": 3`:                      `name: is of the wrong type: number`,
		`, "name": ""`:                     `name: "" has 0 characters (allowed 1 to 60)`,
		`, "name": "a\u202eb"`:             `name: "a\u202eb" has the character U+202E, which cannot be seen, as its 2.`,
		`, "language": "fr"`:               `language: "fr" is no language of ours (allowed en, de)`,
		`, "writeTo": "nobody"`:            `writeTo: "nobody" is no mail address (allowed NAME@HOST`,
		`, "accent": {"light": "#7b4a20"}`: `accent.dark: is missing`,
		`, "accent": {"light": "red", "dark": "#dca66c"}`:                     `accent.light: "red" is no colour (allowed like "#7b4a20")`,
		`, "accent": {"light": "#e0bd8e", "dark": "#dca66c"}`:                 `accent.light: "#e0bd8e" stands out from the page's light paper #f2ece1 by 1.50 to 1 (allowed 4.5 to 1 or more)`,
		`, "accent": {"light": "#7b4a20", "dark": "#7b4a20"}`:                 `accent.dark: "#7b4a20" stands out from the page's dark paper #241f19 by`,
		`, "logo": {"light": "gone.svg"}`:                                     `logo.light: gone.svg: file does not exist`,
		`, "logo": {"dark": "wide.svg"}`:                                      `logo.light: is missing`,
		`, "logo": {"light": "logo.txt"}`:                                     `logo.light: "logo.txt" is no picture that can be read (allowed SVG, PNG, JPEG)`,
		`, "logo": {"light": "script.svg"}`:                                   `logo.light: "script.svg" is an SVG with <script>`,
		`, "icon": "wide.svg"`:                                                `icon: "wide.svg" is 128 × 64 (allowed a square)`,
		`, "nameInLogo": true`:                                                `nameInLogo: true without a name and a logo`,
		`, "prices": "s1.json"`:                                               `prices: "s1.json": holds no prices (allowed a selling book or a price book)`,
		`, "prices": "selling.json"`:                                          `prices: "selling.json": `,
		`, "footer": [{"text": "Imprint", "address": "javascript:alert(1)"}]`: `footer[0].address: "javascript:alert(1)" is no address to go to (allowed https://`,
		`, "footer": [{"text": "x", "address": "https://a@b.example/"}]`:      `footer[0].address: `,
		`, "frames": ["https://example.org/page"]`:                            `frames[0]: "https://example.org/page" is no origin (allowed like https://www.example.org`,
		`, "frames": ["https://example.org; script-src *"]`:                   `frames[0]: `,
		`, "frames": ["*"]`:                                                   `frames[0]: "*" is no origin`,
	} {
		_, err := readSettings(settings(more), beside)
		assert.ErrorContains(t, err, want, more)
	}
	_, err := readSettings([]byte(`{"format": "blockfield design", "version": 1}`), nil)
	assert.ErrorContains(t, err, `"blockfield design", 1 is no settings file (allowed "blockfield site", 1)`)
	_, err = readSettings(settings(`, "language": "fr", "writeTo": "nobody"`), nil)
	assert.ErrorContains(t, err, "language")
	assert.ErrorContains(t, err, "writeTo")

	name := filepath.Join(t.TempDir(), "site.json")
	require.NoError(t, os.WriteFile(name, settings(`, "logo": {"light": "gone.svg"}`), 0o644))
	_, err = buildSite(0, name, Streams{})
	assert.ErrorContains(t, err, name+`: logo.light: `)
	_, err = checkFile(name, "2026-06-01", Streams{})
	assert.ErrorContains(t, err, name+`: logo.light: `)
	require.NoError(t, os.WriteFile(name, settings(`, "name": "Elm Yard"`), 0o644))
	verdict, err := checkFile(name, "2026-06-01", Streams{})
	require.NoError(t, err)
	assert.Equal(t, "good settings of a site", verdict)
}

// Of a price book the site has the selling book that goes with it, and nothing else.
func TestSettingsKeepNoPriceBook(t *testing.T) {
	t.Parallel()
	book := design.DefaultBook()
	book.Name, book.Placeholder, book.Currency = "Sentinel", false, "EUR"
	got, err := readSettings(settings(`, "prices": "book.json"`), folder(map[string]string{"book.json": string(design.EncodeBook(book))}))
	require.NoError(t, err)
	require.NotNil(t, got.Selling)
	assert.Equal(t, "EUR", got.Selling.Currency)
	again, err := readSettings(settings(`, "prices": "selling.json"`), folder(map[string]string{"selling.json": string(design.EncodeSelling(*got.Selling))}))
	require.NoError(t, err)
	assert.Equal(t, got.Selling, again.Selling)
}
