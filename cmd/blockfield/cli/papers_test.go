package cli_test

import (
	"archive/zip"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
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
	for _, name := range []string{"drawings/backer-1.svg", "tables/counts.csv", "tables/field-1-1-mm.csv"} {
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

// Prices that have run out are told, by the command and on the offer itself; a job whose
// look is locked has its invoices.
func TestPapersOfPricesThatHaveRunOut(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	book := design.DefaultBook()
	book.ValidUntil = "2026-06-30"
	prices := filepath.Join(dir, "book.json")
	require.NoError(t, os.WriteFile(prices, design.EncodeBook(book), 0o644))
	got := run(t, "", "papers", jobs+"s5.json", "-o", dir, "-set", "offer", "-prices", prices, "-today", "2026-07-01")
	require.Equal(t, 0, got.code)
	assert.Contains(t, got.err, prices+": validUntil: has run out: its last day was 2026-06-30")
	offer, err := os.ReadFile(filepath.Join(dir, "offer.html"))
	require.NoError(t, err)
	assert.Contains(t, string(offer), "2026-06-30")

	rec := design.NewRecord()
	rec.Lock = &design.Lock{
		Revision: "ABCDEF", Day: "2026-06-01", Currency: "EUR", Net: design.Units(1000), Tax: design.Units(200), Gross: design.Units(1200),
		Stages: []design.Stage{{Name: "order", Percent: 100}},
	}
	rec.Calls = []design.Call{{Stage: "order", Day: "2026-06-02", Revision: "ABCDEF", Net: rec.Lock.Net, Tax: rec.Lock.Tax, Gross: rec.Lock.Gross}}
	record := filepath.Join(dir, "record.json")
	require.NoError(t, os.WriteFile(record, design.EncodeRecord(rec), 0o644))
	got = run(t, "", "papers", jobs+"s5.json", "-o", dir, "-set", "order", "-record", record)
	require.Equal(t, 0, got.code, got.err)
	assert.FileExists(t, filepath.Join(dir, "order.html"))
}
