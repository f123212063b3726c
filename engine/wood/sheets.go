package wood

import "blockfield/engine/length"

// Sheet is a board for backers.
type Sheet struct {
	Name        string
	Thicknesses []length.Length // as sold, thin ones first
	Width       length.Length   // of a whole sheet
	Length      length.Length
	DensityKgM3 float64
	Source      string
}

// Sheets returns the boards that the shop glues blocks on.
//
// Softwood plywood is heavier in industry guides (about 577 kg/m³) and specific
// gravities from 0.4 to 0.6 are printed for it; birch plywood is sold with 640
// to 700 kg/m³. The weighed panel decides.
func Sheets() []Sheet {
	return []Sheet{
		{
			Name:        "softwood ply",
			Thicknesses: []length.Length{length.MM(9), length.Sixtyfourths(30), length.MM(12), length.MM(15), length.MM(18), length.Sixtyfourths(46), length.MM(21), length.MM(25)},
			Width:       length.MM(1220), Length: length.MM(2440),
			DensityKgM3: 520,
			Source:      "size: common trade sheet of 4 × 8 ft; density: " + practice,
		},
		{
			Name:        "birch ply",
			Thicknesses: []length.Length{length.MM(9), length.MM(12), length.MM(15), length.MM(18), length.MM(21), length.MM(24)},
			Width:       length.MM(1220), Length: length.MM(2440),
			DensityKgM3: 680,
			Source:      "size: common trade sheet of 4 × 8 ft; density: " + practice,
		},
	}
}

// FindSheet returns the board with a name.
func FindSheet(name string) (Sheet, bool) {
	for _, s := range Sheets() {
		if s.Name == name {
			return s, true
		}
	}
	return Sheet{}, false
}

// SheetSize is a size in which whole sheets are sold.
type SheetSize struct {
	Width, Length length.Length
	Source        string
}

// SheetSizes returns the usual sizes of whole sheets.
func SheetSizes() []SheetSize {
	const inch = 64
	return []SheetSize{
		{length.MM(1220), length.MM(2440), practice},
		{length.MM(1250), length.MM(2500), practice},
		{length.MM(1525), length.MM(1525), practice},
		{length.Sixtyfourths(48 * inch), length.Sixtyfourths(96 * inch), "PS 1 and common trade sizes"},
	}
}

// PlyRange is how thick a North American plywood of a label may be.
type PlyRange struct {
	Label    string // performance category, in inches
	Min, Max length.Length
}

// PlyRanges returns the thicknesses that PS 1 allows for unsanded and
// touch-sanded panels at 9 % moisture, as quoted by an industry association.
// A "3/4" panel may be anything from 18.3 to 19.8 mm.
func PlyRanges() []PlyRange {
	var out []PlyRange
	for _, r := range []struct {
		label    string
		min, max int64 // thousandths of an inch
	}{
		{"1/4", 219, 281},
		{"11/32", 313, 375},
		{"3/8", 344, 406},
		{"7/16", 406, 469},
		{"15/32", 438, 500},
		{"1/2", 469, 531},
		{"19/32", 563, 625},
		{"5/8", 594, 656},
		{"23/32", 688, 750},
		{"3/4", 719, 781},
		{"13/16", 781, 844},
		{"7/8", 831, 919},
		{"1", 950, 1050},
		{"1-1/8", 1069, 1181},
		{"1-1/4", 1188, 1313},
	} {
		out = append(out, PlyRange{r.label, thou(r.min), thou(r.max)})
	}
	return out
}

// thou returns thousandths of an inch, 25,400 nm each, exact.
func thou(n int64) length.Length { return length.Nanometres(n*25_400, length.InInch) }
