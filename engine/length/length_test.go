package length_test

import (
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		bare length.Notation
		nm   int64
		want string
	}{
		{"38", length.InMM, 38_000_000, "38 mm"},
		{"38", length.InInch, 965_200_000, "38 in"},
		{"38mm", length.InInch, 38_000_000, "38 mm"},
		{"3.8 cm", length.InMM, 38_000_000, "3.8 cm"},
		{"36,2", length.InMM, 36_200_000, "36.2 mm"},
		{"1.2 m", length.InMM, 1_200_000_000, "1.2 m"},
		{`1-1/2"`, length.InMM, 38_100_000, "1 1/2 in"},
		{"1 1/2 in", length.InMM, 38_100_000, "1 1/2 in"},
		{"1.5in", length.InMM, 38_100_000, "1 1/2 in"},
		{"1/64 in", length.InMM, 396_875, "1/64 in"},
		{"0.008 in", length.InMM, 203_200, "0.008 in"},
		{"1/3 in", length.InMM, 8_466_667, "8.466667 mm"},
		{`6' 2 1/2"`, length.InMM, 1_892_300_000, `6' 2 1/2"`},
		{"6 ft 2 in", length.InMM, 1_879_600_000, `6' 2"`},
		{"6ft", length.InMM, 1_828_800_000, `6' 0"`},
		{"6' 2", length.InMM, 1_879_600_000, `6' 2"`},
		{"-5 mm", length.InMM, -5_000_000, "-5 mm"},
		{".5 mm", length.InMM, 500_000, "0.5 mm"},
		{"0", length.InInch, 0, "0 in"},
		{"38\u00a0mm", length.InMM, 38_000_000, "38 mm"},
		{"\u202f1\u00a01/2\u2009in\u00a0", length.InMM, 38_100_000, "1 1/2 in"},
		{"6'\u00a02\u202f1/2\"", length.InMM, 1_892_300_000, `6' 2 1/2"`},
		{"1 200 mm", length.InMM, 1_200_000_000, "1200 mm"},
		{"1\u00a0200\u00a0mm", length.InMM, 1_200_000_000, "1200 mm"},
		{"1\u202f200", length.InMM, 1_200_000_000, "1200 mm"},
		{"1\u2009200,5\u2009mm", length.InMM, 1_200_500_000, "1200.5 mm"},
		{"1\u2007200 mm", length.InMM, 1_200_000_000, "1200 mm"},
		{"1.200,5 mm", length.InMM, 1_200_500_000, "1200.5 mm"},
		{"1,200.5 mm", length.InMM, 1_200_500_000, "1200.5 mm"},
		{"1.200.000 mm", length.InMM, 1_200_000_000_000, "1200000 mm"},
		{"1,200,000 mm", length.InMM, 1_200_000_000_000, "1200000 mm"},
		{"1200,500 mm", length.InMM, 1_200_500_000, "1200.5 mm"},
		{"0,125 in", length.InMM, 3_175_000, "1/8 in"},
		{"1.125 in", length.InMM, 28_575_000, "1 1/8 in"},
		{"1 200 1/2 in", length.InMM, 30_492_700_000, "1200 1/2 in"},
		{"1 / 2 in", length.InMM, 12_700_000, "1/2 in"},
	} {
		l, err := length.Parse(c.text, c.bare)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.nm, l.Nanometres(), c.text)
		assert.Equal(t, c.want, l.String(), c.text)
	}
}

func TestParseRefuses(t *testing.T) {
	for text, want := range map[string]error{
		"": length.ErrEmpty, "   ": length.ErrEmpty,
		"wide": length.ErrSyntax, "1 2 mm": length.ErrSyntax, "1/0 in": length.ErrSyntax,
		"12 mm mm": length.ErrSyntax, "1e9 mm": length.ErrSyntax, "--5": length.ErrSyntax,
		"5 in 3 ft": length.ErrSyntax, "1.5 1/2 in": length.ErrSyntax, "0x10 mm": length.ErrSyntax,
		"12 00 mm": length.ErrSyntax, "1 200/3 in": length.ErrSyntax, "1 3/2 in": length.ErrSyntax, "1 200 mm 5": length.ErrSyntax,
		"1200 300 mm": length.ErrSyntax, "0 200 mm": length.ErrSyntax, "1.200.30 mm": length.ErrSyntax, "1.2 1/2 in": length.ErrSyntax,
		"1,200.300,5": length.ErrSyntax, "1 200.300,5": length.ErrSyntax, "1'200 mm": length.ErrSyntax,
		"99999999 m": length.ErrTooLong, "1111111111111111111111111111111111111111111111111111 mm": length.ErrTooLong,
	} {
		_, err := length.Parse(text, length.InMM)
		assert.ErrorIs(t, err, want, text)
	}
	_, err := length.ParseExact("38")
	assert.ErrorIs(t, err, length.ErrUnit)
}

// A comma with three digits behind it is a thousand to some and a decimal to
// others; the message has both, and the way out.
func TestParseRefusesTwoReadings(t *testing.T) {
	const wayOut = ": write no mark for thousands, and a point before decimals"
	for text, want := range map[string]string{
		"1,200 mm":    "may be 1200 or 1.2" + wayOut,
		"36,000":      "may be 36000 or 36" + wayOut,
		"1,200 in":    "may be 1200 or 1.2" + wayOut,
		"6' 1,250 in": "may be 1250 or 1.25" + wayOut,
	} {
		_, err := length.Parse(text, length.InMM)
		var two *length.AmbiguousError
		require.ErrorAs(t, err, &two, text)
		assert.Equal(t, want, two.Error(), text)
	}
}

// Whatever the marks of a number are, it is read as what was meant.
func TestDecimalReadsEveryStyle(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	spaces := []string{" ", "\u00a0", "\u202f", "\u2009", "\u2007"}
	for range 3000 {
		whole := strconv.FormatInt(r.Int64N([]int64{10, 10_000, 10_000_000}[r.IntN(3)]), 10)
		frac := strconv.FormatInt(1+r.Int64N(9999), 10)
		if r.IntN(3) == 0 {
			frac = ""
		}
		want := strings.TrimSuffix(whole+"."+frac, ".")
		for _, style := range append([]string{"", ".", ","}, spaces...) {
			for _, mark := range []string{".", ","} {
				grouped := inGroups(whole, style)
				single := style != "" && strings.Count(grouped, style) == 1 // "1.200": a mark that could stand before decimals
				text := strings.TrimSuffix(grouped+mark+frac, mark)
				if style == mark || frac == "" && single && (style == "." || style == ",") {
					continue
				}
				got, err := length.Decimal(text)
				var two *length.AmbiguousError
				if mark == "," && len(frac) == 3 && grouped == whole && len(whole) < 4 && whole != "0" {
					require.ErrorAs(t, err, &two, text)
					continue
				}
				require.NoError(t, err, text)
				require.Equal(t, want, got, text)
			}
		}
	}
}

// inGroups keeps the digits of a whole number apart in threes.
func inGroups(digits, mark string) string {
	for i := len(digits) - 3; i > 0; i -= 3 {
		digits = digits[:i] + mark + digits[i:]
	}
	return digits
}

// What the page shows of a length can be typed again: it is read as the length
// that was shown, in the unit that stands there.
func TestShownLengthsAreReadBack(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 3000 {
		l := length.Nanometres(r.Int64N(20_000_000_000)-1_000_000_000, length.Notation(r.IntN(5)))
		for _, units := range []length.Units{length.Metric, length.Inch16, length.Inch32} {
			for _, text := range []string{units.Format(l), units.Number(l), units.Field(l)} {
				back, err := length.Parse(text, units.Bare())
				require.NoError(t, err, "%v in %s", l, units)
				require.Equal(t, units.Format(l), units.Format(back), "%v in %s, shown as %s", l, units, text)
			}
			kept, err := length.Parse(units.Field(l), units.Bare())
			require.NoError(t, err)
			again, err := length.Parse(units.Field(kept), units.Bare())
			require.NoError(t, err)
			require.True(t, kept.Same(again), "%v: a field that was sent back is sent back the same", l)
		}
	}
}

func TestTextIsExact(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 3000 {
		nm := r.Int64N(8_000_000_000) - 2_000_000_000
		l := length.Nanometres(nm, length.Notation(r.IntN(5)))
		back, err := length.ParseExact(l.String())
		require.NoError(t, err, l.String())
		require.Equal(t, l, back, l.String())
	}
	for n := range int64(5000) {
		l := length.Sixtyfourths(n)
		back, err := length.ParseExact(l.String())
		require.NoError(t, err)
		require.Equal(t, l, back)
	}
}

func TestRoundCountsWholePitches(t *testing.T) {
	pitch := length.Micrometres(36_200)
	assert.Equal(t, 33, length.MM(1200).Round(pitch)) // 33.15
	assert.Equal(t, 22, length.MM(800).Round(pitch))  // 22.10
	assert.Equal(t, 28, length.MM(1000).Round(pitch)) // 27.62
	assert.Equal(t, 3, length.MM(5).Round(length.MM(2)), "halves go away from zero")
}

func TestDisplay(t *testing.T) {
	l := length.Micrometres(889_200)
	assert.Equal(t, "889.2 mm", length.Metric.Format(l))
	assert.Equal(t, "35 in", length.Inch16.Format(l)) // 35.0079 in
	assert.Equal(t, "1 7/16 in", length.Inch16.Format(length.MM(36)))
	assert.Equal(t, "1 13/32 in", length.Inch32.Format(length.MM(36)))
	assert.Equal(t, "36 mm", length.Metric.Field(length.MM(36)))
	assert.Equal(t, "44.5 mm", length.Metric.Field(length.Sixtyfourths(112)), "44.45 rounded for the eye")
	assert.Equal(t, "1 3/4 in", length.Inch16.Field(length.Sixtyfourths(112)))
	assert.Equal(t, "0.008 in", length.Inch16.Format(length.Micrometres(200)), "too small for a sixteenth")
	assert.Equal(t, "1/16 in", length.Inch16.Format(length.Micrometres(1600)))
	assert.Equal(t, "0 in", length.Inch16.Format(length.MM(0)))
	assert.Equal(t, "38.0 kg", length.Metric.Mass(38))
	assert.Equal(t, "84 lb", length.Inch16.Mass(38)) // 83.8
}

func TestCeilMM(t *testing.T) {
	assert.Equal(t, "107 mm", length.Micrometres(106_001).CeilMM().String())
	assert.Equal(t, "106 mm", length.MM(106).CeilMM().String())
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"38", `6' 2 1/2"`, "1-1/2 in", "36,2 mm", "−4cm", "1/3 in", "9e9", "1 200,5 mm", "1.200,5", "1,200"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l, err := length.Parse(s, length.InMM)
		if err != nil {
			return
		}
		back, err := length.ParseExact(l.String())
		if err != nil || back != l {
			t.Fatalf("%q read as %v, written and read again as %v, %v", s, l, back, err)
		}
	})
}

func TestMetres(t *testing.T) {
	assert.Equal(t, []float64{0.026, 0.0381}, length.Metres([]length.Length{length.MM(26), length.Sixtyfourths(96)}))
	assert.Empty(t, length.Metres(nil))
}
