package engine

import (
	"slices"

	"blockfield/engine/check"
)

// GateState is a gate with the Stops that keep it shut when it is asked for.
// What the record of the job would answer counts as open, as long as there is no
// such record: nothing passes in silence.
type GateState struct {
	Gate  check.Gate
	Stops []check.WatchOut
}

// Gates are the gates of the job in its order, each with its own Stops.
func (r Result) Gates() []GateState {
	var all []GateState
	for _, gate := range check.Gates() {
		state := GateState{Gate: gate}
		for _, w := range r.AllWatchOuts() {
			if w = w.Asked(); w.Level == check.Stop && w.Gate == gate {
				state.Stops = append(state.Stops, w)
			}
		}
		all = append(all, state)
	}
	return all
}

// ShutAt returns what keeps a gate shut: its own Stops and those of the gates
// before it, since nobody buys for a job that cannot be offered. It is empty for
// an open gate, and for none.
func (r Result) ShutAt(gate check.Gate) []check.WatchOut {
	last := slices.Index(check.Gates(), gate)
	if last < 0 {
		return nil
	}
	var all []check.WatchOut
	for _, state := range r.Gates()[:last+1] {
		all = append(all, state.Stops...)
	}
	return all
}
