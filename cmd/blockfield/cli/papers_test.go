package cli_test

import (
	"archive/zip"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The command writes each set, its drawings and its tables, and all of them in one
// archive; one set alone holds nothing of the others.
func TestPapers(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	got := run(t, "", "papers", jobs+"s8.json", "-o", dir, "-paper", "Letter")
	require.Equal(t, 0, got.code, got.err)
	book, err := os.ReadFile(filepath.Join(dir, "book.html"))
	require.NoError(t, err)
	assert.Contains(t, string(book), "@page { size: Letter;")
	assert.Contains(t, string(book), "font/ttf;base64,AAEAAAA", "the font of the papers")
	for _, name := range []string{"drawings/backer-1.svg", "tables/counts.csv", "tables/field-1-1.csv"} {
		assert.FileExists(t, filepath.Join(dir, name))
	}
	packed, err := zip.OpenReader(filepath.Join(dir, "papers.zip"))
	require.NoError(t, err)
	defer packed.Close()
	assert.Contains(t, got.out, "papers.zip")
	assert.Greater(t, len(packed.File), 5)

	dir = filepath.Join(t.TempDir(), "new")
	require.Equal(t, 0, run(t, "", "papers", jobs+"s5.json", "-o", dir, "-set", "offer").code)
	var names []string
	require.NoError(t, filepath.WalkDir(dir, func(path string, entry os.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			names = append(names, strings.TrimPrefix(path, dir+string(filepath.Separator)))
		}
		return err
	}))
	assert.Equal(t, []string{"offer.html", "papers.zip"}, names, "what goes to a client holds no table of prices")
}

func TestPapersSaysWhatIsWrong(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{jobs + "s5.json", "-o", dir, "-paper", "A3"}, `-paper: "A3" is no size of paper (allowed A4, Letter)`},
		{[]string{jobs + "s5.json", "-o", dir, "-set", "book"}, `-set: "book" is no set of papers of this design (allowed offer, survey, cut, glue, hang)`},
		{[]string{jobs + "s8.json", "-o", dir, "-set", "offer"}, `-set: "offer" is no set of papers of this design (allowed book, survey)`},
		{[]string{"missing.json", "-o", dir}, "missing.json: "},
		{[]string{jobs + "s5.json", "-o", filepath.Join(jobs+"s5.json", "x")}, "s5.json"},
		{[]string{jobs + "s5.json", "-o", dir, "-prices", jobs + "s5.json"}, "s5.json: "},
	} {
		got := run(t, "", append([]string{"papers"}, c.args...)...)
		assert.Equal(t, 2, got.code, c.args)
		assert.Contains(t, got.err, c.want)
	}
}
