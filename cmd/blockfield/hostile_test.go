package main_test

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
	"blockfield/engine/page"
)

// This file opens what nobody means well with: in the browser, since that is where it would
// do harm.

// attack is a text that would run in a page that took it for markup, an attribute, a script
// or an address.
const attack = `"'><img src=x onerror=window.hacked=1><script>window.hacked=1</script><svg onload=window.hacked=1>{{7*7}}${window.hacked=1}</textarea></title>javascript:window.hacked=1`

// leaves calls f for every text of a JSON value, with what puts another in its place.
func leaves(v any, put func(any), f func(text string, put func(any))) {
	switch v := v.(type) {
	case string:
		f(v, put)
	case []any:
		for i := range v {
			leaves(v[i], func(n any) { v[i] = n }, f)
		}
	case map[string]any:
		for key := range v {
			leaves(v[key], func(n any) { v[key] = n }, f)
		}
	}
}

// poisoned are a file with the attack in each text that its reader takes it in, and one
// with it in every text at all.
func poisoned(t *testing.T, body []byte, read func([]byte) error) (taken, everywhere []byte, count int) {
	t.Helper()
	whole := func(v any) []byte {
		out, err := json.Marshal(v)
		require.NoError(t, err)
		return out
	}
	var doc any
	require.NoError(t, json.Unmarshal(body, &doc))
	leaves(doc, nil, func(text string, put func(any)) {
		for _, short := range []string{attack, attack[:60], attack[:36]} {
			put(short)
			if read(whole(doc)) == nil {
				count++
				return
			}
		}
		put(text)
	})
	taken = whole(doc)
	leaves(doc, nil, func(_ string, put func(any)) { put(attack) })
	return taken, whole(doc), count
}

// unharmed finds that nothing has run, that the page still answers, and that the job is kept.
func (b *tab) unharmed(job, what string) {
	b.t.Helper()
	assert.True(b.t, eval[bool](b, `window.hacked === undefined && ({}).polluted === undefined && [].polluted === undefined`), "%s: something ran", what)
	assert.Zero(b.t, eval[int](b, `document.querySelectorAll("body script, body [onerror], body [onload], body [onclick], a[href^='javascript' i]").length`), "%s: markup came in", what)
	assert.True(b.t, b.kept(job), "%s: the job is lost", what)
	assert.Empty(b.t, b.found(), what)
}

// sayNo opens a file that is to be refused, and finds a message of some length at which a
// person can act.
func (b *tab) sayNo(name string, body []byte, job string) {
	b.t.Helper()
	eval[any](b, `[...document.querySelectorAll("#status .said")].forEach((e) => e.remove())`)
	b.upload("hostile.json", body)
	b.wait(`document.querySelector("#status .said")`)
	said := b.text("#status")
	assert.Greater(b.t, len(said), 30, name)
	assert.Less(b.t, len(said), 20_000, name)
	assert.NotContains(b.t, said, "internal error", name)
	b.unharmed(job, name)
}

func TestHostileFilesInTheBrowser(t *testing.T) {
	b, s := openPage(t)
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)

	scenario, err := os.ReadFile("../../testdata/scenarios/s7.json")
	require.NoError(t, err)
	taken, everywhere, count := poisoned(t, scenario, func(text []byte) error { _, err := design.Decode(text); return err })
	require.Greater(t, count, 2, "texts that people write")
	book, bookEverywhere, count := poisoned(t, design.EncodeBook(design.DefaultBook()), func(text []byte) error { _, err := design.DecodeBook(text); return err })
	require.Greater(t, count, 2)

	deep := strings.Repeat(`{"design":`, 50_000)
	var zip bytes.Buffer
	z, _ := flate.NewWriter(&zip, flate.BestCompression)
	z.Write(make([]byte, 40<<20))
	require.NoError(t, z.Close())
	for name, body := range map[string]string{
		"script everywhere":           string(everywhere),
		"script everywhere in a book": string(bookEverywhere),
		"deep":                        deep,
		"deep lists":                  strings.Repeat("[", 200_000),
		"prototype":                   `{"format":"blockfield design","version":1,"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},"design":{"__proto__":{"polluted":1}}}`,
		"huge numbers":                strings.Replace(string(scenario), `"version": 1`, `"version": 1e999`, 1),
		"a long number":               strings.Replace(string(scenario), `"version": 1`, `"version": `+strings.Repeat("9", 100_000), 1),
		"huge lengths":                `{"format":"blockfield design","version":1,"design":{"walls":[{"width":"` + strings.Repeat("9", 5_000) + ` m","height":"1e308 m"}]}}`,
		"bidi":                        `{"format":"blockfield design","version":1,"design":{"title":"a` + "\u202e" + `b"}}`,
		"control":                     `{"format":"blockfield design","version":1,"design":{"title":"a\u0000\u001b[2Jb"}}`,
		"names twice":                 `{"format":"blockfield design","version":1,"format":"blockfield prices"}`,
		"no UTF-8":                    "{\"format\":\"blockfield design\xff\xfe\"}",
		"empty":                       "",
		"null":                        "null",
		"a name as long as a file":    `{"` + strings.Repeat("<b>", 200_000) + `":1}`,
		"many unknown names":          `{"format":"blockfield design","version":1` + strings.Repeat(`,"x":1`, 50_000) + `}`,
		"a bomb":                      zip.String(),
		"hostile jobs":                `{"format":"blockfield jobs","jobs":[{"design":` + quote(string(everywhere)) + `},{"design":"[","record":"["}]}`,
		"a record":                    `{"format":"blockfield record","version":1,"__proto__":{"polluted":1},"client":{"name":` + quote(attack) + `}}`,
		"a letter":                    `{"format":"blockfield letter","version":1,"from":"client","message":` + quote(attack) + `,"photos":[{"kind":"wall","jpeg":"` + base64.StdEncoding.EncodeToString([]byte(workshopLogo)) + `"}]}`,
		"a selling book":              `{"format":"blockfield selling book","version":1,"name":` + quote(attack) + `,"job":"1e999"}`,
		"markup":                      `<!doctype html><script>window.hacked=1</script>`,
	} {
		b.sayNo(name, []byte(body), wide.Revision)
	}
	assert.Equal(t, wide.Revision, b.revision(), "what was open stays open")

	// What is taken stands everywhere as the text that it is.
	for _, body := range [][]byte{book, taken} {
		b.upload("taken.json", body)
	}
	doc, err := design.Decode(taken)
	require.NoError(t, err)
	b.shows(doc.Design.Revision())
	for _, reading := range readings {
		b.read(reading)
		for _, section := range b.sections() {
			b.section(section)
			b.unharmed(wide.Revision, reading+", "+section)
		}
	}
	assert.Contains(t, b.text("#title"), "onerror=window.hacked=1")
	b.click("#menu summary")
	b.wait(`document.querySelector("#job-list li")`)
	b.unharmed(wide.Revision, "the list of jobs")

	// Links, of bombs and of nonsense.
	for name, link := range map[string]string{
		"a bomb":    base64.RawURLEncoding.EncodeToString(zip.Bytes()),
		"nonsense":  strings.Repeat("A", 70_000),
		"script":    "%3Cimg%20src=x%20onerror=window.hacked=1%3E" + strings.Repeat("x", 30),
		"prototype": "__proto__.polluted=1&constructor=" + strings.Repeat("1", 20),
	} {
		eval[any](b, `[...document.querySelectorAll("#status .said")].forEach((e) => e.remove())`)
		eval[any](b, `location.hash = `+quote(link))
		b.wait(`document.querySelector("#status .said")`)
		b.says("could not be opened")
		b.unharmed(wide.Revision, name)
	}

	// Pictures: a drawing with a script in it, one that says to be larger than any memory, and none.
	b.open(s.URL + "/")
	b.alive()
	b.read(page.Maker)
	b.section(page.Wall)
	eval[any](b, `document.querySelectorAll("details").forEach((d) => { d.open = true; })`)
	for name, body := range map[string]string{
		"script.svg": `<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9" onload="window.hacked=1"><script>window.hacked=1</script></svg>`,
		"huge.png":   "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x7f\xff\xff\xff\x7f\xff\xff\xff\x08\x06\x00\x00\x00\x00\x00\x00\x00",
		"none.jpg":   "GIF89a" + strings.Repeat("\x00", 100),
	} {
		file := filepath.Join(t.TempDir(), name)
		require.NoError(t, os.WriteFile(file, []byte(body), 0o644))
		eval[any](b, `[...document.querySelectorAll("#status .said")].forEach((e) => e.remove())`)
		b.do(chromedp.SetUploadFiles(chromedp.CSS(`[data-photo="wall"]`), []string{file}))
		b.says("no picture that the browser can read")
		b.unharmed(wide.Revision, name)
	}
	b.upload("large.json", bytes.Repeat([]byte(" "), 17<<20))
	b.says("larger than a design can be")
	b.unharmed(wide.Revision, "17 MB")

	// What other pages of this origin, or an older program, may have left in the storage.
	eval[any](b, fmt.Sprintf(`Object.entries({"blockfield.job.5": %[1]s, "blockfield.job.__proto__": "{}", "blockfield.edits.5": '[{"op":"set","path":"__proto__.polluted","value":"1"},null,7]', "blockfield.book": %[1]s, "blockfield.books": "[[[", "blockfield.last": "__proto__"})
		.forEach(([key, text]) => localStorage.setItem(key, text)), sessionStorage.setItem("blockfield.tab", '{"id":"5","visit":{"from":"x","text":%[2]s}}')`, quote(string(everywhere)), `"[["`))
	b.reload()
	b.unharmed(wide.Revision, "what was kept")
	b.section(page.Look)
	before := b.revision()
	b.set(heightPath, "1 m")
	b.wait(`document.querySelector("#revision").innerText !== ` + quote(before))
	b.unharmed(wide.Revision, "and edited")
}
