package cli_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden files anew")

// The whole report of a panel, as other programs read it: a change of any key
// or figure shows here. That the figures are right is checked in the engine.
func TestReportGolden(t *testing.T) {
	names := []string{"p1", "s4"}
	for _, name := range names {
		golden := filepath.Join("testdata", name+".want.json")
		got := run(t, "", "report", jobs+name+".json")
		require.Equal(t, 0, got.code, got.err)
		if *update {
			require.NoError(t, os.WriteFile(golden, []byte(got.out), 0o644))
		}
		want, err := os.ReadFile(golden)
		require.NoError(t, err)
		assert.Equal(t, string(want), got.out, name)
	}
	all, err := filepath.Glob("testdata/*")
	require.NoError(t, err)
	for _, file := range all {
		name, _ := strings.CutSuffix(filepath.Base(file), ".want.json")
		assert.Contains(t, names, name, "%s belongs to no test", file)
	}
}
