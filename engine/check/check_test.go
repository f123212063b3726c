package check_test

import (
	"testing"

	"blockfield/engine/check"

	"github.com/stretchr/testify/assert"
)

// A signature opens a gate for a Stop, standing or pending; never for one that only
// evidence clears, and it changes nothing else.
func TestSign(t *testing.T) {
	by := check.Signature{Name: "A. Maker", Reason: "measured at the mill", Day: "2026-03-02"}
	for _, w := range []check.WatchOut{
		{Level: check.Stop, Gate: check.Cut}, {Level: check.Caution, Gate: check.Cut, Pending: check.SignOff},
		{Level: check.Note, Gate: check.Glue, Pending: check.SignOff},
	} {
		signed := w.Sign(by)
		assert.Equal(t, check.Caution, signed.Asked().Level)
		assert.Equal(t, by, *signed.Signed)
	}
	for _, w := range []check.WatchOut{
		{Level: check.Stop, Gate: check.Hang, Evidence: true}, {Level: check.Caution, Pending: check.ByEvidence}, {Level: check.Caution},
	} {
		assert.Equal(t, w, w.Sign(by))
	}
}

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
