package design

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/length"
)

// tidy forgives what a person may well type in a field of one line.
func tidy(f Field, text string) string {
	text = strings.TrimSpace(text)
	switch {
	case strings.HasSuffix(f.Path, "].order"):
		return strings.ToUpper(strings.Map(func(r rune) rune {
			if strings.ContainsRune(" ,;·-", r) {
				return -1
			}
			return r
		}, text))
	case f.Kind == KindText:
		return strings.NewReplacer("\r\n", "\n", "\t", " ").Replace(text)
	default:
		return text
	}
}

// read puts one typed value into v.
func read(f Field, v reflect.Value, text string, u length.Units) *Fault {
	if text == "" && f.Kind != KindText && f.Kind != KindDate {
		if f.Zero == "" {
			return &Fault{Code: EmptyText, Allowed: f.allowedAfter(EmptyText)}
		}
		text = "0"
	}
	code, found := readKind(f, v, text, u)
	if code == "" {
		code, found = faultOf(f, v), shown(text)
		if code == OutOfRange || code == ControlChars {
			found = foundIn(f, v, code) // with the unit that it was read in
		}
	}
	if code == "" {
		return nil
	}
	return &Fault{Code: code, Value: found, Allowed: f.allowedAfter(code)}
}

// readKind reads text as what the field holds, and says what is wrong with it
// and what was found.
func readKind(f Field, v reflect.Value, text string, u length.Units) (Code, any) {
	found := shown(text)
	switch f.Kind {
	case KindLength:
		l, err := length.Parse(text, u.Bare())
		if err != nil {
			return lengthFault(text, err)
		}
		v.Set(reflect.ValueOf(l))
	case KindNumber:
		x, err := readNumber(f, text)
		if err != nil {
			return numberFault(text, err, BadNumber)
		}
		v.SetFloat(x)
	case KindInteger:
		n, err := readWhole(text)
		if err != nil {
			return numberFault(text, err, BadWhole)
		}
		v.SetInt(n)
	case KindAmount:
		if strings.HasPrefix(f.Path, termsPath) {
			text = withoutThousandsMark(text)
		}
		a, err := readAmount(text)
		if err != nil {
			return numberFault(text, err, amountCode(err))
		}
		v.SetInt(int64(a))
	case KindYesNo:
		yes, ok := yesOrNo(text)
		if !ok {
			return UnknownChoice, found
		}
		v.SetBool(yes)
	case KindChoice:
		i := slices.IndexFunc(f.Choices, func(c string) bool { return strings.EqualFold(c, text) })
		if i < 0 {
			return UnknownChoice, found
		}
		v.SetString(f.unlessUsual(f.Choices[i]))
	default:
		v.SetString(text)
	}
	return "", nil
}

func yesOrNo(text string) (yes, ok bool) {
	switch strings.ToLower(text) {
	case "yes", "true", "on":
		return true, true
	case "no", "false", "off":
		return false, true
	}
	return false, false
}

// numberFault is the fault of a text that is no number of its kind, and what it
// says of it.
func numberFault(text string, err error, otherwise Code) (Code, any) {
	switch two, ok := errors.AsType[*length.AmbiguousError](err); {
	case ok:
		return Ambiguous, twoReadings(text, two)
	case errors.Is(err, strconv.ErrRange):
		return OutOfRange, shown(text)
	}
	return otherwise, shown(text)
}

// readNumber reads a number that may carry its unit; temperatures may be typed in
// °F.
func readNumber(f Field, text string) (float64, error) {
	fahrenheit := false
	if f.Unit == "°C" {
		if t, ok := strings.CutSuffix(text, "F"); ok {
			text, fahrenheit = strings.TrimSuffix(t, "°"), true
		}
		text = strings.TrimSuffix(text, "C")
		text = strings.TrimSuffix(text, "°")
	}
	pounds := false
	if f.Unit == "kg" {
		text, pounds = strings.CutSuffix(strings.TrimSuffix(text, "s"), "lb")
	}
	plain, err := signed(strings.TrimSuffix(text, f.Unit))
	if err != nil {
		return 0, err
	}
	x, err := strconv.ParseFloat(plain, 64)
	if err != nil {
		return 0, err
	}
	if fahrenheit {
		x = math.Round((x-32)/1.8*10) / 10
	}
	if pounds {
		x = math.Round(x*kgInPound*10) / 10
	}
	if x == 0 {
		x = 0 // there is one zero, not two
	}
	return x, nil
}

// kgInPound is the international pound, exact.
const kgInPound = 0.45359237

// readWhole reads a whole number; degrees may carry their sign.
func readWhole(text string) (int64, error) {
	plain, err := signed(strings.TrimSuffix(text, "°"))
	if err != nil {
		return 0, err
	}
	return strconv.ParseInt(plain, 10, 64)
}

// termsPath is where what a job costs somebody is typed: sums, while a price book has
// prices of a screw too.
const termsPath = "design.money."

// withoutThousandsMark turns a sum like 12.345 or 12,345 into 12345: no sum has thousandths, so
// the mark before its last three digits stands for thousands, as on the page's own sums.
func withoutThousandsMark(text string) string {
	sum := strings.ReplaceAll(strings.TrimSpace(text), ",", ".")
	digits := strings.TrimLeft(sum, "-−")
	whole, last, found := strings.Cut(digits, ".")
	if !found || len(last) != 3 || strings.Trim(whole+last, "0123456789") != "" || strings.Trim(whole, "0") == "" || len(whole) > 3 {
		return text
	}
	return strings.TrimSuffix(sum, digits) + whole + last
}

func readAmount(text string) (Amount, error) {
	plain, err := signed(text)
	if err != nil {
		return 0, err
	}
	return ParseAmount(plain)
}

// signed is length.Decimal with a sign before it.
func signed(text string) (string, error) {
	s, negative := strings.CutPrefix(strings.ReplaceAll(strings.TrimSpace(text), "−", "-"), "-")
	plain, err := length.Decimal(s)
	if negative {
		plain = "-" + plain
	}
	return plain, err
}
