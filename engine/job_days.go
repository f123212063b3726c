package engine

import (
	"blockfield/engine/calendar"
	"blockfield/engine/moisture"
)

// Settled reports whether the meter says that the sticks have come to rest; known is
// false where it has fewer than two readings with a day.
func (j Job) Settled() (settled, known bool) {
	all := j.readings()
	if len(all) < 2 {
		return false, false
	}
	last := all[len(all)-1]
	until, _ := calendar.Parse(last.Day)
	for _, r := range all[:len(all)-1] {
		from, _ := calendar.Parse(r.Day)
		if moisture.Settled(r.Percent, last.Percent, int(until-from)) {
			return true, true
		}
	}
	return false, true
}
