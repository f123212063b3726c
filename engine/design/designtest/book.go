package designtest

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
)

// EachAmount changes every amount of a price book.
func EachAmount(book *design.Book, change func(design.Amount) design.Amount) {
	eachFigure(reflect.ValueOf(book).Elem(), func(v reflect.Value) {
		if a, ok := v.Interface().(design.Amount); ok {
			v.SetInt(int64(change(a)))
		}
	})
}

// Sentinel is a price book, otherwise as the example figures, in which no figure
// is met by chance: each ends in four digits of its own, which are returned. Only
// the shares of the stages, which sum to a whole, and the thicknesses of sheets,
// which are no secret, are as they were.
func Sentinel(t testing.TB) (book design.Book, digits []string) {
	t.Helper()
	book = design.DefaultBook()
	book.Name, book.Placeholder, book.Currency = "Sentinel", false, "EUR"
	n := int64(7000)
	next := func() int64 {
		if n += 13; n%10 == 0 {
			n += 13 // a last 0 is not written
		}
		digits = append(digits, strconv.FormatInt(n, 10))
		return n
	}
	eachFigure(reflect.ValueOf(&book).Elem(), func(v reflect.Value) {
		switch x := v.Interface().(type) {
		case design.Amount:
			v.SetInt(x.Steps()/design.Units(1).Steps()*design.Units(1).Steps() + next()) // 42.7013
		case float64:
			exact, err := strconv.ParseFloat(fmt.Sprintf("%.0f.%d", math.Floor(x), next()), 64)
			if err != nil {
				t.Fatal(err)
			}
			v.SetFloat(exact)
		}
	})
	if len(digits) < 100 {
		t.Fatalf("%d figures in a price book", len(digits))
	}
	return book, digits
}

// eachFigure visits the amounts and numbers of a book, but for the shares of its
// stages.
func eachFigure(v reflect.Value, visit func(reflect.Value)) {
	switch v.Interface().(type) {
	case length.Length, []design.Stage:
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			eachFigure(v.Field(i), visit)
		}
	case reflect.Slice:
		for i := range v.Len() {
			eachFigure(v.Index(i), visit)
		}
	case reflect.Int64, reflect.Float64:
		visit(v)
	}
}
