package design_test

import (
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const group = "walls[0].groups[0]."

// set edits the default design and must succeed.
func set(t *testing.T, doc design.Document, path, text string) design.Document {
	t.Helper()
	next, err := design.Set(doc, path, text, length.Metric)
	require.NoError(t, err, "%s = %q", path, text)
	return next
}

func TestSetReadsWhatPeopleType(t *testing.T) {
	for _, c := range []struct {
		path, text string
		units      length.Units
		want       string // as Text shows it, in the same units
	}{
		{"walls[0].width", "4000", length.Metric, "4000 mm"},
		{"walls[0].width", "4 m", length.Metric, "4 m"},
		{"walls[0].width", "150", length.Inch16, "150 in"},
		{"walls[0].width", `12' 6"`, length.Inch16, `12' 6"`},
		{"design.walls[0].width", " 4000 mm ", length.Metric, "4000 mm"},
		{group + "block.slack", "0,3", length.Metric, "0.3 mm"},
		{group + "heights", "15, 32, 55, 84", length.Metric, "15 mm, 32 mm, 55 mm, 84 mm"},
		{group + "heights", "15,32,55", length.Metric, "15 mm, 32 mm, 55 mm"},
		{group + "heights", "15,5; 32; 55", length.Metric, "15.5 mm, 32 mm, 55 mm"},
		{group + "heights", "1, 1 5/8, 2-1/2 in", length.Metric, "25.4 mm, 41.3 mm, 63.5 mm"},
		{group + "heights", "1, 1 5/8, 2-1/2", length.Inch32, "1 in, 1 5/8 in, 2 1/2 in"},
		{group + "heights[1]", "45", length.Metric, "45 mm"},
		{group + "density", "690 kg/m³", length.Metric, "690"},
		{group + "density", "", length.Metric, "0"},
		{group + "pattern.seed", "9007199254740991", length.Metric, "9007199254740991"},
		{group + "pattern.turn", "90°", length.Metric, "90"},
		{group + "pattern.mirror", "on", length.Metric, "yes"},
		{group + "wood", "Walnut", length.Metric, "walnut"},
		{group + "cleat.bevel", "40°", length.Metric, "40"},
		{"room.humidityLow", "35 %", length.Metric, "35"},
		{"room.humidityLow", "37,5", length.Metric, "37.5"},
		{"room.temperatureLow", "64.4 °F", length.Metric, "18"}, // (64.4 − 32) / 1.8
		{"room.temperatureLow", "−3 °C", length.Metric, "-3"},
		{"room.goals", "less clatter; keep energy, break the mirror", length.Metric, "less clatter; keep energy, break the mirror"},
		{"room.goals", "", length.Metric, ""},
		{"room.public", "YES", length.Metric, "yes"},
		{"money.budget", "1500.50", length.Metric, "1500.5"},
		{"money.budget", "1500,50", length.Metric, "1500.5"},
		{"money.budget", "70\u202f000\u202f000", length.Metric, "70000000"},
		{"money.budget", "70.000.000,50", length.Metric, "70000000.5"},
		{"money.budget", "1,500.50", length.Metric, "1500.5"},
		{"walls[0].width", "4 200 mm", length.Metric, "4200 mm"},
		{"walls[0].width", "4.200,5", length.Metric, "4200.5 mm"},
		{group + "pattern.seed", "12 345", length.Metric, "12345"},
		{"title", "  A panel ", length.Metric, "A panel"},
		{"title", "A\tpanel", length.Metric, "A panel"},
		{"title", "👩\u200d🔧 می\u200cخواهم", length.Metric, "👩\u200d🔧 می\u200cخواهم"},
		{"note", "one\r\ntwo", length.Metric, "one\ntwo"},
		{"view.units", "in/32", length.Metric, "in/32"},
		{"view.lamp.azimuth", "10.5", length.Metric, "10.5"},
		{"view.lamp.azimuth", "-0", length.Metric, "0"},
	} {
		next, err := design.Set(design.Default(), c.path, c.text, c.units)
		require.NoError(t, err, "%s = %q", c.path, c.text)
		got, ok := design.Text(next, c.path, c.units)
		require.True(t, ok)
		assert.Equal(t, c.want, got, "%s = %q", c.path, c.text)
		// What the form shows is read back to the very same design.
		again, err := design.Set(next, c.path, got, c.units)
		require.NoError(t, err)
		assert.Equal(t, string(design.Encode(next)), string(design.Encode(again)))
	}
}

// maxBulk is the most that is paid for a job, as messages write it.
const maxBulk = "1\u202f000\u202f000\u202f000\u202f000"

func TestSetRefuses(t *testing.T) {
	for _, c := range []struct {
		path, text string
		units      length.Units
		want       string
	}{
		{"walls[0].width", "599", length.Metric, "design.walls[0].width: 599 mm is out of range (allowed 600 mm to 20000 mm)"},
		{"walls[0].width", "12", length.Inch16, "design.walls[0].width: 12 in is out of range (allowed 600 mm to 20000 mm)"},
		{
			"walls[0].width", "wide", length.Metric,
			`design.walls[0].width: wide is not a length: write it like 38 mm, 1.2 m, 1 1/2 in or 6' 2" (allowed 600 mm to 20000 mm)`,
		},
		{"walls[0].width", "", length.Metric, "design.walls[0].width: must not be empty (allowed 600 mm to 20000 mm)"},
		{
			group + "heights", "15, 84, 55", length.Metric,
			"design.walls[0].groups[0].heights[2]: must rise, got 55 mm (allowed more than 84 mm)",
		},
		{group + "heights", "15", length.Metric, "design.walls[0].groups[0].heights: has 1 entry (allowed 2 to 9 entries)"},
		{
			group + "heights", "1,2,3,4,5,6,7,8,9,10", length.Metric,
			"design.walls[0].groups[0].heights: has 10 entries (allowed 2 to 9 entries)",
		},
		{group + "heights[0]", "300", length.Metric, "design.walls[0].groups[0].heights[0]: 300 mm is out of range (allowed 0 mm to 250 mm)"},
		{group + "heights[9]", "3", length.Metric, "design.walls[0].groups[0].heights[9]: is not a field of the document"},
		{
			group + "wood", "teak", length.Metric,
			"design.walls[0].groups[0].wood: teak is not one of the choices" +
				" (allowed one of pine, spruce, cedar, poplar, beech, ash, maple, oak, cherry, walnut)",
		},
		{"work.crew", "2.5", length.Metric, "design.work.crew: 2.5 is not a whole number in plain digits (allowed a whole number, 1 to 6)"},
		{"work.crew", "7", length.Metric, "design.work.crew: 7 is out of range (allowed a whole number, 1 to 6)"},
		{"room.humidityLow", "NaN", length.Metric, "design.room.humidityLow: NaN is not a number in plain digits (allowed 10 % to 95 %)"},
		{"room.humidityLow", "0x20", length.Metric, "design.room.humidityLow: 0x20 is not a number in plain digits (allowed 10 % to 95 %)"},
		{"room.humidityLow", "60", length.Metric, "design.room.humidityLow: is the wrong way round: the lowest is 60 %, the highest 55 % (allowed a lowest up to 55 %, or a highest from 60 %)"},
		{
			"walls[0].width", "1,200", length.Metric,
			"design.walls[0].width: 1,200 may be 1200 or 1.2: write no mark for thousands, and a point before decimals (allowed 600 mm to 20000 mm)",
		},
		{"money.budget", "99000000000000000", length.Metric, "design.money.budget: 99000000000000000 is out of range (allowed 0 to " + maxBulk + ")"},
		{"money.budget", "0.00001", length.Metric, "design.money.budget: 0.00001 has more than four decimals (allowed 0 to " + maxBulk + ")"},
		{"money.tax", "1e308", length.Metric, "design.money.tax: 1e308 is not a number in plain digits (allowed 0 % to 40 %)"},
		{"money.tax", "9" + strings.Repeat("0", 307), length.Metric, "design.money.tax: 9e+307 is out of range (allowed 0 % to 40 %)"},
		{
			"title", "Oak\u202egnp", length.Metric,
			`design.title: Oak\u202egnp has the character U+202E at place 4, which is not seen and can turn or hide what is written`,
		},
		{"room.public", "perhaps", length.Metric, "design.room.public: perhaps is not one of the choices (allowed yes or no)"},
		{"title", "a\vb", length.Metric, `design.title: a\vb has the character U+000B at place 2, which is not seen and can turn or hide what is written`},
		{"title", "\xff", length.Metric, "design.title: is not valid UTF-8 text \uFFFD"},
		{"walls", "x", length.Metric, "design.walls: cannot be edited"},
		{"version", "2", length.Metric, "version: cannot be edited"},
		{"assumed", "x", length.Metric, "assumed: cannot be edited"},
		{"offer.net", "5", length.Metric, "offer.net: is not a field of the document"},
		{"nowhere", "x", length.Metric, "design.nowhere: is not a field of the document"},
		{
			group + "panelsWide", "13", length.Metric,
			"design.walls[0].groups[0].panelsWide: 13 is out of range (allowed a whole number, 1 to 12)",
		},
		{group + "pattern.drawn", "01\n10", length.Metric,
			"design.walls[0].groups[0].pattern.drawn: 2 rows does not fit the field (allowed none unless the pattern is drawn)"},
	} {
		doc := design.Default()
		before := design.Encode(doc)
		next, err := design.Set(doc, c.path, c.text, c.units)
		require.EqualError(t, err, c.want)
		assert.Equal(t, string(before), string(design.Encode(next)), "a refused edit gives the document back as it was")
	}
}

// What an edit breaks elsewhere is said beside the edited field.
func TestFaultsStandBesideTheEdit(t *testing.T) {
	doc, _, err := design.Add(design.Default(), "walls[0].obstacles")
	require.NoError(t, err)
	doc = set(t, doc, "walls[0].obstacles[0].kind", "socket")
	doc = set(t, doc, "walls[0].obstacles[0].x", "3300")
	_, err = design.Set(doc, "walls[0].width", "3 m", length.Metric)
	assert.EqualError(t, err, "design.walls[0].width: reaches beyond the wall: socket, right edge at 3400 mm (allowed up to 3000 mm)")

	doc = set(t, set(t, doc, group+"width", "6 m"), group+"height", "5 m")
	_, err = design.Set(doc, group+"block.size", "20", length.Metric) // 6000/20.2 = 297, 5000/20.2 = 248
	assert.EqualError(t, err, "design.walls[0].groups[0].block.size: makes too many blocks: 297 × 248 cells in a panel"+
		" (allowed at most 400 a side and 40000 in all)")
}

// A sum with three digits behind one mark is in thousands, as the page writes sums itself:
// no sum has thousandths.
func TestASumInThousands(t *testing.T) {
	doc := design.Default()
	for text, want := range map[string]design.Amount{
		"12345": design.Units(12345), "12.345,00": design.Units(12345), "12.34": design.Units(1234) / 100,
		"12.3450": design.Units(12345) / 1000, "0.345": design.Units(345) / 1000, "1.234.567": design.Units(1_234_567),
		"12.345": design.Units(12345), "1.200": design.Units(1200), "12,345": design.Units(12345), "0,345": design.Units(345) / 1000,
	} {
		next, err := design.Set(doc, "money.budget", text, length.Metric)
		require.NoError(t, err, text)
		assert.Equal(t, want, next.Design.Money.Budget, text)
	}
}

func TestSetDoesNotChangeItsDocument(t *testing.T) {
	doc := design.Default()
	before := design.Encode(doc)
	next := set(t, doc, group+"heights[1]", "45")
	assert.NotEqual(t, string(before), string(design.Encode(next)))
	assert.Equal(t, string(before), string(design.Encode(doc)))
}

func TestSetEndsAssumption(t *testing.T) {
	doc := design.Default()
	require.Contains(t, doc.Assumed, "walls[0].width")
	next := set(t, doc, "walls[0].width", "4 m")
	assert.NotContains(t, next.Assumed, "walls[0].width")
	assert.Len(t, next.Assumed, len(doc.Assumed)-1)

	// Typing the value that was assumed is an answer, too, and changes nothing else.
	next = set(t, doc, "walls[0].width", "3500 mm")
	assert.NotContains(t, next.Assumed, "walls[0].width")
	assert.Equal(t, doc.Design.Revision(), next.Design.Revision())

	next = design.Confirm(doc, "walls[0].obstacles")
	assert.NotContains(t, next.Assumed, "walls[0].obstacles")
	assert.Contains(t, doc.Assumed, "walls[0].obstacles")

	for _, path := range doc.Assumed {
		doc = design.Confirm(doc, path)
	}
	assert.Empty(t, doc.Assumed)
}

func TestUneditedFieldKeepsItsValue(t *testing.T) {
	doc := set(t, design.Default(), group+"block.size", "1 3/4 in")
	shown, _ := design.Text(doc, group+"block.size", length.Metric)
	require.Equal(t, "44.5 mm", shown, "44.45 mm is rounded for the eye")
	next := set(t, doc, group+"block.size", shown)
	assert.Equal(t, doc.Design.Revision(), next.Design.Revision())
}

func TestGet(t *testing.T) {
	doc := design.Default()
	v, ok := design.Get(doc, group+"heights[2]")
	require.True(t, ok)
	assert.Equal(t, length.MM(64), v)
	v, ok = design.Get(doc, "walls[0].groups[0]")
	require.True(t, ok)
	assert.Equal(t, doc.Design.Walls[0].Groups[0], v)
	for _, path := range []string{
		"walls[1]", "walls[-1]", "walls[00]", "walls[0", "walls[0]x", "walls.width", "walls[0][0]", "title[0]", "offer", "offer.net",
		"walls[9999999999999999999]", ".", "..", "[0]",
	} {
		_, ok := design.Get(doc, path)
		assert.False(t, ok, path)
	}
}

// Every field of the default design takes back what it shows, in all units.
func TestEveryFieldTakesBackWhatItShows(t *testing.T) {
	doc := design.Default()
	for _, f := range design.Fields() {
		path := strings.ReplaceAll(f.Path, "[]", "[0]")
		for _, u := range []length.Units{length.Metric, length.Inch16, length.Inch32} {
			text, ok := design.Text(doc, path, u)
			if !ok || f.Fixed {
				continue
			}
			next, err := design.Set(doc, path, text, u)
			require.NoError(t, err, path)
			assert.Equal(t, doc.Design.Revision(), next.Design.Revision(), path)
		}
	}
}

func TestCompanions(t *testing.T) {
	doc := design.Default()
	pattern := func(d design.Document) design.Pattern { return d.Design.Walls[0].Groups[0].Pattern }

	t.Run("a sequence kind takes the nearest order that it can use", func(t *testing.T) {
		d := set(t, set(t, doc, group+"pattern.order", "24"), group+"pattern.kind", design.QuadraticResidue)
		assert.Equal(t, 23, pattern(d).Order)
		d = set(t, set(t, doc, group+"pattern.order", "257"), group+"pattern.kind", design.PrimitiveRoot)
		assert.Equal(t, 251, pattern(d).Order, "251 and 263 are both 6 away: the smaller one")
		d = set(t, set(t, doc, group+"pattern.order", "5"), group+"pattern.kind", design.PrimitiveRoot)
		assert.Equal(t, 7, pattern(d).Order)
	})
	t.Run("a typed order is not replaced", func(t *testing.T) {
		d := set(t, doc, group+"pattern.kind", design.QuadraticResidue)
		_, err := design.Set(d, group+"pattern.order", "24", length.Metric)
		assert.ErrorContains(t, err, "24 is not a prime number")
	})
	t.Run("folds", func(t *testing.T) {
		d := set(t, set(t, doc, group+"pattern.order", "691"), group+"pattern.kind", design.PrimitiveRoot)
		d = set(t, d, group+"pattern.foldRows", "23")
		assert.Equal(t, 30, pattern(d).FoldColumns)
		d = set(t, d, group+"pattern.foldColumns", "46")
		assert.Equal(t, 15, pattern(d).FoldRows)
		_, err := design.Set(d, group+"pattern.foldRows", "7", length.Metric)
		assert.ErrorContains(t, err, "7 × 46 cannot be folded")
		assert.Equal(t, 0, pattern(set(t, d, group+"pattern.order", "821")).FoldRows)
		d = set(t, d, group+"pattern.foldRows", "0")
		assert.Equal(t, 0, pattern(d).FoldColumns)
	})
	t.Run("a drawing follows its field", func(t *testing.T) {
		d := set(t, set(t, doc, group+"columns", "3"), group+"rows", "2")
		d = set(t, d, group+"pattern.kind", design.Drawn)
		assert.Equal(t, []string{"000", "000"}, pattern(d).Drawn)
		d = set(t, d, group+"pattern.drawn", "012\n333")
		d = set(t, d, group+"columns", "5")
		assert.Equal(t, []string{"01201", "33333"}, pattern(d).Drawn)
		d = set(t, d, group+"rows", "3")
		assert.Equal(t, []string{"01201", "33333", "01201"}, pattern(d).Drawn)
		d = set(t, d, group+"heights", "10, 20")
		assert.Equal(t, []string{"01101", "11111", "01101"}, pattern(d).Drawn)
		_, err := design.Set(d, group+"pattern.drawn", "01", length.Metric)
		assert.ErrorContains(t, err, "1 row does not fit the field (allowed 3 rows)")
		d = set(t, d, group+"pattern.kind", design.Shuffled)
		assert.Nil(t, pattern(d).Drawn)
	})
	t.Run("the order of the panels follows their number", func(t *testing.T) {
		d := set(t, doc, group+"panelsWide", "3")
		d = set(t, d, group+"order", "a a b")
		assert.Equal(t, "AAB", d.Design.Walls[0].Groups[0].Order)
		assert.Equal(t, "AABA", set(t, d, group+"panelsWide", "4").Design.Walls[0].Groups[0].Order)
		assert.Equal(t, "AA", set(t, d, group+"panelsWide", "2").Design.Walls[0].Groups[0].Order)
	})
	t.Run("a thing that comes down from the ceiling gets a height", func(t *testing.T) {
		d, _, err := design.Add(doc, "walls[0].obstacles")
		require.NoError(t, err)
		const at = "walls[0].obstacles[0]."
		_, err = design.Set(d, at+"height", "0", length.Metric)
		assert.EqualError(t, err, "design."+at+"height: 0 mm is out of range (allowed from 1 mm)")
		d = set(t, set(t, set(t, d, at+"kind", "detector"), at+"height", "0"), at+"y", "2500")
		assert.Equal(t, "0 mm", d.Design.Walls[0].Obstacles[0].Height.String())
		d = set(t, d, at+"kind", "sprinkler")
		assert.Equal(t, "2500 mm", d.Design.Walls[0].Obstacles[0].Y.String(), "it hangs there as well")
		d = set(t, d, at+"kind", "beam")
		assert.Equal(t, "100 mm", d.Design.Walls[0].Obstacles[0].Height.String())
		assert.Equal(t, "2400 mm", d.Design.Walls[0].Obstacles[0].Y.String())
	})
	t.Run("another wood drops the weighed density", func(t *testing.T) {
		d := set(t, doc, group+"density", "480")
		assert.InDelta(t, 480, set(t, d, group+"wood", "poplar").Design.Walls[0].Groups[0].Density, 0)
		assert.InDelta(t, 0, set(t, d, group+"wood", "oak").Design.Walls[0].Groups[0].Density, 0)
	})
}

func TestAddAndRemove(t *testing.T) {
	doc := set(t, design.Default(), "walls[0].kind", "brick")
	doc, path, err := design.Add(doc, "walls")
	require.NoError(t, err)
	assert.Equal(t, "walls[1]", path)
	assert.Contains(t, doc.Assumed, "walls[1].kind")
	assert.Contains(t, doc.Assumed, "walls[1].groups[0].block.measured")
	doc = set(t, doc, "walls[1].width", "5 m")

	doc, path, err = design.Add(doc, "walls[1].obstacles")
	require.NoError(t, err)
	assert.Equal(t, "walls[1].obstacles[0]", path)
	assert.NotContains(t, doc.Assumed, "walls[1].obstacles")
	require.NoError(t, design.Validate(doc))

	doc, err = design.Remove(doc, "walls[0]")
	require.NoError(t, err)
	require.Len(t, doc.Design.Walls, 1)
	assert.Equal(t, length.MM(5000).Nanometres(), doc.Design.Walls[0].Width.Nanometres())
	assert.Contains(t, doc.Assumed, "walls[0].kind", "the second wall's assumptions move up")
	assert.NotContains(t, doc.Assumed, "walls[0].width")
	require.NoError(t, design.Validate(doc))

	for _, c := range []struct{ path, want string }{
		{"walls[0]", "design.walls[0]: has 0 entries (allowed 1 to 8 entries)"},
		{"walls[1]", "design.walls[1]: is not a field of the document"},
		{"walls", "design.walls: is not a field of the document"},
		{group + "heights[0]", "design.walls[0].groups[0].heights: cannot be edited"},
	} {
		_, err := design.Remove(doc, c.path)
		assert.EqualError(t, err, c.want)
	}
	for range 15 {
		doc, _, err = design.Add(doc, "money.extras")
		require.NoError(t, err)
	}
	doc, _, err = design.Add(doc, "money.extras")
	require.NoError(t, err)
	_, _, err = design.Add(doc, "money.extras")
	assert.EqualError(t, err, "design.money.extras: has 17 entries (allowed 0 to 16 entries)")
	_, _, err = design.Add(doc, "room.goals")
	assert.EqualError(t, err, "design.room.goals: cannot be edited")
}

func TestValidateAssumed(t *testing.T) {
	doc := design.Default()
	doc.Assumed = []string{"work.distanceKm", "room.width"}
	assert.EqualError(t, design.Validate(doc),
		"assumed[1]: room.width is in the list twice (allowed each once, in alphabetical order)")
}

// A page says what is wrong in the units of its reader, a command in those of
// files. 600 mm are 1511.8 and 20 m are 50393.7 sixty-fourths of an inch.
func TestFaultsAreSaidToTheirReader(t *testing.T) {
	_, err := design.Set(design.Default(), "walls[0].width", "12", length.Inch16)
	var faults design.Faults
	require.ErrorAs(t, err, &faults)
	inches := words.Reader{Language: words.English(), Units: length.Inch16}
	assert.Equal(t, "12 in is out of range. Allowed: 23 5/8 in to 787 25/64 in.", faults[0].Say(inches))
	assert.Equal(t, "Width of the wall", faults[0].Label(inches))
	assert.Equal(t, "⟦⟦12 in is out of range.⟧ Allowed: 23 5/8 in to 787 25/64 in.⟧", faults[0].Say(pseudo))
}

func TestLengthsWithSpacesThatDoNotBreak(t *testing.T) {
	for path, text := range map[string]string{
		"walls[0].width": "4\u00a0m", group + "block.slack": "0,3\u202fmm", group + "heights": "26,\u00a042,\u202f64\u00a0mm",
		group + "density": "690\u00a0kg/m³",
	} {
		_, err := design.Set(design.Default(), path, text, length.Metric)
		assert.NoError(t, err, "%s = %q", path, text)
	}
	doc := set(t, design.Default(), "title", "8\u00a0panels")
	assert.Equal(t, "8\u00a0panels", doc.Design.Title, "words keep theirs")
}

// A room that is as large as its only wall stays so when the wall changes, and no other:
// not a room of another size, nor one with several walls, nor beyond what a room can be.
func TestARoomFollowsItsWall(t *testing.T) {
	change := func(doc design.Document, edits ...string) design.Room {
		for i := 0; i < len(edits); i += 2 {
			var err error
			doc, err = design.Set(doc, edits[i], edits[i+1], length.Metric)
			require.NoError(t, err)
		}
		return doc.Design.Room
	}
	doc := design.Default() // 4500 × 3500 × 2500, the wall 3500 × 2500
	sizes := func(r design.Room) []string { return []string{r.Length.String(), r.Width.String(), r.Height.String()} }
	assert.Equal(t, []string{"4500 mm", "3200 mm", "2500 mm"}, sizes(change(doc, "walls[0].width", "3200 mm")))
	assert.Equal(t, []string{"4500 mm", "3500 mm", "2700 mm"}, sizes(change(doc, "walls[0].height", "2700 mm")))
	assert.Equal(t, []string{"4500 mm", "3500 mm", "2500 mm"}, sizes(change(doc, "walls[0].width", "1200 mm")), "no room is so small")
	assert.Equal(t, []string{"4500 mm", "3600 mm", "2500 mm"}, sizes(change(doc, "room.width", "3600 mm", "walls[0].width", "3200 mm")), "another size")
	two, _, err := design.Add(doc, "walls")
	require.NoError(t, err)
	assert.Equal(t, []string{"4500 mm", "3500 mm", "2500 mm"}, sizes(change(two, "walls[0].width", "3200 mm")), "which of the two")
}
