package design

import (
	"slices"
	"strings"

	"blockfield/engine/words"
)

// Numeric reports whether the field holds numbers, with a unit or without one, as they
// are typed.
func (f Field) Numeric() bool {
	return slices.Contains([]Kind{KindLength, KindNumber, KindInteger, KindAmount}, f.Kind) && len(f.Choices) == 0
}

// Shown is the text of the field, as Text gives it, the way a reader writes it.
func (f Field) Shown(r words.Reader, text string) string {
	switch {
	case f.Numeric():
		return r.Written(text)
	case f.Kind == KindText && f.IsList:
		given := strings.Split(text, "; ")
		for i, one := range given {
			given[i] = r.Given(one)
		}
		return strings.Join(given, "; ")
	case f.Kind == KindText:
		return r.Given(text)
	}
	return text
}

// Typed is what a reader has typed into the field, as Set takes it.
func (f Field) Typed(r words.Reader, text string) string {
	if !f.Numeric() {
		return text
	}
	return r.Read(text, f.IsList)
}
