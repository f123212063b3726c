package engine_test

import (
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
)

// A gate is shut by its own Stops and by those of the gates before it. What the
// record of the job would answer shuts its gate too: nothing records it.
func TestGates(t *testing.T) {
	measured := group + "block.measured = yes\n"
	heavy := measured + "wayIn.doorWidth = 900 mm\n" + group + "width = 2000 mm\n" + group + "wood = oak\n"
	for name, c := range map[string]struct {
		edits string
		shut  map[check.Gate][]string
	}{
		"nothing measured": {"", map[check.Gate][]string{
			check.Cut: {"bench/not-measured"}, check.Glue: {"bench/not-measured"}, check.Hang: {"bench/not-measured"},
		}},
		"measured": {measured, nil},
		"the public comes in": {measured + "room.public = yes", map[check.Gate][]string{
			check.Buy: {"wall/fire-question"}, check.Cut: {"wall/fire-question"},
			check.Glue: {"wall/fire-question"}, check.Hang: {"wall/fire-question"},
		}},
		"a heavy panel holds everything": {heavy, map[check.Gate][]string{
			check.Offer: {"wall/lifting-method"}, check.Share: {"wall/lifting-method"}, check.Buy: {"wall/lifting-method"},
			check.Cut: {"wall/lifting-method"}, check.Glue: {"wall/lifting-method"}, check.Hang: {"wall/lifting-method"},
		}},
		"its lift is named, and it has not been weighed": {
			heavy + "work.lifting.method = hoist\nwork.lifting.lead = A. Fitter",
			map[check.Gate][]string{check.Hang: {"wall/lift-named"}},
		},
	} {
		t.Run(name, func(t *testing.T) {
			r := plan(t, edit(t, design.Default(), c.edits).Design)
			for _, gate := range check.Gates() {
				all := r.ShutAt(gate)
				assert.ElementsMatch(t, c.shut[gate], codes(all), gate)
				for _, w := range all {
					assert.Equal(t, check.Stop, w.Level)
				}
			}
			assert.Empty(t, r.ShutAt(check.NoGate))
		})
	}
}

// Evidence stays evidence when a gate is asked for, and a signature a signature.
func TestWhatClearsAPendingStop(t *testing.T) {
	for _, c := range []struct {
		by       check.Clearing
		level    check.Level
		evidence bool
	}{{check.NotPending, check.Caution, false}, {check.SignOff, check.Stop, false}, {check.ByEvidence, check.Stop, true}} {
		w := check.WatchOut{Level: check.Caution, Pending: c.by}.Asked()
		assert.Equal(t, []any{c.level, c.evidence, check.NotPending}, []any{w.Level, w.Evidence, w.Pending})
	}
}
