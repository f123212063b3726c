package sound

// The transforms themselves, for closed forms.

// LineTransform sums a line of cells: levels[m] at place m.
func LineTransform(s Surface, axis Axis, alpha float64) []complex128 {
	out := make([]complex128, len(s.HeightsM))
	newLineTable(newLineSum(s.counts(axis))).at(alpha, out)
	return out
}

// GridTransform sums the cells of a surface.
func GridTransform(s Surface, alpha, beta float64) []complex128 {
	up, down := make([]complex128, len(s.HeightsM)), make([]complex128, len(s.HeightsM))
	newGridSum(s).at(alpha, beta, up, down)
	return up
}

// Unit is exp(j·angle) as the sums have it.
func Unit(angle float64) complex128 { return newCircle().unit(angle) }
