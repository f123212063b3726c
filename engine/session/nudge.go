package session

import (
	"math"
	"strconv"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/page"
)

// sixteenth of an inch: the step of lengths that are read in inches.
const sixteenthMM = 25.4 / 16

// nudge takes a field of the design up or down by a step: the width and the height of a
// group by whole blocks, others by the step in their row of the table.
func (s *Session) nudge(req Request) Response {
	path, value, ok := s.beside(req.Path, sign(req.DY))
	if !ok {
		return Response{}
	}
	res := s.set(Request{Path: path, Value: value})
	if text, found := design.Text(s.now.doc, path, s.units()); found && len(res.Faults) == 0 {
		res.Values = append(res.Values, Value{path, page.FieldText(s.reader(), path, text)})
	}
	return res
}

// beside is what to set, and to what, for the next value of a field, by 1 or -1; false for
// a field that has none.
func (s *Session) beside(path string, by int) (at, value string, ok bool) {
	for _, g := range s.now.plan.Groups {
		for _, side := range []engine.Side{g.Across(), g.Down()} {
			if side.Size == path {
				at, value = side.Edit(side.Blocks + by)
				return at, value, side.Blocks+by > 0
			}
		}
	}
	f, known := design.Lookup(path)
	text, found := design.Text(s.now.doc, path, s.units())
	if !known || !found || !page.Steps(path) {
		return "", "", false
	}
	if f.Kind == design.KindLength {
		now, err := length.Parse(text, s.units().Bare())
		step := length.Micrometres(int64(math.Round(1000 * f.Step)))
		if s.units().Bare() == length.InInch {
			step = length.Sixtyfourths(4 * max(1, int64(math.Round(f.Step/sixteenthMM))))
		}
		return path, now.Add(step.Times(by)).String(), err == nil
	}
	now, err := strconv.ParseFloat(text, 64)
	const fine = 1e6 // finer than any step
	next := math.Round((now+f.Step*float64(by))*fine) / fine
	return path, strconv.FormatFloat(next, 'f', -1, 64), err == nil
}
