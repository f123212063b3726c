package main_test

import (
	"encoding/xml"
	"flag"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"
	"blockfield/site"
)

// What leaves a printer is read back from the PDF that Chromium makes of a set: its pages,
// every text on each of them, where the figures of the row cards stand, and the bar of
// 100 mm. That the sheets themselves are right is tested where they are made.

var allPrints = flag.Bool("all-prints", false, "print every set of three jobs on both sizes of paper")

// print is one cell of the matrix.
type print struct {
	job, set, paper string
	units           length.Units
}

// prints are a few that have all there is, or every one.
func prints() []print {
	if !*allPrints {
		return []print{
			{"s1", papers.OfferSet, "Letter", length.Metric}, {"s5", papers.GlueSet, "Letter", length.Inch16},
			{"s5", papers.CutSet, "A4", length.Metric}, {"s7", papers.HangSet, "A4", length.Metric}, {"s1", papers.HangSet, "Letter", length.Metric},
		}
	}
	var all []print
	for _, job := range []string{"s1", "s5", "s7"} {
		for _, set := range papers.For(papers.Maker, design.HungScope, false) {
			all = append(all, print{job, set, "A4", length.Metric}, print{job, set, "Letter", length.Inch16}, print{job, set, "Letter", length.Metric})
		}
		all = append(all, print{job, papers.BookSet, "A4", length.Metric}, print{job, papers.BookSet, "Letter", length.Metric})
	}
	return all
}

func TestSetsPrint(t *testing.T) {
	t.Parallel()
	book, digits := designtest.Sentinel(t)
	for _, p := range prints() {
		t.Run(strings.Join([]string{p.job, p.set, p.paper, string(p.units[:2])}, "-"), func(t *testing.T) {
			in := inputOf(t, p, book)
			set, ok := papers.Make(in, p.set)
			require.True(t, ok)
			b := newTab(t)
			b.open("file://" + written(t, set))
			pdf := b.printed()
			pages := readPDF(t, pdf)
			require.Len(t, pages, len(set.Sheets), "as many pages as sheets")
			for _, size := range pageSizes(t, pdf) {
				assert.InDelta(t, in.Format.Width*pointsPerMM, size[0], 1)
				assert.InDelta(t, in.Format.Height*pointsPerMM, size[1], 1)
			}
			for _, bar := range barsOf(t, pdf) {
				assert.InDelta(t, 100*pointsPerMM, bar, 0.15, "the bar of 100 mm")
			}
			for i, one := range set.Sheets {
				require.Empty(t, one.Overflow)
				texts := textsOf(t, one.SVG)
				require.Equal(t, letters(join(texts)), letters(pages[i].text()), "sheet %d, %s", i+1, one.Title)
				assert.Contains(t, pages[i].text(), in.Plan.Revision)
				for _, figure := range texts {
					if figure.group == "heights" {
						require.True(t, pages[i].has(figure), "sheet %d, %s: %q at %.1f, %.1f mm", i+1, one.Title, figure.text, figure.x, figure.y)
					}
				}
			}
			checkCautions(t, in, p.set, pages)
			if p.set == papers.OfferSet {
				checkPrivacy(t, in, digits, pages)
			}
		})
	}
}

// checkCautions finds every Caution on a printed cover, word by word.
func checkCautions(t *testing.T, in papers.Input, set string, pages []pdfPage) {
	t.Helper()
	if set == papers.OfferSet || set == papers.SurveySet {
		return
	}
	var whole strings.Builder
	for _, p := range pages {
		whole.WriteString(p.text() + " ")
	}
	n := 0
	for _, w := range in.Plan.AllWatchOuts() {
		if w.Asked().Level == check.Caution {
			n++
			for word := range strings.FieldsSeq(in.Words.Say(w.Code, w.Args)) {
				assert.Contains(t, whole.String(), word, w.Code)
			}
		}
	}
	assert.NotZero(t, n)
}

// checkPrivacy finds no figure of the price book on a client's paper but the price itself.
func checkPrivacy(t *testing.T, in papers.Input, digits []string, pages []pdfPage) {
	t.Helper()
	for _, p := range pages {
		text := p.text()
		price := in.Plan.Price
		shown := []string{price.Net.Format("en"), price.Tax.Format("en"), price.Gross.Format("en")}
		for _, s := range price.Stages {
			shown = append(shown, s.Amount.Format("en"))
		}
		for _, s := range shown {
			text = strings.ReplaceAll(text, s, "")
		}
		for _, d := range digits {
			assert.NotContains(t, text, d)
		}
		assert.NotContains(t, text, in.Plan.BookCode)
	}
}

// inputOf is what the papers of a job are made of, with a price book in which no figure is
// met by chance.
func inputOf(t *testing.T, p print, book design.Book) papers.Input {
	t.Helper()
	doc := designtest.Documents(t)[p.job+".json"]
	plan, err := engine.Plan(doc.Design, book)
	require.NoError(t, err)
	format, ok := sheet.Named(p.paper)
	require.True(t, ok)
	return papers.Input{
		Doc: doc, Plan: plan, Job: engine.Follow(doc.Design, plan, design.NewRecord(), ""), Book: book, Format: format, Today: "2030-05-14",
		Site: "https://blocks.example/", Words: words.Reader{Language: words.English(), Units: p.units},
	}
}

// written is the address of a set as the command writes it.
func written(t *testing.T, set papers.Set) string {
	t.Helper()
	fonts := site.Fonts()
	name := filepath.Join(t.TempDir(), "set.html")
	require.NoError(t, os.WriteFile(name, set.HTML("en", papers.Fonts{Regular: fonts[site.RegularFont], Bold: fonts[site.BoldFont]}), 0o644))
	return name
}

// placedText is a text of a sheet, where it stands in mm, and the class of the group
// round it.
type placedText struct {
	text, group string
	x, y        float64
}

// narrowed is how a group of narrow figures is written.
var narrowed = regexp.MustCompile(`^scale\(([\d.]+) 1\)$`)

// textsOf are the texts of a sheet.
func textsOf(t *testing.T, svg string) []placedText {
	t.Helper()
	var all []placedText
	groups, narrow := []string{}, []float64{1}
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return all
		}
		require.NoError(t, err)
		switch one := token.(type) {
		case xml.StartElement:
			attr := func(name string) string {
				for _, a := range one.Attr {
					if a.Name.Local == name {
						return a.Value
					}
				}
				return ""
			}
			switch one.Name.Local {
			case "g":
				groups, narrow = append(groups, attr("class")), append(narrow, narrow[len(narrow)-1])
				if m := narrowed.FindStringSubmatch(attr("transform")); m != nil {
					narrow[len(narrow)-1], err = strconv.ParseFloat(m[1], 64)
					require.NoError(t, err)
				}
			case "text":
				var text string
				require.NoError(t, d.DecodeElement(&text, &one))
				x, err := strconv.ParseFloat(attr("x"), 64)
				require.NoError(t, err)
				y, err := strconv.ParseFloat(attr("y"), 64)
				require.NoError(t, err)
				group := ""
				if len(groups) > 0 {
					group = groups[len(groups)-1]
				}
				all = append(all, placedText{text, group, narrow[len(narrow)-1] * x, y})
			}
		case xml.EndElement:
			if one.Name.Local == "g" {
				groups, narrow = groups[:len(groups)-1], narrow[:len(narrow)-1]
			}
		}
	}
}

func join(texts []placedText) string {
	var b strings.Builder
	for _, one := range texts {
		b.WriteString(one.text + " ")
	}
	return b.String()
}

// letters are the characters of a text in their order of the alphabet, without spaces: a
// reader of PDFs has its own idea of the order of lines.
func letters(text string) string {
	all := []rune(strings.Join(strings.Fields(text), ""))
	slices.Sort(all)
	return string(all)
}

const pointsPerMM = 72 / 25.4

// pdfPage is the words of a page.
type pdfPage struct {
	Words []pdfWord `xml:"word"`
}

// pdfWord is a word with its place in points, y down.
type pdfWord struct {
	XMin float64 `xml:"xMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMin float64 `xml:"yMin,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

func (p pdfPage) text() string {
	all := make([]string, len(p.Words))
	for i, w := range p.Words {
		all[i] = w.Text
	}
	return strings.Join(all, " ")
}

// has reports whether a figure stands at its place; that of a fraction is one word with it.
func (p pdfPage) has(figure placedText) bool {
	const near = 1 // points
	x, y := figure.x*pointsPerMM, figure.y*pointsPerMM
	return slices.ContainsFunc(p.Words, func(w pdfWord) bool {
		return strings.Contains(w.Text, figure.text) && x > w.XMin-near && x < w.XMax+near && y > w.YMin && y < w.YMax
	})
}

// readPDF reads the words of each page with a program of its own.
func readPDF(t *testing.T, pdf string) []pdfPage {
	t.Helper()
	program, err := exec.LookPath("pdftotext")
	require.NoError(t, err, "what was printed is read with pdftotext (apt-get install poppler-utils)")
	name := filepath.Join(t.TempDir(), "set.pdf")
	require.NoError(t, os.WriteFile(name, []byte(pdf), 0o644))
	out, err := exec.Command(program, "-bbox", name, "-").Output()
	require.NoError(t, err)
	var doc struct {
		Pages []pdfPage `xml:"body>doc>page"`
	}
	require.NoError(t, xml.Unmarshal(out, &doc))
	return doc.Pages
}

// pageSizes are the width and the height of each page in points.
func pageSizes(t *testing.T, pdf string) [][2]float64 {
	t.Helper()
	var all [][2]float64
	for _, box := range regexp.MustCompile(`/MediaBox \[([^\]]*)\]`).FindAllStringSubmatch(pdf, -1) {
		side := strings.Fields(box[1])
		require.Len(t, side, 4)
		width, err := strconv.ParseFloat(side[2], 64)
		require.NoError(t, err)
		height, err := strconv.ParseFloat(side[3], 64)
		require.NoError(t, err)
		all = append(all, [2]float64{width, height})
	}
	require.NotEmpty(t, all)
	return all
}
