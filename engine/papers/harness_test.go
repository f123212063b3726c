package papers_test

import (
	"encoding/xml"
	"io"
	"maps"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/words"

	"github.com/stretchr/testify/require"
)

// planned is a document with its plan, which many tests share.
type planned struct {
	doc  design.Document
	plan engine.Result
	job  engine.Job
}

var (
	plansMu sync.Mutex
	plans   = map[string]planned{}
)

// job plans one of the example jobs, or "default", once.
func job(t testing.TB, name string) planned {
	t.Helper()
	plansMu.Lock()
	defer plansMu.Unlock()
	if p, ok := plans[name]; ok {
		return p
	}
	doc := design.Default()
	switch name {
	case "default":
	case twoWoods:
		doc = designtest.TwoWoods(designtest.Documents(t)["s1.json"], design.MixedAtRandom)
	default:
		doc = designtest.Documents(t)[name+".json"]
	}
	plans[name] = planOf(t, doc, design.DefaultBook())
	return plans[name]
}

func planOf(t testing.TB, doc design.Document, book design.Book) planned {
	t.Helper()
	plan, err := engine.Plan(doc.Design, book)
	require.NoError(t, err)
	return planned{doc, plan, engine.Follow(doc.Design, plan, design.NewRecord(), "")}
}

// jobs are the names of the worked jobs and of the default design. As WebAssembly,
// where reading sheets is slow, two stand for all: the same code makes them.
func jobs() []string {
	if runtime.GOARCH == "wasm" {
		return []string{"default", "s1"}
	}
	return []string{"default", "s1", "s2", "s3", "s4", "s5", "s6", "s7", "s8", "s1-second", "s5-second", "p2", twoWoods}
}

// twoWoods is a job with bare cells and blocks of two woods.
const twoWoods = "two woods"

func (p planned) input(units length.Units, f sheet.Format) papers.Input {
	return papers.Input{
		Doc: p.doc, Plan: p.plan, Job: p.job, Book: design.DefaultBook(), Today: "2030-05-14", Format: f,
		Words: words.Reader{Language: words.English(), Units: units},
	}
}

// everySet makes every set of every job, on A4 in millimetres and on Letter in
// inches.
func everySet(t *testing.T, visit func(t *testing.T, p planned, in papers.Input, s papers.Set)) {
	for _, name := range jobs() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := job(t, name)
			for _, in := range []papers.Input{p.input(length.Metric, sheet.A4()), p.input(length.Inch16, sheet.Letter())} {
				for _, set := range sets() {
					visit(t, p, in, make1(t, in, set))
				}
			}
		})
	}
}

// sets are those of all readers.
func sets() []string {
	all := map[string]bool{}
	for _, r := range []papers.Reader{papers.Client, papers.Maker, papers.Builder} {
		for _, s := range papers.For(r, design.HungScope, false) {
			all[s] = true
		}
	}
	return slices.Sorted(maps.Keys(all))
}

func make1(t *testing.T, in papers.Input, set string) papers.Set {
	t.Helper()
	s, ok := papers.Make(in, set)
	require.True(t, ok, set)
	return s
}

// printed is one text of a sheet, where it stands.
type printed struct {
	text         string
	x, y, size   float64
	narrow       float64 // share of its usual width
	anchor       string
	bold, turned bool
	class, in    string // its own class, and that of the group round it
}

func (p printed) width() float64 {
	face := sheet.Regular
	if p.bold {
		face = sheet.Bold
	}
	return p.narrow * sheet.Width(face, p.size, p.text)
}

func (p printed) left() float64 {
	switch p.anchor {
	case "middle":
		return p.x - p.width()/2
	case "end":
		return p.x - p.width()
	}
	return p.x
}

// node is an element of a drawing.
type node struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Children []node     `xml:",any"`
	Text     string     `xml:",chardata"`
}

func (n node) attr(name string) string {
	for _, a := range n.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (n node) number(name string) float64 {
	v, _ := strconv.ParseFloat(n.attr(name), 64)
	return v
}

func parse(t testing.TB, svg string) node {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(svg))
	var root node
	require.NoError(t, d.Decode(&root))
	_, err := d.Token()
	require.ErrorIs(t, err, io.EOF)
	return root
}

// narrowed is how a group of narrow figures is written.
var narrowed = regexp.MustCompile(`^scale\(([\d.]+) 1\)$`)

// texts are those of a sheet in the order in which they are drawn.
func texts(t testing.TB, svg string) []printed {
	t.Helper()
	var all []printed
	var walk func(n node, size, narrow float64, bold bool, anchor, class string)
	walk = func(n node, size, narrow float64, bold bool, anchor, class string) {
		if s := n.attr("font-size"); s != "" {
			size, _ = strconv.ParseFloat(s, 64)
		}
		bold = bold || n.attr("font-weight") == "bold"
		if a := n.attr("text-anchor"); a != "" {
			anchor = a
		}
		if n.XMLName.Local == "text" {
			all = append(all, printed{
				text: n.Text, x: narrow * n.number("x"), narrow: narrow, y: n.number("y"), size: size, anchor: anchor, bold: bold,
				turned: n.attr("transform") != "", class: n.attr("class"), in: class,
			})
		}
		if n.XMLName.Local == "g" {
			class = n.attr("class")
			if m := narrowed.FindStringSubmatch(n.attr("transform")); m != nil {
				narrow, _ = strconv.ParseFloat(m[1], 64)
			}
		}
		for _, c := range n.Children {
			walk(c, size, narrow, bold, anchor, class)
		}
	}
	walk(parse(t, svg), 0, 1, false, "", "")
	return all
}

// of are the sheets that a paper stands on.
func of(s papers.Set, paper string) []sheet.Sheet {
	return slices.DeleteFunc(slices.Clone(s.Sheets), func(one sheet.Sheet) bool { return one.Paper != paper && !slices.Contains(one.Also, paper) })
}

// said is all text of a set.
func said(t testing.TB, s papers.Set) string {
	var b strings.Builder
	for _, one := range s.Sheets {
		for _, text := range texts(t, one.SVG) {
			b.WriteString(text.text + "\n")
		}
	}
	return b.String()
}

// withStart is a job whose rows begin at an edge.
func withStart(p planned, start string) planned {
	rec := design.NewRecord()
	rec.Lay.Start = start
	p.job = engine.Follow(p.doc.Design, p.plan, rec, "")
	return p
}
