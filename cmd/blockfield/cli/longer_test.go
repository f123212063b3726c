package cli_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A longer search is a flag: report and papers then speak of the same plan, which is that
// of another revision.
func TestLongerSearchOnRequest(t *testing.T) {
	t.Parallel()
	type report struct {
		Revision string
		Cuts     []struct {
			Proven       bool
			LongerSearch bool
			Visits       int
		}
	}
	read := func(args ...string) (r report) {
		got := run(t, "", append([]string{"report", jobs + "s2.json"}, args...)...)
		require.Equal(t, 0, got.code, got.err)
		require.NoError(t, json.Unmarshal([]byte(got.out), &r))
		require.Len(t, r.Cuts, 1)
		return r
	}
	usual, longer := read(), read("-longer")
	assert.False(t, usual.Cuts[0].LongerSearch)
	assert.True(t, longer.Cuts[0].LongerSearch)
	assert.Less(t, longer.Cuts[0].Visits, usual.Cuts[0].Visits)
	assert.NotEqual(t, usual.Revision, longer.Revision)

	dir := t.TempDir()
	got := run(t, "", "papers", jobs+"s2.json", "-longer", "-set", "cut", "-o", dir)
	require.Equal(t, 0, got.code, got.err)
	body, err := os.ReadFile(filepath.Join(dir, "cut.html"))
	require.NoError(t, err)
	assert.Contains(t, string(body), longer.Revision)
	assert.NotContains(t, string(body), usual.Revision)
}
