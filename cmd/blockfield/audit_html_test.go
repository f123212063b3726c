package main_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/cmd/blockfield/cli"
)

// unknownToChecker is what is in the standard and not in the checker: containers, of CSS
// Containment Level 3 and CSS Values and Units.
var unknownToChecker = []string{"container-type", "cqh", "cqw"}

// auditHTML has the checker of the HTML standard read the page as it is served and as it
// stands in the browser, the papers, the style sheets and the icon.
func auditHTML(t *testing.T) string {
	checker := tool(t, "vnu-jar/build/dist/vnu.jar")
	if _, err := exec.LookPath("java"); err != nil {
		t.Error("the checker needs Java (apt-get install default-jre-headless)")
		return "Not measured: there was no Java.\n"
	}
	dir := filepath.Join(*auditDir, "html")
	require.NoError(t, os.RemoveAll(dir))
	require.NoError(t, os.MkdirAll(dir, 0o755))
	pages, sheets, papers := 0, 0, 0
	write := func(name string, body []byte) {
		name = strings.NewReplacer(" ", "-", ",", "", "/", "-").Replace(name)
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), body, 0o644))
	}
	site := builtSite(t)
	for _, name := range site.Names() {
		switch filepath.Ext(name) {
		case ".html":
			write("served-"+filepath.Base(name), site.File(name).Body)
		case ".css":
			write(filepath.Base(name), site.File(name).Body)
			sheets++
		case ".svg":
			write(filepath.Base(name), site.File(name).Body)
		}
	}
	standing := func(b *tab, name string) {
		write("page-"+name+".html", []byte("<!doctype html>\n"+eval[string](b, "document.documentElement.outerHTML")))
		pages++
	}
	for _, reading := range readings {
		t.Run(reading, func(t *testing.T) {
			b, _ := openPage(t)
			b.patient()
			b.eachSection(reading, func(section string) { standing(b, reading+"-"+section) })
		})
	}
	t.Run("states", func(t *testing.T) {
		eachState(t, func(state string, b *tab) { standing(b, state) })
	})
	for _, job := range []string{"s2", "s5", "s8"} {
		out := t.TempDir()
		var said bytes.Buffer
		code := cli.Run(context.Background(), []string{"papers", "../../testdata/scenarios/" + job + ".json", "-site", "https://blocks.example/", "-o", out},
			cli.Streams{In: strings.NewReader(""), Out: &said, Err: &said})
		require.LessOrEqual(t, code, 1, said.String())
		names, err := filepath.Glob(filepath.Join(out, "*.html"))
		require.NoError(t, err)
		require.NotEmpty(t, names)
		for _, name := range names {
			body, err := os.ReadFile(name)
			require.NoError(t, err)
			write("papers-"+job+"-"+filepath.Base(name), body)
			papers++
		}
	}

	version, err := exec.Command("java", "-jar", checker, "--version").Output()
	require.NoError(t, err)
	names, err := filepath.Glob(filepath.Join(dir, "*"))
	require.NoError(t, err)
	args := append([]string{"-jar", checker, "--format", "json", "--exit-zero-always", "--stdout", "--also-check-css", "--also-check-svg"}, names...)
	said, err := exec.Command("java", args...).Output()
	require.NoError(t, err)
	var found struct {
		Messages []struct {
			Type    string `json:"type"`
			SubType string `json:"subType"`
			URL     string `json:"url"`
			Message string `json:"message"`
			Extract string `json:"extract"`
		} `json:"messages"`
	}
	require.NoError(t, json.Unmarshal(said, &found), string(said))
	where := map[string][]string{} // files by what is said of them
	unknown := 0
	for _, m := range found.Messages {
		if containsAny(m.Extract, unknownToChecker) && strings.HasPrefix(m.Message, "CSS") {
			unknown++
			continue
		}
		kind := m.Type
		if m.SubType != "" {
			kind = m.SubType
		}
		line := fmt.Sprintf("%s: %s `%s`", kind, m.Message, strings.ReplaceAll(cell(m.Extract), "\n", " "))
		where[line] = append(where[line], filepath.Base(m.URL))
	}

	var out strings.Builder
	fmt.Fprintf(&out, "The Nu checker of the HTML standard, vnu %s: the page as it is served, as it stands after its start in every section of "+
		"every reading and in %d other states (%d documents), the papers of three jobs (%d), %d style sheets and the icon.\n\n",
		strings.Fields(string(version))[0], len(states)+len(asleep), pages, papers, sheets)
	errors := 0
	var lines []string
	for line, files := range where {
		line = fmt.Sprintf("- %s, in %d files, such as %s\n", line, len(files), files[0])
		if !strings.HasPrefix(line, "- warning") && !strings.HasPrefix(line, "- info") {
			errors++
			assert.Fail(t, line)
		}
		lines = append(lines, line)
	}
	slices.Sort(lines)
	fmt.Fprintf(&out, "**%d errors**, %d warnings. %d messages are not counted: the checker does not know CSS containers (%s).\n\n",
		errors, len(where)-errors, unknown, strings.Join(unknownToChecker, ", "))
	out.WriteString(strings.Join(lines, ""))
	return out.String()
}
