package main_test

import (
	"encoding/base64"
	"flag"
	"fmt"
	"html/template"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"blockfield/engine/page"
)

var sampleDir = flag.String("sample", "", "folder for the sample sheet of the page's parts, for TestSampleSheet")

// sample is a part of the page in one state.
type sample struct {
	Part, State      string
	reading, section string
	clip             string // selector of what is shown
	bring            func(b *tab)
}

const (
	widthField = `[name="walls[0].groups[0].width"]`
	leftField  = `[name="walls[0].groups[0].place.left"]`
	woodChoice = `fieldset.swatches`
)

// hover rests the mouse on an element.
func hover(selector string) func(b *tab) {
	return func(b *tab) {
		at := eval[[]float64](b, fmt.Sprintf(`(() => { const e = document.querySelector(%q); e.scrollIntoView({block: "center"}); const r = e.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`, selector))
		b.do(chromedp.MouseEvent("mouseMoved", at[0], at[1]))
	}
}

func focus(selector string) func(b *tab) {
	return func(b *tab) {
		b.do(chromedp.KeyEvent(kb.Tab)) // from now on the focus is shown
		b.focus(selector)
	}
}

func script(line string) func(b *tab) { return func(b *tab) { eval[any](b, line) } }

func typed(selector, value, until string) func(b *tab) {
	return func(b *tab) {
		b.put(selector, value)
		b.wait(until)
	}
}

func samples() []sample {
	opened := func(menu string) func(b *tab) {
		return script(fmt.Sprintf(`document.querySelector(%q).open = true`, menu))
	}
	shown := func(key string) func(b *tab) {
		return func(b *tab) {
			eval[any](b, fmt.Sprintf(`(async () => { const s = await import(document.querySelector("script[type=module]").src.replace("main.js", "status.js")); s.show(%q); })()`, key))
		}
	}
	return []sample{
		{"Head of the page", "for a client", page.Client, page.Look, ".top", nil},
		{"Head of the page", "for a maker", page.Maker, page.Look, ".top", nil},
		{"Menu", "files", page.Maker, page.Look, "#menu .sheet-menu", opened("#menu")},
		{"Menu", "examples", page.Client, page.Look, "#examples .sheet-menu", opened("#examples")},
		{"Menu", "find, before anything is typed", page.Maker, page.Look, "#find .sheet-menu", func(b *tab) {
			opened("#find")(b)
			b.wait(`document.querySelector("#found kbd")`)
		}},
		{"Menu", "find", page.Maker, page.Look, "#find .sheet-menu", func(b *tab) {
			opened("#find")(b)
			b.focus("#find-text")
			b.do(chromedp.KeyEvent("width"))
			b.wait(`document.querySelector("#found .to-field")`)
		}},
		{"Sections", "at rest", page.Maker, page.Look, "#nav", nil},
		{"Sections", "pointed at", page.Maker, page.Look, "#nav", hover(`#nav a[href="#bench"]`)},
		{"Picture", "with its handles", page.Client, page.Look, "#stage", hover("#pad")},
		{"Picture", "its tools", page.Client, page.Look, ".stage-tools", nil},
		{"Figures", "for a client", page.Client, page.Look, "#strip", nil},
		{"Figures", "for a maker", page.Maker, page.Look, "#strip", nil},
		{"Text field", "at rest", page.Maker, page.Look, ".field:has(" + widthField + ")", nil},
		{"Text field", "pointed at", page.Maker, page.Look, ".field:has(" + widthField + ")", hover(widthField)},
		{"Text field", "with the focus: its range shows", page.Maker, page.Look, ".field:has(" + widthField + ")", focus(widthField)},
		{"Choice", "at rest", page.Client, page.Look, ".field-choice", nil},
		{"Choice", "with the focus", page.Client, page.Look, ".field-choice", focus(".field-choice select")},
		{"Choice with pictures", "one is chosen", page.Client, page.Look, woodChoice, nil},
		{"Choice with pictures", "one is pointed at", page.Client, page.Look, woodChoice, hover(woodChoice + ` label:nth-child(5)`)},
		{"Choice with pictures", "with the focus", page.Client, page.Look, woodChoice, focus(woodChoice + ` input:checked`)},
		{"Tick", "", page.Maker, page.Bench, ".field-check", script(`document.querySelectorAll("#section details").forEach((d) => { d.open = true; })`)},
		{"Button", "first of its page", page.Client, page.Look, "#section .send", nil},
		{"Button", "first of its page, pointed at", page.Client, page.Look, "#section .send", hover("#send")},
		{"Button", "quiet", page.Client, page.Look, ".snap", nil},
		{"Button", "quiet, with the focus", page.Client, page.Look, ".snap", focus(".snap button")},
		{"Watch-outs", "Caution, with what puts it right", page.Maker, page.Bench, ".watches", nil},
		{"Watch-outs", "Stop", page.Maker, page.Wall, ".watches", typed(leftField, "3000 mm", `document.querySelector(".watches .level-stop")`)},
		{"Fold", "with its answer", page.Maker, page.Bench, "#bench-hours-part", nil},
		{"Fold", "opened", page.Maker, page.Bench, "#bench-hours-part", opened("#bench-hours-part")},
		{"Fold", "of fields", page.Maker, page.Wall, "#way", nil},
		{"Fold", "of fields, opened", page.Maker, page.Wall, "#way", opened("#way")},
		{"Told", "a sentence", page.Maker, page.Look, "#status", shown("copied")},
		{"Told", "what was not opened", page.Maker, page.Look, "#status", shown("not-opened")},
		{"Told", "the engine began anew", page.Maker, page.Look, "#status", shown("restarted")},
		{"Working", "", page.Maker, page.Look, "#working", script(`document.querySelector("#working").hidden = false`)},
		{"Ledger", "", page.Maker, page.Money, ".ledger", nil},
		{"From the goods to the price", "", page.Maker, page.Money, ".waterfall", func(b *tab) {
			b.click(`[data-act="why-open"]`)
			b.wait(`document.querySelector(".waterfall")`)
		}},
		{"Goods", "", page.Maker, page.Bench, ".purchases", nil},
		{"Drawing", "the field from the front", page.Maker, page.Look, ".field-figure", nil},
		{"Drawing", "the wall", page.Maker, page.Wall, ".wall-pad", nil},
		{"Empty", "no looks beside this one", page.Maker, page.Money, ".side-by-side", opened("#looks-more")},
		{"Refused", "the field keeps what was typed", page.Maker, page.Look, ".field:has(" + widthField + ")", typed(widthField, "12 km", `document.querySelector('`+widthField+`').ariaInvalid === "true"`)},
	}
}

// TestSampleSheet makes the living sample sheet: every part of the page, taken from the
// page itself, in its states, light and dark.
//
//	go test ./cmd/blockfield -run TestSampleSheet -sample DIR
func TestSampleSheet(t *testing.T) {
	if *sampleDir == "" {
		t.Skip("only with -sample DIR")
	}
	require.NoError(t, os.MkdirAll(*sampleDir, 0o755))
	s := newServer(t, builtSite(t).Handler())
	type shown struct {
		sample
		Light, Dark template.URL
	}
	all := make([]shown, len(samples()))
	for i, one := range samples() {
		all[i].sample = one
	}
	for from := 0; from < len(all); {
		to := from
		for to < len(all) && all[to].Part == all[from].Part {
			to++
		}
		for _, scheme := range []string{"light", "dark"} {
			t.Run(all[from].Part+" "+scheme, func(t *testing.T) {
				b := newProfile(t)
				b.size(1000, 900)
				_, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
					Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}},
				})
				require.NoError(t, err)
				for i := range all[from:to] {
					one := &all[from+i]
					picture := template.URL("data:image/png;base64," + base64.StdEncoding.EncodeToString(one.shoot(b, s.URL+"/")))
					if scheme == "light" {
						one.Light = picture
					} else {
						one.Dark = picture
					}
				}
			})
		}
		from = to
	}
	out, err := os.Create(filepath.Join(*sampleDir, "index.html"))
	require.NoError(t, err)
	defer out.Close()
	require.NoError(t, sampleSheet.Execute(out, all))
}

// shoot opens the page, brings the part into its state and takes its picture.
func (one sample) shoot(b *tab, url string) []byte {
	b.open(url)
	b.alive()
	b.read(one.reading)
	b.section(one.section)
	if one.Part == "Picture" {
		b.settle()
	} else {
		b.wait(`document.documentElement.dataset.heard === document.querySelector("#revision").innerText`) // nothing is drawn anew by itself
	}
	if one.bring != nil {
		one.bring(b)
	}
	require.True(b.t, eval[bool](b, fmt.Sprintf(`document.querySelector(%q)?.checkVisibility() ?? false`, one.clip)), "%s, %s: not on the page", one.Part, one.State)
	picture := clipped(b, one.clip)
	b.do(chromedp.Navigate("about:blank"))
	return picture
}

// clipped is a picture of an element with a margin.
func clipped(b *tab, selector string) []byte {
	at := eval[[]float64](b, fmt.Sprintf(`(async () => {
		const part = () => document.querySelector(%q);
		part().scrollIntoView({block: "nearest", behavior: "instant"});
		await new Promise((r) => setTimeout(r, 400));
		const r = part().getBoundingClientRect(); // it may have been drawn anew
		return [r.x + scrollX, r.y + scrollY, r.width, r.height];
	})()`, selector))
	require.Positive(b.t, at[2]*at[3], "%s: nothing to see", selector)
	const margin = 10
	shot, err := chromedp.Call(b.ctx, cdpage.CaptureScreenshot, cdpage.CaptureScreenshotParams{
		CaptureBeyondViewport: new(true),
		Clip:                  &cdpage.Viewport{X: max(0, at[0]-margin), Y: max(0, at[1]-margin), Width: at[2] + 2*margin, Height: min(at[3], 700) + 2*margin, Scale: 1},
	})
	require.NoError(b.t, err)
	return shot.Data
}

var sampleSheet = template.Must(template.New("").Parse(`<!doctype html><html lang="en"><meta charset="utf-8"><title>Sample sheet</title>
<style>body{font:1rem/1.5 Georgia,serif;margin:2rem;background:#fff;color:#241d16}h2{margin:2.5rem 0 .5rem;border-top:1px solid #dcd2c2;padding-top:1rem;font-weight:500}
.row{display:grid;grid-template-columns:9rem 1fr 1fr;gap:1rem;align-items:start;padding:.5rem 0}img{max-width:100%;display:block}.dark{background:#1a1612}</style>
<h1>The parts of the page, in their states</h1>{{$part := ""}}{{range .}}{{if ne .Part $part}}<h2>{{.Part}}</h2>{{end}}{{$part = .Part}}
<div class="row"><span>{{.State}}</span><img alt="light" src="{{.Light}}"><img class="dark" alt="dark" src="{{.Dark}}"></div>{{end}}</html>
`))
