package design_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// small is a design file that holds nothing but some fields of one group.
func small(group string) string {
	return `{"format":"blockfield design","version":1,"design":{"walls":[{"groups":[{` + group + `}]}]}}`
}

// in wraps fields of the design itself.
func in(fields string) string {
	return `{"format":"blockfield design","version":1,"design":{` + fields + `}}`
}

func TestBadFiles(t *testing.T) {
	const group = "design.walls[0].groups[0]."
	many := strings.Repeat
	for name, c := range map[string]struct{ file, want string }{
		"empty":     {"", "cannot be read as JSON: cut off at line 1, column 1"},
		"no object": {`["blockfield design"]`, "is not a file of this kind: found nothing (allowed a JSON object)"},
		"truncated": {`{"format":"blockfield design","ver`, "cannot be read as JSON: cut off at line 1, column 35"},
		"trailing":  {in("") + ` {}`, "cannot be read as JSON: more after the end, at line 1, column 55"},
		"foreign":   {`{"type":"FeatureCollection"}`, "format: is not a file of this kind: found nothing (allowed blockfield design)"},
		"a book": {
			`{"format":"blockfield price book","version":1}`,
			"format: is not a file of this kind: found blockfield price book (allowed blockfield design)",
		},
		"newer": {
			`{"format":"blockfield design","version":7,"design":{"novel":1}}`,
			"version: was written by a newer program: version 7 (allowed up to version 1)",
		},
		"version 0":   {`{"format":"blockfield design","version":0}`, "version: is a version that never was: 0 (allowed 1)"},
		"version 1.5": {`{"format":"blockfield design","version":1.5}`, "version: is a version that never was: 1.5 (allowed 1)"},
		"no version":  {`{"format":"blockfield design"}`, "version: is missing (allowed 1)"},
		"no design":   {`{"format":"blockfield design","version":1}`, "design: is missing"},
		"bad bytes":   {in(`"title":"` + "\xff" + `"`), "is not valid UTF-8 text at line 1, column 62"},
		"half pair":   {in(`"title":"\ud800"`), "is not valid UTF-8 text at line 1, column 62"},
		"too deep":    {in(`"title":` + many("[", 40) + many("]", 40)), "has too many parts within parts at line 1, column 92 (allowed 32 levels)"},
		"too large": {
			in(`"note":"` + many("x", 4<<20) + `"`),
			"is too large: 4194367 bytes (allowed at most 4194304 bytes)",
		},
		"unknown":        {in(`"colour":"red"`), "design.colour: is not a field of the document"},
		"unknown at top": {`{"format":"blockfield design","version":1,"design":{},"result":1}`, "result: is not a field of the document"},
		"twice":          {in(`"title":"a","title":"b"`), "design.title: is given twice"},
		"null": {
			in(`"title":null`), "design.title: null is of the wrong kind (allowed a text, at most 120 characters)",
		},
		"number for a length": {
			small(`"width":1200`), group + "width: 1200 is of the wrong kind (allowed a text, 300 mm to 6000 mm)",
		},
		"no unit": {
			small(`"width":"1200"`),
			group + `width: 1200 is not a length: write it like 38 mm, 1.2 m, 1 1/2 in or 6' 2" (allowed 300 mm to 6000 mm)`,
		},
		"text for a number": {
			small(`"density":"500"`),
			group + `density: "500" is of the wrong kind (allowed a number, 100 kg/m³ to 1300 kg/m³, or 0 (as in the tables))`,
		},
		"not whole": {
			small(`"columns":3.5`), group + "columns: 3.5 is not a whole number in plain digits (allowed a whole number, 0 to 400)",
		},
		"huge number": {
			small(`"density":1e999`),
			group + "density: 1e999 is out of range (allowed 100 kg/m³ to 1300 kg/m³, or 0 (as in the tables))",
		},
		"text for yes": {
			in(`"room":{"public":"yes"}`), `design.room.public: "yes" is of the wrong kind (allowed true or false)`,
		},
		"text for a part": {in(`"room":"large"`), `design.room: "large" is of the wrong kind (allowed a part with names)`},
		"part for a list": {in(`"walls":{}`), "design.walls: {} is of the wrong kind (allowed a list)"},
		"narrow":          {small(`"width":"299.9 mm"`), group + "width: 299.9 mm is out of range (allowed 300 mm to 6000 mm)"},
		"wide":            {small(`"width":"20 ft"`), group + `width: 20' 0" is out of range (allowed 300 mm to 6000 mm)`},
		"unknown wood": {
			small(`"wood":"teak"`),
			group + "wood: teak is not one of the choices (allowed one of pine, spruce, cedar, poplar, beech, ash, maple, oak, cherry, walnut)",
		},
		"turn": {
			small(`"pattern":{"turn":45}`), group + "pattern.turn: 45 is not one of the choices (allowed one of 0, 90, 180, 270)",
		},
		"seed beyond": {
			small(`"pattern":{"seed":9007199254740992}`),
			group + "pattern.seed: 9007199254740992 is out of range (allowed a whole number, 0 to 9007199254740991)",
		},
		"clump": {small(`"pattern":{"clump":5}`), group + "pattern.clump: 5 is out of range (allowed a whole number, 1 to 4)"},
		"one height": {
			small(`"heights":["20 mm"]`), group + "heights: has 1 entry (allowed 2 to 9 entries)",
		},
		"ten heights": {
			small(`"heights":["1 mm","2 mm","3 mm","4 mm","5 mm","6 mm","7 mm","8 mm","9 mm","10 mm"]`),
			group + "heights: has 10 entries (allowed 2 to 9 entries)",
		},
		"falling heights": {
			small(`"heights":["20 mm","64 mm","42 mm"]`),
			group + "heights[2]: must rise, got 42 mm (allowed more than 64 mm)",
		},
		"equal heights": {
			small(`"heights":["25.4 mm","1 in"]`), group + "heights[1]: must rise, got 1 in (allowed more than 25.4 mm)",
		},
		"no prime": {
			small(`"pattern":{"kind":"quadratic residue","order":24}`),
			group + "pattern.order: 24 is not a prime number (allowed a prime such as 23 or 29)",
		},
		"Fermat prime": {
			small(`"pattern":{"kind":"primitive root","order":257}`),
			group + "pattern.order: 257 cannot be folded to a field (allowed a prime such as 251 or 263)",
		},
		"wrong fold": {
			small(`"pattern":{"kind":"primitive root","order":691,"foldRows":23,"foldColumns":29}`),
			group + "pattern.foldRows: 23 × 29 cannot be folded to a field" +
				" (allowed two numbers above 1 without a common factor that make 690, or 0 and 0)",
		},
		"fold with a common factor": {
			small(`"pattern":{"kind":"primitive root","order":37,"foldRows":6,"foldColumns":6}`),
			group + "pattern.foldRows: 6 × 6 cannot be folded to a field" +
				" (allowed two numbers above 1 without a common factor that make 36, or 0 and 0)",
		},
		"panels": {
			small(`"panelsWide":4,"panelsHigh":4`),
			group + "panelsWide: 4 × 4 panels is out of range (allowed at most 12 in a group)",
		},
		"letters": {
			small(`"panelsWide":3,"order":"AB"`),
			group + "order: AB does not fit the panels (allowed 3 letters out of A, B and R, or none)",
		},
		"strange letter": {
			small(`"panelsWide":2,"order":"AC"`),
			group + "order: AC does not fit the panels (allowed 2 letters out of A, B and R, or none)",
		},
		"cells": {
			small(`"columns":400,"rows":101`),
			group + "columns: makes too many blocks: 400 × 101 cells in a panel (allowed at most 400 a side and 40000 in all)",
		},
		"cells by wish": { // 6000 / 18 = 333 each way
			small(`"width":"6000 mm","height":"6 m","block":{"size":"18 mm","slack":"0 mm"}`),
			group + "width: makes too many blocks: 333 × 333 cells in a panel (allowed at most 400 a side and 40000 in all)",
		},
		"drawn elsewhere": {
			small(`"pattern":{"drawn":["01"]}`),
			group + "pattern.drawn: 1 row does not fit the field (allowed none unless the pattern is drawn)",
		},
		"drawn rows": {
			small(`"columns":2,"rows":2,"pattern":{"kind":"drawn","drawn":["01"]}`),
			group + "pattern.drawn: 1 row does not fit the field (allowed 2 rows)",
		},
		"drawn width": {
			small(`"columns":2,"rows":2,"pattern":{"kind":"drawn","drawn":["01","012"]}`),
			group + "pattern.drawn[1]: 012 does not fit the field (allowed 2 digits from 0 to 3)",
		},
		"drawn digit": {
			small(`"columns":2,"rows":2,"pattern":{"kind":"drawn","drawn":["01","04"]}`),
			group + "pattern.drawn[1]: 04 does not fit the field (allowed 2 digits from 0 to 3)",
		},
		"humidity": {
			in(`"room":{"humidityLow":60,"humidityHigh":40}`),
			"design.room.humidityHigh: is the wrong way round: the lowest is 60 %, the highest 40 % (allowed a lowest up to 40 %, or a highest from 60 %)",
		},
		"temperature": {
			in(`"room":{"temperatureLow":25}`),
			"design.room.temperatureHigh: is the wrong way round: the lowest is 25 °C, the highest 23 °C (allowed a lowest up to 23 °C, or a highest from 25 °C)",
		},
		"outside the wall": {
			in(`"walls":[{"obstacles":[{"x":"3450 mm"}]}]`),
			"design.walls[0].obstacles[0].x: reaches beyond the wall: other, right edge at 3550 mm (allowed up to 3500 mm)",
		},
		"nine walls": {
			in(`"walls":[` + many("{},", 8) + `{}]`), "design.walls: has 9 entries (allowed 1 to 8 entries)",
		},
		"no wall":   {in(`"walls":[]`), "design.walls: has 0 entries (allowed 1 to 8 entries)"},
		"obstacles": {in(`"walls":[{"obstacles":[` + many("{},", 64) + `{}]}]`), "design.walls[0].obstacles: has 65 entries (allowed 0 to 64 entries)"},
		"looks": {
			`{"format":"blockfield design","version":1,"design":{},"looks":[` + many(`{"design":{}},`, 3) + `{"design":{}}]}`,
			"looks: has 4 entries (allowed 0 to 3 entries)",
		},
		"a look's own fault": {
			`{"format":"blockfield design","version":1,"design":{},"looks":[{"name":"a","design":{"work":{"crew":9}}}]}`,
			"looks[0].design.work.crew: 9 is out of range (allowed a whole number, 1 to 6)",
		},
		// 240 columns of 18 mm are 4.3 m, 166 rows 3 m, so that four by three panels still fit the largest wall.
		"all cells of a job": {
			in(`"walls":[{"groups":[{"panelsWide":4,"panelsHigh":3,"columns":240,"rows":166,"block":{"size":"18 mm","slack":"0 mm"}},{"rows":100}]}]`),
			"design.walls[0].groups[0].panelsWide: makes too many blocks: 481380 cells in all panels (allowed at most 480000)",
		},
		"cells by rows": {
			small(`"rows":200,"width":"6 m","block":{"size":"20 mm"}`), // 6000 / 20.2 = 297.03
			group + "rows: makes too many blocks: 297 × 200 cells in a panel (allowed at most 400 a side and 40000 in all)",
		},
		// 400 · 36.2 + 2 · (3 + 20) mm a panel, and eleven gaps of 3 mm.
		"wider than any wall": {
			small(`"panelsWide":12,"columns":400`),
			group + "columns: is larger than any wall: the panels are 174345 mm wide in all (allowed up to 20000 mm)",
		},
		"higher than any wall": {
			small(`"panelsHigh":4,"rows":400,"columns":10`),
			group + "rows: is larger than any wall: the panels are 58113 mm high in all (allowed up to 20000 mm)",
		},
		// Twelve panels of 3 columns and eleven gaps of 3 m.
		"far apart": {
			small(`"panelsWide":12,"panelGap":"3 m"`),
			group + "panelGap: is larger than any wall: the panels are 34855.2 mm wide in all (allowed up to 20000 mm)",
		},
		"beside any wall": {
			small(`"place":{"left":"19 m"}`),
			group + "place.left: is larger than any wall: the panels end 20240.6 mm from the left corner (allowed up to 20000 mm)",
		},
		"above any wall": {
			small(`"place":{"height":"19.5 m"}`),
			group + "place.height: is larger than any wall: the panels end 20342.4 mm above the floor (allowed up to 20000 mm)",
		},
		"a socket without a height": {
			in(`"walls":[{"obstacles":[{"kind":"socket","height":"0 mm"}]}]`),
			"design.walls[0].obstacles[0].height: 0 mm is out of range (allowed from 1 mm)",
		},
		"a socket without a size": {
			in(`"walls":[{"obstacles":[{"kind":"socket","width":"0 mm","height":"0 mm"}]}]`),
			"design.walls[0].obstacles[0].width: 0 mm is out of range (allowed 1 mm to 20000 mm)\n" +
				"design.walls[0].obstacles[0].height: 0 mm is out of range (allowed from 1 mm)",
		},
		"a detector without a width": {
			in(`"walls":[{"obstacles":[{"kind":"detector","width":"0 mm","height":"0 mm"}]}]`),
			"design.walls[0].obstacles[0].width: 0 mm is out of range (allowed 1 mm to 20000 mm)",
		},
		"no title":      {in(`"title":""`), "design.title: must not be empty"},
		"a blank title": {in(`"title":" \u00a0\u200b\u3000"`), "design.title: must not be empty"},
		"no language of ours": {
			`{"format":"blockfield design","version":1,"design":{},"view":{"language":"xx"}}`,
			"view.language: xx is not one of the choices (allowed one of en, de)",
		},
		"a text for the version": {
			`{"format":"blockfield design","version":"1","design":{}}`,
			`version: "1" is of the wrong kind (allowed a number, 1)`,
		},
		"a part for the version": {
			`{"format":"blockfield design","version":{"major":1},"design":{}}`,
			"version: { is of the wrong kind (allowed a number, 1)",
		},
		"a comma on the third line": {
			"{\"format\":\"blockfield design\",\n\"version\":1,\n  \"größe\":,}",
			"cannot be read as JSON: at line 3, column 11",
		},
		"right to left": {
			small(`"wood":"oak\u202egnp"`),
			group + `wood: oak\u202egnp is not one of the choices` +
				" (allowed one of pine, spruce, cedar, poplar, beech, ash, maple, oak, cherry, walnut)",
		},
		"an unknown field that rings": {in(`"a\u001b[2J":1`), `design.a\x1b[2J: is not a field of the document`},
		"long title": {
			in(`"title":"` + many("x", 121) + `"`),
			"design.title: " + many("x", 60) + "… is too long (allowed at most 120 characters)",
		},
		"control character": {in(`"title":"a\u0007b"`), "design.title: a\\ab has the character U+0007 at place 2, which is not seen and can turn or hide what is written"},
		"empty goal":        {in(`"room":{"goals":[""]}`), "design.room.goals[0]: must not be empty"},
		"assumed": {
			`{"format":"blockfield design","version":1,"design":{},"assumed":["bench.kerf"]}`,
			"assumed[0]: bench.kerf is not a value that can be assumed",
		},
		"offer without price": {
			`{"format":"blockfield design","version":1,"design":{},"offer":{"revision":"ZZZZZZ","bookCode":"ZZZZZZ","net":"1",` +
				`"tax":"0","currency":"XXX","validUntil":"2026-02-28"}}`,
			"offer.gross: is missing",
		},
		"offer on no day": {
			`{"format":"blockfield design","version":1,"design":{},"offer":{"revision":"ZZZZZZ","bookCode":"ZZZZZZ","net":"1",` +
				`"tax":"0","gross":"1","currency":"XXX","validUntil":"2026-02-29"}}`,
			"offer.validUntil: 2026-02-29 is not a day of the calendar (allowed a day such as 2026-03-31)",
		},
		"ready before it can be": {
			`{"format":"blockfield design","version":1,"design":{},"offer":{"revision":"ZZZZZZ","bookCode":"ZZZZZZ","net":"1",` +
				`"tax":"0","gross":"1","currency":"EUR","validUntil":"2030-03-01","readyFrom":"2030-06-02","readyBy":"2030-06-01"}}`,
			"offer.readyBy: 2030-06-01 is before the first day (allowed not before 2030-06-02)",
		},
		"offer with a strange code": {
			`{"format":"blockfield design","version":1,"design":{},"offer":{"revision":"ZZZZZU","bookCode":"ZZZZZZ","net":"1",` +
				`"tax":"0","gross":"1","currency":"XXX","validUntil":"2028-02-29"}}`,
			"offer.revision: ZZZZZU is not a code of ours (allowed six letters and digits)",
		},
		"amount": {
			in(`"money":{"budget":"1,500"}`),
			"design.money.budget: 1,500 is not an amount of money: write it like 42 or 0.55, without the currency (allowed 0 to 1\u202f000\u202f000\u202f000\u202f000)",
		},
	} {
		t.Run(name, func(t *testing.T) {
			doc, err := design.Decode([]byte(c.file))
			require.EqualError(t, err, c.want)
			assert.Equal(t, design.Document{}, doc)
			var faults design.Faults
			require.True(t, errors.As(err, &faults))
		})
	}
}

func TestAllFaultsAtOnce(t *testing.T) {
	_, err := design.Decode([]byte(`{"format":"blockfield design","version":1,"design":{
		"room":{"length":"1 m","use":7},
		"walls":[{"widht":"4 m","groups":[{"heights":["9 mm","8 mm"],"wood":"teak","pattern":{"kind":"primitive root","order":17}}]}]}}`))
	var faults design.Faults
	require.ErrorAs(t, err, &faults)
	var got []string
	for _, f := range faults {
		got = append(got, f.Field()+" "+string(f.Code))
	}
	assert.Equal(t, []string{
		"room.use type", "walls[0].widht unknown-field",
		"room.length range", "walls[0].groups[0].wood choice",
		"walls[0].groups[0].heights[1] rising", "walls[0].groups[0].pattern.order fold",
	}, got)
}

func TestFaultsAreCounted(t *testing.T) {
	var b strings.Builder
	for i := range 1000 {
		fmt.Fprintf(&b, `"x%d":0,`, i)
	}
	_, err := design.Decode([]byte(in(b.String() + `"title":"t"`)))
	var faults design.Faults
	require.ErrorAs(t, err, &faults)
	require.Len(t, faults, 51)
	assert.Equal(t, "and 950 more", faults[50].Error())
}

func TestMissingValuesAreAssumed(t *testing.T) {
	doc, err := design.Decode([]byte(in("")))
	require.NoError(t, err)
	want := design.Default()
	assert.Equal(t, want, doc, "a file of nothing is the default design")

	doc, err = design.Decode([]byte(in(`"room":{"height":"3 m"},"walls":[{"obstacles":[],"groups":[{},{}]}],"bench":{"kerf":"3 mm"}`)))
	require.NoError(t, err)
	assert.NotContains(t, doc.Assumed, "room.height")
	assert.NotContains(t, doc.Assumed, "walls[0].obstacles", "an empty list says that there are none")
	assert.Contains(t, doc.Assumed, "room.width")
	assert.Contains(t, doc.Assumed, "walls[0].groups[1].block.measured")
	assert.Contains(t, doc.Assumed, "bench.stockMoisture")
	assert.NotContains(t, doc.Assumed, "bench.kerf", "a choice of the shop is not assumed")

	// What is said to be assumed stays so, although the file holds it.
	doc, err = design.Decode([]byte(
		`{"format":"blockfield design","version":1,"design":{"room":{"height":"3 m"}},"assumed":["room.height"]}`))
	require.NoError(t, err)
	assert.Contains(t, doc.Assumed, "room.height")
}

func TestMissingPartsOfALookAreNotAssumed(t *testing.T) {
	doc, err := design.Decode([]byte(design.Encode(design.Default())))
	require.NoError(t, err)
	doc.Looks = []design.Look{{Name: "one", Design: doc.Design}}
	doc.Assumed = nil
	again, err := design.Decode(design.Encode(doc))
	require.NoError(t, err)
	assert.Equal(t, doc, again)
}

func TestReadingKeepsNotation(t *testing.T) {
	doc, err := design.Decode([]byte(small(`"width":"3' 11 1/4\"","heights":["1/2in","1-1/8 in"]`)))
	require.NoError(t, err)
	g := doc.Design.Walls[0].Groups[0]
	assert.Equal(t, `3' 11 1/4"`, g.Width.String())
	assert.Equal(t, "1 1/8 in", g.Heights[1].String())
}
