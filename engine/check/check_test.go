package check_test

import (
	"testing"

	"blockfield/engine/check"

	"github.com/stretchr/testify/assert"
)

func TestSortPutsTheWorstFirstAndKeepsTheOrder(t *testing.T) {
	all := []check.WatchOut{
		{Code: "a", Level: check.Note}, {Code: "b", Level: check.Stop},
		{Code: "c", Level: check.Note}, {Code: "d", Level: check.Caution},
	}
	check.Sort(all)
	var codes string
	for _, w := range all {
		codes += w.Code
	}
	assert.Equal(t, "bdac", codes)
	assert.Equal(t, check.Stop, check.Worst(all))
	assert.Equal(t, "none", check.Worst(nil).String())
}
