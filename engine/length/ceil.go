package length

// CeilAs returns l rounded up to what a tape in the notation n shows: to a
// whole millimetre, or to a sixteenth of an inch where n is inches or feet. It
// is for limits that a person is told to keep: what is returned is never below
// l.
func (l Length) CeilAs(n Notation) Length {
	step := int64(nmPerMM)
	if n == InInch || n == InFeet {
		step = nmPerInch / 16
	}
	steps := l.nm / step
	if l.nm > steps*step {
		steps++
	}
	return Nanometres(steps*step, n)
}
