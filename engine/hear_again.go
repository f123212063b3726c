package engine

import (
	"blockfield/engine/design"
	"blockfield/engine/sound"
)

// Heard is what is kept of a Hearing: the verdicts, in the order of the groups.
// It is small and goes through JSON unchanged, so that one program may hear and
// another say what was heard.
type Heard struct {
	Revision string          `json:"revision"`
	Verdicts []sound.Verdict `json:"verdicts"`
}

// Heard returns what is to be kept of a Hearing.
func (h Hearing) Heard() Heard {
	out := Heard{Revision: h.Revision}
	for _, g := range h.Groups {
		out.Verdicts = append(out.Verdicts, g.Verdict)
	}
	return out
}

// In returns what verdicts mean in a design and its plan: all of a Hearing but
// the arrangements and what was computed of them. The plan's own Hearing has the
// same revision; one of another design, from before an edit, says what the
// verdicts of then mean in the room of now. It is false for a design with other
// groups.
func (o Heard) In(d design.Design, plan Result) (Hearing, bool) {
	if len(o.Verdicts) == 0 || len(o.Verdicts) != len(plan.Groups) {
		return Hearing{}, false
	}
	out := Hearing{Revision: o.Revision, SpeedMS: speedMS(d.Room)}
	for i, g := range plan.Groups {
		out.Groups = append(out.Groups, HeardGroup{Wall: g.Wall, Index: g.Index, Path: g.Path, Verdict: o.Verdicts[i]})
	}
	out.conclude(d, plan.Groups)
	return out, true
}
