package words

import (
	"strconv"

	"blockfield/engine/length"
)

// About is a length as a person says it who means it about so: from a metre on
// in tenths of a metre, in inches from a yard on whole ones; below in 5 mm, or
// eighths of an inch. NoLess is the same rounded up, for what one is told to
// keep.
type (
	About  length.Length
	NoLess length.Length
)

func (a About) text(u length.Units) string {
	l := length.Length(a)
	step := aboutStep(l, u)
	return said(step.Times(int((l.Nanometres()+step.Half().Nanometres())/step.Nanometres())), u)
}

func (n NoLess) text(u length.Units) string { return said(n.In(u), u) }

// In returns the length that is said to a reader of some units.
func (n NoLess) In(u length.Units) length.Length {
	l := length.Length(n)
	step := aboutStep(l, u)
	return step.Times(int((l.Nanometres() + step.Nanometres() - 1) / step.Nanometres()))
}

// aboutStep is what a length is rounded to.
func aboutStep(l length.Length, u length.Units) length.Length {
	const yard64ths, metreMM = 36 * 64, 1000
	switch inch := u.Bare() == length.InInch; {
	case inch && l.Cmp(length.Sixtyfourths(yard64ths)) >= 0:
		return length.Sixtyfourths(64)
	case inch:
		return length.Sixtyfourths(8)
	case l.Cmp(length.MM(metreMM)) >= 0:
		return length.MM(100)
	default:
		return length.MM(5)
	}
}

// said writes a rounded length.
func said(l length.Length, u length.Units) string {
	if u.Bare() == length.InMM && l.Cmp(length.MM(1000)) >= 0 {
		return strconv.FormatFloat(l.Metres(), 'f', -1, 64) + " m"
	}
	return u.Format(l)
}
