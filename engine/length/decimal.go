package length

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
)

// ErrNumber says that a text is no number, with or without marks for thousands.
var ErrNumber = errors.New("is not a number in plain digits")

// AmbiguousError says that a number can be read in two ways: 1,200 is 1200 to
// some and 1.2 to others.
type AmbiguousError struct{ Whole, Decimal string }

// Error names both readings and the way out.
func (e *AmbiguousError) Error() string {
	return fmt.Sprintf("may be %s or %s: write no mark for thousands, and a point before decimals", e.Whole, e.Decimal)
}

// Decimal reads a number without a sign as people write it, and returns it in
// plain digits with a decimal point: "1 200", "1.200.000", "1 200,5", "1.200,5"
// and "1,200.5" are 1200, 1200000 and three times 1200.5.
//
// Digits in groups of three may be kept apart by spaces of any kind or by points
// or commas. A single point stands before decimals, as in files, and so does a
// single comma, unless three digits follow it and nothing else tells which it is:
// that is an *AmbiguousError. Everything else is ErrNumber.
func Decimal(text string) (string, error) {
	s := strings.TrimSpace(PlainSpaces(text))
	mark := decimalMark(s)
	whole, frac := s, ""
	if mark != "" {
		i := strings.LastIndex(s, mark)
		whole, frac = s[:i], s[i+1:]
	}
	digits, ok := ungrouped(whole)
	if !ok || digits+frac == "" || strings.Trim(frac, "0123456789") != "" {
		return "", ErrNumber
	}
	if mark == "," && digits == whole && inThrees([]string{digits, frac}) {
		decimal := strings.TrimRight(strings.TrimRight(digits+"."+frac, "0"), ".")
		return "", &AmbiguousError{Whole: digits + frac, Decimal: decimal}
	}
	if digits == "" {
		digits = "0"
	}
	if frac == "" {
		return digits, nil
	}
	return digits + "." + frac, nil
}

// decimalMark is the mark before the decimals: the last of two kinds, or the only
// one; one that comes more than once keeps groups apart.
func decimalMark(s string) string {
	i := strings.LastIndexAny(s, ".,")
	if i < 0 || strings.Count(s, s[i:i+1]) > 1 {
		return ""
	}
	return s[i : i+1]
}

// ungrouped takes the marks out of a whole number, whose groups have three digits
// each and are kept apart by one kind of mark.
func ungrouped(s string) (digits string, ok bool) {
	if strings.Trim(s, "0123456789") == "" {
		return s, true
	}
	for _, mark := range []string{" ", ".", ","} {
		groups := strings.Split(s, mark)
		if len(groups) > 1 {
			return strings.Join(groups, ""), inThrees(groups)
		}
	}
	return "", false
}

func inThrees(groups []string) bool {
	for i, g := range groups {
		if !allDigits(g) || i == 0 && (len(g) > 3 || g[0] == '0') || i > 0 && len(g) != 3 {
			return false
		}
	}
	return true
}

func allDigits(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// PlainSpaces makes plain spaces of all others: those that do not break a line,
// thin ones and those as wide as a digit come along with pasted text.
func PlainSpaces(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Zs, r) {
			return ' '
		}
		return r
	}, text)
}
