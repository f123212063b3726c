package main_test

import (
	"compress/zlib"
	"fmt"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/page"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
)

// What Chromium prints of the section Papers is the sheets and nothing else: as many
// pages, of the size of the paper, set in the font that they were measured with.
func TestPapersPrint(t *testing.T) {
	t.Parallel()
	b, s := openPage(t)
	b.read(page.Maker)
	b.section(page.Papers)
	b.click(`[data-act="papers-set"][data-path="cut"]`)
	b.click(`[data-act="papers-format"][data-path="Letter"]`)
	b.wait(`document.querySelector(".leaf-Letter .revision")`)

	doc := design.Default()
	plan, err := engine.Plan(doc.Design, design.DefaultBook())
	require.NoError(t, err)
	set, ok := papers.Make(papers.Input{
		Doc: doc, Plan: plan, Job: engine.Follow(doc.Design, plan, design.NewRecord(), ""), Book: design.DefaultBook(), Format: sheet.Letter(),
		Site: s.URL + "/", Words: words.Reader{Language: words.English(), Units: doc.View.Units},
	}, papers.CutSet)
	require.True(t, ok)
	assert.Equal(t, len(set.Sheets), eval[int](b, `document.querySelectorAll(".leaf").length`))

	pdf := b.printed()
	pages := regexp.MustCompile(`/Type /Page\b`).FindAllString(pdf, -1)
	assert.Len(t, pages, len(set.Sheets))
	sizes := pageSizes(t, pdf)
	require.Len(t, sizes, len(set.Sheets))
	for _, size := range sizes {
		// 8 1/2 by 11 inches of 72 points.
		assert.InDelta(t, 612, size[0], 1)
		assert.InDelta(t, 792, size[1], 1)
	}
	bars := barsOf(t, pdf)
	assert.Len(t, bars, len(set.Sheets))
	for _, longest := range bars {
		assert.InDelta(t, 100*pointsPerMM, longest, 0.15, "the bar of 100 mm, in points")
	}
	assert.Contains(t, pdf, "+GoRegular", "the font that the sheets were measured with")
}

// The address that a paper's code holds leads to its job at the bench, of all jobs that
// this browser keeps; an old paper is told. Of a paper that nobody knows the page asks
// for the file, and what was open stays open.
func TestPaperOpensItsJob(t *testing.T) {
	t.Parallel()
	b, s := openPage(t)
	b.read(page.Maker)
	_, wide := edited(t, widthPath, "1.6 m")
	b.set(widthPath, "1.6 m")
	b.shows(wide.Revision)
	b.menu("new")
	b.says("A fresh design is open")
	_, high := edited(t, heightPath, "1 m")
	b.set(heightPath, "1 m")
	b.shows(high.Revision)

	b.open(s.URL + "/#paper-" + wide.Revision)
	b.shows(wide.Revision)
	b.wait(`document.querySelector('#nav a[href="#bench"]').getAttribute("aria-current") === "page"`)
	b.says("the job of the paper in hand")
	assert.True(t, b.kept(high.Revision), "the job that was open")
	assert.True(t, b.kept(wide.Revision))

	b.open(s.URL + "/#paper-000000")
	b.says("The job of this paper is not here")
	b.says("-000000.json")
	assert.Equal(t, wide.Revision, b.revision())

	_, both := edited(t, widthPath, "1.6 m", heightPath, "1 m")
	b.section(page.Look)
	b.set(heightPath, "1 m")
	b.shows(both.Revision)
	b.open(s.URL + "/#paper-" + wide.Revision)
	b.says("out of date")
	assert.Equal(t, both.Revision, b.revision())
	b.reload()
	assert.Equal(t, both.Revision, b.revision())
	assert.True(t, b.kept(high.Revision))

	// What was printed is in the record of the job, when the steps of the history are gone.
	b.section(page.Papers)
	b.wait(`document.querySelector(".leaf")`)
	b.printed()
	b.recorded(`"` + both.Revision + `"`)
	_, third := edited(t, widthPath, "1.7 m", heightPath, "1 m")
	b.section(page.Look)
	b.set(widthPath, "1.7 m")
	b.shows(third.Revision)
	b.reload()
	b.open(s.URL + "/#paper-" + both.Revision)
	b.says("out of date")
	assert.Equal(t, third.Revision, b.revision())
}

// The further sheets of a large field come part by part when they are to be printed:
// whoever waits sees how far it is and can stop, and edits get in between.
func TestLargePapersCanBeStopped(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	b.read(page.Maker)
	doc := design.Default()
	g := &doc.Design.Walls[0].Groups[0]
	g.Block.Size, g.Width, g.Height = length.MM(20), length.MM(4000), length.MM(4000)
	b.upload("large.json", design.Encode(doc))
	b.shows(doc.Design.Revision())
	b.section(page.Papers)
	b.click(`[data-act="papers-set"][data-path="glue"]`)
	b.wait(`document.querySelector(".papers-part:empty")`)
	eval[bool](b, `window.prints = 0, window.print = () => { window.prints += 1; }, true`)
	left := `document.querySelectorAll(".papers-part:empty").length`
	// Whoever stops at once: a fast browser, or one that answers this test late, would be
	// ready before a click from here.
	eval[any](b, `new Promise((stopped) => {
		const row = document.querySelector(".papers-progress");
		new MutationObserver((_, watching) => {
			if (!row.hidden) return row.querySelector('[data-do="print-stop"]').click();
			watching.disconnect();
			stopped();
		}).observe(row, {attributeFilter: ["hidden"]});
		document.querySelector('[data-do="print"]').click();
	})`)
	assert.NotZero(t, eval[int](b, left))
	assert.Zero(t, eval[int](b, `window.prints`))

	b.click(`[data-do="print"]`)
	b.wait(`window.prints === 1`)
	assert.Zero(t, eval[int](b, left))
	count := eval[string](b, `document.querySelector(".papers-count").innerText`)
	assert.Equal(t, count, eval[string](b, `document.querySelectorAll(".leaf").length + " sheets"`))
	assert.Equal(t, "none", eval[string](b, `getComputedStyle(document.querySelector(".papers-more")).display`))
}

// printed is the page as the browser prints it, a PDF.
func (b *tab) printed() string {
	b.t.Helper()
	eval[bool](b, `document.fonts.ready.then(() => true)`)
	got, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	require.NoError(b.t, err)
	return string(got)
}

// barsOf is how wide the rectangle of 2 mm is that stands on each page, in points,
// read from the commands that draw the page.
func barsOf(t *testing.T, pdf string) []float64 {
	t.Helper()
	var all []float64
	for _, at := range regexp.MustCompile(`stream\r?\n`).FindAllStringIndex(pdf, -1) {
		r, err := zlib.NewReader(strings.NewReader(pdf[at[1]:]))
		if err != nil {
			continue // the word "endstream", or a stream that is not packed
		}
		body, err := io.ReadAll(r)
		require.NoError(t, err)
		if bar := barIn(string(body)); bar > 0 {
			all = append(all, bar)
		}
	}
	require.NotEmpty(t, all)
	return all
}

// barIn is the width of the rectangle of 2 mm in the commands of one page: a
// matrix scales what follows it until its state is left.
func barIn(commands string) float64 {
	scale, states := 1.0, []float64{}
	for line := range strings.Lines(commands) {
		var a, b, c, d, e, f float64
		switch line = strings.TrimSpace(line); {
		case line == "q":
			states = append(states, scale)
		case line == "Q" && len(states) > 0:
			scale, states = states[len(states)-1], states[:len(states)-1]
		case strings.HasSuffix(line, " cm"):
			fmt.Sscan(line, &a, &b, &c, &d, &e, &f)
			scale *= a
		case strings.HasSuffix(line, " re"):
			if fmt.Sscan(line, &a, &b, &c, &d); math.Abs(d-2) < 1e-3 && c > 20 {
				return c * scale
			}
		}
	}
	return 0
}
