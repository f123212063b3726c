package wall

import (
	"cmp"
	"math"
	"slices"

	"blockfield/engine/length"
	"blockfield/engine/panel"
)

// Places of the panel's half of the cleat, from the field's top; as panels are
// built.
const (
	halfHighMM  = 80.0
	leastFootMM = 90.0 // its upper edge stays 10 mm under the field's top
)

// FootMM is how far below the field's top the panel's half ends, at its lower
// inner corner, so that it lies with its middle on the screws.
func (r Rear) FootMM(row CleatRow) float64 {
	if len(row.Rows) == 0 {
		return leastFootMM
	}
	middle := (r.RowY(row.Rows[0]) + r.RowY(row.Rows[len(row.Rows)-1])) / 2
	return math.Max(leastFootMM, middle+halfHighMM/2)
}

// TipHeight is where the tip of the strip in the wall comes, above the floor: at
// the lower inner corner of the panel's half, between its bevel and the backer.
func (h Hung) TipHeight(p panel.Panel) length.Length {
	foot := h.RearOf(p).FootMM(h.CleatScrewsOf(p).Row)
	for _, part := range p.Parts {
		if part.Kind == panel.BackerPart {
			return p.Bottom.Add(part.Y).Add(part.Height).Sub(tenths(foot))
		}
	}
	return length.Length{}
}

// Hole is one screw on the rear map: where to drill, measured on the back itself.
type Hole struct {
	FromLeftMM float64 // from the left edge of the rear of the field
	FromTopMM  float64
	Place      // the cell it goes into, as seen from the room
}

// Holes are the screws of a row as the rear map has them, turned like a page, from
// the left of the rear to its right.
func (r Rear) Holes(row CleatRow) []Hole {
	var all []Hole
	for _, p := range row.Places {
		all = append(all, Hole{FromLeftMM: r.RearX(p.Column), FromTopMM: r.RowY(p.Row), Place: p})
	}
	slices.SortFunc(all, func(a, b Hole) int {
		return cmp.Or(cmp.Compare(a.FromLeftMM, b.FromLeftMM), cmp.Compare(a.FromTopMM, b.FromTopMM))
	})
	return all
}

// Corner is one check that the map lies the right way round: the first heights of
// a column of the front that stands in a corner of the rear.
type Corner struct {
	Column    int // of the front, from 1
	HeightsMM []float64
}

// cornerCells is how many blocks a corner check names.
const cornerCells = 3

// Corners are the checks at the top of the rear: its left corner is the last
// column of the front, its right corner the first.
func (r Rear) Corners() (left, right Corner) {
	corner := func(column int) Corner {
		c := Corner{Column: column + 1}
		for row := range min(cornerCells, r.Grid.Rows) {
			c.HeightsMM = append(c.HeightsMM, r.HeightsMM[r.Grid.At(row, column)])
		}
		return c
	}
	return corner(r.ColumnAtRear(r.PitchMM / 2)), corner(r.ColumnAtRear(r.FieldMM() - r.PitchMM/2))
}
