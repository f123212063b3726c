// Package check is the watch-out: one thing that the tool has found and that a
// person should know before a certain point of the job.
//
// A watch-out is data. Its code names the check in words ("field/snapped"),
// which is also the key of its sentence; its arguments are typed; its source
// says where the limit comes from, or that it is common practice without one.
package check

import (
	"cmp"
	"slices"
)

// Level says how hard a watch-out holds the job.
type Level uint8

// The levels, from the mildest.
const (
	Note    Level = iota + 1 // on screen only
	Caution                  // printed on the paper that it concerns
	Stop                     // shuts a gate until it is solved, signed off or cleared by evidence
)

// String returns the level as reports write it: "note", "caution" or "stop".
func (l Level) String() string {
	switch l {
	case Note:
		return "note"
	case Caution:
		return "caution"
	case Stop:
		return "stop"
	default:
		return "none"
	}
}

// Gate is a point of the job that a Stop keeps shut.
type Gate string

// The gates, in the order of the job.
const (
	NoGate Gate = ""
	Offer  Gate = "offer"
	Share  Gate = "share"
	Buy    Gate = "buy"
	Cut    Gate = "cut"
	Glue   Gate = "glue"
	Hang   Gate = "hang"
)

// Word is the key of what a gate is called. Nobody makes an offer at home: work begins.
func (g Gate) Word(home bool) string {
	if home && g == Offer {
		return "gate/offer-home"
	}
	return "gate/" + string(g)
}

// Gates are all of them, in the order of the job.
func Gates() []Gate { return []Gate{Offer, Share, Buy, Cut, Glue, Hang} }

// Clearing is what clears a Stop, other than a change to the design.
type Clearing string

// The ways to clear a Stop.
const (
	NotPending Clearing = ""
	SignOff    Clearing = "sign-off" // by the maker, with name and reason
	ByEvidence Clearing = "evidence" // a rated value, a weighed mass, a named professional; never a signature
)

// Asked returns a watch-out as it stands when its gate is asked for: a pending
// one is a Stop then.
func (w WatchOut) Asked() WatchOut {
	if w.Pending != NotPending {
		w.Level, w.Evidence, w.Pending = Stop, w.Pending == ByEvidence, NotPending
	}
	return w
}

// Common sources of limits.
const (
	CommonPractice = "common practice, no source"
	Computed       = "computed from the design"
)

// WatchOut is one finding.
type WatchOut struct {
	Code     string
	Level    Level
	Gate     Gate
	Evidence bool           // a Stop that only evidence can clear, never a signature
	Pending  Clearing       // of what is a Stop once its gate is asked for, since no record of the job answers it
	Signed   *Signature     // of a Stop that somebody has signed off: it is a Caution now
	Private  bool           // holds figures of the price book: no client may see it
	Args     map[string]any // of the sentence; values as package words takes them
	Field    string         // path of the field to change, below the design; may be empty
	Source   string         // of the limit
	Fix      *Fix           // the smallest change that clears it, where it can be computed
}

// Signature is who has taken a Stop upon themselves, and why.
type Signature struct{ Name, Reason, Day string }

// Sign returns a watch-out that was signed off: it shuts no gate any more. One that
// only evidence clears stays as it is.
func (w WatchOut) Sign(by Signature) WatchOut {
	if asked := w.Asked(); asked.Level != Stop || asked.Evidence {
		return w
	}
	w.Level, w.Pending, w.Signed = Caution, NotPending, &by
	return w
}

// Fix is one edit that clears a watch-out.
type Fix struct {
	Path  string
	Value string // as a person would type it
}

// Sort puts the worst watch-outs first and keeps the order of the job within a
// level.
func Sort(all []WatchOut) {
	slices.SortStableFunc(all, func(a, b WatchOut) int { return cmp.Compare(b.Level, a.Level) })
}

// Worst returns the highest level among all, or 0.
func Worst(all []WatchOut) Level {
	var worst Level
	for _, w := range all {
		worst = max(worst, w.Level)
	}
	return worst
}
