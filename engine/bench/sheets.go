package bench

import (
	"fmt"

	"blockfield/engine/length"
	"blockfield/engine/wood"
)

// A backer is cut larger than its field and trimmed after gluing, and a new
// sheet's edges are not square. Common practice, no source.
const (
	backerOversizeMM = 10 // each way, trimmed off after gluing
	backerKerfMM     = 3  // of the saw that cuts sheets
	sheetEdgesMM     = 10 // each way off a sheet, both edges together
)

// CutBacker is the side of a backer as it is cut out of the sheet, for a side of
// its field.
func CutBacker(field length.Length) length.Length { return field.Add(length.MM(backerOversizeMM)) }

// sheets counts whole sheets. A sheet is cut into backers of one size; backers
// of the same size from several groups share sheets.
func (b *Bill) sheets(jobs []job) error {
	type backer struct {
		sheet             string
		thick, wide, high int64
	}
	panels := map[backer]int{}
	var order []backer
	fits := map[backer]int{}
	needs := map[backer]int{} // index into b.Sheets
	pieces := map[backer]int{}
	for i, j := range jobs {
		sheet, ok := wood.FindSheet(j.design.Backer.Sheet)
		if !ok {
			return fmt.Errorf("%s.backer.sheet: unknown sheet %q", j.path, j.design.Backer.Sheet)
		}
		key := backer{
			sheet.Name, j.design.Backer.Thickness.Nanometres(),
			j.built.FieldWidth.Nanometres(), j.built.FieldHeight.Nanometres(),
		}
		if _, ok := panels[key]; !ok {
			order = append(order, key)
			fits[key] = perSheet(sheet, j.built.FieldWidth, j.built.FieldHeight)
			pieces[key] = sheetsEach(sheet, j.built.FieldWidth, j.built.FieldHeight)
			needs[key] = b.sheetNeed(sheet.Name, j.design.Backer.Thickness)
		}
		panels[key] += j.panels()
		b.Groups[i].PerSheet = fits[key]
	}
	for _, key := range order {
		need := &b.Sheets[needs[key]]
		if fits[key] == 0 {
			need.TooLarge = true
			need.Count += panels[key] * pieces[key]
			need.PerSheet = 0
			continue
		}
		need.Count += int(ceilDiv(int64(panels[key]), int64(fits[key])))
		if !need.TooLarge && (need.PerSheet == 0 || fits[key] < need.PerSheet) {
			need.PerSheet = fits[key]
		}
	}
	return nil
}

// sheetNeed returns the index of the line for a board, which it adds where it
// is missing.
func (b *Bill) sheetNeed(sheet string, thickness length.Length) int {
	for i, s := range b.Sheets {
		if s.Sheet == sheet && s.Thickness.Same(thickness) {
			return i
		}
	}
	b.Sheets = append(b.Sheets, SheetNeed{Sheet: sheet, Thickness: thickness})
	return len(b.Sheets) - 1
}

// perSheet returns how many backers come out of a sheet, all turned the same
// way, the better of both ways.
func perSheet(sheet wood.Sheet, width, height length.Length) int {
	kerf := length.MM(backerKerfMM)
	w, h := CutBacker(width).Add(kerf), CutBacker(height).Add(kerf)
	across, along := usable(sheet)
	return max(times(across, w)*times(along, h), times(across, h)*times(along, w))
}

// sheetsEach returns how many sheets one backer takes that is larger than a
// sheet and has to be joined.
func sheetsEach(sheet wood.Sheet, width, height length.Length) int {
	w, h := CutBacker(width), CutBacker(height)
	across, along := usable(sheet)
	return min(timesUp(w, across)*timesUp(h, along), timesUp(h, across)*timesUp(w, along))
}

func usable(sheet wood.Sheet) (across, along length.Length) {
	edges := length.MM(sheetEdgesMM)
	return sheet.Width.Sub(edges), sheet.Length.Sub(edges)
}

// times is how many whole parts a length holds.
func times(l, part length.Length) int { return int(l.Nanometres() / part.Nanometres()) }

// timesUp is how many parts it takes to reach a length.
func timesUp(l, part length.Length) int { return int(ceilDiv(l.Nanometres(), part.Nanometres())) }
