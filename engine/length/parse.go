package length

import (
	"errors"
	"fmt"
	"math/big"
	"strings"
)

// longestText bounds what Parse reads; no sensible length is longer.
const longestText = 48

// maxNM bounds every length: ten kilometres, far beyond any wall and far from
// the end of int64.
const maxNM = 10_000 * nmPerM

// Errors of Parse. They are wrapped with the text that was read. What can be read
// in two ways is an *AmbiguousError.
var (
	ErrEmpty   = errors.New("is empty")
	ErrSyntax  = errors.New("is not a length: write it like 38 mm, 1.2 m, 1 1/2 in or 6' 2\"")
	ErrUnit    = errors.New("has no unit: add mm, cm, m, in or ft")
	ErrTooLong = errors.New("is too long")
)

// Parse reads a length as people write it: "38", "38mm", "3.8 cm", "1.2 m",
// `1-1/2"`, "1 1/2 in", "1.5in", `6' 2 1/2"`, "6 ft 2 in", "1 1/2 Zoll". Numbers are those of
// Decimal, with marks for thousands and a decimal comma. A number without a unit
// takes the unit bare.
func Parse(text string, bare Notation) (Length, error) { return parse(text, &bare) }

// ParseExact reads a length as files hold it: like Parse, but a number without
// a unit is refused with ErrUnit.
func ParseExact(text string) (Length, error) { return parse(text, nil) }

func parse(text string, bare *Notation) (Length, error) {
	fail := func(err error) (Length, error) {
		if len(text) > longestText {
			text = text[:longestText] + "…"
		}
		return Length{}, fmt.Errorf("%q %w", text, err)
	}
	if len(text) > longestText {
		return fail(ErrTooLong)
	}
	s := strings.ToLower(strings.TrimSpace(PlainSpaces(text)))
	if s == "" {
		return fail(ErrEmpty)
	}
	s, negative := strings.CutPrefix(strings.ReplaceAll(s, "−", "-"), "-")
	total := new(big.Rat)
	notation := InMM
	for terms := 0; s != ""; terms++ {
		number, rest := cutNumber(s)
		value, err := readNumber(number)
		if err != nil {
			return fail(err)
		}
		n, unit, rest, ok := cutUnit(rest)
		switch {
		case !ok:
			return fail(ErrSyntax)
		case unit == 0 && bare == nil:
			return fail(ErrUnit)
		case unit == 0 && terms == 1 && notation == InFeet:
			n, unit = InInch, nmPerInch // 6' 2
		case unit == 0:
			n, unit = *bare, unitOf(*bare)
		}
		switch {
		case terms == 0:
			notation = n
		case terms == 1 && notation == InFeet && n == InInch:
		default:
			return fail(ErrSyntax)
		}
		total.Add(total, value.Mul(value, new(big.Rat).SetInt64(unit)))
		s = rest
	}
	nm, err := nearest(total)
	if err != nil {
		return fail(err)
	}
	if negative {
		nm = -nm
	}
	return Nanometres(nm, notation), nil
}

// unitOf is the unit that a bare number takes in a notation: feet and inches
// are typed as inches.
func unitOf(n Notation) int64 {
	switch n {
	case InCM:
		return nmPerCM
	case InM:
		return nmPerM
	case InInch, InFeet:
		return nmPerInch
	default:
		return nmPerMM
	}
}

func nearest(r *big.Rat) (int64, error) {
	num := new(big.Int).Lsh(r.Num(), 1)
	num.Add(num, r.Denom())
	num.Quo(num, new(big.Int).Lsh(r.Denom(), 1))
	if !num.IsInt64() || num.Int64() > maxNM {
		return 0, ErrTooLong
	}
	return num.Int64(), nil
}

// cutNumber splits the digits, points, commas, slashes, inner dashes and
// spaces of a number from what follows.
func cutNumber(s string) (number, rest string) {
	i := 0
	for i < len(s) && strings.IndexByte("0123456789.,/- ", s[i]) >= 0 {
		i++
	}
	return strings.TrimSpace(s[:i]), s[i:]
}

type unitWord struct {
	word     string
	notation Notation
	unit     int64
}

// unitWords are tried in this order, so that a longer word comes before its
// own beginning.
func unitWords() []unitWord {
	return []unitWord{
		{"mm", InMM, nmPerMM}, {"cm", InCM, nmPerCM},
		{"inches", InInch, nmPerInch}, {"inch", InInch, nmPerInch}, {"in", InInch, nmPerInch}, {"zoll", InInch, nmPerInch},
		{`"`, InInch, nmPerInch}, {"″", InInch, nmPerInch}, {"”", InInch, nmPerInch}, {"''", InInch, nmPerInch},
		{"feet", InFeet, nmPerFoot}, {"foot", InFeet, nmPerFoot}, {"ft", InFeet, nmPerFoot}, {"fuß", InFeet, nmPerFoot},
		{"'", InFeet, nmPerFoot}, {"′", InFeet, nmPerFoot}, {"’", InFeet, nmPerFoot},
		{"m", InM, nmPerM},
	}
}

// cutUnit reads a unit word; unit is 0 when s is at its end.
func cutUnit(s string) (n Notation, unit int64, rest string, ok bool) {
	if s == "" {
		return 0, 0, "", true
	}
	for _, u := range unitWords() {
		if rest, found := strings.CutPrefix(s, u.word); found {
			rest = strings.TrimSpace(rest)
			if rest != "" && (rest[0] < '0' || rest[0] > '9') {
				return 0, 0, "", false
			}
			return u.notation, u.unit, rest, true
		}
	}
	return 0, 0, "", false
}

// readNumber reads what Decimal reads, and "1/2", "1 1/2", "1-1/2".
func readNumber(s string) (*big.Rat, error) {
	before, den, isFraction := strings.Cut(s, "/")
	if !isFraction {
		return readDecimal(s)
	}
	before = strings.TrimRight(before, " ")
	i := strings.LastIndexAny(before, " -")
	part, err := readFraction(before[i+1:], strings.TrimLeft(den, " "))
	if i < 0 || err != nil {
		return part, err
	}
	whole, err := readDecimal(strings.TrimRight(before[:i+1], " -"))
	// "1 200/3" is no number of thirds of which anybody can be sure.
	if err != nil || !whole.IsInt() || part.Cmp(big.NewRat(1, 1)) >= 0 {
		return nil, ErrSyntax
	}
	return whole.Add(whole, part), nil
}

func readFraction(num, den string) (*big.Rat, error) {
	if !allDigits(num) || !allDigits(den) || strings.Trim(den, "0") == "" {
		return nil, ErrSyntax
	}
	r, ok := new(big.Rat).SetString(num + "/" + den)
	if !ok {
		return nil, ErrSyntax
	}
	return r, nil
}

func readDecimal(s string) (*big.Rat, error) {
	plain, err := Decimal(s)
	if errors.Is(err, ErrNumber) {
		return nil, ErrSyntax
	}
	if err != nil {
		return nil, err
	}
	r, ok := new(big.Rat).SetString(plain)
	if !ok {
		return nil, ErrSyntax
	}
	return r, nil
}

// MarshalText writes the exact text, for files.
func (l Length) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads a length with its unit, from files.
func (l *Length) UnmarshalText(text []byte) error {
	v, err := ParseExact(string(text))
	if err != nil {
		return err
	}
	*l = v
	return nil
}
