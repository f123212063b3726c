package design_test

import (
	"math/big"
	"reflect"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/wood"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pathsOf lists the pattern of every value and every list of parts of a type.
func pathsOf(t reflect.Type, prefix string) []string {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	isPart := func(t reflect.Type) bool { return t.Kind() == reflect.Struct && t != reflect.TypeFor[length.Length]() }
	var paths []string
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		path, inner := prefix+name, f.Type
		if inner.Kind() == reflect.Pointer {
			inner = inner.Elem()
		}
		switch {
		case inner.Kind() == reflect.Slice && isPart(inner.Elem()):
			paths = append(append(paths, path), pathsOf(inner.Elem(), path+"[].")...)
		case inner == reflect.TypeFor[design.Design]() && prefix != "":
			// a kept design has the rows of the design
		case isPart(inner):
			paths = append(paths, pathsOf(inner, path+".")...)
		default:
			paths = append(paths, path)
		}
	}
	return paths
}

func TestEveryValueHasOneRow(t *testing.T) {
	for name, c := range map[string]struct {
		typ  reflect.Type
		rows []design.Field
	}{
		"design": {reflect.TypeFor[design.Document](), design.Fields()},
		"book":   {reflect.TypeFor[design.Book](), design.BookFields()},
	} {
		var rows []string
		for _, f := range c.rows {
			rows = append(rows, f.Path)
		}
		assert.ElementsMatch(t, pathsOf(c.typ, ""), rows, name)
	}
}

func TestRowsAreSound(t *testing.T) {
	for _, f := range append(design.Fields(), design.BookFields()...) {
		assert.True(t, strings.HasSuffix(f.Doc, "."), "%s: the sentence %q has no end", f.Path, f.Doc)
		assert.LessOrEqual(t, f.Min, f.Max, f.Path)
		if f.IsList {
			assert.Less(t, f.Least, f.Most, f.Path)
		}
		if f.Kind == design.KindChoice {
			assert.NotEmpty(t, f.Choices, f.Path)
		}
		if f.Kind == design.KindText {
			assert.Positive(t, f.MaxChars, f.Path)
		}
	}
}

func TestTableCannotBeChangedFromOutside(t *testing.T) {
	design.Fields()[0].Doc = "changed"
	assert.NotEqual(t, "changed", design.Fields()[0].Doc)
}

func TestLookup(t *testing.T) {
	for _, path := range []string{
		"walls[3].groups[0].heights", "walls[3].groups[0].heights[2]", "design.walls[].groups[].heights",
	} {
		f, ok := design.Lookup(path)
		require.True(t, ok, path)
		assert.Equal(t, "design.walls[].groups[].heights", f.Path)
	}
	f, ok := design.Lookup("view.lamp.azimuth")
	require.True(t, ok)
	assert.Equal(t, "0° to 360°", allowed(f, length.Metric))
	for _, path := range []string{"", "walls[0].groups[0].block", "nothing", "walls[0", "walls]0["} {
		_, ok := design.Lookup(path)
		assert.False(t, ok, path)
	}
}

func TestAllowedInWords(t *testing.T) {
	for path, want := range map[string][2]string{
		// 18 mm is 45.35/64 in and 100 mm is 251.97/64 in: rounded inwards by hand.
		"walls[0].groups[0].block.size": {"18 mm to 100 mm", "23/32 in to 3 59/64 in"},
		"walls[0].groups[0].density": {
			"100 kg/m³ to 1300 kg/m³, or 0 (as in the tables)", "100 kg/m³ to 1300 kg/m³, or 0 (as in the tables)",
		},
		"walls[0].groups[0].pattern.turn": {"one of 0, 90, 180, 270", "one of 0, 90, 180, 270"},
		"walls[0].place.left":             {},
		"work.crew":                       {"a whole number, 1 to 6", "a whole number, 1 to 6"},
	} {
		f, ok := design.Lookup(path)
		if want[0] == "" {
			assert.False(t, ok, path)
			continue
		}
		require.True(t, ok, path)
		assert.Equal(t, want[0], allowed(f, length.Metric))
		assert.Equal(t, want[1], allowed(f, length.Inch16))
	}
}

// The names that a design may use are those that the tables of the trade know.
func TestNamesAreThoseOfTheTables(t *testing.T) {
	var woods, sheets, finishes []string
	for _, s := range wood.All() {
		woods = append(woods, s.Name)
	}
	for _, s := range wood.Sheets() {
		sheets = append(sheets, s.Name)
	}
	for _, f := range wood.Finishes() {
		finishes = append(finishes, f.Name)
	}
	assert.ElementsMatch(t, woods, design.Woods())
	assert.ElementsMatch(t, sheets, design.Sheets())
	assert.ElementsMatch(t, finishes, design.Finishes())
}

// math/big's test is exact for numbers of this size.
func TestPrimesAgainstLibrary(t *testing.T) {
	for n := range 1300 {
		prime := big.NewInt(int64(n)).ProbablyPrime(0)
		require.Equal(t, prime, design.IsPrime(n), "%d", n)
		fold := false
		for a := 2; prime && a*a < n-1; a++ {
			b := (n - 1) / a
			fold = fold || a*b == n-1 && new(big.Int).GCD(nil, nil, big.NewInt(int64(a)), big.NewInt(int64(b))).IsInt64() &&
				new(big.Int).GCD(nil, nil, big.NewInt(int64(a)), big.NewInt(int64(b))).Int64() == 1
		}
		require.Equal(t, fold, design.Foldable(n), "%d", n)
	}
	// The Fermat primes: one above a power of two.
	for _, n := range []int{3, 5, 17, 257} {
		assert.False(t, design.Foldable(n), "%d", n)
	}
}

// allowed is what a field takes, said in the reader's units.
func allowed(f design.Field, u length.Units) string {
	return words.Reader{Language: words.English(), Units: u}.Show(f.Allowed())
}
