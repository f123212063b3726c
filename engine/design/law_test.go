package design_test

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/require"
)

// Whatever a person does, one edit after the other, the design stays valid, is
// written and read back byte for byte, and shows what the schema allows.
func TestRandomWalkOfEdits(t *testing.T) {
	schema := compiled(t, design.Schema())
	r := rand.New(rand.NewPCG(7, 12))
	rows := design.Fields()
	doc := design.Default()
	taken := map[string]int{}
	for step := range 6000 {
		f := rows[r.IntN(len(rows))]
		path := concrete(f.Path)
		next, err := doc, error(nil)
		switch {
		case f.Kind == design.KindParts && r.IntN(3) == 0:
			next, err = design.Remove(doc, path+"[0]")
		case f.Kind == design.KindParts:
			next, _, err = design.Add(doc, path)
		default:
			next, err = design.Set(doc, path, typed(r, f), length.Metric)
		}
		if err != nil {
			continue
		}
		taken[f.Path]++
		doc = next
		require.NoError(t, design.Validate(doc), "step %d, %s", step, path)
		if step%40 != 0 {
			continue
		}
		file := design.Encode(doc)
		again, err := design.Decode(file)
		require.NoError(t, err, "step %d, %s", step, path)
		require.Equal(t, doc, again, "step %d, %s", step, path)
		require.NoError(t, validate(t, schema, file), "step %d, %s", step, path)
	}
	for _, f := range rows {
		if _, ok := design.Get(doc, concrete(f.Path)); ok && !f.Fixed {
			require.Positive(t, taken[f.Path], "%s was never edited", f.Path)
		}
	}
}

// typed is something that a person could type into a field.
func typed(r *rand.Rand, f design.Field) string {
	if f.IsList && f.Kind == design.KindLength {
		return "10, " + strconv.Itoa(11+r.IntN(40)) + ", " + strconv.Itoa(60+r.IntN(190)) + " mm"
	}
	if len(f.Choices) > 0 {
		return f.Choices[r.IntN(len(f.Choices))]
	}
	span := f.Max - f.Min
	switch f.Kind {
	case design.KindLength:
		if r.IntN(3) == 0 {
			return strconv.FormatFloat((f.Min+r.Float64()*span)/25.4, 'f', 3, 64) + " in"
		}
		return strconv.FormatFloat(f.Min+r.Float64()*span, 'f', 3, 64)
	case design.KindNumber:
		return strconv.FormatFloat(f.Min+r.Float64()*span, 'f', r.IntN(8), 64)
	case design.KindInteger:
		return strconv.FormatInt(int64(f.Min+r.Float64()*min(span, 40)), 10)
	case design.KindAmount:
		return strconv.FormatFloat(r.Float64()*1000, 'f', 2, 64)
	case design.KindYesNo:
		return []string{"yes", "no"}[r.IntN(2)]
	default:
		return []string{"", "AAB", "a word", "Größe 木 \"<&>\""}[r.IntN(4)]
	}
}

func BenchmarkSet(b *testing.B) {
	doc := design.Default()
	for b.Loop() {
		if _, err := design.Set(doc, "walls[0].groups[0].width", "1400 mm", length.Metric); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkDecode(b *testing.B) {
	file := design.Encode(design.Default())
	for b.Loop() {
		if _, err := design.Decode(file); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRevision(b *testing.B) {
	d := design.Default().Design
	for b.Loop() {
		d.Revision()
	}
}

func BenchmarkDefaultBook(b *testing.B) {
	for b.Loop() {
		design.DefaultBook()
	}
}
