package engine

import (
	"fmt"

	"blockfield/engine/length"
)

// Side is one side of the field of a group in whole blocks.
type Side struct {
	Blocks int           // in each panel
	Panels int           // side by side, or above each other
	Pitch  length.Length // from block to block
	// Size and Count are the paths of the wished size and of a count of blocks; where the
	// count is Fixed it holds, and the size is not used.
	Size, Count string
	Fixed       bool
}

// Across and Down are the two sides of a group.
func (g Group) Across() Side {
	return Side{g.Built.Columns, g.Design.PanelsWide, g.Built.Pitch, g.Path + ".width", g.Path + ".columns", g.Design.Columns > 0}
}

func (g Group) Down() Side {
	return Side{g.Built.Rows, g.Design.PanelsHigh, g.Built.Pitch, g.Path + ".height", g.Path + ".rows", g.Design.Rows > 0}
}

// Of is the size that n blocks in each panel give, over all panels.
func (s Side) Of(n int) length.Length { return s.Pitch.Times(n * s.Panels) }

// Edit is what to set, and to what, for n blocks in each panel.
func (s Side) Edit(n int) (path, value string) {
	if s.Fixed {
		return s.Count, fmt.Sprint(n)
	}
	return s.Size, s.Of(n).String()
}
