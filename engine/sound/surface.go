package sound

import (
	"fmt"
	"slices"
)

// Limits of a field, those of the design: a pattern beyond them is a fault.
const (
	mostCells = 40_000
	mostSide  = 400
	// mostHeights is how many different heights a field may have: beyond whole
	// millimetres of the tallest block nothing is gained.
	mostHeights = 256
)

// leastGapM is the narrowest gap that counts as one: in narrower joints air
// hardly moves (common practice, no source).
const leastGapM = 0.001

// Surface is a field of square cells, row after row from the top left.
type Surface struct {
	Columns, Rows int
	PitchM        float64   // from cell to cell
	GapM          float64   // between neighbouring blocks; its floor is the backer
	HeightsM      []float64 // of each level, off the backer
	Levels        []uint16
}

// Turn says how a panel's field follows from the surface.
type Turn uint8

// The turns.
const (
	AsDesigned Turn = iota
	Counter         // high and low swapped: level k becomes the last level − k
	HalfTurn        // turned by 180°
)

// Module is one panel of an arrangement, by its centre.
type Module struct {
	Turn   Turn
	XM, YM float64
}

// Arrangement is a surface, once or several times side by side. Frames and the
// wall between panels are left out. No modules means one panel.
type Arrangement struct {
	Surface
	Modules []Module
}

// Validate returns what makes the arrangement one that cannot be heard.
func (a Arrangement) Validate() error {
	switch {
	case a.Columns < 1 || a.Rows < 1 || a.Columns > mostSide || a.Rows > mostSide || a.Columns*a.Rows > mostCells:
		return fmt.Errorf("sound: %d × %d cells (allowed up to %d a side and %d in all)", a.Columns, a.Rows, mostSide, mostCells)
	case len(a.Levels) != a.Columns*a.Rows:
		return fmt.Errorf("sound: %d levels for %d × %d cells", len(a.Levels), a.Columns, a.Rows)
	case len(a.HeightsM) > mostHeights:
		return fmt.Errorf("sound: %d different heights (allowed up to %d)", len(a.HeightsM), mostHeights)
	case !(a.PitchM > 0):
		return fmt.Errorf("sound: pitch %v m (allowed above 0)", a.PitchM)
	case !(a.GapM >= 0 && a.GapM < a.PitchM):
		return fmt.Errorf("sound: gap %v m (allowed 0 up to the pitch)", a.GapM)
	case int(slices.Max(a.Levels)) >= len(a.HeightsM):
		return fmt.Errorf("sound: level %d of %d heights", slices.Max(a.Levels), len(a.HeightsM))
	}
	for _, h := range a.HeightsM {
		if !(h >= 0) {
			return fmt.Errorf("sound: height %v m (allowed 0 or more)", h)
		}
	}
	return nil
}

// used returns the arrangement with only those heights that some panel has, so
// that z = 0 is the highest face that exists. A counter-panel has the heights
// from the other end, so with one every height stays.
func (a Arrangement) used() Arrangement {
	if slices.ContainsFunc(a.Modules, func(m Module) bool { return m.Turn == Counter }) {
		return a
	}
	seen := make([]bool, len(a.HeightsM))
	for _, l := range a.Levels {
		seen[l] = true
	}
	if !slices.Contains(seen, false) {
		return a
	}
	place := make([]uint16, len(seen))
	out := a
	out.HeightsM, out.Levels = nil, make([]uint16, len(a.Levels))
	for l, ok := range seen {
		if ok {
			place[l] = uint16(len(out.HeightsM))
			out.HeightsM = append(out.HeightsM, a.HeightsM[l])
		}
	}
	for i, l := range a.Levels {
		out.Levels[i] = place[l]
	}
	return out
}

// depths returns how far the face of each level lies below the highest and,
// where there are gaps, the backer last.
func (a Arrangement) depths() []float64 {
	top := slices.Max(a.HeightsM)
	out := make([]float64, 0, len(a.HeightsM)+1)
	for _, h := range a.HeightsM {
		out = append(out, top-h)
	}
	if a.gap() > 0 {
		out = append(out, top)
	}
	return out
}

// DeepestM returns how far the deepest face lies below the highest.
func (a Arrangement) DeepestM() float64 {
	u := a.used()
	return slices.Max(u.HeightsM) - slices.Min(u.HeightsM)
}

// gap returns the gap that counts.
func (s Surface) gap() float64 {
	if s.GapM < leastGapM {
		return 0
	}
	return s.GapM
}

// faceShare is the part of each cell that the block's face covers.
func (s Surface) faceShare() float64 {
	side := 1 - s.gap()/s.PitchM
	return side * side
}

// modules returns the panels, one at the centre where none is named.
func (a Arrangement) modules() []Module {
	if len(a.Modules) == 0 {
		return []Module{{}}
	}
	return a.Modules
}

// scale is 1 over the number of all cells.
func (a Arrangement) scale() float64 {
	return 1 / float64(a.Columns*a.Rows*len(a.modules()))
}
