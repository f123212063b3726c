package wall

import (
	"cmp"
	"math"
	"slices"

	"blockfield/engine/field"
)

// Cell marks a place behind the panel for a screw of one length.
type Cell uint8

// The marks: a screw cannot show, would show, or has no block at all.
const (
	Void Cell = iota
	Short
	Safe
)

// Rules of the screws in the panel's half of the cleat. Common practice, no
// source, but for the published rules that count them.
const (
	overTipMM      = 6.0  // wood that stays over a tip
	voidOverTipMM  = 3.0  // backer that stays over a tip in a void
	jointClearMM   = 8.0  // from a screw to the edge of its block
	intoBlockMM    = 20.0 // how far the usual screw stands in a block
	rowFromMM      = 60.0 // the row of screws, from the field's top …
	rowToMM        = 160.0
	rowWantedMM    = 90.0
	cleatEndMM     = 50.0 // the cleat is this much shorter at either end
	screwEndMM     = 20.0 // from a screw to the end of the cleat: five diameters of a No. 8
	fallbackLessMM = 3.0  // the short screws stay this much inside the backer
)

// cleatScrewsMM are the lengths in a shop, from short; common practice.
func cleatScrewsMM() []float64 {
	return []float64{16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120}
}

// Rear is the back of one panel with what the screws have to know. Lengths in
// mm; columns and rows as seen from the room.
type Rear struct {
	Grid      field.Grid
	HeightsMM []float64
	PitchMM   float64
	BlockMM   float64
	CleatMM   float64
	BackerMM  float64
}

// FieldMM is the width of the field.
func (r Rear) FieldMM() float64 { return float64(r.Grid.Columns) * r.PitchMM }

// UsualScrewMM is the longest screw of the shop that stands no more than 20 mm in
// a block.
func (r Rear) UsualScrewMM() float64 { return longestUpTo(r.CleatMM + r.BackerMM + intoBlockMM) }

// ShortScrewMM is the longest that ends inside the backer: with glue, the way
// out where too few blocks are tall enough.
func (r Rear) ShortScrewMM() float64 { return longestUpTo(r.CleatMM + r.BackerMM - fallbackLessMM) }

func longestUpTo(most float64) float64 {
	best := 0.0
	for _, mm := range cleatScrewsMM() {
		if mm <= most {
			best = mm
		}
	}
	return best
}

// LeastMM is the shortest block that hides the tip of a screw of a length.
func (r Rear) LeastMM(screwMM float64) float64 {
	return math.Max(0, screwMM+overTipMM-r.CleatMM-r.BackerMM)
}

// Mark says what a screw of a length meets in a cell.
func (r Rear) Mark(row, column int, screwMM float64) Cell {
	h := r.HeightsMM[r.Grid.At(row, column)]
	behind := r.CleatMM + r.BackerMM
	switch {
	case h == 0 && screwMM <= behind-voidOverTipMM:
		return Safe
	case h == 0:
		return Void
	case h >= r.LeastMM(screwMM):
		return Safe
	default:
		return Short
	}
}

// FrontX is the middle of a column from the left edge of the field, seen from
// the room.
func (r Rear) FrontX(column int) float64 { return (float64(column) + 0.5) * r.PitchMM }

// RearX is the same place from the left edge of the rear, turned like a page:
// left and right change places, the top stays up.
func (r Rear) RearX(column int) float64 { return r.FieldMM() - r.FrontX(column) }

// ColumnAtRear is the column that lies at a distance from the left edge of the
// rear.
func (r Rear) ColumnAtRear(x float64) int {
	return int(math.Floor((r.FieldMM() - x) / r.PitchMM))
}

// RowY is the middle of a row from the top of the field, on either side.
func (r Rear) RowY(row int) float64 { return (float64(row) + 0.5) * r.PitchMM }

// Place is where a screw goes: a cell, from 0, as seen from the room.
type Place struct{ Row, Column int }

// CleatRow is the row that the cleat's screws go into, or two rows, one under the
// other, where one has not enough places.
type CleatRow struct {
	Rows    []int // from 0, from the top
	ScrewMM float64
	Places  []Place
	Safe    int // safe cells under the cleat in these rows
}

// Want is what a row of screws is chosen by.
type Want struct {
	ScrewMM float64 // length of a screw
	ApartMM float64 // from one to the next in a row
	EdgeMM  float64 // from a screw to the edge of the cleat above or below it
	Count   int
}

// ChooseRow returns the row, among those 60 to 160 mm below the top, with most
// safe cells under the cleat, then the one nearest to 90 mm, and places for a
// number of screws in it, the ends of the cleat first and the others even
// between them. Where no row has that many places it takes two, one under the
// other, if the cleat is high enough for both; it reports false where these have
// not enough either.
func (r Rear) ChooseRow(w Want) (CleatRow, bool) {
	best := r.best(w, 1)
	if len(best.Places) < w.Count && r.PitchMM+2*w.EdgeMM <= halfHighMM {
		best = r.best(w, 2)
	}
	if len(best.Places) < w.Count {
		return best, false
	}
	best.Places = spread(best.Places, w.Count)
	return best, true
}

// best is the choice of so many rows with all their places.
func (r Rear) best(w Want, deep int) CleatRow {
	best := CleatRow{ScrewMM: w.ScrewMM}
	off := math.Inf(1)
	for row := 0; row+deep <= r.Grid.Rows; row++ {
		if r.RowY(row) < rowFromMM || r.RowY(row+deep-1) > rowToMM {
			continue
		}
		got := CleatRow{ScrewMM: w.ScrewMM}
		for i := range deep {
			safe := r.safe(row+i, w.ScrewMM)
			got.Rows, got.Safe = append(got.Rows, row+i), got.Safe+len(safe)
			got.Places = append(got.Places, r.apart(safe, row+i, w.ApartMM)...)
		}
		away := math.Abs((r.RowY(row)+r.RowY(row+deep-1))/2 - rowWantedMM)
		if len(best.Rows) == 0 || got.Safe > best.Safe || got.Safe == best.Safe && away < off {
			best, off = got, away
		}
	}
	return best
}

// safe lists the safe columns of a row whose middle lies under the cleat. A block
// too narrow to keep clear of its joints has no safe place.
func (r Rear) safe(row int, screwMM float64) []int {
	var all []int
	end := math.Min(cleatEndMM, r.FieldMM()/4) + screwEndMM
	for column := range r.Grid.Columns {
		x := r.FrontX(column)
		if x < end || x > r.FieldMM()-end || r.BlockMM < 2*jointClearMM {
			continue
		}
		if r.Mark(row, column, screwMM) == Safe {
			all = append(all, column)
		}
	}
	return all
}

// apart keeps the columns that are far enough from the one before.
func (r Rear) apart(columns []int, row int, apartMM float64) []Place {
	var all []Place
	for _, c := range columns {
		if len(all) == 0 || float64(c-all[len(all)-1].Column)*r.PitchMM >= apartMM {
			all = append(all, Place{row, c})
		}
	}
	return all
}

// spread takes so many of the places, as even as they allow, with the ends.
func spread(all []Place, screws int) []Place {
	if screws <= 1 {
		return all[:screws]
	}
	slices.SortFunc(all, func(a, b Place) int {
		return cmp.Or(cmp.Compare(a.Column, b.Column), cmp.Compare(a.Row, b.Row))
	})
	picked := make([]Place, screws)
	for i := range picked {
		picked[i] = all[i*(len(all)-1)/(screws-1)]
	}
	return picked
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
