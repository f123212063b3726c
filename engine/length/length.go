// Package length holds lengths exactly as people in a workshop write them.
//
// A Length is a whole number of nanometres, so that 1/64 in (396,875 nm) and
// 0.1 mm are both exact, together with the notation it was written in. The
// text form is what a person would write, "36.2 mm" or "1 1/2 in", and it is
// always exact: Parse(l.String()) gives l back, digit for digit. A value that
// cannot be written exactly in its notation (a third of an inch) changes its
// notation to millimetres instead of losing nanometres.
//
// Lengths are added and multiplied by counts; they are never multiplied with
// one another. Areas and volumes are float64 in m² and m³, from Metres.
package length

import (
	"cmp"
	"math"
	"strconv"
	"strings"
)

// Nanometres in the units that people write.
const (
	nmPerMM   = 1_000_000
	nmPerCM   = 10 * nmPerMM
	nmPerM    = 1000 * nmPerMM
	nmPerInch = 25_400_000 // international inch, exact since 1959
	nmPerFoot = 12 * nmPerInch
	nmPer64th = nmPerInch / 64
	// nmPerInchStep is the finest step that five decimals of an inch can hold
	// exactly.
	nmPerInchStep = nmPerInch / 100_000
)

// Notation is the unit in which a length was written.
type Notation uint8

// The notations in which a length can be written.
const (
	InMM   Notation = iota // "36.2 mm"
	InCM                   // "3.62 cm"
	InM                    // "1.2 m"
	InInch                 // "1 1/2 in"
	InFeet                 // "6' 2 1/2\""
)

// Length is a signed distance; the zero value is 0 mm. Two lengths of the same
// size but of different notations are not == ; compare them with Cmp or Same.
type Length struct {
	nm       int64
	notation Notation
}

// MM returns a whole number of millimetres.
func MM(mm int64) Length { return Length{nm: mm * nmPerMM} }

// Micrometres returns a whole number of micrometres, written in millimetres.
func Micrometres(um int64) Length { return Length{nm: um * 1000} }

// ToTenth returns the length of so many millimetres to a tenth of one, as a tape shows it.
func ToTenth(mm float64) Length { return Micrometres(int64(math.Round(mm*10)) * 100) }

// Nanometres returns a length of nm nanometres, written in n where that is
// exact and in millimetres where it is not.
func Nanometres(nm int64, n Notation) Length {
	return Length{nm: nm, notation: exactNotation(nm, n)}
}

// Sixtyfourths returns a number of 64ths of an inch, written in inches.
func Sixtyfourths(n int64) Length { return Length{nm: n * nmPer64th, notation: InInch} }

func exactNotation(nm int64, n Notation) Notation {
	if (n == InInch || n == InFeet) && nm%nmPer64th != 0 {
		if nm%nmPerInchStep != 0 {
			return InMM
		}
		return InInch
	}
	return n
}

// Nanometres returns the size of l in nanometres.
func (l Length) Nanometres() int64 { return l.nm }

// Notation returns the unit in which l is written.
func (l Length) Notation() Notation { return l.notation }

// Metres returns the size of l in metres, for areas, volumes and formulas.
func (l Length) Metres() float64 { return float64(l.nm) / nmPerM }

// Metres returns the sizes of several lengths in metres.
func Metres(all []Length) []float64 {
	out := make([]float64, len(all))
	for i, l := range all {
		out[i] = l.Metres()
	}
	return out
}

// Millimetres returns the size of l in millimetres, for drawings.
func (l Length) Millimetres() float64 { return float64(l.nm) / nmPerMM }

// Add returns l + m in the notation of l.
func (l Length) Add(m Length) Length { return Nanometres(l.nm+m.nm, l.notation) }

// Sub returns l − m in the notation of l.
func (l Length) Sub(m Length) Length { return Nanometres(l.nm-m.nm, l.notation) }

// Times returns n times l.
func (l Length) Times(n int) Length { return Nanometres(l.nm*int64(n), l.notation) }

// Half returns half of l, rounded towards zero by at most half a nanometre.
func (l Length) Half() Length { return Nanometres(l.nm/2, l.notation) }

// Cmp compares sizes: −1, 0 or +1 as l is shorter than, as long as or longer
// than m.
func (l Length) Cmp(m Length) int { return cmp.Compare(l.nm, m.nm) }

// Same reports whether l and m have the same size, whatever their notation.
func (l Length) Same(m Length) bool { return l.nm == m.nm }

// IsZero reports whether l has no length.
func (l Length) IsZero() bool { return l.nm == 0 }

// Max returns the longest of its arguments.
func Max(first Length, rest ...Length) Length {
	for _, l := range rest {
		if l.nm > first.nm {
			first = l
		}
	}
	return first
}

// Round returns the number of whole pitches nearest to l, halves away from
// zero. It panics when pitch is not positive.
func (l Length) Round(pitch Length) int {
	if pitch.nm <= 0 {
		panic("length: internal error: pitch not positive")
	}
	half := pitch.nm / 2
	if l.nm < 0 {
		half = -half
	}
	return int((l.nm + half) / pitch.nm)
}

// CeilMM returns l rounded up to a whole millimetre.
func (l Length) CeilMM() Length {
	mm := l.nm / nmPerMM
	if l.nm > mm*nmPerMM {
		mm++
	}
	return MM(mm)
}

// String returns the exact text of l in its own notation.
func (l Length) String() string {
	switch l.notation {
	case InCM:
		return decimal(l.nm, nmPerCM) + " cm"
	case InM:
		return decimal(l.nm, nmPerM) + " m"
	case InInch:
		if l.nm%nmPer64th == 0 {
			return fraction(l.nm/nmPer64th, 64) + " in"
		}
		return decimal(l.nm/nmPerInchStep, 100_000) + " in"
	case InFeet:
		return feet(l.nm / nmPer64th)
	default:
		return decimal(l.nm, nmPerMM) + " mm"
	}
}

// decimal writes n/unit exactly; unit is a power of ten.
func decimal(n, unit int64) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, rest := n/unit, n%unit
	text := sign + strconv.FormatInt(whole, 10)
	if rest == 0 {
		return text
	}
	digits := len(strconv.FormatInt(unit, 10)) - 1
	frac := strconv.FormatInt(rest, 10)
	frac = strings.Repeat("0", digits-len(frac)) + frac
	return text + "." + strings.TrimRight(frac, "0")
}

// fraction writes n/d with a whole part and a reduced fraction; d is a power
// of two.
func fraction(n, d int64) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, rest := n/d, n%d
	if rest == 0 {
		return sign + strconv.FormatInt(whole, 10)
	}
	for rest%2 == 0 {
		rest, d = rest/2, d/2
	}
	part := strconv.FormatInt(rest, 10) + "/" + strconv.FormatInt(d, 10)
	if whole == 0 {
		return sign + part
	}
	return sign + strconv.FormatInt(whole, 10) + " " + part
}

func feet(n64 int64) string {
	sign := ""
	if n64 < 0 {
		sign, n64 = "-", -n64
	}
	const per = 12 * 64
	return sign + strconv.FormatInt(n64/per, 10) + "' " + fraction(n64%per, 64) + `"`
}
