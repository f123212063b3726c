package wood

import "blockfield/engine/length"

// System is the trade in which a section has its name.
type System string

// The systems in which timber is sold.
const (
	DressedSoftwood System = "dressed softwood" // North American, dry, surfaced four sides
	PlanedMetric    System = "planed metric"    // European, planed all round
	HardwoodBoard   System = "hardwood board"   // North American, by quarters of an inch
	PlanedSquare    System = "planed square"    // what block shops buy or plane themselves
)

// Section is a name on a shelf and what a calliper is likely to find. Whatever
// the table says, sections are to be measured before anything is cut.
type Section struct {
	System    System
	Nominal   string
	Thickness length.Length
	Width     length.Length // zero where boards come in random widths
	Source    string
}

// Square reports whether blocks can be cut off the section as it is.
func (s Section) Square() bool { return s.Thickness.Same(s.Width) }

const (
	ps20     = "PS 20, American Softwood Lumber Standard, dressed dry sizes (19 % moisture or less)"
	nhla     = "NHLA grading rules, thickness surfaced two sides, as quoted by two trade pages"
	practice = "common practice, no source"
)

// Sections returns all sections, system by system, thin ones first.
func Sections() []Section {
	var out []Section
	for _, s := range []struct {
		nominal      string
		thick, width int64 // 64ths of an inch
	}{
		{"1×2", 48, 96},
		{"1×3", 48, 160},
		{"1×4", 48, 224},
		{"1×6", 48, 352},
		{"1×8", 48, 464},
		{"1×10", 48, 592},
		{"1×12", 48, 720},
		{"2×2", 96, 96},
		{"2×3", 96, 160},
		{"2×4", 96, 224},
		{"2×6", 96, 352},
		{"2×8", 96, 464},
		{"2×10", 96, 592},
		{"2×12", 96, 720},
		{"4×4", 224, 224},
	} {
		out = append(out, Section{DressedSoftwood, s.nominal, length.Sixtyfourths(s.thick), length.Sixtyfourths(s.width), ps20})
	}
	for _, s := range []struct {
		nominal      string
		thick, width int64 // micrometres
	}{
		{"18 × 44", 18_000, 44_000},
		{"18 × 69", 18_000, 69_000},
		{"18 × 94", 18_000, 94_000},
		{"20.5 × 44", 20_500, 44_000},
		{"44 × 69", 44_000, 69_000},
		{"44 × 94", 44_000, 94_000},
		{"63 × 63", 63_000, 63_000},
	} {
		out = append(out, Section{PlanedMetric, s.nominal, length.Micrometres(s.thick), length.Micrometres(s.width), practice})
	}
	for _, s := range []struct {
		nominal string
		thick   int64 // 64ths of an inch
	}{
		{"4/4", 52},
		{"5/4", 68},
		{"6/4", 84},
		{"8/4", 112},
		{"12/4", 176},
		{"16/4", 240},
	} {
		out = append(out, Section{HardwoodBoard, s.nominal, length.Sixtyfourths(s.thick), length.Length{}, nhla})
	}
	for _, s := range []struct {
		nominal string
		side    length.Length
	}{
		{"sawn 38 × 38, planed", length.MM(34)},
		{"6/4 board, planed", length.Sixtyfourths(88)},
		{"hardwood sawn 40 × 40, planed", length.MM(36)},
		{"planed 38 × 38", length.MM(38)},
		{"sawn 50 × 50, planed", length.MM(44)},
		{"8/4 board, planed", length.Sixtyfourths(112)},
	} {
		out = append(out, Section{PlanedSquare, s.nominal, s.side, s.side, practice})
	}
	return out
}

// StockLength is a length in which sticks and boards are sold.
type StockLength struct {
	Length length.Length
	Source string
}

// StockLengths returns the usual lengths of sticks, metric ones first, each
// family from short to long.
func StockLengths() []StockLength {
	var out []StockLength
	for _, mm := range []int64{1800, 2000, 2400} {
		out = append(out, StockLength{length.MM(mm), practice})
	}
	// Nordic sawn timber comes in steps of 300 mm.
	for mm := int64(2700); mm <= 5400; mm += 300 {
		out = append(out, StockLength{length.MM(mm), "Nordic sawn lengths, Finnish timber information"})
	}
	for _, feet := range []int64{6, 8, 10, 12, 16} {
		out = append(out, StockLength{length.Sixtyfourths(feet * 12 * 64), "PS 20 whole feet; the retail choice is common practice"})
	}
	return out
}
