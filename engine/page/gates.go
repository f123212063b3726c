package page

import (
	"blockfield/engine/check"
)

// Gate says what a watch-out does to its gate, for whoever makes the panels;
// empty where it shuts none, and for a client, whose gates they are not.
func (w Watch) Gate() string {
	asked := w.Out.Asked()
	if w.Reading == Client || asked.Level != check.Stop {
		return ""
	}
	key := "gate/shuts"
	if w.Out.Level != check.Stop {
		key = "gate/will-shut"
	}
	said := w.T(key, "gate", w.T(asked.Gate.Word(w.Reading == Builder)))
	if w.Reading == Builder && !asked.Evidence {
		return said // nobody signs anything off at home
	}
	return said + " " + w.T("gate/"+clearedBy(asked))
}

func clearedBy(w check.WatchOut) string {
	if w.Evidence {
		return "by-evidence"
	}
	return "by-sign-off"
}

// GateLine is one gate of the job with what keeps it shut.
type GateLine struct {
	Label, State string
	Shut         bool
}

// GateLines are the gates as they stand. A copy to share holds no price book by
// construction, so that gate has nothing to say.
func (v *view) GateLines() []GateLine {
	var all []GateLine
	earlier := ""
	for _, g := range v.Plan.Gates() {
		if g.Gate == check.Share {
			continue
		}
		name := v.T(g.Gate.Word(v.Reading == Builder))
		line := GateLine{Label: capital(name), State: v.T("gate/open")}
		switch {
		case len(g.Stops) > 0:
			line.Shut = true
			line.State = v.T(shutKey(g.Stops), "n", len(g.Stops))
		case earlier != "":
			line.Shut = true
			line.State = v.T("gate/waits", "gate", earlier)
		}
		if line.Shut && earlier == "" {
			earlier = name
		}
		all = append(all, line)
	}
	return all
}

// shutKey says of several Stops that evidence is asked for as soon as one of
// them does.
func shutKey(stops []check.WatchOut) string {
	for _, w := range stops {
		if w.Evidence {
			return "gate/shut-evidence"
		}
	}
	return "gate/shut"
}
