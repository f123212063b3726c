package cli

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"blockfield/engine/check"
)

// Only a Stop, and only at the gate that was asked for, shuts it.
func TestShut(t *testing.T) {
	t.Parallel()
	all := []check.WatchOut{{Level: check.Caution, Gate: check.Offer}, {Level: check.Stop, Gate: check.Cut}}
	assert.True(t, shut(all, check.Cut))
	assert.False(t, shut(all, check.Offer))
	assert.False(t, shut(all, check.Hang))
	assert.False(t, shut(all, check.NoGate), "no gate was asked for")
	assert.False(t, shut([]check.WatchOut{{Level: check.Stop}}, check.NoGate))
	assert.False(t, shut(nil, check.Cut))
}
