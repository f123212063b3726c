package design

import (
	"math"

	"blockfield/engine/words"
)

// Allowed is what the field takes. Lengths are said in the reader's units,
// rounded inwards so that they can be typed.
func (f Field) Allowed() words.Phrase {
	switch f.Kind {
	case KindLength, KindNumber, KindInteger, KindAmount:
		return f.allowedNumber()
	case KindChoice:
		return oneOf(f.Choices)
	case KindYesNo:
		return words.Phrase{Key: "allowed/yes-no"}
	case KindDate:
		return words.Phrase{Key: "allowed/day"}
	case KindCode:
		return words.Phrase{Key: "allowed/code"}
	case KindCurrency:
		return words.Phrase{Key: "allowed/currency"}
	case KindText:
		return phrase("allowed/chars", "n", count(f.MaxChars))
	default:
		return f.allowedCount()
	}
}

func (f Field) allowedNumber() words.Phrase {
	if len(f.Choices) > 0 {
		return oneOf(f.Choices)
	}
	low, high := f.limits()
	key := "allowed/range"
	if f.Kind == KindInteger {
		key = "allowed/whole"
	}
	all := phrase(key, "low", low, "high", high)
	if f.Zero != "" {
		all = phrase("allowed/or-zero", "range", all, "zero", f.Zero)
	}
	return all
}

// limits are the ends of the range, as words says them.
func (f Field) limits() (low, high any) {
	switch f.Kind {
	case KindLength:
		return words.Least(millimetres(f.Min)), words.Most(millimetres(f.Max))
	case KindAmount:
		return amountLimit(f.Min), amountLimit(f.Max)
	}
	return words.Quantity{Value: f.Min, Unit: f.Unit}, words.Quantity{Value: f.Max, Unit: f.Unit}
}

// amountLimit says a limit of an amount: large ones in groups of digits.
func amountLimit(v float64) any {
	if v == math.Trunc(v) {
		return int(v)
	}
	return words.Quantity{Value: v}
}

// allowedAfter is Allowed where it helps to mend a fault.
func (f Field) allowedAfter(code Code) words.Phrase {
	if code == ControlChars || code == BadUTF8 || code == EmptyText && f.Kind == KindText {
		return words.Phrase{}
	}
	return f.Allowed()
}

// allowedCount says how many entries a list takes.
func (f Field) allowedCount() words.Phrase {
	return phrase("allowed/count", "least", f.Least, "most", f.Most)
}

func entries(n int) words.Phrase { return phrase("found/entries", "n", n) }

func oneOf(choices []string) words.Phrase { return phrase("allowed/one-of", "choices", choices) }

// count is a whole number as it is written in a file, without groups of digits.
func count(n int) words.Quantity { return words.Quantity{Value: float64(n)} }

// phrase makes a phrase of a key and of pairs of names and values.
func phrase(key string, pairs ...any) words.Phrase {
	args := make(words.Args, len(pairs)/2)
	for i := 0; i < len(pairs); i += 2 {
		args[pairs[i].(string)] = pairs[i+1]
	}
	return words.Phrase{Key: key, Args: args}
}
