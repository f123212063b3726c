package length

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Units is the way in which one reader wants to see lengths. It never changes
// a stored value.
type Units string

// The ways of showing lengths.
const (
	Metric Units = "mm"    // millimetres to a tenth
	Inch16 Units = "in/16" // inches to the nearest sixteenth
	Inch32 Units = "in/32" // inches to the nearest thirty-second
)

// inch64 is how goods are sold in inches; nobody reads a tape so.
const inch64 Units = "in/64"

// Bare is the unit that a number without a unit takes.
func (u Units) Bare() Notation {
	if u == Metric || u == "" {
		return InMM
	}
	return InInch
}

// Whole rounds l to whole millimetres; inches are rounded where they are shown.
func (u Units) Whole(l Length) Length {
	if u.Bare() == InInch {
		return l
	}
	return MM(int64(math.Round(l.Millimetres())))
}

// Number writes l without its unit, rounded to what u shows.
func (u Units) Number(l Length) string {
	switch u {
	case Inch16:
		return inches(l.nm, 16)
	case Inch32:
		return inches(l.nm, 32)
	case inch64:
		return inches(l.nm, 64)
	default:
		return decimal(rounded(l.nm, nmPerMM/10), 10)
	}
}

// inches writes the nearest fraction, and in decimals what is too small for one:
// a slack of 0.2 mm is 0.008 in and not 0.
func inches(nm, parts int64) string {
	if nm != 0 && max(nm, -nm) < nmPerInch/parts {
		return decimal(rounded(nm, nmPerInch/1000), 1000)
	}
	return fraction(rounded(nm, nmPerInch/parts), parts)
}

// Sold writes the size of goods as they are called whatever a reader's own units: in
// millimetres or in inches, as it was written. What is sold as 50 mm is no 1 15/16 in.
func Sold(size ...Length) string {
	texts := make([]string, len(size))
	for i, l := range size {
		u := l.trade()
		texts[i] = u.Number(l)
		if i+1 == len(size) || size[i+1].trade() != u {
			texts[i] += " " + u.Word()
		}
	}
	return strings.Join(texts, " × ")
}

// trade is the unit that goods of a length are sold in.
func (l Length) trade() Units {
	if l.notation == InInch || l.notation == InFeet {
		return inch64
	}
	return Metric
}

// Bit writes the bore of a hole as drills are sold: to a tenth of a millimetre or a
// sixty-fourth of an inch.
func (u Units) Bit(l Length) string {
	if u.Bare() == InInch {
		return inch64.Format(l)
	}
	return Metric.Format(l)
}

// Word is the unit that belongs to Number.
func (u Units) Word() string {
	if u.Bare() == InInch {
		return "in"
	}
	return "mm"
}

// Format writes l with its unit, rounded to what u shows.
func (u Units) Format(l Length) string { return u.Number(l) + " " + u.Word() }

// Field writes l for a form field: the exact text where l was written in the
// reader's own units, and the rounded one elsewhere.
func (u Units) Field(l Length) string {
	imperial := l.notation == InInch || l.notation == InFeet
	if imperial == (u.Bare() == InInch) {
		return l.String()
	}
	return u.Format(l)
}

// Area writes an area in m² or ft², to two decimals.
func (u Units) Area(m2 float64) string {
	if u.Bare() == InInch {
		return strconv.FormatFloat(m2/0.09290304, 'f', 1, 64) + " ft²" // (0.3048 m)², exact
	}
	return strconv.FormatFloat(m2, 'f', 2, 64) + " m²"
}

// Mass writes a mass in kg, or in pounds where lengths are in inches.
func (u Units) Mass(kg float64) string {
	if u.Bare() == InInch {
		return fmt.Sprintf("%.0f lb", kg/0.45359237) // international pound, exact
	}
	return fmt.Sprintf("%.1f kg", kg)
}

func rounded(nm, step int64) int64 {
	if nm < 0 {
		return -((-nm + step/2) / step)
	}
	return (nm + step/2) / step
}
