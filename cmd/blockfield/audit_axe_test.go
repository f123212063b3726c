package main_test

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// axeResult is what axe says of one look at the page.
type axeResult struct {
	Violations []axeRule `json:"violations"`
	Incomplete []axeRule `json:"incomplete"`
	Passes     int       `json:"passes"`
}

type axeRule struct {
	ID     string   `json:"id"`
	Impact string   `json:"impact"`
	Help   string   `json:"help"`
	Nodes  []string `json:"nodes"` // what and why
}

// axeRun asks for every rule of WCAG 2.2 A and AA and for those of good practice. The frame
// of the moving picture is hidden from assistive technology and its document is a canvas.
const axeRun = `(async () => {
	const rules = %s;
	const found = await axe.run(document, {
		...rules,
		iframes: false,
		resultTypes: ["violations", "incomplete"],
		rules: rules.runOnly?.type === "rule" ? {} : {"target-size": {enabled: true}},
	});
	const brief = (all) => all.map((r) => ({id: r.id, impact: r.impact ?? "", help: r.help,
		nodes: r.nodes.map((n) => n.target.join(" ") + ": " + (n.failureSummary ?? "").replace(/\s+/g, " "))}));
	return {violations: brief(found.violations), incomplete: brief(found.incomplete), passes: found.passes.length};
})()`

const (
	everyRule   = `{runOnly: {type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice"]}}`
	colourRules = `{runOnly: {type: "rule", values: ["color-contrast", "link-in-text-block"]}}`
)

// plainLists takes the arrows out of lists, which are drawn as a background: axe judges no
// contrast on one that is not of one colour.
const plainLists = `;(() => {
	const sheet = new CSSStyleSheet();
	sheet.replaceSync("select { background-image: none !important }");
	document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
})()`

// axeTally collects what axe says of many looks.
type axeTally struct {
	script   string
	looks    int
	passes   int
	open     map[string]int    // what only a person can judge, and how often
	openAt   map[string]string // one of them
	violated []string
}

func (a *axeTally) look(t *testing.T, b *tab, what, rules string) {
	t.Helper()
	if eval[bool](b, `typeof axe === "undefined"`) {
		eval[any](b, a.script+plainLists)
	}
	found := eval[axeResult](b, fmt.Sprintf(axeRun, rules))
	require.Positive(t, found.Passes, what)
	a.looks++
	a.passes += found.Passes
	for _, r := range found.Incomplete {
		for _, node := range r.Nodes {
			_, why, _ := strings.Cut(node, ": Fix any of the following: ")
			key := r.ID + ": " + cell(why)
			a.open[key]++
			a.openAt[key] = what + ": " + node
		}
	}
	for _, r := range found.Violations {
		line := fmt.Sprintf("%s: %s (%s), %d places: %s", what, r.ID, r.Impact, len(r.Nodes), strings.Join(r.Nodes[:min(3, len(r.Nodes))], " · "))
		a.violated = append(a.violated, line)
		t.Error(line)
	}
}

// whole looks at the page as it stands: on a desk, and on a phone, and at its colours in
// the dark.
func (a *axeTally) whole(t *testing.T, b *tab, what string) {
	t.Helper()
	a.look(t, b, what, everyRule)
	b.dark(true)
	a.look(t, b, what+", dark", colourRules)
	b.dark(false)
	b.size(390, 844)
	a.look(t, b, what+", 390 px", everyRule)
	b.size(1440, 900)
}

func auditAxe(t *testing.T) string {
	script, err := os.ReadFile(tool(t, "axe-core/axe.min.js"))
	require.NoError(t, err)
	all := &axeTally{script: string(script), open: map[string]int{}, openAt: map[string]string{}}
	var ran []string // a part of them where -run says so
	for _, reading := range readings {
		t.Run(reading, func(t *testing.T) {
			ran = append(ran, reading)
			b, _ := openPage(t)
			b.patient()
			b.eachSection(reading, func(section string) {
				b.unfold()
				all.whole(t, b, reading+", "+section)
			})
			b.choose("view.language", "de")
			b.wait(`document.documentElement.lang === "de"`)
			for _, section := range b.sections() {
				b.section(section)
				b.unfold()
				all.look(t, b, reading+", "+section+", German", everyRule)
			}
		})
	}
	t.Run("states", func(t *testing.T) {
		ran = append(ran, "states")
		eachState(t, func(state string, b *tab) { all.whole(t, b, state) })
	})
	version := eval[string](freshAxe(t, all.script), "axe.version")

	var out strings.Builder
	fmt.Fprintf(&out, "axe-core %s, every rule of WCAG 2.2 A and AA and of good practice, on every section of every reading "+
		"with all that is folded opened, and on %d other states (%s): on a desk, on a phone of 390 px, the colours also in the dark, "+
		"the sections also in German. The frame of the moving picture, which is hidden from assistive technology, is left out.\n\n",
		version, len(states)+len(asleep), strings.Join(stateNames(), ", "))
	fmt.Fprintf(&out, "In this run (%s): %d looks, %d rules passed, **%d violations**.\n",
		strings.Join(ran, ", "), all.looks, all.passes, len(all.violated))
	for _, line := range all.violated {
		fmt.Fprintf(&out, "\n- %s", line)
	}
	if len(all.open) > 0 {
		rows := [][]string{{"Left to a person", "times", "one of them"}}
		for _, id := range slices.Sorted(maps.Keys(all.open)) {
			rows = append(rows, []string{id, fmt.Sprint(all.open[id]), cell(all.openAt[id])})
		}
		out.WriteString("\n" + table(rows))
	}
	return out.String()
}

// freshAxe is an empty page with axe in it.
func freshAxe(t *testing.T, script string) *tab {
	t.Helper()
	b := newTab(t)
	eval[any](b, script+"; 0")
	return b
}

func stateNames() []string {
	var names []string
	for _, s := range states {
		names = append(names, s.name)
	}
	for _, s := range asleep {
		names = append(names, s.name)
	}
	return names
}

// cell is a text that fits a cell of a table.
func cell(text string) string {
	const most = 160
	text = strings.ReplaceAll(text, "|", "/")
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "…"
	}
	return text
}
