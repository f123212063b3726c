package draw

// Weight is how thick a line is on paper, in mm, by what it means: the same on
// every sheet, whatever the scale. Wide lines are twice as thick as narrow ones,
// as in ISO 128-2 (from memory); the heavy one is ours.
type Weight float64

// The weights.
const (
	Fine    Weight = 0.18 // dimensions, hatches, rules of tables
	Hidden  Weight = 0.25 // what lies behind, dashed
	Visible Weight = 0.35 // edges that can be seen
	Outline Weight = 0.5  // the thing that the drawing is about
	Heavy   Weight = 1    // where to act: an edge to cut, a place to screw
)

// Line is the stroke of a line of that weight.
func (w Weight) Line() []Attr {
	return []Attr{Stroke("currentColor"), StrokeWidth(float64(w))}
}

// Dashed is the stroke of a broken line of that weight, its dashes in ISO 128-2's
// proportion of 12 and 3 line widths (from memory).
func (w Weight) Dashed() []Attr {
	return append(w.Line(), Dash(12*float64(w), 3*float64(w)))
}
