package wall

import (
	"math"

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
	apartMM        = 60.0 // between neighbouring screws: ten diameters of a No. 14
	fallbackLessMM = 3.0  // the short screws stay this much inside the backer
)

// cleatScrewsMM are the lengths in a shop, from short; common practice.
func cleatScrewsMM() []float64 { return []float64{16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120} }

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

// Mark says what a screw of a length meets in a cell.
func (r Rear) Mark(row, column int, screwMM float64) Cell {
	h := r.HeightsMM[r.Grid.At(row, column)]
	behind := r.CleatMM + r.BackerMM
	switch {
	case h == 0 && screwMM <= behind-voidOverTipMM:
		return Safe
	case h == 0:
		return Void
	case screwMM <= behind+h-overTipMM:
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

// CleatRow is the row that the cleat's screws go into.
type CleatRow struct {
	Row     int // from 0, from the top
	ScrewMM float64
	Columns []int // of the screws, from 0, as seen from the room
	Safe    []int // of all safe cells under the cleat
	YMM     float64
}

// ChooseRow returns the row, among those 60 to 160 mm below the top, with most
// safe cells under the cleat, then the one nearest to 90 mm; and places for a
// number of screws in it, the ends of the cleat first and the others even
// between them. It reports false where no row has that many places.
func (r Rear) ChooseRow(screwMM float64, screws int) (CleatRow, bool) {
	best := CleatRow{Row: -1, ScrewMM: screwMM}
	for row := range r.Grid.Rows {
		y := r.RowY(row)
		if y < rowFromMM || y > rowToMM {
			continue
		}
		safe := r.safe(row, screwMM)
		nearer := math.Abs(y-rowWantedMM) < math.Abs(best.YMM-rowWantedMM)
		if best.Row < 0 || len(safe) > len(best.Safe) || len(safe) == len(best.Safe) && nearer {
			best.Row, best.Safe, best.YMM = row, safe, y
		}
	}
	best.Columns = r.spread(best.Safe, screws)
	return best, len(best.Columns) == screws
}

// safe lists the safe cells of a row whose middle lies under the cleat. A block
// too narrow to keep clear of its joints has no safe place.
func (r Rear) safe(row int, screwMM float64) []int {
	var all []int
	end := math.Min(cleatEndMM, r.FieldMM()/4)
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

// spread picks columns that are far enough from one another, as even as the safe
// ones allow: first as many as fit, then those nearest to even steps.
func (r Rear) spread(safe []int, screws int) []int {
	var fit []int
	for _, c := range safe {
		if len(fit) == 0 || float64(c-fit[len(fit)-1])*r.PitchMM >= apartMM {
			fit = append(fit, c)
		}
	}
	if len(fit) < screws || screws < 1 {
		return fit[:min(len(fit), max(0, screws))]
	}
	if screws == 1 {
		return fit[len(fit)/2 : len(fit)/2+1]
	}
	picked := make([]int, screws)
	for i := range picked {
		picked[i] = fit[i*(len(fit)-1)/(screws-1)]
	}
	return picked
}
