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

// Errors of Parse. They are wrapped with the text that was read.
var (
	ErrEmpty     = errors.New("is empty")
	ErrSyntax    = errors.New("is not a length: write it like 38 mm, 1.2 m, 1 1/2 in or 6' 2\"")
	ErrUnit      = errors.New("has no unit: add mm, cm, m, in or ft")
	ErrThousands = errors.New("has a comma that may mean a decimal or a thousand: leave it out or use a point")
	ErrTooLong   = errors.New("is too long")
)

// Parse reads a length as people write it: "38", "38mm", "3.8 cm", "1.2 m",
// `1-1/2"`, "1 1/2 in", "1.5in", `6' 2 1/2"`, "6 ft 2 in". A decimal comma is
// read as a point. A number without a unit takes the unit bare.
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

// PlainSpaces makes plain spaces of those that do not break a line and of thin
// ones: they come along with pasted text.
func PlainSpaces(text string) string {
	return strings.Map(func(r rune) rune {
		switch r {
		case '\u00a0', '\u202f', '\u2009':
			return ' '
		}
		return r
	}, text)
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
		{"inches", InInch, nmPerInch}, {"inch", InInch, nmPerInch}, {"in", InInch, nmPerInch},
		{`"`, InInch, nmPerInch}, {"″", InInch, nmPerInch}, {"”", InInch, nmPerInch}, {"''", InInch, nmPerInch},
		{"feet", InFeet, nmPerFoot}, {"foot", InFeet, nmPerFoot}, {"ft", InFeet, nmPerFoot},
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

// readNumber reads "12", "1.5", "1,5", "1/2", "1 1/2" and "1-1/2".
func readNumber(s string) (*big.Rat, error) {
	whole, frac, mixed := strings.Cut(strings.ReplaceAll(s, "-", " "), " ")
	frac = strings.TrimSpace(frac)
	if !mixed {
		if strings.Contains(whole, "/") {
			return readFraction(whole)
		}
		return readDecimal(whole)
	}
	if !allDigits(whole) {
		return nil, ErrSyntax
	}
	w, err := readDecimal(whole)
	if err != nil {
		return nil, err
	}
	f, err := readFraction(frac)
	if err != nil {
		return nil, err
	}
	return w.Add(w, f), nil
}

func readFraction(s string) (*big.Rat, error) {
	num, den, ok := strings.Cut(s, "/")
	num, den = strings.TrimSpace(num), strings.TrimSpace(den)
	if !ok || !allDigits(num) || !allDigits(den) || strings.Trim(den, "0") == "" {
		return nil, ErrSyntax
	}
	r, ok := new(big.Rat).SetString(num + "/" + den)
	if !ok {
		return nil, ErrSyntax
	}
	return r, nil
}

func readDecimal(s string) (*big.Rat, error) {
	if strings.Count(s, ",") > 1 || strings.Count(s, ",") == 1 && strings.Contains(s, ".") {
		return nil, ErrThousands
	}
	if whole, frac, ok := strings.Cut(s, ","); ok {
		if len(frac) == 3 && whole != "0" {
			return nil, ErrThousands
		}
		s = whole + "." + frac
	}
	whole, frac, point := strings.Cut(s, ".")
	if whole+frac == "" || whole != "" && !allDigits(whole) || point && frac != "" && !allDigits(frac) {
		return nil, ErrSyntax
	}
	r, ok := new(big.Rat).SetString("0" + whole + "." + frac + "0")
	if !ok {
		return nil, ErrSyntax
	}
	return r, nil
}

func allDigits(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
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
