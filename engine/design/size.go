package design

import "blockfield/engine/length"

// Grid returns the columns and rows of one panel: those that are fixed, and
// else the whole blocks nearest to the wished size, at least one.
func (g Group) Grid() (columns, rows int) {
	columns, rows = g.Columns, g.Rows
	if columns == 0 {
		columns = max(1, g.Width.Round(g.Pitch().Times(g.PanelsWide)))
	}
	if rows == 0 {
		rows = max(1, g.Height.Round(g.Pitch().Times(g.PanelsHigh)))
	}
	return columns, rows
}

// Field returns the width and height of the field of one panel, in whole
// blocks.
func (g Group) Field() (width, height length.Length) {
	columns, rows := g.Grid()
	return g.Pitch().Times(columns), g.Pitch().Times(rows)
}

// Framed reports whether there is a frame round each panel.
func (g Group) Framed() bool { return g.Frame.Joint != NoFrame }

// Outer returns the width and height of one panel, over its frame.
func (g Group) Outer() (width, height length.Length) {
	width, height = g.Field()
	if g.Framed() {
		around := g.Frame.Gap.Add(g.Frame.Thickness).Times(2)
		width, height = width.Add(around), height.Add(around)
	}
	return width, height
}

// Total returns the width and height of all panels with the gaps between them.
func (g Group) Total() (width, height length.Length) {
	width, height = g.Outer()
	return spread(width, g.PanelGap, g.PanelsWide), spread(height, g.PanelGap, g.PanelsHigh)
}

// Bottom returns the height of the lower edge of all panels above the floor.
func (g Group) Bottom() length.Length {
	if g.Place.Edge != TopEdge {
		return g.Place.Height
	}
	_, height := g.Total()
	return g.Place.Height.Sub(height)
}

func spread(each, gap length.Length, n int) length.Length {
	return each.Times(n).Add(gap.Times(n - 1))
}

// across and down are the fields that set the number of columns and of rows.
func (g Group) across() string {
	if g.Columns > 0 {
		return "columns"
	}
	return "width"
}

func (g Group) down() string {
	if g.Rows > 0 {
		return "rows"
	}
	return "height"
}

// crowded is the field to change where a panel has too many cells: the side
// that somebody has fixed, else the longer one.
func (g Group) crowded() string {
	columns, rows := g.Grid()
	fixedAcross, fixedDown := g.Columns > 0, g.Rows > 0
	switch {
	case fixedDown && !fixedAcross:
		return g.down()
	case fixedAcross && !fixedDown, columns >= rows:
		return g.across()
	default:
		return g.down()
	}
}

// stretched is the field to change where n panels in a line reach too far: the
// gap between them where that is the larger part, else the count of blocks.
func (g Group) stretched(n int, each length.Length, blocks string) string {
	if g.PanelGap.Times(n-1).Cmp(each.Times(n)) > 0 {
		return "panelGap"
	}
	return blocks
}
