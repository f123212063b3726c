package cli_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What the record of the job answers opens a gate, for the revision that it was
// signed for and no other; and papers are written from it.
func TestRecordOfTheJob(t *testing.T) {
	t.Parallel()
	const job = jobs + "s2.json"
	body, err := os.ReadFile(job)
	require.NoError(t, err)
	doc, err := design.Decode(body)
	require.NoError(t, err)
	dir := t.TempDir()
	signed := func(name, revision string) string {
		rec := design.NewRecord()
		rec.SignOffs = []design.SignOff{{
			Check: "bench/not-measured", Field: "walls[0].groups[0].block.measured",
			Name: "A. Maker", Reason: "sawn to size here", Day: "2026-03-02", Revision: revision,
		}}
		file := filepath.Join(dir, name)
		require.NoError(t, os.WriteFile(file, design.EncodeRecord(rec), 0o644))
		return file
	}
	good, other := signed("good.json", doc.Design.Revision()), signed("other.json", "ZZZZZZ")

	assert.Equal(t, 1, run(t, "", "report", job, "-gate", "cut").code)
	open := run(t, "", "report", job, "-gate", "cut", "-record", good)
	assert.Equal(t, 0, open.code, open.err)
	assert.Contains(t, open.out, "A. Maker")
	assert.Equal(t, 1, run(t, "", "report", job, "-gate", "cut", "-record", other).code)

	assert.Equal(t, result{0, good + ": good job record\n", ""}, run(t, "", "check", good))
	broken := filepath.Join(dir, "broken.json")
	text, err := os.ReadFile(good)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(broken, []byte(strings.Replace(string(text), "2026-03-02", "2 March", 1)), 0o644))
	for _, args := range [][]string{
		{"check", broken}, {"report", job, "-record", broken}, {"papers", job, "-o", filepath.Join(dir, "papers"), "-record", broken},
	} {
		got := run(t, "", args...)
		assert.Equal(t, 2, got.code, args)
		assert.Contains(t, got.err, broken+": signOffs[0].day: ", args)
		assert.Empty(t, got.out)
	}
	assert.NoDirExists(t, filepath.Join(dir, "papers"))
	wrong := run(t, "", "report", job, "-record", job)
	assert.Equal(t, 2, wrong.code)
	assert.Contains(t, wrong.err, job+": format: ")
}
